//! The life of documents: made, opened, saved, recovered and left, and what is asked in between.
//!
//! A machine of states without the toolkit: commands and answers come in as [`Step`]s, the window
//! draws what is [`Asked`], and what an answer leads to is again a step.

mod leaving;
mod opening;
mod path_question;
mod question;
mod recovering;
mod saving;
mod step;
mod surroundings;
#[cfg(test)]
mod tests;

pub(super) use path_question::{Completed, PathQuestion};
pub(super) use question::{Asked, Question};
pub(super) use recovering::write_last;
pub(super) use step::{After, Step};
pub use surroundings::Surroundings;

use super::background::Wake;
use super::desk::Desk;
use super::folder_look::FolderLook;
use super::settings::Settings;
use crate::project::{FileSystem, Project, digest, format};
use recovering::Safety;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// The open document with all that stands between it and harm.
#[derive(Debug)]
pub(super) struct Lifecycle {
    /// The open document.
    pub(super) desk: Desk,
    /// What is being asked.
    pub(super) asked: Option<Asked>,
    /// What is to be said about the last thing that was done.
    pub(super) message: String,
    /// What is remembered from one time to the next.
    pub(super) settings: Settings,
    /// Whether closing was agreed to.
    pub(super) may_close: bool,
    /// Wakes the window, once there is one.
    pub(super) wake: Wake,
    /// Whether the system has asked the program to end: what is unsaved is kept for the next start.
    pub(super) is_ending: Arc<AtomicBool>,
    written_settings: Settings,
    /// Why the settings are not kept, for as long as they are not.
    settings_problem: Option<String>,
    surroundings: Surroundings,
    /// Whether the open file would lose comments or layout when saved.
    has_other_form: bool,
    safety: Safety,
    /// The looking into folders while a path is being asked for.
    look: Option<FolderLook>,
}

impl Lifecycle {
    /// A document that is open; `file` is where it stands, if it stands anywhere, and taken to hold it
    /// in the layout of the program.
    pub(super) fn new(project: Project, file: Option<PathBuf>, surroundings: Surroundings) -> Self {
        let settings = match &surroundings.settings_folder {
            Some(folder) => Settings::read(&*surroundings.file_system, folder),
            None => Settings::default(),
        };
        let mut desk = Desk::new(project, file);
        if desk.file.is_some() {
            let text = format::write(desk.project()).ok();
            desk.on_disk = text.map(|text| digest(text.as_bytes()));
        }
        Self {
            desk,
            asked: None,
            message: String::new(),
            written_settings: settings.clone(),
            settings,
            may_close: false,
            wake: Wake::default(),
            is_ending: Arc::default(),
            settings_problem: None,
            surroundings,
            has_other_form: false,
            safety: Safety::default(),
            look: None,
        }
    }

    /// Takes one step; whatever was asked is answered by it, and what was said before is over.
    pub(super) fn take(&mut self, step: Step) {
        // An answer of the system's dialog may come when nobody waits for it any more.
        if !matches!(step, Step::Chosen(_)) {
            self.hush();
        }
        match step {
            // Where a field is, the window knows.
            Step::Stay | Step::Mend(_) => self.asked = None,
            Step::Leave(after) => self.leave(after),
            Step::GoOn(after) => self.go_on(after),
            Step::Save(then) => self.save(then),
            Step::AskForPath(purpose, then) => self.ask_for_path(purpose, then),
            Step::AskForOther(path, purpose, then) => self.ask_for_other(&path, purpose, then),
            Step::Typed(text) => self.use_typed(&text),
            Step::Chosen(answer) => self.use_chosen(answer),
            Step::Write(path, purpose, then) => self.write(&path, purpose, then),
            Step::Replace(seen, then) => self.replace(seen, then),
            Step::TakeTheirs(path) => self.take_theirs(&path),
            Step::SaveElsewhere(then) => self.save_elsewhere(then),
            Step::Open(path) => self.open(&path),
            Step::OpenCopy(path) => self.open_copy(&path),
            Step::Recover(left) => self.recover(*left),
            Step::RecoverCopy(left) => self.recover_copy(&left),
            Step::ThrowAway(left) => self.throw_away(&left),
        }
    }

    /// Says one sentence; it stands until the next thing is done.
    pub(super) fn say(&mut self, words: impl Into<String>) {
        self.message = words.into();
    }

    /// Takes the last message away: what it was about is over.
    pub(super) fn hush(&mut self) {
        self.message.clear();
    }

    /// What is to be settled in every frame, be the window hidden or not.
    pub(super) fn keep(&mut self) {
        self.keep_settings();
        self.safety.follow(&self.desk);
    }

    /// Looks into the folder that a path is being typed in, without waiting.
    pub(super) fn look_into_folder(&mut self) {
        let Some(Asked::Path(question)) = &mut self.asked else {
            self.look = None;
            return;
        };
        let files = &self.surroundings.file_system;
        let begin = || FolderLook::started(Arc::clone(files), self.wake.clone());
        let look = self.look.get_or_insert_with(begin);
        look.follow(question.folder(), question.looked.as_ref());
        if let Some(looked) = look.news() {
            question.looked = Some(looked);
        }
    }

    /// Whether that folder has not been looked into yet.
    pub(super) fn is_looking(&self) -> bool {
        self.look.as_ref().is_some_and(FolderLook::is_awaited)
    }

    /// The orderly end; where the system asked for it, what is unsaved stays for the next start.
    pub(super) fn end(&mut self) {
        if !self.is_ending.load(Ordering::SeqCst) {
            let fs = Arc::clone(&self.surroundings.file_system);
            self.safety.end(&*fs);
        }
        self.keep_settings();
    }

    /// What cannot be kept, said for as long as it cannot: a few words and a sentence.
    pub(super) fn lasting_note(&self) -> Option<(&'static str, String)> {
        let work = self.safety.problem();
        let work = work.map(|why| ("Unsaved work is not being kept", why));
        let settings = self.settings_problem.clone();
        work.or_else(|| settings.map(|why| ("Settings are not being kept", why)))
    }

    /// Writes the settings when they have changed.
    fn keep_settings(&mut self) {
        if self.settings != self.written_settings {
            if let Some(folder) = &self.surroundings.settings_folder {
                let written = self.settings.write(self.files(), folder);
                self.settings_problem = written.err().map(|problem| problem.to_string());
            }
            self.written_settings = self.settings.clone();
        }
    }

    fn files(&self) -> &dyn FileSystem {
        &*self.surroundings.file_system
    }

    fn ask(&mut self, question: Question) {
        self.asked = Some(Asked::Question(question));
    }
}
