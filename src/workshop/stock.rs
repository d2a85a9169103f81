//! The shims that can be had, and which of them to stack.

use super::quantity::ShimThickness;
use super::shim::Band;
use crate::gearing::{OutOfRange, parse_decimal, quoted};
use std::collections::BTreeMap;

/// Nanometres in a millimetre: shims are added in whole numbers.
const NM_PER_MM: f64 = 1e6;

/// The sizes that can be had, each as often as wanted, and how many may be stacked.
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    sizes: Vec<ShimThickness>,
    most: u8,
}

/// Shims in one place, the thickest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Stack {
    /// Their sizes.
    pub shims: Vec<ShimThickness>,
    /// Their thickness together, in mm.
    pub thickness_mm: f64,
    /// Whether that lies in the band that was wanted.
    pub fits: bool,
}

/// Why a text is no stock of shims.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum StockError {
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

/// The most shims in one place.
pub(crate) const MOST_STACKED: u8 = 10;

impl Stock {
    /// These sizes, of which as many may be stacked; none where there is none, or none or too many may be.
    pub fn new(mut sizes: Vec<ShimThickness>, most: u8) -> Option<Self> {
        sizes.retain(|size| size.mm() > 0.0);
        sizes.sort_by(|a, b| b.mm().total_cmp(&a.mm()));
        sizes.dedup();
        let is_some = !sizes.is_empty() && (1..=MOST_STACKED).contains(&most);
        is_some.then_some(Self { sizes, most })
    }

    /// The stack for a band: of those that lie in it the nearest to its middle, of equally near ones that of
    /// fewer shims; where none does, the nearest, which does not fit.
    ///
    /// No shim at all counts as a stack of 0 mm.
    pub fn chosen(&self, wanted: Band) -> Stack {
        let stacks = self.stacks(wanted.most_mm);
        let off_nm = |sum: i64| (as_f64(sum) - wanted.middle_mm() * NM_PER_MM).abs();
        let mut best = 0;
        for (sum, stacked) in &stacks {
            let nearer = off_nm(best) - off_nm(*sum);
            let is_equal = nearer.abs() <= ROUNDING_NM;
            let is_better = match (is_within(wanted, *sum), is_within(wanted, best)) {
                (true, false) => true,
                (false, true) => false,
                _ if is_equal => stacks.get(&best).is_some_and(|b| stacked.count < b.count),
                _ => nearer > 0.0,
            };
            if is_better {
                best = *sum;
            }
        }
        Stack {
            shims: self.shims_of(&stacks, best),
            thickness_mm: as_f64(best) / NM_PER_MM,
            fits: is_within(wanted, best),
        }
    }

    /// The thicknesses that can be stacked next below and above one, in mm; none where there is none.
    pub fn neighbours_mm(&self, thickness_mm: f64) -> [Option<f64>; 2] {
        let at = nm(thickness_mm);
        let stacks = self.stacks(thickness_mm);
        let below = stacks.range(..at).next_back();
        let above = stacks.range(at + 1..).next();
        [below, above].map(|found| found.map(|(sum, _)| as_f64(*sum) / NM_PER_MM))
    }

    /// Every thickness in nm that can be stacked, none included, with the last of the fewest shims that make
    /// it; nothing that is more than a shim above `most_mm`.
    fn stacks(&self, most_mm: f64) -> BTreeMap<i64, Stacked> {
        let thickest = self.sizes.first().map_or(0.0, |size| size.mm());
        let end = nm(most_mm.max(0.0) + thickest);
        let mut found = BTreeMap::from([(0, Stacked::NOTHING)]);
        let mut last = vec![0];
        for count in 1..=self.most {
            let mut next = Vec::new();
            for sum in &last {
                for (size, thickness) in self.sizes.iter().enumerate() {
                    let sum = sum + nm(thickness.mm());
                    if sum <= end && !found.contains_key(&sum) {
                        found.insert(sum, Stacked { count, size });
                        next.push(sum);
                    }
                }
            }
            last = next;
        }
        found
    }

    /// The shims of a stack, the thickest first.
    fn shims_of(&self, stacks: &BTreeMap<i64, Stacked>, mut sum: i64) -> Vec<ShimThickness> {
        let mut shims = Vec::new();
        while let Some(stacked) = stacks.get(&sum).filter(|stacked| stacked.count > 0) {
            let shim = self.sizes[stacked.size];
            sum -= nm(shim.mm());
            shims.push(shim);
        }
        shims.sort_by(|a, b| b.mm().total_cmp(&a.mm()));
        shims
    }
}

/// How a thickness was come to.
#[derive(Debug, Clone, Copy)]
struct Stacked {
    /// How many shims it takes.
    count: u8,
    /// The last of them, by its place among the sizes.
    size: usize,
}

impl Stacked {
    const NOTHING: Self = Self { count: 0, size: 0 };
}

/// What rounding may leave of a thickness, in nm: half of that is nobody's.
const ROUNDING_NM: f64 = 0.5;

fn is_within(wanted: Band, nm: i64) -> bool {
    let mm = as_f64(nm) / NM_PER_MM;
    let rounding = ROUNDING_NM / NM_PER_MM;
    (wanted.least_mm - rounding..=wanted.most_mm + rounding).contains(&mm)
}

fn nm(mm: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "below 1e9 mm")]
    let nm = (mm * NM_PER_MM).round() as i64;
    nm
}

fn as_f64(nm: i64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "below 2^53")]
    let number = nm as f64;
    number
}

/// The sizes that a text lists, parted by commas or blanks, and rows as `0.65 to 1.40 by 0.05`.
///
/// # Errors
/// When there is none, one is none, or there are too many.
pub fn parse_sizes(text: &str) -> Result<Vec<ShimThickness>, StockError> {
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || matches!(c, ',' | ';'))
        .filter(|word| !word.is_empty())
        .collect();
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
            return Err(StockError::TooMany(sizes.len()));
        }
    }
    if sizes.is_empty() {
        return Err(StockError::NoSizes);
    }
    Ok(sizes)
}

fn size(word: &str) -> Result<ShimThickness, StockError> {
    let mm = parse_decimal(word).ok();
    let mm = mm.ok_or_else(|| StockError::NotASize(quoted(word)))?;
    Ok(ShimThickness::from_mm(mm)?)
}

fn row(
    from: ShimThickness,
    to: ShimThickness,
    by: ShimThickness,
) -> Result<Vec<ShimThickness>, StockError> {
    let (from, to, by) = (nm(from.mm()), nm(to.mm()), nm(by.mm()));
    if by <= 0 || from > to {
        return Err(StockError::NoRow);
    }
    let count = usize::try_from((to - from) / by).unwrap_or(usize::MAX);
    if count >= MOST_SIZES {
        return Err(StockError::TooMany(count.saturating_add(1)));
    }
    let mut sizes = Vec::new();
    let mut at = from;
    while at <= to {
        sizes.push(ShimThickness::from_mm(as_f64(at) / NM_PER_MM)?);
        at += by;
    }
    Ok(sizes)
}
