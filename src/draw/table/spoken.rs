//! A row for those who hear it: every figure with its heading, its unit and what differs.

use super::DrawnCell;
use crate::chart::{Cell, Column, GearOfSet, SetTable};
use egui::{Pos2, Rect};

/// One row: a gear of one set, or the gears of several beside each other.
#[derive(Debug, Clone)]
pub struct DrawnRow<'t> {
    /// Its gears from left to right, one for each set that has it.
    pub gears: Vec<GearOfSet>,
    /// As far as it is in view from left to right, and all of its height.
    pub rect: Rect,
    /// Its cells from left to right; the first names the gear.
    pub cells: Vec<DrawnCell<'t>>,
    /// What the gear is called.
    pub(super) name: String,
    /// The sets that have it.
    pub(super) sets: Vec<&'t SetTable>,
    /// Whether the gears of other sets stand beside it where they have it.
    pub(super) is_beside: bool,
}

impl DrawnRow<'_> {
    /// The figure that stands at a point, or what names the gear.
    pub fn cell_at(&self, at: Option<Pos2>) -> Option<&Cell> {
        let at = at?;
        let mut here = self.cells.iter().filter(|cell| cell.rect.contains(at));
        here.next().map(|cell| cell.cell)
    }

    /// The gear that stands at a point; else that of a set, else the first.
    pub fn gear_at(&self, at: Option<Pos2>, else_of: crate::project::SetId) -> Option<GearOfSet> {
        let figures = self.cells.iter().skip(1);
        let mut figures = figures.filter(|cell| at.is_some_and(|at| cell.rect.contains(at)));
        let here = figures.next_back().map(|cell| cell.gear);
        let of_set = || self.gears.iter().find(|gear| gear.set == else_of);
        here.or_else(|| of_set().or_else(|| self.gears.first()).copied())
    }

    /// Its figures with their headings, for those who hear them.
    pub fn spoken(&self) -> String {
        let figures = self.cells.get(1..).unwrap_or_default();
        let alone: Vec<&str> = self.sets.iter().map(|set| set.name.as_str()).collect();
        let (begin, between) = match alone[..] {
            [name] if !self.is_beside => (format!("{name}, gear {}", self.name), ", "),
            _ => (format!("Gear {} of {}", self.name, alone.join(", ")), "; "),
        };
        let of_one_figure = |a: &DrawnCell<'_>, b: &DrawnCell<'_>| std::ptr::eq(a.column, b.column);
        let words = figures.chunk_by(of_one_figure);
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
        return Some(spoken_cell(only.column, only.cell));
    }
    let words = |cell: &DrawnCell<'_>| match cell.cell.text.as_str() {
        "" => "none".to_owned(),
        _ => cell.cell.words(),
    };
    let figures: Vec<String> = cells.iter().map(words).collect();
    let Column { title, unit, .. } = first.column;
    let mut words = vec![title.as_str(), unit];
    words.retain(|word| !word.is_empty());
    Some(format!("{} {}", words.join(", "), figures.join(", ")))
}

fn spoken_cell(column: &Column, cell: &Cell) -> String {
    let mut words = vec![column.title.as_str(), &cell.text, column.unit];
    words.extend(cell.difference.as_deref());
    words.retain(|word| !word.is_empty());
    words.join(" ")
}
