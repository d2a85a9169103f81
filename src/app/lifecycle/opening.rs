//! How a document comes from a file.

use super::question::Question;
use super::step::Step;
use super::{Asked, Lifecycle};
use crate::app::files;
use std::path::{Path, PathBuf};
use std::sync::Arc;

impl Lifecycle {
    /// Opens a file; what is wrong with it is said, where its path is being asked for, there.
    pub(super) fn open(&mut self, path: &Path) {
        let whole = match files::whole_path(path) {
            Ok(whole) => whole,
            Err(problem) => return self.not_opened(path, problem.to_string()),
        };
        if self.is_in_use(&whole) {
            return self.ask_about_use(whole);
        }
        match files::open(self.files(), &whole) {
            Ok(opened) => {
                self.asked = None;
                self.settings.remember(&whole);
                let words = format!("Opened {}", whole.display());
                let project = Arc::new(opened.project);
                self.put(project, Some(whole), opened.has_other_form);
                self.desk.on_disk = Some(opened.digest);
                self.say(words);
            }
            Err(problem) => self.not_opened(&whole, problem.to_string()),
        }
    }

    fn not_opened(&mut self, path: &Path, problem: String) {
        if let Some(Asked::Path(question)) = &mut self.asked {
            question.problem = Some(problem);
        } else {
            self.asked = None;
            self.settings.forget(path);
            self.say(problem);
        }
    }

    fn ask_about_use(&mut self, path: PathBuf) {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let text = format!(
            "Another window has \"{name}\" open. A copy can be changed and saved under another name."
        );
        let question = Question::new("The project is open already", text)
            .safely("Open a copy", Step::OpenCopy(path.clone()))
            .or("Try again", Step::Open(path))
            .or("Cancel", Step::Stay);
        self.ask(question);
    }

    /// Opens what a file holds without the file: saving asks for a name.
    pub(super) fn open_copy(&mut self, path: &Path) {
        self.asked = None;
        match files::open(self.files(), path) {
            Ok(opened) => {
                self.put(Arc::new(opened.project), None, false);
                self.say(format!("Opened a copy of {}", path.display()));
            }
            Err(problem) => self.say(problem.to_string()),
        }
    }
}
