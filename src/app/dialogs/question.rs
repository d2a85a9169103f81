//! A question about the document, with a button for each answer.

use super::modal::{Frame, begin_anew, begin_with};
use crate::app::heard::heading_ui;
use crate::app::input::Scroll;
use crate::app::input::steps;
use crate::app::lifecycle::{Question, Step};
use egui::{Key, Response, RichText, ScrollArea, Ui};

/// What heading, text and buttons take with the dialog's margins, in points.
const LEAST_ROOM_BESIDE_DETAILS: f32 = 260.0;

/// Asks; the step that was chosen once there is one. The focus begins on the answer that loses
/// nothing, Left and Right move it, Esc is the last answer, a click beside it is nothing.
pub(crate) fn question_ui(ctx: &egui::Context, question: &Question) -> Option<Step> {
    let description = [&question.text].into_iter().chain(&question.details);
    let description: Vec<&str> = description.map(String::as_str).collect();
    let description = description.join("\n");
    let frame = Frame {
        salt: "question",
        name: question.heading,
        description: &description,
        is_question: true,
    };
    let shown = frame.show(ctx, |ui| {
        ui.set_max_width(520.0);
        heading_ui(ui, question.heading);
        ui.add_space(4.0);
        ui.label(&question.text);
        details_ui(ui, question);
        ui.add_space(10.0);
        answers_ui(ui, question)
    });
    let by_escape = question.answers.last().filter(|_| shown.is_left);
    let step = by_escape.map(|answer| answer.step.clone()).or(shown.inner);
    if step.is_some() {
        begin_anew(ctx);
    }
    step
}

/// The particulars, as many as the window has room for, the rest by scrolling.
fn details_ui(ui: &mut Ui, question: &Question) {
    if question.details.is_empty() {
        return;
    }
    ui.add_space(6.0);
    let keys = Scroll::taken_with_arrows(ui);
    let room = ui.ctx().content_rect().height() - LEAST_ROOM_BESIDE_DETAILS;
    let room = room.max(60.0);
    ScrollArea::vertical()
        .id_salt("details")
        .max_height(room)
        .min_scrolled_height(room)
        .show(ui, |ui| {
            keys.apply(ui);
            for line in &question.details {
                ui.label(line);
            }
        });
}

fn answers_ui(ui: &mut Ui, question: &Question) -> Option<Step> {
    ui.horizontal_wrapped(|ui| {
        let mut chosen = None;
        let mut buttons = Vec::new();
        for answer in &question.answers {
            let words = RichText::new(answer.words);
            let words = if answer.is_safe {
                words.strong()
            } else {
                words
            };
            let button = ui.button(words);
            if answer.is_safe {
                begin_with(ui, &button);
            }
            if button.clicked() {
                chosen = Some(answer.step.clone());
            }
            buttons.push(button);
        }
        move_among(ui, &buttons);
        chosen
    })
    .inner
}

/// Left and Right go from answer to answer.
fn move_among(ui: &Ui, buttons: &[Response]) {
    let step = steps(ui, Key::ArrowRight, Key::ArrowLeft);
    let at = buttons.iter().position(Response::has_focus);
    let to = at.and_then(|at| at.checked_add_signed(step));
    if let Some(button) = to.and_then(|to| buttons.get(to)).filter(|_| step != 0) {
        button.request_focus();
    }
}
