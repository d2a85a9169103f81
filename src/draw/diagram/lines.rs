//! The lines of a speed diagram: marks, fans, sawtooth, falls and redline.

use super::Look;
use crate::chart::{GearTrace, SetTrace, SpeedDiagram};
use crate::draw::palette::{DROP_DASH, dash};
use crate::draw::stroke;
use egui::{Color32, Painter, Pos2, Rect, Stroke};
use egui_plot::PlotTransform;

/// Paints everything between the axes but the labels, what is read first last.
pub(super) fn paint(
    painter: &Painter,
    diagram: &SpeedDiagram,
    transform: &PlotTransform,
    look: &Look<'_>,
) {
    let canvas = Canvas {
        painter,
        transform,
        look,
    };
    canvas.areas(diagram);
    canvas.marks(diagram);
    let is_forward = |trace: &&SetTrace| look.forward == Some(trace.set);
    let behind = diagram.traces.iter().filter(|t| !is_forward(t));
    for trace in behind.chain(diagram.traces.iter().filter(is_forward)) {
        canvas.set(trace, diagram);
    }
    // Two whole points: crisp at every width of a picture.
    canvas.horizontal(diagram.redline_rpm, Stroke::new(2.0, look.palette.redline));
}

struct Canvas<'a> {
    painter: &'a Painter,
    transform: &'a PlotTransform,
    look: &'a Look<'a>,
}

impl Canvas<'_> {
    fn point(&self, speed: f64, rpm: f64) -> Pos2 {
        self.transform.position_from_point(&[speed, rpm].into())
    }

    fn frame(&self) -> Rect {
        *self.transform.frame()
    }

    /// Engine speeds beyond the redline, and those too low to be useful.
    fn areas(&self, diagram: &SpeedDiagram) {
        let frame = self.frame();
        let redline = self.point(0.0, diagram.redline_rpm).y;
        let floor = self.point(0.0, diagram.floor_rpm).y;
        let beyond = Rect::from_x_y_ranges(frame.x_range(), frame.top()..=redline);
        let below = Rect::from_x_y_ranges(frame.x_range(), floor..=frame.bottom());
        for (area, color) in [
            (beyond, self.look.palette.band),
            (below, self.look.palette.labouring),
        ] {
            if area.is_positive() {
                self.painter.rect_filled(area, 0.0, color);
            }
        }
    }

    fn marks(&self, diagram: &SpeedDiagram) {
        let stroke = Stroke::new(1.0, self.look.palette.mark.gamma_multiply(0.6));
        for &speed in &diagram.marked_speeds {
            let frame = self.frame();
            let x = self.point(speed, 0.0).x;
            let ends = [Pos2::new(x, frame.top()), Pos2::new(x, frame.bottom())];
            stroke::line(self.painter, ends, stroke, &[]);
        }
        for &rpm in &diagram.marked_rpm {
            self.horizontal(rpm, stroke);
        }
    }

    fn horizontal(&self, rpm: f64, stroke: Stroke) {
        let frame = self.frame();
        let y = self.point(0.0, rpm).y;
        let ends = [Pos2::new(frame.left(), y), Pos2::new(frame.right(), y)];
        stroke::line(self.painter, ends, stroke, &[]);
    }

    fn set(&self, trace: &SetTrace, diagram: &SpeedDiagram) {
        let steps_back = self
            .look
            .forward
            .is_some_and(|forward| forward != trace.set);
        let strength = if steps_back { self.look.others } else { 1.0 };
        let color = self.look.palette.set(trace.place).gamma_multiply(strength);
        for gear in &trace.gears {
            self.fan_line(trace, gear, diagram, color);
        }
        self.shift_line(trace, color);
        self.falls(trace, color);
        for gear in &trace.gears {
            self.driven(trace, gear, color, steps_back);
        }
    }

    /// A gear from standstill to the redline.
    fn fan_line(&self, trace: &SetTrace, gear: &GearTrace, diagram: &SpeedDiagram, color: Color32) {
        let ends = [
            self.point(0.0, 0.0),
            self.point(gear.speed_at(diagram.redline_rpm), diagram.redline_rpm),
        ];
        let is_out = self.look.gear == Some((trace.set, gear.gear));
        let stroke = if is_out {
            Stroke::new(2.0, color)
        } else {
            Stroke::new(1.0, color.gamma_multiply(0.55))
        };
        stroke::line(self.painter, ends, stroke, dash(trace.place));
    }

    /// The part of a gear that is really driven.
    fn driven(&self, trace: &SetTrace, gear: &GearTrace, color: Color32, steps_back: bool) {
        let Some([from, to]) = gear.driven_rpm else {
            return;
        };
        let ends = [
            self.point(gear.speed_at(from), from),
            self.point(gear.speed_at(to), to),
        ];
        let width = if steps_back { 2.0 } else { 3.0 };
        stroke::line(
            self.painter,
            ends,
            Stroke::new(width, color),
            dash(trace.place),
        );
    }

    /// Through all shift points of a set.
    fn shift_line(&self, trace: &SetTrace, color: Color32) {
        let points = trace
            .shifts
            .iter()
            .map(|s| self.point(s.speed, s.shift_rpm));
        let points: Vec<Pos2> = points.collect();
        for pair in points.windows(2) {
            let stroke = Stroke::new(1.0, color.gamma_multiply(0.4));
            stroke::line(self.painter, [pair[0], pair[1]], stroke, &[]);
        }
    }

    /// The falls of the needle between the gears.
    fn falls(&self, trace: &SetTrace, color: Color32) {
        for shift in &trace.shifts {
            let ends = [
                self.point(shift.speed, shift.shift_rpm),
                self.point(shift.speed, shift.rpm_after_shift),
            ];
            stroke::line(self.painter, ends, Stroke::new(1.5, color), DROP_DASH);
        }
    }
}
