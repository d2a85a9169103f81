//! Every dialog that the window can show, and the way to it.

use super::{Opening, Window, with_shifts};
use crate::support::memory_disk::{HOME, MemoryDisk};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::Node;
use layshaft::project::{Project, RecoveryCopy, format};
use std::path::Path;
use std::sync::Arc;
use std::time::{SystemTime, UNIX_EPOCH};

/// A dialog: its name, what kind it is, what has the focus when it opens and after Esc, and how it
/// is opened from the field of the redline.
pub(crate) struct Kind {
    /// What tells it from all others, as the name of a file.
    pub(crate) file: &'static str,
    pub(crate) name: &'static str,
    pub(crate) role: Role,
    pub(crate) focus: &'static str,
    pub(crate) back: &'static str,
    open: fn(&mut Window),
}

/// The field that is typed in while a dialog opens.
const FIELD: &str = "Redline, rpm";

const fn kind(
    file: &'static str,
    name: &'static str,
    focus: &'static str,
    open: fn(&mut Window),
) -> Kind {
    Kind {
        file,
        name,
        role: Role::Dialog,
        focus,
        back: FIELD,
        open,
    }
}

const fn question(
    file: &'static str,
    name: &'static str,
    focus: &'static str,
    open: fn(&mut Window),
) -> Kind {
    Kind {
        role: Role::AlertDialog,
        ..kind(file, name, focus, open)
    }
}

/// Every dialog.
pub(crate) const KINDS: [Kind; 21] = [
    kind("help", "Keys and cautions", "Close", |window| {
        window.key(Key::F1);
    }),
    kind("open", "Open a project", "Path", |window| {
        window.ctrl(Key::O);
    }),
    kind("save", "Save the project", "Path", |window| {
        window.ctrl_shift(Key::S);
    }),
    Kind {
        back: "Save picture…",
        ..kind("save-picture", "Save the picture", "Path", |window| {
            window.ctrl(Key::E);
            window.get(Role::Button, "Save picture…").focus();
            window.settle();
            window.key(Key::Enter);
        })
    },
    kind("paste", "Paste gears", "Text with a gear set", |window| {
        window.ctrl_shift(Key::V);
    }),
    kind("wish", "Find for a wish", "Engine speed, rpm", |window| {
        command(window, "Find for a wish…");
    }),
    kind("pair", "Find a tooth pair", "Ratio", |window| {
        command(window, "Find a tooth pair…");
    }),
    kind("steps", "Fill the steps", "Gears", |window| {
        command(window, "Fill the steps…");
    }),
    kind("count", "What is fitted", "Turns of the engine", |window| {
        command(window, "What is fitted…");
    }),
    kind("find", "Find a command", "Words of the command", |window| {
        window.ctrl(Key::K);
    }),
    kind("findings", "Findings", "Close", |window| {
        window.invoke("3 findings");
    }),
    question("unsaved", "Save the changes?", "Save", |window| {
        change(window);
        window.ctrl(Key::N);
    }),
    question(
        "unread",
        "Leave what does not read?",
        "Go to the field",
        |window| {
            if window.find(Role::TextInput, FIELD).is_none() {
                window.click("Vehicle and sets");
                enter(window);
            }
            window.type_over("6k");
            window.ctrl(Key::N);
        },
    ),
    question(
        "replace",
        "Replace the file?",
        "Choose another name",
        |window| {
            window.disk.put("other.ron", "something else");
            window.ctrl_shift(Key::S);
            window.give_path(&MemoryDisk::path("other.ron"));
        },
    ),
    question(
        "by-hand",
        "Save in Layshaft's own layout?",
        "Save under another name",
        |window| {
            let text = format::write(window.project()).unwrap();
            let text = format!("// By hand.\n{text}");
            window.disk.put("by-hand.ron", &text);
            window.open_by_path(&MemoryDisk::path("by-hand.ron"));
            enter(window);
            window.ctrl(Key::S);
        },
    ),
    question(
        "changed",
        "The file has changed",
        "Save yours under another name",
        |window| {
            change(window);
            change_by_others(window);
            window.ctrl(Key::S);
        },
    ),
    question(
        "unreadable",
        "The file has changed",
        "Save yours under another name",
        |window| {
            change(window);
            window.disk.put("van.ron", "(format: 1");
            window.ctrl(Key::S);
        },
    ),
    question(
        "in-use",
        "The project is open already",
        "Open a copy",
        |window| {
            keep_work(window);
            window.disk.hold_all_locks();
            let text = window.disk.text("van.ron").unwrap();
            window.disk.put("other.ron", &text);
            window.ask_to_open(&MemoryDisk::path("other.ron"));
        },
    ),
    question("left", "Unsaved work was found", "Open it", |window| {
        leave(window, None);
        keep_work(window);
    }),
    question(
        "left-apart",
        "Unsaved work was found, and its file has changed",
        "Open yours",
        |window| {
            leave(window, Some("van.ron"));
            keep_work(window);
        },
    ),
    question(
        "left-in-use",
        "The project is open already",
        "Open as a copy",
        |window| {
            leave(window, Some("van.ron"));
            keep_work(window);
            window.disk.hold_all_locks();
            window.key(Key::Enter);
        },
    ),
];

/// Opens what a command opens, by its words.
fn command(window: &mut Window, words: &str) {
    window.ctrl(Key::K);
    window.type_text(words);
    window.key(Key::Enter);
}

impl Kind {
    /// A window that shows it, over a window in which the redline is being typed.
    pub(crate) fn window(&self, [width, height]: [f32; 2]) -> Window {
        let mut window = for_dialogs().sized(width, height).open();
        enter(&mut window);
        (self.open)(&mut window);
        self.node(&window);
        window
    }

    /// The dialog in the window.
    #[track_caller]
    pub(crate) fn node<'a>(&self, window: &'a Window) -> Node<'a> {
        window.get(self.role, self.name)
    }
}

/// Goes into the field, where the window has room for it.
fn enter(window: &mut Window) {
    if window.find(Role::TextInput, FIELD).is_some() {
        window.enter_field(FIELD);
    }
}

/// A window that can show every dialog: a file, and findings.
pub(crate) fn for_dialogs() -> Opening {
    let project = with_shifts([5000, 3600, 700, 3600]);
    Opening::on(project).in_file("van.ron")
}

/// Makes one unsaved change.
pub(crate) fn change(window: &mut Window) {
    window.ctrl(Key::U);
}

/// Somebody else gives the project's file another redline.
fn change_by_others(window: &Window) {
    let text = window.disk.text("van.ron").unwrap();
    let theirs = text.replace("redline_rpm: 4500", "redline_rpm: 4444");
    assert_ne!(text, theirs);
    window.disk.put("van.ron", &theirs);
}

/// A window that is gone left unsaved work.
fn leave(window: &Window, file: Option<&str>) {
    let now = SystemTime::now().duration_since(UNIX_EPOCH).unwrap();
    let project: Project = with_shifts([3000, 3100, 3200, 3300]);
    let copy = RecoveryCopy {
        file: file.map(MemoryDisk::path),
        began_from: None,
        written_unix_s: now.as_secs(),
        project: Arc::new(project),
    };
    let path = MemoryDisk::path("12-34.ron");
    copy.write(&*window.disk, &path).unwrap();
}

/// From now on the window keeps its work, and offers what it finds there.
fn keep_work(window: &mut Window) {
    let app = window.harness.state_mut();
    app.keep_unsaved_work_in(Path::new(HOME));
    window.settle();
}
