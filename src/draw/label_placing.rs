//! Where can each label stand so that none covers another or what must be seen, and none is cut?
//!
//! Labels are placed in order of priority, each at the first of its candidate places that is free;
//! a label without a free place is left out. Only rectangles and lines are known here, no text.

use super::segment::Segment;
use egui::{Align2, Pos2, Rect, Vec2};

/// What labels keep clear of.
#[derive(Debug, Clone, Copy, Default)]
pub struct Ground<'a> {
    /// Places that are taken.
    pub taken: &'a [Rect],
    /// Lines that no label covers.
    pub thick: &'a [Thick],
}

/// A line that no label covers.
#[derive(Debug, Clone, Copy)]
pub struct Thick {
    /// Where it runs.
    pub line: Segment,
    /// How far it is painted to either side, in points.
    pub half_width: f32,
}

/// A label that asks for a place.
#[derive(Debug, Clone)]
pub struct Wish<'a> {
    /// Its size.
    pub size: Vec2,
    /// The point it belongs to.
    pub anchor: Pos2,
    /// The piece of line that it must be seen to belong to, where it is one.
    pub piece: Option<Piece<'a>>,
    /// Which corner or edge of the label may touch the anchor, and how far from it, best first.
    pub candidates: Vec<(Align2, Vec2)>,
    /// How far it keeps from its anchor.
    pub gap: f32,
    /// Higher is placed earlier.
    pub priority: u8,
}

/// The piece of line that a label belongs to; a dot is one without length.
#[derive(Debug, Clone, Copy)]
pub struct Piece<'a> {
    /// Where it runs.
    pub line: Segment,
    /// What the label must not seem to belong to: its middle is nearer to none of these.
    pub rivals: &'a [Segment],
    /// The same of these, where there is room.
    pub better_rivals: &'a [Segment],
}

/// The places of `wishes` in their order, none where there is no room.
///
/// No returned rectangle leaves `frame`, overlaps another, or touches what the ground says.
pub fn place(wishes: &[Wish<'_>], frame: Rect, ground: &Ground<'_>) -> Vec<Option<Rect>> {
    let mut order: Vec<usize> = (0..wishes.len()).collect();
    order.sort_by_key(|&i| std::cmp::Reverse(wishes[i].priority));
    let mut occupied = ground.taken.to_vec();
    let mut placed = vec![None; wishes.len()];
    for i in order {
        let rects: Vec<Rect> = wishes[i].rects_in(frame).collect();
        let thick = in_reach(&rects, ground.thick);
        let is_free = |rect: &&Rect| {
            !occupied.iter().any(|o| overlap(o, rect))
                && !thick.iter().any(|t| t.line.touches(rect, t.half_width))
        };
        let free = wishes[i].best(rects.iter().filter(is_free).copied());
        occupied.extend(free);
        placed[i] = free;
    }
    placed
}

/// Whether two rectangles share an area; touching edges do not count.
pub fn overlap(a: &Rect, b: &Rect) -> bool {
    let shared = a.intersect(*b);
    shared.width() > 0.0 && shared.height() > 0.0
}

impl Wish<'_> {
    /// Its places within a frame, best first.
    fn rects_in(&self, frame: Rect) -> impl Iterator<Item = Rect> {
        let rects = self.candidates.iter().map(|(align, offset)| {
            let away = Vec2::new(-align.x().to_sign(), -align.y().to_sign()) * self.gap;
            align.anchor_size(self.anchor + away + *offset, self.size)
        });
        rects.filter(move |rect| frame.contains_rect(*rect))
    }

    /// The best of places that are free.
    fn best(&self, mut free: impl Iterator<Item = Rect>) -> Option<Rect> {
        let Some(piece) = &self.piece else {
            return free.next();
        };
        let mut good = free.filter(|rect| piece.is_nearer(rect, piece.rivals));
        let first = good.next()?;
        let is_better = |rect: &Rect| piece.is_nearer(rect, piece.better_rivals);
        let better = std::iter::once(first).chain(good).find(is_better);
        Some(better.unwrap_or(first))
    }
}

impl Piece<'_> {
    /// Whether the middle of a label is as near to it as to any of these.
    fn is_nearer(&self, label: &Rect, rivals: &[Segment]) -> bool {
        let middle = label.center();
        let near = self.line.distance(middle);
        rivals.iter().all(|rival| rival.distance(middle) >= near)
    }
}

/// The lines that come near any of these places: mostly few of many.
fn in_reach(rects: &[Rect], thick: &[Thick]) -> Vec<Thick> {
    let reach = rects.iter().copied().fold(Rect::NOTHING, Rect::union);
    let is_near = |thick: &&Thick| thick.line.touches(&reach, thick.half_width);
    thick.iter().filter(is_near).copied().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn wish() -> impl Strategy<Value = Wish<'static>> {
        let size = (1.0f32..80.0, 1.0f32..20.0);
        let anchor = (-20.0f32..420.0, -20.0f32..320.0);
        (size, anchor, 0u8..4).prop_map(|(size, anchor, priority)| Wish {
            size: size.into(),
            anchor: anchor.into(),
            piece: None,
            candidates: [
                Align2::LEFT_BOTTOM,
                Align2::RIGHT_BOTTOM,
                Align2::CENTER_TOP,
            ]
            .map(|align| (align, Vec2::ZERO))
            .to_vec(),
            gap: 3.0,
            priority,
        })
    }

    proptest! {
        #[test]
        fn labels_never_overlap_and_are_never_cut(
            wishes in proptest::collection::vec(wish(), 0..40)
        ) {
            let frame = Rect::from_min_size(Pos2::ZERO, Vec2::new(400.0, 300.0));
            let taken = [Rect::from_min_size(Pos2::new(100.0, 100.0), Vec2::new(80.0, 60.0))];
            let ground = Ground { taken: &taken, ..Ground::default() };
            let placed: Vec<Rect> = place(&wishes, frame, &ground).into_iter().flatten().collect();
            for (i, a) in placed.iter().enumerate() {
                prop_assert!(frame.contains_rect(*a));
                prop_assert!(!overlap(a, &taken[0]));
                for b in &placed[i + 1..] {
                    prop_assert!(!overlap(a, b), "{a:?} {b:?}");
                }
            }
        }
    }

    #[test]
    fn the_more_important_label_gets_the_place() {
        let at = |priority| Wish {
            size: Vec2::new(30.0, 10.0),
            anchor: Pos2::new(50.0, 50.0),
            piece: None,
            candidates: vec![(Align2::LEFT_BOTTOM, Vec2::ZERO)],
            gap: 2.0,
            priority,
        };
        let frame = Rect::from_min_size(Pos2::ZERO, Vec2::splat(100.0));
        let placed = place(&[at(1), at(2)], frame, &Ground::default());
        assert!(placed[0].is_none() && placed[1].is_some());
    }

    /// A label beside an upright piece of line at x = 50, right of it or left of it.
    fn beside(rivals: &[Segment]) -> Wish<'_> {
        let line = upright(50.0);
        Wish {
            size: Vec2::new(30.0, 10.0),
            anchor: Pos2::new(50.0, 50.0),
            piece: Some(Piece {
                line,
                rivals,
                better_rivals: &[],
            }),
            candidates: [Align2::LEFT_CENTER, Align2::RIGHT_CENTER]
                .map(|align| (align, Vec2::ZERO))
                .to_vec(),
            gap: 2.0,
            priority: 1,
        }
    }

    fn upright(x: f32) -> Segment {
        Segment {
            ends: [Pos2::new(x, 20.0), Pos2::new(x, 80.0)],
        }
    }

    /// Where that label stands among rivals of its line on a ground.
    fn middle(rivals: &[Segment], ground: &Ground<'_>) -> Option<f32> {
        let frame = Rect::from_min_size(Pos2::ZERO, Vec2::splat(100.0));
        let placed = place(&[beside(rivals)], frame, ground);
        placed[0].map(|rect| rect.center().x)
    }

    #[test]
    fn a_label_goes_where_its_own_piece_of_line_is_the_nearest() {
        let among = |rivals: &[Segment]| middle(rivals, &Ground::default());
        let own = upright(50.0);
        assert_eq!(among(&[own]), Some(67.0));
        assert_eq!(among(&[own, upright(80.0)]), Some(33.0));
        assert_eq!(among(&[own, upright(80.0), upright(20.0)]), None);
        assert_eq!(among(&[own, own]), Some(67.0), "two at one place");
    }

    #[test]
    fn a_label_keeps_away_from_what_it_might_be_taken_for_where_there_is_room() {
        let among = |better_rivals: &[Segment]| {
            let mut wish = beside(&[]);
            let piece = wish.piece.as_mut().unwrap();
            piece.better_rivals = better_rivals;
            let frame = Rect::from_min_size(Pos2::ZERO, Vec2::splat(100.0));
            let placed = place(&[wish], frame, &Ground::default());
            placed[0].unwrap().center().x
        };
        for (better_rivals, wanted) in [
            (vec![], 67.0),
            (vec![upright(80.0)], 33.0),
            (vec![upright(80.0), upright(20.0)], 67.0),
        ] {
            assert!((among(&better_rivals) - wanted).abs() < 1e-3);
        }
    }

    #[test]
    fn a_label_goes_where_it_covers_no_thick_line() {
        let among = |lines: &[[f32; 2]]| {
            let thick = lines.iter().map(|[from, to]| Thick {
                line: Segment {
                    ends: [Pos2::new(*from, 0.0), Pos2::new(*to, 100.0)],
                },
                half_width: 1.5,
            });
            let thick: Vec<Thick> = thick.collect();
            let ground = Ground {
                thick: &thick,
                ..Ground::default()
            };
            middle(&[], &ground)
        };
        assert_eq!(among(&[[90.0, 90.0]]), Some(67.0));
        assert_eq!(among(&[[40.0, 90.0]]), Some(33.0));
        assert_eq!(among(&[[83.0, 83.0]]), Some(33.0), "as wide as it is");
        assert_eq!(among(&[[0.0, 100.0], [83.0, 83.0], [40.0, 5.0]]), None);
    }
}
