//! What is a copy of a gear set, and what is it called?
//!
//! Everything is as in its source but the name: in diagram and table two sets must be told apart.

use crate::gearing::{GearSet, Name};
use crate::project::Candidates;

/// A copy of a set under a name that no set of the project has.
pub(super) fn copy_of(set: &GearSet, sets: &Candidates) -> GearSet {
    let is_taken = |name: &Name| sets.iter().any(|c| c.set.name == *name);
    let original = original_name(set.name.as_str());
    let marks = (1..=Candidates::MOST).map(|n| match n {
        1 => " (copy)".to_owned(),
        n => format!(" (copy {n})"),
    });
    let name = marks
        .filter_map(|mark| marked(original, &mark))
        .find(|name| !is_taken(name));
    let mut spec = set.to_spec();
    spec.name = name.unwrap_or(spec.name);
    GearSet::try_from(spec).unwrap_or_else(|_| set.clone())
}

/// A name without the mark of a copy: a copy of a copy is a second one.
fn original_name(name: &str) -> &str {
    let Some((original, mark)) = name.rsplit_once(" (copy") else {
        return name;
    };
    let is_mark = mark.strip_suffix(')').is_some_and(|number| {
        let number = number.trim_start();
        number.chars().all(|c| c.is_ascii_digit())
    });
    if is_mark { original } else { name }
}

/// A name with a mark behind it, shortened where both together are too long.
fn marked(name: &str, mark: &str) -> Option<Name> {
    let room = Name::MOST_CHARACTERS.saturating_sub(mark.chars().count());
    let start: String = name.chars().take(room).collect();
    Name::new(&format!("{}{mark}", start.trim_end())).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_copy_of_a_copy_counts_on() {
        assert_eq!(original_name("Box (copy)"), "Box");
        assert_eq!(original_name("Box (copy 2)"), "Box");
        assert_eq!(original_name("Box (copy of mine)"), "Box (copy of mine)");
        assert_eq!(original_name("Box"), "Box");
    }

    #[test]
    fn a_long_name_makes_room_for_its_mark() {
        let name = marked(&"x".repeat(80), " (copy)").unwrap();
        assert_eq!(name.as_str().chars().count(), 80);
        assert!(name.as_str().ends_with("x (copy)"));
    }
}
