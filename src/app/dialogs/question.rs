//! A question about the document, with a button for each answer.

use crate::app::lifecycle::{Question, Step};
use egui::{Key, Modal, Modifiers, RichText, ScrollArea, Ui};

/// What heading, text and buttons take with the dialog's margins, in points.
const LEAST_ROOM_BESIDE_DETAILS: f32 = 260.0;

/// Asks; the step that was chosen once there is one. Enter is the first answer, Esc the last, a
/// click beside it is nothing.
pub(crate) fn question_ui(ctx: &egui::Context, question: &Question) -> Option<Step> {
    let modal = Modal::new(egui::Id::unique("question")).show(ctx, |ui| {
        ui.set_max_width(520.0);
        ui.heading(question.heading);
        ui.add_space(4.0);
        ui.label(&question.text);
        details_ui(ui, question);
        ui.add_space(10.0);
        buttons(ui, question)
    });
    let (escape, enter) = ctx.input_mut(|i| {
        (
            i.consume_key(Modifiers::NONE, Key::Escape),
            i.consume_key(Modifiers::NONE, Key::Enter),
        )
    });
    let answers = &question.answers;
    let by_key = if escape {
        answers.last()
    } else {
        answers.first().filter(|_| enter)
    };
    let by_key = by_key.map(|answer| answer.step.clone());
    if escape {
        by_key
    } else {
        modal.inner.or(by_key)
    }
}

/// The particulars, as many as the window has room for, the rest by scrolling.
fn details_ui(ui: &mut Ui, question: &Question) {
    if question.details.is_empty() {
        return;
    }
    ui.add_space(6.0);
    let room = ui.ctx().content_rect().height() - LEAST_ROOM_BESIDE_DETAILS;
    ScrollArea::vertical()
        .id_salt("details")
        .max_height(room.max(60.0))
        .show(ui, |ui| {
            for line in &question.details {
                ui.label(line);
            }
        });
}

fn buttons(ui: &mut Ui, question: &Question) -> Option<Step> {
    ui.horizontal_wrapped(|ui| {
        let mut chosen = None;
        for (at, answer) in question.answers.iter().enumerate() {
            let words = RichText::new(answer.words);
            let words = if at == 0 { words.strong() } else { words };
            if ui.button(words).clicked() {
                chosen = Some(answer.step.clone());
            }
        }
        chosen
    })
    .inner
}
