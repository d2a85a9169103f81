//! The reading on the screen: each set with its tick, values that can be corrected, what is offered.

use super::reading::{Reading, SetReading};
use crate::app::dialogs::field::{self, DialogField, reveal};
use crate::app::heard::describe;
use crate::app::pasting::PasteTarget;
use crate::draw::palette::Palette;
use crate::gearing::Name;
use crate::import::gears::Offered;
use egui::{Grid, Id, Label, Response, RichText, Ui};

/// How wide the field of a value is, in points.
const VALUE_WIDTH: f32 = 130.0;

/// What the names, the fields and the gaps take beside what a value comes to, in points.
const ROOM_BESIDE_WORDS: f32 = VALUE_WIDTH + 190.0;

/// What a problem has to be told in at least.
const LEAST_ROOM_FOR_WORDS: f32 = 120.0;

/// More than any ratio needs.
const MOST_CHARACTERS: usize = 60;

/// Shows a reading; whether Enter was pressed in its last value.
pub(super) fn reading_ui(
    ui: &mut Ui,
    reading: &mut Reading,
    target: &PasteTarget<'_>,
    palette: &Palette,
) -> bool {
    let behind = reading.behind(target);
    let several = reading.sets.len() > 1;
    let count = reading.place(reading.sets.len(), 0);
    let room = (ui.available_width() - ROOM_BESIDE_WORDS).max(LEAST_ROOM_FOR_WORDS);
    let mut is_through = false;
    for at in 0..reading.sets.len() {
        let first = reading.place(at, 0);
        let set = &mut reading.sets[at];
        let heading = set.heading();
        let tick = ui.checkbox(&mut set.is_wanted, RichText::new(heading).strong());
        reveal(&tick);
        let values = set.values(&behind);
        let names = set.names();
        let of_set = several.then(|| set.called().to_owned());
        Grid::new(("pasted", at))
            .num_columns(3)
            .spacing([12.0, 3.0])
            .show(ui, |ui| {
                let spoken = |name: &str| match &of_set {
                    Some(set) => format!("{name}, {set}"),
                    None => name.to_owned(),
                };
                if name_ui(ui, set, at, &spoken("name"), target, palette) {
                    go_to(ui, first);
                }
                for (row, (name, value)) in names.iter().zip(values).enumerate() {
                    ui.label(name);
                    let place = first + row;
                    let (field, is_entered) = value_ui(ui, set, row, place, &spoken(name));
                    if is_entered {
                        is_through |= place + 1 == count;
                        go_to(ui, place + 1);
                    }
                    let told = match value {
                        Ok(value) => RichText::new(value).color(palette.dim_text),
                        Err(problem) => {
                            describe(&field, &problem);
                            RichText::new(problem).color(palette.error)
                        }
                    };
                    ui.scope(|ui| {
                        ui.set_max_width(room);
                        ui.add(Label::new(told).wrap());
                    });
                    ui.end_row();
                }
            });
        for remark in &set.set.remarks {
            ui.label(RichText::new(remark).small().color(palette.finding));
        }
        ui.add_space(4.0);
    }
    own_sets_ui(ui, reading, palette);
    offers_ui(ui, reading);
    is_through
}

/// The sets of one of the program's own tables, each with its tick.
fn own_sets_ui(ui: &mut Ui, reading: &mut Reading, palette: &Palette) {
    if !reading.own.is_empty() {
        ui.label("This is a table that Layshaft has written.");
    }
    for set in &mut reading.own {
        let heading = RichText::new(set.heading()).strong();
        let tick = ui.checkbox(&mut set.is_wanted, heading);
        reveal(&tick);
    }
    for remark in &reading.remarks {
        ui.label(RichText::new(remark).small().color(palette.finding));
    }
}

fn id_of(place: usize) -> Id {
    Id::unique(("pasted value", place))
}

/// The field of one value; whether Enter was pressed in it.
fn value_ui(
    ui: &mut Ui,
    set: &mut SetReading,
    row: usize,
    place: usize,
    name: &str,
) -> (Response, bool) {
    let text = &mut set.texts[row];
    field_ui(ui, id_of(place), text, MOST_CHARACTERS, name)
}

/// The row of the name; whether Enter was pressed in it.
fn name_ui(
    ui: &mut Ui,
    set: &mut SetReading,
    at: usize,
    spoken: &str,
    target: &PasteTarget<'_>,
    palette: &Palette,
) -> bool {
    ui.label("name");
    let id = Id::unique(("pasted name", at));
    let (field, is_entered) = field_ui(ui, id, &mut set.name, Name::MOST_CHARACTERS, spoken);
    match Name::new(&set.name) {
        Ok(_) if set.keeps_name() => {
            let from = format!("from set {}", target.number);
            ui.label(RichText::new(from).color(palette.dim_text));
        }
        Ok(_) => {}
        Err(problem) => {
            let problem = problem.to_string();
            describe(&field, &problem);
            ui.label(RichText::new(problem).color(palette.error));
        }
    }
    ui.end_row();
    is_entered
}

/// A field; whether Enter was pressed in it.
fn field_ui(
    ui: &mut Ui,
    id: Id,
    text: &mut String,
    most_characters: usize,
    name: &str,
) -> (Response, bool) {
    let field = DialogField {
        id,
        name,
        width: VALUE_WIDTH,
        most_characters,
        hint: "",
    };
    field.show(ui, text)
}

/// Goes to the value at that place, all of it selected.
fn go_to(ui: &Ui, place: usize) {
    field::go_to(ui, id_of(place), MOST_CHARACTERS);
}

/// What the text says beside the gears, each with a tick and the words it came from.
fn offers_ui(ui: &mut Ui, reading: &mut Reading) {
    if reading.offers.is_empty() && reading.title.is_none() {
        return;
    }
    ui.label("Also in the text:");
    if let Some(offered) = &mut reading.title {
        let text = format!("title \"{}\"", offered.title);
        let tick = ui.checkbox(&mut offered.is_wanted, text);
        reveal(&tick);
    }
    for offered in &mut reading.offers {
        let value = match offered.offer.offered {
            Offered::Tyre(tyre) => tyre.to_string(),
            Offered::Redline(speed) | Offered::ShiftPoint(speed) => format!("{} rpm", speed.rpm()),
        };
        let name = offered.offer.offered.name();
        let words = &offered.offer.words;
        let text = format!("{name} {value} (\"{words}\")");
        let tick = ui.checkbox(&mut offered.is_wanted, text);
        reveal(&tick);
    }
}
