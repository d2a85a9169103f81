//! What a job comes to: its state, and what is said of it, the most important first.

use crate::app::heard::announce;
use crate::draw::bold;
use crate::draw::palette::Palette;
use crate::letters::capitalised;
use crate::workshop::{Answer, AnswerLine, JobState, LineKind};
use egui::{Color32, FontId, Frame, Label, RichText, Ui};

/// What is said above an answer that does not go by all that stands in the fields.
const UNREAD_FIELD: &str = "A field does not read: this goes by what stood there before";

/// The height of the text of a result, in points.
const RESULT_SIZE: f32 = 15.0;

/// The height of the name of a list, and what stays free above it, in points.
const HEADING_SIZE: f32 = 13.0;
const HEADING_GAP: f32 = 4.0;

/// Shows the answer.
pub(super) fn answer_ui(ui: &mut Ui, answer: &Answer, has_unread: bool, palette: &Palette) {
    let edge = egui::Stroke::new(1.0, palette.grid);
    Frame::new()
        .stroke(edge)
        .corner_radius(4.0)
        .inner_margin(8)
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            let state = capitalised(answer.state.words());
            let color = state_color(answer.state, palette);
            let state = RichText::new(state)
                .font(FontId::new(RESULT_SIZE, bold()))
                .color(color);
            announce(&ui.label(state));
            if has_unread {
                let text = RichText::new(UNREAD_FIELD).color(palette.error);
                announce(&ui.add(Label::new(text).wrap()));
            }
            for line in &answer.lines {
                line_ui(ui, line, palette);
            }
        });
}

fn line_ui(ui: &mut Ui, line: &AnswerLine, palette: &Palette) {
    let text = RichText::new(capitalised(&line.text));
    let text = match line.kind {
        LineKind::Result => text
            .font(FontId::new(RESULT_SIZE, bold()))
            .color(palette.text),
        LineKind::Said => text.color(palette.text),
        LineKind::Heading => {
            ui.add_space(HEADING_GAP);
            text.font(FontId::new(HEADING_SIZE, bold()))
                .color(palette.text)
        }
        LineKind::Warning => text.color(palette.error),
    };
    let label = ui.add(Label::new(text).wrap());
    if matches!(line.kind, LineKind::Result | LineKind::Warning) {
        announce(&label);
    }
}

/// What asks for a hand stands out; the word tells it too.
fn state_color(state: JobState, palette: &Palette) -> Color32 {
    match state {
        JobState::ToChange => palette.error,
        JobState::Open | JobState::ToMeasure | JobState::Done => palette.text,
    }
}
