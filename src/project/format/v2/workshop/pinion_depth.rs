//! The depth of a pinion, in format 2.

use super::values::{
    DepthMm, DivisionMm, ReadingsMm, SettingMm, ShimCount, ShimMm, SizesMm, ToleranceMm, entry_of,
};
use crate::workshop::PinionDepthData;
use serde::{Deserialize, Serialize};

// A marking above 0 is added to the mounting distance.
entry_of! {
    PinionDepthV2 as "PinionDepth" of PinionDepthData;
    known seat_mm: ReadingsMm = seat;
    known mounting_mm: DepthMm = mounting;
    known marking_mm: SettingMm = marking;
    known bearing_mm: DepthMm = bearing;
    known tolerance_mm: ToleranceMm = tolerance;
    known dial_mm: DivisionMm = resolution;
    known most_spread_mm: DivisionMm = most_spread;
    known sizes_mm: SizesMm = sizes;
    known most_shims: ShimCount = most_shims;
    known fitted_mm: ShimMm = fitted;
    known final_depth_mm: ReadingsMm = final_depth;
}
