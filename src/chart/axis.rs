//! The axes of a diagram: which quantity each carries, in which unit, how its values are spelled.

use crate::units::{
    SpeedUnit, consumption_text, decimals_text, plain_number, round_to, rpm_difference_text,
    rpm_text, signed, step_text,
};

/// One of the two axes of a diagram.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// What its values are.
    pub quantity: Quantity,
    /// The least and the greatest value of the whole diagram.
    pub range: [f64; 2],
    /// Where it carries marks, and what they say; round numbers where there are none.
    pub marks: Vec<(f64, String)>,
}

/// One of the two ways through a diagram.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// Level, along the values of the x axis.
    X,
    /// Upright, along the values of the y axis.
    Y,
}

impl Along {
    /// The value of a point along this way.
    pub fn of(self, [x, y]: [f64; 2]) -> f64 {
        match self {
            Self::X => x,
            Self::Y => y,
        }
    }
}

/// What part of a diagram is in view.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Least and greatest value along the x axis, in its unit.
    pub x: [f64; 2],
    /// Least and greatest value along the y axis, in its unit.
    pub y: [f64; 2],
}

/// What the values of an axis are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Road speed in this unit.
    RoadSpeed(SpeedUnit),
    /// Engine speed in rev/min.
    EngineSpeed,
    /// Gears of the shift chain, counted from 1.
    Gear,
    /// The step of a gear over the next, a pure number.
    Step,
    /// Tractive effort in N.
    Effort,
    /// Time in s.
    Time,
    /// A way in m.
    Distance,
    /// Consumption in L/100 km.
    Fuel,
    /// Share of full torque in per cent.
    Load,
    /// How much more than the true speed an instrument shows, in this unit.
    AboveTrue(SpeedUnit),
}

impl Quantity {
    /// What it is called at the beginning of a sentence.
    pub fn name(self) -> &'static str {
        match self {
            Self::RoadSpeed(_) => "Road speed",
            Self::EngineSpeed => "Engine speed",
            Self::Gear => "Gear",
            Self::Step => "Step",
            Self::Effort => "Tractive effort",
            Self::Time => "Time",
            Self::Distance => "Distance",
            Self::Fuel => "Fuel",
            Self::Load => "Load",
            Self::AboveTrue(_) => "Shown above true",
        }
    }

    /// What stands at the end of its axis: its unit, or what it is where it has none.
    pub fn sign(self) -> &'static str {
        match self {
            Self::RoadSpeed(unit) => unit.sign(),
            Self::AboveTrue(SpeedUnit::Kmh) => "± km/h",
            Self::AboveTrue(SpeedUnit::Mph) => "± mph",
            Self::EngineSpeed => "rpm",
            Self::Gear => "gear",
            Self::Step => "step",
            Self::Effort => "N",
            Self::Time => "s",
            Self::Distance => "m",
            Self::Fuel => "L/100 km",
            Self::Load => "%",
        }
    }

    /// A place along its axis in words: `at 110 km/h`.
    pub fn at(self, value: f64) -> String {
        match self {
            Self::RoadSpeed(_)
            | Self::EngineSpeed
            | Self::Effort
            | Self::Fuel
            | Self::Load
            | Self::AboveTrue(_) => {
                format!("at {} {}", self.text(value), self.sign())
            }
            Self::Time | Self::Distance => format!("after {} {}", self.text(value), self.sign()),
            Self::Gear | Self::Step => format!("{} {}", self.sign(), self.text(value)),
        }
    }

    /// A value as it is read off, without its unit.
    pub fn text(self, value: f64) -> String {
        match self {
            Self::Gear => plain_number(value),
            Self::EngineSpeed => rpm_text(value),
            Self::Step => step_text(value),
            Self::Effort => effort_text(value),
            Self::Distance => plain_number(value.round()),
            Self::RoadSpeed(_) | Self::Time | Self::Load => plain_number(round_to(value, 0.1)),
            Self::Fuel => consumption_text(value),
            Self::AboveTrue(_) => signed(value, 1),
        }
    }

    /// A value as it stands among others of its kind: all have the same decimals.
    pub fn figure(self, value: f64) -> String {
        match self {
            Self::RoadSpeed(_) => decimals_text(value, 1),
            other => other.text(value),
        }
    }

    /// A value as it marks its axis, without its unit.
    pub fn mark_text(self, value: f64) -> String {
        match self {
            // What is shown too little lies below the axis.
            Self::AboveTrue(_) if value.abs() > 1e-9 => signed(value, 3)
                .trim_end_matches('0')
                .trim_end_matches('.')
                .to_owned(),
            _ => plain_number(round_to(value, 0.001)),
        }
    }

    /// A difference of two values with its sign.
    pub fn difference_text(self, difference: f64) -> String {
        match self {
            Self::Gear | Self::Distance => signed(difference, 0),
            Self::EngineSpeed => rpm_difference_text(difference),
            Self::Step | Self::Fuel => signed(difference, 2),
            Self::Effort => signed(round_to(difference, 10.0), 0),
            Self::RoadSpeed(_) | Self::Time | Self::Load | Self::AboveTrue(_) => {
                signed(difference, 1)
            }
        }
    }

    /// The value nearest to `value` that is read off, where `per_point` values stand in a point of
    /// the screen: the figures belong to the one that is written beside them.
    pub fn rounded(self, value: f64, per_point: f64) -> f64 {
        let is_coarse = self == Self::Gear || per_point > 0.05;
        round_to(value, if is_coarse { 1.0 } else { 0.1 })
    }
}

/// A tractive effort to 10 N: an estimate hides the rest.
fn effort_text(effort_n: f64) -> String {
    plain_number(round_to(effort_n, 10.0))
}

/// The least of 1, 2, 5 × 10ⁿ that is not below `least`.
pub fn round_step(least: f64) -> f64 {
    let power = 10_f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|factor| factor * power)
        .find(|step| *step >= least)
        .unwrap_or(10.0 * power)
}

/// The next round number above `value`, no more than a tenth away: 163 gives 165.
pub(super) fn next_round(value: f64) -> f64 {
    if value <= 0.0 || !value.is_finite() {
        return 100.0;
    }
    let grain = 10_f64.powf(value.log10().floor()) / 20.0;
    (value / grain).ceil() * grain
}
