//! How are shift points moved by key, and by those who cannot see them?

use super::{Handles, are_dragged};
use crate::app::action::Action;
use crate::chart::{Along, Handle};
use egui::accesskit::{Action as Request, ActionData};
use egui::{EventFilter, Key, Response, WidgetInfo};

/// How many steps a key press moves, alone and with Shift.
const NUDGE: f64 = 1.0;
const LARGE_NUDGE: f64 = 10.0;

/// How many steps the arrow keys of this frame ask for.
fn nudge(input: &egui::InputState, along: Along) -> f64 {
    let size = if input.modifiers.shift {
        LARGE_NUDGE
    } else {
        NUDGE
    };
    let [more, less] = match along {
        Along::X => [Key::ArrowRight, Key::ArrowLeft],
        Along::Y => [Key::ArrowUp, Key::ArrowDown],
    };
    (input.num_presses(more) as f64 - input.num_presses(less) as f64) * size
}

impl Handles<'_> {
    /// Arrow keys nudge, Enter commits, Esc puts back.
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
            let steps = self.ui.input(|i| nudge(i, handle.along));
            if steps != 0.0 {
                let change_rpm = steps * handle.travel.step_rpm;
                self.preview(handle, handle.shift_rpm() + change_rpm);
            }
            if self.ui.input(|i| i.key_pressed(Key::Escape)) && !response.dragged() {
                self.actions.push(Action::Cancel);
            }
            if self.ui.input(|i| i.key_pressed(Key::Enter)) {
                self.actions.push(Action::Commit);
            }
        }
        // A drag that begins elsewhere has committed already, and must not be cut in two.
        if response.lost_focus() && !is_dragging {
            self.actions.push(Action::Commit);
        }
    }

    /// What those ask for who cannot see the handle; without the focus each request is a step.
    pub(super) fn requests(&mut self, response: &Response, handle: &Handle) {
        let wanted = self.ui.input(|i| {
            let up = i.num_accesskit_action_requests(response.id, Request::Increment);
            let down = i.num_accesskit_action_requests(response.id, Request::Decrement);
            let set = i.accesskit_action_requests(response.id, Request::SetValue);
            let set = set.last().and_then(|request| match request.data {
                Some(ActionData::NumericValue(value)) => Some(value),
                _ => None,
            });
            let change_rpm = (up as f64 - down as f64) * handle.travel.step_rpm;
            set.or_else(|| (change_rpm != 0.0).then_some(handle.shift_rpm() + change_rpm))
        });
        if let Some(wanted_rpm) = wanted {
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
        let name = handle.name(&self.set.name);
        response.widget_info(|| WidgetInfo::slider(true, handle.shift_rpm(), &name));
        let [least, most] = handle.travel.rpm;
        self.ui.ctx().accesskit_node_builder(response.id, |node| {
            node.set_min_numeric_value(least);
            node.set_max_numeric_value(most);
            node.set_numeric_value_step(handle.travel.step_rpm);
            node.set_value(handle.words());
            for request in [Request::Increment, Request::Decrement, Request::SetValue] {
                node.add_action(request);
            }
        });
    }
}
