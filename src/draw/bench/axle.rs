//! The drawings of an axle: how deep a pinion stands, and the shims on both sides of the differential.

use super::board::{At, Board, Fill, Ink, Pen};
use super::parts::{Cut, End, Room, SmallEnds};
use egui::Align2;

pub(super) fn pinion_depth(board: &Board<'_>) {
    const AXIS: f32 = 90.0;
    const CASE: f32 = 62.0;
    // The axis of the ring gear, the back of the head, the two faces of its bearing.
    const CROSSING: f32 = 26.0;
    const HEAD: f32 = 136.0;
    const CONE: f32 = 145.0;
    const CUP: f32 = 183.0;
    let cut = Cut::along(board, AXIS);
    let bearing = Room {
        x: [CONE, CUP],
        r: [20.0, 48.0],
    };
    let case = [
        [156.0, 48.0],
        [CUP, 48.0],
        [CUP, 30.0],
        [250.0, 30.0],
        [250.0, CASE],
        [156.0, CASE],
        [156.0, 48.0],
    ];
    cut.ring(&case, Fill::Case);
    let shaft = [[HEAD, 20.0], [280.0, 20.0]];
    cut.solid(&shaft, [End::Face, End::Broken], Fill::Metal);
    let head = [[92.0, 22.8], [HEAD, 38.0]];
    cut.solid(&head, [End::Face; 2], Fill::Metal);
    for share in [-0.6, -0.2, 0.2, 0.6] {
        let tooth = head.map(|[x, r]| cut.at([x, r * share]));
        board.line(&tooth, Pen::Thin);
    }
    let ring_gear = [
        cut.at([90.0, -22.0]),
        cut.at([HEAD, -38.0]),
        cut.at([130.0, -52.0]),
        cut.at([94.0, -52.0]),
        cut.at([90.0, -22.0]),
    ];
    board.part(&ring_gear, Fill::Cover);
    cut.taper_bearing(bearing, SmallEnds::Right);
    cut.plain_ring([HEAD, CONE], [20.0, 36.0], Fill::Shim);
    cut.centre_line([10.0, 294.0]);
    board.line(&[[CROSSING, 22.0], [CROSSING, 166.0]], Pen::Axis);

    board.arrow(
        &[cut.at([140.5, 36.0]), [140.5, 12.0], [112.0, 12.0]],
        Pen::Shim,
    );
    board.words(
        [106.0, 12.0],
        Align2::RIGHT_CENTER,
        "thicker: deeper",
        Ink::Shim,
    );
    board.words([146.0, 12.0], Align2::LEFT_CENTER, "shim", Ink::Shim);
    board.words(
        [32.0, 38.0],
        Align2::LEFT_CENTER,
        "ring gear axis",
        Ink::Plain,
    );
    board.words([86.0, 132.0], Align2::RIGHT_CENTER, "ring gear", Ink::Plain);
    board.words([256.0, 44.0], Align2::LEFT_CENTER, "case", Ink::Plain);
    board.words([256.0, 124.0], Align2::LEFT_CENTER, "pinion", Ink::Plain);
    let at = |x: f32, r: f32| cut.at([x, -r]);
    board.level_dimension([CROSSING, 154.0], at(HEAD, 38.0), 158.0, Pen::Edge);
    board.words(
        [81.0, 161.0],
        Align2::CENTER_TOP,
        "mounting distance",
        Ink::Plain,
    );
    board.level_dimension(at(CONE, 33.0), at(CUP, 48.0), 158.0, Pen::Edge);
    board.words(
        [156.0, 161.0],
        Align2::LEFT_TOP,
        "bearing height",
        Ink::Plain,
    );
}

/// The axis of an axle, and the middle of its differential along it.
const AXLE: f32 = 92.0;
const MIDDLE: f32 = 160.0;

/// How far outside the middle the shims, bearings and the ends of the case are.
const SHIM: [f32; 2] = [82.0, 91.0];
const BEARING: [f32; 2] = [50.0, 82.0];
const END: f32 = 116.0;

pub(super) fn side_bearings(board: &Board<'_>) {
    let cut = Cut::along(board, AXLE);
    let axle = [[12.0, 9.0], [308.0, 9.0]];
    cut.solid(&axle, [End::Broken; 2], Fill::Metal);
    let differential = [
        [MIDDLE - SHIM[0], 15.0],
        [MIDDLE - BEARING[0], 15.0],
        [MIDDLE - BEARING[0], 28.0],
        [MIDDLE - 46.0, 28.0],
        [MIDDLE - 46.0, 56.0],
        [MIDDLE - 36.0, 56.0],
        [MIDDLE - 36.0, 30.0],
        [MIDDLE + BEARING[0], 30.0],
        [MIDDLE + BEARING[0], 15.0],
        [MIDDLE + SHIM[0], 15.0],
    ];
    cut.solid(&differential, [End::Face; 2], Fill::Metal);
    ring_gear_and_pinion(board, &cut);
    for (side, ends) in [(-1.0, SmallEnds::Left), (1.0, SmallEnds::Right)] {
        side_of_case(&cut, side, ends);
    }
    cut.centre_line([4.0, 316.0]);
    side_words(board, &cut);
}

fn ring_gear_and_pinion(board: &Board<'_>, cut: &Cut<'_>) {
    // Both cones have their point where the axes cross.
    let gear = [
        [MIDDLE - 12.0, 38.0],
        [MIDDLE - 20.0, 62.0],
        [MIDDLE - 36.0, 62.0],
        [MIDDLE - 36.0, 36.0],
        [MIDDLE - 12.0, 38.0],
    ];
    cut.ring(&gear, Fill::Cover);
    let at = |x: f32, y: f32| [MIDDLE + x, AXLE + y];
    let pinion = [
        at(-12.0, 38.0),
        at(12.0, 38.0),
        at(20.0, 62.0),
        at(10.0, 62.0),
        at(10.0, 84.0),
        at(-10.0, 84.0),
        at(-10.0, 62.0),
        at(-20.0, 62.0),
        at(-12.0, 38.0),
    ];
    board.part(&pinion, Fill::Metal);
    for share in [-0.5, 0.0, 0.5] {
        let tooth: [At; 2] = [at(12.0 * share, 38.0), at(20.0 * share, 62.0)];
        board.line(&tooth, Pen::Thin);
    }
}

/// The case, the bearing and the shim on the left or on the right.
fn side_of_case(cut: &Cut<'_>, side: f32, ends: SmallEnds) {
    const CASE: f32 = 50.0;
    const BORE: f32 = 37.0;
    let x = |outwards: f32| MIDDLE + side * outwards;
    let case = [
        [x(60.0), BORE],
        [x(SHIM[1]), BORE],
        [x(SHIM[1]), 14.0],
        [x(END), 14.0],
        [x(END), CASE],
        [x(60.0), CASE],
        [x(60.0), BORE],
    ];
    cut.ring(&case, Fill::Case);
    let between = |[from, to]: [f32; 2]| {
        let [from, to] = [x(from), x(to)];
        [from.min(to), from.max(to)]
    };
    let bearing = Room {
        x: between(BEARING),
        r: [15.0, BORE],
    };
    cut.taper_bearing(bearing, ends);
    cut.plain_ring(between(SHIM), [24.0, BORE], Fill::Shim);
}

fn side_words(board: &Board<'_>, cut: &Cut<'_>) {
    let middle = f32::midpoint(SHIM[0], SHIM[1]);
    let [ring_gear, other] = [MIDDLE - middle, MIDDLE + middle];
    for x in [ring_gear, other] {
        board.line(&[cut.at([x, -31.0]), [x, 158.0]], Pen::Shim);
    }
    let below = |x: f32, text: &str| {
        board.words([x, 160.0], Align2::CENTER_TOP, text, Ink::Shim);
    };
    below(ring_gear, "ring gear shim");
    below(other + 18.0, "other shim");
    let moved = [cut.at([ring_gear, 31.0]), [ring_gear, 13.0], [106.0, 13.0]];
    board.arrow(&moved, Pen::Shim);
    let towards = "thicker: towards the pinion";
    board.words([112.0, 13.0], Align2::LEFT_CENTER, towards, Ink::Shim);
    board.line(&[[MIDDLE - 26.0, 40.0], [164.0, 34.0]], Pen::Thin);
    board.words([166.0, 33.0], Align2::LEFT_CENTER, "ring gear", Ink::Plain);
    board.words(
        [MIDDLE + 24.0, 151.0],
        Align2::LEFT_CENTER,
        "pinion",
        Ink::Plain,
    );
}
