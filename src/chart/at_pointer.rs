//! What every set of a diagram does at a place of its x axis: the reading at the pointer.

use super::axis::Quantity;
use super::scene::{Owner, Scene, ShownSet};

/// A figure of a set that can be read off anywhere along a line.
#[derive(Debug, Clone, PartialEq)]
pub struct Readable {
    /// Whose it is.
    pub of: Owner,
    /// What stands before it: a gear's label; empty where there is nothing to tell apart.
    pub name: String,
    /// The line, from left to right, as far as it is of use.
    pub points: Vec<[f64; 2]>,
    /// The same of the baseline set, at least as far; none where there is nothing to compare.
    pub baseline: Option<Vec<[f64; 2]>>,
}

/// What is read off at one place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading<'s> {
    /// The place in words: `at 110 km/h`.
    pub heading: String,
    /// Every set with its figures, in their order.
    pub sets: Vec<(&'s ShownSet, Vec<Figure<'s>>)>,
}

/// One figure of a reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure<'s> {
    /// What stands before it.
    pub name: &'s str,
    /// The figure.
    pub text: String,
    /// How much more than the baseline's, with its sign.
    pub difference: Option<String>,
}

impl Scene {
    /// What is read off at a value of the x axis; none at its beginning and before.
    pub fn reading_at(&self, x: f64) -> Option<Reading<'_>> {
        if x <= self.x.range[0] {
            return None;
        }
        let figures = |set: &ShownSet| {
            let of_set = self.readables.iter().filter(|r| r.of.set == set.id);
            of_set
                .filter_map(|readable| readable.figure_at(x, self.y.quantity))
                .collect()
        };
        Some(Reading {
            heading: self.x.quantity.at(x),
            sets: self.sets.iter().map(|set| (set, figures(set))).collect(),
        })
    }
}

impl Readable {
    fn figure_at(&self, x: f64, quantity: Quantity) -> Option<Figure<'_>> {
        let value = value_at(&self.points, x)?;
        let baseline = self.baseline.as_ref().and_then(|line| value_at(line, x));
        Some(Figure {
            name: &self.name,
            text: quantity.text(value),
            difference: baseline.map(|baseline| quantity.difference_text(value - baseline)),
        })
    }
}

/// The value of a line at `x`; none before its beginning and beyond its end.
fn value_at(points: &[[f64; 2]], x: f64) -> Option<f64> {
    let mut pieces = points.windows(2);
    let piece = pieces.find(|piece| (piece[0][0]..=piece[1][0]).contains(&x))?;
    let [[from_x, from_y], [to_x, to_y]] = [piece[0], piece[1]];
    let length = to_x - from_x;
    let share = if length > 0.0 {
        (x - from_x) / length
    } else {
        0.0
    };
    Some(from_y + (to_y - from_y) * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_has_values_between_its_ends_only() {
        let line = [[1.0, 10.0], [2.0, 20.0], [2.0, 30.0], [4.0, 30.0]];
        for (x, wanted) in [(1.0, 10.0), (1.5, 15.0), (2.0, 20.0), (3.0, 30.0)] {
            let value = value_at(&line, x).unwrap();
            assert!((value - wanted).abs() < 1e-12, "{value} at {x}");
        }
        assert_eq!(value_at(&line, 0.9), None);
        assert_eq!(value_at(&line, 4.1), None);
        assert_eq!(value_at(&line[..1], 1.0), None);
    }
}
