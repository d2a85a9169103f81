//! What can a panel ask for?
//!
//! Panels change nothing themselves: they get a small borrowed view and return actions, which the
//! app performs after the frame.

use super::arrangement::{Part, Share};
use super::commands::Command;
use super::dialogs::finders::Finder;
use super::drafts::CellId;
use super::page::AppPage;
use super::table_panel::SeenColumns;
use super::typed::RatioForm;
use super::typed_as::TypedAs;
use crate::chart::{GearOfSet, Range};
use crate::gearing::GearId;
use crate::project::View;
use crate::project::{Edit, PageForm, SetId};
use crate::workshop::BenchItem;
use std::path::PathBuf;

/// Something a panel wants done.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// One edit as a step of its own.
    Edit(Edit),
    /// What a running gesture would do so far.
    Preview(Edit),
    /// The running gesture ended well.
    Commit,
    /// The running gesture is taken back.
    Cancel,
    /// A command from a menu, a button or a key.
    Run(Command),
    /// Another set comes forward and shows its handles.
    Select(SetId),
    /// A set's card is opened, the others are folded.
    OpenCard(SetId),
    /// Another of the parts is looked at where there is room for one only.
    Part(Part),
    /// The left column or the table takes another share of the window.
    Share(Share),
    /// Another page of the window is looked at.
    Page(AppPage),
    /// Another job of the bench is worked on, or the plan of what changes.
    OpenAtBench(BenchItem),
    /// The plan of what changes is filled in for another set, where there is room for one only.
    PlanFor(SetId),
    /// Another diagram is looked at, with its table.
    Show(View),
    /// A field is to be seen and typed in.
    Seek(CellId),
    /// The pointer is on a gear, or on none.
    Point(Option<GearOfSet>),
    /// Another part of a diagram is in view; none is the whole.
    Range(View, Option<Range>),
    /// A file is opened.
    Open(PathBuf),
    /// An example is opened, counted from 0.
    Example(usize),
    /// Gears are typed in another form.
    RatioForm(RatioForm),
    /// What a gear has just been typed as is remembered.
    Typed(SetId, GearId, TypedAs),
    /// The table shows the sets side by side, or one under another.
    SideBySide(bool),
    /// Other columns of the table are looked at.
    Columns(SeenColumns),
    /// The menu of the columns that was asked for has opened.
    ColumnsOpened,
    /// The write-up is looked at in another form of page.
    PageForm(PageForm),
    /// The sheet of a job or of the plan is looked at on the page for the bench, or the gear sets.
    Sheet(Option<BenchItem>),
    /// The write-up is opened with such a sheet.
    PrintSheet(BenchItem),
    /// The picture of the write-up goes to the clipboard.
    CopyPicture,
    /// The picture of the write-up goes into a file.
    SavePicture,
    /// Something goes to the clipboard; what it is, and its text.
    Copy(&'static str, String),
    /// Something is found for a set.
    Find(Finder),
    /// A sentence for the user.
    Say(String),
}
