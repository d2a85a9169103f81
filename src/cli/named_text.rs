//! Which text does a flag name that was copied from elsewhere?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use crate::platform::reason_in_words;
use crate::project::{Disk, LARGEST_FILE_BYTES, read_text};
use std::io::{Read, stdin};
use std::path::Path;

/// The flags that name a text.
pub(super) const TEXT_FLAGS: [Flag; 2] = [Flag::Pasted, Flag::PastedTorque];

/// What stands for standard input.
const STANDARD_INPUT: &str = "-";

/// Refuses two texts from standard input, of which one would be empty.
pub(super) fn refuse_standard_input_twice(arguments: &Arguments) -> Result<(), CliError> {
    let mut reading = Vec::new();
    for flag in TEXT_FLAGS {
        if arguments.path(flag)? == Some(Path::new(STANDARD_INPUT)) {
            reading.push(flag.name());
        }
    }
    <[String; 2]>::try_from(reading).map_or(Ok(()), |both| Err(CliError::StandardInputTwice(both)))
}

/// The text of the file that `flag` names, or of standard input where it is called `-`; whole or not
/// at all.
pub(super) fn named_text(flag: Flag, path: &Path) -> Result<String, CliError> {
    if path != Path::new(STANDARD_INPUT) {
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
