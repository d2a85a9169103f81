//! The page for the bench: black on white, large enough to read from a step away, room for notes.

use super::Page;
use super::for_readers::{bold_words, chosen_sets, vehicle_text, words};
use crate::chart::table::{AtTheBench, Figure};
use crate::chart::{Column, Row, SetTable};
use crate::draw::bold;
use crate::draw::palette::Palette;
use crate::gearing::{GearSet, Ratio};
use crate::units::SpeedUnit;
use egui::emath::GuiRounding as _;
use egui::{Align2, Color32, FontFamily, FontId, Pos2, Rect, Sense, Ui, UiBuilder, Vec2};

/// The heights of text that are tried, in points: the first that leaves room for notes is taken.
const TEXT_SIZES: [f32; 11] = [
    24.0, 22.0, 20.0, 18.0, 16.5, 15.0, 14.0, 13.0, 12.0, 11.0, 10.0,
];

/// Below this, in points, nothing can be read from a step away: lines for notes give way first.
const SMALLEST: f32 = 9.0;

/// Between lines for notes, in points.
const NOTE_LINE: f32 = 30.0;

/// As many lines for notes make figures smaller, if they must.
const WANTED_NOTE_LINES: f32 = 4.0;

/// What a remark behind the label of a gear takes of the page's width, in proportion to the columns.
const REMARK_WIDTH: u16 = 11;

/// The height of a row, in multiples of its text.
const ROW: f32 = 1.5;

/// Lays the page out from top to bottom; figures are as large as the page allows.
pub(super) fn page_ui(ui: &mut Ui, page: &Page) {
    let palette = page.palette();
    ui.spacing_mut().item_spacing.y = 4.0;
    title_ui(ui, page, &palette);
    let foot = caution_ui(ui, &palette);
    let room = foot - ui.cursor().top();
    let text_size = text_size(ui, page, room, &palette);
    body_ui(ui, page, text_size, &palette);
    note_lines_ui(ui, foot, &palette);
}

fn title_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let title = page.project().title.as_ref();
    let title = title.map_or("Gear sets", |title| title.as_str());
    bold_words(ui, title, 24.0, palette.text);
    let date = page
        .project()
        .date
        .as_ref()
        .map(|date| format!("{date} · "));
    let vehicle = format!("{}{}", date.unwrap_or_default(), vehicle_text(page));
    words(ui, &vehicle, 14.0, palette.text);
    ui.add_space(6.0);
}

/// What every reader must know, at the foot of the page; where it begins.
fn caution_ui(ui: &Ui, palette: &Palette) -> f32 {
    let caution = "Check every count and ratio on the parts themselves. The maker's data, local law \
                   and licensed practice decide what is built and how it is worked on.";
    let area = ui.max_rect();
    let font = FontId::proportional(11.0);
    let painter = ui.painter();
    let galley = painter.layout(caution.to_owned(), font, palette.text, area.width());
    let top = area.left_bottom() - Vec2::new(0.0, galley.size().y);
    painter.galley(top, galley, palette.text);
    top.y - 8.0
}

/// The text size at which everything fits a height and leaves lines for notes.
fn text_size(ui: &mut Ui, page: &Page, height: f32, palette: &Palette) -> f32 {
    let wanted = height - WANTED_NOTE_LINES * NOTE_LINE;
    let mut fits = |size: f32| {
        let area = ui.available_rect_before_wrap();
        let mut trial = ui.new_child(UiBuilder::new().max_rect(area).invisible());
        body_ui(&mut trial, page, size, palette);
        trial.min_rect().height() <= wanted
    };
    let mut sizes = TEXT_SIZES.into_iter();
    sizes.find(|size| fits(*size)).unwrap_or(SMALLEST)
}

/// The sets and the note.
fn body_ui(ui: &mut Ui, page: &Page, text_size: f32, palette: &Palette) {
    ui.spacing_mut().item_spacing.y = 0.0;
    for set in chosen_sets(page) {
        set_ui(ui, page, set, text_size, palette);
        ui.add_space(text_size * 0.6);
    }
    let note = page.project().note.as_str();
    if page.choices().with_note && !note.is_empty() {
        words(ui, note, text_size.min(13.0), palette.text);
    }
}

fn set_ui(ui: &mut Ui, page: &Page, set: &SetTable, text_size: f32, palette: &Palette) {
    bold_words(ui, &set.name, text_size * 1.1, palette.text);
    let facts = set
        .facts
        .iter()
        .filter(|fact| fact.definition.stands_at_bench);
    let facts: Vec<&str> = facts.map(|fact| fact.words.as_str()).collect();
    words(ui, &facts.join(", "), text_size * 0.8, palette.text);
    let candidate = page.project().sets.get(set.set);
    let columns = columns(page);
    let heads: Vec<String> = columns.iter().map(|c| c.head.clone()).collect();
    row_ui(ui, &columns, &heads, text_size * 0.72, text_size, palette);
    for row in &set.rows {
        let typed = candidate.and_then(|candidate| typed_ratio(&candidate.set, row));
        let cells: Vec<String> = columns.iter().map(|c| c.cell(row, typed)).collect();
        row_ui(ui, &columns, &cells, text_size, text_size, palette);
    }
}

/// One of the columns that stand on this page.
struct BenchColumn<'a> {
    /// Which column of the table it is.
    at: usize,
    column: &'a Column,
    look: AtTheBench,
    /// What stands above it, its unit last.
    head: String,
    /// Where it ends, as a share of the page's width.
    end: f32,
}

/// The columns of the table that stand on this page, from left to right.
fn columns(page: &Page) -> Vec<BenchColumn<'_>> {
    let columns = page.table().columns.iter().enumerate();
    let chosen = columns.filter_map(|(at, column)| Some((at, column, column.readers.bench?)));
    let has_remarks =
        chosen_sets(page).any(|set| set.rows.iter().any(|row| row.remark().is_some()));
    let width = |column: &Column, look: AtTheBench| match column.figure {
        Figure::Label if has_remarks => look.width + REMARK_WIDTH,
        _ => look.width,
    };
    let whole: u16 = chosen
        .clone()
        .map(|(_, column, look)| width(column, look))
        .sum();
    let mut taken = 0;
    chosen
        .map(|(at, column, look)| {
            taken += width(column, look);
            BenchColumn {
                at,
                column,
                look,
                head: head(column, look, page.project().units),
                end: f32::from(taken) / f32::from(whole),
            }
        })
        .collect()
}

fn head(column: &Column, look: AtTheBench, units: SpeedUnit) -> String {
    let title = column.figure.heading(look.title, units);
    match column.unit {
        "" => title,
        unit => format!("{title} {unit}"),
    }
}

impl BenchColumn<'_> {
    /// What stands in it; a ratio is said so that nobody mounts a pair the wrong way round.
    fn cell(&self, row: &Row, typed: Option<&Ratio>) -> String {
        let cell = &row.cells[self.at];
        match (self.column.figure, typed) {
            (Figure::TypedRatio, Some(typed)) => typed.reading(),
            (Figure::Label, _) => row.name().into_owned(),
            _ => cell.shown().into_owned(),
        }
    }

    /// Whether it is read like words, from the left: a label, or what drives what.
    fn is_words(&self) -> bool {
        match self.column.figure {
            Figure::Label | Figure::TypedRatio => true,
            Figure::Number(..) | Figure::AtEngineSpeed(..) | Figure::AtRoadSpeed(..) => false,
        }
    }
}

/// The ratio of a row as it was typed.
fn typed_ratio<'a>(set: &'a GearSet, row: &Row) -> Option<&'a Ratio> {
    match set.gear(row.id) {
        Some(gear) => Some(&gear.ratio),
        None => set.reverse.as_ref().map(|reverse| &reverse.ratio),
    }
}

/// One row over a rule; text that would not fit its column is made smaller.
fn row_ui(
    ui: &mut Ui,
    columns: &[BenchColumn<'_>],
    cells: &[String],
    text_size: f32,
    row_size: f32,
    palette: &Palette,
) {
    let size = Vec2::new(ui.available_width(), row_size * ROW);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let mut left = rect.left();
    for (column, text) in columns.iter().zip(cells) {
        let right = rect.left() + rect.width() * column.end;
        let place = Rect::from_x_y_ranges(left..=right, rect.y_range());
        cell_ui(ui, text, place, column, text_size, palette.text);
        left = right;
    }
    ui.painter()
        .hline(rect.x_range(), rect.bottom(), (0.7, palette.mark));
}

fn cell_ui(
    ui: &Ui,
    text: &str,
    place: Rect,
    column: &BenchColumn<'_>,
    text_size: f32,
    color: Color32,
) {
    let family = if column.look.stands_out {
        bold()
    } else {
        FontFamily::Proportional
    };
    let layout = |size: f32| {
        let font = FontId::new(size, family.clone());
        ui.painter().layout_no_wrap(text.to_owned(), font, color)
    };
    let room = place.width() - 8.0;
    let mut galley = layout(text_size);
    if galley.size().x > room {
        galley = layout(text_size * room / galley.size().x);
    }
    let (align, at): (Align2, Pos2) = if column.is_words() {
        (Align2::LEFT_CENTER, place.left_center())
    } else {
        (Align2::RIGHT_CENTER, place.right_center())
    };
    let rect = align.anchor_size(at, galley.size());
    ui.painter().galley(rect.min, galley, color);
}

/// Empty lines down to the foot of the page; that foot is there however little room is left.
fn note_lines_ui(ui: &mut Ui, foot: f32, palette: &Palette) {
    let area = ui.max_rect();
    let mut y = ui.min_rect().bottom() + NOTE_LINE;
    while y < foot {
        ui.painter().hline(area.x_range(), y, (0.7, palette.mark));
        y += NOTE_LINE;
    }
    // More than the foot leaves makes the page too high, which is told.
    let beyond = (ui.min_rect().bottom() - foot).max(0.0);
    ui.expand_to_include_y((area.bottom() + beyond).round_ui());
}
