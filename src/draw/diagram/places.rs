//! Where may each kind of words stand around what they belong to, best places first?

use crate::draw::segment::Segment;
use egui::{Align, Align2, Pos2, Vec2};

/// Corners that a label may take beside a point, best first.
const BESIDE: [Align2; 8] = [
    Align2::LEFT_TOP,
    Align2::RIGHT_BOTTOM,
    Align2::LEFT_CENTER,
    Align2::RIGHT_CENTER,
    Align2::CENTER_TOP,
    Align2::CENTER_BOTTOM,
    Align2::LEFT_BOTTOM,
    Align2::RIGHT_TOP,
];

/// How much room the head of a fall has around it, where its handle may be, in points.
pub(super) const HEAD: f32 = 7.0;

/// Around a point, away from other points above or below it; then a little up and down along its
/// sides; then further and further above and below it.
pub(super) fn beside_places(size: Vec2, at: Pos2, dots: &[Segment]) -> Vec<(Align2, Vec2)> {
    let [above, below] = neighbours(size, at, dots);
    let mut around = BESIDE;
    around.sort_by_key(|side| match side.y() {
        Align::Min => below,
        Align::Center => false,
        Align::Max => above,
    });
    let around = around.map(|side| (side, Vec2::ZERO));
    let down = |quarters: u8| egui::vec2(0.0, f32::from(quarters) / 4.0 * size.y);
    let shifted = (1..=3).flat_map(|quarters| {
        let down = down(quarters);
        [
            (Align2::LEFT_CENTER, down),
            (Align2::LEFT_CENTER, -down),
            (Align2::RIGHT_CENTER, down),
            (Align2::RIGHT_CENTER, -down),
        ]
    });
    let away = (2..=12).flat_map(|quarters| {
        let down = down(quarters);
        [
            (Align2::LEFT_TOP, down),
            (Align2::RIGHT_BOTTOM, -down),
            (Align2::RIGHT_TOP, down),
            (Align2::LEFT_BOTTOM, -down),
        ]
    });
    around.into_iter().chain(shifted).chain(away).collect()
}

/// Whether other points are close above a point, and below it: their labels need room too.
fn neighbours(size: Vec2, at: Pos2, dots: &[Segment]) -> [bool; 2] {
    let close = 2.5 * size.y;
    let apart = dots.iter().map(|dot| dot.ends[0] - at);
    let apart = apart.filter(|apart| apart.x.abs() < size.x);
    let down: Vec<f32> = apart.map(|apart| apart.y).collect();
    // Two at one place have one figure.
    let is_close = |range: std::ops::Range<f32>| down.iter().any(|down| range.contains(down));
    [is_close(-close..-0.5), is_close(0.5..close)]
}

/// Above or below a line's right end, or a little before it.
pub(super) fn right_end_places(width: f32) -> Vec<(Align2, Vec2)> {
    end_places([Align2::RIGHT_BOTTOM, Align2::RIGHT_TOP], -(width + 10.0))
}

/// Above or below a line's left end, or a little behind it.
pub(super) fn left_end_places(width: f32) -> Vec<(Align2, Vec2)> {
    end_places([Align2::LEFT_BOTTOM, Align2::LEFT_TOP], width + 10.0)
}

/// On both sides of the end of a line, or away from it by halves of a step.
fn end_places(sides: [Align2; 2], step: f32) -> Vec<(Align2, Vec2)> {
    let away = (0..6u8).map(|half| f32::from(half) / 2.0);
    away.flat_map(|times| sides.map(|side| (side, egui::vec2(times * step, 0.0))))
        .collect()
}

/// Before the left end of a line, which lies this far from the right one, where nothing else is;
/// behind the right end; else above the line, from the left.
pub(super) fn both_ends_places(to_left: Vec2) -> Vec<(Align2, Vec2)> {
    let clear = egui::vec2(HEAD, 0.0);
    let before = [
        Align2::RIGHT_CENTER,
        Align2::RIGHT_BOTTOM,
        Align2::RIGHT_TOP,
    ];
    let behind = [Align2::LEFT_CENTER, Align2::LEFT_BOTTOM, Align2::LEFT_TOP];
    let above = (0..=16_u8).rev().map(|part| {
        let along = to_left * (f32::from(part) / 16.0);
        (Align2::CENTER_BOTTOM, along - egui::vec2(0.0, HEAD))
    });
    let before = before.map(|side| (side, to_left - clear));
    let behind = behind.map(|side| (side, clear));
    before.into_iter().chain(behind).chain(above).collect()
}

/// Under the foot of a fall, where the set's own lines leave room; else beside the fall, from its
/// middle outwards; at last above its head.
pub(super) fn under_fall_places(row_height: f32, height: f32) -> Vec<(Align2, Vec2)> {
    let under = |rows: f32| {
        let sides = [Align2::CENTER_TOP, Align2::LEFT_TOP, Align2::RIGHT_TOP];
        sides.map(|side| (side, egui::vec2(0.0, rows * row_height)))
    };
    let shares = [8, 4, 12, 6, 10, 2, 14, 1, 0_u8].map(|part| f32::from(part) / 16.0);
    let beside = shares.into_iter().flat_map(|share| {
        let sides = [Align2::RIGHT_CENTER, Align2::LEFT_CENTER];
        sides.map(|side| (side, egui::vec2(0.0, -share * height)))
    });
    let at_head = [
        (Align2::LEFT_CENTER, egui::vec2(HEAD, 0.0)),
        (Align2::RIGHT_CENTER, egui::vec2(-HEAD, 0.0)),
        (Align2::CENTER_BOTTOM, egui::vec2(0.0, -HEAD)),
        (Align2::RIGHT_BOTTOM, egui::vec2(0.0, -HEAD)),
        (Align2::LEFT_BOTTOM, egui::vec2(0.0, -HEAD)),
    ]
    .map(|(side, offset)| (side, offset - egui::vec2(0.0, height)));
    let near = under(0.0).into_iter().chain(under(0.5)).chain(under(1.0));
    near.chain(beside)
        .chain(under(2.0))
        .chain(at_head)
        .collect()
}

/// How wide what stands in rows at the head of an upright line is, in heights of a row.
const AT_HEAD: f32 = 6.0;

/// In a row from the head of an upright line, behind it where there is `room` to the next line, else before
/// it; all rows further down where the uppermost are taken.
pub(super) fn head_places(row_height: f32, row: usize, room: f32) -> Vec<(Align2, Vec2)> {
    let (behind, before) = (Align2::LEFT_TOP, Align2::RIGHT_TOP);
    let sides = if room >= AT_HEAD * row_height {
        [behind, before]
    } else {
        [before, behind]
    };
    let at = |down: usize| egui::vec2(0.0, (row + down) as f32 * row_height);
    let rows = sides.map(|side| (0..8).map(move |down| (side, at(down))));
    rows.into_iter().flatten().collect()
}

/// How wide a column at the right end of level lines is, in heights of a row.
const COLUMN: f32 = 5.0;

/// On a level line, in a column from its right end, where the same stand above one another at all lines;
/// else beneath the line.
pub(super) fn column_places(row_height: f32, column: usize) -> Vec<(Align2, Vec2)> {
    let to_left = column as f32 * COLUMN * row_height;
    let sides = [Align2::RIGHT_BOTTOM, Align2::RIGHT_TOP];
    sides.map(|side| (side, egui::vec2(-to_left, 0.0))).to_vec()
}

/// On the foot of an upright line, in one of six rows.
pub(super) fn foot_places(row_height: f32) -> Vec<(Align2, Vec2)> {
    let sides = [Align2::LEFT_BOTTOM, Align2::RIGHT_BOTTOM];
    let row = |up: f32| sides.map(|side| (side, egui::vec2(0.0, -up * row_height)));
    (0..6u8).map(f32::from).flat_map(row).collect()
}
