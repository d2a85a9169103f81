//! Which text does a flag name that was copied from elsewhere?

use super::error::CliError;
use super::flags::Flag;
use crate::platform::reason_in_words;
use crate::project::{Disk, LARGEST_FILE_BYTES, read_text};
use std::io::{Read, stdin};
use std::path::Path;

/// The text of the file that `flag` names, or of standard input where it is called `-`; whole or not
/// at all.
pub(super) fn named_text(flag: Flag, path: &Path) -> Result<String, CliError> {
    if path != Path::new("-") {
        return Ok(read_text(&Disk, path)?);
    }
    standard_input().map_err(|reason| CliError::NoStandardInput {
        flag: flag.name(),
        reason,
    })
}

/// The text of standard input, or why there is none.
fn standard_input() -> Result<String, String> {
    let mut bytes = Vec::new();
    let read = stdin().take(LARGEST_FILE_BYTES + 1).read_to_end(&mut bytes);
    read.map_err(|error| reason_in_words(&error))?;
    if bytes.len() as u64 > LARGEST_FILE_BYTES {
        let mb = LARGEST_FILE_BYTES / (1024 * 1024);
        return Err(format!(
            "it is larger than {mb} MB, which no copied text is"
        ));
    }
    let text = String::from_utf8(bytes).ok();
    text.ok_or_else(|| "it is not text in UTF-8".to_owned())
}
