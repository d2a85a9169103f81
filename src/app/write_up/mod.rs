//! The write-up window: what others will see, the choices about it, and the ways out.

mod choices;
mod giving;
mod preview;

pub(super) use preview::Preview;

use super::desk::Desk;
use super::focus::{FocusMap, Pane};
use super::form::{Form, remark};
use crate::project::PageForm;
use egui::{Context, Image, ScrollArea, Ui, Vec2, Window};

/// What the choices take beside the preview, in points.
const CHOICES_WIDTH: f32 = 230.0;

/// Shows the window; closing it is a command like opening it.
pub(super) fn write_up_ui(ctx: &Context, desk: &Desk, preview: &mut Preview, form: &mut Form<'_>) {
    preview.follow(ctx, desk);
    let mut is_open = true;
    let screen = ctx.content_rect();
    Window::new("Write-up")
        .open(&mut is_open)
        .default_size(Vec2::new(780.0, screen.height() * 0.8))
        .max_size(screen.size() - Vec2::splat(40.0))
        .default_pos(screen.min + Vec2::new(screen.width() * 0.3, 60.0))
        .show(ctx, |ui| {
            let mark = FocusMap::mark(ui);
            ui.horizontal_top(|ui| {
                ui.vertical(|ui| {
                    ui.set_width(CHOICES_WIDTH);
                    choices::choices_ui(ui, desk, form);
                    ui.separator();
                    giving::giving_ui(ui, desk, preview, form);
                });
                ui.separator();
                preview_ui(ui, preview, form);
            });
            form.focus.pane(Pane::WriteUp, mark, ui);
        });
    if !is_open {
        let close = super::commands::Command::WriteUp;
        form.actions.push(super::action::Action::Run(close));
    }
}

/// The page as it will be, scaled to the room there is.
fn preview_ui(ui: &mut Ui, preview: &Preview, form: &Form<'_>) {
    ScrollArea::vertical()
        .id_salt("preview")
        .auto_shrink(false)
        .show(ui, |ui| match preview.shown() {
            Ok(Some(texture)) => {
                let width = ui.available_width().max(100.0);
                let size = texture.size_vec2();
                let image = Image::new(texture).fit_to_exact_size(size * (width / size.x));
                ui.add(image.alt_text("The picture of the write-up"));
            }
            Ok(None) => remark(ui, "The picture is being made…", form.palette.dim_text),
            Err(problem) => remark(ui, &problem.to_string(), form.palette.error),
        });
}

/// What a form of page is called.
fn form_name(form: PageForm) -> &'static str {
    match form {
        PageForm::Picture => "Picture",
        PageForm::A4 => "Bench page, A4",
        PageForm::Letter => "Bench page, Letter",
    }
}
