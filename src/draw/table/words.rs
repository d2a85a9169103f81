//! What is said of a set beside its figures, wrapped.

use super::TableLook;
use super::content::SetWords;
use crate::draw::bold;
use crate::project::Livery;
use egui::text::{LayoutJob, TextFormat};
use egui::{Color32, FontFamily, FontId, Galley, Ui};
use std::sync::Arc;

/// Words on lines of their own.
#[derive(Debug)]
pub(super) struct Words {
    pub(super) galley: Arc<Galley>,
    /// The livery of the set whose colour and dash stand before them.
    pub(super) swatch: Option<Livery>,
    /// What is heard of them; none where they are a name alone, which every row says.
    pub(super) spoken: Option<String>,
}

impl Words {
    /// The name of a set.
    pub(super) fn name(ui: &Ui, set: &SetWords<'_>, look: &TableLook<'_>) -> Self {
        Self::head(ui, set, look, "")
    }

    /// The name of a set with its facts, then its findings.
    pub(super) fn of(ui: &Ui, set: &SetWords<'_>, look: &TableLook<'_>) -> (Self, Vec<Self>) {
        if !look.with_remarks {
            return (Self::name(ui, set, look), Vec::new());
        }
        let finding = |text: &String| Self::sentences(ui, text, look.palette.finding, look);
        let findings = set.findings.iter().map(finding).collect();
        (Self::head(ui, set, look, &set.facts), findings)
    }

    /// What holds for all figures.
    pub(super) fn note(ui: &Ui, text: &str, look: &TableLook<'_>) -> Self {
        Self::sentences(ui, text, look.palette.dim_text, look)
    }

    fn sentences(ui: &Ui, text: &str, color: Color32, look: &TableLook<'_>) -> Self {
        let painter = ui.painter();
        Self {
            galley: painter.layout(text.to_owned(), small(look), color, look.wrap_width),
            swatch: None,
            spoken: Some(text.to_owned()),
        }
    }

    fn head(ui: &Ui, set: &SetWords<'_>, look: &TableLook<'_>, facts: &str) -> Self {
        let mut head = LayoutJob::default();
        head.wrap.max_width = look.wrap_width - swatch_width(look);
        let bold = TextFormat::simple(font(look, bold()), look.palette.text);
        head.append(set.name, 0.0, bold);
        if !facts.is_empty() {
            let dim = TextFormat::simple(small(look), look.palette.dim_text);
            head.append(facts, look.text_size * 0.8, dim);
        }
        Self {
            galley: ui.painter().layout_job(head),
            swatch: Some(set.livery),
            spoken: (!facts.is_empty()).then(|| format!("{}: {facts}", set.name)),
        }
    }

    pub(super) fn width(&self, look: &TableLook<'_>) -> f32 {
        let swatch = self.swatch.map_or(0.0, |_| swatch_width(look));
        self.galley.size().x + swatch
    }
}

/// The longest part of a line that is not parted, in letters: more might not fit on any line.
const LONGEST_PART: usize = 40;

/// A list that breaks between its parts, not within them: "turn" alone in a line says nothing.
pub(super) fn kept_together(list: &str) -> String {
    let parts = list.split(", ").map(|part| {
        if part.chars().count() > LONGEST_PART {
            part.to_owned()
        } else {
            part.replace(' ', "\u{a0}")
        }
    });
    parts.collect::<Vec<_>>().join(", ")
}

/// What the swatch takes before a set's name, in points.
pub(super) fn swatch_width(look: &TableLook<'_>) -> f32 {
    look.text_size * 2.2 + 6.0
}

pub(super) fn font(look: &TableLook<'_>, family: FontFamily) -> FontId {
    FontId::new(look.text_size, family)
}

pub(super) fn small(look: &TableLook<'_>) -> FontId {
    FontId::proportional(look.text_size * 0.88)
}
