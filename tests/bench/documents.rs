//! How long do figures, opening and saving take? Budget: 50 µs for all that a change recomputes.

use divan::{Bencher, black_box};
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::{Charts, Table};
use layshaft::gearing::EngineSpeed;
use layshaft::project::View;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Disk, Edit, History, Project, SetEdit, format, read_text, save_whole};
use std::sync::Arc;

fn three_ten_speeds() -> Project {
    format::read(include_str!("../data/three-ten-speeds.ron")).unwrap()
}

fn camper_van() -> Project {
    EXAMPLES[0].project().unwrap()
}

/// All that follows from a document, with nothing known before.
#[divan::bench]
fn figures_of_three_ten_speed_sets(bencher: Bencher<'_, '_>) {
    let project = three_ten_speeds();
    bencher.bench_local(|| {
        let analysis = Analysis::from(black_box(&project));
        let results = analysis.results();
        let diagram = View::Speed.scene(&analysis);
        let table = Table::of(&project, results);
        (diagram, table)
    });
}

/// The edits of a hand that drags a shift point of the first set up and down.
fn steps_of_a_drag(project: &Project) -> impl FnMut() -> Edit + use<> {
    let first = project.sets.iter().next().unwrap();
    let (set, gear) = (first.id, first.set.gears[0].id);
    let mut steps = (0..50).map(f64::from).cycle();
    move || {
        let shift = EngineSpeed::from_rpm(5000.0 + 10.0 * steps.next().unwrap());
        Edit::Set(set, SetEdit::Shift(gear, shift.unwrap()))
    }
}

/// What a step of a drag asks for anew: one set and the charts, after the edit itself.
#[divan::bench]
fn figures_after_a_step_of_a_drag(bencher: Bencher<'_, '_>) {
    let mut history = History::new(three_ten_speeds());
    let mut charts = Charts::of(Analysis::of(history.snapshot()));
    let mut edits = steps_of_a_drag(history.project());
    bencher
        .with_inputs(|| {
            history.preview(&edits()).unwrap();
            history.snapshot()
        })
        .bench_local_refs(|project| {
            charts.follow(black_box(project));
            black_box((charts.scene(View::Speed), charts.table()));
        });
}

/// The same behind an engine that is known beyond its redline: what is strange about the sets, and what the
/// best shift points of one would gain.
#[divan::bench]
fn findings_and_best_shift_points_after_a_step_of_a_drag(bencher: Bencher<'_, '_>) {
    let mut project = three_ten_speeds();
    project.technical = camper_van().technical;
    // What the van is known to burn is none of these.
    project.technical.known_fuel = None;
    project.engine.redline = EngineSpeed::from_rpm(3000.0).unwrap();
    let mut history = History::new(project);
    let mut analysis = Analysis::of(history.snapshot());
    let mut edits = steps_of_a_drag(history.project());
    bencher
        .with_inputs(|| {
            history.preview(&edits()).unwrap();
            history.snapshot()
        })
        .bench_local_refs(|project| {
            analysis.follow(black_box(project));
            assert!(analysis.motion().is_ok());
            black_box(analysis.findings().len());
            black_box(analysis.best_shifts(0).is_some());
        });
}

/// One step of a drag as the document takes it: the edit, and what it is compared with.
#[divan::bench]
fn a_step_of_a_drag_in_the_document(bencher: Bencher<'_, '_>) {
    let mut history = History::new(three_ten_speeds());
    let edits = steps_of_a_drag(history.project());
    bencher
        .with_inputs(edits)
        .bench_local_refs(|edit| history.preview(black_box(edit)).unwrap());
}

#[divan::bench]
fn the_unsaved_mark(bencher: Bencher<'_, '_>) {
    let mut history = History::new(three_ten_speeds());
    history.mark_saved(Arc::new(camper_van()));
    bencher.bench_local(|| black_box(&history).is_unsaved());
}

#[divan::bench]
fn road_checks_of_three_ten_speed_sets(bencher: Bencher<'_, '_>) {
    let project = three_ten_speeds();
    bencher.bench_local(|| {
        let analysis = Analysis::from(black_box(&project));
        black_box((analysis.speedometers().len(), analysis.road_checks().len()));
    });
}

#[divan::bench]
fn results_alone(bencher: Bencher<'_, '_>) {
    let project = three_ten_speeds();
    bencher.bench_local(|| ProjectResults::of(black_box(&project)));
}

#[divan::bench]
fn diagram_alone(bencher: Bencher<'_, '_>) {
    let project = three_ten_speeds();
    let analysis = Analysis::from(&project);
    analysis.results();
    bencher.bench_local(|| View::Speed.scene(black_box(&analysis)));
}

#[divan::bench]
fn table_alone(bencher: Bencher<'_, '_>) {
    let project = three_ten_speeds();
    let results = ProjectResults::of(&project);
    bencher.bench_local(|| Table::of(black_box(&project), &results));
}

#[divan::bench]
fn reading_the_example_from_its_text(bencher: Bencher<'_, '_>) {
    let text = format::write(&camper_van()).unwrap();
    bencher.bench_local(|| format::read(black_box(&text)).unwrap());
}

#[divan::bench]
fn opening_the_example_from_disk(bencher: Bencher<'_, '_>) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    std::fs::write(&path, format::write(&camper_van()).unwrap()).unwrap();
    bencher.bench_local(|| format::read(&read_text(&Disk, &path).unwrap()).unwrap());
}

#[divan::bench]
fn writing_the_example_as_text(bencher: Bencher<'_, '_>) {
    let project = camper_van();
    bencher.bench_local(|| format::write(black_box(&project)).unwrap());
}

/// With everything brought to the disk: how long that takes is up to the disk.
#[divan::bench]
fn saving_the_example_to_disk(bencher: Bencher<'_, '_>) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    let project = camper_van();
    bencher.bench_local(|| {
        let text = format::write(&project).unwrap();
        save_whole(&Disk, &path, text.as_bytes()).unwrap();
    });
}
