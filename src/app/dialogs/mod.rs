//! The dialogs of the window, one at a time: each draws what it is given and returns what was answered.

mod field;
pub(super) mod finders;
mod findings;
mod help;
mod looked_at;
pub(super) mod modal;
mod paste;
mod path;
mod question;

pub(super) use findings::{finding_lines, findings_ui};
pub(super) use help::help_ui;
pub use help::{CAUTIONS, OTHER_KEYS};
pub(super) use paste::{PasteAnswer, PasteDialog, paste_dialog_ui};
pub(super) use path::path_dialog_ui;
pub(super) use question::question_ui;

use super::find_command::FindCommand;
use finders::{CountDialog, FillDialog, PairDialog, WishDialog};

/// The dialog that is open, apart from what is asked about the document.
#[derive(Debug)]
pub(super) enum Dialog {
    /// A gear set is read from text.
    Paste(Box<PasteDialog>),
    /// Keys and cautions.
    Help,
    /// What is valid but strange.
    Findings,
    /// What fulfils a wish is found.
    Wish(Box<WishDialog>),
    /// A tooth pair is found.
    Pair(Box<PairDialog>),
    /// Steps are laid out.
    Fill(Box<FillDialog>),
    /// What is fitted is counted.
    Count(Box<CountDialog>),
    /// Something is looked for by its words.
    FindCommand(Box<FindCommand>),
}
