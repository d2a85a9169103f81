//! A shim that is sought, in format 2.

use super::values::{
    DepthMm, DivisionMm, FillingMm, ReadingsMm, SettingEntry, ShimCount, ShimMm, SizesMm,
    same_words,
};
use crate::workshop::{Seat, ShimData, ShimMeasuring};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Shim", deny_unknown_fields)]
pub(super) struct ShimV2 {
    measured: MeasuredEntry,
    seat: SeatEntry,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    trial_mm: Option<ShimMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    play_mm: Option<ReadingsMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gap_mm: Option<ReadingsMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    case_depth_mm: Option<DepthMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    filling_mm: Option<FillingMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gasket_mm: Option<ShimMm>,
    /// Clearance above 0, preload below.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    setting_mm: Option<SettingEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    dial_mm: Option<DivisionMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    most_spread_mm: Option<DivisionMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sizes_mm: Option<SizesMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    most_shims: Option<ShimCount>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    fitted_mm: Option<ShimMm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    final_play_mm: Option<ReadingsMm>,
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

impl From<&ShimData> for ShimV2 {
    fn from(data: &ShimData) -> Self {
        Self {
            measured: data.measuring.into(),
            seat: data.seat.into(),
            trial_mm: data.trial.map(ShimMm),
            play_mm: data.play.clone().map(ReadingsMm),
            gap_mm: data.gap.clone().map(ReadingsMm),
            case_depth_mm: data.case_depth.map(DepthMm),
            filling_mm: data.filling.clone().map(FillingMm),
            gasket_mm: data.gasket.map(ShimMm),
            setting_mm: data.setting.map(SettingEntry),
            dial_mm: data.resolution.map(DivisionMm),
            most_spread_mm: data.most_spread.map(DivisionMm),
            sizes_mm: data.sizes.clone().map(SizesMm),
            most_shims: data.most_shims.map(ShimCount),
            fitted_mm: data.fitted.map(ShimMm),
            final_play_mm: data.final_play.clone().map(ReadingsMm),
        }
    }
}

impl From<ShimV2> for ShimData {
    fn from(file: ShimV2) -> Self {
        Self {
            measuring: file.measured.into(),
            seat: file.seat.into(),
            trial: file.trial_mm.map(|n| n.0),
            play: file.play_mm.map(|n| n.0),
            gap: file.gap_mm.map(|n| n.0),
            case_depth: file.case_depth_mm.map(|n| n.0),
            filling: file.filling_mm.map(|n| n.0),
            gasket: file.gasket_mm.map(|n| n.0),
            setting: file.setting_mm.map(|n| n.0),
            resolution: file.dial_mm.map(|n| n.0),
            most_spread: file.most_spread_mm.map(|n| n.0),
            sizes: file.sizes_mm.map(|n| n.0),
            most_shims: file.most_shims.map(|n| n.0),
            fitted: file.fitted_mm.map(|n| n.0),
            final_play: file.final_play_mm.map(|n| n.0),
        }
    }
}
