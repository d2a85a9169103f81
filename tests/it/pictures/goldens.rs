//! Are the pictures equal in every pixel to those that were looked at?
//!
//! `UPDATE_GOLDENS=1 cargo test --locked --test it pictures` renews them: look at every one at
//! full size before it is committed. A difference writes the new picture and one of the
//! differences into the target folder, and says where.

use super::{minimal, monster};
use crate::support::memory_disk::MemoryDisk;
use crate::support::scripted_picker::ScriptedPicker;
use crate::support::test_renderer::CpuRenderer;
use crate::support::window::camper_van;
use egui_kittest::Harness;
use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{DynamicImage, Rgba, RgbaImage};
use layshaft::analysis::Analysis;
use layshaft::app::{App, Surroundings};
use layshaft::draw::theme;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{PageForm, PictureWidth, Project};
use layshaft::sheet::page::{Page, Sheet};
use layshaft::workshop::{BenchItem, JobId};
use std::path::{Path, PathBuf};
use std::sync::Arc;

fn golden_path(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/it/pictures/golden");
    folder.join(format!("{name}.png"))
}

/// Whether a picture is the golden one; a renewal makes it so.
fn check(name: &str, picture: &RgbaImage) -> Result<(), String> {
    let golden = golden_path(name);
    if std::env::var_os("UPDATE_GOLDENS").is_some() {
        write_small(&golden, picture);
        return Ok(());
    }
    let looked_at = image::open(&golden).map_err(|error| {
        let renew = "UPDATE_GOLDENS=1 cargo test --locked --test it pictures";
        format!("{name}: {error}; {renew} makes it")
    })?;
    let looked_at = looked_at.into_rgba8();
    if looked_at == *picture {
        return Ok(());
    }
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    std::fs::create_dir_all(&folder).unwrap();
    let (actual, apart) = (
        folder.join(format!("{name}.actual.png")),
        folder.join(format!("{name}.difference.png")),
    );
    picture.save(&actual).unwrap();
    let (difference, count) = difference(&looked_at, picture);
    difference.save(&apart).unwrap();
    Err(format!(
        "{name} is not the picture that was looked at: {count} pixels differ\n  golden     {}\n  \
         now        {}\n  difference {}",
        golden.display(),
        actual.display(),
        apart.display()
    ))
}

/// Both pictures pale, what differs in red; and how many pixels that are.
fn difference(a: &RgbaImage, b: &RgbaImage) -> (RgbaImage, usize) {
    let (width, height) = (a.width().max(b.width()), a.height().max(b.height()));
    let mut count = 0;
    let picture = RgbaImage::from_fn(width, height, |x, y| {
        let (was, is) = (a.get_pixel_checked(x, y), b.get_pixel_checked(x, y));
        if was == is {
            let pale = is.map_or([255; 4], |p| p.0.map(|level| 191 + level / 4));
            Rgba(pale)
        } else {
            count += 1;
            Rgba([255, 0, 0, 255])
        }
    });
    (picture, count)
}

/// As few bytes as can be: goldens stay in the repository for ever.
fn write_small(path: &Path, picture: &RgbaImage) {
    std::fs::create_dir_all(path.parent().unwrap()).unwrap();
    let opaque = DynamicImage::from(picture.clone()).into_rgb8();
    let packed = |filter| {
        let mut bytes = Vec::new();
        let encoder = PngEncoder::new_with_quality(&mut bytes, CompressionType::Best, filter);
        opaque.write_with_encoder(encoder).unwrap();
        bytes
    };
    let ways = [FilterType::NoFilter, FilterType::Up, FilterType::Adaptive].map(packed);
    let smallest = ways.iter().min_by_key(|bytes| bytes.len()).unwrap();
    std::fs::write(path, smallest).unwrap();
}

fn picture(project: &Project) -> RgbaImage {
    Page::of(project).unwrap().picture().unwrap()
}

/// Tells of all that differ, not only of the first.
fn all_are_golden(pictures: impl IntoIterator<Item = (String, RgbaImage)>) {
    let problems: Vec<String> = pictures
        .into_iter()
        .filter_map(|(name, picture)| check(&name, &picture).err())
        .collect();
    assert!(problems.is_empty(), "{}", problems.join("\n"));
}

#[test]
fn the_examples_look_as_they_were_looked_at() {
    let themes = [("light", false), ("dark", true)];
    let names = [
        "camper-van",
        "open-two-seater",
        "farm-four-wheel-drive",
        "motorcycle",
    ];
    assert_eq!(EXAMPLES.len(), names.len());
    let cases = EXAMPLES.iter().zip(names);
    let cases = cases.flat_map(|case| themes.map(|theme| (case, theme)));
    all_are_golden(cases.map(|((example, name), (theme, is_dark))| {
        let mut project = example.project().unwrap();
        project.write_up.is_dark = is_dark;
        (format!("{name}-{theme}"), picture(&project))
    }));
}

#[test]
fn the_largest_and_the_smallest_look_as_they_were_looked_at() {
    let mut large = monster();
    large.write_up.width = PictureWidth::from_px(800).unwrap();
    let pages = [("monster", large), ("minimal", minimal())];
    all_are_golden(pages.map(|(name, project)| (name.to_owned(), picture(&project))));
}

#[test]
fn the_page_for_the_bench_looks_as_it_was_looked_at() {
    let mut project = EXAMPLES[3].project().unwrap();
    project.write_up.form = PageForm::A4;
    all_are_golden([("bench".to_owned(), picture(&project))]);
}

#[test]
fn the_sheets_of_jobs_and_plan_look_as_they_were_looked_at() {
    let analysis = Analysis::of(EXAMPLES[1].project().unwrap());
    let jobs: Vec<JobId> = analysis
        .project()
        .workshop
        .jobs()
        .iter()
        .map(|job| job.id)
        .collect();
    let jobs = (1..)
        .zip(jobs)
        .map(|(number, job)| (format!("job-{number}"), BenchItem::Job(job)));
    let plan = ("plan".to_owned(), BenchItem::Plan);
    let sheets = jobs.chain([plan]).map(|(name, item)| {
        let sheet = Sheet::of(&analysis, item);
        assert!(sheet.is_some(), "{name}");
        let page = Page::of(analysis.clone())
            .unwrap()
            .in_form(PageForm::A4)
            .with_sheet(sheet);
        (name, page.picture().unwrap())
    });
    all_are_golden(sheets.collect::<Vec<_>>());
}

#[test]
fn the_window_looks_as_it_was_looked_at() {
    let themes = [("light", egui::Theme::Light), ("dark", egui::Theme::Dark)];
    all_are_golden(themes.map(|(name, theme)| (format!("window-{name}"), window(theme))));
}

fn window(looks: egui::Theme) -> RgbaImage {
    let surroundings = Surroundings {
        file_system: Arc::new(MemoryDisk::default()),
        picker: Box::new(ScriptedPicker::default()),
        settings_folder: None,
        ..Surroundings::default()
    };
    let mut harness = Harness::builder()
        .with_size(egui::vec2(1000.0, 640.0))
        .with_theme(looks)
        .with_max_steps(60)
        .renderer(CpuRenderer::default())
        .with_context_setup(theme::apply)
        .build_eframe(|_| App::new(camper_van(), None, surroundings));
    harness.run();
    harness.render().unwrap()
}
