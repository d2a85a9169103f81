//! How does the table become shapes?
//!
//! The one drawing of it, for the screen and for the picture: a head, then the sets one under
//! another with their gears, figures under figures. Columns are as wide as their widest figure.

mod layout;
mod painter;

use super::palette::Palette;
use crate::chart::table::Need;
use crate::chart::{Cell, Column, GearOfSet, Row, SetTable, Table};
use egui::{Pos2, Rect, Ui, Vec2};
use layout::{LaidColumn, Layout, SetWords};
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
    /// Which columns of the table are drawn; the first of them names the gears.
    pub columns: Vec<usize>,
    /// How wide the words about a set may run before they wrap, in points.
    pub wrap_width: f32,
    /// Whether facts and findings are written beside and beneath the name of a set.
    pub with_remarks: bool,
}

/// What was drawn, and where.
#[derive(Debug)]
pub struct TableDrawn<'t> {
    /// All of it.
    pub rect: Rect,
    /// The row of every gear, in view or not.
    pub rows: Vec<DrawnRow<'t>>,
    /// Every text that was drawn, with its place; what is out of view is not drawn.
    pub labels: Vec<(Rect, String)>,
}

/// The row of one gear.
#[derive(Debug, Clone)]
pub struct DrawnRow<'t> {
    /// The gear.
    pub gear: GearOfSet,
    /// Where it stands.
    pub rect: Rect,
    /// Its cells, and where each stands.
    pub cells: Vec<(Rect, &'t Cell)>,
    table: &'t Table,
    set: &'t SetTable,
    row: &'t Row,
}

impl DrawnRow<'_> {
    /// Its figures with their headings, for those who hear them.
    pub fn spoken(&self) -> String {
        spoken(self.table, self.set, self.row)
    }
}

/// Every column of a table.
pub fn all_columns(table: &Table) -> Vec<usize> {
    (0..table.columns.len()).collect()
}

/// The columns that a comparison cannot do without.
pub fn essential_columns(table: &Table) -> Vec<usize> {
    let is_detail = |column: &Column| matches!(column.readers.need, Need::Detail(_));
    let columns = table.columns.iter().enumerate();
    let essential = columns.filter(|(_, column)| !is_detail(column));
    essential.map(|(at, _)| at).collect()
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
    let Some((gears, figures)) = layout.columns.split_first() else {
        return Vec::new();
    };
    let mut groups = Vec::new();
    let mut group = vec![gears.at];
    let mut taken = gears.width;
    for column in figures {
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

/// Draws sets of a table one under another, beneath one head.
pub fn table_ui<'t>(
    ui: &mut Ui,
    table: &'t Table,
    sets: &[&'t SetTable],
    look: &TableLook<'_>,
) -> TableDrawn<'t> {
    let layout = Layout::of(ui, table, sets, look);
    laid_table_ui(ui, table, sets, look, &layout)
}

/// The same with as many columns as fit a width; those that can be done without leave first.
pub fn fitting_table_ui<'t>(
    ui: &mut Ui,
    table: &'t Table,
    sets: &[&'t SetTable],
    look: &TableLook<'_>,
    width: f32,
) -> TableDrawn<'t> {
    let mut layout = Layout::of(ui, table, sets, look);
    let need = |column: &LaidColumn| table.columns[column.at].readers.need;
    while layout.width() > width {
        let least = layout.columns.iter().map(need).min();
        let Some(least) = least.filter(|least| *least != Need::Always) else {
            break;
        };
        layout.columns.retain(|column| need(column) != least);
    }
    laid_table_ui(ui, table, sets, look, &layout)
}

fn laid_table_ui<'t>(
    ui: &mut Ui,
    table: &'t Table,
    sets: &[&'t SetTable],
    look: &TableLook<'_>,
    layout: &Layout,
) -> TableDrawn<'t> {
    let words: Vec<SetWords> = sets.iter().map(|set| SetWords::of(ui, set, look)).collect();
    let heights = sets
        .iter()
        .zip(&words)
        .map(|(set, words)| layout.height_of(set, words));
    let height = layout.head_height() + heights.sum::<f32>();
    let widest = words
        .iter()
        .map(SetWords::width)
        .fold(layout.width(), f32::max);
    let (rect, _) = ui.allocate_exact_size(Vec2::new(widest, height), egui::Sense::hover());
    let mut painter = TablePainter {
        ui,
        layout,
        look,
        table,
        drawn: TableDrawn {
            rect,
            rows: Vec::new(),
            labels: Vec::new(),
        },
    };
    painter.head(rect.min);
    let mut top = rect.top() + layout.head_height();
    for (set, words) in sets.iter().zip(&words) {
        painter.set(set, words, Pos2::new(rect.left(), top));
        top += layout.height_of(set, words);
    }
    painter.drawn
}

/// A row in words: every figure with its heading, its unit and what differs.
fn spoken(table: &Table, set: &SetTable, row: &Row) -> String {
    let figures = table.columns.iter().zip(&row.cells).skip(1);
    let words: Vec<String> = figures
        .filter(|(_, cell)| !cell.text.is_empty())
        .map(|(column, cell)| spoken_cell(column, cell))
        .collect();
    format!("{}, gear {}: {}", set.name, row.name(), words.join(", "))
}

fn spoken_cell(column: &Column, cell: &Cell) -> String {
    let mut words = vec![column.title.as_str(), &cell.text, column.unit];
    words.extend(cell.difference.as_deref());
    words.retain(|word| !word.is_empty());
    words.join(" ")
}
