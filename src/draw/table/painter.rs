//! Puts a table that is laid out onto the canvas, and notes where everything came to stand.

use super::layout::{
    DIFFERENCE_GAP, LaidColumn, Layout, SetWords, font, remark_gap, small, swatch_width,
};
use super::{DrawnRow, TableDrawn, TableLook};
use crate::chart::{Cell, Row, SetTable, Table};
use crate::draw::palette::dash;
use crate::draw::{bold, sample};
use egui::{Align2, Color32, FontFamily, FontId, Galley, Pos2, Rect, StrokeKind, Ui, Vec2};
use std::sync::Arc;

pub(super) struct TablePainter<'a, 't> {
    pub(super) ui: &'a Ui,
    pub(super) layout: &'a Layout,
    pub(super) look: &'a TableLook<'a>,
    pub(super) table: &'t Table,
    pub(super) drawn: TableDrawn<'t>,
}

impl<'t> TablePainter<'_, 't> {
    pub(super) fn head(&mut self, at: Pos2) {
        let bottom = at.y + self.layout.head_height() - 4.0;
        let mut left = at.x;
        for column in &self.layout.columns {
            let head = &column.head;
            let edge = if column.is_number {
                let figures = left + column.width - self.edge() - column.width_behind;
                // A heading that is wider than the figures runs on over the differences.
                figures.max(left + self.look.text_size * DIFFERENCE_GAP + head.size().x)
            } else {
                left
            };
            let pos = Pos2::new(edge, bottom - head.size().y);
            let color = self.look.palette.dim_text;
            self.ui.painter().galley(pos, head.clone(), color);
            let rect = head.rect.translate(pos.to_vec2());
            self.drawn.labels.push((rect, head.text().to_owned()));
            left += column.width;
        }
    }

    /// What stays free at the right edge of a column, in points.
    pub(super) fn edge(&self) -> f32 {
        self.look.text_size * 0.35
    }

    /// A set: its words, its gears, its findings.
    pub(super) fn set(&mut self, set: &'t SetTable, words: &SetWords, at: Pos2) {
        let row_height = self.layout.row_height;
        let color = self.look.palette.set(set.place);
        let left = at.x + swatch_width(self.look);
        let swatch = Rect::from_min_max(at, Pos2::new(left - 6.0, at.y + row_height));
        sample(self.ui.painter(), swatch, color, dash(set.place));
        self.words(Pos2::new(left, at.y), &words.head);
        let mut top = at.y + words.head.size().y.max(row_height);
        for row in &set.rows {
            let size = Vec2::new(self.layout.width(), row_height);
            self.row(set, row, Rect::from_min_size(Pos2::new(at.x, top), size));
            top += row_height;
        }
        for finding in &words.findings {
            self.words(Pos2::new(at.x, top + 2.0), finding);
            top += finding.size().y + 2.0;
        }
    }

    pub(super) fn words(&mut self, at: Pos2, galley: &Arc<Galley>) {
        let color = self.look.palette.text;
        self.ui.painter().galley(at, galley.clone(), color);
        let rect = Rect::from_min_size(at, galley.size());
        self.drawn.labels.push((rect, galley.text().to_owned()));
    }

    pub(super) fn row(&mut self, set: &'t SetTable, row: &'t Row, rect: Rect) {
        let is_in_view = self.ui.is_rect_visible(rect);
        if is_in_view {
            self.ground(set, row, rect);
        }
        let mut left = rect.left();
        let mut cells = Vec::with_capacity(self.layout.columns.len());
        for column in &self.layout.columns {
            let size = Vec2::new(column.width, rect.height());
            let place = Rect::from_min_size(Pos2::new(left, rect.top()), size);
            let cell = &row.cells[column.at];
            if is_in_view && column.is_number {
                self.cell(cell, place, column);
            } else if is_in_view {
                self.name(set, row, cell, place);
            }
            cells.push((place, cell));
            left += column.width;
        }
        self.drawn.rows.push(DrawnRow {
            gear: set.gear(row),
            rect,
            cells,
            table: self.table,
            set,
            row,
        });
    }

    /// What lies beneath a row: the colour of its set where it is brought out, else a line.
    ///
    /// A colour that is seen would take the contrast from the figures: an outline shows it.
    pub(super) fn ground(&self, set: &SetTable, row: &Row, rect: Rect) {
        if self.look.gear == Some(set.gear(row)) {
            let color = self.look.palette.set(set.place);
            self.ui.painter().rect(
                rect,
                2.0,
                color.gamma_multiply(0.1),
                (1.0, color),
                StrokeKind::Inside,
            );
        } else {
            let line = (1.0, self.look.palette.grid);
            self.ui.painter().hline(rect.x_range(), rect.bottom(), line);
        }
    }

    /// What a gear is called, and behind it what is remarked of it.
    fn name(&mut self, set: &SetTable, row: &Row, cell: &Cell, place: Rect) {
        let palette = self.look.palette;
        let at = place.left_center();
        let color = palette.set(set.place);
        let left = Align2::LEFT_CENTER;
        let label = (at, left, place.width());
        let label = self.write(label, &cell.text, font(self.look, bold()), color);
        if let Some(remark) = row.remark() {
            let taken = label.map_or(0.0, |label| label.width()) + remark_gap(self.look);
            let room = (place.width() - taken).max(1.0);
            let at = (at + Vec2::new(taken, 0.0), left, room);
            self.write(at, remark, small(self.look), palette.dim_text);
        }
    }

    fn cell(&mut self, cell: &Cell, place: Rect, column: &LaidColumn) {
        let palette = self.look.palette;
        let y = place.center().y;
        let right = place.right() - self.edge() - column.width_behind;
        if let Some(difference) = &cell.difference {
            // Beside its figure, so that it is not taken for one of the next column.
            let gap = self.look.text_size * DIFFERENCE_GAP;
            let at = (
                Pos2::new(right + gap, y),
                Align2::LEFT_CENTER,
                column.width_behind - gap,
            );
            let small = small(self.look);
            self.write(at, difference, small, palette.dim_text);
        }
        let (right, color) = if cell.is_dim {
            (right + column.bracket_width, palette.dim_text)
        } else {
            (right, palette.text)
        };
        let plain = font(self.look, FontFamily::Proportional);
        let room = right - place.left();
        let at = (Pos2::new(right, y), Align2::RIGHT_CENTER, room);
        self.write(at, &cell.shown(), plain, color);
    }

    /// Text at a point, made smaller where its room is too narrow; where it stands.
    pub(super) fn write(
        &mut self,
        (at, align, room): (Pos2, Align2, f32),
        text: &str,
        mut font: FontId,
        color: Color32,
    ) -> Option<Rect> {
        if text.is_empty() {
            return None;
        }
        let painter = self.ui.painter();
        let layout = |font: FontId| painter.layout_no_wrap(text.to_owned(), font, color);
        let mut galley = layout(font.clone());
        if galley.size().x > room + 0.5 {
            font.size *= room / galley.size().x;
            galley = layout(font);
        }
        let rect = align.anchor_size(at, galley.size());
        painter.galley(rect.min, galley, color);
        self.drawn.labels.push((rect, text.to_owned()));
        Some(rect)
    }
}
