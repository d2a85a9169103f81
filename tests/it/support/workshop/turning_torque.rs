//! Which turning torques can there be?

use super::super::projects::{any_name, any_ratio, number};
use super::super::technical::known;
use super::{seat, shim_mm};
use layshaft::workshop::{
    BearingsAre, MakersFigure, PullForce, Radius, TorqueBand, TorqueMeasuring, TorqueTry,
    TurningTorque, TurningTorqueData,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

fn torque() -> BoxedStrategy<Option<TurningTorque>> {
    known(0.0..=900_000.0, TurningTorque::from_nmm)
}

fn radius() -> BoxedStrategy<Option<Radius>> {
    known(1.1..=4999.0, Radius::from_mm)
}

fn band() -> BoxedStrategy<Option<TorqueBand>> {
    let ends = (number(0.0..=900_000.0), number(0.0..=900_000.0));
    let band = ends.prop_map(|(a, b)| {
        let [low, high] = [a.min(b), a.max(b)].map(|nmm| TurningTorque::from_nmm(nmm).unwrap());
        TorqueBand::new(low, high).unwrap()
    });
    option::of(band).boxed()
}

fn any_try() -> impl Strategy<Value = TorqueTry> {
    let texts = (option::of(any_name()), option::of(any_name()));
    (shim_mm(), torque(), texts).prop_map(|(shim, torque, (date, note))| TorqueTry {
        shim,
        torque,
        date,
        note,
    })
}

/// Any turning torque.
pub(super) fn any() -> impl Strategy<Value = TurningTorqueData> {
    let choices = (
        select(vec![TorqueMeasuring::Cord, TorqueMeasuring::BeamWrench]),
        select(vec![MakersFigure::WithoutSeals, MakersFigure::WithSeals]),
        select(vec![
            BearingsAre::New,
            BearingsAre::UsedAgainstNew,
            BearingsAre::UsedAgainstUsed,
        ]),
        seat(),
    );
    let cord = (known(0.0..=9999.0, PullForce::from_n), radius());
    let wrench = (torque(), radius(), radius());
    let ratio = option::of(any_ratio());
    let taken_off = (torque(), ratio, torque());
    let shims = (band(), shim_mm(), vec(any_try(), 0..4));
    (choices, cord, wrench, taken_off, shims).prop_map(
        |(
            (measuring, figure, bearings, seat),
            (pull, drum_radius),
            (reading, wrench, adapter),
            (before, ratio, seals),
            (band, shim, tries),
        )| TurningTorqueData {
            measuring,
            pull,
            drum_radius,
            reading,
            wrench,
            adapter,
            before,
            ratio,
            figure,
            seals,
            bearings,
            band,
            seat,
            shim,
            tries,
        },
    )
}
