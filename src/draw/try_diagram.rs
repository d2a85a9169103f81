//! The drawing of tries: torque against shim, the band that is wanted, the line and where the next shim comes.

use super::label_placing::{Ground, Thick, Wish, place};
use super::palette::{Dash, Palette};
use super::segment::Segment;
use super::stroke::polyline;
use crate::chart::TryDiagram;
use egui::{
    Align, Align2, Color32, FontId, Galley, Painter, Pos2, Rangef, Rect, Stroke, Vec2, pos2, vec2,
};
use std::sync::Arc;

/// How far figures stand from the plot, in points.
const GAP: f32 = 4.0;

/// The radii of the points of tries, of which the newest is the largest, and of the estimate, in points.
const OLD_RADIUS: f32 = 3.5;
const NEWEST_RADIUS: f32 = 5.5;

/// The greatest share of the plot's width that words beside a point take.
const MOST_OF_WIDTH: f32 = 0.6;

/// An estimate is no measurement: its lines are broken.
const ESTIMATED: Dash = &[4.0, 3.0];

/// Paints a diagram into a room, with figures of this height.
pub fn paint(
    painter: &Painter,
    room: Rect,
    diagram: &TryDiagram,
    palette: &Palette,
    text_size: f32,
) {
    let font = FontId::proportional(text_size);
    let write = |text: String, color: Color32| painter.layout_no_wrap(text, font.clone(), color);
    let figures = diagram.torque.marks().map(|(_, figure)| figure);
    let widths = figures.map(|figure| write(figure, palette.text).size().x);
    let left = widths.fold(text_size, f32::max) + GAP;
    let min = room.min + vec2(left, text_size * 1.6);
    let max = room.max - vec2(text_size, text_size * 1.6);
    let sheet = Sheet {
        painter,
        frame: Rect::from_min_max(min, max.max(min)),
        diagram,
        palette,
        font: font.clone(),
    };
    sheet.ground();
    sheet.upright_figures(room);
    sheet.level_figures();
    sheet.line();
    sheet.points();
    sheet.words();
}

struct Sheet<'a> {
    painter: &'a Painter,
    /// The area between the axes.
    frame: Rect,
    diagram: &'a TryDiagram,
    palette: &'a Palette,
    font: FontId,
}

/// A word beside a point, and how far it keeps away.
struct Word {
    galley: Arc<Galley>,
    anchor: Pos2,
    gap: f32,
    candidates: Vec<(Align2, Vec2)>,
}

impl Sheet<'_> {
    /// The place of a shim and a torque.
    fn at(&self, [shim, torque]: [f64; 2]) -> Pos2 {
        let share = |value: f64, [least, most]: [f64; 2]| {
            #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
            let share = ((value - least) / (most - least)) as f32;
            share
        };
        let frame = self.frame;
        pos2(
            frame.left() + share(shim, self.diagram.shim.range) * frame.width(),
            frame.bottom() - share(torque, self.diagram.torque.range) * frame.height(),
        )
    }

    fn x(&self, shim: f64) -> f32 {
        self.at([shim, self.diagram.torque.range[0]]).x
    }

    fn y(&self, torque: f64) -> f32 {
        self.at([self.diagram.shim.range[0], torque]).y
    }

    fn galley(&self, text: impl Into<String>, color: Color32) -> Arc<Galley> {
        self.painter
            .layout_no_wrap(text.into(), self.font.clone(), color)
    }

    /// The band that is wanted; none where no torque is.
    fn band(&self) -> Option<Rect> {
        let [least, most] = self.diagram.wanted?.map(|torque| self.y(torque));
        Some(Rect::from_x_y_ranges(self.frame.x_range(), most..=least))
    }

    /// Paper, and the band with its edges.
    fn ground(&self) {
        let frame = self.frame;
        self.painter.rect_filled(frame, 0.0, self.palette.paper);
        let grid = Stroke::new(1.0, self.palette.grid);
        for (shim, _) in self.diagram.shim.marks() {
            self.painter.vline(self.x(shim), frame.y_range(), grid);
        }
        for (torque, _) in self.diagram.torque.marks() {
            self.painter.hline(frame.x_range(), self.y(torque), grid);
        }
        if let Some(band) = self.band() {
            self.painter.rect_filled(band, 0.0, self.palette.wanted);
            let edge = Stroke::new(1.0, self.palette.edge);
            for y in [band.top(), band.bottom()] {
                self.painter.hline(band.x_range(), y, edge);
            }
        }
        let axis = Stroke::new(1.0, self.palette.mark);
        self.painter.hline(frame.x_range(), frame.bottom(), axis);
        self.painter.vline(frame.left(), frame.y_range(), axis);
    }

    /// The sign above, and the figures that leave it room.
    fn upright_figures(&self, room: Rect) {
        let color = self.palette.text;
        let sign = self.galley(self.diagram.torque.sign, color);
        let below = room.top() + sign.size().y;
        self.painter.galley(room.min, sign, color);
        let right = self.frame.left() - GAP;
        for (torque, figure) in self.diagram.torque.marks() {
            let galley = self.galley(figure, color);
            let size = galley.size();
            let at = pos2(right - size.x, self.y(torque) - size.y / 2.0);
            if at.y >= below {
                self.painter.galley(at, galley, color);
            }
        }
    }

    /// The sign at the right end, and the figures that leave it and each other room.
    fn level_figures(&self) {
        let y = self.frame.bottom() + GAP / 2.0;
        let color = self.palette.text;
        let sign = self.galley(self.diagram.shim.sign, color);
        let end = self.frame.right() + sign.size().y / 2.0;
        let at = pos2(end - sign.size().x, y);
        // Left of the plot stand the figures of the other axis.
        let mut taken = vec![
            Rangef::new(at.x, end),
            Rangef::new(f32::MIN, self.frame.left() - GAP),
        ];
        self.painter.galley(at, sign, color);
        for (shim, figure) in self.diagram.shim.marks() {
            let galley = self.galley(figure, color);
            let left = self.x(shim) - galley.size().x / 2.0;
            let room = Rangef::new(left, left + galley.size().x);
            if !taken.iter().any(|other| other.expand(GAP).intersects(room)) {
                taken.push(room);
                let at = pos2(left, y);
                self.painter.galley(at, galley, color);
            }
        }
    }

    fn in_frame(&self) -> Painter {
        let clip = self.frame.expand(NEWEST_RADIUS);
        self.painter
            .with_clip_rect(clip.intersect(self.painter.clip_rect()))
    }

    /// The line through the two newest tries, as far as the plot goes, and down from it to the next shim.
    fn line(&self) {
        let painter = self
            .painter
            .with_clip_rect(self.frame.intersect(self.painter.clip_rect()));
        if let Some(ends) = self.line_ends() {
            let stroke = Stroke::new(1.5, self.palette.dim_text);
            polyline(&painter, &ends, stroke, &[]);
        }
        if let Some(ends) = self.next_ends() {
            let stroke = Stroke::new(1.5, self.palette.shim);
            polyline(&painter, &ends, stroke, ESTIMATED);
        }
    }

    fn line_ends(&self) -> Option<[Pos2; 2]> {
        self.diagram.line.map(|ends| ends.map(|end| self.at(end)))
    }

    fn next_ends(&self) -> Option<[Pos2; 2]> {
        let next = self.at(self.diagram.next?);
        Some([next, pos2(next.x, self.frame.bottom())])
    }

    /// Older tries as rings, the newest filled, the estimate a ring of its own colour.
    fn points(&self) {
        let painter = self.in_frame();
        let palette = self.palette;
        let ring = |color| Stroke::new(1.5, color);
        if let Some(next) = self.diagram.next {
            let at = self.at(next);
            painter.circle(at, OLD_RADIUS, palette.paper, ring(palette.shim));
        }
        if let Some((newest, older)) = self.diagram.tries.split_last() {
            for try_made in older {
                let at = self.at(*try_made);
                painter.circle(at, OLD_RADIUS, palette.paper, ring(palette.text));
            }
            painter.circle_filled(self.at(*newest), NEWEST_RADIUS, palette.shim);
        }
    }

    /// Words beside the points and in the band, each where it covers nothing; where there is no room, none.
    fn words(&self) {
        let words: Vec<Word> = self.wished().collect();
        let count = words.len();
        let wish = |(number, word): (usize, &Word)| Wish {
            size: word.galley.size(),
            anchor: word.anchor,
            piece: None,
            candidates: word.candidates.clone(),
            gap: word.gap,
            priority: u8::try_from(count - number).unwrap_or(u8::MAX),
        };
        let wishes: Vec<Wish<'_>> = words.iter().enumerate().map(wish).collect();
        let lines = [self.line_ends(), self.next_ends()].into_iter().flatten();
        let edges = self.band().into_iter().flat_map(|band| {
            [
                [band.left_top(), band.right_top()],
                [band.left_bottom(), band.right_bottom()],
            ]
        });
        let thick: Vec<Thick> = lines
            .chain(edges)
            .map(|ends| Thick {
                line: Segment { ends },
                half_width: 1.0,
            })
            .collect();
        let made = self.diagram.tries.iter().copied().chain(self.diagram.next);
        let taken: Vec<Rect> = made
            .map(|made| Rect::from_center_size(self.at(made), Vec2::splat(2.0 * NEWEST_RADIUS)))
            .collect();
        let ground = Ground {
            taken: &taken,
            thick: &thick,
        };
        let places = place(&wishes, self.frame, &ground);
        for (word, room) in words.into_iter().zip(places) {
            if let Some(room) = room {
                self.painter
                    .galley(room.min, word.galley, self.palette.text);
            }
        }
    }

    /// The words that are wished, the most important first.
    fn wished(&self) -> impl Iterator<Item = Word> {
        let palette = self.palette;
        let tries = &self.diagram.tries;
        let next = self.diagram.next.map(|next| {
            let text = format!("next: about {}", self.diagram.shim.told(next[0]));
            let word = self.beside(self.at(next), text, palette.shim);
            // How thick it is stands at its axis too.
            if word.galley.size().x < MOST_OF_WIDTH * self.frame.width() {
                word
            } else {
                self.beside(self.at(next), "next".to_owned(), palette.shim)
            }
        });
        let newest = tries
            .last()
            .map(|newest| self.beside(self.at(*newest), "newest".to_owned(), palette.shim));
        let older = tries.iter().enumerate().rev().skip(1);
        let older = older.map(|(number, made)| {
            let text = format!("try {}", number + 1);
            self.beside(self.at(*made), text, palette.text)
        });
        newest
            .into_iter()
            .chain(next)
            .chain(self.band().map(|band| self.in_band(band)))
            .chain(older)
    }

    fn beside(&self, anchor: Pos2, text: String, color: Color32) -> Word {
        let aligns = [
            Align2::LEFT_CENTER,
            Align2::RIGHT_CENTER,
            Align2::CENTER_BOTTOM,
            Align2::CENTER_TOP,
            Align2::LEFT_BOTTOM,
            Align2::RIGHT_BOTTOM,
            Align2::LEFT_TOP,
            Align2::RIGHT_TOP,
        ];
        // Beside the point, or a little above or below that.
        let shifts = [0.0, 0.6, -0.6, 1.2, -1.2, 1.8, -1.8];
        let candidates = shifts
            .into_iter()
            .flat_map(|lines| aligns.map(|align| (align, vec2(0.0, lines * self.font.size))));
        Word {
            galley: self.galley(text, color),
            anchor,
            gap: NEWEST_RADIUS + GAP / 2.0,
            candidates: candidates.collect(),
        }
    }

    /// The word of the band: in it at one of its ends, or just above or below where it is narrow.
    fn in_band(&self, band: Rect) -> Word {
        let [from, to] = [band.left() + GAP, band.right() - GAP];
        let middle = band.center();
        let heights = [
            (middle.y, Align::Center),
            (band.top() - 2.0, Align::BOTTOM),
            (band.bottom() + 2.0, Align::TOP),
        ];
        let anchor = pos2(to, middle.y);
        let candidates = heights.into_iter().flat_map(|(y, upright)| {
            let along = [
                (to, Align::RIGHT),
                (from, Align::LEFT),
                (middle.x, Align::Center),
            ];
            along.map(|(x, level)| (Align2([level, upright]), pos2(x, y) - anchor))
        });
        Word {
            galley: self.galley("wanted", self.palette.text),
            anchor,
            gap: 0.0,
            candidates: candidates.collect(),
        }
    }
}
