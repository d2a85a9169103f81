//! Does what a speedometer shows follow from what turns it, whatever set and tyre?

use crate::support::close::is_close;
use crate::support::projects::{any_gear_set, number, tooth_pair};
use layshaft::checks::{
    BaselineReading, CorrectionAim, DrivenGearFound, InstrumentDrive, MeterConstant, PulsesPerTurn,
    ReadingRatio, ShownSpeed, SignalSource, SignalledSet, SpeedSignal, SpeedVerdict,
    SpeedometerRule,
};
use layshaft::gearing::{GearSet, RoadSpeed, ToothPair};
use proptest::prelude::*;

fn agree(found: f64, expected: f64) -> bool {
    is_close(found, expected, expected.abs() * 1e-12)
}

fn any_source() -> impl Strategy<Value = SignalSource> {
    prop::sample::select(&SignalSource::ALL[..5])
}

fn any_drive() -> impl Strategy<Value = InstrumentDrive> {
    let pulses = number(0.001..=1000.0).prop_map(|n| PulsesPerTurn::new(n).unwrap());
    prop_oneof![
        tooth_pair().prop_map(InstrumentDrive::Gears),
        pulses.prop_map(InstrumentDrive::Pulses),
    ]
}

fn any_reading() -> impl Strategy<Value = BaselineReading> {
    let ratio = || prop::option::of(number(0.5..=2.0).prop_map(|n| ReadingRatio::new(n).unwrap()));
    (ratio(), ratio()).prop_map(|(signal_ratio, needle_ratio)| BaselineReading {
        signal_ratio,
        needle_ratio,
        meter: None,
    })
}

fn on(set: &GearSet, signal: SpeedSignal, circumference_mm: f64) -> SignalledSet<'_> {
    SignalledSet {
        set,
        rolling_circumference_mm: circumference_mm,
        signal,
    }
}

proptest! {
    #[test]
    fn the_baseline_reads_as_it_is_known_to(
        set in any_gear_set(), source in any_source(), drive in prop::option::of(any_drive()),
        known in any_reading(), mm in number(900.0..=13_000.0),
    ) {
        let set = on(&set, SpeedSignal { source, drive }, mm);
        let shown = ShownSpeed::of(&set, &set, &known).unwrap();
        let [signal, needle] = [known.signal_ratio, known.needle_ratio]
            .map(|ratio| ratio.map_or(1.0, ReadingRatio::ratio));
        prop_assert!(agree(shown.odometer_ratio(), signal));
        prop_assert!(agree(shown.shown_kmh(120.0), 120.0 * signal * needle));
        prop_assert!(agree(shown.true_kmh(shown.shown_kmh(80.0)), 80.0));
    }

    #[test]
    fn two_sets_compared_either_way_undo_each_other(
        sets in [any_gear_set(), any_gear_set()], sources in [any_source(), any_source()],
        pulses in [number(0.001..=1000.0), number(0.001..=1000.0)],
        mm in [number(900.0..=13_000.0), number(900.0..=13_000.0)],
    ) {
        let drive = |n| Some(InstrumentDrive::Pulses(PulsesPerTurn::new(n).unwrap()));
        let signalled = |at: usize| {
            let signal = SpeedSignal { source: sources[at], drive: drive(pulses[at]) };
            on(&sets[at], signal, mm[at])
        };
        let known = BaselineReading::default();
        let [a, b] = [signalled(0), signalled(1)];
        let there = ShownSpeed::of(&a, &b, &known).unwrap().odometer_ratio();
        let back = ShownSpeed::of(&b, &a, &known).unwrap().odometer_ratio();
        prop_assert!(agree(there * back, 1.0), "{there}, {back}");
    }

    #[test]
    fn at_its_meter_constant_an_odometer_counts_right(
        set in any_gear_set(), source in any_source(), drive in any_drive(),
        mm in number(900.0..=13_000.0),
    ) {
        let set = on(&set, SpeedSignal { source, drive: Some(drive) }, mm);
        let meter = MeterConstant::from_per_km(set.count_per_km().unwrap());
        prop_assume!(meter.is_ok());
        let known = BaselineReading { meter: meter.ok(), ..BaselineReading::default() };
        let shown = ShownSpeed::of(&set, &set, &known).unwrap();
        prop_assert!(agree(shown.odometer_ratio(), 1.0));
    }

    #[test]
    fn a_signal_at_the_wheels_knows_nothing_of_the_gearing(
        sets in [any_gear_set(), any_gear_set()], drive in prop::option::of(any_drive()),
        mm in [number(900.0..=13_000.0), number(900.0..=13_000.0)],
    ) {
        let signal = SpeedSignal { source: SignalSource::WheelSensors, drive };
        let [a, b] = [on(&sets[0], signal, mm[0]), on(&sets[1], signal, mm[1])];
        let shown = ShownSpeed::of(&a, &b, &BaselineReading::default()).unwrap();
        prop_assert!(agree(shown.odometer_ratio(), mm[1] / mm[0]));
    }

    #[test]
    fn the_verdict_on_r39_is_that_of_every_single_speed(
        ratio in number(0.9..=1.3), top_kmh in number(20.0..=300.0), share in number(0.0..=1.0),
    ) {
        let shown = ShownSpeed::from_ratios(ratio, ReadingRatio::TRUE);
        let rule = SpeedometerRule::R39;
        let kept = |kmh: f64| rule.is_kept(kmh, shown.shown_kmh(kmh)).unwrap();
        let inside = share * top_kmh;
        match rule.verdict(&shown, RoadSpeed::from_kmh(top_kmh).ok()) {
            SpeedVerdict::Keeps { up_to_kmh } => {
                prop_assert!(agree(up_to_kmh, top_kmh) && kept(inside));
            }
            SpeedVerdict::ReadsLow { at_kmh, by_kmh } => {
                prop_assert!(!kept(at_kmh) && agree(shown.shown_kmh(at_kmh) + by_kmh, at_kmh));
                prop_assert!(inside <= 0.0 || !kept(inside));
            }
            SpeedVerdict::ReadsHigh { from_kmh, is_tested } => {
                prop_assert!(from_kmh <= top_kmh);
                prop_assert!(kept(from_kmh * (1.0 - 1e-6)) && !kept(from_kmh * (1.0 + 1e-6)));
                prop_assert_eq!(kept(inside), inside <= from_kmh);
                let speeds = rule.test_speeds_kmh(RoadSpeed::from_kmh(top_kmh).ok());
                prop_assert_eq!(is_tested, !speeds.into_iter().all(kept));
            }
        }
    }

    #[test]
    fn what_shows_the_true_speed_keeps_every_rule(top_kmh in number(0.001..=1000.0)) {
        let shown = ShownSpeed::from_ratios(1.0, ReadingRatio::TRUE);
        for rule in [SpeedometerRule::R39, SpeedometerRule::Cfr393] {
            let verdict = rule.verdict(&shown, RoadSpeed::from_kmh(top_kmh).ok());
            let is_kept = matches!(verdict, SpeedVerdict::Keeps { .. });
            prop_assert!(is_kept, "{:?}", verdict);
        }
    }

    #[test]
    fn the_driven_gear_that_is_found_is_the_last_that_does_not_read_low(
        present in tooth_pair(), ratio in number(0.2..=4.0), needle in number(0.5..=2.0),
    ) {
        let needle = ReadingRatio::new(needle).unwrap();
        let shown = ShownSpeed::from_ratios(ratio, needle);
        let with = |teeth: u16| {
            let changed = f64::from(present.driven()) / f64::from(teeth);
            ShownSpeed::from_ratios(ratio * changed, needle).shown_ratio()
        };
        let is_low = |teeth: u16| with(teeth) < 1.0 - 1e-9;
        match DrivenGearFound::in_place_of(present, &shown) {
            None => prop_assert!(is_low(1)),
            Some(found) => {
                let teeth = found.pair.driven();
                prop_assert_eq!(found.pair.driving(), present.driving());
                prop_assert!(!is_low(teeth));
                prop_assert!(teeth == 999 || is_low(teeth + 1));
                prop_assert!(agree(found.shown.shown_ratio(), with(teeth)));
            }
        }
    }

    #[test]
    fn a_speedometer_that_reads_right_keeps_its_driven_gear(present in tooth_pair()) {
        let shown = ShownSpeed::from_ratios(1.0, ReadingRatio::TRUE);
        let found = DrivenGearFound::in_place_of(present, &shown);
        prop_assert_eq!(found.map(|found| found.pair), Some::<ToothPair>(present));
    }

    #[test]
    fn a_corrector_reaches_what_it_aims_at(
        ratios in [number(0.2..=4.0), number(0.2..=4.0)], needle in number(0.5..=2.0),
    ) {
        let [shown, baseline] = ratios.map(|ratio| {
            ShownSpeed::from_ratios(ratio, ReadingRatio::new(needle).unwrap())
        });
        let through = |aim: CorrectionAim| aim.corrected(&shown, &baseline);
        prop_assert!(agree(through(CorrectionAim::OdometerRight).odometer_ratio(), 1.0));
        prop_assert!(agree(through(CorrectionAim::PointerRight).shown_kmh(90.0), 90.0));
        let as_baseline = through(CorrectionAim::AsBaseline);
        prop_assert!(agree(as_baseline.shown_ratio(), baseline.shown_ratio()));
        prop_assert!(agree(as_baseline.odometer_ratio(), baseline.odometer_ratio()));
    }
}
