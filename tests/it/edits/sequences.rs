//! Does any sequence of edits, gestures, undos and redos give back what was?

use super::{every_edit, start};
use layshaft::project::{Edit, History, Project, format};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

/// What somebody does.
#[derive(Debug, Clone)]
enum Deed {
    Edit(Edit),
    Preview(Edit),
    Commit,
    Cancel,
    Undo,
    Redo,
}

fn deed() -> impl Strategy<Value = Deed> {
    let edit = select(every_edit());
    prop_oneof![
        3 => edit.clone().prop_map(Deed::Edit),
        3 => edit.prop_map(Deed::Preview),
        1 => Just(Deed::Commit),
        1 => Just(Deed::Cancel),
        2 => Just(Deed::Undo),
        2 => Just(Deed::Redo),
    ]
}

/// Does it; an edit may be refused where an earlier one has taken its part away.
fn perform(history: &mut History, deed: &Deed) {
    match deed {
        Deed::Edit(edit) => drop(history.edit(edit)),
        Deed::Preview(edit) => drop(history.preview(edit)),
        Deed::Commit => history.commit(),
        Deed::Cancel => history.cancel(),
        Deed::Undo => history.undo(),
        Deed::Redo => history.redo(),
    }
}

/// A history as it ought to be, kept in the plainest way: every document, and which one is shown.
struct Plain {
    documents: Vec<Project>,
    shown: usize,
    preview: Option<Project>,
}

impl Plain {
    fn new(project: Project) -> Self {
        Self {
            documents: vec![project],
            shown: 0,
            preview: None,
        }
    }

    fn project(&self) -> &Project {
        self.preview.as_ref().unwrap_or(&self.documents[self.shown])
    }

    fn commit(&mut self) {
        if let Some(project) = self.preview.take()
            && project != self.documents[self.shown]
        {
            self.documents.truncate(self.shown + 1);
            self.documents.push(project);
            self.shown += 1;
        }
    }

    fn perform(&mut self, deed: &Deed) {
        match deed {
            Deed::Edit(edit) => {
                self.commit();
                self.preview = edit.applied_to(self.project()).ok();
                self.commit();
            }
            Deed::Preview(edit) => {
                let after = edit.applied_to(&self.documents[self.shown]);
                self.preview = after.ok().or_else(|| self.preview.take());
            }
            Deed::Commit => self.commit(),
            Deed::Cancel => self.preview = None,
            Deed::Undo => {
                self.commit();
                self.shown = self.shown.saturating_sub(1);
            }
            Deed::Redo => {
                self.commit();
                self.shown = (self.shown + 1).min(self.documents.len() - 1);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn the_history_does_what_a_plain_list_of_documents_would(deeds in vec(deed(), 0..40)) {
        let (mut history, mut plain) = (History::new(start()), Plain::new(start()));
        for deed in &deeds {
            let revision = history.revision();
            let before = history.snapshot();
            perform(&mut history, deed);
            plain.perform(deed);
            prop_assert_eq!(history.project(), plain.project(), "after {:?}", deed);
            prop_assert_eq!(history.is_unsaved(), *plain.project() != start());
            prop_assert!(*before == *history.project() || history.revision() != revision);
        }
    }

    #[test]
    fn all_steps_undone_give_the_start_and_all_redone_the_end(deeds in vec(deed(), 0..40)) {
        let mut history = History::new(start());
        for deed in &deeds {
            perform(&mut history, deed);
        }
        while history.redoable().is_some() {
            history.redo();
        }
        history.commit();
        let end = history.snapshot();
        while history.undoable().is_some() {
            history.undo();
        }
        prop_assert_eq!(history.project(), &start());
        while history.redoable().is_some() {
            history.redo();
        }
        prop_assert_eq!(history.project(), &*end);
    }

    #[test]
    fn whatever_edits_lead_to_can_be_kept(deeds in vec(deed(), 0..40)) {
        let mut history = History::new(start());
        for deed in &deeds {
            perform(&mut history, deed);
        }
        let text = format::write(history.project()).unwrap();
        prop_assert_eq!(format::read(&text).map(|p| format::write(&p).unwrap()), Ok(text));
    }
}
