//! Single values of the bench in format 2, and lists of them.

use super::super::super::shared::values::{
    PlainNumber, WrittenNumber, WrittenOutOfRange, file_number,
};
use crate::workshop::{
    Depth, Filling, Reading, Readings, Resolution, Setting, SettingBand, ShimThickness, Sizes,
    StackedShims,
};
use serde::{Deserialize, Serialize};

file_number!(ShimMm, ShimThickness, from_mm, mm);
file_number!(ReadingMm, Reading, from_mm, mm);
file_number!(DepthMm, Depth, from_mm, mm);
file_number!(SettingMm, Setting, from_mm, mm);
file_number!(DivisionMm, Resolution, from_mm, mm);

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
file_list!(SizesMm, Sizes, ShimMm, "Vec<ShimMm>", |list| {
    Sizes::new(list).map_err(|error| error.to_string())
});

/// A setting, its tighter end first.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "BandParts", into = "BandParts")]
pub(super) struct SettingEntry(pub(super) SettingBand);

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Setting", deny_unknown_fields)]
struct BandParts {
    least: SettingMm,
    most: SettingMm,
}

impl TryFrom<BandParts> for SettingEntry {
    type Error = &'static str;

    fn try_from(parts: BandParts) -> Result<Self, &'static str> {
        let band = SettingBand::new(parts.least.0, parts.most.0);
        band.map(Self)
            .ok_or("the least of a setting is not above its most")
    }
}

impl From<SettingEntry> for BandParts {
    fn from(band: SettingEntry) -> Self {
        Self {
            least: SettingMm(band.0.low()),
            most: SettingMm(band.0.high()),
        }
    }
}

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

/// Both ways between a word of the file and one of the domain that has the same variants.
macro_rules! same_words {
    ($Entry:ident, $Domain:ident, $($Word:ident),+) => {
        impl From<$Entry> for $Domain {
            fn from(word: $Entry) -> Self {
                match word {
                    $($Entry::$Word => Self::$Word,)+
                }
            }
        }

        impl From<$Domain> for $Entry {
            fn from(word: $Domain) -> Self {
                match word {
                    $($Domain::$Word => Self::$Word,)+
                }
            }
        }
    };
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

pub(super) use {entry_of, same_words};
