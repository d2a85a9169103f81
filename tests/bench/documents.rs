//! How long do figures, opening and saving take? Budget: 50 µs for all that a change recomputes.

use divan::{Bencher, black_box};
use layshaft::analysis::ProjectResults;
use layshaft::chart::{Table, View};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Disk, Project, format, read_text, save_whole};

fn three_ten_speeds() -> Project {
    format::read(include_str!("../data/three-ten-speeds.ron")).unwrap()
}

fn camper_van() -> Project {
    EXAMPLES[0].project().unwrap()
}

/// All that follows from a document, as after every step of a drag.
#[divan::bench]
fn figures_of_three_ten_speed_sets(bencher: Bencher<'_, '_>) {
    let project = three_ten_speeds();
    bencher.bench_local(|| {
        let results = ProjectResults::of(black_box(&project));
        let diagram = View::Speed.scene(&project, &results);
        let table = Table::of(&project, &results);
        (results, diagram, table)
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
    let results = ProjectResults::of(&project);
    bencher.bench_local(|| View::Speed.scene(black_box(&project), &results));
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
