//! Does the raster paint what egui means, pixel by pixel?

use egui::epaint::{ImageDelta, Primitive, Vertex};
use egui::{
    ClippedPrimitive, Color32, ColorImage, Mesh, Pos2, Rect, TextureId, TextureOptions,
    TexturesDelta, pos2, vec2,
};
use image::RgbaImage;
use layshaft::draw::{MAX_SIDE_PX, Raster, picture};
use proptest::prelude::*;

use crate::support::per_pixel::{PerPixel, blended};
use crate::support::screen::{self, Scene};
use crate::support::test_renderer::CpuRenderer;

const BLUE: Color32 = Color32::from_rgb(20, 60, 200);
const GLASS: Color32 = Color32::from_rgba_premultiplied(60, 20, 10, 90);

/// A white texel first, as in egui's font atlas, then all kinds of others.
fn texture() -> ColorImage {
    let mut image = ColorImage::filled([8, 4], Color32::TRANSPARENT);
    for (i, texel) in (0_u8..).zip(&mut image.pixels) {
        let alpha = i.wrapping_mul(37);
        *texel = Color32::from_rgba_unmultiplied(i.wrapping_mul(91), 255 - 3 * i, 7 * i, alpha);
    }
    image.pixels[0] = Color32::WHITE;
    image
}

fn set(id: TextureId, image: ColorImage) -> TexturesDelta {
    let mut delta = TexturesDelta::default();
    delta.push(id, ImageDelta::full(image, TextureOptions::LINEAR));
    delta
}

fn raster() -> Raster {
    let mut raster = Raster::new();
    raster.apply(&mut set(TextureId::default(), texture()));
    raster
}

fn clipped(mesh: Mesh, clip_rect: Rect) -> Vec<ClippedPrimitive> {
    vec![ClippedPrimitive {
        clip_rect,
        primitive: Primitive::Mesh(mesh),
    }]
}

fn corner(x: f32, y: f32, colour: Color32) -> Vertex {
    Vertex {
        pos: pos2(x, y),
        uv: Pos2::ZERO,
        color: colour,
    }
}

/// Paints `mesh` at one pixel per point on blue.
fn painted(mesh: Mesh, width: u32, height: u32) -> RgbaImage {
    raster().paint(&clipped(mesh, Rect::EVERYTHING), 1.0, width, height, BLUE)
}

fn rectangle(rect: Rect, colour: Color32) -> Mesh {
    let mut mesh = Mesh::default();
    mesh.add_colored_rect(rect, colour);
    mesh
}

fn triangles(vertices: Vec<Vertex>, indices: &[u32]) -> Mesh {
    Mesh {
        indices: indices.to_vec(),
        vertices,
        texture_id: TextureId::default(),
    }
}

/// The same mesh with each triangle's corners turned by one, which no shortcut recognises.
fn turned(mesh: &Mesh) -> Mesh {
    let indices = mesh.triangles().flat_map(|[a, b, c]| [b, c, a]).collect();
    Mesh {
        indices,
        ..mesh.clone()
    }
}

fn count(picture: &RgbaImage, colour: [u8; 4]) -> usize {
    picture.pixels().filter(|pixel| pixel.0 == colour).count()
}

fn largest_difference(a: &RgbaImage, b: &RgbaImage) -> u8 {
    assert_eq!(a.dimensions(), b.dimensions());
    a.iter()
        .zip(b.iter())
        .map(|(a, b)| a.abs_diff(*b))
        .max()
        .unwrap_or(0)
}

#[test]
fn a_rectangle_fills_exactly_its_pixels() {
    let rect = Rect::from_min_max(pos2(3.0, 2.0), pos2(7.0, 9.0));
    for mesh in [
        rectangle(rect, Color32::RED),
        turned(&rectangle(rect, Color32::RED)),
    ] {
        let picture = painted(mesh, 12, 11);
        for (x, y, pixel) in picture.enumerate_pixels() {
            let inside = (3..7).contains(&x) && (2..9).contains(&y);
            let colour = if inside { Color32::RED } else { BLUE };
            assert_eq!(pixel.0, colour.to_array(), "pixel {x}, {y}");
        }
    }
}

#[test]
fn a_pixel_is_covered_when_its_centre_is_and_a_centre_on_the_edge_belongs_right_and_below() {
    let rect = Rect::from_min_max(pos2(1.5, 1.5), pos2(4.5, 3.5));
    for mesh in [
        rectangle(rect, Color32::RED),
        turned(&rectangle(rect, Color32::RED)),
    ] {
        let picture = painted(mesh, 8, 8);
        assert_eq!(count(&picture, Color32::RED.to_array()), 3 * 2);
        assert_eq!(picture.get_pixel(1, 1).0, Color32::RED.to_array());
        assert_eq!(picture.get_pixel(4, 1).0, BLUE.to_array());
        assert_eq!(picture.get_pixel(1, 3).0, BLUE.to_array());
    }
}

#[test]
fn both_senses_of_turning_cover_the_same_pixels() {
    let corners = vec![
        corner(1.3, 0.7, GLASS),
        corner(17.9, 5.1, GLASS),
        corner(6.2, 14.4, GLASS),
    ];
    let one_way = painted(triangles(corners.clone(), &[0, 1, 2]), 20, 16);
    let the_other = painted(triangles(corners, &[2, 1, 0]), 20, 16);
    assert!(one_way == the_other);
    assert!(count(&one_way, BLUE.to_array()) < 20 * 16);
}

proptest! {
    #[test]
    fn shared_edges_are_painted_once_and_leave_no_gap(
        centre in (0.0_f32..32.0, 0.0_f32..24.0),
        cuts in proptest::collection::vec(0.0_f32..1.0, 0..9),
        mut sides in proptest::collection::vec(0.0_f32..4.0, 0..9),
    ) {
        // A fan around a point inside, over the rectangle's outline and points on it.
        sides.extend([0.0, 1.0, 2.0, 3.0]);
        sides.sort_by(f32::total_cmp);
        let on_outline = |place: f32| match place {
            ..1.0 => pos2(place * 32.0, 0.0),
            1.0..2.0 => pos2(32.0, (place - 1.0) * 24.0),
            2.0..3.0 => pos2((3.0 - place) * 32.0, 24.0),
            _ => pos2(0.0, (4.0 - place) * 24.0),
        };
        let mut mesh = Mesh::default();
        mesh.colored_vertex(pos2(centre.0, centre.1), GLASS);
        for &side in &sides {
            mesh.colored_vertex(on_outline(side), GLASS);
        }
        let last = u32::try_from(sides.len()).unwrap();
        for i in 1..=last {
            mesh.add_triangle(0, i, i % last + 1);
        }
        let once = blended(BLUE.to_array(), GLASS.to_array());
        prop_assert_eq!(count(&painted(mesh, 32, 24), once), 32 * 24);

        // Upright strips.
        let mut cuts: Vec<f32> = cuts.iter().map(|cut| cut * 32.0).chain([0.0, 32.0]).collect();
        cuts.sort_by(f32::total_cmp);
        let mut strips = Mesh::default();
        for pair in cuts.windows(2) {
            let rect = Rect::from_min_max(pos2(pair[0], 0.0), pos2(pair[1], 24.0));
            strips.add_colored_rect(rect, GLASS);
        }
        prop_assert_eq!(count(&painted(strips.clone(), 32, 24), once), 32 * 24);
        prop_assert_eq!(count(&painted(turned(&strips), 32, 24), once), 32 * 24);
    }
}

#[test]
fn a_clip_is_rounded_to_whole_pixels() {
    let everywhere = rectangle(
        Rect::from_min_max(pos2(-9.0, -9.0), pos2(99.0, 99.0)),
        Color32::RED,
    );
    // At 1.25 pixels per point: 1.3 → 1.625 → 2, 6.5 → 8.125 → 8; 2.0 → 2.5 → 3, 4.1 → 5.125 → 5.
    let clip = Rect::from_min_max(pos2(1.3, 2.0), pos2(6.5, 4.1));
    let picture = raster().paint(&clipped(everywhere, clip), 1.25, 12, 9, BLUE);
    for (x, y, pixel) in picture.enumerate_pixels() {
        let inside = (2..8).contains(&x) && (3..5).contains(&y);
        let colour = if inside { Color32::RED } else { BLUE };
        assert_eq!(pixel.0, colour.to_array(), "pixel {x}, {y}");
    }
}

#[test]
fn a_colour_without_alpha_adds_its_light() {
    let light = Color32::from_rgba_premultiplied(50, 0, 100, 0);
    let rect = Rect::from_min_max(pos2(0.0, 0.0), pos2(4.0, 4.0));
    for mesh in [rectangle(rect, light), turned(&rectangle(rect, light))] {
        assert_eq!(painted(mesh, 4, 4).get_pixel(2, 2).0, [70, 60, 255, 255]);
    }
}

#[test]
fn a_translucent_background_gives_straight_colours() {
    let half = Color32::from_rgba_premultiplied(64, 0, 32, 128);
    let picture = raster().paint(&[], 1.0, 3, 3, half);
    assert_eq!(picture.get_pixel(1, 1).0, [128, 0, 64, 128]);
    let everywhere = rectangle(
        Rect::from_min_max(pos2(0.0, 0.0), pos2(3.0, 3.0)),
        Color32::RED,
    );
    let painted = raster().paint(&clipped(everywhere, Rect::EVERYTHING), 1.0, 3, 3, half);
    assert_eq!(painted.get_pixel(1, 1).0, [255, 0, 0, 255]);
}

#[test]
fn a_texture_that_falls_on_the_pixels_is_copied_texel_by_texel() {
    let mut mesh = Mesh::default();
    let place = Rect::from_min_size(pos2(5.0, 3.0), vec2(8.0, 4.0));
    let all = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
    mesh.add_rect_with_uv(place, all, Color32::WHITE);
    let fast = painted(mesh.clone(), 16, 9);
    for (x, y, pixel) in fast.enumerate_pixels() {
        let below = BLUE.to_array();
        let inside = (5..13).contains(&x) && (3..7).contains(&y);
        let texel = |x: u32, y: u32| texture()[(x as usize - 5, y as usize - 3)].to_array();
        let wanted = if inside {
            blended(below, texel(x, y))
        } else {
            below
        };
        assert_eq!(pixel.0, wanted, "pixel {x}, {y}");
    }
    assert!(fast == painted(turned(&mesh), 16, 9));
}

#[test]
fn a_texture_off_the_pixels_or_of_another_size_is_mixed_from_its_texels() {
    let all = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
    for offset in [0.0, 0.25, 0.5, 0.75] {
        for scale in [1.0 / 3.0, 0.5, 1.0, 1.5, 3.0] {
            let corner = pos2(5.0 + offset, 3.0 + offset);
            let mut mesh = Mesh::default();
            let place = Rect::from_min_size(corner, vec2(8.0, 4.0) * scale / 1.125);
            mesh.add_rect_with_uv(place, all, Color32::WHITE);
            let (plain, fast) = both_ways(mesh, Color32::BLACK);
            let apart = largest_difference(&plain, &fast);
            assert!(apart <= 1, "{apart} levels at {offset}, scale {scale}");
        }
    }
}

#[test]
fn a_patch_changes_only_its_part_of_a_texture() {
    let mut raster = raster();
    let patch = ColorImage::filled([2, 1], Color32::GREEN);
    let mut delta = TexturesDelta::default();
    let id = TextureId::default();
    delta.push(
        id,
        ImageDelta::partial([3, 2], patch.clone(), TextureOptions::LINEAR),
    );
    // Partly and wholly outside: what is inside counts.
    delta.push(
        id,
        ImageDelta::partial([7, 3], patch.clone(), TextureOptions::LINEAR),
    );
    delta.push(
        id,
        ImageDelta::partial([80, 30], patch, TextureOptions::LINEAR),
    );
    raster.apply(&mut delta);
    let mut mesh = Mesh::default();
    let all = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
    mesh.add_rect_with_uv(
        Rect::from_min_size(Pos2::ZERO, vec2(8.0, 4.0)),
        all,
        Color32::WHITE,
    );
    let picture = raster.paint(&clipped(mesh, Rect::EVERYTHING), 1.0, 8, 4, Color32::BLACK);
    let green: Vec<_> = picture
        .enumerate_pixels()
        .filter(|(_, _, pixel)| pixel.0 == Color32::GREEN.to_array())
        .map(|(x, y, _)| (x, y))
        .collect();
    assert_eq!(green, [(3, 2), (4, 2), (7, 3)]);
}

#[test]
fn a_freed_texture_is_still_there_for_the_pass_that_freed_it() {
    let id = TextureId::User(7);
    let mut raster = Raster::new();
    let mut delta = set(id, ColorImage::filled([1, 1], Color32::RED));
    delta.free(id);
    raster.apply(&mut delta);
    assert!(delta.is_empty());
    let mut mesh = Mesh::with_texture(id);
    let rect = Rect::from_min_max(pos2(0.0, 0.0), pos2(2.0, 2.0));
    mesh.add_rect_with_uv(rect, rect, Color32::WHITE);
    let primitives = clipped(mesh, Rect::EVERYTHING);
    let shown = raster.paint(&primitives, 1.0, 2, 2, BLUE);
    assert_eq!(count(&shown, Color32::RED.to_array()), 4);
    raster.apply(&mut TexturesDelta::default());
    let gone = raster.paint(&primitives, 1.0, 2, 2, BLUE);
    assert_eq!(count(&gone, BLUE.to_array()), 4);
}

#[test]
fn far_away_corners_do_not_bend_an_edge() {
    // Everything below the diagonal, cut from ever larger triangles.
    for far in [64.0, 1.0e4, 1.0e7, 1.0e12] {
        let corners = vec![
            corner(-far, -far, Color32::RED),
            corner(far, far, Color32::RED),
            corner(-far, far, Color32::RED),
        ];
        let picture = painted(triangles(corners, &[0, 1, 2]), 16, 16);
        for (x, y, pixel) in picture.enumerate_pixels() {
            let colour = if y > x { Color32::RED } else { BLUE };
            if x != y {
                assert_eq!(pixel.0, colour.to_array(), "pixel {x}, {y} at {far}");
            }
        }
    }
}

#[test]
fn rectangles_without_end_fill_the_picture() {
    for far in [1.0e7, 1.0e12] {
        let rect = Rect::from_min_max(pos2(-far, -far), pos2(far, far));
        for mesh in [rectangle(rect, GLASS), turned(&rectangle(rect, GLASS))] {
            let once = blended(BLUE.to_array(), GLASS.to_array());
            assert_eq!(count(&painted(mesh, 30, 20), once), 30 * 20);
        }
    }
}

#[test]
fn triangles_that_make_no_sense_are_left_out_and_the_others_stay() {
    let mut mesh = rectangle(
        Rect::from_min_max(pos2(0.0, 0.0), pos2(2.0, 2.0)),
        Color32::RED,
    );
    for bad in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, f32::MAX] {
        let first = u32::try_from(mesh.vertices.len()).unwrap();
        mesh.vertices.extend([
            corner(bad, 1.0, Color32::GREEN),
            corner(9.0, bad, Color32::GREEN),
            corner(3.0, 9.0, Color32::GREEN),
        ]);
        mesh.add_triangle(first, first + 1, first + 2);
    }
    mesh.add_triangle(0, 1, 999);
    mesh.add_triangle(0, 1, u32::MAX);
    mesh.indices.extend([0, 1]);
    let picture = painted(mesh, 10, 10);
    assert_eq!(count(&picture, Color32::RED.to_array()), 4);
    assert_eq!(count(&picture, BLUE.to_array()), 96);
}

#[test]
fn nothing_and_too_much_make_a_picture_too() {
    let one = clipped(rectangle(Rect::EVERYTHING, Color32::RED), Rect::NOTHING);
    let raster = raster();
    assert_eq!(raster.paint(&one, 1.0, 0, 0, BLUE).dimensions(), (0, 0));
    assert_eq!(raster.paint(&one, 1.0, 0, 5, BLUE).dimensions(), (0, 5));
    assert_eq!(raster.paint(&one, 1.0, 5, 0, BLUE).dimensions(), (5, 0));
    assert_eq!(
        raster.paint(&one, 1.0, u32::MAX, 1, BLUE).dimensions(),
        (MAX_SIDE_PX, 1)
    );
    assert_eq!(count(&painted(Mesh::default(), 3, 3), BLUE.to_array()), 9);
    for scale in [f32::NAN, f32::INFINITY, 0.0, -1.0, f32::MIN_POSITIVE] {
        assert_eq!(
            count(&raster.paint(&one, scale, 3, 3, BLUE), BLUE.to_array()),
            9
        );
    }
}

#[test]
fn a_picture_of_no_size_is_empty_and_one_without_end_is_cut() {
    let ctx = screen::context(egui::Theme::Dark);
    let size_of = |width: f32, scale: f32| {
        let mut laid_out = 0.0;
        let picture = picture(&ctx, vec2(width, 2.0), scale, BLUE, |ui| {
            ui.label("3.78");
            laid_out = ui.max_rect().width();
        });
        (picture.width(), laid_out)
    };
    for width in [0.0, -4.0, f32::NAN, f32::NEG_INFINITY] {
        assert_eq!(size_of(width, 1.0).0, 0);
    }
    for scale in [0.0, -1.0, f32::NAN, f32::NEG_INFINITY] {
        assert_eq!(size_of(9.0, scale).0, 0);
    }
    for width in [2.0e4, 1.0e30, f32::INFINITY] {
        let (width, laid_out) = size_of(width, 2.0);
        assert_eq!(width, MAX_SIDE_PX);
        assert!((laid_out - 8192.0).abs() < 1.0, "{laid_out} points");
    }
    assert_eq!(size_of(9.0, f32::INFINITY).0, 9 * 64);
}

#[test]
fn paint_callbacks_and_unknown_textures_are_left_out() {
    let rect = Rect::from_min_max(pos2(0.0, 0.0), pos2(3.0, 3.0));
    let callback = egui::PaintCallback {
        rect,
        callback: std::sync::Arc::new(()),
    };
    let mut unknown = rectangle(rect, Color32::RED);
    unknown.texture_id = TextureId::User(99);
    let primitives = [Primitive::Callback(callback), Primitive::Mesh(unknown)].map(|primitive| {
        ClippedPrimitive {
            clip_rect: rect,
            primitive,
        }
    });
    let picture = raster().paint(&primitives, 1.0, 3, 3, BLUE);
    assert_eq!(count(&picture, BLUE.to_array()), 9);
}

fn colours() -> impl Strategy<Value = Color32> {
    any::<[u8; 4]>().prop_map(|[r, g, b, a]| Color32::from_rgba_unmultiplied(r, g, b, a))
}

/// Corners on and around a picture of 48 × 40 pixels.
fn corners(uvs: impl Strategy<Value = (f32, f32)>) -> impl Strategy<Value = Vertex> {
    ((-20.0_f32..70.0, -20.0_f32..60.0), uvs, colours()).prop_map(|((x, y), (u, v), color)| {
        Vertex {
            pos: pos2(x, y),
            uv: pos2(u, v),
            color,
        }
    })
}

/// The picture the plain way and the program's way.
fn both_ways(mesh: Mesh, background: Color32) -> (RgbaImage, RgbaImage) {
    let mut plain = PerPixel::default();
    plain.apply(&mut set(TextureId::default(), texture()));
    let primitives = clipped(mesh, Rect::from_min_max(pos2(2.0, 1.0), pos2(41.0, 33.0)));
    (
        plain.paint(&primitives, 1.125, [48, 40], background),
        raster().paint(&primitives, 1.125, 48, 40, background),
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn gradients_agree_with_the_plain_way(
        corners in proptest::collection::vec(corners(Just((0.0, 0.0))), 3),
        background in any::<[u8; 3]>(),
    ) {
        let [r, g, b] = background;
        let (plain, fast) = both_ways(triangles(corners, &[0, 1, 2]), Color32::from_rgb(r, g, b));
        prop_assert!(largest_difference(&plain, &fast) <= 1);
    }

    #[test]
    fn one_colour_agrees_exactly_with_the_plain_way(
        corners in proptest::collection::vec(corners(Just((0.0, 0.0))), 3..9),
        colour in colours(),
        order in proptest::collection::vec(0..3_u32, 3..30),
    ) {
        let corners = corners.into_iter().map(|corner| Vertex { color: colour, ..corner }).collect();
        let (plain, fast) = both_ways(triangles(corners, &order[..order.len() / 3 * 3]), BLUE);
        prop_assert!(plain == fast);
    }

    #[test]
    fn textures_agree_with_the_plain_way(
        corners in proptest::collection::vec(corners((-0.5_f32..1.5, -0.5_f32..1.5)), 3),
    ) {
        // On black the picture is the source colour itself, rounded once.
        let (plain, fast) = both_ways(triangles(corners, &[0, 1, 2]), Color32::BLACK);
        prop_assert!(largest_difference(&plain, &fast) <= 1);
    }

    #[test]
    fn gradients_tinted_by_one_texel_agree_with_the_plain_way(
        corners in proptest::collection::vec(corners(Just((0.7, 0.4))), 3),
    ) {
        let (plain, fast) = both_ways(triangles(corners, &[0, 1, 2]), Color32::BLACK);
        prop_assert!(largest_difference(&plain, &fast) <= 1);
    }

    #[test]
    fn textured_rectangles_agree_with_the_plain_way_and_with_their_triangles(
        a in corners((-0.5_f32..1.5, -0.5_f32..1.5)),
        b in corners((-0.5_f32..1.5, -0.5_f32..1.5)),
    ) {
        let mut mesh = Mesh::default();
        let (place, uv) = (Rect::from_two_pos(a.pos, b.pos), Rect::from_two_pos(a.uv, b.uv));
        mesh.add_rect_with_uv(place, uv, a.color);
        let (plain, fast) = both_ways(mesh.clone(), Color32::BLACK);
        prop_assert!(largest_difference(&plain, &fast) <= 1);
        let (_, by_triangles) = both_ways(turned(&mesh), Color32::BLACK);
        prop_assert!(largest_difference(&by_triangles, &fast) <= 1);
    }

    #[test]
    fn the_shortcut_for_the_white_texel_agrees_exactly_with_a_white_texture(
        corners in proptest::collection::vec(corners((0.0_f32..1.0, 0.0_f32..1.0)), 3),
        one_colour in any::<bool>(),
    ) {
        let mut corners = corners;
        if one_colour {
            let colour = corners[0].color;
            for corner in &mut corners {
                corner.color = colour;
            }
        }
        let id = TextureId::User(1);
        let mut raster = raster();
        raster.apply(&mut set(id, ColorImage::filled([3, 5], Color32::WHITE)));
        let mut textured = triangles(corners.clone(), &[0, 1, 2]);
        textured.texture_id = id;
        for corner in &mut corners {
            corner.uv = Pos2::ZERO;
        }
        let plain = triangles(corners, &[0, 1, 2]);
        let [generic, short] = [textured, plain].map(|mesh| {
            raster.paint(&clipped(mesh, Rect::EVERYTHING), 1.0, 48, 40, BLUE)
        });
        prop_assert!(generic == short);
    }

    #[test]
    fn no_numbers_panic(
        corners in proptest::collection::vec((any::<[f32; 4]>(), any::<[u8; 4]>()), 0..7),
        mut indices in proptest::collection::vec(0..8_u32, 0..30),
        clip in any::<[f32; 4]>(),
        scale in any::<f32>(),
        repeat in any::<bool>(),
    ) {
        let vertices = corners.into_iter().map(|([x, y, u, v], [r, g, b, a])| Vertex {
            pos: pos2(x, y),
            uv: pos2(u, v),
            color: Color32::from_rgba_premultiplied(r, g, b, a),
        });
        if repeat {
            indices.extend([0, 1, 2, 2, 1, 3]);
        }
        let mesh = triangles(vertices.collect(), &indices);
        let clip = Rect::from_min_max(pos2(clip[0], clip[1]), pos2(clip[2], clip[3]));
        for (clip, scale) in [(clip, scale), (Rect::EVERYTHING, 1.0)] {
            let picture = raster().paint(&clipped(mesh.clone(), clip), scale, 20, 10, BLUE);
            prop_assert!(picture.pixels().all(|pixel| pixel.0[3] == 255));
        }
    }

    #[test]
    fn no_large_numbers_panic(
        corners in proptest::collection::vec((-50.0_f32..50.0, -50.0_f32..50.0, 0..46_i32), 4),
        uv in any::<[f32; 2]>(),
    ) {
        let vertices: Vec<_> = corners
            .into_iter()
            .zip([Color32::RED, GLASS, Color32::WHITE, Color32::TRANSPARENT])
            .map(|((x, y, power), color)| {
                let scale = 2.0_f32.powi(power);
                Vertex { pos: pos2(x * scale, y * scale), uv: pos2(uv[0] * x, uv[1] * y), color }
            })
            .collect();
        let mesh = triangles(vertices, &[0, 1, 2, 2, 1, 3, 1, 2, 3, 0, 3, 2]);
        let picture = painted(mesh, 40, 30);
        prop_assert!(picture.pixels().all(|pixel| pixel.0[3] == 255));
    }
}

#[test]
fn text_shows_and_stays_where_it_belongs() {
    let ctx = screen::context(egui::Theme::Light);
    let mut place = Rect::NOTHING;
    let picture = picture(&ctx, vec2(120.0, 40.0), 2.0, Color32::WHITE, |ui| {
        let font = egui::FontId::proportional(14.0);
        let at = pos2(10.0, 8.0);
        place = ui
            .painter()
            .text(at, egui::Align2::LEFT_TOP, "3.78 →", font, Color32::BLACK);
    });
    let ink = |pixel: &image::Rgba<u8>| pixel.0 != [255; 4];
    let dark = picture.pixels().filter(|pixel| pixel.0[0] < 40).count();
    assert!(dark > 100, "only {dark} dark pixels");
    for (x, y, pixel) in picture.enumerate_pixels() {
        let at = pos2(x as f32 + 0.5, y as f32 + 0.5) / 2.0;
        assert!(
            !ink(pixel) || place.expand(1.0).contains(at),
            "ink at {at:?}, text in {place:?}"
        );
    }
}

#[test]
fn a_whole_screen_agrees_with_the_plain_way() {
    for (pixels_per_point, width, height) in [(1.0, 640, 400), (1.25, 800, 500)] {
        let scene = Scene::new(vec2(640.0, 400.0), pixels_per_point);
        let (scale, size) = (pixels_per_point, [width, height]);
        let fast = scene
            .raster
            .paint(&scene.primitives, scale, width, height, BLUE);
        let plain = scene.plain.paint(&scene.primitives, scale, size, BLUE);
        let different = fast
            .pixels()
            .zip(plain.pixels())
            .filter(|(a, b)| a != b)
            .count();
        let worst = largest_difference(&fast, &plain);
        assert!(worst <= 1, "{worst} levels apart");
        assert!(
            different < fast.pixels().len() / 1000,
            "{different} pixels differ"
        );
    }
}

#[test]
fn two_fresh_contexts_give_the_same_bytes() {
    for pixels_per_point in [1.0, 1.25, 2.0] {
        let [first, second] = [(); 2].map(|()| {
            let ctx = screen::context(egui::Theme::Dark);
            picture(
                &ctx,
                vec2(900.0, 600.0),
                pixels_per_point,
                Color32::BLACK,
                screen::show,
            )
        });
        assert!(first == second);
        let distinct: std::collections::HashSet<_> = first.pixels().collect();
        assert!(
            distinct.len() > 200,
            "only {} colours: is the screen empty?",
            distinct.len()
        );
    }
}

#[test]
fn a_picture_is_laid_out_until_it_settles() {
    let ctx = screen::context(egui::Theme::Dark);
    let mut passes = 0;
    let _ = picture(&ctx, vec2(60.0, 40.0), 1.0, Color32::BLACK, |ui| {
        passes += 1;
        // Moves for four passes, then stays.
        ui.add_space(f32::from(u8::try_from(passes.min(5)).unwrap()));
        ui.label("here");
    });
    assert_eq!(passes, 6);
    let mut passes = 0;
    let _ = picture(&ctx, vec2(60.0, 40.0), 1.0, Color32::BLACK, |ui| {
        passes += 1;
        ui.add_space(f32::from(u8::try_from(passes % 7).unwrap()));
        ui.label("never still");
    });
    assert_eq!(passes, 10);
}

#[test]
fn a_context_can_give_a_second_picture() {
    let ctx = screen::context(egui::Theme::Light);
    let [first, second] = [(); 2].map(|()| {
        picture(&ctx, vec2(60.0, 30.0), 1.0, Color32::WHITE, |ui| {
            ui.label("3.78");
        })
    });
    assert!(first == second);
    assert!(count(&first, [255; 4]) < 60 * 30);
}

#[test]
fn a_zoomed_context_still_gives_the_pixels_asked_for() {
    let ctx = screen::context(egui::Theme::Dark);
    let show = |ui: &mut egui::Ui| {
        let rect = Rect::from_min_max(pos2(10.0, 5.0), pos2(30.0, 15.0));
        ui.painter().rect_filled(rect, 0, Color32::RED);
    };
    ctx.set_zoom_factor(1.5);
    let picture = picture(&ctx, vec2(40.0, 20.0), 2.0, Color32::BLACK, show);
    assert_eq!(picture.dimensions(), (80, 40));
    let red = |x, y| picture.get_pixel(x, y).0 == Color32::RED.to_array();
    assert!(red(21, 11) && red(58, 28));
    assert!(!red(18, 11) && !red(21, 8) && !red(61, 28) && !red(58, 31));
}

#[test]
fn a_window_test_gets_its_picture_from_the_raster() {
    let mut harness = egui_kittest::Harness::builder()
        .with_size(vec2(200.0, 100.0))
        .with_pixels_per_point(1.25)
        .renderer(CpuRenderer::default())
        .with_context_setup(layshaft::draw::install)
        .build_ui(|ui| {
            ui.heading("Gears");
            let _ = ui.button("Compare");
        });
    harness.run();
    let picture = harness.render().unwrap();
    assert_eq!(picture.dimensions(), (250, 125));
    let distinct: std::collections::HashSet<_> = picture.pixels().collect();
    assert!(distinct.len() > 20, "only {} colours", distinct.len());
}
