//! Which text does a flag name that was copied from elsewhere?

use super::error::CliError;
use super::flags::Flag;
use crate::platform::reason_in_words;
use crate::project::{Disk, LARGEST_FILE_BYTES, read_text};
use std::io::{Read, stdin};
use std::path::Path;

/// The text of the file that `flag` names, or of standard input where it is called `-`.
pub(super) fn named_text(flag: Flag, path: &Path) -> Result<String, CliError> {
    if path != Path::new("-") {
        return Ok(read_text(&Disk, path)?);
    }
    let mut text = String::new();
    match stdin().take(LARGEST_FILE_BYTES).read_to_string(&mut text) {
        Ok(_) => Ok(text),
        Err(error) => Err(CliError::NoStandardInput {
            flag: flag.name(),
            reason: reason_in_words(&error),
        }),
    }
}
