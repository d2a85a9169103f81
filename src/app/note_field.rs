//! The field of the note: several lines, with an undo of their own until the field is left.

use super::action::Action;
use super::cell::put_caret;
use super::drafts::CellId;
use super::focus::Keeps;
use super::form::{Form, width_to_end};
use super::input::pressed;
use super::text_history::TextHistory;
use super::typed;
use crate::project::{Edit, Note, Project};
use egui::{Context, Event, Id, Key, Modifiers, TextEdit, Ui};

/// Shows the note.
pub(super) fn note_field_ui(ui: &mut Ui, project: &Project, form: &mut Form<'_>) {
    let id = CellId::Note.widget();
    let is_followed = form.drafts.note.as_ref().is_some_and(|history| {
        // While it is typed in, the note keeps the blank ends that the document leaves out.
        history.text().trim_end() == project.note.as_str()
    });
    if !is_followed {
        form.drafts.note = None;
    }
    let is_turned = ui.memory(|m| m.has_focus(id)) && turn(ui.ctx(), id, form);
    let before = form.drafts.note.as_ref().map(TextHistory::text);
    let mut text = before.unwrap_or(project.note.as_str()).to_owned();
    let edit = TextEdit::multiline(&mut text)
        .id(id)
        .desired_rows(3)
        .desired_width(width_to_end(ui))
        .char_limit(Note::MOST_CHARACTERS)
        .hint_text("A note for the write-up");
    let response = ui.add(edit).accessible_name("Note");
    let characters = text.chars().count();
    form.focus.announce_field(id, Keeps::Lines, characters);
    if response.gained_focus() {
        form.actions.push(Action::Commit);
    }
    if response.changed() || is_turned {
        // As the document has it.
        let text = text.replace("\r\n", "\n");
        match typed::note(&text) {
            Ok(note) => {
                form.actions.push(Action::Preview(Edit::Note(note)));
                let now = ui.input(|i| i.time);
                let begin = || TextHistory::new(project.note.as_str());
                form.drafts.note.get_or_insert_with(begin).typed(&text, now);
            }
            Err(problem) => form.actions.push(Action::Say(problem)),
        }
    }
    if response.lost_focus() {
        form.drafts.note = None;
        form.actions.push(Action::Commit);
    }
}

/// Takes back or brings back what the keys of this frame ask for; whether the text is another.
///
/// The toolkit's own undo keeps a text only when a frame happens to come a second after the last key.
fn turn(ctx: &Context, id: Id, form: &mut Form<'_>) -> bool {
    let mut caret = None;
    for ask in taken(ctx) {
        let history = form.drafts.note.as_mut();
        let turned = history.and_then(|history| match ask {
            Ask::Undo => history.undo(),
            Ask::Redo => history.redo(),
        });
        caret = turned.map(|(_, caret)| caret).or(caret);
    }
    if let Some(caret) = caret {
        put_caret(ctx, id, caret);
    }
    caret.is_some()
}

#[derive(Clone, Copy)]
enum Ask {
    Undo,
    Redo,
}

/// The keys of this frame that undo and redo in a text, in their order; they are used up.
fn taken(ctx: &Context) -> Vec<Ask> {
    let ask = |event: &Event| {
        let (key, modifiers) = pressed(event)?;
        let is_shifted = modifiers.matches_logically(Modifiers::COMMAND | Modifiers::SHIFT);
        match key {
            Key::Z if modifiers.shift && is_shifted => Some(Ask::Redo),
            Key::Z if modifiers.matches_logically(Modifiers::COMMAND) => Some(Ask::Undo),
            Key::Y if modifiers.matches_logically(Modifiers::COMMAND) => Some(Ask::Redo),
            _ => None,
        }
    };
    let mut asks = Vec::new();
    ctx.input_mut(|input| {
        input.events.retain(|event| {
            let asked = ask(event);
            asks.extend(asked);
            asked.is_none()
        });
    });
    asks
}
