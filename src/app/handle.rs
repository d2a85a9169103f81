//! What all handles have in common, whatever they move: how they are held, nudged by key, asked by
//! those who cannot see them, and how a gesture of theirs ends.

use super::action::Action;
use super::input::pressed;
use super::menus::is_asked_for_by_key;
use crate::chart::Along;
use egui::accesskit::{Action as Request, ActionData};
use egui::{Event, Id, InteractOptions, Key, Pos2, Rect, Response, Sense, Ui, WidgetInfo};

/// The side of a handle's square for the mouse, and for a finger, in points.
const REACH_MOUSE: f32 = 24.0;
const REACH_TOUCH: f32 = 44.0;

/// How many steps an arrow key moves, alone and with Shift; a page key moves the large way.
const NUDGE: f64 = 1.0;
const LARGE_NUDGE: f64 = 10.0;

/// The square in which a handle is taken hold of with the mouse.
pub fn handle_rect(at: Pos2) -> Rect {
    Rect::from_center_size(at, egui::Vec2::splat(REACH_MOUSE))
}

/// The square in which a handle is taken hold of just now: a finger needs a larger one.
pub(super) fn reach(ui: &Ui, at: Pos2) -> Rect {
    let has_touch = ui.input(egui::InputState::any_touches);
    let side = if has_touch { REACH_TOUCH } else { REACH_MOUSE };
    Rect::from_center_size(at, egui::Vec2::splat(side))
}

/// Whether a widget is being dragged, or was until this frame: then its end is still to be told.
pub(super) fn is_held(ui: &Ui, id: Id) -> bool {
    ui.ctx().is_being_dragged(id) || ui.ctx().drag_stopped_id() == Some(id)
}

/// Whether a drag may have moved: a slow frame brings its last move together with its end.
pub(super) fn is_moved(response: &Response) -> bool {
    response.dragged() || response.drag_stopped()
}

/// Where the hand took hold: a slow frame brings the press together with moves after it.
pub(super) fn pressed_at(response: &Response) -> Option<Pos2> {
    let pressed = response.ctx.input(|i| i.pointer.press_origin());
    pressed.or_else(|| response.interact_pointer_pos())
}

/// Whether the menu of a handle was asked for, by key or by a right click, which its dragging swallows.
pub(super) fn own_menu_is_asked_for(response: &Response) -> bool {
    let is_clicked = response.ctx.input(|i| i.pointer.secondary_clicked());
    is_asked_for_by_key(response) || (is_clicked && response.hovered())
}

/// Letting go commits; Esc, which ends a drag too, takes back.
pub(super) fn end_of_drag(response: &Response, actions: &mut Vec<Action>) {
    if response.drag_stopped() {
        let gave_up = response.ctx.input(|i| i.key_pressed(Key::Escape));
        actions.push(if gave_up {
            Action::Cancel
        } else {
            Action::Commit
        });
    }
}

/// A gesture of keys ends with the focus, by Enter or by Esc; a drag that begins elsewhere has
/// committed already, and must not be cut in two.
pub(super) fn end_of_keys(response: &Response, is_dragging: bool, actions: &mut Vec<Action>) {
    let is_pressed = |key: Key| response.ctx.input(|i| i.key_pressed(key));
    if response.has_focus() {
        if is_pressed(Key::Escape) && !response.dragged() {
            actions.push(Action::Cancel);
        }
        if is_pressed(Key::Enter) {
            actions.push(Action::Commit);
        }
    }
    if response.lost_focus() && !is_dragging {
        actions.push(Action::Commit);
    }
}

/// By which right words are shown, the strongest last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Claim {
    Focused,
    Hovered,
    Nudged,
    Dragged,
}

impl Claim {
    /// The claim of what can be dragged.
    pub(super) fn of(response: &Response) -> Option<Self> {
        if response.dragged() {
            Some(Self::Dragged)
        } else if is_nudged(response) {
            Some(Self::Nudged)
        } else if response.hovered() {
            Some(Self::Hovered)
        } else {
            response.has_focus().then_some(Self::Focused)
        }
    }
}

/// Which handle was moved by key last, and where the pointer was then.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Nudged {
    id: Id,
    pointer: Option<Pos2>,
}

impl Nudged {
    fn now(response: &Response) -> Self {
        let pointer = response.ctx.input(|i| i.pointer.latest_pos());
        let id = response.id;
        Self { id, pointer }
    }
}

fn nudged_id() -> Id {
    Id::unique("handle that was nudged")
}

/// Notes that keys have moved a handle.
pub(super) fn note_nudged(response: &Response) {
    let now = Nudged::now(response);
    response.ctx.data_mut(|d| d.insert_temp(nudged_id(), now));
}

/// Whether keys have moved a handle last, and the pointer has not moved since.
fn is_nudged(response: &Response) -> bool {
    let last = response.ctx.data(|d| d.get_temp(nudged_id()));
    response.has_focus() && last == Some(Nudged::now(response))
}

/// Where squares of handles overlap, the nearest to the pointer is taken hold of; each is told by its
/// widget, its place and its square.
pub(super) fn nearest_on_top(ui: &Ui, shown: &[(Id, Pos2, Rect)]) {
    let Some(pointer) = ui.input(|i| i.pointer.latest_pos()) else {
        return;
    };
    // One that was dragged out of view cannot be taken hold of.
    let in_view = || shown.iter().filter(|(_, _, reach)| reach.is_positive());
    let distance = |at: Pos2| at.distance(pointer);
    let nearest = in_view().min_by(|a, b| distance(a.1).total_cmp(&distance(b.1)));
    let again = |(id, _, reach): &(Id, Pos2, Rect), move_to_top: bool| {
        let options = InteractOptions { move_to_top };
        ui.interact_opt(*reach, *id, Sense::drag(), options);
    };
    if let (Some(nearest), Some(last)) = (nearest, in_view().next_back()) {
        again(nearest, true);
        // What comes next is reached from the last one, and goes back to it.
        again(last, last.0 == nearest.0);
    }
}

/// How many steps the arrow keys of a frame ask for along one way, each with what was held down along
/// with it.
pub(super) fn arrow_nudge(events: &[Event], along: Along) -> f64 {
    nudge(events, |key, size| match (key, along) {
        (Key::ArrowRight, Along::X) | (Key::ArrowUp, Along::Y) => size,
        (Key::ArrowLeft, Along::X) | (Key::ArrowDown, Along::Y) => -size,
        _ => 0.0,
    })
}

/// How many steps the page keys of a frame ask for.
pub(super) fn page_nudge(events: &[Event]) -> f64 {
    nudge(events, |key, _| match key {
        Key::PageUp => LARGE_NUDGE,
        Key::PageDown => -LARGE_NUDGE,
        _ => 0.0,
    })
}

/// The steps of all keys without those that commands have.
fn nudge(events: &[Event], steps: impl Fn(Key, f64) -> f64) -> f64 {
    let steps = events.iter().map(|event| match pressed(event) {
        Some((key, modifiers)) if !modifiers.alt && !modifiers.command => {
            let size = if modifiers.shift { LARGE_NUDGE } else { NUDGE };
            steps(key, size)
        }
        _ => 0.0,
    });
    steps.sum()
}

/// A value that a handle shows to those who cannot see it.
pub(super) struct Slider {
    /// What the handle is called.
    pub name: String,
    /// The value.
    pub value: f64,
    /// The same in words.
    pub words: String,
    /// The least and the greatest value.
    pub range: [f64; 2],
    /// The step by which it is moved.
    pub step: f64,
}

impl Slider {
    /// Tells it, and what can be asked of it.
    pub(super) fn speak(&self, response: &Response) {
        response.widget_info(|| WidgetInfo::slider(true, self.value, &self.name));
        let [least, most] = self.range;
        response.ctx.accesskit_node_builder(response.id, |node| {
            node.set_min_numeric_value(least);
            node.set_max_numeric_value(most);
            node.set_numeric_value_step(self.step);
            node.set_value(self.words.as_str());
            for request in [Request::Increment, Request::Decrement, Request::SetValue] {
                node.add_action(request);
            }
        });
    }

    /// The value that is asked for by those who cannot see the handle; behind a dialog nothing is moved.
    pub(super) fn wanted(&self, response: &Response) -> Option<f64> {
        let wanted = response.ctx.input(|i| {
            let up = i.num_accesskit_action_requests(response.id, Request::Increment);
            let down = i.num_accesskit_action_requests(response.id, Request::Decrement);
            let set = i.accesskit_action_requests(response.id, Request::SetValue);
            let set = set.last().and_then(|request| match request.data {
                Some(ActionData::NumericValue(value)) => Some(value),
                _ => None,
            });
            let change = (up as f64 - down as f64) * self.step;
            set.or_else(|| (change != 0.0).then_some(self.value + change))
        });
        wanted.filter(|_| response.enabled())
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
        assert!((arrow_nudge(&events, Along::Y) - 10.0).abs() < 1e-9);
        assert!((page_nudge(&events) + 20.0).abs() < 1e-9);
    }

    #[test]
    fn keys_across_and_keys_of_commands_move_nothing() {
        let events = [
            key(Key::ArrowLeft, Modifiers::NONE),
            key(Key::ArrowRight, Modifiers::SHIFT),
            key(Key::ArrowUp, Modifiers::ALT),
            key(Key::ArrowUp, Modifiers::COMMAND),
        ];
        assert!(arrow_nudge(&events, Along::Y).abs() < 1e-9);
        assert!((arrow_nudge(&events, Along::X) - 9.0).abs() < 1e-9);
    }
}
