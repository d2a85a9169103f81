//! The table beneath the diagram: sets compared figure by figure.

use super::action::Action;
use super::commands::Command;
use super::desk::Desk;
use super::focus::{FocusMap, Pane, Walk};
use super::heard::name_menu;
use super::input::is_told_by_pointer;
use super::menus::{context_menu_ui, is_asked_for_by_key};
use super::view_state::ViewState;
use crate::chart::{GearOfSet, SetTable};
use crate::draw::palette::Palette;
use crate::draw::table::{
    DrawnRow, TableDrawn, TableLook, all_columns, essential_columns, fitting_table_ui, table_ui,
};
use crate::project::{Edit, Project, SetEdit, SetId};
use egui::{Id, Popup, Response, Role, ScrollArea, Sense, Ui, WidgetInfo};

/// How wide the words about a set may run where the sets stand side by side, in points.
const WORDS_BESIDE: f32 = 420.0;

/// Shows the table with what can be done to it; whether the pointer is on a row.
///
/// The row that has the focus counts as pointed at, until the pointer moves.
pub(super) fn table_panel_ui(
    ui: &mut Ui,
    desk: &Desk,
    view: &ViewState,
    palette: &Palette,
    focus: &mut FocusMap,
    actions: &mut Vec<Action>,
) -> bool {
    controls_ui(ui, view, actions);
    let table = desk.table();
    let sets: Vec<&SetTable> = table.sets.iter().collect();
    let width = ui.available_width() - ui.spacing().scroll.allocated_width();
    let mut look = TableLook {
        palette,
        text_size: 12.5,
        gear: view.pointed,
        columns: all_columns(table),
        wrap_width: width,
        with_remarks: true,
    };
    if view.side_by_side {
        look.columns = essential_columns(table);
        look.wrap_width = WORDS_BESIDE;
    }
    let mut rows = Rows::default();
    let area = ScrollArea::both().auto_shrink(false);
    focus.scrolling(ui, area, &[Pane::Table], |ui, focus| {
        let mark = FocusMap::mark(ui);
        if view.side_by_side {
            ui.horizontal_top(|ui| {
                for set in &table.sets {
                    let drawn = table_ui(ui, table, &[set], &look);
                    rows.show(ui, desk.project(), &drawn, actions);
                    ui.add_space(18.0);
                }
            });
        } else {
            let drawn = fitting_table_ui(ui, table, &sets, &look, width);
            rows.show(ui, desk.project(), &drawn, actions);
        }
        focus.block(Walk::One, mark, ui);
    });
    let Rows { hovered, focused } = rows;
    let wanted = if is_told_by_pointer(ui) {
        hovered.or(view.pointed)
    } else if focus.has_moved() && !Popup::is_any_open(ui.ctx()) {
        focused
    } else {
        view.pointed
    };
    if wanted != view.pointed {
        actions.push(Action::Point(wanted));
    }
    hovered.is_some()
}

fn controls_ui(ui: &mut Ui, view: &ViewState, actions: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        for (text, side_by_side) in [("One under another", false), ("Side by side", true)] {
            let is_chosen = view.side_by_side == side_by_side;
            if ui.selectable_label(is_chosen, text).clicked() {
                actions.push(Action::SideBySide(side_by_side));
            }
        }
        ui.separator();
        if let Some(entry) = Command::CopyTable.entry() {
            let button = ui.button(entry.text).on_hover_text(entry.tooltip);
            if button.clicked() {
                actions.push(Action::Run(Command::CopyTable));
            }
        }
    });
}

/// The rows that the pointer is on and that has the focus.
#[derive(Default)]
struct Rows {
    hovered: Option<GearOfSet>,
    focused: Option<GearOfSet>,
}

impl Rows {
    /// Shows the rows of a table.
    fn show(
        &mut self,
        ui: &Ui,
        project: &Project,
        drawn: &TableDrawn<'_>,
        actions: &mut Vec<Action>,
    ) {
        for row in &drawn.rows {
            let response = row_ui(ui, project, row, actions);
            if response.hovered() {
                self.hovered = Some(row.gear);
            }
            if response.has_focus() {
                self.focused = Some(row.gear);
            }
        }
    }
}

/// A row brings its line forward, is heard, can be copied cell by cell, and has its set shown in more
/// positions or fewer.
fn row_ui(ui: &Ui, project: &Project, row: &DrawnRow<'_>, actions: &mut Vec<Action>) -> Response {
    let id = Id::unique(("table row", row.gear));
    let response = ui.interact(row.rect, id, Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Row, true, row.spoken()));
    if response.clicked() {
        actions.push(Action::Select(row.gear.set));
    }
    let at = response.interact_pointer_pos();
    if response.secondary_clicked() {
        let cell = at.and_then(|at| row.cells.iter().find(|(rect, _)| rect.contains(at)));
        let text = cell.map(|(_, cell)| cell.text.clone()).unwrap_or_default();
        ui.data_mut(|d| d.insert_temp(id, text));
    }
    let is_by_key = is_asked_for_by_key(&response);
    if is_by_key {
        // No cell is pointed at.
        ui.data_mut(|d| d.remove_temp::<String>(id));
    }
    context_menu_ui(&response, is_by_key, |ui| {
        name_menu(ui, "Row menu");
        copy_menu_ui(ui, id, row, actions);
        positions_menu_ui(ui, project, row.gear.set, actions);
    });
    response
}

fn copy_menu_ui(ui: &mut Ui, id: Id, row: &DrawnRow<'_>, actions: &mut Vec<Action>) {
    let cell = ui.data(|d| d.get_temp::<String>(id)).unwrap_or_default();
    if !cell.is_empty() && ui.button(format!("Copy {cell}")).clicked() {
        actions.push(Action::Copy("a figure", cell));
        ui.close();
    }
    if ui.button("Copy row").clicked() {
        let texts: Vec<String> = row.cells.iter().map(|(_, cell)| cell.words()).collect();
        actions.push(Action::Copy("a row", texts.join("\t")));
        ui.close();
    }
    if ui.button("Copy table").clicked() {
        actions.push(Action::Run(Command::CopyTable));
        ui.close();
    }
}

/// Shows the other positions of a stage of the row's set, or no longer.
fn positions_menu_ui(ui: &mut Ui, project: &Project, set: SetId, actions: &mut Vec<Action>) {
    let stages = project.sets.get(set).map(|candidate| &candidate.set.stages);
    let several = stages.into_iter().flatten().enumerate();
    for (at, stage) in several.filter(|(_, stage)| stage.positions.len() > 1) {
        let mut shows_others = stage.shows_others;
        let text = format!("Show all positions of {}", stage.name);
        if ui.checkbox(&mut shows_others, text).changed() {
            let edit = SetEdit::StageShowsOthers(at, shows_others);
            actions.push(Action::Edit(Edit::Set(set, edit)));
            ui.close();
        }
    }
}
