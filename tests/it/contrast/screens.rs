//! Can every word and every edge of the window be seen, on every screen that it can show?

use super::{OF_LINES, OF_TEXT, PIXELS_PER_POINT, Seen, Word, assert_none, edges};
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Color32, Key, Rect, Theme, Vec2, vec2};
use egui_kittest::kittest::NodeT;
use layshaft::project::View;

/// The window, in points.
const SIZE: Vec2 = vec2(1000.0, 700.0);

/// What is done to a fresh window until it shows what is to be looked at.
type Way = fn(&mut Window);

/// Every screen, with the way to it.
const SCREENS: [(&str, Way); 33] = [
    ("the start", |_| {}),
    ("a new project", |window| window.ctrl(Key::N)),
    ("a row of the table that is pointed at", |window| {
        let row = window.names(Role::Row).swap_remove(2);
        let at = window.get(Role::Row, &row).rect().left_center();
        window.rest_at(at + vec2(30.0, 0.0));
    }),
    ("a gear that is pointed at", |window| {
        // The top gear of the first set reaches 157 km/h of 200 at the redline.
        let plot = window.plot();
        let share = vec2(0.5, -0.5 * 200.0 / 157.0);
        window.rest_at(plot.left_bottom() + plot.size() * share);
        assert!(window.app().pointed().is_some());
    }),
    ("a shift point that is held", |window| {
        let at = window.handle_at("2", "3");
        window.hold(at, at + vec2(0.0, 40.0));
    }),
    ("fields that do not read, and an empty one", |window| {
        window.type_in("Redline, rpm", "x");
        window.type_in("Tyre", "y");
        window.type_in("Idle", "");
        window.key(Key::Enter);
        window.pause();
    }),
    ("a folded card in which a field does not read", |window| {
        window.type_in("Ratio of gear 1, set 2", "x");
        window.open_card(1);
    }),
    ("a folded heading in focus", |window| {
        window.key(Key::F6);
        window.key(Key::Enter);
    }),
    ("a row of the table in focus", |window| {
        for key in [Key::F6, Key::F6, Key::F6, Key::F6, Key::Tab] {
            window.key(key);
        }
    }),
    ("a field with its text selected", |window| {
        window.enter_field("Tyre");
    }),
    ("a wrong field with its text selected", |window| {
        window.type_in("Tyre", "y");
        window.pause();
        window.ctrl(Key::A);
    }),
    ("the tables side by side", |window| {
        window.click("Side by side");
    }),
    ("an open menu", |window| {
        window.click("Edit");
        window.move_onto(Role::Button, "Paste gears…");
    }),
    ("an open menu that is gone through by key", |window| {
        window.click("File");
        window.key(Key::ArrowDown);
        assert_eq!(window.focused(), "New");
    }),
    ("the menu of a set", |window| {
        window.invoke("Set 2 menu");
    }),
    ("a torque curve with a point in focus", |window| {
        unfold(window, "Vehicle");
        unfold(window, "Engine: ");
        window.get(Role::Slider, "Torque at 2250 rpm").focus();
        window.settle();
    }),
    ("the points of a torque curve in their table", |window| {
        unfold(window, "Vehicle");
        unfold(window, "Engine: ");
        unfold(window, "11 points");
        window.fill("Torque of point 2", "x");
        window.pause();
    }),
    ("headings under which a field does not read", |window| {
        unfold(window, "Engine: ");
        window.fill("Capacity, L", "x");
        unfold(window, "Engine");
    }),
    ("the page of the workshop without a job", |window| {
        window.ctrl(Key::Num6);
    }),
    (
        "the plan of what changes with a price that does not read",
        |window| {
            window.ctrl(Key::Num6);
            window.click("Plan what changes");
            window.pause();
            window.type_in("Price of mounts, Same box, taller final drive", "x");
            window.pause();
        },
    ),
    (
        "a job of the bench with its answer and a warning",
        |window| {
            window.ctrl(Key::Num6);
            window.click("Shim for end play or preload");
            window.pause();
            window.fill("Trial shim, mm", "0.65");
            window.fill("Play, every reading, mm", "0.30 0.35 0.29");
            window.fill("Wanted setting", "preload 0.15 to 0.20");
            window.fill("Readings may differ by, mm", "0.01");
            window.type_in("Dial shows, mm", "fine");
            window.pause();
        },
    ),
    ("an engine of a set's own", |window| {
        window.click("Give it its own engine, set 2");
        unfold(window, "Efficiency: ");
    }),
    ("the fields of the road checks", |window| {
        window.ctrl(Key::Num5);
        unfold(window, "Vehicle");
        for heading in ["Speed signal: ", "Limits: ", "Second driven axle: "] {
            unfold(window, heading);
        }
        window.fill("Angle drive", "0.6");
        window.fill("Meter, per km", "625");
        window.fill("Odometer, %", "x");
        window.pause();
    }),
    ("what is checked of a set, with findings", |window| {
        window.ctrl(Key::Num5);
        unfold(window, "Second driven axle: ");
        window.fill("Final drive", "4.1");
        unfold(window, "Checks of this set: ");
        window.choose("Signal taken, set 2", Role::RadioButton, "nowhere");
    }),
    ("the write-up", |window| {
        window.ctrl(Key::E);
    }),
    ("pasted gears with remarks", |window| {
        window.ctrl_shift(Key::V);
        window.type_text("1st 3.5\n2nd 2.0\nnonsense\n3rd 1.x");
    }),
    ("a wish with what can be had", |window| {
        finding(window, "Find for a wish…");
        window.type_text("2400");
        let list = "Final drives that can be had";
        window.get(Role::MultilineTextInput, list).focus();
        window.settle();
        window.type_text("3.7 4.1 x");
    }),
    ("a wish that does not read", |window| {
        finding(window, "Find for a wish…");
        window.type_text("x");
    }),
    ("tooth pairs", |window| {
        finding(window, "Find a tooth pair…");
        window.type_in("Within, %", "3");
        window.type_in("Helix angle, °", "x");
        let row = window.names(Role::ListBoxOption).swap_remove(2);
        window.move_onto(Role::ListBoxOption, &row);
    }),
    ("steps that are laid out, one in focus", |window| {
        finding(window, "Fill the steps…");
        window.get(Role::Slider, "Step 2→3").focus();
        window.settle();
        window.key(Key::ArrowUp);
    }),
    ("what is fitted, counted", |window| {
        finding(window, "What is fitted…");
        window.type_in("Turns of the engine", "22.6 ± 0.1");
        window.type_in("Turns of the free wheel", "10");
    }),
    ("help", |window| {
        window.key(Key::F1);
    }),
    ("a question", |window| {
        window.fill("Title", "changed");
        window.ctrl(Key::N);
    }),
];

/// Opens a dialog by the words of its command.
fn finding(window: &mut Window, words: &str) {
    window.ctrl(Key::K);
    window.type_text(words);
    window.key(Key::Enter);
}

/// Folds or unfolds what stands under a heading.
fn unfold(window: &mut Window, heading: &str) {
    let mut names = window.names(Role::DisclosureTriangle).into_iter();
    let name = names.find(|name| name.starts_with(heading)).unwrap();
    window.click_on(Role::DisclosureTriangle, &name);
    window.pause();
}

/// Every screen of the window in a theme, as it is painted.
fn each(theme: Theme, mut look: impl FnMut(&str, &Window)) {
    for (name, way) in SCREENS {
        let mut window = opened(theme);
        way(&mut window);
        look(&format!("{name}, {theme:?}"), &window);
    }
    // Views that come later have a button of their name in the row above the diagram.
    for view in View::ALL {
        let mut window = opened(theme);
        if window.look_at(view) {
            look(&format!("the view {}, {theme:?}", view.name()), &window);
        }
    }
}

/// A window in which nothing fades: what is scrolled out of view fades at the edge, on its way.
fn opened(theme: Theme) -> Window {
    let mut window = Opening::on(camper_van())
        .sized(SIZE.x, SIZE.y)
        .in_theme(theme)
        .open();
    window.harness.ctx.all_styles_mut(|style| {
        style.spacing.scroll.fade.strength = 0.0;
    });
    window.harness.set_pixels_per_point(PIXELS_PER_POINT);
    window.settle();
    // Else the screen keeps its pixels, and has fewer points.
    window.harness.set_size(SIZE);
    window.settle();
    assert_eq!(window.harness.ctx.content_rect().size(), SIZE);
    window
}

/// The last frame of a window.
fn seen(window: &Window) -> Seen {
    let ctx = &window.harness.ctx;
    let shapes = &window.harness.output().shapes;
    Seen::of(ctx, shapes, ctx.content_rect().size(), Color32::TRANSPARENT)
}

/// Where what is disabled stands.
fn disabled(window: &Window) -> Vec<Rect> {
    let nodes = window.nodes();
    let disabled = nodes.filter(|node| node.accesskit_node().is_disabled());
    disabled.map(|node| node.rect()).collect()
}

#[track_caller]
fn all_can_be_seen_in(theme: Theme) {
    let mut problems = Vec::new();
    let roles = [Role::TextInput, Role::CheckBox, Role::RadioButton];
    let mut counts = roles.map(|role| (role, 0));
    each(theme, |what, window| {
        let (seen, disabled) = (seen(window), disabled(window));
        assert!(seen.words.len() > 10, "{what}");
        let wanted = |word: &Word| {
            let is_in = |rect: &Rect| rect.contains(word.rect.center());
            if disabled.iter().any(is_in) {
                OF_LINES
            } else {
                OF_TEXT
            }
        };
        problems.extend(seen.too_faint(what, wanted));
        problems.extend(edges::problems_in(what, window, &seen, &mut counts));
    });
    assert_none(&problems);
    assert!(counts.iter().all(|(_, count)| *count > 10), "{counts:?}");
}

#[test]
fn every_word_and_every_edge_of_the_light_window_can_be_seen() {
    all_can_be_seen_in(Theme::Light);
}

#[test]
fn every_word_and_every_edge_of_the_dark_window_can_be_seen() {
    all_can_be_seen_in(Theme::Dark);
}
