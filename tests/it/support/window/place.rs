//! Folders of the real disk for a project, its settings and what is kept of unsaved work.

use super::{Opening, Window, camper_van};
use crate::support::scripted_picker::ScriptedPicker;
use layshaft::project::format;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

/// A folder for each, and the camper van in a file.
pub(crate) struct Place(TempDir);

impl Place {
    pub(crate) fn new() -> Self {
        let place = Self(tempfile::tempdir().unwrap());
        for folder in [place.kept(), place.settings(), place.projects()] {
            std::fs::create_dir(folder).unwrap();
        }
        std::fs::write(place.file(), format::write(&camper_van()).unwrap()).unwrap();
        place
    }

    /// All of it.
    pub(crate) fn folder(&self) -> &Path {
        self.0.path()
    }

    /// Where copies of unsaved work and locks lie.
    pub(crate) fn kept(&self) -> PathBuf {
        self.folder().join("kept")
    }

    pub(crate) fn settings(&self) -> PathBuf {
        self.folder().join("settings")
    }

    pub(crate) fn projects(&self) -> PathBuf {
        self.folder().join("projects")
    }

    /// The project's file.
    pub(crate) fn file(&self) -> PathBuf {
        self.projects().join("van.ron")
    }

    /// The copies of unsaved work.
    pub(crate) fn copies(&self) -> Vec<PathBuf> {
        let entries = std::fs::read_dir(self.kept()).unwrap();
        let paths = entries.map(|entry| entry.unwrap().path());
        paths
            .filter(|p| p.extension().is_some_and(|e| e == "ron"))
            .collect()
    }

    /// A window that will keep its work here.
    pub(crate) fn opening(&self) -> Opening {
        Opening::on(camper_van()).keeping_work_in(&self.kept())
    }

    /// A window that keeps its work here.
    pub(crate) fn window(&self) -> Window {
        self.opening().open()
    }

    /// The same with a system's dialog that the test answers.
    pub(crate) fn window_with(&self, picker: ScriptedPicker) -> Window {
        self.opening().with_picker(picker).open()
    }

    /// A window on the project's file, opened by typing its path.
    pub(crate) fn window_on_file(&self) -> Window {
        let mut window = self.window();
        window.open_by_path(&self.file());
        window
    }
}
