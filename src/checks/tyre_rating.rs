//! The ratings on a tyre's wall against what the vehicle asks of it: its speed and its load.

use crate::gearing::{LoadIndex, RoadSpeed, ServiceDescription, SpeedSymbol};
use crate::motion::Mass;
use crate::units::{SpeedUnit, mark_text, plain_number, round_to};

/// Where a top speed is known from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TopSpeedSource {
    /// It stands in the registration paper.
    Registration,
    /// The engine's power and the road load end there.
    Power,
    /// Top gear reaches the redline there. Every overdrive gets far beyond what the vehicle drives, so it is
    /// worth a note and no more.
    Redline,
}

/// The top speed that a tyre must stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnownTopSpeed {
    /// The speed in km/h.
    pub kmh: f64,
    /// Where it is known from.
    pub source: TopSpeedSource,
}

impl KnownTopSpeed {
    /// The one that says most of those that are known: of the registration paper, else by power, else by the
    /// redline; both latter in km/h.
    pub fn of(
        registration: Option<RoadSpeed>,
        by_power_kmh: Option<f64>,
        by_redline_kmh: Option<f64>,
    ) -> Option<Self> {
        let known = [
            (
                registration.map(RoadSpeed::kmh),
                TopSpeedSource::Registration,
            ),
            (by_power_kmh, TopSpeedSource::Power),
            (by_redline_kmh, TopSpeedSource::Redline),
        ];
        known
            .into_iter()
            .find_map(|(kmh, source)| Some(Self { kmh: kmh?, source }))
    }

    /// The speed and where it is from, as it stands in a sentence.
    pub(super) fn words(self, unit: SpeedUnit) -> String {
        let speed = format!("{} {}", mark_text(self.kmh, unit), unit.sign());
        match self.source {
            TopSpeedSource::Registration => format!("the top speed of {speed} in the papers"),
            TopSpeedSource::Power => format!("the top speed of {speed} by power"),
            TopSpeedSource::Redline => format!("the {speed} that top gear has at the redline"),
        }
    }
}

/// What the speed symbol of a tyre says to a top speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SpeedRating {
    /// The tyre may be driven as fast.
    Enough {
        /// Its symbol.
        symbol: SpeedSymbol,
        /// What that stands for, in km/h.
        rated_kmh: f64,
    },
    /// The tyre may not be driven as fast.
    TooSlow {
        /// Its symbol.
        symbol: SpeedSymbol,
        /// What that stands for, in km/h.
        rated_kmh: f64,
    },
    /// No table here has the speed of the symbol.
    Unknown {
        /// The symbol.
        symbol: SpeedSymbol,
    },
    /// The tyre's designation has no symbol.
    NotGiven,
}

impl SpeedRating {
    /// Whether a tyre of that symbol may be driven at that top speed.
    pub fn of(symbol: Option<SpeedSymbol>, top: KnownTopSpeed) -> Self {
        let Some(symbol) = symbol else {
            return Self::NotGiven;
        };
        match symbol.speed_kmh() {
            None => Self::Unknown { symbol },
            Some(rated_kmh) if top.kmh > rated_kmh => Self::TooSlow { symbol, rated_kmh },
            Some(rated_kmh) => Self::Enough { symbol, rated_kmh },
        }
    }

    /// The same as a sentence, with speeds in that unit.
    pub fn sentence(self, top: KnownTopSpeed, unit: SpeedUnit) -> String {
        let rated = |kmh: f64| format!("{} {}", mark_text(kmh, unit), unit.sign());
        let top = top.words(unit);
        match self {
            Self::Enough { symbol, rated_kmh } => {
                format!(
                    "speed symbol {symbol} stands for {}, enough for {top}",
                    rated(rated_kmh)
                )
            }
            Self::TooSlow { symbol, rated_kmh } => {
                format!(
                    "speed symbol {symbol} stands for {}, less than {top}",
                    rated(rated_kmh)
                )
            }
            Self::Unknown { symbol } => {
                format!("the speed of symbol {symbol} is unknown here; compare it with {top}")
            }
            Self::NotGiven => format!("the tyre has no speed symbol; compare it with {top}"),
        }
    }
}

/// How many tyres carry an axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum TyresOnAxle {
    /// One at each end.
    #[default]
    Two,
    /// Twin tyres at each end: the load index for twin tyres holds.
    Four,
}

impl TyresOnAxle {
    /// How many they are.
    pub fn count(self) -> u8 {
        match self {
            Self::Two => 2,
            Self::Four => 4,
        }
    }

    fn words(self) -> &'static str {
        match self {
            Self::Two => "two",
            Self::Four => "four",
        }
    }
}

/// What the load index of a tyre says to an axle load.
///
/// At speeds above 210 km/h a tyre carries less than its index says: that is left to its maker's table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LoadRating {
    /// The tyres carry the axle.
    Enough {
        /// What they carry together, in kg.
        carried_kg: f64,
    },
    /// The tyres carry less.
    TooLittle {
        /// What they carry together, in kg.
        carried_kg: f64,
    },
    /// No table here has the mass of the index.
    Unknown {
        /// The index.
        index: LoadIndex,
    },
    /// The tyre's designation has no load index for so many tyres.
    NotGiven,
}

impl LoadRating {
    /// Whether so many tyres of that description carry an axle of that load.
    pub fn of(service: Option<ServiceDescription>, tyres: TyresOnAxle, axle_load: Mass) -> Self {
        let index = service.and_then(|service| match tyres {
            TyresOnAxle::Two => Some(service.load_index()),
            TyresOnAxle::Four => service.dual_load_index(),
        });
        let Some(index) = index else {
            return Self::NotGiven;
        };
        let Some(mass_kg) = index.mass_kg() else {
            return Self::Unknown { index };
        };
        let carried_kg = f64::from(tyres.count()) * mass_kg;
        if carried_kg < axle_load.kg() {
            Self::TooLittle { carried_kg }
        } else {
            Self::Enough { carried_kg }
        }
    }

    /// The same as a sentence.
    pub fn sentence(self, tyres: TyresOnAxle, axle_load: Mass) -> String {
        let load = format!(
            "the axle load of {} kg",
            plain_number(round_to(axle_load.kg(), 1.0))
        );
        let carry = |kg: f64| format!("{} tyres carry {} kg", tyres.words(), plain_number(kg));
        match self {
            Self::Enough { carried_kg } => format!("{}, enough for {load}", carry(carried_kg)),
            Self::TooLittle { carried_kg } => format!("{}, less than {load}", carry(carried_kg)),
            Self::Unknown { index } => {
                format!(
                    "what load index {index} stands for is unknown here; compare it with {load}"
                )
            }
            Self::NotGiven => match tyres {
                TyresOnAxle::Two => format!("the tyre has no load index; compare it with {load}"),
                TyresOnAxle::Four => {
                    format!("the tyre has no load index for twin tyres; compare it with {load}")
                }
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn symbol(text: &str) -> Option<SpeedSymbol> {
        text.parse().ok()
    }

    fn service(single: u16, dual: Option<u16>) -> Option<ServiceDescription> {
        let index = |number| LoadIndex::new(number).unwrap();
        let dual = dual.map(index);
        ServiceDescription::new(index(single), dual, symbol("T")).ok()
    }

    fn load(kg: f64) -> Mass {
        Mass::from_kg(kg).unwrap()
    }

    fn in_papers(kmh: f64) -> KnownTopSpeed {
        KnownTopSpeed {
            kmh,
            source: TopSpeedSource::Registration,
        }
    }

    #[test]
    fn the_papers_go_before_the_power_and_that_before_the_redline() {
        let paper = RoadSpeed::from_kmh(180.0).ok();
        let source =
            |paper, power, redline| KnownTopSpeed::of(paper, power, redline).map(|top| top.source);
        let (power, redline) = (Some(175.0), Some(260.0));
        assert_eq!(
            source(paper, power, redline),
            Some(TopSpeedSource::Registration)
        );
        assert_eq!(source(None, power, redline), Some(TopSpeedSource::Power));
        assert_eq!(source(None, None, redline), Some(TopSpeedSource::Redline));
        assert_eq!(source(None, None, None), None);
    }

    #[test]
    fn a_tyre_may_be_driven_just_as_fast_as_its_symbol_says() {
        let rating = |kmh| SpeedRating::of(symbol("T"), in_papers(kmh));
        assert!(matches!(rating(190.0), SpeedRating::Enough { .. }));
        assert!(matches!(rating(190.1), SpeedRating::TooSlow { .. }));
        assert_eq!(
            rating(195.0).sentence(in_papers(195.0), SpeedUnit::Kmh),
            "speed symbol T stands for 190 km/h, less than the top speed of 195 km/h in the papers"
        );
    }

    #[test]
    fn what_is_in_no_table_is_unknown_and_never_enough() {
        let slow = SpeedRating::of(symbol("A8"), in_papers(30.0));
        assert!(matches!(slow, SpeedRating::Unknown { .. }));
        assert_eq!(
            SpeedRating::of(None, in_papers(30.0)),
            SpeedRating::NotGiven
        );
        let heavy = LoadRating::of(service(150, Some(148)), TyresOnAxle::Two, load(1000.0));
        assert_eq!(
            heavy.sentence(TyresOnAxle::Two, load(1000.0)),
            "what load index 150 stands for is unknown here; compare it with the axle load of 1000 kg"
        );
    }

    #[test]
    fn twin_tyres_carry_by_the_index_behind_the_slash() {
        let rating = |tyres, kg| LoadRating::of(service(104, Some(102)), tyres, load(kg));
        let carried_kg = 1800.0;
        assert_eq!(
            rating(TyresOnAxle::Two, 1800.0),
            LoadRating::Enough { carried_kg }
        );
        assert_eq!(
            rating(TyresOnAxle::Two, 1800.5),
            LoadRating::TooLittle { carried_kg }
        );
        let carried_kg = 3400.0;
        assert_eq!(
            rating(TyresOnAxle::Four, 3400.0),
            LoadRating::Enough { carried_kg }
        );
        let single = LoadRating::of(service(104, None), TyresOnAxle::Four, load(1800.0));
        assert_eq!(single, LoadRating::NotGiven);
        assert_eq!(
            LoadRating::of(None, TyresOnAxle::Two, load(900.0)),
            LoadRating::NotGiven
        );
    }
}
