//! Which columns has the table, and is everything in it reached and seen?

use crate::support::window::{Opening, Painted, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Rect};
use egui_kittest::kittest::NodeT;
use layshaft::project::Project;

/// The heading of the last column.
const LAST: &str = "at 110 km/h,\nrpm";

/// The words of the rows.
fn rows(window: &Window) -> Vec<String> {
    window.names(Role::Row)
}

fn ticks(window: &mut Window, names: &[&str]) {
    window.click("Columns");
    for name in names {
        window.click_on(Role::CheckBox, name);
    }
    window.key(Key::Escape);
}

/// Where a text is painted that reads so; one for each place.
fn places(window: &Window, text: &str) -> Vec<Rect> {
    let texts = Painted::of(window).texts.into_iter();
    texts
        .filter(|(painted, _)| painted == text)
        .map(|(_, rect)| rect)
        .collect()
}

/// Where the rows of the table are seen, and what is above them.
fn table(window: &Window) -> Rect {
    let top = window.get(Role::Button, "Columns").rect().bottom();
    let screen = window.harness.ctx.content_rect();
    Rect::from_min_max(egui::pos2(0.0, top), screen.max)
}

fn is_in(window: &Window, text: &str) -> bool {
    let table = table(window);
    let mut places = places(window, text).into_iter();
    places.any(|at| at.width() > 1.0 && at.height() > 1.0 && table.contains_rect(at))
}

#[test]
fn the_reader_ticks_the_columns_in_both_arrangements() {
    for arrangement in ["One under another", "Side by side"] {
        let mut window = Window::on_camper_van();
        window.click(arrangement);
        let all = rows(&window);
        assert!(all[0].contains("per 1000 rpm") && all[0].contains("ratio"));
        ticks(&mut window, &["per 1000 rpm, km/h", "ratio"]);
        let fewer = rows(&window);
        assert_eq!(fewer.len(), all.len());
        for row in &fewer {
            assert!(
                !row.contains("per 1000 rpm") && !row.contains("ratio"),
                "{row}"
            );
            assert!(row.contains("overall"), "{row}");
        }
        ticks(&mut window, &["ratio", "per 1000 rpm, km/h"]);
        assert_eq!(rows(&window), all);
        assert_eq!(window.undo_steps(), 0, "it is no change of the project");
    }
}

#[test]
fn the_usual_columns_keep_the_drop_and_the_shift() {
    let mut window = Window::on_camper_van();
    window.click("Columns");
    window.click_on(Role::RadioButton, "Usual columns");
    window.key(Key::Escape);
    let first = &rows(&window)[0];
    assert!(
        first.contains("shift at") && first.contains("drop"),
        "{first}"
    );
    assert!(!first.contains("per 1000 rpm"), "{first}");
    window.click("Columns");
    window.click_on(Role::RadioButton, "All columns");
    assert!(rows(&window)[0].contains("per 1000 rpm"));
}

#[test]
fn the_columns_are_remembered_from_one_window_to_the_next() {
    let folder = tempfile::tempdir().unwrap();
    let open = |project: Project| Opening::on(project).with_settings(folder.path()).open();
    let mut window = open(camper_van());
    ticks(&mut window, &["overall"]);
    let window = open(camper_van());
    assert!(!rows(&window)[0].contains("overall"));
}

#[test]
fn nothing_vanishes_in_a_narrow_window_and_arrows_lead_to_it() {
    for arrangement in ["One under another", "Side by side"] {
        let mut window = Opening::on(camper_van()).sized(667.0, 427.0).open();
        window.click("Table");
        window.click(arrangement);
        assert!(!is_in(&window, LAST));
        let row = rows(&window)[0].clone();
        window.get(Role::Row, &row).focus();
        window.settle();
        let gear = places(&window, "1").first().copied().unwrap();
        for _ in 0..40 {
            window.key(Key::ArrowRight);
        }
        assert!(is_in(&window, LAST), "{arrangement}");
        assert!(!is_in(&window, "overall"), "it has gone to the left");
        let still = places(&window, "1").first().copied().unwrap();
        assert!((still.left() - gear.left()).abs() < 0.5, "the gears stay");
        assert_eq!(window.focused(), row);
        for _ in 0..40 {
            window.key(Key::ArrowLeft);
        }
        assert!(is_in(&window, "overall"));
    }
}

#[test]
fn headings_stay_while_rows_go_by_and_hide_none_that_has_the_focus() {
    let mut window = Window::on_camper_van();
    let heading = places(&window, "overall")[0];
    let row = rows(&window)[0].clone();
    window.get(Role::Row, &row).focus();
    window.settle();
    for key in [Key::ArrowDown, Key::ArrowUp] {
        for _ in 0..30 {
            window.key(key);
            let at = window.nodes().find(egui_kittest::Node::is_focused).unwrap();
            if at.accesskit_node().role() != Role::Row {
                // Up from the first row one comes to what is above the table.
                continue;
            }
            let at = at.rect();
            assert!(
                at.top() >= heading.bottom() - 0.5,
                "{at} is under {heading}"
            );
            let still = places(&window, "overall")[0];
            assert!((still.top() - heading.top()).abs() < 0.5);
        }
    }
}

#[test]
fn what_is_about_the_table_is_found_by_its_words() {
    let mut window = Window::on_camper_van();
    for (words, is_beside) in [("side by side", true), ("one under another", false)] {
        window.ctrl(Key::K);
        window.type_text(words);
        window.key(Key::Enter);
        assert_eq!(window.is_chosen("Side by side"), is_beside);
    }
    window.ctrl(Key::K);
    window.type_text("columns");
    window.key(Key::Enter);
    window.settle();
    assert!(window.find(Role::CheckBox, "overall").is_some());
    window.key(Key::Escape);
    assert!(window.find(Role::CheckBox, "overall").is_none());
}

#[test]
fn no_figure_is_cut_so_that_it_reads_as_another_one() {
    for width in [1000.0, 1037.0, 1111.0, 1280.0] {
        let mut window = Opening::on(camper_van()).sized(width, 800.0).open();
        window.click("Side by side");
        window.settle();
        let seen = table(&window);
        let painted = Painted::of(&window);
        let is_figure = |(text, rect): &&(String, Rect)| {
            seen.contains_rect(*rect) && text.chars().any(|c| c.is_ascii_digit())
        };
        let figures: Vec<_> = painted.cut.iter().filter(is_figure).collect();
        assert!(figures.is_empty(), "{width}: {figures:?}");
    }
}

#[test]
fn a_heading_that_is_pointed_at_says_what_stands_beneath_it() {
    let mut window = Opening::on(camper_van()).sized(1280.0, 800.0).open();
    let says = "Overall ratio ÷ that of the next gear";
    assert!(!window.says(says));
    let heading = places(&window, "step")[0];
    window.rest_at(heading.center());
    window.pause();
    assert!(window.says(says));
    // What programs are told of what is missing is nothing for readers.
    assert!(!window.says("null"));
}
