//! A section of the left column: a heading that folds what stands beneath it.

use crate::app::heard::tell_folded;
use egui::collapsing_header::CollapsingState;
use egui::{CollapsingHeader, Galley, Id, IdSalt, TextStyle, TextWrapMode, Ui, WidgetText};
use std::sync::Arc;

/// How a section stands until somebody folds or unfolds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum AtFirst {
    /// Everybody needs what is in it.
    Open,
    /// Somebody may do without it.
    Closed,
}

/// Shows a section; while it is folded its heading says in short what is in it. It is unfolded where
/// something in it must be seen.
pub(in crate::app) fn section_ui(
    ui: &mut Ui,
    (name, at_first): (&str, AtFirst),
    must_be_open: bool,
    in_short: impl FnOnce() -> String,
    contents: impl FnOnce(&mut Ui),
) {
    let is_open_at_first = at_first == AtFirst::Open;
    let salt = IdSalt::new(("section", name));
    // The toolkit keeps the state under an id of the header's own, known once it was shown.
    let header_id = ui.make_persistent_id(salt);
    let shown: Option<Id> = ui.data(|data| data.get_temp(header_id));
    let state = shown.and_then(|id| CollapsingState::load(ui.ctx(), id));
    let is_open = must_be_open || state.map_or(is_open_at_first, |state| state.is_open());
    let heading = if is_open {
        name.to_owned()
    } else {
        format!("{name}: {}", in_short())
    };
    let section = CollapsingHeader::new(cut_to_room(ui, heading))
        .id_salt(salt)
        .default_open(is_open_at_first)
        .open(must_be_open.then_some(true))
        .show_unindented(ui, contents);
    ui.data_mut(|data| data.insert_temp(header_id, section.header_response.id));
    tell_folded(&section);
}

/// A heading cut where the column ends: a longer one would push the column apart. Those who hear it
/// hear all of it.
fn cut_to_room(ui: &Ui, heading: String) -> Arc<Galley> {
    let beside = ui.spacing().indent + 2.0 * ui.spacing().button_padding.x;
    let room = ui.available_width() - beside;
    WidgetText::from(heading).into_galley(ui, Some(TextWrapMode::Truncate), room, TextStyle::Button)
}
