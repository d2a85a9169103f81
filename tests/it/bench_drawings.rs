//! Can a mechanic see where a shim sits and read every word of the drawings, small and large, on screen and paper?

use egui::epaint::{ClippedShape, Shape};
use egui::{Color32, Context, Painter, RawInput, Rect, Vec2, pos2, vec2};
use image::RgbaImage;
use layshaft::chart::{Tries, TryDiagram};
use layshaft::draw::bench::{BenchDrawing, paint};
use layshaft::draw::label_placing::overlap;
use layshaft::draw::palette::{Palette, Theme};
use layshaft::draw::{picture, theme, try_diagram};
use std::collections::HashSet;

/// A small screen, a large one, half a sheet of paper, and rooms that are not made for a drawing, each with the
/// height of its letters in points.
const ROOMS: [(Vec2, f32); 6] = [
    (vec2(320.0, 180.0), 13.5),
    (vec2(320.0, 180.0), 12.0),
    (vec2(640.0, 360.0), 12.0),
    (vec2(1000.0, 562.0), 26.0),
    (vec2(500.0, 140.0), 13.5),
    (vec2(200.0, 400.0), 20.0),
];

/// How far a drawing stands from the edges of what it is painted on.
const MARGIN: f32 = 10.0;

fn palettes() -> [Palette; 3] {
    [
        Palette::of(Theme::Light),
        Palette::of(Theme::Dark),
        Palette::print(),
    ]
}

fn context() -> Context {
    let ctx = Context::default();
    theme::apply(&ctx);
    ctx
}

fn room(size: Vec2) -> Rect {
    Rect::from_min_size(pos2(MARGIN, MARGIN), size)
}

fn painted(drawing: BenchDrawing, palette: &Palette, (size, text_size): (Vec2, f32)) -> RgbaImage {
    let whole = size + Vec2::splat(2.0 * MARGIN);
    picture(&context(), whole, 2.0, palette.page, |ui| {
        paint(ui.painter(), room(size), drawing, palette, text_size);
    })
}

/// What a drawing is made of.
fn shapes(drawing: BenchDrawing, palette: &Palette, (size, text_size): (Vec2, f32)) -> Vec<Shape> {
    parts(size, |painter, room| {
        paint(painter, room, drawing, palette, text_size);
    })
}

/// What is painted into a room of that size.
fn parts(size: Vec2, paint: impl Fn(&Painter, Rect)) -> Vec<Shape> {
    let input = RawInput {
        screen_rect: Some(Rect::from_min_size(
            pos2(0.0, 0.0),
            size + Vec2::splat(2.0 * MARGIN),
        )),
        ..RawInput::default()
    };
    let mut output = context().run_ui(input, |ui| paint(ui.painter(), room(size)));
    let shapes: Vec<ClippedShape> = std::mem::take(&mut output.shapes);
    output.drop_without_applying_deltas();
    let mut parts = Vec::new();
    for clipped in shapes {
        flatten(clipped.shape, &mut parts);
    }
    parts
}

fn flatten(shape: Shape, parts: &mut Vec<Shape>) {
    match shape {
        Shape::Vec(shapes) => shapes.into_iter().for_each(|shape| flatten(shape, parts)),
        Shape::Noop => {}
        other => parts.push(other),
    }
}

/// The words of a drawing, each with the rectangle of its lines.
fn words(shapes: &[Shape]) -> Vec<(String, Rect)> {
    let text = |shape: &Shape| match shape {
        Shape::Text(text) => {
            let rect = Rect::from_min_size(text.pos, text.galley.size());
            Some((text.galley.text().to_owned(), rect))
        }
        _ => None,
    };
    shapes.iter().filter_map(text).collect()
}

fn every_case() -> impl Iterator<Item = (BenchDrawing, Palette, (Vec2, f32))> {
    let drawings = BenchDrawing::ALL.into_iter();
    let with_palette = drawings.flat_map(|drawing| palettes().map(|palette| (drawing, palette)));
    with_palette.flat_map(|(drawing, palette)| ROOMS.map(|room| (drawing, palette, room)))
}

#[test]
fn every_part_and_every_word_lies_whole_inside_the_room() {
    for (drawing, palette, at) in every_case() {
        let room = room(at.0).expand(0.01);
        for shape in shapes(drawing, &palette, at) {
            let rect = shape.visual_bounding_rect();
            assert!(
                room.contains_rect(rect),
                "{drawing:?} {at:?}: {rect} of {shape:?}"
            );
        }
    }
}

#[test]
fn no_word_covers_another() {
    for (drawing, palette, at) in every_case() {
        let words = words(&shapes(drawing, &palette, at));
        assert!(words.len() >= 3, "{drawing:?}: {words:?}");
        for (number, (text, rect)) in words.iter().enumerate() {
            for (other, beside) in &words[number + 1..] {
                let apart = !overlap(rect, beside);
                assert!(
                    apart,
                    "{drawing:?} {at:?}: \"{text}\" at {rect}, \"{other}\" at {beside}"
                );
            }
        }
    }
}

#[test]
fn what_a_drawing_is_about_is_seen_as_an_area_in_its_own_colour() {
    for (drawing, palette, at) in every_case() {
        let picture = painted(drawing, &palette, at);
        let shim = picture
            .pixels()
            .filter(|pixel| pixel.0 == palette.shim.to_array());
        // On the smallest a shim has 8 points by 16.
        assert!(shim.count() > 150, "{drawing:?} {at:?}");
    }
}

/// How bright a colour is on a grey print, from 0 to 255.
fn grey(color: Color32) -> f32 {
    let [r, g, b] = [color.r(), color.g(), color.b()].map(f32::from);
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

#[test]
fn shim_metal_and_paper_are_told_apart_in_grey() {
    for palette in palettes() {
        let [shim, metal, paper, edge] =
            [palette.shim, palette.metal, palette.paper, palette.text].map(grey);
        assert!((shim - metal).abs() > 60.0 && (shim - paper).abs() > 80.0);
        assert!((metal - paper).abs() > 20.0 && (edge - metal).abs() > 100.0);
    }
}

#[test]
fn each_drawing_is_its_own_and_says_in_one_sentence_what_is_to_be_seen() {
    let all = BenchDrawing::ALL;
    let said: HashSet<&str> = all.into_iter().map(BenchDrawing::summary).collect();
    assert_eq!(said.len(), all.len());
    for sentence in said {
        assert!(
            !sentence.ends_with('.') && !sentence.contains(". "),
            "{sentence}"
        );
        assert!(!sentence.contains("  "), "{sentence}");
    }
    let palette = Palette::of(Theme::Light);
    let pictures: HashSet<Vec<u8>> = all
        .into_iter()
        .map(|drawing| painted(drawing, &palette, ROOMS[0]).into_raw())
        .collect();
    assert_eq!(pictures.len(), all.len());
}

/// Tries as they come: one, two, two with the same shim, several that are close, one far off; mm and inch.
fn tries() -> Vec<TryDiagram> {
    let of = |tries: &[[f64; 2]], wanted: Option<[f64; 2]>, next_shim: Option<f64>, signs| {
        let tries = Tries {
            tries,
            wanted,
            next_shim,
            signs,
        };
        TryDiagram::of(&tries).unwrap()
    };
    let metric = ["mm", "N·m"];
    let band = Some([1.4, 1.6]);
    vec![
        of(&[[1.1, 1.0]], band, None, metric),
        of(&[[1.1, 1.0], [1.2, 2.0]], band, Some(1.15), metric),
        of(&[[1.1, 1.0], [1.1, 1.2]], band, None, metric),
        of(
            &[[1.1, 1.0], [1.2, 2.0], [1.15, 1.45], [1.16, 1.52]],
            band,
            Some(1.157),
            metric,
        ),
        of(
            &[[0.9, 0.2], [0.92, 0.25]],
            Some([10.0, 30.0]),
            Some(6.72),
            metric,
        ),
        of(
            &[[0.0435, 9.0], [0.0472, 18.0]],
            Some([12.0, 15.0]),
            Some(0.0454),
            ["in", "lbf·in"],
        ),
        of(&[[0.0, 0.0]], None, None, metric),
        of(&[[1.2, 2.0], [1.1, 1.1]], None, None, ["mm", "kgf·cm"]),
    ]
}

#[test]
fn tries_keep_within_their_room_and_no_word_covers_another() {
    for (number, tries) in tries().into_iter().enumerate() {
        for (palette, (size, text_size)) in palettes()
            .into_iter()
            .flat_map(|p| ROOMS.map(|room| (p, room)))
        {
            let parts = parts(size, |painter, room| {
                try_diagram::paint(painter, room, &tries, &palette, text_size);
            });
            let words = words(&parts);
            assert!(words.len() > 5, "{number}: {words:?}");
            let said = |word: &str| words.iter().any(|(text, _)| text.contains(word));
            // What is narrower than twenty letters need not have room for all of them.
            if size.x > 20.0 * text_size {
                assert!(said("newest"), "{number} {size}: {words:?}");
                assert_eq!(
                    said("next"),
                    tries.next.is_some(),
                    "{number} {size}: {words:?}"
                );
                assert_eq!(
                    said("wanted"),
                    tries.wanted.is_some(),
                    "{number} {size}: {words:?}"
                );
            }
            for (at, (text, rect)) in words.iter().enumerate() {
                assert!(
                    room(size).contains_rect(*rect),
                    "{number} {size}: \"{text}\" at {rect}"
                );
                for (other, beside) in &words[at + 1..] {
                    assert!(
                        !overlap(rect, beside),
                        "{number} {size}: \"{text}\" at {rect}, \"{other}\" at {beside}"
                    );
                }
            }
        }
    }
}
