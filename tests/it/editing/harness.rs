//! How is a form used without a screen: fields found by name, typed in, looked at?

use eframe::App as _;
use egui::accesskit::{Role, Toggled};
use egui::{Event, Key, Modifiers, OutputCommand, Pos2, Rect, Vec2, ViewportId};
use egui_kittest::kittest::NodeT;
use egui_kittest::{Harness, Node};
use layshaft::app::{Answer, App, FilePicker, Purpose, Surroundings, Wake};
use layshaft::draw::theme;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Candidate, Disk, Project, format};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

/// The camper van with its three sets.
pub(super) fn camper_van() -> Project {
    EXAMPLES[0].project().unwrap()
}

/// The largest project of the test data.
pub(super) fn three_ten_speeds() -> Project {
    format::read(include_str!("../../data/three-ten-speeds.ron")).unwrap()
}

/// A dialog that nobody answers.
#[derive(Default)]
struct SilentPicker(u64);

impl FilePicker for SilentPicker {
    fn start(&mut self, _: Purpose, _: Option<PathBuf>, _: Wake) -> u64 {
        self.0 += 1;
        self.0
    }

    fn poll(&mut self) -> Option<Answer> {
        None
    }
}

/// A window to be opened.
pub(super) struct Opening {
    project: Project,
    file: Option<PathBuf>,
    settings_folder: Option<PathBuf>,
    size: Vec2,
    theme: Option<egui::Theme>,
}

impl Opening {
    /// A window of the ordinary size on a project that stands in no file.
    pub(super) fn on(project: Project) -> Self {
        Self {
            project,
            file: None,
            settings_folder: None,
            size: Vec2::new(1280.0, 800.0),
            theme: Some(egui::Theme::Light),
        }
    }

    /// The same in another size.
    pub(super) fn sized(self, width: f32, height: f32) -> Self {
        let size = Vec2::new(width, height);
        Self { size, ..self }
    }

    /// The same in one of the two looks.
    pub(super) fn in_theme(self, theme: egui::Theme) -> Self {
        let theme = Some(theme);
        Self { theme, ..self }
    }

    /// The same with the project in a file, which holds it.
    pub(super) fn in_file(self, path: &Path) -> Self {
        std::fs::write(path, format::write(&self.project).unwrap()).unwrap();
        let file = Some(path.to_owned());
        Self { file, ..self }
    }

    /// The same with settings in a folder, which decide the looks too.
    pub(super) fn with_settings(self, folder: &Path) -> Self {
        Self {
            settings_folder: Some(folder.to_owned()),
            theme: None,
            ..self
        }
    }

    /// Opens it and lets it settle.
    pub(super) fn open(self) -> Window {
        let surroundings = Surroundings {
            file_system: Arc::new(Disk),
            picker: Box::new(SilentPicker::default()),
            settings_folder: self.settings_folder,
            ..Surroundings::default()
        };
        let theme = self.theme;
        // Sixty frames a second: two clicks in a row count as a double click.
        let mut harness = Harness::builder()
            .with_size(self.size)
            .with_theme(theme.unwrap_or(egui::Theme::Dark))
            .with_step_dt(1.0 / 60.0)
            .with_max_steps(60)
            .with_context_setup(theme::apply)
            .build_eframe(|creation| {
                let app = App::new(self.project, self.file, surroundings);
                app.dress(&creation.egui_ctx);
                app
            });
        if theme.is_none() {
            // The harness has put a theme of its own over the remembered one.
            harness.state().dress(&harness.ctx);
            harness.run();
        }
        Window {
            harness,
            clipboard: Vec::new(),
            last_click: None,
        }
    }
}

/// An open window.
pub(super) struct Window {
    pub(super) harness: Harness<'static, App>,
    /// Every text that went to the clipboard.
    clipboard: Vec<String>,
    /// Where the last click was.
    last_click: Option<Pos2>,
}

impl Window {
    /// A window of the ordinary size on the camper van, in no file.
    pub(super) fn on_camper_van() -> Self {
        Opening::on(camper_van()).open()
    }

    pub(super) fn app(&self) -> &App {
        self.harness.state()
    }

    pub(super) fn project(&self) -> &Project {
        self.app().desk().project()
    }

    /// The set at that place.
    pub(super) fn set(&self, place: usize) -> &Candidate {
        self.project().sets.iter().nth(place).unwrap()
    }

    /// The ratios of a set's gears in typed order.
    pub(super) fn ratios(&self, place: usize) -> Vec<f64> {
        let gears = self.set(place).set.gears.iter();
        gears.map(|gear| gear.ratio.value()).collect()
    }

    /// Runs frames until nothing is left to be done.
    pub(super) fn settle(&mut self) {
        self.harness.run();
    }

    /// How many steps can be taken back.
    pub(super) fn undo_steps(&self) -> usize {
        let mut history = self.app().desk().history.clone();
        let mut steps = 0;
        while history.undo_label().is_some() {
            history.undo();
            steps += 1;
        }
        steps
    }

    pub(super) fn is_in_gesture(&self) -> bool {
        self.app().desk().history.in_gesture()
    }

    // What is to be seen.

    pub(super) fn nodes(&self) -> impl Iterator<Item = Node<'_>> {
        self.harness.root().children_recursive()
    }

    /// Everything of one kind with one name, from top to bottom.
    pub(super) fn all(&self, role: Role, name: &str) -> Vec<Node<'_>> {
        let is_it = |node: &Node<'_>| {
            let node = node.accesskit_node();
            node.role() == role && node.label().as_deref() == Some(name)
        };
        self.nodes().filter(is_it).collect()
    }

    pub(super) fn find(&self, role: Role, name: &str) -> Option<Node<'_>> {
        let found = self.all(role, name);
        assert!(
            found.len() < 2,
            "{} {role:?} are called {name}",
            found.len()
        );
        found.first().copied()
    }

    #[track_caller]
    pub(super) fn get(&self, role: Role, name: &str) -> Node<'_> {
        let found = self.find(role, name);
        found.unwrap_or_else(|| panic!("no {role:?} is called {name}; {:#?}", self.names(role)))
    }

    #[track_caller]
    pub(super) fn get_by_role(&self, role: Role) -> Node<'_> {
        let mut found = self.nodes().filter(|n| n.accesskit_node().role() == role);
        found.next().unwrap()
    }

    /// Whether a button that stands for a choice is the chosen one.
    #[track_caller]
    pub(super) fn is_chosen(&self, button: &str) -> bool {
        let node = self.get(Role::Button, button).accesskit_node();
        node.toggled() == Some(Toggled::True)
    }

    /// Whether the last frame asked for no other.
    pub(super) fn is_asleep(&self) -> bool {
        let output = &self.harness.output().viewport_output;
        output[&ViewportId::ROOT].repaint_delay == Duration::MAX
    }

    /// What everything of one kind is called.
    pub(super) fn names(&self, role: Role) -> Vec<String> {
        let nodes = self.nodes().map(|node| node.accesskit_node());
        let nodes = nodes.filter(|node| node.role() == role);
        nodes.filter_map(|node| node.label()).collect()
    }

    /// Whether some text in the window contains `words`.
    pub(super) fn says(&self, words: &str) -> bool {
        let holds = |text: Option<String>| text.is_some_and(|text| text.contains(words));
        self.nodes().any(|node| {
            let node = node.accesskit_node();
            holds(node.label()) || (node.role() == Role::Label && holds(node.value()))
        })
    }

    #[track_caller]
    pub(super) fn field(&self, name: &str) -> Node<'_> {
        self.get(Role::TextInput, name)
    }

    /// What stands in a field.
    #[track_caller]
    pub(super) fn text(&self, field: &str) -> String {
        self.field(field).value().unwrap_or_default()
    }

    /// The name of the field that is typed in; empty when there is none.
    pub(super) fn focused(&self) -> String {
        let focused = self.nodes().find(Node::is_focused);
        let label = focused.and_then(|node| node.accesskit_node().label());
        label.unwrap_or_default()
    }

    // What can be done.

    /// One frame with one event.
    pub(super) fn event(&mut self, event: Event) {
        self.harness.event(event);
        self.harness.step();
        self.take_copies();
    }

    fn take_copies(&mut self) {
        let commands = &self.harness.output().platform_output.commands;
        let texts = commands.iter().filter_map(|command| match command {
            OutputCommand::CopyText(text) => Some(text.clone()),
            _ => None,
        });
        self.clipboard.extend(texts);
    }

    /// The text that went to the clipboard last.
    pub(super) fn copied(&self) -> &str {
        self.clipboard.last().map_or("", String::as_str)
    }

    pub(super) fn move_to(&mut self, at: Pos2) {
        self.event(Event::PointerMoved(at));
        self.settle();
    }

    /// Clicks at a place, frame by frame.
    pub(super) fn click_at(&mut self, pos: Pos2) {
        self.press_at(pos, egui::PointerButton::Primary);
    }

    pub(super) fn secondary_click_at(&mut self, pos: Pos2) {
        self.press_at(pos, egui::PointerButton::Secondary);
    }

    /// Two clicks in one go.
    pub(super) fn click_twice_at(&mut self, pos: Pos2) {
        self.click_at(pos);
        self.last_click = None;
        self.click_at(pos);
    }

    fn press_at(&mut self, pos: Pos2, button: egui::PointerButton) {
        if self.last_click.replace(pos) == Some(pos) {
            // Else it would be a double click.
            self.harness.run_steps(25);
        }
        self.event(Event::PointerMoved(pos));
        for pressed in [true, false] {
            self.event(Event::PointerButton {
                pos,
                button,
                pressed,
                modifiers: Modifiers::NONE,
            });
        }
        self.settle();
    }

    /// Clicks something by its name, scrolling to it first.
    #[track_caller]
    pub(super) fn click_on(&mut self, role: Role, name: &str) {
        let at = self.shown(role, name).center();
        self.click_at(at);
    }

    /// Clicks a button by its name.
    #[track_caller]
    pub(super) fn click(&mut self, name: &str) {
        self.click_on(Role::Button, name);
    }

    /// Clicks the lowest of several buttons of that name.
    pub(super) fn click_lowest(&mut self, name: &str) {
        let buttons = self.all(Role::Button, name).into_iter();
        let places = buttons.map(|button| button.rect().center());
        let lowest = places.max_by(|a, b| a.y.total_cmp(&b.y)).unwrap();
        self.click_at(lowest);
    }

    /// Rests the pointer on something, until a submenu has opened.
    #[track_caller]
    pub(super) fn move_onto(&mut self, role: Role, name: &str) {
        let at = self.get(role, name).rect().center();
        self.move_to(at);
        self.harness.run_steps(60);
    }

    /// Opens a file by typing its path.
    pub(super) fn open_by_path(&mut self, path: &Path) {
        self.ctrl(Key::O);
        self.type_in("Path", &path.display().to_string());
        self.key(Key::Enter);
        assert!(
            self.app().message().starts_with("Opened"),
            "{}",
            self.app().message()
        );
    }

    /// Opens a menu and clicks something in it.
    #[track_caller]
    pub(super) fn choose(&mut self, menu: &str, role: Role, name: &str) {
        self.click(menu);
        self.click_on(role, name);
    }

    /// The place of something, scrolled into view where it is not.
    #[track_caller]
    pub(super) fn shown(&mut self, role: Role, name: &str) -> Rect {
        let screen = self
            .harness
            .ctx
            .content_rect()
            .shrink2(Vec2::new(0.0, 40.0));
        let node = self.get(role, name);
        if role == Role::Row || !screen.contains_rect(node.rect()) {
            node.scroll_to_me();
            self.settle();
        }
        self.get(role, name).rect()
    }

    pub(super) fn key(&mut self, key: Key) {
        self.key_with(Modifiers::NONE, key);
    }

    pub(super) fn key_with(&mut self, modifiers: Modifiers, key: Key) {
        if modifiers != Modifiers::NONE {
            self.event(Event::ModifiersChanged(modifiers));
        }
        for pressed in [true, false] {
            self.event(Event::Key {
                key,
                pressed,
                modifiers,
                repeat: false,
                physical_key: None,
            });
        }
        if modifiers != Modifiers::NONE {
            self.event(Event::ModifiersChanged(Modifiers::NONE));
        }
        self.settle();
    }

    pub(super) fn ctrl(&mut self, key: Key) {
        self.key_with(Modifiers::COMMAND, key);
    }

    pub(super) fn ctrl_shift(&mut self, key: Key) {
        self.key_with(Modifiers::COMMAND | Modifiers::SHIFT, key);
    }

    /// A second in which nothing is typed.
    pub(super) fn pause(&mut self) {
        self.harness.run_steps(60);
    }

    /// Clicks into a field.
    #[track_caller]
    pub(super) fn enter_field(&mut self, name: &str) {
        self.click_on(Role::TextInput, name);
        assert_eq!(self.focused(), name);
    }

    /// Frames too slow for the hand: all of that comes in the first of them.
    pub(super) fn burst(&mut self, events: Vec<Event>) {
        let ctx = self.harness.ctx.clone();
        self.harness.input_mut().events.extend(events);
        for _ in 0..20 {
            // The harness leaves out what eframe asks before each frame.
            let mut input = std::mem::take(self.harness.input_mut());
            self.harness.state_mut().raw_input_hook(&ctx, &mut input);
            *self.harness.input_mut() = input;
            self.harness.step();
        }
        self.settle();
    }

    /// Types in whatever field has the focus, character by character.
    pub(super) fn type_text(&mut self, text: &str) {
        for character in text.chars() {
            self.event(Event::Text(character.to_string()));
        }
        self.settle();
    }

    /// Goes into a field, where all is selected then, and types; does not leave it.
    #[track_caller]
    pub(super) fn type_in(&mut self, field: &str, text: &str) {
        self.enter_field(field);
        if text.is_empty() {
            self.key(Key::Delete);
        }
        self.type_text(text);
    }

    /// Types in a field and takes it with Enter.
    #[track_caller]
    pub(super) fn fill(&mut self, field: &str, text: &str) {
        self.type_in(field, text);
        self.key(Key::Enter);
    }

    /// Undo, then redo: the documents before and after the last step come back equal.
    #[track_caller]
    pub(super) fn check_step(&mut self, before: &Project) {
        let after = self.project().clone();
        assert!(after != *before, "nothing was changed");
        assert!(!self.is_in_gesture());
        self.click("Undo");
        assert!(self.project() == before, "it is not taken back whole");
        self.click("Redo");
        assert!(*self.project() == after, "it does not come back the same");
    }
}
