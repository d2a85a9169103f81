//! Which shafts can be turned down?

use super::super::projects::number;
use super::super::technical::known;
use super::places;
use layshaft::workshop::{
    CaseDepth, Diameter, FilletRadius, IsThere, JournalData, RunOut, SeatFinish, SeatLength,
    ShaftClass, ShaftTorque,
};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

pub(super) fn is_there() -> impl Strategy<Value = IsThere> {
    prop_oneof![4 => Just(IsThere::No), 1 => Just(IsThere::Yes), 1 => Just(IsThere::NotSaid)]
}

/// Any shaft that is turned down.
pub(super) fn any() -> impl Strategy<Value = JournalData> {
    let choices = (
        is_there(),
        is_there(),
        is_there(),
        is_there(),
        select(vec![SeatFinish::Ground, SeatFinish::Turned]),
    );
    let diameter = |mm| number(mm).prop_map(|mm| Diameter::from_mm(mm).unwrap());
    let any_diameter = move || option::of(diameter(0.6..=999.0));
    // Most are to be what the tables have, and smaller than they are.
    let from = option::of(prop_oneof![3 => diameter(40.0..=120.0), 1 => diameter(0.6..=999.0)]);
    let to = option::of(prop_oneof![3 => diameter(30.0..=41.0), 1 => diameter(0.6..=999.0)]);
    let sizes = (
        from,
        to,
        any_diameter(),
        option::of(select(ShaftClass::ALL.to_vec())),
        any_diameter(),
    );
    let asked = (
        known(0.0..=99_000.0, ShaftTorque::from_nm),
        known(0.0..=9.9, CaseDepth::from_mm),
        known(0.06..=49.0, FilletRadius::from_mm),
        known(0.0..=0.9, RunOut::from_mm),
        known(0.6..=900.0, SeatLength::from_mm),
    );
    (choices, sizes, asked, places()).prop_map(
        |(
            (splines, needle_track, cone, seal, finish),
            (from, to, bore, class, shoulder),
            (torque, case_depth, fillet, run_out, length),
            places,
        )| JournalData {
            from,
            to,
            bore,
            class,
            torque,
            case_depth,
            length,
            fillet,
            shoulder,
            splines,
            needle_track,
            cone,
            seal,
            finish,
            run_out,
            places,
        },
    )
}
