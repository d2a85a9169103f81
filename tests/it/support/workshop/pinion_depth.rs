//! Which pinions can be set?

use super::super::technical::known;
use super::{division, readings, shim_mm, sizes, stacked, tolerance};
use layshaft::workshop::{Depth, PinionDepthData, Setting};
use proptest::prelude::*;

/// Any pinion.
pub(super) fn any() -> impl Strategy<Value = PinionDepthData> {
    let depth = || known(0.0..=400.0, Depth::from_mm);
    let measured = (
        readings(),
        depth(),
        known(-4.9..=4.9, Setting::from_mm),
        depth(),
    );
    let gauge = (tolerance(), division(), division());
    let built = (sizes(), stacked(), shim_mm(), readings());
    (measured, gauge, built).prop_map(
        |(
            (seat, mounting, marking, bearing),
            (tolerance, resolution, most_spread),
            (sizes, most_shims, fitted, final_depth),
        )| PinionDepthData {
            seat,
            mounting,
            marking,
            bearing,
            tolerance,
            resolution,
            most_spread,
            sizes,
            most_shims,
            fitted,
            final_depth,
        },
    )
}
