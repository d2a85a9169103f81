//! The strange things that a finding can be about, and their words.

use crate::gearing::final_drive::Sprockets;
use crate::gearing::number::quoted;
use crate::gearing::quantity::RoadSpeed;
use crate::gearing::tyre::TyreNotice;
use crate::units::{plain_number, ratio_text, round_to, rpm_text, step_text, typed_rpm_text};
use std::fmt;

/// What is strange, with the figures that show it.
#[derive(Debug, Clone, PartialEq)]
pub enum FindingKind {
    /// The next gear is not taller.
    NotFalling {
        /// The two gears' labels.
        gears: [String; 2],
        /// Their overall ratios.
        overall_ratios: [f64; 2],
    },
    /// Two gears within 2 %.
    NearlyTheSame {
        /// The two gears' labels.
        gears: [String; 2],
        /// The step between them.
        step: f64,
    },
    /// A step more than 5 % wider than the one before it.
    WiderThanBefore {
        /// The two gears' labels.
        gears: [String; 2],
        /// The step between them.
        step: f64,
        /// The step before it.
        before: f64,
    },
    /// The last step is more than 5 % wider than the one before it.
    OverdriveTop {
        /// The two gears' labels.
        gears: [String; 2],
        /// The step between them.
        step: f64,
        /// The step before it.
        before: f64,
    },
    /// First to second wider than 2.
    WideFirstStep {
        /// The two gears' labels.
        gears: [String; 2],
        /// The step between them.
        step: f64,
    },
    /// A shift point above the redline.
    ShiftAboveRedline {
        /// The gear's label.
        gear: String,
        /// The shift point in rev/min.
        shift_rpm: f64,
        /// The redline in rev/min.
        redline_rpm: f64,
    },
    /// A shift point below idle.
    ShiftBelowIdle {
        /// The gear's label.
        gear: String,
        /// The shift point in rev/min.
        shift_rpm: f64,
        /// Idle in rev/min.
        idle_rpm: f64,
    },
    /// An upshift that lands below the lowest useful engine speed.
    DropTooLow {
        /// The two gears' labels.
        gears: [String; 2],
        /// Engine speed after the shift, in rev/min.
        rpm_after_shift: f64,
        /// The lowest useful engine speed, in rev/min.
        lowest_useful_rpm: f64,
    },
    /// A chain that makes the wheel turn faster than the shaft that drives it.
    FrontSprocketLarger {
        /// Its sprockets.
        sprockets: Sprockets,
    },
    /// Idle is not below the redline.
    IdleNotBelowRedline {
        /// Idle in rev/min.
        idle_rpm: f64,
        /// The redline in rev/min.
        redline_rpm: f64,
    },
    /// The lowest useful engine speed is not below the redline: no engine speed is useful.
    UsefulNotBelowRedline {
        /// The lowest useful engine speed, in rev/min.
        lowest_useful_rpm: f64,
        /// The redline in rev/min.
        redline_rpm: f64,
    },
    /// A redline that is lower than can be typed.
    RedlineTooLow {
        /// The redline in rev/min.
        redline_rpm: f64,
    },
    /// A road speed is marked that is slower than can be typed.
    MarkedSpeedTooSlow {
        /// The marked road speed in km/h.
        speed_kmh: f64,
    },
    /// A letter that the program cannot write: it stands as an empty box.
    LetterLacking {
        /// The letter.
        letter: char,
        /// The beginning of the text that it stands in.
        text: String,
    },
    /// The tyre's size leaves something open.
    Tyre(TyreNotice),
}

impl FindingKind {
    /// The kind's name in machine-readable output.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotFalling { .. } => "not_falling",
            Self::NearlyTheSame { .. } => "nearly_the_same",
            Self::WiderThanBefore { .. } => "wider_than_before",
            Self::OverdriveTop { .. } => "overdrive_top",
            Self::WideFirstStep { .. } => "wide_first_step",
            Self::ShiftAboveRedline { .. } => "shift_above_redline",
            Self::ShiftBelowIdle { .. } => "shift_below_idle",
            Self::DropTooLow { .. } => "drop_too_low",
            Self::FrontSprocketLarger { .. } => "front_sprocket_larger",
            Self::IdleNotBelowRedline { .. } => "idle_not_below_redline",
            Self::UsefulNotBelowRedline { .. } => "useful_not_below_redline",
            Self::RedlineTooLow { .. } => "redline_too_low",
            Self::MarkedSpeedTooSlow { .. } => "marked_speed_too_slow",
            Self::LetterLacking { .. } => "letter_lacking",
            Self::Tyre(_) => "tyre",
        }
    }
}

impl fmt::Display for FindingKind {
    #[expect(
        clippy::too_many_lines,
        reason = "one flat match: a new kind cannot be left without its sentence"
    )]
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let wider = |step: &f64, before: &f64| format!("{:.0} %", (step / before - 1.0) * 100.0);
        let rpm = |rpm: &f64| typed_rpm_text(*rpm);
        match self {
            Self::NotFalling {
                gears: [a, b],
                overall_ratios: [i, j],
            } => write!(
                f,
                "gear {b} is not taller than gear {a}: overall ratio {} after {}",
                ratio_text(*j),
                ratio_text(*i)
            ),
            Self::NearlyTheSame {
                gears: [a, b],
                step,
            } => write!(
                f,
                "gears {a} and {b} are nearly the same, {:.1} % apart",
                (step - 1.0) * 100.0
            ),
            Self::WiderThanBefore {
                gears: [a, b],
                step,
                before,
            } => write!(
                f,
                "the step {a} to {b} of {} is {} wider than the {} before it",
                step_text(*step),
                wider(step, before),
                step_text(*before)
            ),
            Self::OverdriveTop {
                gears: [a, b],
                step,
                before,
            } => write!(
                f,
                "the last step {a} to {b} of {} is {} wider than the {} before it: an overdrive top",
                step_text(*step),
                wider(step, before),
                step_text(*before)
            ),
            Self::WideFirstStep {
                gears: [a, b],
                step,
            } => {
                write!(
                    f,
                    "the step {a} to {b} of {} is wider than 2",
                    step_text(*step)
                )
            }
            Self::ShiftAboveRedline {
                gear,
                shift_rpm,
                redline_rpm,
            } => write!(
                f,
                "the shift point of gear {gear}, {} rpm, is above the redline of {} rpm",
                rpm(shift_rpm),
                rpm(redline_rpm)
            ),
            Self::ShiftBelowIdle {
                gear,
                shift_rpm,
                idle_rpm,
            } => write!(
                f,
                "the shift point of gear {gear}, {} rpm, is below idle at {} rpm",
                rpm(shift_rpm),
                rpm(idle_rpm)
            ),
            Self::DropTooLow {
                gears: [a, b],
                rpm_after_shift,
                lowest_useful_rpm,
            } => write!(
                f,
                "changing up {a} to {b} lands {} the lowest useful engine speed of {} rpm",
                landing(*rpm_after_shift, *lowest_useful_rpm),
                rpm(lowest_useful_rpm)
            ),
            Self::FrontSprocketLarger { sprockets } => write!(
                f,
                "the chain's front sprocket has more teeth than the rear one, {} to {}: have they \
                 changed places?",
                sprockets.front(),
                sprockets.rear()
            ),
            Self::IdleNotBelowRedline {
                idle_rpm,
                redline_rpm,
            } => write!(
                f,
                "idle at {} rpm is not below the redline of {} rpm",
                rpm(idle_rpm),
                rpm(redline_rpm)
            ),
            Self::UsefulNotBelowRedline {
                lowest_useful_rpm,
                redline_rpm,
            } => write!(
                f,
                "the lowest useful engine speed of {} rpm is not below the redline of {} rpm",
                rpm(lowest_useful_rpm),
                rpm(redline_rpm)
            ),
            Self::RedlineTooLow { redline_rpm } => write!(
                f,
                "no engine has its redline at {} rpm: type all of its digits",
                plain_number(*redline_rpm)
            ),
            Self::MarkedSpeedTooSlow { speed_kmh } => write!(
                f,
                "{} is marked as a road speed; mark {} km/h or more, or take it away",
                slow_speed(*speed_kmh),
                RoadSpeed::SLOWEST_KMH
            ),
            Self::LetterLacking { letter, text } => write!(
                f,
                "pictures have no letter \"{letter}\" to show \"{}\" with: write it with others",
                quoted(text)
            ),
            Self::Tyre(notice) => notice.fmt(f),
        }
    }
}

/// A speed below the slowest; of one that no digits are worth, only that it is next to nothing.
fn slow_speed(speed_kmh: f64) -> String {
    if speed_kmh < 1e-9 {
        "next to 0 km/h".to_owned()
    } else {
        format!("{} km/h", plain_number(speed_kmh))
    }
}

/// Where an upshift lands; a figure that rounds to the limit would contradict "below".
fn landing(rpm_after_shift: f64, lowest_useful_rpm: f64) -> String {
    if round_to(rpm_after_shift, 10.0) < lowest_useful_rpm {
        format!("at {} rpm, below", rpm_text(rpm_after_shift))
    } else {
        "just below".to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_landing_that_rounds_to_the_limit_is_said_to_be_just_below_it() {
        let sentence = |rpm_after_shift| {
            let gears = ["1".to_owned(), "2".to_owned()];
            let lowest_useful_rpm = 1500.0;
            let kind = FindingKind::DropTooLow {
                gears,
                rpm_after_shift,
                lowest_useful_rpm,
            };
            kind.to_string()
        };
        assert_eq!(
            sentence(1496.0),
            "changing up 1 to 2 lands just below the lowest useful engine speed of 1500 rpm"
        );
        assert_eq!(
            sentence(1494.0),
            "changing up 1 to 2 lands at 1490 rpm, below the lowest useful engine speed of 1500 rpm"
        );
    }
}
