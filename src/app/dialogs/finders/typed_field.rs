//! A field of a finder: its name before it, and behind it why it does not read, or what holds now.

use crate::app::cell::select_all;
use crate::app::dialogs::field::{DialogField, problem_ui};
use crate::app::dialogs::modal::begin_with;
use crate::app::heard::describe;
use crate::draw::palette::Palette;
use egui::{Align, Id, Layout, Response, RichText, Ui, vec2};

/// More than any figure or tyre needs.
pub(super) const MOST_CHARACTERS: usize = 60;

/// A field to be shown.
pub(super) struct TypedField<'a> {
    pub(super) name: &'a str,
    /// Its width in points.
    pub(super) width: f32,
    /// What holds now, in words; empty where there is nothing to say.
    pub(super) now: &'a str,
}

/// The identity of a field, by its name.
pub(super) fn id_of(name: &str) -> Id {
    Id::unique(("field of a finder", name))
}

/// Begins a dialog with a field, all of it selected.
pub(super) fn begin_with_field(ui: &Ui, field: &Response) {
    if begin_with(ui, field) {
        select_all(ui, field.id, MOST_CHARACTERS);
    }
}

/// Shows a field in a row of its own; whether Enter was pressed in it.
pub(super) fn typed_ui(
    ui: &mut Ui,
    field: &TypedField<'_>,
    text: &mut String,
    problem: Option<&str>,
    palette: &Palette,
) -> (Response, bool) {
    ui.horizontal_wrapped(|ui| {
        ui.label(field.name);
        let (response, is_entered) = bare_ui(ui, field, "", text);
        match problem {
            Some(problem) => problem_ui(ui, &response, problem, palette),
            None if field.now.is_empty() => {}
            None => {
                describe(&response, field.now);
                ui.label(RichText::new(field.now).color(palette.dim_text));
            }
        }
        (response, is_entered)
    })
    .inner
}

/// What the name before a field in columns takes, in points.
const NAME_WIDTH: f32 = 140.0;

/// Shows a field within a row of several; why it does not read, its caller says beneath the row. Whether Enter
/// was pressed in it.
pub(super) fn in_columns_ui(
    ui: &mut Ui,
    field: &TypedField<'_>,
    text: &mut String,
) -> (Response, bool) {
    let size = vec2(NAME_WIDTH, ui.spacing().interact_size.y);
    ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
        ui.set_width(NAME_WIDTH);
        ui.label(field.name);
    });
    let (response, is_entered) = bare_ui(ui, field, field.now, text);
    if text.is_empty() && !field.now.is_empty() {
        describe(&response, field.now);
    }
    (response, is_entered)
}

fn bare_ui(ui: &mut Ui, field: &TypedField<'_>, hint: &str, text: &mut String) -> (Response, bool) {
    let shown = DialogField {
        id: id_of(field.name),
        name: field.name,
        width: field.width,
        most_characters: MOST_CHARACTERS,
        hint,
    };
    shown.show(ui, text)
}
