//! A path, chosen in the system's dialog or typed here: typing is always possible.

use super::modal::{Frame, begin_anew, begin_with, set_width};
use crate::app::cell::{put_caret, select_all};
use crate::app::file_picker::Purpose;
use crate::app::heard::{announce, describe, heading_ui};
use crate::app::input::{pressed, taken};
use crate::app::lifecycle::{Completed, PathQuestion, Step};
use crate::draw::palette::Palette;
use crate::gearing::quoted;
use egui::{Context, Event, FocusDirection, Id, Key, Modifiers, RichText, TextEdit, Ui};

/// How many of the names that begin as typed are offered at once.
const MOST_OFFERED: usize = 6;

/// Shows the dialog; the step that it leads to once there is one.
pub(crate) fn path_dialog_ui(
    ctx: &Context,
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
    if is_typing {
        complete(ctx, field, dialog);
    }
    let shown = frame.show(ctx, |ui| {
        set_width(ui, 460.0);
        heading_ui(ui, heading);
        ui.label(words(dialog));
        ui.add_space(4.0);
        field_ui(ui, field, dialog, palette);
        offered_ui(ui, field, is_typing, dialog, palette);
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

/// Tab completes the path as far as it can be; where there is nothing to complete, it goes on as
/// everywhere.
fn complete(ctx: &Context, field: Id, dialog: &mut PathQuestion) {
    let is_tab = |event: &Event| pressed(event) == Some((Key::Tab, Modifiers::NONE));
    let is_pressed = ctx.input(|i| i.events.iter().any(is_tab));
    let was_awaited = dialog.is_awaited;
    if !(is_pressed || was_awaited) {
        return;
    }
    match dialog.complete() {
        Completed::Done => {
            taken(ctx, Key::Tab);
            put_caret(ctx, field, dialog.text.chars().count());
            ctx.request_repaint();
        }
        Completed::Later => {
            taken(ctx, Key::Tab);
        }
        Completed::Nothing if was_awaited => {
            ctx.memory_mut(|m| m.move_focus(FocusDirection::Next));
        }
        Completed::Nothing => {}
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
    if field.changed() {
        dialog.follow_typing();
        ui.ctx().request_repaint();
    }
    if begin_with(ui, &field) {
        select_all(ui, id, dialog.text.chars().count());
    }
    if let Some(target) = dialog.words_of_target() {
        ui.label(RichText::new(target).small().color(palette.dim_text));
    }
    if let Some(problem) = &dialog.problem {
        ui.label(RichText::new(problem).color(palette.error));
        ui.ctx()
            .accesskit_node_builder(id, |node| node.set_description(problem.as_str()));
    }
}

/// The names that begin as typed; Down goes to them, and one that is taken goes into the field.
fn offered_ui(
    ui: &mut Ui,
    field: Id,
    is_typing: bool,
    dialog: &mut PathQuestion,
    palette: &Palette,
) {
    let names = dialog.offered();
    if names.is_empty() {
        return;
    }
    let goes_down = is_typing && taken(ui.ctx(), Key::ArrowDown) > 0;
    let mut chosen = None;
    let mut has_focus = false;
    ui.add_space(4.0);
    for (at, name) in names.iter().take(MOST_OFFERED).enumerate() {
        let button = ui.selectable_label(false, quoted(name));
        describe(&button, "Takes this name into the path");
        if at == 0 && goes_down {
            button.request_focus();
        }
        has_focus |= button.has_focus();
        if button.clicked() {
            chosen = Some(name);
        }
    }
    let more = names.len().saturating_sub(MOST_OFFERED);
    let words = match more {
        0 => format!("{} begin like this", names.len()),
        more => format!("and {more} more"),
    };
    announce(&ui.label(RichText::new(words).small().color(palette.dim_text)));
    if let Some(name) = chosen {
        dialog.take(name);
        go_on_typing(ui, field, dialog);
    } else if has_focus && type_on(ui.ctx(), &mut dialog.text) {
        go_on_typing(ui, field, dialog);
    }
}

/// Letters typed while a name has the focus go into the path, and Backspace takes its last one;
/// whether there were any.
fn type_on(ctx: &Context, text: &mut String) -> bool {
    let is_back = |event: &Event| pressed(event) == Some((Key::Backspace, Modifiers::NONE));
    ctx.input_mut(|input| {
        let before = input.events.len();
        input.events.retain(|event| {
            match event {
                // A blank clicks the name.
                Event::Text(typed) if !typed.trim().is_empty() => text.push_str(typed),
                event if is_back(event) => {
                    text.pop();
                }
                _ => return true,
            }
            false
        });
        input.events.len() < before
    })
}

/// The path has become another one outside its field, where typing goes on.
fn go_on_typing(ui: &Ui, field: Id, dialog: &mut PathQuestion) {
    dialog.follow_typing();
    put_caret(ui.ctx(), field, dialog.text.chars().count());
    ui.memory_mut(|m| m.request_focus(field));
    ui.ctx().request_repaint();
}
