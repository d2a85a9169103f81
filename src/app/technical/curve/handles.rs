//! The points of a torque curve as handles: dragged up, down and sideways between their neighbours, moved
//! by arrow keys, and heard as sliders. One gesture is one undo step; Esc puts back.

use super::ShownCurve;
use crate::app::action::Action;
use crate::app::focus::Keeps;
use crate::app::form::Form;
use crate::app::handle::{
    Claim, Slider, arrow_nudge, end_of_drag, end_of_keys, is_held, is_moved, nearest_on_top,
    note_nudged, page_nudge, pressed_at, reach,
};
use crate::app::input::taken;
use crate::app::technical::about::Whose;
use crate::chart::{Along, CurvePoint, TorqueDiagram, TorqueScales};
use crate::draw::torque_diagram::TorquePlaces;
use crate::units::round_to;
use egui::{Context, CursorIcon, EventFilter, Id, Key, Pos2, Rect, Response, Sense, Stroke, Ui};

/// The identity of a point's widget.
fn point_id(whose: Whose, place: usize) -> Id {
    Id::unique(("torque point", whose, place))
}

/// What a running drag began with.
#[derive(Debug, Clone, Copy)]
struct Grab {
    id: Id,
    /// Engine speed in rev/min and torque in N·m of the point.
    at: [f64; 2],
    /// The same minus that under the pointer.
    offset: [f64; 2],
    scales: TorqueScales,
}

fn grab_id(whose: Whose) -> Id {
    Id::unique(("torque point in hand", whose))
}

fn moved_id(whose: Whose) -> Id {
    Id::unique(("torque curve moved", whose))
}

fn in_hand_id() -> Id {
    Id::unique("torque point with the focus")
}

/// The drag that goes on, or ends in this frame.
fn grabbed(ui: &Ui, whose: Whose) -> Option<Grab> {
    let grab = ui.data(|d| d.get_temp::<Grab>(grab_id(whose)))?;
    is_held(ui, grab.id).then_some(grab)
}

/// The scales with which a drag began, while it goes on.
pub(super) fn held_scales(ui: &Ui, whose: Whose) -> Option<TorqueScales> {
    grabbed(ui, whose).map(|grab| grab.scales)
}

/// From the next frame on a point has the focus.
pub(super) fn focus_point(whose: Whose, place: usize, form: &mut Form<'_>) {
    form.focus.want(point_id(whose, place));
}

/// Notes that a curve was changed in its diagram.
pub(super) fn tell_moved(ui: &Ui, whose: Whose) {
    ui.data_mut(|d| d.insert_temp(moved_id(whose), true));
}

/// Whether a curve was changed in its diagram since this was asked last.
pub(super) fn take_moved(ui: &Ui, whose: Whose) -> bool {
    ui.data_mut(|d| d.remove_temp::<bool>(moved_id(whose)).is_some())
}

/// Whether a point of a torque curve has the focus: the next one to be moved.
pub(in crate::app) fn is_in_hand(ctx: &Context) -> bool {
    let focused = ctx.memory(egui::Memory::focused);
    focused.is_some() && ctx.data(|d| d.get_temp::<Id>(in_hand_id())) == focused
}

/// The points of a curve in its diagram.
pub(super) struct Handles<'a> {
    shown: ShownCurve<'a>,
    diagram: &'a TorqueDiagram,
    places: &'a TorquePlaces,
    /// What is read out of the point that is in hand, has the focus or is pointed at.
    words: Option<(Claim, String)>,
}

impl<'a> Handles<'a> {
    pub(super) fn new(
        shown: ShownCurve<'a>,
        diagram: &'a TorqueDiagram,
        places: &'a TorquePlaces,
    ) -> Self {
        Self {
            shown,
            diagram,
            places,
            words: None,
        }
    }

    /// Shows all points, in the order of their engine speeds; what is read out of the one that is in hand,
    /// has the focus or is pointed at.
    pub(super) fn show(mut self, ui: &Ui, form: &mut Form<'_>) -> Option<String> {
        let is_dragging = grabbed(ui, self.whose()).is_some();
        let mut squares: Vec<(Id, Pos2, Rect)> = Vec::new();
        for point in &self.diagram.points {
            let at = self.places.of_torque(point.at);
            let id = point_id(self.whose(), point.place);
            let square = reach(ui, at).intersect(self.places.frame.expand(8.0));
            let response = ui
                .interact(square, id, Sense::drag())
                .on_hover_and_drag_cursor(CursorIcon::Move);
            squares.push((id, at, square));
            form.focus.announce_alone(id, Keeps::Arrows);
            self.drag(ui, &response, point, form);
            self.keys(ui, &response, (point, is_dragging), form);
            self.speak(ui, &response, point, form);
            self.shown.point_menu_ui(&response, point, form);
            self.read_out(&response, point);
            paint(ui, &response, at, form);
        }
        nearest_on_top(ui, &squares);
        self.words.map(|(_, words)| words)
    }

    fn whose(&self) -> Whose {
        self.shown.about.whose
    }

    fn drag(&self, ui: &Ui, response: &Response, point: &CurvePoint, form: &mut Form<'_>) {
        let value_at = |at: Pos2| self.places.torque_at(at);
        if response.drag_started() {
            response.request_focus();
            // Another field or handle may still be about to tell that it was left.
            form.actions.push(Action::Commit);
            let under = pressed_at(response).map_or(point.at, value_at);
            let grab = Grab {
                id: response.id,
                at: point.at,
                offset: [point.at[0] - under[0], point.at[1] - under[1]],
                scales: self.diagram.scales,
            };
            ui.data_mut(|d| d.insert_temp(grab_id(self.whose()), grab));
        }
        if is_moved(response)
            && let Some(pointer) = response.interact_pointer_pos()
            && let Some(grab) = grabbed(ui, self.whose())
        {
            let pointer = value_at(pointer);
            let ends = [self.diagram.scales.rpm[0], self.diagram.scales.nm[0]];
            let moved = [0, 1].map(|of: usize| {
                let wanted = (pointer[of] + grab.offset[of]).clamp(0.0, ends[of]);
                stepped(wanted, grab.at[of], CurvePoint::STEPS[of])
            });
            if moved == [None, None] {
                // Back where it was, on or off the grid.
                form.actions.push(Action::Cancel);
                tell_moved(ui, self.whose());
            } else {
                let wanted = [0, 1].map(|of: usize| moved[of].unwrap_or(grab.at[of]));
                self.preview(ui, point, wanted, form);
            }
        }
        end_of_drag(response, form.actions);
        if response.drag_stopped() {
            // The next drag has scales of its own.
            ui.data_mut(|d| d.remove::<Grab>(grab_id(self.whose())));
            tell_moved(ui, self.whose());
        }
    }

    /// Arrow keys and page keys nudge, Delete removes, Enter commits, Esc puts back.
    fn keys(
        &self,
        ui: &Ui,
        response: &Response,
        (point, is_dragging): (&CurvePoint, bool),
        form: &mut Form<'_>,
    ) {
        let is_dragging = is_dragging || response.dragged();
        if response.gained_focus() && !is_dragging {
            form.actions.push(Action::Commit);
        }
        if response.has_focus() {
            ui.data_mut(|d| d.insert_temp(in_hand_id(), response.id));
            let filter = EventFilter {
                horizontal_arrows: true,
                vertical_arrows: true,
                escape: true,
                ..EventFilter::default()
            };
            ui.memory_mut(|m| m.set_focus_lock_filter(response.id, filter));
            let steps = ui.input(|i| {
                let upright = arrow_nudge(&i.events, Along::Y) + page_nudge(&i.events);
                [arrow_nudge(&i.events, Along::X), upright]
            });
            if steps != [0.0, 0.0] {
                let wanted =
                    [0, 1].map(|of: usize| point.at[of] + steps[of] * CurvePoint::STEPS[of]);
                self.preview(ui, point, wanted, form);
                note_nudged(response);
            }
            if ui.input(|i| i.key_pressed(Key::Escape)) {
                tell_moved(ui, self.whose());
            }
            if taken(ui.ctx(), Key::Delete) > 0 {
                self.shown.remove_point(ui, point.place, focus_point, form);
            }
        }
        end_of_keys(response, is_dragging, form.actions);
    }

    /// Tells it to those who cannot see it, and does what they ask for; without the focus each request
    /// is a step.
    fn speak(&self, ui: &Ui, response: &Response, point: &CurvePoint, form: &mut Form<'_>) {
        let slider = Slider {
            name: self.shown.about.named(&point.name()),
            value: point.at[1],
            words: point.words(),
            range: CurvePoint::TORQUES_NM,
            step: CurvePoint::STEPS[1],
        };
        slider.speak(response);
        let Some(wanted_nm) = slider.wanted(response) else {
            return;
        };
        let is_alone = !response.has_focus();
        if is_alone {
            form.actions.push(Action::Commit);
        }
        self.preview(ui, point, [point.at[0], wanted_nm], form);
        if is_alone {
            form.actions.push(Action::Commit);
        }
    }

    fn preview(&self, ui: &Ui, point: &CurvePoint, wanted: [f64; 2], form: &mut Form<'_>) {
        if let Some(moved) = point.moved_to(self.shown.curve, wanted) {
            tell_moved(ui, self.whose());
            form.actions
                .push(Action::Preview(self.shown.replaced_by(moved)));
        }
    }

    /// Takes its figures up unless another has a stronger claim.
    fn read_out(&mut self, response: &Response, point: &CurvePoint) {
        let Some(claim) = Claim::of(response) else {
            return;
        };
        if self.words.as_ref().is_none_or(|(other, _)| *other < claim) {
            self.words = Some((claim, point.all_words()));
        }
    }
}

/// A value that was moved, in steps; none where it is what it began with, on the grid or off it.
fn stepped(wanted: f64, began: f64, step: f64) -> Option<f64> {
    let is_moved = ((wanted - began) / step).round() != 0.0;
    is_moved.then(|| round_to(wanted, step))
}

fn paint(ui: &Ui, response: &Response, at: Pos2, form: &Form<'_>) {
    let is_held = response.dragged() || response.has_focus() || response.hovered();
    let radius = if is_held { 6.0 } else { 4.0 };
    let outline = Stroke::new(1.5, form.palette.paper);
    ui.painter().circle(at, radius, form.palette.text, outline);
}
