//! The axes of a diagram: grid, marks, units, and what the pointer pans and zooms.

use super::roles::{word_color, word_family};
use super::{Look, ticks};
use crate::chart::{Axis, Label, Place, Range, Scene};
use egui::{Align2, Color32, FontId, Pos2, Rect, Sense, Ui};
use egui_plot::{AxisHints, Plot, PlotTransform};
use std::ops::RangeInclusive;

/// The most marks along the level and along the upright axis.
const MOST_MARKS: [f64; 2] = [12.0, 10.0];

/// Shows axes and grid, and takes the pointer's panning and zooming.
pub(super) fn plot(
    ui: &mut Ui,
    scene: &Scene,
    range: Range,
    look: &Look<'_>,
) -> egui_plot::PlotResponse<()> {
    let font = FontId::proportional(look.text_size);
    let sign = ui.painter().layout_no_wrap(
        scene.y.quantity.sign().to_owned(),
        font.clone(),
        look.palette.dim_text,
    );
    // Wide enough for any mark, and for the unit beneath them.
    let upright = (look.text_size * 3.6).max(sign.size().x + look.text_size * 0.6);
    let widths = TickWidths {
        // At least so wide is what the marks of the other axis leave.
        axis: ui.available_width() - upright - look.text_size * 1.4,
        digit: look.text_size * 0.6,
        sign: look.text_size * 2.5,
    };
    // Wide and high enough for any label, so that the first frame is laid out like the last. Marks
    // that stand close are left out rather than faded.
    let x_axis = AxisHints::new_x()
        .min_thickness(look.text_size * 1.6)
        .label_spacing(egui::Rangef::point(look.text_size))
        .tick_label_font(font.clone())
        .tick_label_color(look.palette.dim_text)
        .formatter(|mark, range| x_tick(&scene.x, mark.value, range, widths));
    let y_axis = AxisHints::new_y()
        .min_thickness(upright)
        .label_spacing(egui::Rangef::point(look.text_size * 1.2))
        .tick_label_font(font)
        .tick_label_color(look.palette.dim_text)
        .formatter(|mark, range| y_tick(scene, mark.value, range));
    ui.visuals_mut().extreme_bg_color = look.palette.paper;
    Plot::new(("diagram", scene.view.word()))
        .custom_x_axes(vec![x_axis])
        .custom_y_axes(vec![y_axis])
        .x_grid_spacer(|input| ticks::of(&scene.x, input.bounds, MOST_MARKS[0]))
        .y_grid_spacer(|input| ticks::of(&scene.y, input.bounds, MOST_MARKS[1]))
        .grid_color(look.palette.grid)
        .grid_fade(0.0)
        .clamp_grid(false)
        .show_x(false)
        .show_y(false)
        .auto_bounds(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .allow_axis_zoom_drag(look.interactive)
        .allow_drag(look.interactive)
        .allow_zoom(look.interactive)
        .sense(if look.interactive {
            Sense::CLICK | Sense::DRAG
        } else {
            Sense::hover()
        })
        .default_x_bounds(range.x[0], range.x[1])
        .default_y_bounds(range.y[0], range.y[1])
        .show(ui, |plot_ui| {
            plot_ui.set_plot_bounds_x(range.x[0]..=range.x[1]);
            plot_ui.set_plot_bounds_y(range.y[0]..=range.y[1]);
        })
}

/// What the level axis has room for, in points.
#[derive(Clone, Copy)]
struct TickWidths {
    axis: f32,
    digit: f32,
    /// What stands at its end.
    sign: f32,
}

/// The text of a mark on the level axis; its unit stands at its right end.
fn x_tick(axis: &Axis, value: f64, range: &RangeInclusive<f64>, widths: TickWidths) -> String {
    let text = mark_text(axis, value);
    let needed = widths.sign + widths.digit * (text.chars().count() as f32 / 2.0 + 0.5);
    let share = f64::from(needed / widths.axis.max(1.0)).max(0.07);
    if value > range.end() - share * (range.end() - range.start()) {
        return String::new();
    }
    text
}

/// The text of a mark on the upright axis; its unit and labels have places of their own.
fn y_tick(scene: &Scene, value: f64, range: &RangeInclusive<f64>) -> String {
    let row = 0.05 * (range.end() - range.start());
    let is_near = |other: f64| (value - other).abs() < row;
    if is_near(*range.start()) || on_axis(scene).any(|label| is_near(label.at[1])) {
        return String::new();
    }
    mark_text(&scene.y, value)
}

fn mark_text(axis: &Axis, value: f64) -> String {
    let is_here = |(at, _): &&(f64, String)| (at - value).abs() < 1e-9;
    match axis.marks.iter().find(is_here) {
        Some((_, text)) => text.clone(),
        None => axis.quantity.mark_text(value),
    }
}

fn on_axis(scene: &Scene) -> impl Iterator<Item = &Label> {
    let labels = scene.labels.iter();
    labels.filter(|label| label.place == Place::OnAxis)
}

/// Paints what the axes show, in their corners, and the labels upon them; returns their places.
pub(super) fn words(
    ui: &Ui,
    scene: &Scene,
    transform: &PlotTransform,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    let frame = transform.frame();
    let font = FontId::proportional(look.text_size);
    let mut labels = Vec::new();
    let mut write = |at: Pos2, align: Align2, text: &str, font: FontId, color: Color32| {
        let rect = ui.painter().text(at, align, text, font, color);
        labels.push((rect, text.to_owned()));
    };
    let corner = Pos2::new(frame.left() - 4.0, frame.bottom());
    for label in on_axis(scene) {
        let y = transform.position_from_point_y(label.at[1]);
        if !frame.y_range().contains(y) {
            continue;
        }
        let font = FontId::new(look.text_size, word_family(label, look));
        // Close to the foot of the axis it makes way for the unit there.
        let row_height = ui.fonts_mut(|fonts| fonts.row_height(&font)) + 1.0;
        let at = Pos2::new(corner.x, y.min(corner.y - row_height));
        let color = word_color(label.role, label.of, look);
        write(at, Align2::RIGHT_CENTER, &label.text, font, color);
    }
    let dim = look.palette.dim_text;
    let sign = scene.y.quantity.sign();
    write(corner, Align2::RIGHT_CENTER, sign, font.clone(), dim);
    let right = Pos2::new(frame.right(), frame.bottom() + 1.0);
    write(right, Align2::RIGHT_TOP, scene.x.quantity.sign(), font, dim);
    labels
}
