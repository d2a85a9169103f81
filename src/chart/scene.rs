//! A diagram as data: axes, lines, rules, areas, points and words, all in the units of its axes.
//!
//! Everything says what it is by its role and whose it is by its owner. How that looks, what is
//! painted over what and what steps back is up to whoever draws it.

use super::at_pointer::Readable;
use super::axis::{Along, Axis, Quantity, Range};
use super::handle::{Handle, HandleLine};
use crate::analysis::NoMotion;
use crate::gearing::GearId;
use crate::project::View;
use crate::project::{Livery, SetId};

/// A diagram of the chosen sets of a project.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Which diagram it is.
    pub view: View,
    /// The level axis.
    pub x: Axis,
    /// The upright axis.
    pub y: Axis,
    /// All of it in one spoken sentence.
    pub summary: String,
    /// The sets in it, in their order.
    pub sets: Vec<ShownSet>,
    /// Whether a band above the plot holds the names of lines, in a row for each set.
    pub has_band: bool,
    /// Parts of the plot that are shaded.
    pub areas: Vec<Area>,
    /// Straight lines through the whole plot.
    pub rules: Vec<Rule>,
    /// Straight lines above which the plot is shaded.
    pub above: Vec<Above>,
    /// Lines of the vehicle, which no set owns.
    pub curves: Vec<Curve>,
    /// Lines of sets.
    pub lines: Vec<Line>,
    /// Points that a dot marks.
    pub points: Vec<Point>,
    /// Words that ask for a place.
    pub labels: Vec<Label>,
    /// Points that can be dragged.
    pub handles: Vec<Handle>,
    /// Lines that can be dragged, and the handles on them along.
    pub handle_lines: Vec<HandleLine>,
    /// What is read off at the pointer.
    pub readables: Vec<Readable>,
    /// What is said of a set where nothing of it can be read off.
    pub without_reading: &'static str,
    /// Why there is nothing in it: what is not known that it needs.
    pub lacks: Option<NoMotion>,
}

/// A set in a diagram.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShownSet {
    /// The set.
    pub id: SetId,
    /// Its colour and dash.
    pub livery: Livery,
    /// Its name.
    pub name: String,
}

/// What a thing in a diagram is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// The highest permitted engine speed, and all beyond it.
    Redline,
    /// Engine speeds too low to be useful.
    Floor,
    /// A road or engine speed that is always wanted.
    Marked,
    /// A gear as far as it goes, driven or not.
    Fan,
    /// The useful part of a gear in another position of the set's stages than the present one.
    Other,
    /// The part of a gear that is really driven.
    Driven,
    /// Through the shift points of a set.
    ShiftLine,
    /// The fall of the needle at an upshift.
    Drop,
    /// A figure of a set at a marked speed.
    Crossing,
    /// Figures of a set from gear to gear.
    ByGear,
    /// What a gear does at full load.
    FullLoad,
    /// What the engine would do at its peak power always.
    Ideal,
    /// What the driven wheels can put down.
    Grip,
    /// What air, tyres and grade take.
    RoadLoad,
    /// Where changing up is best.
    BestShift,
    /// What a rule allows, and all beyond it.
    Limit,
}

/// Whose a thing in a diagram is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Owner {
    /// The set.
    pub set: SetId,
    /// The set's place among all sets, counted from 0: in their order lines are painted.
    pub place: usize,
    /// The set's colour and dash.
    pub livery: Livery,
    /// The gear, where it is one gear's.
    pub gear: Option<GearId>,
    /// In which of the set's other positions it is, counted from 0; none in the present one.
    pub other: Option<usize>,
}

/// One gear of one set, as diagrams and the table tell it from all others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct GearOfSet {
    /// The set.
    pub set: SetId,
    /// The gear.
    pub gear: GearId,
    /// In which of the set's other positions, counted from 0; none in the present one.
    pub other: Option<usize>,
}

impl Owner {
    /// The gear with its set, where it is one gear's.
    pub fn gear_of_set(self) -> Option<GearOfSet> {
        self.gear.map(|gear| GearOfSet {
            set: self.set,
            gear,
            other: self.other,
        })
    }
}

/// A shaded part of the plot, from side to side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// What it is.
    pub role: Role,
    /// From which to which value upright; without one, as far as the plot goes.
    pub y: [Option<f64>; 2],
}

/// A shaded part of the plot above a straight line, to its head.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Above {
    /// What it is.
    pub role: Role,
    /// The left end of the line.
    pub from: [f64; 2],
    /// Its right end.
    pub to: [f64; 2],
}

/// A straight line through the whole plot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rule {
    /// What it is.
    pub role: Role,
    /// Which way it runs.
    pub along: Along,
    /// The value of the other axis at which it runs.
    pub at: f64,
}

/// A line from point to point.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What it is.
    pub role: Role,
    /// Whose it is.
    pub of: Owner,
    /// Its points in their order.
    pub points: Vec<[f64; 2]>,
}

/// A line of the vehicle from point to point.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// What it is.
    pub role: Role,
    /// Its points in their order.
    pub points: Vec<[f64; 2]>,
}

/// A point that a dot marks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// What it is.
    pub role: Role,
    /// Whose it is.
    pub of: Owner,
    /// Where it is.
    pub at: [f64; 2],
}

/// Words that ask for a place; without room they are left out.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// The words.
    pub text: String,
    /// What they are.
    pub role: Role,
    /// Whose they are, where they are a set's.
    pub of: Option<Owner>,
    /// What they belong to.
    pub at: [f64; 2],
    /// Where they may stand.
    pub place: Place,
}

/// Where words may stand in relation to what they belong to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Place {
    /// In the band above the plot, over the point at which the line from here to the words' own
    /// point leaves the plot.
    InBand([f64; 2]),
    /// Beside a point.
    Beside,
    /// At the foot of an upright rule.
    AtFoot,
    /// At the right end of a level rule.
    AtEnd,
    /// At the head of an upright rule, in this row from the top, counted from 0.
    AtHead(usize),
    /// At the left end of a level rule.
    AtStart,
    /// At a level rule, in this column from its right end, counted from 0.
    InColumn(usize),
    /// At an end of a line from here to the words' own point, else above it.
    AtEnds([f64; 2]),
    /// At the foot of a fall from this value of the y axis, else along it.
    UnderFall(f64),
    /// On the y axis, in place of its marks.
    OnAxis,
}

impl Scene {
    /// A diagram with nothing in it yet.
    pub(super) fn empty(view: View, x: Quantity, y: Quantity) -> Self {
        let axis = |quantity| Axis {
            quantity,
            range: [0.0, 1.0],
            marks: Vec::new(),
        };
        Self {
            view,
            x: axis(x),
            y: axis(y),
            summary: String::new(),
            sets: Vec::new(),
            has_band: false,
            areas: Vec::new(),
            above: Vec::new(),
            rules: Vec::new(),
            curves: Vec::new(),
            lines: Vec::new(),
            points: Vec::new(),
            labels: Vec::new(),
            handles: Vec::new(),
            handle_lines: Vec::new(),
            readables: Vec::new(),
            without_reading: "nothing here",
            lacks: None,
        }
    }

    /// The range that holds all of it.
    pub fn whole(&self) -> Range {
        Range {
            x: self.x.range,
            y: self.y.range,
        }
    }

    /// The sets in it, in their order.
    pub fn set_ids(&self) -> Vec<SetId> {
        self.sets.iter().map(|set| set.id).collect()
    }

    /// What the figures at falls are, and whose, where they are written for these of several sets.
    pub fn drops_words(&self, written: &[SetId]) -> Option<String> {
        let has_falls = |set: &&ShownSet| self.lines_of(Role::Drop).any(|l| l.of.set == set.id);
        let with_falls: Vec<&ShownSet> = self.sets.iter().filter(has_falls).collect();
        let is_written = |set: &&&ShownSet| written.contains(&set.id);
        let names = with_falls.iter().filter(is_written);
        let names: Vec<&str> = names.map(|set| set.name.as_str()).collect();
        if self.sets.len() < 2 || names.is_empty() {
            return None;
        }
        let what = "Drops in rpm at the dotted falls".to_owned();
        if names.len() == with_falls.len() {
            return Some(what);
        }
        Some(format!("{what}: {}", names.join(" and ")))
    }

    /// Asks for a place for words; where sets share a figure, it is written once.
    pub(super) fn say_once(&mut self, label: Label) {
        let is_near = |a: f64, b: f64| (a - b).abs() <= 1e-3 * b.abs();
        let is_said = |said: &Label| {
            let [[x, y], [at_x, at_y]] = [said.at, label.at];
            let is_there = is_near(x, at_x) && is_near(y, at_y);
            said.text == label.text && said.role == label.role && is_there
        };
        if !self.labels.iter().any(is_said) {
            self.labels.push(label);
        }
    }

    /// The lines of one role.
    pub fn lines_of(&self, role: Role) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(move |line| line.role == role)
    }
}
