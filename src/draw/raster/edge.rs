//! Where does the straight edge of a shape cross the rows of pixels?
//!
//! In whole numbers throughout: an edge gives the same columns to the shapes on both its sides,
//! so they neither overlap nor leave a gap.

use std::ops::Range;

/// A place on the canvas in 1/256 of a pixel, from the picture's top left corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Point {
    pub(super) x: i64,
    pub(super) y: i64,
}

/// Steps of [`Point`] in a pixel.
pub(super) const SUBPIXELS: i64 = 256;

/// Beyond this (2^44 pixels) a point is taken to be nowhere: the largest for which the remainders
/// below still fit 64 bits.
const FARTHEST: f64 = 4_503_599_627_370_496.0;

/// Up to here the products below fit 64 bits; farther points take the slow way.
const NEAR: u64 = 1 << 28;

impl Point {
    /// `position` in points as a place on the canvas; `None` when it is not finite or absurdly far.
    pub(super) fn new(position: egui::Pos2, pixels_per_point: f32) -> Option<Self> {
        let x = subpixels(position.x, pixels_per_point)?;
        let y = subpixels(position.y, pixels_per_point)?;
        Some(Self { x, y })
    }

    fn is_near(self) -> bool {
        self.x.unsigned_abs() < NEAR && self.y.unsigned_abs() < NEAR
    }
}

fn subpixels(coordinate_points: f32, pixels_per_point: f32) -> Option<i64> {
    let exact = f64::from(coordinate_points) * f64::from(pixels_per_point) * SUBPIXELS as f64;
    (exact.abs() < FARTHEST).then(|| nearest(exact))
}

/// The whole number nearest to `value`, halves away from zero.
#[expect(
    clippy::cast_possible_truncation,
    reason = "callers keep to what 64 bits hold"
)]
pub(super) fn nearest(value: f64) -> i64 {
    (value + 0.5_f64.copysign(value)) as i64
}

/// The first row or column of pixels whose centre lies at or beyond `coordinate`.
pub(super) fn first_centre(coordinate: i64) -> i64 {
    (coordinate + SUBPIXELS / 2 - 1).div_euclid(SUBPIXELS)
}

/// The coordinate of the centre of row or column `number`.
pub(super) fn centre(number: i64) -> i64 {
    number * SUBPIXELS + SUBPIXELS / 2
}

/// An edge on its way down the rows.
pub(super) struct Edge {
    /// The first column whose centre is at or right of the edge in the present row.
    column: i64,
    /// What was left when dividing by `whole` gave `column`.
    excess: i64,
    column_step: i64,
    excess_step: i64,
    whole: i64,
}

impl Edge {
    /// The edge from `upper` to `lower`, which must lie deeper, on its way through `rows`
    /// between them.
    pub(super) fn new(upper: Point, lower: Point, rows: &Range<i64>) -> Self {
        let right = lower.x - upper.x;
        if right == 0 {
            return Self::upright(upper.x);
        }
        let down = lower.y - upper.y;
        let whole = down * SUBPIXELS;
        // The edge crosses the row at column (from_left · down + from_top · right) / whole, counted
        // in pixel centres; adding (whole - 1) before dividing downwards rounds up.
        let from_left = upper.x - SUBPIXELS / 2;
        let from_top = centre(rows.start) - upper.y;
        let (column, excess) = if upper.is_near() && lower.is_near() {
            let crossing = from_left * down + from_top * right + whole - 1;
            (crossing.div_euclid(whole), crossing.rem_euclid(whole))
        } else {
            far_crossing(from_left, down, from_top, right, whole)
        };
        let mut edge = Self {
            column,
            excess,
            column_step: 0,
            excess_step: 0,
            whole,
        };
        // Divisions are what an edge costs most, and the edges of thin lines see but one row.
        if rows.start + 1 < rows.end {
            edge.column_step = right.div_euclid(down);
            edge.excess_step = right.rem_euclid(down) * SUBPIXELS;
        }
        edge
    }

    fn upright(x: i64) -> Self {
        let column = first_centre(x);
        Self {
            column,
            excess: 0,
            column_step: 0,
            excess_step: 0,
            whole: 1,
        }
    }

    /// The first column at or right of the edge in the present row; goes on to the next row.
    pub(super) fn next_column(&mut self) -> i64 {
        let column = self.column;
        self.column += self.column_step;
        self.excess += self.excess_step;
        if self.excess >= self.whole {
            self.excess -= self.whole;
            self.column += 1;
        }
        column
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "the crossing lies between the two ends"
)]
fn far_crossing(from_left: i64, down: i64, from_top: i64, right: i64, whole: i64) -> (i64, i64) {
    let product = |a: i64, b: i64| i128::from(a) * i128::from(b);
    let whole = i128::from(whole);
    let crossing = product(from_left, down) + product(from_top, right) + whole - 1;
    (
        crossing.div_euclid(whole) as i64,
        crossing.rem_euclid(whole) as i64,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_centre_on_the_coordinate_belongs_beyond_it() {
        assert_eq!(first_centre(128), 0);
        assert_eq!(first_centre(129), 1);
        assert_eq!(first_centre(-128), -1);
        assert_eq!(first_centre(0), 0);
    }

    #[test]
    fn the_near_and_the_far_way_cross_at_the_same_column() {
        let (upper, lower) = (
            Point {
                x: -70_001,
                y: -333,
            },
            Point {
                x: 90_017,
                y: 51_200,
            },
        );
        let mut edge = Edge::new(upper, lower, &(0..200));
        let (right, down) = (lower.x - upper.x, lower.y - upper.y);
        for row in 0..200 {
            let from_top = centre(row) - upper.y;
            let whole = down * SUBPIXELS;
            let (column, _) = far_crossing(upper.x - 128, down, from_top, right, whole);
            assert_eq!(edge.next_column(), column, "row {row}");
        }
    }

    #[test]
    fn nothing_is_everywhere_or_nowhere() {
        for bad in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, f32::MAX] {
            assert_eq!(Point::new(egui::pos2(bad, 0.0), 1.0), None);
            assert_eq!(Point::new(egui::pos2(0.0, bad), 1.0), None);
        }
        let here = Point::new(egui::pos2(1.5, -2.0), 2.0);
        assert_eq!(here, Some(Point { x: 768, y: -1024 }));
    }
}
