//! Does the raster paint what the window's own renderer paints?
//!
//! `.ci/real-window` photographs the real window; the same screen is laid out and painted here
//! without one, and both are held against each other.

use crate::support::scripted_picker::ScriptedPicker;
use crate::support::test_renderer::CpuRenderer;
use crate::support::window::camper_van;
use egui::{Event, Key, Modifiers};
use egui_kittest::Harness;
use image::RgbaImage;
use layshaft::app::{App, Surroundings};
use layshaft::draw::theme;
use std::io::Write;
use std::path::{Path, PathBuf};

/// At least this share of the pixels is equal; along the soft edges of dashes the graphics driver
/// rounds some by one level the other way.
const EQUAL: f64 = 0.993;

/// A pixel differs visibly when a colour is off by more than this.
const LEVELS: u8 = 3;

/// At most as many pixels differ visibly.
const MOST_OFF: usize = 20;

fn path(variable: &str) -> PathBuf {
    std::env::var_os(variable).unwrap().into()
}

/// The window after a file was opened, the pointer at rest where the script puts it.
fn painted(file: &Path) -> RgbaImage {
    let surroundings = Surroundings {
        picker: Box::new(ScriptedPicker::default()),
        settings_folder: None,
        ..Surroundings::default()
    };
    let app = App::new(camper_van(), None, surroundings);
    let mut harness = Harness::builder()
        .with_size([1280.0, 800.0])
        .with_pixels_per_point(1.0)
        .with_theme(egui::Theme::Light)
        .with_render_cursor(false)
        .with_max_steps(60)
        .renderer(CpuRenderer::default())
        .build_eframe(|creation| {
            theme::apply(&creation.egui_ctx);
            app.dress(&creation.egui_ctx);
            app
        });
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    harness.event(Event::Text(file.display().to_string()));
    harness.key_press(Key::Enter);
    harness.event(Event::PointerMoved(egui::pos2(640.0, 795.0)));
    harness.run();
    assert_eq!(harness.state().desk().file.as_deref(), Some(file));
    harness.render().unwrap()
}

#[test]
#[ignore = "needs the photograph that .ci/real-window takes"]
fn the_raster_paints_what_the_window_shows() {
    let raster = painted(&path("PROJECT_FILE"));
    raster.save(path("RASTER")).unwrap();
    let photograph = image::open(path("PHOTOGRAPH")).unwrap().into_rgba8();
    assert_eq!(raster.dimensions(), photograph.dimensions());
    let off = |(a, b): (&image::Rgba<u8>, &image::Rgba<u8>)| {
        let levels = a.0.iter().zip(b.0).map(|(a, b)| a.abs_diff(b));
        levels.max().unwrap_or(0)
    };
    let differences: Vec<u8> = raster.pixels().zip(photograph.pixels()).map(off).collect();
    let equal = differences.iter().filter(|off| **off < 1).count();
    let share = equal as f64 / differences.len() as f64;
    let visible = differences.iter().filter(|off| **off > LEVELS).count();
    writeln!(
        std::io::stdout(),
        "\nRASTER {:.3} % of the pixels are equal, {visible} are off by more than {LEVELS} levels",
        share * 100.0
    )
    .unwrap();
    assert!(share >= EQUAL && visible <= MOST_OFF);
}
