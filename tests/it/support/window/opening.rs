//! On what a window is opened: project, file, size, looks, disk, folders, dialog.

use super::Window;
use crate::support::memory_disk::MemoryDisk;
use crate::support::scripted_picker::ScriptedPicker;
use egui::Vec2;
use egui_kittest::Harness;
use layshaft::app::{App, Pace, Surroundings};
use layshaft::draw::theme;
use layshaft::project::{Disk, FileSystem, Project, format};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

/// A hundred times the program's own pace.
pub(crate) const QUICK: Pace = Pace {
    quiet: Duration::from_millis(10),
    longest_wait: Duration::from_millis(20),
    retry: Duration::from_millis(50),
};

/// A window to be opened.
pub(crate) struct Opening {
    project: Project,
    file: Option<PathBuf>,
    /// The file that the program is started with.
    named: Option<PathBuf>,
    size: Vec2,
    /// None where the settings decide.
    theme: Option<egui::Theme>,
    disk: Arc<MemoryDisk>,
    is_on_real_disk: bool,
    picker: ScriptedPicker,
    settings_folder: Option<PathBuf>,
    /// The folder for copies of unsaved work.
    kept: Option<PathBuf>,
    pace: Pace,
}

impl Opening {
    /// A window of the ordinary size on a project that stands in no file, over a disk in memory.
    pub(crate) fn on(project: Project) -> Self {
        Self {
            project,
            file: None,
            named: None,
            size: Vec2::new(1280.0, 800.0),
            theme: Some(egui::Theme::Light),
            disk: Arc::default(),
            is_on_real_disk: false,
            picker: ScriptedPicker::default(),
            settings_folder: None,
            kept: None,
            pace: QUICK,
        }
    }

    /// The same in another size.
    pub(crate) fn sized(self, width: f32, height: f32) -> Self {
        let size = Vec2::new(width, height);
        Self { size, ..self }
    }

    /// The same in the smallest size that a window can have.
    pub(crate) fn small(self) -> Self {
        self.sized(1000.0, 640.0)
    }

    /// The same in one of the two looks.
    pub(crate) fn in_theme(self, theme: egui::Theme) -> Self {
        let theme = Some(theme);
        Self { theme, ..self }
    }

    /// The same with the project in a file at home, which holds it.
    pub(crate) fn in_file(self, name: &str) -> Self {
        self.disk.put(name, &format::write(&self.project).unwrap());
        let file = Some(MemoryDisk::path(name));
        Self { file, ..self }
    }

    /// The program as it is started with a file's name: it holds this project, and opens that of the file.
    pub(crate) fn started_with(self, name: &str, project: &Project) -> Self {
        self.disk.put(name, &format::write(project).unwrap());
        let named = Some(MemoryDisk::path(name));
        Self { named, ..self }
    }

    /// The same on the real disk.
    fn on_real_disk(self) -> Self {
        Self {
            is_on_real_disk: true,
            ..self
        }
    }

    /// The same with the project in a file of the real disk that holds it already.
    pub(crate) fn of_real_file(self, path: &Path) -> Self {
        let file = Some(path.to_owned());
        Self { file, ..self }.on_real_disk()
    }

    /// The same with the project in a file of the real disk, which is written.
    pub(crate) fn in_real_file(self, path: &Path) -> Self {
        std::fs::write(path, format::write(&self.project).unwrap()).unwrap();
        self.of_real_file(path)
    }

    /// The same with settings in a folder of the real disk, which decide the looks too.
    pub(crate) fn with_settings(self, folder: &Path) -> Self {
        Self {
            settings_folder: Some(folder.to_owned()),
            theme: None,
            ..self
        }
        .on_real_disk()
    }

    /// The same with copies of unsaved work in a folder of the real disk.
    pub(crate) fn keeping_work_in(self, folder: &Path) -> Self {
        let kept = Some(folder.to_owned());
        Self { kept, ..self }.on_real_disk()
    }

    /// The same with an autosave of another pace.
    pub(crate) fn at_pace(self, pace: Pace) -> Self {
        Self { pace, ..self }
    }

    /// The same with a system's dialog that is known already.
    pub(crate) fn with_picker(self, picker: ScriptedPicker) -> Self {
        Self { picker, ..self }
    }

    /// The program as it starts, without a window.
    pub(crate) fn app(self) -> App {
        let file_system: Arc<dyn FileSystem + Send + Sync> = if self.is_on_real_disk {
            Arc::new(Disk)
        } else {
            self.disk
        };
        let surroundings = Surroundings {
            file_system,
            picker: Box::new(self.picker),
            settings_folder: self.settings_folder,
            pace: self.pace,
        };
        let mut app = App::new(self.project, self.file, surroundings);
        if let Some(folder) = &self.kept {
            app.keep_unsaved_work_in(folder);
        }
        if let Some(path) = self.named {
            app.open_at_start(path);
        }
        app
    }

    /// Opens it and lets it settle.
    pub(crate) fn open(self) -> Window {
        let (size, theme) = (self.size, self.theme);
        let (disk, picker) = (Arc::clone(&self.disk), self.picker.clone());
        let app = self.app();
        // Sixty frames a second: two clicks in a row count as a double click.
        let mut harness = Harness::builder()
            .with_size(size)
            .with_theme(theme.unwrap_or(egui::Theme::Dark))
            .with_step_dt(1.0 / 60.0)
            .with_max_steps(60)
            .with_context_setup(theme::apply)
            .build_eframe(|creation| {
                app.dress(&creation.egui_ctx);
                app
            });
        if theme.is_none() {
            // The harness has put a theme of its own over the remembered one.
            harness.state().dress(&harness.ctx);
        }
        harness.run();
        Window {
            harness,
            disk,
            picker,
            clipboard: Vec::new(),
            last_click: None,
        }
    }
}
