//! Which workshops can exist? A strategy over all of them, each figure of a job known or not.

use super::projects::{any_name, number};
use super::technical::{known, quantity};
use layshaft::units::{BenchUnits, LengthUnit, TurningUnit};
use layshaft::workshop::{
    Depth, Filling, Job, JobData, JobId, Reading, Readings, Resolution, Seat, Setting, SettingBand,
    ShimData, ShimMeasuring, ShimThickness, Sizes, StackedShims, Workshop,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Any workshop.
pub(crate) fn any_workshop() -> impl Strategy<Value = Workshop> {
    (units(), vec(any_job(), 0..4)).prop_map(|(units, jobs)| Workshop::new(units, jobs).unwrap())
}

fn units() -> impl Strategy<Value = BenchUnits> {
    let units = (
        select(LengthUnit::ALL.to_vec()),
        select(TurningUnit::ALL.to_vec()),
    );
    units.prop_map(|(length, torque)| BenchUnits { length, torque })
}

/// Any job.
pub(crate) fn any_job() -> impl Strategy<Value = Job> {
    let texts = (option::of(any_name()), option::of(any_name()));
    (texts, any_data()).prop_map(|((name, remark), data)| Job {
        id: JobId(1),
        name,
        remark,
        data,
    })
}

fn any_data() -> impl Strategy<Value = JobData> {
    shim().prop_map(JobData::Shim)
}

fn shim_mm() -> BoxedStrategy<Option<ShimThickness>> {
    known(0.0..=50.0, ShimThickness::from_mm)
}

fn readings() -> BoxedStrategy<Option<Readings>> {
    let readings = vec(quantity(-5.0..=50.0, Reading::from_mm), 1..6);
    option::of(readings.prop_map(|readings| Readings::new(readings).unwrap())).boxed()
}

fn division() -> BoxedStrategy<Option<Resolution>> {
    known(0.0..=1.0, Resolution::from_mm)
}

fn setting() -> BoxedStrategy<Option<SettingBand>> {
    let band = (number(-5.0..=5.0), number(-5.0..=5.0)).prop_map(|(a, b)| {
        let [low, high] = [a.min(b), a.max(b)].map(|mm| Setting::from_mm(mm).unwrap());
        SettingBand::new(low, high).unwrap()
    });
    option::of(band).boxed()
}

fn sizes() -> BoxedStrategy<Option<Sizes>> {
    let sizes = vec(quantity(0.01..=50.0, ShimThickness::from_mm), 1..8);
    option::of(sizes.prop_map(|sizes| Sizes::new(sizes).unwrap())).boxed()
}

fn shim() -> impl Strategy<Value = ShimData> {
    let measuring = select(vec![
        ShimMeasuring::TrialShim,
        ShimMeasuring::FeelerGap,
        ShimMeasuring::Depths,
    ]);
    let filling = vec(quantity(0.0..=2000.0, Depth::from_mm), 1..4);
    let filling = filling.prop_map(|heights| Filling::new(heights).unwrap());
    let depths = (
        known(0.0..=2000.0, Depth::from_mm),
        option::of(filling),
        shim_mm(),
    );
    let measured = (shim_mm(), readings(), readings(), depths);
    let wanted = (setting(), division(), division());
    let count = (1..=StackedShims::MOST).prop_map(|count| StackedShims::new(count).unwrap());
    let built = (sizes(), option::of(count), shim_mm(), readings());
    let seat = select(vec![Seat::Behind, Seat::Under]);
    (measuring, seat, measured, wanted, built).prop_map(
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
