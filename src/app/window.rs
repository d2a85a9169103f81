//! What does the window hold, and what does it do in each frame?
//!
//! `logic` settles what must work while the window is hidden (closing, answers of dialogs); `ui`
//! shows the panels and collects what they want done; `performing` does it.

use super::action::Action;
use super::commands::{self, Command};
use super::desk::Desk;
use super::diagram_panel::diagram_panel_ui;
use super::dialogs::{After, Dialog, PathAnswer, help_ui, paste_dialog_ui, path_dialog_ui};
use super::drafts::Drafts;
use super::file_picker::{Answer, FilePicker, SystemPicker};
use super::form::Form;
use super::keys_in_order::held_back;
use super::menu_bar::menu_bar_ui;
use super::safety::Safety;
use super::set_card::set_cards_ui;
use super::settings::{self, Settings};
use super::status_bar::status_bar_ui;
use super::table_panel::table_panel_ui;

use super::vehicle_panel::vehicle_panel_ui;
use super::view_state::ViewState;
use super::write_up::{Preview, write_up_ui};
use crate::draw::palette::{Palette, Theme};
use crate::gearing::GearId;
use crate::project::{Candidates, Disk, FileSystem, Project, SetId};
use egui::{CentralPanel, Frame, Panel, ScrollArea, ThemePreference, Ui, ViewportCommand};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What somebody who sees the window for the first time wants to know.
const FIRST_WORDS: &str =
    "Point at the diagram to read engine speeds; drag a round handle to move a shift point";

/// What the window reaches outside itself; tests put their own in place.
pub struct Surroundings {
    /// Where files are.
    pub file_system: Arc<dyn FileSystem>,
    /// How a file is chosen.
    pub picker: Box<dyn FilePicker>,
    /// The folder that settings are kept in; without one, nothing is remembered.
    pub settings_folder: Option<PathBuf>,
}

impl Default for Surroundings {
    fn default() -> Self {
        Self {
            file_system: Arc::new(Disk),
            picker: Box::new(SystemPicker::default()),
            settings_folder: settings::folder(),
        }
    }
}

impl std::fmt::Debug for Surroundings {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Surroundings").finish_non_exhaustive()
    }
}

/// The window.
#[derive(Debug)]
pub struct App {
    pub(super) desk: Desk,
    pub(super) drafts: Drafts,
    pub(super) view: ViewState,
    pub(super) dialog: Option<Dialog>,
    pub(super) message: String,
    pub(super) surroundings: Surroundings,
    /// Whether the open file would lose comments or layout when saved.
    pub(super) has_other_form: bool,
    /// Whether closing was agreed to.
    pub(super) may_close: bool,
    pub(super) settings: Settings,
    written_settings: Settings,
    window_size: (f32, f32),
    preview: Preview,
    pub(super) safety: Safety,
    shown_title: String,
    /// What was pressed in a slow frame and waits for the next.
    held_back: Vec<egui::Event>,
}

impl App {
    /// A window on a project; `file` is where it stands, if it stands anywhere.
    pub fn new(project: Project, file: Option<PathBuf>, surroundings: Surroundings) -> Self {
        let settings = match &surroundings.settings_folder {
            Some(folder) => Settings::read(&*surroundings.file_system, folder),
            None => Settings::default(),
        };
        Self {
            view: ViewState {
                side_by_side: settings.side_by_side,
                ..ViewState::of(&project)
            },
            desk: Desk::new(project, file),
            drafts: Drafts::default(),
            dialog: None,
            message: FIRST_WORDS.to_owned(),
            surroundings,
            has_other_form: false,
            may_close: false,
            window_size: settings.window,
            written_settings: settings.clone(),
            settings,
            preview: Preview::default(),
            safety: Safety::default(),
            shown_title: String::new(),
            held_back: Vec::new(),
        }
    }

    /// The document, for those who look from outside.
    pub fn desk(&self) -> &Desk {
        &self.desk
    }

    /// The last message.
    pub fn message(&self) -> &str {
        &self.message
    }

    /// The gear that is brought out in diagram and table, if any.
    pub fn pointed(&self) -> Option<(SetId, GearId)> {
        self.view.pointed
    }

    /// What must be settled even while the window is hidden.
    fn settle(&mut self, ctx: &egui::Context) {
        while let Some(answer) = self.surroundings.picker.poll() {
            self.take_answer(ctx, answer);
        }
        let wants_to_close = ctx.input(|i| i.viewport().close_requested());
        if wants_to_close && !self.may_close {
            self.drafts.settle();
            self.desk.history.commit();
            if self.desk.history.is_unsaved() {
                ctx.send_viewport_cmd(ViewportCommand::CancelClose);
                ctx.send_viewport_cmd(ViewportCommand::Minimized(false));
                ctx.send_viewport_cmd(ViewportCommand::Focus);
                self.dialog = Some(Dialog::Unsaved(After::Quit));
                ctx.request_repaint();
            }
        }
        self.show_title(ctx);
        self.keep_settings();
        self.safety.follow(&self.desk);
    }

    /// Gives the context what is remembered of its looks.
    pub fn dress(&self, ctx: &egui::Context) {
        ctx.set_theme(ThemePreference::from(self.settings.theme));
        ctx.set_zoom_factor(self.settings.zoom);
    }

    /// The width and height of the window when it was last closed, in points.
    pub fn remembered_size(&self) -> [f32; 2] {
        self.settings.window.into()
    }

    /// Writes the settings when they have changed.
    fn keep_settings(&mut self) {
        if self.settings != self.written_settings {
            if let Some(folder) = &self.surroundings.settings_folder {
                self.settings.write(&*self.surroundings.file_system, folder);
            }
            self.written_settings = self.settings.clone();
        }
    }

    /// The window's title follows the document's name and whether it is saved.
    fn show_title(&mut self, ctx: &egui::Context) {
        let mark = if self.desk.history.is_unsaved() {
            "*"
        } else {
            ""
        };
        let title = format!("{mark}{} – Layshaft", self.desk.name());
        if title != self.shown_title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.shown_title = title;
        }
    }

    /// A whole frame: panels, dialog, and what they want done.
    pub fn frame_ui(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        self.desk.refresh();
        self.settings.zoom = ctx.zoom_factor();
        let is_whole_screen = ctx.input(|i| i.viewport().maximized == Some(true));
        if !is_whole_screen {
            self.window_size = ui.max_rect().size().into();
        }
        self.drafts.begin_frame(&ctx);
        let mut actions = Vec::new();
        // A command under a running drag would take the ground from under it.
        if self.dialog.is_none() && ctx.dragged_id().is_none() {
            let is_waiting = self.drafts.is_waiting(&ctx);
            let commands = commands::pressed(&ctx, is_waiting);
            actions.extend(commands.into_iter().map(Action::Run));
            actions.extend(dropped_file(&ctx));
        }
        self.panels_ui(ui, &mut actions);
        self.view.reveal = None;
        let before = self.desk.history.revision();
        let view_before = self.view.clone();
        self.dialog_ui(&ctx);
        for action in actions {
            self.perform(&ctx, action);
        }
        self.end_what_nobody_holds(&ctx);
        if self.desk.history.revision() != before || self.view != view_before {
            self.view.keep_to(self.desk.project());
            ctx.request_repaint();
        }
    }

    /// Ends a gesture that no hand is on any more: a handle may leave the view without a word.
    fn end_what_nobody_holds(&mut self, ctx: &egui::Context) {
        let is_held = ctx.dragged_id().is_some() || ctx.memory(|m| m.focused().is_some());
        if !is_held && self.desk.history.in_gesture() {
            self.desk.history.commit();
        }
    }

    fn panels_ui(&mut self, ui: &mut Ui, actions: &mut Vec<Action>) {
        let palette = Palette::of(Theme::of(ui.ctx()));
        Panel::top("menu").show(ui, |ui| {
            menu_bar_ui(ui, &self.desk, &self.settings.recent, actions);
        });
        Panel::bottom("status").show(ui, |ui| {
            status_bar_ui(ui, &self.desk, &self.message, &palette);
        });
        Panel::left("sets")
            .default_size(350.0)
            .size_range(290.0..=460.0)
            .show(ui, |ui| self.forms_ui(ui, &palette, actions));
        let table = Panel::bottom("table")
            .default_size(250.0)
            .size_range(90.0..=500.0)
            .resizable(true)
            .show(ui, |ui| {
                table_panel_ui(ui, &self.desk, &self.view, &palette, actions)
            });
        let paper = Frame::new().fill(palette.page).inner_margin(8.0);
        let diagram = CentralPanel::default().frame(paper).show(ui, |ui| {
            diagram_panel_ui(ui, self.desk.diagram(), &self.view, &palette, actions)
        });
        if self.view.pointed.is_some() && !table.inner && !diagram.inner {
            actions.push(Action::Point(None));
        }
        if self.view.write_up_is_open {
            let mut form = Form {
                drafts: &mut self.drafts,
                palette: &palette,
                actions,
            };
            write_up_ui(ui.ctx(), &self.desk, &mut self.preview, &mut form);
        }
    }

    /// The vehicle and the cards of the sets.
    fn forms_ui(&mut self, ui: &mut Ui, palette: &Palette, actions: &mut Vec<Action>) {
        let mut form = Form {
            drafts: &mut self.drafts,
            palette,
            actions,
        };
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
            ui.add_space(4.0);
            vehicle_panel_ui(ui, &self.desk, &mut form);
            ui.add_space(8.0);
            set_cards_ui(ui, &self.desk, &self.view, &mut form);
        });
    }

    fn dialog_ui(&mut self, ctx: &egui::Context) {
        let palette = Palette::of(Theme::of(ctx));
        match self.dialog.take() {
            None => {}
            Some(Dialog::Help) => self.dialog = (!help_ui(ctx)).then_some(Dialog::Help),
            Some(Dialog::Path(mut dialog)) => match path_dialog_ui(ctx, &mut dialog, &palette) {
                None => self.dialog = Some(Dialog::Path(dialog)),
                Some(PathAnswer::Cancel) => {}
                Some(PathAnswer::Typed(text)) => self.use_typed_path(ctx, dialog, &text),
            },
            Some(Dialog::Paste(mut dialog)) => {
                let can_add = self.desk.project().sets.len() < Candidates::MOST;
                match paste_dialog_ui(ctx, &mut dialog, can_add, &palette) {
                    None => self.dialog = Some(Dialog::Paste(dialog)),
                    Some(answer) => self.take_pasted(&answer),
                }
            }
            Some(Dialog::Recover(left)) => self.recover_ui(ctx, left),
            Some(Dialog::InUse(path)) => self.in_use_ui(ctx, path),
            Some(Dialog::ChangedOnDisk(then)) => self.changed_ui(ctx, then),
            Some(Dialog::Unsaved(after)) => self.unsaved_ui(ctx, after),
            Some(Dialog::Replace(path, purpose, then)) => {
                self.replace_ui(ctx, path, purpose, then);
            }
            Some(Dialog::OtherForm(then)) => self.other_form_ui(ctx, then),
        }
    }

    fn take_answer(&mut self, ctx: &egui::Context, answer: Answer) {
        let Some(Dialog::Path(dialog)) = &mut self.dialog else {
            return;
        };
        if dialog.request != Some(answer.request) {
            return;
        }
        dialog.request = None;
        ctx.request_repaint();
        match answer.path {
            Some(path) => {
                let dialog = dialog.clone();
                self.dialog = None;
                // The system's dialog has asked before replacing; after adding an ending, ask again.
                self.use_path(ctx, dialog, path);
            }
            None if answer.was_unseen => {}
            None => self.dialog = None,
        }
    }
}

impl eframe::App for App {
    fn raw_input_hook(&mut self, ctx: &egui::Context, input: &mut egui::RawInput) {
        let mut events = std::mem::take(&mut self.held_back);
        events.append(&mut input.events);
        self.held_back = held_back(&mut events);
        input.events = events;
        if !self.held_back.is_empty() {
            ctx.request_repaint();
        }
    }

    fn logic(&mut self, ctx: &egui::Context, _frame: &mut eframe::Frame) {
        self.settle(ctx);
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        self.frame_ui(ui);
    }

    fn on_exit(&mut self, _gl: Option<&eframe::glow::Context>) {
        self.safety.end();
        self.settings.window = self.window_size;
        self.keep_settings();
    }

    fn clear_color(&self, visuals: &egui::Visuals) -> [f32; 4] {
        visuals.panel_fill.to_normalized_gamma_f32()
    }
}

/// A file that was dropped on the window.
fn dropped_file(ctx: &egui::Context) -> Option<Action> {
    let path = ctx.input(|i| {
        let file = i.raw.dropped_files.first()?;
        Some(Path::to_owned(file.path()))
    });
    path.map(Action::Open)
}

impl Command {
    /// Whether the command can be invoked just now.
    pub fn is_enabled(self, desk: &Desk) -> bool {
        match self {
            Self::Undo => desk.history.undo_label().is_some(),
            Self::Redo => desk.history.redo_label().is_some(),
            Self::CopySet => desk.project().sets.len() < Candidates::MOST,
            Self::RemoveSet | Self::NextSet => desk.project().sets.len() > 1,
            _ => true,
        }
    }
}
