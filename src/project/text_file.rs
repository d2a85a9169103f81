//! The reader of text files, which is not led astray.
//!
//! Nothing is read but ordinary files of bounded size that hold UTF-8; what the text means is
//! decided elsewhere.

use std::io::{self, ErrorKind, Read};
use std::path::{Path, PathBuf};

use super::digest::digest;
use super::file_system::{EntryKind, FileSystem, reason, shown};

/// The size of the largest file that is read, in bytes: 16 MB of 1024 × 1024 bytes each.
///
/// A project file has a few thousand bytes; this leaves room for torque curves and notes while a
/// video that was picked by mistake is refused at once.
pub const LARGEST_FILE_BYTES: u64 = 16 * 1024 * 1024;

/// What some editors write before the text to say that it is UTF-8.
const BYTE_ORDER_MARK: &[u8] = b"\xEF\xBB\xBF";

/// Why a file could not be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// Nothing has this name.
    #[error("there is no such file: {}", shown(path))]
    NotFound {
        /// The path as given.
        path: PathBuf,
    },
    /// A folder has this name.
    #[error("this is a folder, choose a file in it: {}", shown(path))]
    IsAFolder {
        /// The path as given.
        path: PathBuf,
    },
    /// A device, a pipe or a socket.
    #[error(
        "this is a device or a pipe, only ordinary files are read: {}",
        shown(path)
    )]
    NotAFile {
        /// The path as given.
        path: PathBuf,
    },
    /// More than [`LARGEST_FILE_BYTES`].
    #[error(
        "the file is larger than 16 MB, which no project file is: {}",
        shown(path)
    )]
    TooLarge {
        /// The path as given.
        path: PathBuf,
    },
    /// Not UTF-8.
    #[error(
        "line {line}, column {column} is not text, save the file as UTF-8: {}",
        shown(path)
    )]
    NotText {
        /// The line of the first byte that cannot be read, from 1.
        line: usize,
        /// Its column in characters, from 1.
        column: usize,
        /// The path as given.
        path: PathBuf,
    },
    /// The operating system refused.
    #[error("the file cannot be read ({reason}): {}", shown(path))]
    Unreadable {
        /// Why, in words.
        reason: String,
        /// The path as given.
        path: PathBuf,
    },
}

/// The text of a file, without a byte-order mark.
///
/// At most [`LARGEST_FILE_BYTES`] and one byte are read, whatever size the file system states, and
/// a pipe is never waited for.
///
/// # Errors
/// When there is no such file; when it is a folder, a device or a pipe, too large, not UTF-8; or
/// when the operating system refuses.
pub fn read_text(fs: &dyn FileSystem, path: &Path) -> Result<String, ReadError> {
    text_of(read_bytes(fs, path)?, path)
}

/// The text that the bytes of a file are, without a byte-order mark.
///
/// # Errors
/// When they are not UTF-8.
pub(super) fn text_of(mut bytes: Vec<u8>, path: &Path) -> Result<String, ReadError> {
    drop_mark(&mut bytes);
    String::from_utf8(bytes).map_err(|error| {
        let (line, column) = place_after(&error.as_bytes()[..error.utf8_error().valid_up_to()]);
        ReadError::NotText {
            line,
            column,
            path: path.to_owned(),
        }
    })
}

/// The digest of what a file holds, be it text or not; of text, that of the text without its
/// byte-order mark.
///
/// # Errors
/// As [`read_text`], but for what is not UTF-8.
pub(crate) fn digest_of_file(fs: &dyn FileSystem, path: &Path) -> Result<u64, ReadError> {
    let mut bytes = read_bytes(fs, path)?;
    drop_mark(&mut bytes);
    Ok(digest(&bytes))
}

fn drop_mark(bytes: &mut Vec<u8>) {
    if bytes.starts_with(BYTE_ORDER_MARK) {
        bytes.drain(..BYTE_ORDER_MARK.len());
    }
}

/// The bytes of an ordinary file of bounded size.
pub(super) fn read_bytes(fs: &dyn FileSystem, path: &Path) -> Result<Vec<u8>, ReadError> {
    let facts = fs.facts(path).map_err(|error| refused(path, &error))?;
    let path_owned = || path.to_owned();
    match facts.kind {
        EntryKind::File => {}
        EntryKind::Folder => return Err(ReadError::IsAFolder { path: path_owned() }),
        EntryKind::Link | EntryKind::Other => {
            return Err(ReadError::NotAFile { path: path_owned() });
        }
    }
    if facts.size_bytes > LARGEST_FILE_BYTES {
        return Err(ReadError::TooLarge { path: path_owned() });
    }
    let mut bytes = Vec::new();
    let file = fs.open(path).map_err(|error| refused(path, &error))?;
    let read = file.take(LARGEST_FILE_BYTES + 1).read_to_end(&mut bytes);
    read.map_err(|error| refused(path, &error))?;
    if bytes.len() as u64 > LARGEST_FILE_BYTES {
        return Err(ReadError::TooLarge { path: path_owned() });
    }
    Ok(bytes)
}

fn refused(path: &Path, error: &io::Error) -> ReadError {
    let path = path.to_owned();
    match error.kind() {
        ErrorKind::NotFound | ErrorKind::NotADirectory => ReadError::NotFound { path },
        _ => ReadError::Unreadable {
            reason: reason(error),
            path,
        },
    }
}

/// Line and column of the character that follows `text`, which is whole UTF-8, both from 1.
fn place_after(text: &[u8]) -> (usize, usize) {
    let line = text.split(|&b| b == b'\n').count();
    let line_start = text
        .iter()
        .rposition(|&b| b == b'\n')
        .map_or(0, |at| at + 1);
    // Every character has one byte that is not a continuation byte, 10xxxxxx.
    let is_first_byte = |b: &&u8| **b & 0b1100_0000 != 0b1000_0000;
    let column = 1 + text[line_start..].iter().filter(is_first_byte).count();
    (line, column)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_counted_in_lines_and_characters_from_one() {
        assert_eq!(place_after(b""), (1, 1));
        assert_eq!(place_after(b"abc"), (1, 4));
        assert_eq!(place_after(b"abc\n"), (2, 1));
        assert_eq!(place_after("a\r\n\nпередача 🚚".as_bytes()), (3, 11));
    }

    #[test]
    fn every_error_is_one_short_line_with_the_path_last() {
        let path = PathBuf::from(format!("/{}/end.ron", "long folder/".repeat(300)));
        let reason = "r".repeat(80);
        let most = usize::MAX;
        let errors = [
            ReadError::NotFound { path: path.clone() },
            ReadError::IsAFolder { path: path.clone() },
            ReadError::NotAFile { path: path.clone() },
            ReadError::TooLarge { path: path.clone() },
            ReadError::NotText {
                line: most,
                column: most,
                path: path.clone(),
            },
            ReadError::Unreadable { reason, path },
        ];
        for error in errors {
            let sentence = error.to_string();
            assert!(sentence.chars().count() < 300, "{sentence}");
            assert!(sentence.ends_with("/end.ron"), "{sentence}");
        }
    }

    #[test]
    fn the_sentence_names_the_limit_that_holds() {
        let mb = LARGEST_FILE_BYTES / (1024 * 1024);
        let error = ReadError::TooLarge {
            path: PathBuf::from("a"),
        };
        assert!(error.to_string().contains(&format!("larger than {mb} MB")));
    }
}
