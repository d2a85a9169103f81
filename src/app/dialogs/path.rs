//! A path, chosen in the system's dialog or typed here: typing is always possible.

use super::modal::{Frame, begin_anew, begin_with, set_width};
use crate::app::cell::select_all;
use crate::app::file_picker::Purpose;
use crate::app::files::{typed_path, whole_path};
use crate::app::heard::heading_ui;
use crate::app::lifecycle::{PathQuestion, Step};
use crate::draw::palette::Palette;
use egui::{Id, Key, Modifiers, RichText, TextEdit, Ui};

/// Shows the dialog; the step that it leads to once there is one.
pub(crate) fn path_dialog_ui(
    ctx: &egui::Context,
    dialog: &mut PathQuestion,
    palette: &Palette,
) -> Option<Step> {
    let (heading, verb) = match dialog.purpose {
        Purpose::Open => ("Open a project", "Open"),
        Purpose::Save => ("Save the project", "Save"),
        Purpose::SavePicture => ("Save the picture", "Save"),
    };
    let frame = Frame {
        salt: "path",
        name: heading,
        description: words(dialog),
        is_question: false,
    };
    let field = Id::unique("typed path");
    // A field lets go of the focus when Enter is pressed in it.
    let is_typing = ctx.memory(|m| m.has_focus(field));
    let shown = frame.show(ctx, |ui| {
        set_width(ui, 460.0);
        heading_ui(ui, heading);
        ui.label(words(dialog));
        ui.add_space(4.0);
        field_ui(ui, field, dialog, palette);
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            let go = ui.button(RichText::new(verb).strong()).clicked();
            let cancel = ui.button("Cancel").clicked();
            (go, cancel)
        })
        .inner
    });
    let (go, cancel) = shown.inner;
    let enter = is_typing && ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Enter));
    let step = if cancel || shown.is_left {
        Some(Step::Stay)
    } else {
        (go || enter).then(|| Step::Typed(dialog.text.clone()))
    };
    if step.is_some() {
        begin_anew(ctx);
    }
    step
}

/// What is to be done, in a sentence.
fn words(dialog: &PathQuestion) -> &'static str {
    if dialog.request.is_some() {
        "Choose a file in the system's window, or type a path here instead."
    } else {
        "Type the path of the file."
    }
}

/// The path as it is being typed, where it leads, and why the last one did not do.
fn field_ui(ui: &mut Ui, id: Id, dialog: &mut PathQuestion, palette: &Palette) {
    let label = ui.label("Path");
    let field = TextEdit::singleline(&mut dialog.text)
        .id(id)
        .desired_width(f32::INFINITY)
        .hint_text("for example ~/van.ron");
    let field = ui.add(field).labelled_by(label.id);
    if begin_with(ui, &field) {
        select_all(ui, id, dialog.text.chars().count());
    }
    if let Some(whole) = words_of_whole_path(&dialog.text) {
        ui.label(RichText::new(whole).small().color(palette.dim_text));
    }
    if let Some(problem) = &dialog.problem {
        ui.label(RichText::new(problem).color(palette.error));
        ui.ctx()
            .accesskit_node_builder(id, |node| node.set_description(problem.as_str()));
    }
}

/// Where a path that does not begin at the root leads to.
fn words_of_whole_path(text: &str) -> Option<String> {
    let path = typed_path(text).filter(|path| path.is_relative())?;
    let whole = whole_path(&path).ok()?;
    Some(format!("that is {}", whole.display()))
}
