//! The points of a diagram and the words beside them, each where it finds room.

use super::Look;
use super::places::{
    HEAD, beside_places, both_ends_places, column_places, foot_places, head_places,
    left_end_places, right_end_places, under_fall_places,
};
use super::roles::{priority, stands_beside, thick_half_width, word_color};
use crate::chart::{Along, Label, Place, Role, Scene};
use crate::draw::label_placing::{Ground, Piece, Thick, Wish, place};
use crate::draw::segment::Segment;
use egui::{Color32, FontId, Galley, Pos2, Rect, Ui, Vec2};
use egui_plot::PlotTransform;
use std::sync::Arc;

/// Paints points and labels between the axes and returns the places of the labels.
pub(super) fn paint(
    ui: &Ui,
    scene: &Scene,
    transform: &PlotTransform,
    look: &Look<'_>,
) -> Vec<(Rect, String)> {
    let rivals = Rivals::of(scene, transform);
    let mut sheet = Sheet {
        ui,
        scene,
        transform,
        look,
        rivals: &rivals,
        wishes: Vec::new(),
        words: Vec::new(),
    };
    let is_wanted = |label: &&Label| match label.place {
        _ if stands_beside(label.role) && !look.is_alone => false,
        // Band and axes place theirs themselves.
        Place::InBand(_) | Place::OnAxis => false,
        _ if label.role == Role::BestShift => {
            label.of.is_none_or(|of| look.drops.contains(&of.set))
        }
        Place::UnderFall(_) => label.of.is_some_and(|of| look.drops.contains(&of.set)),
        Place::Beside
        | Place::AtFoot
        | Place::AtEnd
        | Place::AtEnds(_)
        | Place::AtHead(_)
        | Place::AtStart
        | Place::InColumn(_) => true,
    };
    for label in scene.labels.iter().filter(is_wanted) {
        sheet.add(label);
    }
    let point = |at: [f64; 2]| transform.position_from_point(&at.into());
    let dots = scene.points.iter().map(|dot| {
        let color = word_color(dot.role, Some(dot.of), look);
        (point(dot.at), color)
    });
    sheet.paint(&dots.collect::<Vec<_>>())
}

struct Sheet<'a> {
    ui: &'a Ui,
    scene: &'a Scene,
    transform: &'a PlotTransform,
    look: &'a Look<'a>,
    rivals: &'a Rivals,
    wishes: Vec<Wish<'a>>,
    words: Vec<Word>,
}

/// What a figure might be taken to belong to, of every set: whether anything is written there or
/// not.
struct Rivals {
    /// Every fall and every dot.
    all: Vec<Segment>,
    dots: Vec<Segment>,
    /// Where the figures of falls stand.
    feet: Vec<Segment>,
}

impl Rivals {
    fn of(scene: &Scene, transform: &PlotTransform) -> Self {
        let mut rivals = Self {
            all: Vec::new(),
            dots: Vec::new(),
            feet: Vec::new(),
        };
        for label in &scene.labels {
            let Some(piece) = piece(label, transform) else {
                continue;
            };
            let foot = Segment {
                ends: [piece.ends[1]; 2],
            };
            if label.place == Place::Beside {
                rivals.dots.push(foot);
            } else {
                rivals.feet.push(foot);
            }
            rivals.all.push(piece);
        }
        rivals
    }

    /// A figure at a fall is nearer to it than to any other fall or dot; one at a dot may stand
    /// beside a fall, where that has no figure.
    fn piece(&self, line: Segment, is_dot: bool) -> Piece<'_> {
        let (rivals, better_rivals): (&[Segment], &[Segment]) = if is_dot {
            (&self.dots, &self.feet)
        } else {
            (&self.all, &[])
        };
        Piece {
            line,
            rivals,
            better_rivals,
        }
    }
}

/// The dot or the fall that a figure belongs to, where it belongs to one.
fn piece(label: &Label, transform: &PlotTransform) -> Option<Segment> {
    match label.place {
        Place::Beside => Some(segment([label.at; 2], transform)),
        Place::UnderFall(from) => Some(segment([[label.at[0], from], label.at], transform)),
        Place::InBand(_)
        | Place::AtFoot
        | Place::AtEnd
        | Place::AtEnds(_)
        | Place::AtHead(_)
        | Place::AtStart
        | Place::InColumn(_)
        | Place::OnAxis => None,
    }
}

fn segment(ends: [[f64; 2]; 2], transform: &PlotTransform) -> Segment {
    Segment {
        ends: ends.map(|at| transform.position_from_point(&at.into())),
    }
}

/// What a wish is for.
struct Word {
    galley: Arc<Galley>,
    color: Color32,
    /// The point that the label speaks of, where it may stand away from it.
    point: Option<Pos2>,
    /// Whether it stands beside that point, and not under it.
    is_beside: bool,
}

/// How far a label keeps from its point, in points.
const GAP: f32 = 3.0;

/// How much of the lines beneath it a label covers: they can be followed, and it can be read.
const CLEARED: f32 = 0.9;

impl Sheet<'_> {
    /// The lines of every set that no label covers.
    fn thick(&self) -> Vec<Thick> {
        let mut thick = Vec::new();
        for line in &self.scene.lines {
            if let Some(half_width) = thick_half_width(line.role, self.look) {
                let pieces = line.points.windows(2);
                thick.extend(pieces.map(|ends| Thick {
                    line: segment([ends[0], ends[1]], self.transform),
                    half_width,
                }));
            }
        }
        thick
    }

    /// How far it is from an upright rule to the next one, or to the end of the plot, in points.
    fn room_behind(&self, x: f64) -> f32 {
        let rules = self.scene.rules.iter();
        let upright = rules.filter(|rule| rule.along == Along::Y && rule.at > x);
        let next = upright.map(|rule| self.transform.position_from_point_x(rule.at));
        let end = self.transform.frame().right();
        next.fold(end, f32::min) - self.transform.position_from_point_x(x)
    }

    /// Asks for a place between the axes.
    fn add(&mut self, label: &Label) {
        let frame = *self.transform.frame();
        let mut anchor = self.transform.position_from_point(&label.at.into());
        let font = FontId::proportional(self.look.text_size);
        let color = word_color(label.role, label.of, self.look);
        let painter = self.ui.painter();
        let galley = painter.layout_no_wrap(label.text.clone(), font, color);
        let size = galley.size();
        let candidates = match label.place {
            Place::InBand(_) | Place::OnAxis => return,
            Place::Beside => beside_places(size, anchor, &self.rivals.dots),
            Place::AtFoot => {
                anchor.y = frame.bottom();
                foot_places(size.y)
            }
            Place::AtEnd => {
                anchor.x = frame.right();
                right_end_places(size.x)
            }
            Place::AtHead(row) => {
                anchor.y = frame.top();
                head_places(size.y, row, self.room_behind(label.at[0]))
            }
            Place::AtStart => {
                anchor.x = frame.left();
                left_end_places(size.x)
            }
            Place::InColumn(column) => {
                anchor.x = frame.right();
                column_places(size.y, column)
            }
            Place::AtEnds(from) => {
                let from = self.transform.position_from_point(&from.into());
                both_ends_places(from - anchor)
            }
            Place::UnderFall(from) => {
                let height = anchor.y - self.transform.position_from_point_y(from);
                under_fall_places(size.y, height)
            }
        };
        let is_beside = label.place == Place::Beside;
        let piece = piece(label, self.transform);
        self.wishes.push(Wish {
            size: size + egui::vec2(4.0, 0.0),
            anchor,
            piece: piece.map(|line| self.rivals.piece(line, is_beside)),
            candidates,
            gap: GAP,
            priority: priority(label.role, self.look),
        });
        let may_stand_away = is_beside || matches!(label.place, Place::UnderFall(_));
        self.words.push(Word {
            galley,
            color,
            point: may_stand_away.then_some(anchor),
            is_beside,
        });
    }

    fn paint(self, dots: &[(Pos2, Color32)]) -> Vec<(Rect, String)> {
        let frame = self.transform.frame().shrink(1.0);
        let clip = frame.intersect(self.ui.clip_rect());
        let painter = self.ui.painter().with_clip_rect(clip);
        // A label must not hide the point of another.
        let around = |at: Pos2, radius: f32| Rect::from_center_size(at, Vec2::splat(2.0 * radius));
        let dots_taken = dots.iter().map(|(at, _)| around(*at, GAP - 0.5));
        let mut taken: Vec<Rect> = dots_taken.collect();
        let written = self.wishes.iter().zip(&self.words);
        let falls = written.filter(|(_, word)| !word.is_beside);
        let falls = falls.filter_map(|(wish, _)| wish.piece);
        taken.extend(falls.map(|fall| around(fall.line.ends[0], HEAD)));
        let thick = self.thick();
        let ground = Ground {
            taken: &taken,
            thick: &thick,
        };
        let placed = place(&self.wishes, frame, &ground);
        // No thread may run over the letters of another label.
        for (rect, word) in placed.iter().zip(&self.words) {
            if let Some(rect) = rect {
                thread(&painter, *rect, word);
            }
        }
        for rect in placed.iter().flatten() {
            clear_paper(&painter, *rect, self.look);
        }
        for (dot, color) in dots {
            painter.circle_filled(*dot, GAP, *color);
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

/// Lines run everywhere: a label clears a little paper for itself.
fn clear_paper(painter: &egui::Painter, rect: Rect, look: &Look<'_>) {
    painter.rect_filled(rect, 2.0, look.palette.paper.gamma_multiply(CLEARED));
}

/// A thread ties a label to its point where it stands away from it.
fn thread(painter: &egui::Painter, rect: Rect, word: &Word) {
    let Some(point) = word.point else { return };
    let nearest = rect.clamp(point);
    let is_away = nearest.distance(point) > 2.0 * GAP;
    // Beside its fall a label stands above the foot, and needs no thread.
    if is_away && (word.is_beside || rect.top() > point.y) {
        painter.line_segment([point, nearest], (1.0, word.color));
    }
}
