//! The menus, made from the table of commands, and what is always at hand beside them.

use super::action::Action;
use super::commands::{Command, Menu, TABLE};
use super::desk::Desk;
use crate::chart::View;
use crate::project::Edit;
use crate::project::examples::EXAMPLES;
use crate::units::SpeedUnit;
use egui::{Button, MenuBar, RichText, Sides, Ui};
use std::path::PathBuf;

/// Shows the menu bar.
pub(super) fn menu_bar_ui(ui: &mut Ui, desk: &Desk, recent: &[PathBuf], actions: &mut Vec<Action>) {
    let mut left = Vec::new();
    let mut right = Vec::new();
    Sides::new().shrink_left().show(
        ui,
        |ui| {
            MenuBar::new().ui(ui, |ui| {
                for menu in Menu::ALL {
                    ui.menu_button(menu.text(), |ui| menu_ui(ui, menu, desk, recent, &mut left));
                }
                ui.add_space(10.0);
                for command in [Command::Undo, Command::Redo] {
                    command_button(ui, command, desk, &mut left);
                }
                ui.add_space(10.0);
                let mark = if desk.history.is_unsaved() {
                    " (not saved)"
                } else {
                    ""
                };
                let name = format!("{}{mark}", desk.name());
                ui.add(egui::Label::new(RichText::new(name).strong()).truncate());
            });
        },
        |ui| units_ui(ui, desk, &mut right),
    );
    actions.extend(left);
    actions.extend(right);
}

fn menu_ui(ui: &mut Ui, menu: Menu, desk: &Desk, recent: &[PathBuf], actions: &mut Vec<Action>) {
    ui.set_min_width(190.0);
    for entry in TABLE.iter().filter(|e| e.menu == menu) {
        if entry.command == Command::Save {
            recent_ui(ui, recent, actions);
            examples_ui(ui, actions);
        }
        if matches!(
            entry.command,
            Command::Quit | Command::CopySet | Command::ThemeLight | Command::ZoomIn
        ) {
            ui.separator();
        }
        let mut button = Button::new(command_text(entry.command, desk));
        if let Some(shortcut) = entry.shortcuts.first() {
            button = button.shortcut_text(ui.format_shortcut(shortcut));
        }
        let response = ui.add_enabled(entry.command.is_enabled(desk), button);
        if response.on_hover_text(entry.tooltip).clicked() {
            actions.push(Action::Run(entry.command));
            ui.close();
        }
    }
}

fn recent_ui(ui: &mut Ui, recent: &[PathBuf], actions: &mut Vec<Action>) {
    ui.add_enabled_ui(!recent.is_empty(), |ui| {
        ui.menu_button("Open recent", |ui| {
            for path in recent {
                let name = path
                    .file_name()
                    .unwrap_or(path.as_os_str())
                    .to_string_lossy();
                let button = ui.button(name).on_hover_text(path.display().to_string());
                if button.clicked() {
                    actions.push(Action::Open(path.clone()));
                    ui.close();
                }
            }
        });
    });
}

fn examples_ui(ui: &mut Ui, actions: &mut Vec<Action>) {
    ui.menu_button("Open example", |ui| {
        for (at, example) in EXAMPLES.iter().enumerate() {
            if ui.button(example.name).clicked() {
                actions.push(Action::Example(at));
                ui.close();
            }
        }
    });
}

/// What a command is called just now: undo and redo say what they take back or bring back.
fn command_text(command: Command, desk: &Desk) -> String {
    let text = command.entry().map_or("", |entry| entry.text);
    let what = match command {
        Command::Undo => desk.history.undo_label(),
        Command::Redo => desk.history.redo_label(),
        _ => None,
    };
    what.map_or_else(|| text.to_owned(), |what| format!("{text}: {what}"))
}

fn command_button(ui: &mut Ui, command: Command, desk: &Desk, actions: &mut Vec<Action>) {
    let Some(entry) = command.entry() else { return };
    let response = ui.add_enabled(command.is_enabled(desk), Button::new(entry.text));
    let keys = entry.shortcuts.first().map(|s| ui.format_shortcut(s));
    let hint = format!(
        "{} ({})",
        command_text(command, desk),
        keys.unwrap_or_default()
    );
    if response.on_hover_text(hint).clicked() {
        actions.push(Action::Run(command));
    }
}

/// One click from km/h to mph and back.
fn units_ui(ui: &mut Ui, desk: &Desk, actions: &mut Vec<Action>) {
    // Right to left: the last is laid out first.
    for unit in SpeedUnit::ALL.into_iter().rev() {
        let is_chosen = desk.project().units == unit;
        if ui.selectable_label(is_chosen, unit.sign()).clicked() && !is_chosen {
            actions.extend(View::ALL.map(|view| Action::Range(view, None)));
            actions.push(Action::Edit(Edit::Units(unit)));
        }
    }
}
