//! A plausible screen to paint: bars, a table, two diagrams, a translucent note.

use egui::{Color32, Frame, Panel, RichText, ScrollArea, Stroke, Ui, vec2};
use egui_plot::{Line, LineStyle, Plot, PlotPoints, Points};

/// A fresh context with the program's fonts, dark or light.
pub(crate) fn context(theme: egui::Theme) -> egui::Context {
    let ctx = egui::Context::default();
    layshaft::draw::install(&ctx);
    ctx.set_theme(theme);
    ctx
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

fn diagram(ui: &mut Ui, name: &str, size: egui::Vec2) {
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
                let line = Line::new(format!("set {curve}"), PlotPoints::from_iter(points));
                plot.line(line.style(style).width(1.5));
            }
            let shifts = (0..12).map(|i| [f64::from(i) * 15.0, f64::from(i) * 250.0]);
            plot.points(Points::new("shifts", PlotPoints::from_iter(shifts)).radius(4.0));
        });
}

fn note(ui: &mut Ui) {
    let rect = egui::Rect::from_min_size(egui::pos2(620.0, 90.0), vec2(260.0, 120.0));
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
