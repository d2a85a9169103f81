//! The lines of a diagram: shaded parts, rules, and the lines of sets.

use super::Look;
use super::roles::{curve_stroke, depth, is_over_sets, line_stroke, rule_stroke, shade};
use crate::chart::{Above, Along, Area, Curve, Line, Rule, Scene};
use crate::draw::stroke;
use egui::{Painter, Pos2, Rect, Shape, Stroke};
use egui_plot::PlotTransform;

/// Paints everything between the axes but points and labels, what is read first last.
pub(super) fn paint(painter: &Painter, scene: &Scene, transform: &PlotTransform, look: &Look<'_>) {
    let canvas = Canvas {
        painter,
        transform,
        look,
    };
    for area in &scene.areas {
        canvas.area(area);
    }
    for above in &scene.above {
        canvas.above(above);
    }
    for rule in scene.rules.iter().filter(|r| !is_over_sets(r, look)) {
        canvas.rule(rule);
    }
    for curve in &scene.curves {
        canvas.curve(curve);
    }
    let mut lines: Vec<&Line> = scene.lines.iter().collect();
    lines.sort_by_cached_key(|line| depth(line, look));
    for line in lines {
        canvas.line(line);
    }
    for rule in scene.rules.iter().filter(|r| is_over_sets(r, look)) {
        canvas.rule(rule);
    }
}

struct Canvas<'a> {
    painter: &'a Painter,
    transform: &'a PlotTransform,
    look: &'a Look<'a>,
}

impl Canvas<'_> {
    fn area(&self, area: &Area) {
        let frame = *self.transform.frame();
        let edge = |value: Option<f64>, otherwise: f32| {
            value.map_or(otherwise, |value| {
                self.transform.position_from_point_y(value)
            })
        };
        let [bottom, top] = area.y;
        let y = edge(top, frame.top())..=edge(bottom, frame.bottom());
        let rect = Rect::from_x_y_ranges(frame.x_range(), y);
        if rect.is_positive() {
            let color = shade(area.role, self.look);
            self.painter.rect_filled(rect, 0.0, color);
        }
    }

    /// Shades what lies above a straight line, as far as the plot goes.
    fn above(&self, above: &Above) {
        let top = self.transform.frame().top();
        let [from, to] = [above.from, above.to].map(|at| {
            let at = self.transform.position_from_point(&at.into());
            (at.x, at.y)
        });
        let inside = below(top, from, to);
        let Some((first, last)) = inside.first().zip(inside.last()) else {
            return;
        };
        let head = [Pos2::new(last.x, top), Pos2::new(first.x, top)];
        let corners: Vec<Pos2> = inside.iter().copied().chain(head).collect();
        let color = shade(above.role, self.look);
        let shape = Shape::convex_polygon(corners, color, Stroke::NONE);
        self.painter.add(shape);
    }

    fn rule(&self, rule: &Rule) {
        let frame = self.transform.frame();
        let ends = match rule.along {
            Along::X => {
                let y = self.transform.position_from_point_y(rule.at);
                [Pos2::new(frame.left(), y), Pos2::new(frame.right(), y)]
            }
            Along::Y => {
                let x = self.transform.position_from_point_x(rule.at);
                [Pos2::new(x, frame.top()), Pos2::new(x, frame.bottom())]
            }
        };
        stroke::line(self.painter, ends, rule_stroke(rule, self.look), &[]);
    }

    fn points(&self, points: &[[f64; 2]]) -> Vec<Pos2> {
        let point = |at: &[f64; 2]| self.transform.position_from_point(&(*at).into());
        points.iter().map(point).collect()
    }

    fn curve(&self, curve: &Curve) {
        let points = self.points(&curve.points);
        stroke::polyline(self.painter, &points, curve_stroke(curve, self.look), &[]);
    }

    fn line(&self, line: &Line) {
        let points = self.points(&line.points);
        let (stroke, dash) = line_stroke(line, self.look);
        stroke::polyline(self.painter, &points, stroke, dash);
    }
}

/// The part of a straight line on the screen that lies below this height; nothing where none of it does.
fn below(top: f32, from: (f32, f32), to: (f32, f32)) -> Vec<Pos2> {
    let crossing = || {
        let share = (top - from.1) / (to.1 - from.1);
        Pos2::new(from.0 + share * (to.0 - from.0), top)
    };
    let [start, end] = [from, to].map(|(x, y)| Pos2::new(x, y));
    match (from.1 > top, to.1 > top) {
        (true, true) => vec![start, end],
        (true, false) => vec![start, crossing()],
        (false, true) => vec![crossing(), end],
        (false, false) => Vec::new(),
    }
}
