//! Which pairs of triangles are upright rectangles that can be painted faster?
//!
//! Glyphs, most of all: a rectangle of one colour whose texels fall exactly on pixels is laid on
//! row by row. The pixels are those that the two triangles would cover.

use std::ops::Range;

use super::blend::{CLEAR, Pixel, WHITE, fill, modulate, over};
use super::canvas::Window;
use super::edge::{SUBPIXELS, centre, first_centre};
use super::span::{ColourRamp, TexelRamp, paint_textured, subtexels, tinted};
use super::textures::{SUBTEXELS, Texture, first_texel};
use super::triangle::{Corner, one_colour, one_texel, texels};

/// An upright rectangle of one colour.
pub(super) struct Quad {
    colour: Pixel,
    /// Set when one texel colours all of it.
    texel: Option<[u32; 4]>,
    across: Axis,
    down: Axis,
}

impl Quad {
    /// The rectangle with these corners: left top, right top, left bottom, right bottom; or
    /// mirrored. `None` when they are no upright rectangle, not of one colour, or the texture
    /// lies askew on it.
    pub(super) fn new(corners: [Corner; 4], texture: &Texture) -> Option<Self> {
        let [a, b, c, d] = corners.map(|corner| corner.at);
        let upright = a.y == b.y && c.y == d.y && a.x == c.x && b.x == d.x;
        if !upright {
            return None;
        }
        let colour = one_colour(&corners)?;
        let [first, right, below, last] = corners.map(|corner| texels(corner.uv, texture));
        let straight = same(first[0], below[0])
            && same(right[0], last[0])
            && same(first[1], right[1])
            && same(below[1], last[1]);
        straight.then(|| Self {
            colour,
            texel: one_texel(&corners, texture),
            across: Axis::new([a.x, d.x], [first[0], last[0]]),
            down: Axis::new([a.y, d.y], [first[1], last[1]]),
        })
    }

    /// Paints the rectangle.
    pub(super) fn paint(&self, window: &mut Window<'_>, texture: &Texture) {
        let columns = window.clip.columns(&self.across.pixels);
        let rows = window.clip.rows(&self.down.pixels);
        if columns.is_empty() || self.colour == CLEAR {
            return;
        }
        for row in rows {
            let run = window.run(row, &columns);
            if let Some(texel) = self.texel {
                fill(run, tinted(self.colour, texel));
            } else if let Some(texels) = self.texels_of(row, columns.start, run.len(), texture) {
                lay(run, self.colour, texels);
            } else {
                self.mix(run, row, columns.start, texture);
            }
        }
    }

    /// The texels that fall one on each pixel of a run, when they do.
    fn texels_of<'t>(
        &self,
        row: i64,
        column: i64,
        length: usize,
        texture: &'t Texture,
    ) -> Option<&'t [Pixel]> {
        let first = self.across.texel_at(column)?;
        let texture_row = self.down.texel_at(row)?;
        texture.run(texture_row, first, length)
    }

    fn mix(&self, run: &mut [Pixel], row: i64, column: i64, texture: &Texture) {
        let start = [self.across.at(column), self.down.at(row)];
        let place = TexelRamp::new(start, [self.across.per_pixel, 0.0]);
        paint_textured(run, ColourRamp::level(self.colour), place, texture);
    }
}

fn same(a: f64, b: f64) -> bool {
    a.to_bits() == b.to_bits()
}

/// Lays `colour` over a run, each pixel weighted by its own texel.
fn lay(run: &mut [Pixel], colour: Pixel, texels: &[Pixel]) {
    for (below, &texel) in run.iter_mut().zip(texels) {
        match texel {
            // Most of a glyph's rectangle is empty, most of the rest is full.
            CLEAR => {}
            WHITE => *below = over(*below, colour),
            _ => *below = over(*below, modulate(colour, texel)),
        }
    }
}

/// How pixels and texels run along one side of a rectangle.
struct Axis {
    pixels: Range<i64>,
    origin: i64,
    at_origin: f64,
    /// Texels from one pixel to the next.
    per_pixel: f64,
}

impl Axis {
    fn new(ends: [i64; 2], texels: [f64; 2]) -> Self {
        let [low, high] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
        let length = (ends[1] - ends[0]) as f64 / SUBPIXELS as f64;
        Self {
            pixels: first_centre(low)..first_centre(high),
            origin: ends[0],
            at_origin: texels[0],
            per_pixel: (texels[1] - texels[0]) / length,
        }
    }

    /// The place in the texture at the centre of a pixel, in texels.
    fn at(&self, pixel: i64) -> f64 {
        let distance = (centre(pixel) - self.origin) as f64 / SUBPIXELS as f64;
        self.at_origin + self.per_pixel * distance
    }

    /// The texel that falls exactly on a pixel, when texels and pixels run in step.
    fn texel_at(&self, pixel: i64) -> Option<i64> {
        let in_step = subtexels(self.per_pixel) == SUBTEXELS;
        let (texel, towards_next) = first_texel(subtexels(self.at(pixel)));
        (in_step && towards_next == 0).then_some(texel)
    }
}
