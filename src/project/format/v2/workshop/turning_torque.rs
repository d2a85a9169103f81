//! A turning torque and the tries that were kept of it, in format 2.

use super::super::super::shared::ratio::RatioEntry;
use super::super::super::shared::values::NameText;
use super::shim::SeatEntry;
use super::values::{
    Items, PullN, RadiusMm, ShimMm, TorqueBandEntry, TorqueNmm, entry_of, same_words,
};
use crate::workshop::{BearingsAre, MakersFigure, TorqueMeasuring, TorqueTry, TurningTorqueData};
use serde::{Deserialize, Serialize};

entry_of! {
    TurningTorqueV2 as "TurningTorque" of TurningTorqueData;
    chosen measured: MeasuredEntry = measuring;
    chosen figure: FigureEntry = figure;
    chosen bearings: BearingsEntry = bearings;
    chosen seat: SeatEntry = seat;
    known pull_n: PullN = pull;
    known drum_radius_mm: RadiusMm = drum_radius;
    known reading_nmm: TorqueNmm = reading;
    known wrench_mm: RadiusMm = wrench;
    known adapter_mm: RadiusMm = adapter;
    known before_nmm: TorqueNmm = before;
    known ratio: RatioEntry = ratio;
    known seals_nmm: TorqueNmm = seals;
    known band_nmm: TorqueBandEntry = band;
    known shim_mm: ShimMm = shim;
    items tries: Items<TryV2> = tries;
}

entry_of! {
    TryV2 as "Try" of TorqueTry;
    known shim_mm: ShimMm = shim;
    known torque_nmm: TorqueNmm = torque;
    known date: NameText = date;
    known note: NameText = note;
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Measured")]
enum MeasuredEntry {
    Cord,
    BeamWrench,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Figure")]
enum FigureEntry {
    WithoutSeals,
    WithSeals,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Bearings")]
enum BearingsEntry {
    New,
    UsedAgainstNew,
    UsedAgainstUsed,
}

same_words!(MeasuredEntry, TorqueMeasuring, Cord, BeamWrench);
same_words!(FigureEntry, MakersFigure, WithoutSeals, WithSeals);
same_words!(
    BearingsEntry,
    BearingsAre,
    New,
    UsedAgainstNew,
    UsedAgainstUsed
);
