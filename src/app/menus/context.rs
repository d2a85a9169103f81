//! What a right click opens is opened by the menu key and Shift+F10 too.

use crate::app::focus::layers::enter;
use egui::{Event, Id, Key, Modifiers, Popup, Response, SetOpenCommand, Ui};

/// Whether the menu of something that has the focus was asked for by key in this frame.
pub(in crate::app) fn is_asked_for_by_key(response: &Response) -> bool {
    response.has_focus()
        && response.ctx.input_mut(|input| {
            let before = input.events.len();
            input.events.retain(|event| !asks_for_menu(event));
            input.events.len() < before
        })
}

fn asks_for_menu(event: &Event) -> bool {
    matches!(
        event,
        Event::Key {
            key: Key::Menu,
            pressed: true,
            modifiers: Modifiers::NONE,
            ..
        } | Event::Key {
            key: Key::F10,
            pressed: true,
            modifiers: Modifiers::SHIFT,
            ..
        }
    )
}

/// The menu of something, at the pointer after a right click, beneath it when asked for by key; its
/// first entry has the focus then.
pub(in crate::app) fn context_menu_ui(
    response: &Response,
    is_by_key: bool,
    contents: impl FnOnce(&mut Ui),
) {
    let ctx = &response.ctx;
    let menu = Popup::context_menu(response);
    let id = menu.get_id();
    let menu = if is_by_key {
        ctx.data_mut(|d| d.insert_temp(entering(id), true));
        menu.open_memory(Some(SetOpenCommand::Bool(true)))
            .anchor(response)
    } else if Popup::position_of_id(ctx, id).is_none() {
        menu.anchor(response)
    } else {
        menu
    };
    menu.show(|ui| {
        contents(ui);
        let is_entered = ui.data(|d| d.get_temp::<bool>(entering(id)).is_some());
        if is_entered && enter(ui) {
            ui.data_mut(|d| d.remove::<bool>(entering(id)));
        }
    });
}

/// Remembers that a menu was opened by key and its first entry waits for the focus.
fn entering(menu: Id) -> Id {
    menu.with("entered by key")
}
