//! Does the reading at the pointer keep clear of everything else that is read?

use crate::support::window::{Opening, Painted, Text, Window, camper_van, three_ten_speeds};
use egui::{Key, Pos2, Rect, vec2};
use egui_kittest::Node;
use layshaft::project::Project;

/// The texts of the reading, which is painted last, and all before it.
fn split(painted: &Painted) -> Option<(&[Text], &[Text])> {
    let is_heading = |text: &str| text.starts_with("at ") && text.ends_with("km/h");
    let last = |is_it: &dyn Fn(&str) -> bool| {
        let mut texts = painted.texts.iter();
        texts.rposition(|(text, _)| is_it(text))
    };
    // The table has such headings too; the diagram's last word is the unit of its axis.
    let at = last(&is_heading).filter(|at| Some(*at) > last(&|text| text == "km/h"))?;
    let (others, reading) = painted.texts.split_at(at);
    Some((reading, others))
}

/// What the reading covers, its rim included.
fn rect_of(reading: &[Text]) -> Rect {
    let words = reading.iter().map(|(_, rect)| *rect);
    words.reduce(Rect::union).unwrap().expand(4.0)
}

fn covers(rect: Rect, other: Rect) -> bool {
    rect.shrink(0.5).intersect(other.shrink(0.5)).is_positive()
}

/// Places all over the plot.
fn grid(plot: Rect) -> impl Iterator<Item = Pos2> {
    let shares = |n: u8| (0..n).map(move |i| (f32::from(i) + 0.5) / f32::from(n));
    shares(7).flat_map(move |y| shares(11).map(move |x| plot.lerp_inside(vec2(x, y))))
}

/// The plot with the figures of its axes, the names of its lines and the legend above.
fn diagram(plot: Rect) -> Rect {
    Rect::from_min_max(plot.min - vec2(50.0, 80.0), plot.max + vec2(0.0, 18.0))
}

/// Looks at the reading from places all over the plot; from how many of them there is one, and from
/// how many there could be.
fn check(project: Project, [width, height]: [f32; 2]) -> [usize; 2] {
    let mut window = Opening::on(project).sized(width, height).open();
    let (plot, screen) = (window.plot(), window.harness.ctx.content_rect());
    let [mut seen, mut looked, mut of_one] = [0; 3];
    for pointer in grid(plot) {
        window.rest_at(pointer);
        let painted = Painted::of(&window);
        let handles: Vec<Rect> = window.handles().iter().map(Node::rect).collect();
        if painted
            .texts
            .iter()
            .any(|(text, _)| text.starts_with("all shift points"))
            || handles.iter().any(|rect| rect.contains(pointer))
        {
            continue;
        }
        looked += 1;
        let Some((reading, others)) = split(&painted) else {
            continue;
        };
        seen += 1;
        let sets = window.app().diagram().sets.len();
        // At last it has only the set that is forward, where the window is smallest.
        let is_of_one = reading.len() > 1 && reading.len() <= sets && height < 450.0;
        assert!(
            reading.len() > sets || is_of_one,
            "a set is missing at {pointer}"
        );
        of_one += usize::from(is_of_one);
        let rect = rect_of(reading);
        assert!(screen.contains_rect(rect), "{rect:?} is cut");
        assert!(plot.contains_rect(rect) || !covers(plot, rect), "{rect:?}");
        assert!(!rect.contains(pointer), "at {pointer}");
        let of_diagram = |(_, other): &&Text| covers(diagram(plot), *other);
        for (text, other) in others.iter().filter(of_diagram) {
            assert!(!covers(rect, *other), "{text} is covered at {pointer}");
        }
        for other in painted.dots.iter().chain(&handles) {
            assert!(!covers(rect, *other), "{other:?} is covered at {pointer}");
        }
    }
    assert!(2 * of_one <= seen, "{of_one} of {seen} have one set only");
    [seen, looked]
}

const SIZES: [[f32; 2]; 5] = [
    [1000.0, 640.0],
    [1280.0, 800.0],
    // The diagram is alone.
    [667.0, 427.0],
    // So little is left of the diagram that the reading stands beside it.
    [667.0, 540.0],
    [667.0, 500.0],
];

#[test]
fn it_covers_no_label_no_dot_and_not_the_pointer() {
    for size in SIZES {
        for project in [camper_van(), three_ten_speeds()] {
            let [seen, looked] = check(project, size);
            assert_eq!(seen, looked, "of {size:?}");
            assert!(looked > 40, "{looked} of {size:?}");
        }
    }
}

#[test]
fn it_stays_where_it_is_under_a_moving_hand() {
    let mut window = Window::on_camper_van();
    let plot = window.plot();
    let mut corners = Vec::new();
    for i in 4..=60_u8 {
        window.rest_at(plot.lerp_inside(vec2(f32::from(i) / 64.0, 0.45)));
        let painted = Painted::of(&window);
        let Some((reading, _)) = split(&painted) else {
            continue;
        };
        let rect = rect_of(reading);
        // As it grows and shrinks, the corner in which it stands keeps its place.
        let [right, low] = [plot.right() - rect.right(), plot.bottom() - rect.bottom()];
        corners.push([right < 40.0, low < 40.0]);
    }
    assert!(corners.len() > 40);
    corners.dedup();
    assert!(corners.len() <= 3, "{corners:?}");
}

/// The words at handles, each with its place.
fn words_at_handles(window: &Window) -> Vec<Text> {
    let is_of_handle =
        |(text, _): &Text| text.contains(" rpm, falls ") || text.starts_with("all shift points");
    let texts = Painted::of(window).texts.into_iter();
    texts.filter(is_of_handle).collect()
}

#[test]
fn of_all_handles_one_has_words_and_they_cover_none() {
    for project in [camper_van(), three_ten_speeds()] {
        // In the last there is no room for words between the handles.
        for [width, height] in SIZES.into_iter().take(4) {
            let mut window = Opening::on(project.clone()).sized(width, height).open();
            let squares: Vec<Rect> = window.handles().iter().map(Node::rect).collect();
            window.focus_handle("2", "3");
            for square in &squares {
                window.rest_at(square.center());
                let words = words_at_handles(&window);
                assert_eq!(words.len(), 1, "{words:?}");
                let rect = words[0].1.expand(3.0);
                assert!(window.plot().contains_rect(rect), "{rect:?}");
                let covered = squares.iter().find(|square| covers(rect, **square));
                assert_eq!(covered, None, "at {square:?} of {width} by {height}");
            }
        }
    }
}

#[test]
fn the_words_are_those_of_what_moved_last() {
    let mut window = Window::on_camper_van();
    let starts_with = |window: &Window, wanted: &str| {
        let words = words_at_handles(window);
        assert_eq!(words.len(), 1, "{words:?}");
        assert!(words[0].0.starts_with(wanted), "{words:?}");
    };
    window.focus_handle("2", "3");
    starts_with(&window, "2→3 at 3600");
    let at = window.handle_at("4", "5");
    window.rest_at(at);
    starts_with(&window, "4→5 at 3600");
    window.key(Key::ArrowDown);
    starts_with(&window, "2→3 at 3590");
    window.rest_at(at + vec2(2.0, 0.0));
    starts_with(&window, "4→5 at 3600");
    window.hold(at, at + vec2(0.0, 40.0));
    starts_with(&window, "4→5 at ");
    window.rest_at(window.handle_at("1", "2"));
    starts_with(&window, "4→5 at ");
}
