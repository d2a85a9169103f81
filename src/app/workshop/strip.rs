//! How far the open job is, in one line above a narrow form: seen whatever is scrolled to.

use super::bench::{is_narrow, open_job};
use crate::app::desk::Desk;
use crate::letters::capitalised;
use crate::workshop::{Answer, BenchItem, LineKind};
use egui::{Label, RichText, Ui};

/// Shows the line, where the answer stands beneath the form.
pub(in crate::app) fn strip_ui(ui: &mut Ui, desk: &Desk, open: Option<BenchItem>) {
    let found = open_job(desk, open).filter(|_| is_narrow(ui.available_width()));
    if let Some((_, answer)) = found {
        let text = RichText::new(in_one_line(answer)).strong();
        ui.add(Label::new(text).truncate());
        ui.separator();
    }
}

/// `To be measured: turn it to 39.002 to 39.018 mm for k6`: the state, and the most important that is said of it.
fn in_one_line(answer: &Answer) -> String {
    let state = capitalised(answer.state.words());
    let is_told = |kind: LineKind| matches!(kind, LineKind::Result | LineKind::Warning);
    let told = answer.lines.iter().find(|line| is_told(line.kind));
    let told = told.or_else(|| answer.lines.first());
    match told {
        Some(line) => format!("{state}: {}", line.text),
        None => state,
    }
}
