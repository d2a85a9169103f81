//! Are the points of a torque curve moved in their diagram and typed in their table as the hand expects?
#![expect(clippy::float_cmp, reason = "what was typed is kept to the digit")]

use crate::support::gear_sets::rpm as rpm_of;
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::{Action, ActionData, ActionRequest, Role, TreeId};
use egui::{Event, Key, Modifiers, Pos2, Rect, vec2};
use egui_kittest::Node;
use egui_kittest::kittest::NodeT;
use layshaft::motion::{Torque, TorqueCurve, TorquePoint};
use layshaft::project::{EngineData, Project, TechnicalData};

/// A window on an engine with this curve, the section open.
fn with_curve(points: &[[f64; 2]]) -> Window {
    let mut project = camper_van();
    project.technical = TechnicalData {
        engine: EngineData {
            curve: Some(curve_of(points)),
            ..EngineData::default()
        },
        ..TechnicalData::default()
    };
    opened(project)
}

fn opened(project: Project) -> Window {
    let mut window = Opening::on(project).open();
    turn(&mut window, "Engine");
    window
}

fn curve_of(points: &[[f64; 2]]) -> TorqueCurve {
    let point = |[rpm, nm]: &[f64; 2]| TorquePoint {
        speed: rpm_of(*rpm),
        torque: Torque::from_nm(*nm).unwrap(),
    };
    TorqueCurve::new(points.iter().map(point).collect()).unwrap()
}

const POINTS: [[f64; 2]; 4] = [
    [1000.0, 96.0],
    [2500.0, 130.0],
    [3600.0, 152.0],
    [4400.0, 140.0],
];

/// Folds or unfolds what stands under a heading.
fn turn(window: &mut Window, heading: &str) {
    let mut names = window.names(Role::DisclosureTriangle).into_iter();
    let name = names.find(|name| name.starts_with(heading)).unwrap();
    window.click_on(Role::DisclosureTriangle, &name);
    window.pause();
}

/// The points of the curve, as engine speeds and torques.
fn points(window: &Window) -> Vec<[f64; 2]> {
    let curve = window.project().technical.engine.curve.as_ref().unwrap();
    let points = curve.points().iter();
    points
        .map(|point| [point.speed.rpm(), point.torque.nm()])
        .collect()
}

/// What stands in the field of the whole curve.
fn field(window: &Window) -> String {
    let field = window.get(Role::MultilineTextInput, "Torque curve");
    field.value().unwrap_or_default()
}

fn handle(window: &Window, rpm: i32) -> Node<'_> {
    window.get(Role::Slider, &format!("Torque at {rpm} rpm"))
}

fn place(window: &mut Window, rpm: i32) -> Pos2 {
    window
        .shown(Role::Slider, &format!("Torque at {rpm} rpm"))
        .center()
}

fn plot(window: &Window) -> Rect {
    window
        .get(Role::Image, "Torque and power over engine speed")
        .rect()
}

#[test]
fn each_point_is_heard_with_its_engine_speed_and_torque() {
    let window = with_curve(&POINTS);
    for [rpm, nm] in POINTS {
        let name = format!("Torque at {rpm} rpm");
        let node = window.get(Role::Slider, &name).accesskit_node();
        assert_eq!(node.value(), Some(format!("{nm} N·m")));
        assert_eq!(node.numeric_value(), Some(nm));
        assert_eq!(node.min_numeric_value(), Some(0.0));
        assert_eq!(node.max_numeric_value(), Some(20_000.0));
    }
    let plot = window.get(Role::Image, "Torque and power over engine speed");
    let told = plot
        .accesskit_node()
        .data()
        .description()
        .unwrap()
        .to_owned();
    assert_eq!(told, "from 96 N·m at 1000 to 140 N·m at 4400 rpm");
}

#[test]
fn a_point_is_dragged_up_and_sideways_in_one_step_and_the_field_follows() {
    let mut window = with_curve(&POINTS);
    let before = window.project().clone();
    let from = place(&mut window, 2500);
    window.drag(from, from + vec2(12.0, -30.0));
    let after = points(&window);
    assert!(after[1][0] > 2500.0 && after[1][1] > 130.0, "{after:?}");
    assert!(after[1][0] % 10.0 == 0.0 && after[1][1].fract() == 0.0);
    assert_eq!(
        [after[0], after[2], after[3]],
        [POINTS[0], POINTS[2], POINTS[3]]
    );
    assert!(field(&window).contains(&format!("{}:{}", after[1][0], after[1][1])));
    assert_eq!(window.undo_steps(), 1);
    window.check_step(&before);
}

#[test]
fn a_point_passes_no_neighbour_and_no_edge() {
    let mut window = with_curve(&POINTS);
    let from = place(&mut window, 2500);
    window.drag(from, from + vec2(400.0, 0.0));
    assert_eq!(points(&window)[1], [3590.0, 130.0]);
    let from = place(&mut window, 3590);
    window.drag(from, from + vec2(-400.0, 400.0));
    assert_eq!(points(&window)[1], [1010.0, 0.0]);
    let from = place(&mut window, 4400);
    window.drag(from, from + vec2(0.0, -400.0));
    let top = points(&window)[3][1];
    assert!((152.0..250.0).contains(&top), "{top}");
}

#[test]
fn a_press_moves_nothing_and_a_way_back_is_no_step() {
    let mut window = with_curve(&[[1005.0, 96.4], [2507.0, 130.2], [4400.0, 140.0]]);
    let before = window.project().clone();
    let from = place(&mut window, 2507);
    window.drag(from, from);
    window.hold(from, from + vec2(20.0, 20.0));
    assert!(*window.project() != before);
    window.move_to(from);
    window.release(from);
    window.settle();
    assert_eq!(*window.project(), before);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn a_point_is_dragged_beyond_the_scale_by_a_second_drag() {
    let mut window = with_curve(&POINTS);
    let mut tops = Vec::new();
    for _ in 0..3 {
        let from = place(&mut window, 3600);
        window.drag(from, from + vec2(0.0, -300.0));
        tops.push(points(&window)[2][1]);
        // Its scales have grown: taking hold of it moves nothing.
        let from = place(&mut window, 3600);
        window.hold(from, from + vec2(0.0, 0.4));
        window.release(from);
        window.settle();
        assert_eq!(points(&window)[2][1], tops[tops.len() - 1]);
    }
    assert!(tops[0] < tops[1] && tops[1] < tops[2], "{tops:?}");
    assert_eq!(window.undo_steps(), 3);
}

#[test]
fn esc_puts_a_dragged_point_back() {
    let mut window = with_curve(&POINTS);
    let before = window.project().clone();
    let from = place(&mut window, 2500);
    window.hold(from, from + vec2(20.0, 20.0));
    window.key(Key::Escape);
    window.release(from + vec2(20.0, 20.0));
    window.settle();
    assert_eq!(*window.project(), before);
    assert!(!window.is_in_gesture());
}

#[test]
fn arrow_keys_move_the_point_that_has_the_focus_and_undo_leaves_it_there() {
    let mut window = with_curve(&POINTS);
    let before = window.project().clone();
    handle(&window, 2500).focus();
    window.settle();
    window.key(Key::ArrowUp);
    window.key_with(Modifiers::SHIFT, Key::ArrowUp);
    window.key(Key::ArrowRight);
    window.key(Key::PageDown);
    window.key(Key::ArrowDown);
    assert_eq!(points(&window)[1], [2510.0, 130.0]);
    assert_eq!(window.focused(), "Torque at 2510 rpm");
    window.key(Key::Enter);
    assert_eq!(window.undo_steps(), 1);
    window.ctrl(Key::Z);
    window.settle();
    assert_eq!(*window.project(), before);
    assert_eq!(window.focused(), "Torque at 2500 rpm");
    window.key(Key::ArrowLeft);
    window.key(Key::Escape);
    assert_eq!(*window.project(), before);
}

#[test]
fn tab_goes_from_point_to_point() {
    let mut window = with_curve(&POINTS);
    handle(&window, 1000).focus();
    window.settle();
    let mut met = Vec::new();
    for _ in 0..5 {
        met.push(window.focused());
        window.key(Key::Tab);
    }
    let handles = [1000, 2500, 3600, 4400].map(|rpm| format!("Torque at {rpm} rpm"));
    assert_eq!(met[..4], handles);
    assert_eq!(met[4], "4 points");
}

#[test]
fn what_a_screen_reader_asks_for_is_one_step_each() {
    let mut window = with_curve(&POINTS);
    let ask = |window: &mut Window, action: Action, data: Option<ActionData>| {
        let (target_node, _) = handle(window, 2500).accesskit_node().locate();
        window.event(Event::AccessKitActionRequest(ActionRequest {
            action,
            target_tree: TreeId::ROOT,
            target_node,
            data,
        }));
        window.settle();
    };
    ask(&mut window, Action::Increment, None);
    assert_eq!(points(&window)[1], [2500.0, 131.0]);
    ask(&mut window, Action::Decrement, None);
    ask(
        &mut window,
        Action::SetValue,
        Some(ActionData::NumericValue(99_999.0)),
    );
    assert_eq!(points(&window)[1], [2500.0, 20_000.0]);
    assert_eq!(window.undo_steps(), 3);
}

#[test]
fn a_double_click_on_the_line_adds_a_point_and_delete_removes_it() {
    let mut window = with_curve(&POINTS);
    let before = window.project().clone();
    let (left, right) = (place(&mut window, 2500), place(&mut window, 3600));
    let middle = left + (right - left) * 0.5;
    window.click_twice_at(middle);
    let added = points(&window)[2];
    assert_eq!(points(&window).len(), 5);
    assert!((added[0] - 3050.0).abs() <= 20.0, "{added:?}");
    assert!((140.0..146.0).contains(&added[1]), "{added:?}");
    assert_eq!(window.focused(), format!("Torque at {} rpm", added[0]));
    assert_eq!(window.undo_steps(), 1);
    window.key(Key::Delete);
    assert_eq!(points(&window), POINTS);
    assert_eq!(window.focused(), "Torque at 3600 rpm");
    window.ctrl(Key::Z);
    window.ctrl(Key::Z);
    assert_eq!(*window.project(), before);
}

#[test]
fn the_last_two_points_stay() {
    let mut window = with_curve(&POINTS[..2]);
    handle(&window, 1000).focus();
    window.settle();
    window.key(Key::Delete);
    assert_eq!(points(&window), POINTS[..2]);
    assert!(window.app().message().contains("2 to 200 points"));
}

#[test]
fn a_right_click_and_the_menu_key_offer_the_same() {
    let mut window = with_curve(&POINTS);
    let at = place(&mut window, 3600);
    window.secondary_click_at(at);
    window.click_on(Role::Button, "Remove the point");
    assert_eq!(points(&window).len(), 3);
    handle(&window, 2500).focus();
    window.settle();
    window.key_with(Modifiers::SHIFT, Key::F10);
    window.key(Key::Enter);
    assert_eq!(points(&window)[2][0], 3450.0);
    assert_eq!(window.focused(), "Torque at 3450 rpm");
    let plot = plot(&window);
    window.secondary_click_at(plot.left_top() + vec2(60.0, 20.0));
    let menu = window.names(Role::Button).into_iter();
    let add = menu
        .into_iter()
        .find(|name| name.starts_with("Add a point at"));
    window.click_on(Role::Button, &add.unwrap());
    assert_eq!(points(&window).len(), 5);
}

#[test]
fn what_was_half_typed_in_the_fields_outlives_a_drag() {
    let mut window = with_curve(&POINTS);
    turn(&mut window, "4 points");
    window.fill("Torque of point 1", "strong");
    window.click_on(Role::MultilineTextInput, "Torque curve");
    window.type_over("1000:96 25x");
    window.pause();
    let before = points(&window);
    for way in [vec2(0.0, -10.0), vec2(0.0, 6.0)] {
        let from = place(&mut window, 1000);
        window.drag(from, from + way);
    }
    handle(&window, 1000).focus();
    window.settle();
    window.key(Key::ArrowUp);
    window.key(Key::Escape);
    window.key(Key::ArrowUp);
    assert_ne!(points(&window), before);
    assert_eq!(field(&window), "1000:96 25x");
    assert_eq!(window.text("Torque of point 1"), "strong");
    let name = "Torque at 3600 rpm";
    window.get(Role::Slider, name).focus();
    window.settle();
    window.key(Key::Delete);
    assert_eq!(field(&window), "1000:96 25x");
}

#[test]
fn a_curve_that_a_brochure_made_is_shown_and_not_dragged() {
    let mut window = opened(Project {
        technical: TechnicalData::default(),
        ..camper_van()
    });
    assert!(
        window
            .find(Role::Image, "Torque and power over engine speed")
            .is_none()
    );
    window.fill("Brochure", "152 Nm @ 4600, 96 kW @ 6180 rpm");
    assert!(window.says("Built of the brochure's figures: nothing in it can be dragged"));
    plot(&window);
    assert!(
        !window
            .names(Role::Slider)
            .iter()
            .any(|name| name.starts_with("Torque at"))
    );
    let before = window.project().clone();
    let middle = plot(&window).center();
    window.click_twice_at(middle);
    assert_eq!(*window.project(), before);
}

#[test]
fn of_very_many_points_none_is_taken_hold_of() {
    let many: Vec<[f64; 2]> = (1..=60).map(|at| [f64::from(at) * 70.0, 100.0]).collect();
    let mut window = with_curve(&many);
    assert!(window.says("Too many points to take hold of one"));
    assert!(
        !window
            .names(Role::Slider)
            .iter()
            .any(|name| name.starts_with("Torque at"))
    );
    turn(&mut window, "60 points");
    window.fill("Torque of point 2", "110");
    assert_eq!(points(&window)[1], [140.0, 110.0]);
}

#[test]
fn figures_of_the_table_are_typed_walked_through_and_undone_where_they_stand() {
    let mut window = with_curve(&POINTS);
    let before = window.project().clone();
    turn(&mut window, "4 points");
    window.fill("Torque of point 2", "133,5");
    assert_eq!(window.focused(), "Torque of point 3");
    assert_eq!(points(&window)[1], [2500.0, 133.5]);
    assert_eq!(window.undo_steps(), 1);
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(*window.project(), before);
    assert_eq!(window.focused(), "Torque of point 2");
    window.key(Key::ArrowLeft);
    assert_eq!(window.focused(), "Engine speed of point 2");
    window.fill("Engine speed of point 2", "3,600");
    window.pause();
    assert!(window.says("3600 rpm follows 3600 rpm"));
    assert_eq!(*window.project(), before);
}

#[test]
fn a_column_is_pasted_into_any_row() {
    let mut window = with_curve(&POINTS[..2]);
    turn(&mut window, "2 points");
    let paste = |window: &mut Window, field: &str, text: &str| {
        window.enter_field(field);
        window.event(Event::Paste(text.to_owned()));
        window.settle();
        window.key(Key::Enter);
    };
    paste(&mut window, "Engine speed of point 2", "2000\n3000\n4000\n");
    let speeds: Vec<f64> = points(&window).iter().map(|point| point[0]).collect();
    assert_eq!(speeds, [1000.0, 2000.0, 3000.0, 4000.0]);
    paste(&mut window, "Torque of point 1", "90\n120\n150\n140\n");
    let wanted = [
        [1000.0, 90.0],
        [2000.0, 120.0],
        [3000.0, 150.0],
        [4000.0, 140.0],
    ];
    assert_eq!(points(&window), wanted);
    assert_eq!(window.undo_steps(), 2);
    let sheet: Vec<String> = (0..12)
        .map(|at| format!("{}\t{}", 1000 + at * 500, 100 + at))
        .collect();
    paste(&mut window, "Engine speed of point 1", &sheet.join("\n"));
    assert_eq!(points(&window).len(), 12);
    assert_eq!(points(&window)[11], [6500.0, 111.0]);
    assert_eq!(window.text("Engine speed of point 1"), "1000");
}

#[test]
fn rows_come_and_go_and_are_typed_next() {
    let mut window = with_curve(&POINTS);
    turn(&mut window, "4 points");
    window.click("Add point");
    assert_eq!(points(&window)[4], [5200.0, 140.0]);
    assert_eq!(window.focused(), "Engine speed of point 5");
    window.choose("Point 2 menu", Role::Button, "Remove the point");
    assert_eq!(points(&window)[1], POINTS[2]);
    window.choose("Point 1 menu", Role::Button, "Add a point behind it");
    assert_eq!(points(&window)[1][0], 2300.0);
    assert_eq!(window.focused(), "Engine speed of point 2");
}

#[test]
fn a_field_that_is_scrolled_out_of_sight_keeps_what_is_half_typed() {
    let many: Vec<[f64; 2]> = (1..=150).map(|at| [f64::from(at) * 40.0, 100.0]).collect();
    let mut window = with_curve(&many);
    turn(&mut window, "150 points");
    window.fill("Torque of point 3", "strong");
    let forms = window
        .get(Role::TextInput, "Torque of point 3")
        .rect()
        .center();
    for _ in 0..4 {
        window.wheel(forms, -2000.0);
    }
    assert!(window.find(Role::TextInput, "Torque of point 60").is_none());
    window.shown(Role::TextInput, "Torque of point 3");
    assert_eq!(window.text("Torque of point 3"), "strong");
    window.field("Torque of point 5");
}

#[test]
fn a_folded_heading_says_that_a_field_beneath_it_does_not_read() {
    let mut window = with_curve(&POINTS);
    turn(&mut window, "4 points");
    window.fill("Torque of point 2", "strong");
    turn(&mut window, "4 points");
    let says = |window: &Window, heading: &str| {
        let names = window.names(Role::DisclosureTriangle);
        assert!(
            names.contains(&format!("{heading}: a field does not read")),
            "{names:?}"
        );
    };
    says(&window, "4 points");
    turn(&mut window, "Engine");
    says(&window, "Engine");
    window.fill("Redline, rpm", "x");
    turn(&mut window, "Vehicle");
    says(&window, "Vehicle");
}
