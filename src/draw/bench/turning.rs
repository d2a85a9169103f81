//! The drawings of how hard a shaft turns: by a cord and a scale, and by a beam wrench with an adapter.

use super::board::{At, Board, Fill, Ink, Pen};
use egui::Align2;

pub(super) fn cord_and_scale(board: &Board<'_>) {
    const CENTRE: At = [76.0, 104.0];
    const DRUM: f32 = 54.0;
    const CORD: f32 = 7.0;
    // The cord is pulled straight off above.
    const MIDDLE: f32 = DRUM + CORD / 2.0;
    const PULLED: f32 = CENTRE[1] - MIDDLE;
    board.disc(CENTRE, DRUM, Fill::Metal);
    board.disc(CENTRE, 15.0, Fill::Bare);
    let mut cord = Board::arc(CENTRE, MIDDLE, [20.0, 270.0]);
    cord.push([192.0, PULLED]);
    board.cord(&cord, CORD);
    scale(board, PULLED);

    let [x, y] = CENTRE;
    board.line(&[[x - 22.0, y], [x + 22.0, y]], Pen::Axis);
    board.line(&[[x, y + 22.0], [x, y]], Pen::Axis);
    board.both_ways(CENTRE, [x, PULLED], Pen::Edge);
    let radius = "radius: drum\nand half the cord";
    board.line(&[[x, y - 30.0], [148.0, y - 8.0]], Pen::Thin);
    board.words([150.0, y - 6.0], Align2::LEFT_CENTER, radius, Ink::Plain);
    let turned = Board::arc(CENTRE, 36.0, [160.0, 40.0]);
    let turned: Vec<At> = turned.into_iter().rev().collect();
    board.arrow(&turned, Pen::Edge);
    board.words(
        [150.0, 158.0],
        Align2::LEFT_CENTER,
        "read while it turns",
        Ink::Plain,
    );
}

/// A spring scale between the cord and the hand.
fn scale(board: &Board<'_>, y: f32) {
    board.line(&[[190.0, y], [202.0, y]], Pen::Edge);
    board.block([202.0, y - 11.0], [254.0, y + 11.0], Fill::Bare);
    for mark in 0_u8..=6 {
        let x = 209.0 + 6.0 * f32::from(mark);
        let long = if mark % 3 == 0 { 2.0 } else { -2.0 };
        board.line(&[[x, y - 11.0], [x, y + long]], Pen::Thin);
    }
    board.line(&[[227.0, y - 11.0], [227.0, y + 8.0]], Pen::Shim);
    board.arrow(&[[254.0, y], [304.0, y]], Pen::Shim);
    board.words(
        [228.0, y - 15.0],
        Align2::CENTER_BOTTOM,
        "scale",
        Ink::Plain,
    );
    board.words([282.0, y - 6.0], Align2::CENTER_BOTTOM, "pull", Ink::Shim);
}

pub(super) fn beam_wrench(board: &Board<'_>) {
    // The shaft, the square of the wrench, and the handle.
    const SHAFT: f32 = 44.0;
    const SQUARE: f32 = 104.0;
    const HANDLE: f32 = 274.0;
    const LINE: f32 = 84.0;
    board.disc([SHAFT, LINE], 27.0, Fill::Metal);
    board.line(&[[SHAFT, LINE - 34.0], [SHAFT, LINE + 34.0]], Pen::Axis);
    let turned = Board::arc([SHAFT, LINE], 34.0, [200.0, 270.0]);
    board.arrow(&turned, Pen::Edge);
    wrench(board, SQUARE, HANDLE, LINE);
    board.block(
        [SHAFT - 11.0, LINE - 11.0],
        [SQUARE + 9.0, LINE + 11.0],
        Fill::Shim,
    );
    let nut: Vec<At> = (0_u8..=6)
        .flat_map(|corner| {
            Board::arc([SHAFT, LINE], 7.0, [60.0 * f32::from(corner); 2])
                .into_iter()
                .take(1)
        })
        .collect();
    board.part(&nut, Fill::Bare);
    board.block(
        [SQUARE - 5.0, LINE - 5.0],
        [SQUARE + 5.0, LINE + 5.0],
        Fill::Bare,
    );
    board.line(&[[SHAFT - 16.0, LINE], [HANDLE + 34.0, LINE]], Pen::Axis);

    board.words([SHAFT, 30.0], Align2::CENTER_BOTTOM, "shaft", Ink::Plain);
    board.words([204.0, 30.0], Align2::CENTER_BOTTOM, "reading", Ink::Plain);
    board.arrow(&[[HANDLE, LINE - 46.0], [HANDLE, LINE - 10.0]], Pen::Edge);
    board.words(
        [HANDLE, LINE - 49.0],
        Align2::CENTER_BOTTOM,
        "pull",
        Ink::Plain,
    );
    let y = 136.0;
    board.level_dimension([SHAFT, LINE + 34.0], [SQUARE, LINE + 14.0], y, Pen::Edge);
    board.level_dimension([SQUARE, y], [HANDLE, LINE + 14.0], y, Pen::Edge);
    board.words([74.0, y + 4.0], Align2::CENTER_TOP, "adapter E", Ink::Shim);
    board.words([189.0, y + 4.0], Align2::CENTER_TOP, "wrench L", Ink::Plain);
    let torque = "at the shaft: reading × (L + E) ÷ L";
    board.words([160.0, 160.0], Align2::CENTER_TOP, torque, Ink::Plain);
}

/// A beam that bends, the pointer beside it that does not, and the plate on which it points.
fn wrench(board: &Board<'_>, square: f32, handle: f32, y: f32) {
    board.block(
        [square + 9.0, y - 3.0],
        [handle - 24.0, y + 3.0],
        Fill::Metal,
    );
    board.block(
        [handle - 26.0, y - 7.0],
        [handle + 26.0, y + 7.0],
        Fill::Metal,
    );
    let plate = [
        [190.0, y - 24.0],
        [218.0, y - 24.0],
        [218.0, y + 24.0],
        [190.0, y + 24.0],
        [190.0, y - 24.0],
    ];
    board.part(&plate, Fill::Bare);
    for mark in 0_u8..=8 {
        let at = y - 20.0 + 5.0 * f32::from(mark);
        let long = if mark % 4 == 0 { 10.0 } else { 6.0 };
        board.line(&[[218.0 - long, at], [218.0, at]], Pen::Thin);
    }
    board.line(&[[square, y], [206.0, y - 10.0]], Pen::Edge);
    board.line(&[[204.0, y - 24.0], [204.0, 33.0]], Pen::Thin);
}
