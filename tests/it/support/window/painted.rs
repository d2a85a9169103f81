//! What does a window paint? Every text, and the place of every dot.

use super::Window;
use egui::epaint::CircleShape;
use egui::{Rect, Shape, vec2};

/// A text with its place.
pub(crate) type Text = (String, Rect);

/// What is painted: every text, and the place of every dot.
pub(crate) struct Painted {
    pub(crate) texts: Vec<Text>,
    /// Texts of which only a part is seen from side to side, with that part.
    pub(crate) cut: Vec<Text>,
    pub(crate) dots: Vec<Rect>,
}

impl Painted {
    pub(crate) fn of(window: &Window) -> Self {
        let mut painted = Self {
            texts: Vec::new(),
            cut: Vec::new(),
            dots: Vec::new(),
        };
        for clipped in &window.harness.output().shapes {
            painted.add(&clipped.shape, clipped.clip_rect);
        }
        painted
    }

    fn add(&mut self, shape: &Shape, clip: Rect) {
        match shape {
            Shape::Text(text) => {
                let rect = text.galley.rect.translate(text.pos.to_vec2());
                let words = text.galley.text().to_owned();
                let seen = rect.intersect(clip);
                if seen.is_positive() && seen.width() < rect.width() - 1.0 {
                    self.cut.push((words.clone(), seen));
                }
                self.texts.push((words, seen));
            }
            Shape::Circle(CircleShape { center, radius, .. }) => {
                let side = vec2(2.0 * radius, 2.0 * radius);
                self.dots.push(Rect::from_center_size(*center, side));
            }
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| self.add(shape, clip)),
            _ => {}
        }
    }
}
