//! A torque curve beneath its fields: the small diagram in which its points are moved, and the table of
//! its points.

mod diagram;
mod handles;
mod menus;
mod point_rows;

pub(in crate::app) use handles::is_in_hand;
pub(super) use point_rows::{changed_point, is_point};

use super::about::{About, Whose};
use super::cells::TechnicalCell;
use crate::app::form::{Form, remark};
use crate::motion::TorqueCurve;
use crate::project::Edit;
use egui::Ui;

/// What is said of a curve whose points cannot be moved: moved, they would pass for measured ones.
const BUILT: &str = "Built of the brochure's figures: nothing in it can be dragged. A curve typed or \
                     pasted above takes its place, and has points that can.";

/// What is said of a curve with more points than can be told apart by hand.
const CROWDED: &str = "Too many points to take hold of one: the table has them all.";

/// Shows the curve of an engine that has one.
pub(super) fn curve_ui(
    ui: &mut Ui,
    about: About<'_>,
    sought: Option<TechnicalCell>,
    form: &mut Form<'_>,
) {
    let Some(curve) = &about.engine().curve else {
        return;
    };
    let shown = ShownCurve { about, curve };
    shown.diagram_ui(ui, form);
    if curve.brochure().is_some() {
        remark(ui, BUILT, form.palette.dim_text);
        return;
    }
    if shown.is_crowded() {
        remark(ui, CROWDED, form.palette.dim_text);
    }
    shown.point_rows_ui(ui, sought, form);
}

/// Lets what was half-typed in the fields of a curve stand over what was moved in the diagram: it was not
/// undone. Before the fields are shown.
pub(super) fn follow_moves(ui: &Ui, about: About<'_>, form: &mut Form<'_>) {
    if handles::take_moved(ui, about.whose) {
        let whose = about.whose;
        form.drafts.follow(|cell| {
            let mut of_curve = [TechnicalCell::TorqueCurve, TechnicalCell::Brochure].into_iter();
            of_curve.any(|of| whose.field(of) == cell) || is_point(whose, cell)
        });
    }
}

/// What has the focus once a point has come or gone: something of the point at that place.
type Next = fn(Whose, usize, &mut Form<'_>);

/// The curve that is shown, and whose it is.
#[derive(Clone, Copy)]
struct ShownCurve<'a> {
    about: About<'a>,
    curve: &'a TorqueCurve,
}

/// More points than these stand too close to take hold of one.
const MOST_HANDLES: usize = 40;

impl ShownCurve<'_> {
    fn is_crowded(self) -> bool {
        self.curve.points().len() > MOST_HANDLES
    }

    /// The edit that puts another curve in its place.
    fn replaced_by(self, curve: TorqueCurve) -> Edit {
        self.about.engine_with(|engine| engine.curve = Some(curve))
    }
}
