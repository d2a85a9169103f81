//! What does every set do at the road speed under the pointer?
//!
//! It stands in the lower right corner of the plot: below the top gears no line runs there.

use super::super::desk::Desk;
use crate::draw::diagram::Drawn;
use crate::draw::palette::{Palette, dash};
use crate::draw::{bold, sample};
use crate::gearing::{GearResult, GearRole, SetResults};
use crate::units::{plain_number, round_to, rpm_difference_text, rpm_text};
use egui::{Align2, Color32, FontId, Pos2, Rect, Ui, Vec2, text::LayoutJob, text::TextFormat};

const TEXT: f32 = 12.5;

/// Paints the reading at the pointer's road speed.
pub(super) fn reading_ui(ui: &Ui, desk: &Desk, palette: &Palette, drawn: &Drawn, pointer: Pos2) {
    let speed = spelled_speed(drawn, pointer);
    if speed <= 0.0 {
        return;
    }
    let frame = *drawn.transform.frame();
    let painter = ui.painter().with_clip_rect(frame);
    let line = palette.mark.gamma_multiply(0.5);
    let x = drawn.point(speed, 0.0).x;
    painter.vline(x, frame.y_range(), (1.0, line));

    let lines = lines(desk, palette, speed);
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

/// The road speed under the pointer, as round as it is written: the figures belong to that one.
fn spelled_speed(drawn: &Drawn, pointer: Pos2) -> f64 {
    let speed_at = |x: f32| {
        drawn
            .transform
            .value_from_position(Pos2::new(x, pointer.y))
            .x
    };
    let per_point = speed_at(pointer.x + 1.0) - speed_at(pointer.x);
    let grain = if per_point > 0.05 { 1.0 } else { 0.1 };
    round_to(speed_at(pointer.x), grain)
}

struct Line {
    swatch: Option<usize>,
    words: LayoutJob,
}

fn lines(desk: &Desk, palette: &Palette, speed: f64) -> Vec<Line> {
    let project = desk.project();
    let unit = project.units;
    let speed_kmh = unit.to_kmh(speed);
    let mut head = LayoutJob::default();
    let heading = format!("at {} {}", plain_number(speed), unit.sign());
    head.append(&heading, 0.0, format_of(true, palette.text));
    let mut lines = vec![Line {
        swatch: None,
        words: head,
    }];
    let baseline = &desk.results().sets[project.sets.baseline_place()];
    for (place, (candidate, set)) in project.sets.iter().zip(&desk.results().sets).enumerate() {
        if candidate.visible {
            let compared = (place != project.sets.baseline_place()).then_some(baseline);
            let words = set_words(desk, palette, set, compared, speed_kmh, palette.set(place));
            lines.push(Line {
                swatch: Some(place),
                words,
            });
        }
    }
    lines
}

/// The usable gears of a set with their engine speeds, and what differs from the baseline.
fn set_words(
    desk: &Desk,
    palette: &Palette,
    set: &SetResults,
    baseline: Option<&SetResults>,
    speed_kmh: f64,
    color: Color32,
) -> LayoutJob {
    let limits = &desk.project().engine;
    let rpm_of = |g: &GearResult| speed_kmh / g.speed_per_1000_rpm_kmh * 1000.0;
    let mut words = LayoutJob::default();
    for result in &set.gears {
        let rpm = rpm_of(result);
        if !limits.allow(rpm) || result.gear.role != Some(GearRole::Shifted) {
            continue;
        }
        let gap = if words.is_empty() { 0.0 } else { 12.0 };
        words.append(&result.gear.label, gap, format_of(true, color));
        words.append(&rpm_text(rpm), 5.0, format_of(false, palette.text));
        let like = baseline.and_then(|b| b.counterpart(set, result));
        if let Some(like) = like {
            let difference = rpm_difference_text(rpm - rpm_of(like));
            words.append(&difference, 4.0, format_of(false, palette.dim_text));
        }
    }
    if words.is_empty() {
        words.append("no usable gear", 0.0, format_of(false, palette.dim_text));
    }
    words
}

fn format_of(is_bold: bool, color: Color32) -> TextFormat {
    let family = if is_bold {
        bold()
    } else {
        egui::FontFamily::Proportional
    };
    TextFormat::simple(FontId::new(TEXT, family), color)
}
