//! Do tooth pairs, their two orders and their spelling agree with each other?

use crate::support::close::is_close;
use crate::support::projects::{any_ratio, tooth_pair};
use layshaft::gearing::{
    Factor, InChain, PairOrder, Ratio, ToothPair, TypedRatio, parse_ratio, read_chain,
    read_in_chain, read_reduction,
};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::Index;

fn pair_ratio(pair: ToothPair) -> Option<Ratio> {
    Ratio::from_factors(vec![Factor::Teeth(pair)]).ok()
}

fn canonical(chain: &[Ratio]) -> Vec<TypedRatio> {
    let spell = |ratio: &Ratio| parse_ratio(&ratio.to_string()).unwrap();
    chain.iter().map(spell).collect()
}

/// A sensible set of tooth pairs: the first gear above 1, each taller than the one before it.
fn falling_pairs() -> impl Strategy<Value = Vec<ToothPair>> {
    vec((12_u16..=60, 12_u16..=60), 1..=10).prop_filter_map("not falling", |counts| {
        let pair = |(driven, driving)| ToothPair::new(driven, driving).unwrap();
        let mut pairs: Vec<ToothPair> = counts.into_iter().map(pair).collect();
        pairs.sort_by(|a, b| b.ratio().total_cmp(&a.ratio()));
        pairs.dedup_by(|a, b| is_close(a.ratio(), b.ratio(), 1e-9));
        (pairs[0].ratio() > 1.0).then_some(pairs)
    })
}

proptest! {
    #[test]
    fn swapping_a_tooth_pair_inverts_its_ratio(pair in tooth_pair()) {
        let product = pair.ratio() * pair.swapped().ratio();
        prop_assert!(is_close(product, 1.0, 1e-15), "{product}");
        prop_assert_eq!(pair.swapped().swapped(), pair);
    }

    #[test]
    fn swapping_a_product_of_tooth_pairs_inverts_it(pairs in vec(tooth_pair(), 1..=8)) {
        let factors = pairs.into_iter().map(Factor::Teeth).collect();
        if let Ok(ratio) = Ratio::from_factors(factors)
            && let Ok(swapped) = ratio.swapped()
        {
            prop_assert!(is_close(ratio.value() * swapped.value(), 1.0, 1e-14));
            prop_assert_eq!(swapped.swapped(), Ok(ratio));
        }
    }

    #[test]
    fn the_spelling_of_any_ratio_reads_back_to_it(ratio in any_ratio()) {
        let spelling = ratio.to_string();
        let again = parse_ratio(&spelling);
        prop_assert_eq!(again.as_ref().map(TypedRatio::driven_first), Ok(&ratio), "{}", spelling);
    }

    #[test]
    fn a_sensible_set_of_tooth_pairs_is_read_the_same_in_either_order(pairs in falling_pairs()) {
        let driven_first: Vec<Ratio> = pairs.iter().copied().filter_map(pair_ratio).collect();
        let written = |swap: bool| {
            let spell = |pair: &ToothPair| {
                let pair = if swap { pair.swapped() } else { *pair };
                parse_ratio(&format!("{}/{}", pair.driven(), pair.driving())).unwrap()
            };
            pairs.iter().map(spell).collect::<Vec<_>>()
        };
        prop_assert_eq!(&read_chain(&written(false), &[]), &driven_first);
        prop_assert_eq!(&read_chain(&written(true), &[]), &driven_first);
    }

    #[test]
    fn a_pair_of_a_sensible_set_is_read_right_in_the_order_that_the_others_were_typed_in(
        pairs in falling_pairs(), at in any::<Index>(), is_driven_first in any::<bool>()
    ) {
        let ratios: Vec<Ratio> = pairs.iter().copied().filter_map(pair_ratio).collect();
        let at = at.index(ratios.len());
        let order = if is_driven_first { PairOrder::DrivenFirst } else { PairOrder::DrivingFirst };
        let standing = |(place, ratio)| InChain {
            ratio,
            behind: 4.0,
            order: (place != at).then_some(order),
        };
        let chain: Vec<InChain<'_>> = ratios.iter().enumerate().map(standing).collect();
        let pair = if is_driven_first { pairs[at] } else { pairs[at].swapped() };
        let typed = parse_ratio(&format!("{}:{}", pair.driven(), pair.driving())).unwrap();
        let (read, told) = read_in_chain(&typed, at, &chain);
        prop_assert_eq!(&read, &ratios[at]);
        let reads_one_way = pair == pair.swapped();
        prop_assert_eq!(told, (!reads_one_way).then_some(order));
    }

    #[test]
    fn a_chain_that_was_read_once_is_read_the_same_again(
        ratios in vec(any_ratio(), 1..=12), behind in vec(0.5..=6.0, 0..=12)
    ) {
        let once = read_chain(&canonical(&ratios), &behind);
        prop_assert_eq!(read_chain(&canonical(&once), &behind), once);
    }

    #[test]
    fn a_final_drive_is_read_the_same_again_and_above_one_where_it_can_be(ratio in any_ratio()) {
        let read = |ratio: &Ratio| read_reduction(&parse_ratio(&ratio.to_string()).unwrap());
        let once = read(&ratio);
        prop_assert_eq!(&read(&once), &once);
        let best = ratio.swapped().map_or(0.0, |other| other.value().max(ratio.value()));
        prop_assert!(once.value() >= 1.0 || best < 1.0 || !ratio.has_teeth());
    }

    #[test]
    fn the_reading_says_the_value_that_is_reckoned_with(ratio in any_ratio()) {
        let reading = ratio.reading();
        let shown: f64 = reading.rsplit(" = ").next().unwrap().parse().unwrap();
        prop_assert!(is_close(shown, ratio.value(), 0.000_500_1), "{reading}");
    }
}

#[test]
fn a_pair_as_tall_as_the_gear_before_it_is_read_the_way_that_falls() {
    let typed = ["2.0", "20:10"].map(|text| parse_ratio(text).unwrap());
    let read: Vec<String> = read_chain(&typed, &[])
        .iter()
        .map(Ratio::to_string)
        .collect();
    assert_eq!(read, ["2", "10:20"]);
}
