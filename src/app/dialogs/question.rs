//! A question with two to four answers.

use egui::{Key, Modal, Modifiers, RichText, Ui};

/// What is asked.
#[derive(Debug, Clone)]
pub(crate) struct Question<'a> {
    /// The matter, as a heading.
    pub heading: &'a str,
    /// What happens, in a sentence or two.
    pub text: &'a str,
    /// What the harmless way on is called.
    pub yes: &'a str,
    /// What the way that loses something is called, where there is one.
    pub no: Option<&'a str>,
    /// What a third way is called, where there is one.
    pub other: Option<&'a str>,
    /// What leaving everything as it is is called.
    pub cancel: &'a str,
}

/// What was answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Choice {
    /// The harmless way on.
    Yes,
    /// The way that loses something.
    No,
    /// The third way.
    Other,
    /// Nothing is to happen.
    Cancel,
}

/// Asks; the answer once there is one. Enter is yes, Esc is cancel, a click beside it is nothing.
pub(crate) fn question_ui(ctx: &egui::Context, question: &Question<'_>) -> Option<Choice> {
    let modal = Modal::new(egui::Id::unique("question")).show(ctx, |ui| {
        ui.set_max_width(420.0);
        ui.heading(question.heading);
        ui.add_space(4.0);
        ui.label(question.text);
        ui.add_space(10.0);
        buttons(ui, question)
    });
    let (escape, enter) = ctx.input_mut(|i| {
        (
            i.consume_key(Modifiers::NONE, Key::Escape),
            i.consume_key(Modifiers::NONE, Key::Enter),
        )
    });
    if escape {
        Some(Choice::Cancel)
    } else {
        modal.inner.or_else(|| enter.then_some(Choice::Yes))
    }
}

fn buttons(ui: &mut Ui, question: &Question<'_>) -> Option<Choice> {
    ui.horizontal(|ui| {
        let yes = ui.button(RichText::new(question.yes).strong()).clicked();
        let no = question.no.is_some_and(|no| ui.button(no).clicked());
        let other = question
            .other
            .is_some_and(|other| ui.button(other).clicked());
        let cancel = ui.button(question.cancel).clicked();
        let choices = [
            (yes, Choice::Yes),
            (no, Choice::No),
            (other, Choice::Other),
            (cancel, Choice::Cancel),
        ];
        let chosen = choices.into_iter().find(|(is_chosen, _)| *is_chosen);
        chosen.map(|(_, choice)| choice)
    })
    .inner
}
