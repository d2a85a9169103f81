//! The parts of the table of speedometers that tell the other road checks: what is asked of tyres, box and
//! shafts beside what they are rated for, and where the set can be shifted down.

use super::{FigureCell, FigureColumn, FigurePart, FigureRow};
use crate::analysis::RoadChecks;
use crate::checks::{
    Axle, Borne, Checked, DownBy, KnownTopSpeed, LoadRating, LoadedAxle, MissedShift, Part,
    SpeedRating, TopSpeedSource, TwoAxles,
};
use crate::units::{
    SpeedUnit, decimals_text, mark_text, percent_text, plain_number, round_to, rpm_text,
};

/// What is asked beside what is rated; rows of what is not known are left out.
pub(super) fn ratings(checks: &RoadChecks, units: SpeedUnit) -> FigurePart {
    let checked = &checks.checked;
    let tyre = tyre_speed(checked, units).into_iter();
    let axles = checked.axles.iter().map(axle_load);
    let shaft = checked.axle_shaft.as_ref();
    let shaft = shaft.map(|(gear, torque)| {
        // The gear says the positions of stages along.
        borne(format!("axle shaft, {gear}"), torque)
    });
    let input = checked.input_torque.as_ref();
    let input = input.map(|torque| borne("gearbox input".to_owned(), torque));
    let propeller = checked.propeller_shaft.as_ref();
    let propeller = propeller.map(|speed| borne("propeller shaft".to_owned(), speed));
    let two = checked
        .two_axles
        .as_ref()
        .map(|(axles, _)| front_and_rear(axles));
    let rows = tyre.chain(axles).chain(input).chain(shaft);
    let column = |title: &str| FigureColumn {
        title: title.to_owned(),
        unit: "",
    };
    FigurePart {
        title: "Ratings",
        is_said: false,
        names: "of",
        columns: vec![column("asked"), column("rated"), column("verdict")],
        rows: rows.chain(propeller).chain(two).collect(),
    }
}

fn row(label: impl Into<String>, asked: String, rated: String, verdict: &str) -> FigureRow {
    FigureRow {
        gear: None,
        label: label.into(),
        remark: None,
        cells: vec![
            FigureCell::word(asked),
            FigureCell::word(rated),
            FigureCell::word(verdict),
        ],
    }
}

fn tyre_speed(checked: &Checked, units: SpeedUnit) -> Option<FigureRow> {
    let top = checked.top?;
    let speed = |kmh: f64| format!("{} {}", mark_text(round_to(kmh, 0.1), units), units.sign());
    let (rated, verdict) = match SpeedRating::of(checked.speed_symbol, top) {
        SpeedRating::Enough { symbol, rated_kmh } => {
            (format!("{}, {symbol}", speed(rated_kmh)), "enough")
        }
        SpeedRating::TooSlow { symbol, rated_kmh } => {
            let verdict = match top.source {
                TopSpeedSource::Registration | TopSpeedSource::Power => "too slow",
                TopSpeedSource::Redline => "slower than the redline",
            };
            (format!("{}, {symbol}", speed(rated_kmh)), verdict)
        }
        SpeedRating::Unknown { symbol } => (symbol.to_string(), "unknown here"),
        SpeedRating::NotGiven => return None,
    };
    let asked = format!("{} {}", speed(top.kmh), from_words(top));
    Some(row("tyre speed", asked, rated, verdict))
}

fn from_words(top: KnownTopSpeed) -> &'static str {
    match top.source {
        TopSpeedSource::Registration => "in the papers",
        TopSpeedSource::Power => "by power",
        TopSpeedSource::Redline => "at the redline",
    }
}

fn axle_load(axle: &LoadedAxle) -> FigureRow {
    let kg = |kg: f64| format!("{} kg", plain_number(round_to(kg, 1.0)));
    let tyres = axle.tyres.count();
    let (rated, verdict) = match LoadRating::of(axle.service, axle.tyres, axle.load) {
        LoadRating::Enough { carried_kg } => {
            (format!("{} by {tyres} tyres", kg(carried_kg)), "enough")
        }
        LoadRating::TooLittle { carried_kg } => {
            (format!("{} by {tyres} tyres", kg(carried_kg)), "too little")
        }
        LoadRating::Unknown { index } => (format!("load index {index}"), "unknown here"),
        LoadRating::NotGiven => (String::new(), "no load index on the tyre"),
    };
    let label = match axle.axle {
        Axle::Front => "front axle load",
        Axle::Rear => "rear axle load",
    };
    row(label, kg(axle.load.kg()), rated, verdict)
}

fn borne(label: String, borne: &Borne) -> FigureRow {
    let text = |number: f64| match borne.part {
        Part::GearboxInput | Part::AxleShaft => format!("{} N·m", decimals_text(number, 0)),
        Part::PropellerShaft => format!("{} rpm", rpm_text(number)),
    };
    let percent = percent_text(borne.share());
    let verdict = if borne.is_too_much() {
        format!("too much: {percent} %")
    } else {
        format!("{percent} %")
    };
    row(label, text(borne.load), text(borne.limit), &verdict)
}

fn front_and_rear(axles: &TwoAxles) -> FigureRow {
    let (farther, percent) = axles.mismatch();
    let turns = |ratio: f64| decimals_text(ratio, 3);
    let asked = format!("{} : {}", turns(axles.front.ratio), turns(axles.rear.ratio));
    let percent = decimals_text(percent, 1);
    let verdict = if percent == "0.0" {
        "equally far".to_owned()
    } else {
        format!("{} {percent} % farther", farther.word())
    };
    row("front : rear", asked, String::new(), &verdict)
}

/// Up to which road speed each change down leaves the engine below the redline.
pub(super) fn downshifts(checks: &RoadChecks, units: SpeedUnit) -> FigurePart {
    let rows = checks.downshifts.iter().map(|down| {
        let kmh = units.from_kmh(down.fastest_kmh);
        FigureRow {
            gear: None,
            label: format!("{} to {}", down.from, down.to),
            remark: None,
            cells: vec![FigureCell::of(Some(kmh), |speed| decimals_text(speed, 0))],
        }
    });
    FigurePart {
        title: "Changing down",
        is_said: false,
        names: "change",
        columns: vec![FigureColumn {
            title: "redline at".to_owned(),
            unit: units.sign(),
        }],
        rows: rows.collect(),
    }
}

/// How far the worst changes down would go over the redline; nothing of those that stay below.
pub(super) fn missed_words(checks: &RoadChecks, units: SpeedUnit) -> Option<String> {
    let both = checks.missed.iter().zip(DownBy::BOTH);
    let over = both.filter_map(|(missed, by)| {
        let missed = missed.as_ref().filter(|missed| missed.over_share > 0.0)?;
        Some(missed_text(missed, by, units))
    });
    let over: Vec<String> = over.collect();
    (!over.is_empty()).then(|| {
        let all = over.join(", ");
        format!("A wrong change down where it is changed up would over-rev the engine: {all}")
    })
}

/// `4 to 3 at 121 km/h turns it to 7420 rpm, 14 % over the redline`.
fn missed_text(missed: &MissedShift, by: DownBy, units: SpeedUnit) -> String {
    let speed = decimals_text(units.from_kmh(missed.speed_kmh), 0);
    let rpm = rpm_text(missed.engine_rpm);
    let over = percent_text(missed.over_share);
    let (from, to) = (&missed.from, &missed.to);
    let over = match by {
        DownBy::One => format!("{over} % over the redline"),
        DownBy::Two => format!("{over} % over"),
    };
    format!(
        "{from} to {to} at {speed} {} turns it to {rpm} rpm, {over}",
        units.sign()
    )
}
