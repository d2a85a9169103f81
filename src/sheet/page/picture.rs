//! How does a page become pixels, and pixels a file?
//!
//! No window, no graphics card, no system font, no clock: the same page gives the same bytes.

use super::{MARGIN, Page, WIDTH, bench, reading};
use crate::draw::{MAX_SIDE_PX, picture, theme};
use egui::{Context, FullOutput, Pos2, RawInput, Rect, Ui, UiBuilder, Vec2};
use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder, RgbaImage};

/// A finished picture: red, green, blue and full opacity for each pixel.
pub type Picture = RgbaImage;

/// Why there is no picture.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PageError {
    /// No set is left to show.
    #[error("no gear set is chosen for the picture; choose at least one")]
    NoSet,
    /// It would be higher than a picture can be.
    #[error(
        "the picture would be {height_px} pixels high, more than {MAX_SIDE_PX}; \
         choose a smaller width, or leave out the note"
    )]
    TooHigh {
        /// How high it would be.
        height_px: u32,
    },
    /// The pixels could not be brought into a file's form.
    #[error("the picture could not be packed as PNG: {0}")]
    Packing(String),
}

/// Higher than any page, in points: what is laid out in it shows how high the page is.
const ENDLESS: f32 = 100_000.0;

/// The picture of a page.
pub(super) fn of(page: &Page) -> Result<Picture, PageError> {
    let pixels_per_point = page.choices().width.px() as f32 / WIDTH;
    let ctx = context(page);
    let height = match page.choices().form.height_over_width() {
        Some(height_over_width) => WIDTH * height_over_width,
        None => content_height(&ctx, page, pixels_per_point),
    };
    let height_px = (height * pixels_per_point).ceil();
    if height_px > MAX_SIDE_PX as f32 {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "above 0; what does not fit is told as the greatest there is"
        )]
        let height_px = height_px as u32;
        return Err(PageError::TooHigh { height_px });
    }
    let size = Vec2::new(WIDTH, height_px / pixels_per_point);
    let background = page.palette().paper;
    Ok(picture(&ctx, size, pixels_per_point, background, |ui| {
        content_ui(ui, page, height);
    }))
}

/// A context of its own, with the looks of the page.
fn context(page: &Page) -> Context {
    let ctx = Context::default();
    theme::apply(&ctx);
    ctx.set_theme(match page.theme() {
        crate::draw::palette::Theme::Light => egui::Theme::Light,
        crate::draw::palette::Theme::Dark => egui::Theme::Dark,
    });
    ctx
}

fn content_ui(ui: &mut Ui, page: &Page, height: f32) -> f32 {
    let area = Rect::from_min_size(Pos2::ZERO, Vec2::new(WIDTH, height)).shrink(MARGIN);
    let mut ui = ui.new_child(UiBuilder::new().max_rect(area));
    match page.choices().form.height_over_width() {
        None => reading::page_ui(&mut ui, page),
        Some(_) => bench::page_ui(&mut ui, page),
    }
    ui.min_rect().bottom() + MARGIN
}

/// How high the content is, in points, found by laying it out once.
fn content_height(ctx: &Context, page: &Page, pixels_per_point: f32) -> f32 {
    let mut input = RawInput {
        screen_rect: Some(Rect::from_min_size(Pos2::ZERO, Vec2::new(WIDTH, ENDLESS))),
        time: Some(0.0),
        ..RawInput::default()
    };
    if let Some(root) = input.viewports.get_mut(&egui::ViewportId::ROOT) {
        root.native_pixels_per_point = Some(pixels_per_point);
    }
    let mut height = 0.0;
    let output: FullOutput = ctx.run_ui(input, |ui| height = content_ui(ui, page, ENDLESS));
    // The picture is painted from scratch: what this pass put into textures is not needed.
    output.drop_without_applying_deltas();
    height
}

/// A picture as the bytes of a PNG file, the same for equal pictures.
///
/// # Errors
/// When the pixels cannot be packed.
pub fn png(picture: &Picture) -> Result<Vec<u8>, PageError> {
    let mut bytes = Vec::new();
    // Large even areas: filters make them longer, not shorter.
    let encoder =
        PngEncoder::new_with_quality(&mut bytes, CompressionType::Default, FilterType::NoFilter);
    // A page is opaque, so a quarter of the bytes would say nothing.
    let opaque: Vec<u8> = picture
        .pixels()
        .flat_map(|p| [p.0[0], p.0[1], p.0[2]])
        .collect();
    encoder
        .write_image(
            &opaque,
            picture.width(),
            picture.height(),
            ExtendedColorType::Rgb8,
        )
        .map_err(|error| PageError::Packing(error.to_string()))?;
    Ok(bytes)
}
