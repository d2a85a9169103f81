//! Which textures are there, and which colour has a place in one?

use std::collections::HashMap;

use egui::epaint::ImageDelta;
use egui::{ImageData, TextureId, TexturesDelta};

use super::blend::Pixel;
use super::canvas::index;

/// All textures that shapes may refer to.
#[derive(Debug, Default)]
pub(super) struct Textures {
    known: HashMap<TextureId, Texture>,
    /// Freed by the last pass, which may still show them.
    leaving: Vec<TextureId>,
}

impl Textures {
    /// Takes over what `delta` sets and frees, and empties it.
    pub(super) fn apply(&mut self, delta: &mut TexturesDelta) {
        for id in self.leaving.drain(..) {
            self.known.remove(&id);
        }
        for (id, changes) in delta.set.drain() {
            let texture = self.known.entry(id).or_default();
            changes.iter().for_each(|change| texture.apply(change));
        }
        self.leaving.extend(delta.free.drain());
    }

    /// The texture called `id`, unless it was never set or has no texels.
    pub(super) fn find(&self, id: TextureId) -> Option<&Texture> {
        self.known
            .get(&id)
            .filter(|texture| !texture.texels.is_empty())
    }
}

/// An image to paint with: `width · height` texels, premultiplied, row by row.
#[derive(Debug, Default)]
pub(super) struct Texture {
    width: usize,
    height: usize,
    texels: Vec<Pixel>,
}

/// Steps of a place in a texture to a texel: fine enough that a texel stretched over the longest
/// picture keeps its place to 1/1000.
pub(super) const SUBTEXELS: i64 = 1 << 24;

/// Texels are mixed in this many steps between one and the next.
const WEIGHTS: u32 = 1 << 12;

impl Texture {
    fn apply(&mut self, change: &ImageDelta) {
        let ImageData::Color(image) = &change.image;
        let [width, height] = image.size;
        if width.checked_mul(height) != Some(image.pixels.len()) {
            return;
        }
        let texels = image.pixels.iter().map(egui::Color32::to_array);
        match change.pos {
            None => {
                *self = Self {
                    width,
                    height,
                    texels: texels.collect(),
                }
            }
            Some(corner) => self.patch(corner, width, &texels.collect::<Vec<_>>()),
        }
    }

    /// Overwrites the texels from `left`, `top` on; what would lie outside is ignored.
    fn patch(&mut self, [left, top]: [usize; 2], width: usize, texels: &[Pixel]) {
        if width == 0 || left >= self.width {
            return;
        }
        let kept = width.min(self.width - left);
        let rows = self.texels.chunks_exact_mut(self.width).skip(top);
        for (row, patch) in rows.zip(texels.chunks_exact(width)) {
            row[left..left + kept].copy_from_slice(&patch[..kept]);
        }
    }

    /// Width and height in texels.
    pub(super) fn size(&self) -> [f64; 2] {
        [self.width as f64, self.height as f64]
    }

    /// The run of `length` texels from (`column`, `row`) on, if all of it exists.
    pub(super) fn run(&self, row: i64, column: i64, length: usize) -> Option<&[Pixel]> {
        let row = usize::try_from(row).ok()?;
        let column = usize::try_from(column).ok()?;
        let end = column
            .checked_add(length)
            .filter(|&end| end <= self.width)?;
        let start = row.checked_mul(self.width)?;
        self.texels
            .get(start.checked_add(column)?..start.checked_add(end)?)
    }

    /// The colour at the very corner, as [`Self::sample`] would return it.
    pub(super) fn first(&self) -> [u32; 4] {
        self.texels[0].map(|level| u32::from(level) << 8)
    }

    /// The colour at a place, mixed from the four nearest texels, with eight fractional bits.
    ///
    /// The place counts [`SUBTEXELS`] to a texel; outside the texture its edge goes on for ever.
    pub(super) fn sample(&self, place: [i64; 2]) -> [u32; 4] {
        let [(left, right, from_left), (top, bottom, from_top)] =
            [(place[0], self.width), (place[1], self.height)]
                .map(|(at, size)| neighbours(at, size));
        let [upper, lower] =
            [top, bottom].map(|row| &self.texels[row * self.width..][..self.width]);
        let mix = |a: u32, b: u32, weight: u32| a * (WEIGHTS - weight) + b * weight;
        std::array::from_fn(|i| {
            let across = |row: &[Pixel]| mix(row[left][i].into(), row[right][i].into(), from_left);
            (mix(across(upper), across(lower), from_top) + (1 << 15)) >> 16
        })
    }
}

/// The two texels around a place along one axis, and how far it is towards the second.
fn neighbours(place: i64, size: usize) -> (usize, usize, u32) {
    let (first, weight) = first_texel(place);
    let last = i64::try_from(size).unwrap_or(i64::MAX) - 1;
    (
        index(first.clamp(0, last)),
        index((first + 1).clamp(0, last)),
        weight,
    )
}

/// The texel whose centre is before a place along one axis, and how far it is to the next.
pub(super) fn first_texel(place: i64) -> (i64, u32) {
    let weights = i64::from(WEIGHTS);
    let a_step = SUBTEXELS / weights;
    let steps = (place - SUBTEXELS / 2 + a_step / 2).div_euclid(a_step);
    (
        steps.div_euclid(weights),
        u32::try_from(steps.rem_euclid(weights)).unwrap_or(0),
    )
}
