//! The gears of a card, one a row: label, ratio in the chosen form, output shaft, shift point.

use super::additions::{gear_before, type_ratio_of};
use super::{Card, SetField};
use crate::app::drafts::SetCell;
use crate::app::focus::{FocusMap, Walk};
use crate::app::form::{Form, remark};
use crate::app::heard::name_menu;
use crate::app::typed::{self, RatioForm};
use crate::gearing::{Gear, GearId, GearResult, GearRole, GearSet, REVERSE_LABEL, Ratio, Reverse};
use crate::project::SetEdit;
use crate::units::{plain_number, ratio_text, round_to};
use egui::{Button, RichText, TextStyle, TextWrapMode, Ui, WidgetText};

const LABEL_WIDTH: f32 = 30.0;
const RATIO_WIDTH: f32 = 74.0;
const SHIFT_WIDTH: f32 = 44.0;

/// What the menu at the end of a row takes, in points.
const MENU_WIDTH: f32 = 34.0;

/// What a product of counted teeth takes, in points, where there is room for it.
const PRODUCT_WIDTH: f32 = 104.0;

/// What a row takes beside its ratio and what only some rows have, in points.
const REST_WIDTH: f32 = LABEL_WIDTH + 60.0 + MENU_WIDTH + 12.0;

/// All gears, reverse last.
pub(super) fn gear_rows_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    headings_ui(ui, card, form);
    let mark = FocusMap::mark(ui);
    for (gear, result) in card.candidate.set.gears.iter().zip(&card.results.gears) {
        gear_row_ui(ui, card, gear, result, form);
    }
    if let Some(reverse) = &card.candidate.set.reverse {
        reverse_row_ui(ui, card, reverse, form);
    }
    form.focus.block(Walk::Columns, mark, ui);
}

fn has_own_shifts(card: &Card<'_>) -> bool {
    card.candidate.set.gears.iter().any(|g| g.shift.is_some())
}

/// The width of the ratios: products of counted teeth are longer than numbers.
fn ratio_width(ui: &Ui, card: &Card<'_>) -> f32 {
    let set = &card.candidate.set;
    let reverse = set.reverse.iter().map(|r| &r.ratio);
    let mut ratios = set.gears.iter().map(|g| &g.ratio).chain(reverse);
    if card.ratio_form != RatioForm::Gear || !ratios.any(|r| r.factors().len() > 1) {
        return RATIO_WIDTH;
    }
    let shifts = if has_own_shifts(card) {
        SHIFT_WIDTH + 6.0
    } else {
        0.0
    };
    let shafts = if set.final_drives.len() > 1 {
        34.0
    } else {
        0.0
    };
    let room = ui.available_width() - REST_WIDTH - shifts - shafts;
    room.clamp(RATIO_WIDTH, PRODUCT_WIDTH)
}

fn headings_ui(ui: &mut Ui, card: &Card<'_>, form: &Form<'_>) {
    let unit = card.desk.project().units;
    let ratio = match card.ratio_form {
        RatioForm::Gear => "ratio".to_owned(),
        RatioForm::Overall => "overall ratio".to_owned(),
        RatioForm::SpeedPer1000 => format!("{} per 1000", unit.sign()),
    };
    let ratio_width = ratio_width(ui, card);
    ui.horizontal(|ui| {
        let mut head = |text: &str, width: f32| {
            ui.allocate_ui(egui::vec2(width, 14.0), |ui| {
                ui.set_width(width);
                let color = if text == ratio && card.ratio_form != RatioForm::Gear {
                    // What is typed here is no gear ratio.
                    form.palette.finding
                } else {
                    form.palette.dim_text
                };
                remark(ui, text, color);
            });
        };
        head("gear", LABEL_WIDTH);
        head(&ratio, ratio_width);
        if has_own_shifts(card) {
            head("shift at", SHIFT_WIDTH);
        }
    });
}

fn gear_row_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    gear: &Gear,
    result: &GearResult,
    form: &mut Form<'_>,
) {
    let ratio_width = ratio_width(ui, card);
    let problems = ui
        .horizontal(|ui| {
            let label = label_ui(ui, card, gear, form);
            let ratio = ratio_ui(ui, card, (gear, result), ratio_width, form);
            let shift = if has_own_shifts(card) {
                shift_ui(ui, card, gear, form)
            } else {
                None
            };
            let whose = format!("gear {}", gear.label);
            shaft_ui(ui, card, (gear.id, &whose), gear.final_drive, form);
            let overall = result.gear.overall_ratio;
            if gear.role == GearRole::Crawler {
                remark(ui, "crawler", form.palette.text);
            }
            reading_ui(ui, card, (gear.id, &whose), &gear.ratio, overall, form);
            ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                gear_menu_ui(ui, card, gear, form);
            });
            [label, ratio, shift]
        })
        .inner;
    for problem in problems.iter().flatten() {
        form.problem(ui, Some(problem));
    }
}

fn label_ui(ui: &mut Ui, card: &Card<'_>, gear: &Gear, form: &mut Form<'_>) -> Option<String> {
    let field = SetField {
        cell: SetCell::Label(gear.id),
        name: &card.named(&format!("Label of gear {}", gear.label)),
        text: gear.label.as_str(),
        hint: "",
        width: LABEL_WIDTH,
    };
    let set = &card.candidate.set;
    card.field_ui(ui, &field, form, &|text| {
        let label = typed::label(text)?;
        let is_taken = set
            .gears
            .iter()
            .any(|g| g.id != gear.id && g.label == label);
        if is_taken || (set.reverse.is_some() && label.as_str() == REVERSE_LABEL) {
            return Err(format!("there is a gear \"{label}\" already"));
        }
        Ok(SetEdit::Label(gear.id, label))
    })
}

fn ratio_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    (gear, result): (&Gear, &GearResult),
    width: f32,
    form: &mut Form<'_>,
) -> Option<String> {
    let whose = format!("gear {}", gear.label);
    let shaft = (gear.id, gear.final_drive);
    let shown = Shown::of(card, shaft, &gear.ratio, Some(result));
    shown.field_ui(ui, card, &whose, width, form, &|text| {
        typed::gear_ratio(&card.candidate.set, gear, text)
    })
}

/// What stands in the ratio field of a gear, forward or reverse, in the chosen form.
struct Shown {
    /// Which gear, on which final drive.
    shaft: (GearId, usize),
    cell: SetCell,
    text: String,
}

impl Shown {
    fn of(
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

    fn field_ui(
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

fn shift_ui(ui: &mut Ui, card: &Card<'_>, gear: &Gear, form: &mut Form<'_>) -> Option<String> {
    let set = &card.candidate.set;
    let is_top = set.chain().last().is_some_and(|top| top.id == gear.id);
    if is_top || gear.role == GearRole::Crawler {
        ui.add_space(SHIFT_WIDTH + 6.0);
        return None;
    }
    let field = SetField {
        cell: SetCell::Shift(gear.id),
        name: &card.named(&format!("Shift point of gear {}", gear.label)),
        text: &plain_number(set.shift_of(gear).rpm()),
        hint: "",
        width: SHIFT_WIDTH,
    };
    card.field_ui(ui, &field, form, &|text| {
        typed::engine_speed(typed::Engine::SHIFT, text).map(|n| SetEdit::Shift(gear.id, n))
    })
}

/// Which output shaft a gear drives, where there are several.
fn shaft_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    (gear, whose): (GearId, &str),
    present: usize,
    form: &mut Form<'_>,
) {
    let count = card.candidate.set.final_drives.len();
    if count < 2 {
        return;
    }
    let next = (present + 1) % count;
    let button = ui.small_button(format!("F{}", present + 1));
    let hint = format!("Final drive {}; a click takes the next one", present + 1);
    let name = card.named(&format!("Final drive of {whose}"));
    if button.on_hover_text(hint).accessible_name(name).clicked() {
        let edit = SetEdit::FinalDriveOf(gear, next);
        card.change(edit, form);
    }
}

/// How counted teeth were understood; for a plain number, the overall ratio it comes to.
fn reading_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    (gear, whose): (GearId, &str),
    ratio: &Ratio,
    overall: f64,
    form: &mut Form<'_>,
) {
    if ratio.has_teeth() {
        teeth_ui(
            ui,
            card,
            (whose, ratio),
            |swapped| SetEdit::Ratio(gear, swapped),
            form,
        );
    } else if ui.available_width() > MENU_WIDTH + 70.0 {
        let words = format!("overall {}", ratio_text(overall));
        remark(ui, &words, form.palette.dim_text);
    }
}

/// The reading of counted teeth; a click exchanges what drives and what is driven.
pub(super) fn teeth_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    (whose, ratio): (&str, &Ratio),
    edit: impl FnOnce(Ratio) -> SetEdit,
    form: &mut Form<'_>,
) {
    let Ok(swapped) = ratio.swapped() else { return };
    let edges = 2.0 * ui.spacing().button_padding.x;
    let text = fitting(ui, ratio.reading(), ratio.value(), edges);
    let hint = format!(
        "{}; a click swaps it to {}",
        ratio.reading(),
        swapped.reading()
    );
    let button = ui.add(Button::new(text).small().frame_when_inactive(false));
    let name = card.named(&format!("{}, swap, {whose}", ratio.reading()));
    if button.on_hover_text(hint).accessible_name(name).clicked() {
        card.change(edit(swapped), form);
    }
}

/// As much of a reading as there is room for before the menu at the end of the row, with its own
/// edges in points.
pub(super) fn fitting(ui: &Ui, reading: String, ratio: f64, edges: f32) -> RichText {
    let room = ui.available_width() - MENU_WIDTH - edges;
    let fits = |text: &RichText| {
        let text = WidgetText::from(text.clone());
        let wrap = Some(TextWrapMode::Extend);
        let galley = text.into_galley(ui, wrap, f32::INFINITY, TextStyle::Small);
        galley.size().x <= room
    };
    let value = ratio_text(ratio);
    let readings = [reading, format!("= {value}")].map(|text| RichText::new(text).small());
    let fitting = readings.into_iter().find(fits);
    fitting.unwrap_or_else(|| RichText::new("=").small())
}

fn gear_menu_ui(ui: &mut Ui, card: &Card<'_>, gear: &Gear, form: &mut Form<'_>) {
    let gears = &card.candidate.set.gears;
    let place = gears.iter().position(|g| g.id == gear.id).unwrap_or(0);
    let name = card.named(&format!("Gear {} menu", gear.label));
    let button = ui.menu_button("…", |ui| {
        name_menu(ui, &name);
        let mut choices: Vec<(&str, bool, SetEdit)> = Vec::new();
        if place > 0 {
            choices.push(("Move up", true, SetEdit::MoveGear(gear.id, place - 1)));
        }
        let has_room = gears.len() < GearSet::MOST_GEARS;
        if ui
            .add_enabled(has_room, Button::new("Insert gear here"))
            .clicked()
        {
            if let Some(inserted) = gear_before(card, gear) {
                type_ratio_of(card, inserted.id, form);
                card.change(SetEdit::InsertGear(place, inserted), form);
            }
            ui.close();
        }
        let can_go_down = place + 1 < gears.len();
        choices.push((
            "Move down",
            can_go_down,
            SetEdit::MoveGear(gear.id, place + 1),
        ));
        match gear.role {
            GearRole::Shifted => {
                let edit = SetEdit::Role(gear.id, GearRole::Crawler);
                choices.push((
                    "Make it a crawler",
                    card.candidate.set.chain().count() > 1,
                    edit,
                ));
            }
            GearRole::Crawler => {
                let edit = SetEdit::Role(gear.id, GearRole::Shifted);
                choices.push(("Take into the shift chain", true, edit));
            }
        }
        choices.push(("Remove gear", gears.len() > 1, SetEdit::RemoveGear(gear.id)));
        for (text, is_enabled, edit) in choices {
            if ui.add_enabled(is_enabled, Button::new(text)).clicked() {
                card.change(edit, form);
                ui.close();
            }
        }
    });
    button.response.accessible_name(name);
}

fn reverse_row_ui(ui: &mut Ui, card: &Card<'_>, reverse: &Reverse, form: &mut Form<'_>) {
    let ratio_width = ratio_width(ui, card);
    let result = card.results.reverse.as_ref();
    let problem = ui
        .horizontal(|ui| {
            ui.allocate_ui(egui::vec2(LABEL_WIDTH, 18.0), |ui| {
                ui.set_width(LABEL_WIDTH);
                ui.label(REVERSE_LABEL);
            });
            let shaft = (GearId::REVERSE, reverse.final_drive);
            let shown = Shown::of(card, shaft, &reverse.ratio, result);
            let problem = shown.field_ui(ui, card, "reverse", ratio_width, form, &|text| {
                typed::reduction(text.trim().trim_start_matches(['-', '−']))
            });
            let gear = (GearId::REVERSE, "reverse");
            shaft_ui(ui, card, gear, reverse.final_drive, form);
            let overall = result.map_or(0.0, |r| r.gear.overall_ratio);
            reading_ui(ui, card, gear, &reverse.ratio, overall, form);
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
}

/// The field in which a gear's ratio stands in the form in which it is typed.
pub(super) fn ratio_cell(form: RatioForm, gear: GearId) -> SetCell {
    match form {
        RatioForm::Gear => SetCell::Ratio(gear),
        RatioForm::Overall => SetCell::Overall(gear),
        RatioForm::SpeedPer1000 => SetCell::SpeedPer1000(gear),
    }
}
