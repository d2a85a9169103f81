//! The field of a gear's ratio, in the form in which the gears are typed.

use super::{Card, SetField};
use crate::app::drafts::SetCell;
use crate::app::form::Form;
use crate::app::typed::{self, RatioForm};
use crate::gearing::{GearId, GearResult, Ratio};
use crate::project::SetEdit;
use crate::units::{plain_number, round_to};
use egui::Ui;

/// What stands in the ratio field of a gear, forward or reverse, in the chosen form.
pub(super) struct Shown {
    /// Which gear, on which final drive.
    shaft: (GearId, usize),
    cell: SetCell,
    text: String,
}

impl Shown {
    pub(super) fn of(
        card: &Card<'_>,
        shaft: (GearId, usize),
        ratio: &Ratio,
        result: Option<&GearResult>,
    ) -> Self {
        let id = shaft.0;
        let unit = card.desk.project().units;
        let figure = |of: &dyn Fn(&GearResult) -> f64, grain: f64| {
            result.map_or_else(String::new, |result| {
                plain_number(round_to(of(result), grain))
            })
        };
        let text = match card.ratio_form {
            RatioForm::Gear => ratio.to_string(),
            RatioForm::Overall => figure(&|result| result.gear.overall_ratio, 0.001),
            RatioForm::SpeedPer1000 => {
                figure(&|result| unit.from_kmh(result.speed_per_1000_rpm_kmh), 0.01)
            }
        };
        let cell = ratio_cell(card.ratio_form, id);
        Self { shaft, cell, text }
    }

    pub(super) fn field_ui(
        &self,
        ui: &mut Ui,
        card: &Card<'_>,
        whose: &str,
        width: f32,
        form: &mut Form<'_>,
        read_ratio: &dyn Fn(&str) -> typed::Reading<Ratio>,
    ) -> Option<String> {
        let set = &card.candidate.set;
        let unit = card.desk.project().units;
        let field = SetField {
            cell: self.cell,
            name: &card.named(&format!("Ratio of {whose}")),
            text: &self.text,
            hint: "3.78 or 34:9",
            width,
        };
        form.focus.prefer(card.cell_id(self.cell));
        card.field_ui(ui, &field, form, &|text| {
            let ratio = match card.ratio_form {
                RatioForm::Gear => read_ratio(text),
                RatioForm::Overall => typed::ratio_from_overall(set, self.shaft, text),
                RatioForm::SpeedPer1000 => {
                    typed::ratio_from_speed(set, self.shaft, card.results, unit, text)
                }
            };
            ratio.map(|ratio| SetEdit::Ratio(self.shaft.0, ratio))
        })
    }
}

/// The field in which a gear's ratio stands in the form in which it is typed.
pub(super) fn ratio_cell(form: RatioForm, gear: GearId) -> SetCell {
    match form {
        RatioForm::Gear => SetCell::Ratio(gear),
        RatioForm::Overall => SetCell::Overall(gear),
        RatioForm::SpeedPer1000 => SetCell::SpeedPer1000(gear),
    }
}
