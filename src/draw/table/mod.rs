//! How does the table become shapes?
//!
//! The one drawing of it, for the screen and for the picture: a head, beneath it the gears with figures
//! under figures, and the words about each set. Columns are as wide as their widest figure. What names
//! the gears stays in view, and so does the head: where all is in view, that is where they stand.

mod column;
mod layout;
mod painter;
mod spoken;
mod words;

pub use layout::Layout;
pub use spoken::DrawnRow;

use super::palette::Palette;
use crate::chart::table::Need;
use crate::chart::{Cell, Column, GearOfSet, SetTable, Table};
use egui::{Rangef, Rect, Ui, Vec2};
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
    /// Which columns of the table are drawn; the first of them names the gears.
    pub columns: Vec<usize>,
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
    /// All rows, in view or not.
    pub rows: Vec<DrawnRow<'t>>,
    /// The headings of figures that are in view.
    pub headings: Vec<DrawnHeading<'t>>,
    /// Every text that was drawn, with its place; what is out of view is not drawn.
    pub labels: Vec<(Rect, String)>,
}

/// The heading of one figure.
#[derive(Debug, Clone)]
pub struct DrawnHeading<'t> {
    /// What it is the heading of.
    pub column: &'t Column,
    /// Where its letters stand.
    pub rect: Rect,
    /// From where to where the columns reach that it stands over.
    pub over: Rangef,
}

/// One cell of a row.
#[derive(Debug, Clone)]
pub struct DrawnCell<'t> {
    /// The gear that it is about.
    pub gear: GearOfSet,
    /// What stands in it.
    pub column: &'t Column,
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

/// The columns of a look in as few groups as fit a width, each beginning with the gears.
pub fn column_groups(
    ui: &Ui,
    table: &Table,
    sets: &[&SetTable],
    look: &TableLook<'_>,
    width: f32,
) -> Vec<Vec<usize>> {
    let layout = Layout::of(ui, table, sets, look);
    let gears = &layout.gears;
    let mut groups = Vec::new();
    let mut group = vec![gears.at];
    let mut taken = gears.width;
    for column in &layout.figures {
        if taken + column.width > width && group.len() > 1 {
            groups.push(std::mem::replace(&mut group, vec![gears.at]));
            taken = gears.width;
        }
        group.push(column.at);
        taken += column.width;
    }
    groups.push(group);
    groups
}

/// Draws all of a table.
pub fn table_ui<'t>(
    ui: &mut Ui,
    table: &'t Table,
    sets: &[&'t SetTable],
    look: &TableLook<'_>,
) -> TableDrawn<'t> {
    let layout = Layout::of(ui, table, sets, look);
    let size = Vec2::new(layout.size.x.max(layout.words_width()), layout.size.y);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    part_of_table(ui, &layout, look, rect, rect)
}

/// Draws the part of a table that is in view; `all` is where all of it would stand, with its head and
/// the column of the gears.
pub fn part_of_table<'t>(
    ui: &Ui,
    layout: &Layout<'t>,
    look: &TableLook<'_>,
    all: Rect,
    view: Rect,
) -> TableDrawn<'t> {
    let mut painter = TablePainter::new(ui, layout, look, all, view);
    painter.lines();
    painter.head();
    painter.drawn
}
