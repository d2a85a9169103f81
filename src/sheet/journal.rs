//! What is left of a shaft that is turned down, in words.

use crate::units::{LengthUnit, TurningUnit};
use crate::workshop::{AnsweredJournal, JOURNAL_CAUTIONS, MAKER_DECIDES};

/// What is left, what was asked, what stops the job, and what is said beside every shaft that is turned down.
pub fn text(answered: &AnsweredJournal) -> String {
    let unit = LengthUnit::Millimetre;
    let mut lines = vec![answered.left_words(unit)];
    lines.extend(answered.shear_words(TurningUnit::NewtonMetre));
    lines.extend(answered.case_words(unit));
    lines.extend(answered.fillet_words(unit));
    lines.extend(answered.weak_words());
    lines.extend(answered.meant.stops().iter().map(ToString::to_string));
    lines.extend(JOURNAL_CAUTIONS.map(str::to_owned));
    lines.push(MAKER_DECIDES.to_owned());
    lines.join("\n") + "\n"
}
