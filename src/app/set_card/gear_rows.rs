//! The gears of a card, one a row: label, ratio in the chosen form, output shaft, shift point.

use super::additions::{gear_before, type_ratio_of};
use super::ratio_field::{Shown, finders};
use super::{Card, SetField};
use crate::app::action::Action;
use crate::app::dialogs::finders::{Finder, WishedAt};
use crate::app::drafts::SetCell;
use crate::app::focus::{FocusMap, Walk};
use crate::app::form::{Form, remark};
use crate::app::heard::{describe, name_menu};
use crate::app::menus::find_entries_ui;
use crate::app::typed::{self, RatioForm};
use crate::app::typed_as::TypedAs;
use crate::gearing::{
    Gear, GearId, GearResult, GearRole, GearSet, PairOrder, REVERSE_LABEL, Ratio, Reverse,
};
use crate::project::SetEdit;
use crate::units::{plain_number, ratio_text};
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
    let (ratio, stays) = match card.ratio_form {
        RatioForm::Gear => ("ratio".to_owned(), None),
        RatioForm::Overall => ("overall ratio".to_owned(), Some(OVERALL_STAYS)),
        RatioForm::SpeedPer1000 => (format!("{} per 1000", unit.sign()), Some(SPEED_STAYS)),
    };
    let ratio_width = ratio_width(ui, card);
    ui.horizontal(|ui| {
        let head = |ui: &mut Ui, text: &str, width: f32, stays: Option<&str>| {
            ui.allocate_ui(egui::vec2(width, 14.0), |ui| {
                ui.set_width(width);
                let Some(stays) = stays else {
                    remark(ui, text, form.palette.dim_text);
                    return;
                };
                // What is typed here is no gear ratio.
                let text = RichText::new(text).small().color(form.palette.finding);
                let heading = ui.label(text);
                describe(&heading, stays);
                heading.on_hover_text(stays);
            });
        };
        head(ui, "gear", LABEL_WIDTH, None);
        head(ui, &ratio, ratio_width, stays);
        if has_own_shifts(card) {
            head(ui, "shift at", SHIFT_WIDTH, None);
        }
    });
}

/// What becomes of overall ratios that were typed.
const OVERALL_STAYS: &str =
    "Overall ratios typed here stay when a final drive or a stage changes: the gear ratios follow";

/// What becomes of road speeds that were typed.
const SPEED_STAYS: &str = "Speeds typed here stay when a final drive, a stage or the tyre changes: \
                           the gear ratios follow";

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
            let shown = Shown::of(card, gear.id, &gear.ratio, Some(result));
            let ratio = ratio_ui(ui, card, gear, &shown, ratio_width, form);
            let shift = if has_own_shifts(card) {
                shift_ui(ui, card, gear, form)
            } else {
                None
            };
            let whose = format!("gear {}", gear.label);
            shaft_ui(ui, card, (gear.id, &whose), gear.final_drive, form);
            if gear.role == GearRole::Crawler {
                remark(ui, "crawler", form.palette.text);
            }
            let row = (gear.id, whose.as_str(), &shown);
            reading_ui(ui, card, row, &gear.ratio, Some(result), form);
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
    gear: &Gear,
    shown: &Shown,
    width: f32,
    form: &mut Form<'_>,
) -> Option<String> {
    let whose = format!("gear {}", gear.label);
    let set = &card.candidate.set;
    let order_of = |id: GearId| {
        let ratio = set.ratio_of(id)?;
        card.typed.order_of(card.candidate.id, id, ratio)
    };
    shown.field_ui(ui, card, &whose, width, form, &|before, text| {
        typed::gear_ratio(set, gear, &order_of, before, text)
    })
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
    let finders = [card.wish(WishedAt::Shift(Some(gear.id)))];
    card.sought_field_ui(ui, (&field, &finders), form, &|text| {
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

/// How counted teeth were understood; for a plain number, what it comes to: the overall ratio, or the
/// gear ratio where that is not what is typed.
fn reading_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    (gear, whose, shown): (GearId, &str, &Shown),
    ratio: &Ratio,
    result: Option<&GearResult>,
    form: &mut Form<'_>,
) {
    if ratio.has_teeth() {
        let swap = |swapped| SetEdit::Ratio(gear, swapped);
        if teeth_ui(ui, card, (whose, ratio), swap, form)
            && let Ok(swapped) = ratio.swapped()
        {
            // As if the counts that stood in the field had been typed to be read the other way.
            let id = card.candidate.id;
            let order = card.typed.order_of(id, gear, ratio);
            let order = order.unwrap_or(PairOrder::DrivenFirst).other();
            let typed_as = TypedAs::Pair(order, swapped);
            form.actions.push(Action::Typed(id, gear, typed_as));
        }
        return;
    }
    if ui.available_width() <= MENU_WIDTH + 70.0 {
        return;
    }
    match card.ratio_form {
        RatioForm::Gear => {
            let overall = result.map_or(0.0, |result| result.gear.overall_ratio);
            let words = format!("overall {}", ratio_text(overall));
            remark(ui, &words, form.palette.dim_text);
        }
        RatioForm::Overall | RatioForm::SpeedPer1000 => {
            let words = format!("gear {}", ratio_text(ratio.value()));
            if shown.stays {
                let text = RichText::new(words).small().color(form.palette.text);
                let follows = ui.label(text);
                describe(&follows, FOLLOWS);
                follows.on_hover_text(FOLLOWS);
            } else {
                remark(ui, &words, form.palette.dim_text);
            }
        }
    }
}

/// What becomes of the gear ratio behind a figure that was typed.
const FOLLOWS: &str = "The figure before it stays as typed; this gear ratio follows";

/// The reading of counted teeth; a click exchanges what drives and what is driven, and is told.
pub(super) fn teeth_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    (whose, ratio): (&str, &Ratio),
    edit: impl FnOnce(Ratio) -> SetEdit,
    form: &mut Form<'_>,
) -> bool {
    let Ok(swapped) = ratio.swapped() else {
        return false;
    };
    let edges = 2.0 * ui.spacing().button_padding.x;
    let text = fitting(ui, ratio.reading(), ratio.value(), edges);
    let hint = format!(
        "{}; a click swaps it to {}",
        ratio.reading(),
        swapped.reading()
    );
    let button = ui.add(Button::new(text).small().frame_when_inactive(false));
    let name = card.named(&format!("{}, swap, {whose}", ratio.reading()));
    let is_clicked = button.on_hover_text(hint).accessible_name(name).clicked();
    if is_clicked {
        card.change(edit(swapped), form);
    }
    is_clicked
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
        find_entries_ui(ui, &finders(card, gear.id), form.actions);
        find_entries_ui(ui, &[Finder::Fill(card.candidate.id)], form.actions);
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
            let shown = Shown::of(card, GearId::REVERSE, &reverse.ratio, result);
            let problem = shown.field_ui(ui, card, "reverse", ratio_width, form, &|_, text| {
                let ratio = typed::reduction(text.trim().trim_start_matches(['-', '−']))?;
                Ok((ratio, None))
            });
            let gear = (GearId::REVERSE, "reverse");
            shaft_ui(ui, card, gear, reverse.final_drive, form);
            let row = (GearId::REVERSE, "reverse", &shown);
            reading_ui(ui, card, row, &reverse.ratio, result, form);
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
}
