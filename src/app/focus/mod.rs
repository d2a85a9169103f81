//! The focus map: where the focus can be, and where a key takes it.
//!
//! Tab goes from row to row and down a column, Left and Right along a row, F6 from one part of the
//! window to the next, where it comes back to what had the focus there last. In menus and dialogs the
//! toolkit's own ways hold. The map is learned from what a frame has shown and used in the next one.

mod back;
mod keys;
pub(super) mod layers;
mod ring;
mod stops;
mod walking;

pub(super) use back::FocusBack;
pub(super) use stops::{Keeps, Pane, Walk};

use super::input::Scroll;
use egui::scroll_area::ScrollAreaOutput;
use egui::{Context, Id, LayerId, Popup, Rect, ScrollArea, Ui};
use std::collections::{HashMap, HashSet};
use stops::{Announced, Shown, Sketch, Span, Stop, in_rows};
use walking::{Map, Wish};

/// Where the focus can be, where it is and where it was.
#[derive(Debug, Default)]
pub(super) struct FocusMap {
    /// What the panels of this frame have said so far.
    sketch: Sketch,
    /// The stops of the last frame.
    map: Map,
    /// The stop of each part of the window that had the focus last.
    remembered: HashMap<Pane, Id>,
    /// The stop that had the focus at the end of the last frame.
    last: Option<Stop>,
    /// Whether the focus came to another widget between the last frame and this one.
    has_moved: bool,
    /// The part of the window that is to have the focus once it is shown.
    entering: Option<Pane>,
    /// What is to have the focus from the next frame on.
    wanted: Option<Id>,
    /// What is to be scrolled into view in the next frame, and in this one.
    seeking: Option<Id>,
    sought: Option<Id>,
    /// The room of what is sought together with what belongs to it.
    sought_whole: Option<Rect>,
    /// Whether the first stop of the window is to have the focus once it is known.
    is_beginning: bool,
}

/// The room that is left around what is scrolled into view, in points.
const MARGIN: f32 = 8.0;

/// What stays in view of something that scrolls.
#[derive(Debug, Clone, Copy)]
enum Frozen {
    Nothing,
    /// A head of that height, in points, above rows that scroll to both sides.
    Head(f32),
}

/// A point of a frame, for what is shown from there on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Mark {
    layer: LayerId,
    place: usize,
}

impl Mark {
    /// What was shown since the mark.
    fn span<T>(self, of: T, ui: &Ui) -> Span<T> {
        Span {
            of,
            layer: self.layer,
            places: self.place..place_now(ui, self.layer),
        }
    }
}

/// What keys came to nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lost {
    /// Letters were typed where there is no field.
    Typing,
    /// The key leads to a part of the window that is not shown just now.
    Behind(Pane),
}

impl FocusMap {
    /// Begins a frame: takes the keys that move the focus, and moves it.
    ///
    /// `is_ours` is false while a dialog stands: there the toolkit's own ways hold. While what lay over
    /// the window is still going, `is_free` is false, and what is to have the focus waits. Returns what
    /// was typed in vain.
    pub(super) fn begin_frame(
        &mut self,
        ctx: &Context,
        is_ours: bool,
        is_free: bool,
    ) -> Option<Lost> {
        self.sketch = Sketch::default();
        self.sought_whole = None;
        let lost = if is_ours && !Popup::is_any_open(ctx) {
            self.walk(ctx)
        } else {
            None
        };
        self.sought = self.seeking.take();
        if let Some(id) = self.wanted.take_if(|_| is_free) {
            // It may have the focus already, and have been scrolled away.
            self.sought = Some(id);
            ctx.memory_mut(|m| m.request_focus(id));
        }
        let focused = ctx.memory(egui::Memory::focused);
        self.has_moved = focused.is_some() && focused != self.last.map(|stop| stop.id);
        lost
    }

    /// Moves the focus as the keys of this frame ask for.
    fn walk(&mut self, ctx: &Context) -> Option<Lost> {
        // From here on Tab and the arrows are ours.
        ctx.memory_mut(|m| m.move_focus(egui::FocusDirection::None));
        let before = ctx.memory(egui::Memory::focused);
        let mut at = before;
        if before.is_none() && keys::is_given_up(ctx) {
            // Esc takes back what was typed; it does not leave.
            at = self.last.map(|stop| stop.id);
        }
        let last = |pane| self.remembered.get(&pane).copied();
        while let Some(wish) = keys::take(ctx, at.and_then(|id| self.map.get(id))) {
            if let Some(pane) = at.and_then(|id| self.map.hidden_behind(id, wish)) {
                self.entering = Some(pane);
                return Some(Lost::Behind(pane));
            }
            let to = match at {
                Some(id) => self.map.to(id, wish, &last),
                None => self.first(wish, &last),
            };
            at = to.or(at);
        }
        let lost = self.typed_beside(ctx, &mut at);
        if at != before
            && let Some(id) = at
        {
            ctx.memory_mut(|m| m.request_focus(id));
        }
        lost
    }

    /// Where the focus begins, or goes on where it was before it went to nothing.
    fn first(&self, wish: Wish, last: &dyn Fn(Pane) -> Option<Id>) -> Option<Id> {
        let was = self.last.filter(|stop| self.map.get(stop.id).is_some());
        if let Some(stop) = was {
            return self.map.to(stop.id, wish, last);
        }
        let pane = self.map.first_pane()?;
        self.map.entry(pane, last).map(|stop| stop.id)
    }

    /// Letters on a button go into the field of its row.
    fn typed_beside(&self, ctx: &Context, at: &mut Option<Id>) -> Option<Lost> {
        if !keys::is_typing(ctx) {
            return None;
        }
        let stop = match *at {
            Some(id) => Some(self.map.get(id)?),
            None => None,
        };
        if stop.is_some_and(Stop::is_field) {
            return None;
        }
        match stop.and_then(|stop| self.map.field_beside(stop.id)) {
            Some(field) => {
                *at = Some(field.id);
                None
            }
            None => Some(Lost::Typing),
        }
    }

    /// The field that the keys go to, if it is one of a form.
    pub(super) fn field_in_hand(&self, ctx: &Context) -> Option<Id> {
        let focused = ctx.memory(egui::Memory::focused)?;
        let stop = self.map.get(focused)?;
        stop.is_field().then_some(stop.id)
    }

    /// Whether page keys scroll the part of the window that has the focus.
    pub(super) fn is_scrolling(&self, ctx: &Context) -> bool {
        let scrolls = [
            Pane::Vehicle,
            Pane::Sets,
            Pane::Table,
            Pane::Jobs,
            Pane::Bench,
            Pane::WriteUp,
        ];
        scrolls.iter().any(|pane| self.is_in(ctx, *pane))
    }

    /// From the next frame on something has the focus.
    pub(super) fn want(&mut self, id: Id) {
        self.wanted = Some(id);
    }

    /// Another document is shown: no place of the old one is remembered. That `first` has the focus
    /// next, else the first stop of the window, where a stray key overwrites nothing.
    pub(super) fn begin_document(&mut self, first: Option<Id>) {
        self.remembered.clear();
        self.last = None;
        self.entering = None;
        self.wanted = first;
        self.is_beginning = first.is_none();
    }

    /// A part of the window is to have the focus once it is shown, where it had it last.
    pub(super) fn go_into(&mut self, pane: Option<Pane>) {
        self.entering = pane;
    }

    /// What is sought is brought into view together with what stands in that room.
    pub(super) fn seek_with(&mut self, id: Id, room: Rect) {
        if self.sought == Some(id) {
            self.sought_whole = Some(room);
        }
    }

    /// In the next frame something is scrolled into view; the focus stays where it is.
    pub(super) fn seek(&mut self, id: Id) {
        self.seeking = Some(id);
    }

    /// Whether a part of the window has the focus.
    pub(super) fn is_in(&self, ctx: &Context, pane: Pane) -> bool {
        let focused = ctx.memory(egui::Memory::focused);
        let stop = focused.and_then(|id| self.map.get(id));
        stop.is_some_and(|stop| stop.pane == pane)
    }

    /// Whether the focus came to another widget since the last frame.
    pub(super) fn has_moved(&self) -> bool {
        self.has_moved
    }

    /// Marks this point of the frame.
    pub(super) fn mark(ui: &Ui) -> Mark {
        let layer = ui.layer_id();
        Mark {
            layer,
            place: place_now(ui, layer),
        }
    }

    /// What was shown since a mark is a part of the window.
    pub(super) fn pane(&mut self, pane: Pane, since: Mark, ui: &Ui) {
        self.sketch.panes.push(since.span(pane, ui));
    }

    /// All that is shown in a layer is a part of the window.
    pub(super) fn layer(&mut self, pane: Pane, layer: LayerId) {
        self.sketch.panes.push(Span {
            of: pane,
            layer,
            places: 0..usize::MAX,
        });
    }

    /// A part of the window is there, but not shown just now.
    pub(super) fn hidden(&mut self, pane: Pane) {
        self.sketch.hidden.push(pane);
    }

    /// What was shown since a mark is walked through in one way.
    pub(super) fn block(&mut self, walk: Walk, since: Mark, ui: &Ui) {
        self.sketch.blocks.push(since.span(walk, ui));
    }

    /// Something is the main stop of its row; else that is the first field, else what comes first.
    pub(super) fn prefer(&mut self, id: Id) {
        self.sketch.preferred.push(id);
    }

    /// Where a part of the window is entered, unless another stop had the focus there last: at the
    /// first of these that is shown.
    pub(super) fn enter_at_first_of(&mut self, ids: impl Iterator<Item = Id>) {
        self.sketch.entries.extend(ids);
    }

    /// A field has so many characters.
    pub(super) fn announce_field(&mut self, id: Id, keeps: Keeps, characters: usize) {
        self.sketch.announced.push(Announced {
            id,
            keeps,
            characters,
            is_alone: false,
        });
    }

    /// Something that is no field keeps some keys for itself.
    pub(super) fn announce_keys(&mut self, id: Id, keeps: Keeps) {
        self.announce_field(id, keeps, 0);
    }

    /// Something stands in a row of its own, wherever it is on the screen.
    pub(super) fn announce_alone(&mut self, id: Id, keeps: Keeps) {
        self.sketch.announced.push(Announced {
            id,
            keeps,
            characters: 0,
            is_alone: true,
        });
    }

    /// Shows what scrolls; whatever comes to have the focus in it is scrolled into view, and page keys
    /// scroll it while a part of the window that is in it has the focus.
    pub(super) fn scrolling<R>(
        &mut self,
        ui: &mut Ui,
        area: ScrollArea,
        panes: &[Pane],
        contents: impl FnOnce(&mut Ui, &mut Self) -> R,
    ) -> ScrollAreaOutput<R> {
        self.scrolling_in(ui, (area, panes, Frozen::Nothing), contents)
    }

    /// The same with what scrolls to both sides, rows under a head that stays in view at the top: the
    /// head has so many points, under which no row is hidden that comes to have the focus.
    pub(super) fn scrolling_under_head<R>(
        &mut self,
        ui: &mut Ui,
        (area, pane, head): (ScrollArea, Pane, f32),
        contents: impl FnOnce(&mut Ui, &mut Self) -> R,
    ) -> ScrollAreaOutput<R> {
        self.scrolling_in(ui, (area, &[pane], Frozen::Head(head)), contents)
    }

    fn scrolling_in<R>(
        &mut self,
        ui: &mut Ui,
        (area, panes, frozen): (ScrollArea, &[Pane], Frozen),
        contents: impl FnOnce(&mut Ui, &mut Self) -> R,
    ) -> ScrollAreaOutput<R> {
        let is_here = panes.iter().any(|pane| self.is_in(ui.ctx(), *pane));
        // An animation would come to rest a frame after it has asked for the last one.
        area.animated(false).show(ui, |ui| {
            let mark = Self::mark(ui);
            let inner = contents(ui, self);
            if is_here {
                let scroll = if ui.text_edit_focused() {
                    Scroll::taken_by_page(ui.ctx())
                } else {
                    match frozen {
                        Frozen::Nothing => Scroll::taken(ui.ctx()),
                        Frozen::Head(_) => Scroll::taken_with_sides(ui.ctx()),
                    }
                };
                scroll.apply(ui);
            }
            self.reveal_under(ui, mark, frozen);
            inner
        })
    }

    /// Scrolls to what has come to have the focus or is sought, if it was shown since a mark.
    pub(super) fn reveal(&self, ui: &Ui, since: Mark) {
        self.reveal_under(ui, since, Frozen::Nothing);
    }

    fn reveal_under(&self, ui: &Ui, since: Mark, frozen: Frozen) {
        let Some(mut rect) = self.to_be_seen(ui, since) else {
            return;
        };
        let room = ui.clip_rect();
        if let Some(whole) = self.sought_whole
            && whole.height() + 2.0 * MARGIN < room.height()
        {
            rect = Rect::from_x_y_ranges(rect.x_range(), whole.y_range());
        }
        let seen = room.x_range();
        if rect.width() + 2.0 * MARGIN > seen.span() {
            // What is wider than can be seen, such as a row, is looked at from where one is.
            rect = Rect::from_x_y_ranges(seen.shrink(2.0 * MARGIN), rect.y_range());
        }
        let mut rect = rect.expand(MARGIN);
        if let Frozen::Head(height) = frozen {
            rect.min.y -= height;
        }
        ui.scroll_to_rect(rect, None);
    }

    /// Where the stop stands that has the focus since this frame or is sought, if it was shown since a
    /// mark.
    fn to_be_seen(&self, ui: &Ui, since: Mark) -> Option<Rect> {
        let newly_focused = || {
            let focused = ui.memory(egui::Memory::focused);
            focused.filter(|_| self.has_moved)
        };
        let id = self.sought.or_else(newly_focused)?;
        ui.viewport(|v| {
            let widgets = &v.this_pass.widgets;
            let (layer, place) = widgets.order(id)?;
            let is_within = layer == since.layer && place >= since.place;
            widgets.get(id).filter(|_| is_within).map(|w| w.rect)
        })
    }

    /// Ends a frame: learns what was shown, and sees to it that the focus has not fallen to nothing.
    ///
    /// While a dialog stands, what lies behind it cannot be used, and is remembered as it was.
    pub(super) fn end_frame(&mut self, ctx: &Context, is_ours: bool) {
        let focused = ctx.memory(egui::Memory::focused);
        if is_ours {
            self.map = self.learned(ctx);
            self.enter(ctx);
            self.begin(ctx);
            let stop = focused.and_then(|id| self.map.get(id)).copied();
            match (stop, self.last) {
                (Some(stop), _) => {
                    self.remembered.insert(stop.pane, stop.id);
                    self.last = Some(stop);
                }
                (None, Some(last)) if focused.is_none() => self.catch(ctx, &last),
                _ => {}
            }
        }
        let stop = focused.and_then(|id| self.map.get(id));
        ring::paint(ctx, focused, stop);
    }

    /// Gives the focus to the part of the window that has come to be shown for it.
    fn enter(&mut self, ctx: &Context) {
        let last = |pane| self.remembered.get(&pane).copied();
        let Some(pane) = self.entering else { return };
        if let Some(stop) = self.map.entry(pane, &last) {
            self.wanted = Some(stop.id);
            self.entering = None;
            ctx.request_repaint();
        }
    }

    /// Gives the focus to the first stop of a window that shows another document.
    fn begin(&mut self, ctx: &Context) {
        let first = self
            .map
            .first_pane()
            .and_then(|pane| self.map.first_of(pane));
        if let Some(stop) = first.filter(|_| self.is_beginning) {
            self.wanted = Some(stop.id);
            self.is_beginning = false;
            ctx.request_repaint();
        }
    }

    /// The focus is nowhere: it goes on from what is gone.
    fn catch(&mut self, ctx: &Context, last: &Stop) {
        let is_gone = self.map.get(last.id).is_none();
        if let Some(to) = self.map.in_place_of(last)
            && is_gone
            && self.wanted.is_none()
        {
            self.wanted = Some(to.id);
            ctx.request_repaint();
        }
    }

    /// The map of what this frame has shown.
    fn learned(&self, ctx: &Context) -> Map {
        let layers: HashSet<LayerId> = self.sketch.panes.iter().map(|span| span.layer).collect();
        let shown: Vec<Shown> = ctx.viewport(|v| {
            let widgets = &v.this_pass.widgets;
            let of_layer = |layer: LayerId| widgets.get_layer(layer).enumerate();
            let all = layers.iter().flat_map(|layer| of_layer(*layer));
            let can_have_it = all.filter(|(_, w)| w.enabled && w.sense.is_focusable());
            let shown = can_have_it.map(|(place, w)| Shown {
                id: w.id,
                rect: w.rect,
                layer: w.layer_id,
                place,
            });
            shown.collect()
        });
        Map {
            stops: in_rows(&self.sketch, &shown),
            hidden: self.sketch.hidden.clone(),
        }
    }
}

/// How many widgets a layer has so far.
fn place_now(ui: &Ui, layer: LayerId) -> usize {
    ui.viewport(|v| v.this_pass.widgets.get_layer(layer).count())
}
