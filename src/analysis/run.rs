//! The runs of a set: from rest with its own shift points and with the best ones, in one gear, and rolling
//! down.

use super::motion::{Motion, SetMotion};
use crate::gearing::RoadSpeed;
use crate::motion::{Moment, Passage, PoweredGear, ROLLOUT_M, Run, RunGoal};
use crate::units::{KM_PER_MILE, KMH_PER_M_S, SpeedUnit};

/// A quarter of a mile in m.
pub const QUARTER_MILE_M: f64 = KM_PER_MILE * 1000.0 / 4.0;

/// The distances in m that times are told for.
pub const DISTANCES_M: [f64; 2] = [400.0, QUARTER_MILE_M];

/// The road speed that every vehicle is timed to, from rest: 100 km/h or 60 mph.
///
/// # Source
/// Common practice, no source.
pub(super) fn usual_target(unit: SpeedUnit) -> Option<RoadSpeed> {
    typed(match unit {
        SpeedUnit::Kmh => 100.0,
        SpeedUnit::Mph => 60.0 * KM_PER_MILE,
    })
}

/// The road speeds in km/h between which every gear is timed: 60–100 and 80–120 km/h, 50–70 mph.
///
/// # Source
/// Common practice, no source.
const IN_GEAR_KMH: [[f64; 2]; 3] = [
    [60.0, 100.0],
    [80.0, 120.0],
    [50.0 * KM_PER_MILE, 70.0 * KM_PER_MILE],
];

/// What is asked of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct RunQuestions {
    /// Where times in gear begin; none where the run from rest is asked for.
    pub from: Option<RoadSpeed>,
    /// The road speeds that times are told to, in the order in which they are told.
    pub to: Vec<RoadSpeed>,
    /// Between which road speeds it rolls in neutral, the higher first.
    pub coast: Option<[RoadSpeed; 2]>,
}

impl RunQuestions {
    /// From rest to what every vehicle is timed to and to the marked speeds, slowest first.
    pub fn usual(marked: &[RoadSpeed]) -> Self {
        let usual = SpeedUnit::ALL.into_iter().filter_map(usual_target);
        let mut to: Vec<RoadSpeed> = marked.iter().copied().chain(usual).collect();
        to.sort_by(|a, b| a.kmh().total_cmp(&b.kmh()));
        to.dedup();
        Self {
            from: None,
            to,
            coast: None,
        }
    }
}

/// How long it takes from one road speed to another, and how far it goes meanwhile.
#[derive(Debug, Clone, PartialEq)]
pub struct RunTime {
    /// Where it begins; none from standstill.
    pub from: Option<RoadSpeed>,
    /// Where it ends.
    pub to: RoadSpeed,
    /// The label of the gear that is driven to the end; none where the gears are changed as asked.
    pub gear: Option<String>,
    /// Time and distance.
    pub passage: Passage,
}

/// The runs of one set with what was asked of them.
#[derive(Debug, Clone, PartialEq)]
pub struct SetRuns {
    /// The engine speeds in rev/min at which it is changed up, one for each change.
    pub shift_rpms: Vec<f64>,
    /// The best ones for speed.
    pub best_shift_rpms: Vec<f64>,
    /// The run from rest with its own shift points.
    pub run: Run,
    /// The same with the best ones.
    pub best: Run,
    /// From rest, with its own shift points; what is not reached is left out.
    pub times: Vec<RunTime>,
    /// The same with the best ones.
    pub times_best: Vec<RunTime>,
    /// Without the last change before the target, where that is there sooner: in the gear that is left then.
    pub times_staying: Vec<RunTime>,
    /// At full load in one gear, for each gear that covers both speeds.
    pub times_in_gear: Vec<RunTime>,
    /// Where the run is at each distance that it reaches, with the distance in m that was asked for.
    pub at_distances: Vec<(f64, Moment)>,
    /// How long it takes to the end of the rollout, in s; none where it does not get there.
    pub rollout_s: Option<f64>,
    /// Rolling down in neutral; none where that was not asked for, or does not end.
    pub coast: Option<Passage>,
}

impl Motion {
    /// The runs of every set.
    pub fn runs(&self, questions: &RunQuestions) -> Vec<SetRuns> {
        let sets = self.sets.iter().enumerate();
        sets.map(|(place, set)| SetRuns::of(set, self, place, questions))
            .collect()
    }
}

impl SetRuns {
    fn of(set: &SetMotion, motion: &Motion, place: usize, questions: &RunQuestions) -> Self {
        let (powertrain, on_road) = (&set.powertrain, &set.on_road);
        let driving = &motion.driving;
        let targets: &[RoadSpeed] = match questions.from {
            None => &questions.to,
            Some(_) => &[],
        };
        let goal = goal(targets);
        let shift_rpms = powertrain.shift_rpms();
        let best_shift_rpms = motion.best_shift_rpms(place).to_vec();
        let run = powertrain.run(on_road, driving, &shift_rpms, goal);
        let best = powertrain.run(on_road, driving, &best_shift_rpms, goal);
        let times_staying = targets.iter().filter_map(|to| {
            let stays =
                powertrain.run_in_gear_to_target(&run, on_road, driving, &shift_rpms, m_s(*to))?;
            let gear = powertrain
                .chain()
                .nth(stays.gears().len().checked_sub(1)?)?;
            from_rest(&stays, *to, Some(gear))
        });
        let distances = DISTANCES_M.iter();
        let coast = questions.coast.and_then(|[from, to]| {
            let radius_m = powertrain.gears.first()?.rolling_radius_m;
            on_road.coast_down(radius_m, m_s(from), m_s(to))
        });
        Self {
            times: times(&run, targets),
            times_best: times(&best, targets),
            times_staying: times_staying.collect(),
            times_in_gear: in_gear(set, questions),
            at_distances: distances
                .filter_map(|distance| Some((*distance, run.at_distance(*distance)?)))
                .collect(),
            rollout_s: run.at_distance(ROLLOUT_M).map(|moment| moment.time_s),
            coast,
            shift_rpms,
            best_shift_rpms,
            run,
            best,
        }
    }
}

/// Far and fast enough for everything that is told of a run.
fn goal(targets: &[RoadSpeed]) -> RunGoal {
    RunGoal {
        speed_m_s: targets.iter().copied().map(m_s).fold(0.0, f64::max),
        distance_m: DISTANCES_M.iter().copied().fold(ROLLOUT_M, f64::max),
    }
}

fn times(run: &Run, targets: &[RoadSpeed]) -> Vec<RunTime> {
    let targets = targets.iter();
    targets.filter_map(|to| from_rest(run, *to, None)).collect()
}

fn from_rest(run: &Run, to: RoadSpeed, gear: Option<&PoweredGear>) -> Option<RunTime> {
    let reached = run.at_speed(m_s(to))?;
    Some(RunTime {
        from: None,
        to,
        gear: gear.map(|powered| powered.gear.label.clone()),
        passage: Passage {
            time_s: reached.time_s,
            distance_m: reached.distance_m,
        },
    })
}

/// Between the speeds that were asked for, else between the usual ones: gear by gear.
fn in_gear(set: &SetMotion, questions: &RunQuestions) -> Vec<RunTime> {
    let usual = || {
        let pairs = IN_GEAR_KMH.iter();
        let pairs = pairs.filter_map(|[from, to]| Some([typed(*from)?, typed(*to)?]));
        pairs.collect()
    };
    let asked = |from: RoadSpeed| questions.to.iter().map(|to| [from, *to]).collect();
    let asked: Vec<[RoadSpeed; 2]> = questions.from.map_or_else(usual, asked);
    let of_all = asked.iter().flat_map(|[from, to]| {
        set.powertrain.gears.iter().filter_map(|powered| {
            Some(RunTime {
                from: Some(*from),
                to: *to,
                gear: Some(powered.gear.label.clone()),
                passage: powered.in_gear(&set.on_road, m_s(*from), m_s(*to))?,
            })
        })
    });
    of_all.collect()
}

fn typed(kmh: f64) -> Option<RoadSpeed> {
    RoadSpeed::from_kmh(kmh).ok()
}

pub(super) fn m_s(speed: RoadSpeed) -> f64 {
    speed.kmh() / KMH_PER_M_S
}
