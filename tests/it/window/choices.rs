//! Is a choice among a few made by keys alone, beginning with what holds?

use crate::support::window::Window;
use egui::Key;
use egui::accesskit::Role;
use layshaft::workshop::JobKind;

/// The options of "Where the shim sits" in the order of the menu.
fn options(window: &Window) -> Vec<String> {
    window.names(Role::RadioButton)
}

#[test]
fn what_holds_has_the_focus_when_a_choice_is_opened_by_key() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::Num6);
    window.click(JobKind::Shim.words());
    window.pause();
    for next in [1, 0] {
        window.get(Role::Button, "Where the shim sits").focus();
        window.settle();
        window.key(Key::Enter);
        let options = options(&window);
        assert_eq!(options.len(), 2, "{options:?}");
        let holds = window.focused();
        assert_eq!(holds, options[1 - next], "what holds is where one begins");
        window.key(if next == 1 {
            Key::ArrowDown
        } else {
            Key::ArrowUp
        });
        assert_eq!(window.focused(), options[next]);
        window.key(Key::Enter);
        assert_eq!(window.focused(), "Where the shim sits");
    }
    assert_eq!(window.undo_steps(), 3);
}
