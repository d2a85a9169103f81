//! The drawings of a fit: a ring before its seat on a shaft, and one before its seat in the bore of a case.

use super::board::{Board, Fill, Ink, Pen};
use super::parts::{Cut, End};
use egui::Align2;

/// A ring that is pressed on its tight face, above and below the axis.
fn pressed(board: &Board<'_>, cut: &Cut<'_>, radius: f32) {
    for r in [radius, -radius] {
        board.arrow(&[cut.at([83.0, r]), cut.at([106.0, r])], Pen::Shim);
    }
}

/// The diameter of a seat at two places along it.
fn read_across(board: &Board<'_>, cut: &Cut<'_>, (radius, word): (f32, &str)) {
    for x in [138.0, 188.0] {
        board.both_ways(cut.at([x, radius]), cut.at([x, -radius]), Pen::Edge);
        let beside = cut.at([x + 5.0, 13.0]);
        board.words(beside, Align2::LEFT_CENTER, word, Ink::Plain);
    }
}

pub(super) fn on_shaft(board: &Board<'_>) {
    const AXIS: f32 = 96.0;
    const SEAT: f32 = 28.0;
    const RING: f32 = 46.0;
    const RACE: f32 = 41.0;
    let cut = Cut::along(board, AXIS);
    let shaft = [
        [112.0, SEAT],
        [214.0, SEAT],
        [214.0, 38.0],
        [250.0, 38.0],
        [250.0, SEAT],
        [304.0, SEAT],
    ];
    cut.solid(&shaft, [End::Face, End::Broken], Fill::Metal);
    let ring = [
        [34.0, SEAT],
        [34.0, RING],
        [46.0, RING],
        [51.0, RACE],
        [65.0, RACE],
        [70.0, RING],
        [80.0, RING],
        [80.0, SEAT],
        [34.0, SEAT],
    ];
    cut.ring(&ring, Fill::Shim);
    cut.centre_line([26.0, 314.0]);
    read_across(board, &cut, (SEAT, "d"));
    pressed(board, &cut, 37.0);

    let [top, bottom] = [RACE, -RACE].map(|r| cut.at([22.0, r]));
    for [_, y] in [top, bottom] {
        board.line(&[[34.0, y], [19.0, y]], Pen::Thin);
    }
    board.both_ways(top, bottom, Pen::Edge);
    board.words([18.0, 96.0], Align2::RIGHT_CENTER, "Di", Ink::Plain);
    let below = |x: f32| cut.at([x, -RING]);
    board.level_dimension(below(34.0), below(80.0), 160.0, Pen::Edge);
    board.words([86.0, 162.0], Align2::LEFT_CENTER, "width B", Ink::Plain);
    board.words([57.0, 46.0], Align2::CENTER_BOTTOM, "inner ring", Ink::Shim);
    board.words(
        [156.0, 62.0],
        Align2::CENTER_BOTTOM,
        "seat: read along\nand across",
        Ink::Plain,
    );
    board.words(
        [110.0, 140.0],
        Align2::LEFT_CENTER,
        "press squarely",
        Ink::Shim,
    );
    board.words([238.0, 54.0], Align2::CENTER_BOTTOM, "shoulder", Ink::Plain);
    board.words([276.0, 82.0], Align2::CENTER_CENTER, "shaft", Ink::Plain);
    board.words(
        [262.0, 162.0],
        Align2::CENTER_CENTER,
        "thicker: tighter",
        Ink::Shim,
    );
}

pub(super) fn in_bore(board: &Board<'_>) {
    const AXIS: f32 = 90.0;
    const BORE: f32 = 48.0;
    const RACE: f32 = 39.0;
    const RING: f32 = 34.0;
    let cut = Cut::along(board, AXIS);
    let case = [
        [112.0, BORE],
        [112.0, 70.0],
        [232.0, 70.0],
        [232.0, 34.0],
        [218.0, 34.0],
        [218.0, BORE],
        [112.0, BORE],
    ];
    cut.ring(&case, Fill::Case);
    let ring = [
        [34.0, RING],
        [34.0, BORE],
        [80.0, BORE],
        [80.0, RING],
        [70.0, RING],
        [65.0, RACE],
        [51.0, RACE],
        [46.0, RING],
        [34.0, RING],
    ];
    cut.ring(&ring, Fill::Shim);
    cut.centre_line([10.0, 240.0]);
    read_across(board, &cut, (BORE, "D"));
    pressed(board, &cut, 41.0);

    board.words([57.0, 36.0], Align2::CENTER_BOTTOM, "outer ring", Ink::Shim);
    board.words(
        [10.0, 150.0],
        Align2::LEFT_CENTER,
        "press squarely",
        Ink::Shim,
    );
    board.words(
        [172.0, 178.0],
        Align2::CENTER_BOTTOM,
        "bore: read along and across",
        Ink::Plain,
    );
    board.words([237.0, 34.0], Align2::LEFT_CENTER, "case", Ink::Plain);
    board.words(
        [237.0, 122.0],
        Align2::LEFT_CENTER,
        "light alloy:\nlooser hot",
        Ink::Shim,
    );
    board.words(
        [237.0, 66.0],
        Align2::LEFT_CENTER,
        "wider: looser",
        Ink::Shim,
    );
}
