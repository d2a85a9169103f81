//! What is written at the lines through the shift points?

use super::scene::{Label, Line, Owner, Place, Role, Scene};
use crate::units::typed_rpm_text;

/// The words at the lines of shift points of a scene, one label for all sets that have the same
/// words; none where one shifts at the redline, which has its own.
pub(super) fn labels(scene: &Scene, redline_rpm: f64) -> Vec<Label> {
    let mut groups: Vec<Group<'_>> = Vec::new();
    for line in scene.lines_of(Role::ShiftLine) {
        let Some(text) = words(&line.points, redline_rpm) else {
            continue;
        };
        match groups.iter_mut().find(|group| group.text == text) {
            Some(group) => group.lines.push(line),
            None => groups.push(Group {
                text,
                lines: vec![line],
            }),
        }
    }
    groups.into_iter().filter_map(Group::label).collect()
}

/// "shift at 3600" where all points are at one engine speed; none without a point, and at the
/// redline.
fn words(points: &[[f64; 2]], redline_rpm: f64) -> Option<String> {
    let mut texts = points.iter().map(|[_, rpm]| typed_rpm_text(*rpm));
    let first = texts.next()?;
    if !texts.all(|text| text == first) {
        return Some("shift points".to_owned());
    }
    (first != typed_rpm_text(redline_rpm)).then(|| format!("shift at {first}"))
}

/// Lines with the same words.
struct Group<'a> {
    text: String,
    lines: Vec<&'a Line>,
}

impl Group<'_> {
    /// The words at the ends of all lines together; a set's where it is alone.
    fn label(self) -> Option<Label> {
        let points = self.lines.iter().flat_map(|line| &line.points).copied();
        let left = points.clone().min_by(|a, b| a[0].total_cmp(&b[0]))?;
        let right = points.max_by(|a, b| a[0].total_cmp(&b[0]))?;
        let of: Option<Owner> = match self.lines.as_slice() {
            [line] => Some(line.of),
            _ => None,
        };
        Some(Label {
            text: self.text,
            role: Role::ShiftLine,
            of,
            at: right,
            place: Place::AtEnds(left),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_engine_speed_is_named_and_several_are_not() {
        let words = |rpm: &[f64]| {
            let points: Vec<[f64; 2]> = rpm.iter().map(|rpm| [50.0, *rpm]).collect();
            words(&points, 4500.0)
        };
        assert_eq!(words(&[3600.0, 3600.0]).as_deref(), Some("shift at 3600"));
        assert_eq!(words(&[3600.0, 3400.0]).as_deref(), Some("shift points"));
        assert_eq!(words(&[4500.0, 4500.0]), None, "at the redline");
        assert_eq!(words(&[]), None);
    }
}
