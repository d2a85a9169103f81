//! What can be done with the open document as a whole, and what happens after.

use crate::app::drafts::CellId;
use crate::app::file_picker::{Answer, Purpose};
use crate::app::recovery::Abandoned;
use crate::project::examples::Start;
use std::path::PathBuf;

/// What happens once unsaved work is settled.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum After {
    /// A new project for that kind of vehicle.
    New(Start),
    /// A file is chosen and opened.
    Choose,
    /// This file is opened.
    Open(PathBuf),
    /// An example is opened, counted from 0.
    Example(usize),
    /// The program ends.
    Quit,
}

/// One step in a document's life: a command, or what an answer leads to.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum Step {
    /// Nothing happens.
    Stay,
    /// What does not read in a field is to be mended.
    Mend(CellId),
    /// The document is left for something else; asks first where work would be lost.
    Leave(After),
    /// The document is left, whatever is lost.
    GoOn(After),
    /// It is saved where it stands; asks where it stands nowhere, or where that would harm.
    Save(Option<After>),
    /// A place is asked for.
    AskForPath(Purpose, Option<After>),
    /// Another place is asked for than this one, with which the question begins.
    AskForOther(PathBuf, Purpose, Option<After>),
    /// A path was typed.
    Typed(String),
    /// The system's dialog has answered.
    Chosen(Answer),
    /// Project or picture is written there, whatever is there.
    Write(PathBuf, Purpose, Option<After>),
    /// It is saved where it stands, though comments and layout of the file or work of somebody else
    /// are lost; with the digest of what the file held when that was asked.
    Replace(u64, Option<After>),
    /// What somebody else has put into the file takes the place of what stands here, which undoing
    /// brings back.
    TakeTheirs(PathBuf),
    /// A place beside the file is asked for.
    SaveElsewhere(Option<After>),
    /// A file is opened, whatever is lost.
    Open(PathBuf),
    /// What a file holds is opened without the file.
    OpenCopy(PathBuf),
    /// What a window left is opened.
    Recover(Box<Abandoned>),
    /// What a window left is opened without its file.
    RecoverCopy(Box<Abandoned>),
    /// What a window left is thrown away.
    ThrowAway(Box<Abandoned>),
}
