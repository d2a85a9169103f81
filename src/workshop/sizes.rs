//! The sizes of shims that can be had, as they are typed and spelled.

use super::quantity::ShimThickness;
use super::stock::{NM_PER_MM, as_f64, nm};
use super::typed::{length_in, unit_of};
use crate::gearing::{OutOfRange, quoted};
use crate::units::LengthUnit;

/// Why a text is no list of sizes.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SizesError {
    /// Nothing that can be had.
    #[error("list the sizes that can be had, as 0.10 0.15 0.20 or 0.65 to 1.40 by 0.05")]
    NoSizes,
    /// Something that is no size.
    #[error("\"{0}\" is not the size of a shim, as 0.65 or 0.65 to 1.40 by 0.05")]
    NotASize(String),
    /// A size that no shim has.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// A row of sizes that goes nowhere.
    #[error("a row of sizes goes from the thinner to the thicker by a step above 0")]
    NoRow,
    /// Too many to choose from.
    #[error("at most {MOST_SIZES} sizes can be had, not {0}")]
    TooMany(usize),
}

/// The most sizes that can be chosen from.
const MOST_SIZES: usize = 200;

/// Sizes that can be had, each above 0, in rising order: 1 to 200 of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Sizes(Vec<ShimThickness>);

impl Sizes {
    /// These sizes, each once.
    ///
    /// # Errors
    /// When there is none, or too many.
    pub fn new(mut sizes: Vec<ShimThickness>) -> Result<Self, SizesError> {
        sizes.retain(|size| size.mm() > 0.0);
        sizes.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
        sizes.dedup_by_key(|size| nm(size.mm()));
        match sizes.len() {
            0 => Err(SizesError::NoSizes),
            1..=MOST_SIZES => Ok(Self(sizes)),
            count => Err(SizesError::TooMany(count)),
        }
    }

    /// All of them, the thinnest first.
    pub fn as_slice(&self) -> &[ShimThickness] {
        &self.0
    }
}

/// The sizes that a text lists in a unit, parted by commas or blanks, and rows as `0.65 to 1.40 by 0.05`;
/// a unit behind all of them decides.
///
/// # Errors
/// When there is none, one is none, or there are too many.
pub fn parse_sizes(text: &str, unit: LengthUnit) -> Result<Sizes, SizesError> {
    let (text, size_mm) = unit_of(text).unwrap_or_else(|| (text.to_owned(), unit.to_mm(1.0)));
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || c == ';')
        .map(|word| word.trim_end_matches(','))
        .filter(|word| !word.is_empty())
        .collect();
    let size = |word: &str| -> Result<ShimThickness, SizesError> {
        let Ok(mm) = length_in(word, size_mm) else {
            return Err(SizesError::NotASize(quoted(word)));
        };
        Ok(ShimThickness::from_mm(mm)?)
    };
    let mut sizes = Vec::new();
    let mut rest = &words[..];
    while let [first, more @ ..] = rest {
        if let ["to", last, "by", step, behind @ ..] = more {
            sizes.extend(row(size(first)?, size(last)?, size(step)?)?);
            rest = behind;
        } else {
            sizes.push(size(first)?);
            rest = more;
        }
        if sizes.len() > MOST_SIZES {
            return Err(SizesError::TooMany(sizes.len()));
        }
    }
    Sizes::new(sizes)
}

fn row(
    from: ShimThickness,
    to: ShimThickness,
    by: ShimThickness,
) -> Result<Vec<ShimThickness>, SizesError> {
    let (from, to, by) = (nm(from.mm()), nm(to.mm()), nm(by.mm()));
    if by <= 0 || from > to {
        return Err(SizesError::NoRow);
    }
    let count = usize::try_from((to - from) / by).unwrap_or(usize::MAX);
    if count >= MOST_SIZES {
        return Err(SizesError::TooMany(count.saturating_add(1)));
    }
    let mut sizes = Vec::new();
    let mut at = from;
    while at <= to {
        sizes.push(ShimThickness::from_mm(as_f64(at) / NM_PER_MM)?);
        at += by;
    }
    Ok(sizes)
}

/// From so many sizes on, of which each is as much thicker than the last, they are spelled as a row.
const ROW: usize = 4;

/// Sizes as they are typed: one by one, and rows as `0.65 to 1.40 by 0.05`.
pub(super) fn sizes_text(sizes: &Sizes, unit: LengthUnit) -> String {
    let sizes: Vec<i64> = sizes.0.iter().map(|size| nm(size.mm())).collect();
    let figure = |nm: i64| unit.figure(as_f64(nm) / NM_PER_MM);
    let mut texts = Vec::new();
    let mut rest = &sizes[..];
    while let [first, more @ ..] = rest {
        let step = more.first().map_or(0, |next| next - first);
        let goes_on = rest.windows(2).take_while(|pair| pair[1] - pair[0] == step);
        let count = goes_on.count() + 1;
        if count < ROW {
            texts.push(figure(*first));
            rest = more;
        } else {
            let last = figure(rest[count - 1]);
            texts.push(format!("{} to {last} by {}", figure(*first), figure(step)));
            rest = &rest[count..];
        }
    }
    texts.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_spelled_as_they_are_typed() {
        let both_ways = |text: &str, unit| sizes_text(&parse_sizes(text, unit).unwrap(), unit);
        for text in [
            "0.10 0.12 0.15 0.18 0.30 0.40 0.50",
            "0.65 to 1.40 by 0.05",
            "0.10 0.65 to 1.40 by 0.05 2.00",
        ] {
            assert_eq!(both_ways(text, LengthUnit::Millimetre), text);
        }
        let inches = "0.020 to 0.040 by 0.002";
        assert_eq!(both_ways(inches, LengthUnit::Inch), inches);
        let thousandths = parse_sizes("20 to 40 by 2 thou", LengthUnit::Millimetre).unwrap();
        assert_eq!(sizes_text(&thousandths, LengthUnit::Inch), inches);
    }
}
