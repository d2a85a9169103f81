//! The law of two shafts that stand where they stand: which profile shifts a pair of gears needs there,
//! and whether such a pair can be cut.

use crate::gearing::quantity;

quantity! {
    /// The distance between the axes of two shafts: 5 to 5000 mm.
    CentreDistance, from_mm, mm, "a centre distance", "between 5 and 5000 mm",
    |mm| (5.0..=5000.0).contains(&mm)
}

quantity! {
    /// The size of teeth as they are cut, square to their flanks: 0.1 to 50 mm.
    NormalModule, from_mm, mm, "a module", "between 0.1 and 50 mm",
    |mm| (0.1..=50.0).contains(&mm)
}

quantity! {
    /// How far teeth lean from the axis, at the pitch circle: 0 to 60°.
    HelixAngle, from_degrees, degrees, "a helix angle", "between 0 and 60°",
    |degrees| (0.0..=60.0).contains(&degrees)
}

impl HelixAngle {
    /// That of straight teeth.
    pub const SPUR: Self = Self(0.0);
}

quantity! {
    /// How far the flanks of the cutter lean: 10 to 30°.
    PressureAngle, from_degrees, degrees, "a pressure angle", "between 10 and 30°",
    |degrees| (10.0..=30.0).contains(&degrees)
}

impl PressureAngle {
    /// 20°: that of nearly all gears there are (ISO 53).
    pub const USUAL: Self = Self(20.0);
}

quantity! {
    /// Teeth for an inch of the pitch diameter, as inch gears are sized: 0.508 to 254.
    DiametralPitch, from_per_inch, per_inch, "a diametral pitch", "between 0.508 and 254",
    |per_inch| (0.508..=254.0).contains(&per_inch)
}

impl DiametralPitch {
    /// The module of the same teeth: 25.4 mm ÷ pitch.
    ///
    /// # Source
    /// Definition, with an inch of 25.4 mm.
    ///
    /// # Example
    /// ```
    /// let pitch = layshaft::finders::DiametralPitch::from_per_inch(10.0)?;
    /// assert!((pitch.module().mm() - 2.54).abs() < 1e-12);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn module(self) -> NormalModule {
        NormalModule(MM_PER_INCH / self.per_inch())
    }
}

const MM_PER_INCH: f64 = 25.4;

/// Two shafts at a fixed distance, and the teeth that are to mesh between them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FixedCentre {
    /// From axis to axis.
    pub distance: CentreDistance,
    /// The normal module.
    pub module: NormalModule,
    /// The helix angle at the pitch circle.
    pub helix: HelixAngle,
    /// The pressure angle of the cutter, square to the flanks.
    pub pressure: PressureAngle,
}

impl FixedCentre {
    /// The centre distance in mm at which gears of so many teeth together mesh without any shift.
    ///
    /// a = mₙ (z₁ + z₂) ÷ (2 cos β)
    ///
    /// # Source
    /// ISO 21771.
    pub fn unshifted_distance_mm(&self, tooth_sum: u16) -> f64 {
        self.module.mm() * f64::from(tooth_sum) / (2.0 * self.helix_cos())
    }

    /// The pressure angle square to the axis, in degrees: tan αₜ = tan αₙ ÷ cos β.
    ///
    /// # Source
    /// ISO 21771.
    pub fn transverse_pressure_angle_deg(&self) -> f64 {
        self.transverse_pressure_angle().to_degrees()
    }

    /// The pressure angle at which gears of so many teeth together work, in degrees; none where their base
    /// circles do not fit between the axes.
    ///
    /// cos α′ = (a ÷ a′) cos αₜ, a′ the distance between the axes
    ///
    /// # Source
    /// ISO 21771.
    pub fn working_pressure_angle_deg(&self, tooth_sum: u16) -> Option<f64> {
        let angle = self.working_pressure_angle(tooth_sum)?;
        Some(angle.to_degrees())
    }

    /// The sum of profile shift coefficients x₁ + x₂ with which gears of so many teeth together mesh without
    /// backlash; none where no shift lets them.
    ///
    /// x₁ + x₂ = (z₁ + z₂) (inv α′ − inv αₜ) ÷ (2 tan αₙ), α′ the working angle, inv α = tan α − α
    ///
    /// # Source
    /// ISO 21771.
    ///
    /// # Example
    /// ```
    /// use layshaft::finders::{CentreDistance, FixedCentre, HelixAngle, NormalModule, PressureAngle};
    /// let shafts = FixedCentre {
    ///     distance: CentreDistance::from_mm(80.0)?,
    ///     module: NormalModule::from_mm(2.5)?,
    ///     helix: HelixAngle::SPUR,
    ///     pressure: PressureAngle::USUAL,
    /// };
    /// assert!(shafts.profile_shift_sum(64).unwrap().abs() < 1e-12);
    /// assert!((shafts.profile_shift_sum(63).unwrap() - 0.5284).abs() < 5e-5);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn profile_shift_sum(&self, tooth_sum: u16) -> Option<f64> {
        let working = self.working_pressure_angle(tooth_sum)?;
        let involutes = involute(working) - involute(self.transverse_pressure_angle());
        let normal = self.normal_pressure_angle();
        Some(f64::from(tooth_sum) * involutes / (2.0 * normal.tan()))
    }

    /// What gears of so many teeth together need here, and whether they can be cut.
    pub fn fit(&self, tooth_sum: u16) -> CentreFit {
        CentreFit::of(self.profile_shift_sum(tooth_sum))
    }

    fn helix_cos(&self) -> f64 {
        self.helix.degrees().to_radians().cos()
    }

    fn normal_pressure_angle(&self) -> f64 {
        self.pressure.degrees().to_radians()
    }

    fn transverse_pressure_angle(&self) -> f64 {
        let normal = self.normal_pressure_angle();
        (normal.tan() / self.helix_cos()).atan()
    }

    fn working_pressure_angle(&self, tooth_sum: u16) -> Option<f64> {
        let share = self.unshifted_distance_mm(tooth_sum) / self.distance.mm();
        let cos = share * self.transverse_pressure_angle().cos();
        (cos <= 1.0).then(|| cos.acos())
    }
}

fn involute(angle: f64) -> f64 {
    angle.tan() - angle
}

/// What a pair of gears needs at a fixed centre distance; each but the last with its sum of profile shifts.
///
/// The limits are those of the trade for both gears together. Where a single gear is undercut or its teeth
/// become pointed depends on how the sum is shared out, which is the gear maker's to decide.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CentreFit {
    /// −0.5 to +1.0: usual.
    Good(f64),
    /// Above +1.0, up to +1.3: can still be cut.
    Possible(f64),
    /// Below −0.5: the teeth would be undercut.
    TooLow(f64),
    /// Above +1.3: the teeth would be pointed.
    TooHigh(f64),
    /// Too many teeth: no shift lets them mesh.
    NoMesh,
}

impl CentreFit {
    /// The least sum of profile shifts that is offered.
    pub const LEAST: f64 = -0.5;
    /// The most that is usual.
    pub const MOST_USUAL: f64 = 1.0;
    /// The most that is offered.
    pub const MOST: f64 = 1.3;

    fn of(shift: Option<f64>) -> Self {
        match shift {
            None => Self::NoMesh,
            Some(sum) if sum < Self::LEAST => Self::TooLow(sum),
            Some(sum) if sum <= Self::MOST_USUAL => Self::Good(sum),
            Some(sum) if sum <= Self::MOST => Self::Possible(sum),
            Some(sum) => Self::TooHigh(sum),
        }
    }

    /// The sum of profile shifts; none where no shift lets the gears mesh.
    pub fn profile_shift_sum(self) -> Option<f64> {
        match self {
            Self::Good(sum) | Self::Possible(sum) | Self::TooLow(sum) | Self::TooHigh(sum) => {
                Some(sum)
            }
            Self::NoMesh => None,
        }
    }

    /// Whether such gears are offered at all.
    pub fn can_be_cut(self) -> bool {
        match self {
            Self::Good(_) | Self::Possible(_) => true,
            Self::TooLow(_) | Self::TooHigh(_) | Self::NoMesh => false,
        }
    }

    /// Whether they can be cut, and which limit says so.
    pub fn verdict(self) -> &'static str {
        match self {
            Self::Good(_) => "yes",
            Self::Possible(_) => "possibly, above 1.0",
            Self::TooLow(_) => "no, below −0.5",
            Self::TooHigh(_) => "no, above 1.3",
            Self::NoMesh => "no, does not mesh",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limits_themselves_can_be_cut() {
        for (sum, verdict) in [
            (-0.501, "no, below −0.5"),
            (-0.5, "yes"),
            (1.0, "yes"),
            (1.001, "possibly, above 1.0"),
            (1.3, "possibly, above 1.0"),
            (1.301, "no, above 1.3"),
        ] {
            let fit = CentreFit::of(Some(sum));
            assert_eq!(fit.verdict(), verdict, "{sum}");
            assert_eq!(fit.can_be_cut(), !verdict.starts_with("no"), "{sum}");
            assert_eq!(fit.profile_shift_sum(), Some(sum));
        }
    }

    #[test]
    fn gears_too_large_for_the_shafts_need_a_shift_that_is_not_there() {
        let shafts = FixedCentre {
            distance: CentreDistance::from_mm(80.0).unwrap(),
            module: NormalModule::from_mm(2.5).unwrap(),
            helix: HelixAngle::SPUR,
            pressure: PressureAngle::USUAL,
        };
        // 80 mm ÷ cos 20° is room for the base circles of 68 teeth.
        assert!(shafts.fit(68).profile_shift_sum().is_some());
        assert_eq!(shafts.fit(69), CentreFit::NoMesh);
        assert!(!shafts.fit(69).can_be_cut());
    }
}
