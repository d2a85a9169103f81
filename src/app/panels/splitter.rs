//! The bar between two parts of the window: dragged, or moved by arrow keys, it gives one more room.

use crate::app::focus::{FocusMap, Keeps};
use crate::app::input::pressed;
use egui::accesskit::Action as Request;
use egui::{CursorIcon, Event, Id, Key, Rect, Role, Sense, Stroke, Ui, WidgetInfo, pos2};

/// How far a key moves a bar, in points.
const KEY_STEP: f32 = 20.0;

/// How near the pointer must come, in points.
const REACH: f32 = 4.0;

/// On which side of the part that it resizes does the bar stand?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Side {
    Right,
    Top,
}

/// Shows the bar at a side of a part; by how many points the part is to grow.
pub(in crate::app) fn splitter_ui(
    ui: &Ui,
    focus: &mut FocusMap,
    part: Rect,
    side: Side,
    name: &str,
) -> Option<f32> {
    let id = Id::unique(("splitter", name));
    let (rect, cursor, keeps) = match side {
        Side::Right => {
            let x = part.right();
            let rect =
                Rect::from_min_max(pos2(x - REACH, part.top()), pos2(x + REACH, part.bottom()));
            (rect, CursorIcon::ResizeHorizontal, Keeps::Level)
        }
        Side::Top => {
            let y = part.top();
            let rect =
                Rect::from_min_max(pos2(part.left(), y - REACH), pos2(part.right(), y + REACH));
            (rect, CursorIcon::ResizeVertical, Keeps::Upright)
        }
    };
    let response = ui
        .interact(rect, id, Sense::drag())
        .on_hover_and_drag_cursor(cursor);
    focus.announce_alone(id, keeps);
    response.widget_info(|| WidgetInfo::labeled(Role::Splitter, true, name));
    ui.accesskit_node_builder(id, |node| {
        node.add_action(Request::Increment);
        node.add_action(Request::Decrement);
    });
    if response.hovered() || response.dragged() {
        let stroke: Stroke = ui.style().interact(&response).fg_stroke;
        match side {
            Side::Right => ui.painter().vline(rect.center().x, rect.y_range(), stroke),
            Side::Top => ui.painter().hline(rect.x_range(), rect.center().y, stroke),
        };
    }
    let dragged = match side {
        Side::Right => response.drag_delta().x,
        Side::Top => -response.drag_delta().y,
    };
    let steps = asked_steps(ui, id, side, response.has_focus());
    let growth = dragged + steps * KEY_STEP;
    (growth != 0.0).then_some(growth)
}

/// How many steps keys and those who cannot see the bar ask for.
fn asked_steps(ui: &Ui, id: Id, side: Side, has_focus: bool) -> f32 {
    let [more, less] = match side {
        Side::Right => [Key::ArrowRight, Key::ArrowLeft],
        Side::Top => [Key::ArrowUp, Key::ArrowDown],
    };
    // Behind a dialog nothing is moved.
    let is_in_reach = ui.is_enabled();
    ui.input(|i| {
        let presses = |wanted: Key| {
            let is_it = |event: &&Event| pressed(event).is_some_and(|(key, _)| key == wanted);
            i.events.iter().filter(is_it).count()
        };
        let by_key = if has_focus {
            presses(more) as f32 - presses(less) as f32
        } else {
            0.0
        };
        let asked = |request| i.num_accesskit_action_requests(id, request) as f32;
        let by_request = if is_in_reach {
            asked(Request::Increment) - asked(Request::Decrement)
        } else {
            0.0
        };
        by_key + by_request
    })
}
