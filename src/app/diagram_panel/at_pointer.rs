//! What does every set do at the place under the pointer?
//!
//! It stands in the lower right corner of the plot: below the top gears no line runs there.

use crate::chart::{Figure, Reading, Scene};
use crate::draw::diagram::Drawn;
use crate::draw::palette::{Palette, dash};
use crate::draw::{bold, sample};
use egui::{
    Align2, Color32, FontId, Painter, Pos2, Rect, Ui, Vec2, text::LayoutJob, text::TextFormat,
};

const TEXT: f32 = 12.5;

/// Paints the reading at the pointer's place.
pub(super) fn reading_ui(ui: &Ui, scene: &Scene, palette: &Palette, drawn: &Drawn, pointer: Pos2) {
    let x = spelled_x(scene, drawn, pointer);
    let Some(reading) = scene.reading_at(x) else {
        return;
    };
    let frame = *drawn.transform.frame();
    let painter = ui.painter().with_clip_rect(frame);
    line_ui(
        &painter,
        drawn.transform.position_from_point_x(x),
        palette,
        drawn,
    );

    let lines = lines(scene, reading, palette);
    let galleys: Vec<_> = lines
        .into_iter()
        .map(|line| (line.swatch, painter.layout_job(line.words)))
        .collect();
    let width = galleys.iter().map(|(_, g)| g.size().x).fold(0.0, f32::max) + 34.0;
    let row = (TEXT * 1.45).ceil();
    let size = Vec2::new(width + 12.0, row * galleys.len() as f32 + 8.0);
    let corner = frame.right_bottom() - Vec2::new(6.0, 30.0);
    let rect = Align2::RIGHT_BOTTOM.anchor_size(corner, size);
    painter.rect_filled(rect, 4.0, palette.paper.gamma_multiply(0.92));
    painter.rect_stroke(rect, 4.0, (1.0, palette.grid), egui::StrokeKind::Inside);
    for (i, (swatch, galley)) in galleys.into_iter().enumerate() {
        let top = rect.top() + 4.0 + row * i as f32;
        let left = rect.left() + 6.0;
        if let Some(place) = swatch {
            let at = Rect::from_min_size(Pos2::new(left, top), Vec2::new(26.0, row));
            sample(&painter, at, palette.set(place), dash(place));
        }
        let indent = if swatch.is_some() { 34.0 } else { 0.0 };
        painter.galley(Pos2::new(left + indent, top + 1.0), galley, palette.text);
    }
}

/// An upright line at the pointer's place, which runs over no label.
fn line_ui(painter: &Painter, x: f32, palette: &Palette, drawn: &Drawn) {
    let frame = drawn.transform.frame();
    let crossed = drawn
        .labels
        .iter()
        .filter(|(label, _)| label.x_range().contains(x));
    let mut crossed: Vec<Rect> = crossed.map(|(label, _)| *label).collect();
    crossed.sort_by(|a, b| a.top().total_cmp(&b.top()));
    let mut top = frame.top();
    for label in crossed {
        painter.vline(x, top..=label.top().max(top), (1.0, palette.mark));
        top = top.max(label.bottom());
    }
    painter.vline(x, top..=frame.bottom().max(top), (1.0, palette.mark));
}

/// The value under the pointer, as round as it is written: the figures belong to that one.
fn spelled_x(scene: &Scene, drawn: &Drawn, pointer: Pos2) -> f64 {
    let value_at = |x: f32| {
        let place = Pos2::new(x, pointer.y);
        drawn.transform.value_from_position(place).x
    };
    let value = value_at(pointer.x);
    let per_point = value_at(pointer.x + 1.0) - value;
    scene.x.quantity.rounded(value, per_point)
}

struct Line {
    swatch: Option<usize>,
    words: LayoutJob,
}

fn lines(scene: &Scene, reading: Reading<'_>, palette: &Palette) -> Vec<Line> {
    let mut words = LayoutJob::default();
    words.append(&reading.heading, 0.0, format_of(true, palette.text));
    let mut lines = vec![Line {
        swatch: None,
        words,
    }];
    for (set, figures) in reading.sets {
        let mut words = LayoutJob::default();
        if figures.is_empty() {
            let format = format_of(false, palette.dim_text);
            words.append(scene.without_reading, 0.0, format);
        }
        for figure in figures {
            append(&mut words, &figure, palette, palette.set(set.place));
        }
        lines.push(Line {
            swatch: Some(set.place),
            words,
        });
    }
    lines
}

/// A gear with its figure, and what differs from the baseline.
fn append(words: &mut LayoutJob, figure: &Figure<'_>, palette: &Palette, color: Color32) {
    let gap = if words.is_empty() { 0.0 } else { 12.0 };
    words.append(figure.name, gap, format_of(true, color));
    words.append(&figure.text, 5.0, format_of(false, palette.text));
    if let Some(difference) = &figure.difference {
        words.append(difference, 4.0, format_of(false, palette.dim_text));
    }
}

fn format_of(is_bold: bool, color: Color32) -> TextFormat {
    let family = if is_bold {
        bold()
    } else {
        egui::FontFamily::Proportional
    };
    TextFormat::simple(FontId::new(TEXT, family), color)
}
