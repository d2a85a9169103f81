//! The final drives of a card: one for each output shaft, gears or a chain.

use super::gear_rows::{fitting, teeth_ui};
use super::{Card, SetField};
use crate::app::action::Action;
use crate::app::dialogs::finders::{Finder, PairSpot, WishedAt};
use crate::app::drafts::SetCell;
use crate::app::form::{Form, remark};
use crate::app::heard::{name_menu, tell_why_not};
use crate::app::menus::find_entries_ui;
use crate::app::typed;
use crate::gearing::{FinalDrive, GearSet, Ratio, Sprocket, Sprockets};
use crate::project::SetEdit;
use crate::units::ratio_text;
use egui::{Align, Button, Layout, Ui};

/// What the name before the fields takes, in points.
const NAME_WIDTH: f32 = 82.0;

/// The same before two fields.
const CHAIN_NAME_WIDTH: f32 = 48.0;

/// What the teeth of one sprocket take, in points.
const TEETH_WIDTH: f32 = 36.0;

/// What the teeth of both take while they are typed into one field, in points.
const BOTH_WIDTH: f32 = 42.0;

/// The teeth of the front sprocket of a chain that takes the place of gears without teeth.
const USUAL_FRONT: u16 = 16;

/// All final drives.
pub(super) fn final_drives_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    for (at, drive) in card.candidate.set.final_drives.iter().enumerate() {
        let problems = ui
            .horizontal(|ui| {
                let problems = match drive {
                    FinalDrive::Gears(ratio) => [gears_ui(ui, card, at, ratio, form), None],
                    FinalDrive::Chain(sprockets) => chain_ui(ui, card, at, *sprockets, form),
                };
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    menu_ui(ui, card, at, drive, form);
                });
                problems
            })
            .inner;
        for problem in problems.iter().flatten() {
            form.problem(ui, Some(problem));
        }
    }
}

/// What a final drive is called, with its number where there are several.
fn numbered(card: &Card<'_>, what: &str, at: usize) -> String {
    if card.candidate.set.final_drives.len() == 1 {
        what.to_owned()
    } else {
        format!("{what} {}", at + 1)
    }
}

/// What can be found for a final drive.
fn finders(card: &Card<'_>, at: usize) -> Vec<Finder> {
    let is_gears = matches!(card.candidate.set.final_drives[at], FinalDrive::Gears(_));
    let pair = Finder::Pair(card.candidate.id, Some(PairSpot::FinalDrive(at)));
    let pair = is_gears.then_some(pair);
    [card.wish(WishedAt::FinalDrive(at))]
        .into_iter()
        .chain(pair)
        .collect()
}

/// Gears in one field; why that does not read.
fn gears_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    at: usize,
    ratio: &Ratio,
    form: &mut Form<'_>,
) -> Option<String> {
    let name = numbered(card, "Final drive", at);
    form.name(ui, &name, NAME_WIDTH);
    let field = SetField {
        cell: SetCell::FinalDrive(at),
        name: &card.named(&name),
        text: &ratio.to_string(),
        hint: "4.06 or 37:9",
        width: 66.0,
    };
    let finders = finders(card, at);
    let problem = card.sought_field_ui(ui, (&field, &finders), form, &|text| {
        typed::final_drive(text).map(|drive| SetEdit::FinalDrive(at, drive))
    });
    if ratio.has_teeth() {
        let whose = name.to_lowercase();
        let edit = |swapped: Ratio| SetEdit::FinalDrive(at, swapped.into());
        teeth_ui(ui, card, (&whose, ratio), edit, form);
    }
    problem
}

/// A chain in two fields, and what they come to; why each does not read.
fn chain_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    at: usize,
    sprockets: Sprockets,
    form: &mut Form<'_>,
) -> [Option<String>; 2] {
    form.name(ui, &numbered(card, "Chain", at), CHAIN_NAME_WIDTH);
    let problems = Sprocket::BOTH.map(|of| {
        remark(ui, of.word(), form.palette.dim_text);
        let field = SetField {
            cell: SetCell::Sprocket(at, of),
            name: &card.named(&numbered(card, sprocket_name(of), at)),
            text: &sprockets.teeth(of).to_string(),
            hint: match of {
                Sprocket::Front => "16, or both as 16/46",
                Sprocket::Rear => "46",
            },
            width: match of {
                Sprocket::Front => BOTH_WIDTH,
                Sprocket::Rear => TEETH_WIDTH,
            },
        };
        // Tab and Enter go from one to the other.
        form.focus.prefer(card.cell_id(field.cell));
        card.sought_field_ui(ui, (&field, &finders(card, at)), form, &|text| {
            typed::sprocket((at, of), sprockets, text)
        })
    });
    let (front, rear) = (sprockets.front(), sprockets.rear());
    let ratio = ratio_text(sprockets.ratio());
    let reading = fitting(ui, format!("= {ratio}"), sprockets.ratio(), 0.0);
    let reading = ui.label(reading.color(form.palette.dim_text));
    reading.on_hover_text(format!(
        "{rear} ÷ {front} = {ratio}: {front} teeth in front on the output shaft, {rear} at the rear \
         on the wheel"
    ));
    problems
}

fn sprocket_name(of: Sprocket) -> &'static str {
    match of {
        Sprocket::Front => "Front sprocket",
        Sprocket::Rear => "Rear sprocket",
    }
}

fn menu_ui(ui: &mut Ui, card: &Card<'_>, at: usize, drive: &FinalDrive, form: &mut Form<'_>) {
    let count = card.candidate.set.final_drives.len();
    let name = card.named(&format!("Final drive {} menu", at + 1));
    let button = ui.menu_button("…", |ui| {
        name_menu(ui, &name);
        find_entries_ui(ui, &finders(card, at), form.actions);
        other_kind_ui(ui, card, at, drive, form);
        let can_add = count < GearSet::MOST_FINAL_DRIVES;
        let add = ui.add_enabled(can_add, Button::new("Add final drive"));
        if add.on_hover_text("For a further output shaft").clicked() {
            card.change(SetEdit::AddFinalDrive(drive.clone()), form);
            ui.close();
        }
        let remove = ui.add_enabled(count > 1, Button::new("Remove final drive"));
        if tell_why_not(remove, "this is the only final drive").clicked() {
            card.change(SetEdit::RemoveFinalDrive(at), form);
            ui.close();
        }
    });
    button.response.accessible_name(name);
}

/// A chain in the place of gears, or gears in that of a chain, to be typed next.
fn other_kind_ui(ui: &mut Ui, card: &Card<'_>, at: usize, drive: &FinalDrive, form: &mut Form<'_>) {
    let (text, hint, other, cell) = match drive {
        FinalDrive::Gears(ratio) => (
            "Chain instead",
            "Two sprockets, front and rear, in the place of this final drive",
            chain_like(ratio).map(FinalDrive::Chain),
            SetCell::Sprocket(at, Sprocket::Front),
        ),
        FinalDrive::Chain(sprockets) => (
            "Gears instead",
            "A ratio or a pair of gears in the place of this chain",
            sprockets.as_gears().ok().map(FinalDrive::Gears),
            SetCell::FinalDrive(at),
        ),
    };
    let button = ui.add_enabled(other.is_some(), Button::new(text));
    let button = match other {
        Some(_) => button.on_hover_text(hint),
        None => tell_why_not(button, "no sprockets come to this ratio"),
    };
    if button.clicked()
        && let Some(other) = other
    {
        form.focus.want(card.cell_id(cell));
        let words = format!("{} became {}", drive.reading(), other.reading());
        card.change(SetEdit::FinalDrive(at, other), form);
        // The nearest sprockets seldom come to the very ratio.
        form.actions.push(Action::Say(words));
        ui.close();
    }
}

/// The sprockets that come to a ratio: its own teeth, else the nearest on a usual front sprocket.
fn chain_like(ratio: &Ratio) -> Option<Sprockets> {
    Sprockets::of(ratio).or_else(|| {
        let wanted = f64::from(USUAL_FRONT) * ratio.value();
        let rear = (1..=999).min_by(|a, b| {
            let off = |teeth: u16| (f64::from(teeth) - wanted).abs();
            off(*a).total_cmp(&off(*b))
        })?;
        Sprockets::new(USUAL_FRONT, rear).ok()
    })
}
