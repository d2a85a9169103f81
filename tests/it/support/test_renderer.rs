//! How does a window test get its pictures? From the program's own raster, without a graphics card.

use egui::{Color32, Context, FullOutput, TexturesDelta};
use image::RgbaImage;
use layshaft::draw::Raster;

/// Paints what an `egui_kittest` harness shows.
#[derive(Default)]
pub(crate) struct CpuRenderer {
    raster: Raster,
}

impl egui_kittest::TestRenderer for CpuRenderer {
    fn handle_delta(&mut self, delta: &mut TexturesDelta) {
        self.raster.apply(delta);
    }

    fn render(&mut self, ctx: &Context, output: &FullOutput) -> Result<RgbaImage, String> {
        let pixels_per_point = output.pixels_per_point;
        let size = ctx.content_rect().size() * pixels_per_point;
        if !(size.x >= 1.0 && size.y >= 1.0) {
            return Err(format!("the window has no size: {size:?}"));
        }
        let primitives = ctx.tessellate(output.shapes.clone(), pixels_per_point);
        let [width_px, height_px] = [size.x, size.y].map(whole_pixels);
        Ok(self.raster.paint(
            &primitives,
            pixels_per_point,
            width_px,
            height_px,
            Color32::TRANSPARENT,
        ))
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "checked to be a size"
)]
fn whole_pixels(side: f32) -> u32 {
    side.round() as u32
}
