//! Which page of the window is looked at? What a gear set does on the road, or the jobs of the bench.

use super::arrangement::Part;

/// A page of the window.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AppPage {
    /// Sets, diagram and table.
    #[default]
    Drive,
    /// The jobs of the bench.
    Workshop,
}

impl AppPage {
    /// Both pages, from left to right.
    pub(in crate::app) const ALL: [Self; 2] = [Self::Drive, Self::Workshop];

    /// What it is called.
    pub(in crate::app) fn text(self) -> &'static str {
        match self {
            Self::Drive => "Drive",
            Self::Workshop => "Workshop",
        }
    }

    /// What somebody looks at there.
    pub(in crate::app) fn meaning(self) -> &'static str {
        match self {
            Self::Drive => "What the gear sets are like to drive",
            Self::Workshop => "Measuring and setting up the box on the bench",
        }
    }

    /// Its parts, of which a small window shows one.
    pub(in crate::app) fn parts(self) -> &'static [Part] {
        match self {
            Self::Drive => &[Part::Forms, Part::Diagram, Part::Table],
            Self::Workshop => &[Part::Jobs, Part::Bench],
        }
    }

    /// The part that has all the room in a small window, where `wanted` may be one of another page.
    pub(in crate::app) fn part(self, wanted: Part) -> Part {
        let own = self.parts();
        if own.contains(&wanted) {
            return wanted;
        }
        match self {
            Self::Drive => Part::Diagram,
            Self::Workshop => Part::Bench,
        }
    }
}
