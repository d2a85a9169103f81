//! How a document or its picture gets into a file.

use super::path_question::half_typed;
use super::question::Question;
use super::step::{After, Step};
use super::{Asked, Lifecycle, PathQuestion};
use crate::app::exporting::written_picture;
use crate::app::file_picker::{Answer, Purpose};
use crate::app::files::{self, Saved, with_ending};
use crate::app::unread::places;
use crate::project::{Difference, PageForm, differences, digest_of_file, shown};
use crate::workshop::{BenchItem, Job};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// `van-2.ron`: a name beside `van.ron`.
fn numbered(path: &Path, number: u32) -> PathBuf {
    let mut name = path.file_stem().unwrap_or_default().to_owned();
    name.push(format!("-{number}"));
    let ending = path.extension().unwrap_or_default();
    path.with_file_name(name).with_extension(ending)
}

/// What is lost, beside figures, with a file that somebody wrote by hand.
const LAYOUT: &str = "comments and layout: yours Layshaft's own, theirs written by hand";

/// The answer that leaves a file as it is and asks for another one.
const OTHER_NAME: &str = "Choose another name";

impl Lifecycle {
    /// Saves where the document stands, or asks where that is to be.
    pub(super) fn save(&mut self, then: Option<After>) {
        let Some(path) = self.desk.file.clone() else {
            return self.ask_for_path(Purpose::Save, then);
        };
        match self.digest_of(&path) {
            Some(held) if self.desk.on_disk != Some(held) => self.meet_theirs(path, then),
            Some(held) if self.has_other_form => self.ask_about_form(held, then),
            // What is gone can be written again; what is there but cannot be read is somebody else's.
            None if !self.is_gone(&path) => self.meet_theirs(path, then),
            Some(_) | None => self.save_to(&path, then),
        }
    }

    /// `seen` is the digest of what would lose its comments and layout.
    fn ask_about_form(&mut self, seen: u64, then: Option<After>) {
        let text = "This file was written or changed by hand. Saving keeps every value, but not \
                    its comments and layout. Saving it under another name keeps this file as it is.";
        let question = Question::new("Save in Layshaft's own layout?", text)
            .safely("Save under another name", Step::SaveElsewhere(then.clone()))
            .or("Save here", Step::Replace(seen, then))
            .or("Cancel", Step::Stay);
        self.ask(question);
    }

    /// Whether nothing has this path; where the disk does not tell, something has.
    fn is_gone(&self, path: &Path) -> bool {
        let facts = self.files().entry_facts(path);
        facts.is_err_and(|error| {
            let kind = error.kind();
            // Of a path that nothing can have, saving tells what is wrong with it.
            matches!(
                kind,
                ErrorKind::NotFound | ErrorKind::NotADirectory | ErrorKind::InvalidFilename
            )
        })
    }

    /// The digest of what a file holds now, where it can be read.
    fn digest_of(&self, path: &Path) -> Option<u64> {
        digest_of_file(self.files(), path).ok()
    }

    /// Somebody else has written the file: asks, where that would replace anything of theirs.
    fn meet_theirs(&mut self, path: PathBuf, then: Option<After>) {
        match files::open(self.files(), &path) {
            Ok(theirs) => {
                let found = differences(&theirs.project, self.desk.project());
                if found.is_empty() {
                    // Both have the same work: only the form of their file could be lost. Their file
                    // becomes ours by saving, not by asking: no later work may replace it unasked.
                    return if theirs.has_other_form {
                        self.ask_about_form(theirs.digest, then);
                    } else {
                        self.save_to(&path, then);
                    };
                }
                let mut details: Vec<_> = found.iter().map(Difference::words_of_two).collect();
                if theirs.has_other_form {
                    details.push(LAYOUT.to_owned());
                }
                self.ask_about_theirs(Some(path), details, Some(theirs.digest), then);
            }
            Err(problem) => {
                let seen = self.digest_of(&path);
                self.ask_about_theirs(None, vec![problem.to_string()], seen, then);
            }
        }
    }

    /// `theirs` is the file, where it can be opened; `seen` is the digest of what it holds, where it can
    /// be read: nobody can agree to lose what cannot.
    fn ask_about_theirs(
        &mut self,
        theirs: Option<PathBuf>,
        details: Vec<String>,
        seen: Option<u64>,
        then: Option<After>,
    ) {
        let text = format!(
            "\"{}\" was changed by somebody else since it was opened here. Yours is what stands in \
             this window, theirs is what the file holds now.",
            self.desk.name()
        );
        let elsewhere = Step::SaveElsewhere(then.clone());
        let mut question = Question::new("The file has changed", text)
            .with(details)
            .safely("Save yours under another name", elsewhere);
        if let Some(seen) = seen {
            question = question.or("Replace theirs", Step::Replace(seen, then));
        }
        if let Some(path) = theirs {
            question = question.or("Open theirs", Step::TakeTheirs(path));
        }
        self.ask(question.or("Cancel", Step::Stay));
    }

    /// Puts what the file holds in the place of what stands here; undoing brings that back.
    pub(super) fn take_theirs(&mut self, path: &Path) {
        self.asked = None;
        match files::open(self.files(), path) {
            Ok(theirs) => {
                let project = Arc::new(theirs.project);
                let history = &mut self.desk.history;
                history.replace(Arc::clone(&project), "theirs in place of yours");
                history.mark_saved(project);
                self.desk.on_disk = Some(theirs.digest);
                self.has_other_form = theirs.has_other_form;
                self.say("Opened theirs; undoing brings yours back");
            }
            Err(problem) => self.say(problem.to_string()),
        }
    }

    /// Saves where the document stands, in the place of what was seen there; should it have been
    /// changed since, that is asked about first.
    pub(super) fn replace(&mut self, seen: u64, then: Option<After>) {
        match self.desk.file.clone() {
            Some(path) if self.digest_of(&path) == Some(seen) => self.save_to(&path, then),
            _ => self.save(then),
        }
    }

    /// Asks for a place, in the system's dialog and in the window.
    pub(super) fn ask_for_path(&mut self, purpose: Purpose, then: Option<After>) {
        let own = self.own_path();
        let suggested = match purpose {
            Purpose::Open | Purpose::Save => own,
            Purpose::SavePicture => self.picture_path(&own),
        };
        self.ask_beginning_with(purpose, &suggested, then);
    }

    /// Asks for a place beside the document's own, beginning with a name that is free.
    pub(super) fn save_elsewhere(&mut self, then: Option<After>) {
        let own = self.own_path();
        let mut beside = (2..100).map(|number| numbered(&own, number));
        let free = beside.find(|path| self.is_gone(path));
        self.ask_beginning_with(Purpose::Save, &free.unwrap_or(own), then);
    }

    /// Asks for a place once more, beginning with the one that will not do.
    pub(super) fn ask_for_other(&mut self, path: &Path, purpose: Purpose, then: Option<After>) {
        self.ask_beginning_with(purpose, path, then);
    }

    fn ask_beginning_with(&mut self, purpose: Purpose, suggested: &Path, then: Option<After>) {
        let request = self.start_picker(purpose, Some(suggested.to_owned()));
        let text = suggested.display().to_string();
        self.asked = Some(Asked::Path(PathQuestion {
            request: Some(request),
            then,
            ..self.path_question(purpose, text)
        }));
    }

    /// A question for a path that begins with a text.
    pub(super) fn path_question(&self, purpose: Purpose, text: String) -> PathQuestion {
        PathQuestion {
            base: self.last_folder(),
            ..PathQuestion::new(purpose, text, self.desk.file.clone())
        }
    }

    /// The file that was opened or saved last, in this window or before.
    pub(super) fn last_file(&self) -> Option<&Path> {
        let remembered = || self.settings.recent.first().map(PathBuf::as_path);
        self.desk.file.as_deref().or_else(remembered)
    }

    /// The folder of that file.
    fn last_folder(&self) -> Option<PathBuf> {
        Some(self.last_file()?.parent()?.to_owned())
    }

    pub(super) fn start_picker(&mut self, purpose: Purpose, suggested: Option<PathBuf>) -> u64 {
        let wake = self.wake.clone();
        self.surroundings.picker.start(purpose, suggested, wake)
    }

    /// The next answer of the system's dialog, if one came.
    pub(in crate::app) fn chosen(&mut self) -> Option<Answer> {
        self.surroundings.picker.poll()
    }

    /// Where the document stands, or the name that it would have.
    fn own_path(&self) -> PathBuf {
        let own = self.desk.file.clone();
        own.unwrap_or_else(|| {
            let name = self.suggested_name();
            self.last_folder().unwrap_or_default().join(name)
        })
    }

    /// Where a picture would be beside its document; a page for the bench does not take its place.
    fn picture_path(&self, own: &Path) -> PathBuf {
        match self.desk.page_form {
            PageForm::Picture => own.with_extension("png"),
            PageForm::A4 | PageForm::Letter => {
                let mut name = own.file_stem().unwrap_or_default().to_owned();
                let jobs = self.desk.project().workshop.jobs();
                let is_shown = |job: &Job| self.desk.sheet == Some(BenchItem::Job(job.id));
                let job = jobs.iter().position(is_shown);
                match job {
                    None if self.desk.sheet == Some(BenchItem::Plan) => name.push("-plan.png"),
                    Some(place) => name.push(format!("-job-{}.png", place + 1)),
                    None => name.push("-bench.png"),
                }
                own.with_file_name(name)
            }
        }
    }

    /// A file name made of the title's letters and digits.
    fn suggested_name(&self) -> PathBuf {
        let title = self.desk.project().title.as_ref();
        let title = title.map_or_else(|| "project".to_owned(), ToString::to_string);
        let words: Vec<String> = title
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty())
            .take(4)
            .map(str::to_lowercase)
            .collect();
        PathBuf::from(words.join("-")).with_extension("ron")
    }

    /// Takes what the system's dialog came back with; an answer that nobody waits for is moot.
    pub(super) fn use_chosen(&mut self, answer: Answer) {
        let Some(Asked::Path(question)) = &mut self.asked else {
            return;
        };
        if question.request != Some(answer.request) {
            return;
        }
        question.request = None;
        match answer.path {
            Some(path) => {
                let question = question.clone();
                self.use_path(&question, &path);
            }
            None if answer.was_unseen => {}
            None => self.asked = None,
        }
    }

    /// Takes a typed path; a name that looks half-typed is saved under when it is given once more.
    pub(super) fn use_typed(&mut self, text: &str) {
        let Some(Asked::Path(question)) = &self.asked else {
            return;
        };
        let question = question.clone();
        let Some(path) = question.path(text) else {
            return self.refuse_path("Type a path first.".to_owned());
        };
        let is_meant = question.warned_of.as_ref() == Some(&path);
        match self.half_typed(&path, question.purpose) {
            Some(warning) if !is_meant => {
                self.refuse_path(warning);
                if let Some(Asked::Path(question)) = &mut self.asked {
                    question.warned_of = Some(path);
                }
            }
            _ => self.use_path(&question, &path),
        }
    }

    /// Why a path that is to be written looks half-typed, if it does.
    fn half_typed(&self, path: &Path, purpose: Purpose) -> Option<String> {
        if purpose == Purpose::Open {
            return None;
        }
        let whole = files::whole_path(path).ok()?;
        let target = with_ending(whole.clone(), purpose.ending());
        if !self.is_gone(&target) || !self.is_gone(&whole) {
            return None;
        }
        let names = self.files().names(whole.parent()?).ok()?;
        half_typed(
            &whole,
            names.iter().filter_map(|name| name.to_str()),
            purpose,
        )
    }

    /// A path was chosen or typed.
    fn use_path(&mut self, question: &PathQuestion, path: &Path) {
        if question.purpose == Purpose::Open {
            return self.open(path);
        }
        match self.target(path, question.purpose) {
            Ok(target) => self.use_target(question, target),
            Err(problem) => self.refuse_path(problem),
        }
    }

    /// The whole path of the file that is meant by `path`.
    ///
    /// # Errors
    /// When it names a folder, what another window has open, or for a project a picture.
    fn target(&self, path: &Path, purpose: Purpose) -> Result<PathBuf, String> {
        let path = files::whole_path(path).map_err(|problem| problem.to_string())?;
        files::check_is_no_folder(self.files(), &path)?;
        let path = with_ending(path, purpose.ending());
        if purpose == Purpose::Save {
            files::check_is_no_picture(self.files(), &path)?;
        }
        if self.is_in_use(&path) {
            return Err(format!(
                "another window has this project open, choose another name: {}",
                shown(&path)
            ));
        }
        Ok(path)
    }

    fn refuse_path(&mut self, problem: String) {
        if let Some(Asked::Path(question)) = &mut self.asked {
            question.problem = Some(problem);
        }
    }

    fn use_target(&mut self, question: &PathQuestion, path: PathBuf) {
        let is_own = question.purpose == Purpose::Save && self.desk.file.as_ref() == Some(&path);
        let then = question.then.clone();
        if is_own {
            // Somebody else may have changed it: nobody has agreed to lose that.
            self.asked = None;
            self.save(then);
        } else if !self.is_gone(&path) {
            // The system's dialog has asked before replacing; after adding an ending, ask again.
            self.ask_about_replacing(path, question.purpose, then);
        } else {
            self.write(&path, question.purpose, then);
        }
    }

    fn ask_about_replacing(&mut self, path: PathBuf, purpose: Purpose, then: Option<After>) {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let folder = path.parent().map(shown);
        let place = folder.map(|folder| format!(" in {folder}"));
        let place = place.unwrap_or_default();
        let text = format!("There is a file \"{name}\" already{place}.");
        let question = Question::new("Replace the file?", text)
            .safely(
                OTHER_NAME,
                Step::AskForOther(path.clone(), purpose, then.clone()),
            )
            .or("Replace it", Step::Write(path, purpose, then))
            .or("Cancel", Step::Stay);
        self.ask(question);
    }

    /// Writes project or picture, whichever is meant.
    pub(super) fn write(&mut self, path: &Path, purpose: Purpose, then: Option<After>) {
        self.asked = None;
        match purpose {
            Purpose::SavePicture => self.save_picture(path),
            Purpose::Open | Purpose::Save => self.save_to(path, then),
        }
    }

    /// Puts the picture into a file; a failure is said and offers another place.
    fn save_picture(&mut self, path: &Path) {
        match written_picture(self.files(), &self.desk, path) {
            Ok(words) => self.say(words),
            Err(problem) => self.ask_for_another(path, Purpose::SavePicture, problem, None),
        }
    }

    /// Saves in a file and goes on; a failure is said and offers another place.
    fn save_to(&mut self, path: &Path, then: Option<After>) {
        self.asked = None;
        let project = self.desk.history.snapshot();
        match files::save(self.files(), path, &project) {
            Ok(saved) => self.saved(path, &saved, then),
            Err(problem) => {
                self.ask_for_another(path, Purpose::Save, problem.to_string(), then);
            }
        }
    }

    fn ask_for_another(
        &mut self,
        path: &Path,
        purpose: Purpose,
        problem: String,
        then: Option<After>,
    ) {
        let text = path.display().to_string();
        self.asked = Some(Asked::Path(PathQuestion {
            problem: Some(problem),
            then,
            ..self.path_question(purpose, text)
        }));
    }

    fn saved(&mut self, path: &Path, saved: &Saved, then: Option<After>) {
        self.desk.history.mark_saved(self.desk.history.snapshot());
        let is_new = self.desk.file.as_deref() != Some(path);
        self.desk.file = Some(path.to_owned());
        self.desk.on_disk = Some(saved.digest);
        if is_new {
            self.lock_document();
        }
        self.settings.remember(path);
        self.has_other_form = false;
        self.say(self.words_of_saving(path, saved));
        if let Some(after) = then {
            self.go_on(after);
        }
    }

    fn words_of_saving(&self, path: &Path, saved: &Saved) -> String {
        let path = path.display();
        let unread = &self.desk.unread;
        match &saved.doubt {
            Some(doubt) => doubt.to_string(),
            None if unread.is_empty() => format!("Saved in {path}"),
            None => format!(
                "Saved, but without what does not read in {}: {path}",
                places(unread)
            ),
        }
    }
}
