//! The tables on the page for the bench: figures of one size under one another, and a column to write in.

use super::Page;
use crate::chart::table::{AtTheBench, Figure};
use crate::chart::{Column, Row};
use crate::draw::bold;
use crate::draw::palette::Palette;
use crate::gearing::{GearSet, Ratio};
use egui::text::{LayoutJob, TextFormat};
use egui::{Align, Color32, FontFamily, FontId, Galley, Pos2, Sense, Ui, Vec2};
use std::sync::Arc;

/// The least room for what was measured, in points: 2 cm on paper, a number in handwriting.
const MEASURED_WIDTH: f32 = 78.0;

/// What is written by hand beside each gear: turns in for one turn out, as they are counted on the bench.
const MEASURED: &str = "measured,\nratio";

/// The height of a row, in multiples of its text.
const ROW: f32 = 1.5;

/// What parts columns, in multiples of the text.
const GAP: f32 = 0.8;

/// The text of headings, in multiples of that of the figures.
const HEAD: f32 = 0.68;

/// A heading has room for as much in a line, in multiples of the text of the figures.
const HEAD_WIDTH: f32 = 4.2;

/// The columns of the page with what stands in them, for every set.
pub(super) struct BenchTable<'a> {
    columns: Vec<BenchColumn<'a>>,
    /// The rows of each set, one cell for each column.
    sets: Vec<Vec<Vec<BenchCell>>>,
}

/// One of the columns that stand on this page.
#[derive(Clone)]
struct BenchColumn<'a> {
    /// Which column of the table it is.
    at: usize,
    column: &'a Column,
    look: AtTheBench,
    /// What stands above it, its unit in a line of its own.
    head: String,
}

/// What stands in a cell.
struct BenchCell {
    text: String,
    is_dim: bool,
}

/// The columns in one size of text.
pub(super) struct Laid {
    /// The height of every figure, in points.
    pub(super) text_size: f32,
    /// How wide each column is, the gap before the next with it, in points.
    widths: Vec<f32>,
    /// Whether every word stands on one line of its size.
    pub(super) is_unbroken: bool,
    /// What words do that are longer than their column.
    words: LongWords,
}

/// What words do that are longer than their column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LongWords {
    /// They go on in the next line.
    Break,
    /// They are made smaller, where a page cannot hold more lines.
    Shrink,
}

impl<'a> BenchTable<'a> {
    /// The sets in tables of more and more columns: with one marked speed of each kind, then with one
    /// more at a time, until all have theirs.
    pub(super) fn all(page: &'a Page) -> Vec<Self> {
        let (columns, needs) = columns(page);
        let most = needs.iter().copied().max().unwrap_or(0);
        let with = |most: usize| {
            let needed = columns
                .iter()
                .zip(&needs)
                .filter(|(_, need)| **need <= most);
            Self::with(page, needed.map(|(column, _)| column.clone()).collect())
        };
        (0..=most).map(with).collect()
    }

    fn with(page: &'a Page, columns: Vec<BenchColumn<'a>>) -> Self {
        let sets = page.table().sets.iter().map(|set| {
            let candidate = page.project().sets.get(set.set);
            let row = |row: &Row| {
                let typed = candidate.and_then(|candidate| typed_ratio(&candidate.set, row));
                columns.iter().map(|c| c.cell(row, typed)).collect()
            };
            set.rows.iter().map(row).collect()
        });
        Self {
            sets: sets.collect(),
            columns,
        }
    }

    /// Whether a figure stands in brackets.
    pub(super) fn has_brackets(&self) -> bool {
        self.sets.iter().flatten().flatten().any(|cell| cell.is_dim)
    }

    /// How wide the columns are in a size of text. Words give way to figures where the page is too narrow
    /// for all.
    pub(super) fn laid(&self, ui: &Ui, text_size: f32, words: LongWords) -> Laid {
        let natural = |at: usize| {
            let column = &self.columns[at];
            let rows = self.sets.iter().flatten();
            let widths = rows.map(|row| {
                let wide = (f32::INFINITY, words);
                column.galley(ui, &row[at].text, text_size, wide).size().x
            });
            let head = head_galley(ui, column, text_size, Color32::PLACEHOLDER)
                .size()
                .x;
            widths.fold(head, f32::max) + GAP * text_size
        };
        let mut widths: Vec<f32> = (0..self.columns.len()).map(natural).collect();
        let room = ui.available_width() - MEASURED_WIDTH;
        let lacking = widths.iter().sum::<f32>() - room;
        if lacking > 0.0 {
            let taken = |is_wanted: bool, widths: &[f32]| -> f32 {
                let columns = self.columns.iter().zip(widths);
                let wanted = columns.filter(|(c, _)| c.is_words() == is_wanted);
                wanted.map(|(_, width)| *width).sum()
            };
            let (for_words, for_figures) = (taken(true, &widths), taken(false, &widths));
            // Words keep a third of the page, whatever the figures ask for.
            let left_for_words = (room - for_figures).max(room / 3.0).min(for_words);
            let left_for_figures = (room - left_for_words).min(for_figures);
            for (column, width) in self.columns.iter().zip(&mut widths) {
                *width *= if column.is_words() {
                    left_for_words / for_words
                } else {
                    left_for_figures / for_figures
                };
            }
        }
        Laid {
            text_size,
            widths,
            is_unbroken: lacking <= 0.0,
            words,
        }
    }

    /// The headings and the rows of one of the sets, counted from 0.
    pub(super) fn set_ui(&self, ui: &mut Ui, set: usize, laid: &Laid, palette: &Palette) {
        let size = laid.text_size;
        let mut heads: Vec<Arc<Galley>> = self
            .columns
            .iter()
            .map(|column| head_galley(ui, column, size, palette.text))
            .collect();
        let font = FontId::proportional(size * HEAD);
        let painter = ui.painter();
        heads.push(painter.layout_no_wrap(MEASURED.to_owned(), font, palette.text));
        self.row_ui(ui, &heads, None, laid, palette);
        for row in self.sets.get(set).into_iter().flatten() {
            let cells = self.columns.iter().zip(row).zip(&laid.widths);
            let galleys: Vec<Arc<Galley>> = cells
                .map(|((column, cell), width)| {
                    let room = (width - GAP * size, laid.words);
                    column.galley(ui, &cell.text, size, room)
                })
                .collect();
            self.row_ui(ui, &galleys, Some(row), laid, palette);
        }
    }

    /// One row over a rule, its last column to be written in; headings stand on one ground line.
    fn row_ui(
        &self,
        ui: &mut Ui,
        galleys: &[Arc<Galley>],
        row: Option<&[BenchCell]>,
        laid: &Laid,
        palette: &Palette,
    ) {
        let size = laid.text_size;
        let highest = galleys.iter().map(|galley| galley.size().y);
        let highest = highest.fold(0.0, f32::max);
        let height = match row {
            Some(_) => (highest + size * 0.3).max(size * ROW),
            None => highest + size * 0.3,
        };
        let (rect, _) =
            ui.allocate_exact_size(Vec2::new(ui.available_width(), height), Sense::hover());
        let painter = ui.painter();
        let mut left = rect.left();
        let places = self.columns.iter().zip(&laid.widths).enumerate();
        for ((at, (column, width)), galley) in places.zip(galleys) {
            let top = match row {
                Some(_) => rect.center().y - galley.size().y / 2.0,
                None => rect.bottom() - size * 0.15 - galley.size().y,
            };
            let mut x = left;
            if column.stands_right() {
                x += width - GAP * size;
            }
            if row.is_some_and(|row| row[at].is_dim) {
                // A closing bracket hangs out, so that digits stand under digits.
                x += hanging(ui, size);
            }
            painter.galley(Pos2::new(x, top), galley.clone(), palette.text);
            left += width;
        }
        if let Some(head) = galleys.get(self.columns.len()) {
            let at = Pos2::new(
                left + size * 0.4,
                rect.bottom() - size * 0.15 - head.size().y,
            );
            painter.galley(at, head.clone(), palette.text);
        } else {
            painter.vline(left, rect.y_range(), (0.7, palette.mark));
        }
        painter.hline(rect.x_range(), rect.bottom(), (0.7, palette.mark));
    }
}

/// The columns of the table that can stand on this page, from left to right, and how far each can wait
/// for room: of those for several marked speeds the one at which most gears can be driven is needed at
/// once, the first of equals, and the others follow one by one.
fn columns(page: &Page) -> (Vec<BenchColumn<'_>>, Vec<usize>) {
    let all = page.table().columns.iter().enumerate();
    let columns: Vec<BenchColumn<'_>> = all
        .filter_map(|(at, column)| BenchColumn::of(page, at, column))
        .collect();
    let out_of_range = |column: &BenchColumn<'_>| {
        let rows = page.table().sets.iter().flat_map(|set| &set.rows);
        rows.filter(|row| row.cells[column.at].is_dim).count()
    };
    let mut by_need: Vec<usize> = (0..columns.len()).collect();
    by_need.sort_by_key(|at| out_of_range(&columns[*at]));
    let mut needs = vec![0; columns.len()];
    let mut waiting = 0;
    for (order, at) in by_need.iter().enumerate() {
        let key = columns[*at].column.definition.key;
        let mut before = by_need[..order].iter();
        if before.any(|other| columns[*other].column.definition.key == key) {
            waiting += 1;
            needs[*at] = waiting;
        }
    }
    (columns, needs)
}

impl<'a> BenchColumn<'a> {
    /// A column of the page's table, counted from 0; none where it has no place on this page.
    fn of(page: &Page, at: usize, column: &'a Column) -> Option<Self> {
        let look = column.readers.bench?;
        let title = column.figure.heading(look.title, page.project().units);
        Some(Self {
            at,
            column,
            look,
            head: match column.unit {
                "" => title,
                unit => format!("{title},\n{unit}"),
            },
        })
    }
}

impl BenchColumn<'_> {
    /// What stands in it; a ratio is said so that nobody mounts a pair the wrong way round.
    fn cell(&self, row: &Row, typed: Option<&Ratio>) -> BenchCell {
        let cell = &row.cells[self.at];
        BenchCell {
            text: match (self.column.figure, typed) {
                (Figure::TypedRatio, Some(typed)) => typed.reading(),
                (Figure::Label, _) => row.name().into_owned(),
                _ => cell.shown().into_owned(),
            },
            is_dim: cell.is_dim,
        }
    }

    /// Whether it may break into lines: a label, or what drives what.
    fn is_words(&self) -> bool {
        match self.column.figure {
            Figure::Label | Figure::TypedRatio => true,
            Figure::Number(..) | Figure::AtEngineSpeed(..) | Figure::AtRoadSpeed(..) => false,
        }
    }

    /// Whether it ends with a figure: so does what drives what, and its ratio is near the overall one.
    fn stands_right(&self) -> bool {
        !matches!(self.column.figure, Figure::Label)
    }

    /// A text of it within a width: a figure that is longer is made smaller, words may break instead.
    fn galley(
        &self,
        ui: &Ui,
        text: &str,
        text_size: f32,
        (width, words): (f32, LongWords),
    ) -> Arc<Galley> {
        let family = if self.look.stands_out {
            bold()
        } else {
            FontFamily::Proportional
        };
        let layout = |size: f32, most: f32| {
            let font = FontId::new(size, family.clone());
            let format = TextFormat::simple(font, Color32::PLACEHOLDER);
            let mut job = LayoutJob::single_section(text.to_owned(), format);
            job.wrap.max_width = most;
            if self.stands_right() {
                job.halign = Align::RIGHT;
            }
            ui.painter().layout_job(job)
        };
        if self.is_words() && words == LongWords::Break {
            // Room that was measured is not to be short of a hair.
            return layout(text_size, width + 0.5);
        }
        let galley = layout(text_size, f32::INFINITY);
        if galley.size().x > width + 0.5 {
            return layout(text_size * width.max(1.0) / galley.size().x, f32::INFINITY);
        }
        galley
    }
}

/// How far a closing bracket hangs out behind the figures.
fn hanging(ui: &Ui, text_size: f32) -> f32 {
    let font = FontId::proportional(text_size);
    let galley = ui
        .painter()
        .layout_no_wrap(")".to_owned(), font, Color32::PLACEHOLDER);
    galley.size().x
}

/// A heading in as many lines as it needs, its unit last.
fn head_galley(ui: &Ui, column: &BenchColumn<'_>, text_size: f32, color: Color32) -> Arc<Galley> {
    let family = if column.look.stands_out {
        bold()
    } else {
        FontFamily::Proportional
    };
    let font = FontId::new(text_size * HEAD, family);
    let width = match column.column.figure {
        Figure::TypedRatio => f32::INFINITY,
        _ => text_size * HEAD_WIDTH,
    };
    let mut job = LayoutJob::simple(column.head.clone(), font, color, width);
    if column.stands_right() {
        job.halign = Align::RIGHT;
    }
    ui.painter().layout_job(job)
}

/// The ratio of a row as it was typed.
fn typed_ratio<'a>(set: &'a GearSet, row: &Row) -> Option<&'a Ratio> {
    match set.gear(row.id) {
        Some(gear) => Some(&gear.ratio),
        None => set.reverse.as_ref().map(|reverse| &reverse.ratio),
    }
}
