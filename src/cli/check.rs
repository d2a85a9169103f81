//! `layshaft check`: what is valid but strange.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::choice;
use super::{FINDINGS, PRINTED, findings, output, source};
use crate::analysis::Analysis;
use crate::sheet::json;
use std::io::Write;

/// The formats that findings can be printed in.
#[derive(Debug, Clone, Copy)]
enum Format {
    Text,
    Json,
}

/// The exit code, when the findings are printed: 1 where there are any.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let format = match arguments.once(Flag::As)? {
        None => Format::Text,
        Some(text) => choice(
            Flag::As,
            text,
            &[("text", Format::Text), ("json", Format::Json)],
        )?,
    };
    let source::Sourced { project, notes } = source::project(arguments)?;
    // Speeds change no finding, but wrong ones are answered here as everywhere.
    source::marked(arguments, &project)?;
    let analysis = Analysis::of(project);
    match format {
        Format::Text => output::print(stdout, &findings::lines(&analysis))?,
        Format::Json => {
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
