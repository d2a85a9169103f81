//! The sheet of a job: what is to be measured with lines for the pencil, the drawing, and what it comes to.

use super::bench::{caution_ui, note_lines_ui};
use super::for_readers::{bold_words, words};
use super::{JobSheet, Page};
use crate::chart::TryDiagram;
use crate::draw::bench::{self, BenchDrawing};
use crate::draw::bold;
use crate::draw::palette::Palette;
use crate::draw::try_diagram;
use crate::gearing::Name;
use crate::letters::capitalised;
use crate::workshop::{AnswerLine, Job, JobState, LineKind, Row, SHEET_CAUTION};
use egui::{FontId, Frame, Pos2, Sense, Stroke, Ui, UiBuilder, Vec2};

/// The heights of text that are tried, in points: the first with which all fits is taken.
pub(super) const TEXT_SIZES: [f32; 8] = [17.0, 16.0, 15.0, 14.0, 13.0, 12.0, 10.5, 9.0];

/// The height of a row, in multiples of its text: room for handwriting at the greatest.
const ROW: f32 = 2.1;

/// What stays free above a list for somebody else, in multiples of the text.
const LIST_GAP: f32 = 0.6;

/// The text of hints, in multiples of that of the names.
const HINT: f32 = 0.7;

/// The share of the page that is typed or written, the drawing beside it.
const WRITTEN: f32 = 0.62;

/// The share of that which the names take.
const NAMES: f32 = 0.52;

/// What stays free between the two sides, in points.
const GAP: f32 = 18.0;

/// The height of the drawing, as a share of its width, and the text in it, in points.
const DRAWING: f32 = 9.0 / 16.0;
const DRAWING_TEXT: f32 = 12.0;

/// Where readings are missing there is room for so many, with a gap between them, in points.
const READINGS: usize = 5;
const READING_GAP: f32 = 6.0;

/// The width of the numbers of items, and what stays free between cells, in points.
const NUMBERS: f32 = 30.0;
const CELL_GAP: f32 = 8.0;

/// Empty rows for further items, where a job has a list of them.
const FURTHER_ITEMS: usize = 4;

/// Lays the sheet out from top to bottom.
pub(super) fn page_ui(ui: &mut Ui, page: &Page, sheet: &JobSheet) {
    let palette = page.palette();
    ui.spacing_mut().item_spacing.y = 4.0;
    bold_words(ui, sheet.job.title(), 22.0, palette.text);
    let kind = sheet.job.data.kind();
    if sheet.job.name.is_some() {
        words(ui, kind.words(), 14.0, palette.text);
    }
    project_ui(ui, page, &palette);
    let foot = sheet_caution_ui(ui, kind.cautions(), &palette);
    let size = fitting(ui, sheet, foot, &palette);
    body_ui(ui, sheet, size, &palette);
    signed_ui(ui, size, &palette);
    note_lines_ui(ui, foot, &palette);
}

/// What every sheet says, and what this one says beyond it, at its foot; where that begins.
pub(super) fn sheet_caution_ui(ui: &Ui, further: &[&str], palette: &Palette) -> f32 {
    let cautions = [&[SHEET_CAUTION], further].concat();
    caution_ui(ui, &cautions.join(" "), palette)
}

/// Who measured it, and when.
fn signed_ui(ui: &mut Ui, size: f32, palette: &Palette) {
    ui.add_space(size * 0.6);
    let names = ["Measured by".to_owned(), "Date".to_owned()];
    let half = ui.available_width() / 2.0;
    table_row_ui(ui, &names, half, (size * 0.7, false), palette);
}

/// Which box it is about: the project's title and date, where they were typed.
pub(super) fn project_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let project = page.project();
    let texts = project.title.iter().chain(&project.date);
    let texts: Vec<&str> = texts.map(Name::as_str).collect();
    if !texts.is_empty() {
        words(ui, &texts.join(" · "), 14.0, palette.text);
    }
    ui.add_space(8.0);
}

/// The greatest text with which all of it stands above the foot, or the smallest.
fn fitting(ui: &mut Ui, sheet: &JobSheet, foot: f32, palette: &Palette) -> f32 {
    let fits = |size: &f32, ui: &mut Ui| {
        let area = ui.available_rect_before_wrap();
        let mut trial = ui.new_child(UiBuilder::new().max_rect(area).invisible());
        body_ui(&mut trial, sheet, *size, palette);
        signed_ui(&mut trial, *size, palette);
        trial.min_rect().bottom() <= foot
    };
    let found = TEXT_SIZES.iter().copied().find(|size| fits(size, ui));
    found.unwrap_or(TEXT_SIZES[TEXT_SIZES.len() - 1])
}

fn body_ui(ui: &mut Ui, sheet: &JobSheet, size: f32, palette: &Palette) {
    ui.spacing_mut().item_spacing.y = 0.0;
    let rows = sheet.job.rows(sheet.units);
    let width = ui.available_width();
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = GAP;
        ui.vertical(|ui| {
            ui.set_width(width * WRITTEN - GAP);
            // The name stands above.
            let is_own = |row: &&Row| row.key.item.is_none() && row.key != Job::NAME;
            for row in rows.iter().filter(is_own) {
                row_ui(ui, row, size, palette);
            }
        });
        ui.vertical(|ui| {
            ui.set_width(width * (1.0 - WRITTEN));
            drawing_ui(ui, sheet, palette);
            answer_ui(ui, sheet, size, palette);
        });
    });
    ui.add_space(size * 0.6);
    items_ui(ui, sheet, &rows, size, palette);
}

/// The drawing of the job.
fn drawing_ui(ui: &mut Ui, sheet: &JobSheet, palette: &Palette) {
    let width = ui.available_width();
    let size = Vec2::new(width, width * DRAWING);
    let (room, _) = ui.allocate_exact_size(size, Sense::hover());
    let drawing = BenchDrawing::of(&sheet.job.data);
    bench::paint(ui.painter(), room, drawing, palette, DRAWING_TEXT);
}

/// A name with its hint, and what stands there, or a line to write on.
fn row_ui(ui: &mut Ui, row: &Row, size: f32, palette: &Palette) {
    let room = Vec2::new(ui.available_width(), 0.0);
    let painter = ui.painter();
    let names = room.x * NAMES;
    let text = |text: &str, size: f32, width: f32, color| {
        let font = FontId::proportional(size);
        painter.layout(text.to_owned(), font, color, width)
    };
    let name = text(&row.name, size, names - GAP, palette.text);
    let said = row.answer.said();
    let value = text(said.unwrap_or_default(), size, room.x - names, palette.text);
    let is_empty = said.is_none();
    let hint = if is_empty { row.hint } else { "" };
    let hint = text(hint, size * HINT, names - GAP, palette.text);
    let hint_height = if is_empty && !row.hint.is_empty() {
        hint.size().y
    } else {
        0.0
    };
    let height = (name.size().y + hint_height).max(value.size().y) + size * 0.55;
    let (rect, _) =
        ui.allocate_exact_size(Vec2::new(room.x, height.max(size * ROW)), Sense::hover());
    let painter = ui.painter();
    let left = rect.left_top() + Vec2::new(0.0, size * 0.3);
    let name_height = name.size().y;
    painter.galley(left, name, palette.text);
    painter.galley(left + Vec2::new(0.0, name_height), hint, palette.text);
    painter.galley(left + Vec2::new(names, 0.0), value, palette.text);
    let [from, to] = [rect.left() + names, rect.right()];
    let lines = if is_empty && row.is_list { READINGS } else { 1 };
    let step = (to - from) / lines as f32;
    for at in 0..lines {
        let left = from + step * at as f32;
        let gap = if at + 1 < lines { READING_GAP } else { 0.0 };
        painter.hline(
            left..=left + step - gap,
            rect.bottom() - 1.0,
            (0.7, palette.mark),
        );
    }
}

/// What the job comes to so far; nothing of one that is still to be measured by pencil.
fn answer_ui(ui: &mut Ui, sheet: &JobSheet, size: f32, palette: &Palette) {
    if sheet.answer.state == JobState::Open {
        return;
    }
    let state = capitalised(sheet.answer.state.words());
    bold_words(ui, &state, size, palette.text);
    let lines = &sheet.answer.lines;
    let list = lines.iter().position(|line| line.kind == LineKind::Heading);
    let (told, list) = lines.split_at(list.unwrap_or(lines.len()));
    for line in told {
        ui.add_space(size * 0.2);
        let text = capitalised(&line.text);
        match line.kind {
            LineKind::Result | LineKind::Warning => bold_words(ui, &text, size * 0.9, palette.text),
            LineKind::Said | LineKind::Heading => words(ui, &text, size * 0.85, palette.text),
        }
    }
    list_ui(ui, list, size, palette);
    tries_ui(ui, sheet, palette);
}

/// What goes to somebody else, as the cutting list to the lathe: in a frame of its own.
fn list_ui(ui: &mut Ui, lines: &[AnswerLine], size: f32, palette: &Palette) {
    let Some((name, lines)) = lines.split_first() else {
        return;
    };
    ui.add_space(size * LIST_GAP);
    let edge = Stroke::new(1.4, palette.text);
    Frame::new().stroke(edge).inner_margin(8).show(ui, |ui| {
        ui.set_width(ui.available_width());
        bold_words(ui, &capitalised(&name.text), size, palette.text);
        for line in lines {
            ui.add_space(size * 0.3);
            words(ui, &capitalised(&line.text), size, palette.text);
        }
    });
}

/// The tries of the job, where it keeps any.
fn tries_ui(ui: &mut Ui, sheet: &JobSheet, palette: &Palette) {
    let Some(diagram) = TryDiagram::of_job(&sheet.job.data, sheet.answer.state, sheet.units) else {
        return;
    };
    ui.add_space(8.0);
    let width = ui.available_width();
    let size = Vec2::new(width, width * DRAWING);
    let (room, _) = ui.allocate_exact_size(size, Sense::hover());
    try_diagram::paint(ui.painter(), room, &diagram, palette, DRAWING_TEXT);
}

/// The items as a table, each with its number, and empty rows for further ones.
fn items_ui(ui: &mut Ui, sheet: &JobSheet, rows: &[Row], size: f32, palette: &Palette) {
    let Some(heads) = sheet.job.item_names(sheet.units) else {
        return;
    };
    let columns = heads.len();
    let numbered = |number: String, cells: Vec<String>| [vec![number], cells].concat();
    let head = numbered(String::new(), heads);
    table_row_ui(ui, &head, NUMBERS, (size * 0.85, true), palette);
    let count = sheet.job.data.item_count();
    for at in 0..count + FURTHER_ITEMS {
        let of_item = rows
            .iter()
            .filter(|row| row.key.item.map(usize::from) == Some(at));
        let mut cells: Vec<String> = of_item.map(|row| row.answer.text().to_owned()).collect();
        cells.resize(columns, String::new());
        let cells = numbered((at + 1).to_string(), cells);
        table_row_ui(ui, &cells, NUMBERS, (size * 0.9, false), palette);
    }
}

/// A row of cells above lines, the first one of a width of its own, the others alike.
fn table_row_ui(
    ui: &mut Ui,
    cells: &[String],
    first: f32,
    (size, is_head): (f32, bool),
    palette: &Palette,
) {
    let font = if is_head {
        FontId::new(size, bold())
    } else {
        FontId::proportional(size)
    };
    let whole = ui.available_width();
    let others = (whole - first) / (cells.len().max(2) - 1) as f32;
    let width = |at: usize| if at == 0 { first } else { others };
    let painter = ui.painter();
    let laid = |(at, cell): (usize, &String)| {
        painter.layout(
            cell.clone(),
            font.clone(),
            palette.text,
            width(at) - CELL_GAP,
        )
    };
    let galleys: Vec<_> = cells.iter().enumerate().map(laid).collect();
    let highest = galleys
        .iter()
        .map(|galley| galley.size().y)
        .fold(0.0, f32::max);
    let height = (highest + size * 0.5).max(size * ROW);
    let (rect, _) = ui.allocate_exact_size(Vec2::new(whole, height), Sense::hover());
    let painter = ui.painter();
    let mut left = rect.left();
    let count = galleys.len();
    for (at, galley) in galleys.into_iter().enumerate() {
        let place = Pos2::new(left, rect.bottom() - galley.size().y - size * 0.2);
        painter.galley(place, galley, palette.text);
        let gap = if at + 1 < count { CELL_GAP } else { 0.0 };
        let line = left..=left + width(at) - gap;
        let thickness = if is_head { 1.2 } else { 0.7 };
        painter.hline(line, rect.bottom() - 1.0, (thickness, palette.mark));
        left += width(at);
    }
}
