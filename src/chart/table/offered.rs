//! Which columns can a reader have or leave, and what is each called where one chooses among them?

use super::columns::COLUMNS;
use super::definition::{ColumnDefinition, Holds, Need};
use crate::project::Project;

/// A column that can be had or left, or all that stand for the speeds of one kind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OfferedColumn {
    /// Its name in files: [`ColumnDefinition::key`].
    pub key: &'static str,
    /// What it is called: `drop, rpm`.
    pub name: String,
    /// Whether it is usual in a comparison.
    pub is_usual: bool,
}

/// All that a table of a project can have beside the gears, from left to right.
pub fn offered_columns(project: &Project) -> Vec<OfferedColumn> {
    let is_there = |definition: &&&ColumnDefinition| definition.is_known(&project.engine);
    let there = COLUMNS.iter().filter(is_there);
    there
        .filter_map(|definition| offered(definition, project))
        .collect()
}

fn offered(definition: &ColumnDefinition, project: &Project) -> Option<OfferedColumn> {
    let readers = definition.readers?;
    let with_unit = |title: &str, unit: &str| match unit {
        "" => title.to_owned(),
        unit => format!("{title}, {unit}"),
    };
    let name = match definition.holds {
        // There is no row without it.
        Holds::Label => return None,
        Holds::TypedRatio => readers.title.to_owned(),
        Holds::Number(measure, _) | Holds::AtIdle(measure, _) => {
            with_unit(readers.title, measure.unit(project.units))
        }
        Holds::AtEngineSpeeds(measure, ..) => {
            let title = format!("{} marked engine speeds", readers.title);
            with_unit(&title, measure.unit(project.units))
        }
        Holds::AtRoadSpeeds(measure, ..) => {
            let title = format!("{} marked road speeds", readers.title);
            with_unit(&title, measure.unit(project.units))
        }
    };
    Some(OfferedColumn {
        key: definition.key,
        name,
        is_usual: readers.need >= Need::Usual(0),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;
    use std::collections::BTreeSet;

    #[test]
    fn no_two_columns_are_called_the_same_where_one_chooses() {
        for example in EXAMPLES {
            let offered = offered_columns(&example.project().unwrap());
            let names: BTreeSet<&str> = offered.iter().map(|column| column.name.as_str()).collect();
            assert_eq!(names.len(), offered.len(), "{names:?}");
            assert!(names.contains("drop, rpm") && names.contains("drop, %"));
        }
    }
}
