//! From the text of a file to what a format makes of it, and back: the dialect and the layout.

use super::super::WriteError;
use ron::error::SpannedError;
use ron::extensions::Extensions;
use ron::ser::PrettyConfig;
use serde::Serialize;
use serde::de::DeserializeOwned;

/// What `text` holds.
///
/// # Errors
/// Where and why it holds no such thing.
pub(crate) fn parsed<T: DeserializeOwned>(text: &str) -> Result<T, SpannedError> {
    options().from_str(text)
}

/// The text of a whole file, with one line break at its end.
///
/// # Errors
/// When the serialiser gives up.
pub(crate) fn spelled(file: &impl Serialize) -> Result<String, WriteError> {
    let layout = PrettyConfig::new()
        .new_line("\n")
        .indentor("    ")
        .depth_limit(4)
        .escape_strings(true);
    let mut text = options().to_string_pretty(file, layout)?;
    text.push('\n');
    Ok(text)
}

/// Absent keys instead of `None`, plain values instead of `Some`: people edit these files.
fn options() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}
