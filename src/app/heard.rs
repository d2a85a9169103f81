//! What do those hear who cannot see the window, beyond what the toolkit tells by itself?

use crate::draw::theme::DISABLED_ALPHA;
use egui::accesskit::Live;
use egui::{CollapsingResponse, Response, RichText, Role, Ui, UiKind, Widget};

/// Names the panel that is being shown.
pub(super) fn name_panel(ui: &Ui, name: &str) {
    name_around(ui, Role::Pane, name);
}

/// Names the menu that is being shown after what it acts on.
pub(super) fn name_menu(ui: &Ui, name: &str) {
    name_around(ui, Role::Menu, name);
}

/// Names the nearest of its kind that is being shown.
fn name_around(ui: &Ui, role: Role, name: &str) {
    let is_it = |kind: UiKind| kind.accesskit_role() == role;
    let mut around = ui.stack().iter();
    if let Some(around) = around.find(|around| around.kind().is_some_and(is_it)) {
        ui.accesskit_node_builder(around.unique_id, |node| node.set_label(name));
    }
}

/// Says more of something than its name does; a tooltip says it only to those who point.
pub(super) fn describe(response: &Response, text: &str) {
    let ctx = &response.ctx;
    ctx.accesskit_node_builder(response.id, |node| node.set_description(text));
}

/// Lets it be announced whenever its words change, without an interruption.
pub(super) fn announce(response: &Response) {
    let ctx = &response.ctx;
    ctx.accesskit_node_builder(response.id, |node| node.set_live(Live::Polite));
}

/// Shows something that can be used or not; it pales where it cannot, under a dialog too, where all is
/// disabled and nothing else pales.
pub(super) fn add_usable(ui: &mut Ui, is_usable: bool, widget: impl Widget) -> Response {
    let opacity = ui.opacity();
    if !is_usable && !ui.is_enabled() {
        ui.multiply_opacity(DISABLED_ALPHA);
    }
    let response = ui.add_enabled(is_usable, widget);
    ui.set_opacity(opacity);
    response
}

/// Says of something that cannot be used why it cannot.
pub(super) fn tell_why_not(response: Response, why: &str) -> Response {
    let why = format!("Not now: {why}");
    if !response.enabled() {
        describe(&response, &why);
    }
    response.on_disabled_hover_text(why)
}

/// Says of a section whether it is folded.
pub(super) fn tell_folded<R>(section: &CollapsingResponse<R>) {
    if section.body_response.is_none() {
        describe(&section.header_response, "folded");
    }
}

/// A heading, which those who hear the window can go to.
pub(super) fn heading_ui(ui: &mut Ui, text: &str) {
    let heading = ui.heading(text);
    say_as(ui, &heading, Role::Heading, text);
}

/// One line of a list.
pub(super) fn item_ui(ui: &mut Ui, text: &str) {
    let item = ui.label(RichText::new(text));
    say_as(ui, &item, Role::ListItem, text);
}

/// What was shown as a text is something else for those who hear it.
fn say_as(ui: &Ui, shown: &Response, role: Role, text: &str) {
    ui.accesskit_node_builder(shown.id, |node| {
        node.set_role(role);
        node.clear_value();
        node.set_label(text);
    });
}
