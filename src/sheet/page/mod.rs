//! The write-up as a picture: what a reader understands who has never seen the program.
//!
//! A page is always laid out 800 points wide; the wanted width only decides how many pixels a point
//! has. So nothing reflows, and what can be read at 800 pixels can be read at every width.

mod bench;
mod picture;
mod reading;

pub use picture::{PageError, Picture, png};

use crate::chart::{SpeedDiagram, Table};
use crate::draw::palette::{Palette, Theme};
use crate::project::{Candidate, PageForm, Project, ProjectResults, SetId, WriteUp};

/// The width of every page, in points.
pub const WIDTH: f32 = 800.0;

/// What stays free around everything, in points.
const MARGIN: f32 = 22.0;

/// What a page is made of.
#[derive(Debug, Clone)]
pub struct Page {
    project: Project,
    results: ProjectResults,
    diagram: SpeedDiagram,
    table: Table,
    chosen: Vec<SetId>,
}

impl Page {
    /// The page of a project, as its write-up choices say.
    ///
    /// # Errors
    /// When the choices leave no set.
    pub fn of(project: &Project) -> Result<Self, PageError> {
        let choices = &project.write_up;
        let is_chosen = |c: &Candidate| c.visible && !choices.left_out.contains(&c.id);
        let chosen = project
            .sets
            .iter()
            .filter(|c| is_chosen(c))
            .map(|c| c.id)
            .collect();
        Self::with_sets(project, chosen)
    }

    /// The page of a project with these sets, visible or not.
    ///
    /// # Errors
    /// When there is no set.
    pub fn with_sets(project: &Project, chosen: Vec<SetId>) -> Result<Self, PageError> {
        if chosen.is_empty() {
            return Err(PageError::NoSet);
        }
        let results = ProjectResults::of(project);
        let is_chosen = |c: &Candidate| chosen.contains(&c.id);
        Ok(Self {
            diagram: SpeedDiagram::of_sets(project, &results, is_chosen),
            table: Table::of(project, &results),
            project: project.clone(),
            results,
            chosen,
        })
    }

    /// The finished picture.
    ///
    /// # Errors
    /// When it would be higher than a picture can be.
    pub fn picture(&self) -> Result<Picture, PageError> {
        picture::of(self)
    }

    fn choices(&self) -> &WriteUp {
        &self.project.write_up
    }

    /// A page for the bench is printed: black on white.
    fn theme(&self) -> Theme {
        if self.choices().is_dark && self.choices().form == PageForm::Picture {
            Theme::Dark
        } else {
            Theme::Light
        }
    }

    fn palette(&self) -> Palette {
        match self.choices().form {
            PageForm::Picture => Palette::of(self.theme()),
            PageForm::A4 | PageForm::Letter => Palette::print(),
        }
    }
}
