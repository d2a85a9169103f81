//! The search for tooth pairs: all that come near a wished ratio, the nearest first.

use super::centre::{CentreFit, FixedCentre};
use super::teeth::{TeethLimits, ToothSum};
use crate::gearing::{Ratio, ToothPair, quantity};
use std::cmp::Ordering;

quantity! {
    /// How far a ratio may be off, either way: 0 to 100 % of what is wished.
    RatioTolerance, from_percent, percent, "a tolerance", "between 0 and 100 %",
    |percent| (0.0..=100.0).contains(&percent)
}

/// What is wished of a pair.
#[derive(Debug, Clone, PartialEq)]
pub struct PairWish {
    /// Driven ÷ driving teeth.
    pub ratio: Ratio,
    /// How far off a pair may be.
    pub within: RatioTolerance,
    /// How many teeth each of both gears may have.
    pub teeth: TeethLimits,
    /// How many both have together; any number where there is none.
    pub sum: Option<ToothSum>,
    /// The shafts that they are to fit; where there are none, the shafts may stand as the pair wants it.
    pub centre: Option<FixedCentre>,
}

/// Whether every tooth of one gear meets every tooth of the other, which lets them wear evenly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hunting {
    /// It does: the counts have no common factor.
    Yes,
    /// Only some: the counts share a factor below the smaller of them.
    Partly,
    /// A tooth of the smaller gear meets the same teeth turn by turn: its count divides the larger.
    No,
}

impl Hunting {
    /// What can be said of a pair. A single tooth meets all there are.
    pub fn of(pair: ToothPair) -> Self {
        let [driven, driving] = [pair.driven(), pair.driving()];
        match common_factor(driven, driving) {
            1 => Self::Yes,
            factor if factor == driven.min(driving) => Self::No,
            _ => Self::Partly,
        }
    }

    /// The one word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::Partly => "partly",
            Self::No => "no",
        }
    }
}

/// A pair that comes near enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoundPair {
    /// The teeth.
    pub teeth: ToothPair,
    /// How far its ratio is above what is wished, in per cent of it; below 0 where it is less.
    pub error_percent: f64,
    /// Whether every tooth meets every other.
    pub hunting: Hunting,
    /// What it needs between the shafts, where they are fixed.
    pub fit: Option<CentreFit>,
}

impl FoundPair {
    /// The teeth of both gears together.
    pub fn sum(&self) -> u16 {
        sum(self.teeth)
    }

    /// How much faster than wished the engine turns with it where `engine_rpm` were wished, in rev/min; below
    /// 0 where it turns slower. At a steady road speed the engine goes with the ratio.
    pub fn error_rpm(&self, engine_rpm: f64) -> f64 {
        engine_rpm * self.error_percent / 100.0
    }

    /// The sum of profile shifts; none without fixed shafts, and where no shift lets the gears mesh.
    pub fn profile_shift_sum(&self) -> Option<f64> {
        self.fit?.profile_shift_sum()
    }

    /// Whether its profile shifts can be cut; without fixed shafts it needs none.
    pub fn can_be_cut(&self) -> bool {
        self.fit.is_none_or(CentreFit::can_be_cut)
    }
}

/// Every pair that is as wished, also those that cannot be cut: the least error first, of equal errors the
/// smaller sum.
///
/// # Example
/// ```
/// use layshaft::finders::{PairWish, RatioTolerance, TeethLimits, tooth_pairs};
/// use layshaft::gearing::Ratio;
/// let found = tooth_pairs(&PairWish {
///     ratio: Ratio::from_number(3.8)?,
///     within: RatioTolerance::from_percent(1.0)?,
///     teeth: TeethLimits::new(9, 40)?,
///     sum: None,
///     centre: None,
/// });
/// let nearest = found[0].teeth;
/// assert_eq!((nearest.driven(), nearest.driving()), (38, 10));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn tooth_pairs(wish: &PairWish) -> Vec<FoundPair> {
    let wished = wish.ratio.value();
    let counts = wish.teeth.counts();
    let pairs = counts.flat_map(|driving| {
        let driven = wish.teeth.counts();
        driven.filter_map(move |driven| ToothPair::new(driven, driving).ok())
    });
    let has_sum = |pair: &ToothPair| wish.sum.is_none_or(|wanted| wanted.teeth() == sum(*pair));
    let near = pairs.filter(has_sum).filter_map(|teeth| {
        Some(FoundPair {
            teeth,
            error_percent: error_percent(teeth, wished, wish.within)?,
            hunting: Hunting::of(teeth),
            fit: wish.centre.map(|shafts| shafts.fit(sum(teeth))),
        })
    });
    let mut found: Vec<FoundPair> = near.collect();
    found.sort_by(by_nearness);
    make_equal_what_is_equal(&mut found);
    found.sort_by(by_nearness);
    found
}

/// What rounding leaves between two errors that are the same, in per cent; different pairs are further apart.
const DUST_PERCENT: f64 = 1e-12;

/// How far a pair is off, in per cent; none where that is more than is allowed.
fn error_percent(pair: ToothPair, wished: f64, within: RatioTolerance) -> Option<f64> {
    let error = (pair.ratio() - wished) / wished * 100.0;
    let most = within.percent();
    // A pair that is off by just what is allowed may come out a last digit beyond it.
    (error.abs() <= most + DUST_PERCENT).then(|| error.clamp(-most, most))
}

/// Gives errors the same size that only rounding parts, as those of 39:10 and 41:10 from 4; the least come
/// first.
fn make_equal_what_is_equal(found: &mut [FoundPair]) {
    let mut size = 0.0;
    for pair in found {
        let own = pair.error_percent.abs();
        if own - size <= DUST_PERCENT {
            // A pair that is not off is not a little below, either.
            let is_below = pair.error_percent < 0.0;
            pair.error_percent = if is_below { 0.0 - size } else { size };
        } else {
            size = own;
        }
    }
}

fn by_nearness(one: &FoundPair, other: &FoundPair) -> Ordering {
    let by_error = (one.error_percent.abs()).total_cmp(&other.error_percent.abs());
    by_error
        .then_with(|| one.sum().cmp(&other.sum()))
        .then_with(|| one.teeth.driving().cmp(&other.teeth.driving()))
}

fn sum(pair: ToothPair) -> u16 {
    pair.driven() + pair.driving()
}

fn common_factor(a: u16, b: u16) -> u16 {
    match b {
        0 => a,
        b => common_factor(b, a % b),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pair(driven: u16, driving: u16) -> ToothPair {
        ToothPair::new(driven, driving).unwrap()
    }

    fn found(ratio: f64, percent: f64, limits: (u16, u16)) -> Vec<(u16, u16, f64)> {
        let found = tooth_pairs(&PairWish {
            ratio: Ratio::from_number(ratio).unwrap(),
            within: RatioTolerance::from_percent(percent).unwrap(),
            teeth: TeethLimits::new(limits.0, limits.1).unwrap(),
            sum: None,
            centre: None,
        });
        let told = found.iter();
        told.map(|p| (p.teeth.driven(), p.teeth.driving(), p.error_percent))
            .collect()
    }

    #[test]
    fn a_common_factor_below_the_smaller_count_lets_a_pair_hunt_in_part() {
        for (driven, driving, hunting) in [
            (30, 11, Hunting::Yes),
            (12, 18, Hunting::Partly),
            (60, 20, Hunting::No),
            (20, 60, Hunting::No),
            (20, 20, Hunting::No),
            (40, 1, Hunting::Yes),
            (1, 1, Hunting::Yes),
        ] {
            assert_eq!(Hunting::of(pair(driven, driving)), hunting, "{driven}");
        }
    }

    #[test]
    fn what_is_off_by_just_what_is_allowed_is_found_and_equal_errors_have_the_smaller_sum_first() {
        let found_by_size = found(4.0, 2.5, (10, 41));
        let [(40, 10, exact), (39, 10, below), (41, 10, above)] = found_by_size[..] else {
            panic!("{found_by_size:?}")
        };
        assert_eq!([exact.to_bits(), (below + above).to_bits()], [0; 2]);
        assert!(above <= 2.5 && above > 2.5 - DUST_PERCENT, "{above}");
        assert_eq!(found(4.0, 0.0, (10, 80)).len(), 11);
    }

    #[test]
    fn where_nothing_is_near_nothing_is_found() {
        assert_eq!(found(400.0, 1.0, (9, 60)), []);
    }
}
