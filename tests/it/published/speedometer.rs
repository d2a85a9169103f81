//! Do cables, pulses and driven gears count what others have published?

use super::row::Status::{Derived, Read};
use super::row::{assert_rows, published};
use crate::support::gear_sets::set;
use layshaft::checks::{
    BaselineReading, DrivenGearFound, InstrumentDrive, MeterConstant, PulsesPerTurn, ReadingRatio,
    ShownSpeed, SignalSource, SignalledSet, SpeedSignal, SpeedometerRule,
};
use layshaft::gearing::{GearSet, RevsPerMile, ToothPair};

const DRIVEN_GEAR: &str = "workshop rule for the driven gear, teeth × revs per mile × axle ratio";
const R39: &str = "UN R39, original series, 75/443/EEC Annex II 4.4";
const JIS: &str = "JIS D 5601, cable at 60 km/h";
const PULSES: &str = "pulses per mile of a ring on the tailshaft";

/// A set that gives its signal there through that drive, on a tyre of so many revs per mile.
fn signalled(
    set: &GearSet,
    source: SignalSource,
    drive: InstrumentDrive,
    revs_per_mile: f64,
) -> SignalledSet<'_> {
    let revs = RevsPerMile::new(revs_per_mile).unwrap();
    SignalledSet {
        set,
        rolling_circumference_mm: revs.rolling_circumference_mm(),
        signal: SpeedSignal {
            source,
            drive: Some(drive),
        },
    }
}

fn gears(drive: u16, driven: u16) -> InstrumentDrive {
    InstrumentDrive::Gears(ToothPair::new(driven, drive).unwrap())
}

#[test]
fn a_driven_gear_of_16_teeth_reads_as_low_as_the_worked_example_says() {
    let set = set(&[1.0], 3.0);
    let meter = MeterConstant::from_per_mile(1000.0).unwrap();
    let known = BaselineReading {
        meter: Some(meter),
        ..BaselineReading::default()
    };
    let fitted = signalled(&set, SignalSource::BehindTransferBox, gears(8, 16), 661.0);
    let shown = ShownSpeed::of(&fitted, &fitted, &known).unwrap();
    let row = published(-0.85, 0.005, DRIVEN_GEAR, Read);
    assert_rows([("8:16", shown.odometer_error_percent(), row)]);
    let present = ToothPair::new(16, 8).unwrap();
    let found = DrivenGearFound::in_place_of(present, &shown).unwrap();
    let exact = published(15.864, 1e-9, DRIVEN_GEAR, Read);
    assert_rows([("driven teeth", found.exact_teeth, exact)]);
    assert_eq!(found.pair.driven(), 15);
    let reads = published(5.76, 0.005, DRIVEN_GEAR, Derived);
    assert_rows([("8:15", found.shown.odometer_error_percent(), reads)]);
}

#[test]
fn a_cable_at_60_kmh_turns_and_pulses_as_the_standard_says() {
    // A wheel that turns 637 times on a kilometre turns as often in a minute at 60 km/h.
    let (set, revs_per_mile) = (set(&[1.0], 3.0), 637.0 * 1.609_344);
    let two = InstrumentDrive::Pulses(PulsesPerTurn::new(2.0).unwrap());
    let sender = signalled(&set, SignalSource::Wheel, two, revs_per_mile);
    let hertz = sender.count_per_km().unwrap() / 60.0;
    assert_rows([("two pulses", hertz, published(21.23, 0.005, JIS, Read))]);
}

#[test]
fn a_ring_on_the_tailshaft_sends_the_product_and_one_on_the_hub_leaves_out_the_axle() {
    let set = set(&[1.0], 3.55);
    let ring = InstrumentDrive::Pulses(PulsesPerTurn::new(8.0).unwrap());
    let per_mile = |source| {
        let set = signalled(&set, source, ring, 700.0);
        MeterConstant::from_per_km(set.count_per_km().unwrap())
            .unwrap()
            .per_mile()
    };
    let row = |expected| published(expected, 1e-8, PULSES, Derived);
    assert_rows([
        (
            "tailshaft",
            per_mile(SignalSource::BehindTransferBox),
            row(8.0 * 700.0 * 3.55),
        ),
        (
            "differential",
            per_mile(SignalSource::Differential),
            row(8.0 * 700.0),
        ),
        ("hub", per_mile(SignalSource::Wheel), row(8.0 * 700.0)),
    ]);
}

#[test]
fn the_most_that_may_be_shown_is_what_the_regulation_gives() {
    let most = |kmh| SpeedometerRule::R39.most_kmh(kmh).unwrap();
    let rows = [
        (50.0, 59.0),
        (90.0, 103.0),
        (100.0, 114.0),
        (120.0, 136.0),
        (130.0, 147.0),
    ];
    assert_rows(rows.map(|(kmh, expected)| (kmh, most(kmh), published(expected, 1e-9, R39, Read))));
}

#[test]
fn a_shown_100_means_at_least_the_true_speed_that_was_worked_out() {
    // What just keeps the rule there shows 100 for the least true speed.
    let least = 960.0 / 11.0;
    let shown = ShownSpeed::from_ratios(100.0 / least, ReadingRatio::TRUE);
    let row = published(87.27, 0.005, R39, Derived);
    assert_rows([("shown 100", shown.true_kmh(100.0), row)]);
    assert_eq!(SpeedometerRule::R39.is_kept(least, 100.0), Some(true));
    assert_eq!(
        SpeedometerRule::R39.is_kept(least - 0.001, 100.0),
        Some(false)
    );
}

#[test]
fn the_commercial_rule_is_five_miles_an_hour_at_fifty() {
    const CFR: &str = "49 CFR 393.82";
    let mph = 1.609_344;
    let [least, most] = SpeedometerRule::Cfr393.limits_kmh(50.0 * mph).unwrap();
    let row = |expected| published(expected, 1e-9, CFR, Read);
    assert_rows([
        ("least", least / mph, row(45.0)),
        ("most", most / mph, row(55.0)),
    ]);
}
