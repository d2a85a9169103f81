//! The sheet of the plan of what changes: a list to tick, the sets of the page side by side, with their totals.

use super::Page;
use super::bench::note_lines_ui;
use super::for_readers::bold_words;
use super::job_sheet::{TEXT_SIZES, project_ui, sheet_caution_ui};
use crate::draw::bold;
use crate::draw::palette::Palette;
use crate::project::Candidate;
use crate::workshop::{PLAN_CAUTIONS, Part, PartEntry, Plan, PlanTotals};
use egui::{Color32, FontId, Galley, Pos2, Rect, Sense, Stroke, StrokeKind, Ui, UiBuilder, Vec2};
use std::sync::Arc;

/// The share of the page that the names of the parts take.
const NAMES: f32 = 0.27;

/// What stays free between columns, in points.
const GAP: f32 = 10.0;

/// The least height of a row, and the side of a box, in multiples of the text.
const ROW: f32 = 2.0;
const BOX: f32 = 0.85;

/// The text of what becomes of a part, in multiples of that of its name.
const ENTRY: f32 = 0.85;

/// One cell of a row.
struct Cell {
    text: String,
    /// Whether a box stands before it, and whether that is ticked.
    tick: Option<bool>,
    is_bold: bool,
}

impl Cell {
    fn words(text: impl Into<String>, is_bold: bool) -> Self {
        Self {
            text: text.into(),
            tick: None,
            is_bold,
        }
    }

    fn of(plan: &Plan, entry: &PartEntry) -> Self {
        Self {
            text: plan.entry_text(entry),
            tick: Some(entry.is_done),
            is_bold: false,
        }
    }
}

/// Lays the sheet out from top to bottom.
pub(super) fn page_ui(ui: &mut Ui, page: &Page, plan: &Plan) {
    let palette = page.palette();
    ui.spacing_mut().item_spacing.y = 4.0;
    bold_words(ui, "What changes", 22.0, palette.text);
    project_ui(ui, page, &palette);
    let foot = sheet_caution_ui(ui, &PLAN_CAUTIONS, &palette);
    ui.spacing_mut().item_spacing.y = 0.0;
    let fits = |size: &f32, ui: &mut Ui| {
        let area = ui.available_rect_before_wrap();
        let mut trial = ui.new_child(UiBuilder::new().max_rect(area).invisible());
        body_ui(&mut trial, page, plan, *size, &palette);
        trial.min_rect().bottom() <= foot
    };
    let found = TEXT_SIZES.iter().copied().find(|size| fits(size, ui));
    let size = found.unwrap_or(TEXT_SIZES[TEXT_SIZES.len() - 1]);
    body_ui(ui, page, plan, size, &palette);
    note_lines_ui(ui, foot, &palette);
}

/// How one of the totals is told.
type Told = fn(&Plan, &PlanTotals) -> String;

/// The parts, and beneath them what they come to.
fn body_ui(ui: &mut Ui, page: &Page, plan: &Plan, size: f32, palette: &Palette) {
    let sets = page.project().planned_sets();
    let name = |set: &&Candidate| Cell::words(set.set.name.as_str(), true);
    let heads = [Cell::words("Part", true)].into_iter();
    row_ui(
        ui,
        &heads.chain(sets.iter().map(name)).collect::<Vec<_>>(),
        size,
        palette,
    );
    for part in plan.parts().iter().filter(|part: &&Part| !part.is_struck) {
        let name = [Cell::words(part.name.as_str(), false)].into_iter();
        let entries = sets
            .iter()
            .map(|set| Cell::of(plan, part.of(set.id.into())));
        row_ui(ui, &name.chain(entries).collect::<Vec<_>>(), size, palette);
    }
    ui.add_space(size * 0.5);
    let totals: [(&str, Told); 3] = [
        ("In all", |plan, totals| plan.amount_text(totals.price)),
        ("Still open", |plan, totals| {
            plan.amount_text(totals.open_price)
        }),
        ("Parts", |_, totals| totals.count_text()),
    ];
    for (name, told) in totals {
        let of_sets = sets.iter().map(|set| {
            let totals = PlanTotals::of(plan, set.id.into());
            Cell::words(told(plan, &totals), false)
        });
        let name = [Cell::words(name, true)].into_iter();
        row_ui(ui, &name.chain(of_sets).collect::<Vec<_>>(), size, palette);
    }
}

/// A row of cells, each with a line beneath to write on.
fn row_ui(ui: &mut Ui, cells: &[Cell], size: f32, palette: &Palette) {
    let width = ui.available_width();
    let names = width * NAMES;
    let column = (width - names) / (cells.len().max(2) - 1) as f32;
    let side = size * BOX;
    let laid: Vec<Arc<Galley>> = (0..)
        .zip(cells)
        .map(|(at, cell): (usize, _)| {
            let (room, height) = if at == 0 {
                (names, size)
            } else {
                (column, size * ENTRY)
            };
            let font = if cell.is_bold {
                FontId::new(height, bold())
            } else {
                FontId::proportional(height)
            };
            let taken = cell.tick.map_or(0.0, |_| side + GAP * 0.7);
            let text = cell.text.clone();
            ui.painter()
                .layout(text, font, palette.text, room - GAP - taken)
        })
        .collect();
    let highest = laid
        .iter()
        .map(|galley| galley.size().y)
        .fold(0.0, f32::max);
    let height = (highest + size * 0.6).max(size * ROW);
    let (rect, _) = ui.allocate_exact_size(Vec2::new(width, height), Sense::hover());
    let painter = ui.painter();
    let mut left = rect.left();
    for (at, (cell, galley)) in cells.iter().zip(laid).enumerate() {
        let room = if at == 0 { names } else { column };
        let mut text_left = left;
        if let Some(is_ticked) = cell.tick {
            let top = rect.center().y - side / 2.0;
            let square = Rect::from_min_size(Pos2::new(left, top), Vec2::splat(side));
            box_ui(ui, square, is_ticked, palette.text);
            text_left += side + GAP * 0.7;
        }
        let top = rect.center().y - galley.size().y / 2.0;
        painter.galley(Pos2::new(text_left, top), galley, palette.text);
        let thickness = if cell.is_bold { 1.2 } else { 0.7 };
        let gap = if at + 1 < cells.len() { GAP } else { 0.0 };
        let line = left..=left + room - gap;
        painter.hline(line, rect.bottom() - 1.0, (thickness, palette.mark));
        left += room;
    }
}

/// A box to tick, crossed where that is done.
fn box_ui(ui: &Ui, square: Rect, is_ticked: bool, color: Color32) {
    let painter = ui.painter();
    let stroke = Stroke::new(1.0, color);
    painter.rect_stroke(square, 0.0, stroke, StrokeKind::Inside);
    if is_ticked {
        let within = square.shrink(square.width() * 0.2);
        let stroke = Stroke::new(1.6, color);
        painter.line_segment([within.left_top(), within.right_bottom()], stroke);
        painter.line_segment([within.left_bottom(), within.right_top()], stroke);
    }
}
