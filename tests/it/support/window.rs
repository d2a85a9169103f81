//! How is the whole window used without a screen: looked at by name, moved by pointer and key?

use super::memory_disk::MemoryDisk;
use super::scripted_picker::ScriptedPicker;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, PointerButton, Pos2, Rect, Vec2, ViewportCommand, ViewportId};
use egui_kittest::kittest::{NodeT, Queryable};
use egui_kittest::{Harness, Node};
use layshaft::app::{App, Surroundings};
use layshaft::chart::Range;
use layshaft::draw::theme;
use layshaft::gearing::EngineSpeed;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Project, format};
use std::path::PathBuf;
use std::sync::Arc;

/// The camper van with its three sets.
pub(crate) fn camper_van() -> Project {
    EXAMPLES[0].project().unwrap()
}

/// The largest project of the test data.
pub(crate) fn three_ten_speeds() -> Project {
    format::read(include_str!("../../data/three-ten-speeds.ron")).unwrap()
}

/// The number of an engine speed that has no decimals.
#[expect(clippy::cast_possible_truncation, reason = "30000 at most, and whole")]
fn whole_rpm(speed: EngineSpeed) -> i32 {
    let engine_rpm = speed.rpm();
    assert!(engine_rpm.fract().abs() < 1e-9, "{engine_rpm} is not whole");
    engine_rpm as i32
}

/// A window to be opened.
pub(crate) struct Opening {
    pub(crate) project: Project,
    pub(crate) file: Option<PathBuf>,
    pub(crate) size: Vec2,
    pub(crate) theme: egui::Theme,
}

impl Opening {
    /// A window of the ordinary size on a project that stands in no file.
    pub(crate) fn on(project: Project) -> Self {
        Self {
            project,
            file: None,
            size: Vec2::new(1280.0, 800.0),
            theme: egui::Theme::Light,
        }
    }

    /// The same in the smallest size that a window can have.
    pub(crate) fn small(self) -> Self {
        Self {
            size: Vec2::new(1000.0, 640.0),
            ..self
        }
    }

    /// The same with the project in a file at home, which holds it.
    pub(crate) fn in_file(self, name: &str) -> Self {
        Self {
            file: Some(MemoryDisk::path(name)),
            ..self
        }
    }

    /// Opens it and lets it settle.
    pub(crate) fn open(self) -> Window {
        let disk = Arc::new(MemoryDisk::default());
        if let Some(name) = self.file.as_deref().and_then(|path| path.file_name()) {
            disk.put(
                &name.to_string_lossy(),
                &format::write(&self.project).unwrap(),
            );
        }
        let picker = ScriptedPicker::default();
        let surroundings = Surroundings {
            file_system: Arc::<MemoryDisk>::clone(&disk),
            picker: Box::new(picker.clone()),
            settings_folder: None,
            ..Surroundings::default()
        };
        // Sixty frames a second: two clicks in a row count as a double click.
        let mut harness = Harness::builder()
            .with_size(self.size)
            .with_theme(self.theme)
            .with_step_dt(1.0 / 60.0)
            .with_max_steps(60)
            .with_context_setup(theme::apply)
            .build_eframe(|_| App::new(self.project, self.file, surroundings));
        harness.run();
        Window {
            harness,
            disk,
            picker,
        }
    }
}

/// An open window.
pub(crate) struct Window {
    pub(crate) harness: Harness<'static, App>,
    pub(crate) disk: Arc<MemoryDisk>,
    pub(crate) picker: ScriptedPicker,
}

impl Window {
    /// A window of the ordinary size on the camper van, in no file.
    pub(crate) fn on_camper_van() -> Self {
        Opening::on(camper_van()).open()
    }

    pub(crate) fn app(&self) -> &App {
        self.harness.state()
    }

    pub(crate) fn project(&self) -> &Project {
        self.app().desk().project()
    }

    /// Runs frames until nothing is left to be done.
    pub(crate) fn settle(&mut self) {
        self.harness.run();
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
        while history.undo_label().is_some() {
            history.undo();
            steps += 1;
        }
        steps
    }

    pub(crate) fn is_in_gesture(&self) -> bool {
        self.app().desk().history.in_gesture()
    }

    // What is to be seen.

    pub(crate) fn get(&self, role: Role, name: &str) -> Node<'_> {
        let is_it = |node: &egui_kittest::kittest::AccessKitNode<'_>| {
            node.role() == role && node.label().as_deref() == Some(name)
        };
        let mut found = self.nodes().filter(|node| is_it(&node.accesskit_node()));
        match (found.next(), found.next()) {
            (Some(node), None) => node,
            (None, _) => panic!("no {role:?} is called {name}"),
            _ => panic!("several {role:?} are called {name}"),
        }
    }

    pub(crate) fn nodes(&self) -> impl Iterator<Item = Node<'_>> {
        self.harness.root().children_recursive()
    }

    /// Whether some text in the window contains `words`.
    pub(crate) fn says(&self, words: &str) -> bool {
        let holds = |text: Option<String>| text.is_some_and(|text| text.contains(words));
        self.nodes().any(|node| {
            let node = node.accesskit_node();
            holds(node.label()) || holds(node.value())
        })
    }

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
        let scene = self.app().desk().diagram();
        let mut sets = scene.sets.iter();
        let handles = sets.find_map(|set| {
            let mut of_set = scene.handles.iter().filter(|h| h.set == set.id);
            of_set.find(|handle| handle.name(&set.name) == name)
        });
        handles.unwrap().at
    }

    // What can be done.

    /// One frame with one event.
    pub(crate) fn event(&mut self, event: Event) {
        self.harness.event(event);
        self.harness.step();
    }

    pub(crate) fn move_to(&mut self, at: Pos2) {
        self.event(Event::PointerMoved(at));
    }

    pub(crate) fn press(&mut self, at: Pos2) {
        self.button(at, true);
    }

    pub(crate) fn release(&mut self, at: Pos2) {
        self.button(at, false);
    }

    fn button(&mut self, pos: Pos2, pressed: bool) {
        self.event(Event::PointerButton {
            pos,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        });
    }

    /// Takes hold at one place and moves to another in a few steps, without letting go.
    pub(crate) fn hold(&mut self, from: Pos2, to: Pos2) {
        self.move_to(from);
        self.press(from);
        for share in [0.3, 0.7, 1.0] {
            self.move_to(from + (to - from) * share);
        }
    }

    /// A whole drag.
    pub(crate) fn drag(&mut self, from: Pos2, to: Pos2) {
        self.hold(from, to);
        self.release(to);
        self.settle();
    }

    pub(crate) fn click_at(&mut self, at: Pos2) {
        self.move_to(at);
        self.press(at);
        self.release(at);
        self.settle();
    }

    /// Clicks a button by its name.
    pub(crate) fn click(&mut self, name: &str) {
        self.get(Role::Button, name).click();
        self.settle();
    }

    pub(crate) fn key(&mut self, key: Key) {
        self.key_with(Modifiers::NONE, key);
    }

    pub(crate) fn key_with(&mut self, modifiers: Modifiers, key: Key) {
        self.harness.key_press_modifiers(modifiers, key);
        self.settle();
    }

    pub(crate) fn ctrl(&mut self, key: Key) {
        self.key_with(Modifiers::COMMAND, key);
    }

    pub(crate) fn ctrl_shift(&mut self, key: Key) {
        self.key_with(Modifiers::COMMAND | Modifiers::SHIFT, key);
    }

    pub(crate) fn focus_handle(&mut self, from: &str, to: &str) {
        self.handle(from, to).focus();
        self.settle();
    }

    /// Turns the wheel towards (positive) or away from the diagram.
    pub(crate) fn wheel(&mut self, at: Pos2, points: f32) {
        self.move_to(at);
        self.event(Event::MouseWheel {
            unit: egui::MouseWheelUnit::Point,
            delta: Vec2::new(0.0, points),
            phase: egui::TouchPhase::Move,
            modifiers: Modifiers::NONE,
            source: egui::MouseWheelSource::Wheel,
        });
        self.settle();
    }

    /// Replaces what stands in the field that has the focus.
    pub(crate) fn type_over(&mut self, text: &str) {
        self.ctrl(Key::A);
        self.event(Event::Text(text.to_owned()));
        self.settle();
    }

    /// The window's close button; the commands that the program gave back.
    pub(crate) fn ask_to_close(&mut self) -> Vec<ViewportCommand> {
        let viewports = &mut self.harness.input_mut().viewports;
        let root = viewports.get_mut(&ViewportId::ROOT).unwrap();
        root.events.push(egui::ViewportEvent::Close);
        self.harness.step();
        let commands = self.commands();
        self.settle();
        commands
    }

    /// What the program asked of the window in the last frame.
    pub(crate) fn commands(&self) -> Vec<ViewportCommand> {
        let output = &self.harness.output().viewport_output;
        output[&ViewportId::ROOT].commands.clone()
    }
}
