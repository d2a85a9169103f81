//! Jobs of the bench, typed and chosen by the names of their fields, and what their answers say.

use layshaft::units::BenchUnits;
use layshaft::workshop::{
    Answer, FieldKey, Job, JobId, JobKind, JobState, LineKind, Row, RowAnswer,
};

/// A job in which these are typed and chosen, in mm and N·m: `play` is a field of the job, `shim 2` that of its
/// second item. What is chosen is named by how its words begin.
pub(crate) fn job(kind: JobKind, fields: &[(&str, &str)]) -> Job {
    let job = Job {
        id: JobId(1),
        name: None,
        remark: None,
        data: kind.begun(),
    };
    filled(job, fields)
}

/// The job with these typed and chosen.
pub(crate) fn filled(job: Job, fields: &[(&str, &str)]) -> Job {
    fields.iter().fold(job, |job, (name, text)| {
        let (name, item) = match name.split_once(' ') {
            None => (*name, None),
            Some((name, number)) => (name, Some(number.parse::<u8>().unwrap() - 1)),
        };
        with(job, name, item, text)
    })
}

fn with(mut job: Job, name: &str, item: Option<u8>, text: &str) -> Job {
    let units = BenchUnits::default();
    while item.is_some_and(|at| usize::from(at) >= job.data.item_count()) {
        job = job.with_item().unwrap();
    }
    let is_asked = |row: &Row| row.key.name == name && row.key.item == item;
    let row = job.rows(units).into_iter().find(is_asked);
    let row = row.unwrap_or_else(|| panic!("no field {name} is asked for"));
    match row.answer {
        RowAnswer::Typed(_) => job.with(row.key, text, units).unwrap(),
        RowAnswer::Chosen { options, .. } => {
            let whole = options.iter().position(|words| *words == text);
            let at = whole.or_else(|| options.iter().position(|words| words.starts_with(text)));
            job.choosing(row.key, at.unwrap()).unwrap()
        }
    }
}

/// What stands in a field, in these units.
pub(crate) fn text_of(job: &Job, key: FieldKey, units: BenchUnits) -> String {
    let rows = job.rows(units);
    let row = rows.iter().find(|row| row.key == key).unwrap();
    row.answer.text().to_owned()
}

/// The answer of the job in mm and N·m.
pub(crate) fn answer(job: &Job) -> Answer {
    job.answer(BenchUnits::default())
}

/// How far the job has come.
pub(crate) fn state(job: &Job) -> JobState {
    answer(job).state
}

/// The lines of a kind that the answer has.
pub(crate) fn lines(job: &Job, kind: LineKind) -> Vec<String> {
    let lines = answer(job).lines.into_iter();
    let lines = lines.filter(|line| line.kind == kind);
    lines.map(|line| line.text).collect()
}

/// Fails unless the job has come so far and one of its lines of the kind says that.
#[track_caller]
pub(crate) fn assert_says(job: &Job, state: JobState, kind: LineKind, says: &str) {
    let answer = answer(job);
    assert_eq!(answer.state, state, "{answer:#?}");
    let is_said = lines(job, kind).iter().any(|line| line.contains(says));
    assert!(is_said, "{says} is not in {answer:#?}");
}
