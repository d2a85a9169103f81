//! Does the write-up window keep its choices, show what will come out, and give it away safely?

use super::texts::texts;
use crate::support::memory_disk::MemoryDisk;
use crate::support::window::{Opening, Window, camper_van, three_ten_speeds};
use egui::accesskit::{Role, Toggled};
use egui::{Key, Modifiers, OutputCommand, Rect};
use egui_kittest::kittest::NodeT;
use layshaft::app::Purpose;
use layshaft::project::{Drops, PageForm, Project, WriteUp, format, text_in_picture};
use layshaft::sheet::page::Page;
use std::path::PathBuf;
use std::time::{Duration, Instant};

/// An open write-up window over the camper van in its file.
fn opened() -> Window {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    window.ctrl(Key::E);
    assert!(is_open(&window));
    window
}

fn is_open(window: &Window) -> bool {
    window.says("Save picture…")
}

fn choices(window: &Window) -> &WriteUp {
    &window.project().write_up
}

fn choose(window: &mut Window, role: Role, name: &str) {
    window.get(role, name).click();
    window.settle();
}

/// Runs frames until the window says some words; pictures are made on another thread.
fn wait_for(window: &mut Window, words: &str) {
    let end = Instant::now() + Duration::from_mins(1);
    while !window.says(words) {
        assert!(Instant::now() < end, "{words} was never said");
        std::thread::sleep(Duration::from_millis(2));
        window.harness.step();
    }
}

/// What is put on the clipboard by clicking a button.
fn copied(window: &mut Window, button: &str) -> OutputCommand {
    window.get(Role::Button, button).click();
    for _ in 0..5 {
        window.harness.step();
        let commands = &window.harness.output().platform_output.commands;
        if let Some(command) = commands.first() {
            return command.clone();
        }
    }
    panic!("{button} copied nothing");
}

#[test]
fn ctrl_e_opens_it_and_closes_it() {
    let mut window = opened();
    window.ctrl(Key::E);
    assert!(!is_open(&window));
    assert_eq!(window.undo_steps(), 0, "looking changes nothing");
}

#[test]
fn each_choice_is_a_change_that_can_be_taken_back() {
    let mut window = opened();
    choose(&mut window, Role::RadioButton, "dark");
    assert!(choices(&window).is_dark);
    choose(&mut window, Role::CheckBox, "with the table");
    assert!(!choices(&window).with_table);
    choose(&mut window, Role::CheckBox, "with the note");
    assert!(!choices(&window).with_note);
    choose(&mut window, Role::CheckBox, "Same box, taller final drive");
    assert_eq!(choices(&window).left_out.len(), 1);
    choose(&mut window, Role::CheckBox, "with the project");
    assert!(!choices(&window).carries_project);
    assert_eq!(window.undo_steps(), 5);
    for _ in 0..5 {
        window.ctrl(Key::Z);
    }
    assert_eq!(*choices(&window), WriteUp::default());
}

#[test]
fn whose_drops_are_written_is_one_step_each_and_named() {
    let mut window = opened();
    let third = window.project().sets.iter().nth(2).unwrap().id;
    for (name, drops) in [
        ("of all", Drops::All),
        ("none", Drops::Hidden),
        ("of Six-speed, two output shafts", Drops::Of(third)),
    ] {
        choose(&mut window, Role::RadioButton, name);
        assert_eq!(choices(&window).drops, drops, "{name}");
    }
    assert_eq!(window.undo_steps(), 3);
    // A set that is left out cannot be chosen, and its drops are the usual ones again.
    choose(&mut window, Role::CheckBox, "Six-speed, two output shafts");
    let left_out = window.get(Role::RadioButton, "of Six-speed, two output shafts");
    assert!(left_out.accesskit_node().is_disabled());
    let usual = window.get(Role::RadioButton, "usual");
    assert_eq!(usual.accesskit_node().toggled(), Some(Toggled::True));
    for _ in 0..4 {
        window.ctrl(Key::Z);
    }
    assert_eq!(*choices(&window), WriteUp::default());
}

#[test]
fn of_three_sets_the_picture_has_the_drops_of_the_selected_one() {
    let mut window = opened();
    let third = window.project().sets.iter().nth(2).unwrap().id;
    let with = |drops| {
        let mut project = camper_van();
        project.write_up.drops = drops;
        Page::of(&project).unwrap().picture().unwrap()
    };
    let shown = |window: &mut Window| {
        let OutputCommand::CopyImage(image) = copied(window, "Copy picture") else {
            panic!("no picture was copied");
        };
        image.as_raw().to_vec()
    };
    assert!(shown(&mut window) == *with(Drops::Usual).as_raw());
    window.ctrl(Key::E);
    window.ctrl(Key::J);
    window.ctrl(Key::E);
    assert_eq!(window.app().desk().selected, Some(third));
    assert!(shown(&mut window) == *with(Drops::Of(third)).as_raw());
    // Who opens the picture has nothing selected yet.
    window.invoke("Save picture…");
    window.picker.answer(Some(MemoryDisk::path("page.png")));
    window.settle();
    let text = text_in_picture(&window.disk.bytes("page.png")).unwrap();
    let again = Page::of(&format::read(&text).unwrap()).unwrap();
    assert!(again.picture().unwrap() == with(Drops::Of(third)));
}

#[test]
fn looking_at_the_page_for_the_bench_changes_no_project_and_is_what_comes_out() {
    let mut window = opened();
    let before = window.project().clone();
    choose(&mut window, Role::RadioButton, "Bench page, A4");
    assert!(toggled(&window, Role::RadioButton, "Bench page, A4"));
    wait_for(&mut window, "1600 × 2263 pixels, ");
    assert_eq!(*window.project(), before);
    assert_eq!(window.undo_steps(), 0);
    window.invoke("Save picture…");
    let suggested = Some(MemoryDisk::path("van-bench.png"));
    assert_eq!(
        window.picker.last_asked(),
        (Purpose::SavePicture, suggested)
    );
    window.picker.answer(Some(MemoryDisk::path("page.png")));
    window.settle();
    let file = window.disk.bytes("page.png");
    let carried = format::read(&text_in_picture(&file).unwrap()).unwrap();
    assert_eq!(carried.write_up.form, PageForm::A4);
    let saved = image::load_from_memory(&file).unwrap();
    let page = Page::of(&before).unwrap().in_form(PageForm::A4);
    assert!(saved.into_rgba8() == page.picture().unwrap());
    let mut project = before;
    project.write_up.form = PageForm::Letter;
    let mut letter = Opening::on(project).open();
    letter.ctrl(Key::E);
    assert!(toggled(&letter, Role::RadioButton, "Bench page, Letter"));
}

fn toggled(window: &Window, role: Role, name: &str) -> bool {
    window.get(role, name).accesskit_node().toggled() == Some(Toggled::True)
}

/// Where the picture stands.
fn preview(window: &Window) -> Rect {
    window
        .get(Role::Image, "The picture of the write-up")
        .rect()
}

#[test]
fn the_preview_is_shown_in_true_pixels_by_button_key_and_wheel() {
    let mut window = opened();
    wait_for(&mut window, " pixels, ");
    let fitting = preview(&window).width();
    assert!(fitting < 800.0, "{fitting}");
    choose(&mut window, Role::Button, "100 %");
    let true_width = preview(&window).width();
    let pixels_per_point = window.harness.ctx.pixels_per_point();
    assert!((true_width * pixels_per_point - 1600.0).abs() < 0.5);
    window.key(Key::Minus);
    assert!(preview(&window).width() < true_width);
    window.key(Key::Plus);
    assert!((preview(&window).width() - true_width).abs() < 0.5);
    let left = preview(&window).left();
    window.key_with(Modifiers::SHIFT, Key::PageDown);
    assert!(preview(&window).left() < left, "it goes sideways by key");
    choose(&mut window, Role::Button, "Fit width");
    assert!((preview(&window).width() - fitting).abs() < 0.5);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn the_width_is_typed_and_a_wrong_one_is_told_and_not_taken() {
    let mut window = opened();
    window.get(Role::TextInput, "Width, pixels").focus();
    window.settle();
    window.type_over("900");
    window.key(Key::Enter);
    assert_eq!(choices(&window).width.px(), 900);
    assert_eq!(window.undo_steps(), 1);
    for (typed, words) in [("799", "800 to 4000"), ("900.5", "whole number")] {
        window.get(Role::TextInput, "Width, pixels").focus();
        window.settle();
        window.type_over(typed);
        window.key(Key::Enter);
        assert!(window.says(words), "{typed}");
        assert_eq!(choices(&window).width.px(), 900);
    }
    window.key(Key::Escape);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn the_choices_are_saved_with_the_project_and_read_again() {
    let mut window = opened();
    choose(&mut window, Role::RadioButton, "dark");
    choose(&mut window, Role::CheckBox, "Fitted five-speed");
    window.ctrl(Key::S);
    let saved = format::read(&window.disk.text("van.ron").unwrap()).unwrap();
    assert_eq!(saved.write_up, *choices(&window));
    let mut again = Opening::on(saved).open();
    again.ctrl(Key::E);
    let toggled = |name| {
        let of = |role| again.get(role, name).accesskit_node().toggled();
        of(if name == "dark" {
            Role::RadioButton
        } else {
            Role::CheckBox
        })
    };
    assert_eq!(toggled("dark"), Some(Toggled::True));
    assert_eq!(toggled("Fitted five-speed"), Some(Toggled::False));
    assert_eq!(toggled("with the note"), Some(Toggled::True));
}

#[test]
fn the_preview_arrives_with_the_size_of_the_picture() {
    let mut window = opened();
    wait_for(&mut window, " pixels, ");
    let picture = Page::of(window.project()).unwrap().picture().unwrap();
    let size = format!("{} × {} pixels, ", picture.width(), picture.height());
    assert!(window.says(&size));
    assert!(window.says("The picture of the write-up"));
    choose(&mut window, Role::RadioButton, "Bench page, A4");
    wait_for(&mut window, "1600 × 2263 pixels, ");
}

#[test]
fn without_a_set_the_reason_stands_in_place_of_the_picture() {
    let mut window = opened();
    for name in [
        "Fitted five-speed",
        "Same box, taller final drive",
        "Six-speed, two output shafts",
    ] {
        choose(&mut window, Role::CheckBox, name);
    }
    wait_for(&mut window, "no gear set is chosen for the picture");
    window.invoke("Copy picture");
    assert!(window.says("no gear set is chosen"));
}

#[test]
fn saving_the_picture_suggests_a_name_beside_the_project() {
    let mut window = opened();
    window.invoke("Save picture…");
    let suggested = Some(MemoryDisk::path("van.png"));
    assert_eq!(
        window.picker.last_asked(),
        (Purpose::SavePicture, suggested)
    );
    window.picker.answer(None);
    window.settle();
    assert_eq!(window.disk.file_names(), ["van.ron"]);
    assert!(!window.says("Save the picture"));
}

#[test]
fn the_saved_picture_gets_its_ending_and_the_window_says_where_it_went() {
    let mut window = opened();
    window.invoke("Save picture…");
    window.picker.answer(Some(MemoryDisk::path("page")));
    window.settle();
    assert_eq!(window.disk.file_names(), ["page.png", "van.ron"]);
    let where_it_went = MemoryDisk::path("page.png").display().to_string();
    assert!(window.says(&format!("Saved the picture in {where_it_went}")));
    let saved = image::load_from_memory(&window.disk.bytes("page.png")).unwrap();
    let picture = Page::of(window.project()).unwrap().picture().unwrap();
    assert!(saved.into_rgba8() == picture);
    assert_eq!(window.undo_steps(), 0);
    assert_eq!(window.app().desk().file, Some(MemoryDisk::path("van.ron")));
}

#[test]
fn a_picture_is_replaced_only_after_a_question() {
    let mut window = opened();
    window.disk.put("page.png", "another picture");
    for (answer, is_kept) in [("Cancel", true), ("Replace it", false)] {
        window.invoke("Save picture…");
        window.type_over(&MemoryDisk::path("page").display().to_string());
        window.key(Key::Enter);
        assert!(window.says("Replace the file?"));
        assert_eq!(window.disk.bytes("page.png"), b"another picture");
        window.invoke(answer);
        assert_eq!(window.disk.bytes("page.png") == b"another picture", is_kept);
    }
}

#[test]
fn a_folder_that_cannot_be_written_says_so_and_another_place_can_be_given() {
    let mut window = opened();
    let project = window.project().clone();
    window.invoke("Save picture…");
    window
        .picker
        .answer(Some(PathBuf::from("/nowhere/at/all/page.png")));
    window.settle();
    assert!(window.says("Save the picture"), "the dialog is there again");
    assert_eq!(
        window.text("Path"),
        "/nowhere/at/all/page.png",
        "with what was typed"
    );
    assert!(window.says("no such folder"));
    window.type_over(&MemoryDisk::path("page").display().to_string());
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), ["page.png", "van.ron"]);
    assert_eq!(*window.project(), project);
}

#[test]
fn a_disk_that_takes_nothing_loses_nothing() {
    let mut window = opened();
    window.disk.make_read_only();
    window.invoke("Save picture…");
    window.picker.answer(Some(MemoryDisk::path("page.png")));
    window.settle();
    assert!(window.says("read-only"));
    assert_eq!(window.disk.file_names(), ["van.ron"]);
    window.key(Key::Escape);
    assert!(is_open(&window));
}

#[test]
fn a_picture_never_takes_the_place_of_its_project() {
    let mut window = opened();
    let before = window.disk.text("van.ron").unwrap();
    window.invoke("Save picture…");
    window.picker.answer(Some(MemoryDisk::path("van.ron")));
    window.settle();
    window.invoke("Replace it");
    assert!(window.says("the project's own file"));
    assert_eq!(window.disk.text("van.ron").unwrap(), before);
}

#[test]
fn the_picture_is_copied_in_its_full_size() {
    let mut window = opened();
    let OutputCommand::CopyImage(image) = copied(&mut window, "Copy picture") else {
        panic!("no picture was copied");
    };
    let picture = Page::of(window.project()).unwrap().picture().unwrap();
    let size = [picture.width(), picture.height()].map(|side| side as usize);
    assert_eq!(image.size, size);
    assert!(image.as_raw() == picture.as_raw().as_slice());
    window.settle();
    assert!(window.says("Copied the picture"));
}

#[test]
fn the_table_is_copied_in_every_format() {
    let mut window = opened();
    let formats = [
        "Text in columns",
        "Markdown",
        "BBCode",
        "CSV, decimal point",
        "CSV, decimal comma",
        "JSON",
    ];
    let expected = texts(window.project());
    for (format, (_, text)) in formats.into_iter().zip(expected) {
        choose(&mut window, Role::Button, "Copy table as…");
        let OutputCommand::CopyText(copied) = copied(&mut window, format) else {
            panic!("{format} copied no text");
        };
        assert_eq!(copied, text, "{format}");
        window.settle();
        assert!(window.says("Copied the table as"));
    }
}

/// The words in which the write-up tells how large a project's picture is.
fn size_words(project: &Project) -> String {
    let page = Page::of(project).unwrap();
    let picture = page.picture().unwrap();
    let kilobytes = page.png(&picture).unwrap().len().div_ceil(1000);
    let (width, height) = (picture.width(), picture.height());
    format!("{width} × {height} pixels, {kilobytes} kB")
}

#[test]
fn another_document_has_a_preview_of_its_own() {
    let mut window = opened();
    wait_for(&mut window, &size_words(&camper_van()));
    let trucks = three_ten_speeds();
    window
        .disk
        .put("trucks.ron", &format::write(&trucks).unwrap());
    window.ctrl(Key::O);
    window.type_over(&MemoryDisk::path("trucks.ron").display().to_string());
    window.key(Key::Enter);
    window.ctrl(Key::E);
    wait_for(&mut window, &size_words(&trucks));
}

/// Which of a few things is in view at what height: the top of the preview.
fn top_of_preview(window: &Window) -> f32 {
    window
        .get(Role::Image, "The picture of the write-up")
        .rect()
        .top()
}

#[test]
fn it_takes_the_focus_and_gives_it_back_however_it_is_closed() {
    let closings: [fn(&mut Window); 4] = [
        |window| window.key(Key::Escape),
        |window| window.ctrl(Key::E),
        |window| window.click("Close window"),
        |window| {
            window.key_with(Modifiers::ALT, Key::F);
            window.click("Write-up…");
        },
    ];
    for close in closings {
        let mut window = Opening::on(camper_van()).open();
        window.enter_field("Title");
        window.ctrl(Key::E);
        assert_eq!(window.focused(), "Picture");
        close(&mut window);
        assert!(!is_open(&window));
        assert_eq!(window.focused(), "Title");
    }
}

#[test]
fn a_dialog_over_it_gives_the_focus_back_to_it() {
    let mut window = opened();
    window.get(Role::Button, "Save picture…").focus();
    window.settle();
    window.key(Key::Enter);
    window.key(Key::Escape);
    assert!(is_open(&window));
    assert_eq!(window.focused(), "Save picture…");
}

#[test]
fn esc_closes_its_menu_first_then_ends_the_typing_then_closes_it() {
    let mut window = opened();
    window.invoke("Copy table as…");
    assert!(window.find(Role::Button, "Markdown").is_some());
    window.key(Key::Escape);
    assert!(window.find(Role::Button, "Markdown").is_none());
    assert!(is_open(&window));
    window.get(Role::TextInput, "Width, pixels").focus();
    window.settle();
    window.type_over("900");
    window.key(Key::Escape);
    assert!(is_open(&window));
    assert_eq!(choices(&window).width, WriteUp::default().width);
    window.get(Role::TextInput, "Width, pixels").focus();
    window.settle();
    window.key(Key::Escape);
    assert!(!is_open(&window));
}

#[test]
fn esc_in_a_field_beside_it_belongs_to_that_field() {
    let mut window = opened();
    window.get(Role::TextInput, "Title").focus();
    window.settle();
    window.type_over("x");
    window.key(Key::Escape);
    assert!(is_open(&window));
    assert_ne!(window.text("Title"), "x");
}

#[test]
fn page_keys_scroll_the_preview() {
    for (width, height) in [(1280.0, 800.0), (667.0, 427.0), (480.0, 427.0)] {
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        window.ctrl(Key::E);
        wait_for(&mut window, " pixels, ");
        let at_first = top_of_preview(&window);
        window.key(Key::PageDown);
        let by_page = top_of_preview(&window);
        assert!(by_page < at_first - 50.0, "{width}: {by_page} {at_first}");
        window.key(Key::End);
        assert!(top_of_preview(&window) <= by_page);
        window.key(Key::Home);
        assert!((top_of_preview(&window) - at_first).abs() < 1.0, "{width}");
    }
}

#[test]
fn everything_in_it_is_named_and_reached_in_a_small_window() {
    for (width, height) in [(667.0, 427.0), (480.0, 427.0)] {
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        window.ctrl(Key::E);
        wait_for(&mut window, " pixels, ");
        let screen = window.harness.ctx.content_rect();
        let names = [
            (Role::RadioButton, "Bench page, A4"),
            (Role::CheckBox, "with the note"),
            (Role::TextInput, "Width, pixels"),
            (Role::Button, "Copy table as…"),
            (Role::Button, "Close window"),
        ];
        for (role, name) in names {
            window.get(role, name).scroll_to_me();
            window.settle();
            let rect = window.get(role, name).rect();
            assert!(screen.contains_rect(rect), "{width}: {name} at {rect}");
        }
        let title_bar = |node: &egui_kittest::Node<'_>| {
            node.accesskit_node().label().as_deref() == Some("Title bar of the write-up")
        };
        assert!(window.nodes().any(|node| title_bar(&node)));
    }
}

#[test]
fn the_write_up_has_columns_of_its_own_choice_kept_with_the_project() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::E);
    assert!(window.find(Role::CheckBox, "overall").is_none());
    let before = window.project().clone();
    window.click_on(Role::CheckBox, "usual columns");
    window.check_step(&before);
    window.ctrl(Key::Y);
    window.click_on(Role::CheckBox, "overall");
    let columns = window.project().write_up.columns.clone().unwrap();
    let has = |key: &str| columns.iter().any(|column| column.as_str() == key);
    assert!(has("overall_ratio") && has("rpm_drop") && !has("speed_per_1000_rpm_kmh"));
    window.click_on(Role::CheckBox, "usual columns");
    assert_eq!(window.project().write_up.columns, None);
    let row = window.names(Role::Row).into_iter().next().unwrap();
    assert!(
        row.contains("per 1000 rpm"),
        "the window's own table keeps to its choice"
    );
}
