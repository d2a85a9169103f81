//! What the window reaches outside itself; tests put their own in place.

use crate::app::file_picker::{FilePicker, SystemPicker};
use crate::app::recovery::Pace;
use crate::app::settings;
use crate::project::{Disk, FileSystem};
use std::path::PathBuf;
use std::sync::Arc;

/// What the window reaches outside itself.
pub struct Surroundings {
    /// Where files are.
    pub file_system: Arc<dyn FileSystem + Send + Sync>,
    /// How a file is chosen.
    pub picker: Box<dyn FilePicker>,
    /// The folder that settings are kept in; without one, nothing is remembered.
    pub settings_folder: Option<PathBuf>,
    /// How soon unsaved work is kept.
    pub pace: Pace,
}

impl Default for Surroundings {
    fn default() -> Self {
        Self {
            file_system: Arc::new(Disk),
            picker: Box::new(SystemPicker::default()),
            settings_folder: settings::folder(),
            pace: Pace::default(),
        }
    }
}

impl std::fmt::Debug for Surroundings {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Surroundings").finish_non_exhaustive()
    }
}
