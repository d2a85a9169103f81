//! Can everything be seen: words at 4.5 to 1 and lines and edges at 3 to 1 against what is around them?
//!
//! The limits and the formula are those of the Web Content Accessibility Guidelines 2.2 of the W3C
//! (<https://www.w3.org/TR/WCAG22/>): success criterion 1.4.3, contrast of text, level AA, taken for
//! text of every size, and 1.4.11, contrast of what is no text. Disabled parts are exempt from both;
//! here they must still reach 3 to 1.
//!
//! Words are measured from pixels. A frame is painted twice, with its words and without them: the
//! second is the ground that the first one's letters stand on, whatever lies there, down to a line
//! that shines through. Where the two differ there are letters. Their edges are mixed with the
//! ground, so of each word the pixel that stands out most is taken for its ink: at two pixels a
//! point the stem of a letter covers whole pixels. Its contrast is the least that this ink has with
//! the ground beneath any part of the word.

mod bench;
mod edges;
mod lines;
mod pages;
mod screens;

use egui::epaint::{ClippedShape, ImageDelta, Shape, TextShape};
use egui::{Color32, Context, Pos2, Rect, TextureId, TextureOptions, TexturesDelta, Vec2};
use image::RgbaImage;
use layshaft::draw::Raster;
use std::sync::LazyLock;

/// What words must have, by success criterion 1.4.3.
const OF_TEXT: f64 = 4.5;

/// What lines and edges must have, by success criterion 1.4.11.
const OF_LINES: f64 = 3.0;

/// How many pixels a point has: enough for stems that cover whole pixels.
const PIXELS_PER_POINT: f32 = 2.0;

/// The relative luminance of a colour that hides what is beneath it, from 0 for black to 1 for white.
fn luminance(color: Color32) -> f64 {
    let linear = |level: u8| LINEAR[usize::from(level)];
    0.2126 * linear(color.r()) + 0.7152 * linear(color.g()) + 0.0722 * linear(color.b())
}

/// The linear value of each level of a channel.
static LINEAR: LazyLock<[f64; 256]> = LazyLock::new(|| {
    std::array::from_fn(|level| {
        let share = level as f64 / 255.0;
        if share <= 0.04045 {
            share / 12.92
        } else {
            ((share + 0.055) / 1.055).powf(2.4)
        }
    })
});

/// The contrast ratio of two colours, from 1 to 21.
fn contrast(a: Color32, b: Color32) -> f64 {
    let [a, b] = [a, b].map(luminance);
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn the_contrast_ratio_is_that_of_the_guidelines() {
    let gray = Color32::from_gray;
    let cases = [
        (gray(0), gray(255), 21.0),
        (gray(127), gray(127), 1.0),
        // Known as the lightest grey that may be read on white, and the first that may not.
        (gray(0x76), gray(255), 4.54),
        (gray(0x77), gray(255), 4.48),
        (Color32::from_rgb(255, 0, 0), gray(255), 4.0),
    ];
    for (a, b, wanted) in cases {
        let is = contrast(a, b);
        assert!((is - wanted).abs() < 0.005, "{a:?} {b:?}: {is}");
        assert!((is - contrast(b, a)).abs() < 1e-12);
    }
}

/// A frame as it was painted, and the same without its words.
struct Seen {
    words: Vec<Word>,
    with: RgbaImage,
    without: RgbaImage,
}

/// Letters without a blank between them.
struct Word {
    text: String,
    /// The line that it stands in.
    whole: String,
    rect: Rect,
}

impl Seen {
    /// What a context has laid out, on a page of that colour.
    fn of(ctx: &Context, shapes: &[ClippedShape], size: Vec2, ground: Color32) -> Self {
        let mut words = Vec::new();
        for clipped in shapes {
            collect_words(&clipped.shape, clipped.clip_rect, size, &mut words);
        }
        let mut raster = Raster::new();
        let mut textures = TexturesDelta::default();
        let letters = ctx.fonts(|fonts| ImageDelta::full(fonts.image(), TextureOptions::LINEAR));
        textures
            .set
            .entry(TextureId::default())
            .or_default()
            .push(letters);
        raster.apply(&mut textures);
        let painted = |shapes: Vec<ClippedShape>| {
            let primitives = ctx.tessellate(shapes, PIXELS_PER_POINT);
            let [width, height] = [size.x, size.y].map(pixel);
            raster.paint(&primitives, PIXELS_PER_POINT, width, height, ground)
        };
        let wordless = shapes.iter().cloned().map(|clipped| ClippedShape {
            shape: without_words(clipped.shape),
            ..clipped
        });
        Self {
            words,
            without: painted(wordless.collect()),
            with: painted(shapes.to_vec()),
        }
    }

    /// The contrast of a word with its ground; none where it is covered.
    fn contrast_of(&self, word: &Word) -> Option<f64> {
        let pairs: Vec<[Color32; 2]> = pixels(word.rect, &self.with)
            .map(|[x, y]| [&self.with, &self.without].map(|picture| color_at(picture, x, y)))
            .filter(|[with, without]| with != without)
            .collect();
        let apart = |[with, without]: &&[Color32; 2]| contrast(*with, *without);
        let most = pairs.iter().max_by(|a, b| apart(a).total_cmp(&apart(b)))?;
        let least = pairs.iter().map(|[_, ground]| contrast(most[0], *ground));
        least.min_by(f64::total_cmp)
    }

    /// Every word that has less contrast than `wanted` says, in words of its own.
    fn too_faint(&self, what: &str, wanted: impl Fn(&Word) -> f64) -> Vec<String> {
        let seen = self.words.iter().filter_map(|word| {
            let contrast = self.contrast_of(word)?;
            (contrast < wanted(word)).then(|| {
                let Word { text, whole, rect } = word;
                format!("{what}: \"{text}\" of \"{whole}\" at {rect}: {contrast:.2}")
            })
        });
        seen.collect()
    }
}

fn without_words(shape: Shape) -> Shape {
    match shape {
        Shape::Text(_) => Shape::Noop,
        Shape::Vec(shapes) => Shape::Vec(shapes.into_iter().map(without_words).collect()),
        other => other,
    }
}

/// Adds the words of a shape that are not cut off by what they are painted in, and takes those away
/// that it covers: what is opaque, and the veil that a dialog lays over the whole window.
fn collect_words(shape: &Shape, clip: Rect, size: Vec2, words: &mut Vec<Word>) {
    let screen = Rect::from_min_size(Pos2::ZERO, size).shrink(1.0);
    match shape {
        Shape::Vec(shapes) => {
            for shape in shapes {
                collect_words(shape, clip, size, words);
            }
        }
        Shape::Rect(rect) => {
            let is_veil = rect.fill.a() > 0 && rect.rect.contains_rect(screen);
            let covers = |word: &Word| rect.rect.intersect(clip).intersects(word.rect);
            if rect.fill.a() == 255 || is_veil {
                words.retain(|word| !covers(word));
            }
        }
        Shape::Text(text) => {
            let of_text = words_of(text);
            words.extend(of_text.filter(|word| clip.expand(1.0).contains_rect(word.rect)));
        }
        _ => {}
    }
}

fn words_of(text: &TextShape) -> impl Iterator<Item = Word> {
    text.galley.rows.iter().flat_map(|row| {
        let offset = text.pos.to_vec2() + row.pos.to_vec2();
        let runs = row.glyphs.split(|glyph| glyph.chr.is_whitespace());
        runs.filter(|run| !run.is_empty()).map(move |run| {
            let rects = run.iter().map(egui::epaint::text::Glyph::logical_rect);
            Word {
                text: run.iter().map(|glyph| glyph.chr).collect(),
                whole: row.glyphs.iter().map(|glyph| glyph.chr).collect(),
                rect: rects
                    .reduce(Rect::union)
                    .unwrap_or(Rect::NOTHING)
                    .translate(offset),
            }
        })
    })
}

/// The pixels of a picture in a rectangle of the screen.
fn pixels(rect: Rect, picture: &RgbaImage) -> impl Iterator<Item = [u32; 2]> {
    let [left, right] = [rect.left(), rect.right()].map(pixel);
    let [top, bottom] = [rect.top(), rect.bottom()].map(pixel);
    let across = left..right.min(picture.width());
    (top..bottom.min(picture.height())).flat_map(move |y| across.clone().map(move |x| [x, y]))
}

/// The pixel at a place of the screen.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "places on a screen"
)]
fn pixel(place: f32) -> u32 {
    (place * PIXELS_PER_POINT).round().max(0.0) as u32
}

fn color_at(picture: &RgbaImage, x: u32, y: u32) -> Color32 {
    let [r, g, b, _] = picture.get_pixel(x, y).0;
    Color32::from_rgb(r, g, b)
}

/// Nothing that does not read is left out of the message.
#[track_caller]
fn assert_none(problems: &[String]) {
    assert!(
        problems.is_empty(),
        "{} are too faint:\n{}",
        problems.len(),
        problems.join("\n")
    );
}
