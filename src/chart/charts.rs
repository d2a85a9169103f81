//! The diagrams and the tables of a document, each made when it is first looked at, and kept.

use super::figures::FigureTable;
use super::scene::Scene;
use super::table::Table;
use crate::analysis::Analysis;
use crate::project::Project;
use crate::project::View;
use std::cell::OnceCell;
use std::sync::Arc;

/// A document with its figures, the diagrams of its visible sets and the comparisons of all sets.
#[derive(Debug)]
pub struct Charts {
    analysis: Analysis,
    /// One for each view, in the order of [`View::ALL`].
    scenes: [OnceCell<Scene>; View::ALL.len()],
    table: OnceCell<Table>,
    /// One for each view that has one, in the same order.
    figure_tables: [OnceCell<Option<FigureTable>>; View::ALL.len()],
}

impl Charts {
    /// The charts of a document.
    pub fn of(analysis: Analysis) -> Self {
        Self {
            analysis,
            scenes: Default::default(),
            table: OnceCell::new(),
            figure_tables: Default::default(),
        }
    }

    /// Goes on to the next state of the document, or to another one.
    pub fn follow(&mut self, next: &Arc<Project>) {
        if !self.analysis.follow(next) {
            self.scenes = Default::default();
            self.table = OnceCell::new();
            self.figure_tables = Default::default();
        }
    }

    /// The document with its figures.
    pub fn analysis(&self) -> &Analysis {
        &self.analysis
    }

    /// A diagram of the visible sets.
    pub fn scene(&self, view: View) -> &Scene {
        self.scenes[view as usize].get_or_init(|| view.scene(&self.analysis))
    }

    /// The comparison of all sets.
    pub fn table(&self) -> &Table {
        let analysis = &self.analysis;
        self.table.get_or_init(|| {
            let table = Table::of(analysis.project(), analysis.results());
            table.with_findings(analysis.findings())
        })
    }

    /// What engine and vehicle make of all sets, where a view is about that and all is known that it needs.
    pub fn figure_table(&self, view: View) -> Option<&FigureTable> {
        let view = view.with_table();
        let table = || FigureTable::of_view(view, &self.analysis);
        self.figure_tables[view as usize]
            .get_or_init(table)
            .as_ref()
    }
}
