//! The units of the bench: lengths of shims and readings, and the torques at which shafts turn.
//!
//! Inside the program lengths are mm and torques of the bench N·mm. Every factor is exact.

use super::output::{N_PER_KILOGRAM_FORCE, NM_PER_POUND_FOOT};
use super::{MM_PER_INCH, decimals_text, plain_number, round_to};

/// Inches in a foot.
const INCHES_PER_FOOT: f64 = 12.0;

/// Newton millimetres in a newton metre.
pub const NMM_PER_NM: f64 = 1000.0;

/// The unit in which lengths of the bench are shown, and typed where none stands behind a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum LengthUnit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches, of which dials show thousandths.
    Inch,
}

impl LengthUnit {
    /// Both units, in the order of the choice.
    pub const ALL: [Self; 2] = [Self::Millimetre, Self::Inch];

    /// The unit's sign, as it stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }

    /// A length in mm, from this unit.
    pub fn to_mm(self, length: f64) -> f64 {
        length * self.size_mm()
    }

    /// A length in this unit, from mm.
    pub fn from_mm(self, length_mm: f64) -> f64 {
        length_mm / self.size_mm()
    }

    /// A length in figures without the unit: in mm with two decimals at least and four at most, in inches
    /// with three and five.
    ///
    /// # Example
    /// ```
    /// use layshaft::units::LengthUnit;
    /// assert_eq!(LengthUnit::Millimetre.figure(0.3), "0.30");
    /// assert_eq!(LengthUnit::Inch.figure(0.3048), "0.012");
    /// ```
    pub fn figure(self, length_mm: f64) -> String {
        let (least, grain) = match self {
            Self::Millimetre => (2, 1e-4),
            Self::Inch => (3, 1e-5),
        };
        with_decimals(self.from_mm(length_mm), least, grain)
    }

    /// A length that was reckoned, in figures without the unit: to a thousandth of a mm or a tenth of a
    /// thousandth of an inch.
    pub fn reckoned(self, length_mm: f64) -> String {
        let (least, grain) = match self {
            Self::Millimetre => (2, 1e-3),
            Self::Inch => (3, 1e-4),
        };
        with_decimals(self.from_mm(length_mm), least, grain)
    }

    /// The size of a seat in figures without the unit: to the micrometre, or a hundred-thousandth of an inch.
    ///
    /// # Example
    /// ```
    /// use layshaft::units::LengthUnit;
    /// assert_eq!(LengthUnit::Millimetre.seat_size(39.01), "39.010");
    /// assert_eq!(LengthUnit::Inch.seat_size(39.01), "1.53583");
    /// ```
    pub fn seat_size(self, length_mm: f64) -> String {
        match self {
            Self::Millimetre => with_decimals(length_mm, 3, 1e-3),
            Self::Inch => with_decimals(self.from_mm(length_mm), 3, 1e-5),
        }
    }

    /// A reading across a seat in figures without the unit, with the digits that a micrometer screw has.
    ///
    /// # Example
    /// ```
    /// use layshaft::units::LengthUnit;
    /// assert_eq!(LengthUnit::Millimetre.seat_reading(39.01), "39.010");
    /// assert_eq!(LengthUnit::Inch.seat_reading(71.9836), "2.8340");
    /// ```
    pub fn seat_reading(self, length_mm: f64) -> String {
        let (least, grain) = match self {
            Self::Millimetre => (3, 1e-4),
            Self::Inch => (4, 1e-5),
        };
        with_decimals(self.from_mm(length_mm), least, grain)
    }

    fn size_mm(self) -> f64 {
        match self {
            Self::Millimetre => 1.0,
            Self::Inch => MM_PER_INCH,
        }
    }
}

/// A number rounded to a grain, with so many decimals at least.
fn with_decimals(number: f64, least: usize, grain: f64) -> String {
    // What is written is what its decimals were counted of: halfway between two, both must go the same way.
    let rounded = round_to(number, grain);
    let text = plain_number(rounded);
    let decimals = text.split_once('.').map_or(0, |(_, behind)| behind.len());
    decimals_text(rounded, decimals.max(least))
}

/// The unit in which turning torques are shown, and typed where none stands behind a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TurningUnit {
    /// Newton metres.
    #[default]
    NewtonMetre,
    /// Newton centimetres.
    NewtonCentimetre,
    /// Pound-force inches.
    PoundInch,
    /// Pound-force feet.
    PoundFoot,
    /// Kilogram-force centimetres.
    KilogramForceCentimetre,
}

impl TurningUnit {
    /// All units, in the order of the choice.
    pub const ALL: [Self; 5] = [
        Self::NewtonMetre,
        Self::NewtonCentimetre,
        Self::PoundInch,
        Self::PoundFoot,
        Self::KilogramForceCentimetre,
    ];

    /// The unit's sign, as it stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::NewtonMetre => "N·m",
            Self::NewtonCentimetre => "N·cm",
            Self::PoundInch => "lbf·in",
            Self::PoundFoot => "lbf·ft",
            Self::KilogramForceCentimetre => "kgf·cm",
        }
    }

    /// A torque in N·mm, from this unit.
    pub fn to_nmm(self, torque: f64) -> f64 {
        torque * self.size_nmm()
    }

    /// A torque in this unit, from N·mm.
    pub fn from_nmm(self, torque_nmm: f64) -> f64 {
        torque_nmm / self.size_nmm()
    }

    /// A torque in figures without the unit, to three digits behind those that a wrench shows.
    pub fn figure(self, torque_nmm: f64) -> String {
        let grain = match self {
            Self::NewtonMetre | Self::PoundFoot => 1e-3,
            Self::NewtonCentimetre | Self::PoundInch | Self::KilogramForceCentimetre => 1e-2,
        };
        with_decimals(self.from_nmm(torque_nmm), 0, grain)
    }

    fn size_nmm(self) -> f64 {
        match self {
            Self::NewtonMetre => NMM_PER_NM,
            Self::NewtonCentimetre => 10.0,
            Self::PoundInch => NM_PER_POUND_FOOT * NMM_PER_NM / INCHES_PER_FOOT,
            Self::PoundFoot => NM_PER_POUND_FOOT * NMM_PER_NM,
            Self::KilogramForceCentimetre => N_PER_KILOGRAM_FORCE * 10.0,
        }
    }
}

/// The units of a bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct BenchUnits {
    /// Of lengths.
    pub length: LengthUnit,
    /// Of turning torques.
    pub torque: TurningUnit,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_and_torques_come_back_from_every_unit() {
        for unit in LengthUnit::ALL {
            assert!((unit.from_mm(unit.to_mm(1.2345)) - 1.2345).abs() < 1e-12);
        }
        for unit in TurningUnit::ALL {
            assert!((unit.from_nmm(unit.to_nmm(1.2345)) - 1.2345).abs() < 1e-12);
        }
    }

    #[test]
    fn torques_of_a_manual_are_those_in_newton_metres() {
        // Source: an axle service manual: 15–35 lb·in = 1.69–3.95 N·m (read, conversion derived).
        let nm = |lbf_in: f64| TurningUnit::PoundInch.to_nmm(lbf_in) / NMM_PER_NM;
        assert!((nm(15.0) - 1.69).abs() < 0.005 && (nm(35.0) - 3.95).abs() < 0.005);
        // Definition: a kilogram-force is 9.80665 N.
        let kgf_cm = TurningUnit::KilogramForceCentimetre.to_nmm(10.0);
        assert!((kgf_cm - 980.665).abs() < 1e-9, "{kgf_cm}");
        assert!((TurningUnit::PoundFoot.to_nmm(1.0) - 1355.818).abs() < 1e-3);
    }

    #[test]
    fn figures_have_the_digits_that_a_dial_has() {
        let mm = LengthUnit::Millimetre;
        let figures = [0.3, 1.0, 0.396_875, -0.05, -0.000_01].map(|length| mm.figure(length));
        assert_eq!(figures, ["0.30", "1.00", "0.3969", "−0.05", "0.00"]);
        assert_eq!(LengthUnit::Inch.figure(25.4 / 32.0), "0.03125");
        assert_eq!(TurningUnit::NewtonMetre.figure(1500.0), "1.5");
        assert_eq!(mm.reckoned(0.304_499), "0.304");
        assert_eq!(mm.figure(26.881_05), "26.8811");
    }
}
