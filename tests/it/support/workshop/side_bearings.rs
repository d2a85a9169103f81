//! Which side bearings can there be?

use super::super::technical::known;
use super::{length_band, reading, readings, shim_mm, tolerance};
use layshaft::workshop::{Angle, BacklashMove, RateBy, SideBearingsData};
use proptest::prelude::*;
use proptest::sample::select;

/// Any side bearings.
pub(super) fn any() -> impl Strategy<Value = SideBearingsData> {
    let travel = (reading(), reading(), reading());
    let fitted = (shim_mm(), shim_mm(), shim_mm());
    let backlash = (readings(), length_band(), tolerance());
    let angle = || known(1.0..=89.0, Angle::from_deg);
    let rate = (
        select(vec![RateBy::Figure, RateBy::Angles]),
        known(0.1..=2.0, BacklashMove::from_per_mm),
        angle(),
        angle(),
    );
    (travel, fitted, backlash, rate).prop_map(
        |(
            (whole, to_mesh, allowance),
            (ring_gear_fitted, other_fitted, preload_off),
            (backlash, wanted, most_variation),
            (rate_by, rate, pressure_angle, pitch_angle),
        )| SideBearingsData {
            whole,
            to_mesh,
            allowance,
            ring_gear_fitted,
            other_fitted,
            backlash,
            wanted,
            most_variation,
            rate_by,
            rate,
            pressure_angle,
            pitch_angle,
            preload_off,
        },
    )
}
