//! The page of the workshop: the list of the jobs beside the one that is open.

use super::MARGIN;
use super::splitter::{Side, splitter_ui};
use crate::app::action::Action;
use crate::app::arrangement::{Part, Share};
use crate::app::focus::{FocusMap, Pane};
use crate::app::form::{Form, NAME_WIDTH};
use crate::app::heard::name_panel;
use crate::app::window::App;
use crate::app::workshop::{bench_ui, jobs_ui};
use crate::draw::palette::Palette;
use egui::{CentralPanel, Frame, Panel, ScrollArea, Ui};

impl App {
    /// The jobs and the open one side by side.
    pub(super) fn workshop_together_ui(
        &mut self,
        ui: &mut Ui,
        palette: &Palette,
        actions: &mut Vec<Action>,
    ) {
        let shares = self.lifecycle.settings.shares;
        let column = Panel::left("jobs")
            .resizable(false)
            .exact_size(shares.column)
            .show(ui, |ui| {
                name_panel(ui, Part::Jobs.text());
                self.jobs_ui(ui, palette, actions);
            });
        let mark = FocusMap::mark(ui);
        let name = "Width of the left column";
        let beside = column.response.rect;
        if let Some(growth) = splitter_ui(ui, &mut self.focus, beside, Side::Right, name) {
            actions.push(Action::Share(Share::Column(shares.column + growth)));
        }
        self.focus.pane(Pane::Jobs, mark, ui);
        let paper = Frame::new().fill(palette.page).inner_margin(MARGIN);
        CentralPanel::default().frame(paper).show(ui, |ui| {
            name_panel(ui, Part::Bench.text());
            self.bench_ui(ui, palette, actions);
        });
    }

    /// The list of the jobs.
    pub(super) fn jobs_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) {
        let area = ScrollArea::vertical().id_salt("jobs").auto_shrink(false);
        let (desk, open) = (&self.lifecycle.desk, self.view.open_at_bench);
        let planned_for = self.view.planned_for;
        let drafts = &mut self.drafts;
        self.focus.scrolling(ui, area, &[Pane::Jobs], |ui, focus| {
            let mut form = Form {
                drafts,
                focus,
                palette,
                actions,
                name_width: NAME_WIDTH,
            };
            let mark = FocusMap::mark(ui);
            jobs_ui(ui, desk, (open, planned_for), &mut form);
            form.focus.pane(Pane::Jobs, mark, ui);
        });
    }

    /// The job that is open.
    pub(super) fn bench_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) {
        let (desk, open) = (&self.lifecycle.desk, self.view.open_at_bench);
        let planned_for = self.view.planned_for;
        let area = ScrollArea::vertical()
            .id_salt(("at bench", open))
            .auto_shrink(false);
        let drafts = &mut self.drafts;
        self.focus.scrolling(ui, area, &[Pane::Bench], |ui, focus| {
            let mut form = Form {
                drafts,
                focus,
                palette,
                actions,
                name_width: NAME_WIDTH,
            };
            let mark = FocusMap::mark(ui);
            bench_ui(ui, desk, (open, planned_for), &mut form);
            form.focus.pane(Pane::Bench, mark, ui);
        });
    }
}
