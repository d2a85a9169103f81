//! How are shift points taken hold of: by pointer, by key, by those who cannot see them?
//!
//! Which handles there are, how far they move and what moving them means, the scene says. Dragging
//! one changes one shift, dragging the line between moves them all. One gesture is one undo step;
//! Esc puts back.

use super::super::action::Action;
use super::pointing::distance_to_line;
use crate::chart::{Along, Handle, HandleLine, Scene, ShownSet};
use crate::draw::diagram::Drawn;
use crate::draw::palette::Palette;
use crate::gearing::GearId;
use crate::project::SetId;
use egui::accesskit::{Action as Request, ActionData};
use egui::{
    Align2, CursorIcon, EventFilter, FontId, Id, Key, Pos2, Rect, Response, Sense, Stroke, Ui,
    Vec2, WidgetInfo,
};

/// The side of a handle's square for the mouse, and for a finger, in points.
const REACH_MOUSE: f32 = 24.0;
const REACH_TOUCH: f32 = 44.0;

/// How near, in points, the line between handles is taken hold of.
const REACH_LINE: f32 = 6.0;

/// How many steps a key press moves, alone and with Shift.
const NUDGE: f64 = 1.0;
const LARGE_NUDGE: f64 = 10.0;

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

/// The identity of a handle's widget.
fn handle_id(set: SetId, gear: GearId) -> Id {
    Id::unique(("shift point", set, gear))
}

fn line_id() -> Id {
    Id::unique("shift line")
}

/// The widgets of the handles of a set, in the order of its gears.
pub(super) fn ids(scene: &Scene, set: SetId) -> impl Iterator<Item = Id> {
    let of_set = scene.handles.iter().filter(move |handle| handle.set == set);
    of_set.map(|handle| handle_id(handle.set, handle.gear))
}

/// The square in which a handle is taken hold of with the mouse.
pub fn handle_rect(at: Pos2) -> Rect {
    Rect::from_center_size(at, Vec2::splat(REACH_MOUSE))
}

/// Whether a handle or the line is being dragged.
pub(super) fn are_dragged(ui: &Ui) -> bool {
    ui.data(|d| d.get_temp::<bool>(line_id().with("busy")))
        .unwrap_or(false)
}

/// Whether a widget is being dragged, or was until this frame: then its end is still to be told.
fn is_held(ui: &Ui, id: Id) -> bool {
    ui.ctx().is_being_dragged(id) || ui.ctx().drag_stopped_id() == Some(id)
}

/// Whether a drag may have moved: a slow frame brings its last move together with its end.
fn is_moved(response: &Response) -> bool {
    response.dragged() || response.drag_stopped()
}

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

fn cursor(along: Along) -> CursorIcon {
    match along {
        Along::X => CursorIcon::ResizeHorizontal,
        Along::Y => CursorIcon::ResizeVertical,
    }
}

/// Shows the handles of the selected set.
pub(super) fn handles_ui(
    ui: &mut Ui,
    scene: &Scene,
    selected: SetId,
    palette: &Palette,
    drawn: &Drawn,
    actions: &mut Vec<Action>,
) {
    let Some(set) = scene.sets.iter().find(|set| set.id == selected) else {
        return;
    };
    let mut handles = Handles {
        ui,
        scene,
        set,
        palette,
        drawn,
        actions,
    };
    let line = handles.line();
    let points = handles.points();
    let is_busy = line || points;
    ui.data_mut(|d| d.insert_temp(line_id().with("busy"), is_busy));
}

struct Handles<'a> {
    ui: &'a mut Ui,
    scene: &'a Scene,
    set: &'a ShownSet,
    palette: &'a Palette,
    drawn: &'a Drawn,
    actions: &'a mut Vec<Action>,
}

impl Handles<'_> {
    /// The line between the handles; whether it is being dragged.
    fn line(&mut self) -> bool {
        let id = line_id();
        let frame = *self.drawn.transform.frame();
        let is_held = is_held(self.ui, id);
        let mut lines = self.scene.handle_lines.iter();
        let Some(line) = lines.find(|line| line.set == self.set.id) else {
            return false;
        };
        let pointer = self.ui.input(|i| i.pointer.latest_pos());
        let is_on_line = |p: Pos2| {
            let distance = distance_to_line(p, &line.points, self.drawn);
            distance.is_some_and(|distance| distance <= REACH_LINE)
        };
        let Some(pointer) = pointer.filter(|p| is_held || (frame.contains(*p) && is_on_line(*p)))
        else {
            return false;
        };
        let rect = Rect::from_center_size(pointer, Vec2::splat(2.0 * REACH_LINE)).intersect(frame);
        let response = self
            .ui
            .interact(rect, id, Sense::DRAG)
            .on_hover_and_drag_cursor(cursor(line.along));
        if response.drag_started() {
            self.grab(&response, line.along, line.common.rpm(), Some(line.clone()));
        }
        if is_moved(&response) {
            let grab = self.grabbed();
            let pointer_rpm = self.pointer_rpm(&response, line.along);
            let moved_rpm =
                pointer_rpm.unwrap_or(grab.value_rpm) + grab.offset_rpm - grab.value_rpm;
            let change_rpm = line.travel.to_step(moved_rpm);
            let edit = grab.line.and_then(|before| before.moved_by(change_rpm));
            self.actions
                .push(edit.map_or(Action::Cancel, Action::Preview));
        }
        self.end_of_drag(&response);
        if response.dragged() || response.hovered() {
            self.write(&line.words(), pointer, 14.0);
        }
        response.dragged()
    }

    /// All handles, the one nearest to the pointer on top; whether one is being dragged.
    fn points(&mut self) -> bool {
        let of_set = self.scene.handles.iter();
        let mut handles: Vec<&Handle> = of_set.filter(|h| h.set == self.set.id).collect();
        if let Some(pointer) = self.ui.input(|i| i.pointer.latest_pos()) {
            let distance = |h: &Handle| self.drawn.place_of(h.at).distance(pointer);
            handles.sort_by(|a, b| distance(b).total_cmp(&distance(a)));
        }
        let mut is_dragged = false;
        for handle in handles {
            is_dragged |= self.point(handle);
        }
        is_dragged
    }

    fn point(&mut self, handle: &Handle) -> bool {
        let at = self.drawn.place_of(handle.at);
        let id = handle_id(handle.set, handle.gear);
        let frame = *self.drawn.transform.frame();
        let is_held = is_held(self.ui, id);
        if !frame.expand(2.0).contains(at) && !is_held {
            return false;
        }
        let has_touch = self.ui.input(egui::InputState::any_touches);
        let reach = if has_touch { REACH_TOUCH } else { REACH_MOUSE };
        let rect = Rect::from_center_size(at, Vec2::splat(reach)).intersect(frame.expand(4.0));
        let response = self
            .ui
            .interact(rect, id, Sense::drag())
            .on_hover_and_drag_cursor(cursor(handle.along));
        self.drag(&response, handle);
        self.keys(&response, handle);
        self.requests(&response, handle);
        self.speak(&response, handle);
        self.paint(&response, handle, at);
        response.dragged()
    }

    fn drag(&mut self, response: &Response, handle: &Handle) {
        if response.drag_started() {
            response.request_focus();
            self.grab(response, handle.along, handle.shift_rpm(), None);
        }
        if is_moved(response)
            && let Some(pointer_rpm) = self.pointer_rpm(response, handle.along)
        {
            let grab = self.grabbed();
            let wanted_rpm = pointer_rpm + grab.offset_rpm;
            if handle.travel.to_step(wanted_rpm - grab.value_rpm) == 0.0 {
                // Back where it was, on or off the grid.
                self.actions.push(Action::Cancel);
            } else {
                self.preview(handle, handle.travel.to_step(wanted_rpm));
            }
        }
        self.end_of_drag(response);
    }

    /// Letting go commits; Esc, which ends a drag too, takes back.
    fn end_of_drag(&mut self, response: &Response) {
        if response.drag_stopped() {
            let gave_up = self.ui.input(|i| i.key_pressed(Key::Escape));
            self.actions.push(if gave_up {
                Action::Cancel
            } else {
                Action::Commit
            });
        }
    }

    /// Remembers where the hand took hold, so that a mere press moves nothing.
    fn grab(
        &mut self,
        response: &Response,
        along: Along,
        value_rpm: f64,
        line: Option<HandleLine>,
    ) {
        // Another field or handle may still be about to tell that it was left.
        self.actions.push(Action::Commit);
        // A slow frame brings the press together with moves after it.
        let pressed = self.ui.input(|i| i.pointer.press_origin());
        let pressed = pressed.or_else(|| response.interact_pointer_pos());
        let pointer_rpm = pressed.map_or(value_rpm, |at| self.value_at(at, along));
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

    fn pointer_rpm(&self, response: &Response, along: Along) -> Option<f64> {
        Some(self.value_at(response.interact_pointer_pos()?, along))
    }

    fn value_at(&self, place: Pos2, along: Along) -> f64 {
        let value = self.drawn.transform.value_from_position(place);
        along.of([value.x, value.y])
    }

    /// Arrow keys nudge, Enter commits, Esc puts back.
    fn keys(&mut self, response: &Response, handle: &Handle) {
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
    fn requests(&mut self, response: &Response, handle: &Handle) {
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

    fn preview(&mut self, handle: &Handle, wanted_rpm: f64) {
        let edit = handle.moved_to(wanted_rpm);
        self.actions.extend(edit.map(Action::Preview));
    }

    fn speak(&self, response: &Response, handle: &Handle) {
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

    fn paint(&mut self, response: &Response, handle: &Handle, at: Pos2) {
        let painter = self
            .ui
            .painter()
            .with_clip_rect(self.drawn.transform.frame().expand(6.0));
        let color = self.palette.set(self.set.place);
        let is_held = response.dragged() || response.has_focus();
        let radius = if is_held || response.hovered() {
            7.0
        } else {
            5.0
        };
        painter.circle(at, radius, color, Stroke::new(2.0, self.palette.paper));
        if is_held || response.hovered() {
            self.write(&handle.words(), at, 14.0);
        }
    }

    /// Words above and beside a handle, kept within the plot.
    fn write(&self, words: &str, at: Pos2, away: f32) {
        let frame = self.drawn.transform.frame().shrink(4.0);
        let font = FontId::new(12.5, crate::draw::bold());
        let painter = self.ui.painter();
        let galley = painter.layout_no_wrap(words.to_owned(), font, self.palette.text);
        let size = galley.size() + Vec2::new(12.0, 6.0);
        let above = at - Vec2::new(0.0, away);
        let mut rect = Align2::CENTER_BOTTOM.anchor_size(above, size);
        if rect.top() < frame.top() {
            rect = Align2::LEFT_CENTER.anchor_size(at + Vec2::new(away, 0.0), size);
        }
        rect = rect.translate(Vec2::new(
            (frame.left() - rect.left()).max(0.0) + (frame.right() - rect.right()).min(0.0),
            (frame.top() - rect.top()).max(0.0),
        ));
        painter.rect_filled(rect, 4.0, self.palette.paper);
        let outline = Stroke::new(1.5, self.palette.set(self.set.place));
        painter.rect_stroke(rect, 4.0, outline, egui::StrokeKind::Inside);
        painter.galley(rect.min + Vec2::new(6.0, 3.0), galley, self.palette.text);
    }
}
