//! The small diagram of a torque curve: drawn, read out, and with a point more by a double click.

use super::handles::{Handles, focus_point, held_scales, tell_moved};
use super::{Next, ShownCurve};
use crate::app::action::Action;
use crate::app::form::{Form, width_to_end};
use crate::chart::{CurvePoint, TorqueDiagram};
use crate::draw::torque_diagram::{TorquePlaces, paint};
use egui::{Align2, FontId, Id, Response, Role, Sense, TextStyle, Ui, Vec2, WidgetInfo};

/// The height of the diagram, in points.
const HEIGHT: f32 = 170.0;

impl ShownCurve<'_> {
    /// Shows the diagram with the points that can be moved.
    pub(super) fn diagram_ui(self, ui: &mut Ui, form: &mut Form<'_>) {
        let about = self.about;
        let mut diagram = TorqueDiagram::of(self.curve, &about.project.engine);
        if let Some(held) = held_scales(ui, about.whose) {
            // A scale that followed the hand would run away from it.
            diagram.scales = held;
        }
        if self.is_crowded() {
            diagram.points.clear();
        }
        let text_size = TextStyle::Small.resolve(ui.style()).size;
        let (_, room) = ui.allocate_space(Vec2::new(width_to_end(ui), HEIGHT));
        let places = TorquePlaces::in_room(room, diagram.scales, text_size);
        paint(ui.painter(), &diagram, &places, form.palette, text_size);
        self.plot_ui(ui, &diagram, &places, form);
        if let Some(words) = Handles::new(self, &diagram, &places).show(ui, form) {
            let at = egui::pos2(places.frame.center().x, room.top());
            let font = FontId::new(text_size, crate::draw::bold());
            let color = form.palette.text;
            ui.painter()
                .text(at, Align2::CENTER_TOP, words, font, color);
        }
    }

    /// What lies beneath the points: a double click or its menu adds one.
    fn plot_ui(self, ui: &Ui, diagram: &TorqueDiagram, places: &TorquePlaces, form: &mut Form<'_>) {
        let id = Id::unique(("torque diagram", self.about.whose));
        let response = ui.interact(places.frame, id, Sense::CLICK);
        let name = self.about.named("Torque and power over engine speed");
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &name));
        crate::app::heard::describe(&response, &diagram.summary);
        if diagram.points.is_empty() {
            return;
        }
        let at = |response: &Response| Some(places.torque_at(response.interact_pointer_pos()?));
        if response.double_clicked()
            && let Some(at) = at(&response)
        {
            self.add_point(ui, at, focus_point, form);
        }
        self.plot_menu_ui(&response, at(&response), form);
    }

    /// Adds a point, which is to have the focus next.
    pub(super) fn add_point(self, ui: &Ui, at: [f64; 2], next: Next, form: &mut Form<'_>) {
        if let Some((place, curve)) = CurvePoint::added_to(self.curve, at) {
            tell_moved(ui, self.about.whose);
            form.edit(self.replaced_by(curve));
            next(self.about.whose, place, form);
        }
    }

    /// Removes a point; the one in its place is to have the focus next.
    pub(super) fn remove_point(self, ui: &Ui, place: usize, next: Next, form: &mut Form<'_>) {
        let removed = self.curve.with_points(|points| {
            if place < points.len() {
                points.remove(place);
            }
        });
        match removed {
            Ok(curve) => {
                tell_moved(ui, self.about.whose);
                let last = curve.points().len() - 1;
                form.edit(self.replaced_by(curve));
                next(self.about.whose, place.min(last), form);
            }
            Err(problem) => form.actions.push(Action::Say(problem.to_string())),
        }
    }
}
