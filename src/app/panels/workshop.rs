//! The page of the workshop: the list of the jobs beside the one that is open.

use super::MARGIN;
use crate::app::action::Action;
use crate::app::arrangement::Part;
use crate::app::desk::Desk;
use crate::app::focus::{FocusMap, Pane};
use crate::app::form::{Form, NAME_WIDTH};
use crate::app::heard::name_panel;
use crate::app::window::App;
use crate::app::workshop::{bench_ui, jobs_ui, strip_ui};
use crate::draw::palette::Palette;
use crate::project::SetId;
use crate::workshop::BenchItem;
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
        self.column_splitter_ui(ui, (column.response.rect, Pane::Jobs), actions);
        let paper = Frame::new().fill(palette.page).inner_margin(MARGIN);
        CentralPanel::default().frame(paper).show(ui, |ui| {
            name_panel(ui, Part::Bench.text());
            self.bench_ui(ui, palette, actions);
        });
    }

    /// The list of the jobs.
    pub(super) fn jobs_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) {
        let area = ScrollArea::vertical().id_salt("jobs");
        self.scrolling_form_ui(ui, (area, Pane::Jobs), palette, actions, jobs_ui);
    }

    /// The job that is open.
    pub(super) fn bench_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) {
        strip_ui(ui, &self.lifecycle.desk, self.view.open_at_bench);
        let area = ScrollArea::vertical().id_salt(("at bench", self.view.open_at_bench));
        self.scrolling_form_ui(ui, (area, Pane::Bench), palette, actions, bench_ui);
    }

    /// A pane of the page, which scrolls, by what shows it.
    fn scrolling_form_ui(
        &mut self,
        ui: &mut Ui,
        (area, pane): (ScrollArea, Pane),
        palette: &Palette,
        actions: &mut Vec<Action>,
        contents: Contents,
    ) {
        let (desk, drafts) = (&self.lifecycle.desk, &mut self.drafts);
        let looked_at = (self.view.open_at_bench, self.view.planned_for);
        let area = area.auto_shrink(false);
        self.focus.scrolling(ui, area, &[pane], |ui, focus| {
            let mut form = Form {
                drafts,
                focus,
                palette,
                actions,
                name_width: NAME_WIDTH,
            };
            let mark = FocusMap::mark(ui);
            contents(ui, desk, looked_at, &mut form);
            form.focus.pane(pane, mark, ui);
        });
    }
}

/// Shows a pane of the page: what is open at the bench, and for which set the plan is looked at.
type Contents = fn(&mut Ui, &Desk, (Option<BenchItem>, SetId), &mut Form<'_>);
