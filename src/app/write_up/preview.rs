//! What will the picture look like, without the window waiting for it?
//!
//! Pictures are made in the background. Of several wishes only the newest is fulfilled.

use crate::app::background::{Background, Task, Wake};
use crate::app::desk::Desk;
use crate::project::{Revision, SetId};
use crate::sheet::page::{Page, PageError};
use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use image::imageops::{FilterType, resize};

/// The widest preview that is ever looked at, in pixels.
const PREVIEW_WIDTH: u32 = 1000;

/// The highest preview: any graphics card takes a texture of this height.
const PREVIEW_HEIGHT: u32 = 2048;

/// What a picture is of: the document as it stood, and the set that was selected.
type Subject = (Revision, Option<SetId>);

/// The picture as it was last made, and the work that makes the next.
#[derive(Default)]
pub(in crate::app) struct Preview {
    work: Option<Background<Wish, News>>,
    wished: Option<Subject>,
    made: Option<Made>,
    /// How many bytes the picture of that subject takes in a file.
    packed: Option<(Subject, usize)>,
    texture: Option<TextureHandle>,
}

impl std::fmt::Debug for Preview {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Preview")
            .field("wished", &self.wished)
            .finish_non_exhaustive()
    }
}

struct Wish {
    subject: Subject,
    page: Result<Page, PageError>,
}

/// What comes back: the picture at once, its size in a file a little later.
enum News {
    Made(Made),
    Packed(Subject, usize),
}

/// A picture small enough to be looked at, with the size of the real one.
struct Made {
    subject: Subject,
    picture: Result<ColorImage, PageError>,
    size_px: [u32; 2],
}

impl Preview {
    /// Wishes for the picture of the present document, and takes what has been made.
    pub(super) fn follow(&mut self, ctx: &Context, desk: &Desk) {
        let subject = (desk.history.revision(), desk.selected);
        let work = self.work.get_or_insert_with(|| {
            let (wake, ctx) = (Wake::default(), ctx.clone());
            wake.connect(move || ctx.request_repaint());
            Background::started(wake, make_pictures)
        });
        if self.wished != Some(subject) {
            let page = desk.page();
            work.wish(Wish { subject, page });
            self.wished = Some(subject);
        }
        while let Some(news) = work.news() {
            match news {
                News::Made(made) => {
                    self.texture = made.picture.as_ref().ok().map(|picture| {
                        ctx.load_texture("write-up", picture.clone(), TextureOptions::LINEAR)
                    });
                    self.made = Some(made);
                }
                News::Packed(subject, bytes) => self.packed = Some((subject, bytes)),
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

    /// How large the picture is, in pixels and kilobytes, once it is up to date.
    pub(super) fn size_text(&self) -> Option<String> {
        let (subject, bytes) = self.packed?;
        let made = self.made.as_ref()?;
        if self.wished != Some(subject) || made.subject != subject || made.picture.is_err() {
            return None;
        }
        let [width, height] = made.size_px;
        let kilobytes = bytes.div_ceil(1000);
        Some(format!("{width} × {height} pixels, {kilobytes} kB"))
    }
}

/// Makes the newest picture that is wished for, until the window is gone.
fn make_pictures(task: &Task<Wish, News>) {
    while let Some(Wish { subject, page }) = task.newest() {
        let made = |picture, size_px| {
            News::Made(Made {
                subject,
                picture,
                size_px,
            })
        };
        let drawn = page.and_then(|page| Ok((page.picture()?, page)));
        let (picture, page) = match drawn {
            Ok(drawn) => drawn,
            Err(problem) => {
                task.tell(made(Err(problem), [0, 0]));
                continue;
            }
        };
        let size_px = [picture.width(), picture.height()];
        task.tell(made(Ok(smaller(&picture)), size_px));
        if task.is_overtaken() {
            // Nobody will read how large this one is.
            continue;
        }
        task.tell(match page.png(&picture) {
            Ok(bytes) => News::Packed(subject, bytes.len()),
            Err(problem) => made(Err(problem), [0, 0]),
        });
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
