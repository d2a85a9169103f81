//! What is asked before a file is written over, and what each answer leads to.

use super::{
    FILE, Life, Matter, NEW, OTHER, SimulatedDisk, by_hand, text, van, with_each_step_refused,
    with_full_disk,
};
use crate::app::file_picker::Purpose;
use crate::app::lifecycle::Step;
use crate::project::LARGEST_FILE_BYTES;

const FORM: &str = "Save in Layshaft's own layout?";
const CHANGED: &str = "The file has changed";

/// What the file holds when the document is saved.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Held {
    /// What was read, in the program's own layout.
    Own,
    /// What was read, written by hand.
    ByHand,
    /// Work of somebody else.
    Theirs,
    /// The very work that is to be saved, which somebody else saved.
    Ours,
    /// The same, which somebody else wrote by hand.
    OursByHand,
    /// Nothing: it is gone.
    Gone,
    /// Text that is no project.
    Broken,
    /// No text.
    Bytes,
}

impl Held {
    const ALL: [Self; 8] = [
        Self::Own,
        Self::ByHand,
        Self::Theirs,
        Self::Ours,
        Self::OursByHand,
        Self::Gone,
        Self::Broken,
        Self::Bytes,
    ];

    /// What saving asks.
    fn heading(self) -> &'static str {
        match self {
            Self::Own | Self::Ours | Self::Gone => "",
            Self::ByHand | Self::OursByHand => FORM,
            Self::Theirs | Self::Broken | Self::Bytes => CHANGED,
        }
    }

    /// Lets others bring the file into this state.
    fn come_about(self, life: &Life) {
        match self {
            Self::Own | Self::ByHand => {}
            Self::Theirs => life.others_write(FILE, text(&van(3000.0)).as_bytes()),
            Self::Ours => life.others_write(FILE, text(&van(4500.0)).as_bytes()),
            Self::OursByHand => life.others_write(FILE, by_hand(&van(4500.0)).as_bytes()),
            Self::Gone => life.others_remove(FILE),
            Self::Broken => life.others_write(FILE, b"(format: 1, title:"),
            Self::Bytes => life.others_write(FILE, b"\xff\xfe\x00"),
        }
    }

    /// A document with unsaved work, whose file holds this now.
    fn life(self) -> Life {
        let read = van(4000.0);
        let life = match self {
            Self::ByHand => Life::on_file(&by_hand(&read)),
            _ => Life::on_file(&text(&read)),
        };
        let life = life.changed();
        self.come_about(&life);
        life
    }
}

#[track_caller]
fn check_saved(life: &Life, name: &str) {
    assert_eq!(life.held(name), Some(text(&van(4500.0))));
    assert_eq!(life.file().as_deref(), Some(name));
    assert!(!life.is_unsaved() && life.asked() == Matter::Nothing);
    assert!(life.machine.message.starts_with("Saved in"));
}

#[test]
fn a_save_asks_what_its_file_gives_reason_to_ask_and_saves_otherwise() {
    for held in Held::ALL {
        let mut life = held.life();
        let before = life.held(FILE);
        life.take(Step::Save(None));
        assert_eq!(life.heading(), held.heading(), "{held:?}");
        match held.heading() {
            "" => check_saved(&life, FILE),
            _ => assert_eq!(life.held(FILE), before, "{held:?}"),
        }
    }
}

#[test]
fn save_as_onto_its_own_file_asks_what_a_save_asks() {
    for held in Held::ALL {
        let mut life = held.life();
        life.take(Step::AskForPath(Purpose::Save, None));
        life.type_name(FILE);
        assert_eq!(life.heading(), held.heading(), "{held:?}");
    }
}

#[test]
fn whatever_is_asked_before_saving_cancel_leaves_everything_as_it_is() {
    for held in Held::ALL.into_iter().filter(|h| !h.heading().is_empty()) {
        let mut life = held.life();
        life.take(Step::Save(None));
        let before = life.state();
        life.answer("Cancel");
        assert!(life.state() == before && life.asked() == Matter::Nothing);
        life.take(Step::Save(None));
        assert_eq!(life.heading(), held.heading(), "{held:?}, asked again");
    }
}

#[test]
fn whatever_is_asked_before_saving_another_name_keeps_both() {
    for held in Held::ALL.into_iter().filter(|h| !h.heading().is_empty()) {
        let mut life = held.life();
        let before = life.held(FILE);
        life.take(Step::Save(None));
        life.answer(match held.heading() {
            FORM => "Save under another name",
            _ => "Save yours under another name",
        });
        life.type_name(NEW);
        check_saved(&life, NEW);
        assert_eq!(life.held(FILE), before, "{held:?}");
    }
}

#[test]
fn the_answers_that_write_over_a_file_do_so() {
    for held in Held::ALL.into_iter().filter(|h| !h.heading().is_empty()) {
        let mut life = held.life();
        life.take(Step::Save(None));
        life.answer(match held.heading() {
            FORM => "Save here",
            _ => "Replace theirs",
        });
        check_saved(&life, FILE);
        life.edit(4600.0);
        life.take(Step::Save(None));
        assert_eq!(life.asked(), Matter::Nothing, "{held:?}, it is ours now");
    }
}

#[test]
fn theirs_is_opened_where_it_can_be_and_else_ours_stays() {
    for held in [Held::Theirs, Held::Broken, Held::Bytes] {
        let mut life = held.life();
        let ours = life.project().clone();
        life.take(Step::Save(None));
        let Some(super::super::Asked::Question(question)) = &life.machine.asked else {
            panic!("{held:?} is not asked about");
        };
        let mut words = question.answers.iter().map(|answer| answer.words);
        if held == Held::Theirs {
            life.answer("Open theirs");
            assert_eq!(*life.project(), van(3000.0));
            assert!(!life.is_unsaved());
            life.machine.desk.history.undo();
            assert_eq!(*life.project(), ours, "nothing of ours is lost");
            assert!(life.is_unsaved());
        } else {
            assert!(!words.any(|words| words == "Open theirs"), "{held:?}");
        }
    }
}

#[test]
fn a_file_that_changes_while_something_is_asked_about_it_is_not_written_over() {
    for first in Held::ALL.into_iter().filter(|h| !h.heading().is_empty()) {
        for second in [Held::Theirs, Held::Broken, Held::Bytes] {
            if first == second {
                continue;
            }
            let mut life = first.life();
            life.take(Step::Save(None));
            second.come_about(&life);
            let theirs = life.held(FILE);
            life.answer(match first.heading() {
                FORM => "Save here",
                _ => "Replace theirs",
            });
            assert_eq!(life.heading(), CHANGED, "{first:?}, {second:?}");
            assert_eq!(life.held(FILE), theirs, "{first:?}, {second:?}");
        }
    }
}

#[test]
fn what_is_no_text_either_but_was_not_asked_about_is_not_written_over() {
    let mut life = Held::Bytes.life();
    life.take(Step::Save(None));
    life.others_write(FILE, b"\xff\xfe\x01");
    life.answer("Replace theirs");
    assert_eq!(life.heading(), CHANGED);
    life.answer("Replace theirs");
    check_saved(&life, FILE);
}

#[test]
fn nobody_is_asked_to_lose_what_cannot_be_read() {
    let mut life = Held::Own.life();
    life.disk.put_endless(FILE, LARGEST_FILE_BYTES + 1);
    life.take(Step::Save(None));
    assert_eq!(life.heading(), CHANGED);
    assert_eq!(life.words(), ["Save yours under another name", "Cancel"]);
}

#[test]
fn what_is_lost_with_theirs_is_shown_beneath_the_question() {
    for (theirs, lines) in [(text(&van(3000.0)), 1), (by_hand(&van(3000.0)), 2)] {
        let mut life = Life::on_file(&text(&van(4000.0))).changed();
        life.others_write(FILE, theirs.as_bytes());
        life.take(Step::Save(None));
        let details = &life.question().details;
        assert_eq!(details.len(), lines, "{details:?}");
        assert_eq!(details[0], "redline: yours 4500, theirs 3000");
        assert!(details.iter().skip(1).all(|line| line.contains("comments")));
    }
}

#[test]
fn a_file_that_goes_while_something_is_asked_about_it_is_written_again() {
    for held in [Held::Theirs, Held::Broken, Held::Bytes] {
        let mut life = held.life();
        life.take(Step::Save(None));
        life.others_remove(FILE);
        life.answer("Replace theirs");
        check_saved(&life, FILE);
    }
}

#[test]
fn an_answer_holds_for_the_save_that_it_was_given_for_and_for_no_later_one() {
    for held in Held::ALL.into_iter().filter(|h| !h.heading().is_empty()) {
        let prepared = || {
            let mut life = held.life();
            life.take(Step::Save(None));
            life
        };
        let mut life = with_full_disk(prepared, |life| {
            life.answer(match held.heading() {
                FORM => "Save here",
                _ => "Replace theirs",
            });
        });
        assert!(life.problem().contains("full"), "{}", life.problem());
        life.take(Step::Stay);
        life.take(Step::Save(None));
        assert_eq!(life.heading(), held.heading(), "{held:?}");
    }
}

#[test]
fn what_others_wrote_like_us_stays_theirs_until_a_save_has_succeeded() {
    let deed = |life: &mut Life| life.take(Step::Save(None));
    with_each_step_refused(
        || Held::Ours.life(),
        deed,
        |life, refused| {
            if !life.is_unsaved() {
                return;
            }
            life.take(Step::Stay);
            life.edit(4600.0);
            life.take(Step::Save(None));
            assert_eq!(life.heading(), CHANGED, "{refused}");
            assert_eq!(life.held(FILE), Held::Ours.life().held(FILE), "{refused}");
        },
    );
}

#[test]
fn what_others_wrote_like_us_by_hand_stays_theirs_until_a_save_is_agreed_to() {
    let mut life = Held::OursByHand.life();
    life.take(Step::Save(None));
    life.answer("Cancel");
    life.edit(4600.0);
    life.take(Step::Save(None));
    assert_eq!(life.heading(), CHANGED, "their figures are others now");
}

#[test]
fn a_file_of_another_name_is_replaced_only_for_an_answer() {
    let begun = || {
        let mut life = Life::nowhere().changed();
        life.others_write(OTHER, text(&van(3000.0)).as_bytes());
        life.take(Step::Save(None));
        life.type_name(OTHER);
        assert_eq!(life.heading(), "Replace the file?");
        assert_eq!(
            life.words(),
            ["Choose another name", "Replace it", "Cancel"]
        );
        life
    };
    let theirs = Some(text(&van(3000.0)));
    let mut life = begun();
    let before = life.state();
    life.answer("Cancel");
    assert!(life.state() == before && life.asked() == Matter::Nothing);

    let mut life = begun();
    life.answer("Choose another name");
    life.type_name(NEW);
    check_saved(&life, NEW);
    assert_eq!(life.held(OTHER), theirs);

    let mut life = begun();
    life.answer("Replace it");
    check_saved(&life, OTHER);
}

#[test]
fn a_name_gets_its_ending_before_anybody_asks_what_has_it() {
    let mut life = Life::nowhere().changed();
    life.others_write(OTHER, b"theirs");
    life.take(Step::Save(None));
    life.type_name("other");
    assert_eq!(life.heading(), "Replace the file?");
    life.answer("Choose another name");
    life.type_name("new");
    check_saved(&life, NEW);
}

#[test]
fn what_another_window_has_open_is_not_saved_over() {
    let mut life = Life::nowhere().changed();
    life.others_write(OTHER, b"theirs");
    life.others_open(OTHER);
    life.take(Step::Save(None));
    life.type_name(OTHER);
    assert!(life.problem().contains("another window"));
    assert_eq!(life.held(OTHER).as_deref(), Some("theirs"));
    life.others_close_all();
    life.type_name(OTHER);
    assert_eq!(life.heading(), "Replace the file?");
}

#[test]
fn a_picture_goes_beside_the_document_and_changes_nothing_about_it() {
    let mut life = Held::Own.life();
    let before = (life.held(FILE), life.is_unsaved(), life.file());
    life.take(Step::AskForPath(Purpose::SavePicture, None));
    let Matter::Path(path) = life.asked() else {
        panic!("no path is asked for");
    };
    let suggested = SimulatedDisk::path("van.png").display().to_string();
    assert_eq!(path.text, suggested);
    life.take(Step::Typed(suggested));
    assert!(life.held("van.png").is_some(), "{}", life.machine.message);
    assert_eq!((life.held(FILE), life.is_unsaved(), life.file()), before);
}

#[test]
fn whichever_step_of_a_save_the_disk_refuses_nothing_is_lost_and_nothing_claimed() {
    for held in Held::ALL {
        let prepared = || held.life();
        let deed = |life: &mut Life| life.take(Step::Save(None));
        with_each_step_refused(prepared, deed, |life, refused| {
            let before = held.life().held(FILE);
            let now = life.held(FILE);
            let work = Some(text(&van(4500.0)));
            assert_eq!(*life.project(), van(4500.0));
            assert!(now == before || now == work, "{held:?}, {refused}");
            if !held.heading().is_empty() {
                assert_eq!(now, before, "{held:?}, {refused}: nobody was asked");
            }
            if !life.is_unsaved() {
                assert_eq!(now, work, "{held:?}, {refused}: it is said to be saved");
            }
        });
    }
}

#[test]
fn whichever_step_of_a_save_under_another_name_the_disk_refuses_their_file_stays() {
    let prepared = || {
        let mut life = Life::nowhere().changed();
        life.others_write(OTHER, b"theirs");
        life.take(Step::Save(None));
        life
    };
    let deed = |life: &mut Life| life.type_name(OTHER);
    with_each_step_refused(prepared, deed, |life, refused| {
        assert_eq!(life.held(OTHER).as_deref(), Some("theirs"), "{refused}");
        assert!(life.is_unsaved(), "{refused}");
    });
}

#[test]
fn the_suggested_name_is_made_of_the_title() {
    let mut life = Life::nowhere();
    life.take(Step::AskForPath(Purpose::Save, None));
    let Matter::Path(path) = life.asked() else {
        panic!("no path is asked for");
    };
    assert_eq!(path.text, "camper-van-which-gears.ron");
}
