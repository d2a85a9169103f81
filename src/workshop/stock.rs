//! The shims that can be had, and which of them to stack.

use super::quantity::ShimThickness;
use super::shim::Band;
use super::sizes::Sizes;
use std::collections::BTreeMap;

/// Nanometres in a millimetre: shims are added in whole numbers.
pub(super) const NM_PER_MM: f64 = 1e6;

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

/// How many shims one place may have: 1 to 10.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StackedShims(u8);

impl StackedShims {
    /// One alone, as some procedures demand.
    pub const ONE: Self = Self(1);

    /// The most that can be.
    pub const MOST: u8 = 10;

    /// So many; none where no place has as many.
    pub fn new(count: u8) -> Option<Self> {
        (1..=Self::MOST).contains(&count).then_some(Self(count))
    }

    /// How many.
    pub fn count(self) -> u8 {
        self.0
    }
}

impl Stock {
    /// These sizes, of which as many may be stacked.
    pub fn new(sizes: &Sizes, most: StackedShims) -> Self {
        let thickest_first = sizes.as_slice().iter().rev().copied();
        Self {
            sizes: thickest_first.collect(),
            most: most.count(),
        }
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

pub(super) fn nm(mm: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "below 1e9 mm")]
    let nm = (mm * NM_PER_MM).round() as i64;
    nm
}

pub(super) fn as_f64(nm: i64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "below 2^53")]
    let number = nm as f64;
    number
}
