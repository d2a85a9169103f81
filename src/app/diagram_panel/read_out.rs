//! How do those read the diagram who cannot see it? Line by line, as a list within the figure.

use crate::chart::Scene;
use crate::draw::diagram::Drawn;
use egui::accesskit::Rect as Bounds;
use egui::{Id, Rect, Role, Ui, UiBuilder, pos2};

/// What the list is called.
const NAME: &str = "Diagram, line by line";

/// Lays the list under the figure of the plot, unseen and out of the way of Tab; nothing where
/// nobody asks for it.
pub(super) fn list_ui(ui: &mut Ui, scene: &Scene, drawn: &Drawn) {
    let figure = drawn.response.id;
    if !ui.has_accesskit_node(figure) {
        return;
    }
    let frame = *drawn.transform.frame();
    let lines = scene.read_out();
    let list = UiBuilder::new()
        .scope_id(Id::unique("diagram, line by line"))
        .max_rect(frame)
        .accessibility_parent(figure)
        .accessibility_role(Role::List)
        .accessibility_label(NAME);
    let mut list = ui.new_child(list);
    say_place(&list, frame);
    let count = lines.len();
    for (i, line) in lines.into_iter().enumerate() {
        let top = frame.top() + frame.height() * i as f32 / count as f32;
        let bottom = frame.top() + frame.height() * (i + 1) as f32 / count as f32;
        let row = Rect::from_min_max(pos2(frame.left(), top), pos2(frame.right(), bottom));
        let item = UiBuilder::new()
            .id_salt(i)
            .max_rect(row)
            .accessibility_role(Role::ListItem)
            .accessibility_label(line);
        let item = list.new_child(item);
        say_place(&item, row);
        ui.accesskit_node_builder(item.unique_id(), |node| {
            node.set_position_in_set(i + 1);
            node.set_size_of_set(count);
        });
    }
}

/// Says where something lies that is not painted: readers frame what they speak of.
fn say_place(ui: &Ui, rect: Rect) {
    let [x0, y0, x1, y1] = [rect.left(), rect.top(), rect.right(), rect.bottom()].map(f64::from);
    ui.accesskit_node_builder(ui.unique_id(), |node| {
        node.set_bounds(Bounds { x0, y0, x1, y1 });
    });
}
