//! What every dialog has: a name, a role, words that are said at once, the focus, and Esc.

use egui::{Id, Key, Modal, Modifiers, Response, Role, Ui, accesskit};

/// A dialog apart from its contents.
pub(in crate::app) struct Frame<'a> {
    /// What tells it from others.
    pub(in crate::app) salt: &'static str,
    /// What it is called, for those who hear it.
    pub(in crate::app) name: &'a str,
    /// What is said with the name; empty where the contents say it.
    pub(in crate::app) description: &'a str,
    /// Whether it wants an answer before anything goes on.
    pub(in crate::app) is_question: bool,
}

/// What came of a dialog in this frame.
pub(in crate::app) struct Shown<R> {
    /// What the contents returned.
    pub(in crate::app) inner: R,
    /// Whether Esc was pressed.
    pub(in crate::app) is_left: bool,
    /// Whether something beside it was clicked.
    pub(in crate::app) is_clicked_beside: bool,
}

impl Frame<'_> {
    /// Shows the dialog over a window that is out of reach meanwhile.
    pub(in crate::app) fn show<R>(
        self,
        ctx: &egui::Context,
        contents: impl FnOnce(&mut Ui) -> R,
    ) -> Shown<R> {
        let id = Id::unique(("dialog", self.salt));
        let role = if self.is_question {
            Role::AlertDialog
        } else {
            Role::Dialog
        };
        let area = Modal::default_area(id).accessible_name(self.name);
        let modal = Modal::new(id).area(area.role(role)).show(ctx, |ui| {
            let inner = contents(ui);
            (inner, ui.min_rect())
        });
        let (inner, rect) = modal.inner;
        ctx.accesskit_node_builder(id, |node| {
            node.set_modal();
            node.set_bounds(accesskit::Rect {
                x0: rect.min.x.into(),
                y0: rect.min.y.into(),
                x1: rect.max.x.into(),
                y1: rect.max.y.into(),
            });
            if !self.description.is_empty() {
                node.set_description(self.description);
            }
        });
        Shown {
            inner,
            is_left: ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape)),
            is_clicked_beside: modal.backdrop_response.clicked(),
        }
    }
}

/// What stays free of the window around a dialog at least, in points.
const ROOM_AROUND: f32 = 48.0;

/// Makes a dialog that wide, or as wide as the window allows.
pub(in crate::app) fn set_width(ui: &mut Ui, wanted: f32) {
    let most = ui.ctx().content_rect().width() - ROOM_AROUND;
    ui.set_width(wanted.min(most));
}

/// Gives the focus to that part of a dialog while no other part has it: when the dialog opens, and
/// when the part that had the focus has gone. Whether it was given.
pub(in crate::app) fn begin_with(ui: &Ui, part: &Response) -> bool {
    let focused = ui.memory(egui::Memory::focused);
    let is_here = focused.is_some_and(|id| {
        let of = |widgets: &egui::WidgetRects| {
            let order = widgets.order(id);
            order.is_some_and(|(layer, _)| layer == ui.layer_id())
        };
        ui.viewport(|v| of(&v.prev_pass.widgets) || of(&v.this_pass.widgets))
    });
    if !is_here {
        part.request_focus();
    }
    !is_here
}

/// Lets go of the focus after an answer: whatever is asked next begins anew.
pub(in crate::app) fn begin_anew(ctx: &egui::Context) {
    ctx.memory_mut(|memory| {
        if let Some(id) = memory.focused() {
            memory.surrender_focus(id);
        }
    });
}
