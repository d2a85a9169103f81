//! Gear sets, read from text that was copied from a data sheet, a road test or a forum.
//!
//! The way through: one kind of character, numbers and words (`plain`, `tokens`), without what
//! counts posts (`posts`) and what is offered beside the sets (`offers`), parted where columns,
//! lines or blocks of lines hold a set each (`splitting`; `blocks`, told by what lines do:
//! `line_kinds`; `names` are what they are called). Then each set (`one_set`): further stages (`stages`), what
//! each word is good for as a piece of a line (`figures`, `reader`, `pieces`), gears named and
//! numbered and joined with their values (`labels`), values left out for what stands around them
//! (`surroundings`), values sorted by what they are (`sorting`), the set (`assembling`), and of
//! which kind its figures are (`kinds`); the ratios that they mean (`resolving`).
//! Whatever was guessed or left out is said (`remarks`): the reading is a proposal.

mod assembling;
mod blocks;
mod figures;
mod kinds;
mod labels;
mod line_kinds;
mod names;
mod offers;
mod one_set;
mod pasted;
mod phrases;
mod pieces;
mod posts;
mod reader;
mod remarks;
mod resolving;
mod sorting;
mod spaced;
mod splitting;
mod stages;
mod surroundings;
mod tokens;
mod words;

use crate::import::plain::plain;

pub use offers::{Offer, Offered};
pub use pasted::{
    FigureKind, Pasted, PastedFinal, PastedGear, PastedPosition, PastedRatio, PastedReverse,
    PastedSet, PastedStage,
};
pub use remarks::{NO_FINAL_DRIVE, PasteError};
pub use resolving::{Behind, ResolveError, Resolved, pasted_parts};

/// The most characters that are read.
const MOST_CHARACTERS: usize = 20_000;

/// The most gear sets that are taken from one text: as many as a project compares.
const MOST_SETS: usize = 3;

/// The gear sets in `text`, and what else it says: lines or columns with labels, or a list.
///
/// Labels in several languages, points or commas, `:1`, teeth, Markdown tables; the last value of
/// a list, where it is clearly larger, is proposed as the final drive. What is no ratio is left
/// out with a remark. Reads up to 20000 characters; the time grows with their number.
///
/// # Errors
/// When the text is too long, holds no gears, or more than a gear set can have.
///
/// # Example
/// ```
/// let pasted = layshaft::import::gears::read_pasted("3.54/1.91/1.31/1.03/0.83; 4.06:1 axle")?;
/// assert_eq!(pasted.sets[0].gears.len(), 5);
/// assert_eq!(pasted.sets[0].final_drives[0].ratio.text, "4.06:1");
/// # Ok::<(), layshaft::import::gears::PasteError>(())
/// ```
pub fn read_pasted(text: &str) -> Result<Pasted, PasteError> {
    let characters = text.chars().count();
    if characters > MOST_CHARACTERS {
        return Err(PasteError::TooLong {
            characters,
            most: MOST_CHARACTERS,
        });
    }
    let mut remarks = remarks::Remarks::default();
    let tokens = tokens::tokens(&plain(text), &mut remarks);
    let tokens = posts::without_posts(&tokens);
    let (tokens, offers) = offers::taken(tokens, &mut remarks);
    let sets = splitting::parted(&tokens)
        .into_iter()
        .map(|part| one_set::read(part.name, &part.tokens, &remarks))
        .collect::<Result<Vec<PastedSet>, PasteError>>()
        .or_else(|_| one_set::read(None, &tokens, &remarks).map(|set| vec![set]))?;
    Ok(Pasted { sets, offers })
}
