//! How is a line of a set painted: in which pattern, from where?
//!
//! A pattern starts at the line's own beginning, whatever part of it is in view: it does not crawl
//! while the view moves.

use super::palette::Dash;
use super::soft_line::SoftLines;
use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke};

/// More dashes than this in one line are not told apart; it is painted solid.
const MOST_DASHES: f32 = 2000.0;

/// Paints a straight line in a pattern, only as far as it can be seen.
pub(crate) fn line(painter: &Painter, ends: [Pos2; 2], stroke: Stroke, dash: Dash) {
    if !ends.iter().all(|p| p.x.is_finite() && p.y.is_finite()) {
        return;
    }
    if dash.is_empty() {
        painter.line_segment(ends, stroke);
        return;
    }
    let pieces = dashes(ends, stroke.width, dash, painter.clip_rect());
    painter.add(shape(painter, ends, &pieces, stroke));
}

/// All dashes of a line as one shape.
fn shape(painter: &Painter, ends: [Pos2; 2], pieces: &[[Pos2; 2]], stroke: Stroke) -> Shape {
    let along = ends[1] - ends[0];
    let is_oblique = along.x != 0.0 && along.y != 0.0;
    let lines = SoftLines::new(stroke, feathering(painter), pieces.len());
    if let Some(mut lines) = lines.filter(|_| is_oblique) {
        for piece in pieces {
            lines.add(*piece);
        }
        return Shape::mesh(lines.into_mesh());
    }
    let pieces = pieces.iter();
    Shape::Vec(pieces.map(|p| Shape::line_segment(*p, stroke)).collect())
}

/// How wide the toolkit makes soft edges, in points; 0 where it makes none.
fn feathering(painter: &Painter) -> f32 {
    let in_pixels = painter.ctx().tessellation_options(|options| {
        if options.feathering {
            options.feathering_size_in_pixels
        } else {
            0.0
        }
    });
    in_pixels / painter.pixels_per_point()
}

/// A short sample of a set's line, for cards and captions.
pub fn sample(painter: &Painter, rect: Rect, color: Color32, dash: Dash) {
    let y = rect.center().y;
    let ends = [Pos2::new(rect.left(), y), Pos2::new(rect.right(), y)];
    line(painter, ends, Stroke::new(3.0, color), dash);
}

/// The dashes of a line that can be seen.
fn dashes(ends: [Pos2; 2], width: f32, dash: Dash, clip: Rect) -> Vec<[Pos2; 2]> {
    let along = ends[1] - ends[0];
    let length = along.length();
    let lengths: Vec<f32> = dash.iter().map(|part| part * width).collect();
    let period: f32 = lengths.iter().sum();
    if length <= 0.0 || period <= 0.0 {
        return Vec::new();
    }
    if length / period > MOST_DASHES {
        return vec![ends];
    }
    let clip = clip.expand(width);
    let mut pieces = Vec::new();
    let mut from = 0.0;
    for (i, part) in lengths.iter().cycle().enumerate() {
        if from >= length {
            break;
        }
        let to = (from + part).min(length);
        if i % 2 == 0 {
            let piece = [
                ends[0] + along * (from / length),
                ends[0] + along * (to / length),
            ];
            if clip.intersects(Rect::from_two_pos(piece[0], piece[1]).expand(0.5)) {
                pieces.push(piece);
            }
        }
        from = to;
    }
    pieces
}
