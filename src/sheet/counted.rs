//! An overall ratio that was counted or driven, and which of the gears at hand it is.

use crate::checks::{MeasuredRatio, Nearest};
use crate::gearing::{DrivenGear, Drivetrain};
use crate::project::Project;
use crate::units::{percent_difference_text, ratio_text};

/// A gear that may be what was counted.
#[derive(Debug, Clone, PartialEq)]
pub struct GearAtHand {
    /// The number of its set, counted from 1.
    pub set_number: usize,
    /// The name of its set.
    pub set: String,
    /// Its label.
    pub gear: String,
    /// Its overall ratio, with the stages in the positions that they stand in.
    pub overall_ratio: f64,
}

/// What was counted, beside the gears at hand.
#[derive(Debug, Clone, PartialEq)]
pub struct CountedRatio {
    /// The ratio and its error.
    pub measured: MeasuredRatio,
    /// All gears at hand, the nearest first.
    pub gears: Vec<GearAtHand>,
    /// What the measurement says of these.
    pub nearest: Option<Nearest>,
}

impl CountedRatio {
    /// Beside all gears of a project's sets, forward and reverse.
    pub fn among(measured: MeasuredRatio, project: &Project) -> Self {
        let sets = (1..).zip(project.sets.iter());
        let gears = sets.flat_map(|(set_number, candidate)| {
            let drivetrain = Drivetrain::resolve(&candidate.set, &project.tyre);
            let at_hand = move |gear: &DrivenGear| GearAtHand {
                set_number,
                set: candidate.set.name.to_string(),
                gear: gear.label.clone(),
                overall_ratio: gear.overall_ratio,
            };
            let gears = drivetrain.gears.iter().chain(&drivetrain.reverse);
            gears.map(at_hand).collect::<Vec<_>>()
        });
        let mut gears: Vec<GearAtHand> = gears.collect();
        let off = |gear: &GearAtHand| (gear.overall_ratio - measured.overall_ratio).abs();
        gears.sort_by(|a, b| off(a).total_cmp(&off(b)));
        let ratios: Vec<f64> = gears.iter().map(|gear| gear.overall_ratio).collect();
        Self {
            measured,
            nearest: measured.nearest(&ratios),
            gears,
        }
    }

    /// How much more the ratio of a gear is than what was counted, as a share of that.
    pub fn difference_share(&self, gear: &GearAtHand) -> f64 {
        gear.overall_ratio / self.measured.overall_ratio - 1.0
    }

    /// Whether the gear at that place lies within the error.
    pub fn is_within(&self, at: usize) -> bool {
        let nearest = self.nearest.as_ref();
        nearest.is_some_and(|nearest| nearest.within_error.contains(&at))
    }

    /// `4.111 ± 0.028`.
    pub fn ratio_words(&self) -> String {
        let MeasuredRatio {
            overall_ratio,
            error,
        } = self.measured;
        format!("{} ± {}", ratio_text(overall_ratio), ratio_text(error))
    }

    /// What the measurement says of the gears at hand.
    pub fn verdict(&self) -> Option<String> {
        let nearest = self.nearest.as_ref()?;
        Some(nearest.sentence(|at| {
            self.gears
                .get(at)
                .map_or_else(String::new, GearAtHand::words)
        }))
    }
}

impl GearAtHand {
    /// `gear 5 of set 1`.
    pub fn words(&self) -> String {
        format!("gear {} of set {}", self.gear, self.set_number)
    }
}

/// How many gears are listed: what is farther off is none of them.
const LISTED: usize = 5;

/// The ratio, the verdict, and the nearest gears.
pub fn text(counted: &CountedRatio) -> String {
    let mut text = format!("overall ratio {}\n", counted.ratio_words());
    text.extend(counted.verdict().map(|verdict| verdict + "\n"));
    let nearest = counted.gears.iter().take(LISTED);
    let lines = nearest.map(|gear| {
        let off = percent_difference_text(counted.difference_share(gear));
        let (words, ratio) = (gear.words(), ratio_text(gear.overall_ratio));
        format!("{words} ({}): {ratio}, {off}\n", gear.set)
    });
    text.extend(lines);
    text
}
