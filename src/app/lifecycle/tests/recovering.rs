//! How what a dead window left is offered, and what each answer leads to.

use super::{FILE, Life, Matter, OTHER, SimulatedDisk, by_hand, text, van, with_each_step_refused};
use crate::app::lifecycle::Step;
use crate::project::{Project, RecoveryCopy, digest};
use std::sync::Arc;

const FOUND: &str = "Unsaved work was found";
const APART: &str = "Unsaved work was found, and its file has changed";

/// Where a dead window's work lies.
const LEFT: &str = "12-34.ron";

/// A disk on which a dead window left work on a file that held this when the work began, and holds
/// that now.
fn disk(began_from: &str, now: Option<&str>) -> SimulatedDisk {
    let disk = SimulatedDisk::default();
    if let Some(now) = now {
        disk.put(FILE, now.as_bytes(), 0o644);
    }
    leave(&disk, LEFT, Some(FILE), began_from, 7);
    disk
}

/// Leaves work as a dead window does.
fn leave(disk: &SimulatedDisk, name: &str, file: Option<&str>, began_from: &str, at: u64) {
    let copy = RecoveryCopy {
        file: file.map(SimulatedDisk::path),
        began_from: file.map(|_| digest(began_from.as_bytes())),
        written_unix_s: at,
        project: Arc::new(van(4500.0)),
    };
    let others = disk.of_another_process();
    copy.write(&others, &SimulatedDisk::path(name)).unwrap();
}

/// A window that begins on such a disk and offers what it found.
fn offered(disk: SimulatedDisk) -> Life {
    let mut life = Life::on(disk);
    life.machine.offer_next();
    life
}

/// All work that lies on the disk for a next start.
fn kept(life: &Life) -> Vec<Project> {
    let disk = life.disk.of_another_process();
    let copies = life.disk.files().into_keys();
    let copies = copies.filter_map(|path| RecoveryCopy::read(&disk, &path));
    copies.map(|copy| copy.project.as_ref().clone()).collect()
}

#[test]
fn work_is_offered_by_how_it_stands_to_its_file() {
    let (read, theirs) = (text(&van(4000.0)), text(&van(3000.0)));
    let ours = by_hand(&van(4500.0));
    let cases = [
        (Some(read.as_str()), FOUND),
        (Some(theirs.as_str()), APART),
        (Some(ours.as_str()), FOUND),
        (Some("(format: 1"), FOUND),
        (None, FOUND),
    ];
    for (now, heading) in cases {
        let life = offered(disk(&read, now));
        assert_eq!(life.heading(), heading, "{now:?}");
        let before = life.held(FILE);
        assert_eq!(before.as_deref(), now);
        let mut life = life;
        let state = life.state();
        let later = *life.words().last().unwrap();
        life.answer(later);
        assert!(life.state() == state && life.asked() == Matter::Nothing);
        assert_eq!(kept(&life), [van(4500.0)], "{later}");
    }
}

#[test]
fn recovered_work_is_unsaved_work_on_its_file_which_stays_as_it_is() {
    let (read, theirs) = (text(&van(4000.0)), text(&van(3000.0)));
    let cases = [
        (Some(read.clone()), "Open it", ""),
        (
            Some(by_hand(&van(4000.0))),
            "Open yours",
            "The file has changed",
        ),
        (Some(theirs), "Open yours", "The file has changed"),
        (
            Some("(format: 1".to_owned()),
            "Open it",
            "The file has changed",
        ),
        (None, "Open it", ""),
    ];
    for (now, open, asked_at_saving) in cases {
        let mut life = offered(disk(&read, now.as_deref()));
        life.answer(open);
        assert_eq!(*life.project(), van(4500.0));
        assert_eq!(life.file().as_deref(), Some(FILE));
        assert!(life.is_unsaved());
        assert_eq!(life.held(FILE), now);
        assert_eq!(kept(&life), [van(4500.0)], "in a copy of our own");
        assert_eq!(life.held(LEFT), None, "and in no other");
        life.take(Step::Save(None));
        assert_eq!(life.heading(), asked_at_saving, "{now:?}");
    }
}

#[test]
fn comments_of_the_file_that_the_work_began_from_are_asked_about() {
    let read = by_hand(&van(4000.0));
    let mut life = offered(disk(&read, Some(&read)));
    life.answer("Open it");
    life.take(Step::Save(None));
    assert_eq!(life.heading(), "Save in Layshaft's own layout?");
}

#[test]
fn thrown_away_work_is_gone_and_its_file_stays() {
    let (read, theirs) = (text(&van(4000.0)), text(&van(3000.0)));
    for (now, words) in [(&read, "Throw it away"), (&theirs, "Throw yours away")] {
        let mut life = offered(disk(&read, Some(now)));
        life.answer(words);
        assert!(kept(&life).is_empty());
        assert_eq!(life.held(FILE).as_ref(), Some(now));
        assert_eq!(life.file(), None);
    }
}

#[test]
fn theirs_is_opened_and_ours_kept_for_the_next_start() {
    let (read, theirs) = (text(&van(4000.0)), text(&van(3000.0)));
    let mut life = offered(disk(&read, Some(&theirs)));
    life.answer("Open theirs");
    assert_eq!(*life.project(), van(3000.0));
    assert_eq!(kept(&life), [van(4500.0)]);
}

#[test]
fn work_on_a_file_that_another_window_has_open_is_opened_as_a_copy_or_when_it_is_free() {
    let read = text(&van(4000.0));
    let begun = || {
        let mut life = offered(disk(&read, Some(&read)));
        life.others_open(FILE);
        life.answer("Open it");
        assert_eq!(life.heading(), "The project is open already");
        assert_eq!(kept(&life), [van(4500.0)]);
        life
    };
    let mut life = begun();
    let before = life.state();
    life.answer("Keep it for later");
    assert!(life.state() == before && life.asked() == Matter::Nothing);

    let mut life = begun();
    life.answer("Open as a copy");
    assert_eq!((life.file(), life.is_unsaved()), (None, true));
    assert_eq!(*life.project(), van(4500.0));

    let mut life = begun();
    life.others_close_all();
    life.answer("Try again");
    assert_eq!(life.file().as_deref(), Some(FILE));
}

#[test]
fn several_are_offered_one_after_another_the_newest_first() {
    let disk = SimulatedDisk::default();
    for (name, at) in [("1-1.ron", 1), ("2-2.ron", 2), ("3-3.ron", 3)] {
        leave(&disk, name, None, "", at);
    }
    let mut life = offered(disk);
    life.answer("Throw it away");
    assert_eq!(life.held("3-3.ron"), None, "the newest");
    life.machine.offer_next();
    life.answer("Open it");
    assert!(life.machine.message.contains("1 more"));
    life.machine.offer_next();
    assert_eq!(life.asked(), Matter::Nothing, "this work is unsaved now");
    assert_eq!(kept(&life).len(), 2);
}

#[test]
fn nothing_is_offered_in_the_place_of_unsaved_work() {
    let read = text(&van(4000.0));
    let mut life = Life::on(disk(&read, Some(&read))).changed();
    life.machine.offer_next();
    assert_eq!(life.asked(), Matter::Nothing);
    life.take(Step::Save(None));
    life.type_name(OTHER);
    life.machine.offer_next();
    assert_eq!(life.heading(), FOUND, "once it is saved");
}

#[test]
fn whichever_step_of_recovering_the_disk_refuses_the_work_is_on_the_disk() {
    let read = text(&van(4000.0));
    let prepared = || offered(disk(&read, Some(&read)));
    let deed = |life: &mut Life| life.answer("Open it");
    with_each_step_refused(prepared, deed, |life, refused| {
        assert!(!kept(life).is_empty(), "{refused}");
        assert!(kept(life).iter().all(|work| *work == van(4500.0)));
        assert_eq!(life.held(FILE), Some(read.clone()));
        if life.asked() == Matter::Nothing {
            assert_eq!(*life.project(), van(4500.0), "{refused}");
            assert!(life.is_unsaved(), "{refused}");
        }
    });
}
