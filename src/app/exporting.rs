//! How does the picture of the write-up get into a file or onto the clipboard?

use super::desk::Desk;
use super::window::App;
use crate::project::{FileSystem, save_whole};
use crate::sheet::page::{PageError, png};
use egui::{ColorImage, Context};
use std::path::Path;

/// Writes the picture of the write-up; what is to be said of it.
///
/// # Errors
/// What is wrong, in a sentence.
pub(super) fn written_picture(
    fs: &dyn FileSystem,
    desk: &Desk,
    path: &Path,
) -> Result<String, String> {
    if desk.file.as_deref() == Some(path) {
        let problem = "this is the project's own file; give the picture another name";
        return Err(problem.to_owned());
    }
    let page = desk.page().and_then(|page| png(&page.picture()?));
    let bytes = page.map_err(|problem| problem.to_string())?;
    match save_whole(fs, path, &bytes) {
        Ok(()) => Ok(format!("Saved the picture in {}", path.display())),
        Err(problem) if problem.is_saved() => Ok(problem.to_string()),
        Err(problem) => Err(problem.to_string()),
    }
}

impl App {
    /// Puts the picture on the clipboard.
    pub(super) fn copy_picture(&mut self, ctx: &Context) {
        let made: Result<ColorImage, PageError> = self.desk().page().and_then(|page| {
            let picture = page.picture()?;
            let size = [picture.width() as usize, picture.height() as usize];
            Ok(ColorImage::from_rgba_unmultiplied(size, &picture))
        });
        match made {
            Ok(image) => {
                ctx.copy_image(image);
                self.say("Copied the picture");
            }
            Err(problem) => self.say(problem.to_string()),
        }
    }
}
