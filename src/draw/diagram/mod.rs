//! How does a scene become shapes?
//!
//! The one drawing of every diagram, for the screen and for the picture. The plot beneath gives axes, grid and
//! the way from values to points; lines and labels are painted over it, because sets need dashes,
//! an order by importance, and labels that keep clear of each other.

mod axes;
mod band;
mod labels;
mod lines;
mod places;
mod roles;
mod ticks;

use super::palette::Palette;
use crate::chart::{GearOfSet, Range, Scene};
use crate::project::SetId;
use egui::{Rect, Sense, Ui, UiBuilder};
use egui_plot::PlotTransform;

/// How a diagram is to be drawn.
#[derive(Debug, Clone)]
pub struct Look<'a> {
    /// Colours.
    pub palette: &'a Palette,
    /// The set that comes forward; the others step back.
    pub forward: Option<SetId>,
    /// How far the others step back.
    pub others: StepBack,
    /// The gear whose line is brought out.
    pub gear: Option<GearOfSet>,
    /// The height of the text, in points.
    pub text_size: f32,
    /// The sets whose drops are written, each at its shift.
    pub drops: &'a [SetId],
    /// Whether it says all by itself, without the fields that stand beside it in the window.
    ///
    /// There what is read at the pointer needs the room.
    pub is_alone: bool,
    /// Whether the pointer can pan and zoom.
    pub interactive: bool,
}

/// How far a set steps back, to let another come forward. However far, its lines are seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum StepBack {
    /// Not at all.
    Not,
    /// Its lines are thinner.
    Little,
    /// Its lines are thinner, and quieter.
    Far,
}

/// What was drawn, and where.
#[derive(Debug)]
pub struct Drawn {
    /// The plot's area, which the pointer moves over.
    pub response: egui::Response,
    /// The way from values to points and back.
    pub transform: PlotTransform,
    /// The band above the plot that holds the names of lines.
    pub band: Rect,
    /// The view after the pointer panned or zoomed it.
    pub range: Range,
    /// Every label that was drawn, with its text.
    pub labels: Vec<(Rect, String)>,
}

impl Drawn {
    /// Where a point of the scene stands on the screen.
    pub fn place_of(&self, point: [f64; 2]) -> egui::Pos2 {
        self.transform.position_from_point(&point.into())
    }
}

/// Draws a diagram into all the space that is left, seen through `range`.
pub fn diagram_ui(ui: &mut Ui, scene: &Scene, range: Range, look: &Look<'_>) -> Drawn {
    let area = ui.available_rect_before_wrap();
    let band_height = band::height(scene, look);
    let band_area = Rect::from_min_size(area.min, egui::vec2(area.width(), band_height));
    let plot_area = Rect::from_min_max(egui::pos2(area.left(), band_area.bottom()), area.max);
    let mut plot_ui = ui.new_child(UiBuilder::new().max_rect(plot_area));
    let shown = axes::plot(&mut plot_ui, scene, range, look);
    let transform = shown.transform;
    let frame = *transform.frame();
    let band = Rect::from_x_y_ranges(frame.x_range(), band_area.y_range());

    let painter = ui.painter().with_clip_rect(frame.intersect(ui.clip_rect()));
    lines::paint(&painter, scene, &transform, look);
    let mut labels = band::paint(ui, scene, &transform, band, look);
    labels.extend(labels::paint(ui, scene, &transform, look));
    labels.extend(axes::words(ui, scene, &transform, look));
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
