//! How are shift points taken hold of: by pointer, by key, by those who cannot see them?
//!
//! Which handles there are, how far they move and what moving them means, the scene says. Dragging
//! one changes one shift, dragging the line between moves them all. One gesture is one undo step;
//! Esc puts back.

mod dragging;
mod keys;
mod words;

use crate::app::action::Action;
use crate::app::dialogs::finders::{Finder, WishedAt};
use crate::app::handle::{
    Claim, handle_rect, is_held, nearest_on_top, own_menu_is_asked_for, reach,
};
use crate::app::heard::name_menu;
use crate::app::menus::{context_menu_ui, find_entries_ui};
use crate::chart::{Along, Handle, Scene, ShownSet};
use crate::draw::diagram::Drawn;
use crate::draw::palette::Palette;
use crate::gearing::GearId;
use crate::project::SetId;
use egui::{CursorIcon, Id, Pos2, Rect, Response, Sense, Stroke, Ui};
use words::Words;

/// The identity of a handle's widget.
fn handle_id(set: SetId, gear: GearId) -> Id {
    Id::unique(("shift point", set, gear))
}

fn line_id() -> Id {
    Id::unique("shift line")
}

/// The widgets of the handles of a set with the way they move, in the order of its gears.
pub(super) fn ids(scene: &Scene, set: SetId) -> impl Iterator<Item = (Id, Along)> {
    let of_set = scene.handles.iter().filter(move |handle| handle.set == set);
    of_set.map(|handle| (handle_id(handle.set, handle.gear), handle.along))
}

/// Whether a handle or the line is being dragged.
pub(super) fn are_dragged(ui: &Ui) -> bool {
    ui.data(|d| d.get_temp::<bool>(line_id().with("busy")))
        .unwrap_or(false)
}

fn cursor(along: Along) -> CursorIcon {
    match along {
        Along::X => CursorIcon::ResizeHorizontal,
        Along::Y => CursorIcon::ResizeVertical,
    }
}

/// Shows the handles of the selected set; returns what they take up, words included.
pub(super) fn handles_ui(
    ui: &mut Ui,
    scene: &Scene,
    selected: SetId,
    palette: &Palette,
    drawn: &Drawn,
    actions: &mut Vec<Action>,
) -> Vec<Rect> {
    let mut taken = Vec::new();
    let mut is_busy = false;
    if let Some(set) = scene.sets.iter().find(|set| set.id == selected) {
        let mut handles = Handles {
            ui,
            scene,
            set,
            palette,
            drawn,
            actions,
            shown: Vec::new(),
            words: None,
        };
        let line = handles.line();
        let points = handles.points();
        is_busy = line || points;
        let words = handles.write();
        taken = handles.shown.iter().map(Shown::square).collect();
        taken.extend(words);
    }
    ui.data_mut(|d| d.insert_temp(line_id().with("busy"), is_busy));
    taken
}

struct Handles<'a> {
    ui: &'a mut Ui,
    scene: &'a Scene,
    set: &'a ShownSet,
    palette: &'a Palette,
    drawn: &'a Drawn,
    actions: &'a mut Vec<Action>,
    /// The handles in view, in the order of their gears.
    shown: Vec<Shown>,
    /// What is written at one of them, or at the line.
    words: Option<Words>,
}

/// A handle in view.
struct Shown {
    id: Id,
    at: Pos2,
    /// Where it is taken hold of.
    reach: Rect,
}

impl Shown {
    /// What must be seen of it.
    fn square(&self) -> Rect {
        handle_rect(self.at)
    }
}

impl Handles<'_> {
    /// All handles in the order of their gears; whether one is being dragged.
    fn points(&mut self) -> bool {
        let scene = self.scene;
        let mut is_dragged = false;
        for handle in scene.handles.iter().filter(|h| h.set == self.set.id) {
            is_dragged |= self.point(handle);
        }
        let shown = self
            .shown
            .iter()
            .map(|shown| (shown.id, shown.at, shown.reach));
        nearest_on_top(self.ui, &shown.collect::<Vec<_>>());
        is_dragged
    }

    fn point(&mut self, handle: &Handle) -> bool {
        let at = self.drawn.place_of(handle.at);
        let id = handle_id(handle.set, handle.gear);
        let frame = *self.drawn.transform.frame();
        let is_held = is_held(self.ui, id);
        if !frame.expand(2.0).contains(at) && !is_held {
            return false;
        }
        let reach = reach(self.ui, at).intersect(frame.expand(4.0));
        let response = self
            .ui
            .interact(reach, id, Sense::drag())
            .on_hover_and_drag_cursor(cursor(handle.along));
        self.shown.push(Shown { id, at, reach });
        self.drag(&response, handle);
        self.keys(&response, handle);
        self.requests(&response, handle);
        self.speak(&response, handle);
        self.menu(&response, handle);
        self.paint(&response, at);
        let claim = Claim::of(&response);
        self.want(claim, || handle.words(), at);
        response.dragged()
    }

    /// What a right click or the menu key offers: the drop there may be a wish.
    fn menu(&mut self, response: &Response, handle: &Handle) {
        let is_asked_for = own_menu_is_asked_for(response);
        context_menu_ui(response, is_asked_for, |ui| {
            name_menu(ui, &format!("Menu of {}", handle.name(&self.set.name)));
            let wish = Finder::Wish(handle.set, WishedAt::Shift(Some(handle.gear)));
            find_entries_ui(ui, &[wish], self.actions);
        });
    }

    fn paint(&self, response: &Response, at: Pos2) {
        let painter = self
            .ui
            .painter()
            .with_clip_rect(self.drawn.transform.frame().expand(6.0));
        let color = self.palette.set(self.set.livery);
        let is_held = response.dragged() || response.has_focus();
        let radius = if is_held || response.hovered() {
            7.0
        } else {
            5.0
        };
        painter.circle(at, radius, color, Stroke::new(2.0, self.palette.paper));
    }
}
