//! Does the path field complete what is typed, and never save under a half-typed name?

use crate::support::memory_disk::{HOME, MemoryDisk};
use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use layshaft::project::format;

/// A disk with a few projects, a picture, a folder and something hidden.
fn on_disk() -> Window {
    let window = Window::on_camper_van();
    let project = format::write(&camper_van()).unwrap();
    for name in [
        "van.ron",
        "van-2.ron",
        "truck.ron",
        "boxes/old.ron",
        ".hidden.ron",
    ] {
        window.disk.put(name, &project);
    }
    window.disk.put("page.png", "");
    window.disk.put("trunk.txt", "");
    window
}

fn at_home(name: &str) -> String {
    format!("{HOME}/{name}")
}

/// The dialog of Open with a path half-typed.
fn opening(name: &str) -> Window {
    let mut window = on_disk();
    window.ctrl(Key::O);
    window.type_over(&at_home(name));
    window
}

/// The dialog of Save as with a path half-typed.
fn saving(name: &str) -> Window {
    let mut window = on_disk();
    window.ctrl_shift(Key::S);
    window.type_over(&at_home(name));
    window
}

fn path(window: &Window) -> String {
    window.get(Role::TextInput, "Path").value().unwrap()
}

#[track_caller]
fn assert_path(window: &Window, name: &str) {
    assert_eq!(path(window), at_home(name));
}

#[test]
fn tab_completes_the_only_project_that_begins_so_and_enter_opens_it() {
    let mut window = opening("tr");
    window.key(Key::Tab);
    assert_path(&window, "truck.ron");
    assert_eq!(window.focused(), "Path");
    window.key(Key::Enter);
    let opened = window.app().desk().file.clone();
    assert_eq!(opened, Some(MemoryDisk::path("truck.ron")));
}

#[test]
fn a_folder_gets_its_separator_and_its_only_file_comes_next() {
    let mut window = opening("b");
    window.key(Key::Tab);
    assert_path(&window, "boxes/");
    window.key(Key::Tab);
    assert_path(&window, "boxes/old.ron");
}

#[test]
fn several_names_are_completed_to_what_they_share_and_offered() {
    let mut window = opening("v");
    window.key(Key::Tab);
    assert_path(&window, "van");
    for name in ["van-2.ron", "van.ron"] {
        assert!(window.find(Role::Button, name).is_some(), "{name}");
    }
    assert!(window.says("2 begin like this"));
    // What is typed further narrows them.
    window.type_text(".");
    assert!(window.find(Role::Button, "van-2.ron").is_none());
    assert!(window.find(Role::Button, "van.ron").is_some());
}

#[test]
fn down_goes_to_the_names_and_enter_takes_one_into_the_path() {
    let mut window = opening("v");
    window.key(Key::Tab);
    window.key(Key::ArrowDown);
    assert_eq!(window.focused(), "van-2.ron");
    window.key(Key::ArrowDown);
    assert_eq!(window.focused(), "van.ron");
    window.key(Key::Enter);
    assert_path(&window, "van.ron");
    assert_eq!(window.focused(), "Path");
    window.key(Key::Enter);
    assert!(window.app().message().starts_with("Opened"));
}

#[test]
fn a_second_tab_goes_on_to_the_names_and_through_them_out_of_the_field() {
    let mut window = opening("v");
    let mut met = Vec::new();
    for _ in 0..4 {
        window.key(Key::Tab);
        met.push(window.focused());
    }
    assert_eq!(met, ["Path", "van-2.ron", "van.ron", "Open"]);
    assert_path(&window, "van");
}

#[test]
fn at_most_a_handful_is_offered_and_the_rest_counted() {
    let mut window = on_disk();
    for number in 0..9 {
        window.disk.put(&format!("many/box-{number}.ron"), "");
    }
    window.ctrl(Key::O);
    window.type_over(&at_home("many/"));
    window.key(Key::Tab);
    assert_path(&window, "many/box-");
    assert!(window.says("and 3 more"));
    assert!(window.find(Role::Button, "box-5.ron").is_some());
    assert!(window.find(Role::Button, "box-6.ron").is_none());
}

#[test]
fn hidden_names_show_themselves_once_a_dot_was_typed() {
    let mut window = opening(".h");
    window.key(Key::Tab);
    assert_path(&window, ".hidden.ron");
    let mut window = opening("hid");
    window.key(Key::Tab);
    assert_path(&window, "hid");
}

#[test]
fn upper_and_lower_case_are_one_where_nothing_begins_as_typed() {
    let mut window = opening("TRUC");
    window.key(Key::Tab);
    assert_path(&window, "truck.ron");
}

#[test]
fn the_place_of_a_picture_is_completed_to_pictures() {
    let mut window = on_disk();
    window.ctrl(Key::E);
    window.wait_for_picture();
    window.invoke("Save picture…");
    window.type_over(&at_home("pa"));
    window.key(Key::Tab);
    assert_path(&window, "page.png");
}

#[test]
fn where_there_is_nothing_to_complete_tab_leaves_the_field() {
    for name in ["nothing", "truck.ron"] {
        let mut window = opening(name);
        window.key(Key::Tab);
        assert_eq!(window.focused(), "Open", "{name}");
        assert_path(&window, name);
    }
    let mut window = on_disk();
    window.ctrl(Key::O);
    window.key(Key::Tab);
    assert_eq!(window.focused(), "Open");
}

#[test]
fn letters_typed_on_a_name_go_on_in_the_path_and_backspace_takes_one_back() {
    let mut window = opening("v");
    window.key(Key::Tab);
    window.key(Key::ArrowDown);
    assert_eq!(window.focused(), "van-2.ron");
    window.type_text(".r");
    assert_path(&window, "van.r");
    assert_eq!(window.focused(), "Path");
    window.type_over(&at_home("v"));
    window.key(Key::Tab);
    window.key(Key::ArrowDown);
    window.key(Key::Backspace);
    assert_path(&window, "va");
    assert_eq!(window.focused(), "Path");
    window.type_text("n.ron");
    window.key(Key::Enter);
    assert!(window.app().message().starts_with("Opened"));
}

#[test]
fn the_question_begins_in_the_folder_of_the_last_file() {
    let mut window = on_disk();
    window.open_by_path(&MemoryDisk::path("boxes/old.ron"));
    window.ctrl(Key::O);
    assert_eq!(path(&window), at_home("boxes/"));
    window.key(Key::Tab);
    assert_eq!(path(&window), at_home("boxes/old.ron"));
    // It is still known after a project that stands nowhere.
    window.key(Key::Escape);
    window.ctrl(Key::N);
    window.ctrl_shift(Key::S);
    assert_eq!(path(&window), at_home("boxes/project.ron"));
    // A bare name begins there as well.
    window.type_over("new");
    assert!(window.shows("a new file: /home/somebody/boxes/new.ron"));
    window.key(Key::Enter);
    assert!(window.disk.text("boxes/new.ron").is_some());
}

#[test]
fn what_was_wrong_with_a_path_is_over_once_tab_has_completed_it() {
    let mut window = opening("tr");
    window.key(Key::Enter);
    assert!(window.says("there is no such file"));
    window.key(Key::Tab);
    assert_path(&window, "truck.ron");
    assert!(!window.says("there is no such file"));
}

#[test]
fn a_folder_that_is_not_there_is_said_while_it_is_typed() {
    for window in [opening("no/v"), saving("no/v")] {
        assert!(window.shows("there is no such folder: /home/somebody/no"));
    }
}

#[test]
fn the_question_whether_to_replace_a_file_names_its_folder() {
    let mut window = saving("truck.ron");
    window.key(Key::Enter);
    assert!(window.says("There is a file \"truck.ron\" already in /home/somebody."));
}

#[test]
fn a_folder_that_cannot_be_read_or_is_not_there_is_said_once() {
    let mut window = on_disk();
    window.disk.bar_folders();
    window.ctrl(Key::O);
    window.type_over(&at_home("v"));
    window.key(Key::Tab);
    assert!(window.says("the folder cannot be read ("));
    assert_eq!(window.focused(), "Path");
    window.key(Key::Tab);
    assert_eq!(window.focused(), "Open");

    let mut window = opening("no/v");
    window.key(Key::Tab);
    assert!(window.says("there is no such folder: "));
}

#[test]
fn quotation_marks_home_and_addresses_of_files_lead_where_they_should() {
    let van = at_home("van.ron");
    for text in [
        format!("\"{van}\""),
        format!("'{van}'"),
        format!("file://{van}"),
    ] {
        let mut window = on_disk();
        window.ctrl(Key::O);
        window.type_over(&text);
        window.key(Key::Enter);
        let opened = window.app().desk().file.clone();
        assert_eq!(opened, Some(MemoryDisk::path("van.ron")), "{text}");
    }
}

#[test]
fn before_saving_it_is_said_which_whole_path_will_be_written() {
    for (name, words) in [
        ("new", "a new file: /home/somebody/new.ron"),
        ("new.ro", "a new file: /home/somebody/new.ron"),
        ("new.txt", "a new file: /home/somebody/new.txt"),
        (
            "van",
            "in place of a file, if you agree: /home/somebody/van.ron",
        ),
        ("boxes", "that is a folder"),
        ("none/new", "there is no such folder: /home/somebody/none"),
    ] {
        let window = saving(name);
        assert!(window.shows(words), "{name}");
    }
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    window.ctrl_shift(Key::S);
    assert!(window.shows("the project's own file: /home/somebody/van.ron"));
}

#[test]
fn a_name_that_is_only_the_beginning_of_one_file_is_not_saved_under_unasked() {
    let mut window = saving("tru");
    let before = window.disk.file_names();
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), before);
    assert!(window.says("\"tru\" is only the beginning of \"truck.ron\": Tab completes it"));
    // Another name is asked about anew.
    window.type_over(&at_home("truc"));
    assert!(!window.says("is only the beginning"));
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), before);
    // Given once more, it is meant.
    window.key(Key::Enter);
    assert!(window.disk.text("truc.ron").is_some());
}

#[test]
fn tab_after_the_warning_completes_to_the_file_and_replacing_it_is_asked() {
    let mut window = saving("tru");
    window.key(Key::Enter);
    window.key(Key::Tab);
    assert_path(&window, "truck.ron");
    window.key(Key::Enter);
    assert!(window.says("Replace the file?"));
}

#[test]
fn a_half_typed_ending_is_completed() {
    for name in ["new.", "new.r", "new.ro", "new.ron", "new"] {
        let mut window = saving(name);
        window.key(Key::Enter);
        assert!(window.disk.text("new.ron").is_some(), "{name}");
    }
}

#[test]
fn a_path_that_is_asked_for_once_more_is_completed_too() {
    let mut window = saving("new.ron");
    window.disk.make_read_only();
    window.key(Key::Enter);
    assert!(window.says("cannot be written"));
    window.type_over(&at_home("tru"));
    window.key(Key::Tab);
    assert_path(&window, "truck.ron");
}

#[test]
fn enter_on_a_folder_writes_nothing() {
    let mut window = saving("boxes");
    let before = window.disk.file_names();
    window.key(Key::Enter);
    assert!(window.says("this is a folder, choose a file in it"));
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), before);
}
