//! What is asked of a table of figures, and the table that answers it.

use super::FigureTable;
use crate::analysis::{Analysis, NoMotion, RunQuestions, speedometer_speeds};
use crate::gearing::RoadSpeed;
use crate::project::View;

/// What a table of figures is to tell.
#[derive(Debug, Clone, PartialEq)]
pub enum AskedFigures {
    /// Effort at these road speeds.
    Effort(Vec<RoadSpeed>),
    /// Runs.
    Run(RunQuestions),
    /// These steady speeds.
    Cruise(Vec<RoadSpeed>),
    /// What the speedometer shows at these true speeds.
    Speedometer(Vec<RoadSpeed>),
}

impl AskedFigures {
    /// What is usually asked of the table of a view at these road speeds; none where that is the table of
    /// ratios.
    pub fn usual(view: View, speeds: &[RoadSpeed]) -> Option<Self> {
        match view.with_table() {
            View::Speed | View::Steps => None,
            View::Effort => Some(Self::Effort(speeds.to_vec())),
            View::Run | View::Revs | View::Distance => Some(Self::Run(RunQuestions::usual(speeds))),
            View::Cruise => Some(Self::Cruise(speeds.to_vec())),
            View::Speedometer => Some(Self::Speedometer(speedometer_speeds(speeds))),
        }
    }
}

impl FigureTable {
    /// What is asked, of every set.
    ///
    /// # Errors
    /// When something is not known that it needs.
    pub fn of<'a>(asked: &AskedFigures, analysis: &'a Analysis) -> Result<Self, &'a NoMotion> {
        let (project, results) = (analysis.project(), analysis.results());
        Ok(match asked {
            AskedFigures::Effort(speeds) => {
                Self::effort(project, results, analysis.motion()?, speeds)
            }
            AskedFigures::Run(questions) => {
                Self::run(project, results, analysis.motion()?, questions)
            }
            AskedFigures::Cruise(speeds) => {
                Self::cruise(project, results, analysis.motion()?, speeds)
            }
            AskedFigures::Speedometer(speeds) => Self::speedometer(analysis, speeds),
        })
    }

    /// The table of a view at the speeds that the project marks; none where the view has none of its own or
    /// that of ratios, or something is not known.
    pub fn of_view(view: View, analysis: &Analysis) -> Option<Self> {
        let marked = analysis.project().marked_road_speeds.as_slice();
        let asked = AskedFigures::usual(view, marked).filter(|_| view.has_table())?;
        Self::of(&asked, analysis).ok()
    }
}
