//! The page for reading: title, vehicle, diagram, table, note, and what was assumed.

use super::Page;
use crate::chart::table::Need;
use crate::chart::{Scene, SetTable, Table};
use crate::draw::diagram::{Look, StepBack, diagram_ui};
use crate::draw::palette::{Palette, dash};
use crate::draw::table::{Arrangement, Content, TableLook, column_groups, columns_from, table_ui};
use crate::draw::{bold, sample};
use crate::gearing::Tyre;
use crate::project::View;
use crate::units::{mm_text, typed_rpm_text};
use egui::{Color32, FontId, Galley, Label, Pos2, Rect, RichText, Ui, UiBuilder, Vec2};
use std::sync::Arc;

/// The height of the diagram, in points, with one, two and three sets.
const DIAGRAM_HEIGHT: [f32; 3] = [400.0, 420.0, 440.0];

/// The height of ordinary text, in points.
const TEXT: f32 = 13.0;

/// Lays the page out from top to bottom.
pub(super) fn page_ui(ui: &mut Ui, page: &Page) {
    let palette = page.palette();
    ui.spacing_mut().item_spacing = Vec2::new(8.0, 5.0);
    title_ui(ui, page, &palette);
    vehicle_ui(ui, page, &palette);
    legend_ui(ui, page, &palette);
    for scene in page.diagrams() {
        view_ui(ui, page, scene, &palette);
    }
    if page.choices().with_table {
        ui.add_space(8.0);
        drawn_table_ui(ui, page, &palette);
    }
    let note = page.project().note.as_str();
    if page.choices().with_note && !note.is_empty() {
        ui.add_space(6.0);
        words(ui, note, TEXT, palette.text);
    }
    ui.add_space(6.0);
    assumptions_ui(ui, page, &palette);
}

/// Wrapped words.
pub(super) fn words(ui: &mut Ui, text: &str, size: f32, color: Color32) {
    // Half of a line break that a file from elsewhere may hold.
    let text = text.replace('\r', "");
    ui.add(Label::new(RichText::new(text).size(size).color(color)).wrap());
}

/// Wrapped bold words.
pub(super) fn bold_words(ui: &mut Ui, text: &str, size: f32, color: Color32) {
    let font = FontId::new(size, bold());
    ui.add(Label::new(RichText::new(text).font(font).color(color)).wrap());
}

fn title_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let title = page.project().title.as_ref();
    let title = title.map_or("Gear sets compared", |title| title.as_str());
    bold_words(ui, title, 22.0, palette.text);
}

/// The vehicle, and the date where one was typed.
fn vehicle_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let mut text = vehicle_text(page);
    if let Some(date) = &page.project().date {
        text = format!("{date} · {text}");
    }
    words(ui, &text, TEXT, palette.dim_text);
    if let Some(text) = page.motion_head() {
        words(ui, text, TEXT, palette.dim_text);
    }
}

/// Tyre, rolling circumference and engine speeds in one line.
pub(super) fn vehicle_text(page: &Page) -> String {
    let project = page.project();
    let lowest = project.engine.lowest_useful;
    let useful = lowest.map(|n| format!(" · useful from {} rpm", typed_rpm_text(n.rpm())));
    format!(
        "{} · redline {} rpm{}",
        tyre_text(project.tyre),
        typed_rpm_text(project.engine.redline.rpm()),
        useful.unwrap_or_default()
    )
}

fn tyre_text(tyre: Tyre) -> String {
    let circumference = mm_text(tyre.rolling_circumference_mm());
    match tyre {
        Tyre::RollingCircumference(_) => format!("Rolling circumference {circumference} mm"),
        tyre => format!("Tyre {tyre}, rolls {circumference} mm a turn"),
    }
}

/// What stands before the name of a set in the legend, in points.
const SWATCH: f32 = 36.0;

/// Which colour and dash is which set, and whose drops are written.
fn legend_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    ui.horizontal_wrapped(|ui| {
        for set in &page.table().sets {
            let text = if set.is_baseline {
                format!("{} (baseline)", set.name)
            } else {
                set.name.clone()
            };
            let name = laid_out(ui, text, FontId::new(TEXT, bold()), palette.text);
            let at = entry_ui(ui, SWATCH, name, palette.text);
            let swatch = Rect::from_min_size(at, Vec2::new(SWATCH - 6.0, TEXT * 1.3));
            sample(
                ui.painter(),
                swatch,
                palette.set(set.livery),
                dash(set.livery),
            );
        }
        let drops = page.diagrams().iter();
        let drops = drops.filter_map(|scene| scene.drops_words(&page.drops()));
        for text in drops {
            let words = laid_out(ui, text, FontId::proportional(TEXT), palette.dim_text);
            entry_ui(ui, 0.0, words, palette.dim_text);
        }
    });
}

fn laid_out(ui: &Ui, text: String, font: FontId, color: Color32) -> Arc<Galley> {
    ui.painter().layout(text, font, color, super::WIDTH * 0.8)
}

/// One entry of the legend, never parted: its words, with room before them; where it begins.
fn entry_ui(ui: &mut Ui, before: f32, words: Arc<Galley>, color: Color32) -> Pos2 {
    let size = words.size() + Vec2::new(before + 4.0, 0.0);
    if size.x > ui.available_size_before_wrap().x {
        ui.end_row();
    }
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    ui.painter()
        .galley(rect.min + Vec2::new(before, 0.0), words, color);
    ui.add_space(10.0);
    rect.min
}

/// A view: its name, where there are several; its diagram; what is said of each set.
fn view_ui(ui: &mut Ui, page: &Page, scene: &Scene, palette: &Palette) {
    if page.diagrams().len() > 1 {
        ui.add_space(4.0);
        bold_words(ui, scene.view.name(), TEXT + 2.0, palette.text);
    }
    if let Some(reason) = &scene.lacks {
        words(
            ui,
            &format!("Nothing to show: {reason}."),
            TEXT,
            palette.text,
        );
        return;
    }
    drawn_diagram_ui(ui, page, scene, palette);
    for text in facts_texts(&page.facts(scene.view)) {
        words(ui, &text, TEXT, palette.text);
    }
}

/// What is said of the sets: of each by its name, once where the same is said of all.
fn facts_texts(facts: &[(&str, String)]) -> Vec<String> {
    let mut said = facts.iter().map(|(_, words)| words);
    let first = said.next();
    match first {
        Some(words) if said.all(|other| other == words) => vec![words.clone()],
        Some(_) | None => {
            let each = facts.iter();
            each.map(|(name, words)| format!("{name}: {words}"))
                .collect()
        }
    }
}

fn drawn_diagram_ui(ui: &mut Ui, page: &Page, scene: &Scene, palette: &Palette) {
    let sets = scene.sets.len().clamp(1, 3);
    let size = Vec2::new(ui.available_width(), DIAGRAM_HEIGHT[sets - 1]);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let look = Look {
        palette,
        forward: None,
        others: StepBack::Not,
        gear: None,
        text_size: TEXT,
        drops: &page.drops(),
        is_alone: true,
        interactive: false,
    };
    let mut ui = ui.new_child(UiBuilder::new().max_rect(rect));
    diagram_ui(&mut ui, scene, scene.whole(), &look);
}

/// The heights of the table's text that are tried, in points: the last can just be read.
const TABLE_TEXT: [f32; 3] = [13.0, 12.5, 12.0];

/// The table of the sets, in as many parts as its columns need.
fn drawn_table_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let sets: Vec<&SetTable> = page.table().sets.iter().collect();
    let width = ui.available_width();
    let mut look = TableLook {
        palette,
        text_size: TEXT,
        gear: None,
        arrangement: Arrangement::OneUnderAnother,
        wrap_width: width - 10.0,
        with_remarks: true,
    };
    let parts = column_parts(ui, page, &sets, &mut look);
    for (at, group) in parts.iter().enumerate() {
        // What is said of a set is said once.
        look.with_remarks = at == 0;
        table_ui(ui, &Content::of_table(page.table(), &sets, group), &look);
    }
}

/// The columns of each part of the table, with the text size at which there are fewest parts.
fn column_parts(
    ui: &Ui,
    page: &Page,
    sets: &[&SetTable],
    look: &mut TableLook<'_>,
) -> Vec<Vec<usize>> {
    let width = ui.available_width();
    let choices = column_choices(page).into_iter();
    let choices = choices.map(|columns| Content::of_table(page.table(), sets, &columns));
    let choices: Vec<Content<'_>> = choices.collect();
    for content in &choices {
        for text_size in TABLE_TEXT {
            look.text_size = text_size;
            let parts = column_groups(ui, content, look, width);
            if parts.len() == 1 {
                return parts;
            }
        }
    }
    look.text_size = TEXT;
    let last = choices.last();
    last.map_or_else(Vec::new, |content| column_groups(ui, content, look, width))
}

/// The columns that are tried one after the other, until they find room beside each other: those that
/// were chosen, else all, then fewer and fewer down to those that a comparison cannot do without.
fn column_choices(page: &Page) -> Vec<Vec<usize>> {
    let table = page.table();
    let Some(chosen) = &page.choices().columns else {
        let needs = needs(table).into_iter();
        return needs.map(|least| columns_from(table, least)).collect();
    };
    let columns = table.columns.iter().enumerate();
    let is_chosen = |key: &str| chosen.iter().any(|chosen| chosen.as_str() == key);
    let chosen = columns.filter(|(at, column)| *at == 0 || is_chosen(column.definition.key));
    vec![chosen.map(|(at, _)| at).collect()]
}

/// How much the columns of a table are needed, the smallest need first.
fn needs(table: &Table) -> Vec<Need> {
    let needs = table.columns.iter().map(|column| column.readers.need);
    let mut needs: Vec<Need> = needs.collect();
    needs.sort_unstable();
    needs.dedup();
    needs
}

/// What the figures of a view rest on, with a blank behind.
fn assumed(view: View) -> &'static str {
    match view {
        View::Speed => "",
        View::Steps => "Step = overall ratio of a gear ÷ that of the next. ",
        View::Run => {
            "Runs at full load from standstill, estimated; dotted with the best shift points. "
        }
        View::Revs => "Engine speed in a run at full load from standstill, estimated. ",
        View::Distance => {
            "Way from standstill at full load, estimated; dotted with the best shift points. "
        }
        View::Cruise => {
            "Steady speeds in top gear, thin in the lower ones, in brackets where the engine is below \
             or above its useful speeds; fuel is an estimate. "
        }
        View::Speedometer => {
            "What a speedometer shows is reckoned from turns and teeth, and to be measured. "
        }
        View::Effort => {
            "Effort at full load after losses, estimated; what a line lies above the road load is \
             left for speeding up. "
        }
    }
}

/// What the figures rest on.
fn assumptions_ui(ui: &mut Ui, page: &Page, palette: &Palette) {
    let assumed = page.views().as_slice().iter().map(|view| assumed(*view));
    let mut text: String = assumed.collect();
    text += "Road speed = 0.06 × engine speed × rolling circumference in m ÷ overall ratio, \
             without slip.";
    if page.tyres().any(|tyre| tyre.tolerance().is_some()) {
        text += " The circumference follows from the tyre's size; a real tyre differs by −2.5 to \
                 +1.5 %.";
    }
    if page.tyres().any(|tyre| tyre.tolerance().is_none()) {
        text += " A circumference or count of turns that was given counts as measured.";
    }
    if page.choices().with_table && has_brackets(page) {
        text.push(' ');
        text += &brackets_words(page);
    }
    if page.choices().with_table && has_differences(page) {
        text += " Differences are taken before rounding.";
    }
    text += " Estimates: the maker's data and local law decide.";
    words(ui, &text, 11.5, palette.dim_text);
}

/// What brackets mean around a figure.
pub(super) fn brackets_words(page: &Page) -> String {
    let engine = &page.project().engine;
    let redline = typed_rpm_text(engine.redline.rpm());
    let floor_rpm = engine.floor_rpm();
    let range = if floor_rpm > 0.0 {
        format!("outside {} to {redline} rpm", typed_rpm_text(floor_rpm))
    } else {
        format!("above {redline} rpm")
    };
    format!("Figures in brackets lie {range}.")
}

/// Whether a figure is compared with the baseline's.
fn has_differences(page: &Page) -> bool {
    let rows = page.table().sets.iter().flat_map(|set| &set.rows);
    let mut cells = rows.flat_map(|row| &row.cells);
    cells.any(|cell| cell.difference.is_some())
}

/// Whether a figure stands in brackets.
fn has_brackets(page: &Page) -> bool {
    let rows = page.table().sets.iter().flat_map(|set| &set.rows);
    rows.flat_map(|row| &row.cells).any(|cell| cell.is_dim)
}
