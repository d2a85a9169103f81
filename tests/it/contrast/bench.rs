//! Can every word and every line of the drawings and the tries of the bench be seen, on screen and on paper?

use super::{OF_LINES, OF_TEXT, Seen, assert_none, contrast};
use egui::epaint::{ClippedShape, Shape};
use egui::{Color32, Context, RawInput, Rect, Vec2, pos2, vec2};
use layshaft::chart::{Tries, TryDiagram};
use layshaft::draw::bench::{BenchDrawing, paint};
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::{theme, try_diagram};

/// A small screen, and half a sheet of paper, with the heights of their letters.
const ROOMS: [(Vec2, f32); 2] = [(vec2(320.0, 180.0), 13.5), (vec2(640.0, 360.0), 12.0)];

fn palettes() -> [(&'static str, Palette); 3] {
    [
        ("light", Palette::of(Theme::Light)),
        ("dark", Palette::of(Theme::Dark)),
        ("print", Palette::print()),
    ]
}

fn painted(ctx: &Context, size: Vec2, paint: impl Fn(&egui::Painter, Rect)) -> Vec<ClippedShape> {
    let room = Rect::from_min_size(pos2(0.0, 0.0), size);
    let input = RawInput {
        screen_rect: Some(room),
        ..RawInput::default()
    };
    let mut shapes = Vec::new();
    // Letters are in the atlas from the second pass on.
    for _ in 0..2 {
        let mut output = ctx.run_ui(input.clone(), |ui| paint(ui.painter(), room));
        shapes = std::mem::take(&mut output.shapes);
        output.drop_without_applying_deltas();
    }
    shapes
}

#[test]
fn every_word_of_every_drawing_can_be_read_and_lies_across_no_line() {
    let mut problems = Vec::new();
    for (name, palette) in palettes() {
        for (drawing, (size, text_size)) in BenchDrawing::ALL
            .into_iter()
            .flat_map(|d| ROOMS.map(|room| (d, room)))
        {
            let ctx = Context::default();
            theme::apply(&ctx);
            let shapes = painted(&ctx, size, |painter, room| {
                paint(painter, room, drawing, &palette, text_size);
            });
            let seen = Seen::of(&ctx, &shapes, size, palette.page);
            assert!(seen.words.len() > 3, "{drawing:?}");
            let what = format!("{drawing:?}, {name}, {size}");
            problems.extend(seen.too_faint(&what, |_| OF_TEXT));
        }
    }
    assert_none(&problems);
}

/// Two tries with their line, and one alone.
fn tries() -> [TryDiagram; 2] {
    let of = |tries: &[[f64; 2]], next_shim| {
        TryDiagram::of(&Tries {
            tries,
            wanted: Some([1.4, 1.6]),
            next_shim,
            signs: ["mm", "N·m"],
        })
        .unwrap()
    };
    [
        of(&[[1.1, 1.0], [1.2, 2.0]], Some(1.15)),
        of(&[[1.1, 1.5]], None),
    ]
}

#[test]
fn every_word_beside_tries_can_be_read_and_their_lines_be_seen_in_the_band_too() {
    let mut problems = Vec::new();
    for (name, palette) in palettes() {
        for (tries, (size, text_size)) in tries()
            .into_iter()
            .flat_map(|t| ROOMS.map(|room| (t.clone(), room)))
        {
            let ctx = Context::default();
            theme::apply(&ctx);
            let shapes = painted(&ctx, size, |painter, room| {
                try_diagram::paint(painter, room, &tries, &palette, text_size);
            });
            let seen = Seen::of(&ctx, &shapes, size, palette.page);
            assert!(seen.words.len() > 5);
            problems.extend(seen.too_faint(&format!("tries, {name}, {size}"), |_| OF_TEXT));
        }
        for ground in [palette.wanted, palette.paper] {
            for line in [palette.shim, palette.text, palette.dim_text] {
                let contrast = contrast(line, ground);
                assert!(
                    contrast >= OF_LINES,
                    "{name}: {line:?} on {ground:?}: {contrast:.2}"
                );
            }
        }
        assert!(
            contrast(palette.edge, palette.wanted) >= OF_LINES,
            "{name}: the edges of the band"
        );
    }
    assert_none(&problems);
}

/// The colours of a shape's lines, and of what it fills.
fn colors(shape: &Shape, lines: &mut Vec<Color32>, areas: &mut Vec<Color32>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|shape| colors(shape, lines, areas)),
        Shape::LineSegment { stroke, .. } => lines.push(stroke.color),
        Shape::Circle(circle) => {
            lines.push(circle.stroke.color);
            areas.push(circle.fill);
        }
        Shape::Path(path) => {
            if let egui::epaint::ColorMode::Solid(color) = path.stroke.color {
                lines.push(color);
            }
            areas.push(path.fill);
        }
        Shape::Mesh(mesh) => areas.extend(mesh.vertices.iter().map(|vertex| vertex.color)),
        _ => {}
    }
}

#[test]
fn every_line_of_every_drawing_can_be_seen_on_paper_and_the_shim_on_metal_too() {
    for (name, palette) in palettes() {
        for drawing in BenchDrawing::ALL {
            let ctx = Context::default();
            theme::apply(&ctx);
            let shapes = painted(&ctx, ROOMS[0].0, |painter, room| {
                paint(painter, room, drawing, &palette, ROOMS[0].1);
            });
            let (mut lines, mut areas) = (Vec::new(), Vec::new());
            for clipped in &shapes {
                colors(&clipped.shape, &mut lines, &mut areas);
            }
            lines.retain(|color| color.a() > 0);
            assert!(
                lines.len() > 20 && areas.contains(&palette.shim),
                "{drawing:?}"
            );
            for color in lines {
                let contrast = contrast(color, palette.paper);
                assert!(
                    contrast >= OF_LINES,
                    "{drawing:?}, {name}: {color:?}: {contrast:.2}"
                );
            }
        }
        for ground in [palette.metal, palette.paper] {
            for color in [palette.shim, palette.text, palette.dim_text] {
                let contrast = contrast(color, ground);
                assert!(
                    contrast >= OF_LINES,
                    "{name}: {color:?} on {ground:?}: {contrast:.2}"
                );
            }
        }
    }
}
