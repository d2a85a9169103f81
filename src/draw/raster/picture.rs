//! What does a piece of user interface look like when nobody is there to see it?

use egui::epaint::ImageDelta;
use egui::{
    Color32, Context, FullOutput, Pos2, RawInput, Rect, TextureId, TextureOptions, TexturesDelta,
    Ui, Vec2, ViewportId,
};
use image::RgbaImage;

use super::{MAX_SIDE_PX, Raster};

/// Passes that are always made: axes of diagrams need the second to know their own width.
const FEWEST_PASSES: usize = 3;

/// Passes after which a layout that still moves is painted as it is.
const MOST_PASSES: usize = 10;

/// Egui's letters cannot be drawn arbitrarily large.
const MOST_PIXELS_PER_POINT: f32 = 64.0;

/// A picture of `ui`, laid out off-screen until it has settled.
///
/// Give it a context of its own, with fonts, theme and style set: what a window shows in the
/// same one would be disturbed. `ui` is called several times and should do the same each time.
/// Time stands still, there is neither pointer nor keyboard.
///
/// # Units
/// * `size_points`: width and height in points, as many as make [`MAX_SIDE_PX`]; more counts as
///   that many, what is negative or no number as 0
/// * `pixels_per_point`: above 0 and up to 64; more counts as 64, all else makes an empty picture
pub fn picture(
    ctx: &Context,
    size_points: Vec2,
    pixels_per_point: f32,
    background: Color32,
    mut ui: impl FnMut(&mut Ui),
) -> RgbaImage {
    let scale = pixels_per_point.clamp(0.0, MOST_PIXELS_PER_POINT);
    let [width_px, height_px] = [size_points.x, size_points.y].map(|side| side_px(side * scale));
    if width_px == 0 || height_px == 0 {
        return RgbaImage::new(width_px, height_px);
    }
    let size = size_points.min(Vec2::splat(MAX_SIDE_PX as f32 / scale));
    let mut raster = Raster::new();
    let output = settled(|| {
        let mut output = ctx.run_ui(input(ctx, size, scale), &mut ui);
        raster.apply(&mut output.textures_delta);
        output
    });
    raster.apply(&mut letters(ctx));
    let scale = output.pixels_per_point;
    let primitives = ctx.tessellate(output.shapes, scale);
    raster.paint(&primitives, scale, width_px, height_px, background)
}

/// The output of the first pass that repeats the one before.
fn settled(mut pass: impl FnMut() -> FullOutput) -> FullOutput {
    let mut latest = pass();
    for number in 2..=MOST_PASSES {
        let next = pass();
        let repeats = next.shapes == latest.shapes;
        latest = next;
        if repeats && number >= FEWEST_PASSES {
            break;
        }
    }
    latest
}

/// All letters drawn so far: a context used before does not hand these over again.
fn letters(ctx: &Context) -> TexturesDelta {
    let atlas = ctx.fonts(|fonts| ImageDelta::full(fonts.image(), TextureOptions::LINEAR));
    let mut delta = TexturesDelta::default();
    delta.push(TextureId::default(), atlas);
    delta
}

fn input(ctx: &Context, size_points: Vec2, pixels_per_point: f32) -> RawInput {
    let mut input = RawInput {
        screen_rect: Some(Rect::from_min_size(Pos2::ZERO, size_points)),
        time: Some(0.0),
        focused: false,
        ..RawInput::default()
    };
    let viewport = input.viewports.entry(ViewportId::ROOT).or_default();
    // egui multiplies the zoom back in; a zoom set just now holds from the second pass on.
    viewport.native_pixels_per_point = Some(pixels_per_point / ctx.zoom_factor());
    input
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the cast turns what is negative or no number into 0, and the rest is cut"
)]
fn side_px(side: f32) -> u32 {
    (side.round() as u32).min(MAX_SIDE_PX)
}
