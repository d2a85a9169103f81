//! Do tyre sizes come out at the diameters, circumferences and turns that others print?
//!
//! Every row carries its source and how it was come by.

use layshaft::gearing::{
    Construction, LoadIndex, SpeedSymbol, Tolerance, TyreSize, TyreSizeError, parse_tyre,
};

/// How a check value was come by.
#[derive(Debug, Clone, Copy)]
enum Status {
    /// Read in a copy or quotation of the source.
    Read,
    /// Recalled, not read again.
    Memory,
    /// Arithmetic on the rows above.
    Derived,
}

use Status::{Derived, Memory, Read};

const RIM_TABLE: &str = "rim-code table of UN R30 and ETRTO";
const R30: &str = "UN R30 6.1.2, overall diameter";
const LIGHT_TRUCK_SHEET: &str = "a maker's light-truck data sheet";
const LOAD_INDEX_TABLE: &str = "UN R30, annex on load indices";
const SPEED_TABLE: &str = "UN R30, speed symbols";
const ETRTO: &str = "ETRTO Standards Manual, rolling circumference";

fn size(text: &str) -> Result<TyreSize, String> {
    text.parse()
        .map_err(|error: TyreSizeError| format!("{text}: {error}"))
}

fn assert_none(failures: &[String]) {
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

#[test]
fn rim_codes_have_the_millimetres_of_the_table() {
    let rows = [
        ("10", 254),
        ("12", 305),
        ("13", 330),
        ("14", 356),
        ("15", 381),
        ("16", 406),
        ("17", 432),
        ("18", 457),
        ("19", 483),
        ("20", 508),
        ("21", 533),
        ("22", 559),
        ("23", 584),
        ("24", 610),
        ("16.5", 419),
        ("17.5", 445),
        ("19.5", 495),
        ("22.5", 572),
        ("24.5", 622),
        // Above 100 it is mm already.
        ("390", 390),
    ];
    let failures: Vec<String> = rows
        .into_iter()
        .filter_map(|(code, mm)| {
            let found = size(&format!("195/65 R {code}")).map(|size| size.rim().diameter_mm());
            (found != Ok(mm))
                .then(|| format!("rim {code}: {found:?}, not {mm} mm ({RIM_TABLE}, {Memory:?})"))
        })
        .collect();
    assert_none(&failures);
}

#[test]
fn sizes_have_the_published_overall_diameters() {
    let rows = [
        // Whose section height ends in exactly a half.
        ("175/70 R 13", 576, R30, Memory),
        ("195/70 R 14", 630, R30, Memory),
        ("205/50 R 15", 587, R30, Memory),
        ("195/65 R 15", 635, R30, Memory),
        ("205/55 R 16", 632, R30, Memory),
        ("225/45 R 17", 634, R30, Memory),
        ("315/80 R 22.5", 1076, R30, Memory),
        ("LT235/85R16", 806, R30, Derived),
        ("LT245/75R16", 774, R30, Derived),
        ("LT285/75R16", 834, R30, Derived),
        (
            "31x10.50R15LT",
            775,
            "design diameter of inch sizes, half an inch below the nominal",
            Memory,
        ),
    ];
    let failures: Vec<String> = rows
        .into_iter()
        .filter_map(|(text, mm, source, status)| {
            let found = size(text).map(TyreSize::overall_diameter_mm);
            (found != Ok(mm))
                .then(|| format!("{text}: {found:?}, not {mm} mm ({source}, {status:?})"))
        })
        .collect();
    assert_none(&failures);
}

/// Size, overall diameter in inches, turns per mile, as the sheet prints them.
const LIGHT_TRUCK_ROWS: [(&str, &str, &str); 3] = [
    ("LT235/85R16", "31.7", "655"),
    ("LT245/75R16", "30.5", "682"),
    ("LT285/75R16", "32.8", "633"),
];

#[test]
fn light_truck_tyres_have_the_diameters_and_turns_their_maker_prints() {
    let mut failures = Vec::new();
    for (text, inches, revs_per_mile) in LIGHT_TRUCK_ROWS {
        let tyre = parse_tyre(text).unwrap();
        let found_inches = format!("{:.1}", tyre.overall_diameter_mm().unwrap() / 25.4);
        let found_revs = format!("{:.0}", tyre.revs_per_mile());
        if (found_inches.as_str(), found_revs.as_str()) != (inches, revs_per_mile) {
            failures.push(format!(
                "{text}: {found_inches} in and {found_revs} per mile, not {inches} and \
                 {revs_per_mile} ({LIGHT_TRUCK_SHEET}, {Read:?})"
            ));
        }
    }
    assert_none(&failures);
}

#[test]
fn pi_times_the_diameter_gives_none_of_the_printed_turns() {
    for (text, _, printed) in LIGHT_TRUCK_ROWS {
        let diameter_mm = parse_tyre(text).unwrap().overall_diameter_mm().unwrap();
        let unloaded = 1_609_344.0 / (std::f64::consts::PI * diameter_mm);
        assert_ne!(format!("{unloaded:.0}"), printed, "{text}");
    }
}

#[test]
fn printed_turns_per_mile_typed_in_roll_as_far_as_the_size() {
    // Half a turn of 650 is 0.08 %.
    for (text, _, printed) in LIGHT_TRUCK_ROWS {
        let by_size = parse_tyre(text).unwrap().rolling_circumference_mm();
        let by_revs = parse_tyre(&format!("{printed} revs per mile")).unwrap();
        let error = by_revs.rolling_circumference_mm() / by_size - 1.0;
        assert!(error.abs() < 0.0008, "{text}: {error}");
    }
}

#[test]
fn tyres_roll_the_published_multiple_of_their_diameter() {
    let rows = [
        // The factors themselves, on a diameter of 1000 mm.
        ("diameter 1000 mm", 3050.0, ETRTO, Memory),
        ("diameter 1000 mm cross-ply", 2990.0, ETRTO, Memory),
        ("195/65 R 15", 1936.75, ETRTO, Derived),
        ("205/55 ZR 16", 1927.6, ETRTO, Derived),
        ("195/65 D 15", 1898.65, ETRTO, Derived),
        ("31x10.50R15LT", 2363.75, ETRTO, Derived),
    ];
    let failures: Vec<String> = rows
        .into_iter()
        .filter_map(|(text, mm, source, status)| {
            let found = parse_tyre(text).unwrap().rolling_circumference_mm();
            ((found - mm).abs() > 1e-9)
                .then(|| format!("{text}: {found} mm, not {mm} ({source}, {status:?})"))
        })
        .collect();
    assert_none(&failures);
    // "About 3 % shorter than π × diameter."
    let shorter = 1.0 - Construction::Radial.rolling_factor() / std::f64::consts::PI;
    assert!((0.025..0.035).contains(&shorter), "{shorter}");
}

#[test]
fn a_computed_circumference_has_the_published_tolerance() {
    // +1.5 / −2.5 %: ETRTO Standards Manual (memory).
    let tolerance = parse_tyre("195/65 R 15").unwrap().tolerance();
    let expected = Tolerance {
        above_percent: 1.5,
        below_percent: 2.5,
    };
    assert_eq!(tolerance, Some(expected));
}

#[test]
fn a_missing_aspect_ratio_is_never_picked() {
    // 80 in one trade, 82 in another: common practice, no source.
    for text in ["155 R 13", "7.50 R 16", "185R14C"] {
        let missing = size(text).is_err_and(|error| error.contains("aspect ratio"));
        assert!(missing, "{text}");
    }
}

#[test]
fn load_indices_stand_for_the_masses_of_the_table() {
    let rows = [
        (60, Some(250.0)),
        (69, Some(325.0)),
        (70, Some(335.0)),
        (79, Some(437.0)),
        (80, Some(450.0)),
        (82, Some(475.0)),
        (84, Some(500.0)),
        (86, Some(530.0)),
        (88, Some(560.0)),
        (89, Some(580.0)),
        (90, Some(600.0)),
        (91, Some(615.0)),
        (92, Some(630.0)),
        (94, Some(670.0)),
        (95, Some(690.0)),
        (99, Some(775.0)),
        (100, Some(800.0)),
        (104, Some(900.0)),
        (107, Some(975.0)),
        (109, Some(1030.0)),
        (110, Some(1060.0)),
        (116, Some(1250.0)),
        (119, Some(1360.0)),
        (120, Some(1400.0)),
        (121, Some(1450.0)),
        (126, Some(1700.0)),
        // What the table at hand does not list is unknown, never reckoned.
        (0, None),
        (59, None),
        (127, None),
        (279, None),
    ];
    let failures: Vec<String> = rows
        .into_iter()
        .filter_map(|(number, kg)| {
            let found = LoadIndex::new(number).unwrap().mass_kg();
            (found != kg).then(|| {
                format!("{number}: {found:?}, not {kg:?} kg ({LOAD_INDEX_TABLE}, {Memory:?})")
            })
        })
        .collect();
    assert_none(&failures);
}

#[test]
fn every_load_index_carries_a_little_more_than_the_one_before() {
    // Forty steps are a factor of 10 to the half, so one is about 2.9 %: derived.
    let kg = |number| LoadIndex::new(number).unwrap().mass_kg().unwrap();
    for number in 61..=126 {
        let step = kg(number) / kg(number - 1) - 1.0;
        assert!((0.02..0.04).contains(&step), "{number}: {step}");
    }
}

#[test]
fn speed_symbols_stand_for_the_speeds_of_the_table() {
    let rows = [
        ("F", 80.0),
        ("G", 90.0),
        ("J", 100.0),
        ("K", 110.0),
        ("L", 120.0),
        ("M", 130.0),
        ("N", 140.0),
        ("P", 150.0),
        ("Q", 160.0),
        ("R", 170.0),
        ("S", 180.0),
        ("T", 190.0),
        ("U", 200.0),
        ("H", 210.0),
        ("V", 240.0),
        ("W", 270.0),
        ("Y", 300.0),
    ];
    let failures: Vec<String> = rows
        .into_iter()
        .filter_map(|(text, kmh)| {
            let found = text.parse().ok().and_then(SpeedSymbol::speed_kmh);
            (found != Some(kmh))
                .then(|| format!("{text}: {found:?}, not {kmh} km/h ({SPEED_TABLE}, {Memory:?})"))
        })
        .collect();
    assert_none(&failures);
}

#[test]
fn a_service_description_changes_no_figure() {
    for (bare, rated) in [
        ("195/65 R 15", "195/65 R 15 91T"),
        ("215/65 R 16 C", "215/65 R 16 C 109/107R"),
        ("185/70 R 13", "185/70 HR 13"),
    ] {
        let (bare, rated) = (parse_tyre(bare).unwrap(), parse_tyre(rated).unwrap());
        assert_ne!(bare, rated);
        let mm = [bare, rated].map(|tyre| tyre.rolling_circumference_mm().to_bits());
        assert_eq!(mm[0], mm[1], "{rated}");
        assert_eq!(bare.overall_diameter_mm(), rated.overall_diameter_mm());
        assert_eq!(bare.notices(), rated.notices());
    }
}
