//! What is written at a handle, and where does it stand?
//!
//! At one place only, and never over a handle: whoever moves one must see it and those beside it.

use super::Handles;
use crate::app::handle::Claim;
use crate::draw::label_placing::overlap;
use egui::{Align2, FontId, Pos2, Rect, Stroke, Vec2};

/// How far words keep from their handle, in points.
const AWAY: f32 = 14.0;

/// How far they keep from it where the arrow of the mouse hangs down.
const AWAY_BELOW: f32 = 26.0;

/// How many rows they may stand away.
const ROWS: u8 = 8;

/// Words that are to be written at a place.
pub(super) struct Words {
    claim: Claim,
    text: String,
    at: Pos2,
}

impl Handles<'_> {
    /// Takes words up unless others have a stronger claim.
    pub(super) fn want(&mut self, claim: Option<Claim>, text: impl FnOnce() -> String, at: Pos2) {
        let Some(claim) = claim else { return };
        if self.words.as_ref().is_none_or(|words| words.claim < claim) {
            let text = text();
            self.words = Some(Words { claim, text, at });
        }
    }

    /// Writes the words that are wanted most; where they stand.
    pub(super) fn write(&mut self) -> Option<Rect> {
        let words = self.words.take()?;
        let font = FontId::new(12.5, crate::draw::bold());
        let painter = self.ui.painter();
        let galley = painter.layout_no_wrap(words.text, font, self.palette.text);
        let size = galley.size() + Vec2::new(12.0, 6.0);
        let handles: Vec<Rect> = self.shown.iter().map(super::Shown::square).collect();
        let labels: Vec<Rect> = self.drawn.labels.iter().map(|(rect, _)| *rect).collect();
        let frame = self.drawn.transform.frame().shrink(4.0);
        let rect = place(size, words.at, frame, [&handles, &labels]);
        painter.rect_filled(rect, 4.0, self.palette.paper);
        let outline = Stroke::new(1.5, self.palette.set(self.set.livery));
        painter.rect_stroke(rect, 4.0, outline, egui::StrokeKind::Inside);
        painter.galley(rect.min + Vec2::new(6.0, 3.0), galley, self.palette.text);
        Some(rect)
    }
}

/// A place for words of this size near `at` and within `frame`: free of handles and labels, else of
/// handles, else over as few as can be and not over their own.
fn place(size: Vec2, at: Pos2, frame: Rect, [handles, labels]: [&[Rect]; 2]) -> Rect {
    let is_free = |rect: &Rect, of: &[Rect]| !of.iter().any(|other| overlap(other, rect));
    let mut free = candidates(size, at, frame).filter(|rect| is_free(rect, handles));
    let first_free = free.next();
    let mut all = first_free.into_iter().chain(free);
    let found = all.find(|rect| is_free(rect, labels)).or(first_free);
    let covered = |rect: &Rect| {
        let covered = handles.iter().filter(|handle| overlap(handle, rect));
        let weights = covered.map(|handle| if handle.contains(at) { 100 } else { 1 });
        weights.sum::<u32>()
    };
    let found = found.or_else(|| candidates(size, at, frame).min_by_key(covered));
    found.unwrap_or_else(|| within(above(size, at, 0.0, 0.0), frame))
}

/// Places within the frame, the best first: above, beside, below, and ever farther away.
fn candidates(size: Vec2, at: Pos2, frame: Rect) -> impl Iterator<Item = Rect> {
    let aside = [0.0, 0.5, -0.5];
    let row = move |row: u8| {
        let lift = f32::from(row) * (size.y + 2.0);
        let rising = aside.map(|share| above(size, at, share, lift));
        let sides = [Align2::LEFT_CENTER, Align2::RIGHT_CENTER].map(|align| {
            let away = Vec2::new(-align.x().to_sign() * AWAY, 0.0);
            align.anchor_size(at + away, size)
        });
        let falling = aside.map(|share| {
            let middle = at + Vec2::new(share * size.x, AWAY_BELOW + lift);
            Align2::CENTER_TOP.anchor_size(middle, size)
        });
        let sides = sides.into_iter().take(if row == 0 { 2 } else { 0 });
        rising.into_iter().chain(sides).chain(falling)
    };
    let beside = (0..ROWS).flat_map(row);
    beside
        .map(move |rect| level(rect, frame))
        .filter(move |rect| frame.contains_rect(*rect))
}

/// Above a place, shifted by a share of the width and lifted farther.
fn above(size: Vec2, at: Pos2, share: f32, lift: f32) -> Rect {
    let middle = at + Vec2::new(share * size.x, -AWAY - lift);
    Align2::CENTER_BOTTOM.anchor_size(middle, size)
}

/// Moved sideways into the frame.
fn level(rect: Rect, frame: Rect) -> Rect {
    let right = (frame.right() - rect.right()).min(0.0);
    let rect = rect.translate(Vec2::new(right, 0.0));
    rect.translate(Vec2::new((frame.left() - rect.left()).max(0.0), 0.0))
}

/// Moved into the frame.
fn within(rect: Rect, frame: Rect) -> Rect {
    let rect = level(rect, frame);
    let down = (frame.top() - rect.top()).max(0.0);
    let up = (frame.bottom() - rect.bottom()).min(0.0);
    rect.translate(Vec2::new(0.0, if down > 0.0 { down } else { up }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::handle::handle_rect;
    use egui::{pos2, vec2};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn words_stay_within_the_plot_and_clear_of_handles(
            handles in proptest::collection::vec((0.0f32..600.0, 40.0f32..90.0), 1..10),
            width in 40.0f32..260.0,
            which in 0usize..10,
        ) {
            // Handles of a set lie along a line through the upper part of the plot.
            let frame = Rect::from_min_size(Pos2::ZERO, vec2(600.0, 260.0));
            let handles: Vec<Pos2> = handles.into_iter().map(Pos2::from).collect();
            let squares: Vec<Rect> = handles.iter().map(|at| handle_rect(*at)).collect();
            let at = handles[which % handles.len()];
            let rect = place(vec2(width, 22.0), at, frame, [&squares, &[]]);
            prop_assert!(frame.contains_rect(rect), "{rect:?}");
            prop_assert!(!squares.iter().any(|square| overlap(square, &rect)), "{rect:?}");
        }

        #[test]
        fn in_a_plot_without_room_words_stay_within_it_all_the_same(
            (x, y) in (0.0f32..200.0, 0.0f32..40.0),
        ) {
            let frame = Rect::from_min_size(Pos2::ZERO, vec2(200.0, 40.0));
            let rect = place(vec2(180.0, 22.0), pos2(x, y), frame, [&[frame], &[]]);
            prop_assert!(frame.expand(0.01).contains_rect(rect), "{rect:?}");
        }
    }

    #[test]
    fn words_keep_clear_of_labels_where_they_can() {
        let frame = Rect::from_min_size(Pos2::ZERO, vec2(400.0, 200.0));
        let (size, at) = (vec2(100.0, 20.0), pos2(200.0, 100.0));
        let best = place(size, at, frame, [&[], &[]]);
        let other = place(size, at, frame, [&[], &[best]]);
        assert!(best.bottom() < at.y && !overlap(&best, &other));
        assert_eq!(place(size, at, frame, [&[], &[frame]]), best);
    }
}
