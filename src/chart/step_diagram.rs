//! The small diagram of steps while they are laid out: each step of the set as it is and as it would be.

use super::axis::round_step;
use crate::units::step_text;

/// Steps as they are drawn where they are laid out.
#[derive(Debug, Clone, PartialEq)]
pub struct StepDiagram {
    /// What each change is called: `1→2`.
    pub changes: Vec<String>,
    /// The steps as they are, from first gear on.
    pub present: Vec<f64>,
    /// The steps that are laid out, from first gear on.
    pub laid_out: Vec<f64>,
    /// What its upright axis holds.
    pub scale: StepScale,
    /// All of it in one spoken sentence.
    pub summary: String,
}

/// The upright axis of such a diagram.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepScale {
    /// The least and the greatest step.
    pub range: [f64; 2],
    /// The step of its marks.
    pub mark: f64,
}

/// How much room is left above the widest step, as a share of what is above the least: one can be dragged there.
const ROOM_ABOVE: f64 = 0.25;

/// About how many marks the axis has.
const MARKS: f64 = 5.0;

impl StepDiagram {
    /// The diagram of steps between gears of those labels.
    pub fn of(labels: &[String], present: &[f64], laid_out: &[f64]) -> Self {
        let steps = || present.iter().chain(laid_out).copied();
        let least = steps().fold(1.0, f64::min);
        let widest = steps().fold(1.1, f64::max);
        let most = widest + ROOM_ABOVE * (widest - least);
        let told: Vec<String> = laid_out.iter().map(|step| step_text(*step)).collect();
        Self {
            changes: labels.windows(2).map(|pair| pair.join("→")).collect(),
            present: present.to_vec(),
            laid_out: laid_out.to_vec(),
            scale: StepScale {
                range: [least, most],
                mark: round_step((most - least) / MARKS),
            },
            summary: format!("Steps from first gear on: {}", told.join(", ")),
        }
    }
}

impl StepScale {
    /// The steps at which lines go across.
    pub fn marks(&self) -> impl Iterator<Item = f64> {
        let [least, most] = self.range;
        let mark = self.mark;
        let first = (least / mark).ceil();
        let marks = (0_u8..20).map(move |n| (first + f64::from(n)) * mark);
        marks.take_while(move |at| *at <= most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_axis_has_room_above_the_widest_step_and_round_marks() {
        let labels = ["1", "2", "3"].map(str::to_owned);
        let diagram = StepDiagram::of(&labels, &[1.8, 1.4], &[1.6, 1.5]);
        assert_eq!(diagram.changes, ["1→2", "2→3"]);
        let [least, most] = diagram.scale.range;
        assert!((least - 1.0).abs() < 1e-9 && (most - 2.0).abs() < 1e-9);
        let marks: Vec<f64> = diagram.scale.marks().collect();
        assert!(
            marks.len() >= 5 && marks.iter().all(|at| (least..=most).contains(at)),
            "{marks:?}"
        );
        assert_eq!(diagram.summary, "Steps from first gear on: 1.60, 1.50");
    }
}
