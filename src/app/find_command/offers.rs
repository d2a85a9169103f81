//! What can be found: every command, example, set and recent file.

use super::matching::Words;
use crate::app::action::Action;
use crate::app::commands::{Command, TABLE};
use crate::app::desk::Desk;
use crate::app::menus::command_text;
use crate::app::workshop::begun_plan;
use crate::project::examples::EXAMPLES;
use crate::project::{Edit, Project, WorkshopEdit};
use crate::workshop::{BenchItem, JobKind};
use egui::KeyboardShortcut;
use std::path::PathBuf;

/// Something that can be found and done.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Offer {
    /// What it is called.
    pub(in crate::app) name: String,
    /// The menu it stands in, or what kind of thing it is.
    pub(in crate::app) place: &'static str,
    /// Its key.
    pub(in crate::app) keys: String,
    /// What it does, in a sentence.
    pub(in crate::app) what: String,
    /// Why it cannot be done just now.
    pub(in crate::app) why_not: Option<&'static str>,
    /// What is done.
    pub(in crate::app) action: Action,
}

impl Offer {
    /// What it is found by.
    pub(super) fn words(&self) -> Words<'_> {
        Words {
            name: &self.name,
            more: [self.place, &self.keys, &self.what],
            is_barred: self.why_not.is_some(),
        }
    }

    /// What stands at the end of its line.
    pub(super) fn remark(&self) -> String {
        [self.place, &self.keys]
            .into_iter()
            .filter(|text| !text.is_empty())
            .collect::<Vec<_>>()
            .join("   ")
    }
}

/// All that can be found, the commands in the order of their menus; `keys` spells a shortcut.
pub(in crate::app) fn offers(
    desk: &Desk,
    recent: &[PathBuf],
    keys: &dyn Fn(&KeyboardShortcut) -> String,
) -> Vec<Offer> {
    let commands = TABLE
        .iter()
        // It is what somebody is in already.
        .filter(|entry| entry.command != Command::FindCommand)
        .map(|entry| Offer {
            name: command_text(entry.command, desk),
            place: entry.menu.text(),
            keys: entry.shortcuts.first().map(keys).unwrap_or_default(),
            what: entry.tooltip.to_owned(),
            why_not: entry.command.why_not(desk),
            action: Action::Run(entry.command),
        });
    let sets = desk.project().sets.iter().map(|candidate| {
        let what = "Brings this set forward".to_owned();
        named(
            candidate.set.name.to_string(),
            "Gear set",
            what,
            Action::Select(candidate.id),
        )
    });
    let jobs = desk.project().workshop.jobs().iter().map(|job| {
        let what = "Works on this job of the bench".to_owned();
        named(
            job.title().to_owned(),
            "Job",
            what,
            Action::OpenAtBench(BenchItem::Job(job.id)),
        )
    });
    let plan = plan_offer(desk.project());
    let kinds = JobKind::ALL.map(|kind| {
        let add = Edit::Workshop(WorkshopEdit::AddJob(Box::new(kind.begun())));
        named(
            format!("Add a job: {}", kind.words()),
            "Workshop",
            kind.meaning().to_owned(),
            Action::Edit(add),
        )
    });
    let recent = recent.iter().map(|path| {
        let name = path.file_name().unwrap_or(path.as_os_str());
        let what = format!("Opens {}", path.display());
        let open = Action::Open(path.clone());
        named(
            name.to_string_lossy().into_owned(),
            "Recent file",
            what,
            open,
        )
    });
    let examples = EXAMPLES.iter().enumerate().map(|(at, example)| {
        let what = "Opens this example".to_owned();
        named(
            example.name.to_owned(),
            "Example",
            what,
            Action::Example(at),
        )
    });
    let own = commands.chain(sets).chain([plan]).chain(jobs).chain(kinds);
    own.chain(recent).chain(examples).collect()
}

/// The plan of what changes, or how it is begun.
fn plan_offer(project: &Project) -> Offer {
    let (name, action) = match project.workshop.plan {
        Some(_) => ("What changes", Action::OpenAtBench(BenchItem::Plan)),
        None => ("Plan what changes", Action::Edit(begun_plan())),
    };
    let what = "What of the box must change for each gear set, and what it costs".to_owned();
    named(name.to_owned(), "Workshop", what, action)
}

fn named(name: String, place: &'static str, what: String, action: Action) -> Offer {
    Offer {
        name,
        place,
        keys: String::new(),
        what,
        why_not: None,
        action,
    }
}
