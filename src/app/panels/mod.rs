//! Which panels does the window show, and where?

mod missing;
mod splitter;
mod workshop;

use crate::app::action::Action;
use crate::app::arrangement::{Part, Share, is_wide};
use crate::app::diagram_panel::{diagram_panel_ui, legend_ui};
use crate::app::example_row::example_row_ui;
use crate::app::focus::{FocusMap, Pane};
use crate::app::form::{Form, NAME_WIDTH};
use crate::app::heard::name_panel;
use crate::app::input::is_told_by_pointer;
use crate::app::load_row::load_row_ui;
use crate::app::menus::menu_bar_ui;
use crate::app::page::AppPage;
use crate::app::set_card::set_cards_ui;
use crate::app::status_bar::status_bar_ui;
use crate::app::table_panel::table_panel_ui;
use crate::app::technical::technical_ui;
use crate::app::vehicle_panel::vehicle_panel_ui;
use crate::app::view_state::ViewState;
use crate::app::views_row::views_row_ui;
use crate::app::window::App;
use crate::draw::palette::{Palette, Theme};
use egui::{CentralPanel, Frame, Panel, Rect, ScrollArea, Ui};
use missing::Missing;
use splitter::{Side, splitter_ui};

/// The room around a diagram, in points.
const MARGIN: f32 = 8.0;

impl App {
    /// Shows all panels; what they want done is added to `actions`.
    pub(in crate::app) fn panels_ui(&mut self, ui: &mut Ui, actions: &mut Vec<Action>) {
        let palette = Palette::of(Theme::of(ui.ctx()));
        let is_wide = is_wide(ui.max_rect().size());
        Panel::top("menu").show(ui, |ui| {
            name_panel(ui, "Menus");
            let mark = FocusMap::mark(ui);
            let (desk, settings) = (&self.lifecycle.desk, &self.lifecycle.settings);
            let page = self.view.page;
            menu_bar_ui(ui, (desk, settings, page), &mut self.menu_keys, actions);
            if !is_wide {
                parts_ui(ui, &self.view, actions);
            }
            self.focus.pane(Pane::Menu, mark, ui);
        });
        Panel::bottom("status").show(ui, |ui| {
            name_panel(ui, "Status line");
            let mark = FocusMap::mark(ui);
            status_bar_ui(ui, &self.lifecycle, &palette, actions);
            self.focus.pane(Pane::Status, mark, ui);
        });
        let is_pointed = match (is_wide, self.view.page) {
            (true, AppPage::Drive) => self.parts_together_ui(ui, &palette, actions),
            (true, AppPage::Workshop) => {
                self.workshop_together_ui(ui, &palette, actions);
                false
            }
            (false, _) => self.one_part_ui(ui, &palette, actions),
        };
        if self.view.pointed.is_some() && !is_pointed && is_told_by_pointer(ui) {
            actions.push(Action::Point(None));
        }
        if self.view.write_up_is_open {
            let is_in_reach = !self.has_dialog();
            let mut form = Form {
                drafts: &mut self.drafts,
                focus: &mut self.focus,
                palette: &palette,
                actions,
                name_width: NAME_WIDTH,
            };
            let desk = &self.lifecycle.desk;
            self.write_up.ui(ui.ctx(), desk, is_in_reach, &mut form);
        }
    }

    /// Forms, diagram and table side by side; whether the pointer is on the diagram or a row.
    fn parts_together_ui(
        &mut self,
        ui: &mut Ui,
        palette: &Palette,
        actions: &mut Vec<Action>,
    ) -> bool {
        let shares = self.lifecycle.settings.shares;
        let column = Panel::left("sets")
            .resizable(false)
            .exact_size(shares.column)
            .show(ui, |ui| {
                name_panel(ui, Part::Forms.text());
                self.forms_ui(ui, palette, actions);
            });
        self.column_splitter_ui(ui, (column.response.rect, Pane::Sets), actions);

        let height = ui.available_height();
        let table = Panel::bottom("table")
            .resizable(false)
            .exact_size(shares.table_height(height))
            .show(ui, |ui| {
                name_panel(ui, Part::Table.text());
                self.table_ui(ui, palette, actions)
            });
        let paper = Frame::new().fill(palette.page).inner_margin(MARGIN);
        let diagram = CentralPanel::default().frame(paper).show(ui, |ui| {
            name_panel(ui, Part::Diagram.text());
            self.diagram_ui(ui, true, palette, actions)
        });
        let mark = FocusMap::mark(ui);
        let name = "Height of the table";
        let beneath = table.response.rect;
        if let Some(growth) = splitter_ui(ui, &mut self.focus, beneath, Side::Top, name) {
            let share = shares.table + growth / height.max(1.0);
            actions.push(Action::Share(Share::Table(share)));
        }
        self.focus.pane(Pane::Table, mark, ui);
        table.inner || diagram.inner
    }

    /// The bar beside the left column, which is a part of the focus map's pane there.
    fn column_splitter_ui(
        &mut self,
        ui: &mut Ui,
        (column, pane): (Rect, Pane),
        actions: &mut Vec<Action>,
    ) {
        let mark = FocusMap::mark(ui);
        let name = "Width of the left column";
        if let Some(growth) = splitter_ui(ui, &mut self.focus, column, Side::Right, name) {
            let width = self.lifecycle.settings.shares.column + growth;
            actions.push(Action::Share(Share::Column(width)));
        }
        self.focus.pane(pane, mark, ui);
    }

    /// The part that is looked at; whether the pointer is on the diagram or a row.
    fn one_part_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) -> bool {
        let part_in_view = self.view.page.part(self.view.part);
        let parts = self.view.page.parts().iter();
        let hidden = parts.filter(|part| **part != part_in_view);
        for pane in hidden.flat_map(|part| part.panes()) {
            self.focus.hidden(*pane);
        }
        let paper = Frame::new().fill(palette.page).inner_margin(MARGIN);
        let shown = CentralPanel::default().frame(paper).show(ui, |ui| {
            name_panel(ui, part_in_view.text());
            match part_in_view {
                Part::Forms => {
                    self.forms_ui(ui, palette, actions);
                    false
                }
                Part::Diagram => self.diagram_ui(ui, false, palette, actions),
                Part::Table => self.table_ui(ui, palette, actions),
                Part::Jobs => {
                    self.jobs_ui(ui, palette, actions);
                    false
                }
                Part::Bench => {
                    self.bench_ui(ui, palette, actions);
                    false
                }
            }
        });
        shown.inner
    }

    /// The vehicle and the cards of the sets.
    fn forms_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) {
        let area = ScrollArea::vertical()
            .id_salt(("forms", self.desk().history.revision().document()))
            .auto_shrink(false);
        self.focus
            .scrolling(ui, area, Part::Forms.panes(), |ui, focus| {
                let mut form = Form {
                    drafts: &mut self.drafts,
                    focus,
                    palette,
                    actions,
                    name_width: NAME_WIDTH,
                };
                ui.add_space(4.0);
                let mark = FocusMap::mark(ui);
                example_row_ui(ui, &self.lifecycle.desk, &mut form);
                vehicle_panel_ui(ui, &self.lifecycle.desk, self.view.sought, &mut form);
                let project = self.lifecycle.desk.project();
                let looked_at = (self.view.shown, self.view.sought);
                technical_ui(ui, project, looked_at, &mut form);
                form.focus.pane(Pane::Vehicle, mark, ui);
                ui.add_space(8.0);
                let mark = FocusMap::mark(ui);
                set_cards_ui(ui, &self.lifecycle.desk, &self.view, &mut form);
                form.focus.pane(Pane::Sets, mark, ui);
            });
    }

    fn diagram_ui(
        &mut self,
        ui: &mut Ui,
        is_wide: bool,
        palette: &Palette,
        actions: &mut Vec<Action>,
    ) -> bool {
        let mark = FocusMap::mark(ui);
        let (desk, view) = (&self.lifecycle.desk, &self.view);
        let head = |ui: &mut Ui, actions: &mut Vec<Action>| {
            // Where parts take turns, the views stand beside their names.
            if is_wide {
                views_row_ui(ui, view.shown, false, actions);
                ui.separator();
            }
        };
        let is_on = if let Some(missing) = Missing::of(desk, view) {
            ui.horizontal(|ui| head(ui, actions));
            let links = missing.show(ui, actions);
            self.focus.enter_at_first_of(links.into_iter());
            false
        } else {
            let scene = desk.diagram(view.shown);
            legend_ui(ui, (scene, head), view, palette, actions);
            if view.shown.needs_motion() {
                load_row_ui(ui, desk.project(), actions);
            }
            diagram_panel_ui(ui, scene, view, palette, &mut self.focus, actions)
        };
        self.focus.pane(Pane::Diagram, mark, ui);
        is_on
    }

    fn table_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) -> bool {
        let mark = FocusMap::mark(ui);
        let desk = &self.lifecycle.desk;
        let is_on = table_panel_ui(ui, desk, &self.view, palette, &mut self.focus, actions);
        self.focus.pane(Pane::Table, mark, ui);
        is_on
    }
}

/// The names of the parts, of which a small window shows one, and those of the views.
fn parts_ui(ui: &mut Ui, view: &ViewState, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        // Close enough for all of them on one line of the smallest window.
        let spacing = ui.spacing_mut();
        spacing.item_spacing.x /= 2.0;
        spacing.button_padding.x *= 0.6;
        for part in view.page.parts() {
            let is_shown = *part == view.page.part(view.part);
            if ui.selectable_label(is_shown, part.text()).clicked() && !is_shown {
                actions.push(Action::Part(*part));
            }
        }
        if view.page == AppPage::Drive {
            ui.separator();
            views_row_ui(ui, view.shown, true, actions);
        }
    });
}
