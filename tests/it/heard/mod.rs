//! What does a screen reader hear, on every screen and in every dialog?
//!
//! The trees stand beside this file as they were read through, one line for each thing that is heard;
//! `UPDATE_GOLDENS=1 cargo test --locked --test it heard` renews them. A new page or dialog is one row.

mod dialogs;
mod tree;

use crate::support::window::{KINDS, Opening, Window, camper_van};
use egui::accesskit::{Action, Role};
use egui::{Event, Key};
use egui_kittest::kittest::NodeT;
use layshaft::project::View;
use std::collections::BTreeSet;
use std::path::Path;
use tree::{Seen, tree};

const ORDINARY: [f32; 2] = [1280.0, 800.0];
const SMALL: [f32; 2] = [667.0, 427.0];

/// A screen: the name of its file, the size of the window, and the way to it.
struct Screen {
    file: &'static str,
    size: [f32; 2],
    seen: Seen,
    way: fn(&mut Window),
}

const fn screen(file: &'static str, size: [f32; 2], way: fn(&mut Window)) -> Screen {
    Screen {
        file,
        size,
        seen: Seen::Whole,
        way,
    }
}

/// Something that lies over the window: only what has come is told.
const fn over(file: &'static str, way: fn(&mut Window)) -> Screen {
    Screen {
        seen: Seen::What,
        ..screen(file, ORDINARY, way)
    }
}

const SCREENS: [Screen; 19] = [
    screen("main", ORDINARY, |_| {}),
    screen("small-sets", SMALL, |window| {
        window.click("Vehicle and sets");
    }),
    screen("small-diagram", SMALL, |window| window.click("Diagram")),
    screen("small-table", SMALL, |window| window.click("Table")),
    screen("wrong-fields", ORDINARY, |window| {
        window.type_in("Redline, rpm", "x");
        window.type_in("Tyre", "y");
        window.type_in("Ratio of gear 1, set 2", "three");
        window.pause();
    }),
    over("technical", |window| {
        for heading in [
            "Load and road: ",
            "Further ",
            "Engine: ",
            "More of ",
            "11 points",
        ] {
            let mut names = window.names(Role::DisclosureTriangle).into_iter();
            let name = names.find(|name| name.starts_with(heading));
            window.click_on(Role::DisclosureTriangle, &name.unwrap());
            window.pause();
        }
    }),
    over("road-checks", |window| {
        window.ctrl(Key::Num5);
        for heading in [
            "Speed signal: ",
            "Limits: ",
            "Second driven axle: ",
            "Checks of ",
        ] {
            let mut names = window.names(Role::DisclosureTriangle).into_iter();
            let name = names.find(|name| name.starts_with(heading));
            window.click_on(Role::DisclosureTriangle, &name.unwrap());
            window.pause();
        }
        window.fill("Final drive", "4.1");
        window.ctrl(Key::Num1);
    }),
    screen("workshop", ORDINARY, |window| {
        window.ctrl(Key::Num6);
    }),
    screen("workshop-plan", ORDINARY, |window| {
        window.ctrl(Key::Num6);
        window.click("Plan what changes");
        window.pause();
        window.fill("Currency", "€");
        window.fill("Price of mounts, Same box, taller final drive", "120");
        window.click("Menu of starter");
        window.click("Strike out");
        window.pause();
        window.type_in("Price of reverse switch, Same box, taller final drive", "x");
        window.pause();
    }),
    screen("workshop-job", ORDINARY, |window| {
        window.ctrl(Key::Num6);
        window.click("Shim for end play or preload");
        window.pause();
        window.fill("Trial shim, mm", "0.65");
        window.fill("Play, every reading, mm", "0.30 0.31 0.29");
        window.fill("Wanted setting", "preload 0.15 to 0.20");
        window.type_in("Dial shows, mm", "fine");
        window.pause();
    }),
    over("own-engine", |window| {
        window.click("Give it its own engine, set 2");
        let mut names = window.names(Role::DisclosureTriangle).into_iter();
        let name = names.find(|name| name.starts_with("Efficiency: "));
        window.click_on(Role::DisclosureTriangle, &name.unwrap());
    }),
    over("write-up", |window| {
        window.ctrl(Key::E);
        window.wait_for_picture();
    }),
    over("file-menu", |window| window.invoke("File")),
    over("edit-menu", |window| window.invoke("Edit")),
    over("view-menu", |window| window.invoke("View")),
    over("set-menu", |window| window.invoke("Set 2 menu")),
    over("gear-menu", |window| window.invoke("Gear 2 menu, set 2")),
    over("row-menu", |window| {
        let row = window.names(Role::Row).swap_remove(2);
        window.get(Role::Row, &row).focus();
        window.settle();
        window.key_with(egui::Modifiers::SHIFT, Key::F10);
    }),
    over("paste-read", |window| {
        window.ctrl_shift(Key::V);
        let text = "1st 34/9\n2nd 2.1\nnonsense\n3rd 1.3\nfinal drive 4.06";
        window.event(Event::Paste(text.to_owned()));
        window.get(Role::TextInput, "gear 2").focus();
        window.settle();
        window.type_over("2.1x");
    }),
];

/// Every screen there is, by the name of its file.
fn each(mut look: impl FnMut(&str, &Window, &BTreeSet<u64>)) {
    for screen in SCREENS {
        let [width, height] = screen.size;
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        let before = match screen.seen {
            Seen::Whole => BTreeSet::new(),
            Seen::What => tree::all(&window),
        };
        (screen.way)(&mut window);
        look(screen.file, &window, &before);
    }
    for view in View::ALL.into_iter().skip(1) {
        let mut window = Window::on_camper_van();
        let before = tree::all(&window);
        if window.look_at(view) {
            // What stands elsewhere was heard with the first view; the table has rows of its own.
            let diagram = tree::within(window.get(Role::Pane, "Diagram"));
            let before = &before - &diagram;
            look(&format!("view-{}", view.word()), &window, &before);
        }
    }
    for kind in KINDS {
        let window = kind.window(ORDINARY);
        let within = tree::within(kind.node(&window));
        let before = &tree::all(&window) - &within;
        look(&format!("dialog-{}", kind.file), &window, &before);
    }
}

#[test]
fn what_is_heard_is_what_was_read_through() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/it/heard");
    let mut problems = Vec::new();
    let mut files = BTreeSet::new();
    each(|file, window, before| {
        let (name, now) = (format!("{file}.txt"), tree(window, before));
        let path = folder.join(&name);
        if std::env::var_os("UPDATE_GOLDENS").is_some() {
            std::fs::write(&path, &now).unwrap();
        }
        let before = std::fs::read_to_string(&path).unwrap_or_default();
        problems.extend(difference(&name, &before, &now));
        assert!(files.insert(name), "two screens are called {file}");
    });
    for entry in std::fs::read_dir(&folder).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let is_text = Path::new(&name)
            .extension()
            .is_some_and(|ending| ending == "txt");
        if is_text && !files.contains(&name) {
            problems.push(format!("{name} is of no screen"));
        }
    }
    assert!(problems.is_empty(), "\n{}", problems.join("\n"));
}

/// How many lines of a difference are shown.
const SHOWN: usize = 4;

/// The first lines in which two trees differ.
fn difference(name: &str, before: &str, now: &str) -> Option<String> {
    if before == now {
        return None;
    }
    let same = before.lines().zip(now.lines());
    let at = same.take_while(|(a, b)| a == b).count();
    let lines = |text: &str, sign: char| {
        let lines = text.lines().skip(at).take(SHOWN);
        let lines: Vec<String> = lines.map(|line| format!("  {sign} {line}\n")).collect();
        lines.concat()
    };
    let (was, is) = (lines(before, '-'), lines(now, '+'));
    Some(format!("{name} from line {}:\n{was}{is}", at + 1))
}

#[test]
fn whatever_can_be_clicked_has_a_name_of_its_own() {
    let mut problems = Vec::new();
    each(|file, window, before| {
        let mut names = BTreeSet::new();
        for node in window.nodes() {
            let node = node.accesskit_node();
            let can_be_clicked = node.data().supports_action(Action::Click);
            // Scroll bars are the toolkit's, and of no use to those who do not see them.
            let is_bar = node.role() == Role::ScrollBar;
            if before.contains(&tree::id(&node)) || !can_be_clicked || is_bar {
                continue;
            }
            let name = node.label().unwrap_or_default();
            if name.trim().is_empty() {
                problems.push(format!("{file}: a {:?} without a name", node.role()));
            } else if !names.insert((format!("{:?}", node.role()), name.clone())) {
                problems.push(format!("{file}: two are called {name}"));
            }
        }
        // A view may have other words only.
        assert!(!names.is_empty() || file.starts_with("view-"), "{file}");
    });
    assert!(problems.is_empty(), "\n{}", problems.join("\n"));
}
