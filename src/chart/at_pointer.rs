//! What every set of a diagram does at a place of its x axis: the reading at the pointer, and the
//! whole diagram in such readings.

use super::axis::{Along, Quantity, round_step};
use super::scene::{Owner, Scene, ShownSet};
use std::fmt;

/// How many readings of round values a diagram is told in, at most.
const MOST_READINGS: f64 = 12.0;

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
    /// What is said beside it: the first that has a value there.
    pub also: Vec<Also>,
}

/// Another quantity that is read off at the same place.
#[derive(Debug, Clone, PartialEq)]
pub struct Also {
    /// What stands before it, with a blank behind; may be empty.
    pub name: String,
    /// What it is.
    pub quantity: Quantity,
    /// The line, from left to right.
    pub points: Vec<[f64; 2]>,
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
    /// What is said beside it: `2430 rpm`.
    pub also: Option<String>,
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

impl Scene {
    /// The whole diagram in lines that can be read one by one: what the pointer reads at every mark
    /// and every rule of the x axis, then where every handle stands.
    pub fn read_out(&self) -> Vec<String> {
        let readings = self
            .told_at()
            .into_iter()
            .filter_map(|x| self.reading_at(x))
            .filter(|reading| reading.sets.iter().any(|(_, figures)| !figures.is_empty()));
        let readings = readings.map(|reading| reading.told(self.without_reading));
        let handles = self.handles.iter().filter_map(|handle| {
            let set = self.sets.iter().find(|set| set.id == handle.set)?;
            Some(format!("{}: {}", set.name, handle.words()))
        });
        readings.chain(handles).collect()
    }

    /// Where along the x axis the diagram is told, from left to right.
    fn told_at(&self) -> Vec<f64> {
        let [from, to] = self.x.range;
        let rules = self.rules.iter().filter(|rule| rule.along == Along::Y);
        let mut values: Vec<f64> = rules.map(|rule| rule.at).collect();
        if self.x.marks.is_empty() {
            let step = round_step((to - from) / MOST_READINGS);
            let round = (0..=100_u8).map(|i| (from / step).ceil() * step + f64::from(i) * step);
            values.extend(round.take_while(|x| *x <= to));
        } else {
            values.extend(self.x.marks.iter().map(|(x, _)| *x));
        }
        // As round as they are written: else two would have the same words.
        let mut values: Vec<f64> = values
            .into_iter()
            .map(|x| self.x.quantity.rounded(x, 0.0))
            .collect();
        values.sort_by(f64::total_cmp);
        values.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        values
    }
}

impl Reading<'_> {
    /// All of it in one line; `nothing` is said of a set of which nothing can be read off.
    pub fn told(&self, nothing: &str) -> String {
        let sets = self.sets.iter().map(|(set, figures)| {
            let figures: Vec<String> = figures.iter().map(Figure::to_string).collect();
            let figures = if figures.is_empty() {
                nothing.to_owned()
            } else {
                figures.join(", ")
            };
            format!("{}: {figures}", set.name)
        });
        let heading = std::iter::once(self.heading.clone());
        heading.chain(sets).collect::<Vec<_>>().join("; ")
    }
}

impl fmt::Display for Figure<'_> {
    /// In the order in which it is painted: name, figure, difference.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.name.is_empty() {
            write!(f, "{} ", self.name)?;
        }
        f.write_str(&self.text)?;
        if let Some(difference) = &self.difference {
            write!(f, " {difference}")?;
        }
        match &self.also {
            Some(also) => write!(f, " ({also})"),
            None => Ok(()),
        }
    }
}

impl Readable {
    fn figure_at(&self, x: f64, quantity: Quantity) -> Option<Figure<'_>> {
        let value = value_at(&self.points, x)?;
        let baseline = self.baseline.as_ref().and_then(|line| value_at(line, x));
        Some(Figure {
            name: &self.name,
            text: quantity.figure(value),
            difference: baseline.map(|baseline| quantity.difference_text(value - baseline)),
            also: self.also.iter().find_map(|also| also.text_at(x)),
        })
    }
}

impl Also {
    /// `in 3, 3390 rpm`.
    fn text_at(&self, x: f64) -> Option<String> {
        let value = value_at(&self.points, x)?;
        let Self { name, quantity, .. } = self;
        Some(format!(
            "{name}{} {}",
            quantity.text(value),
            quantity.sign()
        ))
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
