//! How does the window come up, and what is said where it cannot?

use super::files;
use super::lifecycle::{Surroundings, write_last};
use super::recovery::{self, Latest};
use super::settings::SMALLEST;
use super::window::App;
use crate::draw::theme;
use crate::logging;
use crate::panics;
use crate::platform;
use crate::project::Disk;
use crate::project::examples::EXAMPLES;
use eframe::NativeOptions;
use egui::{Vec2, ViewportBuilder, ViewportCommand, ViewportId};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// The name by which the desktop knows the program; its `.desktop` file has the same.
const APP_ID: &str = "layshaft";

/// The window's icon; a test draws it.
const ICON: &[u8] = include_bytes!("../../assets/icon.png");

/// Why unsaved work is kept nowhere where the user has no home.
const NO_HOME: &str = "no home folder is known to keep copies in; save often";

/// Why there is no window.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// The file that was named cannot be opened.
    #[error(transparent)]
    File(#[from] files::OpenError),
    /// The example that the window opens with is broken.
    #[error(transparent)]
    Example(#[from] crate::project::format::FormatError),
    /// There is no display, or no OpenGL on it.
    #[error(
        "no window can be shown here ({0}); \
         the commands table, chart and check work without one"
    )]
    NoWindow(&'static str),
}

/// Opens the window on a file, or on the first example, until it is closed.
///
/// # Errors
/// When the file cannot be opened or no window can be shown: one sentence.
pub fn run(file: Option<&Path>) -> Result<(), StartError> {
    logging::write_warnings_to_stderr();
    let mut app = App::on_example(EXAMPLES[0].project()?, Surroundings::default());
    match recovery::folder() {
        Some(folder) => app.keep_unsaved_work_in(&folder),
        None => app.lifecycle.cannot_keep_unsaved_work(NO_HOME),
    }
    if let Some(path) = file {
        // What cannot be opened is said before there is a window, unless one is needed to offer work
        // that was left.
        if !app.lifecycle.has_left_work() {
            files::found(&Disk, path)?;
        }
        app.open_at_start(path.to_owned());
    }
    if let Some((path, latest)) = app.lifecycle.last_resort() {
        panics::answer_panics(move || told_last(&path, &latest));
    }
    let ending = Ending {
        last_resort: app.lifecycle.last_resort(),
        is_ending: Arc::clone(&app.lifecycle.is_ending),
    };
    let size = app.remembered_size();
    let start = eframe::run_native(
        "Layshaft",
        options(size),
        Box::new(move |creation| {
            theme::apply(&creation.egui_ctx);
            app.dress(&creation.egui_ctx);
            fit_to_monitor(&creation.egui_ctx, size);
            ending.answer_signals(&creation.egui_ctx);
            Ok(Box::new(app))
        }),
    );
    start.map_err(|error| StartError::NoWindow(reason(&error)))
}

/// What happens when the system asks the program to end: at logging out, at shutting down.
struct Ending {
    last_resort: Option<(PathBuf, Latest)>,
    is_ending: Arc<AtomicBool>,
}

impl Ending {
    /// From now on a signal to end keeps what is unsaved and closes the window without a question.
    fn answer_signals(self, ctx: &egui::Context) {
        let ctx = ctx.clone();
        let answered = platform::on_signal_to_end(move || {
            // Kept first, on this very thread: the window may hang.
            if let Some((path, latest)) = &self.last_resort {
                write_last(path, latest);
            }
            self.is_ending.store(true, Ordering::SeqCst);
            ctx.send_viewport_cmd_to(ViewportId::ROOT, ViewportCommand::Close);
            ctx.request_repaint();
        });
        if let Err(problem) = answered {
            log::warn!("a signal to end will not be answered: {problem}");
        }
    }
}

/// Keeps unsaved work when the program fails, and says where it lies.
fn told_last(path: &Path, latest: &Latest) -> String {
    if write_last(path, latest) {
        format!("your unsaved work is kept in {}", path.display())
    } else {
        "saved files are as they were".to_owned()
    }
}

fn options(size: [f32; 2]) -> NativeOptions {
    let mut viewport = ViewportBuilder::default()
        .with_app_id(APP_ID)
        .with_title("Layshaft")
        .with_inner_size(size)
        .with_min_inner_size(SMALLEST);
    // A window without its icon is better than none.
    if let Ok(icon) = eframe::icon_data::from_png_bytes(ICON) {
        viewport = viewport.with_icon(icon);
    }
    NativeOptions {
        viewport,
        // Dithering would make the window differ from an exported picture.
        dithering: false,
        ..NativeOptions::default()
    }
}

/// What the bars of a desktop and a window's own frame take, in points.
const DECORATIONS: Vec2 = Vec2::new(16.0, 64.0);

/// Makes the window so small that the monitor shows all of it, its title bar and its last line too.
fn fit_to_monitor(ctx: &egui::Context, size: [f32; 2]) {
    let monitor = ctx.input(|i| i.viewport().monitor_size);
    let Some(monitor) = monitor.filter(|monitor| monitor.x > 1.0 && monitor.y > 1.0) else {
        return;
    };
    let wanted = Vec2::from(size);
    let fitting = wanted.min(monitor - DECORATIONS).max(SMALLEST);
    if fitting != wanted {
        ctx.send_viewport_cmd(ViewportCommand::InnerSize(fitting));
    }
}

/// What is missing, in words; the toolkit's own text names files of its source.
fn reason(error: &eframe::Error) -> &'static str {
    use eframe::Error;
    match error {
        Error::WinitEventLoop(inner) if inner.to_string().contains("shared libraries") => {
            "one of the libraries for X11 windows is not installed: libX11, libXcursor, libXi"
        }
        Error::Winit(_) | Error::WinitEventLoop(_) => "no display can be reached",
        Error::AppCreation(_) => "its contents could not be made",
        _ => "the display offers no usable OpenGL",
    }
}
