//! Does the window survive hands that do not know what they want?

use super::SECOND;
use crate::support::window::{Opening, Window, camper_van};
use egui::{Event, Key, Modifiers, PointerButton, Pos2};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

/// Something that a hand can do; places are shares of the plot's size.
#[derive(Debug, Clone)]
enum Doing {
    Move(f32, f32),
    ToHandle(usize),
    Press,
    Release,
    Leave,
    OtherWindow,
    Wheel(f32),
    Pinch(f32),
    Key(Modifiers, Key),
}

fn doing() -> impl Strategy<Value = Doing> {
    let keys = vec![
        (Modifiers::NONE, Key::ArrowUp),
        (Modifiers::SHIFT, Key::ArrowDown),
        (Modifiers::NONE, Key::Escape),
        (Modifiers::NONE, Key::Enter),
        (Modifiers::NONE, Key::Tab),
        (Modifiers::NONE, Key::Home),
        (Modifiers::COMMAND, Key::Z),
        (Modifiers::COMMAND, Key::Y),
        (Modifiers::COMMAND, Key::J),
        (Modifiers::COMMAND, Key::U),
        (Modifiers::COMMAND, Key::D),
    ];
    prop_oneof![
        3 => (-0.1f32..1.1, -0.1f32..1.1).prop_map(|(x, y)| Doing::Move(x, y)),
        3 => (0_usize..6).prop_map(Doing::ToHandle),
        3 => Just(Doing::Press),
        3 => Just(Doing::Release),
        1 => Just(Doing::Leave),
        1 => Just(Doing::OtherWindow),
        1 => (-300.0f32..300.0).prop_map(Doing::Wheel),
        1 => (0.5f32..2.0).prop_map(Doing::Pinch),
        4 => select(keys).prop_map(|(modifiers, key)| Doing::Key(modifiers, key)),
    ]
}

fn at(window: &Window, x: f32, y: f32) -> Pos2 {
    let plot = window.plot();
    plot.min + plot.size() * egui::vec2(x, y)
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    }
}

fn event(window: &Window, doing: &Doing, pointer: &mut Pos2) -> Event {
    match *doing {
        Doing::Move(x, y) => {
            *pointer = at(window, x, y);
            Event::PointerMoved(*pointer)
        }
        Doing::ToHandle(i) => {
            let handles = window.handles();
            if let Some(handle) = handles.get(i % handles.len().max(1)) {
                *pointer = handle.rect().center();
            }
            Event::PointerMoved(*pointer)
        }
        Doing::Press => button(*pointer, true),
        Doing::Release => button(*pointer, false),
        Doing::Leave => Event::PointerGone,
        Doing::OtherWindow => Event::WindowFocused(false),
        Doing::Wheel(points) => Event::MouseWheel {
            unit: egui::MouseWheelUnit::Point,
            delta: egui::vec2(0.0, points),
            phase: egui::TouchPhase::Move,
            modifiers: Modifiers::NONE,
            source: egui::MouseWheelSource::Wheel,
        },
        Doing::Pinch(factor) => Event::Zoom(factor),
        Doing::Key(modifiers, key) => Event::Key {
            key,
            physical_key: None,
            pressed: true,
            repeat: false,
            modifiers,
        },
    }
}

fn assert_sound(window: &Window) {
    let desk = window.app().desk();
    let redline = desk.project().engine.redline.rpm();
    for handle in &window.app().diagram().handles {
        assert!(handle.shift_rpm() >= 800.0 && handle.shift_rpm() <= redline);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn shift_points_stay_in_range_and_all_can_be_taken_back(doings in vec(doing(), 1..40)) {
        let mut window = Opening::on(camper_van()).small().open();
        let start = window.project().clone();
        let mut pointer = at(&window, 0.5, 0.5);
        for doing in &doings {
            let event = event(&window, doing, &mut pointer);
            let modifiers = match &event {
                Event::Key { modifiers, .. } => *modifiers,
                _ => Modifiers::NONE,
            };
            window.harness.event_modifiers(event, modifiers);
            window.harness.step();
            assert_sound(&window);
        }
        // Let go of everything; then nothing is left open.
        window.event(button(pointer, false));
        window.key(Key::Enter);
        window.key(Key::Escape);
        window.settle();
        prop_assert!(window.shifts(SECOND.min(window.all_shifts().len() - 1)).len() >= 4);
        let mut history = window.app().desk().history.clone();
        prop_assert!(!history.in_gesture(), "a gesture was left open");
        while history.undoable().is_some() {
            history.undo();
        }
        prop_assert_eq!(history.project(), &start);
    }
}
