//! How is a step taken back or brought back, and how does the window show it?

use super::arrangement::Part;
use super::drafts::CellId;
use super::focus::Pane;
use super::place::{Place, moves_handles};
use super::window::App;
use crate::project::{Cause, Change, Edit, Project};
use egui::Context;
use std::sync::Arc;

impl App {
    /// Takes the last step back, says what it was and brings its place into view.
    pub(super) fn undo(&mut self, ctx: &Context) {
        let Some(change) = self.desk().history.undoable() else {
            return;
        };
        let (words, edit) = (change.named().undone(), edit_of(&change));
        let other = self.desk().history.snapshot();
        self.history().undo();
        self.show_changed(ctx, edit.as_ref(), &other);
        self.say(format!("Undone: {words}"));
    }

    /// Brings the last undone step back, says what it is and brings its place into view.
    pub(super) fn redo(&mut self, ctx: &Context) {
        let Some(change) = self.desk().history.redoable() else {
            return;
        };
        let (words, edit) = (change.named().redone(), edit_of(&change));
        let other = self.desk().history.snapshot();
        self.history().redo();
        self.show_changed(ctx, edit.as_ref(), &other);
        self.say(format!("Redone: {words}"));
    }

    /// Brings into view what an edit has changed; `other` is the document that was shown before.
    fn show_changed(&mut self, ctx: &Context, edit: Option<&Edit>, other: &Arc<Project>) {
        let Some(edit) = edit else { return };
        let form = self.view.ratio_form;
        let Some(place) = Place::of(edit, [self.desk().project(), other], form) else {
            return;
        };
        if let Some(set) = place.set() {
            self.turn_to(set);
        }
        let field = place.field();
        if let Some(field) = field {
            // What was left there half-typed was typed over a value that is gone.
            self.drafts.end(field);
        }
        let is_in = |pane| self.focus.is_in(ctx, pane);
        if moves_handles(edit) && is_in(Pane::Diagram) {
            // The handle is seen to go back, and is the next to be moved.
            return;
        }
        let keeps_focus = is_in(Pane::Menu) || is_in(Pane::WriteUp);
        self.view.part = Part::Forms;
        self.view.sought = field;
        match field.map(CellId::widget) {
            // Enter on a button that undoes is to undo once more, not to type.
            Some(field) if keeps_focus => self.focus.seek(field),
            Some(field) => self.focus.want(field),
            None => {}
        }
    }
}

/// The edit that a step consists of; none where another document took this one's place.
fn edit_of(change: &Change<'_>) -> Option<Edit> {
    match change.cause {
        Cause::Edit(edit) => Some(edit.clone()),
        Cause::Replaced(_) => None,
    }
}
