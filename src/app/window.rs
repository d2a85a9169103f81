//! What does the window hold, and what does it do in each frame?
//!
//! `logic` settles what must work while the window is hidden (closing, answers of dialogs); `ui`
//! shows the panels and collects what they want done; `performing` does it.

use super::action::Action;
use super::arrangement::Part;
use super::commands;
use super::desk::Desk;
use super::dialogs::finders::{count_dialog_ui, fill_dialog_ui, pair_dialog_ui, wish_dialog_ui};
use super::dialogs::{Dialog, findings_ui, help_ui, paste_dialog_ui, path_dialog_ui, question_ui};
use super::drafts::{CellId, Drafts};
use super::find_command::{Found, find_command_ui, offers};
use super::focus::FocusBack;
use super::focus::{FocusMap, Lost};
use super::input::{InputInOrder, hold_keys};
use super::lifecycle::{After, Asked, Lifecycle, Step, Surroundings};
use super::menus::MenuKeys;
use super::pasting::PasteTarget;

use super::view_state::ViewState;
use super::write_up::WriteUpWindow;
use crate::chart::{GearOfSet, Scene};
use crate::draw::palette::{Palette, Theme};
use crate::project::{DocumentId, History, Project};
use egui::{ThemePreference, Ui, ViewportCommand};
use std::mem::discriminant;
use std::path::{Path, PathBuf};
use std::sync::atomic::Ordering;

/// What somebody who sees the window for the first time wants to know.
const FIRST_WORDS: &str =
    "Point at the diagram to read engine speeds; drag a round handle to move a shift point";

/// What is said to somebody who types where nothing can be typed.
const NO_FIELD: &str =
    "Nothing can be typed here: Tab goes to the next field, F6 to the next part of the window";

/// The window.
#[derive(Debug)]
pub struct App {
    pub(super) lifecycle: Lifecycle,
    pub(super) drafts: Drafts,
    pub(super) view: ViewState,
    pub(super) dialog: Option<Dialog>,
    /// The document that drafts and view belong to.
    shown_document: DocumentId,
    window_size: (f32, f32),
    pub(super) write_up: WriteUpWindow,
    pub(super) menu_keys: MenuKeys,
    focus_back: FocusBack,
    shown_title: String,
    /// Where the focus can be, and where keys take it.
    pub(super) focus: FocusMap,
}

impl App {
    /// A window on a project; `file` is where it stands, if it stands anywhere.
    pub fn new(project: Project, file: Option<PathBuf>, surroundings: Surroundings) -> Self {
        let mut lifecycle = Lifecycle::new(project, file, surroundings);
        lifecycle.say(FIRST_WORDS);
        let history = &lifecycle.desk.history;
        Self {
            view: ViewState {
                side_by_side: lifecycle.settings.side_by_side,
                columns: lifecycle.settings.columns.clone(),
                ..ViewState::of(history.project())
            },
            shown_document: history.revision().document(),
            drafts: Drafts::default(),
            focus: FocusMap::default(),
            dialog: None,
            window_size: lifecycle.settings.window,
            lifecycle,
            write_up: WriteUpWindow::default(),
            menu_keys: MenuKeys::default(),
            focus_back: FocusBack::default(),
            shown_title: String::new(),
        }
    }

    /// A window on an example, that says so.
    pub fn on_example(example: Project, surroundings: Surroundings) -> Self {
        let mut app = Self::new(example, None, surroundings);
        app.lifecycle.desk.is_example = true;
        app
    }

    /// Keeps copies of unsaved work in a folder from now on, and offers what lies there.
    pub fn keep_unsaved_work_in(&mut self, folder: &Path) {
        self.lifecycle.keep_unsaved_work_in(folder);
    }

    /// Opens the file that the program was started with, before there is a window to say anything in.
    pub fn open_at_start(&mut self, path: PathBuf) {
        self.lifecycle.take(Step::Open(path));
        self.follow_document();
    }

    /// The document, for those who look from outside.
    pub fn desk(&self) -> &Desk {
        &self.lifecycle.desk
    }

    /// The diagram that is looked at.
    pub fn diagram(&self) -> &Scene {
        self.desk().diagram(self.view.shown)
    }

    /// The document's past, to be changed.
    pub(super) fn history(&mut self) -> &mut History {
        &mut self.lifecycle.desk.history
    }

    /// The last message.
    pub fn message(&self) -> &str {
        &self.lifecycle.message
    }

    /// What cannot be kept, for as long as it cannot: a few words and a sentence.
    pub fn lasting_note(&self) -> Option<(&'static str, String)> {
        self.lifecycle.lasting_note()
    }

    /// Whether a folder is being looked into beside the window.
    pub fn is_looking(&self) -> bool {
        self.lifecycle.is_looking()
    }

    /// The gear that is brought out in diagram and table, if any.
    pub fn pointed(&self) -> Option<GearOfSet> {
        self.view.pointed
    }

    /// What must be settled even while the window is hidden.
    fn settle(&mut self, ctx: &egui::Context) {
        if !self.lifecycle.wake.is_connected() {
            let context = ctx.clone();
            self.lifecycle
                .wake
                .connect(move || context.request_repaint());
        }
        self.follow_half_typed();
        self.lifecycle.look_into_folder();
        while let Some(answer) = self.lifecycle.chosen() {
            self.step(ctx, Step::Chosen(answer));
        }
        if self.dialog.is_none() {
            self.lifecycle.offer_next();
        }
        let wants_to_close = ctx.input(|i| i.viewport().close_requested());
        let must_close = self.lifecycle.is_ending.load(Ordering::SeqCst);
        if wants_to_close && !must_close && !self.lifecycle.may_close {
            self.step(ctx, Step::Leave(After::Quit));
            if !self.lifecycle.may_close {
                ctx.send_viewport_cmd(ViewportCommand::CancelClose);
                ctx.send_viewport_cmd(ViewportCommand::Minimized(false));
                ctx.send_viewport_cmd(ViewportCommand::Focus);
            }
        }
        self.show_title(ctx);
        self.lifecycle.keep();
    }

    /// Takes one step in the document's life, after what is being typed or dragged.
    pub(super) fn step(&mut self, ctx: &egui::Context, step: Step) {
        self.drafts.settle();
        self.history().commit();
        self.follow_half_typed();
        let field = match step {
            Step::Mend(field) => Some(field),
            Step::TakeTheirs(_) => {
                // What does not read stays over theirs: undoing brings yours back, but not this.
                self.drafts.follow(|_| true);
                None
            }
            _ => None,
        };
        self.lifecycle.take(step);
        self.follow_document();
        if let Some(field) = field {
            self.show_half_typed(ctx, field);
        }
        if self.lifecycle.may_close {
            ctx.send_viewport_cmd(ViewportCommand::Close);
        }
        ctx.request_repaint();
    }

    /// Begins anew with drafts and view where another document is on the desk.
    fn follow_document(&mut self) {
        let document = self.desk().history.revision().document();
        if document != self.shown_document {
            self.shown_document = document;
            self.drafts.clear();
            let is_new = self.desk().file.is_none() && self.desk().project().title.is_none();
            // A new project is called something first.
            let first = is_new.then(|| CellId::Title.widget());
            self.focus.begin_document(first);
            self.view = ViewState {
                side_by_side: self.view.side_by_side,
                columns: self.view.columns.clone(),
                ..ViewState::of(self.desk().project())
            };
        }
    }

    /// Gives the context what is remembered of its looks, and its input in an order that every frame
    /// can answer.
    pub fn dress(&self, ctx: &egui::Context) {
        ctx.add_plugin(InputInOrder::default());
        ctx.set_theme(ThemePreference::from(self.lifecycle.settings.theme));
        ctx.set_zoom_factor(self.lifecycle.settings.zoom);
    }

    /// The width and height of the window when it was last closed, in points.
    pub fn remembered_size(&self) -> [f32; 2] {
        self.lifecycle.settings.window.into()
    }

    /// The window's title follows the document's name and whether it is saved.
    fn show_title(&mut self, ctx: &egui::Context) {
        let mark = if self.desk().is_unsaved() { "*" } else { "" };
        let title = format!("{mark}{} – Layshaft", self.desk().name());
        if title != self.shown_title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.shown_title = title;
        }
    }

    /// A whole frame: panels, dialog, and what they want done.
    pub fn frame_ui(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        self.lifecycle.desk.refresh();
        self.follow_half_typed();
        self.lifecycle.settings.zoom = ctx.zoom_factor();
        let is_whole_screen = ctx.input(|i| i.viewport().maximized == Some(true));
        if !is_whole_screen {
            self.window_size = ui.max_rect().size().into();
        }
        let over_before = self.over_it(&ctx);
        let mut actions = self.begin_frame(&ctx);
        let has_dialog = self.has_dialog();
        self.walk(&ctx, !has_dialog);
        // A command under a running drag would take the ground from under it.
        if !has_dialog && ctx.dragged_id().is_none() {
            let field = self.focus.field_in_hand(&ctx);
            let kept = field.map(|field| self.drafts.kept_by(&ctx, field));
            let is_scrolling = self.focus.is_scrolling(&ctx);
            let commands = commands::pressed(&ctx, kept, is_scrolling);
            actions.extend(commands.into_iter().map(Action::Run));
            actions.extend(dropped_file(&ctx));
        }
        if has_dialog {
            put_out_of_reach(ui);
        }
        self.panels_ui(ui, &mut actions);
        self.view.reveal = None;
        self.view.sought = None;
        let before = self.desk().history.revision();
        let view_before = self.view.clone();
        let units_before = self.desk().project().units;
        self.dialog_ui(&ctx);
        self.focus.end_frame(&ctx, !has_dialog);
        for action in actions {
            self.perform(&ctx, action);
        }
        self.end_what_nobody_holds(&ctx);
        if self.over_it(&ctx) != over_before {
            hold_keys(&ctx);
        }
        if self.desk().history.revision() != before || self.view != view_before {
            self.view.keep_to(self.lifecycle.desk.project());
            self.drafts.keep_to(self.lifecycle.desk.project());
            if self.desk().project().units != units_before {
                self.drafts.follow_units();
            }
            ctx.request_repaint();
        }
    }

    /// Takes the keys that move the focus; what they cannot do is said.
    fn walk(&mut self, ctx: &egui::Context, is_ours: bool) {
        let is_free = is_ours && !self.focus_back.is_waiting();
        match self.focus.begin_frame(ctx, is_ours, is_free) {
            None => {}
            Some(Lost::Typing) => self.say(NO_FIELD),
            Some(Lost::Behind(pane)) => {
                self.view.part = Part::with(pane).unwrap_or_default();
                ctx.request_repaint();
            }
        }
    }

    /// Ends a gesture that no hand is on any more: a handle may leave the view without a word.
    fn end_what_nobody_holds(&mut self, ctx: &egui::Context) {
        let is_held = ctx.dragged_id().is_some() || ctx.memory(|m| m.focused().is_some());
        if !is_held && self.desk().history.in_gesture() {
            self.history().commit();
        }
    }

    /// What stands over the window: a dialog, a question, the write-up, a menu.
    fn over_it(&self, ctx: &egui::Context) -> impl PartialEq + use<> {
        (
            self.dialog.as_ref().map(discriminant),
            self.lifecycle.asked.as_ref().map(discriminant),
            self.view.write_up_is_open,
            egui::Popup::is_any_open(ctx),
        )
    }

    /// Whether a dialog or a question stands over the window.
    pub(super) fn has_dialog(&self) -> bool {
        self.dialog.is_some() || self.lifecycle.asked.is_some()
    }

    /// What dialogs, menus and the write-up do before anything is shown.
    fn begin_frame(&mut self, ctx: &egui::Context) -> Vec<Action> {
        let title = self.shown_title.as_str();
        ctx.accesskit_node_builder(egui::accesskit_root_id(), |node| node.set_label(title));
        self.lifecycle.desk.selected = Some(self.view.selected);
        self.lifecycle.desk.open_card = Some(self.view.open_card);
        let (has_dialog, has_write_up) = (self.has_dialog(), self.view.write_up_is_open);
        self.focus_back.follow(ctx, has_dialog, has_write_up);
        self.menu_keys.begin_frame(ctx, has_dialog);
        let write_up = &mut self.write_up;
        let closing = write_up.begin_frame(ctx, has_write_up, !has_dialog, &self.drafts);
        closing.into_iter().collect()
    }

    fn dialog_ui(&mut self, ctx: &egui::Context) {
        let palette = Palette::of(Theme::of(ctx));
        let step = match &mut self.lifecycle.asked {
            Some(Asked::Question(question)) => question_ui(ctx, question),
            Some(Asked::Path(question)) => path_dialog_ui(ctx, question, &palette),
            None => return self.own_dialog_ui(ctx, &palette),
        };
        if let Some(step) = step {
            self.step(ctx, step);
        }
    }

    /// Dialogs that are not about the document as a whole.
    fn own_dialog_ui(&mut self, ctx: &egui::Context, palette: &Palette) {
        match self.dialog.take() {
            None => {}
            Some(Dialog::Help) => self.dialog = (!help_ui(ctx)).then_some(Dialog::Help),
            Some(Dialog::Findings) => {
                let is_closed = findings_ui(ctx, self.desk());
                self.dialog = (!is_closed).then_some(Dialog::Findings);
            }
            Some(Dialog::FindCommand(mut finding)) => {
                let recent = &self.lifecycle.settings.recent;
                let offers = offers(self.desk(), recent, &|keys| ctx.format_shortcut(keys));
                match find_command_ui(ctx, &mut finding, &offers, palette) {
                    None => self.dialog = Some(Dialog::FindCommand(finding)),
                    Some(Found::Do(action)) => self.perform(ctx, action),
                    Some(Found::Nothing) => {}
                }
            }
            Some(Dialog::Wish(mut dialog)) => {
                let answer = wish_dialog_ui(ctx, &mut dialog, self.desk(), palette);
                self.view.finders.wish = dialog.texts.clone();
                self.after_finding(answer, Dialog::Wish(dialog));
            }
            Some(Dialog::Pair(mut dialog)) => {
                let answer = pair_dialog_ui(ctx, &mut dialog, self.desk(), palette);
                self.view.finders.pair = dialog.texts.clone();
                self.after_finding(answer, Dialog::Pair(dialog));
            }
            Some(Dialog::Fill(mut dialog)) => {
                let answer = fill_dialog_ui(ctx, &mut dialog, self.desk(), palette);
                self.view.finders.fill = dialog.texts.clone();
                self.after_finding(answer, Dialog::Fill(dialog));
            }
            Some(Dialog::Count(mut dialog)) => {
                let is_closed = count_dialog_ui(ctx, &mut dialog, self.desk(), palette);
                self.view.finders.count = dialog.texts.clone();
                self.dialog = (!is_closed).then_some(Dialog::Count(dialog));
            }
            Some(Dialog::Paste(mut dialog)) => {
                let target = PasteTarget::of(self.desk().project(), self.view.open_card);
                match paste_dialog_ui(ctx, &mut dialog, &target, palette) {
                    None => self.dialog = Some(Dialog::Paste(dialog)),
                    Some(answer) => self.take_pasted(&answer),
                }
            }
        }
    }
}

impl eframe::App for App {
    fn logic(&mut self, ctx: &egui::Context, _frame: &mut eframe::Frame) {
        self.settle(ctx);
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        self.frame_ui(ui);
    }

    fn on_exit(&mut self, _gl: Option<&eframe::glow::Context>) {
        self.lifecycle.settings.window = self.window_size;
        self.lifecycle.end();
    }

    fn clear_color(&self, visuals: &egui::Visuals) -> [f32; 4] {
        visuals.panel_fill.to_normalized_gamma_f32()
    }
}

/// Takes the window from pointer, keys and screen reader while a dialog stands over it, which dims
/// it already.
fn put_out_of_reach(ui: &mut Ui) {
    ui.visuals_mut().disabled_alpha = 1.0;
    ui.disable();
}

/// A file that was dropped on the window.
fn dropped_file(ctx: &egui::Context) -> Option<Action> {
    let path = ctx.input(|i| {
        let file = i.raw.dropped_files.first()?;
        Some(Path::to_owned(file.path()))
    });
    path.map(Action::Open)
}
