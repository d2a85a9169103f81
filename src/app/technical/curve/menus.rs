//! What a right click or the menu key offers on the small diagram and on its points.

use super::handles::focus_point;
use super::{Next, ShownCurve};
use crate::app::form::Form;
use crate::app::handle::own_menu_is_asked_for;
use crate::app::heard::name_menu;
use crate::app::menus::context_menu_ui;
use crate::chart::CurvePoint;
use crate::motion::TorqueCurve;
use crate::units::{round_to, typed_rpm_text};
use egui::{Button, Response, Ui};

impl ShownCurve<'_> {
    /// The menu of the plot: a point more where the pointer asked for it.
    pub(super) fn plot_menu_ui(
        self,
        response: &Response,
        at: Option<[f64; 2]>,
        form: &mut Form<'_>,
    ) {
        let id = response.id.with("asked at");
        if response.secondary_clicked()
            && let Some(at) = at
        {
            response.ctx.data_mut(|d| d.insert_temp(id, at));
        }
        let asked_at = response.ctx.data(|d| d.get_temp::<[f64; 2]>(id));
        context_menu_ui(response, false, |ui| {
            name_menu(ui, "Menu of the torque diagram");
            let Some(at) = asked_at else { return };
            let rpm = typed_rpm_text(round_to(at[0], CurvePoint::STEPS[0]));
            let can = CurvePoint::added_to(self.curve, at).is_some();
            let button = Button::new(format!("Add a point at {rpm} rpm"));
            if ui.add_enabled(can, button).clicked() {
                self.add_point(ui, at, focus_point, form);
                ui.close();
            }
        });
    }

    /// The menu of a point.
    pub(super) fn point_menu_ui(
        self,
        response: &Response,
        point: &CurvePoint,
        form: &mut Form<'_>,
    ) {
        let is_asked_for = own_menu_is_asked_for(response);
        context_menu_ui(response, is_asked_for, |ui| {
            name_menu(ui, &format!("Menu of {}", point.name()));
            self.point_changes_ui(ui, point.place, focus_point, form);
        });
    }

    /// What can be done to a point as a whole.
    pub(super) fn point_changes_ui(
        self,
        ui: &mut Ui,
        place: usize,
        next: Next,
        form: &mut Form<'_>,
    ) {
        let middle = self.middle_behind(place);
        let add = ui.add_enabled(middle.is_some(), Button::new("Add a point behind it"));
        if add.clicked()
            && let Some(at) = middle
        {
            self.add_point(ui, at, next, form);
            ui.close();
        }
        let can_go = self.curve.points().len() > TorqueCurve::LEAST_POINTS;
        let remove = ui.add_enabled(can_go, Button::new("Remove the point"));
        if remove.clicked() {
            self.remove_point(ui, place, next, form);
            ui.close();
        }
    }

    /// Halfway to the next point, or as far behind the last as that is from the one before it; none where
    /// there is no room.
    pub(super) fn middle_behind(self, place: usize) -> Option<[f64; 2]> {
        let points = self.curve.points();
        let rpm = |place: usize| points.get(place).map(|point| point.speed.rpm());
        let own = rpm(place)?;
        let at = match rpm(place + 1) {
            Some(next) => f64::midpoint(own, next),
            None => 2.0 * own - rpm(place.checked_sub(1)?)?,
        };
        let torque = points.get(place)?.torque.nm();
        CurvePoint::added_to(self.curve, [at, torque]).map(|_| [at, torque])
    }
}
