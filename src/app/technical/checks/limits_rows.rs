//! The rows of "Limits": what tyres, box and shafts are asked for, and what they are rated for.

use super::super::about::About;
use super::super::cells::TechnicalCell;
use super::super::row::{Answer, Row, shown};
use super::own::RATED;
use crate::app::choice::Offer;
use crate::app::typed::{self, Quantity, Reading};
use crate::checks::{RatedTorque, RatingFactor, ShaftSpeed, SharingShafts, TyresOnAxle};
use crate::motion::Mass;
use crate::project::{Edit, LimitsData};
use crate::units::{mark_text, plain_number};

/// What the tyres are asked for.
pub(super) const OF_TYRES: [Row; 4] = [
    Row {
        cell: TechnicalCell::TopSpeed,
        name: "Top speed",
        text: |about| {
            let speed = data(about).top_speed;
            speed.map_or_else(String::new, |speed| {
                mark_text(speed.kmh(), about.project.units)
            })
        },
        answer: Answer::Typed("of the registration paper", |about, text| {
            let present = data(about).top_speed;
            let read = typed::known_road_speed(text, about.project.units, present);
            of_limits(about, read, |limits, speed| limits.top_speed = speed)
        }),
    },
    Row {
        cell: TechnicalCell::FrontAxle,
        name: "Front axle, kg",
        text: |about| shown(data(about).front_axle.map(Mass::kg)),
        answer: Answer::Typed("its permitted load", |about, text| {
            of_limits(about, LOAD.read_large(text), |limits, load| {
                limits.front_axle = load;
            })
        }),
    },
    Row {
        cell: TechnicalCell::RearAxle,
        name: "Rear axle, kg",
        text: |about| shown(data(about).rear_axle.map(Mass::kg)),
        answer: Answer::Typed("its permitted load", |about, text| {
            of_limits(about, LOAD.read_large(text), |limits, load| {
                limits.rear_axle = load;
            })
        }),
    },
    Row {
        cell: TechnicalCell::RearTyres,
        name: "Rear tyres",
        text: |about| tyres_text(data(about).rear_tyres).to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |tyres: TyresOnAxle| Offer {
                text: tyres_text(tyres),
                is_chosen: data(about).rear_tyres == tyres,
                edit: with(about, |limits| limits.rear_tyres = tyres),
            };
            [TyresOnAxle::Two, TyresOnAxle::Four].map(offer).into()
        }),
    },
];

/// What box and shafts are rated for.
pub(super) const OF_BOX_AND_SHAFTS: [Row; 4] = [
    Row {
        cell: TechnicalCell::TorqueFactor,
        name: "Box factor",
        text: |about| shown(data(about).torque_factor.map(RatingFactor::factor)),
        answer: Answer::Typed("times its rated torque; 1", |about, text| {
            of_limits(about, FACTOR.read(text), |limits, factor| {
                limits.torque_factor = factor;
            })
        }),
    },
    Row {
        cell: TechnicalCell::AxleShaft,
        name: "Axle shaft, N·m",
        text: |about| shown(data(about).axle_shaft.map(RatedTorque::nm)),
        answer: Answer::Typed("what each may bear", |about, text| {
            of_limits(about, RATED.read_large(text), |limits, rated| {
                limits.axle_shaft = rated;
            })
        }),
    },
    Row {
        cell: TechnicalCell::SharingShafts,
        name: "Sharing it",
        text: |about| shafts_text(data(about).shafts).to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |shafts: Option<SharingShafts>| Offer {
                text: shafts_text(shafts),
                is_chosen: data(about).shafts == shafts,
                edit: with(about, |limits| limits.shafts = shafts),
            };
            let all = [SharingShafts::One, SharingShafts::Two, SharingShafts::Four].map(Some);
            [None].into_iter().chain(all).map(offer).collect()
        }),
    },
    Row {
        cell: TechnicalCell::PropellerShaft,
        name: "Prop. shaft, rpm",
        text: |about| shown(data(about).propeller_shaft.map(ShaftSpeed::rpm)),
        answer: Answer::Typed("its highest speed", |about, text| {
            of_limits(about, SHAFT.read_large(text), |limits, rpm| {
                limits.propeller_shaft = rpm;
            })
        }),
    },
];

const LOAD: Quantity<Mass> = Quantity {
    new: Mass::from_kg,
    example: "950",
    unit: "kg",
};

const FACTOR: Quantity<RatingFactor> = Quantity {
    new: RatingFactor::new,
    example: "0.9",
    unit: "",
};

const SHAFT: Quantity<ShaftSpeed> = Quantity {
    new: ShaftSpeed::from_rpm,
    example: "5500",
    unit: "rpm",
};

fn data(about: About<'_>) -> &LimitsData {
    &about.project.technical.limits
}

fn with(about: About<'_>, change: impl FnOnce(&mut LimitsData)) -> Edit {
    let mut limits = Box::new(*data(about));
    change(&mut limits);
    Edit::LimitsData(limits)
}

/// The edit that puts what was read into the limits.
fn of_limits<T>(about: About<'_>, read: Reading<T>, put: fn(&mut LimitsData, T)) -> Reading<Edit> {
    let read = read?;
    Ok(with(about, |limits| put(limits, read)))
}

fn tyres_text(tyres: TyresOnAxle) -> &'static str {
    match tyres {
        TyresOnAxle::Two => "two",
        TyresOnAxle::Four => "four: twins",
    }
}

fn shafts_text(shafts: Option<SharingShafts>) -> &'static str {
    match shafts {
        None => "as the driven axle says",
        Some(SharingShafts::One) => "one: chain or locked",
        Some(SharingShafts::Two) => "two of one axle",
        Some(SharingShafts::Four) => "four of two axles",
    }
}

/// What is known, in a few words.
pub(super) fn in_short(about: About<'_>) -> String {
    let data = data(about);
    let units = about.project.units;
    let top = data
        .top_speed
        .map(|v| format!("{} {}", mark_text(v.kmh(), units), units.sign()));
    let loads = [data.front_axle, data.rear_axle].map(|load| load.map(Mass::kg));
    let loads = match loads {
        [None, None] => None,
        loads => {
            let told = loads.map(|kg| kg.map_or_else(|| "?".to_owned(), plain_number));
            Some(format!("{} kg", told.join(" + ")))
        }
    };
    let parts: Vec<String> = top.into_iter().chain(loads).collect();
    if *data == LimitsData::default() {
        "not known".to_owned()
    } else if parts.is_empty() {
        "in part".to_owned()
    } else {
        parts.join(", ")
    }
}
