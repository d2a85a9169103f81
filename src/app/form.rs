//! The layout of fields: a name, the field, and beneath it what does not read.

use super::action::Action;
use super::drafts::{CellId, Drafts};
use super::focus::FocusMap;
use super::section::Needs;
use crate::draw::palette::Palette;
use crate::project::Edit;
use egui::{Color32, Label, Response, RichText, Ui};

/// What every form needs: drafts to type into, the focus map, colours, and a place for what it wants
/// done.
pub(super) struct Form<'a> {
    /// What is being typed.
    pub drafts: &'a mut Drafts,
    /// Where the focus can be.
    pub focus: &'a mut FocusMap,
    /// Colours.
    pub palette: &'a Palette,
    /// What is wanted.
    pub actions: &'a mut Vec<Action>,
    /// The width of the names before the fields, in points.
    pub name_width: f32,
}

/// The width of the names before the fields of a column, in points.
pub(super) const NAME_WIDTH: f32 = 96.0;

/// One field of a form.
pub(super) struct Field<'a> {
    /// Which field of the document it is.
    pub id: CellId,
    /// Its name for those who hear it; before a field in a row of its own it is shown too.
    pub name: &'a str,
    /// What the document says.
    pub text: &'a str,
    /// What stands in it while it is empty.
    pub hint: &'a str,
}

impl Form<'_> {
    /// A field in a row of its own, its name before it.
    pub(super) fn field(
        &mut self,
        ui: &mut Ui,
        field: &Field<'_>,
        read: &dyn Fn(&str) -> Result<Edit, String>,
    ) {
        self.named_field(ui, (field.name, field), read);
    }

    /// The same with a shorter name before it than those hear who cannot see where it stands.
    pub(super) fn named_field(
        &mut self,
        ui: &mut Ui,
        (shown, field): (&str, &Field<'_>),
        read: &dyn Fn(&str) -> Result<Edit, String>,
    ) {
        let problem = ui
            .horizontal(|ui| {
                self.row_name(ui, shown, field.hint);
                let width = width_to_end(ui);
                self.cell(ui, field, width, read)
            })
            .inner;
        self.problem(ui, problem.as_deref());
    }

    /// The name before what stands in a row of its own; a hint says more to those who point at it.
    pub(super) fn row_name(&self, ui: &mut Ui, name: &str, hint: &str) {
        let name = self.name(ui, name, self.name_width);
        if !hint.is_empty() {
            name.on_hover_text(hint);
        }
    }

    /// The name before a field.
    pub(super) fn name(&self, ui: &mut Ui, name: &str, width: f32) -> Response {
        let height = ui.spacing().interact_size.y;
        ui.allocate_ui_with_layout(
            egui::vec2(width, height),
            egui::Layout::left_to_right(egui::Align::Center),
            |ui| {
                ui.set_width(width);
                ui.add(Label::new(RichText::new(name).color(self.palette.dim_text)).truncate())
            },
        )
        .inner
    }

    /// Why a field does not read, beneath it.
    pub(super) fn problem(&self, ui: &mut Ui, problem: Option<&str>) {
        if let Some(problem) = problem {
            remark(ui, problem, self.palette.error);
        }
    }

    /// What a section needs: whether it is sought, and whether something was left in one of its fields that
    /// does not read.
    pub(super) fn needs(&self, is_sought: bool, is_among: impl Fn(CellId) -> bool) -> Needs {
        let has_unread = self.drafts.has_unread_in(is_among);
        Needs {
            must_be_open: is_sought,
            error: has_unread.then_some(self.palette.error),
        }
    }

    /// A step of its own.
    pub(super) fn edit(&mut self, edit: Edit) {
        self.actions.push(Action::Edit(edit));
    }
}

/// The width of a field that goes on to the end of its row, but not under the bar that scrolls.
pub(super) fn width_to_end(ui: &Ui) -> f32 {
    (ui.available_width() - 10.0).max(60.0)
}

/// A small line of explanation.
pub(super) fn remark(ui: &mut Ui, text: &str, color: Color32) {
    ui.label(RichText::new(text).small().color(color));
}
