//! Everything that can have the focus, in rows: where each stop stands among the others.
//!
//! Made from what the frame has shown, so that nothing can be forgotten: whatever the toolkit would
//! give the focus to is a stop. Panels only say which part of the window they are, which stop of a row
//! is its main one, and what belongs to one block of columns.

use egui::{Id, LayerId, Rangef, Rect};
use std::ops::Range;

/// The parts of the window between which one jumps, in the order of the Tab key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(in crate::app) enum Pane {
    /// The bar with the menus, and what stands beside them.
    Menu,
    /// The fields of the vehicle.
    Vehicle,
    /// The cards of the sets.
    Sets,
    /// The diagram with its handles.
    Diagram,
    /// The table beneath it.
    Table,
    /// The list of the jobs of the bench.
    Jobs,
    /// The job that is open.
    Bench,
    /// The line at the foot.
    Status,
    /// The window in which the write-up is made.
    WriteUp,
}

impl Pane {
    /// Whether it belongs to a page of the window, not to all of them and not over them.
    pub(super) fn is_of_page(self) -> bool {
        match self {
            Self::Vehicle | Self::Sets | Self::Diagram | Self::Table | Self::Jobs | Self::Bench => {
                true
            }
            Self::Menu | Self::Status | Self::WriteUp => false,
        }
    }
}

/// Which keys a stop keeps for itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Keeps {
    /// None: a button, a box to tick.
    Nothing,
    /// What moves within one line of text.
    Line,
    /// What moves within several lines of text.
    Lines,
    /// Up and Down: a value that stands on an upright scale.
    Upright,
    /// Left and Right: a value on a level scale.
    Level,
    /// All four arrows: a point that moves both ways.
    Arrows,
}

/// How the keys walk through what was shown together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Walk {
    /// Rows with columns: Tab goes down the column that it is in, and leaves it at its end.
    Columns,
    /// One stop for Tab, the one that had the focus last; Up and Down go through the others.
    One,
}

/// What a panel says about one stop.
#[derive(Debug, Clone, Copy)]
pub(super) struct Announced {
    pub(super) id: Id,
    pub(super) keeps: Keeps,
    /// How many characters stand in it, where it is a field.
    pub(super) characters: usize,
    /// Whether it shares its row with nothing, wherever it stands: a handle in the diagram.
    pub(super) is_alone: bool,
}

/// What was shown between two points of the frame: places in the order of the calls on one layer.
#[derive(Debug, Clone)]
pub(super) struct Span<T> {
    pub(super) of: T,
    pub(super) layer: LayerId,
    pub(super) places: Range<usize>,
}

impl<T> Span<T> {
    fn holds(&self, shown: &Shown) -> bool {
        self.layer == shown.layer && self.places.contains(&shown.place)
    }
}

/// What panels have said in a frame.
#[derive(Debug, Clone, Default)]
pub(super) struct Sketch {
    pub(super) panes: Vec<Span<Pane>>,
    /// Parts of the window that are not shown just now.
    pub(super) hidden: Vec<Pane>,
    pub(super) blocks: Vec<Span<Walk>>,
    pub(super) announced: Vec<Announced>,
    /// The stops that are the main ones of their rows.
    pub(super) preferred: Vec<Id>,
    /// The stops through which parts of the window are entered.
    pub(super) entries: Vec<Id>,
}

/// Something that was shown and can have the focus.
#[derive(Debug, Clone, Copy)]
pub(super) struct Shown {
    pub(super) id: Id,
    pub(super) rect: Rect,
    pub(super) layer: LayerId,
    /// Its place in the order of the calls on that layer.
    pub(super) place: usize,
}

/// One stop of the focus.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stop {
    pub(super) id: Id,
    pub(super) rect: Rect,
    pub(super) pane: Pane,
    /// Its row, counted through all panes.
    pub(super) row: usize,
    /// The block that its row belongs to, and how one walks in it.
    pub(super) block: Option<(usize, Walk)>,
    /// Whether Tab stops here.
    pub(super) is_main: bool,
    pub(super) is_alone: bool,
    /// Whether its part of the window is entered here.
    pub(super) is_entry: bool,
    pub(super) keeps: Keeps,
    /// How many characters stand in it, where it is a field.
    pub(super) characters: usize,
}

impl Stop {
    pub(super) fn is_field(&self) -> bool {
        matches!(self.keeps, Keeps::Line | Keeps::Lines)
    }

    /// Whether another stop stands above, beneath or in its column.
    pub(super) fn shares_column(&self, other: &Self) -> bool {
        let holds = |range: Rangef, x: f32| range.contains(x);
        holds(self.rect.x_range(), other.rect.center().x)
            || holds(other.rect.x_range(), self.rect.center().x)
    }
}

/// The stops of a frame, sorted by row and within a row from left to right.
pub(super) fn in_rows(sketch: &Sketch, shown: &[Shown]) -> Vec<Stop> {
    let mut stops = Vec::new();
    let mut panes: Vec<&Span<Pane>> = sketch.panes.iter().collect();
    panes.sort_by_key(|span| span.of);
    let mut row = 0;
    for pane in panes {
        let within = shown.iter().filter(|s| pane.holds(s));
        let mut of_row: Vec<Stop> = Vec::new();
        let within: Vec<&Shown> = within.collect();
        for shown in ordered(sketch, &within) {
            let stop = stop_of(sketch, shown, pane.of);
            if !of_row.iter().all(|other| is_beside(other, &stop)) {
                row = ended(&mut stops, &mut of_row, row);
            }
            of_row.push(stop);
        }
        row = ended(&mut stops, &mut of_row, row);
    }
    stops
}

/// What is alone comes in the order in which it was announced: what the pointer is on is shown last.
fn ordered<'a>(sketch: &Sketch, shown: &[&'a Shown]) -> Vec<&'a Shown> {
    let rank = |shown: &Shown| {
        let mut alone = sketch.announced.iter().filter(|a| a.is_alone);
        alone.position(|a| a.id == shown.id)
    };
    let mut alone: Vec<&Shown> = shown
        .iter()
        .copied()
        .filter(|s| rank(s).is_some())
        .collect();
    alone.sort_by_key(|shown| rank(shown));
    let mut alone = alone.into_iter();
    let in_turn = |shown: &&'a Shown| match rank(shown) {
        Some(_) => alone.next().unwrap_or(shown),
        None => shown,
    };
    shown.iter().map(in_turn).collect()
}

fn stop_of(sketch: &Sketch, shown: &Shown, pane: Pane) -> Stop {
    let announced = sketch.announced.iter().find(|a| a.id == shown.id);
    let mut blocks = sketch.blocks.iter().enumerate();
    let block = blocks.find(|(_, span)| span.holds(shown));
    Stop {
        id: shown.id,
        rect: shown.rect,
        pane,
        row: 0,
        block: block.map(|(at, span)| (at, span.of)),
        is_main: sketch.preferred.contains(&shown.id),
        is_alone: announced.is_some_and(|a| a.is_alone),
        is_entry: sketch.entries.contains(&shown.id),
        keeps: announced.map_or(Keeps::Nothing, |a| a.keeps),
        characters: announced.map_or(0, |a| a.characters),
    }
}

/// Whether two stops that were shown one after the other stand in one row.
fn is_beside(a: &Stop, b: &Stop) -> bool {
    let is_level = a.rect.y_range().contains(b.rect.center().y)
        || b.rect.y_range().contains(a.rect.center().y);
    // What is scrolled away may lie level with what stands above it, and beneath that.
    let [left, right] = if a.rect.left() < b.rect.left() {
        [a, b]
    } else {
        [b, a]
    };
    let is_clear = left.rect.right() <= right.rect.left() + 1.0;
    is_level && is_clear && !a.is_alone && !b.is_alone && a.block == b.block
}

/// Ends a row; the number of the next one.
fn ended(stops: &mut Vec<Stop>, of_row: &mut Vec<Stop>, row: usize) -> usize {
    if of_row.is_empty() {
        return row;
    }
    of_row.sort_by(|a, b| a.rect.left().total_cmp(&b.rect.left()));
    if !of_row.iter().any(|stop| stop.is_main) {
        let field = of_row.iter().position(Stop::is_field);
        of_row[field.unwrap_or(0)].is_main = true;
    }
    stops.extend(of_row.drain(..).map(|stop| Stop { row, ..stop }));
    row + 1
}
