//! A torque curve, read from text that was copied from a dyno sheet, a forum, a spreadsheet.
//!
//! The way through: one kind of character, lines and cells (`plain`, `lines`), numbers, units and words
//! (`numbers`, `words`, `tokens`), figures with what is known of each (`figures`). Then each line on
//! its own (`reader`): a heading or a row beneath one (`headings`), points that say themselves what is
//! what (`grouped`); columns without a heading (`bare`) and tables that run across (`across`) wait for
//! all lines. What each figure without a unit is in (`guessing`), and points of rows, sorted, one for
//! each engine speed, not too many (`points`, `thinning`).
//! Whatever was guessed or left out is said (`remarks`): the reading is a proposal.

mod across;
mod bare;
mod figures;
mod grouped;
mod guessing;
mod headings;
mod lines;
mod numbers;
mod pasted;
mod points;
mod reader;
mod remarks;
mod rows;
mod thinning;
mod tokens;
mod words;

use crate::units::OutputUnit;
pub use pasted::{PastedCurve, PastedPoint};
pub use remarks::{CurveError, SPEAKS_OF_WHEELS};

/// The most characters that are read: a log of some thousand rows.
const MOST_CHARACTERS: usize = 200_000;

/// The torque curve in `text`: columns of engine speed and torque, power or both, or single points.
///
/// Columns may be parted by tabs, semicolons, commas, blanks or pipes, and may run across; points are
/// written as `1000:120`, `1000 rpm 120 Nm` or `120 Nm @ 1000`. Units stand in a heading or behind each
/// figure. Torque is preferred to power and power checked against it. Torque without a unit is taken for
/// what fits the power beside it, else for N·m; [`read_torque_taking`] takes another. Reads up to 200000
/// characters; the time grows with their number.
///
/// # Errors
/// When the text is too long, or does not give a torque at two engine speeds at least.
///
/// # Example
/// ```
/// let curve = layshaft::import::torque::read_torque("1000:120 2000:170 4500:155")?;
/// assert_eq!(curve.points[1].engine_speed.rpm(), 2000.0);
/// assert_eq!(curve.points[1].torque_nm, 170.0);
/// assert!(curve.is_guessed);
/// # Ok::<(), layshaft::import::torque::CurveError>(())
/// ```
pub fn read_torque(text: &str) -> Result<PastedCurve, CurveError> {
    read(text, None)
}

/// The same, but figures without a unit are taken in `unit` where nothing in the text speaks against it:
/// what a reader chooses instead of the guess.
///
/// # Errors
/// As [`read_torque`].
pub fn read_torque_taking(text: &str, unit: OutputUnit) -> Result<PastedCurve, CurveError> {
    read(text, Some(unit))
}

fn read(text: &str, chosen: Option<OutputUnit>) -> Result<PastedCurve, CurveError> {
    let characters = text.chars().count();
    if characters > MOST_CHARACTERS {
        return Err(CurveError::TooLong {
            characters,
            most: MOST_CHARACTERS,
        });
    }
    let mut remarks = remarks::Remarks::default();
    let rows = reader::rows(text, &mut remarks);
    let rows = guessing::with_units(rows, chosen, &mut remarks);
    points::curve(rows, words::speak_of_wheels(text), remarks)
}
