//! How are a shift point and the line between them dragged?

use super::{Handles, cursor, line_id};
use crate::app::action::Action;
use crate::app::diagram_panel::pointing::distance_to_line;
use crate::app::handle::{Claim, end_of_drag, is_held, is_moved, pressed_at};
use crate::chart::{Handle, HandleLine};
use egui::{Pos2, Rect, Response, Sense, Vec2};

/// How near, in points, the line between handles is taken hold of with the mouse, and with a finger.
const REACH_LINE_MOUSE: f32 = 6.0;
const REACH_LINE_TOUCH: f32 = 16.0;

/// What a running drag began with.
#[derive(Debug, Clone, Default)]
struct Grab {
    /// The value under the hand, in rev/min.
    value_rpm: f64,
    /// The same minus the value under the pointer.
    offset_rpm: f64,
    /// The line in hand as it was, where it is the line.
    line: Option<HandleLine>,
}

impl Handles<'_> {
    /// The line between the handles; whether it is being dragged.
    pub(super) fn line(&mut self) -> bool {
        let id = line_id();
        let frame = *self.drawn.transform.frame();
        let is_held = is_held(self.ui, id);
        let mut lines = self.scene.handle_lines.iter();
        let Some(line) = lines.find(|line| line.set == self.set.id) else {
            return false;
        };
        let has_touch = self.ui.input(egui::InputState::any_touches);
        let reach = if has_touch {
            REACH_LINE_TOUCH
        } else {
            REACH_LINE_MOUSE
        };
        let pointer = self.ui.input(|i| i.pointer.latest_pos());
        let is_on_line = |p: Pos2| {
            let distance = distance_to_line(p, &line.points, self.drawn);
            distance.is_some_and(|distance| distance <= reach)
        };
        let Some(pointer) = pointer.filter(|p| is_held || (frame.contains(*p) && is_on_line(*p)))
        else {
            return false;
        };
        let rect = Rect::from_center_size(pointer, Vec2::splat(2.0 * reach)).intersect(frame);
        let response = self
            .ui
            .interact(rect, id, Sense::DRAG)
            .on_hover_and_drag_cursor(cursor(line.along));
        if response.drag_started() {
            let rpm_at = |at| line.along.of(at);
            self.grab(&response, rpm_at, line.common.rpm(), Some(line.clone()));
        }
        if is_moved(&response) {
            let grab = self.grabbed();
            let pointer = self.pointer(&response);
            let pointer_rpm = pointer.map_or(grab.value_rpm, |at| line.along.of(at));
            let moved_rpm = pointer_rpm + grab.offset_rpm - grab.value_rpm;
            let change_rpm = line.travel.to_step(moved_rpm);
            let edit = grab.line.and_then(|before| before.moved_by(change_rpm));
            self.actions
                .push(edit.map_or(Action::Cancel, Action::Preview));
        }
        end_of_drag(&response, self.actions);
        self.want(Claim::of(&response), || line.words(), pointer);
        response.dragged()
    }

    pub(super) fn drag(&mut self, response: &Response, handle: &Handle) {
        if response.drag_started() {
            response.request_focus();
            self.grab(response, |at| handle.rpm_at(at), handle.shift_rpm(), None);
        }
        if is_moved(response)
            && let Some(pointer) = self.pointer(response)
        {
            let grab = self.grabbed();
            let wanted_rpm = handle.rpm_at(pointer) + grab.offset_rpm;
            if handle.travel.to_step(wanted_rpm - grab.value_rpm) == 0.0 {
                // Back where it was, on or off the grid.
                self.actions.push(Action::Cancel);
            } else {
                self.preview(handle, handle.travel.to_step(wanted_rpm));
            }
        }
        end_of_drag(response, self.actions);
    }

    /// Remembers where the hand took hold, so that a mere press moves nothing.
    fn grab(
        &mut self,
        response: &Response,
        rpm_at: impl Fn([f64; 2]) -> f64,
        value_rpm: f64,
        line: Option<HandleLine>,
    ) {
        // Another field or handle may still be about to tell that it was left.
        self.actions.push(Action::Commit);
        let pressed = pressed_at(response);
        let pointer_rpm = pressed.map_or(value_rpm, |at| rpm_at(self.value_at(at)));
        let grab = Grab {
            value_rpm,
            offset_rpm: value_rpm - pointer_rpm,
            line,
        };
        self.ui
            .data_mut(|d| d.insert_temp(line_id().with("grab"), grab));
    }

    fn grabbed(&self) -> Grab {
        let grab = self.ui.data(|d| d.get_temp(line_id().with("grab")));
        grab.unwrap_or_default()
    }

    /// Where the hand is, in the units of the axes.
    fn pointer(&self, response: &Response) -> Option<[f64; 2]> {
        Some(self.value_at(response.interact_pointer_pos()?))
    }

    fn value_at(&self, place: Pos2) -> [f64; 2] {
        let value = self.drawn.transform.value_from_position(place);
        [value.x, value.y]
    }
}
