//! Is every strange set found strange, in words that name its gears and figures, and no other?

use crate::support::gear_sets::{gear, ratio, redline, results, rpm, set, spec, tyre};
use crate::support::variants::{assert_all_met, variants};
use crate::support::window::camper_van;
use layshaft::analysis::Analysis;
use layshaft::gearing::{
    EngineLimits, FindingKind, GearRole, GearSet, GearSetSpec, Label, Name, RoadSpeed, SetResults,
    Sprockets, Tyre, engine_findings, mark_findings, parse_tyre,
};
use proptest::prelude::*;
use std::sync::Arc;

variants!(
    KINDS,
    kind_name,
    FindingKind {
        NotFalling,
        NearlyTheSame,
        WiderThanBefore,
        OverdriveTop,
        WideFirstStep,
        ShiftAboveRedline,
        ShiftBelowIdle,
        DropTooLow,
        FrontSprocketLarger,
        IdleNotBelowRedline,
        UsefulNotBelowRedline,
        RedlineTooLow,
        LetterLacking,
        MarkedSpeedTooSlow,
        Tyre,
    }
);

/// Something strange, and what the sentence about it must say.
struct Strange {
    kind: &'static str,
    code: &'static str,
    /// The gear that is told with the finding.
    gear: Option<&'static str>,
    says: &'static [&'static str],
    ratios: &'static [f64],
    limits: EngineLimits,
    tyre: &'static str,
}

/// An engine that the sets below fit.
fn plain_limits() -> EngineLimits {
    EngineLimits {
        idle: Some(rpm(800.0)),
        lowest_useful: Some(rpm(1500.0)),
        redline: rpm(7000.0),
    }
}

/// A row about a set on a final drive of 2, changed up at 6000 rpm, that is plain so far.
fn row(kind: &'static str, code: &'static str, says: &'static [&'static str]) -> Strange {
    Strange {
        kind,
        code,
        gear: None,
        says,
        ratios: &[3.6, 2.4, 1.6],
        limits: plain_limits(),
        tyre: "195/65 R 15",
    }
}

impl Strange {
    /// The same with gears of those ratios, `gear` being told with the finding.
    fn of(self, gear: &'static str, ratios: &'static [f64]) -> Self {
        let gear = Some(gear);
        Self {
            gear,
            ratios,
            ..self
        }
    }

    /// The same with another engine.
    fn on(self, limits: EngineLimits) -> Self {
        Self { limits, ..self }
    }

    /// The same on another tyre.
    fn rolling_on(self, tyre: &'static str) -> Self {
        Self { tyre, ..self }
    }
}

fn strange_steps() -> Vec<Strange> {
    let says = &["gear 3", "gear 2", "5.000", "4.800"];
    let not_falling = row("NotFalling", "not_falling", says);
    let says = &["gears 2 and 3", "1.7 %"];
    let nearly_the_same = row("NearlyTheSame", "nearly_the_same", says);
    let says = &["2 to 3", "1.60", "7 %", "1.50"];
    let wider_than_before = row("WiderThanBefore", "wider_than_before", says);
    let says = &[
        "last step",
        "2 to 3",
        "1.60",
        "7 %",
        "1.50",
        "overdrive top",
    ];
    let overdrive_top = row("OverdriveTop", "overdrive_top", says);
    let says = &["1 to 2", "2.12", "wider than 2"];
    let wide_first_step = row("WideFirstStep", "wide_first_step", says);
    vec![
        not_falling.of("2", &[3.6, 2.4, 2.5]),
        nearly_the_same.of("2", &[3.6, 2.4, 2.36]),
        wider_than_before.of("2", &[3.6, 2.4, 1.5, 1.0]),
        overdrive_top.of("2", &[3.6, 2.4, 1.5]),
        wide_first_step.of("1", &[3.6, 1.7, 1.1]),
    ]
}

fn strange_engines() -> Vec<Strange> {
    let limits = plain_limits();
    let says = &["gear 1", "6000 rpm", "above the redline", "5500 rpm"];
    let above_redline = row("ShiftAboveRedline", "shift_above_redline", says);
    let says = &["gear 1", "6000 rpm", "below idle", "6500 rpm"];
    let below_idle = row("ShiftBelowIdle", "shift_below_idle", says);
    let says = &["1 to 2", "4000 rpm", "lowest useful", "4321 rpm"];
    let too_low = row("DropTooLow", "drop_too_low", says);
    let ratios = &[3.6, 2.4];
    vec![
        above_redline.of("1", ratios).on(EngineLimits {
            redline: rpm(5500.0),
            ..limits
        }),
        below_idle.of("1", ratios).on(EngineLimits {
            idle: Some(rpm(6500.0)),
            ..limits
        }),
        too_low.of("1", ratios).on(EngineLimits {
            lowest_useful: Some(rpm(4321.0)),
            ..limits
        }),
    ]
}

fn strange_tyres() -> Vec<Strange> {
    let nominal = &["half an inch smaller", "775 mm", "revs per mile"];
    vec![
        row("Tyre", "tyre", nominal).rolling_on("31x10.50R15LT"),
        row("Tyre", "tyre", &["motorcycle", "measured"]).rolling_on("180/55ZR17"),
        row("Tyre", "tyre", &["dash", "cross-ply", "radial"]).rolling_on("225/45-17"),
    ]
}

fn strange_things() -> impl Iterator<Item = Strange> {
    let rows = [strange_steps(), strange_engines(), strange_tyres()];
    rows.into_iter().flatten()
}

fn results_of(row: &Strange) -> SetResults {
    let tyre: Tyre = parse_tyre(row.tyre).unwrap();
    SetResults::of(&set(row.ratios, 2.0), &tyre, &row.limits)
}

#[test]
fn a_plain_set_has_no_findings() {
    assert_eq!(results_of(&row("", "", &[])).findings, []);
    assert_eq!(engine_findings(&plain_limits()), []);
}

#[test]
fn everything_strange_is_found_alone_and_told_with_its_gears_and_figures() {
    let mut failures = Vec::new();
    for row in strange_things() {
        let findings = results_of(&row).findings;
        let [finding] = &findings[..] else {
            failures.push(format!("{}: {findings:?}", row.kind));
            continue;
        };
        let told = (
            kind_name(&finding.kind),
            finding.kind.code(),
            finding.gear.as_deref(),
        );
        if told != (row.kind, row.code, row.gear) {
            failures.push(format!("{}: {told:?}", row.kind));
        }
        let sentence = finding.to_string();
        let unsaid: Vec<_> = row
            .says
            .iter()
            .filter(|part| !sentence.contains(**part))
            .collect();
        if !unsaid.is_empty() {
            failures.push(format!("\"{sentence}\" does not say {unsaid:?}"));
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

#[test]
fn an_idle_speed_that_is_not_below_the_redline_is_told_of_the_engine_alone() {
    for idle_rpm in [5500.0, 5600.0] {
        let limits = EngineLimits {
            idle: Some(rpm(idle_rpm)),
            ..redline(5500.0)
        };
        let findings = engine_findings(&limits);
        assert_eq!(findings.len(), 1);
        let (gear, kind) = (&findings[0].gear, &findings[0].kind);
        let expected = format!("idle at {idle_rpm} rpm is not below the redline of 5500 rpm");
        assert_eq!((gear, kind.code()), (&None, "idle_not_below_redline"));
        assert_eq!(findings[0].to_string(), expected);
    }
}

#[test]
fn a_lowest_useful_engine_speed_above_the_redline_and_a_redline_of_no_engine_are_told() {
    let told = |lowest_useful: f64, redline: f64| {
        let limits = EngineLimits {
            idle: None,
            lowest_useful: Some(rpm(lowest_useful)),
            redline: rpm(redline),
        };
        let findings = engine_findings(&limits);
        let told = findings.iter().map(|f| (f.kind.code(), f.to_string()));
        told.collect::<Vec<_>>()
    };
    assert_eq!(told(1500.0, 4500.0), []);
    assert_eq!(told(1.0, 200.0), []);
    let useful = "the lowest useful engine speed of 4500 rpm is not below the redline of 4500 rpm";
    assert_eq!(
        told(4500.0, 4500.0),
        [("useful_not_below_redline", useful.to_owned())]
    );
    let low = "no engine has its redline at 6.5 rpm: type all of its digits";
    assert_eq!(told(1.0, 6.5), [("redline_too_low", low.to_owned())]);
}

#[test]
fn a_marked_road_speed_slower_than_can_be_typed_is_told_with_what_to_do() {
    let mark = |kmh| RoadSpeed::from_kept_kmh(kmh).unwrap();
    assert_eq!(mark_findings(&[mark(0.001), mark(90.0)]), []);
    let rows = [
        (0.0005, "0.0005 km/h is marked as a road speed"),
        (5e-324, "next to 0 km/h is marked as a road speed"),
    ];
    for (kmh, says) in rows {
        let findings = mark_findings(&[mark(kmh), mark(90.0)]);
        assert_eq!(findings.len(), 1, "{kmh}");
        let (gear, code) = (&findings[0].gear, findings[0].kind.code());
        assert_eq!((gear, code), (&None, "marked_speed_too_slow"));
        let sentence = findings[0].to_string();
        let expected = format!("{says}; mark 0.001 km/h or more, or take it away");
        assert_eq!(sentence, expected);
    }
}

#[test]
fn a_letter_that_cannot_be_written_is_told_with_its_text() {
    let mut project = camper_van();
    let mut analysis = Analysis::from(&project);
    assert_eq!(analysis.findings(), []);
    project.title = Some(Name::new("van 五速").unwrap());
    let says = "pictures have no letter \"五\" to show \"van 五速\" with: write it with others";
    // Of the charts it changes nothing, so the figures are carried over.
    analysis.follow(&Arc::new(project));
    let [finding] = analysis.findings() else {
        panic!("{:?}", analysis.findings());
    };
    assert_eq!(
        (finding.code, finding.sentence.as_str()),
        ("letter_lacking", says)
    );
}

#[test]
fn a_front_sprocket_with_more_teeth_than_the_rear_one_is_told() {
    let told = |front, rear| {
        let mut parts = set(&[3.6, 2.4], 2.0).to_spec();
        parts.final_drives = vec![Sprockets::new(front, rear).unwrap().into()];
        let findings = results(&GearSet::try_from(parts).unwrap(), 2000.0).findings;
        let told = findings.iter().map(|f| (f.kind.code(), f.to_string()));
        told.collect::<Vec<_>>()
    };
    assert_eq!(told(16, 46), []);
    assert_eq!(told(20, 20), []);
    let says = "the chain's front sprocket has more teeth than the rear one, 46 to 16: have they \
                changed places?";
    assert_eq!(told(46, 16), [("front_sprocket_larger", says.to_owned())]);
}

#[test]
fn every_kind_of_finding_has_been_provoked() {
    let rows = strange_things().map(|row| row.kind);
    let otherwise = [
        "FrontSprocketLarger",
        "IdleNotBelowRedline",
        "UsefulNotBelowRedline",
        "RedlineTooLow",
        "LetterLacking",
        "MarkedSpeedTooSlow",
    ];
    assert_all_met(KINDS, rows.chain(otherwise));
}

#[test]
fn a_step_is_wide_or_close_only_beyond_its_limit() {
    // Within 2 %; 5 % wider than before; first to second wider than 2.
    let rows: [(&[f64], usize); 7] = [
        (&[1.019, 1.0], 1),
        (&[1.021, 1.0], 0),
        (&[1.5 * 1.57, 1.57, 1.0], 0),
        (&[1.5 * 1.58, 1.58, 1.0], 1),
        (&[1.99, 1.0], 0),
        (&[2.01, 1.0], 1),
        // Only the first step may not be wider than 2.
        (&[1.99 * 2.05, 2.05, 1.0], 0),
    ];
    for (ratios, expected) in rows {
        let findings = results(&set(ratios, 4.0), 2000.0).findings;
        assert_eq!(findings.len(), expected, "{ratios:?}: {findings:?}");
    }
}

#[test]
fn two_equal_gears_do_not_fall() {
    let findings = results(&set(&[1.0, 1.0], 4.0), 2000.0).findings;
    let codes: Vec<_> = findings.iter().map(|f| f.kind.code()).collect();
    assert_eq!(codes, ["not_falling"]);
}

#[test]
fn the_top_gear_s_shift_point_means_nothing() {
    let mut parts = spec(vec![ratio(3.6), ratio(2.4)], ratio(2.0));
    parts.gears[1].shift = Some(rpm(30_000.0));
    let findings = results(&GearSet::try_from(parts).unwrap(), 2000.0).findings;
    assert_eq!(findings, []);
}

#[test]
fn a_crawler_close_to_first_is_not_strange() {
    let mut parts: GearSetSpec = spec(vec![ratio(3.6), ratio(2.4)], ratio(2.0));
    let mut crawler = gear(3, ratio(3.65));
    crawler.role = GearRole::Crawler;
    crawler.label = Label::new("C").unwrap();
    parts.gears.insert(0, crawler);
    let findings = results(&GearSet::try_from(parts).unwrap(), 2000.0).findings;
    assert_eq!(findings, []);
}

#[test]
fn findings_look_at_overall_ratios_not_at_those_of_the_gearbox() {
    // The fifth is shorter than the fourth in the gearbox, taller on its own output shaft.
    let mut parts = spec(vec![ratio(1.02), ratio(1.03)], ratio(74.0 / 17.0));
    parts.final_drives.push(ratio(74.0 / 22.0).into());
    parts.gears[1].final_drive = 1;
    let findings = results(&GearSet::try_from(parts).unwrap(), 2000.0).findings;
    assert_eq!(findings, []);
}

proptest! {
    #[test]
    fn a_geometric_set_that_fits_its_engine_has_no_findings(
        gears in 1_i32..=12, step in 1.03..=1.95, top in 0.5..=1.5, final_drive in 2.0..=6.0
    ) {
        let (step, top): (f64, f64) = (step, top);
        let ratios = (0..gears).map(|n| top * step.powi(gears - 1 - n));
        let ratios: Vec<f64> = ratios.collect();
        prop_assume!(ratios[0] <= 400.0);
        let limits = EngineLimits {
            idle: Some(rpm(800.0)),
            lowest_useful: Some(rpm(3000.0)),
            redline: rpm(6000.0),
        };
        let results = SetResults::of(&set(&ratios, final_drive), &tyre(2000.0), &limits);
        prop_assert_eq!(results.findings, []);
    }
}
