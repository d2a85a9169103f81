//! A section of the left column: a heading that folds what stands beneath it.

use crate::app::heard::tell_folded;
use egui::collapsing_header::CollapsingState;
use egui::{CollapsingHeader, Id, IdSalt, Ui};

/// Shows a section that is open until it is folded; its heading then says in short what is in it.
/// It is unfolded where something in it must be seen.
pub(in crate::app) fn section_ui(
    ui: &mut Ui,
    name: &str,
    must_be_open: bool,
    in_short: impl FnOnce() -> String,
    contents: impl FnOnce(&mut Ui),
) {
    let salt = IdSalt::new(("section", name));
    // The toolkit keeps the state under an id of the header's own, known once it was shown.
    let header_id = ui.make_persistent_id(salt);
    let shown: Option<Id> = ui.data(|data| data.get_temp(header_id));
    let state = shown.and_then(|id| CollapsingState::load(ui.ctx(), id));
    let is_open = must_be_open || state.is_none_or(|state| state.is_open());
    let heading = if is_open {
        name.to_owned()
    } else {
        format!("{name}: {}", in_short())
    };
    let section = CollapsingHeader::new(heading)
        .id_salt(salt)
        .default_open(true)
        .open(must_be_open.then_some(true))
        .show_unindented(ui, contents);
    ui.data_mut(|data| data.insert_temp(header_id, section.header_response.id));
    tell_folded(&section);
}
