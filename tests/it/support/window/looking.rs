//! What is to be seen in a window, by role and name.

use super::Window;
use egui::accesskit::{Role, Toggled};
use egui::{Pos2, Rect, ViewportCommand, ViewportId};
use egui_kittest::Node;
use egui_kittest::kittest::{NodeT, Queryable};
use layshaft::chart::Range;
use layshaft::gearing::EngineSpeed;
use layshaft::project::Candidate;
use std::time::Duration;

/// The number of an engine speed that has no decimals.
#[expect(clippy::cast_possible_truncation, reason = "30000 at most, and whole")]
fn whole_rpm(speed: EngineSpeed) -> i32 {
    let engine_rpm = speed.rpm();
    assert!(engine_rpm.fract().abs() < 1e-9, "{engine_rpm} is not whole");
    engine_rpm as i32
}

impl Window {
    // Names and words.

    pub(crate) fn nodes(&self) -> impl Iterator<Item = Node<'_>> {
        self.harness.root().children_recursive()
    }

    /// Everything of one kind with one name, from top to bottom.
    pub(crate) fn all(&self, role: Role, name: &str) -> Vec<Node<'_>> {
        let is_it = |node: &Node<'_>| {
            let node = node.accesskit_node();
            node.role() == role && node.label().as_deref() == Some(name)
        };
        self.nodes().filter(is_it).collect()
    }

    pub(crate) fn find(&self, role: Role, name: &str) -> Option<Node<'_>> {
        let found = self.all(role, name);
        assert!(
            found.len() < 2,
            "{} {role:?} are called {name}",
            found.len()
        );
        found.first().copied()
    }

    #[track_caller]
    pub(crate) fn get(&self, role: Role, name: &str) -> Node<'_> {
        let found = self.find(role, name);
        found.unwrap_or_else(|| panic!("no {role:?} is called {name}; {:#?}", self.names(role)))
    }

    #[track_caller]
    pub(crate) fn get_by_role(&self, role: Role) -> Node<'_> {
        let mut found = self.nodes().filter(|n| n.accesskit_node().role() == role);
        found.next().unwrap()
    }

    /// What everything of one kind is called.
    pub(crate) fn names(&self, role: Role) -> Vec<String> {
        let nodes = self.nodes().map(|node| node.accesskit_node());
        let nodes = nodes.filter(|node| node.role() == role);
        nodes.filter_map(|node| node.label()).collect()
    }

    /// Whether some text in the window contains `words`; the diagram told in lines is left out, for
    /// it has nearly every figure there is.
    pub(crate) fn says(&self, words: &str) -> bool {
        let holds = |text: Option<String>| text.is_some_and(|text| text.contains(words));
        let nodes = self.nodes().map(|node| node.accesskit_node());
        let mut shown = nodes.filter(|node| node.role() != Role::ListItem);
        shown.any(|node| holds(node.label()) || (node.role() == Role::Label && holds(node.value())))
    }

    /// Whether something is called exactly this.
    pub(crate) fn shows(&self, name: &str) -> bool {
        self.harness.query_all_by_label(name).next().is_some()
    }

    // Fields and buttons.

    #[track_caller]
    pub(crate) fn field(&self, name: &str) -> Node<'_> {
        self.get(Role::TextInput, name)
    }

    /// The name of the field that is typed in; empty when there is none.
    pub(crate) fn focused(&self) -> String {
        let focused = self.nodes().find(Node::is_focused);
        let label = focused.and_then(|node| node.accesskit_node().label());
        label.unwrap_or_default()
    }

    /// Whether a button that stands for a choice is the chosen one.
    #[track_caller]
    pub(crate) fn is_chosen(&self, button: &str) -> bool {
        let node = self.get(Role::Button, button).accesskit_node();
        node.toggled() == Some(Toggled::True)
    }

    /// Whether the window has so little room that it shows one part at a time.
    pub(crate) fn is_in_parts(&self) -> bool {
        self.find(Role::Button, "Vehicle and sets").is_some()
    }

    // The diagram.

    /// All handles, from left to right.
    pub(crate) fn handles(&self) -> Vec<Node<'_>> {
        let name_of = |node: &Node<'_>| node.accesskit_node().label().unwrap_or_default();
        let sliders = self.harness.query_all_by_role(Role::Slider);
        let mut handles: Vec<_> = sliders
            .filter(|node| name_of(node).starts_with("Shift point "))
            .collect();
        let left = |node: &Node<'_>| node.rect().center().x;
        handles.sort_by(|a, b| left(a).total_cmp(&left(b)));
        handles
    }

    /// The handle of the shift between two gears.
    pub(crate) fn handle(&self, from: &str, to: &str) -> Node<'_> {
        let start = format!("Shift point {from} to {to}, ");
        let name_of = |node: &Node<'_>| node.accesskit_node().label().unwrap_or_default();
        let mut found = self.handles().into_iter();
        found
            .find(|node| name_of(node).starts_with(&start))
            .unwrap_or_else(|| panic!("there is no {start}"))
    }

    pub(crate) fn handle_at(&self, from: &str, to: &str) -> Pos2 {
        self.handle(from, to).rect().center()
    }

    /// The area of the plot between its axes.
    pub(crate) fn plot(&self) -> Rect {
        self.harness.get_by_role(Role::Figure).rect()
    }

    /// The part of the diagram in view, measured by the places of the outermost handles.
    pub(crate) fn view(&self) -> Range {
        let handles = self.handles();
        let (first, last) = (&handles[0], &handles[handles.len() - 1]);
        let ends = [first, last].map(|handle| (self.value_of(handle), handle.rect().center()));
        let plot = self.plot();
        let fitted = |value: [f64; 2], at: [f32; 2], frame: [f32; 2]| {
            let [a, b] = at.map(f64::from);
            let per_point = (value[1] - value[0]) / (b - a);
            frame.map(|end| value[0] + (f64::from(end) - a) * per_point)
        };
        let [(a, at_a), (b, at_b)] = ends;
        Range {
            x: fitted([a[0], b[0]], [at_a.x, at_b.x], [plot.left(), plot.right()]),
            y: fitted([a[1], b[1]], [at_a.y, at_b.y], [plot.bottom(), plot.top()]),
        }
    }

    /// Where a road speed and an engine speed lie in the window.
    pub(crate) fn place_of(&self, speed: f64, rpm: f64) -> Pos2 {
        let (view, plot) = (self.view(), self.plot());
        let share = |value: f64, range: [f64; 2]| {
            #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
            let share = ((value - range[0]) / (range[1] - range[0])) as f32;
            share
        };
        Pos2::new(
            plot.left() + plot.width() * share(speed, view.x),
            plot.bottom() - plot.height() * share(rpm, view.y),
        )
    }

    /// Road speed and engine speed of a handle.
    fn value_of(&self, handle: &Node<'_>) -> [f64; 2] {
        let name = handle.accesskit_node().label().unwrap();
        let scene = self.app().diagram();
        let mut sets = scene.sets.iter();
        let handles = sets.find_map(|set| {
            let mut of_set = scene.handles.iter().filter(|h| h.set == set.id);
            of_set.find(|handle| handle.name(&set.name) == name)
        });
        handles.unwrap().at
    }

    // The document.

    /// The set at that place.
    pub(crate) fn set(&self, place: usize) -> &Candidate {
        self.project().sets.iter().nth(place).unwrap()
    }

    /// The ratios of a set's gears in typed order.
    pub(crate) fn ratios(&self, place: usize) -> Vec<f64> {
        let gears = self.set(place).set.gears.iter();
        gears.map(|gear| gear.ratio.value()).collect()
    }

    /// Shift points of the set at that place among the visible ones, lowest gear first.
    pub(crate) fn shifts(&self, place: usize) -> Vec<i32> {
        self.all_shifts().swap_remove(place)
    }

    /// Shift points of all visible sets.
    pub(crate) fn all_shifts(&self) -> Vec<Vec<i32>> {
        let visible = self.project().sets.iter().filter(|c| c.visible);
        let shifts = visible.map(|candidate| {
            let set = &candidate.set;
            let shifted = set.chain().take(set.chain().count() - 1);
            let whole = shifted.map(|gear| whole_rpm(set.shift_of(gear)));
            whole.collect()
        });
        shifts.collect()
    }

    /// How many steps can be taken back.
    pub(crate) fn undo_steps(&self) -> usize {
        let mut history = self.app().desk().history.clone();
        let mut steps = 0;
        while history.undoable().is_some() {
            history.undo();
            steps += 1;
        }
        steps
    }

    pub(crate) fn is_in_gesture(&self) -> bool {
        self.app().desk().history.in_gesture()
    }

    // What the program gives back.

    /// Whether the last frame asked for no other.
    pub(crate) fn is_asleep(&self) -> bool {
        let output = &self.harness.output().viewport_output;
        output[&ViewportId::ROOT].repaint_delay == Duration::MAX
    }

    /// What the program asked of the window in the last frame.
    pub(crate) fn commands(&self) -> Vec<ViewportCommand> {
        let output = &self.harness.output().viewport_output;
        output[&ViewportId::ROOT].commands.clone()
    }

    /// The text that went to the clipboard last.
    pub(crate) fn copied(&self) -> &str {
        self.clipboard.last().map_or("", String::as_str)
    }
}
