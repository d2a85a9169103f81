//! Which keys open the menus of the bar, and lead from one to the next?
//!
//! Alt with a menu's first letter opens it and F10 the first one; Left and Right go to the menus
//! beside it. Everything within a menu is the toolkit's.

use crate::app::commands::Menu;
use crate::app::focus::layers::{enter, layer_of};
use crate::app::input::pressed;
use egui::os::OperatingSystem;
use egui::{
    Context, Event, FocusDirection, Id, Key, Modifiers, Order, Popup, Response, SetOpenCommand, Ui,
    Vec2,
};

/// The menus of the bar as they were last shown.
#[derive(Debug, Default)]
pub(in crate::app) struct MenuKeys {
    /// The button of each menu, from left to right.
    buttons: Vec<(Menu, Id)>,
    /// The entries that open a further menu.
    submenus: Vec<Id>,
    /// The menu whose first entry is to have the focus.
    entered: Option<Id>,
    /// Whether a menu is open.
    is_open: bool,
}

/// The menu that a button of the bar opens.
fn popup_of(button: Id) -> Id {
    button.with("popup")
}

impl MenuKeys {
    /// Begins a frame in which bar and menus announce themselves anew, and answers the keys.
    pub(in crate::app) fn begin_frame(&mut self, ctx: &Context, has_dialog: bool) {
        let buttons = std::mem::take(&mut self.buttons);
        let submenus = std::mem::take(&mut self.submenus);
        if has_dialog {
            self.entered = None;
            return;
        }
        let open = buttons
            .iter()
            .position(|(_, id)| Popup::is_id_open(ctx, popup_of(*id)));
        if let Some(asked) = asked_for(ctx) {
            let button = match asked {
                Asked::First => buttons.first(),
                Asked::One(menu) => buttons.iter().find(|(other, _)| *other == menu),
            };
            match button {
                Some(_) if asked == Asked::First && open.is_some() => Popup::close_all(ctx),
                Some((_, button)) => self.open(ctx, *button),
                None => {}
            }
        } else if let Some(open) = open {
            let button = buttons[open].1;
            hold_focus(ctx, button);
            let step = step_aside(ctx, popup_of(button), &submenus);
            if step != 0 {
                let count = buttons.len().cast_signed();
                let to = (open.cast_signed() + step).rem_euclid(count);
                self.open(ctx, buttons[to.cast_unsigned()].1);
            }
        }
        let mut popups = buttons.iter().map(|(_, id)| popup_of(*id));
        self.is_open = popups.any(|popup| Popup::is_id_open(ctx, popup));
    }

    /// A menu that opens under the pointer too, while another one is open: where the pointer moves,
    /// not where it was left when the keys were taken.
    pub(in crate::app) fn follow_pointer<'a>(
        &self,
        menu: Popup<'a>,
        button: &Response,
    ) -> Popup<'a> {
        let has_moved = button.ctx.input(|i| i.pointer.delta() != Vec2::ZERO);
        if self.is_open && has_moved && button.hovered() && !button.clicked() {
            menu.open_memory(Some(SetOpenCommand::Bool(true)))
        } else {
            menu
        }
    }

    /// Announces the button of a menu.
    pub(in crate::app) fn announce(&mut self, menu: Menu, button: &Response) {
        self.buttons.push((menu, button.id));
    }

    /// Announces an entry that opens a further menu.
    pub(in crate::app) fn announce_submenu(&mut self, entry: &Response) {
        self.submenus.push(entry.id);
    }

    fn open(&mut self, ctx: &Context, button: Id) {
        Popup::open_id(ctx, popup_of(button));
        ctx.memory_mut(|m| {
            m.move_focus(FocusDirection::None);
            m.request_focus(button);
        });
        self.entered = Some(popup_of(button));
        ctx.request_repaint();
    }

    /// Gives the focus to the first entry of a menu that was opened by key, behind its contents.
    pub(in crate::app) fn enter(&mut self, ui: &Ui) {
        if self.entered == Some(ui.layer_id().id) && enter(ui) {
            self.entered = None;
        }
    }
}

/// A menu that is asked for by key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Asked {
    /// The first of the bar; once more, and it closes.
    First,
    /// The one with that letter.
    One(Menu),
}

/// The menu that is asked for by key; the key's letter is used up too.
fn asked_for(ctx: &Context) -> Option<Asked> {
    // There, Alt makes letters of its own.
    let has_letters = ctx.os() != OperatingSystem::Mac;
    ctx.input_mut(|input| {
        let (at, menu) = input.events.iter().enumerate().find_map(|(at, event)| {
            let menu = match pressed(event)? {
                (Key::F10, Modifiers::NONE) => Asked::First,
                (key, Modifiers::ALT) if has_letters => Asked::One(of_key(key)?),
                _ => return None,
            };
            Some((at, menu))
        })?;
        input.events.remove(at);
        let is_letter =
            |event: &Event| matches!(event, Event::Text(text) if text.chars().count() == 1);
        if menu != Asked::First && input.events.get(at).is_some_and(is_letter) {
            input.events.remove(at);
        }
        Some(menu)
    })
}

fn of_key(key: Key) -> Option<Menu> {
    Menu::ALL.into_iter().find(|menu| menu.key() == Some(key))
}

/// Keeps the keys of an open menu from what lies beneath it.
fn hold_focus(ctx: &Context, button: Id) {
    let focused = ctx.memory(egui::Memory::focused);
    let beneath = focused.and_then(|id| layer_of(ctx, id));
    if focused != Some(button) && beneath.is_some_and(|layer| layer.order < Order::Foreground) {
        ctx.memory_mut(|m| m.request_focus(button));
    }
}

/// Where Left and Right lead from an open menu: to the menu before it or behind it.
///
/// Right into a further menu and Left out of it are the toolkit's.
fn step_aside(ctx: &Context, menu: Id, submenus: &[Id]) -> isize {
    let focused = ctx.memory(egui::Memory::focused);
    let layer = focused.and_then(|id| layer_of(ctx, id));
    let is_in_submenu =
        layer.is_some_and(|layer| layer.order == Order::Foreground && layer.id != menu);
    let opens_another = focused.is_some_and(|id| submenus.contains(&id));
    let mut step = 0;
    if !opens_another {
        step += taken(ctx, Key::ArrowRight);
    }
    if !is_in_submenu {
        step -= taken(ctx, Key::ArrowLeft);
    }
    step
}

fn taken(ctx: &Context, key: Key) -> isize {
    crate::app::input::taken(ctx, key).cast_signed()
}
