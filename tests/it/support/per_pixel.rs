//! What should a picture look like? The slow and plain way: every pixel asks every triangle.
//!
//! Shares no code with the program; coverage in whole numbers, colours in floating point.

use std::collections::HashMap;
use std::ops::Range;

use egui::epaint::{Primitive, Vertex};
use egui::{ClippedPrimitive, Color32, ColorImage, ImageData, Rect, TextureId, TexturesDelta};
use image::{Rgba, RgbaImage};

/// Paints opaque pictures triangle by triangle and pixel by pixel.
#[derive(Default)]
pub(crate) struct PerPixel {
    textures: HashMap<TextureId, ColorImage>,
}

impl PerPixel {
    pub(crate) fn apply(&mut self, delta: &mut TexturesDelta) {
        for (id, changes) in delta.set.drain() {
            let texture = self.textures.entry(id).or_default();
            for change in changes {
                let ImageData::Color(image) = &change.image;
                let Some([left, top]) = change.pos else {
                    *texture = ColorImage::clone(image);
                    continue;
                };
                for y in 0..image.height() {
                    for x in 0..image.width() {
                        texture[(left + x, top + y)] = image[(x, y)];
                    }
                }
            }
        }
        delta.free.clear();
    }

    pub(crate) fn paint(
        &self,
        primitives: &[ClippedPrimitive],
        pixels_per_point: f32,
        [width, height]: [u32; 2],
        background: Color32,
    ) -> RgbaImage {
        let mut picture = RgbaImage::from_pixel(width, height, Rgba(background.to_array()));
        for primitive in primitives {
            let Primitive::Mesh(mesh) = &primitive.primitive else {
                continue;
            };
            let texture = &self.textures[&mesh.texture_id];
            for corners in mesh.triangles() {
                let corners = corners.map(|i| mesh.vertices[i as usize]);
                let triangle = Triangle::new(corners, pixels_per_point);
                triangle.paint(&mut picture, primitive.clip_rect, pixels_per_point, texture);
            }
        }
        picture
    }
}

/// `source` laid over `below`: the formula of the GPU's blending unit.
pub(crate) fn blended(below: [u8; 4], source: [u8; 4]) -> [u8; 4] {
    let through = 1.0 - f64::from(source[3]) / 255.0;
    std::array::from_fn(|i| source[i].saturating_add(byte(f64::from(below[i]) * through)))
}

fn byte(level: f64) -> u8 {
    u8::try_from(nearest(level)).unwrap_or(u8::MAX)
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "numbers in tests are small"
)]
fn nearest(value: f64) -> i64 {
    value.round() as i64
}

struct Triangle {
    corners: [Vertex; 3],
    /// In 1/256 of a pixel, turning clockwise on the screen.
    places: [[i64; 2]; 3],
}

impl Triangle {
    fn new(mut corners: [Vertex; 3], pixels_per_point: f32) -> Self {
        let place = |vertex: Vertex| {
            let pixels = |points: f32| f64::from(points) * f64::from(pixels_per_point);
            [vertex.pos.x, vertex.pos.y].map(|points| nearest(pixels(points) * 256.0))
        };
        if cross(corners.map(place)) < 0 {
            corners.swap(1, 2);
        }
        Self {
            corners,
            places: corners.map(place),
        }
    }

    fn paint(&self, picture: &mut RgbaImage, clip: Rect, scale: f32, texture: &ColorImage) {
        let columns = self.near(0, clip.x_range(), scale, picture.width());
        let rows = self.near(1, clip.y_range(), scale, picture.height());
        for y in rows {
            for x in columns.clone() {
                let place = [i64::from(x) * 256 + 128, i64::from(y) * 256 + 128];
                if let Some(colour) = self.colour_at(place, texture) {
                    let pixel = picture.get_pixel_mut(x, y);
                    pixel.0 = blended(pixel.0, colour);
                }
            }
        }
    }

    /// The columns (axis 0) or rows (axis 1) inside the clip and anywhere near the triangle.
    fn near(&self, axis: usize, clip: egui::Rangef, scale: f32, size: u32) -> Range<u32> {
        let ends = self.places.map(|place| place[axis].div_euclid(256));
        let low = ends.into_iter().fold(i64::MAX, i64::min) - 1;
        let high = ends.into_iter().fold(i64::MIN, i64::max) + 2;
        let clipped = |points: f32| nearest(f64::from((points * scale).round()));
        let inside = |pixel: i64| u32::try_from(pixel.max(0)).unwrap_or(u32::MAX).min(size);
        inside(low.max(clipped(clip.min)))..inside(high.min(clipped(clip.max)))
    }

    /// The colour at a place inside the triangle, in 1/256 of a pixel.
    fn colour_at(&self, place: [i64; 2], texture: &ColorImage) -> Option<[u8; 4]> {
        let [a, b, c] = self.places;
        let area = cross(self.places);
        let opposite = [(b, c), (c, a), (a, b)];
        let inside = |&(from, to): &([i64; 2], [i64; 2])| {
            let side = cross([from, to, place]);
            // Going clockwise, a top edge goes right and a left edge goes up.
            let owned = (from[1] == to[1] && to[0] > from[0]) || to[1] < from[1];
            side > 0 || (side == 0 && owned)
        };
        if area == 0 || !opposite.iter().all(inside) {
            return None;
        }
        let shares = opposite.map(|(from, to)| cross([from, to, place]) as f64 / area as f64);
        let mixed = |value: &dyn Fn(&Vertex) -> f64| -> f64 {
            let weighted = self.corners.iter().zip(shares);
            weighted.map(|(corner, share)| value(corner) * share).sum()
        };
        let u = mixed(&|corner| corner.uv.x.into());
        let v = mixed(&|corner| corner.uv.y.into());
        let texel = sampled(texture, [u, v]);
        Some(std::array::from_fn(|i| {
            byte(mixed(&|corner| corner.color.to_array()[i].into()) * texel[i] / 255.0)
        }))
    }
}

/// Twice the area of a triangle, positive when it turns clockwise on the screen.
fn cross([a, b, c]: [[i64; 2]; 3]) -> i64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
}

/// The texture mixed from its four texels around `uv`.
fn sampled(texture: &ColorImage, uv: [f64; 2]) -> [f64; 4] {
    let axis = |i: usize| {
        let place = uv[i] * texture.size[i] as f64 - 0.5;
        let last = texture.size[i] - 1;
        let texel = |at: f64| usize::try_from(nearest(at).max(0)).map_or(last, |at| at.min(last));
        let first = place.floor();
        (texel(first), texel(first + 1.0), place - first)
    };
    let (left, right, across) = axis(0);
    let (top, bottom, down) = axis(1);
    std::array::from_fn(|i| {
        let level = |x, y| f64::from(texture[(x, y)].to_array()[i]);
        let row = |y| level(left, y) * (1.0 - across) + level(right, y) * across;
        row(top) * (1.0 - down) + row(bottom) * down
    })
}
