//! The band above the redline: each set's gear numbers in a row of its own, above their lines.
//!
//! Its height follows from the number of visible sets alone, so the plot below never moves.

use super::Look;
use crate::chart::{SetTrace, SpeedDiagram};
use crate::draw::label_placing::{Wish, place};
use crate::draw::palette::dash;
use crate::draw::stroke;
use egui::{Align2, FontId, Rect, Stroke, Ui, Vec2, vec2};
use egui_plot::PlotTransform;

/// The height of the band, in points.
pub(super) fn height(diagram: &SpeedDiagram, look: &Look<'_>) -> f32 {
    let rows = diagram.traces.len().max(1) as f32;
    rows * row_height(look) + 8.0
}

fn row_height(look: &Look<'_>) -> f32 {
    (look.text_size * 1.3).ceil()
}

/// Paints the band and returns the gear numbers with their places.
pub(super) fn paint(
    ui: &Ui,
    diagram: &SpeedDiagram,
    transform: &PlotTransform,
    band: Rect,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    ui.painter().rect_filled(band, 0.0, look.palette.band);
    let mut labels = Vec::new();
    for (row, trace) in diagram.traces.iter().enumerate() {
        let top = band.top() + 2.0 + row as f32 * row_height(look);
        let y = top..=top + row_height(look);
        let row = Rect::from_x_y_ranges(band.x_range(), y);
        swatch(ui, row, trace, look);
        labels.extend(gear_numbers(ui, diagram, transform, row, trace, look));
    }
    labels
}

/// The set's dash in the margin, at the head of its row.
fn swatch(ui: &Ui, row: Rect, trace: &SetTrace, look: &Look<'_>) {
    let length = look.text_size * 2.6;
    let right = row.left() - 6.0;
    let rect = Rect::from_x_y_ranges(right - length..=right, row.y_range());
    stroke::sample(
        ui.painter(),
        rect,
        look.palette.set(trace.place),
        dash(trace.place),
    );
}

/// What stays free between two numbers, in points.
const NUMBER_GAP: f32 = 4.0;

/// The numbers above the points where their lines leave the plot; top gear is placed first.
fn gear_numbers(
    ui: &Ui,
    diagram: &SpeedDiagram,
    transform: &PlotTransform,
    row: Rect,
    trace: &SetTrace,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    let color = look.palette.set(trace.place);
    let top_rpm = diagram.redline_rpm.min(transform.bounds().max()[1]);
    // To the left as far as the swatch leaves room, to the right as far as the picture goes.
    let left = row.left() - 4.0;
    let room = Rect::from_x_y_ranges(left..=row.right(), row.y_range()).expand2(vec2(0.0, 2.0));
    let mut wishes = Vec::new();
    let mut galleys = Vec::new();
    for (i, gear) in trace.gears.iter().enumerate() {
        let is_out = look.gear == Some((trace.set, gear.gear));
        let family = if is_out || gear.driven_rpm.is_none() {
            egui::FontFamily::Proportional
        } else {
            super::super::fonts::bold()
        };
        let font = FontId::new(look.text_size, family);
        let galley = ui.painter().layout_no_wrap(gear.label.clone(), font, color);
        let size = galley.size() + vec2(NUMBER_GAP, 0.0);
        let x = transform.position_from_point_x(gear.speed_at(top_rpm));
        // A hair more, so that rounding does not push it out.
        let half = size.x / 2.0 + 0.1;
        // A long label at the end of the row steps aside rather than being left out.
        let middle = x.min(room.right() - half).max(room.left() + half);
        let is_in_view = row.x_range().contains(x);
        wishes.push(Wish {
            size,
            anchor: egui::pos2(middle, row.center().y),
            candidates: Vec::from_iter(is_in_view.then_some((Align2::CENTER_CENTER, Vec2::ZERO))),
            gap: 0.0,
            priority: u8::try_from(i).unwrap_or(u8::MAX),
        });
        galleys.push(galley);
    }
    let mut labels = Vec::new();
    for (i, rect) in place(&wishes, room, &[]).into_iter().enumerate() {
        let Some(rect) = rect else { continue };
        let rect = rect.shrink2(vec2(NUMBER_GAP / 2.0, 0.0));
        if look.gear == Some((trace.set, trace.gears[i].gear)) {
            let outline = Stroke::new(1.0, color);
            ui.painter().rect_stroke(
                rect.expand2(vec2(3.0, 0.0)),
                3.0,
                outline,
                egui::StrokeKind::Inside,
            );
        }
        ui.painter().galley(rect.min, galleys[i].clone(), color);
        labels.push((rect, trace.gears[i].label.clone()));
    }
    labels
}
