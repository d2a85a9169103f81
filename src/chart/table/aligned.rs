//! Which gears of several sets stand in one row, where the sets stand side by side?
//!
//! Those of one label, in a position that is called the same; reverse with reverse. A gear that only one
//! set has gets a row of its own, behind the gear that it follows in its set.

use super::Row;
use crate::gearing::GearId;

/// What rows of several sets have in common that stand beside each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Beside<'t> {
    /// None of reverse, whatever it is called.
    label: Option<&'t str>,
    position: Option<&'t str>,
}

impl<'t> Beside<'t> {
    /// A row beside all that are called the same.
    pub fn called(label: &'t str) -> Self {
        Self {
            label: Some(label),
            position: None,
        }
    }
}

impl Row {
    /// What it has in common with the rows of other sets that say the same of their gears but for the figures.
    pub fn beside(&self) -> Beside<'_> {
        Beside {
            label: (self.id != GearId::REVERSE).then_some(&self.gear),
            position: self.position.as_ref().map(|at| at.name.as_str()),
        }
    }
}

/// The rows of the sets, one beside the other: in each there is one for each set, by its place in the set, or
/// none where the set has no such row. Every row of every set is in it once.
pub fn aligned(sets: &[Vec<Beside<'_>>]) -> Vec<Vec<Option<usize>>> {
    let mut all: Vec<(Beside<'_>, Vec<Option<usize>>)> = Vec::new();
    for (of, set) in sets.iter().enumerate() {
        let mut next = 0;
        for (place, row) in set.iter().enumerate() {
            let is_like = |(like, beside): &(Beside<'_>, Vec<Option<usize>>)| {
                beside[of].is_none() && like == row
            };
            let at = all.iter().position(is_like).unwrap_or_else(|| {
                all.insert(next, (*row, vec![None; sets.len()]));
                next
            });
            all[at].1[of] = Some(place);
            next = at + 1;
        }
    }
    all.into_iter().map(|(_, beside)| beside).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::table::RowPosition;

    /// Rows that are called so; `1 Low` is in another position.
    fn rows(names: &str) -> Vec<Row> {
        let rows = names.split(',').enumerate().map(|(at, name)| {
            let (gear, position) = match name.split_once(' ') {
                Some((gear, position)) => (gear, Some(position)),
                None => (name, None),
            };
            Row {
                id: match gear {
                    "R" => GearId::REVERSE,
                    _ => GearId(u32::try_from(at).unwrap() + 1),
                },
                gear: gear.to_owned(),
                is_crawler: false,
                position: position.map(|name| RowPosition {
                    other: 0,
                    name: name.to_owned(),
                }),
                cells: Vec::new(),
                typed: Vec::new(),
            }
        });
        rows.collect()
    }

    fn shown(sets: &[&str]) -> Vec<String> {
        let sets: Vec<Vec<Row>> = sets.iter().map(|names| rows(names)).collect();
        let mut beside = Vec::new();
        for rows in &sets {
            beside.push(rows.iter().map(Row::beside).collect());
        }
        let shown = |(row, set): (Option<usize>, &Vec<Row>)| {
            row.map_or_else(|| "-".to_owned(), |row| set[row].name().into_owned())
        };
        let rows = aligned(&beside).into_iter();
        rows.map(|row| {
            row.into_iter()
                .zip(&sets)
                .map(shown)
                .collect::<Vec<_>>()
                .join("|")
        })
        .collect()
    }

    #[test]
    fn gears_of_one_label_stand_beside_each_other() {
        assert_eq!(shown(&["1,2,R", "1,2,R"]), ["1|1", "2|2", "R|R"]);
    }

    #[test]
    fn what_only_one_set_has_stands_behind_the_gear_that_it_follows() {
        assert_eq!(
            shown(&["1,2,R", "C,1,2,3,R"]),
            ["-|C", "1|1", "2|2", "-|3", "R|R"]
        );
    }

    #[test]
    fn gears_in_another_position_stand_beside_those_of_a_position_of_that_name() {
        assert_eq!(
            shown(&["1,R,1 Low,R Low", "1,R,1 Low,R Low,1 High"]),
            ["1|1", "R|R", "1 Low|1 Low", "R Low|R Low", "-|1 High"]
        );
    }

    #[test]
    fn gears_in_another_order_or_of_one_label_twice_are_all_there() {
        assert_eq!(shown(&["1,2", "2,1"]), ["1|1", "2|2"]);
        assert_eq!(shown(&["1", "1,1"]), ["1|1", "-|1"]);
    }
}
