//! The steps as handles: dragged up and down, moved by arrow keys, heard as sliders. Esc puts back what a drag
//! or the keys have moved.

use crate::app::dialogs::field::reveal;
use crate::app::handle::{
    Claim, Slider, arrow_nudge, is_moved, note_nudged, page_nudge, pressed_at, reach,
};
use crate::chart::{Along, StepDiagram, StepScale};
use crate::draw::palette::Palette;
use crate::draw::step_diagram::StepPlaces;
use crate::finders::StepLayout;
use crate::units::{round_to, step_text};
use egui::{
    Color32, CursorIcon, EventFilter, FocusDirection, Id, Key, Modifiers, Pos2, Response, Sense,
    Stroke, Ui,
};

/// In which steps a hand moves a step.
const GRAIN: f64 = 0.01;

/// What a hand has begun with, in a drag or by keys.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Held {
    id: Id,
    before: StepLayout,
    /// The step in hand minus that under the pointer.
    offset: f64,
    /// The axis stands still meanwhile: it would run away from the hand.
    pub(super) scale: StepScale,
}

pub(super) fn handle_id(change: usize) -> Id {
    Id::unique(("step that is laid out", change))
}

/// The handles of all steps.
pub(super) struct Handles<'a> {
    pub(super) diagram: &'a StepDiagram,
    pub(super) places: &'a StepPlaces,
    pub(super) layout: &'a StepLayout,
    pub(super) held: &'a mut Option<Held>,
    pub(super) color: Color32,
    pub(super) palette: &'a Palette,
}

impl Handles<'_> {
    /// Shows the handles; the layout that a hand has made of it in this frame.
    pub(super) fn show(mut self, ui: &Ui) -> Option<StepLayout> {
        let mut moved = None;
        let mut is_held = false;
        for (change, step) in self.diagram.laid_out.iter().enumerate() {
            let at = self.places.of(change, *step);
            let Some(range) = self.layout.range_of_step(change) else {
                continue;
            };
            let id = handle_id(change);
            // Those of twelve gears lie side by side: none covers another.
            let square = reach(ui, at).intersect(self.places.frame.expand(8.0));
            let response = ui
                .interact(square, id, Sense::drag())
                .on_hover_and_drag_cursor(CursorIcon::ResizeVertical);
            reveal(&response);
            let by_hand = self.drag(&response, change, *step);
            let by_key = self.keys(ui, &response, change, *step);
            let asked = self.speak(&response, change, *step, range);
            let back = self.put_back(ui, &response);
            moved = back.or(by_hand).or(by_key).or(asked).or(moved);
            is_held |= response.dragged() || response.has_focus();
            self.paint(ui, &response, at);
        }
        if !is_held {
            *self.held = None;
        }
        moved
    }

    fn hold(&mut self, id: Id, offset: f64) {
        *self.held = Some(Held {
            id,
            before: self.layout.clone(),
            offset,
            scale: self.diagram.scale,
        });
    }

    fn drag(&mut self, response: &Response, change: usize, step: f64) -> Option<StepLayout> {
        if response.drag_started() {
            response.request_focus();
            let under = pressed_at(response).map_or(step, |at| self.places.step_at(at));
            self.hold(response.id, step - under);
        }
        let pointer = response
            .interact_pointer_pos()
            .filter(|_| is_moved(response))?;
        let held = self.held.as_ref().filter(|held| held.id == response.id)?;
        let wanted = self.places.step_at(pointer) + held.offset;
        let began = held.before.steps().get(change).copied()?;
        if ((wanted - began) / GRAIN).round() == 0.0 {
            // Back where it was, on the grid or off it.
            return Some(held.before.clone());
        }
        Some(held.before.with_step(change, round_to(wanted, GRAIN)))
    }

    /// Arrow keys and page keys move a step.
    fn keys(
        &mut self,
        ui: &Ui,
        response: &Response,
        change: usize,
        step: f64,
    ) -> Option<StepLayout> {
        if !response.has_focus() {
            return None;
        }
        let filter = EventFilter {
            vertical_arrows: true,
            escape: true,
            ..EventFilter::default()
        };
        ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
        let nudge = ui.input(|i| arrow_nudge(&i.events, Along::Y) + page_nudge(&i.events));
        if nudge == 0.0 {
            return None;
        }
        // In the first frame the filter does not hold yet.
        ui.memory_mut(|m| m.move_focus(FocusDirection::None));
        if self.held.as_ref().is_none_or(|held| held.id != response.id) {
            self.hold(response.id, 0.0);
        }
        note_nudged(response);
        Some(
            self.layout
                .with_step(change, round_to(step + nudge * GRAIN, GRAIN)),
        )
    }

    /// Tells it to those who cannot see it, and does what they ask for.
    fn speak(
        &self,
        response: &Response,
        change: usize,
        step: f64,
        range: [f64; 2],
    ) -> Option<StepLayout> {
        let slider = Slider {
            name: format!("Step {}", self.diagram.changes.get(change)?),
            value: step,
            words: step_text(step),
            range,
            step: GRAIN,
        };
        slider.speak(response);
        let wanted = slider.wanted(response)?;
        Some(self.layout.with_step(change, wanted))
    }

    /// Esc puts back what this hand has moved; with nothing moved it is the dialog's.
    fn put_back(&mut self, ui: &Ui, response: &Response) -> Option<StepLayout> {
        let is_own = |held: &&Held| held.id == response.id && held.before != *self.layout;
        let before = self.held.as_ref().filter(is_own)?.before.clone();
        let is_asked = ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
        is_asked.then(|| {
            *self.held = None;
            before
        })
    }

    fn paint(&self, ui: &Ui, response: &Response, at: Pos2) {
        let is_held = Claim::of(response).is_some();
        let radius = if is_held { 7.0 } else { 5.0 };
        let outline = Stroke::new(2.0, self.palette.paper);
        ui.painter().circle(at, radius, self.color, outline);
    }
}
