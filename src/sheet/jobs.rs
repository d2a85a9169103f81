//! What the plan and the jobs of the bench come to, in words: what is typed, state, totals and answers.

use crate::analysis::Analysis;
use crate::project::Project;
use crate::workshop::{Job, Plan, PlanTotals, Row};

/// The plan of what changes and all jobs, an empty line between them; nothing where there are none.
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
        let typed = rows.filter(|row| row.key != Job::NAME && row.answer.said().is_some());
        lines.extend(typed.map(|row| format!("  {}", row_words(job, &row))));
        lines.extend(answer.lines.iter().map(|line| format!("  - {}", line.text)));
        lines.join("\n") + "\n"
    });
    let plan = workshop.plan.as_ref();
    let plan = plan.map(|plan| plan_text(plan, analysis.project()));
    let texts: Vec<String> = plan.into_iter().chain(texts).collect();
    texts.join("\n")
}

/// The plan: of every set that it is for its totals, then its parts.
fn plan_text(plan: &Plan, project: &Project) -> String {
    let mut lines = vec!["what changes".to_owned()];
    for set in project.planned_sets() {
        let totals = PlanTotals::of(plan, set.id.into());
        let [all, open] = [totals.price, totals.open_price].map(|sum| plan.amount_text(sum));
        let (name, counts) = (&set.set.name, totals.count_text());
        lines.push(format!(
            "  {name}: {counts}; {all} in all, {open} still open"
        ));
        for part in plan.parts().iter().filter(|part| !part.is_struck) {
            let entry = part.of(set.id.into());
            let done = if entry.is_done { ", done" } else { "" };
            let words = plan.entry_text(entry);
            lines.push(format!("    {}: {words}{done}", part.name));
        }
    }
    lines.join("\n") + "\n"
}

/// `Trial shim, mm: 0.65`, of an item with its number.
fn row_words(job: &Job, row: &Row) -> String {
    let text = row.answer.text();
    match (row.key.item, job.data.item_name()) {
        (Some(at), Some(item)) => format!("{item} {}, {}: {text}", at + 1, row.name),
        _ => format!("{}: {text}", row.name),
    }
}
