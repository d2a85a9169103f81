//! How a document comes from a file.

use super::question::Question;
use super::step::Step;
use super::{Asked, Lifecycle};
use crate::app::files::{self, Found, Opened};
use crate::project::Project;
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
        match files::found(self.files(), &whole) {
            Ok(Found::InFile(opened)) => self.put_opened(whole, opened),
            Ok(Found::InPicture(project)) => self.put_unpacked(&whole, project),
            Err(problem) => self.not_opened(&whole, problem.to_string()),
        }
    }

    fn put_opened(&mut self, file: PathBuf, opened: Opened) {
        self.asked = None;
        self.settings.remember(&file);
        let words = format!("Opened {}", file.display());
        let project = Arc::new(opened.project);
        self.put(project, Some(file), opened.has_other_form);
        self.desk.on_disk = Some(opened.digest);
        self.say(words);
    }

    /// A picture is no project file: what it carried stands nowhere yet, and saving asks for a place.
    fn put_unpacked(&mut self, picture: &Path, project: Project) {
        self.asked = None;
        self.put(Arc::new(project), None, false);
        self.say(format!(
            "Opened the project in {}; saving asks for a file of its own",
            picture.display()
        ));
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
