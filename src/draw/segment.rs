//! A straight piece of line on the paper: how far it is from a point, and whether it runs through a
//! rectangle.

use egui::{Pos2, Rect, Vec2};

/// A straight piece of line, in points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// Its ends.
    pub ends: [Pos2; 2],
}

impl Segment {
    /// How far `point` is from the nearest point of it.
    pub fn distance(&self, point: Pos2) -> f32 {
        let [from, to] = self.ends;
        let along = to - from;
        let length_sq = along.length_sq();
        if length_sq <= 0.0 {
            return from.distance(point);
        }
        let share = ((point - from).dot(along) / length_sq).clamp(0.0, 1.0);
        (from + along * share).distance(point)
    }

    /// Whether it runs through `rect` when it is painted this wide to both sides.
    ///
    /// Ends count as square: of what only comes near a corner it says yes rather than no.
    pub fn touches(&self, rect: &Rect, half_width: f32) -> bool {
        let [from, to] = self.ends;
        let room = rect.expand(half_width);
        let is_apart_along = |ends: [f32; 2], sides: [f32; 2]| {
            let [least, most] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
            most <= sides[0] || least >= sides[1]
        };
        if is_apart_along([from.x, to.x], [room.left(), room.right()])
            || is_apart_along([from.y, to.y], [room.top(), room.bottom()])
        {
            return false;
        }
        // Apart if the rectangle lies to one side of the line, however far that goes on.
        let across = (to - from).normalized().rot90();
        let reach = (rect.size() / 2.0).dot(Vec2::new(across.x.abs(), across.y.abs()));
        across.dot(rect.center() - from).abs() < reach + half_width
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;
    use proptest::prelude::*;

    fn segment(from: [f32; 2], to: [f32; 2]) -> Segment {
        Segment {
            ends: [from.into(), to.into()],
        }
    }

    #[test]
    fn the_nearest_point_is_an_end_or_between_the_ends() {
        let level = segment([10.0, 10.0], [30.0, 10.0]);
        for (point, far) in [
            ([20.0, 14.0], 4.0),
            ([7.0, 6.0], 5.0),
            ([33.0, 14.0], 5.0),
            ([15.0, 10.0], 0.0),
        ] {
            assert!((level.distance(point.into()) - far).abs() < 1e-4);
        }
        let dot = segment([1.0, 1.0], [1.0, 1.0]);
        assert!((dot.distance(pos2(4.0, 5.0)) - 5.0).abs() < 1e-4);
    }

    #[test]
    fn a_slanting_line_passes_a_corner_of_the_rectangle_around_it() {
        let slant = segment([0.0, 0.0], [100.0, 100.0]);
        let at = |x: f32, y: f32| Rect::from_min_size(pos2(x, y), Vec2::splat(20.0));
        assert!(slant.touches(&at(40.0, 40.0), 0.0));
        assert!(slant.touches(&at(55.0, 40.0), 0.0));
        assert!(!slant.touches(&at(62.0, 40.0), 0.0));
        assert!(slant.touches(&at(62.0, 40.0), 2.0), "as wide as it is");
        assert!(!slant.touches(&at(110.0, 110.0), 0.0), "it ends before");
    }

    #[test]
    fn a_line_without_length_touches_what_it_lies_in() {
        let dot = segment([5.0, 5.0], [5.0, 5.0]);
        let rect = Rect::from_min_size(Pos2::ZERO, Vec2::splat(10.0));
        assert!(dot.touches(&rect, 1.0));
        assert!(!dot.touches(&rect.translate(Vec2::splat(8.0)), 1.0));
    }

    fn place() -> impl Strategy<Value = [f32; 2]> {
        [-50.0f32..150.0, -50.0f32..150.0]
    }

    proptest! {
        #[test]
        fn nothing_that_is_painted_lies_in_a_rectangle_that_is_not_touched(
            (from, to) in (place(), place()),
            (at, size) in (place(), [1.0f32..80.0, 1.0f32..30.0]),
            half_width in 0.0f32..3.0,
        ) {
            let line = segment(from, to);
            let rect = Rect::from_min_size(at.into(), size.into());
            let nearest = (0..=400u16).map(|i| {
                let point = line.ends[0].lerp(line.ends[1], f32::from(i) / 400.0);
                rect.distance_to_pos(point)
            });
            let nearest = nearest.fold(f32::INFINITY, f32::min);
            if !line.touches(&rect, half_width) {
                prop_assert!(nearest >= half_width - 1e-3, "{nearest}");
            }
            // A corner at most farther than it is wide, and half a step between two looks.
            if nearest > half_width * 1.5 + 0.5 {
                prop_assert!(!line.touches(&rect, half_width), "{nearest}");
            }
        }
    }
}
