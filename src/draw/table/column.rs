//! How wide is a column, and where in it do figures, differences and heading stand?

use super::TableLook;
use super::content::Heading;
use super::layout::Name;
use super::words::{font, small};
use crate::chart::Cell;
use crate::draw::bold;
use egui::text::LayoutJob;
use egui::{Align, FontFamily, FontId, Galley, Ui};
use std::sync::Arc;

/// No text in a column is wider than this share of the whole: it is made smaller instead.
const WIDEST_FIGURE: f32 = 0.5;
const WIDEST_DIFFERENCE: f32 = 0.25;

/// Between a figure and its difference, in multiples of the text.
pub(super) const DIFFERENCE_GAP: f32 = 0.4;

/// What stays free before and behind a column, in multiples of the text.
const BEFORE: f32 = 0.4;
const BEHIND: f32 = 0.35;

/// What a heading has at least before its words wrap, in multiples of the text.
const HEADING: f32 = 3.4;

/// A heading of more lines gets that much more room.
const MOST_LINES: usize = 3;
const WIDER: f32 = 1.3;

/// One column with its places, in points from the left edge of the table.
#[derive(Debug)]
pub(super) struct LaidColumn {
    /// Which heading of its part it stands under.
    pub(super) at: usize,
    /// Whose figures it holds, counted among the sets beside each other; the first where each has rows
    /// of its own.
    pub(super) of: usize,
    pub(super) left: f32,
    pub(super) width: f32,
    /// Where its figures end, and how wide the widest is.
    pub(super) right: f32,
    pub(super) figures: f32,
    /// How wide a closing bracket is: it stands behind the figures, so that digits stand under
    /// digits; 0 where there is none.
    pub(super) bracket_width: f32,
    /// What differences and closing brackets take behind the figures; 0 where there are none.
    pub(super) width_behind: f32,
}

/// The heading of one figure.
#[derive(Debug)]
pub(super) struct LaidHeading {
    pub(super) galley: Arc<Galley>,
    /// Where its words begin, end or have their middle, as they are aligned.
    pub(super) x: f32,
}

impl LaidColumn {
    /// A column of figures, as wide as these need it.
    pub(super) fn of_figures(
        ui: &Ui,
        (at, of): (usize, usize),
        cells: &[&Cell],
        look: &TableLook<'_>,
    ) -> Self {
        let cells = || cells.iter().copied();
        let plain = font(look, FontFamily::Proportional);
        let bracket_width = if cells().any(|cell| cell.is_dim) {
            measured(ui, ")", plain.clone())
        } else {
            0.0
        };
        // An opening bracket hangs out into what parts the columns, for the most part.
        let width_of = |cell: &Cell| {
            let bracket = if cell.is_dim {
                bracket_width / 3.0
            } else {
                0.0
            };
            measured(ui, &cell.text, plain.clone()) + bracket
        };
        let figures = cells().map(width_of).fold(0.0, f32::max);
        let differences = cells().filter_map(|cell| cell.difference.as_deref());
        let differences = differences.map(|words| measured(ui, words, small(look)));
        let mut difference = differences.fold(0.0, f32::max);
        difference = difference.min(look.wrap_width * WIDEST_DIFFERENCE);
        if difference > 0.0 {
            difference += look.text_size * DIFFERENCE_GAP;
        }
        let mut column = Self {
            at,
            of,
            left: 0.0,
            width: 0.0,
            right: 0.0,
            figures: figures.min(look.wrap_width * WIDEST_FIGURE),
            bracket_width,
            // A figure in brackets has no difference: both can stand in the same place.
            width_behind: difference.max(bracket_width),
        };
        column.stand_at(0.0, column.figures, look);
        column
    }

    /// The column of what names the rows.
    pub(super) fn of_names<'n>(
        ui: &Ui,
        names: impl Iterator<Item = &'n Name<'n>>,
        look: &TableLook<'_>,
    ) -> Self {
        let named = |name: &Name<'_>| {
            let remark = name.remark.as_deref();
            let remark = remark.map(|r| measured(ui, r, small(look)) + remark_gap(look));
            measured(ui, name.label, font(look, bold())) + remark.unwrap_or(0.0)
        };
        let names = names.map(named).fold(0.0, f32::max);
        let names = names.min(look.wrap_width * WIDEST_FIGURE);
        Self {
            at: 0,
            of: 0,
            left: 0.0,
            width: names,
            right: names,
            figures: names,
            bracket_width: 0.0,
            width_behind: 0.0,
        }
    }

    /// Makes room in a column of names for so many points, and for what parts it from the figures.
    pub(super) fn widen(&mut self, least: f32, look: &TableLook<'_>) {
        self.right = self.right.max(least);
        self.width = self.right + look.text_size * (BEFORE + BEHIND);
    }

    /// Puts it to a place, with that much room for its figures.
    pub(super) fn stand_at(&mut self, left: f32, room: f32, look: &TableLook<'_>) {
        self.left = left;
        self.right = left + look.text_size * BEFORE + room;
        self.width = self.right + self.width_behind + look.text_size * BEHIND - left;
    }
}

impl LaidHeading {
    /// A heading over columns that stand from `left` on, which it makes as wide as it needs.
    pub(super) fn over(
        ui: &Ui,
        column: Heading<'_>,
        columns: &mut [LaidColumn],
        left: f32,
        look: &TableLook<'_>,
    ) -> Self {
        let mut at = left;
        for column in &mut *columns {
            column.stand_at(at, column.figures, look);
            at += column.width;
        }
        let before = look.text_size * BEFORE;
        let room = columns.last().map_or(0.0, |last| last.right) - left - before;
        let least = room.max(look.text_size * HEADING);
        let align = if columns.len() > 1 {
            Align::Center
        } else {
            Align::RIGHT
        };
        let galley = heading(ui, column, align, least, look);
        let missing = (galley.size().x - room).max(0.0);
        let mut at = left;
        for (place, column) in columns.iter_mut().enumerate() {
            let more = if place == 0 { missing } else { 0.0 };
            column.stand_at(at, column.figures + more, look);
            at += column.width;
        }
        let right = columns.last().map_or(0.0, |last| last.right);
        Self {
            galley,
            x: if columns.len() > 1 {
                (left + before + right) / 2.0
            } else {
                right
            },
        }
    }

    /// A heading over the column of the names, which it makes as wide as it needs.
    pub(super) fn of_names(
        ui: &Ui,
        column: Heading<'_>,
        names: &mut LaidColumn,
        look: &TableLook<'_>,
    ) -> Self {
        let width = names.figures.max(look.text_size * HEADING);
        let galley = heading(ui, column, Align::LEFT, width, look);
        names.widen(galley.size().x, look);
        Self { galley, x: 0.0 }
    }
}

/// A heading in as many lines as its room asks for, its unit last.
fn heading(
    ui: &Ui,
    column: Heading<'_>,
    align: Align,
    width: f32,
    look: &TableLook<'_>,
) -> Arc<Galley> {
    let text = match column.unit {
        "" => column.title.to_owned(),
        unit => format!("{},\n{unit}", column.title),
    };
    // A word is parted in the middle nowhere.
    let words = text
        .split_whitespace()
        .map(|word| measured(ui, word, small(look)));
    let width = words.fold(width, f32::max);
    let in_width = |width: f32| {
        let color = look.palette.dim_text;
        let mut job = LayoutJob::simple(text.clone(), small(look), color, width);
        job.halign = align;
        ui.painter().layout_job(job)
    };
    let narrow = in_width(width);
    if narrow.rows.len() > MOST_LINES {
        in_width(width * WIDER)
    } else {
        narrow
    }
}

/// Between a gear's label and what is remarked of it, in points.
pub(super) fn remark_gap(look: &TableLook<'_>) -> f32 {
    look.text_size * 0.35
}

fn measured(ui: &Ui, text: &str, font: FontId) -> f32 {
    // The colour is that of no text, so that every colour finds the same.
    let galley = ui
        .painter()
        .layout_no_wrap(text.to_owned(), font, egui::Color32::PLACEHOLDER);
    galley.size().x
}
