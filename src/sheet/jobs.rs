//! What the jobs of the bench come to, in words: what is typed of each, its state and its answer.

use crate::analysis::Analysis;
use crate::workshop::{Job, Row};

/// All jobs, an empty line between them; nothing where there are none.
pub fn text(analysis: &Analysis) -> String {
    let workshop = &analysis.project().workshop;
    let jobs = (1..).zip(workshop.jobs().iter().zip(analysis.answers()));
    let texts = jobs.map(|(number, (job, answer))| {
        let mut lines = vec![format!(
            "{number} {}: {}",
            job.title(),
            answer.state.words()
        )];
        let rows = job.rows(workshop.units).into_iter();
        let typed = rows.filter(|row| row.key != Job::NAME && !row.answer.text().is_empty());
        lines.extend(typed.map(|row| format!("  {}", row_words(job, &row))));
        lines.extend(answer.lines.iter().map(|line| format!("  - {}", line.text)));
        lines.join("\n") + "\n"
    });
    texts.collect::<Vec<_>>().join("\n")
}

/// `Trial shim, mm: 0.65`, of an item with its number.
fn row_words(job: &Job, row: &Row) -> String {
    let text = row.answer.text();
    match (row.key.item, job.data.item_name()) {
        (Some(at), Some(item)) => format!("{item} {}, {}: {text}", at + 1, row.name),
        _ => format!("{}: {text}", row.name),
    }
}
