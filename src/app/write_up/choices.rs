//! What the page shows: form, width, looks, sets, table, note.

use super::form_name;
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::drafts::CellId;
use crate::app::form::{Field, Form, remark};
use crate::app::heard::describe;
use crate::gearing::parse_decimal;
use crate::project::{Edit, PageForm, PictureWidth, WriteUp};
use egui::{Response, Ui};

/// Shows the choices; all but the form of page, which is only looked at, are kept with the project.
/// Returns the first.
pub(super) fn choices_ui(ui: &mut Ui, desk: &Desk, form: &mut Form<'_>) -> Response {
    let present = &desk.project().write_up;
    let mut wanted = present.clone();
    let [first, others @ ..] = PageForm::ALL;
    let mut page_form = desk.page_form;
    let first = ui.radio_value(&mut page_form, first, form_name(first));
    for page in others {
        ui.radio_value(&mut page_form, page, form_name(page));
    }
    if page_form != desk.page_form {
        form.actions.push(Action::PageForm(page_form));
    }
    ui.add_space(4.0);
    let is_picture = page_form == PageForm::Picture;
    ui.add_enabled_ui(is_picture, |ui| {
        ui.horizontal(|ui| {
            for (is_dark, name) in [(false, "light"), (true, "dark")] {
                let choice = ui.radio_value(&mut wanted.is_dark, is_dark, name);
                describe(&choice, "The looks of the picture");
            }
        });
        ui.checkbox(&mut wanted.with_table, "with the table");
    });
    ui.checkbox(&mut wanted.with_note, "with the note");
    sets_ui(ui, desk, &mut wanted);
    if wanted != *present {
        form.edit(Edit::WriteUp(wanted));
    }
    width_ui(ui, present, form);
    first
}

fn sets_ui(ui: &mut Ui, desk: &Desk, wanted: &mut WriteUp) {
    for candidate in desk.project().sets.iter().filter(|c| c.visible) {
        let mut is_in = !wanted.left_out.contains(&candidate.id);
        let name: String = candidate.set.name.as_str().chars().take(32).collect();
        let choice = ui.checkbox(&mut is_in, name);
        describe(&choice, "Whether the write-up has this set");
        if choice.changed() {
            if is_in {
                wanted.left_out.remove(&candidate.id);
            } else {
                wanted.left_out.insert(candidate.id);
            }
        }
    }
}

fn width_ui(ui: &mut Ui, present: &WriteUp, form: &mut Form<'_>) {
    let text = present.width.px().to_string();
    let field = Field {
        id: CellId::PictureWidth,
        name: "Width, pixels",
        text: &text,
        // Said beneath: a tooltip would cover figures of the picture beside it.
        hint: "",
    };
    form.field(ui, &field, &|text| {
        let number = parse_decimal(text).map_err(|error| error.to_string())?;
        if number.fract() != 0.0 || number > 1e6 {
            return Err("a width is a whole number of pixels".to_owned());
        }
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole, not negative, at most a million"
        )]
        let width = PictureWidth::from_px(number as u64).map_err(|error| error.to_string())?;
        Ok(Edit::WriteUp(WriteUp {
            width,
            ..present.clone()
        }))
    });
    remark(ui, "800 to 4000 pixels", form.palette.dim_text);
}
