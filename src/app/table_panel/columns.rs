//! Which columns has the table in the window? A menu in which one ticks them.

use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::focus::layers::enter;
use crate::app::heard::name_menu;
use crate::app::view_state::ViewState;
use crate::chart::Table;
use crate::chart::table::{OfferedColumn, offered_columns};
use crate::draw::theme;
use egui::containers::menu::{MenuButton, MenuConfig};
use egui::{Id, Popup, PopupCloseBehavior, Ui};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// The columns that are looked at, by their keys; none where it is all.
///
/// A key that no column has (any more) means nothing, and stays.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct SeenColumns(Option<BTreeSet<String>>);

impl SeenColumns {
    /// The columns of a table that are seen; the first names the gears.
    pub(in crate::app) fn of(&self, table: &Table) -> Vec<usize> {
        let columns = table.columns.iter().enumerate();
        let seen = columns.filter(|(at, column)| *at == 0 || self.has(column.definition.key));
        seen.map(|(at, _)| at).collect()
    }

    fn has(&self, key: &str) -> bool {
        self.0.as_ref().is_none_or(|keys| keys.contains(key))
    }

    fn usual(offered: &[OfferedColumn]) -> Self {
        let usual = offered.iter().filter(|column| column.is_usual);
        Self(Some(usual.map(|column| column.key.to_owned()).collect()))
    }

    /// With one column more, or one fewer.
    fn with(&self, offered: &[OfferedColumn], key: &str, is_seen: bool) -> Self {
        let all = || offered.iter().map(|column| column.key.to_owned()).collect();
        let mut keys: BTreeSet<String> = self.0.clone().unwrap_or_else(all);
        if is_seen {
            keys.insert(key.to_owned());
        } else {
            keys.remove(key);
        }
        Self(Some(keys).filter(|keys| !offered.iter().all(|column| keys.contains(column.key))))
    }
}

/// Shows the button of the menu; opens it where that was asked for.
pub(super) fn columns_menu_ui(
    ui: &mut Ui,
    desk: &Desk,
    view: &ViewState,
    actions: &mut Vec<Action>,
) {
    let offered = offered_columns(desk.project());
    let seen = &view.columns;
    // Several columns are ticked one after the other.
    let stays_open = MenuConfig::new().close_behavior(PopupCloseBehavior::CloseOnClickOutside);
    let entering = Id::unique("the columns are entered");
    let (button, _) = MenuButton::new("Columns").config(stays_open).ui(ui, |ui| {
        name_menu(ui, "Columns");
        theme::with_edges(ui);
        for (text, columns) in [
            ("All columns", SeenColumns::default()),
            ("Usual columns", SeenColumns::usual(&offered)),
        ] {
            if ui.radio(*seen == columns, text).clicked() {
                actions.push(Action::Columns(columns));
            }
        }
        ui.separator();
        for column in &offered {
            let mut is_seen = seen.has(column.key);
            if ui.checkbox(&mut is_seen, &column.name).changed() {
                let columns = seen.with(&offered, column.key, is_seen);
                actions.push(Action::Columns(columns));
            }
        }
        if ui.data(|d| d.get_temp::<bool>(entering).is_some()) && enter(ui) {
            ui.data_mut(|d| d.remove::<bool>(entering));
        }
    });
    if view.columns_are_asked_for {
        Popup::open_id(ui.ctx(), Popup::default_response_id(&button));
        button.request_focus();
        ui.data_mut(|d| d.insert_temp(entering, true));
        ui.request_repaint();
        actions.push(Action::ColumnsOpened);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;

    #[test]
    fn all_columns_are_all_again_once_each_is_ticked() {
        let offered = offered_columns(&EXAMPLES[0].project().unwrap());
        let all = SeenColumns::default();
        let fewer = all.with(&offered, "step", false);
        assert!(!fewer.has("step") && fewer.has("ratio"));
        assert_eq!(fewer.with(&offered, "step", true), all);
    }

    #[test]
    fn the_usual_columns_have_the_drop_and_leave_out_details() {
        let offered = offered_columns(&EXAMPLES[0].project().unwrap());
        let usual = SeenColumns::usual(&offered);
        assert!(usual.has("rpm_drop") && usual.has("shift_rpm"));
        assert!(!usual.has("speed_per_1000_rpm_kmh"));
    }
}
