//! A path, chosen in the system's dialog or typed here: typing is always possible.

use crate::app::file_picker::Purpose;
use crate::app::files::{typed_path, whole_path};
use crate::app::lifecycle::{PathQuestion, Step};
use crate::draw::palette::Palette;
use egui::{Key, Modal, Modifiers, RichText, TextEdit};

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
    let modal = Modal::new(egui::Id::unique("path")).show(ctx, |ui| {
        ui.set_width(460.0);
        ui.heading(heading);
        if dialog.request.is_some() {
            ui.label("Choose a file in the system's window, or type a path here instead.");
        } else {
            ui.label("Type the path of the file.");
        }
        ui.add_space(4.0);
        let label = ui.label("Path");
        let field = TextEdit::singleline(&mut dialog.text)
            .id(egui::Id::unique("typed path"))
            .desired_width(f32::INFINITY)
            .hint_text("for example ~/van.ron");
        let field = ui.add(field).labelled_by(label.id);
        if !ui.memory(|m| m.focused().is_some()) {
            field.request_focus();
        }
        if let Some(whole) = words_of_whole_path(&dialog.text) {
            ui.label(RichText::new(whole).small().color(palette.dim_text));
        }
        if let Some(problem) = &dialog.problem {
            ui.label(RichText::new(problem).color(palette.error));
        }
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            let go = ui.button(RichText::new(verb).strong()).clicked();
            let cancel = ui.button("Cancel").clicked();
            (go, cancel)
        })
        .inner
    });
    let (go, cancel) = modal.inner;
    let (enter, escape) = ctx.input_mut(|i| {
        (
            i.consume_key(Modifiers::NONE, Key::Enter),
            i.consume_key(Modifiers::NONE, Key::Escape),
        )
    });
    if cancel || escape {
        Some(Step::Stay)
    } else {
        (go || enter).then(|| Step::Typed(dialog.text.clone()))
    }
}

/// Where a path that does not begin at the root leads to.
fn words_of_whole_path(text: &str) -> Option<String> {
    let path = typed_path(text).filter(|path| path.is_relative())?;
    let whole = whole_path(&path).ok()?;
    Some(format!("that is {}", whole.display()))
}
