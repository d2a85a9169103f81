//! Which pixels does a triangle cover, and with what?

use std::ops::Range;

use egui::epaint::WHITE_UV;

use super::blend::{CLEAR, Pixel, WHITE, fill};
use super::canvas::{Clip, Window};
use super::edge::{Edge, Point, first_centre};
use super::plane::Planes;
use super::span::{ColourRamp, TexelRamp, paint_gradient, paint_textured, subtexels, tinted};
use super::textures::Texture;

/// A corner of a triangle on the canvas.
#[derive(Clone, Copy)]
pub(super) struct Corner {
    pub(super) at: Point,
    pub(super) colour: Pixel,
    /// Place in the texture, from (0, 0) top left to (1, 1) bottom right.
    pub(super) uv: egui::Pos2,
}

/// Paints the triangle between three corners, in whichever sense they go round.
pub(super) fn paint(window: &mut Window<'_>, corners: &[Corner; 3], texture: &Texture) {
    let points = corners.map(|corner| corner.at);
    if corners.iter().all(|corner| corner.colour == CLEAR) || misses(points, window.clip) {
        return;
    }
    let texel = one_texel(corners, texture);
    match (one_colour(corners), texel) {
        (Some(colour), Some(texel)) => {
            let source = tinted(colour, texel);
            cover(window, points, |run, _, _| fill(run, source));
        }
        (None, Some(texel)) if tinted(WHITE, texel) == WHITE => paint_blended(window, corners),
        _ => paint_with_texture(window, corners, texture),
    }
}

/// The colour of all three corners if it is the same.
pub(super) fn one_colour(corners: &[Corner]) -> Option<Pixel> {
    let colour = corners[0].colour;
    corners
        .iter()
        .all(|corner| corner.colour == colour)
        .then_some(colour)
}

/// The texture's colour if all three corners point to the same place in it.
///
/// Everything but text and small circles is painted so, with the white texel of the font atlas.
pub(super) fn one_texel(corners: &[Corner], texture: &Texture) -> Option<[u32; 4]> {
    let uv = corners[0].uv;
    if corners.iter().any(|corner| corner.uv != uv) {
        return None;
    }
    if uv == WHITE_UV {
        return Some(texture.first());
    }
    Some(texture.sample(texels(uv, texture).map(subtexels)))
}

/// `uv` in texels from the texture's top left corner.
pub(super) fn texels(uv: egui::Pos2, texture: &Texture) -> [f64; 2] {
    let [width, height] = texture.size();
    [f64::from(uv.x) * width, f64::from(uv.y) * height]
}

fn paint_blended(window: &mut Window<'_>, corners: &[Corner; 3]) {
    let mut shade = None;
    cover(
        window,
        corners.map(|corner| corner.at),
        |run, row, column| {
            // Many triangles of a thin line cover no pixel: they should cost no division.
            let shade = shade.get_or_insert_with(|| Shade::new(corners));
            paint_gradient(run, shade.ramp(row, column));
        },
    );
}

fn paint_with_texture(window: &mut Window<'_>, corners: &[Corner; 3], texture: &Texture) {
    let points = corners.map(|corner| corner.at);
    let shade = Shade::new(corners);
    let places = Planes::new(points, corners.map(|corner| texels(corner.uv, texture)));
    cover(window, points, |run, row, column| {
        let place = TexelRamp::new(places.at(row, column), places.per_column());
        paint_textured(run, shade.ramp(row, column), place, texture);
    });
}

/// The colours between three corners.
struct Shade {
    planes: Planes<4>,
    steps: [i32; 4],
}

impl Shade {
    fn new(corners: &[Corner; 3]) -> Self {
        let colours = corners.map(|corner| corner.colour.map(f64::from));
        let planes = Planes::new(corners.map(|corner| corner.at), colours);
        let steps = ColourRamp::steps(planes.per_column());
        Self { planes, steps }
    }

    /// The colours along `row` from `column` on.
    fn ramp(&self, row: i64, column: i64) -> ColourRamp {
        ColourRamp::new(self.planes.at(row, column), self.steps)
    }
}

/// Whether none of the rectangle around the triangle lies inside the clip.
fn misses(points: [Point; 3], clip: Clip) -> bool {
    let columns = around(points.map(|point| point.x));
    let rows = around(points.map(|point| point.y));
    clip.columns(&columns).is_empty() || clip.rows(&rows).is_empty()
}

/// The rows or columns whose centres lie between the extremes.
fn around([a, b, c]: [i64; 3]) -> Range<i64> {
    first_centre(a.min(b).min(c))..first_centre(a.max(b).max(c))
}

/// Calls `paint` with the pixels of each row the triangle covers, the row and its first column.
///
/// A pixel is covered when its centre is; a centre on an edge belongs to the triangle right of
/// or below it.
fn cover(
    window: &mut Window<'_>,
    mut points: [Point; 3],
    mut paint: impl FnMut(&mut [Pixel], i64, i64),
) {
    points.sort_by_key(|point| point.y);
    let [upper, middle, lower] = points;
    let rows = window
        .clip
        .rows(&(first_centre(upper.y)..first_centre(lower.y)));
    if rows.is_empty() {
        return;
    }
    let bend = first_centre(middle.y).clamp(rows.start, rows.end);
    let mut long = Edge::new(upper, lower, &rows);
    for (rows, from, to) in [
        (rows.start..bend, upper, middle),
        (bend..rows.end, middle, lower),
    ] {
        if rows.is_empty() {
            continue;
        }
        let mut short = Edge::new(from, to, &rows);
        for row in rows {
            let (a, b) = (long.next_column(), short.next_column());
            let columns = window.clip.columns(&(a.min(b)..a.max(b)));
            if !columns.is_empty() {
                paint(window.run(row, &columns), row, columns.start);
            }
        }
    }
}
