//! The rows of "Engine": its curve or a brochure's figures, its size and fuel, and what few people know.

use super::cells::TechnicalCell;
use super::row::{Answer, Row, of_engine, shown};
use crate::app::choice::Offer;
use crate::app::typed::{self, Quantity};
use crate::gearing::EngineSpeed;
use crate::motion::{Displacement, Fuel, Inertia, MeasuredAt, Strokes, TorqueCurve};
use crate::project::Edit;
use crate::units::plain_number;

/// The rows that make a curve, in reading order.
pub(super) const OF_CURVE: [Row; 2] = [
    Row {
        cell: TechnicalCell::TorqueCurve,
        name: "Torque curve",
        text: |about| {
            let curve = about.engine().curve.as_ref();
            curve
                .filter(|curve| curve.brochure().is_none())
                .map_or_else(String::new, points_text)
        },
        answer: Answer::Lines("rpm:N·m as 1000:96 2500:130, or pasted", |about, text| {
            let read = typed::torque_curve(text);
            of_engine(about, read, |engine, read| {
                let (curve, is_at_wheels) = read.unzip();
                engine.curve = curve;
                if is_at_wheels == Some(true) {
                    engine.measured_at = MeasuredAt::Wheels;
                }
            })
        }),
    },
    Row {
        cell: TechnicalCell::Brochure,
        name: "Brochure",
        text: |about| {
            let curve = about.engine().curve.as_ref();
            curve.map_or_else(String::new, brochure_text)
        },
        answer: Answer::Typed("peak N·m at rpm, kW at rpm", |about, text| {
            let read = typed::brochure(text);
            of_engine(about, read, |engine, curve| engine.curve = curve)
        }),
    },
];

/// The other rows that matter first.
pub(super) const OF_SIZE: [Row; 2] = [
    Row {
        cell: TechnicalCell::Displacement,
        name: "Capacity, L",
        text: |about| shown(about.engine().displacement.map(Displacement::l)),
        answer: Answer::Typed("swept volume; fuel needs it", |about, text| {
            let read = DISPLACEMENT.read(text);
            of_engine(about, read, |engine, litres| engine.displacement = litres)
        }),
    },
    Row {
        cell: TechnicalCell::Fuel,
        name: "Fuel",
        text: |about| fuel_text(about.engine().fuel).to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |fuel: Fuel| Offer {
                text: fuel_text(fuel),
                is_chosen: about.engine().fuel == fuel,
                edit: about.engine_with(|engine| engine.fuel = fuel),
            };
            [Fuel::Petrol, Fuel::Diesel].map(offer).into()
        }),
    },
];

/// What few people know, in reading order.
pub(super) const FURTHER: [Row; 4] = [
    Row {
        cell: TechnicalCell::MeasuredAt,
        name: "Measured at",
        text: |about| measured_text(about.engine().measured_at).to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |at: MeasuredAt| Offer {
                text: measured_text(at),
                is_chosen: about.engine().measured_at == at,
                edit: about.engine_with(|engine| engine.measured_at = at),
            };
            [MeasuredAt::Crank, MeasuredAt::Wheels].map(offer).into()
        }),
    },
    Row {
        cell: TechnicalCell::EngineInertia,
        name: "Inertia, kg·m²",
        text: |about| shown(about.engine().inertia.map(Inertia::kgm2)),
        answer: Answer::Typed("of what turns with the crank", |about, text| {
            let read = INERTIA.read(text);
            of_engine(about, read, |engine, inertia| engine.inertia = inertia)
        }),
    },
    Row {
        cell: TechnicalCell::Strokes,
        name: "Strokes",
        text: |about| strokes_text(about.engine().strokes).to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |strokes: Strokes| Offer {
                text: strokes_text(strokes),
                is_chosen: about.engine().strokes == strokes,
                edit: about.engine_with(|engine| engine.strokes = strokes),
            };
            [Strokes::Four, Strokes::Two].map(offer).into()
        }),
    },
    Row {
        cell: TechnicalCell::Willans,
        name: "Willans line",
        text: |about| {
            let line = about.engine().willans;
            line.map_or_else(String::new, |line| {
                let (slope, bar) = (line.slope_efficiency.share(), line.friction.bar());
                format!("{} {} bar", plain_number(slope), plain_number(bar))
            })
        },
        answer: Answer::Typed("that of its fuel", |about, text| {
            let read = typed::willans(text);
            of_engine(about, read, |engine, line| engine.willans = line)
        }),
    },
];

/// What is known of one set, which names its engine along.
pub(super) const OF_CONSUMPTION: [Row; 1] = [Row {
    cell: TechnicalCell::KnownFuel,
    name: "Known fuel",
    text: |about| typed::known_fuel::spelled(about.project),
    answer: Answer::Typed("7.4 at 100 in 5 of set 1", |about, text| {
        typed::known_fuel::read(about.project, text).map(Edit::KnownFuel)
    }),
}];

const DISPLACEMENT: Quantity<Displacement> = Quantity {
    new: Displacement::from_l,
    example: "1.6",
    unit: "L",
};

const INERTIA: Quantity<Inertia> = Quantity {
    new: Inertia::from_kgm2,
    example: "0.2",
    unit: "kg·m²",
};

fn points_text(curve: &TorqueCurve) -> String {
    let points = curve.points().iter().map(|point| {
        let (rpm, nm) = (point.speed.rpm(), point.torque.nm());
        format!("{}:{}", plain_number(rpm), plain_number(nm))
    });
    points.collect::<Vec<_>>().join(" ")
}

/// The figures that a curve was built from; empty where it was measured.
fn brochure_text(curve: &TorqueCurve) -> String {
    let Some(brochure) = curve.brochure() else {
        return String::new();
    };
    let [first, last] = brochure.plateau().map(EngineSpeed::rpm).map(plain_number);
    let plateau = if first == last {
        first
    } else {
        format!("{first}–{last}")
    };
    let nm = plain_number(brochure.torque().nm());
    let kw = plain_number(brochure.power().kw());
    let at = plain_number(brochure.power_speed().rpm());
    format!("{nm} N·m at {plateau}, {kw} kW at {at}")
}

fn fuel_text(fuel: Fuel) -> &'static str {
    match fuel {
        Fuel::Petrol => "petrol",
        Fuel::Diesel => "diesel",
    }
}

fn measured_text(at: MeasuredAt) -> &'static str {
    match at {
        MeasuredAt::Crank => "the crank",
        MeasuredAt::Wheels => "the wheels",
    }
}

fn strokes_text(strokes: Strokes) -> &'static str {
    match strokes {
        Strokes::Four => "four",
        Strokes::Two => "two",
    }
}
