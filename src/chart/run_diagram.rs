//! The run diagram: road speed against time from rest, at full load, with the times to what is asked for.
//!
//! Over the run with the set's own shift points lies the same with the best ones: what lies between is what
//! better changes would gain.

use super::at_pointer::Readable;
use super::axis::{Along, Quantity, next_round};
use super::chosen::ChosenSet;
use super::marks::of_all_sets;
use super::of_motion;
use super::scene::{Label, Line, Owner, Place, Point, Role, Rule, Scene};
use crate::analysis::{Analysis, Motion, RunQuestions, SetRuns};
use crate::gearing::RoadSpeed;
use crate::motion::{Moment, Run};
use crate::project::{Project, View};
use crate::units::{KMH_PER_M_S, SpeedUnit, signed};

/// In how many steps a line goes over the time of a run.
const STEPS: u32 = 160;

/// How much longer than the last time that is told the diagram goes.
const ROOM: f64 = 1.06;

/// The run diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let project = analysis.project();
    let scene = Scene {
        without_reading: "not under way",
        ..Scene::empty(
            View::Run,
            Quantity::Time,
            Quantity::RoadSpeed(project.units),
        )
    };
    match analysis.motion() {
        Ok(motion) => drawn(scene, project, motion, sets),
        Err(reason) => of_motion::without(scene, reason),
    }
}

fn drawn(scene: Scene, project: &Project, motion: &Motion, sets: &[ChosenSet<'_>]) -> Scene {
    let mut questions = RunQuestions::usual(project.marked_road_speeds.as_slice());
    // 100 km/h and 60 mph lie too close for the words of both.
    let is_in_unit = |to: &RoadSpeed| of_motion::roundest(&[*to], project.units) == project.units;
    questions.to.retain(is_in_unit);
    let runs = motion.runs(&questions);
    let shown = sets.iter().filter_map(|set| runs.get(set.of.place));
    let last_s = shown.map(last_told_s).fold(1.0, f64::max);
    let mut sheet = Sheet {
        units: project.units,
        end_s: next_round(last_s * ROOM),
        fastest: 0.0,
        scene,
    };
    let baseline = runs.get(project.sets.baseline_place());
    sheet.targets(&questions);
    for set in sets {
        let Some(of_set) = runs.get(set.of.place) else {
            continue;
        };
        sheet.set(set, of_set, baseline.filter(|_| set.baseline.is_some()));
    }
    sheet.finished(sets, &runs)
}

/// The last time in s that is told of a run.
fn last_told_s(runs: &SetRuns) -> f64 {
    let times = runs.times.iter().map(|time| time.passage.time_s);
    let distances = runs.at_distances.iter().map(|(_, moment)| moment.time_s);
    times.chain(distances).fold(0.0, f64::max)
}

struct Sheet {
    units: SpeedUnit,
    /// How long the diagram goes.
    end_s: f64,
    /// The highest road speed so far, in the project's unit.
    fastest: f64,
    scene: Scene,
}

impl Sheet {
    fn point(&self, moment: Moment) -> [f64; 2] {
        let speed = self.units.from_kmh(moment.speed_m_s * KMH_PER_M_S);
        [moment.time_s, speed]
    }

    /// The road speeds that times are told to.
    fn targets(&mut self, questions: &RunQuestions) {
        for to in &questions.to {
            let at = self.units.from_kmh(to.kmh());
            self.scene.rules.push(Rule {
                role: Role::Marked,
                along: Along::X,
                at,
            });
            self.scene.say_once(Label {
                text: of_motion::speed_words(*to, self.units),
                role: Role::Marked,
                of: None,
                at: [0.0, at],
                place: Place::AtEnd,
            });
        }
    }

    fn set(&mut self, set: &ChosenSet<'_>, runs: &SetRuns, baseline: Option<&SetRuns>) {
        self.scene.sets.push(set.shown());
        let points = self.line(&runs.run);
        let fastest = points.iter().map(|point| point[1]).fold(0.0, f64::max);
        self.fastest = self.fastest.max(fastest);
        self.scene.readables.push(Readable {
            of: set.of,
            name: String::new(),
            baseline: baseline.map(|baseline| self.line(&baseline.run)),
            points: points.clone(),
        });
        let (role, of) = (Role::FullLoad, set.of);
        self.scene.lines.push(Line { role, of, points });
        let points = self.line(&runs.best);
        let role = Role::Ideal;
        self.scene.lines.push(Line { role, of, points });
        self.told(of, runs, baseline);
    }

    /// The times to the targets, and the first distance.
    fn told(&mut self, of: Owner, runs: &SetRuns, baseline: Option<&SetRuns>) {
        for time in &runs.times {
            let at = [time.passage.time_s, self.units.from_kmh(time.to.kmh())];
            let mut times = baseline.iter().flat_map(|runs| &runs.times);
            let before = times.find(|before| before.to == time.to);
            let before_s = before.map(|before| before.passage.time_s);
            self.crossing(of, at, compared_text(time.passage.time_s, before_s));
        }
        if let Some((distance_m, moment)) = runs.at_distances.first() {
            let before = baseline.and_then(|runs| runs.at_distances.first());
            let before_s = before.map(|(_, moment)| moment.time_s);
            let time = compared_text(moment.time_s, before_s);
            let at = self.point(*moment);
            self.crossing(of, at, format!("{distance_m} m {time}"));
        }
    }

    fn crossing(&mut self, of: Owner, at: [f64; 2], text: String) {
        let role = Role::Crossing;
        self.scene.points.push(Point { role, of, at });
        self.scene.say_once(Label {
            text,
            role,
            of: Some(of),
            at,
            place: Place::Beside,
        });
    }

    /// Speed against time; where a piece ends there is a point, so that corners stay.
    fn line(&self, run: &Run) -> Vec<[f64; 2]> {
        let end_s = self.end_s.min(run.end().time_s);
        let even = (0..=STEPS).map(|step| end_s * f64::from(step) / f64::from(STEPS));
        let ends = run.pieces().iter().map(|piece| piece.to.time_s);
        let mut times: Vec<f64> = even.chain(ends.filter(|end| *end < end_s)).collect();
        times.sort_by(f64::total_cmp);
        let moments = times.into_iter().filter_map(|time| run.at_time(time));
        moments.map(|moment| self.point(moment)).collect()
    }

    fn finished(mut self, sets: &[ChosenSet<'_>], runs: &[SetRuns]) -> Scene {
        self.scene.x.range = [0.0, self.end_s];
        self.scene.y.range = [0.0, next_round(self.fastest * 1.05)];
        let spoken = sets.iter().filter_map(|set| {
            let name = &set.candidate.set.name;
            let times = runs.get(set.of.place)?.times.iter().map(|time| {
                let target = of_motion::speed_words(time.to, self.units);
                format!("{target} after {}", seconds_text(time.passage.time_s))
            });
            let times: Vec<String> = times.collect();
            Some(if times.is_empty() {
                format!("{name} reaches none of the speeds")
            } else {
                format!("{name} {}", times.join(", "))
            })
        });
        let sets = of_all_sets(spoken);
        self.scene.summary = format!("Road speed against time from rest: {sets}");
        self.scene
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
