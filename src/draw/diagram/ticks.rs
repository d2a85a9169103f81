//! At which values does an axis carry marks?

use crate::chart::{Axis, round_step};
use egui_plot::GridMark;

/// The marks of an axis between the bounds: its own, else round numbers, at most `most` of them.
pub(super) fn of(axis: &Axis, bounds: (f64, f64), most: f64) -> Vec<GridMark> {
    if axis.marks.is_empty() {
        return marks(bounds, most);
    }
    let own = axis.marks.iter().map(|(value, _)| *value);
    let in_view = own.filter(|value| (bounds.0..=bounds.1).contains(value));
    let mark = |value| GridMark {
        value,
        step_size: 1.0,
    };
    in_view.map(mark).collect()
}

/// Marks at 1, 2 or 5 times a power of ten, at most `most` of them between the bounds.
fn marks(bounds: (f64, f64), most: f64) -> Vec<GridMark> {
    let (low, high) = bounds;
    let span = high - low;
    if !span.is_finite() || span <= 0.0 {
        return Vec::new();
    }
    let step = round_step(span / most);
    let first = (low / step).ceil();
    let count = ((high - first * step) / step).floor();
    if !(0.0..=200.0).contains(&count) {
        return Vec::new();
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and 200"
    )]
    let count = count as u32;
    (0..=count)
        .map(|i| GridMark {
            value: (first + f64::from(i)) * step,
            step_size: step,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn values(bounds: (f64, f64), most: f64) -> Vec<f64> {
        marks(bounds, most).iter().map(|m| m.value).collect()
    }

    #[test]
    #[expect(clippy::float_cmp, reason = "whole numbers are exact")]
    fn marks_stand_at_round_numbers() {
        assert_eq!(values((0.0, 4500.0), 10.0).len(), 10);
        assert_eq!(values((0.0, 100.0), 12.0)[1], 10.0);
        assert_eq!(values((35.0, 95.0), 12.0)[0], 35.0);
    }

    #[test]
    fn impossible_ranges_have_none() {
        for bounds in [
            (0.0, 0.0),
            (1.0, 0.0),
            (f64::NAN, 1.0),
            (0.0, f64::INFINITY),
        ] {
            assert!(marks(bounds, 10.0).is_empty());
        }
    }
}
