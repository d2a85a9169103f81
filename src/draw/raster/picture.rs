//! What does a piece of user interface look like when nobody is there to see it?

use egui::{Color32, Context, FullOutput, Pos2, RawInput, Rect, Ui, Vec2, ViewportId};
use image::RgbaImage;

use super::{MAX_SIDE_PX, Raster};

/// Passes that are always made: axes of diagrams need the second to know their own width.
const FEWEST_PASSES: usize = 3;

/// Passes after which a layout that still moves is painted as it is.
const MOST_PASSES: usize = 10;

/// A picture of `ui`, laid out off-screen until it has settled.
///
/// Use a context of its own, with fonts, theme and style set: what a window shows in it would
/// be disturbed. `ui` is called several times and should do the same each time. Time stands
/// still, there is no pointer and no keyboard.
///
/// # Units
/// * `size_points`: width and height in points; what is negative or no number counts as 0
/// * `pixels_per_point`: pixels per point, above 0; the picture is cut at [`MAX_SIDE_PX`]
pub fn picture(
    ctx: &Context,
    size_points: Vec2,
    pixels_per_point: f32,
    background: Color32,
    mut ui: impl FnMut(&mut Ui),
) -> RgbaImage {
    let [width_px, height_px] =
        [size_points.x, size_points.y].map(|side| side_px(side, pixels_per_point));
    if width_px == 0 || height_px == 0 {
        return RgbaImage::new(width_px, height_px);
    }
    let mut raster = Raster::new();
    let output = settled(
        ctx,
        &mut raster,
        &input(ctx, size_points, pixels_per_point),
        &mut ui,
    );
    let primitives = ctx.tessellate(output.shapes, output.pixels_per_point);
    raster.paint(
        &primitives,
        output.pixels_per_point,
        width_px,
        height_px,
        background,
    )
}

/// The output of the pass that repeats the one before.
fn settled(
    ctx: &Context,
    raster: &mut Raster,
    input: &RawInput,
    ui: &mut impl FnMut(&mut Ui),
) -> FullOutput {
    let mut pass = || {
        let mut output = ctx.run_ui(input.clone(), &mut *ui);
        raster.apply(&mut output.textures_delta);
        output
    };
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

fn input(ctx: &Context, size_points: Vec2, pixels_per_point: f32) -> RawInput {
    let mut input = RawInput {
        screen_rect: Some(Rect::from_min_size(Pos2::ZERO, size_points)),
        time: Some(0.0),
        focused: false,
        ..RawInput::default()
    };
    let viewport = input.viewports.entry(ViewportId::ROOT).or_default();
    // egui multiplies the zoom back in.
    viewport.native_pixels_per_point = Some(pixels_per_point / ctx.zoom_factor());
    input
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the cast turns what is no number or negative into 0, and the rest is cut below"
)]
fn side_px(side_points: f32, pixels_per_point: f32) -> u32 {
    let side = (side_points * pixels_per_point).round() as u32;
    side.min(MAX_SIDE_PX)
}
