//! The table of runs: times and distances from rest, times in one gear, the shift points with the best ones
//! beside them, rolling down.

use super::by_gear::{Gears, name_other};
use super::{FigureCell, FigureColumn, FigurePart, FigureRow, FigureTable};
use crate::analysis::{
    DISTANCES_M, Motion, ProjectResults, QUARTER_MILE_M, RunQuestions, RunTime, SetRuns,
};
use crate::chart::of_motion::{best_rpm_text, roundest, speed_words};
use crate::gearing::{Gear, RoadSpeed};
use crate::motion::LONGEST_RUN_S;
use crate::project::{Candidate, Project};
use crate::units::{
    KMH_PER_M_S, SpeedUnit, mark_text, plain_number, round_to, signed, typed_rpm_text,
};

/// What every reader of these figures should know.
fn notes(questions: &RunQuestions) -> Vec<String> {
    let best = "Best shift points are those for all speeds beyond; a target just behind a change may come later.";
    let notes = match questions.from {
        None => vec!["Estimates at full load, from standstill.", best],
        Some(_) => vec!["Estimates at full load; distances from standstill."],
    };
    let caution = ["Against the clock only on closed roads."];
    notes
        .into_iter()
        .chain(caution)
        .map(str::to_owned)
        .collect()
}

impl FigureTable {
    /// The runs of every set, with what was asked of them.
    pub fn run(
        project: &Project,
        results: &ProjectResults,
        motion: &Motion,
        questions: &RunQuestions,
    ) -> Self {
        let runs = motion.runs(questions);
        let baseline_place = project.sets.baseline_place();
        let pairs = pairs(&runs);
        let gears = Gears {
            project,
            results,
            motion,
            speeds: &questions.to,
        };
        Self::of_motion((project, motion), notes(questions), |place, candidate| {
            let told = Told {
                runs: &runs[place],
                baseline: runs.get(baseline_place).filter(|_| place != baseline_place),
                questions,
                units: project.units,
            };
            let mut parts = Vec::new();
            if questions.from.is_none() {
                parts.push(told.to_targets());
            }
            parts.push(told.distances());
            parts.push(told.in_gear(&gears, place, &pairs));
            parts.push(told.changes(candidate));
            if let Some(coast) = questions.coast {
                parts.push(told.coast(coast));
            }
            (told.facts(motion), parts)
        })
    }
}

/// What is told of the runs of one set.
struct Told<'a> {
    runs: &'a SetRuns,
    /// What it is compared with; none in the baseline itself.
    baseline: Option<&'a SetRuns>,
    questions: &'a RunQuestions,
    units: SpeedUnit,
}

impl Told<'_> {
    /// How it starts and changes gear, and what of the time is its first foot.
    fn facts(&self, motion: &Motion) -> Vec<String> {
        let pause = motion.driving.pause.s();
        let changes = if pause > 0.0 {
            format!("Each change takes {} s", plain_number(pause))
        } else {
            "Changes take no time".to_owned()
        };
        let starts = self.runs.rollout_s.is_some();
        let launch = self.runs.run.gears().first().map(|first| {
            let starts = if starts { "Starts" } else { "Does not start" };
            format!("{starts} at {} rpm", typed_rpm_text(first.held_rpm))
        });
        let rollout = self.runs.rollout_s;
        let rollout = rollout.map(|s| format!("Rolls the first foot in {} s", seconds_text(s)));
        let missed = starts.then(|| self.missed()).flatten();
        let never = missed.into_iter().chain(self.in_no_gear());
        let never = never.chain(self.rolls_on());
        let start = launch.into_iter().chain([changes]).chain(rollout);
        start.chain(never).collect()
    }

    /// What is not reached from rest, whichever shift points are used; none where everything is.
    fn missed(&self) -> Option<String> {
        let runs = self.runs;
        let mut targets = self.questions.to.clone();
        targets.retain(|to| {
            let mut times = runs.times.iter().chain(&runs.times_best);
            self.questions.from.is_none() && !times.any(|time| time.to == *to)
        });
        let reached = runs.at_distances.len();
        let targets = targets.iter().map(|to| speed_words(*to, self.units));
        let ways = DISTANCES_M.iter().skip(reached).copied();
        let missed: Vec<String> = targets.chain(ways.map(distance_text)).collect();
        let minutes = plain_number(LONGEST_RUN_S / 60.0);
        let missed = (!missed.is_empty()).then(|| missed.join(" or "));
        missed.map(|missed| format!("Does not reach {missed} in {minutes} minutes"))
    }

    /// Between which speeds that were asked for no gear is driven.
    fn in_no_gear(&self) -> Vec<String> {
        let pairs = self
            .questions
            .from
            .into_iter()
            .flat_map(|from| self.questions.to.iter().map(move |to| [from, *to]));
        let timed = pairs_of(self.runs);
        let untimed = pairs.filter(|pair| !timed.contains(pair));
        let said = untimed.map(|pair| format!("No gear goes from {}", self.passage(&pair)));
        said.collect()
    }

    /// That it does not roll down to the speed that was asked for.
    fn rolls_on(&self) -> Option<String> {
        let asked = self.questions.coast.filter(|_| self.runs.coast.is_none());
        asked.map(|[_, to]| {
            format!(
                "Does not slow down to {} in neutral",
                speed_words(to, self.units)
            )
        })
    }

    /// Each change of the chain: when it is made, and when it would be best.
    fn changes(&self, candidate: &Candidate) -> FigurePart {
        let gears: Vec<&Gear> = candidate.set.chain().collect();
        let shifts = self.runs.shift_rpms.iter().zip(&self.runs.best_shift_rpms);
        let rows = gears
            .windows(2)
            .zip(shifts)
            .map(|(pair, (shift, best))| FigureRow {
                // The one that is changed out of.
                gear: pair.first().map(|gear| gear.id),
                label: pair
                    .iter()
                    .map(|gear| gear.label.as_str())
                    .collect::<Vec<_>>()
                    .join("–"),
                remark: None,
                cells: vec![
                    FigureCell::of(Some(*shift), typed_rpm_text),
                    FigureCell::of(Some(*best), best_rpm_text),
                ],
            });
        FigurePart {
            title: "Changing up",
            is_said: false,
            names: "change",
            columns: columns(&[("shift at", "rpm"), ("best", "rpm")]),
            rows: rows.collect(),
        }
    }

    /// From rest to each target, as shifted, with the best shift points, and without the last change where
    /// that is sooner.
    fn to_targets(&self) -> FigurePart {
        let find = |times: &[RunTime], to: RoadSpeed| -> Option<RunTime> {
            times.iter().find(|time| time.to == to).cloned()
        };
        let time_s = |time: &Option<RunTime>| time.as_ref().map(|time| time.passage.time_s);
        let rows = self.questions.to.iter().map(|to| {
            let time = find(&self.runs.times, *to);
            let best = find(&self.runs.times_best, *to);
            let stays = find(&self.runs.times_staying, *to);
            let before = self.baseline.and_then(|runs| find(&runs.times, *to));
            let best_before = self.baseline.and_then(|runs| find(&runs.times_best, *to));
            let gear = stays.as_ref().and_then(|time| time.gear.clone());
            FigureRow {
                gear: None,
                label: self.target(*to),
                remark: None,
                cells: vec![
                    match time_s(&time) {
                        None => FigureCell::remark("not reached"),
                        reached => seconds(reached, time_s(&before)),
                    },
                    FigureCell::of(time.map(|time| time.passage.distance_m), whole_text),
                    seconds(time_s(&best), time_s(&best_before)),
                    seconds(time_s(&stays), None),
                    FigureCell::word(gear.unwrap_or_default()),
                ],
            }
        });
        FigurePart {
            title: "From rest",
            is_said: true,
            names: "target",
            columns: columns(&[
                ("time", "s"),
                ("distance", "m"),
                ("best shift points", "s"),
                ("staying in gear", "s"),
                ("gear", ""),
            ]),
            rows: rows.collect(),
        }
    }

    /// From rest over each distance, with the speed at its end.
    fn distances(&self) -> FigurePart {
        let rows = self.runs.at_distances.iter().enumerate();
        let rows = rows.map(|(at, (distance_m, moment))| {
            // Whoever reaches the far one has reached the near one.
            let before = self.baseline.and_then(|runs| runs.at_distances.get(at));
            let speed = self.units.from_kmh(moment.speed_m_s * KMH_PER_M_S);
            FigureRow {
                gear: None,
                label: distance_text(*distance_m),
                remark: None,
                cells: vec![
                    seconds(Some(moment.time_s), before.map(|(_, moment)| moment.time_s)),
                    FigureCell::of(Some(speed), whole_text),
                ],
            }
        });
        FigurePart {
            title: "Over a distance",
            is_said: true,
            names: "distance",
            columns: columns(&[("time", "s"), ("speed at the end", self.units.sign())]),
            rows: rows.collect(),
        }
    }

    /// In each gear between each pair of speeds.
    fn in_gear(&self, gears: &Gears<'_>, place: usize, pairs: &[[RoadSpeed; 2]]) -> FigurePart {
        let driven = gears.motion.sets[place].powertrain.gears.iter();
        let rows = driven.map(|powered| {
            let label = &powered.gear.label;
            let like = self.baseline.zip(gears.like(place, powered));
            let cells = pairs.iter().map(|pair| {
                let before = like
                    .as_ref()
                    .and_then(|(runs, like)| time_in_gear(runs, &like.gear.gear.label, pair));
                seconds(time_in_gear(self.runs, label, pair), before)
            });
            let mut cells: Vec<FigureCell> = cells.collect();
            if let Some((_, like)) = &like {
                name_other(&mut cells, like);
            }
            FigureRow {
                gear: Some(powered.gear.id),
                label: label.clone(),
                remark: None,
                cells,
            }
        });
        let has_any = |row: &FigureRow| row.cells.iter().any(|cell| cell.number.is_some());
        FigurePart {
            title: "In one gear",
            is_said: false,
            names: "gear",
            columns: pairs
                .iter()
                .map(|pair| FigureColumn {
                    title: self.passage(pair),
                    unit: "s",
                })
                .collect(),
            rows: rows.filter(has_any).collect(),
        }
    }

    /// Rolling down in neutral.
    fn coast(&self, between: [RoadSpeed; 2]) -> FigurePart {
        let before = self.baseline.and_then(|runs| runs.coast);
        let coast = self.runs.coast;
        let cells = vec![
            seconds(coast.map(|c| c.time_s), before.map(|c| c.time_s)),
            FigureCell::of(coast.map(|c| c.distance_m), whole_text),
        ];
        FigurePart {
            title: "Rolling in neutral",
            is_said: false,
            names: "from and to",
            columns: columns(&[("time", "s"), ("distance", "m")]),
            rows: vec![FigureRow {
                gear: None,
                label: self.passage(&between),
                remark: None,
                cells,
            }],
        }
    }

    /// `to 100 km/h`.
    fn target(&self, to: RoadSpeed) -> String {
        format!("to {}", speed_words(to, self.units))
    }

    /// `80 to 120 km/h`.
    fn passage(&self, between: &[RoadSpeed; 2]) -> String {
        let unit = roundest(between, self.units);
        let [from, to] = between.map(|speed| mark_text(speed.kmh(), unit));
        format!("{from} to {to} {}", unit.sign())
    }
}

/// The pairs of speeds that any gear of any set is timed between.
fn pairs(all: &[SetRuns]) -> Vec<[RoadSpeed; 2]> {
    let mut pairs = Vec::new();
    for pair in all.iter().flat_map(pairs_of) {
        if !pairs.contains(&pair) {
            pairs.push(pair);
        }
    }
    pairs
}

/// Those of one set, as often as a gear is timed between them.
fn pairs_of(runs: &SetRuns) -> Vec<[RoadSpeed; 2]> {
    let times = runs.times_in_gear.iter();
    let pairs = times.filter_map(|time| Some([time.from?, time.to]));
    pairs.collect()
}

/// The time in s of a gear between two speeds.
fn time_in_gear(runs: &SetRuns, label: &str, [from, to]: &[RoadSpeed; 2]) -> Option<f64> {
    let mut times = runs.times_in_gear.iter();
    let is_it = |time: &&RunTime| {
        time.gear.as_deref() == Some(label) && time.from == Some(*from) && time.to == *to
    };
    times.find(is_it).map(|time| time.passage.time_s)
}

fn columns(headings: &[(&str, &'static str)]) -> Vec<FigureColumn> {
    let column = |(title, unit): &(&str, &'static str)| FigureColumn {
        title: (*title).to_owned(),
        unit,
    };
    headings.iter().map(column).collect()
}

/// A time beside that of the baseline.
fn seconds(time_s: Option<f64>, before_s: Option<f64>) -> FigureCell {
    let difference = |time: f64, before: f64| signed(time - before, 2);
    FigureCell::of(time_s, seconds_text).against(before_s, difference)
}

/// A time in s to a hundredth.
fn seconds_text(time_s: f64) -> String {
    format!("{time_s:.2}")
}

/// A way in m or a road speed in whole numbers.
fn whole_text(number: f64) -> String {
    plain_number(round_to(number, 1.0))
}

/// `400 m`, `¼ mile`.
fn distance_text(distance_m: f64) -> String {
    if (distance_m - QUARTER_MILE_M).abs() < 1e-9 {
        "¼ mile".to_owned()
    } else {
        format!("{} m", plain_number(distance_m))
    }
}
