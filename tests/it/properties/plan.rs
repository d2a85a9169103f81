//! The laws of a plan of what changes, whatever stands in it.

use crate::support::workshop::plan::any_plan;
use layshaft::workshop::{CandidateId, Plan, PlanTotals};
use proptest::prelude::*;

const CANDIDATES: [CandidateId; 3] = [CandidateId(1), CandidateId(2), CandidateId(3)];

/// The hundredths of all prices of parts that are not struck, and of those that are not done.
fn hundredths(plan: &Plan, candidate: CandidateId) -> [f64; 2] {
    let mut sums = [0.0, 0.0];
    for part in plan.parts().iter().filter(|part| !part.is_struck) {
        let entry = part.of(candidate);
        let price = entry
            .price
            .map_or(0.0, |price| (price.amount() * 100.0).round());
        sums[0] += price;
        sums[1] += if entry.is_done { 0.0 } else { price };
    }
    sums
}

proptest! {
    #[test]
    fn totals_are_the_sums_of_the_parts_that_are_not_struck(plan in any_plan()) {
        for candidate in CANDIDATES {
            let totals = PlanTotals::of(&plan, candidate);
            let sums = [totals.price, totals.open_price].map(|sum| (sum.number() * 100.0).round());
            for (sum, expected) in sums.into_iter().zip(hundredths(&plan, candidate)) {
                prop_assert!((sum - expected).abs() < 0.5, "{} {}", sum, expected);
            }
            let counted = totals.undecided + totals.open + totals.stay + totals.done;
            let parts = plan.parts().iter().filter(|part| !part.is_struck);
            prop_assert_eq!(counted, parts.count());
        }
    }

    #[test]
    fn striking_a_part_raises_no_total(plan in any_plan(), at in any::<prop::sample::Index>()) {
        prop_assume!(!plan.parts().is_empty());
        let mut part = at.get(plan.parts()).clone();
        part.is_struck = true;
        let struck = plan.changed(part).unwrap();
        for candidate in CANDIDATES {
            let [before, after] = [&plan, &struck].map(|plan| PlanTotals::of(plan, candidate));
            prop_assert!(after.price <= before.price && after.open_price <= before.open_price);
            prop_assert!(after.undecided <= before.undecided);
            prop_assert!(after.open <= before.open && after.done <= before.done);
        }
    }
}
