//! Whole gear sets from text: what was read is shown, every value can be corrected and every set
//! left out before all that is wanted is taken as one step.

mod reading;
mod reading_ui;

use super::modal::{Frame, begin_anew, begin_with, set_width};
use crate::app::heard::{describe, heading_ui, tell_why_not};
use crate::app::pasting::{PasteTarget, Place, Taken};
use crate::draw::palette::Palette;
use crate::import::gears::read_pasted;
use crate::import::tables;
use crate::project::Project;
use crate::project::examples::Start;
use egui::{Button, RichText, ScrollArea, TextEdit, Ui};
use reading::Reading;
use reading_ui::reading_ui;

/// A text that is being pasted.
#[derive(Debug, Default)]
pub(in crate::app) struct PasteDialog {
    text: String,
    /// The text that was read last.
    read: String,
    reading: Option<Reading>,
    problem: Option<String>,
    /// Whether nothing was typed in the project yet.
    is_untouched: bool,
    /// Whether the focus goes to the answers.
    is_through: bool,
    /// How high the contents have been: with less to show the dialog keeps its place while it is typed.
    tallest: f32,
}

/// What came of it.
pub(in crate::app) enum PasteAnswer {
    /// What is wanted of the reading.
    Take(Box<Taken>),
    /// Never mind.
    Cancel,
}

const HEADING: &str = "Paste gears";
const WHAT_TO_PASTE: &str =
    "Paste a list, a table or lines with labels; teeth and decimal commas are read.";

/// Why what was pasted cannot be taken.
const UNREAD: &str = "there is no gear set that reads";
const NO_ROOM: &str = "there is no room for so many sets";

/// What stays free for the answers and around the dialog, in points.
const ROOM_BESIDE_CONTENTS: f32 = 170.0;

/// How high the text stands at most, in points; a longer one scrolls inside its field.
const MOST_OF_TEXT: f32 = 96.0;

/// Shows the dialog; the answer once there is one.
pub(in crate::app) fn paste_dialog_ui(
    ctx: &egui::Context,
    dialog: &mut PasteDialog,
    target: &PasteTarget<'_>,
    palette: &Palette,
) -> Option<PasteAnswer> {
    let frame = Frame {
        salt: "paste",
        name: HEADING,
        description: WHAT_TO_PASTE,
        is_question: false,
    };
    let shown = frame.show(ctx, |ui| {
        set_width(ui, 560.0);
        let room = ctx.content_rect().height() - ROOM_BESIDE_CONTENTS;
        let area = ScrollArea::vertical().max_height(room);
        area.min_scrolled_height(room).show(ui, |ui| {
            ui.set_min_height(dialog.tallest.min(room));
            heading_ui(ui, HEADING);
            ui.label(WHAT_TO_PASTE);
            text_ui(ui, dialog, target);
            if let Some(problem) = &dialog.problem {
                ui.label(RichText::new(problem).color(palette.error));
            }
            if let Some(reading) = &mut dialog.reading {
                dialog.is_through |= reading_ui(ui, reading, target, palette);
            }
            dialog.tallest = dialog.tallest.max(ui.min_rect().height());
        });
        ui.add_space(6.0);
        if dialog.is_asking() {
            ask_ui(ui, dialog, target, palette);
            return cancel_ui(ui);
        }
        answers_ui(ui, dialog, target, palette)
    });
    let answer = if shown.is_left {
        Some(PasteAnswer::Cancel)
    } else {
        shown.inner
    };
    if answer.is_some() {
        begin_anew(ctx);
    }
    answer
}

fn text_ui(ui: &mut Ui, dialog: &mut PasteDialog, target: &PasteTarget<'_>) {
    let area = ScrollArea::vertical()
        .id_salt("pasted text")
        .max_height(MOST_OF_TEXT);
    let shown = area.show(ui, |ui| {
        let field = TextEdit::multiline(&mut dialog.text)
            .id(egui::Id::unique("pasted text"))
            .desired_rows(5)
            .desired_width(f32::INFINITY)
            .hint_text("1st 3.54\n2nd 1.91\n…\nfinal drive 4.06");
        ui.add(field).accessible_name("Text with a gear set")
    });
    begin_with(ui, &shown.inner);
    if let Some(problem) = &dialog.problem {
        describe(&shown.inner, problem);
    }
    if shown.inner.changed() && !dialog.is_asking() {
        dialog.read(target);
    }
}

impl PasteDialog {
    /// A dialog over a project; what else a text says is taken for granted only in a new one.
    pub(in crate::app) fn over(project: &Project) -> Self {
        Self {
            is_untouched: Start::is_any(project),
            ..Self::default()
        }
    }

    /// Whether another text waits because corrections of the one before would be lost.
    fn is_asking(&self) -> bool {
        self.text != self.read && self.corrections() > 0
    }

    fn corrections(&self) -> usize {
        self.reading.as_ref().map_or(0, Reading::corrections)
    }

    fn read(&mut self, target: &PasteTarget<'_>) {
        self.read.clone_from(&self.text);
        self.reading = None;
        self.problem = None;
        if self.text.trim().is_empty() {
            return;
        }
        if let Some(table) = tables::read(&self.text) {
            match table {
                Ok(table) => self.reading = Some(Reading::of_own(table, target, self.is_untouched)),
                Err(problem) => self.problem = Some(problem.to_string()),
            }
            return;
        }
        match read_pasted(&self.text) {
            Ok(pasted) => self.reading = Some(Reading::of(pasted, target, self.is_untouched)),
            Err(problem) => self.problem = Some(problem.to_string()),
        }
    }
}

/// Asks whether the corrections may go.
fn ask_ui(ui: &mut Ui, dialog: &mut PasteDialog, target: &PasteTarget<'_>, palette: &Palette) {
    let lost = match dialog.corrections() {
        1 => "1 correction is lost".to_owned(),
        n => format!("{n} corrections are lost"),
    };
    let question = format!("Read the text anew? {lost}.");
    ui.label(RichText::new(question).color(palette.finding));
    ui.horizontal_wrapped(|ui| {
        if ui.button("Keep the corrections").clicked() {
            dialog.text.clone_from(&dialog.read);
        }
        if ui.button("Read anew").clicked() {
            dialog.read(target);
        }
    });
}

fn cancel_ui(ui: &mut Ui) -> Option<PasteAnswer> {
    ui.button("Cancel").clicked().then_some(PasteAnswer::Cancel)
}

/// The answers, and beneath them why one cannot be given.
fn answers_ui(
    ui: &mut Ui,
    dialog: &mut PasteDialog,
    target: &PasteTarget<'_>,
    palette: &Palette,
) -> Option<PasteAnswer> {
    let wanted = dialog.reading.as_ref().map(|r| r.wanted_sets(target));
    let sets = wanted.and_then(Result::ok).unwrap_or_default();
    let count = sets.len();
    let can_add = (1..=target.free).contains(&count);
    let can_replace = (1..=target.free + 1).contains(&count);
    let mut place = None;
    let mut is_cancelled = false;
    if count > 0 {
        let selected = format!("The selected set is \"{}\".", target.before.name);
        ui.label(RichText::new(selected).small().color(palette.dim_text));
    }
    ui.horizontal_wrapped(|ui| {
        let replace = match count {
            0 | 1 => "Replace the selected set".to_owned(),
            n => format!("Replace the selected set, add {}", n - 1),
        };
        let replace = Button::new(RichText::new(replace).strong());
        let replace = ui.add_enabled(can_replace, replace);
        let replace = tell_why_not(replace, UNREAD);
        let add = match count {
            0 | 1 => "Add as a new set".to_owned(),
            n => format!("Add as {n} new sets"),
        };
        let add = ui.add_enabled(can_add, Button::new(add));
        let add = tell_why_not(add, if count > 0 { NO_ROOM } else { UNREAD });
        let cancel = ui.button("Cancel");
        if std::mem::take(&mut dialog.is_through) {
            let buttons = [(can_replace, &replace), (can_add, &add), (true, &cancel)];
            if let Some((_, button)) = buttons.into_iter().find(|(is_enabled, _)| *is_enabled) {
                button.request_focus();
            }
        }
        place = if replace.clicked() {
            Some(Place::Selected)
        } else {
            add.clicked().then_some(Place::New)
        };
        is_cancelled = cancel.clicked();
    });
    if let Some(why) = why_not(dialog, count, target.free) {
        ui.label(RichText::new(why).small().color(palette.dim_text));
    }
    match (place, &dialog.reading) {
        (Some(place), Some(reading)) => Some(PasteAnswer::Take(Box::new(Taken {
            sets,
            offers: reading.wanted_offers(),
            title: reading.wanted_title(),
            place,
        }))),
        _ => is_cancelled.then_some(PasteAnswer::Cancel),
    }
}

/// Why an answer cannot be given that could be expected.
fn why_not(dialog: &PasteDialog, count: usize, free: usize) -> Option<String> {
    let reading = dialog.reading.as_ref()?;
    let is_ticked = reading.is_ticked();
    let room = match free {
        0 => "a project has at most three sets and this one has three".to_owned(),
        1 => "a project has at most three sets and there is room for one more".to_owned(),
        n => format!("a project has at most three sets and there is room for {n} more"),
    };
    match count {
        0 if !is_ticked => Some("Tick the set that is wanted.".to_owned()),
        n if n > free + 1 => Some(format!("Untick a set: {room}.")),
        n if n > free => Some(format!("Not all as new sets: {room}.")),
        _ => None,
    }
}
