//! Which fits can there be?

use super::super::projects::number;
use super::super::technical::known;
use super::heat::material;
use super::journal::is_there;
use super::places;
use layshaft::workshop::{
    BoreClass, Deviation, Diameter, Expansion, FitData, FitPart, RingWidth, RoomTemperature,
    SeatFinish, SeatSide, ShaftClass, SlipClearance, TemperatureRise,
};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Any fit.
pub(super) fn any() -> impl Strategy<Value = FitData> {
    let choices = (
        select(vec![SeatSide::Shaft, SeatSide::Bore]),
        select(vec![FitPart::NormalBearing, FitPart::Typed]),
        select(vec![SeatFinish::Ground, SeatFinish::Turned]),
        material(),
        is_there(),
    );
    // Most diameters lie in the tables.
    let diameter = prop_oneof![3 => number(18.1..=120.0), 1 => number(0.6..=999.0)];
    let diameter = option::of(diameter.prop_map(|mm| Diameter::from_mm(mm).unwrap()));
    let limit = || known(-1000.0..=1000.0, Deviation::from_um);
    let seat = (
        diameter,
        option::of(select(ShaftClass::ALL.to_vec())),
        option::of(select(BoreClass::ALL.to_vec())),
        limit(),
        limit(),
    );
    let rise = || known(-100.0..=300.0, TemperatureRise::from_k);
    let ring = (
        rise(),
        known(1.1..=499.0, RingWidth::from_mm),
        known(0.6..=999.0, Diameter::from_mm),
    );
    let warm = (
        known(0.0..=100.0, Expansion::from_per_mk),
        rise(),
        known(0.0..=1000.0, SlipClearance::from_um),
        known(-30.0..=60.0, RoomTemperature::from_c),
    );
    (choices, seat, ring, warm, places()).prop_map(
        |(
            (side, part, finish, case, held),
            (diameter, shaft_class, bore_class, part_upper, part_lower),
            (bearing_warmer, width, ring_outside),
            (case_expansion, case_warmer, slip, room),
            places,
        )| FitData {
            side,
            diameter,
            shaft_class,
            bore_class,
            part,
            part_upper,
            part_lower,
            finish,
            bearing_warmer,
            width,
            ring_outside,
            case,
            case_expansion,
            case_warmer,
            held,
            slip,
            room,
            places,
        },
    )
}
