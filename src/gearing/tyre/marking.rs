//! The markings behind a tyre size, and which of them are kept.
//!
//! Kept is what tells the purpose of the tyre, and its service description. Everything else must at
//! least be known, so that nothing that changes the tyre ("cross-ply", a second size) is passed over
//! in silence.

use super::super::number::quoted;
use super::service::{LoadIndex, ServiceDescription, SpeedSymbol};
use super::size::Suffix;
use super::size_error::TyreSizeError;

/// Markings that say nothing about gearing. Common practice, no source.
const PASSED_OVER: &[&str] = &[
    "*",
    "3PMSF",
    "CP",
    "EL",
    "EXTRA",
    "FLAT",
    "FR",
    "FRONT",
    "HL",
    "LOAD",
    "LR",
    "M&S",
    "M+S",
    "M-S",
    "M/S",
    "MFS",
    "MS",
    "RANGE",
    "REAR",
    "REINF",
    "REINFORCED",
    "RF",
    "RFT",
    "ROF",
    "RUN",
    "RUNFLAT",
    "SL",
    "SSR",
    "TL",
    "TT",
    "TUBE",
    "TUBELESS",
    "TYPE",
    "XL",
];

/// What is kept of the markings behind a size.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Markings {
    pub(super) purpose: Option<Suffix>,
    pub(super) service: Option<ServiceDescription>,
}

impl Markings {
    /// The markings in `tail`, which is upper case; the first of a kind where there are several.
    ///
    /// A second service description tells the same tyre's other one, as in
    /// `156/150L (154/150M)`.
    ///
    /// # Errors
    /// When something in it is not a known marking, or nearly a service description.
    pub(super) fn of(tail: &str) -> Result<Self, TyreSizeError> {
        let tail = tail.replace(" PR", "PR").replace(" PLY", "PLY");
        let between = |c: char| c == ' ' || matches!(c, '(' | ')' | ',' | ';');
        let mut markings = tail.split(between).filter(|m| !m.is_empty()).peekable();
        let mut kept = Self::default();
        while let Some(marking) = markings.next() {
            let (purpose, rest) = split_suffix(marking);
            kept.purpose = kept.purpose.or(purpose);
            let rest = rest.strip_prefix('/').unwrap_or(rest);
            let Some(indices) = Indices::before_symbol(rest) else {
                if rest.is_empty() || is_passed_over(rest) {
                    continue;
                }
                return Err(unknown(marking));
            };
            let apart = if indices.symbol.is_empty() {
                markings.next_if(|next| is_symbol_apart(next))
            } else {
                None
            };
            let service = indices.description(apart.unwrap_or(indices.symbol))?;
            kept.service = kept
                .service
                .or(Some(service.ok_or_else(|| unknown(marking))?));
        }
        Ok(kept)
    }
}

fn unknown(marking: &str) -> TyreSizeError {
    TyreSizeError::UnknownMarking {
        marking: quoted(marking),
    }
}

/// The purpose a marking names and what is written on to it, as in `C109/107R` and `LT/D`.
fn split_suffix(marking: &str) -> (Option<Suffix>, &str) {
    const SPELLINGS: [(&str, Suffix); 4] = [
        ("M/C", Suffix::Motorcycle),
        ("MC", Suffix::Motorcycle),
        ("LT", Suffix::LightTruck),
        ("C", Suffix::Commercial),
    ];
    for (spelling, suffix) in SPELLINGS {
        if let Some(rest) = marking.strip_prefix(spelling)
            && !rest.starts_with(|c: char| c.is_alphabetic())
        {
            return (Some(suffix), rest);
        }
    }
    (None, marking)
}

/// Whether `marking` says nothing that is kept.
fn is_passed_over(marking: &str) -> bool {
    PASSED_OVER.contains(&marking) || is_letter(marking) || is_ply_rating(marking)
}

/// A load range such as `E`.
fn is_letter(marking: &str) -> bool {
    marking.len() == 1 && marking.starts_with(|c: char| c.is_ascii_uppercase())
}

/// Whether a letter that stands alone behind a load index is its speed symbol, as in `91 T`.
///
/// Common practice, no source: B to G are load ranges of light trucks, for as speed symbols they
/// would mean 50 to 90 km/h.
fn is_symbol_apart(marking: &str) -> bool {
    is_letter(marking) && marking.parse::<SpeedSymbol>().is_ok() && marking > "G"
}

/// `8PR` and `10PLY`.
fn is_ply_rating(marking: &str) -> bool {
    let digits = ["PR", "PLY"]
        .iter()
        .find_map(|unit| marking.strip_suffix(unit));
    digits.is_some_and(|digits| matches!(digits.len(), 1..=2) && digits.parse::<u8>().is_ok())
}

/// What looks like a service description, taken apart: `109` `107` `R`.
struct Indices<'a> {
    single: LoadIndex,
    dual: Option<LoadIndex>,
    symbol: &'a str,
}

impl<'a> Indices<'a> {
    /// The parts of `91T`, `109/107R`, `120A8` or `91`; none where `marking` is nothing like it.
    fn before_symbol(marking: &'a str) -> Option<Self> {
        let is_of_indices = |c: char| c.is_ascii_digit() || c == '/';
        let symbol_at = marking.find(|c| !is_of_indices(c)).unwrap_or(marking.len());
        let (indices, symbol) = marking.split_at(symbol_at);
        let is_like_a_symbol = match symbol.as_bytes() {
            [] => true,
            [letter] => letter.is_ascii_uppercase(),
            [b'A', digit] => digit.is_ascii_digit(),
            _ => false,
        };
        let index = |digits: &str| {
            let number = (digits.len() <= 3).then(|| digits.parse().ok())?;
            LoadIndex::new(number?).ok()
        };
        let (single, dual) = match indices.split_once('/') {
            Some((single, dual)) => (index(single)?, Some(index(dual)?)),
            None => (index(indices)?, None),
        };
        is_like_a_symbol.then_some(Self {
            single,
            dual,
            symbol,
        })
    }

    /// The description with the speed symbol that `symbol` spells; none where a number stands alone
    /// that could be a rim.
    ///
    /// # Errors
    /// When `symbol` is none.
    fn description(&self, symbol: &str) -> Result<Option<ServiceDescription>, TyreSizeError> {
        let symbol = match symbol {
            "" => None,
            letters => Some(letters.parse::<SpeedSymbol>()?),
        };
        Ok(ServiceDescription::new(self.single, self.dual, symbol).ok())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The purpose and the service description that are kept of `tail`, as they are spelled.
    fn kept(tail: &str) -> (Option<Suffix>, String) {
        let Markings { purpose, service } = Markings::of(tail).unwrap();
        (purpose, service.map_or_else(String::new, |s| s.to_string()))
    }

    #[test]
    fn what_says_nothing_about_the_tyre_is_passed_over() {
        for tail in [
            "",
            " XL",
            " RF",
            " TL M+S 3PMSF",
            " REINFORCED",
            " EXTRA LOAD",
            "/E",
            "/XL",
            " 8PR",
            " 8 PR",
            " (6PR) TT",
            " LOAD RANGE E",
            " *",
        ] {
            assert_eq!(Markings::of(tail), Ok(Markings::default()), "{tail:?}");
        }
    }

    #[test]
    fn the_service_description_is_kept_however_it_is_written() {
        for (tail, spelled) in [
            (" 91T", "91T"),
            ("/91T", "91T"),
            (" (73W)", "73W"),
            ("(102Y)", "102Y"),
            (" 109/107R", "109/107R"),
            (" 91 T", "91T"),
            (" 156/150 L", "156/150L"),
            (" 91", "91"),
            (" 94V XL / M+S", "94V"),
            (" 120A8", "120A8"),
            (" 091T", "91T"),
            (" 20J", "20J"),
            (" 5A8", "5A8"),
            (" 156/150L (154/150M)", "156/150L"),
            // A load range, for no road tyre is made for 70 km/h.
            (" 120/116 E", "120/116"),
            (" E 120/116S", "120/116S"),
        ] {
            assert_eq!(kept(tail), (None, spelled.to_owned()), "{tail:?}");
        }
    }

    #[test]
    fn the_purpose_of_the_tyre_is_kept() {
        for (tail, purpose, service) in [
            ("C", Suffix::Commercial, ""),
            ("C 109/107R", Suffix::Commercial, "109/107R"),
            ("C109/107R", Suffix::Commercial, "109/107R"),
            ("LT/D 109Q", Suffix::LightTruck, "109Q"),
            ("M/C(73W) TL", Suffix::Motorcycle, "73W"),
            (" 67H MC", Suffix::Motorcycle, "67H"),
        ] {
            assert_eq!(kept(tail), (Some(purpose), service.to_owned()), "{tail:?}");
        }
    }

    #[test]
    fn a_letter_that_is_no_speed_symbol_is_refused_as_such() {
        for tail in [" 91X", " 91I", " 104/102A", " 120A9"] {
            let sentence = Markings::of(tail).unwrap_err().to_string();
            assert!(sentence.contains("is not a speed symbol"), "{sentence}");
        }
    }

    #[test]
    fn what_could_change_the_tyre_is_not_passed_over() {
        for tail in [
            " CROSS-PLY",
            " / 205/55 R 16",
            " 205/55R16",
            "/16",
            " 16.5",
            " 999T",
            " 1/2/3",
            "CX",
            " MICHELIN",
            "-91T",
            " 15",
            " 104/15",
            " 91TT",
            "/91/",
        ] {
            assert!(Markings::of(tail).is_err(), "{tail:?}");
        }
    }
}
