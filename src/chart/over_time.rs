//! Runs from rest against time: what the diagrams of speed, engine speed and distance have in common.

use super::at_pointer::{Also, Readable};
use super::axis::{Quantity, next_round};
use super::chosen::ChosenSet;
use super::marks::of_all_sets;
use super::of_motion;
use super::scene::{Label, Line, Owner, Place, Point, Role, Scene};
use crate::analysis::{Analysis, Motion, NoMotion, RunQuestions, SetRuns};
use crate::gearing::RoadSpeed;
use crate::motion::{Moment, Powertrain, Run};
use crate::units::{SpeedUnit, signed};

/// In how many steps a line goes over the time of a run.
const STEPS: u32 = 160;

/// How much longer than the last time that is told the lines go.
const ROOM: f64 = 1.06;

/// The share of the width in which the times of one set stand beside the lines.
const COLUMN: f64 = 0.11;

/// The runs of chosen sets.
pub(super) struct Runs<'a> {
    sets: &'a [ChosenSet<'a>],
    units: SpeedUnit,
    motion: &'a Motion,
    /// The road speeds that times are told to.
    pub(super) targets: Vec<RoadSpeed>,
    of_all: Vec<SetRuns>,
    baseline_place: usize,
    /// How long the lines go, in s.
    end_s: f64,
}

/// The run of a set, and that of the baseline which it is compared with.
pub(super) struct OneRun<'a> {
    pub(super) set: &'a ChosenSet<'a>,
    pub(super) powertrain: &'a Powertrain,
    pub(super) runs: &'a SetRuns,
    pub(super) baseline: Option<&'a SetRuns>,
    /// Its column among the times beside the lines, counted from the right.
    column: usize,
}

impl<'a> Runs<'a> {
    /// Those of an analysis.
    ///
    /// # Errors
    /// When something is not known that they need.
    pub(super) fn of(analysis: &'a Analysis, sets: &'a [ChosenSet<'a>]) -> Result<Self, NoMotion> {
        let project = analysis.project();
        let motion = analysis.motion().map_err(Clone::clone)?;
        let mut questions = RunQuestions::usual(project.marked_road_speeds.as_slice());
        // 100 km/h and 60 mph lie too close for the words of both.
        let is_in_unit =
            |to: &RoadSpeed| of_motion::roundest(&[*to], project.units) == project.units;
        questions.to.retain(is_in_unit);
        let of_all = motion.runs(&questions);
        let shown = sets.iter().filter_map(|set| of_all.get(set.of.place));
        let last_s = shown.map(last_told_s).fold(1.0, f64::max);
        Ok(Self {
            sets,
            units: project.units,
            motion,
            targets: questions.to,
            of_all,
            baseline_place: project.sets.baseline_place(),
            end_s: next_round(last_s * ROOM),
        })
    }

    /// One for each chosen set, in their order.
    pub(super) fn each(&self) -> impl Iterator<Item = OneRun<'_>> {
        let baseline = self.of_all.get(self.baseline_place);
        self.sets.iter().enumerate().filter_map(move |(at, set)| {
            Some(OneRun {
                set,
                powertrain: &self.motion.sets.get(set.of.place)?.powertrain,
                runs: self.of_all.get(set.of.place)?,
                baseline: baseline.filter(|_| set.baseline.is_some()),
                column: self.sets.len() - 1 - at,
            })
        })
    }

    /// A figure of a run against time.
    fn line(&self, run: &Run, figure: impl Fn(Moment) -> f64) -> Vec<[f64; 2]> {
        let moments = self.moments(run).into_iter();
        moments
            .map(|moment| [moment.time_s, figure(moment)])
            .collect()
    }

    /// The moments of a run that are drawn; where a piece ends there is one, so that corners stay.
    fn moments(&self, run: &Run) -> Vec<Moment> {
        let end_s = self.end_s.min(run.end().time_s);
        let even = (0..=STEPS).map(|step| end_s * f64::from(step) / f64::from(STEPS));
        let ends = run.pieces().iter().map(|piece| piece.to.time_s);
        let mut times: Vec<f64> = even.chain(ends.filter(|end| *end < end_s)).collect();
        times.sort_by(f64::total_cmp);
        let moments = times.into_iter().filter_map(|time| run.at_time(time));
        moments.collect()
    }

    /// The engine speed against time in each gear of the chain, first to top, as long as it drives.
    pub(super) fn revs_in_gears(&self, run: &Run) -> Vec<Vec<[f64; 2]>> {
        let mut of_gears = vec![Vec::new(); run.gears().len()];
        let mut moments = self.moments(run).into_iter().peekable();
        for piece in run.pieces() {
            let mut within = vec![piece.from];
            while let Some(moment) = moments.next_if(|moment| moment.time_s <= piece.to.time_s) {
                within.push(moment);
            }
            let Some(points) = of_gears.get_mut(piece.gear) else {
                continue;
            };
            let drawn = within.into_iter().filter(|at| at.time_s <= self.end_s);
            points.extend(drawn.filter_map(|at| {
                let rpm = run.engine_rpm(piece, at.speed_m_s)?;
                Some([at.time_s, rpm])
            }));
        }
        of_gears
    }

    /// From when to when the diagram goes, in s: beside the lines there is room for the times of all sets.
    pub(super) fn range_s(&self) -> [f64; 2] {
        let share = COLUMN * self.sets.len() as f64;
        [0.0, next_round(self.end_s / (1.0 - share))]
    }

    /// The diagram in one spoken sentence: what it shows, then the times of each set.
    pub(super) fn spoken(&self, what: &str) -> String {
        let spoken = self.each().map(|one| {
            let name = &one.set.candidate.set.name;
            let times = one.runs.times.iter().map(|time| {
                let target = of_motion::speed_words(time.to, self.units);
                format!("{target} after {}", seconds_text(time.passage.time_s))
            });
            let times: Vec<String> = times.collect();
            if times.is_empty() {
                format!("{name} reaches none of the speeds")
            } else {
                format!("{name} {}", times.join(", "))
            }
        });
        let sets = of_all_sets(spoken);
        format!("{what} against time from rest: {sets}")
    }
}

/// Says once what the faint lines are, where there is room at an end of one.
pub(super) fn name_best(scene: &mut Scene) {
    let first = scene.lines_of(Role::Ideal).next();
    let end = first.and_then(|line| line.points.last().copied());
    if let Some(at) = end {
        scene.say_once(Label {
            text: "dotted: best shift points".to_owned(),
            role: Role::Ideal,
            of: None,
            at,
            place: Place::Beside,
        });
    }
}

/// The last time in s that is told of a run.
fn last_told_s(runs: &SetRuns) -> f64 {
    let times = runs.times.iter().map(|time| time.passage.time_s);
    let distances = runs.at_distances.iter().map(|(_, moment)| moment.time_s);
    times.chain(distances).fold(0.0, f64::max)
}

impl OneRun<'_> {
    /// The run and the one with the best shift points, by a figure that every moment has; what is read off
    /// at the pointer beside it.
    pub(super) fn lines(&self, scene: &mut Scene, runs: &Runs<'_>, figure: impl Fn(Moment) -> f64) {
        let of = self.set.of;
        scene.sets.push(self.set.shown());
        let points = runs.line(&self.runs.run, &figure);
        let baseline = self
            .baseline
            .map(|baseline| runs.line(&baseline.run, &figure));
        scene.readables.push(Readable {
            of,
            name: String::new(),
            points: points.clone(),
            baseline,
            also: self.revs(runs),
        });
        let role = Role::FullLoad;
        scene.lines.push(Line { role, of, points });
        let points = runs.line(&self.runs.best, &figure);
        let role = Role::Ideal;
        scene.lines.push(Line { role, of, points });
    }

    /// The engine speed in every gear of the run, as it is read off beside another figure.
    fn revs(&self, runs: &Runs<'_>) -> Vec<Also> {
        let of_gears = runs.revs_in_gears(&self.runs.run).into_iter();
        let with_labels = of_gears.zip(self.powertrain.chain());
        let also = with_labels.map(|(points, gear)| Also {
            name: format!("in {}, ", gear.gear.label),
            quantity: Quantity::EngineSpeed,
            points,
        });
        also.collect()
    }

    /// A dot where a run is at a time in s, and the time in the margin at the rule through the dot.
    pub(super) fn told(&self, scene: &mut Scene, [time_s, value]: [f64; 2], before_s: Option<f64>) {
        let (role, of): (Role, Owner) = (Role::Crossing, self.set.of);
        let at = [time_s, value];
        scene.points.push(Point { role, of, at });
        scene.labels.push(Label {
            text: compared_text(time_s, before_s),
            role,
            of: Some(of),
            at,
            place: Place::InColumn(self.column),
        });
    }
}

/// `9.7 s +0.2`: the time, with the difference to the baseline's where there is one.
fn compared_text(time_s: f64, before_s: Option<f64>) -> String {
    let time = seconds_text(time_s);
    let difference = before_s.map(|before_s| signed(time_s - before_s, 1));
    match difference.filter(|difference| difference != "0.0") {
        Some(difference) => format!("{time} {difference}"),
        None => time,
    }
}

/// `9.5 s`: to a tenth, as times are told.
fn seconds_text(time_s: f64) -> String {
    format!("{time_s:.1} s")
}
