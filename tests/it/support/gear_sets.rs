//! Which gear set does a test drive? Plain ones, to be changed part by part.

use layshaft::gearing::{
    EngineLimits, EngineSpeed, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name, Ratio,
    RollingCircumference, SetResults, Tyre,
};

/// A ratio as a plain number.
pub(crate) fn ratio(number: f64) -> Ratio {
    Ratio::from_number(number).unwrap()
}

/// An engine speed in rev/min.
pub(crate) fn rpm(engine_rpm: f64) -> EngineSpeed {
    EngineSpeed::from_rpm(engine_rpm).unwrap()
}

/// A name.
pub(crate) fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

/// A gear of the shift chain on the first final drive, labelled with its number.
pub(crate) fn gear(number: u32, ratio: Ratio) -> Gear {
    Gear {
        id: GearId(number),
        label: Label::new(&number.to_string()).unwrap(),
        ratio,
        final_drive: 0,
        role: GearRole::Shifted,
        shift: None,
    }
}

/// Gears 1, 2, 3 … of those ratios on one final drive, shifted at 6000 rpm.
pub(crate) fn spec(ratios: Vec<Ratio>, final_drive: Ratio) -> GearSetSpec {
    GearSetSpec {
        name: name("a set"),
        gears: (1..).zip(ratios).map(|(n, r)| gear(n, r)).collect(),
        reverse: None,
        final_drives: vec![final_drive.into()],
        stages: Vec::new(),
        tyre: None,
        shift: rpm(6000.0),
    }
}

/// The same as a set, its ratios plain numbers.
pub(crate) fn set(ratios: &[f64], final_drive: f64) -> GearSet {
    let gears = ratios.iter().copied().map(ratio).collect();
    GearSet::try_from(spec(gears, ratio(final_drive))).unwrap()
}

/// A tyre of that measured rolling circumference.
pub(crate) fn tyre(rolling_circumference_mm: f64) -> Tyre {
    Tyre::RollingCircumference(RollingCircumference::from_mm(rolling_circumference_mm).unwrap())
}

/// A redline, and nothing known of idle and the lowest useful engine speed.
pub(crate) fn redline(redline_rpm: f64) -> EngineLimits {
    EngineLimits {
        idle: None,
        lowest_useful: None,
        redline: rpm(redline_rpm),
    }
}

/// The figures of a set on a tyre of that rolling circumference, with a redline of 7000 rpm.
pub(crate) fn results(set: &GearSet, rolling_circumference_mm: f64) -> SetResults {
    SetResults::of(set, &tyre(rolling_circumference_mm), &redline(7000.0))
}
