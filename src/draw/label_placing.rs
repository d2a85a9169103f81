//! Where can each label stand so that none covers another and none is cut?
//!
//! Labels are placed in order of priority, each at the first of its candidate places that is free;
//! a label without a free place is left out. Only rectangles are known here, no text.

use egui::{Align2, Pos2, Rect, Vec2};

/// A label that asks for a place.
#[derive(Debug, Clone)]
pub struct Wish {
    /// Its size.
    pub size: Vec2,
    /// The point it belongs to.
    pub anchor: Pos2,
    /// Which corner or edge of the label may touch the anchor, and how far from it, best first.
    pub candidates: Vec<(Align2, Vec2)>,
    /// How far it keeps from its anchor.
    pub gap: f32,
    /// Higher is placed earlier.
    pub priority: u8,
}

/// The places of `wishes` in their order, none where there is no room.
///
/// No returned rectangle leaves `frame`, overlaps another, or overlaps one of `taken`.
pub fn place(wishes: &[Wish], frame: Rect, taken: &[Rect]) -> Vec<Option<Rect>> {
    let mut order: Vec<usize> = (0..wishes.len()).collect();
    order.sort_by_key(|&i| std::cmp::Reverse(wishes[i].priority));
    let mut occupied = taken.to_vec();
    let mut placed = vec![None; wishes.len()];
    for i in order {
        let free = wishes[i]
            .rects()
            .find(|rect| frame.contains_rect(*rect) && !occupied.iter().any(|o| overlap(o, rect)));
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

impl Wish {
    fn rects(&self) -> impl Iterator<Item = Rect> {
        self.candidates.iter().map(|(align, offset)| {
            let away = Vec2::new(-align.x().to_sign(), -align.y().to_sign()) * self.gap;
            align.anchor_size(self.anchor + away + *offset, self.size)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn wish() -> impl Strategy<Value = Wish> {
        let size = (1.0f32..80.0, 1.0f32..20.0);
        let anchor = (-20.0f32..420.0, -20.0f32..320.0);
        (size, anchor, 0u8..4).prop_map(|(size, anchor, priority)| Wish {
            size: size.into(),
            anchor: anchor.into(),
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
            let placed: Vec<Rect> = place(&wishes, frame, &taken).into_iter().flatten().collect();
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
            candidates: vec![(Align2::LEFT_BOTTOM, Vec2::ZERO)],
            gap: 2.0,
            priority,
        };
        let frame = Rect::from_min_size(Pos2::ZERO, Vec2::splat(100.0));
        let placed = place(&[at(1), at(2)], frame, &[]);
        assert!(placed[0].is_none() && placed[1].is_some());
    }
}
