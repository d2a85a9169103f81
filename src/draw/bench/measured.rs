//! The drawings of what is measured with a gauge: depths of a case, and a gap between two limits.

use super::board::{Board, Fill, Ink, Pen};
use super::parts::{Cut, End, Room};
use egui::Align2;

pub(super) fn depth_gauge(board: &Board<'_>) {
    const AXIS: f32 = 92.0;
    const CASE: f32 = 62.0;
    const BORE: f32 = 48.0;
    // The seat, the face, and what lies between what stands in the case and its cover.
    const SEAT: f32 = 120.0;
    const FILLED: f32 = 160.0;
    const FACE: f32 = 166.0;
    const COVER: f32 = 171.0;
    let cut = Cut::along(board, AXIS);
    let case = [
        [66.0, 34.0],
        [SEAT, 34.0],
        [SEAT, BORE],
        [FACE, BORE],
        [FACE, CASE],
        [66.0, CASE],
    ];
    cut.ring(&case, Fill::Case);
    let outside = [[16.0, 27.0], [SEAT, 27.0], [SEAT, 20.0], [162.0, 20.0]];
    cut.solid(&outside, [End::Broken, End::Face], Fill::Metal);
    cut.ball_bearing(Room {
        x: [SEAT, FILLED],
        r: [20.0, BORE],
    });
    cut.solid(&[[COVER, CASE], [186.0, CASE]], [End::Face; 2], Fill::Cover);
    cut.plain_ring([FACE, COVER], [BORE, CASE], Fill::Bare);
    cut.plain_ring([FILLED, COVER], [35.0, BORE], Fill::Shim);
    cut.centre_line([6.0, 196.0]);

    let at = |x: f32, r: f32| cut.at([x, r]);
    board.level_dimension(at(SEAT, CASE), at(FACE, CASE), 20.0, Pen::Edge);
    board.words([114.0, 20.0], Align2::RIGHT_CENTER, "depth A", Ink::Plain);
    board.level_dimension(at(SEAT, -BORE), at(FILLED, -BORE), 164.0, Pen::Edge);
    board.words(
        [114.0, 164.0],
        Align2::RIGHT_CENTER,
        "stands in it: B",
        Ink::Plain,
    );
    board.line(&[at(168.5, 56.0), [202.0, 22.0]], Pen::Thin);
    board.words([204.0, 20.0], Align2::LEFT_CENTER, "gasket", Ink::Plain);
    board.words([194.0, 52.0], Align2::LEFT_CENTER, "cover", Ink::Plain);
    board.line(&[[192.0, 52.0], at(179.0, 40.0)], Pen::Thin);
    board.line(&[at(166.0, -42.0), [196.0, 144.0]], Pen::Shim);
    board.words(
        [199.0, 135.0],
        Align2::LEFT_TOP,
        "shim\nthicker: less play",
        Ink::Shim,
    );
}

pub(super) fn limits_gauge(board: &Board<'_>) {
    const AXIS: f32 = 160.0;
    // The faces between which the gap is.
    const TEETH: f32 = 100.0;
    const RING: f32 = 113.0;
    let at = |x: f32, r: f32| [x, AXIS - r];
    let gear = [
        at(24.0, 26.0),
        at(24.0, 108.0),
        at(84.0, 108.0),
        at(84.0, 82.0),
        at(TEETH, 82.0),
        at(TEETH, 66.0),
        at(160.0, 52.0),
        at(160.0, 26.0),
        at(24.0, 26.0),
    ];
    let ring = [
        at(RING, 63.0),
        at(RING, 82.0),
        at(125.0, 82.0),
        at(125.0, 76.0),
        at(158.0, 70.0),
        at(158.0, 52.5),
        at(RING, 63.0),
    ];
    board.part(&gear, Fill::Case);
    board.part(&ring, Fill::Metal);
    let shaft = [at(8.0, 0.0), at(8.0, 24.0), at(186.0, 24.0), at(186.0, 0.0)];
    board.part(&shaft, Fill::Metal);
    board.line(&[at(2.0, 0.0), at(196.0, 0.0)], Pen::Axis);
    board.block(at(TEETH + 2.0, 69.0), at(RING - 2.0, 122.0), Fill::Shim);
    board.words(at(106.5, 124.0), Align2::CENTER_BOTTOM, "feeler", Ink::Shim);
    board.words(at(54.0, 112.0), Align2::CENTER_BOTTOM, "gear", Ink::Plain);
    board.line(&[at(142.0, 64.0), [170.0, 70.0]], Pen::Thin);
    board.words(
        [172.0, 68.0],
        Align2::LEFT_CENTER,
        "synchroniser ring",
        Ink::Plain,
    );
    limits(board);
}

/// Where a reading lies between its limits.
fn limits(board: &Board<'_>) {
    const LEAST: f32 = 222.0;
    const MOST: f32 = 290.0;
    const READ: f32 = 243.0;
    board.block([LEAST, 118.0], [MOST, 130.0], Fill::Metal);
    board.line(&[[202.0, 130.0], [310.0, 130.0]], Pen::Edge);
    for limit in [LEAST, MOST] {
        board.line(&[[limit, 112.0], [limit, 135.0]], Pen::Edge);
    }
    board.arrow(&[[READ, 106.0], [READ, 129.0]], Pen::Shim);
    board.words([READ, 104.0], Align2::CENTER_BOTTOM, "reading", Ink::Shim);
    board.words([LEAST, 138.0], Align2::CENTER_TOP, "least", Ink::Plain);
    board.words([MOST, 138.0], Align2::CENTER_TOP, "most", Ink::Plain);
}
