//! How does the write-up leave the program: into a file, to the clipboard, as text?

use super::preview::Preview;
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::form::{Form, remark};
use crate::app::heard::name_menu;
use crate::chart::MarkedSpeeds;
use crate::gearing::Name;
use crate::sheet::csv::DecimalMark;
use crate::sheet::json::JsonError;
use crate::sheet::{bbcode, csv, json, markdown, text};
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
        for (name, what, written) in FORMATS {
            if ui.button(name).clicked() {
                form.actions.push(match written(desk) {
                    Ok(text) => Action::Copy(what, text),
                    Err(problem) => Action::Say(problem.to_string()),
                });
                ui.close();
            }
        }
    });
}

type Written = fn(&Desk) -> Result<String, JsonError>;

/// The text formats: name, what the message calls it, and how it is made.
const FORMATS: [(&str, &str, Written); 6] = [
    ("Text in columns", "the table as text", |desk| {
        Ok(text::table(title(desk), desk.table()))
    }),
    ("Markdown", "the table as Markdown", |desk| {
        Ok(markdown::table(title(desk), desk.table()))
    }),
    ("BBCode", "the table as BBCode", |desk| {
        Ok(bbcode::table(title(desk), desk.table()))
    }),
    ("CSV, decimal point", "the table as CSV", |desk| {
        Ok(csv_text(desk, DecimalMark::Point))
    }),
    ("CSV, decimal comma", "the table as CSV", |desk| {
        Ok(csv_text(desk, DecimalMark::Comma))
    }),
    ("JSON", "the table as JSON", |desk| {
        json::table(&desk.analysis(), &MarkedSpeeds::of(desk.project()))
    }),
];

fn title(desk: &Desk) -> Option<&str> {
    desk.project().title.as_ref().map(Name::as_str)
}

fn csv_text(desk: &Desk, mark: DecimalMark) -> String {
    let marked = MarkedSpeeds::of(desk.project());
    csv::table(desk.project(), desk.results(), &marked, mark)
}
