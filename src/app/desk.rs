//! Which document is open, and what follows from it?
//!
//! Results, diagrams and tables are made when a panel first asks for them, at most once for each
//! revision of the document.

use super::unread::Unread;
use crate::analysis::{Analysis, BestShifts, ProjectFinding, ProjectResults};
use crate::chart::{Charts, FigureTable, Scene, Table};
use crate::project::View;
use crate::project::{History, PageForm, Project, SetId};
use crate::sheet::page::{Page, PageError, Sheet};
use crate::workshop::{Answer, BenchItem};
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
    /// What was typed last and does not read, in words, where no step of the document is newer.
    pub half_typed: Option<String>,
    /// What stands in fields and does not read, what was typed last first: no save can hold it.
    pub unread: Vec<Unread>,
    /// The set that is selected in the window, since there is one.
    pub selected: Option<SetId>,
    /// The set whose card is open, which commands are about, since there is a window.
    pub open_card: Option<SetId>,
    /// The form of page that the write-up shows: that of the project, until another is looked at.
    ///
    /// Looking at the page for the bench changes no document, so it is no edit.
    pub page_form: PageForm,
    /// Whether it came with the program.
    pub is_example: bool,
    /// The job, or the plan, whose sheet the write-up shows on paper; without one, the gear sets.
    pub sheet: Option<BenchItem>,
    /// On the heap: there is one scene and one table for each view.
    charts: Box<Charts>,
}

impl Desk {
    /// A document on an empty desk.
    pub fn new(project: impl Into<Arc<Project>>, file: Option<PathBuf>) -> Self {
        let history = History::new(project);
        Self {
            charts: Box::new(Charts::of(Analysis::of(history.snapshot()))),
            page_form: history.project().write_up.form,
            is_example: false,
            sheet: None,
            history,
            file,
            on_disk: None,
            half_typed: None,
            unread: Vec::new(),
            selected: None,
            open_card: None,
        }
    }

    /// From now on the figures are those of the document as it stands.
    pub fn refresh(&mut self) {
        self.charts.follow(&self.history.snapshot());
    }

    /// The document.
    pub fn project(&self) -> &Project {
        self.history.project()
    }

    /// Whether it is an example in which nobody has done anything yet.
    pub fn is_untouched_example(&self) -> bool {
        self.is_example && self.file.is_none() && !self.is_unsaved()
    }

    /// What follows from the document as it stands, to be handed on with what is known already.
    pub fn analysis(&self) -> Analysis {
        let mut analysis = self.charts.analysis().clone();
        analysis.follow(&self.history.snapshot());
        analysis
    }

    /// The page of the write-up, in the form that is looked at.
    ///
    /// # Errors
    /// When the choices leave no set.
    pub fn page(&self) -> Result<Page, PageError> {
        let analysis = self.analysis();
        let sheet = self.sheet.and_then(|item| Sheet::of(&analysis, item));
        let page = Page::of(analysis)?.with_sheet(sheet);
        Ok(page.with_selected(self.selected).in_form(self.page_form))
    }

    /// The figures of every set.
    pub fn results(&self) -> &ProjectResults {
        self.charts.analysis().results()
    }

    /// All that is strange about the document.
    pub fn findings(&self) -> &[ProjectFinding] {
        self.charts.analysis().findings()
    }

    /// What is strange about the set at that place, counted from 0.
    pub fn findings_of(&self, place: usize) -> impl Iterator<Item = &ProjectFinding> {
        self.charts.analysis().findings_of(place)
    }

    /// The best shift points of a set as one edit; none where it has them, or nothing is known of them.
    pub fn best_shifts(&self, set: SetId) -> Option<&BestShifts> {
        let analysis = self.charts.analysis();
        analysis.best_shifts(analysis.project().sets.place(set)?)
    }

    /// What is not known that effort, runs and steady speeds need, in words; none where all is.
    pub fn lacks_for_motion(&self) -> Option<String> {
        let motion = self.charts.analysis().motion();
        motion.err().map(ToString::to_string)
    }

    /// What each job of the bench comes to, in their order.
    pub fn answers(&self) -> &[Answer] {
        self.charts.analysis().answers()
    }

    /// A diagram of the visible sets.
    pub fn diagram(&self, view: View) -> &Scene {
        self.charts.scene(view)
    }

    /// The comparison of all sets.
    pub fn table(&self) -> &Table {
        self.charts.table()
    }

    /// The comparison of what engine and vehicle make of all sets, where a view has one of its own and all is
    /// known that it needs.
    pub fn figure_table(&self, view: View) -> Option<&FigureTable> {
        self.charts.figure_table(view)
    }

    /// Whether something would be lost without a save, or with any: what does not read counts.
    pub fn is_unsaved(&self) -> bool {
        self.history.is_unsaved() || !self.unread.is_empty()
    }

    /// What undoing would take back, in words.
    pub fn undoable(&self) -> Option<String> {
        let step = || Some(self.history.undoable()?.named().to_string());
        self.half_typed.clone().or_else(step)
    }

    /// What redoing would bring back, in words.
    pub fn redoable(&self) -> Option<String> {
        Some(self.history.redoable()?.named().to_string())
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
