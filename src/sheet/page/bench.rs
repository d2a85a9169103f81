//! The page for the bench: black on white, large enough to read from a step away, room for notes.

use super::Page;
use super::bench_table::{BenchTable, Laid, LongWords};
use super::for_readers::{bold_words, brackets_words, vehicle_text, words};
use crate::chart::SetTable;
use crate::chart::table::{ProjectSet, bench_facts};
use crate::draw::palette::Palette;
use egui::emath::GuiRounding as _;
use egui::{Align2, FontId, Pos2, Ui, UiBuilder, Vec2};

/// The heights of text that are tried, in points: the first that leaves room for notes is taken.
const TEXT_SIZES: [f32; 11] = [
    24.0, 22.0, 20.0, 18.0, 16.5, 15.0, 14.0, 13.0, 12.0, 11.0, 10.0,
];

/// From this size of text on, in points, further marked speeds are worth smaller figures.
const LARGE: f32 = 14.0;

/// Below this, in points, nothing can be read from a step away: lines for notes give way first.
const SMALLEST: f32 = 9.0;

/// The text of what fills a page to its end, in points.
const LEAST: f32 = 8.0;

/// Between lines for notes, in points.
const NOTE_LINE: f32 = 30.0;

/// As many lines for notes make figures smaller, if they must.
const WANTED_NOTE_LINES: f32 = 4.0;

/// From this size of text on, in points, no word is broken: words in several lines are slower to read than
/// smaller ones.
const UNBROKEN: f32 = 13.0;

/// Lays the page out from top to bottom; figures are as large as the page allows.
pub(super) fn page_ui(ui: &mut Ui, page: &Page) {
    let palette = page.palette();
    ui.spacing_mut().item_spacing.y = 4.0;
    title_ui(ui, page, &palette);
    let tables = BenchTable::all(page);
    let has_brackets = tables.iter().any(BenchTable::has_brackets);
    let brackets = has_brackets.then(|| brackets_words(page));
    let cautions: Vec<&str> = brackets.as_deref().into_iter().chain([CAUTION]).collect();
    let foot = caution_ui(ui, &cautions.join(" "), &palette);
    let room = foot - ui.cursor().top();
    let Some((table, laid)) = with_most_columns(ui, page, tables, room, &palette) else {
        return;
    };
    body_ui(ui, page, &table, &laid, &palette);
    note_lines_ui(ui, foot, &palette);
}

fn title_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let title = page.project().title.as_ref();
    let title = title.map_or("Gear sets", |title| title.as_str());
    bold_words(ui, title, 24.0, palette.text);
    let date = page.project().date.as_ref();
    let date = date.map(|date| format!("{date} · "));
    let vehicle = format!("{}{}", date.unwrap_or_default(), vehicle_text(page));
    words(ui, &vehicle, 14.0, palette.text);
    ui.add_space(6.0);
}

/// What every reader of figures must know.
const CAUTION: &str = "Check every count and ratio on the parts themselves. The maker's data, local law \
                       and licensed practice decide what is built and how it is worked on.";

/// Words at the foot of the page; where they begin.
pub(super) fn caution_ui(ui: &Ui, words: &str, palette: &Palette) -> f32 {
    let area = ui.max_rect();
    let font = FontId::proportional(11.0);
    let painter = ui.painter();
    let galley = painter.layout(words.to_owned(), font, palette.text, area.width());
    let top = area.left_bottom() - Vec2::new(0.0, galley.size().y);
    painter.galley(top, galley, palette.text);
    top.y - 8.0
}

/// Of these tables, the fewest columns first, the last whose figures are as large as they must be, or the
/// first.
fn with_most_columns<'a>(
    ui: &mut Ui,
    page: &Page,
    tables: Vec<BenchTable<'a>>,
    height: f32,
    palette: &Palette,
) -> Option<(BenchTable<'a>, Laid)> {
    let mut last = None;
    for table in tables.into_iter().rev() {
        let laid = laid(ui, page, &table, height, palette);
        let is_large = laid.is_unbroken && laid.text_size >= LARGE;
        last = Some((table, laid));
        if is_large {
            break;
        }
    }
    last
}

/// The columns in the text size at which everything fits a height and leaves lines for notes.
fn laid(ui: &mut Ui, page: &Page, table: &BenchTable<'_>, height: f32, palette: &Palette) -> Laid {
    let fits = |ui: &mut Ui, laid: &Laid, height: f32| {
        let area = ui.available_rect_before_wrap();
        let mut trial = ui.new_child(UiBuilder::new().max_rect(area).invisible());
        body_ui(&mut trial, page, table, laid, palette);
        trial.min_rect().height() <= height
    };
    let wanted = height - WANTED_NOTE_LINES * NOTE_LINE;
    for size in TEXT_SIZES {
        let laid = table.laid(ui, size, LongWords::Break);
        if (laid.is_unbroken || size < UNBROKEN) && fits(ui, &laid, wanted) {
            return laid;
        }
    }
    let smallest = table.laid(ui, SMALLEST, LongWords::Break);
    if fits(ui, &smallest, height) {
        return smallest;
    }
    let shrunk = table.laid(ui, SMALLEST, LongWords::Shrink);
    if fits(ui, &shrunk, height) {
        return shrunk;
    }
    table.laid(ui, LEAST, LongWords::Shrink)
}

/// The sets and the note.
fn body_ui(ui: &mut Ui, page: &Page, table: &BenchTable<'_>, laid: &Laid, palette: &Palette) {
    ui.spacing_mut().item_spacing.y = 0.0;
    for (at, set) in page.table().sets.iter().enumerate() {
        head_ui(ui, page, set, laid.text_size, palette);
        table.set_ui(ui, at, laid, palette);
        ui.add_space(laid.text_size * 0.6);
    }
    let note = page.project().note.as_str();
    if page.choices().with_note && !note.is_empty() {
        words(ui, note, laid.text_size.min(13.0), palette.text);
    }
}

/// The name of a set, and what is said of it as a whole.
fn head_ui(ui: &mut Ui, page: &Page, set: &SetTable, text_size: f32, palette: &Palette) {
    bold_words(ui, &set.name, text_size * 1.1, palette.text);
    let results = page.analysis.results().sets.get(set.place);
    let typed = page.project().sets.get(set.set);
    if let Some((candidate, results)) = typed.zip(results) {
        let facts = bench_facts(&ProjectSet {
            project: page.project(),
            set: &candidate.set,
            results,
        });
        words(ui, &facts.join(", "), text_size * 0.8, palette.text);
    }
}

/// Empty lines for notes down to the foot of the page; that foot is there however little room is left.
pub(super) fn note_lines_ui(ui: &mut Ui, foot: f32, palette: &Palette) {
    let area = ui.max_rect();
    let mut y = ui.min_rect().bottom() + NOTE_LINE;
    if y < foot {
        let at = Pos2::new(area.left(), y - 2.0);
        let font = FontId::proportional(11.0);
        let painter = ui.painter();
        painter.text(at, Align2::LEFT_BOTTOM, "Notes", font, palette.dim_text);
    }
    while y < foot {
        ui.painter().hline(area.x_range(), y, (0.7, palette.mark));
        y += NOTE_LINE;
    }
    // More than the foot leaves makes the page too high, which is told.
    let beyond = (ui.min_rect().bottom() - foot).max(0.0);
    ui.expand_to_include_y((area.bottom() + beyond).round_ui());
}
