//! A field of a dialog: all of it is selected when it is entered, Enter leaves it, and why it does not read is
//! told beside it and in its description.

use crate::app::cell::select_all;
use crate::app::heard::describe;
use crate::draw::palette::Palette;
use egui::{Id, Key, Label, Modifiers, Response, RichText, TextEdit, Ui};

/// A field to be shown.
pub(super) struct DialogField<'a> {
    /// The identity of its widget.
    pub id: Id,
    /// What it is called, for those who hear it.
    pub name: &'a str,
    /// Its width in points.
    pub width: f32,
    /// How many characters it takes.
    pub most_characters: usize,
    /// What stands in it, dim, while it is empty.
    pub hint: &'a str,
}

impl DialogField<'_> {
    /// The field; whether Enter was pressed in it.
    pub(super) fn show(self, ui: &mut Ui, text: &mut String) -> (Response, bool) {
        let has_focus = ui.memory(|memory| memory.has_focus(self.id));
        // Taken before the field sees it: the focus is never nowhere, so it never falls back on the text.
        let is_entered = has_focus && ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Enter));
        let field = TextEdit::singleline(text)
            .id(self.id)
            .hint_text(self.hint)
            .char_limit(self.most_characters);
        let size = [self.width, ui.spacing().interact_size.y];
        let response = ui.add_sized(size, field).accessible_name(self.name);
        if response.gained_focus() {
            select_all(ui, self.id, self.most_characters);
        }
        reveal(&response);
        (response, is_entered)
    }
}

/// Goes to a field, all of it selected.
pub(super) fn go_to(ui: &Ui, field: Id, most_characters: usize) {
    select_all(ui, field, most_characters);
    ui.memory_mut(|memory| memory.request_focus(field));
}

/// Scrolls to what has just got the focus.
pub(super) fn reveal(response: &Response) {
    if response.gained_focus() {
        response.scroll_to_me(None);
    }
}

/// Why a field does not read, beside or beneath it.
pub(super) fn problem_ui(ui: &mut Ui, field: &Response, problem: &str, palette: &Palette) {
    describe(field, problem);
    ui.add(Label::new(RichText::new(problem).color(palette.error)).wrap());
}
