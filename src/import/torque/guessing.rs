//! What figures without a unit are in, as far as it can be told.
//!
//! Torque and power at one engine speed fit one pair of units only; without a power a torque is taken
//! for N·m, and a power without a torque for nothing: kW and horsepower are too far apart.

use super::numbers::{could_be_thousands, engine_rpm, half_a_digit, minute_scale, output};
use super::remarks::Remarks;
use super::rows::{Given, Row};
use super::words::{Output, Scale};
use crate::motion::torque_of_power_nm;
use crate::units::{OutputUnit, PowerUnit, TorqueUnit, plain_number};

/// The fastest that nobody means in turns a minute: engines idle beyond it, and sheets write thousands.
const FASTEST_IN_THOUSANDS: f64 = 20.0;

/// How far torque and power may be from each other before it is said, as a share.
const FITTING_SHARE: f64 = 0.03;

/// The units that torque and power have beside each other, the usual ones first.
///
/// N·m and PS make almost the same pair as lb·ft and kW, which hardly anybody writes.
const PAIRS: [(TorqueUnit, PowerUnit); 7] = [
    (TorqueUnit::NewtonMetre, PowerUnit::Kilowatt),
    (TorqueUnit::PoundFoot, PowerUnit::Horsepower),
    (TorqueUnit::NewtonMetre, PowerUnit::MetricHorsepower),
    (TorqueUnit::KilogramForceMetre, PowerUnit::MetricHorsepower),
    (TorqueUnit::NewtonMetre, PowerUnit::Horsepower),
    (TorqueUnit::PoundFoot, PowerUnit::Kilowatt),
    (TorqueUnit::KilogramForceMetre, PowerUnit::Kilowatt),
];

/// A torque or a power in its unit.
#[derive(Debug, Clone)]
pub(super) struct Measured {
    pub(super) text: String,
    /// In `unit`.
    number: f64,
    /// None where it cannot be told.
    pub(super) unit: Option<OutputUnit>,
    /// Whether the unit is not written.
    pub(super) is_guessed: bool,
    /// How much its spelling leaves open, in `unit`.
    slack: f64,
}

/// A row with its numbers.
#[derive(Debug, Clone)]
pub(super) struct Measures {
    pub(super) speed: String,
    pub(super) rpm: f64,
    pub(super) outputs: Vec<Measured>,
}

impl Measured {
    /// The torque in N·m at that engine speed, where the unit is known.
    pub(super) fn torque_nm(&self, rpm: f64) -> Option<f64> {
        Some(torque_nm(self.number, self.unit?, rpm))
    }

    /// The power in kW, of a power.
    pub(super) fn power_kw(&self) -> Option<f64> {
        match self.unit? {
            OutputUnit::Torque(_) => None,
            OutputUnit::Power(unit) => Some(unit.to_kw(self.number)),
        }
    }

    /// The figure with its unit.
    pub(super) fn shown(&self) -> String {
        let sign = self.unit.map_or("", OutputUnit::sign);
        format!("{} {sign}", self.text)
    }

    /// Whether two outputs at one engine speed are the same as far as their spellings tell.
    pub(super) fn fits(&self, other: &Self, rpm: f64) -> bool {
        let (Some(own), Some(others)) = (self.unit, other.unit) else {
            return false;
        };
        self.fits_as(own, other, others, rpm)
    }

    fn fits_as(&self, own: OutputUnit, other: &Self, others: OutputUnit, rpm: f64) -> bool {
        let a = torque_nm(self.number, own, rpm);
        let b = torque_nm(other.number, others, rpm);
        let slack = torque_nm(self.slack, own, rpm) + torque_nm(other.slack, others, rpm);
        (a - b).abs() <= FITTING_SHARE * a.abs().max(b.abs()) + slack
    }
}

/// A torque or a power as a torque in N·m.
fn torque_nm(number: f64, unit: OutputUnit, rpm: f64) -> f64 {
    match unit {
        OutputUnit::Torque(unit) => unit.to_nm(number),
        OutputUnit::Power(unit) => torque_of_power_nm(unit.to_kw(number) * 1000.0, rpm),
    }
}

/// The rows with numbers and, wherever it can be told, units; `chosen` instead of the guess.
pub(super) fn with_units(
    mut rows: Vec<Row>,
    chosen: Option<OutputUnit>,
    remarks: &mut Remarks,
) -> Vec<Measures> {
    let by_minute = |row: &Row| own_scale(row) == Scale::PerMinute;
    let speeds = rows.iter().filter(|row| by_minute(row));
    let minute_scale = minute_scale(speeds.map(|row| row.speed.as_str()));
    for row in rows.iter_mut().filter(|row| by_minute(row)) {
        row.scale = Some(minute_scale);
    }
    let scale = guessed_scale(&rows);
    let thousands = columns_in_thousands(&rows, remarks);
    let fit = fitting_pair(&rows, scale, chosen);
    let mut has_said = false;
    let measured = rows.into_iter().filter_map(|row| {
        let rpm = engine_rpm(&row.speed, scale.unwrap_or_else(|| own_scale(&row)))?;
        if scale.is_some() {
            let rpm = plain_number(rpm);
            let speed = &row.speed;
            if !has_said {
                remarks.say(format!(
                    "Engine speeds are in thousands: {speed} is {rpm} rpm."
                ));
            }
            has_said = true;
        }
        let outputs = row.outputs.iter().enumerate();
        let outputs = outputs.filter_map(|(at, given)| {
            let is_thousands = thousands.contains(&at);
            measured(at, given, is_thousands, fit, chosen)
        });
        Some(Measures {
            rpm,
            outputs: outputs.collect(),
            speed: row.speed,
        })
    });
    let measured: Vec<Measures> = measured.collect();
    if chosen.is_none() {
        say_guess(&measured, fit.is_some(), remarks);
    }
    measured
}

/// Names the first figures whose unit was guessed.
fn say_guess(rows: &[Measures], is_fit: bool, remarks: &mut Remarks) {
    let guessed = |row: &&Measures| row.outputs.iter().any(|output| output.is_guessed);
    let Some(row) = rows.iter().find(guessed) else {
        return;
    };
    let guessed: Vec<&Measured> = row.outputs.iter().filter(|o| o.is_guessed).collect();
    let shown: Vec<String> = guessed.iter().map(|output| output.shown()).collect();
    let (texts, shown) = (
        guessed
            .iter()
            .map(|o| o.text.as_str())
            .collect::<Vec<_>>()
            .join(" and "),
        shown.join(" and "),
    );
    remarks.say(if is_fit {
        format!("{texts} were taken for {shown}, for so torque and power fit each other.")
    } else {
        format!("No unit is written: {texts} was taken for {shown}.")
    });
}

fn own_scale(row: &Row) -> Scale {
    row.scale.unwrap_or(Scale::PerMinute)
}

/// Thousands, where all engine speeds are too low for anything else.
fn guessed_scale(rows: &[Row]) -> Option<Scale> {
    let are_low = rows.iter().all(|row| {
        let rpm = engine_rpm(&row.speed, own_scale(row));
        matches!(own_scale(row), Scale::PerMinute | Scale::DecimalPerMinute)
            && rpm.is_some_and(|rpm| rpm <= FASTEST_IN_THOUSANDS)
    });
    let turns = |row: &Row| engine_rpm(&row.speed, own_scale(row)).is_some_and(|rpm| rpm > 0.0);
    (are_low && rows.iter().filter(|row| turns(row)).count() > 1)
        .then_some(Scale::ThousandsPerMinute)
}

/// Which outputs have parted thousands: `1.050` among 980 and 995.
fn columns_in_thousands(rows: &[Row], remarks: &mut Remarks) -> Vec<usize> {
    let most = rows
        .iter()
        .map(|row| row.outputs.len())
        .max()
        .unwrap_or_default()
        .min(8);
    let columns = (0..most).filter(|at| {
        let texts = || {
            rows.iter()
                .filter_map(|row| Some(row.outputs.get(*at)?.text.as_str()))
        };
        let marked = || texts().filter(|text| text.contains(['.', ',']));
        let number = |text: &str| output(text).unwrap_or_default();
        let highest = |a: f64, b: f64| a.max(b);
        let most_marked = marked().map(number).fold(0.0, highest);
        let most_whole = texts()
            .filter(|text| !text.contains(['.', ',']))
            .map(number);
        let is_one = marked().all(could_be_thousands)
            && most_marked > 0.0
            && most_whole.fold(0.0, highest) > 100.0 * most_marked;
        if let Some(text) = marked().next().filter(|_| is_one) {
            let whole = text.replace(['.', ','], "");
            remarks.say(format!("{text} was read as {whole}."));
        }
        is_one
    });
    columns.collect()
}

/// The units of the first two outputs, where one is not written and rows fit one pair only.
fn fitting_pair(
    rows: &[Row],
    scale: Option<Scale>,
    chosen: Option<OutputUnit>,
) -> Option<[OutputUnit; 2]> {
    let lacks_unit = |given: &Given| given.output.and_then(Output::unit).is_none();
    let pairs: Vec<(f64, [Measured; 2], [Option<Output>; 2])> = rows
        .iter()
        .filter_map(|row| {
            let [a, b, ..] = &row.outputs[..] else {
                return None;
            };
            let rpm = engine_rpm(&row.speed, scale.unwrap_or_else(|| own_scale(row)))?;
            let outputs = [number(a, false)?, number(b, false)?];
            let tells = rpm > 0.0 && outputs.iter().all(|output| output.number > 0.0);
            (tells && (lacks_unit(a) || lacks_unit(b))).then_some((
                rpm,
                outputs,
                [a.output, b.output],
            ))
        })
        .collect();
    let (_, _, written) = pairs.first()?;
    let candidates = PAIRS.iter().flat_map(|(torque, power)| {
        let (torque, power) = (OutputUnit::Torque(*torque), OutputUnit::Power(*power));
        [[torque, power], [power, torque]]
    });
    let mut candidates = candidates.filter(|units| {
        let may_be = |(written, unit): (&Option<Output>, &OutputUnit)| {
            written.is_none_or(|written| {
                let unit = Output::from(*unit);
                written == unit || (written.unit().is_none() && written.is_as(unit))
            })
        };
        written.iter().zip(units).all(may_be) && chosen.is_none_or(|unit| units.contains(&unit))
    });
    candidates.find(|[first, second]| {
        let fit = pairs
            .iter()
            .filter(|(rpm, [a, b], _)| a.fits_as(*first, b, *second, *rpm));
        5 * fit.count() >= 4 * pairs.len()
    })
}

fn number(given: &Given, is_thousands: bool) -> Option<Measured> {
    let text = if is_thousands {
        given.text.replace(['.', ','], "")
    } else {
        given.text.clone()
    };
    Some(Measured {
        number: output(&text)?,
        slack: half_a_digit(&text),
        text,
        unit: given.output.and_then(Output::unit),
        is_guessed: false,
    })
}

/// The output at a place of its row, with a unit where it can be told.
fn measured(
    at: usize,
    given: &Given,
    is_thousands: bool,
    fit: Option<[OutputUnit; 2]>,
    chosen: Option<OutputUnit>,
) -> Option<Measured> {
    let mut measured = number(given, is_thousands)?;
    if measured.unit.is_some() {
        return Some(measured);
    }
    let is_alike = |unit: &OutputUnit| {
        given
            .output
            .is_none_or(|written| written.is_as(Output::from(*unit)))
    };
    let usual = OutputUnit::Torque(TorqueUnit::NewtonMetre);
    let unit = match fit {
        Some(units) => units.get(at).copied().filter(is_alike),
        None if at == 0 || given.output.is_some() => {
            [chosen, Some(usual)].into_iter().flatten().find(is_alike)
        }
        None => None,
    };
    measured.is_guessed = unit.is_some();
    measured.unit = unit;
    Some(measured)
}
