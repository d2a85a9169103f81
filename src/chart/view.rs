//! Which diagrams there are: the one list that window, write-up, command line and settings share.

use super::chosen::{ChosenSet, visible_sets};
use super::scene::Scene;
use super::{speed_diagram, steps};
use crate::analysis::Analysis;

/// What is looked at: one diagram.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum View {
    /// Engine speed against road speed.
    #[default]
    Speed,
    /// The step of each gear over the next.
    Steps,
}

/// What is to be known of a view; its scene has the spoken summary.
struct Row {
    word: &'static str,
    name: &'static str,
    scene: fn(&Analysis, &[ChosenSet<'_>]) -> Scene,
}

impl View {
    /// Every view, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::Speed, Self::Steps];

    const fn row(self) -> Row {
        match self {
            Self::Speed => Row {
                word: "speed",
                name: "Speed",
                scene: speed_diagram::scene,
            },
            Self::Steps => Row {
                word: "steps",
                name: "Steps",
                scene: steps::scene,
            },
        }
    }

    /// The word that asks for it on the command line.
    pub fn word(self) -> &'static str {
        self.row().word
    }

    /// What it is called where one is chosen.
    pub fn name(self) -> &'static str {
        self.row().name
    }

    /// The diagram of the visible sets of a project.
    pub fn scene(self, analysis: &Analysis) -> Scene {
        let (project, results) = (analysis.project(), analysis.results());
        (self.row().scene)(analysis, &visible_sets(project, results))
    }
}
