//! Where do the words at a handle stand?

use super::Handles;
use egui::{Align2, FontId, Pos2, Stroke, Vec2};

impl Handles<'_> {
    /// Words above and beside a handle, kept within the plot.
    pub(super) fn write(&self, words: &str, at: Pos2, away: f32) {
        let frame = self.drawn.transform.frame().shrink(4.0);
        let font = FontId::new(12.5, crate::draw::bold());
        let painter = self.ui.painter();
        let galley = painter.layout_no_wrap(words.to_owned(), font, self.palette.text);
        let size = galley.size() + Vec2::new(12.0, 6.0);
        let above = at - Vec2::new(0.0, away);
        let mut rect = Align2::CENTER_BOTTOM.anchor_size(above, size);
        if rect.top() < frame.top() {
            rect = Align2::LEFT_CENTER.anchor_size(at + Vec2::new(away, 0.0), size);
        }
        rect = rect.translate(Vec2::new(
            (frame.left() - rect.left()).max(0.0) + (frame.right() - rect.right()).min(0.0),
            (frame.top() - rect.top()).max(0.0),
        ));
        painter.rect_filled(rect, 4.0, self.palette.paper);
        let outline = Stroke::new(1.5, self.palette.set(self.set.place));
        painter.rect_stroke(rect, 4.0, outline, egui::StrokeKind::Inside);
        painter.galley(rect.min + Vec2::new(6.0, 3.0), galley, self.palette.text);
    }
}
