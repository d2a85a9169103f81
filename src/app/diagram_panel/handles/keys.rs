//! How are shift points moved by key, and by those who cannot see them?

use super::{Handles, are_dragged, line_id};
use crate::app::action::Action;
use crate::app::input::pressed;
use crate::chart::{Along, Handle};
use egui::accesskit::{Action as Request, ActionData};
use egui::{Event, EventFilter, Id, Key, Pos2, Response, WidgetInfo};

/// How many steps an arrow key moves, alone and with Shift; a page key moves the large way.
const NUDGE: f64 = 1.0;
const LARGE_NUDGE: f64 = 10.0;

/// How many steps the keys of a frame ask for, each with what was held down along with it.
fn nudge(events: &[Event], along: Along) -> f64 {
    let steps = events.iter().map(|event| match pressed(event) {
        Some((key, modifiers)) if !modifiers.alt && !modifiers.command => {
            let size = if modifiers.shift { LARGE_NUDGE } else { NUDGE };
            match (key, along) {
                (Key::ArrowRight, Along::X) | (Key::ArrowUp, Along::Y) => size,
                (Key::ArrowLeft, Along::X) | (Key::ArrowDown, Along::Y) => -size,
                (Key::PageUp, _) => LARGE_NUDGE,
                (Key::PageDown, _) => -LARGE_NUDGE,
                _ => 0.0,
            }
        }
        _ => 0.0,
    });
    steps.sum()
}

/// Which handle was moved by key last, and where the pointer was then.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Nudged {
    id: Id,
    pointer: Option<Pos2>,
}

fn nudged_id() -> Id {
    line_id().with("nudged")
}

impl Handles<'_> {
    fn nudged_now(&self, id: Id) -> Nudged {
        let pointer = self.ui.input(|i| i.pointer.latest_pos());
        Nudged { id, pointer }
    }

    /// Whether keys have moved a handle last, and the pointer has not moved since.
    pub(super) fn is_nudged(&self, response: &Response) -> bool {
        let last = self.ui.data(|d| d.get_temp(nudged_id()));
        response.has_focus() && last == Some(self.nudged_now(response.id))
    }

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
            let steps = self.ui.input(|i| nudge(&i.events, handle.along));
            if steps != 0.0 {
                let change_rpm = steps * handle.travel.step_rpm;
                self.preview(handle, handle.shift_rpm() + change_rpm);
                let nudged = self.nudged_now(response.id);
                self.ui.data_mut(|d| d.insert_temp(nudged_id(), nudged));
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
        // Behind a dialog nothing is moved.
        if let Some(wanted_rpm) = wanted.filter(|_| response.enabled()) {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::input::press as key;
    use egui::Modifiers;

    #[test]
    fn every_key_counts_with_its_own_modifiers() {
        let events = [
            key(Key::ArrowUp, Modifiers::SHIFT),
            key(Key::ArrowUp, Modifiers::NONE),
            Event::ModifiersChanged(Modifiers::NONE),
            key(Key::ArrowDown, Modifiers::NONE),
            key(Key::PageDown, Modifiers::NONE),
            key(Key::PageDown, Modifiers::NONE),
        ];
        assert!((nudge(&events, Along::Y) + 10.0).abs() < 1e-9);
    }

    #[test]
    fn keys_across_and_keys_of_commands_move_nothing() {
        let events = [
            key(Key::ArrowLeft, Modifiers::NONE),
            key(Key::ArrowRight, Modifiers::SHIFT),
            key(Key::ArrowUp, Modifiers::ALT),
            key(Key::ArrowUp, Modifiers::COMMAND),
        ];
        assert!(nudge(&events, Along::Y).abs() < 1e-9);
        assert!((nudge(&events, Along::X) - 9.0).abs() < 1e-9);
    }
}
