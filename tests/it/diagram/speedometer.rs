//! Does the diagram of speedometers show what is above the true speed, and what of that a rule allows?

use crate::support::close::assert_close;
use crate::support::window::camper_van;
use layshaft::analysis::Analysis;
use layshaft::chart::{Role, Scene};
use layshaft::checks::{RuleOffset, RulePercent, SignalSource, SpeedometerRule};
use layshaft::project::{Edit, Project, SignalData, SpeedometerData, View};
use layshaft::units::{KM_PER_MILE, SpeedUnit};

fn scene(project: &Project) -> Scene {
    View::Speedometer.scene(&Analysis::from(project))
}

/// The camper van, judged by a rule.
fn judged_by(rule: SpeedometerRule, units: SpeedUnit) -> Project {
    let mut project = Project {
        units,
        ..camper_van()
    };
    project.technical.speedometer.rule = rule;
    project
}

/// The typed rule of so many per cent and so many km/h.
fn typed(percent: f64, kmh: f64) -> SpeedometerRule {
    SpeedometerRule::Typed {
        percent: RulePercent::from_percent(percent).unwrap(),
        offset: RuleOffset::from_kmh(kmh).unwrap(),
    }
}

/// The words at the ends of what must not be crossed.
fn limits(scene: &Scene) -> Vec<&str> {
    let labels = scene.labels.iter();
    let limits = labels.filter(|label| label.role == Role::Limit);
    limits.map(|label| label.text.as_str()).collect()
}

/// Where a straight line of two points is at a place.
fn height([[x0, y0], [x1, y1]]: [[f64; 2]; 2], x: f64) -> f64 {
    y0 + (x - x0) / (x1 - x0) * (y1 - y0)
}

fn ends(points: &[[f64; 2]]) -> [[f64; 2]; 2] {
    let [first, second] = points else {
        panic!("{points:?} is no straight line");
    };
    [*first, *second]
}

#[test]
fn every_set_has_one_line_from_rest_with_what_is_shown_above_the_true_speed() {
    let project = camper_van();
    let analysis = Analysis::from(&project);
    let scene = View::Speedometer.scene(&analysis);
    assert_eq!(scene.lines.len(), 3);
    for (line, shown) in scene.lines.iter().zip(analysis.speedometers()) {
        let shown = shown.as_ref().unwrap();
        let line = ends(&line.points);
        assert!(line[0].iter().all(|at| at.abs() < 1e-12), "{line:?}");
        for kmh in [40.0, 90.0, 120.0] {
            let above = shown.shown_kmh(kmh) - kmh;
            assert_close(height(line, kmh), above, 1e-9, "above the true speed");
        }
    }
    // The baseline is true, so its line is that of no error.
    assert_close(scene.lines[0].points[1][1], 0.0, 1e-12, "the baseline");
}

#[test]
fn a_band_has_its_upper_edge_its_lower_one_at_0_and_shade_beyond_both() {
    for (rule, name, percent, kmh) in [
        (SpeedometerRule::R39, "most by UN R39", 10.0, 4.0),
        (typed(5.0, 2.5), "most by the typed rule", 5.0, 2.5),
    ] {
        for units in SpeedUnit::ALL {
            let scene = scene(&judged_by(rule, units));
            assert_eq!(limits(&scene), [name, "true"]);
            let most = ends(&scene.curves[0].points);
            let offset = units.from_kmh(kmh);
            assert_close(most[0][1], offset, 1e-9, "at rest");
            let at_100 = height(most, 100.0);
            assert_close(at_100, percent + offset, 1e-9, "at 100");
            let zero = ends(&scene.curves[1].points);
            assert!(zero.iter().all(|at| at[1].abs() < 1e-12), "{zero:?}");
            assert_eq!(scene.above.len(), 1);
            assert_eq!(ends(&[scene.above[0].from, scene.above[0].to]), most);
            assert_eq!(scene.areas.len(), 1);
            assert_eq!(scene.areas[0].y, [None, Some(0.0)]);
        }
    }
}

#[test]
fn the_rule_of_one_point_is_an_upright_stroke_at_50_mph_without_shade() {
    for units in SpeedUnit::ALL {
        let scene = scene(&judged_by(SpeedometerRule::Cfr393, units));
        assert_eq!(limits(&scene), ["49 CFR 393.82"]);
        let [low, high] = ends(&scene.curves[0].points);
        let at = units.from_kmh(50.0 * KM_PER_MILE);
        let margin = units.from_kmh(5.0 * KM_PER_MILE);
        for (end, above) in [(low, -margin), (high, margin)] {
            assert_close(end[0], at, 1e-9, "50 mph");
            assert_close(end[1], above, 1e-9, "5 mph either way");
        }
        assert!(scene.areas.is_empty() && scene.above.is_empty());
        let rules = scene.rules.iter();
        let mut zero = rules.filter(|rule| rule.role == Role::Floor);
        assert_close(zero.next().unwrap().at, 0.0, 1e-12, "no error");
    }
}

#[test]
fn all_of_the_lines_and_of_the_rule_is_in_view() {
    let rules = [
        SpeedometerRule::R39,
        SpeedometerRule::Cfr393,
        typed(0.0, 0.0),
    ];
    for rule in rules {
        let scene = scene(&judged_by(rule, SpeedUnit::Kmh));
        let lines = scene.lines.iter().flat_map(|line| &line.points);
        let curves = scene.curves.iter().flat_map(|curve| &curve.points);
        for [x, y] in lines.chain(curves) {
            assert!((scene.x.range[0]..=scene.x.range[1]).contains(x), "{x}");
            assert!(scene.y.range[0] < *y && *y < scene.y.range[1], "{y}");
        }
        // All speeds at which it is tested, and all that are marked.
        assert!(scene.x.range[1] >= 120.0);
    }
}

#[test]
fn at_every_marked_speed_a_point_says_what_is_shown() {
    let scene = scene(&camper_van());
    let of_second = scene
        .labels
        .iter()
        .filter(|label| label.role == Role::Crossing && label.of.is_some_and(|of| of.place == 1));
    let words: Vec<&str> = of_second.map(|label| label.text.as_str()).collect();
    let shown = [
        "shows 44.3 (−5.7)",
        "shows 79.8 (−10.2)",
        "shows 97.5 (−12.5)",
    ];
    assert_eq!(words, shown);
    assert_eq!(scene.points.len(), 9);
    assert!(scene.summary.contains("Fitted five-speed shows 50.0 (0.0)"));
}

#[test]
fn a_set_without_a_signal_is_named_and_has_no_line() {
    let mut project = camper_van();
    let id = project.sets.iter().nth(1).unwrap().id;
    let mut checks = project.sets.get(id).unwrap().technical.checks.clone();
    checks.signal = SignalData {
        source: Some(SignalSource::None),
        drive: None,
    };
    project = Edit::SetChecks(id, Box::new(checks))
        .applied_to(&project)
        .unwrap();
    let scene = scene(&project);
    assert_eq!(scene.sets.len(), 3);
    assert!(scene.lines.iter().all(|line| line.of.place != 1));
    assert_eq!(scene.without_reading, "no signal");
}

#[test]
fn where_the_needle_shows_too_much_every_line_rises_with_it() {
    let with = |text: f64| {
        let mut project = camper_van();
        let speedometer = SpeedometerData {
            reading: layshaft::checks::BaselineReading {
                needle_ratio: layshaft::checks::ReadingRatio::new(text).ok(),
                ..layshaft::checks::BaselineReading::default()
            },
            ..project.technical.speedometer
        };
        project.technical.speedometer = speedometer;
        scene(&project)
    };
    let (true_one, more) = (with(1.0), with(1.05));
    for (before, after) in true_one.lines.iter().zip(&more.lines) {
        let end = after.points[1][0];
        let shown = [&before.points, &after.points].map(|points| points[1][1] + end);
        assert_close(shown[1] / shown[0], 1.05, 1e-9, "the needle");
    }
}
