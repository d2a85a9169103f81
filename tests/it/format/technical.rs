//! Are technical data kept in format 2 only, and pointed at where they cannot be?

use super::GOLDEN;
use super::broken;
use super::format_2::GOLDEN_V2;
use layshaft::motion::Mass;
use layshaft::project::{Edit, VehicleData, format};

#[test]
fn a_project_with_technical_data_is_of_format_2_for_as_long_as_it_has_them() {
    let plain = format::read(GOLDEN).unwrap();
    let known = VehicleData {
        mass: Some(Mass::from_kg(1020.0).unwrap()),
        ..VehicleData::default()
    };
    let with = |vehicle| Edit::VehicleData(Box::new(vehicle));
    let typed = with(known).applied_to(&plain).unwrap();
    let written = format::write(&typed).unwrap();
    assert!(written.starts_with("(\n    format: 2,\n"), "{written}");
    let part =
        "    technical: (\n        vehicle: (\n            mass_kg: 1020,\n        ),\n    ),\n";
    assert!(written.contains(part), "{written}");
    assert_eq!(format::read(&written).as_ref(), Ok(&typed));
    let back = with(VehicleData::default()).applied_to(&typed).unwrap();
    assert_eq!(format::write(&back).unwrap(), GOLDEN);
    let in_format_1 = written.replacen("format: 2", "format: 1", 1);
    let sentence = format::read(&in_format_1).unwrap_err().to_string();
    let says = "\"technical\" belongs to format 2, but the file says format 1";
    assert!(sentence.contains(says), "{sentence}");
}

#[test]
fn technical_data_that_cannot_be_are_pointed_at() {
    for (from, to, says) in [
        (
            "mass_kg: 2450",
            "mass_kg: 20",
            "a mass must be between 50 and 100000 kg, not 20",
        ),
        (
            "front_share: 0.48",
            "front_share: 48",
            "between 0 and 1, not 48",
        ),
        (
            "grade_percent: 2.5",
            "grade_percent: 75",
            "between -50 and 50 %, not 75",
        ),
        ("adhesion: 0.75", "grip: 0.75", "grip"),
        ("kind: CamperVan", "kind: Spaceship", "Spaceship"),
        (
            "power_rpm: 4000",
            "power_rpm: 2000",
            "the peak power lies at a higher engine speed",
        ),
        ("(rpm: 2500,", "(rpm: 1000,", "1000 rpm follows 1000 rpm"),
        (
            "efficiency: 0.9,",
            "efficiency: 90,",
            "between 0.01 and 1, not 90",
        ),
        (
            "(gear: \"C\"",
            "(gear: \"9\"",
            "an efficiency is of gear \"9\", which is not there",
        ),
        (
            "(gear: \"C\"",
            "(gear: \"top\"",
            "gear \"top\", which has one already",
        ),
        (
            "            set: 1,",
            "            set: 4,",
            "is of set 4, which is not there",
        ),
        (
            "            gear: \"top\",",
            "            gear: \"8\",",
            "is of gear \"8\", which is not there",
        ),
    ] {
        assert!(GOLDEN_V2.contains(from), "{from}");
        let sentence = format::read(&GOLDEN_V2.replacen(from, to, 1))
            .unwrap_err()
            .to_string();
        broken::assert_is_a_sentence(&sentence);
        assert!(sentence.starts_with("line "), "{to}: {sentence}");
        assert!(sentence.contains(says), "{to}: {sentence}");
    }
}
