//! Does the table say its figures, answer the pointer, and give them away as text?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Pos2};
use layshaft::analysis::ProjectResults;
use layshaft::chart::table::Mark;
use layshaft::chart::{GearOfSet, Table};
use layshaft::gearing::{EngineSpeed, GearRole};
use layshaft::project::{Edit, Project, SetEdit};

/// The rows whose spoken text begins with `start`.
fn rows(window: &Window, start: &str) -> Vec<String> {
    let rows = window.names(Role::Row).into_iter();
    rows.filter(|name| name.starts_with(start)).collect()
}

/// The spoken text of the one row that begins with `start`.
#[track_caller]
fn row(window: &Window, start: &str) -> String {
    let rows = rows(window, start);
    assert_eq!(rows.len(), 1, "{start}: {rows:?}");
    rows.into_iter().next().unwrap()
}

/// A place in a row, scrolled into view.
#[track_caller]
fn at_row(window: &mut Window, start: &str) -> Pos2 {
    let name = row(window, start);
    let rect = window.shown(Role::Row, &name);
    rect.left_center() + egui::vec2(60.0, 0.0)
}

/// The gear that is brought out, as set and label.
fn pointed(window: &Window) -> Option<(usize, String)> {
    let GearOfSet { set, gear, .. } = window.app().pointed()?;
    let sets = &window.project().sets;
    let label = match sets.get(set)?.set.gear(gear) {
        Some(gear) => gear.label.to_string(),
        None => "R".to_owned(),
    };
    Some((sets.place(set)?, label))
}

#[test]
fn every_gear_has_a_row_that_says_its_figures() {
    let window = Window::on_camper_van();
    for (place, count) in [(0, 6), (1, 6), (2, 7)] {
        let name = window.set(place).set.name.to_string();
        assert_eq!(rows(&window, &format!("{name}, gear ")).len(), count);
    }
    let top = row(&window, "Fitted five-speed, gear 5: ");
    for words in ["ratio 0.740", "overall 3.601", "at 110 km/h 3160 rpm"] {
        assert!(top.contains(words), "{top}");
    }
    assert!(
        !top.contains("shift at"),
        "top is not shifted out of: {top}"
    );
}

#[test]
fn a_crawler_is_called_one() {
    let project = camper_van();
    let set = project.sets.iter().next().unwrap();
    let edit = SetEdit::Role(set.set.gears[0].id, GearRole::Crawler);
    let project = Edit::Set(set.id, edit).applied_to(&project).unwrap();
    let window = Opening::on(project).open();
    row(&window, "Fitted five-speed, gear 1 crawler: ");
    row(&window, "Fitted five-speed, gear 2: ");
}

/// The camper van with a transfer box in the first set, of which both ranges are shown.
fn window_in_both_ranges() -> Window {
    let mut window = Window::on_camper_van();
    window.choose("Add stage, set 1", Role::Button, "Transfer box");
    window.click_on(Role::CheckBox, "Show all positions of stage 1, set 1");
    window
}

#[test]
fn a_range_that_is_shown_has_rows_that_say_their_figures() {
    let mut window = window_in_both_ranges();
    let first = row(&window, "Fitted five-speed, gear 1: ");
    let low = row(&window, "Fitted five-speed, gear 1 Low: ");
    assert!(first.contains("overall 18.104"), "{first}");
    assert!(low.contains("overall 45.260, step 1.87"), "{low}");
    assert_eq!(rows(&window, "Fitted five-speed, gear ").len(), 12);
    window.click_on(Role::CheckBox, "Show all positions of stage 1, set 1");
    assert_eq!(rows(&window, "Fitted five-speed, gear ").len(), 6);
}

#[test]
fn a_row_s_menu_shows_the_other_range_and_hides_it_again() {
    let mut window = Window::on_camper_van();
    window.choose("Add stage, set 1", Role::Button, "Transfer box");
    for count in [12, 6] {
        let at = at_row(&mut window, "Fitted five-speed, gear 2: ");
        window.secondary_click_at(at);
        window.click_on(Role::CheckBox, "Show all positions of Transfer box");
        assert_eq!(rows(&window, "Fitted five-speed, gear ").len(), count);
    }
}

#[test]
fn a_row_of_another_range_brings_its_own_line_forward() {
    let mut window = window_in_both_ranges();
    for (name, other) in [("5", None), ("5 Low", Some(0))] {
        let at = at_row(&mut window, &format!("Fitted five-speed, gear {name}: "));
        window.rest_at(at);
        assert_eq!(pointed(&window), Some((0, "5".to_owned())));
        assert_eq!(window.app().pointed().unwrap().other, other);
        assert!(window.is_asleep());
    }
    // With the range its row is gone, and nothing is brought out any more.
    window.key_with(egui::Modifiers::COMMAND, Key::Z);
    assert_eq!(pointed(&window), None);
}

#[test]
fn a_row_says_how_it_differs_from_the_baseline() {
    let window = Window::on_camper_van();
    let top = row(&window, "Same box, taller final drive, gear 5: ");
    assert!(top.contains("at 110 km/h 2800 rpm −360 (−11.4 %)"), "{top}");
}

#[test]
fn typing_changes_the_rows_at_once() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 5, set 1", "0.8");
    assert!(row(&window, "Fitted five-speed, gear 5: ").contains("ratio 0.800"));
    window.key(Key::Escape);
    assert!(row(&window, "Fitted five-speed, gear 5: ").contains("ratio 0.740"));
}

#[test]
fn a_row_brings_its_line_forward_and_leaving_it_lets_go() {
    for gear in ["5", "R"] {
        let mut window = Window::on_camper_van();
        let at = at_row(&mut window, &format!("Fitted five-speed, gear {gear}: "));
        window.rest_at(at);
        assert_eq!(pointed(&window), Some((0, gear.to_owned())));
        window.rest_at(Pos2::new(60.0, 12.0));
        assert_eq!(pointed(&window), None, "{gear}");
    }
}

#[test]
fn the_pointer_at_rest_on_a_row_asks_for_no_frames() {
    for gear in ["1", "R"] {
        let mut window = Window::on_camper_van();
        let at = at_row(&mut window, &format!("Fitted five-speed, gear {gear}: "));
        window.rest_at(at);
        assert!(window.is_asleep(), "{gear}");
    }
}

#[test]
fn a_line_in_the_diagram_brings_its_row_out() {
    let mut window = Window::on_camper_van();
    let diagram = window.get_by_role(Role::Figure).rect();
    let mut seen = Vec::new();
    for step in 0..40_u8 {
        let share = f32::from(step) / 40.0;
        window.rest_at(diagram.left_bottom() + diagram.size() * egui::vec2(share, -0.5));
        seen.extend(pointed(&window));
    }
    seen.dedup();
    assert!(seen.len() > 4, "{seen:?}");
    window.rest_at(diagram.left_top() + egui::vec2(3.0, 30.0));
    assert_eq!(pointed(&window), None);
}

#[test]
fn a_click_on_a_row_brings_its_set_forward() {
    let mut window = Window::on_camper_van();
    let at = at_row(&mut window, "Six-speed, two output shafts, gear 3: ");
    window.click_at(at);
    let handle = "Shift point 1 to 2, Six-speed, two output shafts";
    assert!(window.find(Role::Slider, handle).is_some());
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn sets_stand_one_under_another_or_side_by_side() {
    let mut window = Window::on_camper_van();
    assert_eq!(window.names(Role::Row).len(), 19);
    window.click("Side by side");
    assert_eq!(window.names(Role::Row).len(), 7);
    let all = "Fitted five-speed, Same box, taller final drive, Six-speed, two output shafts";
    let fifth = row(&window, &format!("Gear 5 of {all}: "));
    for words in [
        "overall 3.601, 3.191, 3.465; ",
        "step none, none, 1.20; ",
        "at 110 km/h, rpm 3160, 2800 −360 (−11.4 %), ",
    ] {
        assert!(fifth.contains(words), "{words} is not in {fifth}");
    }
    let sixth = row(&window, "Gear 6 of Six-speed, two output shafts: ");
    assert!(sixth.contains("overall 2.893; "), "{sixth}");
    window.click("One under another");
    assert_eq!(window.names(Role::Row).len(), 19);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn of_the_gears_in_a_row_that_under_the_pointer_comes_forward() {
    let mut window = Window::on_camper_van();
    window.click("Side by side");
    let name = row(&window, "Gear 5 of ");
    let mut seen = Vec::new();
    for step in 0..20_u8 {
        let rect = window.get(Role::Row, &name).rect();
        window.rest_at(rect.left_center() + egui::vec2(8.0 + f32::from(step) * 12.0, 0.0));
        seen.extend(pointed(&window));
    }
    seen.dedup();
    let gear = |set| (set, "5".to_owned());
    // The selected set's where no figure is; else that of the set whose figure it is.
    let first = [1, 0, 1, 2, 1, 0].map(gear);
    assert!(seen.starts_with(&first), "{seen:?}");
}

#[test]
fn the_table_is_copied_by_button_by_key_and_by_row() {
    let mut window = Window::on_camper_van();
    window.click("Copy table");
    let text = window.copied().to_owned();
    for words in ["Camper van", "Fitted five-speed", "3160", "−360 (−11.4 %)"] {
        assert!(text.contains(words), "{words} is not in:\n{text}");
    }
    assert!(window.app().message().contains("Copied"));

    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::C);
    assert_eq!(window.copied(), text);

    let mut window = Window::on_camper_van();
    let at = at_row(&mut window, "Fitted five-speed, gear 5: ");
    window.secondary_click_at(at);
    window.click_lowest("Copy table");
    assert_eq!(window.copied(), text);
}

#[test]
fn a_row_is_copied_with_its_differences() {
    let mut window = Window::on_camper_van();
    let at = at_row(&mut window, "Same box, taller final drive, gear 5: ");
    window.secondary_click_at(at);
    window.click("Copy row");
    let cells: Vec<&str> = window.copied().split('\t').collect();
    assert_eq!(cells[..3], ["5", "0.740", "3.191"]);
    assert_eq!(cells.last(), Some(&"2800 −360 (−11.4 %)"));
}

#[test]
fn the_cell_under_the_pointer_is_copied_alone() {
    let mut window = Window::on_camper_van();
    let name = row(&window, "Fitted five-speed, gear 5: ");
    let mut copied = Vec::new();
    for step in 1..12_u8 {
        let rect = window.shown(Role::Row, &name);
        let at = rect.left_center() + egui::vec2(f32::from(step) * 40.0, 0.0);
        window.secondary_click_at(at);
        let cells = window.names(Role::Button).into_iter();
        let cell = cells.into_iter().find(|name| {
            let rest = name.strip_prefix("Copy ");
            rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
        });
        if let Some(cell) = cell {
            window.click(&cell);
            assert_eq!(format!("Copy {}", window.copied()), cell);
            copied.push(window.copied().to_owned());
        } else {
            window.key(Key::Escape);
        }
    }
    copied.dedup();
    assert!(copied.contains(&"0.740".to_owned()), "{copied:?}");
    assert!(copied.contains(&"3.601".to_owned()), "{copied:?}");
}

#[test]
fn units_change_headings_fields_and_figures() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.click("mph");
    let top = row(&window, "Fitted five-speed, gear 5: ");
    assert!(top.contains("per 1000 rpm 21.7 mph"), "{top}");
    assert!(top.contains("at 68.4 mph 3160 rpm"), "{top}");
    assert!(!top.contains("km/h"), "{top}");
    assert!(window.find(Role::TextInput, "Mark, mph").is_some());
    window.fill("Mark, mph", "55 70");
    assert!(row(&window, "Fitted five-speed, gear 5: ").contains("at 70 mph"));
    assert_eq!(window.undo_steps(), 2);
    window.ctrl(Key::Z);
    window.check_step(&before);
    window.click("km/h");
    assert!(row(&window, "Fitted five-speed, gear 5: ").contains("at 110 km/h 3160 rpm"));
}

fn table(project: &Project) -> Table {
    Table::of(project, &ProjectResults::of(project))
}

#[test]
fn what_lies_outside_the_useful_range_is_dim_and_stays() {
    let table = table(&camper_van());
    let columns = table.columns.iter().enumerate();
    let rpm_at_marks: Vec<usize> = columns
        .filter(|(_, c)| matches!(c.figure.mark(), Some(Mark::RoadSpeed(_))))
        .map(|(at, _)| at)
        .collect();
    assert_eq!(rpm_at_marks.len(), 3);
    let mut dim = 0;
    for row in table.sets.iter().flat_map(|set| &set.rows) {
        for &at in &rpm_at_marks {
            let cell = &row.cells[at];
            let rpm: f64 = cell.text.parse().unwrap();
            // Shown to 10 rpm, so that at the ends of the range either is right.
            if (1510.0..=4490.0).contains(&rpm) {
                assert!(!cell.is_dim, "{rpm}");
            } else if !(1490.0..=4510.0).contains(&rpm) {
                assert!(cell.is_dim, "{rpm}");
                dim += 1;
            }
        }
    }
    assert!(dim > 20);
}

#[test]
fn a_marked_engine_speed_above_the_redline_is_dim() {
    let marks = [2000.0, 5000.0].map(|rpm| EngineSpeed::from_rpm(rpm).unwrap());
    let edit = layshaft::project::Marks::new(marks.to_vec()).map(Edit::MarkedEngineSpeeds);
    let table = table(&edit.unwrap().applied_to(&camper_van()).unwrap());
    let [useful, beyond] = marks.map(|rpm| {
        let is_at = |mark: Option<Mark>| mark == Some(Mark::EngineSpeed(rpm));
        let mut columns = table.columns.iter();
        columns.position(|c| is_at(c.figure.mark())).unwrap()
    });
    for row in table.sets.iter().flat_map(|set| &set.rows) {
        assert!(!row.cells[useful].is_dim && row.cells[beyond].is_dim);
        assert!(!row.cells[beyond].text.is_empty());
    }
}

#[test]
fn hidden_sets_stay_in_the_table() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "visible, set 2");
    assert_eq!(
        rows(&window, "Same box, taller final drive, gear ").len(),
        6
    );
}

#[test]
fn the_table_of_one_set_on_the_smallest_window_is_all_there() {
    let mut project = camper_van();
    for id in [2, 3] {
        let edit = Edit::RemoveSet(layshaft::project::SetId(id));
        project = edit.applied_to(&project).unwrap();
    }
    let window = Opening::on(project).sized(1000.0, 640.0).open();
    assert_eq!(window.names(Role::Row).len(), 6);
}
