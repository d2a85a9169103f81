//! How is a line of a set painted: in which pattern, from where?
//!
//! A pattern starts at the line's own beginning, whatever part of it is in view, and runs on around
//! its corners: it neither crawls while the view moves nor begins anew at every point. A thin line
//! has nearly the pattern of a wide one, and a short line a small one, so that both are told apart.

use super::palette::Dash;
use super::soft_line::SoftLines;
use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke};

/// More dashes than this in one line are not told apart; it is painted solid.
const MOST_DASHES: f32 = 2000.0;

/// Paints a straight line in a pattern, only as far as it can be seen.
pub(crate) fn line(painter: &Painter, ends: [Pos2; 2], stroke: Stroke, dash: Dash) {
    polyline(painter, &ends, stroke, dash);
}

/// Paints a line from point to point in a pattern, only as far as it can be seen.
///
/// A point that is not finite parts it in two.
pub(crate) fn polyline(painter: &Painter, points: &[Pos2], stroke: Stroke, dash: Dash) {
    let is_lost = |p: &Pos2| !(p.x.is_finite() && p.y.is_finite());
    for run in points.split(is_lost).filter(|run| run.len() > 1) {
        let dashes = Dashes::of(run, stroke.width, dash, painter.clip_rect());
        let shape = dashes.map_or_else(|| solid(run, stroke), |d| d.shape(painter, stroke));
        painter.add(shape);
    }
}

/// A line without a pattern: level and upright pieces are fitted to pixels, the others joined.
fn solid(points: &[Pos2], stroke: Stroke) -> Shape {
    let pieces: Vec<[Pos2; 2]> = points.windows(2).map(|ends| [ends[0], ends[1]]).collect();
    let runs = pieces.chunk_by(|a, b| is_oblique(*a) && is_oblique(*b));
    let shape = |run: &[[Pos2; 2]]| {
        if let [ends] = *run {
            return Shape::line_segment(ends, stroke);
        }
        let starts = run.iter().take(1).map(|piece| piece[0]);
        let stops = run.iter().map(|piece| piece[1]);
        Shape::line(starts.chain(stops).collect(), stroke)
    };
    Shape::Vec(runs.map(shape).collect())
}

/// Whether a piece of line is neither level nor upright.
fn is_oblique([from, to]: [Pos2; 2]) -> bool {
    let along = to - from;
    along.x != 0.0 && along.y != 0.0
}

/// A short sample of a set's line, for cards and captions.
pub fn sample(painter: &Painter, rect: Rect, color: Color32, dash: Dash) {
    let y = rect.center().y;
    let ends = [Pos2::new(rect.left(), y), Pos2::new(rect.right(), y)];
    line(painter, ends, Stroke::new(3.0, color), dash);
}

/// The unit of a pattern on a line of some width, in points.
///
/// In multiples of the width a thin line had dashes so short that its pattern could not be seen.
fn unit(width: f32) -> f32 {
    1.2 + 0.4 * width
}

/// A pattern on a short line is made smaller, down to this share of itself.
const SMALLEST: f32 = 0.5;

/// The dashes of a line that can be seen.
#[derive(Debug, Default)]
struct Dashes {
    /// Those on oblique pieces of the line.
    oblique: Vec<[Pos2; 2]>,
    /// Those on its level and upright pieces.
    fitted: Vec<[Pos2; 2]>,
    /// Those around its corners.
    bent: Vec<Vec<Pos2>>,
}

impl Dashes {
    /// Lays a pattern along a line; none where the line is solid.
    fn of(points: &[Pos2], width: f32, dash: Dash, clip: Rect) -> Option<Self> {
        let pieces = points.windows(2).map(|ends| [ends[0], ends[1]]);
        let length: f32 = pieces.clone().map(|[a, b]| (b - a).length()).sum();
        let lengths = lengths(width, dash, length)?;
        let clip = clip.expand(width);
        let mut dashes = Self::default();
        let mut parts = lengths
            .iter()
            .zip([true, false].into_iter().cycle())
            .cycle();
        let (mut left, mut is_on) = (0.0, false);
        // Where a dash begins, and the corners that it has come around.
        let (mut start, mut corners) = (points[0], Vec::new());
        let mut ends = [start; 2];
        for piece in pieces {
            ends = piece;
            let along = ends[1] - ends[0];
            let length = along.length();
            let mut from = 0.0;
            while from < length {
                if left <= 0.0 {
                    (left, is_on) = parts.next().map(|(length, is_on)| (*length, is_on))?;
                    start = ends[0] + along * (from / length);
                }
                let to = from + left;
                let stop = ends[0] + along * (to.min(length) / length);
                match (is_on, to > length) {
                    (true, true) => corners.push(stop),
                    (true, false) => dashes.add(start, &mut corners, stop, ends, clip),
                    (false, _) => {}
                }
                left = (to - length).max(0.0);
                from = to;
            }
        }
        if let Some(stop) = corners.pop() {
            dashes.add(start, &mut corners, stop, ends, clip);
        }
        Some(dashes)
    }

    /// Adds a dash that ends on the piece of line between `ends`, where it can be seen.
    fn add(
        &mut self,
        start: Pos2,
        corners: &mut Vec<Pos2>,
        stop: Pos2,
        ends: [Pos2; 2],
        clip: Rect,
    ) {
        if !corners.is_empty() {
            let points: Vec<Pos2> = [start]
                .into_iter()
                .chain(corners.drain(..))
                .chain([stop])
                .collect();
            if clip.intersects(Rect::from_points(&points).expand(0.5)) {
                self.bent.push(points);
            }
        } else if clip.intersects(Rect::from_two_pos(start, stop).expand(0.5)) {
            if is_oblique(ends) {
                self.oblique.push([start, stop]);
            } else {
                self.fitted.push([start, stop]);
            }
        }
    }

    /// All of them as one shape.
    fn shape(self, painter: &Painter, stroke: Stroke) -> Shape {
        let mut shapes = Vec::new();
        match SoftLines::new(stroke, feathering(painter), self.oblique.len()) {
            Some(mut lines) if !self.oblique.is_empty() => {
                for piece in &self.oblique {
                    lines.add(*piece);
                }
                shapes.push(Shape::mesh(lines.into_mesh()));
            }
            _ => shapes.extend(
                self.oblique
                    .iter()
                    .map(|ends| Shape::line_segment(*ends, stroke)),
            ),
        }
        shapes.extend(
            self.fitted
                .iter()
                .map(|ends| Shape::line_segment(*ends, stroke)),
        );
        shapes.extend(
            self.bent
                .into_iter()
                .map(|points| Shape::line(points, stroke)),
        );
        Shape::Vec(shapes)
    }
}

/// The on and off lengths of a pattern on a line of that width and length, in points.
///
/// None where there is no pattern, or none to be told apart.
fn lengths(width: f32, dash: Dash, length: f32) -> Option<Vec<f32>> {
    let period = dash.iter().sum::<f32>() * unit(width);
    if period <= 0.0 || length / period > MOST_DASHES {
        return None;
    }
    // All of it once, and the dash with which it begins again.
    let whole = period + dash[0] * unit(width);
    let scale = unit(width) * (length / whole).clamp(SMALLEST, 1.0);
    Some(dash.iter().map(|part| part * scale).collect())
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::palette;
    use crate::project::Livery;
    use proptest::prelude::*;

    const DASH: Dash = &[4.0, 1.8];
    const EVERYWHERE: Rect = Rect::EVERYTHING;

    /// How long each dash is, in the order along a line of oblique pieces.
    fn dash_lengths(points: &[Pos2]) -> Vec<f32> {
        let dashes = Dashes::of(points, 3.0, DASH, EVERYWHERE).unwrap();
        assert!(dashes.fitted.is_empty());
        let straight = dashes.oblique.iter().map(|ends| ends.to_vec());
        let mut all: Vec<Vec<Pos2>> = straight.chain(dashes.bent.clone()).collect();
        all.sort_by(|a, b| a[0].x.total_cmp(&b[0].x));
        let length = |points: &Vec<Pos2>| {
            let pieces = points.windows(2).map(|ends| ends[0].distance(ends[1]));
            pieces.sum()
        };
        all.iter().map(length).collect()
    }

    proptest! {
        #[test]
        fn a_pattern_runs_on_around_corners(
            steps in proptest::collection::vec((0.5f32..60.0, -40.0f32..40.0), 1..8)
        ) {
            let mut points = vec![Pos2::ZERO];
            for (x, y) in &steps {
                let last = points[points.len() - 1];
                let y = if *y == 0.0 { 1.0 } else { *y };
                points.push(last + egui::vec2(*x, y));
            }
            let length: f32 = points.windows(2).map(|ends| ends[0].distance(ends[1])).sum();
            let mut along = dash_lengths(&points);
            let mut straight = dash_lengths(&[Pos2::ZERO, Pos2::new(length * 0.6, length * 0.8)]);
            // A last dash may be too short to be one.
            let count = along.len().max(straight.len());
            along.resize(count, 0.0);
            straight.resize(count, 0.0);
            for (a, b) in along.iter().zip(&straight) {
                prop_assert!((a - b).abs() < 1e-2, "{:?} {:?}", along, straight);
            }
        }
    }

    #[test]
    fn a_dash_around_a_corner_is_one() {
        // Long enough for the whole pattern, and dashes of 9.6 points.
        let points = [Pos2::ZERO, Pos2::new(6.0, 0.0), Pos2::new(6.0, 80.0)];
        let dashes = Dashes::of(&points, 3.0, DASH, EVERYWHERE).unwrap();
        assert_eq!(dashes.bent.len(), 1);
        let [start, corner, end] = dashes.bent[0][..] else {
            panic!("{:?}", dashes.bent);
        };
        assert_eq!([start, corner], points[..2]);
        assert!(end.distance(Pos2::new(6.0, 3.6)) < 1e-4, "{end}");
        assert!(dashes.oblique.is_empty() && !dashes.fitted.is_empty());
    }

    #[test]
    fn a_line_of_more_dashes_than_can_be_told_apart_is_solid() {
        let points = [Pos2::ZERO, Pos2::new(1e6, 1e6)];
        assert!(Dashes::of(&points, 1.0, DASH, EVERYWHERE).is_none());
        assert!(Dashes::of(&points, 1.0, &[], EVERYWHERE).is_none());
    }
    /// The dashes and gaps of a set's pattern on an oblique line, as they follow one another.
    fn painted(livery: Livery, width: f32, length: f32) -> Vec<f32> {
        let ends = [Pos2::ZERO, Pos2::new(0.8 * length, 0.6 * length)];
        let Some(dashes) = Dashes::of(&ends, width, palette::dash(livery), EVERYWHERE) else {
            return vec![length];
        };
        let ends = dashes.oblique.iter().flatten();
        let bent = dashes.bent.iter().flatten();
        let mut along: Vec<f32> = ends.chain(bent).map(|at| at.distance(Pos2::ZERO)).collect();
        along.sort_by(f32::total_cmp);
        along.windows(2).map(|ends| ends[1] - ends[0]).collect()
    }

    #[test]
    fn the_patterns_of_three_sets_are_told_apart_without_colour_on_thin_and_short_lines() {
        for width in [1.0, 1.5, 2.0, 3.0] {
            for (length, least_gap) in [(300.0, 3.0), (24.0, 1.5)] {
                let [solid, dashed, dotted] =
                    Livery::ALL.map(|livery| painted(livery, width, length));
                assert_eq!(solid, [length]);
                // A gap of so many points is still seen where a point has a pixel.
                for pattern in [&dashed, &dotted] {
                    let gaps = pattern.iter().skip(1).step_by(2);
                    assert!(gaps.clone().count() > 0 && gaps.into_iter().all(|g| *g >= least_gap));
                }
                // Equal dashes against a dash, a dot and a dash.
                assert!((dashed[0] - dashed[2]).abs() < 1e-3 || dashed.len() == 3);
                let [dash, dot, again] = [dotted[0], dotted[2], dotted[4]];
                assert!(dash > 3.0 * dot && dot >= 1.0, "{width}: {dotted:?}");
                assert!((dash - again).abs() < 1e-3, "{width}: {dotted:?}");
            }
        }
    }

    #[test]
    fn a_sample_shows_its_whole_pattern() {
        // The narrowest there is, in the table of the window.
        let [_, dashed, dotted] = Livery::ALL.map(|livery| painted(livery, 3.0, 27.0));
        assert_eq!([dashed.len(), dotted.len()], [3, 5]);
    }
}
