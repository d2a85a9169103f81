//! The order of tooth pairs: which of two counts is the driven one.
//!
//! The trade writes pairs in both orders. A pair is read driven : driving, unless the set then
//! makes no sense and in the other order does. A pair that makes sense in both is read as those
//! beside it were, where that is known.

use super::{Ratio, TypedRatio};
use std::cmp::Ordering;

/// The gears of a shift chain, first to top, with the order of their tooth pairs decided.
///
/// `behind` is the ratio between each gear and the wheels; where it is shorter than `typed`, 1 is
/// taken. All pairs of the list are read driven : driving; only if that leaves more against sense
/// (a first gear below 1, overall ratios that do not fall) than the other order does are they all
/// read the other way.
pub fn read_chain(typed: &[TypedRatio], behind: &[f64]) -> Vec<Ratio> {
    let driven_first: Vec<Ratio> = typed.iter().map(|t| t.driven_first().clone()).collect();
    let driving_first: Vec<Ratio> = typed.iter().map(other_order).collect();
    if offences(&driving_first, behind) < offences(&driven_first, behind) {
        driving_first
    } else {
        driven_first
    }
}

/// Which of the two counts of a typed pair is the driven one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PairOrder {
    /// The first, as most data sheets write it.
    DrivenFirst,
    /// The second.
    DrivingFirst,
}

impl PairOrder {
    /// The other order.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::DrivenFirst => Self::DrivingFirst,
            Self::DrivingFirst => Self::DrivenFirst,
        }
    }
}

/// A gear of a shift chain that stands while one of the chain is typed.
#[derive(Debug, Clone, Copy)]
pub struct InChain<'a> {
    /// Its ratio.
    pub ratio: &'a Ratio,
    /// The ratio between it and the wheels.
    pub behind: f64,
    /// The order in which its pair was typed, where that is known.
    pub order: Option<PairOrder>,
}

/// The ratio of one gear, typed at the place `at` of a shift chain whose other gears stand, and the
/// order in which its pair was read.
///
/// The order that leaves less against sense wins (see [`read_chain`]). Where both leave equally much,
/// as with two counts that are nearly the same, the pair is read as the nearest gear whose order is
/// known, the one before it first; its own, if known, is the nearest. Where none is known it is read
/// driven first, and that tells nothing of the order: it is `None`, as for a ratio that reads the same
/// either way.
pub fn read_in_chain(
    typed: &TypedRatio,
    at: usize,
    chain: &[InChain<'_>],
) -> (Ratio, Option<PairOrder>) {
    let driven_first = typed.driven_first();
    let other = typed.driving_first().filter(|other| *other != driven_first);
    let Some(driving_first) = other else {
        return (driven_first.clone(), None);
    };
    let behind: Vec<f64> = chain.iter().map(|gear| gear.behind).collect();
    let faults = |read: &Ratio| {
        let mut ratios: Vec<Ratio> = chain.iter().map(|gear| gear.ratio.clone()).collect();
        if let Some(ratio) = ratios.get_mut(at) {
            ratio.clone_from(read);
        }
        offences(&ratios, &behind)
    };
    let order = match faults(driven_first).cmp(&faults(driving_first)) {
        Ordering::Less => Some(PairOrder::DrivenFirst),
        Ordering::Greater => Some(PairOrder::DrivingFirst),
        Ordering::Equal => nearest_order(chain, at),
    };
    let read = match order {
        Some(PairOrder::DrivingFirst) => driving_first,
        Some(PairOrder::DrivenFirst) | None => driven_first,
    };
    (read.clone(), order)
}

/// The order of the gear nearest to a place whose order is known; of two as near, of the one before.
fn nearest_order(chain: &[InChain<'_>], at: usize) -> Option<PairOrder> {
    let known = chain.iter().enumerate();
    let known = known.filter_map(|(place, gear)| Some((place.abs_diff(at), gear.order?)));
    // The first of those that are as near is the one before.
    known
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, order)| order)
}

/// A ratio that is known to reduce (a final drive, a crawler, a reverse gear), with its order decided.
///
/// Driven : driving, unless that is below 1 and the other order is not.
pub fn read_reduction(typed: &TypedRatio) -> Ratio {
    let other = other_order(typed);
    if typed.driven_first().value() < 1.0 && other.value() >= 1.0 {
        other
    } else {
        typed.driven_first().clone()
    }
}

fn other_order(typed: &TypedRatio) -> Ratio {
    typed
        .driving_first()
        .unwrap_or_else(|| typed.driven_first())
        .clone()
}

/// How many times a chain goes against sense.
fn offences(chain: &[Ratio], behind: &[f64]) -> usize {
    let overall: Vec<f64> = chain
        .iter()
        .enumerate()
        .map(|(i, ratio)| ratio.value() * behind.get(i).copied().unwrap_or(1.0))
        .collect();
    let rises = overall.windows(2).filter(|pair| pair[1] >= pair[0]).count();
    let first_below_one = chain.first().is_some_and(|first| first.value() < 1.0);
    rises + usize::from(first_below_one)
}

#[cfg(test)]
mod tests {
    use super::super::parse_ratio;
    use super::*;

    fn chain(texts: &[&str]) -> Vec<String> {
        let typed: Vec<_> = texts.iter().map(|t| parse_ratio(t).unwrap()).collect();
        read_chain(&typed, &[])
            .iter()
            .map(Ratio::to_string)
            .collect()
    }

    #[test]
    fn pairs_are_driven_before_driving() {
        assert_eq!(
            chain(&["34:9", "38:17", "33:41"]),
            ["34:9", "38:17", "33:41"]
        );
    }

    #[test]
    fn a_set_written_the_other_way_round_is_turned_as_a_whole() {
        assert_eq!(
            chain(&["9:34", "17:38", "41:33"]),
            ["34:9", "38:17", "33:41"]
        );
    }

    #[test]
    fn plain_numbers_beside_turned_pairs_stay() {
        assert_eq!(chain(&["8x33", "2.1", "1.3"]), ["33:8", "2.1", "1.3"]);
    }

    #[test]
    fn a_set_that_makes_no_sense_either_way_is_left_as_typed() {
        assert_eq!(
            chain(&["1.3", "34:9", "9:34", "5"]),
            ["1.3", "34:9", "9:34", "5"]
        );
    }

    /// What `text` reads as at a place of a chain of plain ratios, in which some orders are known.
    fn typed_at(
        text: &str,
        at: usize,
        chain: &[(f64, Option<PairOrder>)],
    ) -> (String, Option<PairOrder>) {
        let ratios: Vec<Ratio> = chain
            .iter()
            .map(|(ratio, _)| Ratio::from_number(*ratio).unwrap())
            .collect();
        let chain: Vec<InChain<'_>> = ratios
            .iter()
            .zip(chain)
            .map(|(ratio, (_, order))| InChain {
                ratio,
                behind: 1.0,
                order: *order,
            })
            .collect();
        let (ratio, order) = read_in_chain(&parse_ratio(text).unwrap(), at, &chain);
        (ratio.to_string(), order)
    }

    const DRIVEN: Option<PairOrder> = Some(PairOrder::DrivenFirst);
    const DRIVING: Option<PairOrder> = Some(PairOrder::DrivingFirst);

    #[test]
    fn one_gear_typed_among_settled_ones_finds_its_place() {
        let chain = [(3.8, None), (1.0, DRIVEN), (1.4, None)];
        assert_eq!(
            typed_at("17:38", 1, &chain),
            ("38:17".to_owned(), DRIVING),
            "sense comes before any order"
        );
    }

    #[test]
    fn a_pair_near_one_is_read_as_the_nearest_gear_whose_order_is_known() {
        let turned = ("39:38".to_owned(), DRIVING);
        let kept = ("38:39".to_owned(), DRIVEN);
        let near = |orders: [Option<PairOrder>; 5]| {
            let ratios = [3.4, 2.1, 1.4, 1.0, 0.8];
            let chain: Vec<_> = ratios.into_iter().zip(orders).collect();
            typed_at("38:39", 3, &chain)
        };
        assert_eq!(near([DRIVEN, None, DRIVING, None, None]), turned);
        assert_eq!(near([None, DRIVING, None, None, None]), turned);
        assert_eq!(near([None, None, None, None, DRIVING]), turned);
        assert_eq!(near([None, DRIVING, None, None, DRIVEN]), kept);
        assert_eq!(near([None, None, DRIVING, None, DRIVEN]), turned);
        assert_eq!(near([None, None, DRIVING, DRIVEN, DRIVING]), kept);
    }

    #[test]
    fn a_pair_near_one_among_gears_of_unknown_order_is_driven_first_and_says_nothing() {
        let chain = [(1.4, None), (1.0, None), (0.8, None)];
        assert_eq!(typed_at("38:39", 1, &chain), ("38:39".to_owned(), None));
        let chain = [(1.4, DRIVING), (1.0, None)];
        assert_eq!(typed_at("30:30", 1, &chain), ("30:30".to_owned(), None));
        assert_eq!(typed_at("1.1", 1, &chain), ("1.1".to_owned(), None));
    }

    #[test]
    fn different_final_drives_count_when_the_fall_is_judged() {
        // 29:30 is 0.967 on a final of 3.2, below 1.0 on 3.9; 30:29 would be as well.
        let typed = [parse_ratio("1.0").unwrap(), parse_ratio("30:29").unwrap()];
        assert_eq!(read_chain(&typed, &[3.9, 3.2])[1].to_string(), "30:29");
        assert_eq!(read_chain(&typed, &[3.9, 3.9])[1].to_string(), "29:30");
    }

    #[test]
    fn a_final_drive_below_one_is_read_the_other_way() {
        let read = |text: &str| read_reduction(&parse_ratio(text).unwrap()).to_string();
        assert_eq!(read("9:37"), "37:9");
        assert_eq!(read("37:9"), "37:9");
        assert_eq!(read("0.9"), "0.9");
    }
}
