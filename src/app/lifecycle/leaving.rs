//! How one document makes room for another, or for the end.

use super::question::Question;
use super::step::{After, Step};
use super::{Asked, Lifecycle, PathQuestion};
use crate::app::desk::Desk;
use crate::app::drafts::CellId;
use crate::app::file_picker::Purpose;
use crate::app::unread::{Unread, places};
use crate::project::Project;
use crate::project::examples::{EXAMPLES, Example};
use std::path::{Path, PathBuf};
use std::sync::Arc;

impl Lifecycle {
    /// Leaves the document for something else, but asks first where work would be lost.
    pub(super) fn leave(&mut self, after: After) {
        if let Some(newest) = self.desk.unread.first() {
            self.ask_about_unread(newest.field, after);
        } else if self.desk.history.is_unsaved() {
            self.ask_about_changes(after);
        } else {
            self.go_on(after);
        }
    }

    fn ask_about_changes(&mut self, after: After) {
        let text = format!("\"{}\" has changes that are not saved.", self.desk.name());
        let question = Question::new("Save the changes?", text)
            .safely("Save", Step::Save(Some(after.clone())))
            .or("Do not save", Step::GoOn(after))
            .or("Cancel", Step::Stay);
        self.ask(question);
    }

    /// Asks about texts that no save can hold, and about what else is not saved.
    fn ask_about_unread(&mut self, newest: CellId, after: After) {
        let unread = &self.desk.unread;
        let places = places(unread);
        let text = format!(
            "What was typed in {places} does not read, so it cannot be saved. Go to the field to \
             mend it; if you leave now, it is lost."
        );
        let question = Question::new("Leave what does not read?", text)
            .with(unread.iter().map(Unread::words).collect())
            .safely("Go to the field", Step::Mend(newest));
        let question = if self.desk.history.is_unsaved() {
            question
                .or("Save the rest", Step::Save(Some(after.clone())))
                .or("Save nothing", Step::GoOn(after))
        } else {
            question.or("Leave without it", Step::GoOn(after))
        };
        self.ask(question.or("Cancel", Step::Stay));
    }

    /// What was to happen once unsaved work was settled.
    pub(super) fn go_on(&mut self, after: After) {
        self.asked = None;
        match after {
            After::New(start) => self.put_example(&start.example()),
            After::Example(at) => {
                if let Some(example) = EXAMPLES.get(at) {
                    self.put_example(example);
                    self.desk.is_example = true;
                }
            }
            After::Choose => self.ask_for_file(),
            After::Open(path) => self.open(&path),
            After::Quit => self.may_close = true,
        }
    }

    fn ask_for_file(&mut self) {
        let beside = self.last_file().map(Path::to_owned);
        let request = self.start_picker(Purpose::Open, beside);
        let question = self.path_question(Purpose::Open, String::new());
        let folder = question.base.as_deref();
        // An empty name behind it: the folder with its separator.
        let text = folder.map_or_else(String::new, |f| f.join("").display().to_string());
        self.asked = Some(Asked::Path(PathQuestion {
            request: Some(request),
            text,
            ..question
        }));
    }

    fn put_example(&mut self, example: &Example) {
        match example.project() {
            Ok(project) => self.put(Arc::new(project), None, false),
            Err(problem) => self.say(problem.to_string()),
        }
    }

    /// Puts another document on the desk; it has a history of its own.
    pub(super) fn put(
        &mut self,
        project: Arc<Project>,
        file: Option<PathBuf>,
        has_other_form: bool,
    ) {
        self.desk = Desk::new(project, file);
        self.has_other_form = has_other_form;
        self.hush();
        self.lock_document();
    }
}
