//! The service description behind a tyre size: how much the tyre carries, and how fast.
//!
//! It says nothing about gearing, so no figure depends on it; what is typed is kept.

use std::fmt;
use std::str::FromStr;

use super::super::number::quoted;

/// A load index, 0 to 279: the number that stands for the mass a tyre carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LoadIndex(u16);

/// Why a number, or a number without a speed symbol, is not the service description of a tyre.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ServiceError {
    /// Beyond the table.
    #[error("a load index must be a whole number from 0 to 279, not {0}")]
    LoadIndex(u16),
    /// A load index that could be a rim.
    #[error("behind a load index up to 30 stands its speed symbol, as in {0}J")]
    NoSymbol(LoadIndex),
    /// Letters that are no speed symbol.
    #[error(
        "\"{0}\" is not a speed symbol: it must be A1 to A8, or a letter from B to Y other than \
         I, O and X"
    )]
    Symbol(String),
}

/// The first index of [`MASSES_KG`].
const FIRST_KNOWN: u16 = 60;

/// The mass in kg that each load index from 60 to 126 stands for.
///
/// # Source
/// UN R30, annex on load indices (from memory).
const MASSES_KG: [u16; 67] = [
    250, 257, 265, 272, 280, 290, 300, 307, 315, 325, // 60 to 69
    335, 345, 355, 365, 375, 387, 400, 412, 425, 437, // 70 to 79
    450, 462, 475, 487, 500, 515, 530, 545, 560, 580, // 80 to 89
    600, 615, 630, 650, 670, 690, 710, 730, 750, 775, // 90 to 99
    800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030, // 100 to 109
    1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, // 110 to 119
    1400, 1450, 1500, 1550, 1600, 1650, 1700, // 120 to 126
];

impl LoadIndex {
    /// The load index of that number.
    ///
    /// # Errors
    /// When it is above 279, where the table ends.
    pub fn new(number: u16) -> Result<Self, ServiceError> {
        match number {
            0..=279 => Ok(Self(number)),
            _ => Err(ServiceError::LoadIndex(number)),
        }
    }

    /// The number that stands on the tyre.
    pub fn number(self) -> u16 {
        self.0
    }

    /// The most that one tyre carries, in kg; none where it is not known here.
    ///
    /// Known from 60 to 126: an index outside is unknown, never reckoned from its neighbours.
    ///
    /// # Source
    /// UN R30, annex on load indices (from memory).
    ///
    /// # Example
    /// ```
    /// let index = layshaft::gearing::LoadIndex::new(91)?;
    /// assert_eq!(index.mass_kg(), Some(615.0));
    /// # Ok::<(), layshaft::gearing::ServiceError>(())
    /// ```
    pub fn mass_kg(self) -> Option<f64> {
        let place = self.0.checked_sub(FIRST_KNOWN)?;
        MASSES_KG.get(usize::from(place)).copied().map(f64::from)
    }
}

impl fmt::Display for LoadIndex {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

/// A speed symbol: A1 to A8, or a letter from B to Y other than I, O and X.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SpeedSymbol(&'static str);

/// Every speed symbol, with the speed in km/h where it is known.
///
/// # Source
/// UN R30 from F to Y (from memory). For the slower ones no table is at hand.
const SYMBOLS: [(&str, Option<u16>); 29] = [
    ("A1", None),
    ("A2", None),
    ("A3", None),
    ("A4", None),
    ("A5", None),
    ("A6", None),
    ("A7", None),
    ("A8", None),
    ("B", None),
    ("C", None),
    ("D", None),
    ("E", None),
    ("F", Some(80)),
    ("G", Some(90)),
    ("J", Some(100)),
    ("K", Some(110)),
    ("L", Some(120)),
    ("M", Some(130)),
    ("N", Some(140)),
    ("P", Some(150)),
    ("Q", Some(160)),
    ("R", Some(170)),
    ("S", Some(180)),
    ("T", Some(190)),
    ("U", Some(200)),
    ("H", Some(210)),
    ("V", Some(240)),
    ("W", Some(270)),
    ("Y", Some(300)),
];

impl SpeedSymbol {
    /// The letter, with its digit where it has one.
    pub fn as_str(self) -> &'static str {
        self.0
    }

    /// The fastest that the tyre may be driven, in km/h; none where it is not known here.
    ///
    /// # Source
    /// UN R30 (from memory).
    pub fn speed_kmh(self) -> Option<f64> {
        let row = SYMBOLS.iter().find(|(symbol, _)| *symbol == self.0);
        row.and_then(|&(_, kmh)| kmh).map(f64::from)
    }
}

impl FromStr for SpeedSymbol {
    type Err = ServiceError;

    /// The symbol that `text` spells in upper case.
    fn from_str(text: &str) -> Result<Self, ServiceError> {
        let known = SYMBOLS.iter().find(|(symbol, _)| *symbol == text);
        known
            .map(|&(symbol, _)| Self(symbol))
            .ok_or_else(|| ServiceError::Symbol(quoted(text)))
    }
}

impl fmt::Display for SpeedSymbol {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

/// Load index and speed symbol as they stand behind a size: `91T`, `104/102T`, `91`.
///
/// One that exists can be spelled behind a size and read again: where the symbol is not given, no
/// index is so small that it could be a rim.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct ServiceDescription {
    load_index: LoadIndex,
    dual_load_index: Option<LoadIndex>,
    speed_symbol: Option<SpeedSymbol>,
}

impl ServiceDescription {
    /// The highest load index that could be a rim code.
    const HIGHEST_LIKE_A_RIM: LoadIndex = LoadIndex(30);

    /// The description with that load index, the one that holds for twin wheels where there is
    /// one, and that speed symbol.
    ///
    /// # Errors
    /// When a load index up to 30 stands without a speed symbol.
    pub fn new(
        load_index: LoadIndex,
        dual_load_index: Option<LoadIndex>,
        speed_symbol: Option<SpeedSymbol>,
    ) -> Result<Self, ServiceError> {
        let mut indices = [Some(load_index), dual_load_index].into_iter().flatten();
        let like_a_rim = indices.find(|index| *index <= Self::HIGHEST_LIKE_A_RIM);
        match like_a_rim {
            Some(index) if speed_symbol.is_none() => Err(ServiceError::NoSymbol(index)),
            _ => Ok(Self {
                load_index,
                dual_load_index,
                speed_symbol,
            }),
        }
    }

    /// The load index of a tyre that stands alone on its end of the axle.
    pub fn load_index(self) -> LoadIndex {
        self.load_index
    }

    /// The load index of each of two tyres side by side, as behind the slash of `104/102T`.
    pub fn dual_load_index(self) -> Option<LoadIndex> {
        self.dual_load_index
    }

    /// The speed symbol behind the load index.
    pub fn speed_symbol(self) -> Option<SpeedSymbol> {
        self.speed_symbol
    }
}

impl fmt::Display for ServiceDescription {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.load_index)?;
        if let Some(dual) = self.dual_load_index {
            write!(f, "/{dual}")?;
        }
        match self.speed_symbol {
            Some(symbol) => write!(f, "{symbol}"),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_load_index_ends_where_the_table_ends() {
        assert!(LoadIndex::new(0).is_ok() && LoadIndex::new(279).is_ok());
        let sentence = LoadIndex::new(280).unwrap_err().to_string();
        assert_eq!(
            sentence,
            "a load index must be a whole number from 0 to 279, not 280"
        );
    }

    #[test]
    fn the_letters_that_are_no_speed_symbol_are_refused() {
        for text in [
            "A", "A0", "A9", "I", "O", "X", "Z", "ZR", "TT", "t", "", "9",
        ] {
            assert!(text.parse::<SpeedSymbol>().is_err(), "{text:?}");
        }
        for (text, _) in SYMBOLS {
            assert_eq!(text.parse::<SpeedSymbol>().unwrap().to_string(), text);
        }
    }

    #[test]
    fn an_index_that_could_be_a_rim_needs_its_symbol() {
        let index = |number| LoadIndex::new(number).unwrap();
        let symbol = "J".parse().ok();
        assert!(ServiceDescription::new(index(30), None, None).is_err());
        assert!(ServiceDescription::new(index(91), Some(index(30)), None).is_err());
        assert!(ServiceDescription::new(index(31), None, None).is_ok());
        assert!(ServiceDescription::new(index(0), Some(index(0)), symbol).is_ok());
    }
}
