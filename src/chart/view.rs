//! The diagram of each view.

use super::chosen::{ChosenSet, visible_sets};
use super::scene::Scene;
use super::{
    cruise_diagram, distance_diagram, effort_diagram, revs_diagram, run_diagram, speed_diagram,
    speedometer_diagram, steps,
};
use crate::analysis::Analysis;
use crate::project::View;

impl View {
    /// The diagram of the visible sets of a project.
    pub fn scene(self, analysis: &Analysis) -> Scene {
        let (project, results) = (analysis.project(), analysis.results());
        let of: fn(&Analysis, &[ChosenSet<'_>]) -> Scene = match self {
            Self::Speed => speed_diagram::scene,
            Self::Steps => steps::scene,
            Self::Effort => effort_diagram::scene,
            Self::Run => run_diagram::scene,
            Self::Revs => revs_diagram::scene,
            Self::Distance => distance_diagram::scene,
            Self::Cruise => cruise_diagram::scene,
            Self::Speedometer => speedometer_diagram::scene,
        };
        of(analysis, &visible_sets(project, results))
    }
}
