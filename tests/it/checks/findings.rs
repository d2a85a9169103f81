//! Is every finding of the checks made where a figure passes its limit, and none where it just keeps it?

use crate::support::gear_sets::ratio;
use crate::support::variants::{assert_all_met, variants};
use layshaft::checks::{
    Axle, Borne, CheckFinding, CheckFindingKind, Checked, Coupling, KnownTopSpeed, LoadedAxle,
    LowestGear, Part, ReadingRatio, RuledSpeedometer, SecondAxle, ShownSpeed, SpeedometerRule,
    TakenOff, TopSpeedSource, TwoAxles, TyresOnAxle,
};
use layshaft::gearing::{LoadIndex, ServiceDescription};
use layshaft::motion::Mass;

variants!(
    KINDS,
    kind_name,
    CheckFindingKind {
        TyreTooSlow,
        TyreOverloaded,
        TorqueAboveRating,
        AxleShaftAboveLimit,
        PropellerShaftTooFast,
        AxlesDiffer,
        NoSpeedSignal,
        SpeedometerBreaksRule,
    }
);

/// The speeds, loads and torques that are asked for, as shares of what there is.
struct Asked {
    top_kmh: f64,
    source: TopSpeedSource,
    axle_kg: f64,
    share: f64,
    rear_mm: f64,
    shown_ratio: f64,
}

/// Everything just within its limit.
const WITHIN: Asked = Asked {
    top_kmh: 190.0,
    source: TopSpeedSource::Registration,
    axle_kg: 1230.0,
    share: 1.0,
    rear_mm: 2019.0,
    shown_ratio: 1.0,
};

fn borne(part: Part, limit: f64, share: f64) -> Borne {
    let load = limit * share;
    Borne { part, load, limit }
}

impl Asked {
    fn checked(&self) -> Checked {
        let index = LoadIndex::new(91).unwrap();
        let service = ServiceDescription::new(index, None, "T".parse().ok()).ok();
        let lowest = LowestGear {
            label: "1".to_owned(),
            positions: vec!["Low".to_owned()],
            overall_ratio: 40.0,
        };
        let second = SecondAxle {
            axle: Axle::Rear,
            taken_off: TakenOff::BeforeFinalDrive,
            angle_drive: None,
            final_drive: ratio(4.0),
            rolling_circumference_mm: self.rear_mm,
        };
        let axles = TwoAxles::of(4.0, 2000.0, &second);
        Checked {
            speed_symbol: "T".parse().ok(),
            top: Some(KnownTopSpeed {
                kmh: self.top_kmh,
                source: self.source,
            }),
            axles: vec![LoadedAxle {
                axle: Axle::Front,
                load: Mass::from_kg(self.axle_kg).unwrap(),
                tyres: TyresOnAxle::Two,
                service,
            }],
            input_torque: Some(borne(Part::GearboxInput, 300.0, self.share)),
            axle_shaft: Some((lowest, borne(Part::AxleShaft, 2000.0, self.share))),
            propeller_shaft: Some(borne(Part::PropellerShaft, 5000.0, self.share)),
            two_axles: Some((axles, Some(Coupling::Viscous))),
            speedometer: Some(RuledSpeedometer {
                rule: SpeedometerRule::R39,
                shown: ShownSpeed::from_ratios(self.shown_ratio, ReadingRatio::TRUE),
                top_speed: None,
            }),
            ..Checked::default()
        }
    }

    fn found(&self) -> Vec<CheckFinding> {
        self.checked().findings()
    }

    #[track_caller]
    fn assert_only(&self, code: &str, sentence: &str) {
        let found = self.found();
        let found: Vec<_> = found
            .iter()
            .map(|f| (f.kind.code(), f.to_string()))
            .collect();
        assert_eq!(found, [(code, sentence.to_owned())]);
    }
}

#[test]
fn what_just_keeps_its_limits_and_what_is_not_known_is_not_found() {
    assert_eq!(WITHIN.found(), []);
    assert_eq!(Checked::default().findings(), []);
}

#[test]
fn a_tyre_that_is_too_slow_for_the_papers_is_found_and_for_the_redline_it_is_not() {
    let fast = |source| Asked {
        top_kmh: 195.0,
        source,
        ..WITHIN
    };
    fast(TopSpeedSource::Registration).assert_only(
        "tyre_too_slow",
        "speed symbol T stands for 190 km/h, less than the top speed of 195 km/h in the papers",
    );
    fast(TopSpeedSource::Power).assert_only(
        "tyre_too_slow",
        "speed symbol T stands for 190 km/h, less than the top speed of 195 km/h by power",
    );
    assert_eq!(fast(TopSpeedSource::Redline).found(), []);
}

#[test]
fn an_axle_that_is_too_heavy_for_its_tyres_is_named() {
    let heavy = Asked {
        axle_kg: 1250.0,
        ..WITHIN
    };
    heavy.assert_only(
        "tyre_overloaded",
        "front axle: two tyres carry 1230 kg, less than the axle load of 1250 kg",
    );
}

#[test]
fn axles_that_differ_by_more_than_one_per_cent_are_found() {
    let uneven = Asked {
        rear_mm: 2024.0,
        ..WITHIN
    };
    uneven.assert_only(
        "axles_differ",
        "the rear tyres want to roll 1.2 % farther than the front ones: the coupling slips all the time, \
         heats and wears even straight ahead; vehicle makers commonly want tyres within about 1 % of each \
         other",
    );
}

#[test]
fn a_speedometer_that_reads_low_or_too_high_is_found() {
    let low = Asked {
        shown_ratio: 0.95,
        ..WITHIN
    };
    low.assert_only(
        "speedometer_breaks_rule",
        "the speedometer reads low by 6 km/h at 120 km/h and does not keep UN R39 in its original series; \
         the view Speedometer says what puts it right, and what the law of the place says decides",
    );
    let high = Asked {
        shown_ratio: 1.15,
        ..WITHIN
    };
    high.assert_only(
        "speedometer_breaks_rule",
        "the speedometer reads too high above 80 km/h and does not keep UN R39 in its original series; \
         the view Speedometer says what puts it right, and what the law of the place says decides",
    );
}

#[test]
fn every_part_of_the_driveline_beyond_its_limit_is_found_and_called_advice() {
    let strong = Asked {
        share: 1.1,
        ..WITHIN
    };
    let found = strong.found();
    let codes: Vec<&str> = found.iter().map(|f| f.kind.code()).collect();
    let expected = [
        "torque_above_rating",
        "axle_shaft_above_limit",
        "propeller_shaft_too_fast",
    ];
    assert_eq!(codes, expected);
    let sentences: Vec<String> = found.iter().map(ToString::to_string).collect();
    for sentence in &sentences {
        assert!(sentence.contains("this is advice"), "{sentence}");
    }
    let starts = [
        "the gearbox gets at its input 330 N·m of 300 N·m (110.0 %)",
        "in gear 1 (Low) each axle shaft gets 2200 N·m of 2000 N·m",
        "at the top speed of 190 km/h in the papers the propeller shaft turns 5500 rpm of 5000 rpm",
    ];
    for (sentence, start) in sentences.iter().zip(starts) {
        assert!(sentence.starts_with(start), "{sentence}");
    }
    assert_eq!(found[1].gear.as_deref(), Some("1"));
}

#[test]
fn every_kind_has_been_provoked() {
    let all_wrong = Asked {
        top_kmh: 200.0,
        source: TopSpeedSource::Power,
        axle_kg: 1300.0,
        share: 1.2,
        rear_mm: 2100.0,
        shown_ratio: 0.9,
    };
    let without_signal = Checked {
        is_without_signal: true,
        ..Checked::default()
    };
    let mut found = all_wrong.found();
    found.extend(without_signal.findings());
    assert_all_met(KINDS, found.iter().map(|f| kind_name(&f.kind)));
}

#[test]
fn axles_that_no_coupling_lives_with_must_not_be_coupled() {
    let uneven = Asked {
        rear_mm: 2330.0,
        ..WITHIN
    };
    let found = uneven.found();
    let told = found[0].to_string();
    assert!(told.contains("16.5 % farther"), "{told}");
    assert!(told.contains("do not couple them"), "{told}");
}
