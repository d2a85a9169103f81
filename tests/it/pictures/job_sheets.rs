//! The sheets of jobs: is all of it there, can all of it be read, and is too much of it told?

use super::can_be_read;
use crate::support::window::camper_van;
use crate::support::workshop::any_workshop;
use egui::{Rect, pos2, vec2};
use layshaft::analysis::Analysis;
use layshaft::project::{PageForm, Project};
use layshaft::sheet::page::{Page, PageError, Sheet, WIDTH};
use layshaft::units::BenchUnits;
use layshaft::workshop::{BenchItem, FieldKey, JobId, JobKind, Workshop};
use proptest::prelude::*;

/// The sheet of a job of a project, in that form.
fn sheet(project: Project, job: JobId, form: PageForm) -> Page {
    let analysis = Analysis::of(project);
    let sheet = Sheet::of(&analysis, BenchItem::Job(job));
    assert!(sheet.is_some(), "the job is there");
    Page::of(analysis).unwrap().in_form(form).with_sheet(sheet)
}

fn with_job(kind: JobKind) -> Project {
    Project {
        workshop: Workshop::default().with(kind.begun()).unwrap(),
        ..camper_van()
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(24) })]

    #[test]
    fn no_text_on_a_sheet_covers_another_or_is_cut(workshop in any_workshop(), letter in any::<bool>()) {
        let form = if letter { PageForm::Letter } else { PageForm::A4 };
        let jobs: Vec<JobId> = workshop.jobs().iter().map(|job| job.id).collect();
        let project = Project { workshop, ..camper_van() };
        for job in jobs {
            let page = sheet(project.clone(), job, form);
            match page.texts() {
                Ok(texts) => {
                    let size = vec2(WIDTH, page.height().unwrap());
                    let frame = Rect::from_min_size(pos2(0.0, 0.0), size);
                    can_be_read(&texts, frame).map_err(TestCaseError::fail)?;
                }
                Err(PageError::SheetFull { .. }) => {}
                Err(problem) => return Err(TestCaseError::fail(problem.to_string())),
            }
        }
    }
}

#[test]
fn a_sheet_of_every_kind_has_each_of_its_figures_on_one_page() {
    for kind in JobKind::ALL {
        let project = with_job(kind);
        let job = project.workshop.jobs()[0].clone();
        let page = sheet(project, job.id, PageForm::A4);
        let texts: Vec<String> = page
            .texts()
            .unwrap()
            .into_iter()
            .map(|(_, text)| text)
            .collect();
        let rows = job.rows(BenchUnits::default()).into_iter();
        for row in rows.filter(|row| row.key.item.is_none() && row.key.name != "name") {
            assert!(texts.contains(&row.name), "{kind:?}: {}", row.name);
        }
        for column in job.item_names(BenchUnits::default()).into_iter().flatten() {
            assert!(texts.contains(&column), "{kind:?}: {column}");
        }
    }
}

#[test]
fn a_job_that_no_sheet_holds_is_told() {
    let mut project = with_job(JobKind::Limits);
    let mut job = project.workshop.jobs()[0].clone();
    for at in 0..40_u8 {
        job = job.with_item().unwrap();
        let key = |name| FieldKey {
            name,
            item: Some(at),
        };
        let name = job
            .rows(BenchUnits::default())
            .into_iter()
            .rev()
            .find_map(|row| {
                (row.key.item == Some(at) && row.name == "What").then_some(row.key.name)
            });
        let text = "a very long name of something that is measured on the bench again and again";
        job = job
            .with(key(name.unwrap()), text, BenchUnits::default())
            .unwrap();
    }
    project.workshop = project.workshop.changed(job).unwrap();
    let refused = sheet(project, JobId(1), PageForm::A4)
        .picture()
        .unwrap_err();
    assert_eq!(
        refused.to_string(),
        "a page of A4 cannot hold all of this job in letters that can be read; make two jobs of it"
    );
}

#[test]
fn a_sheet_carries_no_project() {
    let page = sheet(with_job(JobKind::Shim), JobId(1), PageForm::A4);
    let bytes = page.png(&page.picture().unwrap()).unwrap();
    assert!(layshaft::project::text_in_picture(&bytes).is_err());
}
