//! The text of a project as a file holds it: the file itself is text, or a picture that carries one.

use super::file_system::{EntryKind, FileSystem, shown};
use super::in_picture::{PictureError, SIGNATURE, is_picture, text_in_picture};
use super::text_file::{ReadError, read_bytes, text_of};
use std::io::Read as _;
use std::path::{Path, PathBuf};

/// The text of a project, and where it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProjectText {
    /// The text.
    pub text: String,
    /// Whether it came out of a picture, which is no project file: nothing is ever saved in it.
    pub is_in_picture: bool,
}

/// Why no text of a project comes out of a file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ProjectTextError {
    /// The file could not be read, or is neither text nor picture.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// It is a picture, and there is no project to be had from it.
    #[error("{reason}: {}", shown(path))]
    Picture {
        /// Why not.
        reason: PictureError,
        /// The path as given.
        path: PathBuf,
    },
}

/// Whether an ordinary file begins as a PNG does; what cannot be read is none.
pub fn is_picture_file(fs: &dyn FileSystem, path: &Path) -> bool {
    let is_file = fs
        .facts(path)
        .is_ok_and(|facts| facts.kind == EntryKind::File);
    let mut begun = [0; SIGNATURE.len()];
    let mut read_begun = || {
        fs.open(path)
            .and_then(|mut file| file.read_exact(&mut begun))
    };
    is_file && read_begun().is_ok() && is_picture(&begun)
}

/// The text of the project that a file holds; a picture is known by its content, whatever its name.
///
/// # Errors
/// When the file cannot be read, is neither text nor a PNG, or is a PNG without a project.
pub fn read_project_text(
    fs: &dyn FileSystem,
    path: &Path,
) -> Result<ProjectText, ProjectTextError> {
    let bytes = read_bytes(fs, path)?;
    let is_in_picture = is_picture(&bytes);
    let refused = |reason| ProjectTextError::Picture {
        reason,
        path: path.to_owned(),
    };
    let text = if is_in_picture {
        text_in_picture(&bytes).map_err(refused)?
    } else {
        let is_other_picture = image::guess_format(&bytes).is_ok();
        match text_of(bytes, path) {
            Err(ReadError::NotText { .. }) if is_other_picture => {
                return Err(refused(PictureError::OtherKind));
            }
            text => text?,
        }
    };
    Ok(ProjectText {
        text,
        is_in_picture,
    })
}
