//! Any sequence of edits, steps, answers and deeds of others, under watch: no work of anybody is lost.

use super::{Fault, Life, Matter, SimulatedDisk, Step, by_hand, text, van};
use crate::app::file_picker::Purpose;
use crate::app::lifecycle::{After, Question};
use crate::project::examples::Start;
use crate::project::{Project, RecoveryCopy, format};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use std::collections::{BTreeMap, BTreeSet};
use std::io::ErrorKind;
use std::sync::Arc;

/// The files that all of it is about.
const NAMES: [&str; 3] = ["a.ron", "b.ron", "c.ron"];

/// What somebody does, here or elsewhere.
#[derive(Debug, Clone)]
enum Deed {
    /// Another redline, where nothing is asked.
    Edit(u8),
    /// A command, where nothing is asked; closing the window, whatever is asked.
    Take(Step),
    /// The answer with this number, of as many as there are; where a path is asked for, this file.
    Answer(u8, &'static str),
    /// Somebody else writes a file.
    Others(&'static str, Vec<u8>),
    /// Somebody else writes what stands here into the document's file, by hand or not.
    OthersAlike(bool),
    /// Somebody else takes a file away.
    Removed(&'static str),
    /// Another window opens a file.
    OpenedElsewhere(&'static str),
    /// The other windows end.
    ClosedElsewhere,
    /// The disk refuses a step, so many steps from now.
    Refused(u8),
}

fn deed() -> impl Strategy<Value = Deed> {
    let name = || select(NAMES.to_vec());
    let written = prop_oneof![
        3 => (30_u8..34).prop_map(|n| text(&redlined(n)).into_bytes()),
        1 => (30_u8..34).prop_map(|n| by_hand(&redlined(n)).into_bytes()),
        1 => Just(b"(format: 1".to_vec()),
        1 => Just(b"\xff\xfe".to_vec()),
    ];
    let path = name().prop_map(SimulatedDisk::path);
    let command = prop_oneof![
        1 => Just(Step::Leave(After::New(Start::Car))),
        1 => Just(Step::Leave(After::Example(1))),
        2 => Just(Step::Leave(After::Choose)),
        3 => path.prop_map(|path| Step::Leave(After::Open(path))),
        4 => Just(Step::Save(None)),
        2 => Just(Step::AskForPath(Purpose::Save, None)),
        1 => Just(Step::Leave(After::Quit)),
    ];
    prop_oneof![
        6 => (30_u8..34).prop_map(Deed::Edit),
        8 => command.prop_map(Deed::Take),
        12 => (any::<u8>(), name()).prop_map(|(at, name)| Deed::Answer(at, name)),
        4 => (name(), written).prop_map(|(name, bytes)| Deed::Others(name, bytes)),
        2 => any::<bool>().prop_map(Deed::OthersAlike),
        1 => name().prop_map(Deed::Removed),
        1 => name().prop_map(Deed::OpenedElsewhere),
        1 => Just(Deed::ClosedElsewhere),
        1 => (0_u8..30).prop_map(Deed::Refused),
    ]
}

/// The camper van with a redline of so many hundred rev/min.
fn redlined(hundreds: u8) -> Project {
    van(100.0 * f64::from(hundreds))
}

/// The documents' files.
fn documents(life: &Life) -> BTreeMap<String, Vec<u8>> {
    let files = NAMES.iter().filter_map(|name| {
        let held = life.disk.files().remove(&SimulatedDisk::path(name))?;
        Some(((*name).to_owned(), held))
    });
    files.collect()
}

/// Whether the message begins with these words.
fn says(life: &Life, words: &str) -> bool {
    life.machine.message.starts_with(words)
}

/// The project that a file holds, if it holds one.
fn project_of(held: &[u8]) -> Option<Project> {
    format::read(std::str::from_utf8(held).ok()?).ok()
}

/// Whether a step can lose something: an answer may lead to it, but not the first one.
fn is_harmful(step: &Step) -> bool {
    match step {
        Step::Stay
        | Step::Mend(_)
        | Step::Leave(_)
        | Step::Save(_)
        | Step::AskForPath(..)
        | Step::AskForOther(..)
        | Step::SaveElsewhere(_)
        | Step::TakeTheirs(_)
        | Step::Typed(_)
        | Step::Chosen(_)
        | Step::OpenCopy(_)
        | Step::Recover(_)
        | Step::RecoverCopy(_) => false,
        Step::GoOn(_)
        | Step::Write(..)
        | Step::Replace(..)
        | Step::Open(_)
        | Step::ThrowAway(_) => true,
    }
}

fn check_question(question: &Question) {
    let answers = &question.answers;
    assert!(answers.len() > 1, "{question:?}");
    let safe: Vec<_> = answers.iter().filter(|answer| answer.is_safe).collect();
    assert_eq!(safe.len(), 1, "{question:?}");
    assert!(!is_harmful(&safe[0].step), "{question:?}");
    assert_eq!(safe[0], &answers[0], "{question:?}");
    assert_eq!(answers[answers.len() - 1].step, Step::Stay, "{question:?}");
    let words: BTreeSet<_> = answers.iter().map(|answer| answer.words).collect();
    assert_eq!(words.len(), answers.len(), "{question:?}");
}

/// A life under watch.
struct Watched {
    life: Life,
    /// What was read or written here since the document was opened.
    known: BTreeSet<(String, Vec<u8>)>,
    /// What the document's file held when the question came up that is being asked about it.
    shown: Option<(String, Vec<u8>)>,
    /// Whether the loss of unsaved work was agreed to, and what follows is still being asked.
    loss_is_agreed: bool,
    /// What a dead window left, while it must be somewhere.
    left: bool,
}

impl Watched {
    fn new(has_left: bool) -> Self {
        let disk = SimulatedDisk::default();
        disk.put("a.ron", text(&redlined(30)).as_bytes(), 0o644);
        disk.put("b.ron", by_hand(&redlined(31)).as_bytes(), 0o644);
        if has_left {
            let copy = RecoveryCopy {
                file: Some(SimulatedDisk::path("a.ron")),
                began_from: None,
                written_unix_s: 7,
                project: Arc::new(redlined(40)),
            };
            let path = SimulatedDisk::path("12-34.ron");
            copy.write(&disk.of_another_process(), &path).unwrap();
        }
        Self {
            life: Life::on(disk),
            known: BTreeSet::new(),
            shown: None,
            loss_is_agreed: false,
            left: has_left,
        }
    }

    fn perform(&mut self, deed: Deed) {
        match deed {
            Deed::Edit(hundreds) if self.life.asked() == Matter::Nothing => {
                self.life.edit(100.0 * f64::from(hundreds));
            }
            Deed::Take(step) => {
                let is_closing = step == Step::Leave(After::Quit);
                if self.life.asked() == Matter::Nothing || is_closing {
                    self.take(&step);
                }
            }
            Deed::Answer(at, name) => {
                if let Some(step) = self.answer(at, name) {
                    self.take(&step);
                }
            }
            Deed::Others(name, bytes) => self.life.others_write(name, &bytes),
            Deed::OthersAlike(is_by_hand) => self.others_write_alike(is_by_hand),
            Deed::Removed(name) => self.life.others_remove(name),
            Deed::OpenedElsewhere(name) => self.life.others_open(name),
            Deed::ClosedElsewhere => self.life.others_close_all(),
            Deed::Refused(steps) => {
                let at = self.life.disk.steps().len() + usize::from(steps);
                let refused = Fault::Refused(ErrorKind::PermissionDenied);
                self.life.disk.fail_at(at, refused);
            }
            Deed::Edit(_) => {}
        }
    }

    fn others_write_alike(&self, is_by_hand: bool) {
        if let Some(name) = self.life.file() {
            let write = if is_by_hand { by_hand } else { text };
            let alike = write(self.life.project());
            self.life.others_write(&name, alike.as_bytes());
        }
    }

    /// The step that an answer leads to, where something is asked.
    fn answer(&self, at: u8, name: &str) -> Option<Step> {
        match self.life.asked() {
            Matter::Nothing => None,
            Matter::Path(_) if at.is_multiple_of(4) => Some(Step::Stay),
            Matter::Path(_) => {
                let path = SimulatedDisk::path(name);
                Some(Step::Typed(path.display().to_string()))
            }
            Matter::Question(question) => {
                let answers = &question.answers;
                Some(answers[usize::from(at) % answers.len()].step.clone())
            }
        }
    }

    /// Takes a step and looks at what has become of everybody's work.
    fn take(&mut self, step: &Step) {
        let life = &mut self.life;
        let before = documents(life);
        let (state, work) = (life.state(), text(life.project()));
        let document = life.machine.desk.history.revision().document();
        let (was_unsaved, could_close) = (life.is_unsaved(), life.machine.may_close);
        let asked = life.heading().to_owned();
        self.loss_is_agreed |= matches!(step, Step::GoOn(_));
        self.left &= !matches!(step, Step::ThrowAway(_));

        life.take(step.clone());

        let after = documents(life);
        if *step == Step::Stay {
            assert!(life.state() == state, "staying changes something");
            assert_eq!(life.asked(), Matter::Nothing);
        }
        for (name, held) in &before {
            let now = after.get(name);
            if now != Some(held) {
                let lost = (name.clone(), held.clone());
                let is_known = self.known.contains(&lost);
                let is_agreed = match step {
                    Step::Write(path, ..) => path.ends_with(name),
                    Step::Replace(..) => self.shown.as_ref() == Some(&lost),
                    _ => false,
                };
                assert!(is_known || is_agreed, "{name} was lost by {step:?}");
                assert_eq!(now.map(Vec::as_slice), Some(work.as_bytes()), "{name}");
            }
        }
        let is_new = life.machine.desk.history.revision().document() != document;
        let is_left = is_new || (life.machine.may_close && !could_close);
        if was_unsaved && is_left && !self.loss_is_agreed {
            let is_saved = after.values().any(|held| held == work.as_bytes());
            assert!(
                is_saved,
                "unsaved work was lost by {step:?} after {asked:?}"
            );
        }
        let is_settled = was_unsaved && !life.is_unsaved() && !is_new;
        let is_taken = matches!(step, Step::TakeTheirs(_));
        // Where it may not survive a power cut, it is said to be saved in other words.
        let is_said = ["Saved in", "saved"].iter().any(|words| says(life, words));
        let is_saved = is_said || (is_settled && !is_taken);
        if is_saved {
            let name = life.file().unwrap();
            assert_eq!(life.held(&name), Some(text(life.project())));
            assert!(!life.is_unsaved());
        }
        self.learn(&before, &after, is_new, is_saved);
    }

    /// Notes what this document knows of the files now.
    fn learn(
        &mut self,
        before: &BTreeMap<String, Vec<u8>>,
        after: &BTreeMap<String, Vec<u8>>,
        is_new: bool,
        is_saved: bool,
    ) {
        let life = &self.life;
        if is_new {
            self.known.clear();
        }
        let was_read = says(life, "Opened /") || says(life, "Opened theirs");
        let own = life.file();
        let own = own.and_then(|name| after.get(&name).map(|held| (name, held.clone())));
        for (name, held) in after {
            if before.get(name) != Some(held) {
                self.known.insert((name.clone(), held.clone()));
            }
        }
        // Somebody else may have written the very work that was saved: then it is ours, too.
        if is_saved || was_read {
            self.known.extend(own.clone());
        }
        let (heading, project) = (life.heading(), life.project());
        self.shown = own.filter(|(_, held)| match heading {
            "The file has changed" => true,
            // Nothing is said of figures there: they are to be the same.
            "Save in Layshaft's own layout?" => project_of(held).as_ref() == Some(project),
            _ => false,
        });
        if let Matter::Question(question) = life.asked() {
            check_question(question);
        }
        if life.machine.asked.is_none() {
            self.loss_is_agreed = false;
        }
    }

    /// Unsaved work of a dead window lies on the disk until it is thrown away or saved.
    fn check_left(&self) {
        let disk = self.life.disk.of_another_process();
        let files = self.life.disk.files();
        let is_kept = files.keys().any(|path| {
            let copy = RecoveryCopy::read(&disk, path);
            copy.is_some_and(|copy| *copy.project == redlined(40))
        });
        assert!(is_kept || !self.left, "what was left is lost");
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 64,
        max_shrink_iters: 2000,
        ..ProptestConfig::default()
    })]

    #[test]
    fn whatever_is_done_and_answered_no_work_of_anybody_is_lost_unasked(
        has_left: bool,
        deeds in vec(deed(), 1..50),
    ) {
        let mut watched = Watched::new(has_left);
        for deed in deeds {
            watched.life.machine.offer_next();
            if let Matter::Question(question) = watched.life.asked() {
                check_question(question);
            }
            watched.perform(deed);
            watched.check_left();
            if watched.life.machine.may_close {
                break;
            }
        }
    }
}
