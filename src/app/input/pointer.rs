//! Does the pointer say something in this frame, or does it only rest where it was left?

use egui::{Event, Ui};

/// Whether the pointer was moved, pressed, turned or taken away in this frame: a resting one must not
/// overrule the keys.
pub(in crate::app) fn is_told_by_pointer(ui: &Ui) -> bool {
    let is_of_pointer = |event: &Event| {
        matches!(
            event,
            Event::PointerMoved(_)
                | Event::PointerButton { .. }
                | Event::PointerGone
                | Event::MouseWheel { .. }
                | Event::Touch { .. }
        )
    };
    ui.input(|i| i.events.iter().any(is_of_pointer))
}
