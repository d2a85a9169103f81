//! What was shown in which layer of the last frame, and which part of it can have the focus?

use egui::{Context, Id, LayerId};

/// The layer in which something was shown in the last frame.
pub(super) fn layer_of(ctx: &Context, id: Id) -> Option<LayerId> {
    let order = ctx.viewport(|v| v.prev_pass.widgets.order(id));
    order.map(|(layer, _)| layer)
}

/// The first part of a layer that can have the focus, if it was shown in the last frame.
pub(super) fn first_part_of(ctx: &Context, layer: LayerId) -> Option<Id> {
    ctx.viewport(|v| {
        let mut parts = v.prev_pass.widgets.get_layer(layer);
        let first = parts.find(|part| part.enabled && part.sense.is_focusable());
        first.map(|part| part.id)
    })
}

/// What had the focus when the last frame ended, though Esc has taken it in this one.
pub(super) fn had_focus(ctx: &Context) -> Option<Id> {
    let all: Vec<Id> = ctx.viewport(|v| {
        let layers = v.prev_pass.widgets.layers();
        layers
            .flat_map(|(_, parts)| parts.iter().map(|part| part.id))
            .collect()
    });
    ctx.memory(|m| all.into_iter().find(|id| m.had_focus_last_frame(*id)))
}
