//! The drawings of what heat does to an end play: a shaft in its case, bearings face to face and back to back.

use super::board::{Board, Fill, Ink, Pen};
use super::parts::{Cut, End, Room, SmallEnds};
use egui::Align2;

/// The axis, the middle along it, and the outside of the case.
const AXIS: f32 = 92.0;
const MIDDLE: f32 = 160.0;
const CASE: f32 = 66.0;

/// The bore for the bearings and their journals.
const BORE: f32 = 52.0;
const JOURNAL: f32 = 20.0;

/// Both bearings, so far from the middle, and the lines along which they carry.
fn bearings(cut: &Cut<'_>, [near, far]: [f32; 2], [left, right]: [SmallEnds; 2]) {
    let r = [JOURNAL, BORE];
    for (x, ends) in [
        ([MIDDLE - far, MIDDLE - near], left),
        ([MIDDLE + near, MIDDLE + far], right),
    ] {
        cut.taper_bearing(Room { x, r }, ends);
        cut.load_lines(Room { x, r }, ends);
    }
}

/// Arrows on case and shaft, and what growing does.
fn words(board: &Board<'_>, [case, shaft, name]: [&str; 3]) {
    board.words([MIDDLE, 11.0], Align2::CENTER_CENTER, case, Ink::Shim);
    board.arrow(&[[86.0, 12.0], [42.0, 12.0]], Pen::Shim);
    board.arrow(&[[234.0, 12.0], [278.0, 12.0]], Pen::Shim);
    board.words(
        [MIDDLE, AXIS - 2.0],
        Align2::CENTER_BOTTOM,
        shaft,
        Ink::Plain,
    );
    board.both_ways([104.0, AXIS + 11.0], [216.0, AXIS + 11.0], Pen::Edge);
    board.words([MIDDLE, 178.0], Align2::CENTER_BOTTOM, name, Ink::Plain);
}

pub(super) fn face_to_face(board: &Board<'_>) {
    let cut = Cut::along(board, AXIS);
    let x = |away: f32| [MIDDLE - away, MIDDLE + away];
    let [[inner_left, inner_right], [outer_left, outer_right]] = [x(104.0), x(122.0)];
    let case = [
        [outer_left, 25.0],
        [outer_left, CASE],
        [outer_right, CASE],
        [outer_right, 25.0],
        [inner_right, 25.0],
        [inner_right, BORE],
        [inner_left, BORE],
        [inner_left, 25.0],
        [outer_left, 25.0],
    ];
    cut.ring(&case, Fill::Case);
    let [shoulder_left, shoulder_right] = x(68.0);
    let shaft = [
        [16.0, JOURNAL],
        [shoulder_left, JOURNAL],
        [shoulder_left, 30.0],
        [shoulder_right, 30.0],
        [shoulder_right, JOURNAL],
        [304.0, JOURNAL],
    ];
    cut.solid(&shaft, [End::Broken; 2], Fill::Metal);
    bearings(&cut, [68.0, 104.0], [SmallEnds::Left, SmallEnds::Right]);
    cut.centre_line([6.0, 314.0]);
    words(
        board,
        [
            "case grows: looser",
            "shaft grows: tighter",
            "face to face (X)",
        ],
    );
}

pub(super) fn back_to_back(board: &Board<'_>) {
    let cut = Cut::along(board, AXIS);
    let x = |away: f32| [MIDDLE - away, MIDDLE + away];
    let [
        [outer_left, outer_right],
        [back_left, back_right],
        [web_left, web_right],
    ] = [x(112.0), x(72.0), x(60.0)];
    let case = [
        [outer_left, BORE],
        [outer_left, CASE],
        [outer_right, CASE],
        [outer_right, BORE],
        [back_right, BORE],
        [back_right, 33.0],
        [web_right, 33.0],
        [web_right, BORE],
        [web_left, BORE],
        [web_left, 33.0],
        [back_left, 33.0],
        [back_left, BORE],
        [outer_left, BORE],
    ];
    cut.ring(&case, Fill::Case);
    let shaft = [[16.0, JOURNAL], [304.0, JOURNAL]];
    cut.solid(&shaft, [End::Broken; 2], Fill::Metal);
    bearings(&cut, [72.0, 108.0], [SmallEnds::Right, SmallEnds::Left]);
    for nut in [
        [MIDDLE - 122.0, MIDDLE - 108.0],
        [MIDDLE + 108.0, MIDDLE + 122.0],
    ] {
        cut.plain_ring(nut, [JOURNAL, 33.0], Fill::Cover);
    }
    cut.centre_line([6.0, 314.0]);
    words(
        board,
        [
            "case grows: tighter",
            "shaft grows: looser",
            "back to back (O)",
        ],
    );
}
