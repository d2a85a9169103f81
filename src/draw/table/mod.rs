//! How does the table become shapes?
//!
//! The one drawing of it, for the screen and for the picture: a head, beneath it the rows with figures
//! under figures, and the words about each set. Columns are as wide as their widest figure. What names
//! the rows stays in view, and so does the head: where all is in view, that is where they stand.
//! A table of several parts has a head for each; that which stays is the one of the rows beneath it.

mod column;
mod content;
mod layout;
mod painter;
mod part;
mod spoken;
mod words;

pub use content::{Content, Heading, RowOf};
pub use layout::Layout;
pub use spoken::{DrawnName, DrawnRow};

use super::palette::Palette;
use crate::chart::table::Need;
use crate::chart::{Cell, GearOfSet, Table};
use egui::{Rect, Ui, Vec2};
use painter::TablePainter;

/// How a table is to be drawn.
#[derive(Debug, Clone)]
pub struct TableLook<'a> {
    /// Colours.
    pub palette: &'a Palette,
    /// The height of the text, in points.
    pub text_size: f32,
    /// The gear whose row is brought out.
    pub gear: Option<GearOfSet>,
    /// How the sets stand to each other.
    pub arrangement: Arrangement,
    /// How wide the words about a set may run before they wrap, in points.
    pub wrap_width: f32,
    /// Whether facts and findings are written beside and beneath the name of a set.
    pub with_remarks: bool,
}

/// How the sets of a table stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arrangement {
    /// Each with rows of its own.
    OneUnderAnother,
    /// A row for each gear; in it every figure of all sets.
    SideBySide,
}

/// What was drawn, and where.
#[derive(Debug)]
pub struct TableDrawn<'t> {
    /// All of it, in view or not.
    pub rect: Rect,
    /// What is above that is no row, whatever is scrolled beneath it.
    pub beneath_head: f32,
    /// All rows, in view or not.
    pub rows: Vec<DrawnRow<'t>>,
    /// What is said of sets and of all figures, with its place, in view or not.
    pub words: Vec<(Rect, String)>,
    /// The headings of figures that are in view.
    pub headings: Vec<DrawnHeading<'t>>,
    /// Every text that was drawn, with its place; what is out of view is not drawn.
    pub labels: Vec<(Rect, String)>,
}

/// The heading of one figure.
#[derive(Debug, Clone)]
pub struct DrawnHeading<'t> {
    /// What it says.
    pub heading: Heading<'t>,
    /// Where its letters stand.
    pub rect: Rect,
}

/// One figure of a row.
#[derive(Debug, Clone)]
pub struct DrawnCell<'t> {
    /// Whose figure it is.
    pub of: RowOf,
    /// What stands above it.
    pub heading: Heading<'t>,
    /// The figure.
    pub cell: &'t Cell,
    /// Where it stands.
    pub rect: Rect,
    /// Where the letters of its figure stand, if they are in view.
    pub written: Option<Rect>,
}

/// Every column of a table.
pub fn all_columns(table: &Table) -> Vec<usize> {
    (0..table.columns.len()).collect()
}

/// The columns for which a table has room at the least need: those of a smaller one are left out.
pub fn columns_from(table: &Table, least: Need) -> Vec<usize> {
    let columns = table.columns.iter().enumerate();
    let needed = columns.filter(|(_, column)| column.readers.need >= least);
    needed.map(|(at, _)| at).collect()
}

/// The columns of a table in as few groups as fit a width, each beginning with what names the rows.
pub fn column_groups(
    ui: &Ui,
    content: &Content<'_>,
    look: &TableLook<'_>,
    width: f32,
) -> Vec<Vec<usize>> {
    let layout = Layout::of(ui, content, look);
    let mut groups = Vec::new();
    for part in &layout.parts {
        let names = part.part.names.at;
        let mut group = vec![names];
        let mut taken = layout.names.width;
        for column in &part.figures {
            if taken + column.width > width && group.len() > 1 {
                groups.push(std::mem::replace(&mut group, vec![names]));
                taken = layout.names.width;
            }
            group.push(part.part.headings[column.at].at);
            taken += column.width;
        }
        groups.push(group);
    }
    groups
}

/// Draws all of a table.
pub fn table_ui<'t>(ui: &mut Ui, content: &'t Content<'t>, look: &TableLook<'_>) -> TableDrawn<'t> {
    let layout = Layout::of(ui, content, look);
    let size = Vec2::new(layout.size.x.max(layout.words_width()), layout.size.y);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    part_of_table(ui, &layout, look, rect, rect)
}

/// Draws the part of a table that is in view; `all` is where all of it would stand, with its head and
/// the column of the names.
pub fn part_of_table<'t>(
    ui: &Ui,
    layout: &Layout<'t>,
    look: &TableLook<'_>,
    all: Rect,
    view: Rect,
) -> TableDrawn<'t> {
    let mut painter = TablePainter::new(ui, layout, look, all, view);
    painter.lines();
    painter.heads();
    painter.drawn
}
