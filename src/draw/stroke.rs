//! How is a line of a set painted: in which pattern, from where?
//!
//! A pattern starts at the line's own beginning, whatever part of it is in view: it does not crawl
//! while the view moves.

use super::palette::Dash;
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
    painter.extend(dashes(ends, stroke, dash, painter.clip_rect()));
}

/// A short sample of a set's line, for cards and captions.
pub fn sample(painter: &Painter, rect: Rect, color: Color32, dash: Dash) {
    let y = rect.center().y;
    let ends = [Pos2::new(rect.left(), y), Pos2::new(rect.right(), y)];
    line(painter, ends, Stroke::new(3.0, color), dash);
}

fn dashes(ends: [Pos2; 2], stroke: Stroke, dash: Dash, clip: Rect) -> Vec<Shape> {
    let along = ends[1] - ends[0];
    let length = along.length();
    let lengths: Vec<f32> = dash.iter().map(|part| part * stroke.width).collect();
    let period: f32 = lengths.iter().sum();
    if length <= 0.0 || period <= 0.0 {
        return Vec::new();
    }
    if length / period > MOST_DASHES {
        return vec![Shape::line_segment(ends, stroke)];
    }
    let clip = clip.expand(stroke.width);
    let mut shapes = Vec::new();
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
                shapes.push(Shape::line_segment(piece, stroke));
            }
        }
        from = to;
    }
    shapes
}
