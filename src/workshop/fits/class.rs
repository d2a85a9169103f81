//! The ISO 286 tolerance classes of shafts and bores that the tables have.

use crate::gearing::quoted;
use std::fmt;
use std::str::FromStr;

/// A tolerance class of a shaft, which is spelled small.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum ShaftClass {
    /// `h6`: never above the nominal size.
    H6,
    /// `j6`.
    J6,
    /// `js6`: as much above as below.
    Js6,
    /// `k5`.
    K5,
    /// `k6`.
    K6,
    /// `m5`.
    M5,
    /// `m6`.
    M6,
    /// `n6`.
    N6,
    /// `p6`: the tightest.
    P6,
}

/// A tolerance class of a bore, which is spelled large.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum BoreClass {
    /// `H7`: never below the nominal size.
    H7,
    /// `J7`.
    J7,
    /// `K7`.
    K7,
    /// `M7`.
    M7,
    /// `N7`.
    N7,
    /// `P7`: the tightest.
    P7,
}

/// Why a text names no class. Small letters are shafts and large ones bores, so one is never read as the other.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("\"{typed}\" is no class of a {of}: {classes}; shafts have small letters, bores capitals")]
pub struct NoClass {
    typed: String,
    of: &'static str,
    classes: String,
}

impl ShaftClass {
    /// All of them, the loosest first.
    pub const ALL: [Self; 9] = [
        Self::H6,
        Self::J6,
        Self::Js6,
        Self::K5,
        Self::K6,
        Self::M5,
        Self::M6,
        Self::N6,
        Self::P6,
    ];

    /// Its spelling: `k6`.
    pub fn word(self) -> &'static str {
        match self {
            Self::H6 => "h6",
            Self::J6 => "j6",
            Self::Js6 => "js6",
            Self::K5 => "k5",
            Self::K6 => "k6",
            Self::M5 => "m5",
            Self::M6 => "m6",
            Self::N6 => "n6",
            Self::P6 => "p6",
        }
    }
}

impl BoreClass {
    /// All of them, the loosest first.
    pub const ALL: [Self; 6] = [Self::H7, Self::J7, Self::K7, Self::M7, Self::N7, Self::P7];

    /// Its spelling: `K7`.
    pub fn word(self) -> &'static str {
        match self {
            Self::H7 => "H7",
            Self::J7 => "J7",
            Self::K7 => "K7",
            Self::M7 => "M7",
            Self::N7 => "N7",
            Self::P7 => "P7",
        }
    }
}

impl fmt::Display for ShaftClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

impl fmt::Display for BoreClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

impl FromStr for ShaftClass {
    type Err = NoClass;

    fn from_str(text: &str) -> Result<Self, NoClass> {
        named(text, "shaft", &Self::ALL, Self::word)
    }
}

impl FromStr for BoreClass {
    type Err = NoClass;

    fn from_str(text: &str) -> Result<Self, NoClass> {
        named(text, "bore", &Self::ALL, Self::word)
    }
}

fn named<T: Copy>(
    text: &str,
    of: &'static str,
    all: &[T],
    word: fn(T) -> &'static str,
) -> Result<T, NoClass> {
    let found = all.iter().find(|class| word(**class) == text.trim());
    found.copied().ok_or_else(|| {
        let words: Vec<&str> = all.iter().map(|class| word(*class)).collect();
        NoClass {
            typed: quoted(text),
            of,
            classes: words.join(", "),
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_reads_back_from_its_spelling() {
        for class in ShaftClass::ALL {
            assert_eq!(class.to_string().parse(), Ok(class));
        }
        for class in BoreClass::ALL {
            assert_eq!(format!(" {class} ").parse(), Ok(class));
        }
    }

    #[test]
    fn a_bore_is_never_read_as_a_shaft() {
        let error = "K7".parse::<ShaftClass>().unwrap_err().to_string();
        let says = "\"K7\" is no class of a shaft: h6, j6, js6, k5, k6, m5, m6, n6, p6; shafts have small letters, bores capitals";
        assert_eq!(error, says);
        assert!("K6".parse::<ShaftClass>().is_err() && "k7".parse::<BoreClass>().is_err());
    }
}
