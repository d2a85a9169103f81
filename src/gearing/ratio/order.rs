//! The order of tooth pairs: which of two counts is the driven one.
//!
//! The trade writes pairs in both orders. A pair is read driven : driving, unless the set then
//! makes no sense and in the other order does.

use super::{Ratio, TypedRatio};

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

    #[test]
    fn one_gear_typed_among_settled_ones_finds_its_place() {
        let settled = |v: f64| TypedRatio::settled(Ratio::from_number(v).unwrap());
        let typed = [settled(3.8), parse_ratio("17:38").unwrap(), settled(1.4)];
        assert_eq!(read_chain(&typed, &[])[1].to_string(), "38:17");
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
