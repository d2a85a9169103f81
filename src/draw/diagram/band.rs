//! The band above the plot: the names of each set's lines in a row of its own, above their lines.
//!
//! Its ground goes on with what the plot shows at its upper end: where a shaded part has no end
//! upwards and begins within the view or below it, the band belongs to it.
//! Its height follows from the number of visible sets alone, so the plot below never moves.

use super::Look;
use super::roles::{is_brought_out, shade, word_color, word_family};
use crate::chart::{Area, Label, Place, Scene, ShownSet};
use crate::draw::label_placing::{Ground, Wish, place};
use crate::draw::palette::dash;
use crate::draw::stroke;
use egui::{Align2, Color32, FontId, Rect, Stroke, Ui, Vec2, vec2};
use egui_plot::PlotTransform;

/// The height of the band, in points; without one, what a mark at the upper end of the axis needs.
pub(super) fn height(scene: &Scene, look: &Look<'_>) -> f32 {
    if !scene.has_band {
        return (look.text_size * 0.7).ceil();
    }
    let rows = scene.sets.len().max(1) as f32;
    rows * row_height(look) + 8.0
}

fn row_height(look: &Look<'_>) -> f32 {
    (look.text_size * 1.3).ceil()
}

/// Paints the band and returns the names of lines with their places.
pub(super) fn paint(
    ui: &Ui,
    scene: &Scene,
    transform: &PlotTransform,
    band: Rect,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    let mut labels = Vec::new();
    if !scene.has_band {
        return labels;
    }
    if let Some(color) = ground(scene, transform, look) {
        ui.painter().rect_filled(band, 0.0, color);
    }
    for (row, set) in scene.sets.iter().enumerate() {
        let top = band.top() + 2.0 + row as f32 * row_height(look);
        let y = top..=top + row_height(look);
        let row = Rect::from_x_y_ranges(band.x_range(), y);
        swatch(ui, row, set, look);
        labels.extend(line_names(ui, scene, transform, row, set, look));
    }
    labels
}

/// The shade of what lies beyond the upper end of the view; none where that is the plain plot.
fn ground(scene: &Scene, transform: &PlotTransform, look: &Look<'_>) -> Option<Color32> {
    let [bottom, top] = [transform.bounds().min()[1], transform.bounds().max()[1]];
    // A view that ends at the beginning of a part shows it, whatever the rounding.
    let hair = (top - bottom) * 1e-6;
    let is_beyond = |area: &&Area| {
        let [from, to] = area.y;
        to.is_none() && from.is_none_or(|from| from <= top + hair)
    };
    let area = scene.areas.iter().find(is_beyond)?;
    Some(shade(area.role, look))
}

/// The set's dash in the margin, at the head of its row.
fn swatch(ui: &Ui, row: Rect, set: &ShownSet, look: &Look<'_>) {
    let length = look.text_size * 2.6;
    let right = row.left() - 6.0;
    let rect = Rect::from_x_y_ranges(right - length..=right, row.y_range());
    stroke::sample(
        ui.painter(),
        rect,
        look.palette.set(set.livery),
        dash(set.livery),
    );
}

/// What stays free between two names, in points.
const NAME_GAP: f32 = 4.0;

/// The names above the points where their lines leave the plot; the last of a set is placed first.
fn line_names(
    ui: &Ui,
    scene: &Scene,
    transform: &PlotTransform,
    row: Rect,
    set: &ShownSet,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    // To the left as far as the swatch leaves room, to the right as far as the picture goes.
    let left = row.left() - 4.0;
    let room = Rect::from_x_y_ranges(left..=row.right(), row.y_range()).expand2(vec2(0.0, 2.0));
    let mut wishes = Vec::new();
    let mut names = Vec::new();
    for (i, (label, from)) in names_of(scene, set).enumerate() {
        let font = FontId::new(look.text_size, word_family(label, look));
        let color = word_color(label.role, label.of, look);
        let galley = ui.painter().layout_no_wrap(label.text.clone(), font, color);
        let size = galley.size() + vec2(NAME_GAP, 0.0);
        let x = transform.position_from_point_x(leaves_at(from, label.at, transform));
        // A hair more, so that rounding does not push it out.
        let half = size.x / 2.0 + 0.1;
        // A long label at the end of the row steps aside rather than being left out.
        let middle = x.min(room.right() - half).max(room.left() + half);
        let is_in_view = row.x_range().contains(x);
        wishes.push(Wish {
            size,
            anchor: egui::pos2(middle, row.center().y),
            piece: None,
            candidates: Vec::from_iter(is_in_view.then_some((Align2::CENTER_CENTER, Vec2::ZERO))),
            gap: 0.0,
            priority: u8::try_from(i).unwrap_or(u8::MAX),
        });
        names.push((label, galley, color));
    }
    let mut labels = Vec::new();
    for (rect, (label, galley, color)) in place(&wishes, room, &Ground::default())
        .into_iter()
        .zip(names)
    {
        let Some(rect) = rect else { continue };
        let rect = rect.shrink2(vec2(NAME_GAP / 2.0, 0.0));
        if label.of.is_some_and(|of| is_brought_out(of, look)) {
            let outline = Stroke::new(1.0, color);
            ui.painter().rect_stroke(
                rect.expand2(vec2(3.0, 0.0)),
                3.0,
                outline,
                egui::StrokeKind::Inside,
            );
        }
        ui.painter().galley(rect.min, galley, color);
        labels.push((rect, label.text.clone()));
    }
    labels
}

/// The names of a set's lines, each with the point from which its line comes.
fn names_of<'s>(scene: &'s Scene, set: &ShownSet) -> impl Iterator<Item = (&'s Label, [f64; 2])> {
    let id = set.id;
    let labels = scene.labels.iter();
    labels.filter_map(move |label| match label.place {
        Place::InBand(from) if label.of.is_some_and(|of| of.set == id) => Some((label, from)),
        _ => None,
    })
}

/// Where a line that ends at `to` leaves the plot, along its level axis.
fn leaves_at(from: [f64; 2], to: [f64; 2], transform: &PlotTransform) -> f64 {
    let top = to[1].min(transform.bounds().max()[1]);
    let share = (top - from[1]) / (to[1] - from[1]);
    from[0] + (to[0] - from[0]) * share
}
