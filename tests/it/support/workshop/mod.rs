//! Which workshops can exist? A strategy over all of them, each figure of a job known or not.

mod fit;
mod heat;
mod journal;
mod limits;
mod pinion_depth;
pub(crate) mod plan;
mod shim;
mod side_bearings;
mod turning_torque;

use super::projects::{any_name, number};
use super::technical::{known, quantity};
use layshaft::units::{BenchUnits, LengthUnit, TurningUnit};
use layshaft::workshop::{
    Diameter, Job, JobData, JobId, LengthBand, PlaceDiameters, Reading, Readings, Resolution, Seat,
    SeatPlace, Setting, SettingBand, ShimThickness, Sizes, StackedShims, Tolerance, Workshop,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Any workshop, on the heap as all that whole projects hold many of.
pub(crate) fn any_workshop() -> BoxedStrategy<Workshop> {
    let plan = option::of(plan::any_plan());
    (units(), vec(any_job(), 0..4), plan)
        .prop_map(|(units, jobs, plan)| {
            let mut workshop = Workshop::new(units, jobs).unwrap();
            workshop.plan = plan;
            workshop
        })
        .boxed()
}

fn units() -> impl Strategy<Value = BenchUnits> {
    let units = (
        select(LengthUnit::ALL.to_vec()),
        select(TurningUnit::ALL.to_vec()),
    );
    units.prop_map(|(length, torque)| BenchUnits { length, torque })
}

/// Any job.
pub(crate) fn any_job() -> BoxedStrategy<Job> {
    let texts = (option::of(any_name()), option::of(any_name()));
    (texts, any_data())
        .prop_map(|((name, remark), data)| Job {
            id: JobId(1),
            name,
            remark,
            data,
        })
        .boxed()
}

fn any_data() -> BoxedStrategy<JobData> {
    prop_oneof![
        shim::any().prop_map(JobData::Shim).boxed(),
        pinion_depth::any().prop_map(JobData::PinionDepth).boxed(),
        side_bearings::any().prop_map(JobData::SideBearings).boxed(),
        turning_torque::any()
            .prop_map(JobData::TurningTorque)
            .boxed(),
        limits::any().prop_map(JobData::Limits).boxed(),
        heat::any().prop_map(JobData::Heat).boxed(),
        fit::any().prop_map(JobData::Fit).boxed(),
        journal::any().prop_map(JobData::Journal).boxed(),
    ]
    .boxed()
}

fn shim_mm() -> BoxedStrategy<Option<ShimThickness>> {
    known(0.0..=50.0, ShimThickness::from_mm)
}

fn readings() -> BoxedStrategy<Option<Readings>> {
    let readings = vec(quantity(-4.9..=499.0, Reading::from_mm), 1..6);
    option::of(readings.prop_map(|readings| Readings::new(readings).unwrap())).boxed()
}

fn places() -> impl Strategy<Value = Vec<SeatPlace>> {
    let diameter = prop_oneof![
        quantity(39.9..=40.1, Diameter::from_mm),
        quantity(0.6..=999.0, Diameter::from_mm)
    ];
    let across = vec(diameter, 1..4);
    let across = across.prop_map(|across| PlaceDiameters::new(across).unwrap());
    let place = option::of(across).prop_map(|across| SeatPlace { across });
    vec(place, 0..4)
}

fn division() -> BoxedStrategy<Option<Resolution>> {
    known(0.0..=1.0, Resolution::from_mm)
}

fn setting() -> BoxedStrategy<Option<SettingBand>> {
    let band = (number(-4.9..=4.9), number(-4.9..=4.9)).prop_map(|(a, b)| {
        let [low, high] = [a.min(b), a.max(b)].map(|mm| Setting::from_mm(mm).unwrap());
        SettingBand::new(low, high).unwrap()
    });
    option::of(band).boxed()
}

fn sizes() -> BoxedStrategy<Option<Sizes>> {
    let sizes = vec(quantity(0.01..=50.0, ShimThickness::from_mm), 1..8);
    option::of(sizes.prop_map(|sizes| Sizes::new(sizes).unwrap())).boxed()
}

fn reading() -> BoxedStrategy<Option<Reading>> {
    known(-4.9..=499.0, Reading::from_mm)
}

fn tolerance() -> BoxedStrategy<Option<Tolerance>> {
    known(0.0..=4.9, Tolerance::from_mm)
}

fn stacked() -> BoxedStrategy<Option<StackedShims>> {
    let count = (1..=StackedShims::MOST).prop_map(|count| StackedShims::new(count).unwrap());
    option::of(count).boxed()
}

fn seat() -> impl Strategy<Value = Seat> {
    select(vec![Seat::Behind, Seat::Under])
}

fn length_band() -> BoxedStrategy<Option<LengthBand>> {
    let band = (number(-4.9..=499.0), number(-4.9..=499.0)).prop_map(|(a, b)| {
        let [least, most] = [a.min(b), a.max(b)].map(|mm| Reading::from_mm(mm).unwrap());
        LengthBand::new(least, most).unwrap()
    });
    option::of(band).boxed()
}
