//! Which questions does the window ask, one at a time?

mod help;
mod paste;
mod path;
mod question;

pub(super) use help::help_ui;
pub use help::{CAUTIONS, OTHER_KEYS};
pub(super) use paste::{PasteAnswer, PasteDialog, paste_dialog_ui};
pub(super) use path::{PathAnswer, PathDialog, path_dialog_ui};
pub(super) use question::{Choice, Question, question_ui};

use super::file_picker::Purpose;
use super::recovery::Abandoned;
use std::path::PathBuf;

/// What happens once unsaved work is settled.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum After {
    /// A new project.
    New,
    /// A file is chosen and opened.
    Choose,
    /// This file is opened.
    Open(PathBuf),
    /// An example is opened, counted from 0.
    Example(usize),
    /// The program ends.
    Quit,
}

/// The dialog that is open.
#[derive(Debug)]
pub(super) enum Dialog {
    /// A path is chosen or typed.
    Path(PathDialog),
    /// Unsaved work would be lost.
    Unsaved(After),
    /// The file is there already.
    Replace(PathBuf, Purpose, Option<After>),
    /// The file would lose its comments and layout.
    OtherForm(Option<After>),
    /// A gear set is read from text.
    Paste(PasteDialog),
    /// A window that is gone left unsaved work.
    Recover(Abandoned),
    /// Another window has this document open.
    InUse(PathBuf),
    /// Somebody else changed the file since it was read.
    ChangedOnDisk(Option<After>),
    /// Keys and cautions.
    Help,
}
