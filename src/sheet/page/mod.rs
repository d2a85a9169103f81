//! The write-up as a picture: what a reader understands who has never seen the program.
//!
//! A page is always laid out 800 points wide; the wanted width only decides how many pixels a point
//! has. So nothing reflows, and what can be read at 800 pixels can be read at every width.

mod bench;
mod bench_table;
mod for_readers;
mod job_sheet;
mod picture;
mod plan_sheet;

pub use picture::{PageError, Picture};

use crate::analysis::Analysis;
use crate::chart::table::{COLUMNS, ColumnDefinition};
use crate::chart::{FigureTable, MarkedSpeeds, Scene, Table};
use crate::draw::palette::{Palette, Theme};
use crate::gearing::Tyre;
use crate::project::{Candidate, Drops, PageForm, Project, SetId, View, Views, WriteUp, format};
use crate::units::BenchUnits;
use crate::workshop::{Answer, BenchItem, Job, Plan};
use egui::Rect;
use std::cell::OnceCell;
use std::sync::Arc;

/// The width of every page, in points.
pub const WIDTH: f32 = 800.0;

/// What stays free around everything, in points: on paper 10 mm, which every printer leaves.
fn margin(form: PageForm) -> f32 {
    match form {
        PageForm::Picture => 22.0,
        PageForm::A4 | PageForm::Letter => 38.0,
    }
}

/// What of the bench stands on a sheet.
#[derive(Debug, Clone, PartialEq)]
pub enum Sheet {
    /// A job.
    Job(Box<JobSheet>),
    /// The plan of what changes, for the sets of the page.
    Plan(Plan),
}

/// A job of the bench as it stands on its sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct JobSheet {
    /// The job.
    pub job: Job,
    /// What it comes to.
    pub answer: Answer,
    /// The units of the bench.
    pub units: BenchUnits,
}

impl Sheet {
    /// The sheet of a job or of the plan of a document; none where that is not there.
    pub fn of(analysis: &Analysis, item: BenchItem) -> Option<Self> {
        let workshop = &analysis.project().workshop;
        match item {
            BenchItem::Plan => workshop.plan.clone().map(Self::Plan),
            BenchItem::Job(job) => {
                let place = workshop.jobs().iter().position(|own| own.id == job)?;
                Some(Self::Job(Box::new(JobSheet {
                    job: workshop.jobs().get(place)?.clone(),
                    answer: analysis.answers().get(place)?.clone(),
                    units: workshop.units,
                })))
            }
        }
    }
}

/// What a page is made of.
#[derive(Debug, Clone)]
pub struct Page {
    /// The project as far as the page shows it: nothing else can get onto it, and what it carries makes
    /// the same page again.
    analysis: Analysis,
    form: PageForm,
    /// What of the bench its sheet is of, on paper; without one it is about the gear sets.
    sheet: Option<Sheet>,
    /// The set that is selected where the picture is made in the window.
    selected: Option<SetId>,
    columns: Vec<&'static ColumnDefinition>,
    /// One for each view that it shows.
    diagrams: OnceCell<Vec<Scene>>,
    /// One for each of them that rests on engine and vehicle.
    figure_tables: OnceCell<Vec<(View, FigureTable)>>,
    table: OnceCell<Table>,
}

impl Page {
    /// The page of a project, as its write-up choices say.
    ///
    /// # Errors
    /// When the choices leave no set.
    pub fn of(analysis: impl Into<Analysis>) -> Result<Self, PageError> {
        let analysis = analysis.into();
        let project = analysis.project();
        let choices = &project.write_up;
        let is_chosen = |c: &Candidate| c.visible && !choices.left_out.contains(&c.id);
        let chosen: Vec<SetId> = project
            .sets
            .iter()
            .filter(|c| is_chosen(c))
            .map(|c| c.id)
            .collect();
        Self::with_sets(analysis, &chosen)
    }

    /// The page of a project with these sets, visible or not.
    ///
    /// # Errors
    /// When there is no set.
    pub fn with_sets(analysis: impl Into<Analysis>, chosen: &[SetId]) -> Result<Self, PageError> {
        Self::with_columns(analysis, chosen, COLUMNS)
    }

    /// The same with these columns in its table.
    pub(super) fn with_columns(
        analysis: impl Into<Analysis>,
        chosen: &[SetId],
        columns: &[&'static ColumnDefinition],
    ) -> Result<Self, PageError> {
        let mut analysis = analysis.into();
        let shown = analysis.project().as_shown(chosen);
        analysis.follow(&Arc::new(shown.ok_or(PageError::NoSet)?));
        Ok(Self {
            form: analysis.project().write_up.form,
            analysis,
            sheet: None,
            selected: None,
            columns: columns.to_vec(),
            diagrams: OnceCell::new(),
            figure_tables: OnceCell::new(),
            table: OnceCell::new(),
        })
    }

    /// The same page where that set is selected: of three sets its drops are the usual ones.
    #[must_use]
    pub fn with_selected(self, selected: Option<SetId>) -> Self {
        Self { selected, ..self }
    }

    /// Whether a set is in it.
    pub fn shows(&self, set: SetId) -> bool {
        self.project().sets.get(set).is_some()
    }

    /// The sheet of a job or of the plan in the place of the gear sets, where it is a page of paper.
    ///
    /// It carries no project: what is on it is to be printed and written on.
    #[must_use]
    pub fn with_sheet(self, sheet: Option<Sheet>) -> Self {
        Self { sheet, ..self }
    }

    /// What of the bench its sheet is of.
    fn sheet(&self) -> Option<&Sheet> {
        let is_paper = self.form.height_over_width().is_some();
        self.sheet.as_ref().filter(|_| is_paper)
    }

    /// The same page in another form than its project asks for.
    #[must_use]
    pub fn in_form(self, form: PageForm) -> Self {
        Self { form, ..self }
    }

    /// The finished picture.
    ///
    /// # Errors
    /// When it would be higher than a picture can be.
    pub fn picture(&self) -> Result<Picture, PageError> {
        picture::of(self)
    }

    /// The picture of this page as the bytes of a PNG file, the same for equal projects. Where the
    /// choices say so, the project goes along in it as far as the page shows it.
    ///
    /// # Errors
    /// When the pixels cannot be packed, or the project has no text.
    pub fn png(&self, picture: &Picture) -> Result<Vec<u8>, PageError> {
        let carries = self.choices().carries_project && self.sheet().is_none();
        let text = carries.then(|| self.carried());
        let text = text.as_ref().map(format::write).transpose()?;
        picture::png(picture, text)
    }

    /// The project that makes the same page again: in this form, and with the drops of the selected set
    /// wherever nothing is selected.
    fn carried(&self) -> Project {
        let mut project = self.project().clone();
        project.write_up.form = self.form;
        let shown = self.drops_with(self.selected);
        if shown != self.drops_with(None)
            && let [set] = shown[..]
        {
            project.write_up.drops = Drops::Of(set);
        }
        project
    }

    /// Every text on the page with the place that its letters take, in points.
    ///
    /// # Errors
    /// When a page of paper cannot hold it all.
    pub fn texts(&self) -> Result<Vec<(Rect, String)>, PageError> {
        picture::texts(self)
    }

    /// The height of the page, in points.
    ///
    /// # Errors
    /// When a page of paper cannot hold it all.
    pub fn height(&self) -> Result<f32, PageError> {
        picture::height(self)
    }

    /// The tyre of each set.
    fn tyres(&self) -> impl Iterator<Item = Tyre> {
        let project = self.project();
        let sets = project.sets.iter();
        sets.map(|c| project.tyre_of(&c.set))
    }

    fn project(&self) -> &Project {
        self.analysis.project()
    }

    fn choices(&self) -> &WriteUp {
        &self.project().write_up
    }

    /// The sets whose drops are written.
    fn drops(&self) -> Vec<SetId> {
        self.drops_with(self.selected)
    }

    fn drops_with(&self, selected: Option<SetId>) -> Vec<SetId> {
        let sets = &self.project().sets;
        let shown: Vec<SetId> = sets.iter().map(|c| c.id).collect();
        let baseline = sets.baseline().id;
        self.choices()
            .drops
            .of_shown(&shown, Some(baseline), selected)
    }

    fn views(&self) -> &Views {
        &self.choices().views
    }

    /// The diagrams of its views, the uppermost first.
    fn diagrams(&self) -> &[Scene] {
        self.diagrams.get_or_init(|| {
            let views = self.views().as_slice().iter();
            views.map(|view| view.scene(&self.analysis)).collect()
        })
    }

    fn figure_tables(&self) -> &[(View, FigureTable)] {
        self.figure_tables.get_or_init(|| {
            let views = self.views().as_slice().iter();
            let table = |view: &View| Some((*view, FigureTable::of_view(*view, &self.analysis)?));
            views.filter_map(table).collect()
        })
    }

    /// What is said of vehicle, load and road, where a view rests on them.
    fn motion_head(&self) -> Option<&str> {
        let (_, table) = self.figure_tables().first()?;
        Some(&table.head)
    }

    /// What is said of each set beneath the diagram of a view: its name, and the words.
    fn facts(&self, view: View) -> Vec<(&str, String)> {
        let tables = self.figure_tables().iter();
        let of_view = tables.filter(|(of, _)| *of == view);
        let sets = of_view.flat_map(|(_, table)| &table.sets);
        sets.map(|set| (set.name.as_str(), set.words())).collect()
    }

    /// The table, without what the page says once or need not say.
    fn table(&self) -> &Table {
        self.table.get_or_init(|| {
            let (project, results) = (self.project(), self.analysis.results());
            let marked = MarkedSpeeds::of(project);
            let table = Table::with(project, results, &marked, &self.columns);
            let mut table = table.with_findings(self.analysis.findings());
            for set in &mut table.sets {
                set.facts.retain(|fact| !fact.is_of_vehicle);
                // A set that is alone is compared with nothing.
                set.is_baseline &= project.sets.len() > 1;
            }
            table
        })
    }

    /// A page for the bench is printed: black on white.
    fn theme(&self) -> Theme {
        if self.choices().is_dark && self.form == PageForm::Picture {
            Theme::Dark
        } else {
            Theme::Light
        }
    }

    fn palette(&self) -> Palette {
        match self.form {
            PageForm::Picture => Palette::of(self.theme()),
            PageForm::A4 | PageForm::Letter => Palette::print(),
        }
    }
}
