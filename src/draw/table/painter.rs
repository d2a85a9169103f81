//! Puts the part of a table that is in view onto the canvas, and notes where everything came to stand.
//!
//! Three parts never cover each other: the heads, which go along with the figures from left to right;
//! what names the rows and what is said of a set, which goes along with them from top to bottom; and
//! the figures.

use super::column::{DIFFERENCE_GAP, LaidColumn, LaidHeading, remark_gap};
use super::content::{ContentRow, Heading};
use super::layout::{Holds, LaidRow, Layout};
use super::part::LaidPart;
use super::spoken::{DrawnName, DrawnRow};
use super::words::{Words, font, small, swatch_width};
use super::{DrawnCell, DrawnHeading, TableDrawn, TableLook};
use crate::chart::Cell;
use crate::draw::palette::dash;
use crate::draw::{bold, sample};
use egui::{
    Align2, Color32, FontFamily, FontId, Galley, Painter, Pos2, Rect, StrokeKind, Ui, Vec2,
};
use std::sync::Arc;

pub(super) struct TablePainter<'a, 't> {
    layout: &'a Layout<'t>,
    look: &'a TableLook<'a>,
    /// Where the table would begin if all of it were in view.
    origin: Pos2,
    view: Rect,
    /// The part whose head stays in view, and where that stands.
    staying: (usize, f32),
    /// All that is in view.
    seen: Painter,
    /// What of it lies beneath that head, the figures beside the names, and both.
    figures: Painter,
    names: Painter,
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
        let staying = staying_head(layout, all.min, view);
        let (part, top) = staying;
        let head_height = layout.parts.get(part).map_or(0.0, |part| part.head_height);
        let beneath_head = top + head_height;
        let beside_names = view.left() + layout.names.width;
        let seen = ui.painter_at(view.intersect(ui.clip_rect()));
        let from = |left: f32| {
            seen.with_clip_rect(Rect::from_min_max(Pos2::new(left, beneath_head), view.max))
        };
        Self {
            layout,
            look,
            origin: all.min,
            view,
            staying,
            figures: from(beside_names),
            names: from(view.left()),
            seen,
            drawn: TableDrawn {
                rect: all,
                beneath_head,
                rows: Vec::new(),
                words: Vec::new(),
                headings: Vec::new(),
                labels: Vec::new(),
            },
        }
    }

    /// Headings, and above them the names of the sets that stand side by side.
    pub(super) fn heads(&mut self) {
        let layout = self.layout;
        let legend = self.seen.clone();
        for (at, words) in &layout.legend {
            self.words(&legend, self.view.min + *at, words);
        }
        let (staying, top) = self.staying;
        for (at, part) in layout.parts.iter().enumerate() {
            let (above, top) = if at == staying {
                (self.view.top() + layout.legend_height, top)
            } else {
                (self.drawn.beneath_head, self.origin.y + part.top)
            };
            self.head(part, above, top);
        }
        self.edges();
    }

    /// The head of a part as far as it lies beneath a line.
    fn head(&mut self, part: &LaidPart<'t>, above: f32, top: f32) {
        let layout = self.layout;
        let bottom = top + part.head_height - 4.0;
        let samples = layout.sample_height();
        let left = self.view.left();
        let beneath = |left: f32| {
            let part = Rect::from_min_max(Pos2::new(left, above), self.view.max);
            self.seen.with_clip_rect(part)
        };
        let (corner, painter) = (beneath(left), beneath(left + layout.names.width));
        let heading = (&part.names_heading, part.part.names);
        self.heading(&corner, heading, left, bottom - samples);
        if let Some(title) = &part.title {
            let beneath = bottom - samples - part.names_heading.galley.size().y;
            let at = Pos2::new(left, beneath - title.size().y);
            self.galley(&corner, at, title);
        }
        for heading in part.headings.iter().zip(&part.part.headings) {
            let (laid, words) = heading;
            self.heading(&painter, (laid, *words), self.origin.x, bottom - samples);
        }
        if samples > 0.0 {
            // Over a column in which nothing stands it would lie on its neighbour's.
            let is_seen = |column: &&LaidColumn| column.figures > 0.0 && self.is_seen(column);
            for column in part.figures.iter().filter(is_seen) {
                self.sample_over(&painter, column, bottom, samples);
            }
        }
    }

    fn heading(
        &mut self,
        painter: &Painter,
        (laid, heading): (&LaidHeading, Heading<'t>),
        left: f32,
        bottom: f32,
    ) {
        let galley = &laid.galley;
        let at = Pos2::new(left + laid.x, bottom - galley.size().y);
        if let Some(rect) = self.galley(painter, at, galley) {
            self.drawn.headings.push(DrawnHeading { heading, rect });
        }
    }

    /// Words of a head at their place; where they stand, if that is in view.
    fn galley(&mut self, painter: &Painter, at: Pos2, galley: &Arc<Galley>) -> Option<Rect> {
        let rect = galley.rect.translate(at.to_vec2());
        if !painter.clip_rect().intersects(rect) {
            return None;
        }
        painter.galley(at, galley.clone(), self.look.palette.dim_text);
        self.drawn.labels.push((rect, galley.text().to_owned()));
        Some(rect)
    }

    /// The colour and dash of the set whose figures stand under a heading.
    fn sample_over(&self, painter: &Painter, column: &LaidColumn, bottom: f32, height: f32) {
        let right = self.origin.x + column.right;
        let width = column.figures.max(self.look.text_size);
        let place = Rect::from_x_y_ranges(right - width..=right, bottom - height..=bottom);
        if let Some((_, words)) = self.layout.legend.get(column.of)
            && let Some(livery) = words.swatch
        {
            let color = self.look.palette.set(livery);
            sample(painter, place, color, dash(livery));
        }
    }

    /// Lines where something lies out of view above, or to the left.
    fn edges(&self) {
        let stroke = (1.0, self.look.palette.dim_text);
        if self.origin.y < self.view.top() - 0.5 {
            let y = self.drawn.beneath_head - 1.0;
            self.seen.hline(self.view.x_range(), y, stroke);
        }
        if self.origin.x < self.view.left() - 0.5 {
            let x = self.view.left() + self.layout.names.width - 1.0;
            let bottom = self.origin.y + self.layout.size.y;
            let lines = self.layout.parts.iter().flat_map(|part| &part.lines);
            for row in lines.filter(|line| matches!(line.holds, Holds::Rows(_))) {
                let top = self.origin.y + row.top;
                let range = top..=(top + row.height).min(bottom);
                self.names.vline(x, range, stroke);
            }
        }
    }

    /// Everything beneath the heads.
    pub(super) fn lines(&mut self) {
        let layout = self.layout;
        for part in &layout.parts {
            for line in &part.lines {
                let top = self.origin.y + line.top;
                match &line.holds {
                    Holds::Words(words) => {
                        let painter = self.names.clone();
                        let at = Pos2::new(self.view.left(), top);
                        if let Some(spoken) = &words.spoken {
                            let size = Vec2::new(words.width(self.look), line.height);
                            let rect = Rect::from_min_size(at, size);
                            self.drawn.words.push((rect, spoken.clone()));
                        }
                        self.words(&painter, at, words);
                    }
                    Holds::Rows(row) => {
                        let end = self.origin.x + layout.size.x;
                        let right = end.min(self.view.right()).max(self.view.left());
                        let level = self.view.left()..=right;
                        let rect = Rect::from_x_y_ranges(level, top..=top + line.height);
                        self.row(part, row, rect);
                    }
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

    fn row(&mut self, part: &LaidPart<'t>, row: &LaidRow<'t>, rect: Rect) {
        let is_in_view = self.names.clip_rect().intersects(rect);
        if is_in_view {
            self.ground(row, rect);
        }
        let layout = self.layout;
        let mut cells = Vec::with_capacity(part.figures.len());
        let place = Rect::from_min_size(rect.min, Vec2::new(layout.names.width, rect.height()));
        let name = DrawnName {
            text: row.name.text().into_owned(),
            rect: place,
            written: is_in_view.then(|| self.name(row, place)).flatten(),
        };
        for column in &part.figures {
            let Some(Some(ContentRow { of, cells: own, .. })) = row.of_sets.get(column.of) else {
                continue;
            };
            let corner = Pos2::new(self.origin.x + column.left, rect.top());
            let place = Rect::from_min_size(corner, Vec2::new(column.width, rect.height()));
            let cell = own[column.at];
            let color = if layout.beside > 1 {
                self.look.palette.set(layout.sets[column.of].livery)
            } else {
                self.look.palette.text
            };
            let is_seen = is_in_view && self.is_seen(column);
            cells.push(DrawnCell {
                of: *of,
                heading: part.part.headings[column.at],
                cell,
                rect: place.intersect(self.figures.clip_rect()),
                written: is_seen
                    .then(|| self.cell(cell, place, column, color))
                    .flatten(),
            });
        }
        self.drawn.rows.push(DrawnRow {
            of: row.present().map(|row| row.of).collect(),
            rect,
            name,
            cells,
            part: part.part.key,
            title: part.part.title,
            names: part.part.names.title,
            sets: row.present().map(|row| layout.sets[row.at].name).collect(),
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
    fn ground(&self, row: &LaidRow<'t>, rect: Rect) {
        let palette = self.look.palette;
        let wanted = self.look.gear;
        let mut rows = row.present();
        if let Some(row) = rows.find(|row| row.of.gear.is_some() && row.of.gear == wanted) {
            let color = palette.set(self.layout.sets[row.at].livery);
            let tint = color.gamma_multiply(0.1);
            let line = (1.0, color);
            self.names.rect(rect, 2.0, tint, line, StrokeKind::Inside);
        } else {
            let line = (1.0, palette.grid);
            self.names.hline(rect.x_range(), rect.bottom(), line);
        }
    }

    /// What a row is called, and behind it what is remarked of it.
    fn name(&mut self, row: &LaidRow<'t>, place: Rect) -> Option<Rect> {
        let palette = self.look.palette;
        let painter = self.names.clone();
        let at = place.left_center();
        let color = match row.present().next() {
            Some(row) if self.layout.beside <= 1 => palette.set(self.layout.sets[row.at].livery),
            Some(_) | None => palette.text,
        };
        let left = Align2::LEFT_CENTER;
        let end = self.layout.names.right;
        let bold = font(self.look, bold());
        let label = self.write(&painter, (at, left, end), row.name.label, bold, color);
        if let Some(remark) = &row.name.remark {
            let taken = label.map_or(0.0, |label| label.width()) + remark_gap(self.look);
            let room = (end - taken).max(1.0);
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
        let seen = painter.clip_rect();
        if is_cut(rect, seen) {
            // Half of a number reads as another one.
            let more = painter.layout_no_wrap(CUT.to_owned(), small(self.look), color);
            let room = seen.intersect(rect);
            if more.size().x <= room.width() {
                let place = align.align_size_within_rect(more.size(), room);
                painter.galley(place.min, more, color);
            }
        } else {
            painter.galley(rect.min, galley, color);
        }
        self.drawn.labels.push((rect, text.to_owned()));
        Some(rect)
    }
}

/// What stands where a text is cut off.
const CUT: &str = "…";

/// Whether a text is seen in part, from side to side.
fn is_cut(text: Rect, seen: Rect) -> bool {
    let is_seen = seen.x_range().intersects(text.x_range());
    is_seen && (text.left() < seen.left() - 0.5 || text.right() > seen.right() + 0.5)
}

/// The part whose head stays in view while its rows are scrolled beneath it, and where that head stands: the
/// head of the next part pushes it away.
fn staying_head(layout: &Layout<'_>, origin: Pos2, view: Rect) -> (usize, f32) {
    let least = view.top() + layout.legend_height;
    let tops = layout.parts.iter().map(|part| origin.y + part.top);
    let begun = tops.clone().take_while(|top| *top <= least).count();
    let at = begun.saturating_sub(1);
    let height = layout.parts.get(at).map_or(0.0, |part| part.head_height);
    let next = tops.clone().nth(at + 1).map_or(least, |next| next - height);
    (at, least.min(next))
}
