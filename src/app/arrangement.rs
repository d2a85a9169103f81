//! How much of the window does each part take, and which parts stand side by side?
//!
//! Where there is room, forms, diagram and table stand together; in a narrow or much enlarged window
//! one of them has all the room, and a row of names above switches between them.

use crate::app::focus::Pane;
use egui::{Rangef, Vec2};
use serde::{Deserialize, Serialize};

/// From this size on, in points, the parts stand together.
const ROOM_FOR_ALL: Vec2 = Vec2::new(900.0, 540.0);

/// The width of the left column, in points.
const COLUMN: Rangef = Rangef {
    min: 290.0,
    max: 460.0,
};

/// The share of the height that the table may take; the diagram keeps the greater part.
const TABLE: Rangef = Rangef {
    min: 0.12,
    max: 0.5,
};

/// Up to this height, in points, the table grows with the window in proportion.
const ORDINARY_HEIGHT: f32 = 1000.0;

/// The most that the table takes of the height that it shares with the diagram.
const MOST_OF_HEIGHT: f32 = 0.58;

/// One of the parts that can have all the room.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Part {
    /// Vehicle and cards.
    Forms,
    /// The diagram.
    #[default]
    Diagram,
    /// The table.
    Table,
    /// The list of the jobs of the bench.
    Jobs,
    /// The job that is open.
    Bench,
}

impl Part {
    /// All parts, as they stand from left to right and from top to bottom.
    pub(in crate::app) const ALL: [Self; 5] = [
        Self::Forms,
        Self::Diagram,
        Self::Table,
        Self::Jobs,
        Self::Bench,
    ];

    /// What it is called.
    pub(in crate::app) fn text(self) -> &'static str {
        match self {
            Self::Forms => "Vehicle and sets",
            Self::Diagram => "Diagram",
            Self::Table => "Table",
            Self::Jobs => "Jobs",
            Self::Bench => "Open job",
        }
    }

    /// The parts of the focus map that are in it.
    pub(in crate::app) fn panes(self) -> &'static [Pane] {
        match self {
            Self::Forms => &[Pane::Vehicle, Pane::Sets],
            Self::Diagram => &[Pane::Diagram],
            Self::Table => &[Pane::Table],
            Self::Jobs => &[Pane::Jobs],
            Self::Bench => &[Pane::Bench],
        }
    }

    /// The part that a part of the focus map is in, if it is in one.
    pub(in crate::app) fn with(pane: Pane) -> Option<Self> {
        let mut parts = Self::ALL.into_iter();
        parts.find(|part| part.panes().contains(&pane))
    }
}

/// Whether forms, diagram and table stand together in a window of that size.
pub(in crate::app) fn is_wide(size: Vec2) -> bool {
    size.x >= ROOM_FOR_ALL.x && size.y >= ROOM_FOR_ALL.y
}

/// A wish for another size of a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Share {
    /// The width of the left column, in points.
    Column(f32),
    /// The share of the height that the table takes, 0 to 1.
    Table(f32),
}

/// How much the left column and the table take.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub(in crate::app) struct Shares {
    /// The width of the left column, in points.
    pub(in crate::app) column: f32,
    /// The share of the height that the table takes, 0 to 1.
    pub(in crate::app) table: f32,
}

impl Default for Shares {
    fn default() -> Self {
        Self {
            column: 350.0,
            table: 0.32,
        }
    }
}

impl Shares {
    /// The height of the table, in points, where it shares that height with the diagram.
    ///
    /// On a large screen it grows faster than the diagram, until all rows of three sets are seen.
    pub(in crate::app) fn table_height(self, height: f32) -> f32 {
        let more = (height - ORDINARY_HEIGHT).max(0.0) * 0.3;
        (self.table * height + more).min(height * MOST_OF_HEIGHT)
    }

    /// Takes a wish, as far as it can be fulfilled.
    pub(in crate::app) fn take(&mut self, share: Share) {
        match share {
            Share::Column(points) => self.column = points,
            Share::Table(share) => self.table = share,
        }
        *self = self.sane();
    }

    /// What a hand-edited file or a far drag asks for, brought into what can be.
    pub(in crate::app) fn sane(self) -> Self {
        let within = |value: f32, range: Rangef, otherwise: f32| {
            if value.is_finite() {
                range.clamp(value)
            } else {
                otherwise
            }
        };
        let default = Self::default();
        Self {
            column: within(self.column, COLUMN, default.column),
            table: within(self.table, TABLE, default.table),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whatever_is_wished_leaves_every_part_some_room() {
        let mut shares = Shares::default();
        for wish in [
            -1e9,
            -1.0,
            0.0,
            0.3,
            1.0,
            400.0,
            1e9,
            f32::NAN,
            f32::INFINITY,
        ] {
            shares.take(Share::Column(wish));
            shares.take(Share::Table(wish));
            assert!(COLUMN.contains(shares.column), "{wish}");
            assert!(TABLE.contains(shares.table), "{wish}");
        }
    }

    #[test]
    fn the_diagram_keeps_two_fifths_of_the_height() {
        for table in [0.0, 0.3, 1.0] {
            let mut shares = Shares::default();
            shares.take(Share::Table(table));
            for height in [400.0, 700.0, 1400.0, 4000.0] {
                assert!(
                    height - shares.table_height(height) >= 0.4 * height,
                    "{table} {height}"
                );
            }
        }
    }

    #[test]
    fn every_part_of_the_focus_map_but_the_bars_is_in_a_part() {
        for part in Part::ALL {
            for pane in part.panes() {
                assert_eq!(Part::with(*pane), Some(part));
            }
        }
        assert_eq!(Part::with(Pane::Menu), None);
    }
}
