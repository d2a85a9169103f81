//! Where does everything in a table stand: each column, each line, the head?

use super::column::{LaidColumn, LaidHeading};
use super::words::Words;
use super::{Arrangement, TableLook};
use crate::chart::table::aligned;
use crate::chart::{Row, SetTable, Table};
use egui::{Ui, Vec2};

/// Between the figures of all sets and the next ones, in multiples of the text.
const BETWEEN_FIGURES: f32 = 0.8;

/// A table that is laid out, whatever of it is in view.
#[derive(Debug)]
pub struct Layout<'t> {
    pub(super) table: &'t Table,
    /// Those that stand beside each other; the first alone where each has rows of its own.
    pub(super) beside: usize,
    pub(super) gears: LaidColumn,
    pub(super) figures: Vec<LaidColumn>,
    pub(super) gears_heading: LaidHeading,
    pub(super) headings: Vec<LaidHeading>,
    /// The names of the sets beside each other, and where each stands in the head.
    pub(super) legend: Vec<(Vec2, Words)>,
    pub(super) lines: Vec<Line<'t>>,
    pub(super) row_height: f32,
    pub(super) head_height: f32,
    /// Head, gears and figures, in points.
    pub(super) size: Vec2,
    words_width: f32,
}

/// One line beneath the head.
#[derive(Debug)]
pub(super) struct Line<'t> {
    /// From the upper edge of the table, in points.
    pub(super) top: f32,
    pub(super) height: f32,
    pub(super) holds: Holds<'t>,
}

/// What stands on a line.
#[derive(Debug)]
pub(super) enum Holds<'t> {
    /// Words about a set.
    Words(Words),
    /// A gear of each set that stands there.
    Gears(Vec<Option<RowOf<'t>>>),
}

/// A row with its set.
#[derive(Debug, Clone, Copy)]
pub(super) struct RowOf<'t> {
    pub(super) set: &'t SetTable,
    pub(super) row: &'t Row,
}

impl<'t> Layout<'t> {
    /// Lays the sets of a table out.
    pub fn of(ui: &Ui, table: &'t Table, sets: &[&'t SetTable], look: &TableLook<'_>) -> Self {
        let mut columns = look.columns.iter().copied();
        let first = columns.next().unwrap_or(0);
        let rows = || sets.iter().flat_map(|set| &set.rows);
        let mut gears = LaidColumn::of_gears(ui, first, rows(), look);
        let column = &table.columns[first];
        let gears_heading = LaidHeading::of_gears(ui, column, &mut gears, look);
        let mut left = gears.width;
        let (mut figures, mut headings) = (Vec::new(), Vec::new());
        for at in columns {
            if look.arrangement == Arrangement::SideBySide {
                // What belongs to one figure stands closer together than what does not.
                left += look.text_size * BETWEEN_FIGURES;
            }
            let mut group = group(ui, at, sets, look);
            let column = &table.columns[at];
            headings.push(LaidHeading::over(ui, column, &mut group, left, look));
            left += group.iter().map(|column| column.width).sum::<f32>();
            figures.extend(group);
        }
        let row_height = (look.text_size * 1.45).round();
        let legend = match look.arrangement {
            Arrangement::OneUnderAnother => Vec::new(),
            Arrangement::SideBySide => legend(ui, sets, look, row_height),
        };
        let mut layout = Self {
            table,
            beside: match look.arrangement {
                Arrangement::OneUnderAnother => 1,
                Arrangement::SideBySide => sets.len(),
            },
            gears,
            figures,
            gears_heading,
            headings,
            legend,
            lines: Vec::new(),
            row_height,
            head_height: 0.0,
            size: Vec2::new(left, 0.0),
            words_width: 0.0,
        };
        layout.head_height = layout.needed_by_head();
        layout.size.y = layout.head_height;
        layout.take_lines(ui, sets, look);
        layout
    }

    /// Its width and height with all that is in it, in points.
    pub fn size(&self) -> Vec2 {
        self.size
    }

    /// The height of the head, in points.
    pub fn head_height(&self) -> f32 {
        self.head_height
    }

    /// The width of the column that names the gears, in points.
    pub fn gears_width(&self) -> f32 {
        self.gears.width
    }

    /// The width of the widest words about a set, in points.
    pub(super) fn words_width(&self) -> f32 {
        self.words_width
    }

    /// The height of the samples beneath the headings, which say whose figures stand under them.
    pub(super) fn sample_height(&self) -> f32 {
        if self.beside > 1 {
            (self.row_height * 0.4).round()
        } else {
            0.0
        }
    }

    fn needed_by_head(&self) -> f32 {
        let all = self.headings.iter().chain([&self.gears_heading]);
        let headings = all.map(|heading| heading.galley.size().y);
        let headings = headings.fold(0.0, f32::max);
        let legend = self
            .legend
            .iter()
            .map(|(at, words)| at.y + words.galley.size().y);
        (legend.fold(0.0, f32::max) + headings + self.sample_height() + 4.0).round()
    }

    fn take_lines(&mut self, ui: &Ui, sets: &[&'t SetTable], look: &TableLook<'_>) {
        let gap = self.row_height * 0.4;
        if look.arrangement == Arrangement::SideBySide {
            for row in aligned(sets) {
                let with_set = |(row, set): (Option<&'t Row>, &&'t SetTable)| {
                    row.map(|row| RowOf { set, row })
                };
                let gears = row.into_iter().zip(sets).map(with_set).collect();
                self.add(Holds::Gears(gears), self.row_height, 0.0);
            }
            self.size.y += gap;
        }
        for set in sets {
            let (head, findings) = Words::of(ui, set, look);
            let is_named = look.arrangement == Arrangement::OneUnderAnother;
            if is_named || look.with_remarks {
                self.add_words(head, self.row_height, look);
            }
            if is_named {
                for row in &set.rows {
                    let gears = vec![Some(RowOf { set, row })];
                    self.add(Holds::Gears(gears), self.row_height, 0.0);
                }
            }
            for finding in findings {
                self.add_words(finding, 0.0, look);
            }
            self.size.y += gap;
        }
    }

    fn add_words(&mut self, words: Words, least: f32, look: &TableLook<'_>) {
        self.words_width = self.words_width.max(words.width(look));
        // What follows a row keeps a little away from its line.
        let above = if words.swatch.is_none() { 2.0 } else { 0.0 };
        let height = words.galley.size().y.max(least);
        self.add(Holds::Words(words), height, above);
    }

    fn add(&mut self, holds: Holds<'t>, height: f32, above: f32) {
        self.lines.push(Line {
            top: self.size.y + above,
            height,
            holds,
        });
        self.size.y += above + height;
    }
}

/// The columns of one figure: one for all rows, or one for each set beside the others.
fn group(ui: &Ui, at: usize, sets: &[&SetTable], look: &TableLook<'_>) -> Vec<LaidColumn> {
    match look.arrangement {
        Arrangement::OneUnderAnother => {
            let rows: Vec<&Row> = sets.iter().flat_map(|set| &set.rows).collect();
            vec![LaidColumn::of_figures(ui, at, 0, &rows, look)]
        }
        Arrangement::SideBySide => {
            let rows = sets.iter().map(|set| set.rows.iter().collect());
            let rows = rows.enumerate();
            rows.map(|(of, rows): (usize, Vec<&Row>)| {
                LaidColumn::of_figures(ui, at, of, &rows, look)
            })
            .collect()
        }
    }
}

/// The names of the sets in as many lines as the room for words asks for.
fn legend(
    ui: &Ui,
    sets: &[&SetTable],
    look: &TableLook<'_>,
    row_height: f32,
) -> Vec<(Vec2, Words)> {
    let mut at = Vec2::ZERO;
    let mut line_height = row_height;
    let mut legend = Vec::new();
    for set in sets {
        let words = Words::name(ui, set, look);
        let width = words.width(look);
        if at.x > 0.0 && at.x + width > look.wrap_width {
            at = Vec2::new(0.0, at.y + line_height);
            line_height = row_height;
        }
        line_height = line_height.max(words.galley.size().y);
        legend.push((at, words));
        at.x += width + look.text_size * 1.6;
    }
    legend
}
