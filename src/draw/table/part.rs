//! Where do the columns of a part of a table stand, and what stands in its head?

use super::column::{LaidColumn, LaidHeading};
use super::content::Part;
use super::layout::Line;
use super::words::font;
use super::{Arrangement, TableLook};
use crate::chart::Cell;
use crate::draw::bold;
use egui::{Galley, Ui};
use std::sync::Arc;

/// Between the figures of all sets and the next ones, in multiples of the text.
const BETWEEN_FIGURES: f32 = 0.8;

/// A part that is laid out.
#[derive(Debug)]
pub(super) struct LaidPart<'t> {
    pub(super) part: &'t Part<'t>,
    /// What its rows are about.
    pub(super) title: Option<Arc<Galley>>,
    pub(super) names_heading: LaidHeading,
    pub(super) headings: Vec<LaidHeading>,
    pub(super) figures: Vec<LaidColumn>,
    /// Where its head begins, from the upper edge of the table, in points.
    pub(super) top: f32,
    pub(super) head_height: f32,
    /// What stands beneath its head.
    pub(super) lines: Vec<Line<'t>>,
}

impl<'t> LaidPart<'t> {
    /// A part without its figures, for whose heading the names make room.
    pub(super) fn named(
        ui: &Ui,
        part: &'t Part<'t>,
        names: &mut LaidColumn,
        look: &TableLook<'_>,
    ) -> Self {
        let names_heading = LaidHeading::of_names(ui, part.names, names, look);
        let title = part.title.map(|title| {
            let (font, color) = (font(look, bold()), look.palette.text);
            let title = ui.painter().layout_no_wrap(title.to_owned(), font, color);
            names.widen(title.size().x, look);
            title
        });
        Self {
            part,
            title,
            names_heading,
            headings: Vec::new(),
            figures: Vec::new(),
            top: 0.0,
            head_height: 0.0,
            lines: Vec::new(),
        }
    }

    /// Puts the columns of figures beside the names; how wide all are together.
    pub(super) fn lay_figures(&mut self, ui: &Ui, names_width: f32, look: &TableLook<'_>) -> f32 {
        let mut left = names_width;
        for (at, heading) in self.part.headings.iter().enumerate() {
            if look.arrangement == Arrangement::SideBySide {
                // What belongs to one figure stands closer together than what does not.
                left += look.text_size * BETWEEN_FIGURES;
            }
            let mut group = group(ui, at, self.part, look);
            let heading = LaidHeading::over(ui, *heading, &mut group, left, look);
            self.headings.push(heading);
            left += group.iter().map(|column| column.width).sum::<f32>();
            self.figures.extend(group);
        }
        left
    }

    /// The height of its headings, in points.
    pub(super) fn needed_by_head(&self) -> f32 {
        let headings = self.headings.iter();
        let headings = headings.map(|heading| heading.galley.size().y);
        let title = self.title.as_ref().map_or(0.0, |title| title.size().y);
        headings.fold(self.names_heading.galley.size().y + title, f32::max)
    }
}

/// The columns of one figure: one for all rows, or one for each set beside the others.
fn group(ui: &Ui, at: usize, part: &Part<'_>, look: &TableLook<'_>) -> Vec<LaidColumn> {
    match look.arrangement {
        Arrangement::OneUnderAnother => {
            let cells: Vec<&Cell> = part
                .rows
                .iter()
                .flatten()
                .map(|row| row.cells[at])
                .collect();
            vec![LaidColumn::of_figures(ui, (at, 0), &cells, look)]
        }
        Arrangement::SideBySide => {
            let sets = part.rows.iter().enumerate();
            sets.map(|(of, rows)| {
                let cells: Vec<&Cell> = rows.iter().map(|row| row.cells[at]).collect();
                LaidColumn::of_figures(ui, (at, of), &cells, look)
            })
            .collect()
        }
    }
}
