//! Where on the screen is the shift point that `.ci/real-window` drags with the mouse?
//!
//! The same window is laid out here without a screen, and what is read off it is printed for the
//! script: a drag that lands elsewhere than computed shows that window and layout differ.

use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use layshaft::app::{App, Surroundings};
use layshaft::gearing::EngineSpeed;
use layshaft::project::{Edit, Project, SetEdit, format};
use std::io::Write;
use std::path::Path;

/// What the script drags: the second shift point of the set that is selected at the start.
struct Handle {
    /// Its middle, in points from the window's upper left corner.
    at: egui::Pos2,
    shift_rpm: f64,
    /// Engine speed per point of height, in rev/min.
    rpm_per_point: f32,
}

impl Handle {
    fn of(project: &Project) -> Self {
        let candidate = project.sets.iter().find(|c| !is_baseline(project, c.id));
        let candidate = candidate.unwrap();
        let (set, gear) = (&candidate.set, &candidate.set.gears[1]);
        let shift = gear.shift.unwrap_or(set.shift);
        let name = format!(
            "Shift point {} to {}, {}",
            gear.label, set.gears[2].label, set.name
        );
        let at = middle_of(project, &name);
        // The same handle 1000 rpm lower tells how high an engine speed stands.
        let lower = EngineSpeed::from_rpm(shift.rpm() - 1000.0).unwrap();
        let edit = Edit::Set(candidate.id, SetEdit::Shift(gear.id, lower));
        let changed = edit.applied_to(project).unwrap();
        Self {
            at,
            shift_rpm: shift.rpm(),
            rpm_per_point: 1000.0 / (middle_of(&changed, &name).y - at.y),
        }
    }
}

fn is_baseline(project: &Project, set: layshaft::project::SetId) -> bool {
    project.sets.baseline().id == set
}

/// The middle of a widget in a window of the program's first size.
fn middle_of(project: &Project, name: &str) -> egui::Pos2 {
    let surroundings = Surroundings {
        settings_folder: None,
        ..Surroundings::default()
    };
    let app = App::new(project.clone(), None, surroundings);
    let mut harness = Harness::builder()
        .with_size([1280.0, 800.0])
        .with_pixels_per_point(1.0)
        .build_eframe(|creation| {
            layshaft::draw::theme::apply(&creation.egui_ctx);
            app.dress(&creation.egui_ctx);
            app
        });
    harness.run();
    harness.get_by_label(name).rect().center()
}

fn read(path: &Path) -> Project {
    let text = std::fs::read_to_string(path).unwrap();
    let project = format::read(&text).unwrap();
    assert_eq!(format::write(&project).unwrap(), text, "in another layout");
    project
}

#[test]
fn the_handle_to_be_dragged_is_inside_the_window() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("saves/camper-van.ron");
    let handle = Handle::of(&read(&path));
    let diagram = egui::Rect::from_min_max([300.0, 60.0].into(), [1280.0, 760.0].into());
    assert!(diagram.contains(handle.at), "{:?}", handle.at);
    assert!(handle.rpm_per_point > 2.0 && handle.rpm_per_point < 40.0);
}

#[test]
#[ignore = "prints for .ci/real-window"]
fn print_the_handle() {
    let path = std::env::var_os("PROJECT_FILE").unwrap();
    let handle = Handle::of(&read(Path::new(&path)));
    let (x, y) = (handle.at.x.round(), handle.at.y.round());
    // The test runner begins a line, so that the words would not stand at the start of one.
    writeln!(
        std::io::stdout(),
        "\nHANDLE {x} {y} {} {}",
        handle.shift_rpm,
        handle.rpm_per_point
    )
    .unwrap();
}
