//! Does no label cover a thick line, and is the figure at a fall the figure of that fall?

use super::Picture;
use crate::support::window::{in_both_ranges, three_ten_speeds};
use egui::{Pos2, Rect, vec2};
use layshaft::chart::{Place, Role, Scene};
use layshaft::draw::diagram::Drawn;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Drops, Project};
use proptest::prelude::*;

/// Less than half the width of a thick line, in points, at the corners of a rectangle too, which are
/// moved out along both sides.
const ALMOST_HALF: f32 = 1.05;

/// Faster than any engine turns and any wheel rolls: what typing can make of ratios that nobody builds.
const FARTHEST: f64 = 1e6;

/// Whether a straight line runs through a rectangle, looked at along both sides of it.
fn runs_through(rect: Rect, [from, to]: [Pos2; 2]) -> bool {
    let looks = || (0..=64u8).map(|i| f32::from(i) / 64.0);
    let is_hit = |share: f32| {
        (0.0..=1.0).contains(&share) && rect.shrink(0.01).contains(from.lerp(to, share))
    };
    let [wide, high] = [to.x - from.x, to.y - from.y];
    looks().any(|look| {
        let at = rect.min + rect.size() * look;
        is_hit((at.x - from.x) / wide) || is_hit((at.y - from.y) / high)
    })
}

/// How far a point is from an upright line.
fn distance(point: Pos2, [from, to]: [Pos2; 2]) -> f32 {
    let y = point.y.clamp(from.y.min(to.y), from.y.max(to.y));
    point.distance(Pos2::new(from.x, y))
}

/// Every fall with what is written at it.
fn falls<'s>(scene: &'s Scene, drawn: &Drawn) -> Vec<(&'s str, [Pos2; 2])> {
    let fall = |label: &'s layshaft::chart::Label| match label.place {
        Place::UnderFall(from) => {
            let ends = [[label.at[0], from], label.at].map(|at| drawn.place_of(at));
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
    let mut figures = scene
        .lines
        .iter()
        .flat_map(|line| line.points.iter().flatten());
    if figures.any(|figure| figure.abs() > FARTHEST) {
        // Single precision does not tell any more where such a line passes a label.
        return Ok(());
    }
    let falls = falls(scene, drawn);
    for (rect, text) in between_the_axes(drawn) {
        for line in [Role::Driven, Role::ByGear]
            .into_iter()
            .flat_map(|role| scene.lines_of(role))
        {
            for ends in line.points.windows(2) {
                let ends = [ends[0], ends[1]].map(|at| drawn.place_of(at));
                prop_assert!(
                    !runs_through(rect.expand(ALMOST_HALF), ends),
                    "\"{text}\" at {rect} covers a line of {:?}",
                    line.of
                );
            }
        }
        let nearest = |is_own: &dyn Fn(&str) -> bool| {
            let distances = falls.iter().filter(|(words, _)| is_own(words));
            let distances = distances.map(|(_, ends)| distance(rect.center(), *ends));
            distances.fold(f32::INFINITY, f32::min)
        };
        // A figure of another kind may be spelled the same: it stands where that belongs.
        let mut alike = scene.labels.iter().filter(|label| label.text == *text);
        let is_of_fall = alike.all(|label| matches!(label.place, Place::UnderFall(_)));
        if is_of_fall && falls.iter().any(|(words, _)| words == text) {
            let [own, any] = [nearest(&|words| words == text), nearest(&|_| true)];
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
