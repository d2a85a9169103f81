//! From a wish to its value: the final drive, the rolling circumference or the gear ratio with which an
//! engine speed makes a road speed.

use crate::gearing::{
    DrivenGear, Drivetrain, EngineSpeed, OutOfRange, Ratio, RoadSpeed, RollingCircumference,
    overall_ratio_from_speed, rolling_circumference_mm_from_speed,
};

/// What is to be found; all the rest of the set stays as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sought {
    /// The ratio of the final drive that the gear drives.
    FinalDrive,
    /// The rolling circumference of the driven tyres, in mm.
    RollingCircumference,
    /// The ratio of the gear itself.
    GearRatio,
}

/// An engine speed that is wished at a road speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpeedWish {
    /// The engine speed.
    pub engine: EngineSpeed,
    /// The road speed.
    pub road: RoadSpeed,
}

/// A value that fulfils a wish, beside the present one; both in mm for a circumference.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoundValue {
    /// What the set has now.
    pub present: f64,
    /// What it would have to have.
    pub value: f64,
}

impl FoundValue {
    /// How much more that is, as a share of the present one; below 0 where it is less.
    pub fn difference_share(&self) -> f64 {
        self.value / self.present - 1.0
    }
}

impl Sought {
    /// The value with which `gear` fulfils the wish. Stages count in the positions that they stand in, and of
    /// several final drives the gear's own is meant.
    ///
    /// # Errors
    /// When no ratio or circumference that can exist fulfils it.
    pub fn found(
        self,
        drivetrain: &Drivetrain,
        gear: &DrivenGear,
        wish: SpeedWish,
    ) -> Result<FoundValue, OutOfRange> {
        let (rpm, kmh) = (wish.engine.rpm(), wish.road.kmh());
        let circumference_mm = drivetrain.rolling_circumference_mm;
        // What the overall ratio must change by, one of its factors must change by.
        let change = overall_ratio_from_speed(rpm, kmh, circumference_mm) / gear.overall_ratio;
        let (present, value) = match self {
            Self::FinalDrive => {
                let value = in_range("a final drive", gear.final_drive * change)?;
                (gear.final_drive, value)
            }
            Self::GearRatio => {
                let value = in_range("the ratio of a gear", gear.ratio * change)?;
                (gear.ratio, value)
            }
            Self::RollingCircumference => {
                let mm = rolling_circumference_mm_from_speed(rpm, kmh, gear.overall_ratio);
                (circumference_mm, RollingCircumference::from_mm(mm)?.mm())
            }
        };
        Ok(FoundValue { present, value })
    }
}

/// A ratio that can exist.
fn in_range(what: &'static str, value: f64) -> Result<f64, OutOfRange> {
    if Ratio::RANGE.contains(&value) {
        return Ok(value);
    }
    Err(OutOfRange {
        what,
        bounds: "between 0.001 and 400",
        value,
    })
}
