//! What is looked at? A row of names above the diagram switches between the views.

use super::action::Action;
use crate::project::View;
use egui::Ui;

/// Shows the names of the views, of which one is looked at. Those that belong to another one's table stand behind
/// all others while that is looked at: no name moves under the pointer. Where room is short their names are, too.
pub(super) fn views_row_ui(ui: &mut Ui, shown: View, is_short: bool, actions: &mut Vec<Action>) {
    let is_further = |view: &View| {
        let table = view.with_table();
        !view.has_table() && view.needs_motion() && table == shown.with_table()
    };
    let further = View::ALL.into_iter().filter(is_further);
    for view in View::all_with_tables().chain(further) {
        let words = if is_short { short(view) } else { view.name() };
        let name = ui.selectable_label(view == shown, words);
        let name = name.on_hover_text(view.meaning());
        let name = name.accessible_name(view.name());
        if name.clicked() && view != shown {
            actions.push(Action::Show(view));
        }
    }
}

/// A name without that of the view that it belongs to.
fn short(view: View) -> &'static str {
    let name = view.name();
    name.split_once(": ").map_or(name, |(_, own)| own)
}
