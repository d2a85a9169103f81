//! What is asked before something would be lost, and what follows from each answer?

use super::dialogs::{After, Choice, Dialog, Question, question_ui};
use super::file_picker::Purpose;
use super::window::App;
use std::path::PathBuf;

impl App {
    pub(super) fn unsaved_ui(&mut self, ctx: &egui::Context, after: After) {
        let text = format!("\"{}\" has changes that are not saved.", self.desk.name());
        let question = Question {
            heading: "Save the changes?",
            text: &text,
            yes: "Save",
            no: Some("Do not save"),
            other: None,
            cancel: "Cancel",
        };
        match question_ui(ctx, &question) {
            None => self.dialog = Some(Dialog::Unsaved(after)),
            Some(Choice::Yes) => self.save(ctx, Some(after)),
            Some(Choice::No) => self.go_on(ctx, after),
            Some(Choice::Other | Choice::Cancel) => {}
        }
    }

    pub(super) fn replace_ui(
        &mut self,
        ctx: &egui::Context,
        path: PathBuf,
        purpose: Purpose,
        then: Option<After>,
    ) {
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
        let text = format!("There is a file \"{}\" already.", name.unwrap_or_default());
        let question = Question {
            heading: "Replace the file?",
            text: &text,
            yes: "Keep it",
            no: Some("Replace it"),
            other: None,
            cancel: "Cancel",
        };
        match question_ui(ctx, &question) {
            None => self.dialog = Some(Dialog::Replace(path, purpose, then)),
            Some(Choice::Yes) => self.ask_for_path(ctx, purpose, then),
            Some(Choice::No) => self.write_to(ctx, &path, purpose, then),
            Some(Choice::Other | Choice::Cancel) => {}
        }
    }

    pub(super) fn other_form_ui(&mut self, ctx: &egui::Context, then: Option<After>) {
        let question = Question {
            heading: "Save in Layshaft's own layout?",
            text: "This file was written or changed by hand. Saving keeps every value, but not \
                   its comments and layout. Saving it under another name keeps this file as it is.",
            yes: "Save under another name",
            no: Some("Save here"),
            other: None,
            cancel: "Cancel",
        };
        match question_ui(ctx, &question) {
            None => self.dialog = Some(Dialog::OtherForm(then)),
            Some(Choice::Yes) => self.ask_for_path(ctx, Purpose::Save, then),
            Some(Choice::No) => {
                self.has_other_form = false;
                self.save(ctx, then);
            }
            Some(Choice::Other | Choice::Cancel) => {}
        }
    }
}
