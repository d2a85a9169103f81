//! What does the window remember from one time to the next, apart from projects?
//!
//! Kept in the user's configuration folder, written whole or not at all. A broken, missing or
//! unwritable file never stops the program: it means the defaults.

use super::arrangement::Shares;
use super::table_panel::SeenColumns;
use crate::project::{FileSystem, SaveError, read_text, save_whole, sweep_stale};
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};

/// How many files the list of recent ones holds.
const MOST_RECENT: usize = 8;

/// The smallest size of the window, in points.
pub(super) const SMALLEST: egui::Vec2 = egui::vec2(640.0, 360.0);

/// What is remembered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Settings {
    /// Light, dark, or as the system.
    pub(super) theme: ThemeChoice,
    /// How much larger than ordinary everything is.
    pub(super) zoom: f32,
    /// Whether the table shows the sets side by side.
    pub(super) side_by_side: bool,
    /// The columns of the table.
    pub(super) columns: SeenColumns,
    /// How much of the window the left column and the table take.
    pub(super) shares: Shares,
    /// Width and height of the window, in points.
    pub(super) window: (f32, f32),
    /// Files opened or saved, the last one first.
    pub(super) recent: Vec<PathBuf>,
}

/// Why the settings were not kept.
#[derive(Debug, thiserror::Error)]
pub(super) enum SettingsError {
    /// They have no text.
    #[error("the settings cannot be spelled ({0}), report it")]
    Spelling(#[from] ron::Error),
    /// The file could not be written.
    #[error(transparent)]
    Save(#[from] SaveError),
}

/// Which looks are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) enum ThemeChoice {
    Light,
    Dark,
    System,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            theme: ThemeChoice::System,
            zoom: 1.0,
            side_by_side: false,
            columns: SeenColumns::default(),
            shares: Shares::default(),
            window: (1280.0, 800.0),
            recent: Vec::new(),
        }
    }
}

impl Settings {
    /// The settings in a folder; the defaults where there are none that can be read.
    pub(super) fn read(fs: &dyn FileSystem, folder: &Path) -> Self {
        sweep_stale(fs, folder);
        let text = read_text(fs, &file(folder)).ok();
        let settings: Option<Self> = text.and_then(|text| ron::from_str(&text).ok());
        settings.unwrap_or_default().sane()
    }

    /// Puts the settings into a folder.
    ///
    /// # Errors
    /// When they have no text or the file cannot be written; it is then as it was.
    pub(super) fn write(&self, fs: &dyn FileSystem, folder: &Path) -> Result<(), SettingsError> {
        let layout = ron::ser::PrettyConfig::new().new_line("\n");
        let text = ron::ser::to_string_pretty(self, layout)?;
        save_whole(fs, &file(folder), text.as_bytes())?;
        Ok(())
    }

    /// What a hand-edited file might hold, brought into what a window can show.
    fn sane(mut self) -> Self {
        let within = |value: f32, least: f32, most: f32, otherwise: f32| {
            if value.is_finite() {
                value.clamp(least, most)
            } else {
                otherwise
            }
        };
        self.zoom = within(self.zoom, 0.5, 4.0, 1.0);
        let (width, height) = self.window;
        self.window = (
            within(width, SMALLEST.x, 8000.0, 1280.0),
            within(height, SMALLEST.y, 8000.0, 800.0),
        );
        self.shares = self.shares.sane();
        self.recent.truncate(MOST_RECENT);
        self
    }

    /// Puts a file at the head of the recent ones; one whose path is no text is left out, because
    /// settings are text.
    pub(super) fn remember(&mut self, path: &Path) {
        if path.to_str().is_none() {
            return;
        }
        self.forget(path);
        self.recent.insert(0, path.to_owned());
        self.recent.truncate(MOST_RECENT);
    }

    /// Takes a file off the list.
    pub(super) fn forget(&mut self, path: &Path) {
        self.recent.retain(|recent| recent != path);
    }
}

fn file(folder: &Path) -> PathBuf {
    folder.join("settings.ron")
}

/// The folder for settings in the user's home, made if need be; none where there is no home.
pub(super) fn folder() -> Option<PathBuf> {
    let folders = directories::ProjectDirs::from("", "", "layshaft")?;
    let folder = folders.config_dir().to_owned();
    if let Err(problem) = std::fs::create_dir_all(&folder) {
        log::warn!("no folder for settings: {problem}");
        return None;
    }
    Some(folder)
}

impl From<ThemeChoice> for egui::ThemePreference {
    fn from(theme: ThemeChoice) -> Self {
        match theme {
            ThemeChoice::Light => Self::Light,
            ThemeChoice::Dark => Self::Dark,
            ThemeChoice::System => Self::System,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::Disk;

    #[test]
    fn settings_come_back_as_they_were_written() {
        let folder = tempfile::tempdir().unwrap();
        let mut settings = Settings {
            zoom: 1.25,
            theme: ThemeChoice::Dark,
            ..Settings::default()
        };
        settings.remember(Path::new("/a/van.ron"));
        settings.write(&Disk, folder.path()).unwrap();
        assert_eq!(Settings::read(&Disk, folder.path()), settings);
    }

    #[cfg(unix)]
    #[test]
    fn a_path_that_is_no_text_does_not_keep_the_settings_from_being_written() {
        use std::os::unix::ffi::OsStrExt;
        let folder = tempfile::tempdir().unwrap();
        let mut settings = Settings {
            theme: ThemeChoice::Dark,
            ..Settings::default()
        };
        settings.remember(Path::new(std::ffi::OsStr::from_bytes(b"/caf\xe9.ron")));
        settings.write(&Disk, folder.path()).unwrap();
        assert_eq!(Settings::read(&Disk, folder.path()), settings);
    }

    #[test]
    fn broken_settings_are_the_defaults() {
        let folder = tempfile::tempdir().unwrap();
        assert_eq!(Settings::read(&Disk, folder.path()), Settings::default());
        std::fs::write(folder.path().join("settings.ron"), "(zoom: \"large\"").unwrap();
        assert_eq!(Settings::read(&Disk, folder.path()), Settings::default());
    }

    #[test]
    fn absurd_settings_are_brought_into_range() {
        let folder = tempfile::tempdir().unwrap();
        let text = "(zoom: inf, window: (1.0, 1e30))";
        std::fs::write(folder.path().join("settings.ron"), text).unwrap();
        let settings = Settings::read(&Disk, folder.path());
        assert_eq!(settings.window, (640.0, 8000.0));
        assert!((settings.zoom - 1.0).abs() < 1e-6);
    }

    #[test]
    fn a_file_stands_in_the_recent_ones_once_and_first() {
        let mut settings = Settings::default();
        for name in ["/a", "/b", "/a"] {
            settings.remember(Path::new(name));
        }
        assert_eq!(settings.recent, [PathBuf::from("/a"), PathBuf::from("/b")]);
    }
}
