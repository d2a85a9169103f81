//! What is looked at? A row of names above the diagram switches between the views.

use super::action::Action;
use crate::project::View;
use egui::Ui;

/// Shows the names of the views, of which one is looked at; those that belong to another one's table stand
/// behind it while that is looked at.
pub(super) fn views_row_ui(ui: &mut Ui, shown: View, actions: &mut Vec<Action>) {
    let is_offered = |view: &View| {
        let table = view.with_table();
        view.has_table() || (view.needs_motion() && table == shown.with_table())
    };
    for view in View::ALL.into_iter().filter(is_offered) {
        let name = ui.selectable_label(view == shown, words(view));
        let name = name.on_hover_text(view.meaning());
        let name = name.accessible_name(view.name());
        if name.clicked() && view != shown {
            actions.push(Action::Show(view));
        }
    }
}

/// What stands in the row: behind the view that it belongs to one need not say its name again.
fn words(view: View) -> &'static str {
    let name = view.name();
    name.split_once(": ").map_or(name, |(_, own)| own)
}
