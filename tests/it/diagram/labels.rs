//! Does no label cover a thick line, and is the figure at a fall or a dot that fall's or dot's figure?

use super::Picture;
use crate::support::gear_sets::rpm;
use crate::support::window::{camper_van, in_both_ranges, three_ten_speeds};
use egui::{Pos2, Rect, vec2};
use layshaft::chart::{Label, Place, Role, Scene};
use layshaft::draw::diagram::Drawn;
use layshaft::project::View;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Drops, Edit, Project, SetEdit};
use layshaft::sheet::page::Page;
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

/// The ends of what a figure belongs to: a fall, or a dot, which has both at one place.
fn belonging(label: &Label) -> Option<[[f64; 2]; 2]> {
    match label.place {
        Place::UnderFall(from) => Some([[label.at[0], from], label.at]),
        Place::Beside => Some([label.at; 2]),
        Place::InBand(_)
        | Place::AtFoot
        | Place::AtEnd
        | Place::AtEnds(_)
        | Place::AtHead(_)
        | Place::AtStart
        | Place::InColumn(_)
        | Place::OnAxis => None,
    }
}

/// Every fall and dot with what is written at it.
fn pieces<'s>(scene: &'s Scene, drawn: &Drawn) -> Vec<(&'s Label, [Exact; 2])> {
    let piece = |label: &'s Label| {
        let ends = belonging(label)?.map(|at| place(drawn, at));
        Some((label, ends))
    };
    scene.labels.iter().filter_map(piece).collect()
}

/// The labels between the axes.
fn between_the_axes(drawn: &Drawn) -> impl Iterator<Item = &(Rect, String)> {
    let frame = *drawn.transform.frame();
    let labels = drawn.labels.iter();
    labels.filter(move |(rect, _)| frame.contains_rect(*rect))
}

/// Whether a figure in the middle of which is `middle` is as near to its own piece as to any other;
/// that at a dot may stand beside a fall.
fn is_nearest(pieces: &[(&Label, [Exact; 2])], middle: Pos2, text: &str, is_at_dot: bool) -> bool {
    let nearest = |is_meant: &dyn Fn(&Label) -> bool| {
        let meant = pieces.iter().filter(|(label, _)| is_meant(label));
        let distances = meant.map(|(_, ends)| distance(middle, *ends));
        distances.fold(f64::INFINITY, f64::min)
    };
    let is_rival = |label: &Label| !is_at_dot || label.place == Place::Beside;
    let own = nearest(&|label| is_rival(label) && label.text == text);
    own <= nearest(&is_rival) + 0.05
}

/// Looks at every label between the axes.
pub(super) fn check(scene: &Scene, drawn: &Drawn) -> Result<(), TestCaseError> {
    let pieces = pieces(scene, drawn);
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
        // A label of another kind may be spelled the same: it stands where that belongs.
        let alike = scene.labels.iter().filter(|label| label.text == *text);
        let alike: Vec<&Label> = alike.collect();
        if alike.is_empty() || alike.iter().any(|label| belonging(label).is_none()) {
            continue;
        }
        let is_right =
            |label: &&Label| is_nearest(&pieces, rect.center(), text, label.place == Place::Beside);
        prop_assert!(
            alike.iter().any(is_right),
            "\"{text}\" at {rect} is nearer to another's piece"
        );
    }
    Ok(())
}

/// The diagram as large as in the picture of a write-up, with the drops of its second set.
fn in_write_up(view: View, project: &Project) -> Picture {
    let mut picture = Picture::of_view(view, project);
    picture.size = vec2(756.0, 440.0);
    picture.text_size = 13.0;
    picture.drops = Drops::Of(picture.scene.sets[1].id);
    picture
}

/// How many of how many labels are written.
fn written(picture: &Picture, is_meant: impl Fn(&Label) -> bool) -> [usize; 2] {
    picture.check().unwrap();
    let drawn = picture.frames(1).swap_remove(0);
    let labels = picture.scene.labels.iter();
    let labels: Vec<_> = labels.filter(|label| is_meant(label)).collect();
    let is_written = |text: &str| between_the_axes(&drawn).any(|(_, words)| words == text);
    let written = labels.iter().filter(|label| is_written(&label.text));
    [written.count(), labels.len()]
}

/// How many of how many drops of the second set are written in the picture of a write-up.
fn drops_written(project: &Project) -> [usize; 2] {
    let picture = in_write_up(View::Speed, project);
    let second = picture.scene.sets[1].id;
    written(&picture, |label| {
        matches!(label.place, Place::UnderFall(_)) && label.of.is_some_and(|of| of.set == second)
    })
}

#[test]
fn every_drop_of_one_set_finds_room_in_the_picture_of_every_example() {
    for example in EXAMPLES {
        let [written, all] = drops_written(&example.project().unwrap());
        assert!(all >= 3);
        assert_eq!(written, all, "{}", example.name);
    }
}

#[test]
fn most_drops_of_one_set_find_room_beside_two_other_sets_of_ten_gears() {
    let [found, all] = drops_written(&three_ten_speeds());
    assert!(found >= 6 && all == 9, "{found} of {all}");
    let [found, all] = drops_written(&in_both_ranges());
    assert_eq!(found, all);
}

#[test]
fn every_figure_at_a_dot_finds_room_in_the_picture_of_every_example() {
    for example in EXAMPLES {
        // What other views have no room for stands in words beneath them.
        for view in [View::Speed, View::Steps] {
            let picture = in_write_up(view, &example.project().unwrap());
            let [found, all] = written(&picture, |label| label.place == Place::Beside);
            assert!(all >= 3);
            assert_eq!(found, all, "{} {view:?}", example.name);
        }
    }
    let ten = in_write_up(View::Speed, &three_ten_speeds());
    let [found, all] = written(&ten, |label| label.place == Place::Beside);
    assert!(found >= 5 && all == 6, "{found} of {all}");
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

#[test]
fn the_diagram_says_what_figures_at_falls_are_and_whose_where_that_is_not_plain() {
    let project = camper_van();
    let scene = Picture::of(&project).scene;
    let ids = scene.set_ids();
    let all = "Drops in rpm at the dotted falls";
    assert_eq!(scene.drops_words(&ids).as_deref(), Some(all));
    let words = scene.drops_words(&ids[1..2]).unwrap();
    assert_eq!(words, format!("{all}: Same box, taller final drive"));
    assert_eq!(scene.drops_words(&[]), None, "none is written");
    let steps = Picture::of_view(View::Steps, &project).scene;
    assert_eq!(steps.drops_words(&ids), None, "there is no fall");
    let mut alone = project;
    for id in &ids[1..] {
        alone = Edit::Visible(*id, false).applied_to(&alone).unwrap();
    }
    let alone = Picture::of(&alone).scene;
    assert_eq!(alone.drops_words(&ids), None, "whose is plain");
}

#[test]
fn the_picture_says_whose_drops_it_has() {
    let of = |drops: Drops| {
        let mut project = camper_van();
        project.write_up.drops = drops;
        let texts = Page::of(&project).unwrap().texts().unwrap();
        let about = |(_, text): (Rect, String)| text.starts_with("Drops in rpm").then_some(text);
        texts.into_iter().filter_map(about).collect::<Vec<String>>()
    };
    let third = camper_van().sets.iter().nth(2).unwrap().id;
    assert_eq!(
        of(Drops::Of(third)),
        ["Drops in rpm at the dotted falls: Six-speed, two output shafts"]
    );
    assert_eq!(of(Drops::All), ["Drops in rpm at the dotted falls"]);
    assert!(of(Drops::Hidden).is_empty());
}

/// What is written at the lines of shift points and at the floor, each with whether it is a set's.
fn line_words(project: &Project) -> Vec<(String, bool)> {
    let labels = Picture::of(project).scene.labels.into_iter();
    let meant = labels.filter(|label| matches!(label.role, Role::ShiftLine | Role::Floor));
    meant.map(|l| (l.text, l.of.is_some())).collect()
}

#[test]
fn shift_points_are_named_once_where_sets_share_them_and_the_floor_by_what_it_is() {
    let mut project = camper_van();
    let own = |text: &str| (text.to_owned(), true);
    let shared = |text: &str| (text.to_owned(), false);
    let floor = shared("useful from 1500");
    assert_eq!(
        line_words(&project),
        [floor.clone(), shared("shift at 3600")]
    );
    let second = project.sets.iter().nth(1).unwrap().id;
    let shift = Edit::Set(second, SetEdit::ShiftAll(rpm(3400.0)));
    project = shift.applied_to(&project).unwrap();
    assert_eq!(
        line_words(&project),
        [floor, shared("shift at 3600"), own("shift at 3400")]
    );
    project.engine.lowest_useful = None;
    assert_eq!(line_words(&project)[0], shared("idle 800"));
    project.engine.idle = None;
    assert_eq!(line_words(&project)[0], shared("shift at 3600"));
}
