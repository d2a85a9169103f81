//! A row for those who hear it: every figure with its heading, its unit and what differs.

use super::{DrawnCell, Heading, RowOf};
use crate::letters::capitalised;
use crate::project::SetId;
use egui::{Pos2, Rect};
use std::fmt::Debug;
use std::hash::Hash;

/// One row: figures of one set, or those of several beside each other.
#[derive(Debug, Clone)]
pub struct DrawnRow<'t> {
    /// Whose they are, one for each set that has any.
    pub of: Vec<RowOf>,
    /// As far as it is in view from left to right, and all of its height.
    pub rect: Rect,
    /// What it is called.
    pub name: DrawnName,
    /// Its figures from left to right.
    pub cells: Vec<DrawnCell<'t>>,
    /// The part of the table in which it stands.
    pub(super) part: &'t str,
    /// What that is about, where there are several.
    pub(super) title: Option<&'t str>,
    /// What the names are: `gear`.
    pub(super) names: &'t str,
    /// The sets that have figures in it.
    pub(super) sets: Vec<&'t str>,
    /// Whether the figures of other sets stand beside it where they have them.
    pub(super) is_beside: bool,
}

/// What a row is called.
#[derive(Debug, Clone)]
pub struct DrawnName {
    /// All of it.
    pub text: String,
    /// Where it stands.
    pub rect: Rect,
    /// Where its letters stand, if they are in view.
    pub written: Option<Rect>,
}

impl DrawnRow<'_> {
    /// What tells it from every other row of every table, as long as it is there.
    pub fn key(&self) -> impl Hash + Debug {
        (self.part, self.of.first(), &self.name.text)
    }

    /// What stands at a point: a figure without its difference, or the name.
    pub fn text_at(&self, at: Option<Pos2>) -> Option<&str> {
        let at = at?;
        if self.name.rect.contains(at) {
            return Some(&self.name.text);
        }
        let mut here = self.cells.iter().filter(|cell| cell.rect.contains(at));
        here.next().map(|cell| cell.cell.text.as_str())
    }

    /// Whose figure stands at a point; else those of a set, else the first.
    pub fn of_at(&self, at: Option<Pos2>, else_of: SetId) -> Option<RowOf> {
        let mut figures = self.cells.iter();
        let here = figures.rfind(|cell| at.is_some_and(|at| cell.rect.contains(at)));
        let of_set = || self.of.iter().find(|of| of.set == else_of);
        let here = here.map(|cell| cell.of);
        here.or_else(|| of_set().or_else(|| self.of.first()).copied())
    }

    /// All of it cell by cell, the name first, each figure with its difference.
    pub fn texts(&self) -> Vec<String> {
        let figures = self.cells.iter().map(|of| of.cell.words());
        [self.name.text.clone()]
            .into_iter()
            .chain(figures)
            .collect()
    }

    /// Its figures with their headings, for those who hear them.
    pub fn spoken(&self) -> String {
        let name = format!("{} {}", self.names, self.name.text);
        let (begin, between) = match (&self.sets[..], self.title) {
            ([set], None) if !self.is_beside => (format!("{set}, {name}"), ", "),
            ([set], Some(title)) if !self.is_beside => {
                (format!("{set}, {}, {name}", title.to_lowercase()), ", ")
            }
            (sets, None) => (
                format!("{} of {}", capitalised(&name), sets.join(", ")),
                "; ",
            ),
            (sets, Some(title)) => (format!("{title}, {name} of {}", sets.join(", ")), "; "),
        };
        let of_one_figure = |a: &DrawnCell<'_>, b: &DrawnCell<'_>| a.heading == b.heading;
        let words = self.cells.chunk_by(of_one_figure);
        let words: Vec<String> = words.filter_map(spoken_figure).collect();
        format!("{begin}: {}", words.join(between))
    }
}

/// One figure of all sets in the row; none where none has it.
fn spoken_figure(cells: &[DrawnCell<'_>]) -> Option<String> {
    let first = cells.first()?;
    if cells.iter().all(|cell| cell.cell.text.is_empty()) {
        return None;
    }
    if let [only] = cells {
        return Some(spoken_cell(only));
    }
    let words = |cell: &DrawnCell<'_>| match cell.cell.text.as_str() {
        "" => "none".to_owned(),
        _ => cell.cell.words(),
    };
    let figures: Vec<String> = cells.iter().map(words).collect();
    let Heading { title, unit, .. } = first.heading;
    let mut words = vec![title, unit];
    words.retain(|word| !word.is_empty());
    Some(format!("{} {}", words.join(", "), figures.join(", ")))
}

fn spoken_cell(DrawnCell { heading, cell, .. }: &DrawnCell<'_>) -> String {
    let unit = if cell.is_remark { "" } else { heading.unit };
    let mut words = vec![heading.title, &cell.text, unit];
    words.extend(cell.difference.as_deref());
    words.retain(|word| !word.is_empty());
    words.join(" ")
}
