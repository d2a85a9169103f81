//! Where does the reading at the pointer stand, so that it hides nothing that is read?
//!
//! It never lies on a label, a dot, a handle or the pointer; of what is left it takes the place with
//! the fewest lines beneath, corners before edges before the middle. It stays where it is for as
//! long as that is free, so that it does not jump about under a moving hand. A diagram that has no
//! room for it has it beside it.

use crate::draw::label_placing::overlap;
use egui::{Align2, Pos2, Rect, Vec2, vec2};

/// How many places are looked at along the level and along the upright side, and between them.
const PLACES: [u8; 2] = [25, 41];

/// What stays free around the pointer, and the arrow that hangs down from it, in points.
const AROUND_POINTER: Vec2 = vec2(14.0, 14.0);
const ARROW: Vec2 = vec2(20.0, 24.0);

/// How much farther a new place keeps from the pointer, in points: else it would soon be left again.
const ELBOW_ROOM: f32 = 40.0;

/// How many points of lines beneath are better than leaving a corner, and than leaving an edge.
const OFF_CORNER: f32 = 60.0;
const OFF_EDGE: f32 = 160.0;

/// What the reading has to keep clear of.
#[derive(Debug)]
pub(super) struct Ground<'a> {
    /// Where it may stand.
    pub room: Rect,
    /// What it never covers: labels, dots, handles.
    pub taken: &'a [Rect],
    pub pointer: Pos2,
    /// Pieces of line that it rather leaves visible, and how much each point of them counts.
    pub lines: &'a [([Pos2; 2], f32)],
}

/// A place within the room: which share of what is left over lies to its left and above it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Share(Vec2);

impl Share {
    /// The rectangle of this size at the place; none where it has no room.
    fn rect(self, size: Vec2, room: Rect) -> Option<Rect> {
        let left_over = room.size() - size;
        let fits = left_over.min_elem() >= 0.0;
        fits.then(|| Rect::from_min_size(room.min + left_over * self.0, size))
    }

    /// Every place, the corners first: below before above, right before left.
    fn all() -> impl Iterator<Item = Self> {
        let shares = |places: u8| {
            let last = places - 1;
            (0..=last).map(move |i| 1.0 - f32::from(i) / f32::from(last))
        };
        let all = move || {
            shares(PLACES[1]).flat_map(move |y| shares(PLACES[0]).map(move |x| Self(vec2(x, y))))
        };
        let of = move |sides: usize| all().filter(move |share| share.sides() == sides);
        of(2).chain(of(1)).chain(of(0))
    }

    /// By how many points of lines beneath a corner would be better.
    fn off_corner(self) -> f32 {
        match self.sides() {
            2 => 0.0,
            1 => OFF_CORNER,
            _ => OFF_EDGE,
        }
    }

    /// How many sides of the room it touches: 2 in a corner, 1 at an edge.
    fn sides(self) -> usize {
        let at_end = |share: f32| share <= 0.0 || share >= 1.0;
        usize::from(at_end(self.0.x)) + usize::from(at_end(self.0.y))
    }
}

impl Ground<'_> {
    /// The rectangle of this size at a place where it stood before; none where that is not free now.
    pub(super) fn again(&self, size: Vec2, share: Share) -> Option<Rect> {
        let rect = share.rect(size, self.room)?;
        (self.is_clear(rect, 0.0) && self.is_free(rect)).then_some(rect)
    }

    /// Of the free places with so many points of lines beneath at most, the best; such as leave the
    /// hand some room before all others.
    pub(super) fn best(&self, size: Vec2, most_beneath: f32) -> Option<(Share, Rect)> {
        let free = Share::all().filter_map(|share| Some((share, self.again(size, share)?)));
        let weighed = free.filter_map(|(share, rect)| {
            let lines = self.lines.iter();
            let beneath: f32 = lines
                .map(|(ends, weight)| weight * length_within(*ends, rect))
                .sum();
            let is_narrow = !self.is_clear(rect, ELBOW_ROOM);
            let cost = beneath + share.off_corner();
            (beneath <= most_beneath).then_some((is_narrow, cost, (share, rect)))
        });
        let best = weighed.min_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        best.map(|(.., place)| place)
    }

    /// Whether a rectangle keeps so far from the pointer.
    fn is_clear(&self, rect: Rect, elbow_room: f32) -> bool {
        let around = Rect::from_min_max(self.pointer - AROUND_POINTER, self.pointer + ARROW);
        !overlap(&around.expand(elbow_room), &rect)
    }

    fn is_free(&self, rect: Rect) -> bool {
        !self.taken.iter().any(|taken| overlap(taken, &rect))
    }
}

/// Beside a diagram that has no room for it, within the screen: below, above, or to a side.
pub(super) fn beside(diagram: Rect, size: Vec2, screen: Rect) -> Option<Rect> {
    let places = [
        Align2::RIGHT_TOP.anchor_size(diagram.right_bottom(), size),
        Align2::RIGHT_BOTTOM.anchor_size(diagram.right_top(), size),
        Align2::RIGHT_BOTTOM.anchor_size(diagram.left_bottom(), size),
        Align2::LEFT_BOTTOM.anchor_size(diagram.right_bottom(), size),
    ];
    // Wider than the diagram, it reaches to its left or to its right.
    let level = |rect: Rect| {
        let right = (screen.left() - rect.left()).max(0.0);
        rect.translate(vec2(right, 0.0))
    };
    let is_clear = |rect: &Rect| screen.contains_rect(*rect) && !overlap(rect, &diagram);
    places.into_iter().map(level).find(is_clear)
}

/// How much of a straight piece of line lies in a rectangle.
fn length_within([from, to]: [Pos2; 2], rect: Rect) -> f32 {
    let along = to - from;
    let mut shares = [0.0_f32, 1.0];
    for axis in 0..2 {
        let (start, step) = (from[axis], along[axis]);
        let ends = [rect.min[axis], rect.max[axis]];
        if step.abs() <= f32::EPSILON {
            if start < ends[0] || start > ends[1] {
                return 0.0;
            }
            continue;
        }
        let [a, b] = ends.map(|end| (end - start) / step);
        shares = [shares[0].max(a.min(b)), shares[1].min(a.max(b))];
    }
    (shares[1] - shares[0]).max(0.0) * along.length()
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;
    use proptest::prelude::*;

    fn room() -> Rect {
        Rect::from_min_size(pos2(50.0, 30.0), vec2(600.0, 300.0))
    }

    fn ground<'a>(taken: &'a [Rect], pointer: Pos2, lines: &'a [([Pos2; 2], f32)]) -> Ground<'a> {
        Ground {
            room: room(),
            taken,
            pointer,
            lines,
        }
    }

    const SIZE: Vec2 = vec2(180.0, 80.0);

    fn placed(taken: &[Rect], pointer: Pos2, lines: &[([Pos2; 2], f32)]) -> Rect {
        let place = ground(taken, pointer, lines).best(SIZE, f32::INFINITY);
        place.unwrap().1
    }

    fn corner(x: f32, y: f32) -> Rect {
        Share(vec2(x, y)).rect(SIZE, room()).unwrap()
    }

    #[test]
    fn it_takes_the_first_corner_that_is_free() {
        let far = pos2(340.0, 100.0);
        assert_eq!(placed(&[], far, &[]), corner(1.0, 1.0));
        let label = Rect::from_center_size(corner(1.0, 1.0).center(), vec2(30.0, 10.0));
        assert_eq!(placed(&[label], far, &[]), corner(0.0, 1.0));
        let on_it = corner(1.0, 1.0).center();
        assert_eq!(placed(&[], on_it, &[]), corner(0.0, 1.0));
    }

    #[test]
    fn a_corner_without_lines_is_better_than_one_with() {
        let far = pos2(340.0, 100.0);
        let rect = corner(1.0, 1.0);
        let lines = [([rect.left_top(), rect.right_bottom()], 0.5)];
        assert_eq!(placed(&[], far, &lines), corner(0.0, 1.0));
    }

    #[test]
    fn where_no_corner_is_free_it_goes_between_them() {
        let corners = [0.0, 1.0]
            .map(|x| [0.0, 1.0].map(|y| corner(x, y)))
            .concat();
        let taken = corners
            .iter()
            .map(|rect| Rect::from_center_size(rect.center(), vec2(4.0, 4.0)));
        let taken: Vec<Rect> = taken.collect();
        let rect = placed(&taken, pos2(340.0, 180.0), &[]);
        assert!(!corners.contains(&rect));
        assert!(!taken.iter().any(|taken| overlap(taken, &rect)));
    }

    #[test]
    fn where_every_place_has_lines_none_has_few() {
        let rows = (0..60_u8).map(|i| f32::from(i) * 5.0 + 30.0);
        let lines = rows.map(|y| ([pos2(50.0, y), pos2(650.0, y)], 1.0));
        let lines: Vec<([Pos2; 2], f32)> = lines.collect();
        let ground = ground(&[], pos2(340.0, 100.0), &lines);
        assert_eq!(ground.best(SIZE, 100.0), None);
        assert!(ground.best(SIZE, f32::INFINITY).is_some());
    }

    #[test]
    fn it_grows_away_from_its_corner() {
        let ground = ground(&[], pos2(340.0, 100.0), &[]);
        let left = Share(vec2(0.0, 1.0));
        let rect = ground.again(SIZE, left).unwrap();
        let wider = ground.again(SIZE * 1.5, left).unwrap();
        assert_eq!(wider.left_bottom(), rect.left_bottom());
    }

    #[test]
    fn nowhere_is_better_than_on_a_label() {
        let grid = (0..20_u8).flat_map(|x| (0..20_u8).map(move |y| vec2(x.into(), y.into())));
        let labels =
            grid.map(|at| Rect::from_min_size(room().min + at * vec2(30.0, 15.0), vec2(12.0, 8.0)));
        let labels: Vec<Rect> = labels.collect();
        let place = |labels, size| ground(labels, Pos2::ZERO, &[]).best(size, f32::INFINITY);
        assert_eq!(place(&labels, SIZE), None);
        assert_eq!(place(&[], vec2(900.0, 10.0)), None);
    }

    #[test]
    fn beside_a_diagram_it_stands_below_or_else_where_the_screen_has_room() {
        let screen = Rect::from_min_size(Pos2::ZERO, vec2(700.0, 400.0));
        let diagram = Rect::from_min_size(pos2(300.0, 100.0), vec2(400.0, 120.0));
        let place = |diagram, size| beside(diagram, size, screen);
        let below = place(diagram, SIZE).unwrap();
        assert_eq!(below.right_top(), pos2(700.0, 220.0));
        let low = diagram.translate(vec2(0.0, 150.0));
        assert_eq!(place(low, SIZE).unwrap().right_bottom(), low.right_top());
        let high = Rect::from_min_size(pos2(300.0, 0.0), vec2(400.0, 400.0));
        assert_eq!(
            place(high, SIZE).unwrap().right_bottom(),
            high.left_bottom()
        );
        let wide = place(diagram, vec2(690.0, 80.0)).unwrap();
        assert_eq!(wide.right_top(), below.right_top());
        assert_eq!(place(screen, SIZE), None);
        assert_eq!(place(diagram, vec2(800.0, 20.0)), None);
    }

    #[test]
    fn the_length_of_a_line_counts_as_far_as_it_is_covered() {
        let rect = Rect::from_min_size(pos2(0.0, 0.0), vec2(10.0, 10.0));
        let cases = [
            ([pos2(-5.0, 5.0), pos2(5.0, 5.0)], 5.0),
            ([pos2(2.0, -5.0), pos2(2.0, 50.0)], 10.0),
            ([pos2(-5.0, 15.0), pos2(5.0, 15.0)], 0.0),
            ([pos2(0.0, 0.0), pos2(20.0, 20.0)], 200_f32.sqrt()),
            ([pos2(3.0, 3.0), pos2(3.0, 3.0)], 0.0),
        ];
        for (ends, wanted) in cases {
            let length = length_within(ends, rect);
            assert!((length - wanted).abs() < 1e-3, "{ends:?} gave {length}");
        }
    }

    proptest! {
        #[test]
        fn it_never_covers_what_is_read_nor_the_pointer_and_never_leaves_the_room(
            labels in proptest::collection::vec((50.0f32..600.0, 30.0f32..320.0), 0..25),
            (x, y) in (50.0f32..650.0, 30.0f32..330.0),
            (width, height) in (60.0f32..400.0, 20.0f32..200.0),
        ) {
            let labels: Vec<Rect> = labels
                .into_iter()
                .map(|at| Rect::from_min_size(at.into(), vec2(40.0, 14.0)))
                .collect();
            let (pointer, size) = (pos2(x, y), vec2(width, height));
            let ground = ground(&labels, pointer, &[]);
            let place = ground.best(size, f32::INFINITY);
            if let Some((share, rect)) = place {
                prop_assert!(room().expand(0.01).contains_rect(rect));
                prop_assert!(!labels.iter().any(|label| overlap(label, &rect)));
                prop_assert!(!rect.contains(pointer));
                // What was found is kept in the next frame.
                prop_assert_eq!(ground.again(size, share), Some(rect));
            }
        }
    }
}
