//! What the answers of several kinds of jobs say alike: what is missing, what readings tell, what to build in.

use super::answer::{Answer, JobState};
use crate::units::LengthUnit;
use crate::workshop::readings::{Readings, Resolution};
use crate::workshop::shim::ROUNDING_MM;
use crate::workshop::shim_answer::{AnsweredShim, band_words};

/// Whether something is known, and what it is.
pub(super) type Part = (bool, &'static str);

/// What is said where nobody knows which shim was built in.
pub(super) const TYPE_FITTED: &str = "type what was built in, and the next shim follows";

/// What a job comes to of which something is missing: open as long as nothing is typed.
pub(super) fn lacking(is_untouched: bool, parts: &[Part]) -> Answer {
    let state = if is_untouched {
        JobState::Open
    } else {
        JobState::ToMeasure
    };
    missing_words(parts)
        .into_iter()
        .fold(Answer::new(state), Answer::said)
}

/// What of these is missing; none where nothing is.
pub(super) fn missing_words(parts: &[Part]) -> Option<String> {
    let missing = parts.iter().filter(|(is_known, _)| !is_known);
    let missing: Vec<&str> = missing.map(|(_, what)| *what).collect();
    (!missing.is_empty()).then(|| format!("still missing: {}", missing.join(", ")))
}

/// What is known of the dial that was read.
#[derive(Debug, Clone, Copy)]
pub(super) struct Dial {
    /// What it tells apart.
    pub(super) resolution: Option<Resolution>,
    /// How far readings may scatter.
    pub(super) most_spread: Option<Resolution>,
    /// What to do where they scatter by more.
    pub(super) remedy: &'static str,
}

/// So many standard errors hold 95 of 100 means.
const SURE: f64 = 2.0;

impl Dial {
    fn standard_error_mm(self, readings: &Readings) -> f64 {
        readings.standard_error_mm(self.resolution.unwrap_or(Resolution::NONE))
    }

    fn readings_words(self, readings: &Readings, unit: LengthUnit) -> String {
        let sign = unit.sign();
        let mean = unit.reckoned(readings.mean_mm());
        let count = readings.as_slice().len();
        if count == 1 {
            return format!("one reading: {mean} {sign}");
        }
        let most = unit.reckoned(readings.variation_mm());
        let spread = unit.reckoned(readings.spread_mm());
        let error = unit.reckoned(self.standard_error_mm(readings));
        format!(
            "mean of {count} readings {mean} {sign}; they differ by {most}, spread (standard deviation) {spread}, \
             standard error of the mean {error} {sign}"
        )
    }

    /// That readings differ by more than they may.
    fn scatter_warning(self, readings: &Readings, unit: LengthUnit) -> Option<String> {
        let differ_mm = readings.variation_mm();
        let most = self.most_spread?.mm();
        (differ_mm > most + ROUNDING_MM).then(|| {
            format!(
                "the readings differ by {} {}, more than {}: {}",
                unit.reckoned(differ_mm),
                unit.sign(),
                unit.reckoned(most),
                self.remedy
            )
        })
    }

    /// That what is not known of the mean may carry the setting out of its band.
    fn doubt(
        self,
        answered: &AnsweredShim,
        readings: &Readings,
        unit: LengthUnit,
    ) -> Option<String> {
        let stack = answered.choice.as_ref().map(|choice| &choice.stack);
        let stack = stack.filter(|stack| stack.fits)?;
        let setting_mm = answered.job.setting_mm(stack.thickness_mm);
        let sure_mm = SURE * self.standard_error_mm(readings);
        let band = answered.job.setting;
        let may_be_outside = setting_mm - sure_mm < band.low().mm() - ROUNDING_MM
            || setting_mm + sure_mm > band.high().mm() + ROUNDING_MM;
        // A band of one figure has no room for any error.
        (may_be_outside && sure_mm > 0.0 && band.low() < band.high()).then(|| {
            format!(
                "twice the standard error, {} {}, may carry the setting outside: take more readings",
                unit.reckoned(sure_mm),
                unit.sign()
            )
        })
    }
}

/// The answer with what the readings are, and what must not be overlooked in them.
pub(super) fn with_readings(
    answer: Answer,
    answered: &AnsweredShim,
    dial: Dial,
    unit: LengthUnit,
) -> Answer {
    let Some(readings) = answered.job.measurement.readings() else {
        return answer;
    };
    let answer = answer.said(dial.readings_words(readings, unit));
    let outlier = outlier(readings, unit);
    let scatter = dial.scatter_warning(readings, unit);
    let doubt = dial.doubt(answered, readings, unit);
    answer.warnings(outlier.into_iter().chain(scatter).chain(doubt))
}

/// That something was read below 0 where nothing is.
pub(super) fn below_nothing(readings: &Readings, unit: LengthUnit) -> Option<String> {
    let all = readings.as_slice().iter().map(|reading| reading.mm());
    let below_mm = all.fold(0.0, f64::min);
    (below_mm < -ROUNDING_MM).then(|| {
        format!(
            "{} {} is below 0, and no play is: look at its sign, seat the bearings and measure again",
            unit.figure(below_mm),
            unit.sign()
        )
    })
}

/// That one reading lies far from all others.
pub(super) fn outlier(readings: &Readings, unit: LengthUnit) -> Option<String> {
    let all = readings.as_slice();
    let far = all.iter().enumerate().find(|(at, reading)| {
        let others = all.iter().enumerate().filter(|(other, _)| other != at);
        let others = Readings::new(others.map(|(_, reading)| *reading).collect());
        others
            .filter(|others| others.as_slice().len() > 1)
            .is_some_and(|others| {
                let near_mm = (FAR * others.variation_mm()).max(NEAR_MM);
                (reading.mm() - others.mean_mm()).abs() > near_mm
            })
    });
    far.map(|(_, reading)| {
        format!(
            "{} {} lies far from the other readings: measure it again",
            unit.figure(reading.mm()),
            unit.sign()
        )
    })
}

/// A reading lies far from others at so many times what these differ by, and at so many mm at least.
const FAR: f64 = 5.0;
const NEAR_MM: f64 = 0.1;

/// The answer with what the place takes next, and what of the stock that is.
pub(super) fn next_shim(answer: Answer, next: &AnsweredShim, unit: LengthUnit) -> Answer {
    let answer = answer.said(next.place_words(unit));
    next.choice_words(unit)
        .into_iter()
        .fold(answer, Answer::said)
}

/// What to build in, or what the place takes.
pub(super) fn before_building(answered: &AnsweredShim, unit: LengthUnit) -> Answer {
    let fits = answered.choice.as_ref().map(|choice| choice.stack.fits);
    let state = match fits {
        Some(false) => JobState::ToChange,
        Some(true) | None => JobState::ToMeasure,
    };
    let mut answer = Answer::new(state);
    let wanted = answered.job.wanted_words(unit);
    match (answered.choice_words(unit), answered.wanted) {
        (Some(choice), Ok(band)) => {
            answer = answer.result(choice);
            answer = answer.said(format!(
                "the place takes {} for {wanted}",
                band_words(band, unit)
            ));
        }
        _ => answer = answer.result(format!("{} for {wanted}", answered.place_words(unit))),
    }
    let neighbours = answered.neighbour_words(unit);
    answer = neighbours.into_iter().fold(answer, Answer::said);
    if fits == Some(true) {
        answer = answer.said("build it in and measure again");
    }
    answer
}
