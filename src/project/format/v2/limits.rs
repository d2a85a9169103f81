//! Limits of tyres and shafts, and a second driven axle, in format 2.

use super::super::shared::ratio::RatioEntry;
use super::super::shared::values::{
    Kmh, PlainNumber, WrittenNumber, WrittenOutOfRange, file_number,
};
use super::same_words::same_words;
use super::tyre::TyreV2;
use super::vehicle::MassKg;
use crate::checks::{
    AngleRatio, Axle, Coupling, RatedTorque, RatingFactor, ShaftSpeed, SharingShafts, TakenOff,
    TyresOnAxle,
};
use crate::project::technical::{LimitsData, SecondAxleData};
use serde::{Deserialize, Serialize};

file_number!(RatedNm, RatedTorque, from_nm, nm);
file_number!(FactorOfRating, RatingFactor, new, factor);
file_number!(ShaftRpm, ShaftSpeed, from_rpm, rpm);
file_number!(AngleNumber, AngleRatio, new, ratio);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Limits", deny_unknown_fields)]
pub(crate) struct LimitsV2 {
    /// That of the registration paper.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    top_speed_kmh: Option<Kmh>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    front_axle_kg: Option<MassKg>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rear_axle_kg: Option<MassKg>,
    /// Whether four tyres carry the rear axle.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    twin_rear_tyres: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    torque_factor: Option<FactorOfRating>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    axle_shaft_nm: Option<RatedNm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    axle_shafts: Option<ShaftsEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    propeller_shaft_rpm: Option<ShaftRpm>,
}

/// How many axle shafts share the torque.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Shafts")]
enum ShaftsEntry {
    One,
    Two,
    Four,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "SecondAxle", deny_unknown_fields)]
pub(crate) struct SecondAxleV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    final_drive: Option<RatioEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    axle: Option<AxleEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    angle_drive: Option<AngleNumber>,
    /// Whether its drive is taken off behind the final drive of the first axle.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    behind_final_drive: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    tyre: Option<TyreV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    coupling: Option<CouplingEntry>,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Axle")]
enum AxleEntry {
    Front,
    Rear,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Coupling")]
enum CouplingEntry {
    PartTime,
    Viscous,
    CentreDifferential,
}

impl LimitsV2 {
    /// The data as they stand in a file; none where nothing is known.
    pub(super) fn of(data: &LimitsData) -> Option<Self> {
        (*data != LimitsData::default()).then(|| Self {
            top_speed_kmh: data.top_speed.map(Kmh),
            front_axle_kg: data.front_axle.map(MassKg),
            rear_axle_kg: data.rear_axle.map(MassKg),
            twin_rear_tyres: data.rear_tyres == TyresOnAxle::Four,
            torque_factor: data.torque_factor.map(FactorOfRating),
            axle_shaft_nm: data.axle_shaft.map(RatedNm),
            axle_shafts: data.shafts.map(Into::into),
            propeller_shaft_rpm: data.propeller_shaft.map(ShaftRpm),
        })
    }
}

impl From<LimitsV2> for LimitsData {
    fn from(file: LimitsV2) -> Self {
        Self {
            top_speed: file.top_speed_kmh.map(|n| n.0),
            front_axle: file.front_axle_kg.map(|n| n.0),
            rear_axle: file.rear_axle_kg.map(|n| n.0),
            rear_tyres: if file.twin_rear_tyres {
                TyresOnAxle::Four
            } else {
                TyresOnAxle::Two
            },
            torque_factor: file.torque_factor.map(|n| n.0),
            axle_shaft: file.axle_shaft_nm.map(|n| n.0),
            shafts: file.axle_shafts.map(Into::into),
            propeller_shaft: file.propeller_shaft_rpm.map(|n| n.0),
        }
    }
}

impl SecondAxleV2 {
    /// The data as they stand in a file; none where nothing is known.
    pub(super) fn of(data: &SecondAxleData) -> Option<Self> {
        (*data != SecondAxleData::default()).then(|| Self {
            final_drive: data.final_drive.clone().map(RatioEntry),
            axle: data.axle.map(Into::into),
            angle_drive: data.angle_drive.map(AngleNumber),
            behind_final_drive: data.taken_off == TakenOff::BehindFinalDrive,
            tyre: data.tyre.as_ref().map(TyreV2::from),
            coupling: data.coupling.map(Into::into),
        })
    }
}

impl From<SecondAxleV2> for SecondAxleData {
    fn from(file: SecondAxleV2) -> Self {
        Self {
            final_drive: file.final_drive.map(|entry| entry.0),
            axle: file.axle.map(Into::into),
            angle_drive: file.angle_drive.map(|n| n.0),
            taken_off: if file.behind_final_drive {
                TakenOff::BehindFinalDrive
            } else {
                TakenOff::BeforeFinalDrive
            },
            tyre: file.tyre.map(Into::into),
            coupling: file.coupling.map(Into::into),
        }
    }
}

same_words!(ShaftsEntry, SharingShafts, One, Two, Four);
same_words!(AxleEntry, Axle, Front, Rear);
same_words!(
    CouplingEntry,
    Coupling,
    PartTime,
    Viscous,
    CentreDifferential
);
