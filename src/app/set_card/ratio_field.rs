//! The field of a gear's ratio, in the form in which the gears are typed.

use super::{Card, SetField};
use crate::app::action::Action;
use crate::app::dialogs::finders::{Finder, PairSpot, WishedAt};
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::Form;
use crate::app::typed::{self, RatioForm};
use crate::gearing::{GearId, GearResult, Ratio};
use crate::project::{Figure, SetEdit};
use crate::units::{plain_number, round_to};
use egui::Ui;
use std::cell::Cell;

/// What stands in the ratio field of a gear, forward or reverse, in the chosen form.
pub(super) struct Shown {
    gear: GearId,
    cell: SetCell,
    text: String,
    /// Whether a figure was typed for the gear that stays.
    pub(super) stays: bool,
}

impl Shown {
    pub(super) fn of(
        card: &Card<'_>,
        gear: GearId,
        ratio: &Ratio,
        result: Option<&GearResult>,
    ) -> Self {
        let project = card.desk.project();
        let unit = project.units;
        let typed = card.typed.figure_of(project, card.candidate.id, gear);
        let reckoned = |of: &dyn Fn(&GearResult) -> f64, grain: f64| {
            result.map_or_else(String::new, |result| {
                plain_number(round_to(of(result), grain))
            })
        };
        let text = match (card.ratio_form, typed) {
            (RatioForm::Gear, _) => ratio.to_string(),
            // What was typed is shown to its last digit.
            (RatioForm::Overall, Some(Figure::Overall(overall))) => plain_number(overall),
            (RatioForm::SpeedPer1000, Some(Figure::SpeedPer1000(speed, of))) if of == unit => {
                plain_number(speed)
            }
            (RatioForm::Overall, _) => reckoned(&|result| result.gear.overall_ratio, 0.001),
            (RatioForm::SpeedPer1000, _) => {
                reckoned(&|result| unit.from_kmh(result.speed_per_1000_rpm_kmh), 0.01)
            }
        };
        Self {
            gear,
            cell: ratio_cell(card.ratio_form, gear),
            text,
            stays: typed.is_some(),
        }
    }

    /// The field; why its text does not read. In the form of gear ratios `read_ratio` reads it, from
    /// what stood in it and what stands in it.
    pub(super) fn field_ui(
        &self,
        ui: &mut Ui,
        card: &Card<'_>,
        whose: &str,
        width: f32,
        form: &mut Form<'_>,
        read_ratio: &dyn Fn(&str, &str) -> typed::GearReading,
    ) -> Option<String> {
        let (project, set) = (card.desk.project(), &card.candidate.set);
        let field = SetField {
            cell: self.cell,
            name: &card.named(&format!("Ratio of {whose}")),
            text: &self.text,
            hint: match card.ratio_form {
                RatioForm::Gear => "3.78 or 34:9",
                RatioForm::Overall => "15.2",
                RatioForm::SpeedPer1000 => "27.5",
            },
            width,
        };
        form.focus.prefer(card.cell_id(self.cell));
        let draft = form.drafts.get(CellId::Set(card.candidate.id, self.cell));
        let before = draft.map_or_else(|| self.text.clone(), |draft| draft.before.clone());
        let told = Cell::new(None);
        let problem =
            card.sought_field_ui(ui, (&field, &finders(card, self.gear)), form, &|text| {
                let read = match card.ratio_form {
                    RatioForm::Gear => read_ratio(&before, text),
                    RatioForm::Overall => typed::ratio_from_overall(project, set, self.gear, text),
                    RatioForm::SpeedPer1000 => {
                        typed::ratio_from_speed(project, set, self.gear, text)
                    }
                };
                let (ratio, typed_as) = read?;
                told.set(typed_as);
                Ok(SetEdit::Ratio(self.gear, ratio))
            });
        if let Some(typed_as) = told.into_inner() {
            let id = card.candidate.id;
            form.actions.push(Action::Typed(id, self.gear, typed_as));
        }
        problem
    }
}

/// What can be found for the ratio of a gear.
pub(super) fn finders(card: &Card<'_>, gear: GearId) -> [Finder; 2] {
    let pair = Finder::Pair(card.candidate.id, Some(PairSpot::Gear(gear)));
    [card.wish(WishedAt::Gear(gear)), pair]
}

/// The field in which a gear's ratio stands in the form in which it is typed.
pub(in crate::app) fn ratio_cell(form: RatioForm, gear: GearId) -> SetCell {
    match form {
        RatioForm::Gear => SetCell::Ratio(gear),
        RatioForm::Overall => SetCell::Overall(gear),
        RatioForm::SpeedPer1000 => SetCell::SpeedPer1000(gear),
    }
}
