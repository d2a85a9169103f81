//! How does the table become shapes?
//!
//! The one drawing of it, for the screen and for the picture: a head, then the sets one under
//! another with their gears, figures under figures. Columns are as wide as their widest figure.

use super::palette::{Palette, dash};
use super::stroke::sample;
use crate::chart::{Cell, Column, Row, SetTable, Table};
use crate::gearing::GearId;
use crate::project::SetId;
use egui::text::{LayoutJob, TextFormat};
use egui::{Align, Align2, Color32, FontFamily, FontId, Galley, Pos2, Rect, Ui, Vec2};
use std::sync::Arc;

/// How a table is to be drawn.
#[derive(Debug, Clone)]
pub struct TableLook<'a> {
    /// Colours.
    pub palette: &'a Palette,
    /// The height of the text, in points.
    pub text_size: f32,
    /// The gear whose row is brought out.
    pub gear: Option<(SetId, GearId)>,
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
    pub gear: (SetId, GearId),
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

/// The columns that a comparison can do without, the least needed first.
const DETAILS: [&str; 4] = ["shift at", "drop", "per 1000 rpm", "overall"];

/// The columns that a narrow window does without: the cards and the diagram show them too.
const STANDING_ELSEWHERE: [&str; 3] = ["falls to", "step", "ratio"];

/// Every column of a table.
pub fn all_columns(table: &Table) -> Vec<usize> {
    (0..table.columns.len()).collect()
}

/// The columns that a comparison cannot do without.
pub fn essential_columns(table: &Table) -> Vec<usize> {
    let is_detail = |column: &Column| DETAILS.contains(&column.title.as_str());
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
    for detail in DETAILS.into_iter().chain(STANDING_ELSEWHERE) {
        if layout.width() <= width {
            break;
        }
        layout
            .columns
            .retain(|c| table.columns[c.at].title != detail);
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

/// What is said of a set beside its figures, wrapped.
struct SetWords {
    head: Arc<Galley>,
    findings: Vec<Arc<Galley>>,
}

impl SetWords {
    fn of(ui: &Ui, set: &SetTable, look: &TableLook<'_>) -> Self {
        let mut head = LayoutJob::default();
        let room = look.wrap_width - swatch_width(look);
        head.wrap.max_width = room;
        let bold = TextFormat::simple(font(look, super::bold()), look.palette.text);
        head.append(&set.name, 0.0, bold);
        if look.with_remarks {
            let baseline = if set.is_baseline { "baseline, " } else { "" };
            let facts = format!("{baseline}{}", set.facts.join(", "));
            let dim = TextFormat::simple(small(look), look.palette.dim_text);
            head.append(&facts, look.text_size * 0.8, dim);
        }
        let finding = |text: &String| {
            let color = look.palette.finding;
            let text = text.clone();
            ui.painter()
                .layout(text, small(look), color, look.wrap_width)
        };
        Self {
            head: ui.painter().layout_job(head),
            findings: if look.with_remarks {
                set.findings.iter().map(finding).collect()
            } else {
                Vec::new()
            },
        }
    }

    fn width(&self) -> f32 {
        let findings = self.findings.iter().map(|f| f.size().x);
        findings.fold(self.head.size().x + 60.0, f32::max)
    }
}

/// What the swatch takes before a set's name, in points.
fn swatch_width(look: &TableLook<'_>) -> f32 {
    look.text_size * 2.2 + 6.0
}

/// What is laid out once for all sets, so that figures stand under figures.
struct Layout {
    columns: Vec<LaidColumn>,
    row_height: f32,
}

/// One column with its places.
struct LaidColumn {
    /// Which column of the table it is.
    at: usize,
    is_number: bool,
    width: f32,
    /// What differences take behind the figures; 0 where there are none.
    difference_width: f32,
    head: Arc<Galley>,
}

impl Layout {
    fn of(ui: &Ui, table: &Table, sets: &[&SetTable], look: &TableLook<'_>) -> Self {
        let wanted = look
            .columns
            .iter()
            .filter_map(|&at| Some((at, table.columns.get(at)?)));
        let columns: Vec<LaidColumn> = wanted
            .map(|(at, column)| LaidColumn::of(ui, column, at, sets, look))
            .collect();
        Self {
            row_height: (look.text_size * 1.45).round(),
            columns,
        }
    }

    fn head_height(&self) -> f32 {
        let heads = self.columns.iter().map(|c| c.head.size().y);
        (heads.fold(0.0, f32::max) + 4.0).round()
    }

    fn width(&self) -> f32 {
        self.columns.iter().map(|c| c.width).sum()
    }

    /// The height of a set with its words, its gears and the gap behind it.
    fn height_of(&self, set: &SetTable, words: &SetWords) -> f32 {
        let findings: f32 = words.findings.iter().map(|f| f.size().y + 2.0).sum();
        let head = words.head.size().y.max(self.row_height);
        head + self.row_height * (set.rows.len() as f32 + 0.4) + findings
    }
}

fn font(look: &TableLook<'_>, family: FontFamily) -> FontId {
    FontId::new(look.text_size, family)
}

fn small(look: &TableLook<'_>) -> FontId {
    FontId::proportional(look.text_size * 0.88)
}

impl LaidColumn {
    fn of(ui: &Ui, column: &Column, at: usize, sets: &[&SetTable], look: &TableLook<'_>) -> Self {
        let cells = || {
            sets.iter()
                .flat_map(|set| &set.rows)
                .map(|row| &row.cells[at])
        };
        let widest = |widths: &mut dyn Iterator<Item = f32>| widths.fold(0.0, f32::max);
        let measured = |text: &str, font: FontId| {
            let color = look.palette.text;
            let galley = ui.painter().layout_no_wrap(text.to_owned(), font, color);
            galley.size().x
        };
        let family = if column.is_number {
            FontFamily::Proportional
        } else {
            super::bold()
        };
        let plain = font(look, family);
        let figures = widest(&mut cells().map(|c| measured(&c.text, plain.clone())));
        let figures = figures.min(look.wrap_width * WIDEST_FIGURE);
        let differences = cells().filter(|c| has_difference(c));
        let mut difference_width =
            widest(&mut differences.map(|c| measured(&c.difference, small(look))));
        difference_width = difference_width.min(look.wrap_width * WIDEST_DIFFERENCE);
        if difference_width > 0.0 {
            difference_width += look.text_size * DIFFERENCE_GAP;
        }
        let head = head_galley(ui, column, figures, difference_width, look);
        let head_width = head.size().x - difference_width;
        Self {
            at,
            is_number: column.is_number,
            width: head_width.max(figures) + difference_width + look.text_size * 0.75,
            difference_width,
            head,
        }
    }
}

/// No text in a column is wider than this share of the whole: it is made smaller instead.
const WIDEST_FIGURE: f32 = 0.5;
const WIDEST_DIFFERENCE: f32 = 0.25;

/// Between a figure and its difference, in multiples of the text.
const DIFFERENCE_GAP: f32 = 0.4;

fn has_difference(cell: &Cell) -> bool {
    cell.shown_difference().is_some()
}

/// A heading in as many lines as its column's width asks for, its unit last.
///
/// Over differences it has the room of figure and difference, and begins with the figure.
fn head_galley(
    ui: &Ui,
    column: &Column,
    figures: f32,
    difference_width: f32,
    look: &TableLook<'_>,
) -> Arc<Galley> {
    let text = match column.unit.as_str() {
        "" => column.title.clone(),
        unit => format!("{},\n{unit}", column.title),
    };
    let width = figures.max(look.text_size * 3.4) + difference_width;
    let font = small(look);
    let mut job = LayoutJob::simple(text, font, look.palette.dim_text, width);
    job.halign = if column.is_number {
        Align::RIGHT
    } else {
        Align::LEFT
    };
    ui.painter().layout_job(job)
}

struct TablePainter<'a, 't> {
    ui: &'a Ui,
    layout: &'a Layout,
    look: &'a TableLook<'a>,
    table: &'t Table,
    drawn: TableDrawn<'t>,
}

impl<'t> TablePainter<'_, 't> {
    fn head(&mut self, at: Pos2) {
        let bottom = at.y + self.layout.head_height() - 4.0;
        let mut left = at.x;
        for column in &self.layout.columns {
            let head = &column.head;
            let edge = if column.is_number {
                let figures = left + column.width - self.edge() - column.difference_width;
                // A heading that is wider than the figures runs on over the differences.
                figures.max(left + self.look.text_size * DIFFERENCE_GAP + head.size().x)
            } else {
                left
            };
            let pos = Pos2::new(edge, bottom - head.size().y);
            let color = self.look.palette.dim_text;
            self.ui.painter().galley(pos, head.clone(), color);
            let rect = head.rect.translate(pos.to_vec2());
            self.drawn.labels.push((rect, head.text().to_owned()));
            left += column.width;
        }
    }

    /// What stays free at the right edge of a column, in points.
    fn edge(&self) -> f32 {
        self.look.text_size * 0.35
    }

    /// A set: its words, its gears, its findings.
    fn set(&mut self, set: &'t SetTable, words: &SetWords, at: Pos2) {
        let row_height = self.layout.row_height;
        let color = self.look.palette.set(set.place);
        let left = at.x + swatch_width(self.look);
        let swatch = Rect::from_min_max(at, Pos2::new(left - 6.0, at.y + row_height));
        sample(self.ui.painter(), swatch, color, dash(set.place));
        self.words(Pos2::new(left, at.y), &words.head);
        let mut top = at.y + words.head.size().y.max(row_height);
        for row in &set.rows {
            let size = Vec2::new(self.layout.width(), row_height);
            self.row(set, row, Rect::from_min_size(Pos2::new(at.x, top), size));
            top += row_height;
        }
        for finding in &words.findings {
            self.words(Pos2::new(at.x, top + 2.0), finding);
            top += finding.size().y + 2.0;
        }
    }

    fn words(&mut self, at: Pos2, galley: &Arc<Galley>) {
        let color = self.look.palette.text;
        self.ui.painter().galley(at, galley.clone(), color);
        let rect = Rect::from_min_size(at, galley.size());
        self.drawn.labels.push((rect, galley.text().to_owned()));
    }

    fn row(&mut self, set: &'t SetTable, row: &'t Row, rect: Rect) {
        let is_in_view = self.ui.is_rect_visible(rect);
        if is_in_view {
            self.ground(set, row, rect);
        }
        let mut left = rect.left();
        let mut cells = Vec::with_capacity(self.layout.columns.len());
        for column in &self.layout.columns {
            let size = Vec2::new(column.width, rect.height());
            let place = Rect::from_min_size(Pos2::new(left, rect.top()), size);
            let cell = &row.cells[column.at];
            if is_in_view {
                self.cell(set, cell, place, column);
            }
            cells.push((place, cell));
            left += column.width;
        }
        self.drawn.rows.push(DrawnRow {
            gear: (set.set, row.id),
            rect,
            cells,
            table: self.table,
            set,
            row,
        });
    }

    /// What lies beneath a row: the colour of its set where it is brought out, else a line.
    fn ground(&self, set: &SetTable, row: &Row, rect: Rect) {
        if self.look.gear == Some((set.set, row.id)) {
            let color = self.look.palette.set(set.place).gamma_multiply(0.22);
            self.ui.painter().rect_filled(rect, 2.0, color);
        } else {
            let line = (1.0, self.look.palette.grid);
            self.ui.painter().hline(rect.x_range(), rect.bottom(), line);
        }
    }

    fn cell(&mut self, set: &SetTable, cell: &Cell, place: Rect, column: &LaidColumn) {
        let palette = self.look.palette;
        let y = place.center().y;
        if !column.is_number {
            let bold = font(self.look, super::bold());
            let at = Pos2::new(place.left(), y);
            let color = palette.set(set.place);
            let room = place.width();
            self.write((at, Align2::LEFT_CENTER, room), &cell.text, bold, color);
            return;
        }
        let right = place.right() - self.edge() - column.difference_width;
        if has_difference(cell) {
            // Beside its figure, so that it is not taken for one of the next column.
            let gap = self.look.text_size * DIFFERENCE_GAP;
            let at = (
                Pos2::new(right + gap, y),
                Align2::LEFT_CENTER,
                column.difference_width - gap,
            );
            let small = small(self.look);
            self.write(at, &cell.difference, small, palette.dim_text);
        }
        let color = if cell.is_dim {
            palette.faint_text
        } else {
            palette.text
        };
        let plain = font(self.look, FontFamily::Proportional);
        let room = right - place.left();
        let at = (Pos2::new(right, y), Align2::RIGHT_CENTER, room);
        self.write(at, &cell.text, plain, color);
    }

    /// Text at a point, made smaller where its room is too narrow.
    fn write(
        &mut self,
        (at, align, room): (Pos2, Align2, f32),
        text: &str,
        mut font: FontId,
        color: Color32,
    ) {
        if text.is_empty() {
            return;
        }
        let painter = self.ui.painter();
        let layout = |font: FontId| painter.layout_no_wrap(text.to_owned(), font, color);
        let mut galley = layout(font.clone());
        if galley.size().x > room + 0.5 {
            font.size *= room / galley.size().x;
            galley = layout(font);
        }
        let rect = align.anchor_size(at, galley.size());
        painter.galley(rect.min, galley, color);
        self.drawn.labels.push((rect, text.to_owned()));
    }
}

/// A row in words: every figure with its heading, its unit and what differs.
fn spoken(table: &Table, set: &SetTable, row: &Row) -> String {
    let figures = table.columns.iter().zip(&row.cells).skip(1);
    let words: Vec<String> = figures
        .filter(|(_, cell)| !cell.text.is_empty())
        .map(|(column, cell)| spoken_cell(column, cell))
        .collect();
    format!("{}, gear {}: {}", set.name, row.gear, words.join(", "))
}

fn spoken_cell(column: &Column, cell: &Cell) -> String {
    let mut words = vec![&column.title, &cell.text, &column.unit];
    if has_difference(cell) {
        words.push(&cell.difference);
    }
    words.retain(|word| !word.is_empty());
    words.into_iter().cloned().collect::<Vec<_>>().join(" ")
}
