//! The rows of "Second driven axle".

use super::super::about::About;
use super::super::cells::TechnicalCell;
use super::super::row::{Answer, Row, shown};
use crate::app::choice::Offer;
use crate::app::typed::{self, Quantity, Reading};
use crate::checks::{AngleRatio, Axle, Coupling, TakenOff};
use crate::gearing::Ratio;
use crate::project::{Edit, SecondAxleData};

/// All rows, in reading order.
pub(super) const OF_SECOND_AXLE: [Row; 6] = [
    Row {
        cell: TechnicalCell::SecondFinalDrive,
        name: "Final drive",
        text: |about| {
            let ratio = data(about).final_drive.as_ref();
            ratio.map_or_else(String::new, Ratio::to_string)
        },
        answer: Answer::Typed("of the axle that is driven beside", |about, text| {
            let ratio = second_final_drive(text)?;
            Ok(with(about, |data| data.final_drive = ratio))
        }),
    },
    Row {
        cell: TechnicalCell::SecondAxle,
        name: "It is the",
        text: |about| axle(about).word().to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |offered: Axle| Offer {
                text: offered.word(),
                is_chosen: axle(about) == offered,
                edit: with(about, |data| data.axle = Some(offered)),
            };
            [Axle::Front, Axle::Rear].map(offer).into()
        }),
    },
    Row {
        cell: TechnicalCell::TakenOff,
        name: "Taken off",
        text: |about| taken_off_text(data(about).taken_off).to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |offered: TakenOff| Offer {
                text: taken_off_text(offered),
                is_chosen: data(about).taken_off == offered,
                edit: with(about, |data| data.taken_off = offered),
            };
            [TakenOff::BeforeFinalDrive, TakenOff::BehindFinalDrive]
                .map(offer)
                .into()
        }),
    },
    Row {
        cell: TechnicalCell::AngleDrive,
        name: "Angle drive",
        text: |about| shown(data(about).angle_drive.map(AngleRatio::ratio)),
        answer: Answer::Typed("none; below 1 it speeds up", |about, text| {
            let read = ANGLE.read(text)?;
            Ok(with(about, |data| data.angle_drive = read))
        }),
    },
    Row {
        cell: TechnicalCell::SecondTyre,
        name: "Its tyre",
        text: |about| {
            let tyre = data(about).tyre;
            tyre.map_or_else(String::new, |tyre| tyre.to_string())
        },
        answer: Answer::Typed("that of the set", |about, text| {
            let tyre = typed::optional(text, typed::tyre)?;
            Ok(with(about, |data| data.tyre = tyre))
        }),
    },
    Row {
        cell: TechnicalCell::Coupling,
        name: "Coupling",
        text: |about| data(about).coupling().word().to_owned(),
        answer: Answer::Chosen(|about| {
            let offer = |coupling: Coupling| Offer {
                text: coupling.word(),
                is_chosen: data(about).coupling() == coupling,
                edit: with(about, |data| data.coupling = Some(coupling)),
            };
            Coupling::ALL.map(offer).into()
        }),
    },
];

const ANGLE: Quantity<AngleRatio> = Quantity {
    new: AngleRatio::new,
    example: "0.62",
    unit: "",
};

fn data(about: About<'_>) -> &SecondAxleData {
    &about.project.technical.second_axle
}

fn axle(about: About<'_>) -> Axle {
    data(about).which()
}

/// A final drive of gears, or none where nothing is typed.
pub(super) fn second_final_drive(text: &str) -> Reading<Option<Ratio>> {
    typed::optional(text, typed::reduction)
}

fn with(about: About<'_>, change: impl FnOnce(&mut SecondAxleData)) -> Edit {
    let mut data = Box::new(data(about).clone());
    change(&mut data);
    Edit::SecondAxleData(data)
}

fn taken_off_text(taken_off: TakenOff) -> &'static str {
    match taken_off {
        TakenOff::BeforeFinalDrive => "before the final drive",
        TakenOff::BehindFinalDrive => "behind it, at the ring gear",
    }
}

/// What is known, in a few words.
pub(super) fn in_short(about: About<'_>) -> String {
    let data = data(about);
    match &data.final_drive {
        None if *data == SecondAxleData::default() => "none".to_owned(),
        None => "in part".to_owned(),
        Some(ratio) => format!("{} {ratio}, {}", axle(about).word(), data.coupling().word()),
    }
}
