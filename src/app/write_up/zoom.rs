//! How large is the preview shown: as wide as its room, or in pixels of the picture?

use super::preview::Preview;
use crate::app::heard::describe;
use egui::emath::GuiRounding as _;
use egui::{Context, Image, Key, Modifiers, Rect, Response, Sense, Ui, Vec2, vec2};

/// The sizes that keys and wheel go through, in pixels of the screen for one of the picture.
const STEPS: [f32; 7] = [0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0];

/// How far a turn of the wheel must go for the next size, as a factor.
const TURN: f32 = 1.1;

/// How large the preview is shown.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) enum Zoom {
    /// As wide as there is room.
    #[default]
    Fit,
    /// As many pixels of the screen for one of the picture.
    Pixels(f32),
}

impl Zoom {
    /// Takes the keys that show it larger and smaller.
    pub(super) fn keys(ctx: &Context) -> isize {
        ctx.input_mut(|input| {
            // On many keyboards the sign stands above another and asks for Shift.
            let mut taken = |key| {
                input
                    .count_and_consume_key(Modifiers::NONE, key)
                    .cast_signed()
            };
            taken(Key::Plus) + taken(Key::Equals) - taken(Key::Minus)
        })
    }

    /// The buttons that choose a size.
    pub(super) fn buttons_ui(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            let fit = ui.selectable_label(*self == Self::Fit, "Fit width");
            describe(
                &fit,
                "Shows the picture as wide as there is room; + and − change its size",
            );
            let full = ui.selectable_label(*self == Self::Pixels(1.0), "100 %");
            describe(&full, "Shows every pixel of the picture");
            if fit.clicked() {
                *self = Self::Fit;
            } else if full.clicked() {
                *self = Self::Pixels(1.0);
            }
        });
    }

    /// Shows the picture; keys and the wheel under Ctrl change its size.
    pub(super) fn picture_ui(&mut self, ui: &mut Ui, preview: &mut Preview, keys: isize) {
        let Some([width_px, height_px]) = preview.size_px() else {
            return;
        };
        let size_px = vec2(width_px as f32, height_px as f32);
        let pixels_per_point = ui.ctx().pixels_per_point();
        let fitting = ui.available_width().max(100.0) * pixels_per_point / size_px.x;
        let response = match *self {
            Self::Fit => fitted_ui(ui, preview, size_px * (fitting / pixels_per_point)),
            Self::Pixels(scale) => parts_ui(ui, preview, size_px, scale / pixels_per_point),
        };
        let now = match *self {
            Self::Fit => fitting,
            Self::Pixels(scale) => scale,
        };
        let steps = keys + wheel(&response);
        if steps != 0 {
            *self = Self::Pixels(stepped(now, steps));
        }
    }
}

/// How many sizes the wheel asks for over the picture.
fn wheel(response: &Response) -> isize {
    if !response.contains_pointer() {
        return 0;
    }
    let factor = response.ctx.input(egui::InputState::zoom_delta);
    isize::from(factor > TURN) - isize::from(factor < 1.0 / TURN)
}

/// The size so many steps larger, the largest or smallest where there are no more.
fn stepped(now: f32, steps: isize) -> f32 {
    let mut scale = now;
    for _ in 0..steps.unsigned_abs().min(STEPS.len()) {
        let next = if steps > 0 {
            STEPS.into_iter().find(|step| *step > scale + 1e-3)
        } else {
            STEPS.into_iter().rev().find(|step| *step < scale - 1e-3)
        };
        scale = next.unwrap_or(scale);
    }
    scale.clamp(STEPS[0], STEPS[STEPS.len() - 1])
}

fn fitted_ui(ui: &mut Ui, preview: &Preview, size: Vec2) -> Response {
    match preview.shown() {
        Ok(Some(texture)) => {
            let image = Image::new(texture).fit_to_exact_size(size);
            ui.add(image.alt_text(NAME))
        }
        Ok(None) | Err(_) => ui.allocate_response(size, Sense::hover()),
    }
}

/// What the picture is called.
const NAME: &str = "The picture of the write-up";

/// The picture part by part, each on whole pixels of the screen, so that nothing is smeared.
fn parts_ui(ui: &mut Ui, preview: &mut Preview, size_px: Vec2, scale: f32) -> Response {
    let (rect, response) = ui.allocate_exact_size(size_px * scale, Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, NAME));
    let corner = rect.min.round_to_pixels(ui.ctx().pixels_per_point());
    let ctx = ui.ctx().clone();
    for part in preview.parts(&ctx) {
        let [left, top] = part.at_px.map(|px| px as f32 * scale);
        let size = part.texture.size_vec2() * scale;
        let place = Rect::from_min_size(corner + vec2(left, top), size);
        if ui.is_rect_visible(place) {
            Image::new(&part.texture).paint_at(ui, place);
        }
    }
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_go_through_all_pixels_of_the_picture_and_end_somewhere() {
        let near = |a: f32, b: f32| (a - b).abs() < 1e-6;
        assert!(near(stepped(0.31, 1), 0.35));
        assert!(near(stepped(0.7, 1), 1.0));
        assert!(near(stepped(1.0, -1), 0.7));
        assert!(near(stepped(1.0, 2), 2.0));
        assert!(near(stepped(2.0, 9), 2.0));
        assert!(near(stepped(0.1, -1), 0.25));
    }
}
