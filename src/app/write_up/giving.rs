//! How does the write-up leave the program: into a file, to the clipboard, as text?

use super::preview::Preview;
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::form::{Form, remark};
use crate::app::heard::name_menu;
use crate::sheet::csv::DecimalMark;
use crate::sheet::{TextFormat, written};
use egui::{TextStyle, Ui, Vec2};

/// Shows the ways out, and how large the picture is.
pub(super) fn giving_ui(ui: &mut Ui, desk: &Desk, preview: &Preview, form: &mut Form<'_>) {
    // In a place of its own: what follows must stay what it is when the size comes to be known.
    ui.scope(|ui| {
        let height = ui.text_style_height(&TextStyle::Small);
        match preview.size_text() {
            Some(size) => remark(ui, &size, form.palette.dim_text),
            // Buttons that moved would be missed.
            None => _ = ui.allocate_space(Vec2::new(ui.available_width(), height)),
        }
    });
    if ui.button("Save picture…").clicked() {
        form.actions.push(Action::SavePicture);
    }
    if ui.button("Copy picture").clicked() {
        form.actions.push(Action::CopyPicture);
    }
    ui.menu_button("Copy table as…", |ui| {
        name_menu(ui, "Copy table as");
        for (name, what, format) in FORMATS {
            if ui.button(name).clicked() {
                let analysis = desk.analysis();
                let views = &analysis.project().write_up.views;
                form.actions.push(match written(&analysis, views, format) {
                    Ok(text) => Action::Copy(what, text),
                    Err(problem) => Action::Say(problem.to_string()),
                });
                ui.close();
            }
        }
    });
}

/// The text formats: name, what the message calls it, and which it is.
const FORMATS: [(&str, &str, TextFormat); 6] = [
    ("Text in columns", "the table as text", TextFormat::Text),
    ("Markdown", "the table as Markdown", TextFormat::Markdown),
    ("BBCode", "the table as BBCode", TextFormat::BbCode),
    (
        "CSV, decimal point",
        "the table as CSV",
        TextFormat::Csv(DecimalMark::Point),
    ),
    (
        "CSV, decimal comma",
        "the table as CSV",
        TextFormat::Csv(DecimalMark::Comma),
    ),
    ("JSON", "the table as JSON", TextFormat::Json),
];
