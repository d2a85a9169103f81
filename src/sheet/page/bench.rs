//! The page for the bench: black on white, large enough to read from a step away, room for notes.

use super::Page;
use super::reading::{bold_words, chosen_sets, vehicle_text, words};
use crate::chart::SetTable;
use crate::draw::bold;
use crate::draw::palette::Palette;
use crate::gearing::GearResult;
use crate::units::{ratio_text, rpm_text, step_text, typed_rpm_text};
use egui::{Align2, Color32, FontId, Pos2, Rect, Sense, Ui, Vec2};

/// Text no larger and no smaller than this, in points.
const LARGEST: f32 = 22.0;
const SMALLEST: f32 = 10.0;

/// Between lines for notes, in points.
const NOTE_LINE: f32 = 30.0;

/// What title, vehicle, caution and a few lines for notes take, in points.
const HEAD_AND_FOOT: f32 = 270.0;

/// Lays the page out from top to bottom; figures are as large as the page allows.
pub(super) fn page_ui(ui: &mut Ui, page: &Page) {
    let palette = page.palette();
    let bottom = ui.max_rect().bottom();
    let title = page.project.title.as_ref();
    let title = title.map_or("Gear sets", |title| title.as_str());
    bold_words(ui, title, 24.0, palette.text);
    let date = page.project.date.as_ref().map(|date| format!("{date} · "));
    let vehicle = format!("{}{}", date.unwrap_or_default(), vehicle_text(page));
    words(ui, &vehicle, 14.0, palette.text);
    ui.add_space(8.0);
    let text_size = text_size(page, ui.available_height() - HEAD_AND_FOOT);
    for set in chosen_sets(page) {
        set_ui(ui, page, set, text_size, &palette);
        ui.add_space(text_size * 0.5);
    }
    if page.choices().with_note && !page.project.note.as_str().is_empty() {
        words(ui, page.project.note.as_str(), 13.0, palette.text);
    }
    note_lines_ui(ui, bottom - 34.0, &palette);
    let caution = "Check every count and ratio on the parts themselves. The maker's data, local law \
                   and licensed practice decide what is built and how it is worked on.";
    let at = Pos2::new(ui.max_rect().left(), bottom);
    let font = FontId::proportional(11.0);
    let galley = ui.painter().layout(
        caution.to_owned(),
        font,
        palette.text,
        ui.max_rect().width(),
    );
    let top = at - Vec2::new(0.0, galley.size().y);
    ui.painter().galley(top, galley, palette.text);
}

/// The text size at which all sets fit a height.
fn text_size(page: &Page, height: f32) -> f32 {
    let rows: usize = chosen_sets(page).map(|set| set.rows.len() + 2).sum();
    let gaps = 0.5 * chosen_sets(page).count() as f32;
    (height / (rows as f32 * ROW + gaps)).clamp(SMALLEST, LARGEST)
}

/// The height of a row, in multiples of its text.
const ROW: f32 = 1.5;

/// The columns: where each ends, as a share of the width, and what stands above it.
const COLUMNS: [(f32, &str); 6] = [
    (0.08, "gear"),
    (0.46, "teeth or ratio"),
    (0.60, "overall"),
    (0.70, "step"),
    (0.84, "shift at rpm"),
    (1.00, "falls to rpm"),
];

fn set_ui(ui: &mut Ui, page: &Page, set: &SetTable, text_size: f32, palette: &Palette) {
    bold_words(ui, &set.name, text_size * 1.1, palette.text);
    let finals = set
        .facts
        .iter()
        .find(|fact| fact.starts_with("final drive"));
    let stages = set.facts.iter().filter(|fact| fact.contains(" in "));
    let facts: Vec<&str> = finals
        .into_iter()
        .chain(stages)
        .map(String::as_str)
        .collect();
    words(ui, &facts.join(", "), text_size * 0.8, palette.text);
    let Some(results) = page.results.sets.get(set.place) else {
        return;
    };
    let heads: Vec<String> = COLUMNS.iter().map(|(_, head)| (*head).to_owned()).collect();
    row_ui(ui, &heads, text_size * 0.72, text_size, palette);
    let typed = page.project.sets.iter().nth(set.place);
    for (at, result) in results.gears.iter().chain(&results.reverse).enumerate() {
        let gear = typed
            .and_then(|c| c.set.gears.get(at))
            .map(|g| g.ratio.reading());
        let reverse = typed.and_then(|c| c.set.reverse.as_ref());
        let reading = gear.or_else(|| reverse.map(|r| r.ratio.reading()));
        let cells = cells(result, reading.unwrap_or_default());
        row_ui(ui, &cells, text_size, text_size, palette);
    }
}

fn cells(result: &GearResult, reading: String) -> Vec<String> {
    let shift = result.upshift.map(|up| typed_rpm_text(up.shift_rpm));
    let falls = result.upshift.map(|up| rpm_text(up.rpm_after_shift));
    vec![
        result.gear.label.clone(),
        reading,
        ratio_text(result.gear.overall_ratio),
        result.step.map(step_text).unwrap_or_default(),
        shift.unwrap_or_default(),
        falls.unwrap_or_default(),
    ]
}

/// One row over a rule; text that would not fit its column is made smaller.
fn row_ui(ui: &mut Ui, cells: &[String], text_size: f32, row_size: f32, palette: &Palette) {
    let size = Vec2::new(ui.available_width(), row_size * ROW);
    ui.spacing_mut().item_spacing.y = 0.0;
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let mut left = rect.left();
    for (i, (text, (end, _))) in cells.iter().zip(COLUMNS).enumerate() {
        let right = rect.left() + rect.width() * end;
        let place = Rect::from_x_y_ranges(left..=right, rect.y_range());
        cell_ui(ui, text, place, i, text_size, palette.text);
        left = right;
    }
    ui.painter()
        .hline(rect.x_range(), rect.bottom(), (0.7, palette.mark));
}

fn cell_ui(ui: &Ui, text: &str, place: Rect, column: usize, text_size: f32, color: Color32) {
    let family = if column == 0 {
        bold()
    } else {
        egui::FontFamily::Proportional
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
    let (align, at) = if column < 2 {
        (Align2::LEFT_CENTER, place.left_center())
    } else {
        (Align2::RIGHT_CENTER, place.right_center())
    };
    let rect = align.anchor_size(at, galley.size());
    ui.painter().galley(rect.min, galley, color);
}

/// Empty lines down to a height.
fn note_lines_ui(ui: &Ui, bottom: f32, palette: &Palette) {
    let area = ui.max_rect();
    let mut y = ui.min_rect().bottom() + NOTE_LINE;
    while y < bottom {
        ui.painter().hline(area.x_range(), y, (0.7, palette.mark));
        y += NOTE_LINE;
    }
}
