//! How long does a picture take? Budget: 5 ms for a window of 1280 × 800.

use divan::Bencher;
use egui::{Color32, vec2};
use layshaft::draw::Raster;

#[path = "../it/support/per_pixel.rs"]
mod per_pixel;
#[path = "../it/support/screen.rs"]
mod screen;

use screen::Scene;

const WIDTH: u32 = 1280;
const HEIGHT: u32 = 800;

fn scene(pixels_per_point: f32) -> Scene {
    Scene::new(vec2(WIDTH as f32, HEIGHT as f32), pixels_per_point)
}

#[divan::bench(args = [1, 2])]
fn a_window_of_1280_by_800(bencher: Bencher<'_, '_>, pixels_per_point: u8) {
    let scene = scene(pixels_per_point.into());
    let scale = u32::from(pixels_per_point);
    bencher.bench_local(|| {
        let (width, height) = (scale * WIDTH, scale * HEIGHT);
        let scale = f32::from(pixels_per_point);
        scene
            .raster
            .paint(&scene.primitives, scale, width, height, Color32::BLACK)
    });
}

#[divan::bench(sample_count = 10)]
fn the_plain_way_for_comparison(bencher: Bencher<'_, '_>) {
    let scene = scene(1.0);
    bencher.bench_local(|| {
        scene
            .plain
            .paint(&scene.primitives, 1.0, [WIDTH, HEIGHT], Color32::BLACK)
    });
}

#[divan::bench]
fn an_empty_picture_of_1280_by_800(bencher: Bencher<'_, '_>) {
    let raster = Raster::new();
    bencher.bench_local(|| raster.paint(&[], 1.0, WIDTH, HEIGHT, Color32::BLACK));
}
