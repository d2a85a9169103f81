//! Do the published figures come out of the command line?

use super::{answer, json_of};

/// v = 0.06 · n · U ÷ (gearbox × transfer × final drive), U = 3.185 m.
///
/// Truck bodybuilder guide: the formula is read, its inputs are from memory, the results derived.
#[test]
fn a_truck_crawls_and_cruises_at_the_speeds_of_its_guide() {
    let rows = [
        ("13.80*1.652*4.77", "900", 1.58),
        ("0.84*1.007*4.77", "1900", 89.99),
    ];
    for (gears, rpm, speed_kmh) in rows {
        let flags = "table --as json --final 1 --circumference 3185 --redline 2500 --gears";
        let arguments = flags.split(' ').chain([gears, "--rpm", rpm]);
        let json = json_of(&answer(arguments));
        let found = json["sets"][0]["gears"][0]["speeds"][0]["speed_kmh"]
            .as_f64()
            .unwrap();
        assert!((found - speed_kmh).abs() < 0.005, "{gears}: {found}");
    }
}

/// Repair manual, calculating transmission ratios (read): 37:50 × 69:14 = 3.647.
#[test]
fn counted_teeth_give_the_ratio_of_the_manual() {
    let flags = "table --as json --final 69:14 --circumference 2000 --redline 6000 --gears";
    let json = json_of(&answer(flags.split(' ').chain(["34:9 37:50"])));
    let found = json["sets"][0]["gears"][1]["overall_ratio"]
        .as_f64()
        .unwrap();
    assert!((found - 3.647).abs() < 0.0005, "{found}");
}
