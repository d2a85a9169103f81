//! How does the write-up leave the program: into a file, to the clipboard, as text?

use super::Preview;
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::dialogs::{Dialog, PathDialog};
use crate::app::file_picker::Purpose;
use crate::app::form::{Form, remark};
use crate::app::window::App;
use crate::chart::MarkedSpeeds;
use crate::gearing::Name;
use crate::project::save_whole;
use crate::sheet::csv::DecimalMark;
use crate::sheet::page::{Page, PageError, png};
use crate::sheet::{bbcode, csv, json, markdown, text};
use egui::{ColorImage, Context, Ui};
use std::path::Path;

/// Shows the ways out, and how large the picture is.
pub(super) fn giving_ui(ui: &mut Ui, desk: &Desk, preview: &Preview, form: &mut Form<'_>) {
    if let Some(size) = preview.size_text() {
        remark(ui, &size, form.palette.dim_text);
    }
    if ui.button("Save picture…").clicked() {
        form.actions.push(Action::SavePicture);
    }
    if ui.button("Copy picture").clicked() {
        form.actions.push(Action::CopyPicture);
    }
    ui.menu_button("Copy table as…", |ui| {
        for (name, what, written) in FORMATS {
            if ui.button(name).clicked() {
                form.actions.push(Action::Copy(what, written(desk)));
                ui.close();
            }
        }
    });
}

type Written = fn(&Desk) -> String;

/// The text formats: name, what the message calls it, and how it is made.
const FORMATS: [(&str, &str, Written); 6] = [
    ("Text in columns", "the table as text", |desk| {
        text::table(title(desk), desk.table())
    }),
    ("Markdown", "the table as Markdown", |desk| {
        markdown::table(title(desk), desk.table())
    }),
    ("BBCode", "the table as BBCode", |desk| {
        bbcode::table(title(desk), desk.table())
    }),
    ("CSV, decimal point", "the table as CSV", |desk| {
        csv_text(desk, DecimalMark::Point)
    }),
    ("CSV, decimal comma", "the table as CSV", |desk| {
        csv_text(desk, DecimalMark::Comma)
    }),
    ("JSON", "the table as JSON", |desk| {
        let marked = MarkedSpeeds::of(desk.project());
        json::table(desk.project(), desk.results(), &marked)
    }),
];

fn title(desk: &Desk) -> Option<&str> {
    desk.project().title.as_ref().map(Name::as_str)
}

fn csv_text(desk: &Desk, mark: DecimalMark) -> String {
    let marked = MarkedSpeeds::of(desk.project());
    csv::table(desk.project(), desk.results(), &marked, mark)
}

impl App {
    /// Puts the picture into a file; a failure is said and offers another place.
    pub(in crate::app) fn save_picture(&mut self, path: &Path) {
        let problem = match self.written_picture(path) {
            Ok(words) => return self.say(words),
            Err(problem) => problem,
        };
        self.dialog = Some(Dialog::Path(PathDialog {
            purpose: Purpose::SavePicture,
            text: path.display().to_string(),
            request: None,
            problem: Some(problem),
            then: None,
        }));
    }

    /// Writes the picture; what is to be said of it, or what is wrong.
    fn written_picture(&self, path: &Path) -> Result<String, String> {
        if self.desk.file.as_deref() == Some(path) {
            let problem = "this is the project's own file; give the picture another name";
            return Err(problem.to_owned());
        }
        let page = Page::of(self.desk.project()).and_then(|page| png(&page.picture()?));
        let bytes = page.map_err(|problem| problem.to_string())?;
        match save_whole(&*self.surroundings.file_system, path, &bytes) {
            Ok(()) => Ok(format!("Saved the picture in {}", path.display())),
            Err(problem) if problem.is_saved() => Ok(problem.to_string()),
            Err(problem) => Err(problem.to_string()),
        }
    }

    /// Puts the picture on the clipboard.
    pub(in crate::app) fn copy_picture(&mut self, ctx: &Context) {
        let made: Result<ColorImage, PageError> = Page::of(self.desk.project()).and_then(|page| {
            let picture = page.picture()?;
            let size = [picture.width() as usize, picture.height() as usize];
            Ok(ColorImage::from_rgba_unmultiplied(size, &picture))
        });
        match made {
            Ok(image) => {
                ctx.copy_image(image);
                self.say("Copied the picture");
            }
            Err(problem) => self.say(problem.to_string()),
        }
    }
}
