//! The whole window without a screen: found by name, moved by pointer and key.
//!
//! One harness for every test of the window: `opening` says on what, `looking` what is to be seen,
//! `doing` what can be done. Nothing waits for a real second: frames are steps, and the autosave
//! goes a hundred times its own pace.

mod dialogs;
mod doing;
mod looking;
mod opening;
mod painted;
mod place;
mod stops;

pub(crate) use dialogs::{KINDS, change, for_dialogs};
pub(crate) use doing::press;
pub(crate) use opening::{Opening, QUICK};
pub(crate) use painted::{Painted, Text};
pub(crate) use place::Place;

use super::gear_sets::{name, ratio, rpm};
use super::memory_disk::MemoryDisk;
use super::scripted_picker::ScriptedPicker;
use egui::Pos2;
use egui_kittest::Harness;
use layshaft::app::App;
use layshaft::gearing::{ActsOn, Position, Stage};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, Project, SetEdit, TechnicalData, format};
use std::sync::Arc;
use std::time::Duration;

/// The camper van with its three sets.
pub(crate) fn camper_van() -> Project {
    EXAMPLES[0].project().unwrap()
}

/// The camper van as long as nobody has told anything of its engine.
pub(crate) fn without_engine() -> Project {
    Project {
        technical: TechnicalData::default(),
        ..camper_van()
    }
}

/// The largest project of the test data.
pub(crate) fn three_ten_speeds() -> Project {
    format::read(include_str!("../../../data/three-ten-speeds.ron")).unwrap()
}

/// The camper van with a transfer box in each set; of the first and the last both ranges are shown.
pub(crate) fn in_both_ranges() -> Project {
    let mut project = camper_van();
    let position = |(text, number)| Position {
        name: name(text),
        ratio: ratio(number),
    };
    let ids: Vec<_> = project.sets.iter().map(|candidate| candidate.id).collect();
    for (place, id) in ids.into_iter().enumerate() {
        let transfer_box = Stage {
            name: name("Transfer box"),
            positions: [("High", 1.0), ("Low", 2.0)].map(position).to_vec(),
            present: 0,
            acts_on: ActsOn::EveryGear,
            shows_others: place != 1,
        };
        let edit = Edit::Set(id, SetEdit::AddStage(transfer_box));
        project = edit.applied_to(&project).unwrap();
    }
    project
}

/// Every project that looks are tried on, by its name.
pub(crate) fn every_project() -> Vec<(&'static str, Project)> {
    let examples = EXAMPLES.iter();
    let mut projects: Vec<_> = examples
        .map(|example| (example.name, example.project().unwrap()))
        .collect();
    projects.push(("three ten-speed sets", three_ten_speeds()));
    projects.push(("both ranges at once", in_both_ranges()));
    projects
}

/// The camper van with its second set, whose handles are shown at first, shifted at these speeds.
pub(crate) fn with_shifts(shifts_rpm: [i32; 4]) -> Project {
    let mut project = camper_van();
    let second = project.sets.iter().nth(1).unwrap();
    let (set, gears) = (second.id, second.set.gears.clone());
    for (gear, shift_rpm) in gears.iter().zip(shifts_rpm) {
        let edit = SetEdit::Shift(gear.id, rpm(shift_rpm.into()));
        project = Edit::Set(set, edit).applied_to(&project).unwrap();
    }
    project
}

/// An open window.
pub(crate) struct Window {
    pub(crate) harness: Harness<'static, App>,
    /// Its files, where they are in memory.
    pub(crate) disk: Arc<MemoryDisk>,
    /// The system's dialog, which the test answers.
    pub(crate) picker: ScriptedPicker,
    /// Every text that went to the clipboard.
    clipboard: Vec<String>,
    /// Where the last click was.
    last_click: Option<Pos2>,
}

impl Window {
    /// A window of the ordinary size on the camper van, in no file.
    pub(crate) fn on_camper_van() -> Self {
        Opening::on(camper_van()).open()
    }

    pub(crate) fn app(&self) -> &App {
        self.harness.state()
    }

    pub(crate) fn project(&self) -> &Project {
        self.app().desk().project()
    }

    /// Runs frames until nothing is left to be done, be it beside the window.
    pub(crate) fn settle(&mut self) {
        self.harness.run();
        while self.app().is_looking() {
            std::thread::sleep(Duration::from_millis(1));
            self.harness.run();
        }
    }
}
