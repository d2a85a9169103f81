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

/// A kind of vehicle that a new project is begun for: its structure, with round figures to be typed
/// over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// One five-speed gearbox and its final drive.
    Car,
    /// A gearbox behind which ranges multiply every gear, with a crawler.
    Ranges,
    /// Six gears between a primary drive and a chain.
    Motorcycle,
}

impl Start {
    /// All of them, in the order of the menu.
    pub const ALL: [Self; 3] = [Self::Car, Self::Ranges, Self::Motorcycle];

    /// What a project of the kind begins with.
    pub fn example(self) -> Example {
        let text = match self {
            Self::Car => include_str!("../../assets/new-car.ron"),
            Self::Ranges => include_str!("../../assets/new-truck-or-tractor.ron"),
            Self::Motorcycle => include_str!("../../assets/new-motorcycle.ron"),
        };
        Example {
            name: "New project",
            text,
        }
    }

    /// Whether a project is one of these, with nothing typed yet.
    pub fn is_any(project: &Project) -> bool {
        let mut starts = Self::ALL.into_iter().map(|start| start.example().project());
        starts.any(|start| start.is_ok_and(|start| start == *project))
    }
}
