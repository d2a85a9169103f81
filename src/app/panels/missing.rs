//! What does a view lack, and by which link is it given? One sentence instead of an empty diagram.

use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::view_state::ViewState;
use crate::project::Edit;
use egui::{Align, Layout, Ui};

/// What a view lacks before it can show anything.
pub(in crate::app) struct Missing {
    sentence: &'static str,
    /// What the link says, and what it does.
    link: String,
    action: Action,
}

impl Missing {
    /// What the diagram lacks; none where there is something to be seen.
    pub(in crate::app) fn of(desk: &Desk, view: &ViewState) -> Option<Self> {
        let sets = &desk.project().sets;
        if sets.iter().any(|candidate| candidate.visible) {
            return None;
        }
        let hidden = sets.get(view.open_card).unwrap_or_else(|| sets.baseline());
        Some(Self {
            sentence: "All sets are hidden, so there is nothing to be drawn.",
            link: format!("Show {}", hidden.set.name),
            action: Action::Edit(Edit::Visible(hidden.id, true)),
        })
    }

    /// Shows the sentence and the link.
    pub(in crate::app) fn show(self, ui: &mut Ui, actions: &mut Vec<Action>) {
        let room = ui.available_height() * 0.4;
        ui.with_layout(Layout::top_down(Align::Center), |ui| {
            ui.add_space(room);
            ui.label(self.sentence);
            if ui.link(self.link).clicked() {
                actions.push(self.action);
            }
        });
    }
}
