//! Do gears on fixed shafts need the profile shifts that others have worked out, and do their pairs hunt?

use super::row::Status::{Derived, Memory, Read};
use super::row::{Published, Status, assert_rows, published};
use layshaft::finders::{
    CentreDistance, CentreFit, FixedCentre, HelixAngle, Hunting, NormalModule, PressureAngle,
};
use layshaft::gearing::ToothPair;

const ISO_21771: &str = "ISO 21771, as in a hand calculation of a helical pair";
const SPUR: &str = "ISO 21771, module 2.5 at 80 mm";
const HANDBOOK: &str = "gear-technology handbook, hunting pairs";
const LIMITS: &str = "limits of the trade for x1 + x2";

fn shafts(distance_mm: f64, module_mm: f64, helix_deg: f64) -> FixedCentre {
    FixedCentre {
        distance: CentreDistance::from_mm(distance_mm).unwrap(),
        module: NormalModule::from_mm(module_mm).unwrap(),
        helix: HelixAngle::from_degrees(helix_deg).unwrap(),
        pressure: PressureAngle::USUAL,
    }
}

fn shift(shafts: FixedCentre, tooth_sum: u16) -> f64 {
    shafts.profile_shift_sum(tooth_sum).unwrap()
}

#[test]
fn the_helical_pair_that_was_worked_out_by_hand_comes_out_the_same() {
    let shafts = shafts(116.5, 3.5, 21.0);
    let row = |expected| published(expected, 5e-11, ISO_21771, Read);
    let working = shafts.working_pressure_angle_deg(61).unwrap();
    assert_rows([
        (
            "a of 31/30",
            shafts.unshifted_distance_mm(61),
            row(114.344_728_070_8),
        ),
        (
            "αt",
            shafts.transverse_pressure_angle_deg(),
            row(21.299_064_285_9),
        ),
        ("αwt", working, row(23.870_760_965_4)),
        ("x1 + x2", shift(shafts, 61), row(0.651_877_131_2)),
    ]);
}

#[test]
fn spur_gears_of_every_sum_that_is_printed_need_its_shift() {
    let spur = shafts(80.0, 2.5, 0.0);
    let row = |expected| published(expected, 5e-5, SPUR, Derived);
    let rows = [
        (64, 0.0),
        (63, 0.5284),
        (62, 1.1101),
        (61, 1.7405),
        (65, -0.4692),
        (66, -0.8705),
    ];
    assert_rows(rows.map(|(sum, expected)| {
        (
            format!("{sum} teeth together"),
            shift(spur, sum),
            row(expected),
        )
    }));
}

#[test]
fn the_helix_angles_that_are_printed_fit_their_sums_without_a_shift() {
    // Three printed decimals of the angle leave some ten-thousandths of a shift open.
    let row = published(0.0, 1e-3, "ISO 21771, module 2.25 at 80 mm", Derived);
    let rows = [(60, 32.462), (61, 30.928), (62, 29.323)];
    assert_rows(rows.map(|(sum, helix)| {
        let what = format!("{sum} teeth at {helix}°");
        (what, shift(shafts(80.0, 2.25, helix), sum), row)
    }));
}

#[test]
fn the_limits_of_what_can_be_cut_are_those_of_the_trade() {
    let row = |expected| -> Published { published(expected, 0.0, LIMITS, Memory) };
    assert_rows([
        ("the least", CentreFit::LEAST, row(-0.5)),
        ("the most that is good", CentreFit::MOST_USUAL, row(1.0)),
        ("the most that is possible", CentreFit::MOST, row(1.3)),
    ]);
    let spur = shafts(80.0, 2.5, 0.0);
    let verdicts = [64, 63, 65].map(|sum| spur.fit(sum).verdict());
    assert_eq!(verdicts, ["yes"; 3]);
    assert_eq!(spur.fit(62).verdict(), "possibly, above 1.0");
    assert_eq!(spur.fit(61).verdict(), "no, above 1.3");
    assert_eq!(spur.fit(66).verdict(), "no, below −0.5");
}

#[test]
fn the_hunting_pairs_that_are_printed_hunt() {
    let rows: [(u16, u16, Hunting, &str, Status); 4] = [
        (30, 11, Hunting::Yes, HANDBOOK, Read),
        (31, 11, Hunting::Yes, HANDBOOK, Read),
        (22, 21, Hunting::Yes, HANDBOOK, Read),
        (60, 20, Hunting::No, "20 and 60 share 20", Derived),
    ];
    for (driven, driving, hunting, source, status) in rows {
        let pair = ToothPair::new(driven, driving).unwrap();
        for pair in [pair, pair.swapped()] {
            let what = format!("{pair:?} ({source}, {status:?})");
            assert_eq!(Hunting::of(pair), hunting, "{what}");
        }
    }
}
