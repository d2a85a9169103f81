//! What should a picture look like? The slow and plain way: every pixel asks every triangle.
//!
//! Shares no code with the program; coverage in whole numbers, colours in floating point.

use std::collections::HashMap;

use egui::epaint::{Primitive, Vertex};
use egui::{ClippedPrimitive, Color32, ColorImage, ImageData, TextureId, TexturesDelta};
use image::{Rgba, RgbaImage};

/// Paints opaque pictures triangle by triangle and pixel by pixel.
#[derive(Default)]
pub(crate) struct PerPixel {
    textures: HashMap<TextureId, ColorImage>,
}

impl PerPixel {
    pub(crate) fn apply(&mut self, delta: &mut TexturesDelta) {
        for (id, changes) in delta.set.drain() {
            for change in changes {
                let ImageData::Color(image) = &change.image;
                let Some([left, top]) = change.pos else {
                    self.textures.insert(id, ColorImage::clone(image));
                    continue;
                };
                let whole = self.textures.get_mut(&id).unwrap();
                for y in 0..image.height() {
                    for x in 0..image.width() {
                        whole[(left + x, top + y)] = image[(x, y)];
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
        for ClippedPrimitive {
            clip_rect,
            primitive,
        } in primitives
        {
            let Primitive::Mesh(mesh) = primitive else {
                continue;
            };
            let texture = &self.textures[&mesh.texture_id];
            let edge = |points: f32, limit: u32| {
                ((points * pixels_per_point).round().max(0.0) as u32).min(limit)
            };
            let columns = edge(clip_rect.min.x, width)..edge(clip_rect.max.x, width);
            let rows = edge(clip_rect.min.y, height)..edge(clip_rect.max.y, height);
            for corners in mesh.triangles() {
                let triangle =
                    Triangle::new(corners.map(|i| mesh.vertices[i as usize]), pixels_per_point);
                let (columns, rows) = triangle.near(&columns, &rows);
                for y in rows {
                    for x in columns.clone() {
                        if let Some(colour) = triangle.colour_at(x, y, texture) {
                            let pixel = picture.get_pixel_mut(x, y);
                            pixel.0 = blended(pixel.0, colour);
                        }
                    }
                }
            }
        }
        picture
    }
}

/// `source` laid over `below`: the formula of the GPU's blending unit.
pub(crate) fn blended(below: [u8; 4], source: [u8; 4]) -> [u8; 4] {
    let through = 1.0 - f64::from(source[3]) / 255.0;
    std::array::from_fn(|i| {
        let below = (f64::from(below[i]) * through).round();
        (f64::from(source[i]) + below).min(255.0) as u8
    })
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
            [vertex.pos.x, vertex.pos.y].map(|points| (pixels(points) * 256.0).round() as i64)
        };
        if cross(corners.map(place)) < 0 {
            corners.swap(1, 2);
        }
        Self {
            corners,
            places: corners.map(place),
        }
    }

    fn near(
        &self,
        columns: &std::ops::Range<u32>,
        rows: &std::ops::Range<u32>,
    ) -> (std::ops::Range<u32>, std::ops::Range<u32>) {
        let narrowed = |axis: usize, range: &std::ops::Range<u32>| {
            let ends = self.places.map(|place| place[axis].div_euclid(256));
            let low = ends.iter().min().unwrap() - 1;
            let high = ends.iter().max().unwrap() + 2;
            let limit = |end: i64| {
                end.clamp(range.start.into(), i64::from(range.end.max(range.start))) as u32
            };
            limit(low)..limit(high)
        };
        (narrowed(0, columns), narrowed(1, rows))
    }

    fn colour_at(&self, x: u32, y: u32, texture: &ColorImage) -> Option<[u8; 4]> {
        let centre = [i64::from(x) * 256 + 128, i64::from(y) * 256 + 128];
        let [a, b, c] = self.places;
        let area = cross(self.places);
        let opposite = [(b, c), (c, a), (a, b)];
        let inside = |&(from, to): &([i64; 2], [i64; 2])| {
            let side = cross([from, to, centre]);
            // Going clockwise, a top edge goes right and a left edge goes up.
            let owned = (from[1] == to[1] && to[0] > from[0]) || to[1] < from[1];
            side > 0 || (side == 0 && owned)
        };
        if area == 0 || !opposite.iter().all(inside) {
            return None;
        }
        let shares = opposite.map(|(from, to)| cross([from, to, centre]) as f64 / area as f64);
        let mixed = |value: &dyn Fn(&Vertex) -> f64| -> f64 {
            self.corners
                .iter()
                .zip(shares)
                .map(|(corner, share)| value(corner) * share)
                .sum()
        };
        let uv = [
            mixed(&|corner| corner.uv.x.into()),
            mixed(&|corner| corner.uv.y.into()),
        ];
        let texel = sampled(texture, uv);
        Some(std::array::from_fn(|i| {
            let level = mixed(&|corner| corner.color.to_array()[i].into());
            (level * texel[i] / 255.0).round() as u8
        }))
    }
}

/// Twice the area of a triangle, positive when it turns clockwise on the screen.
fn cross([a, b, c]: [[i64; 2]; 3]) -> i64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
}

/// The texture between its four texels around `uv`.
fn sampled(texture: &ColorImage, uv: [f64; 2]) -> [f64; 4] {
    let axis = |i: usize| {
        let place = uv[i] * texture.size[i] as f64 - 0.5;
        let texel = |at: f64| at.clamp(0.0, texture.size[i] as f64 - 1.0) as usize;
        (
            texel(place.floor()),
            texel(place.floor() + 1.0),
            place - place.floor(),
        )
    };
    let (left, right, across) = axis(0);
    let (top, bottom, down) = axis(1);
    std::array::from_fn(|i| {
        let level = |x, y| f64::from(texture[(x, y)].to_array()[i]);
        let row = |y| level(left, y) * (1.0 - across) + level(right, y) * across;
        row(top) * (1.0 - down) + row(bottom) * down
    })
}
