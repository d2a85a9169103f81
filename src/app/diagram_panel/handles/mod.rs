//! How are shift points taken hold of: by pointer, by key, by those who cannot see them?
//!
//! Which handles there are, how far they move and what moving them means, the scene says. Dragging
//! one changes one shift, dragging the line between moves them all. One gesture is one undo step;
//! Esc puts back.

mod dragging;
mod keys;
mod words;

use crate::app::action::Action;
use crate::chart::{Along, Handle, Scene, ShownSet};
use crate::draw::diagram::Drawn;
use crate::draw::palette::Palette;
use crate::gearing::GearId;
use crate::project::SetId;
use egui::{CursorIcon, Id, Pos2, Rect, Response, Sense, Stroke, Ui, Vec2};

/// The side of a handle's square for the mouse, and for a finger, in points.
const REACH_MOUSE: f32 = 24.0;
const REACH_TOUCH: f32 = 44.0;

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
        if response.has_focus() {
            painter.circle_stroke(at, radius + 3.0, Stroke::new(2.0, self.palette.text));
        }
        if is_held || response.hovered() {
            self.write(&handle.words(), at, 14.0);
        }
    }
}
