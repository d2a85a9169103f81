//! How long does the write-up take? Budget: 100 ms for the whole command at 1600 pixels.

use divan::Bencher;
use layshaft::cli;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{PageForm, Project};
use layshaft::sheet::page::Page;
use std::ffi::OsString;
use std::path::Path;

fn camper_van() -> Project {
    made(EXAMPLES[0].project())
}

fn page(form: PageForm) -> Page {
    let mut project = camper_van();
    project.write_up.form = form;
    made(Page::of(&project))
}

/// The value, which a bench cannot do without.
fn made<T, E: std::fmt::Display>(result: Result<T, E>) -> T {
    result.unwrap_or_else(|error| panic!("{error}"))
}

/// Fonts, and every word and line of the page in its place: what a picture begins with.
#[divan::bench]
fn layout_from_a_fresh_context(bencher: Bencher<'_, '_>) {
    let page = page(PageForm::Picture);
    bencher.bench_local(|| made(page.height()));
}

#[divan::bench]
fn layout_and_raster_at_1600_pixels(bencher: Bencher<'_, '_>) {
    let page = page(PageForm::Picture);
    bencher.bench_local(|| made(page.picture()));
}

#[divan::bench]
fn the_page_for_the_bench_at_1600_pixels(bencher: Bencher<'_, '_>) {
    let page = page(PageForm::A4);
    bencher.bench_local(|| made(page.picture()));
}

#[divan::bench]
fn packing_1600_pixels_as_png(bencher: Bencher<'_, '_>) {
    let page = page(PageForm::Picture);
    let picture = made(page.picture());
    bencher.bench_local(|| made(page.png(&picture)));
}

/// Everything but the start of the process: file in, file out.
#[divan::bench]
fn the_whole_command(bencher: Bencher<'_, '_>) {
    let folder = made(tempfile::tempdir());
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("saves/camper-van.ron");
    let out = folder.path().join("out.png");
    let words = ["chart".into(), file.into(), "-o".into(), out.into()];
    bencher.bench_local(|| {
        let arguments: Vec<OsString> = words.to_vec();
        cli::run(arguments, &mut std::io::sink(), &mut std::io::sink())
    });
}
