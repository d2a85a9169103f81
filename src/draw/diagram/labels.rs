//! The words within a speed diagram: marked speeds, engine speeds at them, falls, redline.

use super::Look;
use crate::chart::{SetTrace, SpeedDiagram};
use crate::draw::label_placing::{Wish, place};
use crate::units::{plain_number, round_to, rpm_difference_text, rpm_text, typed_rpm_text};
use egui::{Align2, Color32, FontId, Galley, Pos2, Rect, Ui, Vec2};
use egui_plot::PlotTransform;
use std::sync::Arc;

/// Paints the labels and returns their places.
pub(super) fn paint(
    ui: &Ui,
    diagram: &SpeedDiagram,
    transform: &PlotTransform,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    let mut sheet = Sheet {
        ui,
        transform,
        look,
        wishes: Vec::new(),
        words: Vec::new(),
    };
    sheet.marked_speeds(diagram);
    sheet.marked_rpm(diagram);
    for trace in &diagram.traces {
        sheet.crossings(diagram, trace);
        if look.with_drops {
            sheet.drops(trace);
        }
    }
    let mut labels = sheet.paint();
    labels.extend(axis_words(ui, diagram, transform, look));
    labels
}

struct Sheet<'a> {
    ui: &'a Ui,
    transform: &'a PlotTransform,
    look: &'a Look<'a>,
    wishes: Vec<Wish>,
    words: Vec<Word>,
}

/// What a wish is for.
struct Word {
    galley: Arc<Galley>,
    color: Color32,
    /// The point that the label speaks of, where it may stand away from it.
    point: Option<Pos2>,
    /// Whether a dot marks that point.
    has_dot: bool,
}

impl Word {
    fn dot(&self) -> Option<Pos2> {
        self.point.filter(|_| self.has_dot)
    }
}

/// Corners that a label may take beside a point, best first.
const BESIDE: [Align2; 8] = [
    Align2::LEFT_TOP,
    Align2::RIGHT_BOTTOM,
    Align2::LEFT_CENTER,
    Align2::RIGHT_CENTER,
    Align2::CENTER_TOP,
    Align2::CENTER_BOTTOM,
    Align2::LEFT_BOTTOM,
    Align2::RIGHT_TOP,
];

/// How far a label keeps from its point, in points.
const GAP: f32 = 3.0;

const MARK: u8 = 9;
const CROSSING: u8 = 7;
const DROP: u8 = 5;

impl Sheet<'_> {
    fn add(&mut self, text: String, color: Color32, anchor: Pos2, places: Places, priority: u8) {
        let font = FontId::proportional(self.look.text_size);
        let galley = self.ui.painter().layout_no_wrap(text, font, color);
        let candidates = match places {
            Places::Beside => beside_places(galley.size().y),
            Places::OnFoot => foot_places(galley.size().y),
            Places::AtRightEnd => right_end_places(galley.size().x),
            Places::UnderFall(height) => under_fall_places(galley.size().y, height),
        };
        self.wishes.push(Wish {
            size: galley.size() + egui::vec2(4.0, 0.0),
            anchor,
            candidates,
            gap: GAP,
            priority,
        });
        let may_stand_away = matches!(places, Places::Beside | Places::UnderFall(_));
        self.words.push(Word {
            galley,
            color,
            point: may_stand_away.then_some(anchor),
            has_dot: matches!(places, Places::Beside),
        });
    }

    /// Each marked road speed at the foot of its line.
    fn marked_speeds(&mut self, diagram: &SpeedDiagram) {
        let bottom = self.transform.frame().bottom();
        let unit = diagram.unit.sign();
        for &speed in &diagram.marked_speeds {
            let x = self.transform.position_from_point_x(speed);
            let text = format!("{} {unit}", plain_number(round_to(speed, 0.1)));
            let at = Pos2::new(x, bottom);
            self.add(text, self.look.palette.dim_text, at, Places::OnFoot, MARK);
        }
    }

    /// Each marked engine speed at the right end of its line.
    fn marked_rpm(&mut self, diagram: &SpeedDiagram) {
        let right = self.transform.frame().right();
        for &rpm in &diagram.marked_rpm {
            let at = Pos2::new(right, self.transform.position_from_point_y(rpm));
            let text = format!("{} rpm", typed_rpm_text(rpm));
            self.add(
                text,
                self.look.palette.dim_text,
                at,
                Places::AtRightEnd,
                MARK,
            );
        }
    }

    /// The engine speed in top gear at each marked road speed.
    fn crossings(&mut self, diagram: &SpeedDiagram, trace: &SetTrace) {
        let Some(top) = trace.top() else { return };
        let color = self.look.palette.set(trace.place);
        for &speed in &diagram.marked_speeds {
            let rpm = top.rpm_at(speed);
            if rpm < diagram.floor_rpm || rpm > diagram.redline_rpm {
                continue;
            }
            let at = self.transform.position_from_point(&[speed, rpm].into());
            self.add(rpm_text(rpm), color, at, Places::Beside, CROSSING);
        }
    }

    /// How far the needle falls at each shift.
    fn drops(&mut self, trace: &SetTrace) {
        let color = self.look.palette.set(trace.place);
        for shift in &trace.shifts {
            let point = |rpm: f64| {
                let at = [shift.speed, rpm].into();
                self.transform.position_from_point(&at)
            };
            let foot = point(shift.rpm_after_shift);
            let height = foot.y - point(shift.shift_rpm).y;
            let text = rpm_difference_text(shift.rpm_after_shift - shift.shift_rpm);
            self.add(text, color, foot, Places::UnderFall(height), DROP);
        }
    }

    fn paint(self) -> Vec<(Rect, String)> {
        let frame = self.transform.frame().shrink(1.0);
        let clip = frame.intersect(self.ui.clip_rect());
        let painter = self.ui.painter().with_clip_rect(clip);
        // A label must not hide the point of another.
        let dots = self.words.iter().filter_map(Word::dot);
        let dots: Vec<Rect> = dots
            .map(|dot| Rect::from_center_size(dot, Vec2::splat(2.0 * GAP - 1.0)))
            .collect();
        let placed = place(&self.wishes, frame, &dots);
        for (rect, word) in placed.iter().zip(&self.words) {
            if let Some(rect) = rect {
                clear_paper(&painter, *rect, word, self.look);
            }
        }
        for word in &self.words {
            if let Some(dot) = word.dot() {
                painter.circle_filled(dot, GAP, word.color);
            }
        }
        let mut labels = Vec::new();
        for (rect, word) in placed.into_iter().zip(self.words) {
            let Some(rect) = rect else { continue };
            labels.push((rect, word.galley.text().to_owned()));
            painter.galley(rect.min + egui::vec2(2.0, 0.0), word.galley, word.color);
        }
        labels
    }
}

/// Lines run everywhere: a label clears a little paper for itself, and a thread ties it to its
/// point where it stands away from it.
fn clear_paper(painter: &egui::Painter, rect: Rect, word: &Word, look: &Look<'_>) {
    painter.rect_filled(rect, 2.0, look.palette.paper.gamma_multiply(0.8));
    let Some(point) = word.point else { return };
    let nearest = rect.clamp(point);
    let is_away = nearest.distance(point) > 2.0 * GAP;
    // Beside its fall a label stands above the foot, and needs no thread.
    if is_away && (word.has_dot || rect.top() > point.y) {
        painter.line_segment([point, nearest], (1.0, word.color.gamma_multiply(0.7)));
    }
}

/// Where a label may stand in relation to its point.
#[derive(Clone, Copy)]
enum Places {
    /// Beside a point that a dot marks.
    Beside,
    /// On the foot of an upright line, in one of three rows.
    OnFoot,
    /// At the right end of a level line.
    AtRightEnd,
    /// Under the foot of a fall of this height in points, else along it.
    UnderFall(f32),
}

/// Around a point, then further and further above and below it.
fn beside_places(row_height: f32) -> Vec<(Align2, Vec2)> {
    let around = BESIDE.map(|align| (align, Vec2::ZERO));
    let away = [1.0, 2.0, 3.0].into_iter().flat_map(|rows| {
        let down = egui::vec2(0.0, rows * row_height);
        [
            (Align2::LEFT_TOP, down),
            (Align2::RIGHT_BOTTOM, -down),
            (Align2::RIGHT_TOP, down),
            (Align2::LEFT_BOTTOM, -down),
        ]
    });
    around.into_iter().chain(away).collect()
}

/// Above or below a line's right end, or a little before it.
fn right_end_places(width: f32) -> Vec<(Align2, Vec2)> {
    let before = [0.0, 1.0, 2.0].into_iter();
    let sides = [Align2::RIGHT_BOTTOM, Align2::RIGHT_TOP];
    before
        .flat_map(|times| sides.map(|side| (side, egui::vec2(-times * (width + 10.0), 0.0))))
        .collect()
}

/// Under the foot of a fall, where the set's own lines leave room; else beside the fall.
fn under_fall_places(row_height: f32, height: f32) -> Vec<(Align2, Vec2)> {
    let under = |rows: f32| {
        let sides = [Align2::CENTER_TOP, Align2::LEFT_TOP, Align2::RIGHT_TOP];
        sides.map(|side| (side, egui::vec2(0.0, rows * row_height)))
    };
    let beside = [0.5, 0.25, 0.75].into_iter().flat_map(|share| {
        let sides = [Align2::RIGHT_CENTER, Align2::LEFT_CENTER];
        sides.map(|side| (side, egui::vec2(0.0, -share * height)))
    });
    let near = under(0.0).into_iter().chain(under(1.0));
    near.chain(beside).chain(under(2.0)).collect()
}

fn foot_places(row_height: f32) -> Vec<(Align2, Vec2)> {
    let rows = [0.0, -1.0, -2.0];
    let sides = [Align2::LEFT_BOTTOM, Align2::RIGHT_BOTTOM];
    let row = |up: f32| sides.map(|side| (side, egui::vec2(0.0, up * row_height)));
    rows.into_iter().flat_map(row).collect()
}

/// What the axes show, in their corners, and the redline's number in its colour.
fn axis_words(
    ui: &Ui,
    diagram: &SpeedDiagram,
    transform: &PlotTransform,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    let frame = transform.frame();
    let font = FontId::proportional(look.text_size);
    let mut labels = Vec::new();
    let mut write = |at: Pos2, align: Align2, text: String, font: FontId, color: Color32| {
        let rect = ui.painter().text(at, align, &text, font, color);
        labels.push((rect, text));
    };
    let y = transform.position_from_point_y(diagram.redline_rpm);
    let corner = Pos2::new(frame.left() - 4.0, frame.bottom());
    if frame.y_range().contains(y) {
        let bold = FontId::new(look.text_size, super::super::fonts::bold());
        // Close to the foot of the axis it makes way for the unit there.
        let row_height = ui.fonts_mut(|fonts| fonts.row_height(&bold)) + 1.0;
        let at = Pos2::new(corner.x, y.min(corner.y - row_height));
        let text = typed_rpm_text(diagram.redline_rpm);
        write(at, Align2::RIGHT_CENTER, text, bold, look.palette.redline);
    }
    let rpm = "rpm".to_owned();
    write(
        corner,
        Align2::RIGHT_CENTER,
        rpm,
        font.clone(),
        look.palette.dim_text,
    );
    let right = Pos2::new(frame.right(), frame.bottom() + 1.0);
    let unit = diagram.unit.sign().to_owned();
    write(right, Align2::RIGHT_TOP, unit, font, look.palette.dim_text);
    labels
}
