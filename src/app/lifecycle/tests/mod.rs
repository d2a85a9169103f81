//! The life of documents as a machine: what each state asks at each step, and what each answer does.
//!
//! Without a window: steps are taken, questions are answered by their words, and the files of a
//! simulated disk are looked at.

mod leaving;
mod recovering;
mod safe_answers;
mod saving;
mod sequences;

#[expect(dead_code, reason = "other tests use the rest of it")]
#[path = "../../../../tests/it/support/scripted_picker.rs"]
mod scripted_picker;

use super::{Asked, Lifecycle, PathQuestion, Question, Step, Surroundings};
use crate::app::drafts::CellId;
use crate::app::recovery::{Lock, Pace};
use crate::app::simulated::{FOLDER, Fault, SimulatedDisk};
use crate::app::unread::Unread;
use crate::gearing::EngineSpeed;
use crate::project::examples::EXAMPLES;
use crate::project::{Edit, FileSystem, Project, format};
use scripted_picker::ScriptedPicker;
use std::io::ErrorKind;
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

/// An autosave that never comes: what is kept here is kept by a step.
const NEVER: Pace = Pace {
    quiet: Duration::from_hours(1),
    longest_wait: Duration::from_hours(1),
    retry: Duration::from_hours(1),
};

/// The file that most of it is about, and others.
const FILE: &str = "van.ron";
const OTHER: &str = "other.ron";
const NEW: &str = "new.ron";

/// The camper van with a redline of its own.
fn van(redline_rpm: f64) -> Project {
    let redline = EngineSpeed::from_rpm(redline_rpm).unwrap();
    let van = EXAMPLES[0].project().unwrap();
    Edit::Redline(redline).applied_to(&van).unwrap()
}

/// A project in the layout of the program.
fn text(project: &Project) -> String {
    format::write(project).unwrap()
}

/// The same as somebody writes it by hand.
fn by_hand(project: &Project) -> String {
    format!("// measured, not from the book\n{}", text(project))
}

/// What is said while nothing is asked, and what is asked.
#[derive(Debug, PartialEq)]
enum Matter<'a> {
    Nothing,
    Path(&'a PathQuestion),
    Question(&'a Question),
}

/// A document's life on a simulated disk, where another window may be at work too.
struct Life {
    machine: Lifecycle,
    disk: SimulatedDisk,
    /// The locks of another window.
    others: Vec<Lock>,
}

impl Life {
    /// One that begins on a disk as it is, on the camper van in no file.
    fn on(disk: SimulatedDisk) -> Self {
        let surroundings = Surroundings {
            file_system: Arc::new(disk.clone()),
            picker: Box::new(ScriptedPicker::default()),
            settings_folder: None,
            pace: NEVER,
        };
        let mut machine = Lifecycle::new(van(4000.0), None, surroundings);
        machine.keep_unsaved_work_in(Path::new(FOLDER));
        Self {
            machine,
            disk,
            others: Vec::new(),
        }
    }

    /// One on the camper van in no file.
    fn nowhere() -> Self {
        Self::on(SimulatedDisk::default())
    }

    /// One on a file that holds this.
    fn on_file(text: &str) -> Self {
        let mut life = Self::nowhere();
        life.others_write(FILE, text.as_bytes());
        life.take(Step::Open(SimulatedDisk::path(FILE)));
        assert_eq!(life.file().as_deref(), Some(FILE));
        life
    }

    /// The same with unsaved work in it.
    fn changed(mut self) -> Self {
        self.edit(4500.0);
        assert!(self.is_unsaved());
        self
    }

    /// What the window does at a step.
    fn take(&mut self, step: Step) {
        self.machine.message.clear();
        self.machine.desk.history.commit();
        self.machine.take(step);
    }

    /// Leaves a text in the field of the idle speed that does not read.
    fn leave_unread(&mut self) {
        self.machine.desk.unread.push(Unread {
            field: CellId::Idle,
            name: "Idle".to_owned(),
            text: "slow".to_owned(),
        });
    }

    fn edit(&mut self, redline_rpm: f64) {
        let redline = EngineSpeed::from_rpm(redline_rpm).unwrap();
        let history = &mut self.machine.desk.history;
        history.edit(&Edit::Redline(redline)).unwrap();
    }

    /// Answers a question by what stands on the button.
    #[track_caller]
    fn answer(&mut self, words: &str) {
        let answers = &self.question().answers;
        let step = answers.iter().find(|answer| answer.words == words);
        let step = step.unwrap_or_else(|| panic!("no {words}: {answers:?}"));
        let step = step.step.clone();
        self.take(step);
    }

    /// Types a path that is asked for.
    #[track_caller]
    fn type_name(&mut self, name: &str) {
        assert!(
            matches!(self.asked(), Matter::Path(_)),
            "{:?}",
            self.asked()
        );
        let path = SimulatedDisk::path(name);
        self.take(Step::Typed(path.display().to_string()));
    }

    fn asked(&self) -> Matter<'_> {
        match &self.machine.asked {
            None => Matter::Nothing,
            Some(Asked::Path(path)) => Matter::Path(path),
            Some(Asked::Question(question)) => Matter::Question(question),
        }
    }

    #[track_caller]
    fn question(&self) -> &Question {
        match self.asked() {
            Matter::Question(question) => question,
            other => panic!("no question but {other:?}; {}", self.machine.message),
        }
    }

    /// The heading of the question; empty where there is none, `a path` where one is asked for.
    fn heading(&self) -> &str {
        match self.asked() {
            Matter::Nothing => "",
            Matter::Path(_) => "a path",
            Matter::Question(question) => question.heading,
        }
    }

    /// What stands on the buttons.
    fn words(&self) -> Vec<&'static str> {
        let answers = self.question().answers.iter();
        answers.map(|answer| answer.words).collect()
    }

    /// Why the last path did not do; empty where none was tried.
    fn problem(&self) -> &str {
        match self.asked() {
            Matter::Path(path) => path.problem.as_deref().unwrap_or_default(),
            Matter::Nothing | Matter::Question(_) => "",
        }
    }

    fn is_unsaved(&self) -> bool {
        self.machine.desk.history.is_unsaved()
    }

    fn project(&self) -> &Project {
        self.machine.desk.project()
    }

    /// The name of the document's file.
    fn file(&self) -> Option<String> {
        let name = self.machine.desk.file.as_deref()?.file_name()?;
        Some(name.to_string_lossy().into_owned())
    }

    /// What a file holds.
    fn held(&self, name: &str) -> Option<String> {
        let bytes = self.disk.files().remove(&SimulatedDisk::path(name))?;
        Some(String::from_utf8_lossy(&bytes).into_owned())
    }

    /// Everything that a step which changes nothing must leave as it is.
    fn state(&self) -> impl PartialEq + std::fmt::Debug + use<> {
        let desk = &self.machine.desk;
        (
            (desk.history.revision(), desk.history.is_unsaved()),
            (desk.file.clone(), desk.on_disk),
            (self.machine.has_other_form, self.machine.may_close),
            self.disk.files(),
        )
    }

    // What others do.

    fn others_write(&self, name: &str, bytes: &[u8]) {
        self.disk.put(name, bytes, 0o644);
    }

    fn others_remove(&self, name: &str) {
        let disk = self.disk.of_another_process();
        // What is not there is gone already.
        let _ = disk.remove(&SimulatedDisk::path(name));
    }

    /// Another window opens a file.
    fn others_open(&mut self, name: &str) {
        let disk = self.disk.of_another_process();
        let document = SimulatedDisk::path(name);
        let path = Lock::of_document(&disk, Path::new(FOLDER), &document);
        self.others.extend(Lock::taken(&disk, &path));
    }

    fn others_close_all(&mut self) {
        self.others.clear();
    }
}

/// What comes of a deed on a disk that refuses one step of it, for each of its steps.
fn with_each_step_refused(
    prepared: impl Fn() -> Life,
    deed: impl Fn(&mut Life),
    judge: impl Fn(&mut Life, &str),
) {
    for (at, name) in steps_of(&prepared, &deed) {
        let mut life = prepared();
        let refused = Fault::Refused(ErrorKind::StorageFull);
        life.disk.fail_at(at, refused);
        deed(&mut life);
        judge(&mut life, name);
    }
}

/// A life in which a deed found the disk full.
fn with_full_disk(prepared: impl Fn() -> Life, deed: impl Fn(&mut Life)) -> Life {
    let steps = steps_of(&prepared, &deed);
    let (at, _) = steps.iter().find(|(_, name)| *name == "create").unwrap();
    let mut life = prepared();
    life.disk
        .fail_at(*at, Fault::Refused(ErrorKind::StorageFull));
    deed(&mut life);
    life
}

/// The steps that the disk takes for a deed, each with its number.
fn steps_of(prepared: impl Fn() -> Life, deed: impl Fn(&mut Life)) -> Vec<(usize, &'static str)> {
    let mut sound = prepared();
    let before = sound.disk.steps().len();
    deed(&mut sound);
    let steps = sound.disk.steps();
    steps.into_iter().enumerate().skip(before).collect()
}
