//! Do the loads of the driveline belong to the set they are of, whatever set?

use crate::support::close::is_close;
use crate::support::gear_sets::tyre;
use crate::support::projects::any_gear_set;
use layshaft::checks::LowestGear;
use layshaft::gearing::{Drivetrain, GearSet};
use proptest::prelude::*;

proptest! {
    #[test]
    fn the_lowest_gear_is_the_lowest_of_all_gears_in_all_positions(set in any_gear_set()) {
        let lowest = LowestGear::of(&set).unwrap();
        let mut all = Vec::new();
        let counts: Vec<usize> = set.stages.iter().map(|stage| stage.positions.len()).collect();
        for number in 0..counts.iter().product::<usize>() {
            let mut spec = set.to_spec();
            let mut rest = number;
            for (stage, count) in spec.stages.iter_mut().zip(&counts) {
                stage.present = rest % count;
                rest /= count;
            }
            let set = GearSet::try_from(spec).unwrap();
            let drivetrain = Drivetrain::resolve(&set, &tyre(2000.0));
            all.extend(drivetrain.gears.into_iter().map(|gear| gear.overall_ratio));
        }
        let most = all.into_iter().fold(0.0, f64::max);
        prop_assert!(is_close(lowest.overall_ratio, most, most * 1e-12));
    }
}
