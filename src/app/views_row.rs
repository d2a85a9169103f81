//! What is looked at? A row of names above the diagram switches between the views.

use super::action::Action;
use super::commands::Command;
use crate::project::View;
use egui::Ui;

/// The views that the window shows: each has a table of its own.
const SHOWN: [View; 4] = View::WITH_TABLES;

/// Shows the names of the views, of which one is looked at.
pub(super) fn views_row_ui(ui: &mut Ui, shown: View, actions: &mut Vec<Action>) {
    for view in SHOWN {
        let name = ui.selectable_label(view == shown, view.name());
        let entry = command(view).and_then(Command::entry);
        let name = match entry {
            Some(entry) => name.on_hover_text(entry.tooltip),
            None => name,
        };
        if name.clicked() && view != shown {
            actions.push(Action::Show(view));
        }
    }
}

/// The command that shows a view; none where only the write-up has it.
fn command(view: View) -> Option<Command> {
    match view {
        View::Speed => Some(Command::ShowSpeed),
        View::Steps => None,
        View::Effort => Some(Command::ShowEffort),
        View::Run => Some(Command::ShowRun),
        View::Cruise => Some(Command::ShowCruise),
    }
}
