//! A whole gear set from text: what was read is shown, and every value can be corrected before it is
//! taken as one edit.

use super::modal::{Frame, begin_anew, begin_with, set_width};
use crate::draw::palette::Palette;
use crate::import::gears::{Behind, PastedRatio, PastedSet, read_pasted};
use crate::units::ratio_text;
use egui::{Grid, RichText, ScrollArea, TextEdit, Ui};

/// A text that is being pasted.
#[derive(Debug, Default)]
pub(in crate::app) struct PasteDialog {
    text: String,
    reading: Option<Reading>,
    problem: Option<String>,
}

/// What a text was read as, with the values as they are being corrected.
#[derive(Debug)]
struct Reading {
    set: PastedSet,
    /// Gears, then final drives, then reverse: what stands in each field.
    texts: Vec<String>,
}

/// What came of it.
pub(in crate::app) enum PasteAnswer {
    /// The reading becomes the selected set.
    Replace(Box<PastedSet>),
    /// The reading becomes a new set.
    Add(Box<PastedSet>),
    /// Never mind.
    Cancel,
}

const HEADING: &str = "Paste gears";
const WHAT_TO_PASTE: &str =
    "Paste a list, a table or lines with labels; teeth and decimal commas are read.";

/// What all but the reading takes, and what the reading has at least, in points.
const ROOM_BESIDE_READING: f32 = 330.0;
const LEAST_ROOM_FOR_READING: f32 = 90.0;

/// Shows the dialog; the answer once there is one.
pub(in crate::app) fn paste_dialog_ui(
    ctx: &egui::Context,
    dialog: &mut PasteDialog,
    can_add: bool,
    palette: &Palette,
) -> Option<PasteAnswer> {
    let frame = Frame {
        salt: "paste",
        name: HEADING,
        description: WHAT_TO_PASTE,
        is_question: false,
    };
    let shown = frame.show(ctx, |ui| {
        set_width(ui, 520.0);
        ui.heading(HEADING);
        ui.label(WHAT_TO_PASTE);
        text_ui(ui, dialog);
        let height = ctx.content_rect().height() - ROOM_BESIDE_READING;
        let height = height.max(LEAST_ROOM_FOR_READING);
        let area = ScrollArea::vertical().max_height(height);
        area.min_scrolled_height(height).show(ui, |ui| {
            reading_ui(ui, dialog, palette);
        });
        ui.add_space(6.0);
        buttons_ui(ui, dialog, can_add)
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

fn text_ui(ui: &mut Ui, dialog: &mut PasteDialog) {
    let field = TextEdit::multiline(&mut dialog.text)
        .id(egui::Id::unique("pasted text"))
        .desired_rows(5)
        .desired_width(f32::INFINITY)
        .hint_text("1st 3.54\n2nd 1.91\n…\nfinal drive 4.06");
    let response = ui.add(field).accessible_name("Text with a gear set");
    begin_with(ui, &response);
    if response.changed() {
        dialog.read();
    }
}

impl PasteDialog {
    fn read(&mut self) {
        self.reading = None;
        self.problem = None;
        if self.text.trim().is_empty() {
            return;
        }
        match read_pasted(&self.text) {
            Ok(pasted) => self.reading = pasted.sets.into_iter().next().map(Reading::of),
            Err(problem) => self.problem = Some(problem.to_string()),
        }
    }
}

impl Reading {
    fn of(mut set: PastedSet) -> Self {
        let texts = ratios(&mut set).map(|ratio| ratio.text.clone()).collect();
        Self { set, texts }
    }

    /// The reading with the corrections, or why one does not read.
    fn corrected(&self) -> Result<PastedSet, String> {
        let mut set = self.set.clone();
        for (ratio, text) in ratios(&mut set).zip(&self.texts) {
            *ratio = PastedRatio::new(text).map_err(|problem| problem.to_string())?;
        }
        Ok(set)
    }
}

/// Every ratio of a reading: gears, final drives, reverse.
fn ratios(set: &mut PastedSet) -> impl Iterator<Item = &mut PastedRatio> {
    let gears = set.gears.iter_mut().map(|g| &mut g.ratio);
    let finals = set.final_drives.iter_mut().map(|f| &mut f.ratio);
    let reverse = set.reverse.iter_mut().map(|r| &mut r.ratio);
    gears.chain(finals).chain(reverse)
}

fn reading_ui(ui: &mut Ui, dialog: &mut PasteDialog, palette: &Palette) {
    if let Some(problem) = &dialog.problem {
        ui.label(RichText::new(problem).color(palette.error));
    }
    let Some(reading) = &mut dialog.reading else {
        return;
    };
    let values = values(reading);
    let names = names(&reading.set);
    Grid::new("pasted")
        .num_columns(3)
        .spacing([12.0, 3.0])
        .show(ui, |ui| {
            for ((name, text), value) in names.iter().zip(&mut reading.texts).zip(values) {
                let label = ui.label(name);
                let field = TextEdit::singleline(text).char_limit(60);
                let size = [130.0, ui.spacing().interact_size.y];
                ui.add_sized(size, field).labelled_by(label.id);
                match value {
                    Ok(value) => ui.label(RichText::new(value).color(palette.dim_text)),
                    Err(problem) => ui.label(RichText::new(problem).color(palette.error)),
                };
                ui.end_row();
            }
        });
    for remark in &reading.set.remarks {
        ui.label(RichText::new(remark).small().color(palette.finding));
    }
}

/// What each ratio comes to, or why it does not read.
fn values(reading: &Reading) -> Vec<Result<String, String>> {
    match reading.corrected() {
        Ok(set) => {
            let behind = Behind::default();
            let Ok(resolved) = set.resolved(&behind) else {
                return Vec::new();
            };
            let gears = resolved.gears.into_iter();
            let all = gears.chain(resolved.final_drives).chain(resolved.reverse);
            all.map(|ratio| {
                Ok(if ratio.has_teeth() {
                    ratio.reading()
                } else {
                    format!("= {}", ratio_text(ratio.value()))
                })
            })
            .collect()
        }
        Err(_) => reading
            .texts
            .iter()
            .map(|text| match PastedRatio::new(text) {
                Ok(_) => Ok(String::new()),
                Err(problem) => Err(problem.to_string()),
            })
            .collect(),
    }
}

fn names(set: &PastedSet) -> Vec<String> {
    let several = set.final_drives.len() > 1;
    let shaft = |at: usize| {
        if several {
            format!(" on final drive {}", at + 1)
        } else {
            String::new()
        }
    };
    let gears = set.gears.iter().map(|g| {
        let kind = if g.is_crawler { "crawler" } else { "gear" };
        format!("{kind} {}{}", g.label, shaft(g.final_drive))
    });
    let finals = (1..=set.final_drives.len()).map(|n| {
        if several {
            format!("final drive {n}")
        } else {
            "final drive".to_owned()
        }
    });
    let reverse = set
        .reverse
        .iter()
        .map(|r| format!("reverse{}", shaft(r.final_drive)));
    gears.chain(finals).chain(reverse).collect()
}

fn buttons_ui(ui: &mut Ui, dialog: &PasteDialog, can_add: bool) -> Option<PasteAnswer> {
    let corrected = dialog.reading.as_ref().and_then(|r| r.corrected().ok());
    ui.horizontal(|ui| {
        let replace = egui::Button::new(RichText::new("Replace the selected set").strong());
        let replace = ui.add_enabled(corrected.is_some(), replace).clicked();
        let add = egui::Button::new("Add as a new set");
        let add = ui
            .add_enabled(corrected.is_some() && can_add, add)
            .clicked();
        let cancel = ui.button("Cancel").clicked();
        match (corrected, replace, add) {
            (_, false, false) => cancel.then_some(PasteAnswer::Cancel),
            (Some(set), true, _) => Some(PasteAnswer::Replace(Box::new(set))),
            (Some(set), _, true) => Some(PasteAnswer::Add(Box::new(set))),
            (None, ..) => None,
        }
    })
    .inner
}
