//! What is asked before a document makes room, and what each answer leads to.

use super::{FILE, Life, Matter, NEW, OTHER, SimulatedDisk, text, van};
use crate::app::file_picker::{Answer, Purpose};
use crate::app::lifecycle::{After, Step};
use crate::project::examples::{EXAMPLES, Start};

/// Everything that a document can make room for.
fn every_after() -> [After; 7] {
    [
        After::New(Start::Car),
        After::New(Start::Ranges),
        After::New(Start::Motorcycle),
        After::Choose,
        After::Open(SimulatedDisk::path(OTHER)),
        After::Example(1),
        After::Quit,
    ]
}

/// A document in a file or in none, and a second file to go to.
fn life(is_in_file: bool) -> Life {
    let life = if is_in_file {
        Life::on_file(&text(&van(4000.0)))
    } else {
        Life::nowhere()
    };
    life.others_write(OTHER, text(&van(3000.0)).as_bytes());
    life
}

/// The document has made room, and nothing is asked but what that asks itself.
#[track_caller]
fn check_arrived(life: &Life, after: &After) {
    let is_asked = life.heading() == "a path";
    assert_eq!(is_asked, *after == After::Choose, "{}", life.heading());
    assert_eq!(life.machine.may_close, *after == After::Quit);
    match after {
        After::New(start) => assert_eq!(*life.project(), start.example().project().unwrap()),
        After::Example(at) => assert_eq!(*life.project(), EXAMPLES[*at].project().unwrap()),
        After::Open(_) => {
            assert_eq!(life.file().as_deref(), Some(OTHER));
            assert_eq!(*life.project(), van(3000.0));
        }
        After::Choose => {
            let Matter::Path(path) = life.asked() else {
                panic!("no path is asked for");
            };
            assert_eq!((path.purpose, &path.then), (Purpose::Open, &None));
        }
        After::Quit => {}
    }
}

#[test]
fn saved_work_makes_room_without_a_question() {
    for is_in_file in [false, true] {
        for after in every_after() {
            let mut life = life(is_in_file);
            let files = life.disk.files().len();
            life.take(Step::Leave(after.clone()));
            check_arrived(&life, &after);
            assert!(!life.is_unsaved());
            assert!(life.disk.files().len() <= files + 1, "a lock at most");
        }
    }
}

#[test]
fn unsaved_work_makes_room_only_for_an_answer() {
    for is_in_file in [false, true] {
        for after in every_after() {
            let mut life = life(is_in_file).changed();
            let before = life.state();
            life.take(Step::Leave(after.clone()));
            assert_eq!(life.heading(), "Save the changes?", "{after:?}");
            assert_eq!(life.words(), ["Save", "Do not save", "Cancel"]);
            assert!(life.state() == before, "asking changes nothing");
            life.answer("Cancel");
            assert!(life.state() == before && life.asked() == Matter::Nothing);
        }
    }
}

#[test]
fn unsaved_work_that_is_given_up_is_nowhere_and_its_file_as_it_was() {
    for is_in_file in [false, true] {
        for after in every_after() {
            let mut life = life(is_in_file).changed();
            let held = life.held(FILE);
            life.take(Step::Leave(after.clone()));
            life.answer("Do not save");
            check_arrived(&life, &after);
            assert_eq!(life.held(FILE), held);
        }
    }
}

#[test]
fn what_does_not_read_makes_room_only_for_an_answer_though_all_else_is_saved() {
    for after in every_after() {
        let mut life = life(true);
        life.leave_unread();
        life.take(Step::Save(None));
        let said = "Saved, but without what does not read in \"Idle\": ";
        assert!(life.machine.message.starts_with(said));
        let before = life.state();
        life.take(Step::Leave(after.clone()));
        assert_eq!(life.heading(), "Leave what does not read?", "{after:?}");
        assert_eq!(
            life.words(),
            ["Go to the field", "Leave without it", "Cancel"]
        );
        assert_eq!(life.question().details, ["Idle: slow"]);
        assert!(life.state() == before, "asking changes nothing");
        life.answer("Go to the field");
        assert!(life.state() == before && life.asked() == Matter::Nothing);
        life.take(Step::Leave(after.clone()));
        life.answer("Leave without it");
        check_arrived(&life, &after);
    }
}

#[test]
fn what_does_not_read_beside_unsaved_work_asks_about_both() {
    let leaving = |answer: &str| {
        let mut life = life(true).changed();
        life.leave_unread();
        life.take(Step::Leave(After::Quit));
        let words = ["Go to the field", "Save the rest", "Save nothing", "Cancel"];
        assert_eq!(life.words(), words);
        life.answer(answer);
        (life.held(FILE), life.machine.may_close)
    };
    let [old, new] = [4000.0, 4500.0].map(|redline| Some(text(&van(redline))));
    assert_eq!(leaving("Save the rest"), (new, true));
    assert_eq!(leaving("Save nothing"), (old.clone(), true));
    assert_eq!(leaving("Go to the field"), (old.clone(), false));
    assert_eq!(leaving("Cancel"), (old, false));
}

#[test]
fn unsaved_work_is_saved_in_its_file_and_then_makes_room() {
    for after in every_after() {
        let mut life = life(true).changed();
        let work = text(life.project());
        life.take(Step::Leave(after.clone()));
        life.answer("Save");
        check_arrived(&life, &after);
        assert_eq!(life.held(FILE), Some(work));
    }
}

#[test]
fn unsaved_work_in_no_file_asks_for_one_and_then_makes_room() {
    for after in every_after() {
        let mut life = life(false).changed();
        let work = text(life.project());
        life.take(Step::Leave(after.clone()));
        life.answer("Save");
        assert_eq!(life.heading(), "a path");
        assert!(!life.machine.may_close);
        life.type_name("");
        assert!(life.problem().contains("folder"), "{}", life.problem());
        life.type_name(NEW);
        check_arrived(&life, &after);
        assert_eq!(life.held(NEW), Some(work));
    }
}

#[test]
fn a_path_that_is_not_given_after_all_keeps_the_document() {
    let mut life = life(false).changed();
    let before = life.state();
    life.take(Step::Leave(After::Quit));
    life.answer("Save");
    life.take(Step::Stay);
    assert!(life.state() == before && life.asked() == Matter::Nothing);
}

#[test]
fn a_save_that_fails_keeps_the_document_and_goes_on_once_another_place_is_found() {
    for after in every_after() {
        let prepared = || {
            let mut life = life(true).changed();
            life.take(Step::Leave(after.clone()));
            life
        };
        let mut life = super::with_full_disk(prepared, |life| life.answer("Save"));
        assert!(life.problem().contains("full"), "{}", life.problem());
        assert!(life.is_unsaved() && !life.machine.may_close);
        assert_eq!(life.held(FILE), Some(text(&van(4000.0))));
        life.type_name(NEW);
        check_arrived(&life, &after);
        assert_eq!(life.held(NEW), Some(text(&van(4500.0))));
    }
}

#[test]
fn what_cannot_be_opened_leaves_the_document_as_it_was() {
    let broken: [(&str, &[u8]); 2] = [("broken.ron", b"(format: 1,"), ("bytes.ron", b"\xff\xfe")];
    for name in ["broken.ron", "bytes.ron", "missing.ron"] {
        for is_given_up in [false, true] {
            let mut life = life(true);
            for (broken, bytes) in broken {
                life.others_write(broken, bytes);
            }
            if is_given_up {
                life.edit(4500.0);
            }
            let before = life.state();
            life.take(Step::Leave(After::Open(SimulatedDisk::path(name))));
            if is_given_up {
                life.answer("Do not save");
            }
            assert!(life.machine.message.contains(name), "{name}");
            assert!(life.state() == before && life.asked() == Matter::Nothing);
        }
    }
}

#[test]
fn a_path_that_cannot_be_opened_is_asked_for_again_and_says_why() {
    let mut life = life(true);
    let before = life.state();
    life.take(Step::Leave(After::Choose));
    life.type_name("missing.ron");
    assert!(life.problem().contains("missing.ron"));
    life.take(Step::Typed("  ".to_owned()));
    assert_eq!(life.problem(), "Type a path first.");
    assert!(life.state() == before);
    life.type_name(OTHER);
    assert_eq!(*life.project(), van(3000.0));
}

#[test]
fn the_system_s_dialog_is_heard_only_by_the_question_that_called_it() {
    let mut life = life(true);
    let chosen = |request, name| Answer {
        request,
        path: Some(SimulatedDisk::path(name)),
        was_unseen: false,
    };
    life.take(Step::Leave(After::Choose));
    let Matter::Path(path) = life.asked() else {
        panic!("no path is asked for");
    };
    let first = path.request.unwrap();
    life.take(Step::Stay);
    let before = life.state();
    life.take(Step::Chosen(chosen(first, OTHER)));
    assert!(life.state() == before, "nobody waits for it");
    life.take(Step::AskForPath(Purpose::Save, None));
    life.take(Step::Chosen(chosen(first, OTHER)));
    assert!(life.state() == before, "it was to be opened, not replaced");
    life.take(Step::Chosen(chosen(first + 1, NEW)));
    assert_eq!(life.file().as_deref(), Some(NEW));
}

#[test]
fn a_dialog_that_nobody_saw_leaves_the_path_to_be_typed_and_a_cancelled_one_does_not() {
    for was_unseen in [true, false] {
        let mut life = life(true);
        life.take(Step::Leave(After::Choose));
        life.take(Step::Chosen(Answer {
            request: 1,
            path: None,
            was_unseen,
        }));
        let expected = if was_unseen { "a path" } else { "" };
        assert_eq!(life.heading(), expected);
    }
}

#[test]
fn what_another_window_has_open_is_opened_as_a_copy_or_when_it_is_free() {
    let begun = || {
        let mut life = life(true);
        life.others_open(OTHER);
        life.take(Step::Leave(After::Open(SimulatedDisk::path(OTHER))));
        assert_eq!(life.heading(), "The project is open already");
        assert_eq!(life.words(), ["Open a copy", "Try again", "Cancel"]);
        assert_eq!(life.file().as_deref(), Some(FILE));
        life
    };
    let mut life = begun();
    life.answer("Cancel");
    assert_eq!(life.file().as_deref(), Some(FILE));

    let mut life = begun();
    life.answer("Open a copy");
    assert_eq!((life.file(), life.project()), (None, &van(3000.0)));

    let mut life = begun();
    life.answer("Try again");
    assert_eq!(life.heading(), "The project is open already");
    life.others_close_all();
    life.answer("Try again");
    assert_eq!(life.file().as_deref(), Some(OTHER));
}

#[test]
fn a_window_lets_go_of_its_file_when_it_turns_to_another() {
    let mut life = life(true);
    life.others_open(FILE);
    assert!(life.others.is_empty(), "it is ours");
    life.take(Step::Leave(After::New(Start::Car)));
    life.others_open(FILE);
    assert_eq!(life.others.len(), 1);
}
