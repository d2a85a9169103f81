//! What a shim job comes to: what the place takes, which of the stock to take, and what its neighbours give.

use super::quantity::ShimThickness;
use super::shim::{Band, NoMeasurement, ShimJob};
use super::stock::{Stack, Stock};
use crate::units::LengthUnit;

/// A shim job with its answer.
#[derive(Debug, Clone, PartialEq)]
pub struct AnsweredShim {
    /// The job.
    pub job: ShimJob,
    /// What the place takes, or why it takes nothing.
    pub wanted: Result<Band, NoMeasurement>,
    /// Whether it is said what can be had.
    pub is_stocked: bool,
    /// What of the stock is taken; none where nothing can be had, or nothing was measured.
    pub choice: Option<ShimChoice>,
}

/// What of a stock is taken.
#[derive(Debug, Clone, PartialEq)]
pub struct ShimChoice {
    /// The stack.
    pub stack: Stack,
    /// The thicknesses that can be stacked next below and above it, in mm.
    pub neighbours_mm: [Option<f64>; 2],
}

impl AnsweredShim {
    /// The answer to a job, with what can be had.
    pub fn of(job: ShimJob, stock: Option<&Stock>) -> Self {
        let wanted = job.wanted();
        let choice = stock.zip(wanted.ok()).map(|(stock, band)| {
            let stack = stock.chosen(band);
            let neighbours_mm = stock.neighbours_mm(stack.thickness_mm);
            ShimChoice {
                stack,
                neighbours_mm,
            }
        });
        Self {
            job,
            wanted,
            is_stocked: stock.is_some(),
            choice,
        }
    }

    /// `the place takes 0.80 to 0.85 mm`, or why it takes nothing.
    pub fn place_words(&self, unit: LengthUnit) -> String {
        match self.wanted {
            Err(no_measurement) => no_measurement.words(unit),
            Ok(band) => format!("the place takes {}", band_words(band, unit)),
        }
    }

    /// What to take, and what that gives; none where nothing can be had.
    pub fn choice_words(&self, unit: LengthUnit) -> Option<String> {
        let stack = &self.choice.as_ref()?.stack;
        let shims = shims_words(&stack.shims, unit);
        let setting = self.given_words(stack.thickness_mm, unit);
        Some(if stack.fits {
            format!("take {shims}: {setting}")
        } else {
            format!("none fits; the nearest is {shims}: {setting}, outside of what is wanted")
        })
    }

    /// What the next thinner and the next thicker stack would give.
    pub fn neighbour_words(&self, unit: LengthUnit) -> Vec<String> {
        let choice = self.choice.iter();
        let neighbours = choice.flat_map(|choice| choice.neighbours_mm.into_iter().flatten());
        let words = neighbours.map(|mm| {
            let setting = self.given_words(mm, unit);
            format!(
                "with {} {} it would be {setting}",
                unit.reckoned(mm),
                unit.sign()
            )
        });
        words.collect()
    }

    /// The setting that a thickness gives, in words.
    pub fn given_words(&self, thickness_mm: f64, unit: LengthUnit) -> String {
        self.job
            .setting_words(self.job.setting_mm(thickness_mm), unit)
    }
}

/// `0.80 to 0.85 mm`.
pub(super) fn band_words(band: Band, unit: LengthUnit) -> String {
    let [least, most] = [band.least_mm, band.most_mm].map(|mm| unit.reckoned(mm));
    let sign = unit.sign();
    if least == most {
        format!("{least} {sign}")
    } else {
        format!("{least} to {most} {sign}")
    }
}

/// `0.30 + 0.12 mm`, `no shim`.
fn shims_words(shims: &[ShimThickness], unit: LengthUnit) -> String {
    if shims.is_empty() {
        return "no shim".to_owned();
    }
    let shims: Vec<String> = shims.iter().map(|shim| unit.figure(shim.mm())).collect();
    format!("{} {}", shims.join(" + "), unit.sign())
}
