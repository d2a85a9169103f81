//! The efficiencies of a gear set: what its gears and its final drive leave of the power.

use super::quantity::Efficiency;
use crate::gearing::{DrivenGear, GearId};
use std::collections::BTreeMap;

/// The efficiency of a set, and of gears that differ from it.
#[derive(Debug, Clone, PartialEq)]
pub struct Efficiencies {
    /// Of every gear that has none of its own.
    pub of_set: Efficiency,
    /// Of a direct gear, which no tooth pair of the gearbox carries.
    pub direct: Option<Efficiency>,
    /// Of single gears.
    pub of_gears: BTreeMap<GearId, Efficiency>,
}

impl Efficiencies {
    /// The same for every gear.
    pub fn all(of_set: Efficiency) -> Self {
        Self {
            of_set,
            direct: None,
            of_gears: BTreeMap::new(),
        }
    }

    /// The efficiency of a gear: its own, else that of a direct gear if its ratio is 1, else the set's.
    pub fn of(&self, gear: &DrivenGear) -> Efficiency {
        let direct = self.direct.filter(|_| is_direct(gear));
        let own = self.of_gears.get(&gear.id).copied();
        own.or(direct).unwrap_or(self.of_set)
    }
}

fn is_direct(gear: &DrivenGear) -> bool {
    (gear.ratio - 1.0).abs() < 1e-9
}
