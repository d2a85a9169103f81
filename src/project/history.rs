//! Which document is on the table, how did it come about, and what would undoing take back?
//!
//! Whole documents are kept: a project is small, and what was is then exactly what comes back. A
//! gesture (a drag, a typing) is one transaction: it previews as often as it likes and leaves one
//! step or none.
//!
//! Equal documents are one: what is shown, what is saved and what a gesture began from are compared
//! when they come, once, and whoever asks later whether they differ compares their identities.

use super::document::Project;
use super::edits::{Edit, EditError};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

/// How many steps can be taken back.
const MOST_STEPS: usize = 500;

/// Names one document among all that were open since the program began.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct DocumentId(u64);

impl DocumentId {
    fn next() -> Self {
        static COUNT: AtomicU64 = AtomicU64::new(0);
        Self(COUNT.fetch_add(1, Ordering::Relaxed))
    }
}

/// One state of one document: no other document ever has the same revision.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Revision {
    document: DocumentId,
    count: u64,
}

impl Revision {
    /// The document that this is a state of.
    pub fn document(self) -> DocumentId {
        self.document
    }
}

/// The document with its past and its undone future.
#[derive(Debug, Clone)]
pub struct History {
    present: Arc<Project>,
    /// What the file holds, as far as that is known.
    saved: Option<Arc<Project>>,
    past: Vec<Step>,
    /// How many steps were taken so long ago that they cannot be taken back any more.
    forgotten: usize,
    future: Vec<Step>,
    gesture: Option<Step>,
    revision: Revision,
}

/// A document that was, and what changed it.
#[derive(Debug, Clone)]
struct Step {
    project: Arc<Project>,
    cause: Cause,
}

/// What made one document of another.
#[derive(Debug, Clone, PartialEq)]
pub enum Cause {
    /// An edit.
    Edit(Edit),
    /// Another document took its place; why, in a few words.
    Replaced(&'static str),
}

/// A step that can be taken back or brought back.
#[derive(Debug, Clone, Copy)]
pub struct Change<'a> {
    /// What made it.
    pub cause: &'a Cause,
    /// The document before it.
    pub before: &'a Project,
    /// The document after it.
    pub after: &'a Project,
}

impl History {
    /// A document without a past, as read from a file or made new: it counts as saved.
    pub fn new(project: impl Into<Arc<Project>>) -> Self {
        let present = project.into();
        Self {
            saved: Some(Arc::clone(&present)),
            present,
            past: Vec::new(),
            forgotten: 0,
            future: Vec::new(),
            gesture: None,
            revision: Revision {
                document: DocumentId::next(),
                count: 0,
            },
        }
    }

    /// The document as it stands, previews of a running gesture included.
    pub fn project(&self) -> &Project {
        &self.present
    }

    /// The document to be handed to another thread.
    pub fn snapshot(&self) -> Arc<Project> {
        Arc::clone(&self.present)
    }

    /// The state of the document: another one whenever the document may have changed.
    pub fn revision(&self) -> Revision {
        self.revision
    }

    /// Whether the document differs from what was last saved.
    pub fn is_unsaved(&self) -> bool {
        !self.saved.as_ref().is_some_and(|saved| self.shows(saved))
    }

    /// Notes that `project` is what the file now holds.
    pub fn mark_saved(&mut self, project: Arc<Project>) {
        self.saved = Some(self.known(project));
    }

    /// Notes that no file holds this document: it is unsaved until it is saved.
    pub fn mark_unsaved(&mut self) {
        self.saved = None;
    }

    /// Makes one edit a step of its own, after whatever gesture was running.
    ///
    /// # Errors
    /// When the edit cannot be made; the document then stays as it was.
    pub fn edit(&mut self, edit: &Edit) -> Result<(), EditError> {
        self.commit();
        self.preview(edit)?;
        self.commit();
        Ok(())
    }

    /// Shows what an edit would do: it replaces the previous preview of the running gesture.
    ///
    /// # Errors
    /// When the edit cannot be made; the last good preview then stays.
    pub fn preview(&mut self, edit: &Edit) -> Result<(), EditError> {
        let before = match &self.gesture {
            Some(step) => Arc::clone(&step.project),
            None => Arc::clone(&self.present),
        };
        let after = Arc::new(edit.applied_to(&before)?);
        self.gesture = Some(Step {
            project: before,
            cause: Cause::Edit(edit.clone()),
        });
        let after = self.known(after);
        if !self.shows(&after) {
            self.show(after);
        }
        Ok(())
    }

    /// How many steps lead from the first document to this one; a running gesture is none yet.
    pub fn steps(&self) -> usize {
        self.forgotten + self.past.len()
    }

    /// Whether a gesture is running.
    pub fn in_gesture(&self) -> bool {
        self.gesture.is_some()
    }

    /// Ends the running gesture: one step, or none where nothing changed.
    pub fn commit(&mut self) {
        let Some(step) = self.gesture.take() else {
            return;
        };
        if self.shows(&step.project) {
            return;
        }
        self.past.push(step);
        if self.past.len() > MOST_STEPS {
            self.past.remove(0);
            self.forgotten += 1;
        }
        self.future.clear();
    }

    /// Puts another document in the place of this one as a step that can be taken back; `what` says
    /// what undoing would take back.
    pub fn replace(&mut self, project: Arc<Project>, what: &'static str) {
        self.commit();
        self.gesture = Some(Step {
            project: self.snapshot(),
            cause: Cause::Replaced(what),
        });
        self.show(project);
        self.commit();
    }

    /// Takes the running gesture back.
    pub fn cancel(&mut self) {
        if let Some(step) = self.gesture.take() {
            self.show(step.project);
        }
    }

    /// What undoing would take back.
    pub fn undoable(&self) -> Option<Change<'_>> {
        let step = self.changing_gesture().or_else(|| self.past.last())?;
        Some(Change {
            cause: &step.cause,
            before: &step.project,
            after: &self.present,
        })
    }

    /// What redoing would bring back; nothing once a running gesture has changed something.
    pub fn redoable(&self) -> Option<Change<'_>> {
        if self.changing_gesture().is_some() {
            return None;
        }
        let step = self.future.last()?;
        Some(Change {
            cause: &step.cause,
            before: &self.present,
            after: &step.project,
        })
    }

    /// The running gesture, if ending it now would leave a step.
    fn changing_gesture(&self) -> Option<&Step> {
        let gesture = self.gesture.as_ref();
        gesture.filter(|step| !self.shows(&step.project))
    }

    /// Takes the last step back; a running gesture is ended first.
    pub fn undo(&mut self) {
        self.commit();
        if let Some(step) = self.past.pop() {
            let undone = Step {
                project: self.snapshot(),
                cause: step.cause,
            };
            self.future.push(undone);
            self.show(step.project);
        }
    }

    /// Brings the last undone step back; a running gesture is ended first.
    pub fn redo(&mut self) {
        self.commit();
        if let Some(step) = self.future.pop() {
            let redone = Step {
                project: self.snapshot(),
                cause: step.cause,
            };
            self.past.push(redone);
            self.show(step.project);
        }
    }

    fn show(&mut self, project: Arc<Project>) {
        self.present = self.known(project);
        self.revision.count += 1;
    }

    /// Whether a known document is the one that is shown.
    fn shows(&self, known: &Arc<Project>) -> bool {
        Arc::ptr_eq(known, &self.present)
    }

    /// The document, or the one that is known already where they are equal.
    fn known(&self, project: Arc<Project>) -> Arc<Project> {
        let began_from = self.gesture.as_ref().map(|step| &step.project);
        let mut known = [Some(&self.present), began_from, self.saved.as_ref()]
            .into_iter()
            .flatten();
        let same = known.find(|known| **known == project).cloned();
        same.unwrap_or(project)
    }
}
