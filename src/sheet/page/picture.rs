//! How does a page become pixels, and pixels a file?
//!
//! No window, no graphics card, no system font, no clock: the same page gives the same bytes.

use super::{Page, Sheet, WIDTH, bench, for_readers, job_sheet, margin, plan_sheet};
use crate::draw::{MAX_SIDE_PX, picture, theme};
use crate::project::format::WriteError;
use crate::project::{PICTURE_KEYWORD, PageForm};
use egui::emath::GuiRounding as _;
use egui::epaint::ClippedShape;
use egui::{Context, FullOutput, Pos2, RawInput, Rect, Shape, Ui, UiBuilder, Vec2};
use image::RgbaImage;
use png::{BitDepth, ColorType, DeflateCompression, Encoder, EncodingError, Filter};

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
    /// More than one sheet of paper holds.
    #[error(
        "{paper} cannot hold all of it in letters that can be read; leave out {}",
        what_to_leave_out(*with_note, *sets)
    )]
    PageFull {
        /// The paper: `a page of A4`.
        paper: &'static str,
        /// Whether the note is on it.
        with_note: bool,
        /// How many sets are on it.
        sets: usize,
    },
    /// More of a job than one sheet of paper holds.
    #[error("{paper} cannot hold all of this job in letters that can be read; make two jobs of it")]
    SheetFull {
        /// The paper: `a page of A4`.
        paper: &'static str,
    },
    /// More parts of a plan than one sheet of paper holds.
    #[error(
        "{paper} cannot hold all of this plan in letters that can be read; strike out parts, or leave out \
         a set"
    )]
    PlanFull {
        /// The paper: `a page of A4`.
        paper: &'static str,
    },
    /// The project that goes along has no text.
    #[error(transparent)]
    Project(#[from] WriteError),
    /// The pixels could not be brought into a file's form.
    #[error("the picture could not be packed as PNG: {0}")]
    Packing(String),
}

/// Higher than any page, in points: what is laid out in it shows how high the page is.
const ENDLESS: f32 = 100_000.0;

/// The picture of a page.
pub(super) fn of(page: &Page) -> Result<Picture, PageError> {
    let pixels_per_point = pixels_per_point(page);
    let ctx = context(page);
    let height = height_in(&ctx, page)?;
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

fn pixels_per_point(page: &Page) -> f32 {
    page.choices().width.px() as f32 / WIDTH
}

/// The height of a page, in points.
pub(super) fn height(page: &Page) -> Result<f32, PageError> {
    height_in(&context(page), page)
}

fn height_in(ctx: &Context, page: &Page) -> Result<f32, PageError> {
    let Some(height_over_width) = page.form.height_over_width() else {
        return Ok(laid_out(ctx, page, ENDLESS).0);
    };
    let height = WIDTH * height_over_width;
    if laid_out(ctx, page, height).0 > height + 0.5 {
        return Err(page_full(page));
    }
    Ok(height)
}

/// Every text on a page, and the rectangle of its letters.
pub(super) fn texts(page: &Page) -> Result<Vec<(Rect, String)>, PageError> {
    let ctx = context(page);
    let height = height_in(&ctx, page)?;
    // Axes know their own width from the second pass on.
    laid_out(&ctx, page, height);
    let (_, shapes) = laid_out(&ctx, page, height);
    let mut texts = Vec::new();
    for clipped in shapes {
        collect_texts(&clipped.shape, &mut texts);
    }
    Ok(texts)
}

fn collect_texts(shape: &Shape, texts: &mut Vec<(Rect, String)>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|shape| collect_texts(shape, texts)),
        Shape::Text(text) => {
            let letters = text.galley.mesh_bounds.translate(text.pos.to_vec2());
            texts.push((letters, text.galley.text().to_owned()));
        }
        _ => {}
    }
}

fn page_full(page: &Page) -> PageError {
    let paper = match page.form {
        PageForm::Letter => "a page of Letter",
        PageForm::A4 | PageForm::Picture => "a page of A4",
    };
    match page.sheet() {
        Some(Sheet::Job(_)) => return PageError::SheetFull { paper },
        Some(Sheet::Plan(_)) => return PageError::PlanFull { paper },
        None => {}
    }
    PageError::PageFull {
        paper,
        with_note: page.choices().with_note && !page.project().note.as_str().is_empty(),
        sets: page.project().sets.len(),
    }
}

fn what_to_leave_out(with_note: bool, sets: usize) -> &'static str {
    match (with_note, sets) {
        (true, 0..=1) => "the note",
        (true, _) => "the note or a set",
        (false, _) => "a set",
    }
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
    let area = Rect::from_min_size(Pos2::ZERO, Vec2::new(WIDTH, height)).shrink(margin(page.form));
    let area = area.round_ui();
    let mut ui = ui.new_child(UiBuilder::new().max_rect(area));
    match page.form.height_over_width() {
        None => for_readers::page_ui(&mut ui, page),
        Some(_) => match page.sheet() {
            Some(Sheet::Job(sheet)) => job_sheet::page_ui(&mut ui, page, sheet),
            Some(Sheet::Plan(plan)) => plan_sheet::page_ui(&mut ui, page, plan),
            None => bench::page_ui(&mut ui, page),
        },
    }
    ui.min_rect().bottom() + margin(page.form)
}

/// How high the content is, in points, and its shapes, laid out once in a height.
fn laid_out(ctx: &Context, page: &Page, within: f32) -> (f32, Vec<ClippedShape>) {
    let mut input = RawInput {
        screen_rect: Some(Rect::from_min_size(Pos2::ZERO, Vec2::new(WIDTH, within))),
        time: Some(0.0),
        ..RawInput::default()
    };
    if let Some(root) = input.viewports.get_mut(&egui::ViewportId::ROOT) {
        root.native_pixels_per_point = Some(pixels_per_point(page));
    }
    let mut height = 0.0;
    let mut output: FullOutput = ctx.run_ui(input, |ui| height = content_ui(ui, page, within));
    let shapes = std::mem::take(&mut output.shapes);
    // The picture is painted from scratch: what this pass put into textures is not needed.
    output.drop_without_applying_deltas();
    (height, shapes)
}

/// A picture as the bytes of a PNG file, with the text of a project in it where there is one; the same
/// for equal pictures and texts.
pub(super) fn png(picture: &Picture, project: Option<String>) -> Result<Vec<u8>, PageError> {
    // A page is opaque, so a quarter of the bytes would say nothing.
    let mut opaque = Vec::with_capacity(picture.len() / 4 * 3);
    for pixel in picture.as_raw().chunks_exact(4) {
        opaque.extend_from_slice(&pixel[..3]);
    }
    packed(&opaque, picture.dimensions(), project)
        .map_err(|error| PageError::Packing(error.to_string()))
}

fn packed(
    opaque: &[u8],
    (width_px, height_px): (u32, u32),
    project: Option<String>,
) -> Result<Vec<u8>, EncodingError> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, width_px, height_px);
    encoder.set_color(ColorType::Rgb);
    encoder.set_depth(BitDepth::Eight);
    // Large even areas: filters make them longer, not shorter, and the higher levels save a
    // quarter of the bytes for five times the time.
    encoder.set_deflate_compression(DeflateCompression::Level(1));
    encoder.set_filter(Filter::NoFilter);
    if let Some(text) = project {
        // Before the pixels, so that half a picture still has it; a few thousand bytes as they are,
        // for whoever looks into the file.
        encoder.add_itxt_chunk(PICTURE_KEYWORD.to_owned(), text)?;
    }
    let mut writer = encoder.write_header()?;
    writer.write_image_data(opaque)?;
    writer.finish()?;
    Ok(bytes)
}
