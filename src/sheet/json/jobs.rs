//! What the plan and the jobs of the bench come to, as JSON.

use super::JsonError;
use super::object::Json;
use super::plan::plan;
use crate::analysis::Analysis;
use crate::workshop::{Answer, Job, JobState};

/// The keys, each with its meaning.
pub const JOB_KEYS: &[(&str, &str)] = &[
    ("plan", "the plan of what changes, null where there is none"),
    (
        "plan.currency",
        "the sign of all prices, null where none is said",
    ),
    (
        "plan.parts[]",
        "`name`, `struck`, and `sets` in the project's order: `source` (`fitted`, `donor`, `new` or null), `altered`, `to_do`, `price`, `done`",
    ),
    (
        "plan.totals[]",
        "for each set its `name`, `price`, `open_price` (of what is not done), and how many parts are `undecided`, `open` (still to be done), `as_fitted` (nothing to be done) and `done`; struck parts count for none",
    ),
    ("jobs[].name", "what the job is called"),
    ("jobs[].kind", "what kind of job it is, in words"),
    (
        "jobs[].state",
        "`open`, `to_measure`, `to_change` or `done`",
    ),
    ("jobs[].answer", "what it comes to, a sentence each"),
];

/// The plan and all jobs with their answers, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn jobs(analysis: &Analysis) -> Result<String, JsonError> {
    let jobs = analysis.project().workshop.jobs().iter();
    let jobs = jobs.zip(analysis.answers()).map(job);
    Json::Object(vec![
        ("plan", plan(analysis.project())),
        ("jobs", Json::List(jobs.collect())),
    ])
    .printed()
}

fn job((job, answer): (&Job, &Answer)) -> Json<'static> {
    let state = match answer.state {
        JobState::Open => "open",
        JobState::ToMeasure => "to_measure",
        JobState::ToChange => "to_change",
        JobState::Done => "done",
    };
    let lines = answer
        .lines
        .iter()
        .map(|line| Json::Sentence(line.text.clone()));
    Json::Object(vec![
        ("name", Json::Sentence(job.title().to_owned())),
        ("kind", Json::Text(job.data.kind().words())),
        ("state", Json::Text(state)),
        ("answer", Json::List(lines.collect())),
    ])
}
