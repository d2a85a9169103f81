//! A tyre size: what it says, how it is spelt, and how large the tyre is.
//!
//! Load index and speed symbol say nothing about gearing and are kept as they stand.

use std::fmt;

use super::circumference::Construction;
use super::notice::TyreNotice;
use super::rim::Rim;
use super::service::{ServiceDescription, SpeedSymbol};

/// The designation on the wall of a tyre.
///
/// One that exists has every part within its range, an overall diameter larger than its rim
/// and between 300 and 4000 mm, and rolls between 900 and 13000 mm a turn.
/// Its text is the canonical spelling, which reads back to an equal value.
///
/// # Example
/// ```
/// use layshaft::gearing::TyreSize;
/// let size: TyreSize = "195/65r15 91T".parse()?;
/// assert_eq!(size.to_string(), "195/65 R 15 91T");
/// assert_eq!(size.overall_diameter_mm(), 635);
/// # Ok::<(), layshaft::gearing::TyreSizeError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct TyreSize {
    pub(super) prefix: Option<Prefix>,
    pub(super) section: Section,
    /// The letter of `185/70 HR 13`, which stands before R and B only.
    pub(super) speed_before_rim: Option<SpeedSymbol>,
    pub(super) mark: ConstructionMark,
    pub(super) rim: Rim,
    pub(super) suffix: Option<Suffix>,
    pub(super) service: Option<ServiceDescription>,
}

/// The letters before the size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Prefix {
    Passenger,
    LightTruck,
    Trailer,
    Temporary,
}

/// The letters behind the size that tell what the tyre is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Suffix {
    Commercial,
    LightTruck,
    Motorcycle,
}

/// The three ways of naming width and height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Section {
    /// `195/65`: the height as a share of the width.
    Metric { width_mm: u32, aspect_percent: u32 },
    /// `225/640`: a race size, which names its overall diameter.
    Race { width_mm: u32, diameter_mm: u32 },
    /// `31x10.50`: nominal overall diameter and width, in hundredths of an inch.
    Flotation {
        nominal_hundredths: u32,
        width_hundredths: u32,
    },
}

/// The mark before the rim.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum ConstructionMark {
    R,
    Zr,
    D,
    B,
    Dash,
}

impl TyreSize {
    /// Radial or cross-ply, from the mark before the rim.
    pub fn construction(self) -> Construction {
        match self.mark {
            ConstructionMark::R | ConstructionMark::Zr => Construction::Radial,
            ConstructionMark::D | ConstructionMark::B | ConstructionMark::Dash => {
                Construction::CrossPly
            }
        }
    }

    /// The rim that the tyre sits on.
    pub fn rim(self) -> Rim {
        self.rim
    }

    /// What stands behind the size about load and speed, where it is told.
    pub fn service_description(self) -> Option<ServiceDescription> {
        self.service
    }

    /// The speed symbol, from the service description, else from before the rim as in
    /// `185/70 HR 13`.
    pub fn speed_symbol(self) -> Option<SpeedSymbol> {
        let behind = self.service.and_then(ServiceDescription::speed_symbol);
        behind.or(self.speed_before_rim)
    }

    /// The same size with that service description, or with none.
    #[must_use]
    pub fn with_service_description(self, service: Option<ServiceDescription>) -> Self {
        Self { service, ..self }
    }

    /// The same size with nothing said about load and speed.
    #[must_use]
    pub fn without_service(self) -> Self {
        Self {
            speed_before_rim: None,
            service: None,
            ..self
        }
    }

    /// The overall diameter, unloaded, in whole mm.
    ///
    /// Rim diameter + 2 × section height, section height = width × aspect ÷ 100 rounded to a
    /// whole mm, halves up, in whole numbers, for floating point gets the halves wrong.
    /// A race size names its diameter. An inch size names a nominal one: the design diameter
    /// is taken half an inch smaller, see [`TyreNotice::NominalDiameter`].
    ///
    /// # Source
    /// UN R30 6.1.2 and ETRTO Standards Manual (from memory); the half inch is from memory too.
    pub fn overall_diameter_mm(self) -> u32 {
        match self.section {
            Section::Metric {
                width_mm,
                aspect_percent,
            } => {
                let section_height_mm = (2 * width_mm * aspect_percent + 100) / 200;
                self.rim.diameter_mm() + 2 * section_height_mm
            }
            Section::Race { diameter_mm, .. } => diameter_mm,
            Section::Flotation {
                nominal_hundredths, ..
            } => (nominal_hundredths.saturating_sub(50) * 254 + 500) / 1000,
        }
    }

    /// The distance per turn of the loaded tyre in mm, not rounded.
    ///
    /// # Accuracy
    /// +1.5 / −2.5 %; not established for motorcycle tyres.
    pub fn rolling_circumference_mm(self) -> f64 {
        self.construction()
            .rolling_circumference_mm(f64::from(self.overall_diameter_mm()))
    }

    /// What a reader must know before trusting the figures of this size.
    pub fn notices(self) -> Vec<TyreNotice> {
        let mut notices = Vec::new();
        if let Section::Flotation { .. } = self.section {
            notices.push(TyreNotice::NominalDiameter {
                design_diameter_mm: self.overall_diameter_mm(),
            });
        }
        if self.is_motorcycle_size() {
            notices.push(TyreNotice::MotorcycleSize);
        } else if self.mark == ConstructionMark::Dash {
            notices.push(TyreNotice::DashReadAsCrossPly);
        }
        notices
    }

    /// Whether the size is marked as a motorcycle's or spelt like one.
    ///
    /// Common practice, no source: the widths of car tyres end in 5, those of motorcycle tyres
    /// in 0, up to about 360 mm. Car sizes with a rim in mm end in 0 as well, farm tyres are wider.
    fn is_motorcycle_size(self) -> bool {
        if self.suffix == Some(Suffix::Motorcycle) {
            return true;
        }
        let unmarked = self.prefix.is_none() && self.suffix.is_none() && self.rim.is_code();
        match self.section {
            Section::Metric { width_mm, .. } => unmarked && width_mm <= 360 && width_mm % 10 == 0,
            Section::Race { .. } | Section::Flotation { .. } => false,
        }
    }
}

impl fmt::Display for TyreSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let prefix = self.prefix.map_or("", Prefix::spelling);
        let speed = self.speed_before_rim.map_or("", SpeedSymbol::as_str);
        let (section, mark, rim) = (self.section, self.mark.spelling(), self.rim);
        write!(f, "{prefix}{section} {speed}{mark} {rim}")?;
        if let Some(suffix) = self.suffix {
            write!(f, " {}", suffix.spelling())?;
        }
        match self.service {
            Some(service) => write!(f, " {service}"),
            None => Ok(()),
        }
    }
}

impl fmt::Display for Section {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Metric {
                width_mm,
                aspect_percent,
            } => write!(f, "{width_mm}/{aspect_percent}"),
            Self::Race {
                width_mm,
                diameter_mm,
            } => write!(f, "{width_mm}/{diameter_mm}"),
            Self::Flotation {
                nominal_hundredths: nominal,
                width_hundredths: width,
            } => {
                write!(f, "{}", nominal / 100)?;
                match (nominal % 100 / 10, nominal % 10) {
                    (0, 0) => {}
                    (tenths, 0) => write!(f, ".{tenths}")?,
                    (tenths, hundredths) => write!(f, ".{tenths}{hundredths}")?,
                }
                write!(f, "x{}.{:02}", width / 100, width % 100)
            }
        }
    }
}

impl Prefix {
    fn spelling(self) -> &'static str {
        match self {
            Self::Passenger => "P",
            Self::LightTruck => "LT",
            Self::Trailer => "ST",
            Self::Temporary => "T",
        }
    }
}

impl Suffix {
    fn spelling(self) -> &'static str {
        match self {
            Self::Commercial => "C",
            Self::LightTruck => "LT",
            Self::Motorcycle => "M/C",
        }
    }
}

impl ConstructionMark {
    fn spelling(self) -> &'static str {
        match self {
            Self::R => "R",
            Self::Zr => "ZR",
            Self::D => "D",
            Self::B => "B",
            Self::Dash => "-",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(text: &str) -> TyreSize {
        text.parse()
            .unwrap_or_else(|error| panic!("{text}: {error}"))
    }

    #[test]
    fn the_height_of_a_section_rounds_its_halves_up() {
        // 175 × 0.70 is 122.5, which floating point takes for a little less.
        assert_eq!(size("175/70 R 13").overall_diameter_mm(), 330 + 2 * 123);
    }

    #[test]
    fn a_race_size_names_its_overall_diameter() {
        assert_eq!(size("225/640 R 18").overall_diameter_mm(), 640);
    }

    #[test]
    fn an_inch_size_is_half_an_inch_smaller_than_its_name_and_says_so() {
        let size = size("31x10.50 R 15 LT");
        assert_eq!(size.overall_diameter_mm(), 775);
        assert_eq!(
            size.notices(),
            [TyreNotice::NominalDiameter {
                design_diameter_mm: 775
            }]
        );
    }

    #[test]
    fn cross_ply_rolls_less_far_than_radial() {
        let (radial, cross_ply) = (size("130/90 R 16"), size("130/90 - 16"));
        let ratio = cross_ply.rolling_circumference_mm() / radial.rolling_circumference_mm();
        assert!((ratio - 2.99 / 3.05).abs() < 1e-12, "{ratio}");
    }

    #[test]
    fn motorcycle_sizes_are_told_from_car_sizes() {
        for text in [
            "180/55 ZR 17",
            "130/90 - 16",
            "130/90 B 16",
            "185/55 R 17 M/C",
        ] {
            assert_eq!(
                size(text).notices(),
                [TyreNotice::MotorcycleSize],
                "{text} is a motorcycle size"
            );
        }
        for text in [
            "195/65 R 15",
            "P220/60 R 16",
            "LT240/75 R 16",
            "200/65 R 16 C",
            "190/65 R 390",
            "240/640 R 18",
            "480/70 R 24",
        ] {
            assert_eq!(size(text).notices(), [], "{text} is not a motorcycle size");
        }
    }

    #[test]
    fn tyres_that_carry_more_are_not_the_same_but_roll_as_far() {
        let (bare, old, rated) = (
            size("185/70 R 13"),
            size("185/70 HR 13"),
            size("185/70 R 13 86H"),
        );
        assert!(bare != old && bare != rated && old != rated);
        for size in [old, rated] {
            assert_eq!(size.without_service(), bare);
            assert_eq!(size.overall_diameter_mm(), bare.overall_diameter_mm());
            assert_eq!(size.speed_symbol(), "H".parse().ok());
            assert_eq!(size.notices(), bare.notices());
        }
    }

    #[test]
    fn a_dash_in_a_car_size_is_said_to_mean_cross_ply() {
        assert_eq!(
            size("225/45-17").notices(),
            [TyreNotice::DashReadAsCrossPly]
        );
        assert_eq!(size("195/65 D 15").notices(), []);
    }
}
