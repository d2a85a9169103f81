//! A section of the left column: a heading that folds what stands beneath it.

use crate::app::heard::tell_folded;
use egui::collapsing_header::CollapsingState;
use egui::{
    AsIdSalt, CollapsingHeader, CollapsingResponse, Color32, Galley, Id, IdSalt, RichText,
    TextStyle, TextWrapMode, Ui, WidgetText,
};
use std::sync::Arc;

/// How a section stands until somebody folds or unfolds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum AtFirst {
    /// Everybody needs what is in it.
    Open,
    /// Somebody may do without it.
    Closed,
}

/// What is said of a heading or card under which something was left that does not read.
pub(in crate::app) const UNREAD: &str = "a field does not read";

/// Why a section is unfolded, and what its heading must say.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::app) struct Needs {
    /// Something in it must be seen.
    pub must_be_open: bool,
    /// The colour of errors, where something was left in it that does not read.
    pub error: Option<Color32>,
}

/// Shows a section; while it is folded its heading says in short what is in it, or that something in it
/// does not read.
pub(in crate::app) fn section_ui(
    ui: &mut Ui,
    (name, at_first): (&str, AtFirst),
    needs: Needs,
    in_short: impl FnOnce() -> String,
    contents: impl FnOnce(&mut Ui),
) {
    let salt = IdSalt::new(("section", name));
    let is_open = is_open(ui, salt, at_first, needs);
    let heading = match needs.error {
        _ if is_open => name.into(),
        Some(color) => RichText::new(format!("{name}: {UNREAD}")).color(color),
        None => format!("{name}: {}", in_short()).into(),
    };
    let section = CollapsingHeader::new(cut_to_room(ui, heading))
        .id_salt(salt)
        .default_open(at_first == AtFirst::Open)
        .open(needs.must_be_open.then_some(true))
        .show_unindented(ui, contents);
    remember(ui, salt, &section);
}

/// Shows a part of a section that few people need, folded at first; while it is folded its heading says
/// whether something in it does not read. Of its two names the first is shown, the other heard: it tells
/// this part from the same one elsewhere.
pub(in crate::app) fn part_ui(
    ui: &mut Ui,
    (salt, [shown, heard]): (impl AsIdSalt, [&str; 2]),
    needs: Needs,
    contents: impl FnOnce(&mut Ui),
) {
    let salt = IdSalt::new(("part", salt));
    let is_open = is_open(ui, salt, AtFirst::Closed, needs);
    let error = needs.error.filter(|_| !is_open);
    let told = |name: &str| match error {
        Some(_) => format!("{name}: {UNREAD}"),
        None => name.to_owned(),
    };
    let heading = match error {
        Some(color) => RichText::new(told(shown)).color(color),
        None => shown.into(),
    };
    let section = CollapsingHeader::new(cut_to_room(ui, heading))
        .id_salt(salt)
        .default_open(false)
        .open(needs.must_be_open.then_some(true))
        .show(ui, contents);
    remember(ui, salt, &section);
    let header = section.header_response.id;
    ui.accesskit_node_builder(header, |node| node.set_label(told(heard)));
}

/// Whether a section is unfolded just now.
fn is_open(ui: &Ui, salt: IdSalt, at_first: AtFirst, needs: Needs) -> bool {
    // The toolkit keeps the state under an id of the header's own, known once it was shown.
    let header_id = ui.make_persistent_id(salt);
    let shown: Option<Id> = ui.data(|data| data.get_temp(header_id));
    let state = shown.and_then(|id| CollapsingState::load(ui.ctx(), id));
    needs.must_be_open || state.map_or(at_first == AtFirst::Open, |state| state.is_open())
}

/// Remembers where the state of a section is kept, and tells whether it is folded.
fn remember<R>(ui: &Ui, salt: IdSalt, section: &CollapsingResponse<R>) {
    let header_id = ui.make_persistent_id(salt);
    ui.data_mut(|data| data.insert_temp(header_id, section.header_response.id));
    tell_folded(section);
}

/// A heading cut where the column ends: a longer one would push the column apart. Those who hear it
/// hear all of it.
fn cut_to_room(ui: &Ui, heading: RichText) -> Arc<Galley> {
    let beside = ui.spacing().indent + 2.0 * ui.spacing().button_padding.x;
    let room = ui.available_width() - beside;
    WidgetText::from(heading).into_galley(ui, Some(TextWrapMode::Truncate), room, TextStyle::Button)
}
