//! What value has a colour or texture position at a pixel inside a triangle?

use super::edge::{Point, SUBPIXELS, centre};

/// Quantities known at a triangle's corners and running evenly between them.
pub(super) struct Planes<const N: usize> {
    corner: Point,
    at_corner: [f64; N],
    per_column: [f64; N],
    per_row: [f64; N],
}

impl<const N: usize> Planes<N> {
    /// The planes through three corners; without meaning when these lie on one line.
    pub(super) fn new(corners: [Point; 3], values: [[f64; N]; 3]) -> Self {
        let [a, b, c] = corners;
        let (bx, by) = (pixels(b.x - a.x), pixels(b.y - a.y));
        let (cx, cy) = (pixels(c.x - a.x), pixels(c.y - a.y));
        let per_area = 1.0 / (bx * cy - cx * by);
        let rise = |i: usize| (values[1][i] - values[0][i], values[2][i] - values[0][i]);
        Self {
            corner: a,
            at_corner: values[0],
            per_column: std::array::from_fn(|i| {
                let (b, c) = rise(i);
                (b * cy - c * by) * per_area
            }),
            per_row: std::array::from_fn(|i| {
                let (b, c) = rise(i);
                (c * bx - b * cx) * per_area
            }),
        }
    }

    /// How much the quantities grow from one column to the next.
    pub(super) fn per_column(&self) -> [f64; N] {
        self.per_column
    }

    /// The quantities at the centre of a pixel.
    pub(super) fn at(&self, row: i64, column: i64) -> [f64; N] {
        let right = pixels(centre(column) - self.corner.x);
        let down = pixels(centre(row) - self.corner.y);
        std::array::from_fn(|i| {
            self.at_corner[i] + self.per_column[i] * right + self.per_row[i] * down
        })
    }
}

fn pixels(subpixels: i64) -> f64 {
    subpixels as f64 / SUBPIXELS as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_corners_get_their_own_values_back() {
        let corners = [(2, 3), (50, 7), (11, 40)].map(|(column, row)| Point {
            x: centre(column),
            y: centre(row),
        });
        let planes = Planes::new(corners, [[10.0, 1.0], [20.0, -1.0], [255.0, 0.5]]);
        for ((column, row), values) in [
            ((2, 3), [10.0, 1.0]),
            ((50, 7), [20.0, -1.0]),
            ((11, 40), [255.0, 0.5]),
        ] {
            for (got, wanted) in planes.at(row, column).into_iter().zip(values) {
                assert!((got - wanted).abs() < 1e-12, "{got} for {wanted}");
            }
        }
    }
}
