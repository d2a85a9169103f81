//! Rows of figures in columns that share the width there is, painted: each row is one thing to those who hear
//! it.

use egui::{Align2, Color32, FontId, Rangef, Rect, TextStyle, Ui, pos2};

/// What stands in a column of a row.
pub(super) struct ColumnCell {
    pub(super) text: String,
    pub(super) color: Color32,
    pub(super) is_strong: bool,
}

/// How far a figure keeps from the end of its column, in points.
const GAP: f32 = 6.0;

/// The height of a row, in points.
pub(super) fn row_height(ui: &Ui) -> f32 {
    ui.text_style_height(&TextStyle::Body) + 4.0
}

/// Where the columns of a row stand, by the share of the width that each has.
pub(super) fn places<const N: usize>(row: Rect, shares: [f32; N]) -> [Rect; N] {
    let all: f32 = shares.iter().sum();
    let mut left = row.left();
    shares.map(|share| {
        let right = left + row.width() * share / all;
        let place = Rect::from_x_y_ranges(Rangef::new(left, right), row.y_range());
        left = right;
        place
    })
}

/// Paints what stands in a column, at its right end.
pub(super) fn paint_cell(ui: &Ui, place: Rect, cell: &ColumnCell) {
    let size = TextStyle::Body.resolve(ui.style()).size;
    let font = if cell.is_strong {
        FontId::new(size, crate::draw::bold())
    } else {
        FontId::proportional(size)
    };
    let at = pos2(place.right() - GAP, place.center().y);
    // Longer labels of gears end at the edge of their column.
    let painter = ui.painter().with_clip_rect(place.intersect(ui.clip_rect()));
    painter.text(at, Align2::RIGHT_CENTER, &cell.text, font, cell.color);
}
