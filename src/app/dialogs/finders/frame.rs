//! What the dialogs of finders have in common: a part that scrolls, and beneath it the answers.

use super::{FinderAnswer, Taken, WantedTeeth};
use crate::app::dialogs::modal::{Frame, begin_anew, set_width};
use crate::app::heard::{heading_ui, tell_why_not};
use crate::app::input::Scroll;
use crate::draw::palette::Palette;
use egui::{Button, Context, RichText, ScrollArea, Ui};

/// What stays free for the answers and around the dialog, in points.
const ROOM_BESIDE_CONTENTS: f32 = 130.0;

/// What must be told of a dialog before its contents.
pub(super) struct Opening<'a> {
    pub(super) salt: &'static str,
    pub(super) name: &'static str,
    /// What it is about, in a sentence.
    pub(super) words: &'a str,
    /// Its width where the window has room for it, in points.
    pub(super) width: f32,
    /// Whether what has the focus keeps Page Up and Page Down for itself.
    pub(super) keeps_page_keys: bool,
}

/// What the contents of a dialog came to.
pub(super) struct Shown {
    /// What can be taken over, or why nothing can.
    pub(super) taken: Result<Taken, String>,
    /// Whether the keys go on to the answers.
    pub(super) is_through: bool,
    /// The ratio for which teeth are wanted next.
    pub(super) teeth: Option<WantedTeeth>,
}

/// Shows a dialog; the answer once there is one. How high its contents have been is kept in `tallest`: with
/// less to show it keeps its place while it is typed in.
pub(super) fn finder_frame_ui(
    ctx: &Context,
    opening: &Opening<'_>,
    tallest: &mut f32,
    palette: &Palette,
    contents: impl FnOnce(&mut Ui) -> Shown,
) -> Option<FinderAnswer> {
    let frame = Frame {
        salt: opening.salt,
        name: opening.name,
        description: opening.words,
        is_question: false,
    };
    let shown = frame.show(ctx, |ui| {
        set_width(ui, opening.width);
        let keys = if opening.keeps_page_keys {
            Scroll::default()
        } else {
            Scroll::taken_by_page(ctx)
        };
        let room = ctx.content_rect().height() - ROOM_BESIDE_CONTENTS;
        let area = ScrollArea::vertical().max_height(room);
        let shown = area.min_scrolled_height(room).show(ui, |ui| {
            keys.apply(ui);
            ui.set_min_height(tallest.min(room));
            ui.set_width(ui.available_width());
            heading_ui(ui, opening.name);
            ui.label(RichText::new(opening.words).color(palette.dim_text));
            ui.add_space(2.0);
            let shown = contents(ui);
            *tallest = tallest.max(ui.min_rect().height());
            shown
        });
        ui.add_space(6.0);
        answers_ui(ui, shown.inner)
    });
    let answer = if shown.is_left {
        Some(FinderAnswer::Cancel)
    } else {
        shown.inner
    };
    if answer.is_some() {
        begin_anew(ctx);
    }
    answer
}

fn answers_ui(ui: &mut Ui, shown: Shown) -> Option<FinderAnswer> {
    if let Some(teeth) = shown.teeth {
        return Some(FinderAnswer::Teeth(teeth));
    }
    ui.horizontal_wrapped(|ui| {
        let take = Button::new(RichText::new("Take over").strong());
        let take = ui.add_enabled(shown.taken.is_ok(), take);
        let take = match &shown.taken {
            Ok(_) => take,
            Err(why) => tell_why_not(take, why),
        };
        let cancel = ui.button("Cancel");
        if shown.is_through {
            let next = if shown.taken.is_ok() { &take } else { &cancel };
            next.request_focus();
        }
        if cancel.clicked() {
            return Some(FinderAnswer::Cancel);
        }
        let taken = shown.taken.ok().filter(|_| take.clicked());
        taken.map(FinderAnswer::Take)
    })
    .inner
}
