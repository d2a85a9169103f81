//! Which document is open, and what follows from it?
//!
//! Results, diagram and table are made once for each revision of the document and borrowed by
//! every panel.

use crate::analysis::ProjectResults;
use crate::chart::{Scene, Table, View};
use crate::project::{History, Project, Revision};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The open document with all that is computed from it.
#[derive(Debug)]
pub struct Desk {
    /// The document and its past.
    pub history: History,
    /// The file it stands in, once it stands in one.
    pub file: Option<PathBuf>,
    /// The digest of what that file held when it was last read or written.
    pub on_disk: Option<u64>,
    figures: Figures,
}

#[derive(Debug)]
struct Figures {
    revision: Revision,
    results: ProjectResults,
    diagram: Scene,
    table: Table,
}

impl Figures {
    fn of(history: &History) -> Self {
        let project = history.project();
        let results = ProjectResults::of(project);
        Self {
            revision: history.revision(),
            diagram: View::Speed.scene(project, &results),
            table: Table::of(project, &results),
            results,
        }
    }
}

impl Desk {
    /// A document on an empty desk.
    pub fn new(project: impl Into<Arc<Project>>, file: Option<PathBuf>) -> Self {
        let history = History::new(project);
        Self {
            figures: Figures::of(&history),
            history,
            file,
            on_disk: None,
        }
    }

    /// Brings the figures up to date; nothing to do where the document is unchanged.
    pub fn refresh(&mut self) {
        if self.figures.revision != self.history.revision() {
            self.figures = Figures::of(&self.history);
        }
    }

    /// The document.
    pub fn project(&self) -> &Project {
        self.history.project()
    }

    /// The figures of every set.
    pub fn results(&self) -> &ProjectResults {
        &self.figures.results
    }

    /// The speed diagram of the visible sets.
    pub fn diagram(&self) -> &Scene {
        &self.figures.diagram
    }

    /// The comparison of all sets.
    pub fn table(&self) -> &Table {
        &self.figures.table
    }

    /// What the document is called: its file's name, else its title.
    pub fn name(&self) -> String {
        let file = self.file.as_deref().and_then(Path::file_name);
        match (file, &self.project().title) {
            (Some(name), _) => name.to_string_lossy().into_owned(),
            (None, Some(title)) => title.to_string(),
            (None, None) => "Untitled".to_owned(),
        }
    }
}
