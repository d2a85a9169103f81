//! Which line is which set's? A line of names above the plot says so.

use super::super::action::Action;
use super::super::view_state::ViewState;
use crate::chart::{Scene, ShownSet};
use crate::draw::palette::{Palette, dash};
use crate::draw::{bold, sample};
use egui::{CursorIcon, FontFamily, FontId, Rect, Role, Sense, Ui, Vec2, WidgetInfo};

const TEXT: f32 = 12.5;
const SWATCH: f32 = 30.0;
const GAP: f32 = 6.0;

/// Shows the name of every visible set beside its line, behind `head`; a click brings the set forward.
pub(in crate::app) fn legend_ui(
    ui: &mut Ui,
    (scene, head): (&Scene, impl FnOnce(&mut Ui, &mut Vec<Action>)),
    view: &ViewState,
    palette: &Palette,
    actions: &mut Vec<Action>,
) {
    ui.horizontal_wrapped(|ui| {
        head(ui, actions);
        ui.spacing_mut().item_spacing = Vec2::new(18.0, 0.0);
        for set in &scene.sets {
            let is_selected = set.id == view.selected;
            if name_ui(ui, set, is_selected, palette) {
                actions.push(Action::Select(set.id));
            }
        }
    });
}

/// One name; whether it was clicked.
fn name_ui(ui: &mut Ui, set: &ShownSet, is_selected: bool, palette: &Palette) -> bool {
    let family = if is_selected {
        bold()
    } else {
        FontFamily::Proportional
    };
    let font = FontId::new(TEXT, family);
    let galley = ui
        .painter()
        .layout_no_wrap(set.name.clone(), font, palette.text);
    let size = Vec2::new(SWATCH + GAP + galley.size().x, galley.size().y);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let swatch = Rect::from_min_size(rect.min, Vec2::new(SWATCH, size.y));
    sample(
        ui.painter(),
        swatch,
        palette.set(set.livery),
        dash(set.livery),
    );
    let at = rect.left_top() + Vec2::new(SWATCH + GAP, 0.0);
    ui.painter().galley(at, galley, palette.text);
    let name = format!("Bring {} forward", set.name);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, is_selected, &name));
    response.on_hover_cursor(CursorIcon::PointingHand).clicked()
}
