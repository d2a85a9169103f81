//! `layshaft jobs`: what the jobs of the bench come to.

use super::arguments::Arguments;
use super::error::CliError;
use super::values::{TextOrJson, text_or_json};
use super::{PRINTED, output, source};
use crate::analysis::Analysis;
use crate::sheet::{jobs, json};
use std::io::Write;

/// The exit code, when the answers are printed.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let format = text_or_json(arguments)?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    let analysis = Analysis::of(project);
    match format {
        TextOrJson::Text => output::print(stdout, &jobs::text(&analysis))?,
        TextOrJson::Json => output::print_bytes(stdout, json::jobs(&analysis)?.as_bytes())?,
    }
    output::notes(stderr, &notes);
    let workshop = &analysis.project().workshop;
    if workshop.jobs().is_empty() && workshop.plan.is_none() {
        output::message(stderr, "no jobs");
    }
    Ok(PRINTED)
}
