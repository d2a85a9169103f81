//! Which gears of several sets stand in one row, where the sets stand side by side?
//!
//! Those of one label, in a position that is called the same; reverse with reverse. A gear that only one
//! set has gets a row of its own, behind the gear that it follows in its set.

use super::{Row, SetTable};
use crate::gearing::GearId;

/// The rows of the sets, one beside the other: in each there is one for each set, or none where the set
/// has no such gear. Every row of every set is in it once.
pub fn aligned<'t>(sets: &[&'t SetTable]) -> Vec<Vec<Option<&'t Row>>> {
    let mut all: Vec<Vec<Option<&'t Row>>> = Vec::new();
    for (place, set) in sets.iter().enumerate() {
        let mut next = 0;
        for row in &set.rows {
            let is_like = |beside: &Vec<Option<&Row>>| {
                let is_free = beside[place].is_none();
                is_free
                    && beside
                        .iter()
                        .flatten()
                        .any(|other| is_same_gear(other, row))
            };
            let at = all.iter().position(is_like).unwrap_or_else(|| {
                all.insert(next, vec![None; sets.len()]);
                next
            });
            all[at][place] = Some(row);
            next = at + 1;
        }
    }
    all
}

/// Whether two rows of different sets say the same of their gears but for the figures.
fn is_same_gear(a: &Row, b: &Row) -> bool {
    let is_reverse = |row: &Row| row.id == GearId::REVERSE;
    let position = |row: &Row| row.position.as_ref().map(|at| at.name.clone());
    let are_called_alike = is_reverse(a) && is_reverse(b) || a.gear == b.gear;
    is_reverse(a) == is_reverse(b) && are_called_alike && position(a) == position(b)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::table::RowPosition;
    use crate::project::{Livery, SetId};

    /// A set whose rows are called so; `1 Low` is in another position.
    fn set(names: &str) -> SetTable {
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
        SetTable {
            set: SetId(1),
            place: 0,
            livery: Livery::First,
            name: String::new(),
            is_baseline: false,
            facts: Vec::new(),
            findings: Vec::new(),
            rows: rows.collect(),
        }
    }

    fn shown(sets: &[&str]) -> Vec<String> {
        let sets: Vec<SetTable> = sets.iter().map(|names| set(names)).collect();
        let sets: Vec<&SetTable> = sets.iter().collect();
        let shown =
            |row: Option<&Row>| row.map_or_else(|| "-".to_owned(), |row| row.name().into_owned());
        let rows = aligned(&sets).into_iter();
        rows.map(|row| row.into_iter().map(shown).collect::<Vec<_>>().join("|"))
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
