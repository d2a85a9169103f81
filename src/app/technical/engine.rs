//! The section "Engine": its torque, its size, what it burns.

use super::about::{About, Whose};
use super::cells::TechnicalCell;
use super::curve::{curve_ui, follow_moves};
use super::engine_rows::{FURTHER, OF_CONSUMPTION, OF_CURVE, OF_SIZE};
use super::row::{Row, folded_ui};
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Form, remark};
use crate::app::section::{AtFirst, section_ui};
use crate::app::typed;
use crate::motion::TorqueCurve;
use crate::project::EngineData;
use crate::units::{plain_number, rpm_text};
use egui::Ui;
use egui::cache::{ComputerMut, FrameCache};

/// All rows, in reading order.
pub(super) fn rows() -> impl Iterator<Item = &'static Row> {
    const ROWS: [&[Row]; 4] = [&OF_CURVE, &OF_SIZE, &FURTHER, &OF_CONSUMPTION];
    ROWS.into_iter().flatten()
}

/// Shows the section; it is unfolded where one of its fields is sought.
pub(super) fn engine_ui(
    ui: &mut Ui,
    about: About<'_>,
    sought: Option<TechnicalCell>,
    form: &mut Form<'_>,
) {
    let name = match about.whose {
        Whose::Vehicles => "Engine",
        Whose::Sets(_) => "Engine of this set",
    };
    let whose = about.whose;
    let needs = form.needs(sought.is_some_and(is_of_engine), |cell| match cell {
        CellId::Technical(cell) => whose == Whose::Vehicles && is_of_engine(cell),
        CellId::Set(set, SetCell::Engine(_)) => whose == Whose::Sets(set),
        _ => false,
    });
    section_ui(
        ui,
        (name, AtFirst::Closed),
        needs,
        || in_short(about.engine()),
        |ui| fields_ui(ui, about, sought, form),
    );
}

/// Whether a field is one of an engine.
fn is_of_engine(cell: TechnicalCell) -> bool {
    matches!(
        cell,
        TechnicalCell::PointSpeed(_) | TechnicalCell::PointTorque(_)
    ) || rows().any(|row| row.cell == cell)
}

/// What is known, in a few words.
fn in_short(engine: &EngineData) -> String {
    let peaks = engine.curve.as_ref().and_then(TorqueCurve::peaks);
    let displacement = engine.displacement;
    let mut parts = Vec::new();
    parts.extend(displacement.map(|litres| format!("{} L", plain_number(litres.l()))));
    if let Some([torque, power]) = peaks {
        parts.push(format!("{:.0} N·m", torque.torque_nm));
        parts.push(format!("{:.0} kW", power.power_w / 1000.0));
    }
    if *engine == EngineData::default() {
        "not known".to_owned()
    } else if parts.is_empty() {
        "in part".to_owned()
    } else {
        parts.join(", ")
    }
}

fn fields_ui(ui: &mut Ui, about: About<'_>, sought: Option<TechnicalCell>, form: &mut Form<'_>) {
    follow_moves(ui, about, form);
    for row in &OF_CURVE {
        row.show(ui, about, form);
    }
    curve_remarks_ui(ui, about, form);
    curve_ui(ui, about, sought, form);
    for row in &OF_SIZE {
        row.show(ui, about, form);
    }
    let further: &[&[Row]] = match about.whose {
        Whose::Vehicles => &[&FURTHER, &OF_CONSUMPTION],
        Whose::Sets(_) => &[&FURTHER],
    };
    folded_ui(ui, ("More of the engine", further), about, sought, form);
}

/// What was guessed of a text, kept from frame to frame: a copied log may have thousands of rows.
type TorqueRemarks = FrameCache<Vec<String>, ReadTorque>;

#[derive(Default)]
struct ReadTorque;

impl ComputerMut<&str, Vec<String>> for ReadTorque {
    fn compute(&mut self, text: &str) -> Vec<String> {
        typed::torque_remarks(text)
    }
}

/// What the curve comes to, and what was guessed of the text that is being typed.
fn curve_remarks_ui(ui: &mut Ui, about: About<'_>, form: &Form<'_>) {
    let typed = form
        .drafts
        .get(about.whose.field(TechnicalCell::TorqueCurve));
    if let Some(draft) = typed.filter(|draft| draft.problem.is_none()) {
        let text = draft.text.as_str();
        let said = ui.memory_mut(|m| m.caches.cache::<TorqueRemarks>().get(text).clone());
        for said in said {
            remark(ui, &said, form.palette.dim_text);
        }
    }
    if let Some(summary) = about.engine().curve.as_ref().and_then(summary) {
        remark(ui, &summary, form.palette.dim_text);
    }
}

/// The peaks of a curve in one line.
fn summary(curve: &TorqueCurve) -> Option<String> {
    let [torque, power] = curve.peaks()?;
    let (nm, at) = (torque.torque_nm, rpm_text(torque.engine_rpm));
    let (kw, power_at) = (power.power_w / 1000.0, rpm_text(power.engine_rpm));
    Some(format!("{nm:.0} N·m at {at}, {kw:.0} kW at {power_at} rpm"))
}
