//! How are shift points moved by key, and by those who cannot see them?

use super::{Handles, are_dragged};
use crate::app::action::Action;
use crate::app::handle::{Slider, arrow_nudge, end_of_keys, note_nudged, page_nudge};
use crate::chart::{Along, Handle};
use egui::{EventFilter, Response};

impl Handles<'_> {
    /// Arrow keys and page keys nudge, Enter commits, Esc puts back.
    pub(super) fn keys(&mut self, response: &Response, handle: &Handle) {
        let is_dragging = are_dragged(self.ui) || response.dragged();
        if response.gained_focus() && !is_dragging {
            self.actions.push(Action::Commit);
        }
        if response.has_focus() {
            let filter = EventFilter {
                horizontal_arrows: handle.along == Along::X,
                vertical_arrows: handle.along == Along::Y,
                escape: true,
                ..EventFilter::default()
            };
            self.ui
                .memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
            let steps = self
                .ui
                .input(|i| arrow_nudge(&i.events, handle.along) + page_nudge(&i.events));
            if steps != 0.0 {
                let change_rpm = steps * handle.travel.step_rpm;
                self.preview(handle, handle.shift_rpm() + change_rpm);
                note_nudged(response);
            }
        }
        end_of_keys(response, is_dragging, self.actions);
    }

    /// What those ask for who cannot see the handle; without the focus each request is a step.
    pub(super) fn requests(&mut self, response: &Response, handle: &Handle) {
        if let Some(wanted_rpm) = self.slider(handle).wanted(response) {
            if !response.has_focus() {
                self.actions.push(Action::Commit);
            }
            self.preview(handle, wanted_rpm);
            if !response.has_focus() {
                self.actions.push(Action::Commit);
            }
        }
    }

    pub(super) fn preview(&mut self, handle: &Handle, wanted_rpm: f64) {
        let edit = handle.moved_to(wanted_rpm);
        self.actions.extend(edit.map(Action::Preview));
    }

    pub(super) fn speak(&self, response: &Response, handle: &Handle) {
        self.slider(handle).speak(response);
    }

    fn slider(&self, handle: &Handle) -> Slider {
        Slider {
            name: handle.name(&self.set.name),
            value: handle.shift_rpm(),
            words: handle.words(),
            range: handle.travel.rpm,
            step: handle.travel.step_rpm,
        }
    }
}
