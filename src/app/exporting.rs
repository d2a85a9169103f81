//! How does the picture of the write-up get into a file or onto the clipboard?

use super::dialogs::{Dialog, PathDialog};
use super::file_picker::Purpose;
use super::window::App;
use crate::project::save_whole;
use crate::sheet::page::{Page, PageError, png};
use egui::{ColorImage, Context};
use std::path::Path;

impl App {
    /// Puts the picture into a file; a failure is said and offers another place.
    pub(super) fn save_picture(&mut self, path: &Path) {
        let problem = match self.written_picture(path) {
            Ok(words) => return self.say(words),
            Err(problem) => problem,
        };
        self.dialog = Some(Dialog::Path(PathDialog {
            purpose: Purpose::SavePicture,
            text: path.display().to_string(),
            request: None,
            problem: Some(problem),
            then: None,
        }));
    }

    /// Writes the picture; what is to be said of it, or what is wrong.
    fn written_picture(&self, path: &Path) -> Result<String, String> {
        if self.desk.file.as_deref() == Some(path) {
            let problem = "this is the project's own file; give the picture another name";
            return Err(problem.to_owned());
        }
        let page = Page::of(self.desk.project()).and_then(|page| png(&page.picture()?));
        let bytes = page.map_err(|problem| problem.to_string())?;
        match save_whole(&*self.surroundings.file_system, path, &bytes) {
            Ok(()) => Ok(format!("Saved the picture in {}", path.display())),
            Err(problem) if problem.is_saved() => Ok(problem.to_string()),
            Err(problem) => Err(problem.to_string()),
        }
    }

    /// Puts the picture on the clipboard.
    pub(super) fn copy_picture(&mut self, ctx: &Context) {
        let made: Result<ColorImage, PageError> = Page::of(self.desk.project()).and_then(|page| {
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
