//! What does a figure measure: in which unit is it said, and how is it rounded for readers?

use crate::units::{
    SpeedUnit, percent_text, ratio_text, rpm_text, speed_per_1000_rpm_text, speed_text, step_text,
    typed_rpm_text,
};

/// What a figure of the table measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Turns for one turn, with three decimals.
    Ratio,
    /// A ratio of two ratios, with two decimals.
    Step,
    /// An engine speed as it was typed, in rev/min.
    TypedEngineSpeed,
    /// An engine speed that is a result, in rev/min; shown to 10, for a tyre's tolerance hides the rest.
    EngineSpeed,
    /// A share of 1, shown as a percentage with one decimal.
    Share,
    /// A road speed in km/h, shown in whole numbers, the slow ones with one decimal.
    RoadSpeed,
    /// A road speed in km/h for every 1000 rpm, with one decimal.
    RoadSpeedPer1000Rpm,
}

impl Measure {
    /// The sign of the unit in which it is shown; empty for a pure number.
    pub fn unit(self, units: SpeedUnit) -> &'static str {
        match self {
            Self::Ratio | Self::Step => "",
            Self::TypedEngineSpeed | Self::EngineSpeed => "rpm",
            Self::Share => "%",
            Self::RoadSpeed | Self::RoadSpeedPer1000Rpm => units.sign(),
        }
    }

    /// The sign of the unit in which the program reckons; empty for a pure number and a share of 1.
    pub fn inner_unit(self) -> &'static str {
        match self {
            Self::Share => "",
            Self::Ratio
            | Self::Step
            | Self::TypedEngineSpeed
            | Self::EngineSpeed
            | Self::RoadSpeed
            | Self::RoadSpeedPer1000Rpm => self.unit(SpeedUnit::Kmh),
        }
    }

    /// The figure in the unit in which it is shown, in full precision.
    pub fn in_unit(self, figure: f64, units: SpeedUnit) -> f64 {
        match self {
            Self::Ratio | Self::Step | Self::TypedEngineSpeed | Self::EngineSpeed => figure,
            Self::Share => figure * 100.0,
            Self::RoadSpeed | Self::RoadSpeedPer1000Rpm => units.from_kmh(figure),
        }
    }

    /// The figure as a reader sees it, without its unit.
    pub fn rounded(self, figure: f64, units: SpeedUnit) -> String {
        match self {
            Self::Ratio => ratio_text(figure),
            Self::Step => step_text(figure),
            Self::TypedEngineSpeed => typed_rpm_text(figure),
            Self::EngineSpeed => rpm_text(figure),
            Self::Share => percent_text(figure),
            Self::RoadSpeed => speed_text(figure, units),
            Self::RoadSpeedPer1000Rpm => speed_per_1000_rpm_text(figure, units),
        }
    }
}
