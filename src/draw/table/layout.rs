//! Where does everything in a table stand: how wide is each column, how high each set?

use super::TableLook;
use crate::chart::{Cell, Column, Row, SetTable, Table};
use crate::draw::bold;
use egui::text::{LayoutJob, TextFormat};
use egui::{Align, FontFamily, FontId, Galley, Ui};
use std::sync::Arc;

/// What is said of a set beside its figures, wrapped.
pub(super) struct SetWords {
    pub(super) head: Arc<Galley>,
    pub(super) findings: Vec<Arc<Galley>>,
}

impl SetWords {
    pub(super) fn of(ui: &Ui, set: &SetTable, look: &TableLook<'_>) -> Self {
        let mut head = LayoutJob::default();
        let room = look.wrap_width - swatch_width(look);
        head.wrap.max_width = room;
        let bold = TextFormat::simple(font(look, bold()), look.palette.text);
        head.append(&set.name, 0.0, bold);
        if look.with_remarks {
            let baseline = if set.is_baseline { "baseline, " } else { "" };
            let facts = format!("{baseline}{}", set.facts_text(", "));
            let dim = TextFormat::simple(small(look), look.palette.dim_text);
            head.append(&facts, look.text_size * 0.8, dim);
        }
        let finding = |text: &String| {
            let color = look.palette.finding;
            let text = text.clone();
            ui.painter()
                .layout(text, small(look), color, look.wrap_width)
        };
        Self {
            head: ui.painter().layout_job(head),
            findings: if look.with_remarks {
                set.findings.iter().map(finding).collect()
            } else {
                Vec::new()
            },
        }
    }

    pub(super) fn width(&self) -> f32 {
        let findings = self.findings.iter().map(|f| f.size().x);
        findings.fold(self.head.size().x + 60.0, f32::max)
    }
}

/// What the swatch takes before a set's name, in points.
pub(super) fn swatch_width(look: &TableLook<'_>) -> f32 {
    look.text_size * 2.2 + 6.0
}

/// What is laid out once for all sets, so that figures stand under figures.
pub(super) struct Layout {
    pub(super) columns: Vec<LaidColumn>,
    pub(super) row_height: f32,
}

/// One column with its places.
pub(super) struct LaidColumn {
    /// Which column of the table it is.
    pub(super) at: usize,
    pub(super) is_number: bool,
    pub(super) width: f32,
    /// How wide a closing bracket is: it stands behind the figures, so that digits stand under
    /// digits; 0 where there is none.
    pub(super) bracket_width: f32,
    /// What differences and closing brackets take behind the figures; 0 where there are none.
    pub(super) width_behind: f32,
    pub(super) head: Arc<Galley>,
}

impl Layout {
    pub(super) fn of(ui: &Ui, table: &Table, sets: &[&SetTable], look: &TableLook<'_>) -> Self {
        let wanted = look
            .columns
            .iter()
            .filter_map(|&at| Some((at, table.columns.get(at)?)));
        let columns: Vec<LaidColumn> = wanted
            .map(|(at, column)| LaidColumn::of(ui, column, at, sets, look))
            .collect();
        Self {
            row_height: (look.text_size * 1.45).round(),
            columns,
        }
    }

    pub(super) fn head_height(&self) -> f32 {
        let heads = self.columns.iter().map(|c| c.head.size().y);
        (heads.fold(0.0, f32::max) + 4.0).round()
    }

    pub(super) fn width(&self) -> f32 {
        self.columns.iter().map(|c| c.width).sum()
    }

    /// The height of a set with its words, its gears and the gap behind it.
    pub(super) fn height_of(&self, set: &SetTable, words: &SetWords) -> f32 {
        let findings: f32 = words.findings.iter().map(|f| f.size().y + 2.0).sum();
        let head = words.head.size().y.max(self.row_height);
        head + self.row_height * (set.rows.len() as f32 + 0.4) + findings
    }
}

pub(super) fn font(look: &TableLook<'_>, family: FontFamily) -> FontId {
    FontId::new(look.text_size, family)
}

pub(super) fn small(look: &TableLook<'_>) -> FontId {
    FontId::proportional(look.text_size * 0.88)
}

impl LaidColumn {
    pub(super) fn of(
        ui: &Ui,
        column: &Column,
        at: usize,
        sets: &[&SetTable],
        look: &TableLook<'_>,
    ) -> Self {
        let cells = || {
            sets.iter()
                .flat_map(|set| &set.rows)
                .map(|row| &row.cells[at])
        };
        let widest = |widths: &mut dyn Iterator<Item = f32>| widths.fold(0.0, f32::max);
        let measured = |text: &str, font: FontId| {
            let color = look.palette.text;
            let galley = ui.painter().layout_no_wrap(text.to_owned(), font, color);
            galley.size().x
        };
        let family = if column.is_number {
            FontFamily::Proportional
        } else {
            bold()
        };
        let plain = font(look, family);
        let mut bracket_width = 0.0;
        if cells().any(|c| c.is_dim) {
            bracket_width = measured(")", plain.clone());
        }
        // An opening bracket hangs out into what parts the columns, for the most part.
        let width_of = |cell: &Cell| {
            let bracket = if cell.is_dim {
                bracket_width / 3.0
            } else {
                0.0
            };
            measured(&cell.text, plain.clone()) + bracket
        };
        let named = |row: &Row| {
            let remark = row.remark().filter(|_| !column.is_number);
            let remark = remark.map(|r| measured(r, small(look)) + remark_gap(look));
            width_of(&row.cells[at]) + remark.unwrap_or(0.0)
        };
        let figures = widest(&mut sets.iter().flat_map(|set| &set.rows).map(named));
        let figures = figures.min(look.wrap_width * WIDEST_FIGURE);
        let differences = cells().filter_map(|c| c.difference.as_deref());
        let mut difference_width = widest(&mut differences.map(|d| measured(d, small(look))));
        difference_width = difference_width.min(look.wrap_width * WIDEST_DIFFERENCE);
        if difference_width > 0.0 {
            difference_width += look.text_size * DIFFERENCE_GAP;
        }
        // A figure in brackets has no difference: both can stand in the same place.
        let width_behind = difference_width.max(bracket_width);
        let head = head_galley(ui, column, figures, width_behind, look);
        let head_width = head.size().x - width_behind;
        Self {
            at,
            is_number: column.is_number,
            width: head_width.max(figures) + width_behind + look.text_size * 0.75,
            bracket_width,
            width_behind,
            head,
        }
    }
}

/// No text in a column is wider than this share of the whole: it is made smaller instead.
const WIDEST_FIGURE: f32 = 0.5;
const WIDEST_DIFFERENCE: f32 = 0.25;

/// Between a figure and its difference, in multiples of the text.
pub(super) const DIFFERENCE_GAP: f32 = 0.4;

/// Between a gear's label and what is remarked of it, in points.
pub(super) fn remark_gap(look: &TableLook<'_>) -> f32 {
    look.text_size * 0.35
}

/// A heading in as many lines as its column's width asks for, its unit last.
///
/// Over differences it has the room of both, and begins with the figure.
pub(super) fn head_galley(
    ui: &Ui,
    column: &Column,
    figures: f32,
    width_behind: f32,
    look: &TableLook<'_>,
) -> Arc<Galley> {
    let text = match column.unit {
        "" => column.title.clone(),
        unit => format!("{},\n{unit}", column.title),
    };
    let width = figures.max(look.text_size * 3.4) + width_behind;
    let font = small(look);
    let mut job = LayoutJob::simple(text, font, look.palette.dim_text, width);
    job.halign = if column.is_number {
        Align::RIGHT
    } else {
        Align::LEFT
    };
    ui.painter().layout_job(job)
}
