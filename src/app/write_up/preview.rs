//! What will the picture look like, without the window waiting for it?
//!
//! Pictures are made in the background. Of several wishes only the newest is fulfilled.

use crate::app::background::{Background, Task, Wake};
use crate::app::desk::Desk;
use crate::project::{PageForm, Revision, SetId};
use crate::sheet::page::{Page, PageError, Picture};
use crate::workshop::BenchItem;
use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use image::imageops::{FilterType, crop_imm, resize};
use std::sync::Arc;

/// The widest preview that is ever looked at, in pixels.
const PREVIEW_WIDTH: u32 = 1000;

/// The highest preview, and the longest side of a part of the picture at its full size: any graphics card takes a texture of this height.
const PREVIEW_HEIGHT: u32 = 2048;

/// The picture as it was last made, and the work that makes the next.
#[derive(Default)]
pub(in crate::app) struct Preview {
    work: Option<Background<Wish, News>>,
    wished: Option<Looked>,
    made: Option<Made>,
    /// How many bytes the picture of that look takes in a file.
    packed: Option<(Looked, usize)>,
    texture: Option<TextureHandle>,
    /// The picture in all its pixels, in parts, once somebody looks at them.
    parts: Vec<Part>,
}

/// What is looked at: a document in a form of page, what of the bench its sheet is of, and the set that is selected.
type Looked = (Revision, PageForm, Option<BenchItem>, Option<SetId>);

/// A part of the picture in all its pixels.
pub(super) struct Part {
    pub(super) texture: TextureHandle,
    /// Where it stands in the picture, in pixels.
    pub(super) at_px: [u32; 2],
}

impl std::fmt::Debug for Preview {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Preview")
            .field("wished", &self.wished)
            .finish_non_exhaustive()
    }
}

struct Wish {
    looked: Looked,
    page: Result<Page, PageError>,
}

/// What comes back: the picture at once, its size in a file a little later.
enum News {
    Made(Made),
    Packed(Looked, usize),
}

/// A picture, and the same small enough to be looked at whole.
struct Made {
    looked: Looked,
    picture: Result<(Arc<Picture>, ColorImage), PageError>,
}

impl Preview {
    /// Wishes for the picture of the present document, and takes what has been made.
    pub(super) fn follow(&mut self, ctx: &Context, desk: &Desk) {
        let revision = desk.history.revision();
        let looked = (revision, desk.page_form, desk.sheet, desk.selected);
        let work = self.work.get_or_insert_with(|| {
            let (wake, ctx) = (Wake::default(), ctx.clone());
            wake.connect(move || ctx.request_repaint());
            Background::started(wake, make_pictures)
        });
        if self.wished != Some(looked) {
            let page = desk.page();
            work.wish(Wish { looked, page });
            self.wished = Some(looked);
        }
        while let Some(news) = work.news() {
            match news {
                News::Made(made) => {
                    self.texture = made.picture.as_ref().ok().map(|(_, small)| {
                        ctx.load_texture("write-up", small.clone(), TextureOptions::LINEAR)
                    });
                    self.parts.clear();
                    self.made = Some(made);
                }
                News::Packed(looked, bytes) => self.packed = Some((looked, bytes)),
            }
        }
    }

    /// The picture, where there is one yet.
    ///
    /// # Errors
    /// Why there can be none.
    pub(super) fn shown(&self) -> Result<Option<&TextureHandle>, &PageError> {
        match &self.made {
            Some(Made {
                picture: Err(problem),
                ..
            }) => Err(problem),
            _ => Ok(self.texture.as_ref()),
        }
    }

    /// How many pixels the picture has, across and down.
    pub(super) fn size_px(&self) -> Option<[u32; 2]> {
        let (picture, _) = self.made.as_ref()?.picture.as_ref().ok()?;
        Some([picture.width(), picture.height()])
    }

    /// The picture in all its pixels, in parts that any graphics card takes.
    pub(super) fn parts(&mut self, ctx: &Context) -> &[Part] {
        let made = self.made.as_ref().filter(|_| self.parts.is_empty());
        if let Some((picture, _)) = made.and_then(|made| made.picture.as_ref().ok()) {
            let step = PREVIEW_HEIGHT as usize;
            for top in (0..picture.height()).step_by(step) {
                for left in (0..picture.width()).step_by(step) {
                    self.parts.push(part(ctx, picture, [left, top]));
                }
            }
        }
        &self.parts
    }

    /// How large the picture is, in pixels and kilobytes, once it is up to date.
    pub(super) fn size_text(&self) -> Option<String> {
        let (looked, bytes) = self.packed?;
        let made = self.made.as_ref()?;
        if self.wished != Some(looked) || made.looked != looked {
            return None;
        }
        let [width, height] = self.size_px()?;
        let kilobytes = bytes.div_ceil(1000);
        Some(format!("{width} × {height} pixels, {kilobytes} kB"))
    }
}

/// Makes the newest picture that is wished for, until the window is gone.
fn make_pictures(task: &Task<Wish, News>) {
    while let Some(Wish { looked, page }) = task.newest() {
        let made = |picture| News::Made(Made { looked, picture });
        let drawn = page.and_then(|page| Ok((Arc::new(page.picture()?), page)));
        let (picture, page) = match drawn {
            Ok(drawn) => drawn,
            Err(problem) => {
                task.tell(made(Err(problem)));
                continue;
            }
        };
        let small = smaller(&picture);
        task.tell(made(Ok((picture.clone(), small))));
        if task.is_overtaken() {
            // Nobody will read how large this one is.
            continue;
        }
        task.tell(match page.png(&picture) {
            Ok(bytes) => News::Packed(looked, bytes.len()),
            Err(problem) => made(Err(problem)),
        });
    }
}

/// A part of a picture as a texture, from a corner on.
fn part(ctx: &Context, picture: &Picture, at_px: [u32; 2]) -> Part {
    let [left, top] = at_px;
    let width = (picture.width() - left).min(PREVIEW_HEIGHT);
    let height = (picture.height() - top).min(PREVIEW_HEIGHT);
    let pixels = crop_imm(picture, left, top, width, height).to_image();
    let size = [width as usize, height as usize];
    let image = ColorImage::from_rgba_unmultiplied(size, &pixels);
    Part {
        texture: ctx.load_texture("write-up in full", image, TextureOptions::LINEAR),
        at_px,
    }
}

/// The picture in its true proportions, no larger than a preview can be.
fn smaller(picture: &image::RgbaImage) -> ColorImage {
    let (width, height) = (picture.width().max(1), picture.height().max(1));
    let scale = (f64::from(PREVIEW_WIDTH) / f64::from(width))
        .min(f64::from(PREVIEW_HEIGHT) / f64::from(height))
        .min(1.0);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 1 and the size of the picture"
    )]
    let scaled = |side: u32| ((f64::from(side) * scale).round() as u32).max(1);
    let small = if scale < 1.0 {
        resize(picture, scaled(width), scaled(height), FilterType::Triangle)
    } else {
        picture.clone()
    };
    let size = [small.width() as usize, small.height() as usize];
    ColorImage::from_rgba_unmultiplied(size, &small)
}
