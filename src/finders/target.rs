//! From a wish to its value: the final drive, the rolling circumference or the gear ratio with which an
//! engine speed makes a road speed.

use crate::gearing::{
    DrivenGear, Drivetrain, EngineSpeed, OutOfRange, Ratio, RoadSpeed, RollingCircumference,
    overall_ratio_from_speed, quantity, rolling_circumference_mm_from_speed,
};
use crate::units::typed_rpm_text;

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

quantity! {
    /// How far the needle is to fall at a change up: 1 to 29999 rev/min.
    RpmDrop, from_rpm, rpm, "a drop", "between 1 and 29999 rpm",
    |rpm| (1.0..=29_999.0).contains(&rpm)
}

/// Why nothing can fulfil a wish.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum WishError {
    /// A part or a speed that cannot exist.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// The needle cannot fall below nothing.
    #[error("the change up is at {} rpm: a drop must leave 1 rpm of it", typed_rpm_text(*.0))]
    DropTooLarge(f64),
    /// The gear is not changed up from.
    #[error("nothing is changed up from this gear")]
    NoShift,
}

impl SpeedWish {
    /// That the engine turns as it does in `gear` now, at any road speed: 1000 rev/min at the speed that they
    /// make there. Whoever changes the tyres wishes that of the set as it was.
    ///
    /// # Errors
    /// When the gear is so short or tall that 1000 rev/min make no road speed that can exist.
    pub fn as_now(drivetrain: &Drivetrain, gear: &DrivenGear) -> Result<Self, OutOfRange> {
        let engine = EngineSpeed::from_rpm(1000.0)?;
        let kmh = drivetrain.speed_kmh(gear, engine.rpm());
        let road = RoadSpeed::from_kmh(kmh)?;
        Ok(Self { engine, road })
    }

    /// What must hold in the next gear so that the needle falls by `drop` at the change up from `gear`: the
    /// engine speed that is left, at the road speed of the change.
    ///
    /// # Errors
    /// When the gear has no shift point, or the drop leaves nothing of it.
    pub fn after_drop(
        drivetrain: &Drivetrain,
        gear: &DrivenGear,
        drop: RpmDrop,
    ) -> Result<Self, WishError> {
        let shift_rpm = gear.shift.ok_or(WishError::NoShift)?.rpm();
        let left = EngineSpeed::from_rpm(shift_rpm - drop.rpm()).ok();
        let engine = left.ok_or(WishError::DropTooLarge(shift_rpm))?;
        let road = RoadSpeed::from_kmh(drivetrain.speed_kmh(gear, shift_rpm))?;
        Ok(Self { engine, road })
    }
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
    /// The engine speed in rev/min at the wish's road speed with another value than the one that was found:
    /// it goes with a ratio, and against a circumference.
    pub fn engine_rpm_with(self, found: &FoundValue, wish: SpeedWish, value: f64) -> f64 {
        match self {
            Self::FinalDrive | Self::GearRatio => wish.engine.rpm() * (value / found.value),
            Self::RollingCircumference => wish.engine.rpm() * (found.value / value),
        }
    }

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
