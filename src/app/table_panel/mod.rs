//! The table beneath the diagram: sets compared figure by figure.

mod columns;
mod headings;

pub(super) use columns::SeenColumns;

use super::action::Action;
use super::commands::Command;
use super::desk::Desk;
use super::dialogs::finders::{Finder, WishedAt};
use super::focus::{FocusMap, Keeps, Pane, Walk};
use super::heard::{add_usable, name_menu, tell_why_not};
use super::input::is_told_by_pointer;
use super::menus::{context_menu_ui, find_entries_ui, is_asked_for_by_key};
use super::view_state::ViewState;
use crate::chart::{GearOfSet, SetTable};
use crate::draw::palette::Palette;
use crate::draw::table::{
    Arrangement, Content, DrawnRow, Layout, RowOf, TableDrawn, TableLook, part_of_table,
};
use crate::project::{Edit, Project, SetEdit, SetId};
use egui::scroll_area::ScrollBarVisibility;
use egui::style::{ScrollFadeStyle, ScrollStyle};
use egui::{Button, Id, Popup, Pos2, Response, Role, ScrollArea, Sense, Ui, UiBuilder, WidgetInfo};
use headings::headings_ui;

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
    controls_ui(ui, desk, view, actions);
    // That there is more to the side is seen without the pointer.
    ui.spacing_mut().scroll = ScrollStyle {
        foreground_color: true,
        // It would lie over the head, which is not scrolled away.
        fade: ScrollFadeStyle {
            strength: 0.0,
            ..ScrollFadeStyle::default()
        },
        ..ScrollStyle::solid()
    };
    ui.visuals_mut().widgets.inactive.fg_stroke.color = palette.edge;
    let content = content(desk, view);
    // Of other positions only ratios are told.
    let is_of_ratios = desk.figure_table(view.shown).is_none();
    let positioned = is_of_ratios.then(|| desk.project());
    let look = TableLook {
        palette,
        text_size: 12.5,
        gear: view.pointed,
        arrangement: if view.side_by_side {
            Arrangement::SideBySide
        } else {
            Arrangement::OneUnderAnother
        },
        wrap_width: ui.available_width() - ui.spacing().scroll.allocated_width(),
        with_remarks: true,
    };
    let layout = Layout::of(ui, &content, &look);
    let mut rows = Rows::default();
    let area = ScrollArea::both()
        // Each table is looked at from where one was in it.
        .id_salt(view.shown.word())
        .auto_shrink(false)
        .scroll_bar_visibility(ScrollBarVisibility::VisibleWhenNeeded);
    let head = layout.head_height();
    let scrolled = (area, Pane::Table, head);
    focus.scrolling_under_head(ui, scrolled, |ui, focus| {
        let mark = FocusMap::mark(ui);
        let (all, _) = ui.allocate_exact_size(layout.size(), Sense::hover());
        let view_rect = ui.clip_rect();
        let drawn = part_of_table(ui, &layout, &look, all, view_rect);
        // What lies under the head is not there for the pointer.
        let mut beneath = ui.new_child(UiBuilder::new().max_rect(all));
        beneath.set_clip_rect(view_rect.with_min_y(drawn.beneath_head));
        rows.show(
            &beneath,
            (positioned, view.selected),
            &drawn,
            focus,
            actions,
        );
        if is_of_ratios {
            headings_ui(ui, desk.table(), &drawn);
        } else {
            // What is said of the ratios of a set stands in its card as well.
            say_words(&beneath, &drawn);
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

/// The table of what is looked at; that of ratios where it has none of its own, or something is not known
/// that it needs, since somebody is typing.
fn content<'d>(desk: &'d Desk, view: &ViewState) -> Content<'d> {
    if let Some(table) = desk.figure_table(view.shown) {
        return Content::of_figures(table);
    }
    let table = desk.table();
    let sets: Vec<&SetTable> = table.sets.iter().collect();
    Content::of_table(table, &sets, &view.columns.of(table))
}

fn controls_ui(ui: &mut Ui, desk: &Desk, view: &ViewState, actions: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        for (text, side_by_side) in [("One under another", false), ("Side by side", true)] {
            let is_chosen = view.side_by_side == side_by_side;
            if ui.selectable_label(is_chosen, text).clicked() {
                actions.push(Action::SideBySide(side_by_side));
            }
        }
        ui.separator();
        if desk.figure_table(view.shown).is_some() {
            let columns = add_usable(ui, false, Button::new("Columns"));
            tell_why_not(columns, "only the table of ratios has columns to choose");
        } else {
            columns::columns_menu_ui(ui, desk, view, actions);
        }
        if let Some(entry) = Command::CopyTable.entry() {
            let button = ui.button(entry.text).on_hover_text(entry.tooltip);
            if button.clicked() {
                actions.push(Action::Run(Command::CopyTable));
            }
        }
    });
}

/// Lets it be heard what is said of sets and of all figures.
fn say_words(ui: &Ui, drawn: &TableDrawn<'_>) {
    for (at, (rect, words)) in drawn.words.iter().enumerate() {
        let id = Id::unique(("words of the table", at));
        let response = ui.interact(*rect, id, Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, words));
    }
}

/// The rows that the pointer is on and that has the focus.
#[derive(Default)]
struct Rows {
    hovered: Option<GearOfSet>,
    focused: Option<GearOfSet>,
}

impl Rows {
    /// Shows the rows of a table; of several gears in a row that of the selected set is meant, unless
    /// the pointer is on another.
    fn show(
        &mut self,
        ui: &Ui,
        (positioned, selected): (Option<&Project>, SetId),
        drawn: &TableDrawn<'_>,
        focus: &mut FocusMap,
        actions: &mut Vec<Action>,
    ) {
        for row in &drawn.rows {
            let response = row_ui(ui, (positioned, selected), row, actions);
            focus.announce_keys(response.id, Keeps::Level);
            if response.hovered() {
                self.hovered = row
                    .of_at(response.hover_pos(), selected)
                    .and_then(|of| of.gear);
            }
            if response.has_focus() {
                self.focused = row.of_at(None, selected).and_then(|of| of.gear);
            }
        }
    }
}

/// A row brings its line forward, is heard, can be copied cell by cell, and has its set shown in more
/// positions or fewer.
fn row_ui(
    ui: &Ui,
    (positioned, selected): (Option<&Project>, SetId),
    row: &DrawnRow<'_>,
    actions: &mut Vec<Action>,
) -> Response {
    let id = Id::unique(("table row", row.key()));
    let response = ui.interact(row.rect, id, Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Row, true, row.spoken()));
    let at = response.interact_pointer_pos();
    if response.clicked()
        && let Some(of) = row.of_at(at, selected)
    {
        actions.push(Action::Select(of.set));
    }
    let is_by_key = is_asked_for_by_key(&response);
    if response.secondary_clicked() || is_by_key {
        // By key no cell is pointed at.
        let at = at.filter(|_| !is_by_key);
        let of = row.of_at(at, selected);
        ui.data_mut(|d| d.insert_temp(id, AskedFor { at, of }));
    }
    context_menu_ui(&response, is_by_key, |ui| {
        name_menu(ui, "Row menu");
        let asked_for = ui.data(|d| d.get_temp::<AskedFor>(id)).unwrap_or_default();
        copy_menu_ui(ui, asked_for.at, row, actions);
        if let Some(of) = asked_for.of {
            let at = of.gear.map_or(WishedAt::Set, |of| WishedAt::Gear(of.gear));
            find_entries_ui(ui, &[Finder::Wish(of.set, at)], actions);
        }
        if let Some((project, of)) = positioned.zip(asked_for.of) {
            positions_menu_ui(ui, project, of.set, actions);
        }
    });
    response
}

/// What the menu of a row was asked for: the place of the pointer, and whose figures stand there.
#[derive(Debug, Clone, Copy, Default)]
struct AskedFor {
    at: Option<Pos2>,
    of: Option<RowOf>,
}

fn copy_menu_ui(ui: &mut Ui, at: Option<Pos2>, row: &DrawnRow<'_>, actions: &mut Vec<Action>) {
    let text = row.text_at(at).filter(|text| !text.is_empty());
    if let Some(text) = text
        && ui.button(format!("Copy {text}")).clicked()
    {
        actions.push(Action::Copy("a figure", text.to_owned()));
        ui.close();
    }
    if ui.button("Copy row").clicked() {
        actions.push(Action::Copy("a row", row.texts().join("\t")));
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
