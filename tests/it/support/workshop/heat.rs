//! Which end plays can heat change?

use super::super::technical::known;
use super::{setting, tolerance};
use layshaft::workshop::{Arrangement, Celsius, Depth, Expansion, HeatData, MaterialName};
use proptest::prelude::*;
use proptest::sample::select;

pub(super) fn material() -> impl Strategy<Value = MaterialName> {
    select(vec![
        MaterialName::Steel,
        MaterialName::BearingSteel,
        MaterialName::Aluminium,
        MaterialName::Other,
    ])
}

/// Any end play that heat changes.
pub(super) fn any() -> impl Strategy<Value = HeatData> {
    let expansion = || known(0.0..=100.0, Expansion::from_per_mk);
    let temperature = || known(-60.0..=300.0, Celsius::from_c);
    let arrangement = select(vec![Arrangement::FaceToFace, Arrangement::BackToBack]);
    let materials = (material(), expansion(), material(), expansion());
    let warm = (temperature(), temperature(), temperature());
    let lengths = (known(0.0..=1999.0, Depth::from_mm), setting(), tolerance());
    (arrangement, materials, warm, lengths).prop_map(
        |(
            arrangement,
            (case, case_expansion, shaft, shaft_expansion),
            (bench_temperature, case_temperature, shaft_temperature),
            (seats, bench, most),
        )| HeatData {
            arrangement,
            case,
            case_expansion,
            shaft,
            shaft_expansion,
            seats,
            bench_temperature,
            case_temperature,
            shaft_temperature,
            bench,
            most,
        },
    )
}
