//! How is the program's icon drawn, and is the file in `assets` that drawing?
//!
//! Four gears rise from standstill, the needle's path through them in the colours of the sets.

use egui::{Color32, Context, Painter, Pos2, Rect, Stroke, Ui, pos2, vec2};
use image::RgbaImage;
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::picture;
use layshaft::project::Livery;
use std::path::PathBuf;

const SIDE: f32 = 256.0;

/// Where the gears' lines start, and the height at which the driver changes up.
const STANDSTILL: Pos2 = pos2(38.0, 212.0);
const SHIFT_Y: f32 = 48.0;

/// How far each gear reaches to the right when the driver changes up.
const REACHES: [f32; 4] = [42.0, 88.0, 138.0, 184.0];

fn file() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("assets/icon.png")
}

fn drawn() -> RgbaImage {
    let ctx = Context::default();
    picture(&ctx, vec2(SIDE, SIDE), 1.0, Color32::TRANSPARENT, icon_ui)
}

fn icon_ui(ui: &mut Ui) {
    let palette = Palette::of(Theme::Dark);
    let painter = ui.painter();
    let square = Rect::from_min_size(Pos2::ZERO, vec2(SIDE, SIDE));
    painter.rect_filled(square, 48.0, palette.page);
    for reach in REACHES {
        let gear = [STANDSTILL, on_gear(reach, reach)];
        painter.line_segment(gear, Stroke::new(7.0, palette.mark.gamma_multiply(0.75)));
    }
    let mut speed = 0.0;
    for ((place, reach), livery) in REACHES.into_iter().enumerate().zip(Livery::ALL) {
        let from = on_gear(reach, speed);
        let to = on_gear(reach, reach);
        let after_drop = on_gear(REACHES[place + 1], reach);
        painter.line_segment([to, after_drop], Stroke::new(7.0, palette.mark));
        round_line(painter, [from, to], Stroke::new(20.0, palette.set(livery)));
        speed = reach;
    }
}

/// The point at which a gear has this speed, where `reach` is its speed at the shift.
fn on_gear(reach: f32, speed: f32) -> Pos2 {
    let rise = (STANDSTILL.y - SHIFT_Y) * speed / reach;
    STANDSTILL + vec2(speed, -rise)
}

fn round_line(painter: &Painter, ends: [Pos2; 2], stroke: Stroke) {
    painter.line_segment(ends, stroke);
    for end in ends {
        painter.circle_filled(end, stroke.width / 2.0, stroke.color);
    }
}

#[test]
fn the_icon_in_the_assets_is_the_one_that_is_drawn_here() {
    let kept = image::open(file()).unwrap().into_rgba8();
    assert!(kept == drawn(), "draw it again: draw_the_icon");
}

#[test]
#[ignore = "writes assets/icon.png"]
fn draw_the_icon() {
    drawn().save(file()).unwrap();
}
