//! Which answer of each question loses nothing, and that it does not.

use super::{FILE, Life, OTHER, SimulatedDisk, by_hand, text, van};
use crate::app::file_picker::Purpose;
use crate::app::lifecycle::{After, Step};
use crate::project::examples::Start;
use crate::project::{RecoveryCopy, digest};
use std::sync::Arc;

/// What a dead window left: work on a file that held `began_from`, which holds `now`.
fn left(began_from: &str, now: &str) -> Life {
    let disk = SimulatedDisk::default();
    disk.put(FILE, now.as_bytes(), 0o644);
    let copy = RecoveryCopy {
        file: Some(SimulatedDisk::path(FILE)),
        began_from: Some(digest(began_from.as_bytes())),
        written_unix_s: 7,
        project: Arc::new(van(4500.0)),
    };
    let others = disk.of_another_process();
    let place = SimulatedDisk::path("12-34.ron");
    copy.write(&others, &place).unwrap();
    let mut life = Life::on(disk);
    life.machine.offer_next();
    life
}

fn changed_by_others(now: &str) -> Life {
    let mut life = Life::on_file(&text(&van(4000.0))).changed();
    life.others_write(FILE, now.as_bytes());
    life.take(Step::Save(None));
    life
}

fn layout() -> Life {
    let mut life = Life::on_file(&by_hand(&van(4000.0))).changed();
    life.take(Step::Save(None));
    life
}

fn replacing() -> Life {
    let mut life = Life::nowhere().changed();
    life.others_write(OTHER, b"something else");
    life.take(Step::AskForPath(Purpose::Save, None));
    life.type_name(OTHER);
    life
}

fn opened_elsewhere() -> Life {
    let mut life = Life::on_file(&text(&van(4000.0)));
    life.others_write(OTHER, text(&van(3000.0)).as_bytes());
    life.others_open(OTHER);
    life.take(Step::Open(SimulatedDisk::path(OTHER)));
    life
}

fn unread() -> Life {
    let mut life = Life::on_file(&text(&van(4000.0))).changed();
    life.leave_unread();
    life.take(Step::Leave(After::Quit));
    life
}

fn left_and_opened_elsewhere() -> Life {
    let read = text(&van(4000.0));
    let mut life = left(&read, &read);
    life.others_open(FILE);
    life.answer("Open it");
    life
}

/// Every question with an answer that loses nothing and changes no file.
fn questions() -> Vec<(Life, &'static str)> {
    let (read, theirs) = (text(&van(4000.0)), text(&van(3000.0)));
    vec![
        (layout(), "Save under another name"),
        (changed_by_others(&theirs), "Save yours under another name"),
        (changed_by_others("("), "Save yours under another name"),
        (replacing(), "Choose another name"),
        (opened_elsewhere(), "Open a copy"),
        (unread(), "Go to the field"),
        (left(&read, &read), "Open it"),
        (left(&read, &theirs), "Open yours"),
        (left_and_opened_elsewhere(), "Open as a copy"),
    ]
}

#[test]
fn the_safe_answer_of_every_question_changes_no_file_and_keeps_the_work() {
    for (mut life, words) in questions() {
        let question = life.question().clone();
        let safe = question.answers.iter().find(|answer| answer.is_safe);
        assert_eq!(safe.unwrap().words, words, "{}", question.heading);
        let files = [FILE, OTHER].map(|name| life.held(name));
        let (was_unsaved, work) = (life.is_unsaved(), life.project().clone());
        let is_left = question.heading.starts_with("Unsaved work");
        life.take(safe.unwrap().step.clone());
        let now = [FILE, OTHER].map(|name| life.held(name));
        assert!(now == files, "{words} changes a file");
        let is_kept = life.is_unsaved() && *life.project() == work;
        assert!(is_kept || !was_unsaved, "{words} loses the work");
        let is_recovered = life.is_unsaved() && *life.project() == van(4500.0);
        assert!(is_recovered || !is_left, "{words} loses what was left");
    }
}

#[test]
fn leaving_unsaved_work_begins_on_saving_it() {
    let mut life = Life::on_file(&text(&van(4000.0))).changed();
    life.take(Step::Leave(After::New(Start::Car)));
    let safe = life.question().answers.iter().find(|answer| answer.is_safe);
    let step = safe.unwrap().step.clone();
    assert_eq!(step, Step::Save(Some(After::New(Start::Car))));
    life.take(step);
    assert_eq!(life.held(FILE), Some(text(&van(4500.0))));
}
