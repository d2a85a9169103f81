//! The rows of "Speed signal": where the speedometer's signal is taken, through what, how it reads, and the
//! rule that it is judged by.

use super::super::about::{About, Whose};
use super::super::cells::TechnicalCell;
use super::super::row::{Answer, Row};
use super::own::{of, own_with};
use crate::app::choice::Offer;
use crate::app::typed::{Reading, speedometer};
use crate::checks::{SignalSource, SpeedometerRule};
use crate::project::{Edit, SignalData, SpeedometerData};

/// The signal, of the vehicle or of a set.
pub(super) const OF_SIGNAL: [Row; 2] = [
    Row {
        cell: TechnicalCell::SignalSource,
        name: "Signal taken",
        text: |about| source_text(about, signal(about).source),
        answer: Answer::Chosen(sources),
    },
    Row {
        cell: TechnicalCell::SignalDrive,
        name: "Drive",
        text: |about| {
            let drive = signal(about).drive;
            drive.map_or_else(String::new, speedometer::drive_spelled)
        },
        answer: Answer::Typed("8 driving 21, or 4 pulses", |about, text| {
            let drive = speedometer::instrument_drive(text)?;
            Ok(signal_with(about, |signal| signal.drive = drive))
        }),
    },
];

/// How the instrument reads, and how it is judged.
pub(super) const OF_READING: [Row; 5] = [
    Row {
        cell: TechnicalCell::OdometerError,
        name: "Odometer, %",
        text: |about| {
            let ratio = data(about).reading.signal_ratio;
            ratio.map_or_else(String::new, speedometer::percent_off_spelled)
        },
        answer: Answer::Typed("off in the baseline; 2 counts too much", |about, text| {
            let read = speedometer::percent_off(text);
            of_data(about, read, |data, ratio| data.reading.signal_ratio = ratio)
        }),
    },
    Row {
        cell: TechnicalCell::NeedleError,
        name: "Needle, %",
        text: |about| {
            let ratio = data(about).reading.needle_ratio;
            ratio.map_or_else(String::new, speedometer::percent_off_spelled)
        },
        answer: Answer::Typed("more than the odometer; 3 shows too much", |about, text| {
            let read = speedometer::percent_off(text);
            of_data(about, read, |data, ratio| data.reading.needle_ratio = ratio)
        }),
    },
    Row {
        cell: TechnicalCell::MeterConstant,
        name: "Meter, per km",
        text: |about| {
            let meter = data(about).reading.meter;
            meter.map_or_else(String::new, speedometer::meter_spelled)
        },
        answer: Answer::Typed("turns or pulses; or 1000 a mile", |about, text| {
            let read = speedometer::meter(data(about).reading.meter, text);
            of_data(about, read, |data, meter| data.reading.meter = meter)
        }),
    },
    Row {
        cell: TechnicalCell::SpeedRule,
        name: "Rule",
        text: |about| data(about).rule.short_name().to_owned(),
        answer: Answer::Chosen(rules),
    },
    Row {
        cell: TechnicalCell::OwnRule,
        name: "Own rule",
        text: |about| speedometer::rule_spelled(data(about).rule, about.project.units),
        answer: Answer::Typed("10 % + 4 above the true speed", |about, text| {
            let read = speedometer::rule(text, about.project.units);
            of_data(about, read, |data, rule| {
                data.rule = rule.unwrap_or_default();
            })
        }),
    },
];

fn data(about: About<'_>) -> &SpeedometerData {
    &about.project.technical.speedometer
}

/// What is known of the signal, of the vehicle or as a set's own.
fn signal(about: About<'_>) -> SignalData {
    match about.whose {
        Whose::Vehicles => data(about).signal,
        Whose::Sets(_) => of(about).signal,
    }
}

/// The edit that changes the signal.
fn signal_with(about: About<'_>, change: impl FnOnce(&mut SignalData)) -> Edit {
    let mut signal = signal(about);
    change(&mut signal);
    match about.whose {
        Whose::Vehicles => {
            let data = SpeedometerData {
                signal,
                ..*data(about)
            };
            Edit::SpeedometerData(Box::new(data))
        }
        Whose::Sets(_) => own_with(about, |checks| checks.signal = signal),
    }
}

/// The edit that puts what was read into the data of the speedometer.
fn of_data<T>(
    about: About<'_>,
    read: Reading<T>,
    put: fn(&mut SpeedometerData, T),
) -> Reading<Edit> {
    let mut data = Box::new(*data(about));
    put(&mut data, read?);
    Ok(Edit::SpeedometerData(data))
}

/// What holds, in words; of a set that says nothing of it, the vehicle's.
fn source_text(about: About<'_>, source: Option<SignalSource>) -> String {
    match (source, about.whose) {
        (Some(source), _) => source.words().to_owned(),
        (None, Whose::Vehicles) => {
            let usual = SignalSource::default().words();
            format!("{usual}, starting value")
        }
        (None, Whose::Sets(_)) => AS_VEHICLE.to_owned(),
    }
}

/// What a set says that says nothing of its own.
const AS_VEHICLE: &str = "as the vehicle's";

fn sources(about: About<'_>) -> Vec<Offer> {
    let present = signal(about).source;
    let offer = |source: Option<SignalSource>, text| Offer {
        text,
        is_chosen: present == source,
        edit: signal_with(about, |signal| signal.source = source),
    };
    let own = SignalSource::ALL.into_iter();
    match about.whose {
        // There is always a place: of the vehicle the usual one, where nothing is said.
        Whose::Vehicles => own
            .map(|source| Offer {
                is_chosen: present.unwrap_or_default() == source,
                ..offer(Some(source), source.words())
            })
            .collect(),
        Whose::Sets(_) => std::iter::once(offer(None, AS_VEHICLE))
            .chain(own.map(|source| offer(Some(source), source.words())))
            .collect(),
    }
}

fn rules(about: About<'_>) -> Vec<Offer> {
    let present = data(about).rule;
    let fixed = [SpeedometerRule::R39, SpeedometerRule::Cfr393];
    let own = matches!(present, SpeedometerRule::Typed { .. }).then_some(present);
    let rules = fixed.into_iter().chain(own);
    rules
        .map(|rule| Offer {
            text: rule.short_name(),
            is_chosen: present == rule,
            edit: Edit::SpeedometerData(Box::new(SpeedometerData {
                rule,
                ..*data(about)
            })),
        })
        .collect()
}

/// Where it is taken and through what, in a few words.
pub(super) fn in_short(about: About<'_>) -> String {
    let signal = signal(about);
    let mut parts = vec![source_text(about, signal.source)];
    parts.extend(signal.drive.map(speedometer::drive_spelled));
    parts.join(", ")
}
