//! In what do two projects differ, in a few words each?

use super::document::{Candidate, Project};
use crate::units::typed_rpm_text;

/// What `after` has differently from `before`, the most important first; empty where they are equal.
pub fn differences(before: &Project, after: &Project) -> Vec<String> {
    let mut found = Vec::new();
    let mut note = |differs: bool, words: String| {
        if differs {
            found.push(words);
        }
    };
    let text = |name: &Option<crate::gearing::Name>| {
        name.as_ref()
            .map_or_else(|| "none".to_owned(), |n| format!("\"{n}\""))
    };
    note(
        before.title != after.title,
        format!("title {}", text(&after.title)),
    );
    note(
        before.tyre != after.tyre,
        format!("tyre {} instead of {}", after.tyre, before.tyre),
    );
    let redline = |p: &Project| typed_rpm_text(p.engine.redline.rpm());
    let has_redline = redline(before) == redline(after);
    let words = format!("redline {} instead of {}", redline(after), redline(before));
    note(!has_redline, words);
    let words = "idle or lowest useful engine speed".to_owned();
    note(has_redline && before.engine != after.engine, words);
    for words in set_differences(before, after) {
        note(true, words);
    }
    let marks = before.marked_engine_speeds != after.marked_engine_speeds
        || before.marked_road_speeds != after.marked_road_speeds;
    note(marks, "marked speeds".to_owned());
    note(before.note != after.note, "the note".to_owned());
    let rest = before.date != after.date
        || before.units != after.units
        || before.write_up != after.write_up
        || before.sets.baseline_place() != after.sets.baseline_place();
    note(rest, "date, units, baseline or write-up".to_owned());
    found
}

fn set_differences(before: &Project, after: &Project) -> Vec<String> {
    let mut found = Vec::new();
    let pairs = before.sets.iter().zip(&after.sets);
    for (number, (old, new)) in (1..).zip(pairs) {
        if let Some(words) = set_difference(old, new) {
            found.push(format!("set {number}: {words}"));
        }
    }
    let (old, new) = (before.sets.len(), after.sets.len());
    if old != new {
        found.push(format!("{new} sets instead of {old}"));
    }
    found
}

fn set_difference(before: &Candidate, after: &Candidate) -> Option<String> {
    let (old, new) = (&before.set, &after.set);
    let shifts = |c: &Candidate| {
        let own = c.set.gears.iter().map(|g| g.shift);
        (c.set.shift, own.collect::<Vec<_>>())
    };
    let ratios = |c: &Candidate| {
        let gears = c.set.gears.iter().map(|g| g.ratio.clone());
        (gears.collect::<Vec<_>>(), c.set.final_drives.clone())
    };
    let words = if ratios(before) != ratios(after) {
        "ratios"
    } else if shifts(before) != shifts(after) {
        "shift points"
    } else if old.name != new.name {
        "name"
    } else if old.to_spec() != new.to_spec() {
        "gears, stages or tyre"
    } else if before.visible != after.visible {
        "shown or hidden"
    } else {
        return None;
    };
    Some(words.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::EngineSpeed;
    use crate::project::{Edit, SetEdit, examples::EXAMPLES};

    #[test]
    fn equal_projects_have_no_differences() {
        let project = EXAMPLES[0].project().unwrap();
        assert!(differences(&project, &project).is_empty());
    }

    #[test]
    fn what_was_changed_is_named() {
        let before = EXAMPLES[0].project().unwrap();
        let speed = EngineSpeed::from_rpm(4700.0).unwrap();
        let after = Edit::Redline(speed).applied_to(&before).unwrap();
        let second = before.sets.iter().nth(1).unwrap().id;
        let shift = Edit::Set(second, SetEdit::ShiftAll(speed));
        let after = shift.applied_to(&after).unwrap();
        let found = differences(&before, &after);
        assert_eq!(
            found,
            ["redline 4700 instead of 4500", "set 2: shift points"]
        );
    }
}
