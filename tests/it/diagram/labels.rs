//! Does no label cover a thick line, and is the figure at a fall the figure of that fall?

use super::Picture;
use crate::support::window::{in_both_ranges, three_ten_speeds};
use egui::{Pos2, Rect, vec2};
use layshaft::chart::{Place, Role, Scene};
use layshaft::draw::diagram::Drawn;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Drops, Project};
use proptest::prelude::*;

/// Less than half the width of a thick line, in points.
const ALMOST_HALF: f64 = 1.3;

/// A place on the paper, in the precision of values: a line may come from very far away.
type Exact = [f64; 2];

/// Where a point of the scene stands.
fn place(drawn: &Drawn, at: [f64; 2]) -> Exact {
    let frame = *drawn.transform.frame();
    let [[left, right], [bottom, top]] =
        [[frame.left(), frame.right()], [frame.bottom(), frame.top()]]
            .map(|ends| ends.map(f64::from));
    let share = |value: f64, [from, to]: [f64; 2]| (value - from) / (to - from);
    [
        left + share(at[0], drawn.range.x) * (right - left),
        bottom + share(at[1], drawn.range.y) * (top - bottom),
    ]
}

/// How near a straight line comes to a rectangle: along it the distance falls, then rises.
fn nearest(rect: Rect, [from, to]: [Exact; 2]) -> f64 {
    let [min, max] = [rect.min, rect.max].map(|at| [at.x, at.y].map(f64::from));
    let away = |share: f64| {
        let apart = [0, 1].map(|axis| {
            let at = from[axis] + share * (to[axis] - from[axis]);
            (min[axis] - at).max(at - max[axis]).max(0.0)
        });
        apart[0].hypot(apart[1])
    };
    let [mut low, mut high] = [0.0, 1.0];
    for _ in 0..200 {
        let third = (high - low) / 3.0;
        if away(low + third) <= away(high - third) {
            high -= third;
        } else {
            low += third;
        }
    }
    away(f64::midpoint(low, high))
}

/// How far a point is from an upright line.
fn distance(point: Pos2, [from, to]: [Exact; 2]) -> f64 {
    let [x, y] = [point.x, point.y].map(f64::from);
    let nearest = y.clamp(from[1].min(to[1]), from[1].max(to[1]));
    (x - from[0]).hypot(y - nearest)
}

/// Every fall with what is written at it.
fn falls<'s>(scene: &'s Scene, drawn: &Drawn) -> Vec<(&'s str, [Exact; 2])> {
    let fall = |label: &'s layshaft::chart::Label| match label.place {
        Place::UnderFall(from) => {
            let ends = [[label.at[0], from], label.at].map(|at| place(drawn, at));
            Some((label.text.as_str(), ends))
        }
        _ => None,
    };
    scene.labels.iter().filter_map(fall).collect()
}

/// The labels between the axes.
fn between_the_axes(drawn: &Drawn) -> impl Iterator<Item = &(Rect, String)> {
    let frame = *drawn.transform.frame();
    let labels = drawn.labels.iter();
    labels.filter(move |(rect, _)| frame.contains_rect(*rect))
}

/// Looks at every label between the axes.
pub(super) fn check(scene: &Scene, drawn: &Drawn) -> Result<(), TestCaseError> {
    let falls = falls(scene, drawn);
    for (rect, text) in between_the_axes(drawn) {
        for line in [Role::Driven, Role::ByGear]
            .into_iter()
            .flat_map(|role| scene.lines_of(role))
        {
            for ends in line.points.windows(2) {
                let ends = [ends[0], ends[1]].map(|at| place(drawn, at));
                prop_assert!(
                    nearest(*rect, ends) > ALMOST_HALF,
                    "\"{text}\" at {rect} covers a line of {:?}",
                    line.of
                );
            }
        }
        let nearest_fall = |is_own: &dyn Fn(&str) -> bool| {
            let distances = falls.iter().filter(|(words, _)| is_own(words));
            let distances = distances.map(|(_, ends)| distance(rect.center(), *ends));
            distances.fold(f64::INFINITY, f64::min)
        };
        // A figure of another kind may be spelled the same: it stands where that belongs.
        let mut alike = scene.labels.iter().filter(|label| label.text == *text);
        let is_of_fall = alike.all(|label| matches!(label.place, Place::UnderFall(_)));
        if is_of_fall && falls.iter().any(|(words, _)| words == text) {
            let [own, any] = [
                nearest_fall(&|words| words == text),
                nearest_fall(&|_| true),
            ];
            prop_assert!(own <= any + 0.05, "\"{text}\" at {rect}: {own} {any}");
        }
    }
    Ok(())
}

/// The diagram as large as in the picture of a write-up, with the drops of its second set; how many
/// of how many drops are written.
fn written(project: &Project) -> [usize; 2] {
    let mut picture = Picture::of(project);
    let second = picture.scene.sets[1].id;
    picture.size = vec2(756.0, 440.0);
    picture.text_size = 13.0;
    picture.drops = Drops::Of(second);
    picture.check().unwrap();
    let drawn = picture.frames(1).swap_remove(0);
    let of_second = |label: &&layshaft::chart::Label| {
        matches!(label.place, Place::UnderFall(_)) && label.of.is_some_and(|of| of.set == second)
    };
    let drops: Vec<_> = picture.scene.labels.iter().filter(of_second).collect();
    let is_written = |text: &str| between_the_axes(&drawn).any(|(_, words)| words == text);
    let written = drops.iter().filter(|label| is_written(&label.text));
    [written.count(), drops.len()]
}

#[test]
fn every_drop_of_one_set_finds_room_in_the_picture_of_every_example() {
    for example in EXAMPLES {
        let [written, all] = written(&example.project().unwrap());
        assert!(all >= 3);
        assert_eq!(written, all, "{}", example.name);
    }
}

#[test]
fn most_drops_of_one_set_find_room_beside_two_other_sets_of_ten_gears() {
    let [found, all] = written(&three_ten_speeds());
    assert!(found >= 6 && all == 9, "{found} of {all}");
    let [found, all] = written(&in_both_ranges());
    assert_eq!(found, all);
}

#[test]
fn drops_are_written_for_no_other_sets_than_those_that_were_asked_for() {
    let mut picture = Picture::of(&three_ten_speeds());
    let counts = [Drops::Hidden, Drops::Usual, Drops::All].map(|drops| {
        picture.drops = drops;
        let drawn = picture.frames(1).swap_remove(0);
        let is_drop = |text: &str| text.starts_with('−');
        between_the_axes(&drawn)
            .filter(|(_, text)| is_drop(text))
            .count()
    });
    assert_eq!(counts[0], 0);
    assert!(
        counts[1] > 0 && counts[1] <= 9 && counts[2] > counts[1],
        "{counts:?}"
    );
}
