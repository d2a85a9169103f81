//! Which projects come with the program?
//!
//! All invented: vehicles, names and figures are of nobody's make.

use super::document::Project;
use super::format::{self, FormatError};

/// A project that comes with the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Example {
    /// What the menu calls it.
    pub name: &'static str,
    text: &'static str,
}

impl Example {
    /// The project.
    ///
    /// # Errors
    /// Only if the program was built from a broken example.
    pub fn project(&self) -> Result<Project, FormatError> {
        format::read(self.text)
    }
}

/// All examples; the first is what the window opens with.
pub const EXAMPLES: [Example; 4] = [
    Example {
        name: "Camper van",
        text: include_str!("../../saves/camper-van.ron"),
    },
    Example {
        name: "Open two-seater",
        text: include_str!("../../saves/open-two-seater.ron"),
    },
    Example {
        name: "Farm four-wheel drive",
        text: include_str!("../../saves/farm-four-wheel-drive.ron"),
    },
    Example {
        name: "Motorcycle",
        text: include_str!("../../saves/motorcycle.ron"),
    },
];

/// What a new project begins with: one ordinary five-speed set.
pub const BLANK: Example = Example {
    name: "New project",
    text: include_str!("../../assets/new-project.ron"),
};
