//! The rows of a set in other positions than it stands in: they follow from it, and are left out.

use super::error::TableError;
use super::found::{FoundRow, FoundSet};
use super::headings::Column;
use crate::gearing::{Combination, Stage, other_combinations, quoted};

/// Leaves out the rows of other positions of a set, whose stages are told above its cells where anything
/// is told of them; `number` is its own in the text.
///
/// CSV has a column that tells these rows. In a text they stand behind the set's own, in the order of the
/// positions that its stages show, each named after its gear and its position.
///
/// # Errors
/// When some of these rows are there and others are not.
pub(super) fn leave_out(
    number: usize,
    set: &mut FoundSet,
    stages: &[Stage],
) -> Result<(), TableError> {
    if let Some(at) = set
        .headings
        .iter()
        .position(|h| h.column == Column::Position)
    {
        let is_own = |row: &FoundRow| row.cells.get(at).is_none_or(String::is_empty);
        set.rows.retain(is_own);
        return Ok(());
    }
    let shown = other_combinations(stages);
    let count = set.rows.len();
    let own = if set.facts.is_none() {
        (1..count).find(|own| are_named_after_gears(set, *own))
    } else {
        (1..=count).find(|own| are_those_shown(set, *own, &shown))
    };
    match own {
        Some(own) => set.rows.truncate(own),
        None if has_any(set, &shown) => {
            let last = set.rows.last().map_or("", |row| row.label.as_str());
            return Err(TableError::MissesGears {
                set: number,
                gear: quoted(last),
            });
        }
        // They were left out by somebody.
        None => {}
    }
    Ok(())
}

/// Whether the rows behind the first ones are those of their gears in all positions that are shown.
fn are_those_shown(set: &FoundSet, own: usize, shown: &[Combination]) -> bool {
    let (own, behind) = set.rows.split_at(own);
    let wanted = shown.iter().flat_map(|combination| {
        let gears = own.iter().filter(|row| is_other(set, row, combination));
        gears.map(|row| named(row, combination))
    });
    wanted.eq(behind.iter().map(|row| row.label.as_str().to_owned()))
}

/// Whether the rows behind the first ones are all named after gears of these, with words behind.
fn are_named_after_gears(set: &FoundSet, own: usize) -> bool {
    let (own, behind) = set.rows.split_at(own);
    behind.iter().all(|row| {
        let mut gears = own.iter();
        gears.any(|gear| {
            let words = row.label.strip_prefix(gear.label.as_str());
            words.is_some_and(|words| words.starts_with(' '))
        })
    })
}

fn has_any(set: &FoundSet, shown: &[Combination]) -> bool {
    let mut rows = set.rows.iter();
    rows.any(|row| {
        let mut names = set
            .rows
            .iter()
            .flat_map(|gear| shown.iter().map(|combination| named(gear, combination)));
        names.any(|name| name == row.label)
    })
}

fn named(row: &FoundRow, combination: &Combination) -> String {
    format!("{} {}", row.label, combination.name)
}

/// Whether all stages that stand otherwise in a combination act on the gear of a row.
fn is_other(set: &FoundSet, row: &FoundRow, combination: &Combination) -> bool {
    let Some(through) = set.cell(row, Column::ThroughStage) else {
        return true;
    };
    let mut moved = combination
        .moved
        .iter()
        .map(|stage| format!("{}", stage + 1));
    moved.all(|number| through.split(" and ").any(|acting| acting.trim() == number))
}
