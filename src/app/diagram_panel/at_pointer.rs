//! What does every set do at the place under the pointer?
//!
//! Where it stands, `reading_place` finds. Where there is no room for it beside what must be seen, it
//! is set smaller or in more rows, then stands outside the diagram, and at last has only the set that
//! is forward.

use super::reading_place::{Ground, Share, beside};
use crate::chart::{Figure, Reading, Role, Scene};
use crate::draw::diagram::Drawn;
use crate::draw::palette::{Palette, dash};
use crate::draw::{bold, sample};
use crate::project::{Livery, SetId};
use egui::{
    Color32, FontId, Galley, Id, LayerId, Order, Painter, Pos2, Rect, Ui, Vec2, text::LayoutJob,
    text::TextFormat,
};
use std::sync::Arc;

/// The height of its text, in points, and that where there is little room.
const TEXT: f32 = 12.5;
const SMALL_TEXT: f32 = 11.5;

/// What stays free between the words and the rim, in points.
const RIM: Vec2 = Vec2::new(6.0, 4.0);

/// How far a row is moved in for the dash of its set, in points.
const INDENT: f32 = 34.0;

/// How the reading is set.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Setting {
    /// The height of its text, in points.
    text: f32,
    /// How many figures of a set stand in a row.
    per_row: usize,
    /// Whether only the set that is forward is in it.
    is_of_one: bool,
}

impl Setting {
    const fn of_all(text: f32, per_row: usize) -> Self {
        let is_of_one = false;
        Self {
            text,
            per_row,
            is_of_one,
        }
    }

    const fn of_one(text: f32, per_row: usize) -> Self {
        let is_of_one = true;
        Self {
            text,
            per_row,
            is_of_one,
        }
    }

    fn row_height(self) -> f32 {
        (self.text * 1.45).ceil()
    }
}

/// The ways to set all of it, the best first.
const OF_ALL: [Setting; 6] = [
    Setting::of_all(TEXT, usize::MAX),
    Setting::of_all(SMALL_TEXT, usize::MAX),
    Setting::of_all(TEXT, 4),
    Setting::of_all(SMALL_TEXT, 4),
    Setting::of_all(TEXT, 2),
    Setting::of_all(SMALL_TEXT, 2),
];

/// The ways to set what is said of one set.
const OF_ONE: [Setting; 3] = [
    Setting::of_one(TEXT, usize::MAX),
    Setting::of_one(SMALL_TEXT, 3),
    Setting::of_one(SMALL_TEXT, 1),
];

/// How and where the reading stands.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Stand {
    Within(Setting, Share),
    Beside,
}

/// How many points of lines the reading may cover before it stands beside the diagram instead.
const FEW_LINES: f32 = 60.0;

/// What the reading is about, and what it must not cover.
pub(super) struct Surroundings<'a> {
    pub scene: &'a Scene,
    pub palette: &'a Palette,
    pub drawn: &'a Drawn,
    /// The set that is forward.
    pub forward: SetId,
    /// What handles and their words take up.
    pub taken: Vec<Rect>,
}

/// Paints the reading at the pointer's place.
pub(super) fn reading_ui(ui: &Ui, around: &Surroundings<'_>, pointer: Pos2) {
    let Surroundings { scene, drawn, .. } = *around;
    let x = spelled_x(scene, drawn, pointer);
    let Some(reading) = scene.reading_at(x) else {
        return;
    };
    let frame = *drawn.transform.frame();
    let painter = ui.painter().with_clip_rect(frame);
    let place = drawn.transform.position_from_point_x(x);
    line_ui(&painter, place, around.palette, drawn);

    let taken = taken(around);
    let lines = lines_in_view(scene, drawn);
    let ground = Ground {
        room: frame.shrink(6.0),
        taken: &taken,
        pointer,
        lines: &lines,
    };
    let places = Places {
        ground: &ground,
        diagram: ui.min_rect().union(frame),
        screen: ui.content_rect(),
    };
    // In a plot of another size it begins anew.
    let kept: Option<(Rect, Stand)> = ui.data(|d| d.get_temp(kept_id()));
    let before = kept.filter(|kept| kept.0 == frame).map(|kept| kept.1);
    let set = |setting: Setting| Block::of(&painter, around, &reading, setting);
    let Some((now, rect, block)) = places.found(before, set) else {
        return;
    };
    if before != Some(now) {
        ui.data_mut(|d| d.insert_temp(kept_id(), (frame, now)));
    }
    if now == Stand::Beside {
        let over_all = ui.layer_painter(LayerId::new(Order::Tooltip, kept_id()));
        block.paint(&over_all, rect, around.palette);
    } else {
        block.paint(&painter, rect, around.palette);
    }
}

/// Forgets where the reading stood: the next one begins anew.
pub(super) fn forget_place(ui: &Ui) {
    ui.data_mut(|d| d.remove::<(Rect, Stand)>(kept_id()));
}

fn kept_id() -> Id {
    Id::unique("reading at the pointer")
}

/// Where a reading can stand.
struct Places<'a> {
    ground: &'a Ground<'a>,
    /// The plot with all that stands around it.
    diagram: Rect,
    screen: Rect,
}

impl Places<'_> {
    /// How and where the reading stands: as it stood before, if it still can.
    fn found(
        &self,
        before: Option<Stand>,
        set: impl Fn(Setting) -> Block,
    ) -> Option<(Stand, Rect, Block)> {
        let beside_diagram = || {
            let block = set(OF_ALL[0]);
            let rect = beside(self.diagram, block.size, self.screen)?;
            Some((Stand::Beside, rect, block))
        };
        let again = || match before? {
            // Half of it is not kept where all of it finds room again.
            Stand::Within(setting, _) if setting.is_of_one => None,
            Stand::Within(setting, share) => {
                let block = set(setting);
                let rect = self.ground.again(block.size, share)?;
                Some((Stand::Within(setting, share), rect, block))
            }
            Stand::Beside => beside_diagram(),
        };
        let within = |settings: &[Setting], most_beneath: f32| {
            settings.iter().find_map(|setting| {
                let block = set(*setting);
                let (share, rect) = self.ground.best(block.size, most_beneath)?;
                Some((Stand::Within(*setting, share), rect, block))
            })
        };
        again()
            .or_else(|| within(&OF_ALL, FEW_LINES))
            .or_else(beside_diagram)
            .or_else(|| within(&OF_ALL, f32::INFINITY))
            .or_else(|| within(&OF_ONE, f32::INFINITY))
    }
}

/// Everything that must be seen: labels, dots, handles with their words.
fn taken(around: &Surroundings<'_>) -> Vec<Rect> {
    let labels = around.drawn.labels.iter().map(|(rect, _)| rect.expand(2.0));
    let dots = around.scene.points.iter().map(|dot| {
        let at = around.drawn.place_of(dot.at);
        Rect::from_center_size(at, Vec2::splat(8.0))
    });
    let handles = around.taken.iter().copied();
    labels.chain(dots).chain(handles).collect()
}

/// The pieces of the lines that are read as they stand on the screen, each with its weight: the thin
/// lines of gears are followed less than what is driven.
fn lines_in_view(scene: &Scene, drawn: &Drawn) -> Vec<([Pos2; 2], f32)> {
    let weighed = scene.lines.iter().filter_map(|line| match line.role {
        Role::Driven | Role::ByGear | Role::Drop => Some((line, 1.0)),
        Role::Fan | Role::Other => Some((line, 0.2)),
        _ => None,
    });
    let pieces = weighed.flat_map(|(line, weight)| {
        let pieces = line.points.windows(2);
        pieces.map(move |ends| ([ends[0], ends[1]].map(|at| drawn.place_of(at)), weight))
    });
    pieces.collect()
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

/// A reading, set and measured.
struct Block {
    rows: Vec<Row>,
    row_height: f32,
    size: Vec2,
}

struct Row {
    /// The livery of the set whose dash stands at its head.
    swatch: Option<Livery>,
    indent: f32,
    words: Arc<Galley>,
}

impl Block {
    fn of(
        painter: &Painter,
        around: &Surroundings<'_>,
        reading: &Reading<'_>,
        setting: Setting,
    ) -> Self {
        let palette = around.palette;
        let format_of = |is_bold, color| format_of(setting.text, is_bold, color);
        let row = |swatch, indent, job: LayoutJob| Row {
            swatch,
            indent,
            words: painter.layout_job(job),
        };
        let mut heading = LayoutJob::default();
        heading.append(&reading.heading, 0.0, format_of(true, palette.text));
        let mut rows = vec![row(None, 0.0, heading)];
        for (set, figures) in &reading.sets {
            if setting.is_of_one && set.id != around.forward {
                continue;
            }
            let mut jobs: Vec<LayoutJob> = figures
                .chunks(setting.per_row)
                .map(|figures| in_a_row(figures, setting.text, palette, palette.set(set.livery)))
                .collect();
            if jobs.is_empty() {
                let mut words = LayoutJob::default();
                let format = format_of(false, palette.dim_text);
                words.append(around.scene.without_reading, 0.0, format);
                jobs.push(words);
            }
            let jobs = jobs.into_iter().enumerate();
            rows.extend(jobs.map(|(i, job)| row((i == 0).then_some(set.livery), INDENT, job)));
        }
        let width = rows.iter().map(|row| row.words.size().x + row.indent);
        let width = width.fold(0.0, f32::max);
        let size = Vec2::new(width, setting.row_height() * rows.len() as f32) + 2.0 * RIM;
        let row_height = setting.row_height();
        Self {
            rows,
            row_height,
            size,
        }
    }

    fn paint(self, painter: &Painter, rect: Rect, palette: &Palette) {
        painter.rect_filled(rect, 4.0, palette.paper.gamma_multiply(0.92));
        painter.rect_stroke(rect, 4.0, (1.0, palette.grid), egui::StrokeKind::Inside);
        let mut at = rect.min + RIM;
        for row in self.rows {
            if let Some(livery) = row.swatch {
                let swatch = Rect::from_min_size(at, Vec2::new(26.0, self.row_height));
                sample(painter, swatch, palette.set(livery), dash(livery));
            }
            let words = at + Vec2::new(row.indent, 1.0);
            painter.galley(words, row.words, palette.text);
            at.y += self.row_height;
        }
    }
}

/// Gears with their figures, and what differs from the baseline.
fn in_a_row(figures: &[Figure<'_>], text: f32, palette: &Palette, color: Color32) -> LayoutJob {
    let mut words = LayoutJob::default();
    for figure in figures {
        let gap = if words.is_empty() { 0.0 } else { 12.0 };
        words.append(figure.name, gap, format_of(text, true, color));
        words.append(&figure.text, 5.0, format_of(text, false, palette.text));
        if let Some(difference) = &figure.difference {
            words.append(difference, 4.0, format_of(text, false, palette.dim_text));
        }
        if let Some(also) = &figure.also {
            let also = format!("({also})");
            words.append(&also, 5.0, format_of(text, false, palette.dim_text));
        }
    }
    words
}

fn format_of(text: f32, is_bold: bool, color: Color32) -> TextFormat {
    let family = if is_bold {
        bold()
    } else {
        egui::FontFamily::Proportional
    };
    TextFormat::simple(FontId::new(text, family), color)
}
