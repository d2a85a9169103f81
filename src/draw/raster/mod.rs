//! How do egui's triangles become a picture without a window or a graphics card?
//!
//! Follows the rules of egui's OpenGL painter, so that a picture looks like the window: colours
//! premultiplied and blended in gamma space, bilinear textures that end at their edge, pixels
//! covered when their centre is (of two shapes that share an edge, exactly one). What decides a
//! pixel is whole numbers, or sums and products of `f64` in a fixed order: the same input gives
//! the same bytes everywhere.
//!
//! Left out, as nothing here needs them: nearest and repeating textures, mipmaps, dithering and
//! paint callbacks, which are skipped.

mod blend;
mod canvas;
mod edge;
mod mesh;
mod picture;
mod plane;
mod quad;
mod span;
mod textures;
mod triangle;

use egui::epaint::Primitive;
use egui::{ClippedPrimitive, Color32, TexturesDelta};
use image::RgbaImage;

use canvas::{Canvas, Clip};
use textures::Textures;

pub use picture::picture;

/// The longest side a picture can have, in pixels; a longer one is cut there.
///
/// Far above any screen or page, and low enough that a slip of the keyboard cannot ask for
/// terabytes: a square of this side takes 1 GiB.
pub const MAX_SIDE_PX: u32 = 16_384;

/// Paints egui's output on the CPU; holds the textures that the output refers to.
#[derive(Debug, Default)]
pub struct Raster {
    textures: Textures,
}

impl Raster {
    /// A painter that knows no texture yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Takes over the new and changed textures of one pass and empties `delta`.
    ///
    /// Call it for every pass, in order, also for those that are not painted. Textures that the
    /// pass frees stay paintable until the next call, because the pass itself may show them.
    pub fn apply(&mut self, delta: &mut TexturesDelta) {
        self.textures.apply(delta);
    }

    /// A picture of `primitives`, as [`egui::Context::tessellate`] returns them.
    ///
    /// The pixels are not premultiplied, and opaque wherever `background` is. Nothing in the
    /// input panics: triangles with corners that are not finite or missing, textures that were
    /// never applied and paint callbacks are left out.
    ///
    /// # Units
    /// * `pixels_per_point`: pixels per unit of the primitives' positions, above 0
    /// * `width_px`, `height_px`: pixels, 0 to [`MAX_SIDE_PX`]
    pub fn paint(
        &self,
        primitives: &[ClippedPrimitive],
        pixels_per_point: f32,
        width_px: u32,
        height_px: u32,
        background: Color32,
    ) -> RgbaImage {
        let mut canvas = Canvas::new(width_px, height_px, background);
        let mut corners = Vec::new();
        for ClippedPrimitive {
            clip_rect,
            primitive,
        } in primitives
        {
            let Primitive::Mesh(mesh) = primitive else {
                continue;
            };
            let Some(texture) = self.textures.find(mesh.texture_id) else {
                log::warn!(
                    "{:?} was never applied: its shapes are left out",
                    mesh.texture_id
                );
                continue;
            };
            let clip = Clip::new(*clip_rect, pixels_per_point, &canvas);
            if clip.is_empty() {
                continue;
            }
            mesh::place_corners(mesh, pixels_per_point, &mut corners);
            mesh::paint(&mut canvas.within(clip), mesh, &corners, texture);
        }
        canvas.into_image(background)
    }
}
