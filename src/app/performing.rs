//! How is done what panels and commands ask for?

use super::action::Action;
use super::commands::Command;
use super::copies::copy_of;
use super::dialogs::{After, Dialog, PasteAnswer, PasteDialog, PathDialog, pasted_parts};
use super::file_picker::Purpose;
use super::files::{self, typed_path, with_ending};
use super::settings::Theme;
use super::view_state::{Ranges, ViewState};
use super::window::App;
use crate::gearing::{GearSet, Name};
use crate::project::examples::{BLANK, EXAMPLES};
use crate::project::{Edit, Project, SetEdit, SetId, format};
use crate::units::SpeedUnit;
use egui::{Context, ThemePreference, ViewportCommand};
use std::path::{Path, PathBuf};

impl App {
    /// Does one thing that a panel asked for.
    pub(super) fn perform(&mut self, ctx: &Context, action: Action) {
        match action {
            Action::Edit(edit) => self.edit(&edit),
            Action::Preview(edit) => {
                if let Err(problem) = self.desk.history.preview(&edit) {
                    self.say(problem.to_string());
                }
            }
            Action::Commit => self.desk.history.commit(),
            Action::Cancel => self.desk.history.cancel(),
            Action::Run(command) => self.run(ctx, command),
            Action::Select(set) => self.select(set),
            Action::Point(gear) => self.view.pointed = gear,
            Action::Range(view, range) => self.view.ranges.set(view, range),
            Action::Open(path) => self.leave_for(After::Open(path), ctx),
            Action::Example(at) => self.leave_for(After::Example(at), ctx),
            Action::RatioForm(form) => self.view.ratio_form = form,
            Action::SideBySide(on) => {
                self.view.side_by_side = on;
                self.settings.side_by_side = on;
            }
            Action::CopyPicture => self.copy_picture(ctx),
            Action::SavePicture => self.ask_for_path(ctx, Purpose::SavePicture, None),
            Action::Copy(what, text) => {
                ctx.copy_text(text);
                self.say(format!("Copied {what}"));
            }
            Action::Say(words) => self.say(words),
        }
    }

    /// One edit as a step of its own; what cannot be done is said.
    pub(super) fn edit(&mut self, edit: &Edit) {
        self.drafts.settle();
        if let Err(problem) = self.desk.history.edit(edit) {
            self.say(problem.to_string());
        }
    }

    pub(super) fn say(&mut self, words: impl Into<String>) {
        self.message = words.into();
    }

    fn run(&mut self, ctx: &Context, command: Command) {
        if !command.is_enabled(&self.desk) {
            return;
        }
        self.drafts.settle();
        self.desk.history.commit();
        match command {
            Command::New => self.leave_for(After::New, ctx),
            Command::Open => self.leave_for(After::Choose, ctx),
            Command::Save => self.save(ctx, None),
            Command::SaveAs => self.ask_for_path(ctx, Purpose::Save, None),
            Command::WriteUp => self.view.write_up_is_open = !self.view.write_up_is_open,
            Command::Quit => ctx.send_viewport_cmd(ViewportCommand::Close),
            Command::Undo => self.undo(),
            Command::Redo => self.redo(),
            Command::CopySet => self.copy_set(),
            Command::RemoveSet => self.edit(&Edit::RemoveSet(self.view.selected)),
            Command::SwitchUnits => self.switch_units(),
            Command::PasteSet => self.dialog = Some(Dialog::Paste(PasteDialog::default())),
            Command::CopyTable => self.copy_table(ctx),
            Command::Fit => self.view.ranges = Ranges::default(),
            Command::NextSet => self.select(self.view.next_set(self.desk.project())),
            Command::ThemeLight => self.show_theme(ctx, Theme::Light),
            Command::ThemeDark => self.show_theme(ctx, Theme::Dark),
            Command::ThemeSystem => self.show_theme(ctx, Theme::System),
            Command::ZoomIn => egui::gui_zoom::zoom_in(ctx),
            Command::ZoomOut => egui::gui_zoom::zoom_out(ctx),
            Command::ZoomReset => ctx.set_zoom_factor(1.0),
            Command::Help => self.dialog = Some(Dialog::Help),
        }
    }

    fn show_theme(&mut self, ctx: &Context, theme: Theme) {
        self.settings.theme = theme;
        ctx.set_theme(ThemePreference::from(theme));
    }

    fn undo(&mut self) {
        if let Some(label) = self.desk.history.undo_label() {
            self.desk.history.undo();
            self.say(format!("Undone: {label}"));
        }
    }

    fn redo(&mut self) {
        if let Some(label) = self.desk.history.redo_label() {
            self.desk.history.redo();
            self.say(format!("Redone: {label}"));
        }
    }

    fn copy_set(&mut self) {
        let id = self.view.selected;
        let Some(candidate) = self.desk.project().sets.get(id) else {
            return;
        };
        let copy = Box::new(copy_of(&candidate.set, &self.desk.project().sets));
        let place = self.desk.project().sets.place(id).unwrap_or(0);
        self.edit(&Edit::AddSet(id, copy));
        let added = self.desk.project().sets.iter().nth(place + 1);
        if let Some(added) = added.map(|added| added.id) {
            self.select(added);
        }
    }

    /// Brings a set forward, its card too.
    fn select(&mut self, set: SetId) {
        self.view.selected = set;
        self.view.reveal = Some(set);
    }

    fn copy_table(&mut self, ctx: &Context) {
        let title = self.desk.project().title.as_ref().map(Name::as_str);
        let text = crate::sheet::text::table(title, self.desk.table());
        self.perform(ctx, Action::Copy("the table as text", text));
    }

    /// Takes a pasted set over as one edit.
    pub(super) fn take_pasted(&mut self, answer: &PasteAnswer) {
        let id = self.view.selected;
        let Some(candidate) = self.desk.project().sets.get(id) else {
            return;
        };
        match answer {
            PasteAnswer::Cancel => {}
            PasteAnswer::Replace(pasted) => {
                let parts = pasted_parts(&candidate.set, pasted);
                let edit = SetEdit::Replace(Box::new(parts));
                self.edit(&Edit::Set(id, edit));
            }
            PasteAnswer::Add(pasted) => {
                let mut parts = pasted_parts(&candidate.set, pasted);
                if let Ok(name) = Name::new("Pasted set") {
                    parts.name = name;
                }
                match GearSet::try_from(parts) {
                    Ok(set) => self.edit(&Edit::AddSet(id, Box::new(set))),
                    Err(problem) => self.say(problem.to_string()),
                }
            }
        }
    }

    fn switch_units(&mut self) {
        let other = match self.desk.project().units {
            SpeedUnit::Kmh => SpeedUnit::Mph,
            SpeedUnit::Mph => SpeedUnit::Kmh,
        };
        self.view.ranges = Ranges::default();
        self.edit(&Edit::Units(other));
    }

    /// Leaves the document for something else, but asks first where work would be lost.
    fn leave_for(&mut self, after: After, ctx: &Context) {
        self.drafts.settle();
        self.desk.history.commit();
        if self.desk.history.is_unsaved() {
            self.dialog = Some(Dialog::Unsaved(after));
        } else {
            self.go_on(ctx, after);
        }
    }

    /// What was to happen once unsaved work was settled.
    pub(super) fn go_on(&mut self, ctx: &Context, after: After) {
        match after {
            After::New => self.put_example(&BLANK),
            After::Example(at) => {
                if let Some(example) = EXAMPLES.get(at) {
                    self.put_example(example);
                }
            }
            After::Choose => self.ask_for_file(ctx),
            After::Open(path) => self.open(&path),
            After::Quit => {
                self.may_close = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    fn put_example(&mut self, example: &crate::project::examples::Example) {
        match example.project() {
            Ok(project) => self.put(project, None, false),
            Err(problem) => self.say(problem.to_string()),
        }
    }

    /// Puts another document on the desk; it has a history of its own.
    pub(super) fn put(&mut self, project: Project, file: Option<PathBuf>, has_other_form: bool) {
        self.view = ViewState {
            side_by_side: self.view.side_by_side,
            ratio_form: self.view.ratio_form,
            ..ViewState::of(&project)
        };
        self.desk = super::desk::Desk::new(project, file);
        self.drafts.clear();
        self.has_other_form = has_other_form;
        self.message.clear();
        self.lock_document();
    }

    pub(super) fn open(&mut self, path: &Path) {
        if self.is_in_use(path) {
            self.dialog = Some(Dialog::InUse(path.to_owned()));
            return;
        }
        match files::open(&*self.surroundings.file_system, path) {
            Ok(opened) => {
                let name = path.display().to_string();
                self.settings.remember(path);
                self.put(opened.project, Some(path.to_owned()), opened.has_other_form);
                self.desk.on_disk = Some(opened.text);
                self.say(format!("Opened {name}"));
            }
            Err(problem) => {
                self.settings.forget(path);
                self.say(problem.to_string());
            }
        }
    }

    fn ask_for_file(&mut self, ctx: &Context) {
        let beside = self.desk.file.clone();
        let request = self
            .surroundings
            .picker
            .start(Purpose::Open, beside, ctx.clone());
        self.dialog = Some(Dialog::Path(PathDialog {
            purpose: Purpose::Open,
            text: String::new(),
            request: Some(request),
            problem: None,
            then: None,
        }));
    }

    pub(super) fn ask_for_path(&mut self, ctx: &Context, purpose: Purpose, then: Option<After>) {
        let own = self.desk.file.clone();
        let own = own.unwrap_or_else(|| self.suggested_name());
        let suggested = match purpose {
            Purpose::Open | Purpose::Save => own,
            Purpose::SavePicture => own.with_extension("png"),
        };
        let request = self
            .surroundings
            .picker
            .start(purpose, Some(suggested.clone()), ctx.clone());
        self.dialog = Some(Dialog::Path(PathDialog {
            purpose,
            text: suggested.display().to_string(),
            request: Some(request),
            problem: None,
            then,
        }));
    }

    /// A file name made of the title's letters and digits.
    fn suggested_name(&self) -> PathBuf {
        let title = self.desk.project().title.as_ref();
        let title = title.map_or_else(|| "project".to_owned(), ToString::to_string);
        let words: Vec<String> = title
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty())
            .take(4)
            .map(str::to_lowercase)
            .collect();
        PathBuf::from(words.join("-")).with_extension("ron")
    }

    pub(super) fn use_typed_path(&mut self, ctx: &Context, mut dialog: PathDialog, text: &str) {
        if let Some(path) = typed_path(text) {
            self.use_path(ctx, dialog, path);
        } else {
            dialog.problem = Some("Type a path first.".to_owned());
            self.dialog = Some(Dialog::Path(dialog));
        }
    }

    /// A path was chosen or typed.
    pub(super) fn use_path(&mut self, ctx: &Context, mut dialog: PathDialog, path: PathBuf) {
        match dialog.purpose {
            Purpose::Open => match files::open(&*self.surroundings.file_system, &path) {
                Ok(_) => self.open(&path),
                Err(problem) => {
                    dialog.problem = Some(problem.to_string());
                    self.dialog = Some(Dialog::Path(dialog));
                }
            },
            Purpose::Save | Purpose::SavePicture => {
                let ending = match dialog.purpose {
                    Purpose::SavePicture => "png",
                    _ => "ron",
                };
                let path = with_ending(path, ending);
                let is_own =
                    dialog.purpose == Purpose::Save && self.desk.file.as_ref() == Some(&path);
                let is_there = self.surroundings.file_system.entry_facts(&path).is_ok();
                if is_there && !is_own {
                    self.dialog = Some(Dialog::Replace(path, dialog.purpose, dialog.then));
                } else {
                    self.write_to(ctx, &path, dialog.purpose, dialog.then);
                }
            }
        }
    }

    /// Writes project or picture, whichever is meant.
    pub(super) fn write_to(
        &mut self,
        ctx: &Context,
        path: &Path,
        purpose: Purpose,
        then: Option<After>,
    ) {
        match purpose {
            Purpose::SavePicture => self.save_picture(path),
            Purpose::Open | Purpose::Save => self.save_to(ctx, path, then),
        }
    }

    /// Saves where the document stands, or asks where that is to be.
    pub(super) fn save(&mut self, ctx: &Context, then: Option<After>) {
        match self.desk.file.clone() {
            None => self.ask_for_path(ctx, Purpose::Save, then),
            Some(path) if self.is_changed_on_disk(&path) => {
                self.dialog = Some(Dialog::ChangedOnDisk(then));
            }
            Some(_) if self.has_other_form => self.dialog = Some(Dialog::OtherForm(then)),
            Some(path) => self.save_to(ctx, &path, then),
        }
    }

    /// Saves in a file and goes on; a failure is said and offers another place.
    pub(super) fn save_to(&mut self, ctx: &Context, path: &Path, then: Option<After>) {
        let unread = self.drafts.settle();
        self.desk.history.commit();
        let project = self.desk.history.snapshot();
        match files::save(&*self.surroundings.file_system, path, &project) {
            Ok(()) => self.saved(ctx, path, then, unread),
            Err(problem) if problem.is_saved() => {
                self.saved(ctx, path, then, unread);
                self.say(problem.to_string());
            }
            Err(problem) => {
                self.dialog = Some(Dialog::Path(PathDialog {
                    purpose: Purpose::Save,
                    text: path.display().to_string(),
                    request: None,
                    problem: Some(problem.to_string()),
                    then,
                }));
            }
        }
    }

    fn saved(&mut self, ctx: &Context, path: &Path, then: Option<After>, unread: usize) {
        self.desk.history.mark_saved(self.desk.history.snapshot());
        let is_new = self.desk.file.as_deref() != Some(path);
        self.desk.file = Some(path.to_owned());
        self.desk.on_disk = Some(format::write(self.desk.project()));
        if is_new {
            self.lock_document();
        }
        self.settings.remember(path);
        self.has_other_form = false;
        let shown = path.display();
        self.say(match unread {
            0 => format!("Saved in {shown}"),
            _ => format!(
                "Saved in {shown}; a field that cannot be read was saved with its last good value"
            ),
        });
        if let Some(after) = then {
            self.go_on(ctx, after);
        }
    }
}
