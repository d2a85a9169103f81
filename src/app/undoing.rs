//! How is a step taken back or brought back, and how does the window show it?
//!
//! What was typed last is taken back first: a text that does not read, while it is in hand or newer
//! than the last step, then the steps of the document.

use super::arrangement::Part;
use super::drafts::CellId;
use super::focus::Pane;
use super::page::AppPage;
use super::place::{Place, moves_handles};
use super::technical::{changed_point_field, curve_in, is_point_in_hand};
use super::window::App;
use crate::project::{Cause, Change, Edit, Project};
use egui::Context;
use std::sync::Arc;

impl App {
    /// Takes the last step back, says what it was and brings its place into view.
    pub(super) fn undo(&mut self, ctx: &Context) {
        if self.give_up_half_typed(ctx) {
            return;
        }
        let Some(change) = self.desk().history.undoable() else {
            return;
        };
        let (words, edit) = (change.named().undone(), edit_of(&change));
        let other = self.desk().history.snapshot();
        self.history().undo();
        self.show_changed(ctx, edit.as_ref(), &other);
        self.say(format!("Undone: {words}"));
    }

    /// Knows how old the half-typed texts are, which of them undoing would give up, and what of them no
    /// save can hold.
    pub(super) fn follow_half_typed(&mut self) {
        self.drafts.steps = self.desk().history.steps();
        let newest = self.drafts.newest_unread();
        self.lifecycle.desk.half_typed = newest.map(|(_, draft)| draft.words());
        self.lifecycle.desk.unread = self.drafts.unread();
    }

    /// Brings a text that does not read into view, to be mended.
    pub(super) fn show_half_typed(&mut self, ctx: &Context, field: CellId) {
        self.view.write_up_is_open = field == CellId::PictureWidth;
        if self.view.write_up_is_open {
            self.focus.want(field.widget());
        } else {
            self.show_place(ctx, Place::Field(field));
        }
    }

    /// Gives up the text that does not read in the field that has the focus, else the newest one if
    /// no step came after it; whether there was one.
    fn give_up_half_typed(&mut self, ctx: &Context) -> bool {
        let in_hand = self.focus.field_in_hand(ctx);
        let in_hand = in_hand.and_then(|field| self.drafts.unread_in(field));
        let Some((field, draft)) = in_hand.or_else(|| self.drafts.newest_unread()) else {
            return false;
        };
        let words = draft.words();
        self.drafts.end(field);
        if field != CellId::PictureWidth {
            self.show_place(ctx, Place::Field(field));
        } else if self.view.write_up_is_open {
            self.focus.want(field.widget());
        }
        self.say(format!("Undone: {words}"));
        true
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
        let Some(mut place) = Place::of(edit, [self.desk().project(), other], form) else {
            return;
        };
        if let Some(whose) = place.field().and_then(curve_in) {
            if is_point_in_hand(ctx) {
                // The point is seen to go back, and is the next to be moved.
                return;
            }
            let last = self.drafts.last_in_hand();
            let both = [self.desk().project(), &**other];
            let point = last.and_then(|last| changed_point_field(whose, last, both));
            place = point.map_or(place, Place::Field);
        }
        if let Some(field) = place.field() {
            // What was left there half-typed was typed over a value that is gone.
            self.drafts.end(field);
        }
        if moves_handles(edit) && self.focus.is_in(ctx, Pane::Diagram) {
            // The handle is seen to go back, and is the next to be moved.
            if let Some(set) = place.set() {
                self.turn_to(set);
            }
        } else {
            self.show_place(ctx, place);
        }
    }

    /// Brings a place into view, and gives its field the focus unless a button that undoes has it.
    fn show_place(&mut self, ctx: &Context, place: Place) {
        if let Some(set) = place.set() {
            self.turn_to(set);
        }
        let item = place.at_bench();
        let is_at_bench = matches!(place, Place::Workshop(_)) || item.is_some();
        self.view.page = if is_at_bench {
            AppPage::Workshop
        } else {
            AppPage::Drive
        };
        self.view.planned_for = place.planned_for().unwrap_or(self.view.planned_for);
        self.view.open_at_bench = item.or(self.view.open_at_bench);
        let field = place.field();
        let is_in = |pane| self.focus.is_in(ctx, pane);
        let keeps_focus = is_in(Pane::Menu) || is_in(Pane::WriteUp);
        self.view.part = if is_at_bench {
            Part::Bench
        } else {
            Part::Forms
        };
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
