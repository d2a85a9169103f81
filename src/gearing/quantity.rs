//! Engine speeds, road speeds and lengths that can exist.
//!
//! A value of one of these types is finite and within the range that can be typed.

use super::number::quoted_number;

/// A number outside the range of its quantity.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("{what} must be {bounds}, not {}", quoted_number(*.value))]
pub struct OutOfRange {
    /// The quantity with its article, as it opens a sentence.
    pub what: &'static str,
    /// The range in words, with its unit.
    pub bounds: &'static str,
    /// What was given instead.
    pub value: f64,
}

macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $Name:ident, $new:ident, $value:ident, $what:literal, $bounds:literal, $holds:expr
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $Name(f64);

        impl $Name {
            /// The quantity from its number, in the unit of the function's name.
            ///
            /// # Errors
            /// When the number is not finite or outside the range of the type.
            pub fn $new(value: f64) -> Result<Self, OutOfRange> {
                let holds: fn(f64) -> bool = $holds;
                if value.is_finite() && holds(value) {
                    Ok(Self(value))
                } else {
                    Err(OutOfRange { what: $what, bounds: $bounds, value })
                }
            }

            /// The number, in the unit of the function's name.
            pub fn $value(self) -> f64 {
                self.0
            }
        }
    };
}

pub(super) use quantity;

quantity! {
    /// An engine speed of 1 to 30000 rev/min.
    EngineSpeed, from_rpm, rpm, "an engine speed", "between 1 and 30000 rpm",
    |rpm| (1.0..=30_000.0).contains(&rpm)
}

quantity! {
    /// A road speed above 0 and up to 1000 km/h.
    RoadSpeed, from_kmh, kmh, "a road speed", "above 0 and at most 1000 km/h",
    |kmh| kmh > 0.0 && kmh <= 1000.0
}

quantity! {
    /// The overall diameter of a tyre, unloaded: 300 to 4000 mm.
    OverallDiameter, from_mm, mm, "an overall diameter", "between 300 and 4000 mm",
    |mm| (300.0..=4000.0).contains(&mm)
}

quantity! {
    /// The distance a loaded tyre covers in one turn: 900 to 13000 mm.
    RollingCircumference, from_mm, mm, "a rolling circumference", "between 900 and 13000 mm",
    |mm| (900.0..=13_000.0).contains(&mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_of_hundreds_of_digits_is_quoted_in_part() {
        for number in [1e300, -5e-324] {
            let error = EngineSpeed::from_rpm(number).unwrap_err().to_string();
            assert!(error.chars().count() < 100, "{error}");
        }
    }

    #[test]
    fn a_refused_number_is_named() {
        let error = RoadSpeed::from_kmh(1000.5).unwrap_err().to_string();
        assert_eq!(
            error,
            "a road speed must be above 0 and at most 1000 km/h, not 1000.5"
        );
    }
}
