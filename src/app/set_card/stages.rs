//! The further stages of a card: transfer box, overdrive, primary drive.

use super::gear_rows::teeth_ui;
use super::{Card, SetField};
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Form, remark};
use crate::app::heard::name_menu;
use crate::app::typed;
use crate::draw::theme;
use crate::gearing::{ActsOn, Gear, GearId, GearSet, Name, Position, Ratio, Stage};
use crate::project::SetEdit;
use crate::units::ratio_text;
use egui::containers::menu::{MenuButton, MenuConfig};
use egui::{Button, PopupCloseBehavior, Ui};
use std::collections::BTreeSet;

/// What first gear's overall ratio and the button behind it take, in points.
const ROOM_FOR_READING: f32 = 100.0;

/// The width of the ratio of a position, in points.
const RATIO_WIDTH: f32 = 56.0;

/// More positions no usual stage has.
const MOST_POSITIONS: usize = 4;

/// All stages.
pub(super) fn stages_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    for (at, stage) in card.candidate.set.stages.iter().enumerate() {
        let shown = ui.push_id(("stage", at), |ui| stage_ui(ui, card, at, stage, form));
        let room = shown.response.rect;
        form.focus
            .seek_with(card.cell_id(SetCell::StageName(at)), room);
        form.focus
            .seek_with(card.cell_id(typed_first(at, stage)), room);
    }
}

/// What is typed first in a stage that has come: the ratio that makes it one, of its last position.
fn typed_first(at: usize, stage: &Stage) -> SetCell {
    SetCell::PositionRatio(at, stage.positions.len().saturating_sub(1))
}

/// A further stage, chosen among the usual ones.
pub(super) fn add_stage_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    if card.candidate.set.stages.len() < GearSet::MOST_STAGES {
        ui.spacing_mut().button_padding.y = 0.0;
        let name = card.named("Add stage");
        let button = ui.menu_button("Add stage", |ui| {
            name_menu(ui, &name);
            for (text, stage) in offered() {
                if ui.button(text).clicked() {
                    if let Some(stage) = stage {
                        let at = card.candidate.set.stages.len();
                        form.focus.want(card.cell_id(typed_first(at, &stage)));
                        card.change(SetEdit::AddStage(stage), form);
                    }
                    ui.close();
                }
            }
        });
        let hint = "Transfer box, overdrive, primary drive: whatever stands between";
        button.response.on_hover_text(hint).accessible_name(name);
    }
}

impl Card<'_> {
    /// What a position of a stage is called by those who hear it.
    fn position_name(&self, at: usize, place: usize) -> String {
        self.named(&format!("position {} of stage {}", place + 1, at + 1))
    }
}

/// The stages that are usually wanted, with figures to begin with.
fn offered() -> [(&'static str, Option<Stage>); 3] {
    [
        (
            "Transfer box",
            new_stage("Transfer box", &[("High", 1.0), ("Low", 2.5)]),
        ),
        (
            "Overdrive",
            new_stage("Overdrive", &[("Direct", 1.0), ("Overdrive", 0.8)]),
        ),
        (
            "Primary drive",
            new_stage("Primary drive", &[(Position::FIXED, 2.0)]),
        ),
    ]
}

fn new_stage(name: &str, positions: &[(&str, f64)]) -> Option<Stage> {
    let position = |&(name, ratio): &(&str, f64)| {
        Some(Position {
            name: Name::new(name).ok()?,
            ratio: Ratio::from_number(ratio).ok()?,
        })
    };
    Some(Stage {
        name: Name::new(name).ok()?,
        positions: positions.iter().map(position).collect::<Option<_>>()?,
        present: 0,
        acts_on: ActsOn::EveryGear,
        shows_others: false,
    })
}

fn stage_ui(ui: &mut Ui, card: &Card<'_>, at: usize, stage: &Stage, form: &mut Form<'_>) {
    ui.separator();
    let alone = position_alone(card, at, stage, form);
    if alone.is_some() {
        // Before the fields: the row begins with its ratio.
        form.focus
            .prefer(card.cell_id(SetCell::PositionRatio(at, 0)));
    }
    let problems = ui
        .horizontal(|ui| {
            let behind = if alone.is_some() { 140.0 } else { 166.0 };
            let field = SetField {
                cell: SetCell::StageName(at),
                name: &card.named(&format!("Name of stage {}", at + 1)),
                text: stage.name.as_str(),
                hint: "",
                width: (ui.available_width() - behind).clamp(70.0, 140.0),
            };
            let name = card.field_ui(ui, &field, form, &|text| {
                typed::name(text).map(|name| SetEdit::StageName(at, name))
            });
            let ratio = alone
                .and_then(|alone| ratio_ui(ui, card, [at, 0], (alone, typed::reduction), form));
            if alone.is_none() {
                acts_on_ui(ui, card, at, stage, form);
            }
            let remove = ui.add(Button::new("Remove").small());
            let spoken = card.named(&format!("Remove stage {}", at + 1));
            if remove.accessible_name(spoken).clicked() {
                card.change(SetEdit::RemoveStage(at), form);
            }
            [name, ratio]
        })
        .inner;
    for problem in problems.iter().flatten() {
        form.problem(ui, Some(problem));
    }
    if alone.is_none() {
        for (place, position) in stage.positions.iter().enumerate() {
            position_ui(ui, card, [at, place], stage, position, form);
        }
    }
    ui.horizontal(|ui| {
        if alone.is_some() {
            acts_on_ui(ui, card, at, stage, form);
        }
        if stage.positions.len() < MOST_POSITIONS {
            add_position_ui(ui, card, at, stage, form);
        }
        if stage.positions.len() > 1 {
            show_all_ui(ui, card, at, stage, form);
        }
        if let Some(alone) = alone {
            counted_ui(ui, card, [at, 0], alone, form);
        }
    });
}

/// Whether the other positions are shown beside the present one.
fn show_all_ui(ui: &mut Ui, card: &Card<'_>, at: usize, stage: &Stage, form: &mut Form<'_>) {
    let mut shows_others = stage.shows_others;
    let shown = ui.checkbox(&mut shows_others, "show all");
    let hint = "Diagram and table show every position: faint lines, and rows beneath the set's own";
    let name = card.named(&format!("Show all positions of stage {}", at + 1));
    if shown.on_hover_text(hint).accessible_name(name).changed() {
        card.change(SetEdit::StageShowsOthers(at, shows_others), form);
    }
}

/// The one position of a stage that is called by its name alone: its ratio stands beside that name.
///
/// While its own name is being typed it keeps its row, whatever the letters come to on the way.
fn position_alone<'a>(
    card: &Card<'_>,
    at: usize,
    stage: &'a Stage,
    form: &Form<'_>,
) -> Option<&'a Position> {
    let name = CellId::Set(card.candidate.id, SetCell::PositionName(at, 0));
    let is_alone = stage.is_fixed() && form.drafts.get(name).is_none();
    stage.positions.first().filter(|_| is_alone)
}

fn add_position_ui(ui: &mut Ui, card: &Card<'_>, at: usize, stage: &Stage, form: &mut Form<'_>) {
    let add = ui.small_button("Add position");
    let name = card.named(&format!("Add position to stage {}", at + 1));
    if add.accessible_name(name).clicked()
        && let Some(last) = stage.positions.last()
    {
        card.change(SetEdit::AddPosition(at, last.clone()), form);
    }
}

/// One position: a click puts the stage into it; beside it what first gear then comes to.
fn position_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    [at, place]: [usize; 2],
    stage: &Stage,
    position: &Position,
    form: &mut Form<'_>,
) {
    let problems = ui
        .horizontal(|ui| {
            let is_present = stage.present == place;
            let place_name = card.position_name(at, place);
            if stage.positions.len() > 1 {
                let choose = ui.radio(is_present, "");
                let name = format!("Put in {place_name}");
                if choose.accessible_name(name).clicked() && !is_present {
                    card.change(SetEdit::StagePresent(at, place), form);
                }
            }
            let problems = position_fields_ui(ui, card, [at, place], position, form);
            if position.ratio.has_teeth() {
                counted_ui(ui, card, [at, place], position, form);
            } else if let Some(overall) = first_overall(card, at, place)
                && ui.available_width() > ROOM_FOR_READING
            {
                let words = format!("first {}", ratio_text(overall));
                remark(ui, &words, form.palette.dim_text);
            }
            if stage.positions.len() > 1 {
                let remove = ui.add(Button::new("×").small());
                let name = format!("Remove {place_name}");
                if remove.accessible_name(name).clicked() {
                    card.change(SetEdit::RemovePosition(at, place), form);
                }
            }
            problems
        })
        .inner;
    for problem in problems.iter().flatten() {
        form.problem(ui, Some(problem));
    }
}

/// The name and the ratio of a position; why each does not read.
fn position_fields_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    [at, place]: [usize; 2],
    position: &Position,
    form: &mut Form<'_>,
) -> [Option<String>; 2] {
    let called = card.position_name(at, place);
    let name = SetField {
        cell: SetCell::PositionName(at, place),
        name: &format!("Name of {called}"),
        text: position.name.as_str(),
        hint: "",
        width: 72.0,
    };
    // Before the fields: the row begins with its ratio.
    form.focus
        .prefer(card.cell_id(SetCell::PositionRatio(at, place)));
    let name = card.field_ui(ui, &name, form, &|text| {
        let name = typed::name(text)?;
        let position = Position {
            name,
            ..position.clone()
        };
        Ok(SetEdit::Position(at, place, position))
    });
    let ratio = (position, typed::any_ratio as ReadRatio);
    [name, ratio_ui(ui, card, [at, place], ratio, form)]
}

/// How the ratio of a position is read: what stands in one position only reduces.
type ReadRatio = fn(&str) -> typed::Reading<Ratio>;

/// The ratio of a position; why it does not read.
fn ratio_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    [at, place]: [usize; 2],
    (position, read): (&Position, ReadRatio),
    form: &mut Form<'_>,
) -> Option<String> {
    let ratio = SetField {
        cell: SetCell::PositionRatio(at, place),
        name: &format!("Ratio of {}", card.position_name(at, place)),
        text: &position.ratio.to_string(),
        hint: "1",
        width: RATIO_WIDTH,
    };
    card.field_ui(ui, &ratio, form, &|text| {
        let ratio = read(text)?;
        let position = Position {
            ratio,
            ..position.clone()
        };
        Ok(SetEdit::Position(at, place, position))
    })
}

/// How the counted teeth of a position were understood; a click exchanges what drives what.
fn counted_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    [at, place]: [usize; 2],
    position: &Position,
    form: &mut Form<'_>,
) {
    if !position.ratio.has_teeth() {
        return;
    }
    let whose = format!("position {} of stage {}", place + 1, at + 1);
    let swapped = |ratio| {
        let position = Position {
            ratio,
            ..position.clone()
        };
        SetEdit::Position(at, place, position)
    };
    teeth_ui(ui, card, (&whose, &position.ratio), swapped, form);
}

/// The overall ratio of first gear with one stage in another position.
fn first_overall(card: &Card<'_>, at: usize, place: usize) -> Option<f64> {
    let stage = &card.candidate.set.stages[at];
    let first = card.results.chain().next()?;
    if !stage.acts_on.includes(first.gear.id) {
        return None;
    }
    let present = stage.positions[stage.present].ratio.value();
    let wanted = stage.positions[place].ratio.value();
    Some(first.gear.overall_ratio / present * wanted)
}

/// Which gears a stage acts on: all, or a choice.
fn acts_on_ui(ui: &mut Ui, card: &Card<'_>, at: usize, stage: &Stage, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let text = match &stage.acts_on {
        ActsOn::EveryGear => "every gear".to_owned(),
        ActsOn::Only(gears) => {
            let labels = set.gears.iter().filter(|g| gears.contains(&g.id));
            let labels: Vec<&str> = labels.map(|g| g.label.as_str()).collect();
            match labels.len() {
                0 => "no gear".to_owned(),
                1..=3 => format!("gears {}", labels.join(" ")),
                count => format!("{count} of {} gears", set.gears.len()),
            }
        }
    };
    // The popup stays: several gears are taken or left one after the other.
    let stays_open = MenuConfig::new().close_behavior(PopupCloseBehavior::CloseOnClickOutside);
    let name = card.named(&format!("Gears of stage {}", at + 1));
    let (menu, _) = MenuButton::new(text).config(stays_open).ui(ui, |ui| {
        name_menu(ui, &name);
        theme::with_edges(ui);
        let is_every = stage.acts_on == ActsOn::EveryGear;
        if ui.radio(is_every, "every gear").clicked() {
            card.change(SetEdit::StageActsOn(at, ActsOn::EveryGear), form);
        }
        for gear in &set.gears {
            let mut acts = stage.acts_on.includes(gear.id);
            let text = format!("gear {}", gear.label);
            if ui.checkbox(&mut acts, text).changed() {
                let acts_on = ActsOn::Only(chosen(&stage.acts_on, &set.gears, gear.id, acts));
                card.change(SetEdit::StageActsOn(at, acts_on), form);
            }
        }
    });
    menu.accessible_name(name);
}

/// The gears that a stage acts on, with one more or one fewer.
fn chosen(before: &ActsOn, gears: &[Gear], gear: GearId, acts: bool) -> BTreeSet<GearId> {
    let included = gears.iter().map(|g| g.id).filter(|id| before.includes(*id));
    let mut chosen: BTreeSet<GearId> = included.collect();
    if acts {
        chosen.insert(gear);
    } else {
        chosen.remove(&gear);
    }
    chosen
}
