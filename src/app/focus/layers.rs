//! What was shown in which layer, and which part of it has the focus?

use egui::{Context, Id, LayerId, Ui};

/// The layer in which something was shown in the last frame.
pub(in crate::app) fn layer_of(ctx: &Context, id: Id) -> Option<LayerId> {
    let order = ctx.viewport(|v| v.prev_pass.widgets.order(id));
    order.map(|(layer, _)| layer)
}

/// Gives the focus to the first part of a menu whose contents have just been laid out; whether there
/// is one. A menu that is only being measured has none yet.
pub(in crate::app) fn enter(ui: &Ui) -> bool {
    let first = ui.viewport(|v| {
        let mut parts = v.this_pass.widgets.get_layer(ui.layer_id());
        let first = parts.find(|part| part.enabled && part.sense.is_focusable());
        first.map(|part| part.id)
    });
    let first = first.filter(|_| !ui.is_sizing_pass());
    if let Some(first) = first {
        ui.memory_mut(|m| m.request_focus(first));
    }
    first.is_some()
}

/// What had the focus when the last frame ended, though Esc has taken it in this one.
pub(in crate::app) fn had_focus(ctx: &Context) -> Option<Id> {
    let all: Vec<Id> = ctx.viewport(|v| {
        let layers = v.prev_pass.widgets.layers();
        layers
            .flat_map(|(_, parts)| parts.iter().map(|part| part.id))
            .collect()
    });
    ctx.memory(|m| all.into_iter().find(|id| m.had_focus_last_frame(*id)))
}
