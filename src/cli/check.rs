//! `layshaft check`: what is valid but strange.

use super::arguments::Arguments;
use super::error::CliError;
use super::values::{TextOrJson, text_or_json};
use super::{FINDINGS, PRINTED, findings, output, source};
use crate::analysis::Analysis;
use crate::sheet::json;
use std::io::Write;

/// The exit code, when the findings are printed: 1 where there are any.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let format = text_or_json(arguments)?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    // Speeds change no finding, but wrong ones are answered here as everywhere.
    source::marked(arguments, &project)?;
    let analysis = Analysis::of(project);
    match format {
        TextOrJson::Text => output::print(stdout, &findings::lines(&analysis))?,
        TextOrJson::Json => {
            output::print_bytes(stdout, json::check(&analysis)?.as_bytes())?;
        }
    }
    output::notes(stderr, &notes);
    if !analysis.findings().is_empty() {
        return Ok(FINDINGS);
    }
    output::message(stderr, "no findings");
    Ok(PRINTED)
}
