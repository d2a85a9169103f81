//! The rim diameter in millimetres, whether named by its code or measured.

use std::fmt;

/// A rim: code 8 to 30 with the half codes between, or 254 to 1000 mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Rim(Kind);

/// The two ways of naming a rim; their ranges do not meet, so the bare number tells which it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Kind {
    /// Twice the code, so that 22.5 is a whole number.
    HalfCodes(u32),
    Millimetres(u32),
}

impl Rim {
    /// The rim of twice that code, 16 to 60: 45 is rim code 22.5.
    pub(super) fn from_half_codes(half_codes: u32) -> Option<Self> {
        (16..=60)
            .contains(&half_codes)
            .then_some(Self(Kind::HalfCodes(half_codes)))
    }

    /// The rim of that many millimetres, 254 to 1000.
    pub(super) fn from_mm(mm: u32) -> Option<Self> {
        (254..=1000)
            .contains(&mm)
            .then_some(Self(Kind::Millimetres(mm)))
    }

    /// The nominal rim diameter in whole mm.
    ///
    /// A code is in inches: code × 25.4 rounded to a whole mm, halves up, in whole numbers.
    ///
    /// # Source
    /// The rim-code table of UN R30 and ETRTO (from memory), which this law gives in every row.
    pub fn diameter_mm(self) -> u32 {
        match self.0 {
            Kind::HalfCodes(half_codes) => (half_codes * 127 + 5) / 10,
            Kind::Millimetres(mm) => mm,
        }
    }

    /// Whether the rim is named by a code, not in millimetres.
    pub(super) fn is_code(self) -> bool {
        matches!(self.0, Kind::HalfCodes(_))
    }
}

impl fmt::Display for Rim {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Kind::HalfCodes(half_codes) if half_codes % 2 == 1 => write!(f, "{}.5", half_codes / 2),
            Kind::HalfCodes(half_codes) => write!(f, "{}", half_codes / 2),
            Kind::Millimetres(mm) => write!(f, "{mm}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_and_millimetres_end_where_the_table_ends() {
        assert!(Rim::from_half_codes(15).is_none() && Rim::from_half_codes(61).is_none());
        assert!(Rim::from_half_codes(16).is_some() && Rim::from_half_codes(60).is_some());
        assert!(Rim::from_mm(253).is_none() && Rim::from_mm(1001).is_none());
        assert!(Rim::from_mm(254).is_some() && Rim::from_mm(1000).is_some());
    }

    #[test]
    fn an_exact_half_millimetre_rounds_up() {
        let rim = Rim::from_half_codes(45).unwrap();
        assert_eq!(
            (rim.to_string(), rim.diameter_mm()),
            ("22.5".to_owned(), 572)
        );
    }

    #[test]
    fn a_rim_in_millimetres_is_taken_as_it_stands() {
        let rim = Rim::from_mm(390).unwrap();
        assert_eq!(
            (rim.to_string(), rim.diameter_mm()),
            ("390".to_owned(), 390)
        );
    }
}
