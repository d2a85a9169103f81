//! Which shims can be sought?

use super::super::technical::{known, quantity};
use super::{division, readings, seat, setting, shim_mm, sizes, stacked};
use layshaft::workshop::{Depth, Filling, ShimData, ShimMeasuring};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Any shim that is sought.
pub(super) fn any() -> impl Strategy<Value = ShimData> {
    let measuring = select(vec![
        ShimMeasuring::TrialShim,
        ShimMeasuring::FeelerGap,
        ShimMeasuring::Depths,
    ]);
    let filling = vec(quantity(0.0..=1999.0, Depth::from_mm), 1..4);
    let filling = filling.prop_map(|heights| Filling::new(heights).unwrap());
    let depths = (
        known(0.0..=1999.0, Depth::from_mm),
        option::of(filling),
        shim_mm(),
    );
    let measured = (shim_mm(), readings(), readings(), depths);
    let wanted = (setting(), division(), division());
    let built = (sizes(), stacked(), shim_mm(), readings());
    (measuring, seat(), measured, wanted, built).prop_map(
        |(
            measuring,
            seat,
            (trial, play, gap, (case_depth, filling, gasket)),
            (setting, resolution, most_spread),
            (sizes, most_shims, fitted, final_play),
        )| ShimData {
            measuring,
            seat,
            trial,
            play,
            gap,
            case_depth,
            filling,
            gasket,
            setting,
            resolution,
            most_spread,
            sizes,
            most_shims,
            fitted,
            final_play,
        },
    )
}
