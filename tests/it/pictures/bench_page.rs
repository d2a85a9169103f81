//! Does the page for the bench say what somebody needs who has the gearbox before them?

use crate::support::window::camper_van;
use layshaft::gearing::parse_tyre;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, PageForm, Project, SetEdit};
use layshaft::sheet::page::Page;

const PAPERS: [PageForm; 2] = [PageForm::A4, PageForm::Letter];

fn texts(project: &Project, form: PageForm) -> Vec<String> {
    let mut project = project.clone();
    project.write_up.form = form;
    let texts = Page::of(&project).unwrap().texts().unwrap();
    texts.into_iter().map(|(_, text)| text).collect()
}

fn farm() -> Project {
    let mut examples = EXAMPLES.iter();
    let farm = examples.find(|example| example.name.contains("Farm"));
    farm.unwrap().project().unwrap()
}

#[test]
fn sets_that_differ_only_in_their_tyres_have_other_figures_on_it() {
    let mut project = camper_van();
    let first = project.sets.iter().next().unwrap().id;
    for candidate in project.sets.iter().filter(|c| c.id != first) {
        project.write_up.left_out.insert(candidate.id);
    }
    let tyre = Some(parse_tyre("235/85 R 16").unwrap());
    let other = Edit::Set(first, SetEdit::Tyre(tyre)).applied_to(&project);
    let other = other.unwrap();
    for form in PAPERS {
        let figures = |project: &Project| -> Vec<String> {
            let is_figure = |text: &String| text.parse::<f64>().is_ok();
            texts(project, form).into_iter().filter(is_figure).collect()
        };
        assert_ne!(figures(&project), figures(&other), "{form:?}");
    }
}

#[test]
fn it_tells_road_speed_at_the_redline_and_at_marks_and_leaves_a_column_to_write_in() {
    for form in PAPERS {
        let said = texts(&camper_van(), form);
        for head in [
            "at redline,\nkm/h",
            "at 2000 rpm,\nkm/h",
            "measured,\nratio",
        ] {
            let count = said.iter().filter(|text| *text == head).count();
            assert_eq!(count, 3, "{head}: {said:?}");
        }
        let is_engine_speed = |text: &&String| text.ends_with("km/h,\nrpm");
        assert!(said.iter().filter(is_engine_speed).count() >= 3, "{said:?}");
    }
}

#[test]
fn one_set_alone_has_every_marked_speed() {
    let mut project = camper_van();
    let others = project.sets.iter().skip(1).map(|c| c.id);
    project.write_up.left_out = others.collect();
    for form in PAPERS {
        let said = texts(&project, form);
        for head in [
            "at 2000 rpm,\nkm/h",
            "at 3000 rpm,\nkm/h",
            "at 50 km/h,\nrpm",
            "at 90 km/h,\nrpm",
            "at 110 km/h,\nrpm",
        ] {
            assert!(said.iter().any(|text| text == head), "{head}: {said:?}");
        }
    }
}

#[test]
fn every_position_of_a_stage_is_on_it_whether_or_not_the_set_shows_its_gears_there() {
    let mut project = farm();
    for shows_others in [true, false] {
        let sets: Vec<_> = project.sets.iter().map(|c| c.id).collect();
        for set in sets {
            let stage = &project.sets.get(set).unwrap().set.stages[0];
            if stage.shows_others != shows_others {
                let edit = SetEdit::StageShowsOthers(0, shows_others);
                project = Edit::Set(set, edit).applied_to(&project).unwrap();
            }
        }
        for form in PAPERS {
            let said = texts(&project, form);
            let heads = said.iter().filter(|text| text.contains("Low = 2.360"));
            assert_eq!(heads.count(), 3, "{said:?}");
            let rows = said.iter().filter(|text| *text == "1 Low");
            assert_eq!(rows.count(), if shows_others { 3 } else { 0 });
        }
    }
}
