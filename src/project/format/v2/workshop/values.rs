//! Single values of the bench in format 2, and lists of them.

use super::super::super::shared::values::{
    PlainNumber, WrittenNumber, WrittenOutOfRange, file_number,
};
use crate::workshop::{
    Angle, BacklashMove, BoreClass, CaseDepth, Celsius, Depth, Deviation, Diameter, Expansion,
    FilletRadius, Filling, Job, LengthBand, NoClass, PlaceDiameters, PullForce, Radius, Reading,
    Readings, Resolution, RingWidth, RoomTemperature, RunOut, SeatLength, Setting, SettingBand,
    ShaftClass, ShaftTorque, ShimThickness, Sizes, SlipClearance, StackedShims, TemperatureRise,
    Tolerance, TorqueBand, TurningTorque,
};
use serde::{Deserialize, Serialize};

file_number!(ShimMm, ShimThickness, from_mm, mm);
file_number!(ReadingMm, Reading, from_mm, mm);
file_number!(DepthMm, Depth, from_mm, mm);
file_number!(SettingMm, Setting, from_mm, mm);
file_number!(DivisionMm, Resolution, from_mm, mm);
file_number!(ToleranceMm, Tolerance, from_mm, mm);
file_number!(RadiusMm, Radius, from_mm, mm);
file_number!(PullN, PullForce, from_n, n);
file_number!(TorqueNmm, TurningTorque, from_nmm, nmm);
file_number!(RatePerMm, BacklashMove, from_per_mm, per_mm);
file_number!(AngleDeg, Angle, from_deg, deg);
file_number!(ExpansionPerMk, Expansion, from_per_mk, per_mk);
file_number!(TemperatureC, Celsius, from_c, c);
file_number!(DiameterMm, Diameter, from_mm, mm);
file_number!(WidthMm, RingWidth, from_mm, mm);
file_number!(DeviationUm, Deviation, from_um, um);
file_number!(SlipUm, SlipClearance, from_um, um);
file_number!(RiseK, TemperatureRise, from_k, k);
file_number!(RoomC, RoomTemperature, from_c, c);
file_number!(ShaftTorqueNm, ShaftTorque, from_nm, nm);
file_number!(CaseDepthMm, CaseDepth, from_mm, mm);
file_number!(FilletMm, FilletRadius, from_mm, mm);
file_number!(SeatLengthMm, SeatLength, from_mm, mm);
file_number!(RunOutMm, RunOut, from_mm, mm);

/// A list in a file that is one value of the domain, or a sentence.
macro_rules! file_list {
    ($Name:ident, $Domain:ident, $Entry:ident, $list:literal, $read:expr) => {
        #[derive(Clone, Serialize, Deserialize)]
        #[serde(try_from = $list, into = $list)]
        pub(super) struct $Name(pub(super) $Domain);

        impl TryFrom<Vec<$Entry>> for $Name {
            type Error = String;

            fn try_from(list: Vec<$Entry>) -> Result<Self, String> {
                let read: fn(Vec<_>) -> Result<$Domain, String> = $read;
                read(list.into_iter().map(|entry| entry.0).collect()).map(Self)
            }
        }

        impl From<$Name> for Vec<$Entry> {
            fn from(value: $Name) -> Self {
                value.0.as_slice().iter().copied().map($Entry).collect()
            }
        }
    };
}

file_list!(ReadingsMm, Readings, ReadingMm, "Vec<ReadingMm>", |list| {
    Readings::new(list).ok_or_else(|| format!("1 to {} readings stand here", Readings::MOST))
});
file_list!(FillingMm, Filling, DepthMm, "Vec<DepthMm>", |list| {
    Filling::new(list).ok_or_else(|| format!("1 to {} heights stand here", Filling::MOST))
});
file_list!(
    DiametersMm,
    PlaceDiameters,
    DiameterMm,
    "Vec<DiameterMm>",
    |list| {
        let most = PlaceDiameters::MOST;
        PlaceDiameters::new(list).ok_or_else(|| format!("1 to {most} diameters stand here"))
    }
);
file_list!(SizesMm, Sizes, ShimMm, "Vec<ShimMm>", |list| {
    Sizes::new(list).map_err(|error| error.to_string())
});

/// The items of a job.
#[derive(Clone, Serialize, Deserialize)]
#[serde(
    try_from = "Vec<T>",
    into = "Vec<T>",
    bound(serialize = "T: Clone + Serialize")
)]
pub(super) struct Items<T>(pub(super) Vec<T>);

impl<T> Items<T> {
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl<T> Default for Items<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> TryFrom<Vec<T>> for Items<T> {
    type Error = String;

    fn try_from(items: Vec<T>) -> Result<Self, String> {
        let most = Job::MOST_ITEMS;
        match items.len() {
            count if count > most => Err(format!("at most {most} stand here, not {count}")),
            _ => Ok(Self(items)),
        }
    }
}

impl<T> From<Items<T>> for Vec<T> {
    fn from(items: Items<T>) -> Self {
        items.0
    }
}

/// A band in a file, its lower end first.
macro_rules! file_band {
    ($Name:ident as $name:literal, $parts:literal $Parts:ident, $Band:ident, $End:ident, $ends:expr) => {
        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(try_from = $parts, into = $parts)]
        pub(super) struct $Name(pub(super) $Band);

        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(rename = $name, deny_unknown_fields)]
        struct $Parts {
            least: $End,
            most: $End,
        }

        impl TryFrom<$Parts> for $Name {
            type Error = &'static str;

            fn try_from(parts: $Parts) -> Result<Self, &'static str> {
                let band = $Band::new(parts.least.0, parts.most.0);
                band.map(Self)
                    .ok_or("the least of a band is not above its most")
            }
        }

        impl From<$Name> for $Parts {
            fn from(band: $Name) -> Self {
                let ends: fn($Band) -> [_; 2] = $ends;
                let [least, most] = ends(band.0).map($End);
                Self { least, most }
            }
        }
    };
}

// Of a setting the tighter end is the lower one.
file_band!(SettingEntry as "Setting", "SettingParts" SettingParts, SettingBand, SettingMm, |band| {
    [band.low(), band.high()]
});
file_band!(LengthBandEntry as "Lengths", "LengthParts" LengthParts, LengthBand, ReadingMm, LengthBand::ends);
file_band!(TorqueBandEntry as "Torques", "TorqueParts" TorqueParts, TorqueBand, TorqueNmm, TorqueBand::ends);

/// A tolerance class by its word.
macro_rules! file_class {
    ($Name:ident, $Class:ident) => {
        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub(super) struct $Name(pub(super) $Class);

        impl TryFrom<String> for $Name {
            type Error = NoClass;

            fn try_from(word: String) -> Result<Self, NoClass> {
                word.parse().map(Self)
            }
        }

        impl From<$Name> for String {
            fn from(class: $Name) -> Self {
                class.0.word().to_owned()
            }
        }
    };
}

file_class!(ShaftClassWord, ShaftClass);
file_class!(BoreClassWord, BoreClass);

/// How many shims a place may have.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub(super) struct ShimCount(pub(super) StackedShims);

impl TryFrom<u8> for ShimCount {
    type Error = String;

    fn try_from(count: u8) -> Result<Self, String> {
        let most = StackedShims::MOST;
        let shims = StackedShims::new(count).map(Self);
        shims.ok_or_else(|| format!("1 to {most} shims are in a place, not {count}"))
    }
}

impl From<ShimCount> for u8 {
    fn from(count: ShimCount) -> Self {
        count.0.count()
    }
}

/// What stands in a file of a kind of job, or of one of its items: what is chosen, always; what is known, where
/// it is; its items, where there are any. Both ways, so that each key stands here once.
macro_rules! entry_of {
    (
        $Entry:ident as $name:literal of $Data:ident;
        $(chosen $choice:ident: $Choice:ident = $chosen:ident;)*
        $(known $key:ident: $Value:ident = $field:ident;)*
        $(items $list:ident: $Items:ty = $items:ident;)?
    ) => {
        #[derive(Clone, Serialize, Deserialize)]
        #[serde(rename = $name, deny_unknown_fields)]
        pub(super) struct $Entry {
            $($choice: $Choice,)*
            $(
                #[serde(default, skip_serializing_if = "Option::is_none")]
                $key: Option<$Value>,
            )*
            $(
                #[serde(default, skip_serializing_if = "Items::is_empty")]
                $list: $Items,
            )?
        }

        impl From<&$Data> for $Entry {
            fn from(data: &$Data) -> Self {
                Self {
                    $($choice: data.$chosen.into(),)*
                    $($key: data.$field.clone().map($Value),)*
                    $($list: Items(data.$items.iter().map(Into::into).collect()),)?
                }
            }
        }

        impl From<$Entry> for $Data {
            fn from(file: $Entry) -> Self {
                Self {
                    $($chosen: file.$choice.into(),)*
                    $($field: file.$key.map(|known| known.0),)*
                    $($items: file.$list.0.into_iter().map(Into::into).collect(),)?
                }
            }
        }
    };
}

pub(super) use super::super::same_words::same_words;
pub(super) use entry_of;
