//! How is done what panels and commands ask for?

use super::action::Action;
use super::arrangement::Part;
use super::commands::Command;
use super::copies::copy_of;
use super::dialogs::finders::{Finder, WishedAt};
use super::dialogs::{Dialog, PasteAnswer, PasteDialog};
use super::drafts::{CellId, PlanCell, SetCell};
use super::file_picker::Purpose;
use super::focus::Pane;
use super::lifecycle::{After, Step};
use super::page::AppPage;
use super::pasting::{Place, with_pasted};
use super::place::counterpart;
use super::settings::ThemeChoice;
use super::typed::RatioForm;
use super::typed_as::TypedAs;
use super::view_state::Ranges;
use super::window::App;
use crate::gearing::{GearSet, Name};
use crate::project::examples::Start;
use crate::project::{Edit, Figure, PageForm, SetId, TypedFigure, View, WorkshopEdit};
use crate::sheet::text;
use crate::units::SpeedUnit;
use crate::workshop::{BenchItem, Job};
use egui::{Context, ThemePreference, ViewportCommand};
use std::sync::Arc;

impl App {
    /// Does one thing that a panel asked for.
    pub(super) fn perform(&mut self, ctx: &Context, action: Action) {
        if !self.desk().history.in_gesture() {
            self.view.typed.settle();
        }
        match action {
            Action::Edit(edit) => self.edit(edit),
            Action::Preview(edit) => self.preview(edit),
            Action::Commit => self.history().commit(),
            Action::Cancel => {
                self.lifecycle.hush();
                self.history().cancel();
                self.view.typed.take_back();
            }
            Action::Run(command) => self.run(ctx, command),
            Action::Select(set) => self.select(set),
            Action::OpenCard(set) => self.open_card(set),
            Action::Part(part) => self.view.part = part,
            Action::Share(share) => self.lifecycle.settings.shares.take(share),
            Action::Point(gear) => self.view.pointed = gear,
            Action::Page(page) => self.turn_page(ctx, page),
            Action::OpenAtBench(item) => self.open_at_bench(item),
            Action::Show(view) => self.show(ctx, view),
            Action::Seek(field) => self.seek(field),
            Action::Range(view, range) => self.view.ranges.set(view, range),
            Action::Open(path) => self.step(ctx, Step::Leave(After::Open(path))),
            Action::Example(at) => self.step(ctx, Step::Leave(After::Example(at))),
            Action::RatioForm(form) => self.type_as(form),
            Action::Typed(set, gear, typed_as) => {
                let goes_on = self.desk().history.in_gesture();
                self.view.typed.remember(set, gear, typed_as, goes_on);
            }
            Action::SideBySide(on) => {
                self.view.side_by_side = on;
                self.lifecycle.settings.side_by_side = on;
            }
            Action::Columns(columns) => {
                self.view.columns = columns.clone();
                self.lifecycle.settings.columns = columns;
            }
            Action::ColumnsOpened => self.view.columns_are_asked_for = false,
            Action::PageForm(form) => self.lifecycle.desk.page_form = form,
            Action::PlanFor(set) => self.view.planned_for = set,
            Action::Sheet(item) => self.lifecycle.desk.sheet = item,
            Action::PrintSheet(item) => self.print_sheet(item),
            Action::CopyPicture => self.copy_picture(ctx),
            Action::SavePicture => self.step(ctx, Step::AskForPath(Purpose::SavePicture, None)),
            Action::Copy(what, text) => {
                ctx.copy_text(text);
                self.say(format!("Copied {what}"));
            }
            Action::Find(finder) => self.find(finder),
            Action::Say(words) => self.say(words),
        }
    }

    /// One edit as a step of its own; what cannot be done is said.
    pub(super) fn edit(&mut self, edit: Edit) {
        self.lifecycle.hush();
        self.drafts.settle();
        self.history().commit();
        let edit = self.with_kept_figures(edit);
        if let Err(problem) = self.history().edit(&edit) {
            self.say(problem.to_string());
            return;
        }
        match edit {
            Edit::RemoveSet(_)
            | Edit::Workshop(
                WorkshopEdit::RemoveJob(_) | WorkshopEdit::Plan(None) | WorkshopEdit::RemovePart(_),
            ) => {
                self.say_how_it_comes_back();
            }
            Edit::Workshop(WorkshopEdit::Plan(Some(_))) => self.welcome_plan(),
            Edit::Workshop(WorkshopEdit::AddPart(_)) => self.welcome_part(),
            Edit::Workshop(WorkshopEdit::AddJob(_)) => self.welcome_job(),
            _ => {}
        }
    }

    /// Opens the job that has just come, to be named.
    fn welcome_job(&mut self) {
        let come = self.desk().project().workshop.jobs().last();
        if let Some(id) = come.map(|job| job.id) {
            self.open_at_bench(BenchItem::Job(id));
            self.focus.want(CellId::Job(id, Job::NAME).widget());
        }
    }

    /// Opens the plan that has just been begun, at its first field.
    fn welcome_plan(&mut self) {
        self.open_at_bench(BenchItem::Plan);
        self.focus.want(CellId::Plan(PlanCell::Currency).widget());
    }

    /// The part that has just come into the plan is to be named.
    fn welcome_part(&mut self) {
        let plan = self.desk().project().workshop.plan.as_ref();
        let come = plan.and_then(|plan| plan.parts().last());
        if let Some(id) = come.map(|part| part.id) {
            self.focus.want(CellId::Plan(PlanCell::Name(id)).widget());
        }
    }

    /// Opens the write-up with the sheet of a job or of the plan.
    fn print_sheet(&mut self, item: BenchItem) {
        let desk = &mut self.lifecycle.desk;
        desk.sheet = Some(item);
        if desk.page_form == PageForm::Picture {
            desk.page_form = PageForm::A4;
        }
        self.view.write_up_is_open = true;
    }

    /// Works on a job of the bench, or on the plan.
    fn open_at_bench(&mut self, item: BenchItem) {
        self.view.page = AppPage::Workshop;
        self.view.part = Part::Bench;
        self.view.open_at_bench = Some(item);
    }

    /// A whole set went with one key: what went is said, and how it comes back.
    fn say_how_it_comes_back(&mut self) {
        let named = self.desk().history.undoable().map(|change| change.named());
        if let Some(named) = named {
            self.say(format!("{named}; Undo brings it back"));
        }
    }

    /// What an edit would do so far; what cannot be done is said, and nothing is done of it.
    fn preview(&mut self, edit: Edit) {
        self.lifecycle.hush();
        let edit = self.with_kept_figures(edit);
        if let Err(problem) = self.history().preview(&edit) {
            // The field shows what cannot be done: the document must not keep a part of it.
            self.history().cancel();
            self.say(problem.to_string());
        }
    }

    /// The edit after which the figures stay that were typed in the place of gear ratios.
    fn with_kept_figures(&mut self, edit: Edit) -> Edit {
        self.view.typed.keep_to(self.lifecycle.desk.project());
        edit.keeping(self.view.typed.figures())
    }

    pub(super) fn say(&mut self, words: impl Into<String>) {
        self.lifecycle.say(words);
    }

    fn run(&mut self, ctx: &Context, command: Command) {
        self.follow_half_typed();
        if let Some(why) = command.why_not(self.desk()) {
            return self.say_why_not(command, why);
        }
        self.lifecycle.hush();
        self.drafts.settle();
        self.history().commit();
        self.drafts.steps = self.desk().history.steps();
        match command {
            Command::New => self.begin(ctx, Start::Car),
            Command::NewWithRanges => self.begin(ctx, Start::Ranges),
            Command::NewMotorcycle => self.begin(ctx, Start::Motorcycle),
            Command::Open => self.step(ctx, Step::Leave(After::Choose)),
            Command::Save => self.step(ctx, Step::Save(None)),
            Command::SaveAs => self.step(ctx, Step::AskForPath(Purpose::Save, None)),
            Command::WriteUp => self.view.write_up_is_open = !self.view.write_up_is_open,
            Command::Quit => ctx.send_viewport_cmd(ViewportCommand::Close),
            Command::Undo => self.undo(ctx),
            Command::Redo => self.redo(ctx),
            Command::CopySet => self.copy_set(),
            Command::TypeRatios => self.type_as(RatioForm::Gear),
            Command::TypeOverall => self.type_as(RatioForm::Overall),
            Command::TypeSpeeds => self.type_as(RatioForm::SpeedPer1000),
            Command::BestShifts => self.take_best_shifts(),
            Command::FindWish => self.find(Finder::Wish(self.view.open_card, WishedAt::Set)),
            Command::CountFitted => self.count(),
            Command::FillSteps => self.find(Finder::Fill(self.view.open_card)),
            Command::FindPair => self.find(Finder::Pair(self.view.open_card, None)),
            Command::RemoveSet => self.edit(Edit::RemoveSet(self.view.open_card)),
            Command::SwitchUnits => self.switch_units(),
            Command::PasteSet => {
                let dialog = PasteDialog::over(self.desk().project());
                self.dialog = Some(Dialog::Paste(Box::new(dialog)));
            }
            Command::CopyTable => self.copy_table(ctx),
            Command::OneUnderAnother => self.perform(ctx, Action::SideBySide(false)),
            Command::SideBySide => self.perform(ctx, Action::SideBySide(true)),
            Command::Columns => {
                // Of no other table are there columns to choose.
                if self.desk().figure_table(self.view.shown).is_some() {
                    self.show(ctx, View::Speed);
                }
                self.view.part = Part::Table;
                self.view.columns_are_asked_for = true;
            }
            Command::ShowWorkshop => self.turn_page(ctx, AppPage::Workshop),
            Command::ShowSpeed => self.show(ctx, View::Speed),
            Command::ShowEffort => self.show(ctx, View::Effort),
            Command::ShowRun => self.show(ctx, View::Run),
            Command::ShowCruise => self.show(ctx, View::Cruise),
            Command::ShowSpeedometer => self.show(ctx, View::Speedometer),
            Command::Fit => self.view.ranges = Ranges::default(),
            Command::NextSet => self.next_set(ctx),
            Command::ThemeLight => self.show_theme(ctx, ThemeChoice::Light),
            Command::ThemeDark => self.show_theme(ctx, ThemeChoice::Dark),
            Command::ThemeSystem => self.show_theme(ctx, ThemeChoice::System),
            Command::ZoomIn => egui::gui_zoom::zoom_in(ctx),
            Command::ZoomOut => egui::gui_zoom::zoom_out(ctx),
            Command::ZoomReset => ctx.set_zoom_factor(1.0),
            Command::Findings => self.dialog = Some(Dialog::Findings),
            Command::FindCommand => self.dialog = Some(Dialog::FindCommand(Box::default())),
            Command::Help => self.dialog = Some(Dialog::Help),
        }
    }

    /// A command was invoked by its keys, where nothing shows that it cannot be invoked just now.
    fn say_why_not(&mut self, command: Command, why: &str) {
        let text = command.entry().map_or("This", |entry| entry.text);
        let text = text.trim_end_matches('…');
        self.say(format!("{text} is not possible now: {why}"));
    }

    /// Looks at another diagram; in a small window the table of it stays in view.
    fn show(&mut self, ctx: &Context, view: View) {
        self.turn_page(ctx, AppPage::Drive);
        self.view.shown = view;
        if self.view.part != Part::Table {
            self.view.part = Part::Diagram;
        }
    }

    /// Looks at another page. What had the focus on the one before is gone, so the other one has it, unless it
    /// stands in what both pages have.
    fn turn_page(&mut self, ctx: &Context, page: AppPage) {
        if self.view.page == page {
            return;
        }
        self.view.page = page;
        let of_both = [Pane::Menu, Pane::Status, Pane::WriteUp];
        if !of_both.into_iter().any(|pane| self.focus.is_in(ctx, pane)) {
            let part = page.part(self.view.part);
            self.focus.go_into(part.panes().first().copied());
        }
    }

    /// Brings a field into view, to be typed in next.
    fn seek(&mut self, field: CellId) {
        self.view.page = AppPage::Drive;
        self.view.part = Part::Forms;
        self.view.sought = Some(field);
        self.focus.want(field.widget());
    }

    fn begin(&mut self, ctx: &Context, start: Start) {
        self.step(ctx, Step::Leave(After::New(start)));
    }

    /// From now on gears are typed in that form; what was typed before stands as it is.
    fn type_as(&mut self, form: RatioForm) {
        self.drafts.forget_ratios();
        self.view.ratio_form = form;
        self.view.typed.forget_figures();
        let words = form.text(self.desk().project().units);
        self.say(format!("Gears are typed as {words}"));
    }

    fn show_theme(&mut self, ctx: &Context, theme: ThemeChoice) {
        self.lifecycle.settings.theme = theme;
        ctx.set_theme(ThemePreference::from(theme));
    }

    fn copy_set(&mut self) {
        let id = self.view.open_card;
        let Some(candidate) = self.desk().project().sets.get(id) else {
            return;
        };
        let copy = Box::new(copy_of(&candidate.set, &self.desk().project().sets));
        self.add_set(id, copy);
    }

    /// Changes the set of the open card up where that is best, and says what it gains.
    fn take_best_shifts(&mut self) {
        // An edit of this very frame may have moved them.
        self.lifecycle.desk.refresh();
        let (set, unit) = (self.view.open_card, self.desk().project().units);
        let best = self.desk().best_shifts(set).map(|best| {
            let (changes, gain) = (best.changes_text(), best.gain_text(unit));
            (best.edit.clone(), format!("Changes up {changes}: {gain}"))
        });
        let Some((edit, words)) = best else { return };
        let before = self.desk().history.revision();
        self.edit(Edit::Set(set, edit));
        if self.desk().history.revision() != before {
            self.say(words);
        }
    }

    /// Adds a set behind another one.
    fn add_set(&mut self, behind: SetId, set: Box<GearSet>) {
        let place = self.desk().project().sets.place(behind).unwrap_or(0);
        let count = self.desk().project().sets.len();
        self.edit(Edit::AddSet(behind, set));
        let sets = &self.desk().project().sets;
        let added = sets.iter().nth(place + 1).map(|added| added.id);
        if let Some(added) = added.filter(|_| sets.len() > count) {
            self.welcome(added);
        }
    }

    /// Brings a set forward, its card too.
    fn select(&mut self, set: SetId) {
        self.view.page = AppPage::Drive;
        self.view.selected = set;
        self.view.open_card = set;
        self.view.reveal = Some(set);
    }

    /// Brings the next set forward. In the forms the focus goes along: to the field of the same place,
    /// else to the name.
    fn next_set(&mut self, ctx: &Context) {
        let next = self.view.next_set(self.desk().project());
        let focused = ctx.memory(egui::Memory::focused);
        let in_hand = focused.and_then(|field| self.drafts.field_in_hand(field));
        let field = match in_hand {
            Some(field) => counterpart(field, next, self.desk().project()),
            None => None,
        };
        let stays = [Pane::Menu, Pane::Diagram, Pane::Table, Pane::WriteUp]
            .into_iter()
            .any(|pane| self.focus.is_in(ctx, pane));
        self.select(next);
        if !stays {
            let name = CellId::Set(next, SetCell::Name);
            self.focus.want(field.unwrap_or(name).widget());
        }
    }

    /// Opens a card, to be named first.
    fn open_card(&mut self, set: SetId) {
        self.turn_to(set);
        self.type_name_of(set);
    }

    /// Opens a card, and brings its set forward unless it is hidden.
    pub(super) fn turn_to(&mut self, set: SetId) {
        self.view.page = AppPage::Drive;
        self.view.open_card = set;
        self.view.reveal = Some(set);
        let candidate = self.desk().project().sets.get(set);
        if candidate.is_some_and(|candidate| candidate.visible) {
            self.view.selected = set;
        }
    }

    /// The name of a set is typed in next.
    fn type_name_of(&mut self, set: SetId) {
        self.view.part = Part::Forms;
        self.focus.want(CellId::Set(set, SetCell::Name).widget());
    }

    /// Brings a set forward that has just come, to be named.
    fn welcome(&mut self, set: SetId) {
        self.select(set);
        self.type_name_of(set);
    }

    fn copy_table(&mut self, ctx: &Context) {
        // An edit of this very frame is in it.
        self.lifecycle.desk.refresh();
        let title = self.desk().project().title.as_ref().map(Name::as_str);
        let text = match self.desk().figure_table(self.view.shown) {
            Some(table) => text::figures(title, table),
            None => text::table(title, self.desk().table()),
        };
        self.perform(ctx, Action::Copy("the table as text", text));
    }

    /// Takes what is wanted of a pasted text over as one step.
    pub(super) fn take_pasted(&mut self, answer: &PasteAnswer) {
        let PasteAnswer::Take(taken) = answer else {
            return;
        };
        self.lifecycle.hush();
        self.drafts.settle();
        self.history().commit();
        self.view.typed.keep_to(self.lifecycle.desk.project());
        let figures = self.view.typed.figures();
        let selected = self.view.open_card;
        match with_pasted(self.desk().project(), selected, taken, &figures) {
            Ok(pasting) => {
                if taken.place == Place::Selected {
                    self.view.typed.forget_set(selected);
                }
                let told = pasting.told(self.desk().project(), taken.place);
                let figures = pasting.figures(taken);
                let first = pasting.placed.first().copied().unwrap_or(selected);
                self.history()
                    .replace(Arc::new(pasting.project), "paste gears");
                self.welcome(first);
                self.keep_as_typed(&figures);
                self.say(told);
            }
            Err(problem) => self.say(problem),
        }
    }

    /// Shows pasted figures in the form that they have, and keeps them as if they had been typed.
    fn keep_as_typed(&mut self, figures: &[TypedFigure]) {
        let form_of = |figure: Figure| match figure {
            Figure::Overall(_) => RatioForm::Overall,
            Figure::SpeedPer1000(..) => RatioForm::SpeedPer1000,
        };
        let Some(form) = figures.first().map(|typed| form_of(typed.figure)) else {
            return;
        };
        if form != self.view.ratio_form {
            self.type_as(form);
        }
        // Those of another form stand as the ratios that they come to.
        for typed in figures.iter().filter(|typed| form_of(typed.figure) == form) {
            let (set, gear) = (typed.set, typed.gear);
            let typed_as = TypedAs::Figure(typed.figure);
            self.view.typed.remember(set, gear, typed_as, false);
        }
    }

    fn switch_units(&mut self) {
        let other = match self.desk().project().units {
            SpeedUnit::Kmh => SpeedUnit::Mph,
            SpeedUnit::Mph => SpeedUnit::Kmh,
        };
        self.view.ranges = Ranges::default();
        self.edit(Edit::Units(other));
    }
}
