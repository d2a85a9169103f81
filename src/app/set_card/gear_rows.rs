//! The gears of a card, one a row: label, ratio in the chosen form, output shaft, shift point.

use super::Card;
use super::stages::add_stage_ui;
use crate::app::action::Action;
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Field, Form, remark};
use crate::app::typed::{self, RatioForm};
use crate::gearing::{Gear, GearId, GearResult, GearRole, Label, REVERSE_LABEL, Ratio, Reverse};
use crate::project::{Edit, SetEdit};
use crate::units::{plain_number, ratio_text, round_to};
use egui::{Button, RichText, TextStyle, TextWrapMode, Ui, WidgetText};

const LABEL_WIDTH: f32 = 30.0;
const RATIO_WIDTH: f32 = 74.0;
const SHIFT_WIDTH: f32 = 44.0;

/// What the menu at the end of a row takes, in points.
const MENU_WIDTH: f32 = 34.0;

/// All gears, reverse last.
pub(super) fn gear_rows_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    headings_ui(ui, card, form);
    for (gear, result) in card.candidate.set.gears.iter().zip(&card.results.gears) {
        gear_row_ui(ui, card, gear, result, form);
    }
    if let Some(reverse) = &card.candidate.set.reverse {
        reverse_row_ui(ui, card, reverse, form);
    }
}

fn has_own_shifts(card: &Card<'_>) -> bool {
    card.candidate.set.gears.iter().any(|g| g.shift.is_some())
}

fn headings_ui(ui: &mut Ui, card: &Card<'_>, form: &Form<'_>) {
    let unit = card.desk.project().units;
    let ratio = match card.ratio_form {
        RatioForm::Gear => "ratio".to_owned(),
        RatioForm::Overall => "overall".to_owned(),
        RatioForm::SpeedPer1000 => format!("{} per 1000", unit.sign()),
    };
    ui.horizontal(|ui| {
        let mut head = |text: &str, width: f32| {
            ui.allocate_ui(egui::vec2(width, 14.0), |ui| {
                ui.set_width(width);
                remark(ui, text, form.palette.dim_text);
            });
        };
        head("gear", LABEL_WIDTH);
        head(&ratio, RATIO_WIDTH);
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
    let problems = ui
        .horizontal(|ui| {
            let label = label_ui(ui, card, gear, form);
            let ratio = ratio_ui(ui, card, gear, result, form);
            let shift = if has_own_shifts(card) {
                shift_ui(ui, card, gear, form)
            } else {
                None
            };
            let whose = format!("gear {}", gear.label);
            shaft_ui(ui, card, (gear.id, &whose), gear.final_drive, form);
            let overall = result.gear.overall_ratio;
            reading_ui(ui, card, gear.id, &gear.ratio, overall, form);
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
    let id = card.candidate.id;
    let text = gear.label.to_string();
    let field = Field {
        id: CellId::Set(id, SetCell::Label(gear.id)),
        name: "Label",
        text: &text,
        hint: "",
    };
    let spoken = format!("Label of gear {text}, set {}", card.place + 1);
    let set = &card.candidate.set;

    form.cell(ui, &field, &spoken, LABEL_WIDTH, &|text| {
        let label = typed::label(text)?;
        let is_taken = set
            .gears
            .iter()
            .any(|g| g.id != gear.id && g.label == label);
        if is_taken || (set.reverse.is_some() && label.as_str() == REVERSE_LABEL) {
            return Err(format!("there is a gear \"{label}\" already"));
        }
        Ok(typed::of_set(id, SetEdit::Label(gear.id, label)))
    })
}

fn ratio_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    gear: &Gear,
    result: &GearResult,
    form: &mut Form<'_>,
) -> Option<String> {
    let id = card.candidate.id;
    let set = &card.candidate.set;
    let unit = card.desk.project().units;
    let (cell, text) = match card.ratio_form {
        RatioForm::Gear => (SetCell::Ratio(gear.id), gear.ratio.to_string()),
        RatioForm::Overall => {
            let overall = plain_number(round_to(result.gear.overall_ratio, 0.001));
            (SetCell::Overall(gear.id), overall)
        }
        RatioForm::SpeedPer1000 => {
            let speed = unit.from_kmh(result.speed_per_1000_rpm_kmh);
            (
                SetCell::SpeedPer1000(gear.id),
                plain_number(round_to(speed, 0.01)),
            )
        }
    };
    let field = Field {
        id: CellId::Set(id, cell),
        name: "Ratio",
        text: &text,
        hint: "3.78 or 34:9",
    };
    let spoken = format!("Ratio of gear {}, set {}", gear.label, card.place + 1);

    form.cell(ui, &field, &spoken, RATIO_WIDTH, &|text| {
        let ratio = match card.ratio_form {
            RatioForm::Gear => typed::gear_ratio(set, gear, text),
            RatioForm::Overall => typed::ratio_from_overall(set, gear, text),
            RatioForm::SpeedPer1000 => typed::ratio_from_speed(set, gear, card.results, unit, text),
        };
        ratio.map(|ratio| typed::of_ratio(id, gear.id, ratio))
    })
}

fn shift_ui(ui: &mut Ui, card: &Card<'_>, gear: &Gear, form: &mut Form<'_>) -> Option<String> {
    let id = card.candidate.id;
    let set = &card.candidate.set;
    let is_top = set.chain().last().is_some_and(|top| top.id == gear.id);
    if is_top || gear.role == GearRole::Crawler {
        ui.add_space(SHIFT_WIDTH + 6.0);
        return None;
    }
    let text = plain_number(set.shift_of(gear).rpm());
    let field = Field {
        id: CellId::Set(id, SetCell::Shift(gear.id)),
        name: "Shift at",
        text: &text,
        hint: "",
    };
    let spoken = format!("Shift point of gear {}, set {}", gear.label, card.place + 1);
    form.cell(ui, &field, &spoken, SHIFT_WIDTH, &|text| {
        typed::engine_speed(text).map(|n| typed::of_set(id, SetEdit::Shift(gear.id, n)))
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
        form.edit(typed::of_set(card.candidate.id, edit));
    }
}

/// How counted teeth were understood; for a plain number, the overall ratio it comes to.
fn reading_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    gear: GearId,
    ratio: &Ratio,
    overall: f64,
    form: &mut Form<'_>,
) {
    if ratio.has_teeth() {
        teeth_ui(
            ui,
            card,
            ratio,
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
    ratio: &Ratio,
    edit: impl FnOnce(Ratio) -> SetEdit,
    form: &mut Form<'_>,
) {
    let Ok(swapped) = ratio.swapped() else { return };
    let text = RichText::new(ratio.reading()).small();
    let room = ui.available_width() - MENU_WIDTH;
    let galley = WidgetText::from(text.clone()).into_galley(
        ui,
        Some(TextWrapMode::Extend),
        f32::INFINITY,
        TextStyle::Small,
    );
    let fits = galley.size().x + 2.0 * ui.spacing().button_padding.x <= room;
    let text = if fits {
        text
    } else {
        RichText::new(format!("= {}", ratio_text(ratio.value()))).small()
    };
    let hint = format!(
        "{}; a click swaps it to {}",
        ratio.reading(),
        swapped.reading()
    );
    let button = ui.add(Button::new(text).small().frame_when_inactive(false));
    let name = card.named(&format!("{}, swap", ratio.reading()));
    if button.on_hover_text(hint).accessible_name(name).clicked() {
        form.edit(typed::of_set(card.candidate.id, edit(swapped)));
    }
}

fn gear_menu_ui(ui: &mut Ui, card: &Card<'_>, gear: &Gear, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let gears = &card.candidate.set.gears;
    let place = gears.iter().position(|g| g.id == gear.id).unwrap_or(0);
    let button = ui.menu_button("…", |ui| {
        let mut choices: Vec<(&str, bool, SetEdit)> = Vec::new();
        if place > 0 {
            choices.push(("Move up", true, SetEdit::MoveGear(gear.id, place - 1)));
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
                form.edit(typed::of_set(id, edit));
                ui.close();
            }
        }
    });
    let name = format!("Gear {} menu, set {}", gear.label, card.place + 1);
    button.response.accessible_name(name);
}

fn reverse_row_ui(ui: &mut Ui, card: &Card<'_>, reverse: &Reverse, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let problem = ui
        .horizontal(|ui| {
            ui.allocate_ui(egui::vec2(LABEL_WIDTH, 18.0), |ui| {
                ui.set_width(LABEL_WIDTH);
                ui.label(REVERSE_LABEL);
            });
            let text = reverse.ratio.to_string();
            let field = Field {
                id: CellId::Set(id, SetCell::Ratio(GearId::REVERSE)),
                name: "Reverse",
                text: &text,
                hint: "3.5",
            };
            let spoken = format!("Ratio of reverse, set {}", card.place + 1);
            let problem = form.cell(ui, &field, &spoken, RATIO_WIDTH, &|text| {
                let text = text.trim().trim_start_matches(['-', '−']);
                typed::reduction(text).map(|r| typed::of_ratio(id, GearId::REVERSE, r))
            });
            let gear = (GearId::REVERSE, "reverse");
            shaft_ui(ui, card, gear, reverse.final_drive, form);
            let overall = card
                .results
                .reverse
                .as_ref()
                .map_or(0.0, |r| r.gear.overall_ratio);
            reading_ui(ui, card, GearId::REVERSE, &reverse.ratio, overall, form);
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
}

/// What can be added to a set.
pub(super) fn additions_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let set = &card.candidate.set;
    ui.horizontal(|ui| {
        let has_room = set.gears.len() < crate::gearing::GearSet::MOST_GEARS;
        let add = ui.add_enabled(has_room, Button::new("Add gear").small());
        let add = add.accessible_name(card.named("Add gear"));
        if add.on_hover_text("Adds a gear above top").clicked() {
            form.actions.extend(added_gear(card).map(Action::Edit));
        }
        let (text, reverse) = match &set.reverse {
            None => ("Add reverse", first_as_reverse(card)),
            Some(_) => ("Remove reverse", None),
        };
        let button = ui.small_button(text);
        if button.accessible_name(card.named(text)).clicked() {
            form.edit(typed::of_set(id, SetEdit::Reverse(reverse)));
        }
        add_stage_ui(ui, card, form);
    });
}

/// A gear one step above top, its label counted on.
fn added_gear(card: &Card<'_>) -> Option<Edit> {
    let set = &card.candidate.set;
    let top = set.chain().last()?;
    let before = set.chain().nth(set.chain().count().saturating_sub(2))?;
    let step = (before.ratio.value() / top.ratio.value()).clamp(1.1, 1.5);
    let ratio = Ratio::from_number(round_to(top.ratio.value() / step, 0.001)).ok()?;
    let label = (1..=99)
        .map(|n| (set.chain().count() + n).to_string())
        .find(|label| set.gears.iter().all(|g| g.label.as_str() != label))?;
    let gear = Gear {
        id: set.unused_id(),
        label: Label::new(&label).ok()?,
        ratio,
        final_drive: top.final_drive,
        role: GearRole::Shifted,
        shift: None,
    };
    let place = set.gears.iter().position(|g| g.id == top.id)? + 1;
    let edit = SetEdit::AddGear(place, gear);
    Some(typed::of_set(card.candidate.id, edit))
}

/// A reverse gear to begin with: as short as first.
fn first_as_reverse(card: &Card<'_>) -> Option<Reverse> {
    let first = card.candidate.set.chain().next()?;
    let ratio = Ratio::from_number(round_to(first.ratio.value(), 0.001)).ok()?;
    Some(Reverse {
        ratio,
        final_drive: first.final_drive,
    })
}
