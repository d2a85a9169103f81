//! The menus, made from the table of commands, and what is always at hand beside them.

use crate::app::action::Action;
use crate::app::commands::{Command, Entry, Menu, TABLE};
use crate::app::desk::Desk;
use crate::app::heard::{add_usable, describe, name_menu, tell_why_not};
use crate::app::menus::MenuKeys;
use crate::app::page::AppPage;
use crate::app::settings::{Settings, ThemeChoice};
use crate::project::Edit;
use crate::project::View;
use crate::project::examples::EXAMPLES;
use crate::units::SpeedUnit;
use egui::containers::menu::menu_style;
use egui::text::{LayoutJob, TextFormat};
use egui::{
    Button, Color32, MenuBar, Popup, Response, RichText, Sides, Stroke, Style, TextStyle, Ui,
};
use std::path::PathBuf;

/// The menus within the menu of what is seen: what is chosen once leaves it to what is chosen often.
const SUBMENUS: [&str; 2] = ["Size", "Light or dark"];

/// The menu within a menu that a command stands in.
fn submenu_of(command: Command) -> Option<&'static str> {
    let [size, looks] = SUBMENUS;
    match command {
        Command::ZoomIn | Command::ZoomOut | Command::ZoomReset => Some(size),
        _ => theme_of(command).map(|_| looks),
    }
}

/// Shows the menu bar.
pub(in crate::app) fn menu_bar_ui(
    ui: &mut Ui,
    (desk, settings, page): (&Desk, &Settings, AppPage),
    keys: &mut MenuKeys,
    actions: &mut Vec<Action>,
) {
    let mut left = Vec::new();
    let mut right = Vec::new();
    Sides::new().shrink_left().show(
        ui,
        |ui| {
            MenuBar::new().ui(ui, |ui| {
                for menu in Menu::ALL {
                    let button = ui.button(menu_title(ui, menu));
                    keys.announce(menu, &button);
                    let popup = keys.follow_pointer(Popup::menu(&button), &button);
                    popup.style(menu_style as fn(&mut Style)).show(|ui| {
                        name_menu(ui, menu.text());
                        menu_ui(ui, menu, (desk, settings), keys, &mut left);
                        keys.enter(ui);
                    });
                }
                ui.add_space(10.0);
                for command in [Command::Undo, Command::Redo] {
                    command_button(ui, command, desk, &mut left);
                }
                ui.add_space(10.0);
                let mark = if desk.is_unsaved() {
                    " (not saved)"
                } else {
                    ""
                };
                let name = format!("{}{mark}", desk.name());
                ui.add(egui::Label::new(RichText::new(name).strong()).truncate());
            });
        },
        |ui| {
            // Right to left: the pages keep their places whatever else stands there.
            pages_ui(ui, page, &mut right);
            // The bench has units of its own.
            if page == AppPage::Drive {
                ui.add_space(10.0);
                units_ui(ui, desk, &mut right);
            }
        },
    );
    actions.extend(left);
    actions.extend(right);
}

/// A menu's heading; the letter that opens it is underlined while Alt is held.
fn menu_title(ui: &Ui, menu: Menu) -> LayoutJob {
    let (first, rest) = menu.text().split_at(1);
    let plain = TextFormat::simple(TextStyle::Button.resolve(ui.style()), Color32::PLACEHOLDER);
    let is_held = ui.input(|i| i.modifiers.alt);
    let underline = if is_held {
        Stroke::new(1.0, ui.visuals().text_color())
    } else {
        Stroke::NONE
    };
    let underlined = TextFormat {
        underline,
        ..plain.clone()
    };
    let mut title = LayoutJob::default();
    title.append(first, 0.0, underlined);
    title.append(rest, 0.0, plain);
    title
}

fn menu_ui(
    ui: &mut Ui,
    menu: Menu,
    (desk, settings): (&Desk, &Settings),
    keys: &mut MenuKeys,
    actions: &mut Vec<Action>,
) {
    ui.set_min_width(190.0);
    // Keys stand on it in the dim colour of text; the ring tells of the focus.
    let widgets = &mut ui.visuals_mut().widgets;
    widgets.active.weak_bg_fill = widgets.hovered.weak_bg_fill;
    for entry in TABLE.iter().filter(|e| e.menu == menu) {
        if entry.command == Command::Save {
            recent_ui(ui, &settings.recent, keys, actions);
            examples_ui(ui, keys, actions);
        }
        if matches!(
            entry.command,
            Command::Quit | Command::CopySet | Command::Fit
        ) {
            ui.separator();
        }
        if submenu_of(entry.command).is_some() {
            continue;
        }
        if entry_ui(ui, entry, desk, settings).clicked() {
            actions.push(Action::Run(entry.command));
            ui.close();
        }
    }
    if menu == Menu::View {
        ui.separator();
        for name in SUBMENUS {
            submenu_ui(ui, name, (desk, settings), keys, actions);
        }
    }
}

/// A menu within the menu.
fn submenu_ui(
    ui: &mut Ui,
    name: &str,
    (desk, settings): (&Desk, &Settings),
    keys: &mut MenuKeys,
    actions: &mut Vec<Action>,
) {
    let shown = ui.menu_button(name, |ui| {
        name_menu(ui, name);
        for entry in TABLE.iter().filter(|e| submenu_of(e.command) == Some(name)) {
            if entry_ui(ui, entry, desk, settings).clicked() {
                actions.push(Action::Run(entry.command));
                ui.close();
            }
        }
    });
    keys.announce_submenu(&shown.response);
}

fn entry_ui(ui: &mut Ui, entry: &Entry, desk: &Desk, settings: &Settings) -> Response {
    let text = command_text(entry.command, desk);
    let mut button = match theme_of(entry.command) {
        Some(theme) => Button::selectable(theme == settings.theme, &text),
        None => Button::new(&text),
    };
    let keys = entry.shortcuts.first().map(|keys| ui.format_shortcut(keys));
    if let Some(keys) = &keys {
        button = button.shortcut_text(keys);
    }
    let why_not = entry.command.why_not(desk);
    let response = ui.add_enabled(why_not.is_none(), button);
    ui.ctx().accesskit_node_builder(response.id, |node| {
        // The keys are no part of the name.
        node.set_label(text);
        if let Some(keys) = keys {
            node.set_keyboard_shortcut(keys);
        }
    });
    let response = response.on_hover_text(entry.tooltip);
    match why_not {
        Some(why) => tell_why_not(response, why),
        None => response,
    }
}

/// The looks that a command chooses.
fn theme_of(command: Command) -> Option<ThemeChoice> {
    match command {
        Command::ThemeLight => Some(ThemeChoice::Light),
        Command::ThemeDark => Some(ThemeChoice::Dark),
        Command::ThemeSystem => Some(ThemeChoice::System),
        _ => None,
    }
}

fn recent_ui(ui: &mut Ui, recent: &[PathBuf], keys: &mut MenuKeys, actions: &mut Vec<Action>) {
    ui.add_enabled_ui(!recent.is_empty(), |ui| {
        let shown = ui.menu_button("Open recent", |ui| {
            name_menu(ui, "Open recent");
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
        keys.announce_submenu(&shown.response);
        tell_why_not(shown.response, "no file was opened or saved yet");
    });
}

fn examples_ui(ui: &mut Ui, keys: &mut MenuKeys, actions: &mut Vec<Action>) {
    let shown = ui.menu_button("Open example", |ui| {
        name_menu(ui, "Open example");
        for (at, example) in EXAMPLES.iter().enumerate() {
            if ui.button(example.name).clicked() {
                actions.push(Action::Example(at));
                ui.close();
            }
        }
    });
    keys.announce_submenu(&shown.response);
}

/// What a command is called just now: undo and redo say what they take back or bring back.
pub(in crate::app) fn command_text(command: Command, desk: &Desk) -> String {
    let text = command.entry().map_or("", |entry| entry.text);
    let what = match command {
        Command::Undo => desk.undoable(),
        Command::Redo => desk.redoable(),
        _ => None,
    };
    what.map_or_else(|| text.to_owned(), |what| format!("{text}: {what}"))
}

fn command_button(ui: &mut Ui, command: Command, desk: &Desk, actions: &mut Vec<Action>) {
    let Some(entry) = command.entry() else { return };
    let why_not = command.why_not(desk);
    let mut response = add_usable(ui, why_not.is_none(), Button::new(entry.text));
    let keys = entry.shortcuts.first().map(|s| ui.format_shortcut(s));
    let hint = format!(
        "{} ({})",
        command_text(command, desk),
        keys.unwrap_or_default()
    );
    if let Some(why) = why_not {
        response = tell_why_not(response, why);
    }
    if response.on_hover_text(hint).clicked() {
        actions.push(Action::Run(command));
    }
}

/// The pages of the window, of which one is looked at.
fn pages_ui(ui: &mut Ui, shown: AppPage, actions: &mut Vec<Action>) {
    // Right to left: the last is laid out first.
    for page in AppPage::ALL.into_iter().rev() {
        let button = ui.selectable_label(page == shown, page.text());
        let button = button.on_hover_text(page.meaning());
        describe(&button, page.meaning());
        if button.clicked() && page != shown {
            actions.push(Action::Page(page));
        }
    }
}

/// One click from km/h to mph and back.
fn units_ui(ui: &mut Ui, desk: &Desk, actions: &mut Vec<Action>) {
    // Right to left: the last is laid out first.
    for unit in SpeedUnit::ALL.into_iter().rev() {
        let is_chosen = desk.project().units == unit;
        let button = ui.selectable_label(is_chosen, unit.sign());
        describe(&button, "Shows road speeds in this unit");
        if button.clicked() && !is_chosen {
            actions.extend(View::ALL.map(|view| Action::Range(view, None)));
            actions.push(Action::Edit(Edit::Units(unit)));
        }
    }
}
