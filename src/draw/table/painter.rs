//! Puts the part of a table that is in view onto the canvas, and notes where everything came to stand.
//!
//! Three parts never cover each other: the head, which goes along with the figures from left to right;
//! what names the gears and what is said of a set, which goes along with them from top to bottom; and
//! the figures.

use super::column::{DIFFERENCE_GAP, LaidColumn, LaidHeading, remark_gap};
use super::layout::{Holds, Layout, RowOf};
use super::spoken::DrawnRow;
use super::words::{Words, font, small, swatch_width};
use super::{DrawnCell, DrawnHeading, TableDrawn, TableLook};
use crate::chart::Cell;
use crate::draw::palette::dash;
use crate::draw::{bold, sample};
use egui::{Align2, Color32, FontFamily, FontId, Painter, Pos2, Rect, StrokeKind, Ui, Vec2};

pub(super) struct TablePainter<'a, 't> {
    layout: &'a Layout<'t>,
    look: &'a TableLook<'a>,
    /// Where the table would begin if all of it were in view.
    origin: Pos2,
    view: Rect,
    /// Each clipped to its part of the view.
    headings: Painter,
    corner: Painter,
    figures: Painter,
    gears: Painter,
    pub(super) drawn: TableDrawn<'t>,
}

impl<'a, 't> TablePainter<'a, 't> {
    pub(super) fn new(
        ui: &Ui,
        layout: &'a Layout<'t>,
        look: &'a TableLook<'a>,
        all: Rect,
        view: Rect,
    ) -> Self {
        let beneath_head = view.top() + layout.head_height;
        let beside_gears = view.left() + layout.gears.width;
        let part = |left: f32, top: f32, right: f32, bottom: f32| {
            let part = Rect::from_min_max(Pos2::new(left, top), Pos2::new(right, bottom));
            ui.painter_at(part.intersect(ui.clip_rect()))
        };
        Self {
            layout,
            look,
            origin: all.min,
            view,
            headings: part(beside_gears, view.top(), view.right(), beneath_head),
            corner: part(view.left(), view.top(), view.right(), beneath_head),
            figures: part(beside_gears, beneath_head, view.right(), view.bottom()),
            gears: part(view.left(), beneath_head, view.right(), view.bottom()),
            drawn: TableDrawn {
                rect: all,
                rows: Vec::new(),
                headings: Vec::new(),
                labels: Vec::new(),
            },
        }
    }

    /// Headings, and above them the names of the sets that stand side by side.
    pub(super) fn head(&mut self) {
        let layout = self.layout;
        for (at, words) in &layout.legend {
            let corner = self.corner.clone();
            self.words(&corner, self.view.min + *at, words);
        }
        let bottom = self.view.top() + layout.head_height - 4.0;
        let samples = layout.sample_height();
        let corner = self.corner.clone();
        let left = self.view.left();
        self.heading(&corner, &layout.gears_heading, left, bottom - samples);
        let painter = self.headings.clone();
        for heading in &layout.headings {
            self.heading(&painter, heading, self.origin.x, bottom - samples);
        }
        if samples > 0.0 {
            for column in layout.figures.iter().filter(|c| self.is_seen(c)) {
                self.sample_over(column, bottom, samples);
            }
        }
        self.edges();
    }

    fn heading(&mut self, painter: &Painter, heading: &LaidHeading, left: f32, bottom: f32) {
        let galley = &heading.galley;
        let at = Pos2::new(left + heading.x, bottom - galley.size().y);
        let rect = galley.rect.translate(at.to_vec2());
        if !painter.clip_rect().intersects(rect) {
            return;
        }
        painter.galley(at, galley.clone(), self.look.palette.dim_text);
        self.drawn.labels.push((rect, galley.text().to_owned()));
        self.drawn.headings.push(DrawnHeading {
            column: &self.layout.table.columns[heading.at],
            rect,
            over: (heading.over.min + left..=heading.over.max + left).into(),
        });
    }

    /// The colour and dash of the set whose figures stand under a heading.
    fn sample_over(&self, column: &LaidColumn, bottom: f32, height: f32) {
        let right = self.origin.x + column.right;
        let width = column.figures.max(self.look.text_size);
        let place = Rect::from_x_y_ranges(right - width..=right, bottom - height..=bottom);
        if let Some((_, words)) = self.layout.legend.get(column.of)
            && let Some(livery) = words.swatch
        {
            let color = self.look.palette.set(livery);
            sample(&self.headings, place, color, dash(livery));
        }
    }

    /// Lines where something lies out of view above, or to the left.
    fn edges(&self) {
        let stroke = (1.0, self.look.palette.dim_text);
        let head = self.view.top() + self.layout.head_height - 1.0;
        if self.origin.y < self.view.top() - 0.5 {
            self.corner.hline(self.view.x_range(), head, stroke);
        }
        if self.origin.x < self.view.left() - 0.5 {
            let x = self.view.left() + self.layout.gears.width - 1.0;
            let bottom = self.origin.y + self.layout.size.y;
            let rows = self.layout.lines.iter();
            for row in rows.filter(|line| matches!(line.holds, Holds::Gears(_))) {
                let top = self.origin.y + row.top;
                let range = top..=(top + row.height).min(bottom);
                self.gears.vline(x, range, stroke);
            }
        }
    }

    /// Everything beneath the head.
    pub(super) fn lines(&mut self) {
        let layout = self.layout;
        for line in &layout.lines {
            let top = self.origin.y + line.top;
            match &line.holds {
                Holds::Words(words) => {
                    let painter = self.gears.clone();
                    self.words(&painter, Pos2::new(self.view.left(), top), words);
                }
                Holds::Gears(gears) => {
                    let end = self.origin.x + layout.size.x;
                    let right = end.min(self.view.right()).max(self.view.left());
                    let level = self.view.left()..=right;
                    let rect = Rect::from_x_y_ranges(level, top..=top + line.height);
                    self.row(gears, rect);
                }
            }
        }
    }

    fn words(&mut self, painter: &Painter, at: Pos2, words: &Words) {
        let height = words.galley.size().y.max(self.layout.row_height);
        let all = Rect::from_min_size(at, Vec2::new(words.width(self.look), height));
        if !painter.clip_rect().intersects(all) {
            return;
        }
        let mut left = at.x;
        if let Some(livery) = words.swatch {
            left += swatch_width(self.look);
            let right_bottom = Pos2::new(left - 6.0, at.y + self.layout.row_height);
            let swatch = Rect::from_min_max(at, right_bottom);
            let color = self.look.palette.set(livery);
            sample(painter, swatch, color, dash(livery));
        }
        let at = Pos2::new(left, at.y);
        painter.galley(at, words.galley.clone(), self.look.palette.text);
        let rect = Rect::from_min_size(at, words.galley.size());
        let text = words.galley.text().to_owned();
        self.drawn.labels.push((rect, text));
    }

    fn row(&mut self, gears: &[Option<RowOf<'t>>], rect: Rect) {
        let present = || gears.iter().flatten();
        let Some(first) = present().next() else {
            return;
        };
        let is_in_view = self.gears.clip_rect().intersects(rect);
        if is_in_view {
            self.ground(present(), rect);
        }
        let layout = self.layout;
        let columns = &layout.table.columns;
        let mut cells = Vec::with_capacity(layout.figures.len() + 1);
        let name = Rect::from_min_size(rect.min, Vec2::new(layout.gears.width, rect.height()));
        cells.push(DrawnCell {
            gear: first.set.gear(first.row),
            column: &columns[layout.gears.at],
            cell: &first.row.cells[layout.gears.at],
            rect: name,
            written: is_in_view.then(|| self.name(*first, name)).flatten(),
        });
        for column in &layout.figures {
            let Some(Some(RowOf { set, row })) = gears.get(column.of) else {
                continue;
            };
            let corner = Pos2::new(self.origin.x + column.left, rect.top());
            let place = Rect::from_min_size(corner, Vec2::new(column.width, rect.height()));
            let cell = &row.cells[column.at];
            let color = if layout.beside > 1 {
                self.look.palette.set(set.livery)
            } else {
                self.look.palette.text
            };
            let is_seen = is_in_view && self.is_seen(column);
            cells.push(DrawnCell {
                gear: set.gear(row),
                column: &columns[column.at],
                cell,
                rect: place.intersect(self.figures.clip_rect()),
                written: is_seen
                    .then(|| self.cell(cell, place, column, color))
                    .flatten(),
            });
        }
        self.drawn.rows.push(DrawnRow {
            gears: present().map(|of| of.set.gear(of.row)).collect(),
            rect,
            cells,
            name: first.row.name().into_owned(),
            sets: present().map(|of| of.set).collect(),
            is_beside: layout.beside > 1,
        });
    }

    /// Whether a column is in view, or a part of it.
    fn is_seen(&self, column: &LaidColumn) -> bool {
        let seen = self.figures.clip_rect().x_range();
        let left = self.origin.x + column.left;
        left < seen.max && left + column.width > seen.min
    }

    /// What lies beneath a row: the colour of a set where its gear is brought out, else a line.
    ///
    /// A colour that is seen would take the contrast from the figures: an outline shows it.
    fn ground<'r>(&self, mut gears: impl Iterator<Item = &'r RowOf<'t>>, rect: Rect)
    where
        't: 'r,
    {
        let palette = self.look.palette;
        let wanted = self.look.gear;
        if let Some(of) = gears.find(|of| wanted == Some(of.set.gear(of.row))) {
            let color = palette.set(of.set.livery);
            let tint = color.gamma_multiply(0.1);
            let line = (1.0, color);
            self.gears.rect(rect, 2.0, tint, line, StrokeKind::Inside);
        } else {
            let line = (1.0, palette.grid);
            self.gears.hline(rect.x_range(), rect.bottom(), line);
        }
    }

    /// What a gear is called, and behind it what is remarked of it.
    fn name(&mut self, of: RowOf<'_>, place: Rect) -> Option<Rect> {
        let palette = self.look.palette;
        let painter = self.gears.clone();
        let at = place.left_center();
        let color = if self.layout.beside > 1 {
            palette.text
        } else {
            palette.set(of.set.livery)
        };
        let left = Align2::LEFT_CENTER;
        let label = (at, left, self.layout.gears.right);
        let label = self.write(
            &painter,
            label,
            &of.row.gear,
            font(self.look, bold()),
            color,
        );
        if let Some(remark) = of.row.remark() {
            let taken = label.map_or(0.0, |label| label.width()) + remark_gap(self.look);
            let room = (self.layout.gears.right - taken).max(1.0);
            let at = (at + Vec2::new(taken, 0.0), left, room);
            let small = small(self.look);
            self.write(&painter, at, remark, small, palette.dim_text);
        }
        label
    }

    /// A figure with what stands behind it; where the figure stands.
    fn cell(
        &mut self,
        cell: &Cell,
        place: Rect,
        column: &LaidColumn,
        color: Color32,
    ) -> Option<Rect> {
        let dim = self.look.palette.dim_text;
        let painter = self.figures.clone();
        let y = place.center().y;
        let right = self.origin.x + column.right;
        if let Some(difference) = &cell.difference {
            // Beside its figure, so that it is not taken for one of the next column.
            let gap = self.look.text_size * DIFFERENCE_GAP;
            let room = column.width_behind - gap;
            let at = (Pos2::new(right + gap, y), Align2::LEFT_CENTER, room);
            self.write(&painter, at, difference, small(self.look), dim);
        }
        let (right, color) = if cell.is_dim {
            (right + column.bracket_width, dim)
        } else {
            (right, color)
        };
        let plain = font(self.look, FontFamily::Proportional);
        let room = right - place.left();
        let at = (Pos2::new(right, y), Align2::RIGHT_CENTER, room);
        self.write(&painter, at, &cell.shown(), plain, color)
    }

    /// Text at a point, made smaller where its room is too narrow; where it stands.
    fn write(
        &mut self,
        painter: &Painter,
        (at, align, room): (Pos2, Align2, f32),
        text: &str,
        mut font: FontId,
        color: Color32,
    ) -> Option<Rect> {
        if text.is_empty() {
            return None;
        }
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
