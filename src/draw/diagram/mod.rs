//! How does a speed diagram become shapes?
//!
//! The one drawing of it, for the screen and for the picture. The plot beneath gives axes, grid and
//! the way from values to points; lines and labels are painted over it, because sets need dashes,
//! an order by importance, and labels that keep clear of each other.

mod band;
mod labels;
mod lines;
mod ticks;

use super::palette::Palette;
use crate::chart::{Range, SpeedDiagram};
use crate::gearing::GearId;
use crate::project::SetId;
use crate::units::{plain_number, round_to};
use egui::{FontId, Rect, Sense, Ui, UiBuilder};
use egui_plot::{AxisHints, Plot, PlotTransform};
use std::ops::RangeInclusive;

/// How a diagram is to be drawn.
#[derive(Debug, Clone)]
pub struct Look<'a> {
    /// Colours.
    pub palette: &'a Palette,
    /// The set that comes forward; the others step back.
    pub forward: Option<SetId>,
    /// How far the others step back: 1 is not at all, 0 is out of sight.
    pub others: f32,
    /// The gear whose line is brought out.
    pub gear: Option<(SetId, GearId)>,
    /// The height of the text, in points.
    pub text_size: f32,
    /// Whether each shift's drop is written at its shift point.
    pub with_drops: bool,
    /// Whether the pointer can pan and zoom.
    pub interactive: bool,
}

/// What was drawn, and where.
#[derive(Debug)]
pub struct Drawn {
    /// The plot's area, which the pointer moves over.
    pub response: egui::Response,
    /// The way from values to points and back.
    pub transform: PlotTransform,
    /// The band above the plot that holds the gear numbers.
    pub band: Rect,
    /// The view after the pointer panned or zoomed it.
    pub range: Range,
    /// Every label that was drawn, with its text.
    pub labels: Vec<(Rect, String)>,
}

impl Drawn {
    /// The point of an engine speed and a road speed.
    pub fn point(&self, speed: f64, rpm: f64) -> egui::Pos2 {
        self.transform.position_from_point(&[speed, rpm].into())
    }
}

/// Draws a diagram into all the space that is left, seen through `range`.
pub fn diagram_ui(ui: &mut Ui, diagram: &SpeedDiagram, range: Range, look: &Look<'_>) -> Drawn {
    let area = ui.available_rect_before_wrap();
    let band_height = band::height(diagram, look);
    let band_area = Rect::from_min_size(area.min, egui::vec2(area.width(), band_height));
    let plot_area = Rect::from_min_max(egui::pos2(area.left(), band_area.bottom()), area.max);
    let mut plot_ui = ui.new_child(UiBuilder::new().max_rect(plot_area));
    let shown = plot(&mut plot_ui, diagram, range, look);
    let transform = shown.transform;
    let frame = *transform.frame();
    let band = Rect::from_x_y_ranges(frame.x_range(), band_area.y_range());

    let painter = ui.painter().with_clip_rect(frame.intersect(ui.clip_rect()));
    lines::paint(&painter, diagram, &transform, look);
    let mut labels = band::paint(ui, diagram, &transform, band, look);
    labels.extend(labels::paint(ui, diagram, &transform, look));
    ui.allocate_rect(area, Sense::hover());

    let bounds = transform.bounds();
    Drawn {
        response: shown.response,
        band,
        range: Range {
            x: [bounds.min()[0], bounds.max()[0]],
            y: [bounds.min()[1], bounds.max()[1]],
        },
        transform,
        labels,
    }
}

/// Axes, grid and the pointer's panning and zooming.
fn plot(
    ui: &mut Ui,
    diagram: &SpeedDiagram,
    range: Range,
    look: &Look<'_>,
) -> egui_plot::PlotResponse<()> {
    let font = FontId::proportional(look.text_size);
    let redline_rpm = diagram.redline_rpm;
    let widths = TickWidths {
        // At least so wide is what the marks of the other axis leave.
        axis: ui.available_width() - look.text_size * 5.0,
        digit: look.text_size * 0.6,
        unit: look.text_size * 2.5,
    };
    // Wide and high enough for any label, so that the first frame is laid out like the last.
    let x_axis = AxisHints::new_x()
        .min_thickness(look.text_size * 1.6)
        .label_spacing(egui::Rangef::new(look.text_size, look.text_size * 2.0))
        .tick_label_font(font.clone())
        .tick_label_color(look.palette.dim_text)
        .formatter(move |mark, range| speed_tick(mark.value, range, widths));
    let y_axis = AxisHints::new_y()
        .min_thickness(look.text_size * 3.6)
        .label_spacing(egui::Rangef::new(look.text_size, look.text_size * 1.4))
        .tick_label_font(font)
        .tick_label_color(look.palette.dim_text)
        .formatter(move |mark, range| rpm_tick(mark.value, range, redline_rpm));
    ui.visuals_mut().extreme_bg_color = look.palette.paper;
    Plot::new("speed diagram")
        .custom_x_axes(vec![x_axis])
        .custom_y_axes(vec![y_axis])
        .x_grid_spacer(|input| ticks::marks(input.bounds, 12.0))
        .y_grid_spacer(|input| ticks::marks(input.bounds, 10.0))
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

/// What the road-speed axis has room for, in points.
#[derive(Clone, Copy)]
struct TickWidths {
    axis: f32,
    digit: f32,
    unit: f32,
}

/// The text of a mark on the road-speed axis; the unit stands at its right end.
fn speed_tick(speed: f64, range: &RangeInclusive<f64>, widths: TickWidths) -> String {
    let text = plain_number(round_to(speed, 0.001));
    let needed = widths.unit + widths.digit * (text.len() as f32 / 2.0 + 0.5);
    let share = f64::from(needed / widths.axis.max(1.0)).max(0.07);
    if speed > range.end() - share * (range.end() - range.start()) {
        return String::new();
    }
    text
}

/// The text of a mark on the engine-speed axis; redline and unit have places of their own.
fn rpm_tick(rpm: f64, range: &RangeInclusive<f64>, redline_rpm: f64) -> String {
    let row = 0.05 * (range.end() - range.start());
    let is_taken = (rpm - redline_rpm).abs() < row || (rpm - range.start()).abs() < row;
    if is_taken {
        return String::new();
    }
    plain_number(round_to(rpm, 0.001))
}
