//! An end play that heat changes, in format 2.

use super::values::{
    DepthMm, ExpansionPerMk, SettingEntry, TemperatureC, ToleranceMm, entry_of, same_words,
};
use crate::workshop::{Arrangement, HeatData, MaterialName};
use serde::{Deserialize, Serialize};

// An expansion is millionths per K; a setting is clearance above 0, preload below.
entry_of! {
    HeatV2 as "Heat" of HeatData;
    chosen arrangement: ArrangementEntry = arrangement;
    chosen case: MaterialEntry = case;
    chosen shaft: MaterialEntry = shaft;
    known case_per_mk: ExpansionPerMk = case_expansion;
    known shaft_per_mk: ExpansionPerMk = shaft_expansion;
    known seats_mm: DepthMm = seats;
    known bench_c: TemperatureC = bench_temperature;
    known case_c: TemperatureC = case_temperature;
    known shaft_c: TemperatureC = shaft_temperature;
    known setting_mm: SettingEntry = bench;
    known most_mm: ToleranceMm = most;
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Arrangement")]
enum ArrangementEntry {
    FaceToFace,
    BackToBack,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Material")]
pub(super) enum MaterialEntry {
    Steel,
    BearingSteel,
    Aluminium,
    Other,
}

same_words!(ArrangementEntry, Arrangement, FaceToFace, BackToBack);
same_words!(
    MaterialEntry,
    MaterialName,
    Steel,
    BearingSteel,
    Aluminium,
    Other
);
