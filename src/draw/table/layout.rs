//! Where does everything in a table stand: each column, each line, the heads?

use super::column::LaidColumn;
use super::content::{Content, ContentRow, Part, SetWords};
use super::part::LaidPart;
use super::words::Words;
use super::{Arrangement, TableLook};
use crate::chart::table::{Beside, aligned};
use egui::{Ui, Vec2};
use std::borrow::Cow;

/// A table that is laid out, whatever of it is in view.
#[derive(Debug)]
pub struct Layout<'t> {
    pub(super) sets: &'t [SetWords<'t>],
    /// Those that stand beside each other; the first alone where each has rows of its own.
    pub(super) beside: usize,
    /// What names the rows, in every part.
    pub(super) names: LaidColumn,
    pub(super) parts: Vec<LaidPart<'t>>,
    /// The names of the sets beside each other, and where each stands above the first part.
    pub(super) legend: Vec<(Vec2, Words)>,
    pub(super) legend_height: f32,
    pub(super) row_height: f32,
    /// Heads, names and figures, in points.
    pub(super) size: Vec2,
    words_width: f32,
}

/// One line beneath a head.
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
    /// A row of each set that stands there.
    Rows(LaidRow<'t>),
}

/// The rows that stand on a line.
#[derive(Debug)]
pub(super) struct LaidRow<'t> {
    pub(super) name: Name<'t>,
    /// One for each set beside the others, where it has one.
    pub(super) of_sets: Vec<Option<&'t ContentRow<'t>>>,
}

/// What rows are called that stand on a line.
#[derive(Debug)]
pub(super) struct Name<'t> {
    pub(super) label: &'t str,
    pub(super) remark: Option<Cow<'t, str>>,
}

/// The rows of a part: all of one set, one set after the other, or all in one where they stand beside each
/// other.
type RowsOfPart<'t> = Vec<Vec<LaidRow<'t>>>;

impl<'t> Layout<'t> {
    /// Lays a table out.
    pub fn of(ui: &Ui, content: &'t Content<'t>, look: &TableLook<'_>) -> Self {
        let rows = content.parts.iter().map(|part| rows_of(part, look));
        let rows: Vec<RowsOfPart<'t>> = rows.collect();
        let names = rows.iter().flatten().flatten().map(|row| &row.name);
        let mut names = LaidColumn::of_names(ui, names, look);
        let heads = content.parts.iter();
        let heads: Vec<_> = heads
            .map(|part| LaidPart::named(ui, part, &mut names, look))
            .collect();
        let row_height = (look.text_size * 1.45).round();
        let legend = match look.arrangement {
            Arrangement::OneUnderAnother => Vec::new(),
            Arrangement::SideBySide => legend(ui, content, look, row_height),
        };
        let mut layout = Self {
            sets: &content.sets,
            beside: match look.arrangement {
                Arrangement::OneUnderAnother => 1,
                Arrangement::SideBySide => content.sets.len(),
            },
            size: Vec2::new(names.width, 0.0),
            names,
            parts: Vec::new(),
            legend_height: height_of(&legend),
            legend,
            row_height,
            words_width: 0.0,
        };
        layout.size.y = layout.legend_height;
        for (part, rows) in heads.into_iter().zip(rows) {
            layout.add_part(ui, content, (part, rows), look);
        }
        layout.end(ui, content, look);
        layout
    }

    /// Its width and height with all that is in it, in points.
    pub fn size(&self) -> Vec2 {
        self.size
    }

    /// The height of the highest head, in points.
    pub fn head_height(&self) -> f32 {
        let heads = self.parts.iter().map(|part| part.head_height);
        self.legend_height + heads.fold(0.0, f32::max)
    }

    /// The width of the column that names the rows, in points.
    pub fn names_width(&self) -> f32 {
        self.names.width
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

    /// Between what belongs together and what comes then, in points.
    fn gap(&self) -> f32 {
        self.row_height * 0.4
    }

    fn add_part(
        &mut self,
        ui: &Ui,
        content: &'t Content<'t>,
        (mut part, rows): (LaidPart<'t>, RowsOfPart<'t>),
        look: &TableLook<'_>,
    ) {
        let width = part.lay_figures(ui, self.names.width, look);
        self.size.x = self.size.x.max(width);
        let needed = self.legend_height + part.needed_by_head() + self.sample_height() + 4.0;
        part.head_height = needed.round() - self.legend_height;
        part.top = self.size.y;
        self.size.y += part.head_height;
        self.parts.push(part);
        let is_first = self.parts.len() == 1;
        let is_named = look.arrangement == Arrangement::OneUnderAnother;
        for (at, rows) in rows.into_iter().enumerate() {
            let is_empty = rows.is_empty();
            let mut behind = Vec::new();
            if is_named && is_first {
                let (head, findings) = Words::of(ui, &content.sets[at], look);
                self.add_words(head, self.row_height, look);
                behind = findings;
            } else if is_named && !is_empty {
                let name = Words::name(ui, &content.sets[at], look);
                self.add_words(name, self.row_height, look);
            }
            for row in rows {
                self.add(Holds::Rows(row), self.row_height, 0.0);
            }
            for finding in behind {
                self.add_words(finding, 0.0, look);
            }
            if !is_empty || is_first {
                self.size.y += self.gap();
            }
        }
    }

    /// What stands beneath all parts, with the last of which it is scrolled.
    fn end(&mut self, ui: &Ui, content: &'t Content<'t>, look: &TableLook<'_>) {
        if look.arrangement == Arrangement::SideBySide {
            let is_told = |set: &&SetWords<'_>| !(set.facts.is_empty() && set.findings.is_empty());
            for set in content.sets.iter().filter(is_told) {
                let (head, findings) = Words::of(ui, set, look);
                if look.with_remarks {
                    self.add_words(head, self.row_height, look);
                }
                for finding in findings {
                    self.add_words(finding, 0.0, look);
                }
                self.size.y += self.gap();
            }
        }
        if look.with_remarks && !content.note.is_empty() {
            self.add_words(Words::note(ui, &content.note, look), 0.0, look);
            self.size.y += self.gap();
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
        let line = Line {
            top: self.size.y + above,
            height,
            holds,
        };
        self.size.y += above + height;
        if let Some(part) = self.parts.last_mut() {
            part.lines.push(line);
        }
    }
}

/// The rows of a part in their order.
fn rows_of<'t>(part: &'t Part<'t>, look: &TableLook<'_>) -> RowsOfPart<'t> {
    match look.arrangement {
        Arrangement::OneUnderAnother => {
            let alone = |rows: &'t Vec<ContentRow<'t>>| {
                let rows = rows.iter().map(|row| LaidRow::of(vec![Some(row)]));
                rows.flatten().collect()
            };
            part.rows.iter().map(alone).collect()
        }
        Arrangement::SideBySide => {
            let beside = |rows: &Vec<ContentRow<'t>>| rows.iter().map(|row| row.beside).collect();
            let beside: Vec<Vec<Beside<'t>>> = part.rows.iter().map(beside).collect();
            let rows = aligned(&beside).into_iter().filter_map(|row| {
                let of_sets = row.into_iter().zip(&part.rows);
                LaidRow::of(of_sets.map(|(at, set)| set.get(at?)).collect())
            });
            vec![rows.collect()]
        }
    }
}

impl Name<'_> {
    /// All of it: `C crawler`.
    pub(super) fn text(&self) -> Cow<'_, str> {
        match &self.remark {
            Some(remark) => Cow::Owned(format!("{} {remark}", self.label)),
            None => Cow::Borrowed(self.label),
        }
    }
}

impl<'t> LaidRow<'t> {
    /// The rows of sets beside each other; none where no set has one.
    fn of(of_sets: Vec<Option<&'t ContentRow<'t>>>) -> Option<Self> {
        let first = of_sets.iter().flatten().next()?;
        let name = Name {
            label: first.label,
            remark: remark_of(of_sets.iter().flatten().copied()),
        };
        Some(Self { name, of_sets })
    }

    /// The rows of those sets that have one.
    pub(super) fn present(&self) -> impl Iterator<Item = &'t ContentRow<'t>> {
        self.of_sets.iter().flatten().copied()
    }
}

/// What is remarked of rows beside each other: all of it, where each has a remark of its own.
fn remark_of<'t>(mut rows: impl Iterator<Item = &'t ContentRow<'t>>) -> Option<Cow<'t, str>> {
    let first = rows.next()?.remark?;
    let mut all = vec![first];
    for row in rows {
        all.extend(row.remark.filter(|remark| !all.contains(remark)));
    }
    Some(match all[..] {
        [first] => Cow::Borrowed(first),
        _ => Cow::Owned(all.join(", ")),
    })
}

/// The names of the sets in as many lines as the room for words asks for.
fn legend(
    ui: &Ui,
    content: &Content<'_>,
    look: &TableLook<'_>,
    row_height: f32,
) -> Vec<(Vec2, Words)> {
    let mut at = Vec2::ZERO;
    let mut line_height = row_height;
    let mut legend = Vec::new();
    for set in &content.sets {
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

fn height_of(legend: &[(Vec2, Words)]) -> f32 {
    let bottoms = legend.iter();
    let bottoms = bottoms.map(|(at, words)| at.y + words.galley.size().y);
    bottoms.fold(0.0, f32::max)
}
