//! The points of a torque curve as a table, one a row: engine speed, torque, and the power of both.

use super::ShownCurve;
use crate::app::drafts::{CellId, SetCell};
use crate::app::focus::{FocusMap, Walk};
use crate::app::form::{Field, Form, remark};
use crate::app::heard::{add_usable, name_menu};
use crate::app::section::part_ui;
use crate::app::technical::about::{About, Whose};
use crate::app::technical::cells::TechnicalCell;
use crate::app::typed;
use crate::motion::{TorqueCurve, TorquePoint, power_w};
use crate::units::{plain_number, round_to};
use egui::{Align, Button, Layout, Ui, Vec2};

/// The width of a field, in points.
const WIDTH: f32 = 64.0;

/// How far beyond what is in view rows are still shown, in points: the focus walks from row to row.
const BEYOND: f32 = 240.0;

/// Whether a field is one of a point of that engine's curve.
pub(in crate::app::technical) fn is_point(whose: Whose, cell: CellId) -> bool {
    place_of(whose, cell).is_some()
}

/// The place of the point that a field is about.
fn place_of(whose: Whose, cell: CellId) -> Option<usize> {
    let (of, cell) = match cell {
        CellId::Technical(cell) => (Whose::Vehicles, cell),
        CellId::Set(set, SetCell::Engine(cell)) => (Whose::Sets(set), cell),
        _ => return None,
    };
    match cell {
        TechnicalCell::PointSpeed(place) | TechnicalCell::PointTorque(place) if of == whose => {
            Some(place)
        }
        _ => None,
    }
}

/// The field of the one point in which two curves differ; none where they differ in more.
pub(in crate::app::technical) fn changed_point(both: [About<'_>; 2]) -> Option<CellId> {
    let [one, other] = both.map(|about| about.engine().curve.as_ref().map(TorqueCurve::points));
    let (one, other) = one.zip(other)?;
    let mut changed = one
        .iter()
        .zip(other)
        .enumerate()
        .filter(|(_, (a, b))| a != b);
    let (place, (a, b)) = changed.next()?;
    if one.len() != other.len() || changed.next().is_some() {
        return None;
    }
    Some(both[0].whose.field(if a.speed == b.speed {
        TechnicalCell::PointTorque(place)
    } else {
        TechnicalCell::PointSpeed(place)
    }))
}

/// From the next frame on the engine speed of a point is typed.
fn type_point(whose: Whose, place: usize, form: &mut Form<'_>) {
    let speed = whose.field(TechnicalCell::PointSpeed(place));
    form.focus.want(speed.widget());
}

impl ShownCurve<'_> {
    /// Shows the table, folded until one of its fields is sought.
    pub(super) fn point_rows_ui(
        self,
        ui: &mut Ui,
        sought: Option<TechnicalCell>,
        form: &mut Form<'_>,
    ) {
        let whose = self.about.whose;
        let is_sought = |cell: TechnicalCell| is_point(whose, whose.field(cell));
        let name = format!("{} points", self.curve.points().len());
        let needs = form.needs(sought.is_some_and(is_sought), |cell| is_point(whose, cell));
        let heard = self.about.named(&name);
        let part = ("points of the curve", [name.as_str(), &heard]);
        part_ui(ui, part, needs, |ui| self.rows_ui(ui, sought, form));
    }

    fn rows_ui(self, ui: &mut Ui, sought: Option<TechnicalCell>, form: &mut Form<'_>) {
        ui.horizontal(|ui| {
            for heading in ["rpm", "N·m"] {
                ui.allocate_ui(Vec2::new(WIDTH, 14.0), |ui| {
                    ui.set_width(WIDTH);
                    remark(ui, heading, form.palette.dim_text);
                });
            }
        });
        let mark = FocusMap::mark(ui);
        for (place, point) in self.curve.points().iter().enumerate() {
            if self.is_far(ui, place, sought, form) {
                let size = Vec2::new(1.0, ui.spacing().interact_size.y);
                ui.allocate_space(size);
            } else {
                self.row_ui(ui, place, point, form);
            }
        }
        form.focus.block(Walk::Columns, mark, ui);
        let last = self.curve.points().len() - 1;
        let behind = self.middle_behind(last);
        let button = add_usable(ui, behind.is_some(), Button::new("Add point").small());
        let button = button.accessible_name(self.about.named("Add point"));
        if button.clicked()
            && let Some(at) = behind
        {
            self.add_point(ui, at, type_point, form);
        }
    }

    /// Whether a row can be left out: nothing of it is in view, in hand, sought or half-typed.
    fn is_far(self, ui: &Ui, place: usize, sought: Option<TechnicalCell>, form: &Form<'_>) -> bool {
        let top = ui.cursor().top();
        let bottom = top + ui.spacing().interact_size.y;
        let view = ui.clip_rect().y_range().expand(BEYOND);
        let cells = [
            TechnicalCell::PointSpeed(place),
            TechnicalCell::PointTorque(place),
        ];
        let is_needed = |cell: TechnicalCell| {
            let field = self.about.whose.field(cell);
            let is_in_hand = ui.memory(|m| m.has_focus(field.widget()));
            sought == Some(cell) || is_in_hand || form.drafts.get(field).is_some()
        };
        !view.intersects(egui::Rangef::new(top, bottom)) && !cells.into_iter().any(is_needed)
    }

    fn row_ui(self, ui: &mut Ui, place: usize, point: &TorquePoint, form: &mut Form<'_>) {
        let (rpm, nm) = (point.speed.rpm(), point.torque.nm());
        let problems = ui
            .horizontal(|ui| {
                let speed = self.cell_ui(ui, (place, Figure::Speed), rpm, form);
                let torque = self.cell_ui(ui, (place, Figure::Torque), nm, form);
                let kw = plain_number(round_to(power_w(nm, rpm) / 1000.0, 0.1));
                remark(ui, &format!("{kw} kW"), form.palette.dim_text);
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    // Not under the bar that scrolls.
                    ui.add_space(10.0);
                    self.menu_ui(ui, place, form);
                });
                [speed, torque]
            })
            .inner;
        for problem in problems.iter().flatten() {
            form.problem(ui, Some(problem));
        }
    }

    fn cell_ui(
        self,
        ui: &mut Ui,
        (place, figure): (usize, Figure),
        value: f64,
        form: &mut Form<'_>,
    ) -> Option<String> {
        let (cell, what) = match figure {
            Figure::Speed => (TechnicalCell::PointSpeed(place), "Engine speed"),
            Figure::Torque => (TechnicalCell::PointTorque(place), "Torque"),
        };
        let field = Field {
            id: self.about.whose.field(cell),
            name: &self.about.named(&format!("{what} of point {}", place + 1)),
            text: &plain_number(value),
            hint: "",
        };
        form.cell(ui, &field, WIDTH, &|text| {
            let changed = match figure {
                Figure::Speed => typed::curve_with_speeds(self.curve, place, text),
                Figure::Torque => typed::curve_with_torques(self.curve, place, text),
            };
            changed.map(|curve| self.replaced_by(curve))
        })
    }

    fn menu_ui(self, ui: &mut Ui, place: usize, form: &mut Form<'_>) {
        let name = self.about.named(&format!("Point {} menu", place + 1));
        let button = ui.menu_button("…", |ui| {
            name_menu(ui, &name);
            self.point_changes_ui(ui, place, type_point, form);
        });
        button.response.accessible_name(name);
    }
}

/// Which figure of a point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Figure {
    Speed,
    Torque,
}
