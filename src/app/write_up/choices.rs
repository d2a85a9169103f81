//! What the page shows: form, width, looks, sets, drops, table, note.

use super::form_name;
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::drafts::CellId;
use crate::app::form::{Field, Form, remark};
use crate::app::heard::describe;
use crate::chart::table::{OfferedColumn, offered_columns};
use crate::gearing::parse_decimal;
use crate::project::{
    Candidate, ColumnKey, Drops, Edit, PageForm, PictureWidth, SetId, View, Views, WriteUp,
};
use crate::workshop::BenchItem;
use egui::{Checkbox, RadioButton, Response, Ui};
use std::collections::BTreeSet;

/// What a picture with the project in it is good for, and what does not go along.
const CARRIED: &str = "So the picture can be opened here again: what it shows, no paths.";

/// Shows the choices; all but the form of page, which is only looked at, are kept with the project.
/// Returns the first.
pub(super) fn choices_ui(ui: &mut Ui, desk: &Desk, form: &mut Form<'_>) -> Response {
    let present = &desk.project().write_up;
    let mut wanted = present.clone();
    let [first, others @ ..] = PageForm::ALL;
    let mut page_form = desk.page_form;
    let first = ui.radio_value(&mut page_form, first, form_name(first));
    for page in others {
        ui.radio_value(&mut page_form, page, form_name(page));
    }
    if page_form != desk.page_form {
        form.actions.push(Action::PageForm(page_form));
    }
    let is_picture = page_form == PageForm::Picture;
    sheets_ui(ui, desk, is_picture, form);
    // A sheet of the bench has none of it.
    if is_picture || desk.sheet.is_none() {
        of_sets_ui(ui, desk, is_picture, &mut wanted, form);
    }
    if wanted != *present {
        form.edit(Edit::WriteUp(wanted));
    }
    width_ui(ui, present, form);
    first
}

/// What is shown of the gear sets, and whether the project goes along.
fn of_sets_ui(
    ui: &mut Ui,
    desk: &Desk,
    is_picture: bool,
    wanted: &mut WriteUp,
    form: &mut Form<'_>,
) {
    ui.add_space(4.0);
    ui.add_enabled_ui(is_picture, |ui| {
        views_ui(ui, desk, &mut wanted.views, form);
        ui.horizontal(|ui| {
            for (is_dark, name) in [(false, "light"), (true, "dark")] {
                let choice = ui.radio_value(&mut wanted.is_dark, is_dark, name);
                describe(&choice, "The looks of the picture");
            }
        });
    });
    ui.horizontal(|ui| {
        let table = Checkbox::new(&mut wanted.with_table, "with the table");
        ui.add_enabled(is_picture, table);
        ui.checkbox(&mut wanted.with_note, "with the note");
    });
    let has_table = desk.project().write_up.with_table;
    ui.add_enabled_ui(is_picture && has_table, |ui| {
        columns_ui(ui, desk, &mut wanted.columns);
    });
    sets_ui(ui, desk, wanted);
    ui.add_enabled_ui(is_picture, |ui| drops_ui(ui, desk, wanted));
    ui.add_space(4.0);
    ui.checkbox(&mut wanted.carries_project, "with the project");
    remark(ui, CARRIED, form.palette.dim_text);
}

/// What stands on a page for the bench: the gear sets, what changes, or one of the jobs.
fn sheets_ui(ui: &mut Ui, desk: &Desk, is_picture: bool, form: &mut Form<'_>) {
    let workshop = &desk.project().workshop;
    let jobs = workshop.jobs();
    if jobs.is_empty() && workshop.plan.is_none() {
        return;
    }
    ui.add_enabled_ui(!is_picture, |ui| {
        ui.indent("sheets", |ui| {
            let mut sheet = desk.sheet.filter(|item| workshop.has(*item));
            let present = sheet;
            let sets = ui.radio_value(&mut sheet, None, "the gear sets");
            describe(&sets, "The page for the bench has ratios to be measured");
            if workshop.plan.is_some() {
                let plan = Some(BenchItem::Plan);
                let choice = ui.radio_value(&mut sheet, plan, "what changes");
                describe(&choice, "The plan of what changes as a list to tick");
            }
            for (number, job) in (1..).zip(jobs) {
                let title: String = job.title().chars().take(28).collect();
                let text = format!("job {number}: {title}");
                let choice = ui.radio_value(&mut sheet, Some(BenchItem::Job(job.id)), text);
                describe(
                    &choice,
                    "The sheet of this job, to be printed and written on",
                );
            }
            if sheet != present {
                form.actions.push(Action::Sheet(sheet));
            }
        });
    });
}

/// The views that the picture shows, one beneath the other; without an engine the speeds alone.
fn views_ui(ui: &mut Ui, desk: &Desk, wanted: &mut Views, form: &Form<'_>) {
    let lacks = desk.lacks_for_motion();
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        for view in View::all_with_tables() {
            let mut is_in = wanted.has(view);
            // What is shown already can be taken out.
            let can_be = is_in || lacks.is_none() || !view.needs_motion();
            let choice = ui.add_enabled(can_be, Checkbox::new(&mut is_in, view.name()));
            describe(&choice, "Whether the picture has this diagram");
            if choice.changed() {
                let others = wanted.as_slice().iter().copied();
                let others = others.filter(|other| *other != view);
                let views = Views::new(others.chain(is_in.then_some(view)));
                // Without any there is no picture: the last one stays.
                *wanted = views.unwrap_or_else(|| wanted.clone());
            }
        }
    });
    if let Some(lacks) = lacks {
        let text = format!("Effort, Run and Cruise: {lacks}.");
        remark(ui, &text, form.palette.dim_text);
    }
}

fn sets_ui(ui: &mut Ui, desk: &Desk, wanted: &mut WriteUp) {
    for candidate in desk.project().sets.iter().filter(|c| c.visible) {
        let mut is_in = !wanted.left_out.contains(&candidate.id);
        let choice = ui.checkbox(&mut is_in, short_name(candidate));
        describe(&choice, "Whether the write-up has this set");
        if choice.changed() {
            if is_in {
                wanted.left_out.remove(&candidate.id);
            } else {
                wanted.left_out.insert(candidate.id);
            }
        }
    }
}

/// As much of a set's name as finds room.
fn short_name(candidate: &Candidate) -> String {
    candidate.set.name.as_str().chars().take(32).collect()
}

/// Whose drops are written in the diagram: the usual ones, all, none, or those of one set of several.
fn drops_ui(ui: &mut Ui, desk: &Desk, wanted: &mut WriteUp) {
    let is_visible = |c: &&Candidate| c.visible;
    let sets: Vec<&Candidate> = desk.project().sets.iter().filter(is_visible).collect();
    let is_in = |set: SetId| !wanted.left_out.contains(&set) && sets.iter().any(|c| c.id == set);
    // Those of a set that is not there are the usual ones.
    let mut drops = match wanted.drops {
        Drops::Of(set) if !is_in(set) => Drops::Usual,
        drops => drops,
    };
    let present = drops;
    ui.add_space(4.0);
    ui.label("Drops in the diagram");
    ui.horizontal(|ui| {
        for (choice, name, meaning) in [
            (Drops::Usual, "usual", USUAL),
            (
                Drops::All,
                "of all",
                "The drops of every set, where they find room",
            ),
            (Drops::Hidden, "none", "No drops; the table has them"),
        ] {
            describe(&ui.radio_value(&mut drops, choice, name), meaning);
        }
    });
    if sets.len() > 1 {
        for candidate in &sets {
            let choice = Drops::Of(candidate.id);
            let radio = RadioButton::new(drops == choice, format!("of {}", short_name(candidate)));
            // One that is left out keeps its line: what stands beneath must not move under a click.
            let radio = ui.add_enabled(is_in(candidate.id), radio);
            describe(&radio, "The drops of this set alone");
            if radio.clicked() {
                drops = choice;
            }
        }
    }
    if drops != present {
        wanted.drops = drops;
    }
}

/// What the usual drops are.
const USUAL: &str = "The drops of one set or of two; of three those of the selected one, or of the \
                     first that is compared";

/// Which columns the table has: as many of the usual ones as find room, or those that are ticked.
fn columns_ui(ui: &mut Ui, desk: &Desk, wanted: &mut Option<BTreeSet<ColumnKey>>) {
    let offered = offered_columns(desk.project());
    let key = |column: &OfferedColumn| ColumnKey::new(column.key).ok();
    let mut are_usual = wanted.is_none();
    let choice = ui.checkbox(&mut are_usual, "usual columns");
    describe(&choice, "The table has as many columns as find room");
    if choice.changed() {
        let usual = offered.iter().filter(|column| column.is_usual);
        *wanted = (!are_usual).then(|| usual.filter_map(key).collect());
    }
    let Some(chosen) = wanted else { return };
    ui.indent("columns of the write-up", |ui| {
        for (column, key) in offered.iter().filter_map(|c| Some((c, key(c)?))) {
            let mut is_in = chosen.contains(&key);
            let choice = ui.checkbox(&mut is_in, &column.name);
            describe(&choice, "Whether the table has this column");
            if choice.changed() && is_in {
                chosen.insert(key);
            } else if choice.changed() {
                chosen.remove(&key);
            }
        }
    });
}

fn width_ui(ui: &mut Ui, present: &WriteUp, form: &mut Form<'_>) {
    let text = present.width.px().to_string();
    let field = Field {
        id: CellId::PictureWidth,
        name: "Width, pixels",
        text: &text,
        // Said beneath: a tooltip would cover figures of the picture beside it.
        hint: "",
    };
    form.field(ui, &field, &|text| {
        let number = parse_decimal(text).map_err(|error| error.to_string())?;
        if number.fract() != 0.0 || number > 1e6 {
            return Err("a width is a whole number of pixels".to_owned());
        }
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole, not negative, at most a million"
        )]
        let width = PictureWidth::from_px(number as u64).map_err(|error| error.to_string())?;
        Ok(Edit::WriteUp(WriteUp {
            width,
            ..present.clone()
        }))
    });
    remark(ui, "800 to 4000 pixels", form.palette.dim_text);
}
