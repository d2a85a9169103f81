//! Has every part of the window the room it needs, in every size and on every project?

use crate::support::window::{Opening, Painted, Text, Window, camper_van, every_project};
use egui::accesskit::{Live, Role};
use egui::{Key, Rect};
use egui_kittest::Node;
use egui_kittest::kittest::NodeT;
use layshaft::project::Project;
use layshaft::project::View;

const SIZES: [[f32; 2]; 6] = [
    [667.0, 427.0],
    [800.0, 500.0],
    [1000.0, 640.0],
    [1280.0, 800.0],
    [1920.0, 1080.0],
    LARGE,
];
const LARGE: [f32; 2] = [2560.0, 1440.0];

/// The least share of the height that a diagram has beside other parts.
const DIAGRAM: f32 = 0.4;

/// How many rows of the table are seen at least.
const ROWS: usize = 3;

/// How far from the plot the figures of the level axis stand at most, in points, and those of the
/// upright one: beyond that there is the table, and the forms.
const BENEATH: f32 = 24.0;
const BESIDE: f32 = 50.0;

/// What lies between the menu and the status line.
fn between_the_bars(window: &Window) -> Rect {
    let screen = window.harness.ctx.content_rect();
    let menu = window.get(Role::Button, "File").rect();
    let status = status(window);
    Rect::from_x_y_ranges(screen.x_range(), menu.bottom()..=status.top())
}

/// The place of the message at the foot.
fn status(window: &Window) -> Rect {
    let is_it = |node: &Node<'_>| node.accesskit_node().live() == Live::Polite;
    window.nodes().find(is_it).unwrap().rect()
}

fn check_status(window: &Window, what: &str) {
    let screen = window.harness.ctx.content_rect();
    let status = status(window);
    assert!(screen.contains_rect(status), "{what}: {status:?}");
    assert!(status.height() > 10.0, "{what}: {status:?}");
    let findings = window.nodes().find(|node| {
        let node = node.accesskit_node();
        let text = node.label().or_else(|| node.value()).unwrap_or_default();
        ["findings", "finding"]
            .iter()
            .any(|end| text.ends_with(end))
    });
    let findings = findings.unwrap().rect();
    assert!(screen.contains_rect(findings), "{what}: {findings:?}");
}

fn check_diagram(window: &Window, what: &str) {
    let (plot, all) = (window.plot(), between_the_bars(window));
    let least = if window.is_in_parts() {
        // It is alone, with its legend and axis, below the names of the parts.
        0.5
    } else {
        DIAGRAM
    };
    let share = plot.height() / all.height();
    assert!(share >= least, "{what}: the diagram has {share} of {all:?}");
    assert!(all.contains_rect(plot), "{what}: {plot:?}");
    let texts = Painted::of(window).texts;
    let has_digit = |text: &str| text.contains(|c: char| c.is_ascii_digit());
    let count = |is_there: &dyn Fn(Rect) -> bool| {
        let seen = |(text, rect): &&Text| has_digit(text) && rect.height() > 8.0 && is_there(*rect);
        texts.iter().filter(seen).count()
    };
    let level = count(&|rect| {
        plot.x_range().contains(rect.center().x)
            && (0.0..BENEATH).contains(&(rect.top() - plot.bottom() + 1.0))
            && all.contains_rect(rect)
    });
    let upright = count(&|rect| {
        plot.y_range().contains(rect.center().y)
            && (0.0..BESIDE).contains(&(plot.left() - rect.right() + 1.0))
    });
    assert!(level >= 2, "{what}: {level} figures along the level axis");
    assert!(
        upright >= 2,
        "{what}: {upright} figures along the upright axis"
    );
}

/// How many rows of the table are seen whole, and how many there are.
fn rows(window: &Window) -> [usize; 2] {
    let above = window
        .get(Role::Button, "One under another")
        .rect()
        .bottom();
    let below = between_the_bars(window).bottom();
    let is_row = |node: &Node<'_>| node.accesskit_node().role() == Role::Row;
    let rows: Vec<Rect> = window
        .nodes()
        .filter(is_row)
        .map(|row| row.rect())
        .collect();
    let is_seen = |rect: &&Rect| rect.top() >= above - 0.5 && rect.bottom() <= below + 0.5;
    [rows.iter().filter(is_seen).count(), rows.len()]
}

/// Looks at every view, and at the table, of a window that is open.
fn check(window: &mut Window, what: &str) -> [usize; 2] {
    check_status(window, what);
    let is_in_parts = window.is_in_parts();
    if is_in_parts {
        window.click("Diagram");
    }
    check_diagram(window, what);
    for view in View::ALL {
        if window.look_at(view) {
            let what = format!("{what}, {}", view.name());
            check_diagram(window, &what);
            check_status(window, &what);
            if is_in_parts {
                window.click("Table");
            }
            check_rows(window, &what);
            if is_in_parts {
                window.click("Diagram");
            }
        }
    }
    window.click(View::Speed.name());
    if is_in_parts {
        window.click("Table");
        check_status(window, what);
    }
    check_rows(window, what)
}

fn check_rows(window: &Window, what: &str) -> [usize; 2] {
    let [seen, all] = rows(window);
    assert!(seen >= ROWS.min(all), "{what}: {seen} rows of {all}");
    [seen, all]
}

fn opened(project: Project, [width, height]: [f32; 2]) -> Window {
    Opening::on(project).sized(width, height).open()
}

#[test]
fn diagram_table_and_status_line_have_their_room_in_every_size() {
    for (name, project) in every_project() {
        for size in SIZES {
            let mut window = opened(project.clone(), size);
            check(&mut window, &format!("{name} at {size:?}"));
        }
    }
}

#[test]
fn they_have_it_where_all_is_twice_as_large_too() {
    for (name, project) in every_project() {
        let mut window = opened(project, [1280.0, 800.0]);
        while window.harness.ctx.zoom_factor() < 1.95 {
            window.ctrl(Key::Plus);
        }
        // Else the harness keeps its points.
        let zoom = window.harness.ctx.zoom_factor();
        window.harness.set_size(egui::vec2(1280.0, 800.0) / zoom);
        window.settle();
        let width = window.harness.ctx.content_rect().width();
        assert!((width - 1280.0 / zoom).abs() < 1.0, "{width}");
        check(&mut window, &format!("{name}, twice as large"));
        assert!(window.is_in_parts());
    }
}

#[test]
fn a_large_screen_shows_all_rows_of_three_sets() {
    let mut window = opened(camper_van(), LARGE);
    let [seen, all] = check(&mut window, "large");
    assert_eq!(seen, all);
    assert_eq!(window.project().sets.len(), 3);
}
