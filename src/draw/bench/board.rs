//! The board that a bench drawing is made on: its own units, pens and fillings, arrows, dimensions and words.
//!
//! A drawing is made in units of which [`SIZE`] is the whole, and keeps its proportions in every rectangle.

use super::polygon::{Lean, arc, hatching, triangles};
use crate::draw::palette::{Dash, Palette};
use crate::draw::stroke::polyline;
use egui::{Align2, Color32, FontId, Mesh, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

/// What a drawing has to itself, in its own units: as many points on a small screen.
pub(super) const SIZE: Vec2 = vec2(320.0, 180.0);

/// The greatest height of letters in units, so that every word finds its place.
const MOST_TEXT: f32 = 13.5;

/// How far the lines of a hatching lie apart, in units.
const HATCH: f32 = 7.0;

/// The length of an arrow's head and half its breadth, in units.
const HEAD: [f32; 2] = [7.0, 2.8];

/// A dimension as short as this has its arrows outside, in units.
const SHORT: f32 = 20.0;

/// A place on the board.
pub(super) type At = [f32; 2];

/// What a part is filled with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fill {
    /// Hatched as a case is that is cut through.
    Case,
    /// Hatched the other way: a cover, a gear beside a case.
    Cover,
    /// Plain metal: shafts, rings of bearings.
    Metal,
    /// Nothing: rollers and balls.
    Bare,
    /// What the drawing is about.
    Shim,
}

/// What a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pen {
    /// An edge of a part.
    Edge,
    /// What leads from a word to its part, and all of a dimension.
    Thin,
    /// The middle of what turns.
    Axis,
    /// Where a bearing carries its load.
    Load,
    /// What leads to the shim, and where it moves things.
    Shim,
}

/// Which words are brought out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ink {
    /// What a part is called.
    Plain,
    /// What the drawing is about.
    Shim,
}

/// A rectangle to draw in.
pub(super) struct Board<'a> {
    painter: &'a Painter,
    palette: &'a Palette,
    font: FontId,
    origin: Pos2,
    scale: f32,
}

impl<'a> Board<'a> {
    /// Lays paper into a rectangle; letters have that height in points, or less where the drawing is smaller.
    pub(super) fn new(
        painter: &'a Painter,
        rect: Rect,
        palette: &'a Palette,
        text_size: f32,
    ) -> Self {
        painter.rect_filled(rect, 0.0, palette.paper);
        let scale = (rect.width() / SIZE.x).min(rect.height() / SIZE.y);
        Self {
            painter,
            palette,
            font: FontId::proportional(text_size.min(MOST_TEXT * scale)),
            origin: rect.center() - SIZE * scale / 2.0,
            scale,
        }
    }

    fn at(&self, [x, y]: At) -> Pos2 {
        self.origin + vec2(x, y) * self.scale
    }

    fn places(&self, points: &[At]) -> Vec<Pos2> {
        points.iter().map(|point| self.at(*point)).collect()
    }

    /// A line of so many units that is seen on the smallest screen.
    fn width(&self, units: f32) -> f32 {
        (units * self.scale).max(1.0)
    }

    fn pen(&self, pen: Pen) -> (Stroke, Dash) {
        let palette = self.palette;
        let (units, color, dash): (f32, Color32, Dash) = match pen {
            Pen::Edge => (1.3, palette.text, &[]),
            Pen::Thin => (0.8, palette.dim_text, &[]),
            Pen::Axis => (0.8, palette.dim_text, &[7.0, 2.5, 1.5, 2.5]),
            Pen::Load => (1.0, palette.dim_text, &[3.0, 2.0]),
            Pen::Shim => (1.6, palette.shim, &[]),
        };
        (Stroke::new(self.width(units), color), dash)
    }

    /// Paints a part within an outline, over what is there; its edge is drawn from the first point to the last, so
    /// that a part that goes on beyond the drawing begins and ends where it is broken off.
    pub(super) fn part(&self, outline: &[At], fill: Fill) {
        let outline = self.places(outline);
        self.filled(&outline, self.tint(fill));
        match fill {
            Fill::Case => self.hatched(&outline, Lean::Right),
            Fill::Cover => self.hatched(&outline, Lean::Left),
            Fill::Metal | Fill::Bare | Fill::Shim => {}
        }
        let mut edge = self.pen(Pen::Edge).0;
        if fill == Fill::Shim {
            edge.color = self.palette.shim;
        }
        polyline(self.painter, &outline, edge, &[]);
    }

    /// The colour within a part, beneath its hatching.
    fn tint(&self, fill: Fill) -> Color32 {
        match fill {
            Fill::Case | Fill::Cover | Fill::Bare => self.palette.paper,
            Fill::Metal => self.palette.metal,
            Fill::Shim => self.palette.shim,
        }
    }

    fn filled(&self, outline: &[Pos2], color: Color32) {
        let mut mesh = Mesh::default();
        for (first, triangle) in (0_u32..).step_by(3).zip(triangles(outline)) {
            for corner in triangle {
                mesh.colored_vertex(corner, color);
            }
            mesh.add_triangle(first, first + 1, first + 2);
        }
        self.painter.add(Shape::mesh(mesh));
    }

    fn hatched(&self, outline: &[Pos2], lean: Lean) {
        let stroke = Stroke::new(self.width(0.8), self.palette.mark);
        for ends in hatching(outline, lean, HATCH * self.scale) {
            self.painter.line_segment(ends, stroke);
        }
    }

    /// A rectangle between two corners as a part.
    pub(super) fn block(&self, [left, top]: At, [right, bottom]: At, fill: Fill) {
        let corners = [
            [left, top],
            [right, top],
            [right, bottom],
            [left, bottom],
            [left, top],
        ];
        self.part(&corners, fill);
    }

    /// A circle, filled as a part but never hatched.
    pub(super) fn disc(&self, centre: At, radius: f32, fill: Fill) {
        let stroke = self.pen(Pen::Edge).0;
        let (at, radius) = (self.at(centre), radius * self.scale);
        self.painter.circle(at, radius, self.tint(fill), stroke);
    }

    /// A line from point to point.
    pub(super) fn line(&self, points: &[At], pen: Pen) {
        let (stroke, dash) = self.pen(pen);
        polyline(self.painter, &self.places(points), stroke, dash);
    }

    /// A cord of that thickness.
    pub(super) fn cord(&self, points: &[At], units: f32) {
        let stroke = Stroke::new(self.width(units), self.palette.shim);
        self.painter.line(self.places(points), stroke);
    }

    /// Points round a centre from one angle to another, in degrees from the right and clockwise.
    pub(super) fn arc(centre: At, radius: f32, angles: [f32; 2]) -> Vec<At> {
        let points = arc(pos2(centre[0], centre[1]), radius, angles);
        points.into_iter().map(|at| [at.x, at.y]).collect()
    }

    /// A line from point to point with a head at its end.
    pub(super) fn arrow(&self, points: &[At], pen: Pen) {
        let mut line = self.places(points);
        let color = self.pen(pen).0.color;
        if let [.., before, tip] = &mut line[..] {
            *tip = self.head(*before, *tip, color);
        }
        self.painter.line(line, self.pen(pen).0);
    }

    /// A head at a tip, seen from another place; returns where its line ends, which is within the head.
    fn head(&self, from: Pos2, tip: Pos2, color: Color32) -> Pos2 {
        let back = (from - tip).normalized() * HEAD[0] * self.scale;
        let aside = back.rot90() * HEAD[1] / HEAD[0];
        let corners = vec![tip, tip + back + aside, tip + back - aside];
        let shape = Shape::convex_polygon(corners, color, Stroke::NONE);
        self.painter.add(shape);
        tip + back / 2.0
    }

    /// An arrow both ways.
    pub(super) fn both_ways(&self, from: At, to: At, pen: Pen) {
        let [from, to] = [from, to].map(|place| self.at(place));
        let stroke = self.pen(pen).0;
        let ends = [
            self.head(to, from, stroke.color),
            self.head(from, to, stroke.color),
        ];
        self.painter.line_segment(ends, stroke);
    }

    /// A level dimension at a height, between two places from whose parts lines lead to it.
    pub(super) fn level_dimension(&self, from: At, to: At, y: f32, pen: Pen) {
        for [x, part] in [from, to] {
            let beyond = y + 3.0 * (y - part).signum();
            self.line(&[[x, part], [x, beyond]], Pen::Thin);
        }
        let [from, to] = [[from[0], y], [to[0], y]];
        if (to[0] - from[0]).abs() < SHORT {
            self.arrow(&[[from[0] - SHORT, y], from], pen);
            self.arrow(&[[to[0] + SHORT, y], to], pen);
        } else {
            self.both_ways(from, to, pen);
        }
    }

    /// Words at a place.
    pub(super) fn words(&self, at: At, align: Align2, text: &str, ink: Ink) {
        let color = match ink {
            Ink::Plain => self.palette.text,
            Ink::Shim => self.palette.shim,
        };
        let font = self.font.clone();
        self.painter.text(self.at(at), align, text, font, color);
    }
}
