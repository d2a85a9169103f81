//! Does everything settle, fit and read in both looks, in every size, on every project?
//!
//! The harness itself fails on a missing glyph and on an input without a name.

use crate::support::window::{Opening, Window, camper_van, every_project};
use egui::accesskit::Role;
use egui::{Event, FontId, Key, Modifiers, PointerButton, Pos2, Rect, Theme};
use egui_kittest::Node;
use egui_kittest::kittest::{AccessKitNode, NodeT};
use layshaft::draw::theme::{SMALL_SIZE, TEXT_SIZE};

const SIZES: [[f32; 2]; 5] = [
    [667.0, 427.0],
    [800.0, 500.0],
    [1000.0, 640.0],
    [1280.0, 800.0],
    [2560.0, 1440.0],
];

/// How narrow the panel of the forms can be made, in points, and how wide.
const NARROW: f32 = 290.0;
const WIDE: f32 = 460.0;

/// Two rectangles may share this much, in points: strokes and rounding.
const SLACK: f32 = 1.0;

#[test]
fn every_project_settles_and_sleeps_in_every_look_and_size() {
    for (name, project) in every_project() {
        for theme in [Theme::Light, Theme::Dark] {
            for [width, height] in SIZES {
                let opening = Opening::on(project.clone()).sized(width, height);
                let mut window = opening.in_theme(theme).open();
                let revision = window.app().desk().history.revision();
                assert!(window.is_asleep(), "{name} {width} {theme:?}");
                for _ in 0..3 {
                    window.harness.step();
                    assert!(window.is_asleep(), "{name} {width} {theme:?}");
                }
                assert_eq!(window.app().desk().history.revision(), revision);
                assert!(!window.app().desk().history.is_unsaved());
            }
        }
    }
}

#[test]
fn everything_settles_in_every_zoom() {
    let mut window = Opening::on(camper_van()).open();
    for key in [Key::Equals, Key::Minus] {
        for _ in 0..12 {
            window.ctrl(key);
            assert!(window.is_asleep());
        }
    }
    window.ctrl(Key::Num0);
    assert!((window.harness.ctx.zoom_factor() - 1.0).abs() < 1e-6);
    assert_fits(&window, "zoomed back");
}

#[test]
fn the_note_ends_where_the_other_fields_of_the_vehicle_end() {
    let mut window = Opening::on(camper_van()).open();
    window.click_on(Role::DisclosureTriangle, "Date and note");
    let end = |role, name| window.get(role, name).rect().right();
    let note = end(Role::MultilineTextInput, "Note");
    assert!((note - end(Role::TextInput, "Date")).abs() < 1.0, "{note}");
}

#[test]
fn nothing_in_the_forms_overlaps_or_is_cut() {
    for (name, project) in every_project() {
        for [width, height] in SIZES {
            let mut window = Opening::on(project.clone()).sized(width, height).open();
            if window.is_in_parts() {
                window.click("Vehicle and sets");
            }
            assert_fits(&window, name);
            if height < 700.0 && !window.is_in_parts() {
                for panel_width in [NARROW, WIDE] {
                    resize(&mut window, panel_width);
                    assert_fits(&window, &format!("{name} at {panel_width}"));
                }
            }
        }
    }
}

#[test]
fn nothing_in_the_forms_overlaps_while_everything_is_open() {
    let mut window = Opening::on(camper_van()).sized(1000.0, 640.0).open();
    window.click_on(Role::DisclosureTriangle, "Date and note");
    for number in 1..=3 {
        fill_everything(&mut window, number);
    }
    window.choose("Final drive 1 menu, set 3", Role::Button, "Add final drive");
    window.fill("Ratio of gear 1, set 3", "44:29 * 49:12");
    window.fill("Ratio of reverse, set 3", "44:29 * 49:12");
    window.fill("Ratio of position 2 of stage 1, set 3", "61:25");
    window.fill("Final drive 3, set 3", "41:11");
    for (field, text) in [
        ("Tyre of set 2", "185 R 14 C"),
        ("Ratio of gear 2, set 2", "34.5:9"),
        ("Final drive, set 2", "1000:9"),
        ("Redline, rpm", "fast"),
        ("Ratio of position 2 of stage 1, set 2", "low"),
    ] {
        window.type_in(field, text);
    }
    for panel_width in [350.0, NARROW, WIDE] {
        resize(&mut window, panel_width);
        for number in 1..=3 {
            window.open_card(number);
            assert_fits(
                &window,
                &format!("everything of set {number} at {panel_width}"),
            );
        }
    }
    for form in ["overall ratios", "km/h per 1000 rpm"] {
        window.choose("Set 1 menu", Role::RadioButton, form);
        assert_fits(&window, form);
    }
}

/// Shows whatever a card can show.
fn fill_everything(window: &mut Window, set: usize) {
    window.click_on(Role::CheckBox, &format!("own tyre, set {set}"));
    window.click_on(Role::CheckBox, &format!("one for each change, set {set}"));
    window.choose(
        &format!("Add stage, set {set}"),
        Role::Button,
        "Transfer box",
    );
}

#[test]
fn menus_open_within_the_window() {
    for [width, height] in SIZES {
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        let screen = window.harness.ctx.content_rect().expand(SLACK);
        let menus = window.names(Role::Button).into_iter();
        let menus: Vec<String> = menus.filter(|name| name.contains(" menu")).collect();
        for menu in ["File", "Edit", "View", "Help"]
            .into_iter()
            .map(str::to_owned)
            .chain(menus)
        {
            let before = window.names(Role::Button);
            window.click(&menu);
            let mut opened = 0;
            for node in window.nodes().filter(|n| role(n) == Role::Button) {
                let name = node.accesskit_node().label().unwrap_or_default();
                if !before.contains(&name) {
                    opened += 1;
                    assert!(screen.contains_rect(node.rect()), "{menu}: {name}");
                }
            }
            assert!(opened > 0, "{menu}");
            window.key(Key::Escape);
        }
    }
}

fn role(node: &Node<'_>) -> Role {
    node.accesskit_node().role()
}

/// Drags the edge of the forms' panel until it has that width.
fn resize(window: &mut Window, panel_width: f32) {
    let edge = window
        .get(Role::Splitter, "Width of the left column")
        .rect();
    let from = edge.center();
    // Beyond the end, the panel stops there.
    let to = Pos2::new(panel_width, from.y);
    let button = |pos, pressed| Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    };
    window.event(Event::PointerMoved(from));
    window.event(button(from, true));
    window.event(Event::PointerMoved(to));
    window.event(button(to, false));
    window.event(Event::PointerMoved(Pos2::new(600.0, 10.0)));
    window.settle();
    let width = panel(window).width();
    assert!((width - panel_width).abs() < 12.0, "{width}");
}

/// The place of the forms, as wide as their panel and as high as what is in it.
fn panel(window: &Window) -> Rect {
    let edge = window.find(Role::Splitter, "Width of the left column");
    let screen = window.harness.ctx.content_rect();
    // Where the forms are alone, they have the whole width.
    let right = edge.map_or_else(|| screen.right(), |edge| edge.rect().center().x);
    Rect::from_x_y_ranges(0.0..=right, f32::NEG_INFINITY..=f32::INFINITY)
}

/// Something in the forms that must stand clear of everything else.
struct Part {
    role: Role,
    text: String,
    rect: Rect,
}

/// All parts of the forms.
fn parts(window: &Window) -> Vec<Part> {
    let pane = |node: &Node<'_>| {
        let ancestors = std::iter::successors(Some(node.accesskit_node()), AccessKitNode::parent);
        let mut panes = ancestors.filter(|node| node.role() == Role::Pane);
        panes.next().map(|pane| pane.id())
    };
    let forms = pane(&window.field("Tyre"));
    let all = window.nodes().filter(|node| pane(node) == forms);
    let all = all.filter(|node| {
        matches!(
            role(node),
            Role::Label
                | Role::Button
                | Role::CheckBox
                | Role::RadioButton
                | Role::TextInput
                | Role::MultilineTextInput
                | Role::DisclosureTriangle
        )
    });
    all.map(|node| {
        let (value, label) = (node.value(), node.accesskit_node().label());
        Part {
            role: role(&node),
            text: value.or(label).unwrap_or_default(),
            rect: node.rect(),
        }
    })
    .collect()
}

#[track_caller]
fn assert_fits(window: &Window, what: &str) {
    let parts = parts(window);
    assert!(parts.len() > 20);
    let mut problems = Vec::new();
    let panel = panel(window).expand(SLACK);
    for (at, part) in parts.iter().enumerate() {
        let Part { text, rect, .. } = part;
        if rect.left() < panel.left() || rect.right() > panel.right() {
            problems.push(format!("\"{text}\" leaves the panel: {rect:?}"));
        }
        let shrunk = rect.shrink(SLACK / 2.0);
        for other in &parts[at + 1..] {
            if shrunk.intersects(other.rect.shrink(SLACK / 2.0)) {
                let Part {
                    text: other,
                    rect: there,
                    ..
                } = other;
                problems.push(format!(
                    "\"{text}\" {rect:?} lies over \"{other}\" {there:?}"
                ));
            }
        }
        if let Some(width) = cut_width(window, part) {
            problems.push(format!("\"{text}\" needs {width} but has {}", rect.width()));
        }
    }
    assert!(problems.is_empty(), "{what}:\n{}", problems.join("\n"));
}

/// How wide a text would have to be, where it is cut.
///
/// What people call their things may be longer than its field; figures may not, but for products of
/// counted teeth where the panel is narrow.
fn cut_width(window: &Window, part: &Part) -> Option<f32> {
    let name_width = 100.0;
    if part.text.contains('×') && panel(window).width() < 340.0 {
        return None;
    }
    let (size, margin) = match part.role {
        Role::Label if part.rect.height() < 1.7 * TEXT_SIZE => (SMALL_SIZE, 0.0),
        Role::TextInput if part.rect.width() < name_width => (TEXT_SIZE, 10.0),
        _ => return None,
    };
    let galley = window.harness.ctx.fonts_mut(|fonts| {
        let font = FontId::proportional(size);
        fonts.layout_no_wrap(part.text.clone(), font, egui::Color32::BLACK)
    });
    let needed = galley.size().x + margin;
    (needed > part.rect.width() + SLACK).then_some(needed)
}
