//! What will the picture look like, without the window waiting for it?
//!
//! Pictures are made on a thread of their own. Of several wishes only the newest is fulfilled.

use crate::analysis::Analysis;
use crate::app::desk::Desk;
use crate::project::Revision;
use crate::sheet::page::{Page, PageError, png};
use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use image::imageops::{FilterType, resize};
use std::sync::mpsc::{Receiver, Sender, channel};

/// The widest preview that is ever looked at, in pixels.
const PREVIEW_WIDTH: u32 = 1000;

/// The highest preview: any graphics card takes a texture of this height.
const PREVIEW_HEIGHT: u32 = 2048;

/// The picture as it was last made, and the thread that makes the next.
#[derive(Default)]
pub(in crate::app) struct Preview {
    worker: Option<Worker>,
    wished: Option<Revision>,
    made: Option<Made>,
    texture: Option<TextureHandle>,
}

impl std::fmt::Debug for Preview {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Preview")
            .field("wished", &self.wished)
            .finish_non_exhaustive()
    }
}

struct Worker {
    wishes: Sender<Wish>,
    answers: Receiver<Made>,
}

struct Wish {
    revision: Revision,
    analysis: Analysis,
}

/// A picture small enough to be looked at, with the size of the real one.
struct Made {
    revision: Revision,
    picture: Result<ColorImage, PageError>,
    size_px: [u32; 2],
    bytes: usize,
}

impl Preview {
    /// Wishes for the picture of the present document, and takes what has been made.
    pub(super) fn follow(&mut self, ctx: &Context, desk: &Desk) {
        let revision = desk.history.revision();
        let worker = self
            .worker
            .get_or_insert_with(|| Worker::started(ctx.clone()));
        if self.wished != Some(revision) {
            let analysis = desk.analysis();
            // A worker that is gone makes no picture; the window lives on.
            let _ = worker.wishes.send(Wish { revision, analysis });
            self.wished = Some(revision);
        }
        while let Ok(made) = worker.answers.try_recv() {
            self.texture = made.picture.as_ref().ok().map(|picture| {
                ctx.load_texture("write-up", picture.clone(), TextureOptions::LINEAR)
            });
            self.made = Some(made);
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
        let made = self.made.as_ref()?;
        if self.wished != Some(made.revision) || made.picture.is_err() {
            return None;
        }
        let [width, height] = made.size_px;
        let kilobytes = made.bytes.div_ceil(1000);
        Some(format!("{width} × {height} pixels, {kilobytes} kB"))
    }
}

impl Worker {
    /// A thread that makes pictures until the window is gone.
    fn started(ctx: Context) -> Self {
        let (wishes, wished) = channel::<Wish>();
        let (sender, answers) = channel();
        std::thread::spawn(move || {
            while let Ok(mut wish) = wished.recv() {
                while let Ok(newer) = wished.try_recv() {
                    wish = newer;
                }
                if sender.send(Made::of(wish)).is_err() {
                    return;
                }
                ctx.request_repaint();
            }
        });
        Self { wishes, answers }
    }
}

impl Made {
    fn of(wish: Wish) -> Self {
        let made = Page::of(wish.analysis).and_then(|page| {
            let picture = page.picture()?;
            let bytes = png(&picture)?.len();
            Ok((picture, bytes))
        });
        let (picture, size_px, bytes) = match made {
            Ok((picture, bytes)) => {
                let size_px = [picture.width(), picture.height()];
                (Ok(smaller(&picture)), size_px, bytes)
            }
            Err(problem) => (Err(problem), [0, 0], 0),
        };
        Self {
            revision: wish.revision,
            picture,
            size_px,
            bytes,
        }
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
