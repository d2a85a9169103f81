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
            pub fn $new(value: f64) -> Result<Self, $crate::gearing::OutOfRange> {
                let holds: fn(f64) -> bool = $holds;
                if value.is_finite() && holds(value) {
                    Ok(Self(value))
                } else {
                    Err($crate::gearing::OutOfRange { what: $what, bounds: $bounds, value })
                }
            }

            /// The number, in the unit of the function's name.
            pub fn $value(self) -> f64 {
                self.0
            }
        }
    };
}

pub(crate) use quantity;

quantity! {
    /// An engine speed of 1 to 30000 rev/min.
    EngineSpeed, from_rpm, rpm, "an engine speed", "between 1 and 30000 rpm",
    |rpm| (1.0..=30_000.0).contains(&rpm)
}

quantity! {
    /// A road speed of 0.001 to 1000 km/h; a kept one may be slower, see [`RoadSpeed::from_kept_kmh`].
    RoadSpeed, from_kmh, kmh, "a road speed", "between 0.001 and 1000 km/h",
    |kmh| (RoadSpeed::SLOWEST_KMH..=RoadSpeed::FASTEST_KMH).contains(&kmh)
}

impl RoadSpeed {
    /// The slowest that can be typed, in km/h: a metre in an hour.
    pub const SLOWEST_KMH: f64 = 0.001;

    /// The fastest, in km/h.
    pub const FASTEST_KMH: f64 = 1000.0;

    /// A road speed that was kept before there was a slowest: everything above 0 was taken.
    ///
    /// # Errors
    /// When the number is not finite, not above 0, or beyond 1000 km/h.
    pub fn from_kept_kmh(kmh: f64) -> Result<Self, OutOfRange> {
        if kmh > 0.0 && kmh < Self::SLOWEST_KMH {
            Ok(Self(kmh))
        } else {
            Self::from_kmh(kmh)
        }
    }

    /// Whether it is slower than any that can be typed, which is a finding.
    pub fn is_too_slow(self) -> bool {
        self.0 < Self::SLOWEST_KMH
    }
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
            "a road speed must be between 0.001 and 1000 km/h, not 1000.5"
        );
    }

    #[test]
    fn a_road_speed_slower_than_can_be_typed_is_still_kept() {
        assert!(RoadSpeed::from_kmh(0.000_999).is_err());
        assert!(!RoadSpeed::from_kmh(0.001).unwrap().is_too_slow());
        for kmh in [0.000_999, 5e-324] {
            let kept = RoadSpeed::from_kept_kmh(kmh).unwrap();
            assert!(kept.is_too_slow() && kept.kmh().to_bits() == kmh.to_bits());
        }
        for kmh in [0.0, -1.0, 1000.5, f64::NAN, f64::INFINITY] {
            assert!(RoadSpeed::from_kept_kmh(kmh).is_err(), "{kmh}");
        }
    }
}
