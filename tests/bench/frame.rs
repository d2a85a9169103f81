//! How long does one frame of the window take? Budget: 2 ms for layout and tessellation together,
//! with three ten-speed sets at 1280 × 800; 4 ms with a view of engine and vehicle, whatever changes.

use divan::{Bencher, black_box};
use egui::{ClippedPrimitive, Context, Event, FullOutput, Key, Modifiers, PointerButton, Pos2};
use egui::{RawInput, Rect, vec2};
use layshaft::app::{Answer, App, FilePicker, Purpose, Surroundings, Wake};
use layshaft::draw::theme;
use layshaft::project::{Disk, Project, View, format};
use std::path::PathBuf;
use std::sync::Arc;

/// What the hand does from frame to frame.
#[derive(Debug, Clone, Copy)]
enum Hand {
    /// Nothing, and the pointer is elsewhere.
    Idle,
    /// Moves over the diagram.
    Moving,
    /// Drags a shift point up and down: every frame brings another document.
    Dragging,
    /// Types another redline in every frame: it changes all sets, in every view.
    Typing,
}

const HANDS: [Hand; 3] = [Hand::Idle, Hand::Moving, Hand::Dragging];

const VIEWS: [View; 7] = [
    View::Speed,
    View::Effort,
    View::Run,
    View::Revs,
    View::Distance,
    View::Cruise,
    View::Speedometer,
];

/// A file dialog that nobody opens.
struct NoPicker;

impl FilePicker for NoPicker {
    fn start(&mut self, _: Purpose, _: Option<PathBuf>, _: Wake) -> u64 {
        0
    }

    fn poll(&mut self) -> Option<Answer> {
        None
    }
}

fn three_ten_speeds() -> Project {
    format::read(include_str!("../data/three-ten-speeds.ron")).unwrap()
}

fn new_app() -> App {
    let surroundings = Surroundings {
        file_system: Arc::new(Disk),
        picker: Box::new(NoPicker),
        settings_folder: None,
        ..Surroundings::default()
    };
    App::new(three_ten_speeds(), None, surroundings)
}

fn new_context() -> Context {
    let ctx = Context::default();
    theme::apply(&ctx);
    ctx.set_theme(egui::Theme::Light);
    ctx
}

/// The window, and what its hand is doing.
struct Window {
    view: View,
    ctx: Context,
    app: App,
    hand: Hand,
    /// The middle of a handle.
    handle: Pos2,
    frames: u32,
}

impl Window {
    /// A window that has settled, with the hand at work.
    fn new(view: View, hand: Hand) -> Self {
        let mut window = Self {
            view,
            ctx: new_context(),
            app: new_app(),
            hand,
            handle: place_of("Shift point 7 to 8, "),
            frames: 0,
        };
        window.settle();
        if matches!(hand, Hand::Typing) {
            window.click(place_of("Redline, rpm"));
            let events = window.events();
            window.quiet_frame(events);
            let history = &window.app.desk().history;
            assert!(history.in_gesture(), "nothing is being typed");
        }
        let at = window.handle;
        if matches!(hand, Hand::Dragging) {
            window.quiet_frame(vec![Event::PointerMoved(at)]);
            window.quiet_frame(vec![Event::PointerButton {
                pos: at,
                button: PointerButton::Primary,
                pressed: true,
                modifiers: Modifiers::NONE,
            }]);
            window.quiet_frame(vec![Event::PointerMoved(at + vec2(0.0, 60.0))]);
            let history = &window.app.desk().history;
            assert!(history.in_gesture(), "nothing is being dragged");
        }
        window
    }

    /// Lets the window come to rest in its view.
    fn settle(&mut self) {
        for _ in 0..5 {
            self.quiet_frame(Vec::new());
        }
        for view in [self.view.with_table(), self.view] {
            if view != self.app.diagram().view {
                let at = place_in(self, view.name());
                self.click(at);
            }
        }
        assert_eq!(self.app.diagram().view, self.view);
    }

    fn click(&mut self, at: Pos2) {
        let button = |pressed| Event::PointerButton {
            pos: at,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        };
        self.quiet_frame(vec![Event::PointerMoved(at)]);
        self.quiet_frame(vec![button(true)]);
        self.quiet_frame(vec![button(false)]);
        self.quiet_frame(Vec::new());
    }

    /// What happens in the next frame.
    fn events(&mut self) -> Vec<Event> {
        self.frames += 1;
        let phase = (self.frames % 100) as f32;
        match self.hand {
            Hand::Idle => Vec::new(),
            Hand::Moving => vec![Event::PointerMoved(self.handle + vec2(phase * 3.0, phase))],
            Hand::Dragging => vec![Event::PointerMoved(self.handle + vec2(0.0, phase))],
            Hand::Typing => vec![
                Event::Key {
                    key: Key::A,
                    physical_key: None,
                    pressed: true,
                    repeat: false,
                    modifiers: Modifiers::COMMAND,
                },
                Event::Text(format!("{}", 2100 + self.frames % 100)),
            ],
        }
    }

    /// Lays a frame out.
    fn layout(&mut self, events: Vec<Event>) -> FullOutput {
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, vec2(1280.0, 800.0))),
            time: Some(f64::from(self.frames) / 60.0),
            events,
            ..RawInput::default()
        };
        let app = &mut self.app;
        let mut output = self.ctx.run_ui(input, |ui| app.frame_ui(ui));
        // The graphics card takes these; here nobody does.
        output.textures_delta.set.clear();
        output.textures_delta.free.clear();
        output
    }

    fn quiet_frame(&mut self, events: Vec<Event>) {
        drop(self.layout(events));
    }

    fn tessellate(&self, output: FullOutput) -> Vec<ClippedPrimitive> {
        self.ctx.tessellate(output.shapes, output.pixels_per_point)
    }
}

/// The middle of what has a name that begins like this, in a window that is open.
fn place_in(window: &mut Window, name: &str) -> Pos2 {
    window.ctx.enable_accesskit();
    window.quiet_frame(Vec::new());
    let output = window.layout(Vec::new());
    window.ctx.disable_accesskit();
    let update = output.platform_output.accesskit_update.unwrap();
    let mut nodes = update.nodes.iter().map(|(_, node)| node);
    let node = nodes.find(|node| node.label().is_some_and(|label| label.starts_with(name)));
    let bounds = node.unwrap().bounds().unwrap();
    let middle = |a: f64, b: f64| f64::midpoint(a, b);
    #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
    let place = |value: f64| value as f32;
    Pos2::new(
        place(middle(bounds.x0, bounds.x1)),
        place(middle(bounds.y0, bounds.y1)),
    )
}

/// The same in a window of its own, on the diagram of engine speeds.
fn place_of(name: &str) -> Pos2 {
    let mut window = Window {
        view: View::Speed,
        ctx: new_context(),
        app: new_app(),
        hand: Hand::Idle,
        handle: Pos2::ZERO,
        frames: 0,
    };
    place_in(&mut window, name)
}

#[divan::bench(args = HANDS)]
fn layout_and_tessellation(bencher: Bencher<'_, '_>, hand: Hand) {
    let mut window = Window::new(View::Speed, hand);
    bencher.bench_local(|| {
        let events = window.events();
        let output = window.layout(events);
        black_box(window.tessellate(output))
    });
}

#[divan::bench(args = VIEWS)]
fn view_while_typing(bencher: Bencher<'_, '_>, view: View) {
    let mut window = Window::new(view, Hand::Typing);
    bencher.bench_local(|| {
        let events = window.events();
        let output = window.layout(events);
        black_box(window.tessellate(output))
    });
}

#[divan::bench(args = VIEWS)]
fn view_under_the_pointer(bencher: Bencher<'_, '_>, view: View) {
    let mut window = Window::new(view, Hand::Moving);
    bencher.bench_local(|| {
        let events = window.events();
        let output = window.layout(events);
        black_box(window.tessellate(output))
    });
}

#[divan::bench(args = HANDS)]
fn layout(bencher: Bencher<'_, '_>, hand: Hand) {
    let mut window = Window::new(View::Speed, hand);
    bencher.bench_local(|| {
        let events = window.events();
        black_box(window.layout(events))
    });
}

#[divan::bench(args = HANDS)]
fn tessellation(bencher: Bencher<'_, '_>, hand: Hand) {
    let mut window = Window::new(View::Speed, hand);
    let events = window.events();
    let output = window.layout(events);
    bencher
        .with_inputs(|| output.clone())
        .bench_local_values(|output| black_box(window.tessellate(output)));
}
