//! Which pixels are there, and which of them may a shape touch?

use std::ops::Range;

use egui::{Color32, Rect};
use image::{Rgba, RgbaImage};

use super::MAX_SIDE_PX;
use super::blend::Pixel;

/// The picture being painted, premultiplied.
pub(super) struct Canvas {
    image: RgbaImage,
}

impl Canvas {
    pub(super) fn new(width_px: u32, height_px: u32, background: Color32) -> Self {
        let width = width_px.min(MAX_SIDE_PX);
        let height = height_px.min(MAX_SIDE_PX);
        let image = RgbaImage::from_pixel(width, height, Rgba(background.to_array()));
        Self { image }
    }

    /// The part of the picture inside `clip`.
    pub(super) fn within(&mut self, clip: Clip) -> Window<'_> {
        let width = index(i64::from(self.image.width()));
        let (pixels, _) = self.image.as_chunks_mut::<4>();
        Window {
            pixels,
            width,
            clip,
        }
    }

    /// The finished picture with straight (not premultiplied) colours.
    pub(super) fn into_image(mut self, background: Color32) -> RgbaImage {
        // Blending keeps an opaque background opaque, and opaque colours are straight already.
        if !background.is_opaque() {
            for pixel in self.image.as_chunks_mut::<4>().0 {
                *pixel = straight(*pixel);
            }
        }
        self.image
    }
}

/// `pixel` divided by its alpha; light without alpha cannot be kept and is dropped.
fn straight(pixel: Pixel) -> Pixel {
    let [.., alpha] = pixel;
    if alpha == 0 {
        return [0; 4];
    }
    let whole = u16::from(alpha);
    let divided = |channel: u8| {
        let nearest = (u16::from(channel) * 255 + whole / 2) / whole;
        u8::try_from(nearest).unwrap_or(u8::MAX)
    };
    [
        divided(pixel[0]),
        divided(pixel[1]),
        divided(pixel[2]),
        alpha,
    ]
}

/// The pixels a shape may touch: columns `left..right`, rows `top..bottom`, inside the picture.
#[derive(Debug, Clone, Copy)]
pub(super) struct Clip {
    pub(super) left: i64,
    pub(super) right: i64,
    pub(super) top: i64,
    pub(super) bottom: i64,
}

impl Clip {
    /// The pixels inside `rect`, given in points, its edges rounded to whole pixels.
    pub(super) fn new(rect: Rect, pixels_per_point: f32, canvas: &Canvas) -> Self {
        let width = i64::from(canvas.image.width());
        let height = i64::from(canvas.image.height());
        let left = whole_pixel(pixels_per_point * rect.min.x).clamp(0, width);
        let top = whole_pixel(pixels_per_point * rect.min.y).clamp(0, height);
        Self {
            left,
            right: whole_pixel(pixels_per_point * rect.max.x).clamp(left, width),
            top,
            bottom: whole_pixel(pixels_per_point * rect.max.y).clamp(top, height),
        }
    }

    pub(super) fn is_empty(self) -> bool {
        self.left == self.right || self.top == self.bottom
    }

    /// Those of `columns` that may be touched.
    pub(super) fn columns(self, columns: &Range<i64>) -> Range<i64> {
        columns.start.clamp(self.left, self.right)..columns.end.clamp(self.left, self.right)
    }

    /// Those of `rows` that may be touched.
    pub(super) fn rows(self, rows: &Range<i64>) -> Range<i64> {
        rows.start.clamp(self.top, self.bottom)..rows.end.clamp(self.top, self.bottom)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "too large means beyond the picture anyway"
)]
fn whole_pixel(edge: f32) -> i64 {
    edge.round() as i64
}

/// A picture seen through a clip.
pub(super) struct Window<'a> {
    pixels: &'a mut [Pixel],
    width: usize,
    pub(super) clip: Clip,
}

impl Window<'_> {
    /// The pixels of `row` in `columns`, all of which must lie inside the clip.
    pub(super) fn run(&mut self, row: i64, columns: &Range<i64>) -> &mut [Pixel] {
        let start = index(row) * self.width;
        &mut self.pixels[start + index(columns.start)..start + index(columns.end)]
    }
}

/// A number known not to be negative, as an index.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "callers clamp to the picture or texture first"
)]
pub(super) fn index(number: i64) -> usize {
    number as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn straight_colours_come_back_from_premultiplied_ones() {
        assert_eq!(straight([64, 32, 0, 128]), [128, 64, 0, 128]);
        assert_eq!(straight([9, 9, 9, 255]), [9, 9, 9, 255]);
        assert_eq!(straight([200, 0, 0, 100]), [255, 0, 0, 100]);
        assert_eq!(straight([200, 0, 0, 0]), [0, 0, 0, 0]);
    }

    #[test]
    fn a_clip_stays_inside_the_picture_whatever_the_rectangle() {
        let canvas = Canvas::new(10, 5, Color32::BLACK);
        for (low, high) in [
            (f32::NAN, f32::NAN),
            (f32::NEG_INFINITY, f32::INFINITY),
            (8.0, 2.0),
        ] {
            let rect = Rect::from_min_max(egui::pos2(low, low), egui::pos2(high, high));
            let clip = Clip::new(rect, 1.0, &canvas);
            assert!(
                0 <= clip.left && clip.left <= clip.right && clip.right <= 10,
                "{clip:?}"
            );
            assert!(
                0 <= clip.top && clip.top <= clip.bottom && clip.bottom <= 5,
                "{clip:?}"
            );
        }
    }
}
