//! The markings behind a tyre size, and which of them are kept.
//!
//! Only what tells the purpose of the tyre is kept. Everything else must at least be known, so
//! that nothing that changes the tyre ("cross-ply", a second size) is passed over in silence.

use super::super::number::quoted;
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

/// The purpose that the markings in `tail` name, the first where there are several.
///
/// `tail` is upper case.
///
/// # Errors
/// When something in it is not a known marking.
pub(super) fn purpose(tail: &str) -> Result<Option<Suffix>, TyreSizeError> {
    let tail = tail.replace(" PR", "PR").replace(" PLY", "PLY");
    let mut kept = None;
    let between = |c: char| c == ' ' || matches!(c, '(' | ')' | ',' | ';');
    for marking in tail.split(between).filter(|marking| !marking.is_empty()) {
        let (suffix, rest) = split_suffix(marking);
        kept = kept.or(suffix);
        if !(rest.is_empty() || is_passed_over(rest)) {
            return Err(TyreSizeError::UnknownMarking {
                marking: quoted(marking),
            });
        }
    }
    Ok(kept)
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

/// Whether `marking`, also one behind a slash, says nothing about gearing.
fn is_passed_over(marking: &str) -> bool {
    let marking = marking.strip_prefix('/').unwrap_or(marking);
    marking.is_empty()
        || PASSED_OVER.contains(&marking)
        || is_letter(marking)
        || is_ply_rating(marking)
        || is_service_description(marking)
}

/// A load range such as `E`, and a speed symbol written apart.
fn is_letter(marking: &str) -> bool {
    marking.len() == 1 && marking.starts_with(|c: char| c.is_ascii_uppercase())
}

/// `8PR` and `10PLY`.
fn is_ply_rating(marking: &str) -> bool {
    let digits = ["PR", "PLY"]
        .iter()
        .find_map(|unit| marking.strip_suffix(unit));
    digits.is_some_and(|digits| matches!(digits.len(), 1..=2) && digits.parse::<u8>().is_ok())
}

/// `91T`, `109/107R`, `73W`, `120A8`, or the load index alone: above 30, so that it is no rim code.
fn is_service_description(marking: &str) -> bool {
    let symbol_at = marking
        .find(|c: char| c.is_ascii_uppercase())
        .unwrap_or(marking.len());
    let (indices, symbol) = marking.split_at(symbol_at);
    let is_symbol = match symbol.as_bytes() {
        [] | [_] => true,
        [b'A', digit] => digit.is_ascii_digit(),
        _ => false,
    };
    let is_index = |index: &str| {
        (2..=3).contains(&index.len())
            && index
                .parse::<u16>()
                .is_ok_and(|index| index <= 279 && (index > 30 || !symbol.is_empty()))
    };
    is_symbol && indices.split('/').count() <= 2 && indices.split('/').all(is_index)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_says_nothing_about_gearing_is_passed_over() {
        for tail in [
            "",
            " 91T",
            " (73W)",
            " 109/107R",
            " 91 T",
            " 91",
            " XL",
            " RF",
            " TL M+S 3PMSF",
            " REINFORCED",
            " EXTRA LOAD",
            "/E",
            "/XL",
            " 94V XL / M+S",
            " 8PR",
            " 8 PR",
            " (6PR) TT",
            " LOAD RANGE E",
            " 120A8",
            "(102Y)",
            " *",
        ] {
            assert_eq!(purpose(tail), Ok(None), "{tail:?}");
        }
    }

    #[test]
    fn the_purpose_of_the_tyre_is_kept() {
        for (tail, kept) in [
            ("C", Suffix::Commercial),
            ("C 109/107R", Suffix::Commercial),
            ("C109/107R", Suffix::Commercial),
            ("LT/D 109Q", Suffix::LightTruck),
            ("M/C(73W) TL", Suffix::Motorcycle),
            (" 67H MC", Suffix::Motorcycle),
        ] {
            assert_eq!(purpose(tail), Ok(Some(kept)), "{tail:?}");
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
        ] {
            assert!(purpose(tail).is_err(), "{tail:?}");
        }
    }
}
