//! How are shift points taken hold of: by pointer, by key, by those who cannot see them?
//!
//! A handle moves up and down only, in steps of 10 rpm, never past the redline. Dragging it changes
//! one shift, dragging the line between moves them all. One gesture is one undo step; Esc puts back.

use super::super::action::Action;
use super::super::desk::Desk;
use super::super::view_state::ViewState;
use super::pointing::distance_to_segment;
use crate::chart::{SetTrace, ShiftTrace};
use crate::draw::diagram::Drawn;
use crate::draw::palette::Palette;
use crate::gearing::{EngineSpeed, GearId};
use crate::project::{Edit, SetEdit, SetId};
use crate::units::typed_rpm_text;
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

/// A shift point snaps to this, in rev/min.
const SNAP_RPM: f64 = 10.0;

/// What a key press moves, in rev/min, alone and with Shift.
const NUDGE_RPM: f64 = 10.0;
const LARGE_NUDGE_RPM: f64 = 100.0;

/// What a running drag began with.
#[derive(Debug, Clone, Default)]
struct Grab {
    /// The value under the hand, in rev/min.
    value_rpm: f64,
    /// The same minus the value under the pointer.
    offset_rpm: f64,
    /// The gears' own shift points as they were.
    before: Vec<(GearId, f64)>,
    common_rpm: f64,
    /// The lowest and the highest shift point that has a handle.
    shown_rpm: [f64; 2],
}

/// The identity of a handle's widget.
fn handle_id(set: SetId, gear: GearId) -> Id {
    Id::unique(("shift point", set, gear))
}

fn line_id() -> Id {
    Id::unique("shift line")
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

/// The nearest engine speed that a hand can choose, in rev/min.
fn to_grid(engine_rpm: f64) -> f64 {
    (engine_rpm / SNAP_RPM).round() * SNAP_RPM
}

/// What the arrow keys of this frame ask for, in rev/min.
fn nudge_rpm(input: &egui::InputState) -> f64 {
    let size = if input.modifiers.shift {
        LARGE_NUDGE_RPM
    } else {
        NUDGE_RPM
    };
    let up = input.num_presses(Key::ArrowUp) as f64;
    let down = input.num_presses(Key::ArrowDown) as f64;
    (up - down) * size
}

/// Shows the handles of the selected set.
pub(super) fn handles_ui(
    ui: &mut Ui,
    desk: &Desk,
    view: &ViewState,
    palette: &Palette,
    drawn: &Drawn,
    actions: &mut Vec<Action>,
) {
    let Some(trace) = desk.diagram().trace(view.selected) else {
        return;
    };
    let mut handles = Handles {
        ui,
        desk,
        trace,
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
    desk: &'a Desk,
    trace: &'a SetTrace,
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
        let pointer = self.ui.input(|i| i.pointer.latest_pos());
        let Some(pointer) =
            pointer.filter(|p| is_held || (frame.contains(*p) && self.is_on_line(*p)))
        else {
            return false;
        };
        let rect = Rect::from_center_size(pointer, Vec2::splat(2.0 * REACH_LINE)).intersect(frame);
        let response = self
            .ui
            .interact(rect, id, Sense::DRAG)
            .on_hover_and_drag_cursor(CursorIcon::ResizeVertical);
        if response.drag_started() {
            self.grab(&response, self.common_rpm());
        }
        if is_moved(&response) {
            let grab = self.grabbed();
            let pointer_rpm = self.pointer_rpm(&response).unwrap_or(grab.value_rpm);
            let change = to_grid(pointer_rpm + grab.offset_rpm - grab.value_rpm);
            let preview = self.all_moved(&grab, change).map(Action::Preview);
            self.actions.push(preview.unwrap_or(Action::Cancel));
        }
        self.end_of_drag(&response);
        if response.dragged() || response.hovered() {
            self.write(&self.line_words(), pointer, 14.0);
        }
        response.dragged()
    }

    fn is_on_line(&self, pointer: Pos2) -> bool {
        let at = |s: &ShiftTrace| self.drawn.point(s.speed, s.shift_rpm);
        let points: Vec<Pos2> = self.trace.shifts.iter().map(at).collect();
        points
            .windows(2)
            .any(|pair| distance_to_segment(pointer, [pair[0], pair[1]]) <= REACH_LINE)
    }

    /// All handles, the one nearest to the pointer on top; whether one is being dragged.
    fn points(&mut self) -> bool {
        let trace = self.trace;
        let mut shifts: Vec<&ShiftTrace> = trace.shifts.iter().collect();
        if let Some(pointer) = self.ui.input(|i| i.pointer.latest_pos()) {
            let distance =
                |s: &ShiftTrace| self.drawn.point(s.speed, s.shift_rpm).distance(pointer);
            shifts.sort_by(|a, b| distance(b).total_cmp(&distance(a)));
        }
        let mut is_dragged = false;
        for shift in shifts {
            is_dragged |= self.point(shift);
        }
        is_dragged
    }

    fn point(&mut self, shift: &ShiftTrace) -> bool {
        let at = self.drawn.point(shift.speed, shift.shift_rpm);
        let frame = *self.drawn.transform.frame();
        let is_held = is_held(self.ui, handle_id(self.trace.set, shift.gear));
        if !frame.expand(2.0).contains(at) && !is_held {
            return false;
        }
        let has_touch = self.ui.input(egui::InputState::any_touches);
        let reach = if has_touch { REACH_TOUCH } else { REACH_MOUSE };
        let rect = Rect::from_center_size(at, Vec2::splat(reach)).intersect(frame.expand(4.0));
        let response = self
            .ui
            .interact(rect, handle_id(self.trace.set, shift.gear), Sense::drag())
            .on_hover_and_drag_cursor(CursorIcon::ResizeVertical);
        self.drag(&response, shift);
        self.keys(&response, shift);
        self.requests(&response, shift);
        self.speak(&response, shift);
        self.paint(&response, shift, at);
        response.dragged()
    }

    fn drag(&mut self, response: &Response, shift: &ShiftTrace) {
        if response.drag_started() {
            response.request_focus();
            self.grab(response, shift.shift_rpm);
        }
        if is_moved(response)
            && let Some(pointer_rpm) = self.pointer_rpm(response)
        {
            let grab = self.grabbed();
            let wanted = pointer_rpm + grab.offset_rpm;
            if to_grid(wanted - grab.value_rpm) == 0.0 {
                // Back where it was, on or off the grid.
                self.actions.push(Action::Cancel);
            } else {
                self.preview(shift, to_grid(wanted));
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
    fn grab(&mut self, response: &Response, value_rpm: f64) {
        // Another field or handle may still be about to tell that it was left.
        self.actions.push(Action::Commit);
        // A slow frame brings the press together with moves after it.
        let pressed = self.ui.input(|i| i.pointer.press_origin());
        let pressed = pressed.or_else(|| response.interact_pointer_pos());
        let pointer_rpm = pressed.map_or(value_rpm, |at| self.rpm_at(at));
        let set = self.desk.project().sets.get(self.trace.set);
        let own = set.map(|c| {
            let own = c
                .set
                .gears
                .iter()
                .filter_map(|g| Some((g.id, g.shift?.rpm())));
            own.collect()
        });
        let grab = Grab {
            value_rpm,
            offset_rpm: value_rpm - pointer_rpm,
            before: own.unwrap_or_default(),
            common_rpm: self.common_rpm(),
            shown_rpm: self.shown_rpm(),
        };
        self.ui
            .data_mut(|d| d.insert_temp(line_id().with("grab"), grab));
    }

    fn grabbed(&self) -> Grab {
        let grab = self.ui.data(|d| d.get_temp(line_id().with("grab")));
        grab.unwrap_or_default()
    }

    fn common_rpm(&self) -> f64 {
        let set = self.desk.project().sets.get(self.trace.set);
        set.map_or(0.0, |c| c.set.shift.rpm())
    }

    fn pointer_rpm(&self, response: &Response) -> Option<f64> {
        Some(self.rpm_at(response.interact_pointer_pos()?))
    }

    fn rpm_at(&self, place: Pos2) -> f64 {
        self.drawn.transform.value_from_position(place).y
    }

    /// Arrow keys nudge, Enter commits, Esc puts back.
    fn keys(&mut self, response: &Response, shift: &ShiftTrace) {
        let is_dragging = are_dragged(self.ui) || response.dragged();
        if response.gained_focus() && !is_dragging {
            self.actions.push(Action::Commit);
        }
        if response.has_focus() {
            let filter = EventFilter {
                vertical_arrows: true,
                escape: true,
                ..EventFilter::default()
            };
            self.ui
                .memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
            let change = self.ui.input(nudge_rpm);
            if change != 0.0 {
                self.preview(shift, shift.shift_rpm + change);
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
    fn requests(&mut self, response: &Response, shift: &ShiftTrace) {
        let wanted = self.ui.input(|i| {
            let up = i.num_accesskit_action_requests(response.id, Request::Increment);
            let down = i.num_accesskit_action_requests(response.id, Request::Decrement);
            let set = i.accesskit_action_requests(response.id, Request::SetValue);
            let set = set.last().and_then(|request| match request.data {
                Some(ActionData::NumericValue(value)) => Some(value),
                _ => None,
            });
            let change = (up as f64 - down as f64) * NUDGE_RPM;
            set.or_else(|| (change != 0.0).then_some(shift.shift_rpm + change))
        });
        if let Some(wanted_rpm) = wanted {
            if !response.has_focus() {
                self.actions.push(Action::Commit);
            }
            self.preview(shift, wanted_rpm);
            if !response.has_focus() {
                self.actions.push(Action::Commit);
            }
        }
    }

    fn preview(&mut self, shift: &ShiftTrace, wanted_rpm: f64) {
        let [least, most] = self.range_rpm();
        if let Ok(speed) = EngineSpeed::from_rpm(wanted_rpm.clamp(least, most)) {
            let edit = SetEdit::Shift(shift.gear, speed);
            self.actions
                .push(Action::Preview(Edit::Set(self.trace.set, edit)));
        }
    }

    /// All shift points moved by the same amount, as far as the highest and the lowest handle may
    /// go; none where that is nowhere.
    fn all_moved(&self, grab: &Grab, change_rpm: f64) -> Option<Edit> {
        let [lowest, highest] = grab.shown_rpm;
        let [least, most] = self.range_rpm();
        let change = change_rpm.clamp((least - lowest).min(0.0), (most - highest).max(0.0));
        if change == 0.0 {
            return None;
        }
        // What no handle shows goes along, but stops nothing.
        let speed = |rpm: f64| {
            let [least, most] = [least.min(rpm), most.max(rpm)];
            EngineSpeed::from_rpm((rpm + change).clamp(least, most)).ok()
        };
        let own: Option<Vec<(GearId, EngineSpeed)>> = grab
            .before
            .iter()
            .map(|(gear, rpm)| Some((*gear, speed(*rpm)?)))
            .collect();
        let edit = SetEdit::Shifts(speed(grab.common_rpm)?, own?);
        Some(Edit::Set(self.trace.set, edit))
    }

    /// The lowest and the highest shift point that has a handle.
    fn shown_rpm(&self) -> [f64; 2] {
        let all = || self.trace.shifts.iter().map(|s| s.shift_rpm);
        [
            all().fold(f64::INFINITY, f64::min),
            all().fold(f64::NEG_INFINITY, f64::max),
        ]
    }

    /// Between which engine speeds a shift point may be moved: idle and the redline.
    fn range_rpm(&self) -> [f64; 2] {
        let engine = &self.desk.project().engine;
        let redline = engine.redline.rpm();
        let idle = engine.idle.map_or(SNAP_RPM, EngineSpeed::rpm);
        [idle.min(redline), redline]
    }

    fn speak(&self, response: &Response, shift: &ShiftTrace) {
        let name = format!(
            "Shift point {} to {}, {}",
            shift.labels[0], shift.labels[1], self.trace.name
        );
        response.widget_info(|| WidgetInfo::slider(true, shift.shift_rpm, &name));
        let [least, most] = self.range_rpm();
        self.ui.ctx().accesskit_node_builder(response.id, |node| {
            node.set_min_numeric_value(least);
            node.set_max_numeric_value(most);
            node.set_numeric_value_step(NUDGE_RPM);
            node.set_value(shift.words());
            for request in [Request::Increment, Request::Decrement, Request::SetValue] {
                node.add_action(request);
            }
        });
    }

    fn paint(&mut self, response: &Response, shift: &ShiftTrace, at: Pos2) {
        let painter = self
            .ui
            .painter()
            .with_clip_rect(self.drawn.transform.frame().expand(6.0));
        let color = self.palette.set(self.trace.place);
        let is_held = response.dragged() || response.has_focus();
        let radius = if is_held || response.hovered() {
            7.0
        } else {
            5.0
        };
        painter.circle(at, radius, color, Stroke::new(2.0, self.palette.paper));
        if response.has_focus() {
            painter.circle_stroke(at, radius + 3.0, Stroke::new(2.0, self.palette.text));
        }
        if is_held || response.hovered() {
            self.write(&shift.words(), at, 14.0);
        }
    }

    /// Where all shift points are: one figure where they agree, else how far apart they lie.
    fn line_words(&self) -> String {
        let [lowest, highest] = self.shown_rpm().map(typed_rpm_text);
        if lowest == highest {
            format!("all shift points at {lowest} rpm")
        } else {
            format!("all shift points, {lowest} to {highest} rpm")
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
        let outline = Stroke::new(1.5, self.palette.set(self.trace.place));
        painter.rect_stroke(rect, 4.0, outline, egui::StrokeKind::Inside);
        painter.galley(rect.min + Vec2::new(6.0, 3.0), galley, self.palette.text);
    }
}
