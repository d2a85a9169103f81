//! The side bearings of a differential, in format 2.

use super::values::{
    AngleDeg, LengthBandEntry, RatePerMm, ReadingMm, ReadingsMm, ShimMm, ToleranceMm, entry_of,
    same_words,
};
use crate::workshop::{RateBy, SideBearingsData};
use serde::{Deserialize, Serialize};

entry_of! {
    SideBearingsV2 as "SideBearings" of SideBearingsData;
    chosen rate_by: RateByEntry = rate_by;
    known whole_travel_mm: ReadingMm = whole;
    known travel_to_mesh_mm: ReadingMm = to_mesh;
    known allowance_mm: ReadingMm = allowance;
    known ring_gear_fitted_mm: ShimMm = ring_gear_fitted;
    known other_fitted_mm: ShimMm = other_fitted;
    known backlash_mm: ReadingsMm = backlash;
    known wanted_backlash_mm: LengthBandEntry = wanted;
    known most_variation_mm: ToleranceMm = most_variation;
    known backlash_per_mm: RatePerMm = rate;
    known pressure_angle_deg: AngleDeg = pressure_angle;
    known pitch_angle_deg: AngleDeg = pitch_angle;
    known preload_off_mm: ShimMm = preload_off;
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "RateBy")]
enum RateByEntry {
    Figure,
    Angles,
}

same_words!(RateByEntry, RateBy, Figure, Angles);
