//! The fits and the turned shafts of the bench against published and derived figures.

use super::row::Status::{CommonPractice, Derived, Memory, Read};
use super::row::{Published, assert_rows, published};
use layshaft::units::MM_PER_INCH;
use layshaft::workshop::{
    Arrangement, BORE_STEPS, BoreClass, CaseDepth, Diameter, DiameterStep, FilletRadius,
    HeatChange, Heating, Interference, Material, PressedRing, Pressing, RingWidth, RoomTemperature,
    SHAFT_STEPS, SeatClass, SeatFinish, SeatSide, ShaftClass, ShaftTorque, SizeLimits,
    SlipClearance, TemperatureRise, Tightness, TurnedShaft, case_outgrows_um, fillet_factor,
    taken_by_warmth_um,
};

const ISO: &str = "ISO 286 as printed by bearing makers";
const MAKER: &str = "a bearing maker's table of fits";
const MAKERS: &str = "two bearing makers' catalogues";
const HEATING: &str = "a bearing maker's guide to mounting";
const BARS: &str = "strength of materials, round bars";
const FILLET: &str = "charts of stress concentration, shouldered shaft in torsion";

/// Shafts h6 j6 js6 k5 k6 m5 m6 n6 p6, and the bore of a bearing of the Normal class, as printed: over–to in mm, upper/lower in µm.
const SHAFTS: &str = "\
10–18 0/−11 +8/−3 ±5.5 +9/+1 +12/+1 +15/+7 +18/+7 +23/+12 +29/+18 0/−8
18–30 0/−13 +9/−4 ±6.5 +11/+2 +15/+2 +17/+8 +21/+8 +28/+15 +35/+22 0/−10
30–50 0/−16 +11/−5 ±8 +13/+2 +18/+2 +20/+9 +25/+9 +33/+17 +42/+26 0/−12
50–80 0/−19 +12/−7 ±9.5 +15/+2 +21/+2 +24/+11 +30/+11 +39/+20 +51/+32 0/−15
80–120 0/−22 +13/−9 ±11 +18/+3 +25/+3 +28/+13 +35/+13 +45/+23 +59/+37 0/−20
";

/// Bores H7 J7 K7 M7 N7 P7, and the outside of a bearing of the Normal class, as printed: over–to in mm, upper/lower in µm.
const BORES: &str = "\
18–30 +21/0 +12/−9 +6/−15 0/−21 −7/−28 −14/−35 0/−9
30–50 +25/0 +14/−11 +7/−18 0/−25 −8/−33 −17/−42 0/−11
50–80 +30/0 +18/−12 +9/−21 0/−30 −9/−39 −21/−51 0/−13
80–120 +35/0 +22/−13 +10/−25 0/−35 −10/−45 −24/−59 0/−15
";

fn mm(mm: f64) -> Diameter {
    Diameter::from_mm(mm).unwrap()
}

/// A cell as printed, lower limit first: `+8/−3`, `±5.5`.
fn printed_um(cell: &str) -> [f64; 2] {
    let number = |text: &str| text.replace('−', "-").parse::<f64>().unwrap();
    if let Some(half) = cell.strip_prefix('±') {
        return [-number(half), number(half)];
    }
    let (upper, lower) = cell.split_once('/').unwrap();
    [number(lower), number(upper)]
}

/// A row as printed: its step and its cells.
fn printed_row(row: &str) -> (DiameterStep, Vec<[f64; 2]>) {
    let mut cells = row.split(' ');
    let (over, to) = cells.next().unwrap().split_once('–').unwrap();
    let [over_mm, to_mm] = [over, to].map(|mm| mm.parse().unwrap());
    (
        DiameterStep { over_mm, to_mm },
        cells.map(printed_um).collect(),
    )
}

/// The classes of a table, with its rows.
fn tables() -> [(Vec<SeatClass>, &'static str); 2] {
    let shafts = ShaftClass::ALL.map(SeatClass::Shaft).to_vec();
    let bores = BoreClass::ALL.map(SeatClass::Bore).to_vec();
    [(shafts, SHAFTS), (bores, BORES)]
}

fn both(what: &str, found: [f64; 2], printed: [f64; 2]) -> Vec<(String, f64, Published)> {
    let ends = found.into_iter().zip(printed);
    let rows =
        ends.map(|(found, printed)| (what.to_owned(), found, published(printed, 1e-9, ISO, Read)));
    rows.collect()
}

fn ends_um(limits: SizeLimits) -> [f64; 2] {
    [limits.lower_um(), limits.upper_um()]
}

#[test]
fn every_limit_is_that_of_the_printed_tables_at_both_ends_of_its_step() {
    let mut rows = Vec::new();
    for (classes, printed) in tables() {
        for (step, cells) in printed.lines().map(printed_row) {
            let (bearing, cells) = cells.split_last().unwrap();
            assert_eq!(cells.len(), classes.len());
            for at in [step.over_mm + 0.001, step.to_mm] {
                for (class, cell) in classes.iter().zip(cells) {
                    let found = ends_um(class.limits(mm(at)).unwrap());
                    rows.extend(both(&format!("{class} at {at}"), found, *cell));
                }
                let found = classes[0].side().normal_bearing(mm(at)).unwrap();
                rows.extend(both(&format!("bearing at {at}"), ends_um(found), *bearing));
            }
        }
    }
    assert_eq!(rows.len(), 2 * 2 * (5 * 10 + 4 * 7));
    assert_rows(rows);
}

#[test]
fn the_interference_of_every_class_follows_from_its_two_tables() {
    for (classes, printed) in tables() {
        for (step, cells) in printed.lines().map(printed_row) {
            let ([part_lower, part_upper], cells) = cells.split_last().unwrap();
            for (class, [lower, upper]) in classes.iter().zip(cells) {
                let at = mm(step.to_mm);
                let seat = class.limits(at).unwrap();
                let part = class.side().normal_bearing(at).unwrap();
                let Interference { least_um, most_um } = class.side().interference(seat, part);
                let expected = match class.side() {
                    SeatSide::Shaft => [lower - part_upper, upper - part_lower],
                    SeatSide::Bore => [part_lower - upper, part_upper - lower],
                };
                assert_rows(both(&format!("{class}"), [least_um, most_um], expected));
            }
        }
    }
}

#[test]
fn a_bearing_on_a_shaft_of_30_to_50_mm_is_as_tight_as_its_maker_says() {
    let row = |um| published(um, 1e-9, MAKER, Read);
    let classes = [
        (ShaftClass::K5, [2.0, 25.0]),
        (ShaftClass::K6, [2.0, 30.0]),
        (ShaftClass::M5, [9.0, 32.0]),
        (ShaftClass::M6, [9.0, 37.0]),
    ];
    assert_rows(classes.into_iter().flat_map(|(class, [least, most])| {
        let (at, side) = (mm(40.0), SeatSide::Shaft);
        let bearing = side.normal_bearing(at).unwrap();
        let found = side.interference(class.limits(at).unwrap(), bearing);
        [
            (class, found.least_um, row(least)),
            (class, found.most_um, row(most)),
        ]
    }));
}

/// The width of a grade in µm: so many tolerance units of the step's geometric mean.
fn grade_um(step: DiameterStep, units: f64) -> f64 {
    let d = (step.over_mm * step.to_mm).sqrt();
    units * (0.45 * d.cbrt() + 0.001 * d)
}

#[test]
fn the_width_of_every_class_is_that_of_its_grade_within_its_rounding() {
    // Source: ISO 286-1, i = 0.45 ∛D + 0.001 D; IT5 = 7 i, IT6 = 10 i, IT7 = 16 i, rounded to the micrometre.
    let units = |class: ShaftClass| match class {
        ShaftClass::K5 | ShaftClass::M5 => 7.0,
        ShaftClass::H6
        | ShaftClass::J6
        | ShaftClass::Js6
        | ShaftClass::K6
        | ShaftClass::M6
        | ShaftClass::N6
        | ShaftClass::P6 => 10.0,
    };
    let row = |step, units| published(grade_um(step, units), 0.5, ISO, Derived);
    for step in SHAFT_STEPS {
        assert_rows(ShaftClass::ALL.map(|class| {
            let limits = class.limits(mm(step.to_mm)).unwrap();
            (class, limits.width_um(), row(step, units(class)))
        }));
    }
    for step in BORE_STEPS {
        assert_rows(BoreClass::ALL.map(|class| {
            let limits = class.limits(mm(step.to_mm)).unwrap();
            (class, limits.width_um(), row(step, 16.0))
        }));
    }
}

#[test]
fn roughness_and_warmth_take_their_part_of_an_interference() {
    let at = mm(40.0);
    let apparent = Interference {
        least_um: 15.0,
        most_um: 30.0,
    };
    let working = |finish| apparent.working(finish, at).most_um;
    let rise = TemperatureRise::from_k(50.0).unwrap();
    let row = |um| published(um, 5e-4, MAKERS, Derived);
    assert_rows([
        ("ground", working(SeatFinish::Ground), row(28.571)),
        ("turned", working(SeatFinish::Turned), row(27.907)),
        ("warmth", taken_by_warmth_um(rise, at), row(3.0)),
        (
            "what is left",
            apparent.warmed(rise, at).least_um,
            row(12.0),
        ),
    ]);
}

#[test]
fn a_fit_is_warned_of_and_stopped_at_the_shares_that_makers_name() {
    // Source: two bearing makers, read: warn above 0.0007 d, stop above 0.001 d.
    let tightness = |most_um| {
        let least_um = 0.0;
        Interference { least_um, most_um }.tightness(mm(50.0))
    };
    assert_eq!(tightness(35.0), Tightness::Usual);
    assert_eq!(tightness(35.01), Tightness::Tight);
    assert_eq!(tightness(50.0), Tightness::Tight);
    assert_eq!(tightness(50.01), Tightness::TooTight);
}

#[test]
fn a_ring_is_pressed_onto_a_shaft_and_pulled_off() {
    // Formulas read, numbers derived: d 40, D_i 50, B 19, of 30 µm on a ground seat 28.571 µm.
    let apparent = Interference {
        least_um: 0.0,
        most_um: 30.0,
    };
    let working_um = apparent.working(SeatFinish::Ground, mm(40.0)).most_um;
    let width = RingWidth::from_mm(19.0).unwrap();
    let ring = PressedRing::new(mm(40.0), mm(50.0), width).unwrap();
    let kn = |pressing| ring.force_n(pressing, working_um) / 1000.0;
    let row = |number, tolerance| published(number, tolerance, MAKERS, Derived);
    assert_rows([
        ("pressure", ring.pressure_mpa(working_um), row(26.743, 5e-4)),
        ("on", kn(Pressing::On), row(7.66, 5e-3)),
        ("off", kn(Pressing::Off), row(11.49, 5e-3)),
    ]);
    assert_eq!(PressedRing::new(mm(50.0), mm(50.0), width), None);
}

#[test]
fn a_part_slips_on_when_it_is_warm_enough() {
    let slip = |um| SlipClearance::from_um(um).unwrap();
    let steel = Material::BearingSteel;
    let metric = Heating::needed(30.0, slip(0.0), mm(40.0), steel).unwrap();
    // 12 · 10⁻⁶ for 1 °F are 21.6 · 10⁻⁶ for 1 K; 0.0015 and 0.002 in on 1.375 in.
    let um = |inch: f64| inch * MM_PER_INCH * 1000.0;
    let inch_steel = Material::Other(layshaft::workshop::Expansion::from_per_mk(21.6).unwrap());
    let bore = mm(1.375 * MM_PER_INCH);
    let inch = Heating::needed(um(0.0015), slip(um(0.002)), bore, inch_steel).unwrap();
    assert_rows([
        (
            "40 mm",
            metric.rise_k,
            published(60.0, 0.05, HEATING, Derived),
        ),
        (
            "inch",
            inch.rise_k * 1.8,
            published(212.1, 0.05, HEATING, Derived),
        ),
        (
            "as printed",
            inch.rise_k * 1.8,
            published(210.0, 5.0, HEATING, Read),
        ),
    ]);
    // 20–30 K more for handling, bearings not above 120 °C (read).
    let room = RoomTemperature::from_c(20.0).unwrap();
    let [least, most] = metric.temperatures_c(room);
    let row = |c| published(c, 1e-9, HEATING, Read);
    assert_rows([("least", least, row(100.0)), ("most", most, row(110.0))]);
    assert!(!metric.is_too_hot_for_bearing(room));
    let tighter = Heating::needed(41.0, slip(0.0), mm(40.0), steel).unwrap();
    assert!(
        tighter.is_too_hot_for_bearing(room),
        "82 K and 20 K above 20 °C"
    );
}

#[test]
fn a_light_alloy_bore_outgrows_its_ring() {
    let rise = TemperatureRise::from_k(60.0).unwrap();
    let ring_um = case_outgrows_um(mm(72.0), Material::Aluminium, rise);
    let steel = HeatChange {
        arrangement: Arrangement::FaceToFace,
        case: Material::Aluminium,
        shaft: Material::Steel,
        case_rise: rise,
        shaft_rise: rise,
        seats_mm: 72.0,
    };
    let row = |mm| published(mm, 5e-5, "linear expansion", Derived);
    assert_rows([
        ("bearing steel", ring_um / 1000.0, row(0.0454)),
        ("steel of 12", steel.end_play_mm(), row(0.0475)),
    ]);
}

fn turned(from: f64, to: f64) -> TurnedShaft {
    TurnedShaft::new(mm(from), mm(to), None).unwrap()
}

#[test]
fn a_shaft_turned_down_keeps_the_third_and_the_fourth_power() {
    let row = |share| published(share, 5e-5, BARS, Derived);
    let strength = |from, to| turned(from, to).strength_share();
    assert_rows([
        ("40 to 39", strength(40.0, 39.0), row(0.9269)),
        ("35 to 34", strength(35.0, 34.0), row(0.9167)),
        ("30 to 29", strength(30.0, 29.0), row(0.9033)),
        (
            "stiffness",
            turned(30.0, 29.0).stiffness_share(),
            row(0.8732),
        ),
    ]);
    // τ = 16 T ÷ (π d³): 1000 N·m on 50 mm.
    let torque = ShaftTorque::from_nm(1000.0).unwrap();
    let shear = turned(52.0, 50.0).shear_mpa(torque);
    assert_rows([("shear", shear, published(40.744, 5e-4, BARS, Derived))]);
}

#[test]
fn a_fillet_has_the_stress_factor_of_the_table() {
    let factor = |shoulder_share: f64, radius_share: f64| {
        let fillet = FilletRadius::from_mm(100.0 * radius_share).unwrap();
        fillet_factor(mm(100.0), mm(100.0 * shoulder_share), fillet)
    };
    let row = |factor| published(factor, 5e-4, FILLET, Memory);
    assert_rows([("1.2 and 0.05", factor(1.2, 0.05).unwrap(), row(1.596))]);
    // The rows of the table at r/d 0.1: A · 0.1^b.
    for (share, a, b) in [
        (2.0, 0.86331, -0.23865),
        (1.33, 0.84897, -0.23161),
        (1.2, 0.83425, -0.21649),
        (1.09, 0.90337, -0.12692_f64),
    ] {
        let printed = published(a * 0.1_f64.powf(b), 1e-9, FILLET, Memory);
        assert_rows([(share, factor(share, 0.1).unwrap(), printed)]);
    }
    assert!(factor(1.08, 0.05).is_none() && factor(2.01, 0.05).is_none());
}

#[test]
fn a_millimetre_off_the_diameter_takes_half_a_millimetre_of_the_case() {
    // Source of the depths: a steel maker, 0.5–1.0 mm (read).
    let left = |mm| turned(40.0, 39.0).case_left_mm(CaseDepth::from_mm(mm).unwrap());
    let row = |mm| published(mm, 1e-9, "geometry", CommonPractice);
    assert_rows([
        ("0.5 mm", left(0.5), row(0.0)),
        ("1.0 mm", left(1.0), row(0.5)),
    ]);
}
