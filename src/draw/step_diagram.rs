//! The drawing of steps while they are laid out: where they stand, and the lines and figures of the diagram.

use super::palette::Palette;
use super::stroke::polyline;
use crate::chart::{StepDiagram, StepScale};
use crate::units::{plain_number, round_to, step_text};
use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Stroke, pos2, vec2};

/// How far figures stand from the plot and from their point, in points.
const GAP: f32 = 4.0;
const ABOVE_POINT: f32 = 16.0;

/// The radius of the point of a step as it is, in points.
const PRESENT_RADIUS: f32 = 3.0;

/// Where steps stand on the screen.
#[derive(Debug, Clone, Copy)]
pub struct StepPlaces {
    /// The area between the axes.
    pub frame: Rect,
    scale: StepScale,
    changes: usize,
}

impl StepPlaces {
    /// The places in a room, of which the figures of this height take the edges.
    pub fn in_room(room: Rect, diagram: &StepDiagram, text_size: f32) -> Self {
        let min = room.min + vec2(text_size * 2.6, text_size * 0.6);
        let max = room.max - vec2(text_size * 0.6, text_size * 1.6);
        Self {
            frame: Rect::from_min_max(min, max),
            scale: diagram.scale,
            changes: diagram.changes.len(),
        }
    }

    /// The place of a step, its change counted from 0.
    #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
    pub fn of(&self, change: usize, step: f64) -> Pos2 {
        let [least, most] = self.scale.range;
        let up = ((step - least) / (most - least)) as f32;
        let along = (change as f32 + 0.5) / self.changes.max(1) as f32;
        pos2(
            self.frame.left() + along * self.frame.width(),
            self.frame.bottom() - up * self.frame.height(),
        )
    }

    /// The step at a place.
    pub fn step_at(&self, at: Pos2) -> f64 {
        let [least, most] = self.scale.range;
        let up = (self.frame.bottom() - at.y) / self.frame.height().max(1.0);
        least + f64::from(up) * (most - least)
    }
}

/// Paints a diagram with figures of this height, the laid out steps in a colour; their points are painted by
/// whoever moves them.
pub fn paint(
    painter: &Painter,
    diagram: &StepDiagram,
    places: &StepPlaces,
    (palette, color): (&Palette, Color32),
    text_size: f32,
) {
    let frame = places.frame;
    let font = FontId::proportional(text_size);
    painter.rect_filled(frame, 0.0, palette.paper);
    for mark in diagram.scale.marks() {
        let y = places.of(0, mark).y;
        painter.hline(frame.x_range(), y, Stroke::new(1.0, palette.grid));
        let text = plain_number(round_to(mark, 0.001));
        let at = pos2(frame.left() - GAP, y);
        painter.text(
            at,
            Align2::RIGHT_CENTER,
            text,
            font.clone(),
            palette.dim_text,
        );
    }
    for (change, name) in diagram.changes.iter().enumerate() {
        let at = pos2(places.of(change, 1.0).x, frame.bottom() + GAP / 2.0);
        painter.text(at, Align2::CENTER_TOP, name, font.clone(), palette.dim_text);
    }
    let line = |steps: &[f64]| -> Vec<Pos2> {
        let placed = steps.iter().enumerate();
        placed
            .map(|(change, step)| places.of(change, *step))
            .collect()
    };
    let present = line(&diagram.present[..diagram.present.len().min(diagram.changes.len())]);
    polyline(
        painter,
        &present,
        Stroke::new(1.0, palette.mark),
        &[4.0, 3.0],
    );
    for at in present {
        painter.circle_filled(at, PRESENT_RADIUS, palette.mark);
    }
    let laid_out = line(&diagram.laid_out);
    polyline(painter, &laid_out, Stroke::new(2.5, color), &[]);
    for (at, step) in laid_out.into_iter().zip(&diagram.laid_out) {
        let at = at - vec2(0.0, ABOVE_POINT);
        let text = step_text(*step);
        let galley = painter.layout_no_wrap(text, font.clone(), palette.text);
        let room = Align2::CENTER_BOTTOM.anchor_size(at, galley.size());
        // No line runs through a figure.
        painter.rect_filled(room, 1.0, palette.paper);
        painter.galley(room.min, galley, palette.text);
    }
}
