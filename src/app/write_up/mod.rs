//! The write-up window: what others will see, the choices about it, and the ways out.

mod choices;
mod giving;
mod keys;
mod preview;
mod zoom;

use preview::Preview;
use zoom::Zoom;

use super::desk::Desk;
use super::focus::{FocusMap, Pane};
use super::form::{Form, remark};
use super::input::Scroll;
use crate::project::PageForm;
use egui::scroll_area::{DragScroll, ScrollSource};
use egui::style::ScrollAnimation;
use egui::{Context, LayerId, Response, ScrollArea, Ui, Vec2, Window};

/// What the choices take beside the preview, in points.
const CHOICES_WIDTH: f32 = 230.0;

/// The least that the preview has beside the choices; with less room it stands beneath them.
const LEAST_PREVIEW_WIDTH: f32 = 240.0;

/// What is left free of the screen around the window, in points.
const ROOM_AROUND: f32 = 40.0;

/// The write-up window, open or not.
#[derive(Debug, Default)]
pub(super) struct WriteUpWindow {
    preview: Preview,
    /// Where it was shown in the last frame, if it was.
    layer: Option<LayerId>,
    /// What the keys of this frame do to the preview.
    scroll: Scroll,
    /// How large the preview is shown.
    zoom: Zoom,
    /// How many sizes larger the keys of this frame ask for.
    zoom_keys: isize,
    /// How many pages to the right the keys of this frame go.
    sideways: isize,
}

impl WriteUpWindow {
    /// Shows the window; closing it is a command like opening it. Behind a dialog it is out of reach.
    pub(super) fn ui(
        &mut self,
        ctx: &Context,
        desk: &Desk,
        is_in_reach: bool,
        form: &mut Form<'_>,
    ) {
        self.preview.follow(ctx, desk);
        let mut is_open = true;
        let screen = ctx.content_rect();
        let most = screen.size() - Vec2::splat(ROOM_AROUND);
        let place = Vec2::new(screen.width() * 0.3, 60.0);
        let size = Vec2::new(780.0, screen.height() * 0.8).min(most);
        let window = Window::new("Write-up")
            .enabled(is_in_reach)
            .open(&mut is_open)
            .default_size(size)
            .max_size(most)
            .default_pos(screen.min + place.min(screen.size() - size - Vec2::splat(8.0)));
        let shown = undimmed_if(!is_in_reach, ctx, |alpha| {
            window.show(ctx, |ui| {
                ui.visuals_mut().disabled_alpha = alpha;
                self.contents_ui(ui, desk, form)
            })
        });
        if let Some(shown) = shown {
            name_title_bar(ctx, shown.response.layer_id);
            form.focus.layer(Pane::WriteUp, shown.response.layer_id);
            let is_new = self.layer.replace(shown.response.layer_id).is_none();
            if let Some(first) = shown.inner.filter(|_| is_new) {
                first.request_focus();
            }
        }
        if !is_open {
            let close = super::commands::Command::WriteUp;
            form.actions.push(super::action::Action::Run(close));
        }
    }

    /// The contents; the first choice.
    fn contents_ui(&mut self, ui: &mut Ui, desk: &Desk, form: &mut Form<'_>) -> Response {
        let scroll = std::mem::take(&mut self.scroll);
        if ui.available_width() < CHOICES_WIDTH + LEAST_PREVIEW_WIDTH {
            let area = ScrollArea::vertical().id_salt("all").auto_shrink(false);
            let shown = area.animated(false).show(ui, |ui| {
                let mark = FocusMap::mark(ui);
                scroll.apply(ui);
                let first = self.choices_ui(ui, desk, form);
                ui.separator();
                self.zoom.buttons_ui(ui);
                form.focus.reveal(ui, mark);
                let across = ScrollArea::horizontal().id_salt("across");
                let across = across.scroll_source(BY_ANY_MEANS).animated(false);
                across.show(ui, |ui| {
                    self.pan(ui);
                    self.preview_ui(ui, form);
                });
                first
            });
            return shown.inner;
        }
        let beside = ui.horizontal_top(|ui| {
            let choices = ScrollArea::vertical()
                .id_salt("choices")
                .auto_shrink([true, false])
                .max_width(CHOICES_WIDTH);
            let choices = choices.animated(false).show(ui, |ui| {
                let mark = FocusMap::mark(ui);
                let first = self.choices_ui(ui, desk, form);
                form.focus.reveal(ui, mark);
                first
            });
            ui.separator();
            ui.vertical(|ui| {
                self.zoom.buttons_ui(ui);
                let preview = ScrollArea::both().id_salt("preview").auto_shrink(false);
                let preview = preview.scroll_source(BY_ANY_MEANS).animated(false);
                preview.show(ui, |ui| {
                    scroll.apply(ui);
                    self.pan(ui);
                    self.preview_ui(ui, form);
                });
            });
            choices.inner
        });
        beside.inner
    }

    fn choices_ui(&self, ui: &mut Ui, desk: &Desk, form: &mut Form<'_>) -> Response {
        ui.vertical(|ui| {
            ui.set_width(CHOICES_WIDTH);
            let first = choices::choices_ui(ui, desk, form);
            ui.separator();
            giving::giving_ui(ui, desk, &self.preview, form);
            first
        })
        .inner
    }

    /// Goes sideways as far as the keys ask.
    fn pan(&mut self, ui: &Ui) {
        let pages = std::mem::take(&mut self.sideways);
        if pages != 0 {
            let page = ui.clip_rect().width() * 0.8;
            let delta = Vec2::new(-page * pages as f32, 0.0);
            ui.scroll_with_delta_animation(delta, ScrollAnimation::none());
        }
    }

    /// The page as it will be.
    fn preview_ui(&mut self, ui: &mut Ui, form: &Form<'_>) {
        let keys = std::mem::take(&mut self.zoom_keys);
        match self.preview.shown() {
            Ok(Some(_)) => self.zoom.picture_ui(ui, &mut self.preview, keys),
            Ok(None) => remark(ui, "The picture is being made…", form.palette.dim_text),
            Err(problem) => remark(ui, &problem.to_string(), form.palette.error),
        }
    }
}

/// Shows a window that is out of reach while a dialog stands, which dims all of it already: seen through
/// besides, its texts and those beneath it could not be told apart. What cannot be used of its contents
/// is dimmed by the `alpha` that is handed on.
fn undimmed_if<R>(is_out_of_reach: bool, ctx: &Context, show: impl FnOnce(f32) -> R) -> R {
    let alpha = ctx.global_style().visuals.disabled_alpha;
    let set = |alpha| ctx.global_style_mut(|style| style.visuals.disabled_alpha = alpha);
    if is_out_of_reach {
        set(1.0);
    }
    let shown = show(alpha);
    if is_out_of_reach {
        set(alpha);
    }
    shown
}

/// The preview is moved by its bars, the wheel, and the pointer that holds it.
const BY_ANY_MEANS: ScrollSource = ScrollSource {
    drag: DragScroll::Always,
    ..ScrollSource::ALL
};

/// The toolkit gives a window's title bar the focus but no name.
fn name_title_bar(ctx: &Context, window: LayerId) {
    ctx.accesskit_node_builder(window.id.with("__title_click"), |node| {
        node.set_role(egui::Role::TitleBar);
        node.set_label("Title bar of the write-up");
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
