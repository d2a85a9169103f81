//! A plausible screen to paint: bars, a table, two diagrams, a translucent note.

use egui::{
    ClippedPrimitive, Color32, Frame, Panel, Pos2, RawInput, Rect, RichText, ScrollArea, Stroke,
    Ui, Vec2, ViewportId, vec2,
};
use egui_plot::{Line, LineStyle, Plot, PlotPoints, Points};
use layshaft::draw::Raster;

use super::per_pixel::PerPixel;

/// A fresh context with the program's fonts, dark or light.
pub(crate) fn context(theme: egui::Theme) -> egui::Context {
    let ctx = egui::Context::default();
    layshaft::draw::install(&ctx);
    ctx.set_theme(theme);
    ctx
}

/// The screen ready to be painted, and both painters with its textures.
pub(crate) struct Scene {
    pub(crate) primitives: Vec<ClippedPrimitive>,
    pub(crate) raster: Raster,
    pub(crate) plain: PerPixel,
}

impl Scene {
    pub(crate) fn new(size_points: Vec2, pixels_per_point: f32) -> Self {
        let ctx = context(egui::Theme::Dark);
        let mut input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, size_points)),
            ..RawInput::default()
        };
        let root = input.viewports.entry(ViewportId::ROOT).or_default();
        root.native_pixels_per_point = Some(pixels_per_point);
        let mut scene = Self {
            primitives: Vec::new(),
            raster: Raster::new(),
            plain: PerPixel::default(),
        };
        for _ in 0..3 {
            let mut output = ctx.run_ui(input.clone(), show);
            scene.plain.apply(&mut output.textures_delta.clone());
            scene.raster.apply(&mut output.textures_delta);
            scene.primitives = ctx.tessellate(output.shapes, pixels_per_point);
        }
        scene
    }
}

/// Fills the whole of `ui`.
pub(crate) fn show(ui: &mut Ui) {
    Panel::top("menu").show(ui, |ui| {
        ui.horizontal(|ui| {
            for name in ["File", "Edit", "Set", "Diagram", "Help"] {
                let _ = ui.button(name);
            }
        });
    });
    Panel::bottom("state").show(ui, |ui| {
        ui.label("3 sets, 2 findings · 225/45 R17 · 1 914 mm · 34.5 km/h at 1 000 rpm");
    });
    Panel::left("table").default_size(420.0).show(ui, |ui| {
        ui.label(
            RichText::new("Gears")
                .family(layshaft::draw::bold())
                .size(18.0),
        );
        ScrollArea::vertical().show(ui, table);
    });
    egui::CentralPanel::default().show(ui, |ui| {
        let half = vec2(ui.available_width(), (ui.available_height() - 8.0) / 2.0);
        diagram(ui, "speeds", half);
        diagram(ui, "drops", half);
        note(ui);
    });
}

fn table(ui: &mut Ui) {
    egui::Grid::new("gears").striped(true).show(ui, |ui| {
        for gear in 1..=30_u8 {
            let ratio = 4.1 / f64::from(gear).powf(0.7);
            ui.label(format!("{gear}"));
            ui.label(format!("{ratio:.3}"));
            ui.label(format!("{:.1} km/h", 48.0 / ratio));
            ui.label(format!("{:.0} rpm", 6_500.0 - 90.0 * f64::from(gear)));
            let _ = ui.small_button("…");
            ui.end_row();
        }
    });
}

fn diagram(ui: &mut Ui, name: &str, size: Vec2) {
    Plot::new(name)
        .width(size.x)
        .height(size.y)
        .show(ui, |plot| {
            for curve in 1..=6_u8 {
                let slope = f64::from(curve) / 6.0;
                let points = (0..400).map(|i| {
                    let x = f64::from(i) / 2.0;
                    [x, x * slope * 30.0 + 400.0 * (x / 17.0 + slope).sin()]
                });
                let style = if curve % 2 == 0 {
                    LineStyle::Solid
                } else {
                    LineStyle::dashed_loose()
                };
                let line = Line::new(format!("set {curve}"), points.collect::<PlotPoints<'_>>());
                plot.line(line.style(style).width(1.5));
            }
            let shifts = (0..12).map(|i| [f64::from(i) * 15.0, f64::from(i) * 250.0]);
            plot.points(Points::new("shifts", shifts.collect::<PlotPoints<'_>>()).radius(4.0));
        });
}

fn note(ui: &mut Ui) {
    let rect = Rect::from_min_size(egui::pos2(620.0, 90.0), vec2(260.0, 120.0));
    ui.scope_builder(egui::UiBuilder::new().max_rect(rect), |ui| {
        Frame::new()
            .fill(Color32::from_rgba_unmultiplied(200, 120, 20, 90))
            .stroke(Stroke::new(
                1.0,
                Color32::from_rgba_unmultiplied(255, 255, 255, 120),
            ))
            .corner_radius(8)
            .inner_margin(10)
            .shadow(egui::Shadow {
                offset: [4, 6],
                blur: 12,
                spread: 0,
                color: Color32::from_black_alpha(96),
            })
            .show(ui, |ui| {
                ui.label(
                    RichText::new("Second gear is short")
                        .strong()
                        .family(layshaft::draw::bold()),
                );
                ui.label("It ends at 78 km/h; 4.10 → 3.73 would move that to 86 km/h (+10 %).");
            });
    });
}
