//! Is every edit told as a difference, and nothing else?

use super::{every_edit, start};
use crate::support::projects::any_project;
use layshaft::project::{Difference, Project, differences, format};
use proptest::prelude::*;

/// What is wrong with the differences of two projects; nothing if all is well.
fn problem(before: &Project, after: &Project) -> Option<&'static str> {
    let are_equal = format::write(before).unwrap() == format::write(after).unwrap();
    let found = differences(before, after);
    let back = differences(after, before);
    if found.is_empty() != are_equal {
        Some("equal projects without a difference, others with one")
    } else if found.len() != back.len() {
        Some("as many differences there as back")
    } else if found
        .iter()
        .any(|difference| difference.before == difference.after)
    {
        Some("two values of each difference")
    } else {
        None
    }
}

#[test]
fn every_edit_that_changes_something_is_told() {
    let before = start();
    let mut failures = Vec::new();
    for edit in every_edit() {
        let Ok(after) = edit.applied_to(&before) else {
            continue;
        };
        if let Some(problem) = problem(&before, &after) {
            failures.push(format!("{edit:?}: {problem}"));
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_two_projects_are_told_apart_in_short_lines(
        before in any_project().boxed(),
        after in any_project().boxed(),
    ) {
        prop_assert_eq!(problem(&before, &after), None);
        prop_assert_eq!(problem(&before, &before), None);
        for words in differences(&before, &after).iter().map(Difference::words) {
            prop_assert!(words.chars().count() < 300, "{}", words);
            prop_assert!(!words.contains('\n'), "{}", words);
        }
    }
}
