//! Are the figures of other positions those of the set standing in them?

use crate::support::projects::any_project;
use layshaft::analysis::ProjectResults;
use layshaft::gearing::{GearResult, GearSet, SetResults, other_combinations};
use proptest::prelude::*;

/// The figures of the gears that a combination of positions makes others.
fn standing_in(
    set: &GearSet,
    combination: usize,
    results: impl Fn(&GearSet) -> SetResults,
) -> Vec<GearResult> {
    let combination = &other_combinations(&set.stages)[combination];
    let mut parts = set.to_spec();
    for (stage, position) in parts.stages.iter_mut().zip(&combination.positions) {
        stage.present = *position;
    }
    let moved = GearSet::try_from(parts).unwrap();
    let is_other = |result: &GearResult| {
        let mut moved = combination.moved.iter();
        moved.all(|stage| set.stages[*stage].acts_on.includes(result.gear.id))
    };
    let results = results(&moved);
    let gears = results.gears.into_iter().chain(results.reverse);
    gears.filter(is_other).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_set_in_another_position_is_the_set_that_stands_there(project in any_project()) {
        let results = ProjectResults::of(&project);
        for (place, candidate) in project.sets.iter().enumerate() {
            let set = &candidate.set;
            let of = |set: &GearSet| SetResults::of(set, &project.tyre, &project.engine);
            let shown = results.other_positions(&project, place);
            let combinations = other_combinations(&set.stages);
            prop_assert!(combinations.len() < GearSet::MOST_COMBINATIONS);
            let mut next = shown.iter();
            for (at, combination) in combinations.iter().enumerate() {
                let wanted = standing_in(set, at, of);
                if wanted.is_empty() {
                    continue;
                }
                let other = next.next().unwrap();
                prop_assert_eq!(&other.name, &combination.name);
                let gears = other.results.gears.iter().chain(&other.results.reverse);
                prop_assert_eq!(gears.cloned().collect::<Vec<_>>(), wanted);
                prop_assert_eq!(&other.results.findings, &[]);
            }
            prop_assert!(next.next().is_none());
        }
    }
}
