//! The drawing of a job: where the shim sits or what is measured, for those who look and those who hear.

use crate::app::form::Form;
use crate::app::heard::describe;
use crate::draw::bench::{self, BenchDrawing};
use crate::workshop::JobData;
use egui::{Id, Role, Sense, TextStyle, Ui, Vec2, WidgetInfo};

/// The widest drawing, in points.
const WIDEST: f32 = 400.0;

/// Its height, as a share of its width.
const HEIGHT: f32 = 9.0 / 16.0;

/// Shows the drawing.
pub(super) fn drawing_ui(ui: &mut Ui, data: &JobData, form: &Form<'_>) {
    let drawing = BenchDrawing::of(data);
    let width = ui.available_width().min(WIDEST);
    let (room, _) = ui.allocate_exact_size(Vec2::new(width, width * HEIGHT), Sense::hover());
    let text_size = TextStyle::Small.resolve(ui.style()).size;
    bench::paint(ui.painter(), room, drawing, form.palette, text_size);
    let image = ui.interact(room, Id::unique("drawing of the job"), Sense::hover());
    image.widget_info(|| WidgetInfo::labeled(Role::Image, true, "Drawing"));
    describe(&image, drawing.summary());
}
