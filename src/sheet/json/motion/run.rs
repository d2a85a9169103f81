//! Runs as JSON: times, distances, the best shift points, rolling down.

use super::{Entries, printed};
use crate::analysis::{Analysis, Motion, RunQuestions, RunTime, SetRuns};
use crate::gearing::RoadSpeed;
use crate::sheet::json::JsonError;
use crate::sheet::json::object::Json;
use crate::units::KMH_PER_M_S;

/// The runs of every set; pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub(in super::super) fn run(
    analysis: &Analysis,
    motion: &Motion,
    questions: &RunQuestions,
) -> Result<String, JsonError> {
    let runs = motion.runs(questions);
    let of_set = |place: usize| {
        runs.get(place)
            .map_or_else(Vec::new, |r| of_set(r, questions))
    };
    printed(
        analysis,
        motion,
        |place, _| of_set(place),
        |_, _| Vec::new(),
    )
}

fn of_set<'a>(runs: &SetRuns, questions: &RunQuestions) -> Entries<'a> {
    let times = runs.times.iter().chain(&runs.times_in_gear);
    let mut entries = vec![
        ("shift_rpm", numbers(&runs.shift_rpms)),
        ("best_shift_rpm", numbers(&runs.best_shift_rpms)),
        ("times", list(times)),
        ("times_best", list(runs.times_best.iter())),
        ("times_staying", list(runs.times_staying.iter())),
        ("distances", distances(runs)),
        ("rollout_s", Json::number(runs.rollout_s)),
    ];
    if let Some([from, to]) = questions.coast {
        let coast = runs.coast.map_or(Json::Null, |passage| {
            Json::Object(vec![
                ("from_kmh", Json::Number(from.kmh())),
                ("to_kmh", Json::Number(to.kmh())),
                ("time_s", Json::Number(passage.time_s)),
                ("distance_m", Json::Number(passage.distance_m)),
            ])
        });
        entries.push(("coast", coast));
    }
    entries
}

fn numbers<'a>(numbers: &[f64]) -> Json<'a> {
    Json::List(numbers.iter().copied().map(Json::Number).collect())
}

fn list<'r, 'a>(times: impl Iterator<Item = &'r RunTime>) -> Json<'a> {
    let times = times.map(|time| {
        let gear = time.gear.clone();
        Json::Object(vec![
            (
                "from_kmh",
                Json::Number(time.from.map_or(0.0, RoadSpeed::kmh)),
            ),
            ("to_kmh", Json::Number(time.to.kmh())),
            ("gear", gear.map_or(Json::Null, Json::Sentence)),
            ("time_s", Json::Number(time.passage.time_s)),
            ("distance_m", Json::Number(time.passage.distance_m)),
        ])
    });
    Json::List(times.collect())
}

fn distances<'a>(runs: &SetRuns) -> Json<'a> {
    let distances = runs.at_distances.iter().map(|(distance_m, moment)| {
        Json::Object(vec![
            ("distance_m", Json::Number(*distance_m)),
            ("time_s", Json::Number(moment.time_s)),
            ("speed_kmh", Json::Number(moment.speed_m_s * KMH_PER_M_S)),
        ])
    });
    Json::List(distances.collect())
}
