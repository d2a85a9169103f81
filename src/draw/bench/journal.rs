//! The drawing of a shaft that is turned down: what comes off, the fillet at the shoulder, and the hardened layer.

use super::board::{Board, Fill, Ink, Pen};
use super::parts::{Cut, End};
use egui::Align2;

/// The axis, and the radii of the shaft as it is, as it is to be, of its shoulder and of its core.
const AXIS: f32 = 98.0;
const OLD: f32 = 42.0;
const NEW: f32 = 35.0;
const SHOULDER: f32 = 52.0;
const CORE: f32 = 28.0;

/// The face of the journal, where its fillet begins, and the shoulder.
const FACE: f32 = 52.0;
const FILLET: f32 = 164.0;
const STEP: f32 = 174.0;

pub(super) fn turned_down(board: &Board<'_>) {
    let cut = Cut::along(board, AXIS);
    let shaft = [
        [FACE, CORE],
        [STEP, CORE],
        [STEP, SHOULDER],
        [232.0, SHOULDER],
        [232.0, CORE],
        [304.0, CORE],
    ];
    cut.solid(&shaft, [End::Face, End::Broken], Fill::Metal);
    layers(&cut);
    cut.centre_line([44.0, 314.0]);
    dimensions(board, &cut);

    board.line(&[cut.at([104.0, 39.0]), [96.0, 33.0]], Pen::Thin);
    board.words([92.0, 32.0], Align2::CENTER_BOTTOM, "comes off", Ink::Plain);
    board.line(&[cut.at([170.0, 37.0]), [160.0, 33.0]], Pen::Thin);
    board.words([158.0, 32.0], Align2::CENTER_BOTTOM, "fillet", Ink::Plain);
    board.words([208.0, 40.0], Align2::CENTER_BOTTOM, "shoulder", Ink::Plain);
    board.line(&[cut.at([142.0, -32.0]), [152.0, 152.0]], Pen::Shim);
    board.words(
        [96.0, 160.0],
        Align2::LEFT_CENTER,
        "hardened layer: gets thinner",
        Ink::Shim,
    );
}

/// What comes off, and the hardened layer that is left.
fn layers(cut: &Cut<'_>) {
    // A quarter of a circle from the journal to the shoulder, as far as the shaft was thick.
    let fillet = [
        [FILLET, NEW],
        [FILLET + 3.8, NEW + 0.8],
        [FILLET + 7.1, NEW + 2.9],
        [FILLET + 9.2, NEW + 6.2],
    ];
    let mut hardened = vec![[FACE, CORE], [FACE, NEW]];
    hardened.extend(fillet);
    hardened.extend([[STEP, OLD], [STEP, CORE], [FACE, CORE]]);
    cut.ring(&hardened, Fill::Shim);
    let mut comes_off = vec![[FACE, NEW], [FACE, OLD], [STEP, OLD]];
    comes_off.extend(fillet.iter().rev());
    comes_off.push([FACE, NEW]);
    cut.ring(&comes_off, Fill::Cover);
}

/// The diameters now and wanted.
fn dimensions(board: &Board<'_>, cut: &Cut<'_>) {
    let now = [OLD, -OLD].map(|r| cut.at([40.0, r]));
    for [_, y] in now {
        board.line(&[[FACE, y], [37.0, y]], Pen::Thin);
    }
    board.both_ways(now[0], now[1], Pen::Edge);
    board.words([36.0, 98.0], Align2::RIGHT_CENTER, "now", Ink::Plain);
    board.both_ways(cut.at([74.0, NEW]), cut.at([74.0, -NEW]), Pen::Edge);
    board.words(
        cut.at([80.0, 13.0]),
        Align2::LEFT_CENTER,
        "wanted",
        Ink::Plain,
    );
}
