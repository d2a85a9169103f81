//! Points of rows: those that can be, at rising engine speeds, one at each, and not too many.

use super::guessing::{Measured, Measures};
use super::pasted::{PastedCurve, PastedPoint};
use super::remarks::{CurveError, LeftOut, MOST_NAMED, Remarks, SPEAKS_OF_WHEELS, listed};
use super::thinning::{MOST_POINTS, thinned};
use crate::gearing::EngineSpeed;
use crate::units::{OutputUnit, plain_number};

/// The highest torque that can be typed, in N·m.
const HIGHEST_TORQUE_NM: f64 = 20_000.0;

/// The highest power that can be typed, in kW.
const HIGHEST_POWER_KW: f64 = 5000.0;

/// A row that can be a point.
struct Candidate {
    speed: EngineSpeed,
    torque_nm: f64,
    unit: OutputUnit,
    /// What the torque was made of.
    made_of: Measured,
}

/// The curve of all rows.
///
/// # Errors
/// When fewer than two points can be made of them.
pub(super) fn curve(
    rows: Vec<Measures>,
    is_at_wheels: bool,
    mut remarks: Remarks,
) -> Result<PastedCurve, CurveError> {
    let mut misfits = Misfits::default();
    let mut without_unit = None;
    let mut out_of_range = None;
    let mut candidates = Vec::with_capacity(rows.len());
    for row in rows {
        match candidate(row, &mut remarks, &mut misfits) {
            Ok(candidate) => candidates.push(candidate),
            Err(Refused::WithoutUnit(figure)) => {
                remarks.left_out(&figure, LeftOut::Figure);
                without_unit.get_or_insert(figure);
            }
            Err(Refused::OutOfRange(example)) => {
                out_of_range.get_or_insert(example);
            }
        }
    }
    say_order(&candidates, &mut remarks);
    candidates.sort_by(|a, b| a.speed.rpm().total_cmp(&b.speed.rpm()));
    let Some(first) = candidates.first() else {
        return Err(match (without_unit, out_of_range) {
            (Some(figure), _) => CurveError::PowerWithoutUnit { figure },
            (None, Some(example)) => CurveError::NoneInRange { example },
            (None, None) => CurveError::NoCurve,
        });
    };
    let (taken, is_guessed) = (first.unit, first.made_of.is_guessed);
    let points = one_each(&candidates, &mut misfits, &mut remarks);
    if let [point] = points[..] {
        let rpm = format!("{} rpm", plain_number(point.engine_speed.rpm()));
        return Err(CurveError::OnePoint { rpm });
    }
    misfits.say(&mut remarks);
    if points.len() > MOST_POINTS {
        remarks.say(format!(
            "Of {} points {MOST_POINTS} were kept, evenly, with both ends and the peaks of torque and power.",
            points.len()
        ));
    }
    if is_at_wheels {
        remarks.say(SPEAKS_OF_WHEELS.to_owned());
    }
    Ok(PastedCurve {
        points: thinned(&points),
        taken,
        is_guessed,
        is_at_wheels,
        remarks: remarks.into_sentences(),
    })
}

/// Why a row is no point.
enum Refused {
    /// A power that could be kW or horsepower, as it was written.
    WithoutUnit(String),
    /// A figure that cannot be, as it was written.
    OutOfRange(String),
}

/// The point that a row gives: of its torque, else of its power; the others are checked against it.
fn candidate(
    row: Measures,
    remarks: &mut Remarks,
    misfits: &mut Misfits,
) -> Result<Candidate, Refused> {
    let Ok(speed) = EngineSpeed::from_rpm(row.rpm) else {
        remarks.left_out(&row.speed, LeftOut::Speed);
        return Err(Refused::OutOfRange(row.speed));
    };
    let (known, unknown): (Vec<Measured>, Vec<Measured>) = row
        .outputs
        .into_iter()
        .partition(|output| output.unit.is_some());
    let (mut able, unable): (Vec<Measured>, Vec<Measured>) =
        known.into_iter().partition(|output| can_be(output, speed));
    for output in &unable {
        remarks.left_out(&output.shown(), LeftOut::Output);
    }
    let is_torque = |output: &Measured| matches!(output.unit, Some(OutputUnit::Torque(_)));
    let at = able.iter().position(is_torque).unwrap_or_default();
    if able.is_empty() {
        return Err(match (unable.first(), unknown.into_iter().next()) {
            (None, Some(power)) => Refused::WithoutUnit(power.text),
            (Some(output), _) => Refused::OutOfRange(output.shown()),
            (None, None) => Refused::OutOfRange(row.speed),
        });
    }
    let made_of = able.swap_remove(at);
    for other in &able {
        if !made_of.fits(other, speed.rpm()) {
            misfits.note(speed, &made_of, other);
        }
    }
    for other in &unknown {
        remarks.left_out(&other.text, LeftOut::Figure);
    }
    match (made_of.torque_nm(speed.rpm()), made_of.unit) {
        (Some(torque_nm), Some(unit)) => Ok(Candidate {
            speed,
            torque_nm,
            unit,
            made_of,
        }),
        _ => Err(Refused::WithoutUnit(made_of.text)),
    }
}

/// Whether an engine gives so much at that speed.
fn can_be(output: &Measured, speed: EngineSpeed) -> bool {
    let torque = output.torque_nm(speed.rpm());
    let power = output.power_kw();
    torque.is_some_and(|torque_nm| (0.0..=HIGHEST_TORQUE_NM).contains(&torque_nm))
        && power.is_none_or(|power_kw| (0.0..=HIGHEST_POWER_KW).contains(&power_kw))
}

/// Says that engine speeds do not rise from row to row, where they do not.
fn say_order(candidates: &[Candidate], remarks: &mut Remarks) {
    let runs = |holds: fn(f64, f64) -> bool| {
        let pairs = candidates.windows(2);
        pairs
            .into_iter()
            .all(|pair| holds(pair[0].speed.rpm(), pair[1].speed.rpm()))
    };
    if runs(|a, b| a <= b) {
        return;
    }
    let how = if runs(|a, b| a >= b) {
        "The engine speeds fall from row to row; the rows were turned round."
    } else {
        "The engine speeds do not rise from row to row; the rows were sorted."
    };
    remarks.say(how.to_owned());
}

/// One point for each engine speed, of rows that are sorted by it.
///
/// What is given twice and differs becomes the mean; a power beside a torque is only checked.
fn one_each(
    candidates: &[Candidate],
    misfits: &mut Misfits,
    remarks: &mut Remarks,
) -> Vec<PastedPoint> {
    let is_same = |a: &Candidate, b: &Candidate| a.speed.rpm().total_cmp(&b.speed.rpm()).is_eq();
    let mut means = Vec::new();
    let mut count = 0;
    let mut points = Vec::new();
    for same in candidates.chunk_by(is_same) {
        let Some(speed) = same.first().map(|candidate| candidate.speed) else {
            continue;
        };
        let is_torque = |c: &&Candidate| matches!(c.unit, OutputUnit::Torque(_));
        let torque = same.iter().find(is_torque);
        let taken: Vec<&Candidate> = match torque {
            Some(_) => same.iter().filter(is_torque).collect(),
            None => same.iter().collect(),
        };
        for power in same.iter().filter(|c| torque.is_some() && !is_torque(c)) {
            let of = torque.filter(|torque| !torque.made_of.fits(&power.made_of, speed.rpm()));
            if let Some(torque) = of {
                misfits.note(speed, &torque.made_of, &power.made_of);
            }
        }
        let first = taken[0].torque_nm;
        let differs = taken
            .iter()
            .any(|c| (c.torque_nm - first).abs() > 1e-9 * first);
        let torque_nm = if differs {
            count += 1;
            if means.len() < MOST_NAMED {
                let given = taken.iter().map(|c| c.made_of.shown()).collect();
                let given = listed(given, taken.len());
                means.push(format!("{given} at {} rpm", plain_number(speed.rpm())));
            }
            taken.iter().map(|c| c.torque_nm).sum::<f64>() / taken.len() as f64
        } else {
            first
        };
        points.push(PastedPoint {
            engine_speed: speed,
            torque_nm,
        });
    }
    if count > 0 {
        let means = listed(means, count);
        remarks.say(format!(
            "Given more than once, so the mean was taken: {means}."
        ));
    }
    points
}

/// Outputs that do not fit the one that was taken.
#[derive(Default)]
struct Misfits {
    first: Option<String>,
    count: usize,
}

impl Misfits {
    fn note(&mut self, speed: EngineSpeed, taken: &Measured, other: &Measured) {
        self.count += 1;
        self.first.get_or_insert_with(|| {
            let (taken, other) = (taken.shown(), other.shown());
            let rpm = plain_number(speed.rpm());
            format!("At {rpm} rpm {other} does not fit {taken}, which was taken")
        });
    }

    fn say(self, remarks: &mut Remarks) {
        if let Some(first) = self.first {
            remarks.say(match self.count {
                1 => format!("{first}."),
                count => format!("{first}; so it is in {count} places."),
            });
        }
    }
}
