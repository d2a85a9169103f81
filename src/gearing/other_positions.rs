//! What a range, a splitter or an overdrive makes of the gears of a set: the set in the other positions
//! of those of its stages that show them.

use super::gear_set::{ActsOn, GearSet, Stage};
use super::results::{EngineLimits, GearResult, SetResults};
use super::tyre::Tyre;

/// One combination of positions in which a set does not stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Combination {
    /// The position of each stage, counted from 0.
    pub positions: Vec<usize>,
    /// The stages that stand otherwise than at present, counted from 0; there is at least one.
    pub moved: Vec<usize>,
    /// What those stand in: `Low`, or `Low Overdrive`.
    pub name: String,
}

/// A set as it is in one combination of other positions.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherPosition {
    /// What it is called: `Low`.
    pub name: String,
    /// The gears on which all stages act that stand otherwise, with their figures; no findings, which are
    /// told of the set once.
    pub results: SetResults,
}

/// All combinations of the positions of the stages that show these, without the present one.
///
/// Of each stage the present position comes first, then the others in their order; the positions of the
/// last stage change first.
pub fn other_combinations(stages: &[Stage]) -> Vec<Combination> {
    let mut combinations: Vec<Vec<usize>> = vec![Vec::new()];
    for stage in stages {
        let count = if stage.shows_others {
            stage.positions.len()
        } else {
            0
        };
        let others = (0..count).filter(|at| *at != stage.present);
        let positions: Vec<usize> = std::iter::once(stage.present).chain(others).collect();
        let longer = |begun: &Vec<usize>| {
            let begun = begun.clone();
            let behind = positions.iter();
            behind
                .map(move |at| begun.iter().copied().chain([*at]).collect())
                .collect::<Vec<Vec<usize>>>()
        };
        combinations = combinations.iter().flat_map(longer).collect();
    }
    let others = combinations.into_iter().skip(1);
    others
        .map(|positions| Combination::of(stages, positions))
        .collect()
}

impl Combination {
    fn of(stages: &[Stage], positions: Vec<usize>) -> Self {
        let numbered = stages.iter().zip(&positions).enumerate();
        let moved = numbered.filter(|(_, (stage, at))| stage.present != **at);
        let (mut places, mut names) = (Vec::new(), Vec::new());
        for (place, (stage, at)) in moved {
            places.push(place);
            names.extend(stage.positions.get(*at).map(|p| p.name.as_str()));
        }
        Self {
            name: names.join(" "),
            moved: places,
            positions,
        }
    }
}

impl OtherPosition {
    /// A set in all its other positions that are shown, on a vehicle.
    pub fn all(set: &GearSet, vehicle_tyre: &Tyre, limits: &EngineLimits) -> Vec<Self> {
        let combinations = other_combinations(&set.stages).into_iter();
        let shown = combinations.filter_map(|combination| {
            let acting: Vec<&ActsOn> = combination
                .moved
                .iter()
                .filter_map(|at| Some(&set.stages.get(*at)?.acts_on))
                .collect();
            let is_other = |result: &GearResult| {
                // What one of them does not act on is the same without it.
                let mut acting = acting.iter();
                acting.all(|acts_on| acts_on.includes(result.gear.id))
            };
            let set = standing_in(set, &combination)?;
            let mut results = SetResults::without_findings(&set, vehicle_tyre, limits);
            results.gears.retain(is_other);
            results.reverse = results.reverse.filter(is_other);
            let is_empty = results.gears.is_empty() && results.reverse.is_none();
            (!is_empty).then_some(Self {
                name: combination.name,
                results,
            })
        });
        shown.collect()
    }
}

/// The set with its stages in those positions.
fn standing_in(set: &GearSet, combination: &Combination) -> Option<GearSet> {
    let mut spec = set.to_spec();
    for (stage, at) in spec.stages.iter_mut().zip(&combination.positions) {
        stage.present = *at;
    }
    GearSet::try_from(spec).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::{Name, Position, Ratio};

    fn stage(names: &[&str], present: usize, shows_others: bool) -> Stage {
        let position = |name: &&str| Position {
            name: Name::new(name).unwrap(),
            ratio: Ratio::from_number(1.0).unwrap(),
        };
        Stage {
            name: Name::new("stage").unwrap(),
            positions: names.iter().map(position).collect(),
            present,
            acts_on: ActsOn::EveryGear,
            shows_others,
        }
    }

    #[test]
    fn the_positions_of_the_last_stage_change_first_and_the_present_ones_are_not_named() {
        let stages = [
            stage(&["high", "low"], 1, true),
            stage(&["fixed", "unseen"], 0, false),
            stage(&["a", "b", "c"], 1, true),
        ];
        let combinations = other_combinations(&stages);
        let told: Vec<(&str, &[usize])> = combinations
            .iter()
            .map(|c| (c.name.as_str(), c.positions.as_slice()))
            .collect();
        assert_eq!(
            told,
            [
                ("a", &[1, 0, 0][..]),
                ("c", &[1, 0, 2]),
                ("high", &[0, 0, 1]),
                ("high a", &[0, 0, 0]),
                ("high c", &[0, 0, 2]),
            ]
        );
        assert_eq!(combinations[4].moved, [0, 2]);
    }

    #[test]
    fn without_a_mark_or_without_other_positions_there_is_nothing_to_show() {
        for stages in [
            vec![],
            vec![stage(&["high", "low"], 0, false)],
            vec![stage(&["only"], 0, true)],
        ] {
            assert_eq!(other_combinations(&stages), []);
        }
    }
}
