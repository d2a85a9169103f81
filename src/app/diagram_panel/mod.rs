//! How is the diagram lived with: seen, zoomed, pointed at, its shift points dragged?

mod at_pointer;
mod handles;
mod legend;
mod pointing;
mod read_out;
mod reading_place;

pub(super) use legend::legend_ui;

use super::action::Action;
use super::focus::{FocusMap, Keeps};
use super::input::is_told_by_pointer;
use super::view_state::{ViewState, kept_within};
use crate::chart::{Along, Range, Scene};
use crate::draw::diagram::{Drawn, Look, StepBack, diagram_ui};
use crate::draw::palette::Palette;
use crate::project::Drops;
use egui::{Role, Ui, WidgetInfo};

/// Shows the diagram with its handles and the reading at the pointer; whether the pointer is on it.
pub(super) fn diagram_panel_ui(
    ui: &mut Ui,
    scene: &Scene,
    view: &ViewState,
    palette: &Palette,
    focus: &mut FocusMap,
    actions: &mut Vec<Action>,
) -> bool {
    let range = view.ranges.of(scene.view);
    let range = range.unwrap_or_else(|| scene.whole());
    let is_busy = handles::are_dragged(ui);
    let forward = view.pointed.map_or(view.selected, |gear| gear.set);
    // Of three sets the selected one's, a baseline's too: it has the handles.
    let drops = Drops::Usual.of_shown(&scene.set_ids(), None, Some(view.selected));
    let look = Look {
        palette,
        forward: Some(forward),
        others: if is_busy || view.pointed.is_some() {
            StepBack::Far
        } else {
            StepBack::Little
        },
        gear: view.pointed,
        text_size: 12.5,
        drops: &drops,
        is_alone: false,
        // Else a pinch would move the ground under a running drag.
        interactive: !is_busy,
    };
    let drawn = diagram_ui(ui, scene, range, &look);
    drawn
        .response
        .widget_info(|| WidgetInfo::labeled(Role::Figure, true, &scene.summary));
    for (id, along) in handles::ids(scene, view.selected) {
        let keeps = match along {
            Along::X => Keeps::Level,
            Along::Y => Keeps::Upright,
        };
        focus.announce_alone(id, keeps);
    }
    focus.enter_at_first_of(handles::ids(scene, view.selected).map(|(id, _)| id));
    read_out::list_ui(ui, scene, &drawn);
    let taken = handles::handles_ui(ui, scene, view.selected, palette, &drawn, actions);
    if !is_busy {
        panned_and_zoomed(ui, scene, range, &drawn, actions);
    }
    let pointer = drawn.response.hover_pos();
    if let Some(pointer) = pointer {
        if !is_busy && is_told_by_pointer(ui) {
            pointing::point(scene, view, &drawn, pointer, actions);
        }
        let around = at_pointer::Surroundings {
            scene,
            palette,
            drawn: &drawn,
            forward,
            taken,
        };
        at_pointer::reading_ui(ui, &around, pointer);
    } else if !drawn.response.contains_pointer() {
        at_pointer::forget_place(ui);
    }
    pointer.is_some()
}

/// The range that the pointer's dragging, pinching and wheel ask for.
fn panned_and_zoomed(
    ui: &Ui,
    scene: &Scene,
    range: Range,
    drawn: &Drawn,
    actions: &mut Vec<Action>,
) {
    let mut wanted = drawn.range;
    if drawn.response.contains_pointer()
        && let Some(pointer) = ui.input(|i| i.pointer.hover_pos())
    {
        let wheel = ui.input(|i| i.smooth_scroll_delta().y);
        if wheel != 0.0 {
            let at = drawn.transform.value_from_position(pointer);
            let factor = f64::from((-wheel / 300.0).exp());
            wanted = zoomed(wanted, [at.x, at.y], factor);
        }
    }
    if drawn.response.double_clicked() {
        actions.push(Action::Range(scene.view, None));
    } else if wanted != range {
        let kept = kept_within(wanted, scene.whole());
        actions.push(Action::Range(scene.view, kept));
    }
}

/// A range `factor` times as wide and high around a point of it.
fn zoomed(range: Range, at: [f64; 2], factor: f64) -> Range {
    let around = |ends: [f64; 2], at: f64| ends.map(|end| at + (end - at) * factor);
    Range {
        x: around(range.x, at[0]),
        y: around(range.y, at[1]),
    }
}
