//! The mark before the rim: how the tyre is built, in older sizes with its speed symbol.

use super::super::number::quoted;
use super::service::SpeedSymbol;
use super::size::ConstructionMark;
use super::size_error::TyreSizeError;

/// The mark that a separator spells and the speed symbol before it, apart from a bare `/`, `x` or
/// blank.
///
/// A letter before R or B is a speed symbol, as in `185/70 HR 13`; RF is a radial run-flat;
/// `195/65/R15` and `195/65-R15` are radial. Common practice, no source.
pub(super) fn mark(separator: &str) -> Option<(Option<SpeedSymbol>, ConstructionMark)> {
    let letters = separator
        .strip_prefix(['/', '-'])
        .filter(|letters| !letters.is_empty())
        .unwrap_or(separator);
    Some(match letters {
        "ZR" | "ZRF" => (None, ConstructionMark::Zr),
        "R" | "RF" => (None, ConstructionMark::R),
        "D" => (None, ConstructionMark::D),
        "B" => (None, ConstructionMark::B),
        "-" => (None, ConstructionMark::Dash),
        "QR" | "SR" | "TR" | "HR" | "VR" | "WR" | "YR" => {
            (letters[..1].parse().ok(), ConstructionMark::R)
        }
        "HB" | "VB" => (letters[..1].parse().ok(), ConstructionMark::B),
        _ => return None,
    })
}

/// The mark before the rim; a bare separator says nothing, and almost every tyre is radial.
pub(super) fn mark_before_rim(
    separator: &str,
    text: &str,
) -> Result<(Option<SpeedSymbol>, ConstructionMark), TyreSizeError> {
    if let "" | "/" | "X" | "*" = separator {
        return Ok((None, ConstructionMark::R));
    }
    let mut letters = separator.chars();
    let refused = match (letters.next(), letters.next()) {
        (Some(symbol), None) if symbol.is_ascii_uppercase() => {
            TyreSizeError::UnknownConstruction { symbol }
        }
        _ => TyreSizeError::NotASize { size: quoted(text) },
    };
    mark(separator).ok_or(refused)
}
