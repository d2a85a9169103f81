//! One field that is typed in.
//!
//! A text field over a draft. It previews while it reads, commits on leaving, and takes back on Esc.
//! Which key leaves it, and where to, the focus map decides.

use super::action::Action;
use super::drafts::{CellId, Draft, Drafts};
use super::focus::Keeps;
use super::form::{Field, Form, width_to_end};
use super::heard::describe;
use crate::letters::written;
use crate::project::Edit;
use egui::{EventFilter, Key, Modifiers, Response, TextEdit, Ui};
use std::time::Duration;

/// A field to be shown.
struct InputCell<'a> {
    /// Which field of the document it is.
    pub id: CellId,
    /// What it is called, for those who hear it.
    pub name: &'a str,
    /// What the document says.
    pub text: &'a str,
    /// What stands in it, dim, while it is empty.
    pub hint: &'a str,
    /// Its width in points.
    pub width: f32,
    /// How many lines it shows; with more than one, Enter begins another.
    pub lines: usize,
    /// The edit that a text means, or why it does not read.
    pub read: &'a dyn Fn(&str) -> Result<Edit, String>,
}

impl Form<'_> {
    /// A field within a row, its width in points; why its text does not read.
    pub(super) fn cell(
        &mut self,
        ui: &mut Ui,
        field: &Field<'_>,
        width: f32,
        read: &dyn Fn(&str) -> Result<Edit, String>,
    ) -> Option<String> {
        let cell = InputCell {
            id: field.id,
            name: field.name,
            text: field.text,
            hint: field.hint,
            width,
            lines: 1,
            read,
        };
        cell_ui(ui, self, &cell)
    }

    /// A field of several lines, the shown name above it: what is pasted there keeps its lines.
    pub(super) fn lines_field(
        &mut self,
        ui: &mut Ui,
        (shown, field): (&str, &Field<'_>),
        lines: usize,
        read: &dyn Fn(&str) -> Result<Edit, String>,
    ) {
        self.row_name(ui, shown, field.hint);
        let cell = InputCell {
            id: field.id,
            name: field.name,
            text: field.text,
            hint: field.hint,
            width: width_to_end(ui),
            lines,
            read,
        };
        let problem = cell_ui(ui, self, &cell);
        self.problem(ui, problem.as_deref());
    }
}

/// Shows a field and adds what it wants done to the form's actions.
///
/// Returns why what stands in it does not read, to be shown beside or beneath it.
fn cell_ui(ui: &mut Ui, form: &mut Form<'_>, cell: &InputCell<'_>) -> Option<String> {
    let id = cell.id.widget();
    let (has_focus, had_focus) = ui.memory(|m| (m.has_focus(id), m.had_focus_last_frame(id)));
    let escape = has_focus && ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
    form.drafts.end_outdated(cell.id, cell.text);
    let draft = form.drafts.get(cell.id);
    let mut text = draft.map_or_else(|| cell.text.to_owned(), |draft| draft.text.clone());
    let problem = draft.and_then(|draft| told_problem(ui, draft, has_focus));
    let is_entered = has_focus && !had_focus;
    let is_another = has_focus && form.drafts.is_another_than_shown(cell.id, &text);
    if is_entered || is_another {
        begin_anew(ui, id, &text);
    }
    let color = problem.as_ref().map(|_| form.palette.error);
    let (edit, keeps, most) = if cell.lines == 1 {
        let edit = TextEdit::singleline(&mut text);
        let most = if cell.id.takes_columns() {
            MOST_CHARACTERS_IN_LINES
        } else {
            MOST_CHARACTERS
        };
        (edit, Keeps::Line, most)
    } else {
        let edit = TextEdit::multiline(&mut text).desired_rows(cell.lines);
        (edit, Keeps::Lines, MOST_CHARACTERS_IN_LINES)
    };
    let edit = edit
        .id(id)
        .hint_text(cell.hint)
        .desired_width(cell.width)
        .text_color_opt(color)
        .event_filter(OWN_KEYS)
        .char_limit(most);
    let response = ui.add(edit).accessible_name(cell.name);
    form.focus.announce_field(id, keeps, text.chars().count());
    if response.has_focus() {
        form.drafts.shown_in_hand = Some((cell.id, text.clone()));
    }
    if is_entered || response.gained_focus() {
        // What was left without a word, such as a handle that went out of view, ends here.
        form.actions.push(Action::Commit);
    }
    select_by_click(ui, &response, &text, is_entered);
    if escape {
        give_up(ui, form, cell, id);
    } else {
        follow(form.drafts, cell, &response, &text, form.actions);
    }
    if problem.is_none() && text.is_empty() {
        describe(&response, cell.hint);
    }
    if let Some(problem) = &problem {
        ui.accesskit_node_builder(id, |node| node.set_description(problem.as_str()));
        response.on_hover_text(problem);
    }
    problem
}

/// A click into a field selects all of it, a double click the whole figure with its decimals.
fn select_by_click(ui: &Ui, response: &Response, text: &str, is_entered: bool) {
    if response.gained_focus() && !is_entered {
        begin_anew(ui, response.id, text);
    }
    if response.double_clicked() && !text.contains(' ') {
        select_all(ui, response.id, text.chars().count());
    }
}

/// The debounce of what is said beside a field: after this long without a key, in seconds, somebody
/// has finished typing or got stuck.
const PAUSE: f64 = 0.6;

/// Why a text does not read, once somebody has left it or paused: half a tyre size is no mistake.
/// Letters that the fonts lack are told by their numbers, lest boxes tell of boxes.
fn told_problem(ui: &Ui, draft: &Draft, has_focus: bool) -> Option<String> {
    let problem = draft.problem.clone()?;
    let left = draft.typed_at + PAUSE - ui.input(|i| i.time);
    if has_focus && left > 0.0 {
        ui.ctx()
            .request_repaint_after(Duration::from_secs_f64(left));
        return None;
    }
    Some(written(&problem))
}

/// More than any figure or name needs, few enough that a pasted book is no trouble.
const MOST_CHARACTERS: usize = 400;

/// One more than is read of what was pasted in lines, so that a longer text is refused and not cut.
const MOST_CHARACTERS_IN_LINES: usize = 200_001;

/// A field decides itself what Esc and the arrows do.
const OWN_KEYS: EventFilter = EventFilter {
    tab: false,
    horizontal_arrows: true,
    vertical_arrows: true,
    escape: true,
};

/// Esc: what was typed is forgotten and what it previewed is taken back; the field keeps the focus.
fn give_up(ui: &Ui, form: &mut Form<'_>, cell: &InputCell<'_>, id: egui::Id) {
    let before = form.drafts.get(cell.id).map(|draft| draft.before.clone());
    begin_anew(ui, id, before.as_deref().unwrap_or(cell.text));
    form.drafts.end(cell.id);
    form.actions.push(Action::Cancel);
}

/// Keeps draft and preview in step with the text; leaving the field commits.
fn follow(
    drafts: &mut Drafts,
    cell: &InputCell<'_>,
    response: &Response,
    text: &str,
    actions: &mut Vec<Action>,
) {
    if response.changed() {
        let now = response.ctx.input(|i| i.time);
        actions.push(typed(drafts, cell, text, now));
    }
    // Losing focus is told in two frames; in the second there is no readable draft any more.
    // A screen reader may write into a field that is not typed in at all.
    if response.lost_focus() || (response.changed() && !response.has_focus()) {
        finish(drafts, cell, actions);
    }
}

/// Takes note of a text and says what the document is to show meanwhile.
///
/// What does not read takes its preview back: of "4O00" the document must not keep the 4.
fn typed(drafts: &mut Drafts, cell: &InputCell<'_>, text: &str, now: f64) -> Action {
    let steps = drafts.steps;
    let draft = drafts.begin(cell.id, cell.name, cell.text);
    draft.typed_at = now;
    draft.steps = steps;
    if draft.before == text && !cell.id.takes_the_same_again() {
        drafts.end(cell.id);
        return Action::Cancel;
    }
    text.clone_into(&mut draft.text);
    match (cell.read)(text) {
        Ok(edit) => {
            draft.problem = None;
            Action::Preview(edit)
        }
        Err(problem) => {
            draft.problem = Some(problem);
            Action::Cancel
        }
    }
}

/// What reads is committed and its draft ends; what does not read stays.
fn finish(drafts: &mut Drafts, cell: &InputCell<'_>, actions: &mut Vec<Action>) {
    let reads = drafts.get(cell.id).is_some_and(|d| d.problem.is_none());
    if reads {
        drafts.end(cell.id);
    }
    if drafts.get(cell.id).is_some() || reads {
        actions.push(Action::Commit);
    }
}

/// A field that is entered has all its text selected, and its own undo begins with that.
fn begin_anew(ui: &Ui, id: egui::Id, text: &str) {
    select_all(ui, id, text.chars().count());
    if let Some(mut state) = TextEdit::load_state(ui.ctx(), id) {
        state.clear_undoer();
        state.store(ui.ctx(), id);
    }
}

/// Whether the toolkit's undo of a field still has another text than the one that stands there.
pub(super) fn has_text_undo(ctx: &egui::Context, id: egui::Id, text: &str) -> bool {
    let Some(state) = TextEdit::load_state(ctx, id) else {
        return false;
    };
    let mut undoer = state.undoer();
    let mut now = (
        state.cursor.char_range().unwrap_or_default(),
        text.to_owned(),
    );
    // Places of the caret are states of their own.
    while let Some(before) = undoer.undo(&now).cloned() {
        if before.1 != text {
            return true;
        }
        now = before;
    }
    false
}

/// Puts the caret of a field behind so many characters.
pub(super) fn put_caret(ctx: &egui::Context, id: egui::Id, place: usize) {
    use egui::text::{CCursor, CCursorRange};
    let mut state = TextEdit::load_state(ctx, id).unwrap_or_default();
    let at = CCursorRange::one(CCursor::new(place));
    state.cursor.set_char_range(Some(at));
    state.store(ctx, id);
}

/// Selects all of a field's text, of so many characters at most: what is typed takes its place.
pub(super) fn select_all(ui: &Ui, id: egui::Id, characters: usize) {
    use egui::text::{CCursor, CCursorRange};
    let mut state = TextEdit::load_state(ui.ctx(), id).unwrap_or_default();
    let all = CCursorRange::two(CCursor::new(0), CCursor::new(characters));
    state.cursor.set_char_range(Some(all));
    state.store(ui.ctx(), id);
}
