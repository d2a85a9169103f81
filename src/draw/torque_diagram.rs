//! The drawing of a small torque diagram: where its values stand, and the lines and figures of it.

use super::palette::Palette;
use super::stroke::polyline;
use crate::chart::{TorqueDiagram, TorqueScales};
use crate::units::{plain_number, round_to};
use egui::{Align2, Color32, FontId, Painter, Pos2, Rangef, Rect, Stroke, pos2};

/// The widths of the lines of torque and of power, in points.
const TORQUE_WIDTH: f32 = 2.0;
const POWER_WIDTH: f32 = 1.0;

/// Where the values of a torque diagram stand on the screen.
#[derive(Debug, Clone, Copy)]
pub struct TorquePlaces {
    /// The area between the axes.
    pub frame: Rect,
    scales: TorqueScales,
}

impl TorquePlaces {
    /// The places of these scales in a room, of which the figures of this height take the edges.
    pub fn in_room(room: Rect, scales: TorqueScales, text_size: f32) -> Self {
        let min = room.min + egui::vec2(text_size * 2.9, text_size * 1.6);
        let max = room.max - egui::vec2(text_size * 2.6, text_size * 1.6);
        Self {
            frame: Rect::from_min_max(min, max),
            scales,
        }
    }

    /// The place of an engine speed in rev/min and a torque in N·m.
    pub fn of_torque(&self, [rpm, nm]: [f64; 2]) -> Pos2 {
        self.at([rpm / self.scales.rpm[0], nm / self.scales.nm[0]])
    }

    /// The engine speed in rev/min and the torque in N·m at a place.
    pub fn torque_at(&self, at: Pos2) -> [f64; 2] {
        let size = self.frame.size();
        let x = (at.x - self.frame.left()) / size.x.max(1.0);
        let y = (self.frame.bottom() - at.y) / size.y.max(1.0);
        [
            f64::from(x) * self.scales.rpm[0],
            f64::from(y) * self.scales.nm[0],
        ]
    }

    fn of_power(&self, [rpm, kw]: [f64; 2]) -> Pos2 {
        self.at([rpm / self.scales.rpm[0], kw / self.scales.kw[0]])
    }

    #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
    fn at(&self, [x, y]: [f64; 2]) -> Pos2 {
        pos2(
            self.frame.left() + x as f32 * self.frame.width(),
            self.frame.bottom() - y as f32 * self.frame.height(),
        )
    }
}

/// Paints a diagram with figures of this height; a point that can be moved is painted by whoever moves it.
pub fn paint(
    painter: &Painter,
    diagram: &TorqueDiagram,
    places: &TorquePlaces,
    palette: &Palette,
    text_size: f32,
) {
    let sheet = Sheet {
        painter,
        diagram,
        places,
        palette,
        font: FontId::proportional(text_size),
    };
    sheet.ground();
    sheet.upright_figures();
    sheet.level_figures();
    sheet.lines();
}

struct Sheet<'a> {
    painter: &'a Painter,
    diagram: &'a TorqueDiagram,
    places: &'a TorquePlaces,
    palette: &'a Palette,
    font: FontId,
}

/// How far figures stand from the plot, in points.
const GAP: f32 = 4.0;

impl Sheet<'_> {
    fn x(&self, rpm: f64) -> f32 {
        self.places.of_torque([rpm, 0.0]).x
    }

    fn write(&self, at: Pos2, align: Align2, text: &str, color: Color32) {
        self.painter.text(at, align, text, self.font.clone(), color);
    }

    /// Paper, the engine speeds beyond the redline and below idle, and the rules at both.
    fn ground(&self) {
        let frame = self.places.frame;
        let part = |from: f32, to: f32| Rect::from_x_y_ranges(from..=to, frame.y_range());
        self.painter.rect_filled(frame, 0.0, self.palette.paper);
        let redline = self.x(self.diagram.redline_rpm);
        let beyond = part(redline, frame.right());
        self.painter.rect_filled(beyond, 0.0, self.palette.band);
        let rule = |x: f32, width: f32, color: Color32| {
            let stroke = Stroke::new(width, color);
            self.painter.vline(x, frame.y_range(), stroke);
        };
        if let Some(idle) = self.diagram.idle_rpm.map(|rpm| self.x(rpm)) {
            let below = part(frame.left(), idle);
            self.painter.rect_filled(below, 0.0, self.palette.labouring);
            rule(idle, 1.0, self.palette.mark);
        }
        rule(redline, 2.0, self.palette.redline);
    }

    /// The lines across, with torque on the left and power on the right.
    fn upright_figures(&self) {
        let frame = self.places.frame;
        let scales = &self.diagram.scales;
        let grid = Stroke::new(1.0, self.palette.grid);
        for line in marks(scales.nm) {
            let y = self.places.of_torque([0.0, line * scales.nm[1]]).y;
            self.painter.hline(frame.x_range(), y, grid);
            let torque = figure(line * scales.nm[1]);
            let power = figure(line * scales.kw[1]);
            let left = pos2(frame.left() - GAP, y);
            let right = pos2(frame.right() + GAP, y);
            self.write(left, Align2::RIGHT_CENTER, &torque, self.palette.text);
            self.write(right, Align2::LEFT_CENTER, &power, self.palette.dim_text);
        }
        let above = frame.top() - GAP;
        let left = pos2(frame.left() - GAP, above);
        self.write(left, Align2::RIGHT_BOTTOM, "N·m", self.palette.text);
        let right = pos2(frame.right() + GAP, above);
        self.write(right, Align2::LEFT_BOTTOM, "kW", self.palette.dim_text);
    }

    /// Idle and the redline, and round engine speeds where they leave room.
    fn level_figures(&self) {
        let frame = self.places.frame;
        let y = frame.bottom() + GAP / 2.0;
        let end = pos2(frame.right() + GAP, y);
        self.write(end, Align2::LEFT_TOP, "rpm", self.palette.dim_text);
        let [end_rpm, step_rpm] = self.diagram.scales.rpm;
        let own = [
            Some((self.diagram.redline_rpm, self.palette.redline)),
            self.diagram.idle_rpm.map(|rpm| (rpm, self.palette.text)),
        ];
        let round = marks([end_rpm, step_rpm]).map(|mark| (mark * step_rpm, self.palette.dim_text));
        let mut taken: Vec<Rangef> = Vec::new();
        for (rpm, color) in own.into_iter().flatten().chain(round) {
            let text = figure(rpm);
            let galley = self.painter.layout_no_wrap(text, self.font.clone(), color);
            let at = pos2(self.x(rpm) - galley.size().x / 2.0, y);
            let room = Rangef::new(at.x, at.x + galley.size().x);
            if taken
                .iter()
                .all(|other| !other.expand(GAP).intersects(room))
            {
                taken.push(room);
                self.painter.galley(at, galley, color);
            }
        }
    }

    /// Power, and torque over it.
    fn lines(&self) {
        let painter = self.painter.with_clip_rect(
            self.places
                .frame
                .expand(TORQUE_WIDTH)
                .intersect(self.painter.clip_rect()),
        );
        let power: Vec<Pos2> = self
            .diagram
            .power
            .iter()
            .map(|p| self.places.of_power(*p))
            .collect();
        let torque: Vec<Pos2> = self
            .diagram
            .torque
            .iter()
            .map(|p| self.places.of_torque(*p))
            .collect();
        let thin = Stroke::new(POWER_WIDTH, self.palette.mark);
        polyline(&painter, &power, thin, &[]);
        let thick = Stroke::new(TORQUE_WIDTH, self.palette.text);
        polyline(&painter, &torque, thick, &[]);
    }
}

/// The marks of an axis that ends there and has such steps, counted from 0.
fn marks([end, step]: [f64; 2]) -> impl Iterator<Item = f64> {
    const MOST: u8 = 20;
    let count = (end / step).floor();
    (0..=MOST)
        .map(f64::from)
        .take_while(move |mark| *mark <= count)
}

fn figure(value: f64) -> String {
    plain_number(round_to(value, 0.001))
}
