//! Do the steps of published gear sets read back as their authors laid them out?

use super::row::Status::{Derived, Memory};
use super::row::{Published, assert_rows, published};
use crate::support::gear_sets::{ratio, results, rpm, set, spec};
use layshaft::finders::{Progression, StepLayout};
use layshaft::gearing::{GearResult, GearSet, GearSetSpec, SetResults};

const HEISLER: &str = "Heisler, Advanced Vehicle Technology, 3.8.3, geometric steps";
const NAUNHEIMER: &str =
    "Naunheimer and Lechner, Automotive Transmissions, ch. 4, progressive steps";
const DEFINITION: &str = "definition of step and drop";

/// 20 : 1 to 4.8 : 1 in five gears, as printed, changed up at 3000 rev/min.
fn geometric() -> SetResults {
    let ratios = [20.0, 14.0, 9.8, 6.86, 4.80].map(ratio).to_vec();
    let parts = GearSetSpec {
        shift: rpm(3000.0),
        ..spec(ratios, ratio(1.0))
    };
    results(&GearSet::try_from(parts).unwrap(), 2000.0)
}

/// z 5, i5 0.8, spread 4.5, φ2 1.1.
fn progressive() -> SetResults {
    results(
        &set(&[3.6000, 2.1424, 1.4025, 1.0100, 0.8000], 4.06),
        2000.0,
    )
}

/// One row a gear for which `figure` has something to say.
fn rows(
    results: &SetResults,
    figure: impl Fn(&GearResult) -> Option<f64>,
    row: Published,
) -> Vec<(String, f64, Published)> {
    let gears = results.gears.iter();
    gears
        .filter_map(|gear| Some((format!("gear {}", gear.gear.label), figure(gear)?, row)))
        .collect()
}

#[test]
fn the_geometric_set_has_one_step_throughout() {
    // φ = spread^(1 ÷ (z − 1)); its printed ratios leave 0.1 % open.
    let step = (20.0_f64 / 4.8).powf(0.25);
    let found = rows(
        &geometric(),
        |g| g.step,
        published(step, 0.0015, HEISLER, Memory),
    );
    assert_eq!(found.len(), 4);
    assert_rows(found);
    let spread = published(4.1667, 5e-5, HEISLER, Derived);
    assert_rows([("spread", geometric().spread, spread)]);
}

#[test]
fn every_upshift_of_the_geometric_set_uses_the_published_speeds() {
    let landing = |g: &GearResult| g.upshift.map(|up| up.rpm_after_shift);
    let found = rows(
        &geometric(),
        landing,
        published(2100.0, 3.0, HEISLER, Memory),
    );
    assert_eq!(found.len(), 4);
    assert_rows(found);
}

#[test]
fn the_progressive_set_narrows_by_one_factor() {
    // Four printed decimals leave 0.0002 of a progression open.
    let found = rows(
        &progressive(),
        |g| g.progression,
        published(1.1, 2e-4, NAUNHEIMER, Derived),
    );
    assert_eq!(found.len(), 3);
    assert_rows(found);
}

#[test]
fn the_progressive_set_has_the_published_spread_and_steps() {
    let results = progressive();
    let row = |expected| published(expected, 2e-4, NAUNHEIMER, Derived);
    // φ1, the last step, from the law; each before it is 1.1 times wider.
    let last = (4.5 / 1.1_f64.powi(6)).powf(0.25);
    let step = |at: usize| results.gears[at].step.unwrap();
    assert_rows([
        ("spread", results.spread, row(4.5)),
        ("4 to 5", step(3), row(last)),
        ("3 to 4", step(2), row(last * 1.1)),
        ("2 to 3", step(1), row(last * 1.21)),
        ("1 to 2", step(0), row(last * 1.331)),
    ]);
}

#[test]
fn a_step_of_1_38_loses_27_5_per_cent_of_the_shift_speed() {
    let results = results(&set(&[1.38, 1.0], 4.0), 2000.0);
    let upshift = results.gears[0].upshift.unwrap();
    let share = published(27.5, 0.05, DEFINITION, Derived);
    assert_rows([("1 to 2", upshift.drop_share() * 100.0, share)]);
    // From 6000 rpm.
    let drop = published(1652.2, 0.05, DEFINITION, Derived);
    assert_rows([("1 to 2", upshift.rpm_drop(), drop)]);
}

#[test]
fn the_published_sets_are_laid_out_from_first_top_and_number_of_gears() {
    let laid_out = |first: f64, top: f64, progression: f64| {
        let progression = Progression::from_factor(progression).unwrap();
        let layout = StepLayout::between(first, top, 5, progression).unwrap();
        layout.ratios().to_vec()
    };
    let rows = |ratios: Vec<f64>, expected: [f64; 5], tolerance, source, status| {
        let gears = (1..).zip(ratios).zip(expected);
        gears
            .map(|((gear, found), expected)| {
                let row = published(expected, tolerance, source, status);
                (format!("gear {gear}, {source}"), found, row)
            })
            .collect::<Vec<_>>()
    };
    let even = laid_out(20.0, 4.8, 1.0);
    // 14, 9.8 and 6.86 were rounded to the printed figures one after the other.
    let printed = [20.0, 14.0, 9.8, 6.86, 4.80];
    assert_rows(rows(even, printed, 0.005, HEISLER, Memory));
    let narrowing = laid_out(3.6, 0.8, 1.1);
    let derived = [3.6000, 2.1424, 1.4025, 1.0100, 0.8000];
    assert_rows(rows(narrowing, derived, 5e-5, NAUNHEIMER, Derived));
}
