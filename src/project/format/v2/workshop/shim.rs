//! A shim that is sought, in format 2.

use super::values::{
    DepthMm, DivisionMm, FillingMm, ReadingsMm, SettingEntry, ShimCount, ShimMm, SizesMm, entry_of,
    same_words,
};
use crate::workshop::{Seat, ShimData, ShimMeasuring};
use serde::{Deserialize, Serialize};

// A setting is clearance above 0, preload below.
entry_of! {
    ShimV2 as "Shim" of ShimData;
    chosen measured: MeasuredEntry = measuring;
    chosen seat: SeatEntry = seat;
    known trial_mm: ShimMm = trial;
    known play_mm: ReadingsMm = play;
    known gap_mm: ReadingsMm = gap;
    known case_depth_mm: DepthMm = case_depth;
    known filling_mm: FillingMm = filling;
    known gasket_mm: ShimMm = gasket;
    known setting_mm: SettingEntry = setting;
    known dial_mm: DivisionMm = resolution;
    known most_spread_mm: DivisionMm = most_spread;
    known sizes_mm: SizesMm = sizes;
    known most_shims: ShimCount = most_shims;
    known fitted_mm: ShimMm = fitted;
    known final_play_mm: ReadingsMm = final_play;
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Measured")]
enum MeasuredEntry {
    TrialShim,
    FeelerGap,
    Depths,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Seat")]
pub(super) enum SeatEntry {
    Behind,
    Under,
}

same_words!(MeasuredEntry, ShimMeasuring, TrialShim, FeelerGap, Depths);
same_words!(SeatEntry, Seat, Behind, Under);
