//! The drawings of the seats of a shim: behind a race, under a cover, and the gap that is felt under one.

use super::board::{Board, Fill, Ink, Pen};
use super::parts::{Cut, End, Room, SmallEnds};
use egui::Align2;

/// Where the axis lies.
const AXIS: f32 = 89.0;

/// The outside of the case as a radius, and the bore for the bearing.
const CASE: f32 = 66.0;
const BORE: f32 = 52.0;

/// Where the words above end.
const ABOVE: f32 = 18.0;

/// The line of the arrow that says where a thicker shim moves things.
const MOVE: f32 = 169.0;

/// A shaft from the left to its bearing, with the shoulder that pushes the cone.
fn shaft(cut: &Cut<'_>, bearing: Room, right: f32, end: End) {
    let journal = bearing.r[0];
    let shoulder = bearing.x[0];
    let outside = [
        [24.0, 31.0],
        [shoulder, 31.0],
        [shoulder, journal],
        [right, journal],
    ];
    cut.solid(&outside, [End::Broken, end], Fill::Metal);
}

/// The play of a shaft: along it both ways.
fn play(board: &Board<'_>) {
    board.both_ways([36.0, AXIS - 9.0], [76.0, AXIS - 9.0], Pen::Thin);
    board.words(
        [56.0, AXIS - 36.0],
        Align2::CENTER_BOTTOM,
        "end play",
        Ink::Plain,
    );
    board.line(&[[56.0, AXIS - 35.0], [56.0, AXIS - 11.0]], Pen::Thin);
}

pub(super) fn behind_race(board: &Board<'_>) {
    let cut = Cut::along(board, AXIS);
    let bearing = Room {
        x: [170.0, 208.0],
        r: [22.0, BORE],
    };
    let case = [
        [110.0, BORE],
        [217.0, BORE],
        [217.0, 27.0],
        [240.0, 27.0],
        [240.0, CASE],
        [110.0, CASE],
    ];
    cut.ring(&case, Fill::Case);
    shaft(&cut, bearing, 288.0, End::Broken);
    cut.taper_bearing(bearing, SmallEnds::Right);
    cut.plain_ring([208.0, 217.0], [36.0, BORE], Fill::Shim);
    cut.centre_line([12.0, 302.0]);
    play(board);

    board.line(&[[212.5, AXIS - 44.0], [212.5, 19.0]], Pen::Shim);
    board.words([212.5, ABOVE], Align2::CENTER_BOTTOM, "shim", Ink::Shim);
    board.line(&[[196.0, AXIS - 47.0], [164.0, 20.0]], Pen::Thin);
    board.words(
        [176.0, ABOVE],
        Align2::RIGHT_BOTTOM,
        "cup (race)",
        Ink::Plain,
    );
    board.words(
        [246.0, AXIS - 52.0],
        Align2::LEFT_CENTER,
        "case",
        Ink::Plain,
    );
    board.arrow(
        &[[212.5, AXIS + 44.0], [212.5, MOVE], [180.0, MOVE]],
        Pen::Shim,
    );
    board.words(
        [174.0, MOVE],
        Align2::RIGHT_CENTER,
        "thicker: less play",
        Ink::Shim,
    );
}

/// The case that is open to the right, the shaft and its seated bearing.
fn open_case(cut: &Cut<'_>) {
    let bearing = Room {
        x: [150.0, 188.0],
        r: [22.0, BORE],
    };
    let case = [[110.0, BORE], [FACE, BORE], [FACE, CASE], [110.0, CASE]];
    cut.ring(&case, Fill::Case);
    shaft(cut, bearing, 190.0, End::Face);
    cut.taper_bearing(bearing, SmallEnds::Right);
}

/// The face of the open case, and of its cover's flange where it is fitted.
const FACE: f32 = 200.0;
const FLANGE: f32 = 209.0;

/// A cover that holds the cup.
fn cover(cut: &Cut<'_>) {
    let above = [
        [188.0, 36.0],
        [188.0, BORE - 1.0],
        [FLANGE, BORE - 1.0],
        [FLANGE, CASE],
        [226.0, CASE],
    ];
    let recess = [[212.0, -36.0], [212.0, 36.0], [188.0, 36.0]];
    let below = above.iter().rev().map(|[x, r]| [*x, -r]);
    let outline = above.iter().copied().chain(below).chain(recess);
    let outline: Vec<_> = outline.map(|place| cut.at(place)).collect();
    cut.board().part(&outline, Fill::Cover);
}

/// The screws of the cover: their heads, and the lines in their middle.
fn screws(cut: &Cut<'_>) {
    cut.plain_ring([226.0, 232.0], [55.5, 63.5], Fill::Metal);
    for radius in [59.5, -59.5] {
        let line = [172.0, 238.0].map(|x| cut.at([x, radius]));
        cut.board().line(&line, Pen::Axis);
    }
}

pub(super) fn under_cover(board: &Board<'_>) {
    let cut = Cut::along(board, AXIS);
    open_case(&cut);
    cover(&cut);
    cut.plain_ring([FACE, FLANGE], [BORE, CASE], Fill::Shim);
    screws(&cut);
    cut.centre_line([12.0, 240.0]);
    play(board);

    board.line(&[[204.5, AXIS - CASE], [204.5, 19.0]], Pen::Shim);
    board.words([204.5, ABOVE], Align2::CENTER_BOTTOM, "shim", Ink::Shim);
    board.words([150.0, ABOVE], Align2::CENTER_BOTTOM, "case", Ink::Plain);
    board.words(
        [244.0, AXIS - 30.0],
        Align2::LEFT_CENTER,
        "cover",
        Ink::Plain,
    );
    board.line(&[[242.0, AXIS - 30.0], [219.0, AXIS - 30.0]], Pen::Thin);
    board.arrow(
        &[[204.5, AXIS + CASE], [204.5, MOVE], [237.0, MOVE]],
        Pen::Shim,
    );
    board.words(
        [198.0, MOVE],
        Align2::RIGHT_CENTER,
        "thicker: more play",
        Ink::Shim,
    );
}

pub(super) fn feeler_gap(board: &Board<'_>) {
    let cut = Cut::along(board, AXIS);
    open_case(&cut);
    cover(&cut);
    let blade = [[FACE + 1.5, 54.0], [FLANGE - 1.5, 84.0]].map(|place| cut.at(place));
    board.block(blade[0], blade[1], Fill::Shim);
    cut.centre_line([12.0, 240.0]);
    board.arrow(&[[272.0, AXIS], [232.0, AXIS]], Pen::Edge);
    board.words([276.0, AXIS], Align2::LEFT_CENTER, "press", Ink::Plain);

    board.words([214.0, ABOVE], Align2::LEFT_BOTTOM, "feeler", Ink::Shim);
    board.words([150.0, ABOVE], Align2::CENTER_BOTTOM, "case", Ink::Plain);
    board.words(
        [244.0, AXIS - 44.0],
        Align2::LEFT_CENTER,
        "cover",
        Ink::Plain,
    );
    board.line(&[[242.0, AXIS - 44.0], [219.0, AXIS - 44.0]], Pen::Thin);
    board.words(
        [56.0, AXIS - 36.0],
        Align2::CENTER_BOTTOM,
        "seat the bearing",
        Ink::Plain,
    );
    let gap = [FACE, FLANGE].map(|x| cut.at([x, -CASE]));
    board.level_dimension(gap[0], gap[1], MOVE - 4.0, Pen::Shim);
    board.words([234.0, MOVE - 4.0], Align2::LEFT_CENTER, "gap g", Ink::Shim);
    board.words(
        [174.0, MOVE - 4.0],
        Align2::RIGHT_CENTER,
        "thicker shim: more play",
        Ink::Shim,
    );
}
