//! Where can the focus be, and where does Tab go?

use super::Window;
use egui::accesskit::{Action, ActionRequest, Role, TreeId};
use egui::{Event, Id, Key, Rect};
use egui_kittest::Node;
use egui_kittest::kittest::NodeT;
use std::collections::BTreeSet;

impl Window {
    pub(crate) fn focused_id(&self) -> Option<Id> {
        self.harness.ctx.memory(egui::Memory::focused)
    }

    /// Everything that the toolkit would give the focus to.
    pub(crate) fn focusable(&self) -> BTreeSet<u64> {
        self.harness.ctx.viewport(|v| {
            let all = v.prev_pass.widgets.layers().flat_map(|(_, all)| all);
            let can_have_it = all.filter(|w| w.enabled && w.sense.is_focusable());
            can_have_it.map(|w| w.id.value()).collect()
        })
    }

    /// The part of a widget that is in view.
    fn in_view(&self, id: Id) -> Rect {
        let response = self.harness.ctx.read_response(id).unwrap();
        let screen = self.harness.ctx.content_rect();
        response.interact_rect.intersect(screen)
    }

    /// What the focus is on must be named and in view.
    #[track_caller]
    pub(crate) fn check_stop(&mut self, what: &str) -> u64 {
        // What is known of a widget is what the frame before has shown.
        self.harness.step();
        let focused = self.focused_id();
        let id = focused.unwrap_or_else(|| panic!("{what}: nothing has the focus"));
        let node = self.nodes().find(Node::is_focused);
        let name = node.and_then(|node| node.accesskit_node().label());
        let name = name.unwrap_or_default();
        assert!(!name.is_empty(), "{what}: {id:?} has no name");
        let seen = self.in_view(id);
        assert!(
            seen.width() > 4.0 && seen.height() > 4.0,
            "{what}: {name} is out of view: {seen:?}"
        );
        id.value()
    }

    /// The stops of Tab, once around, in their order.
    #[track_caller]
    pub(crate) fn tab_stops(&mut self, what: &str) -> Vec<(Id, String)> {
        let mut stops: Vec<(Id, String)> = Vec::new();
        for _ in 0..400 {
            self.key(Key::Tab);
            self.check_stop(what);
            let id = self.focused_id().unwrap();
            if stops.first().is_some_and(|(first, _)| *first == id) {
                return stops;
            }
            stops.push((id, self.focused()));
        }
        panic!("{what}: Tab never comes around");
    }

    /// Gives something the focus as a screen reader does.
    fn give_focus(&mut self, id: Id) {
        self.event(Event::AccessKitActionRequest(ActionRequest {
            action: Action::Focus,
            target_tree: TreeId::ROOT,
            target_node: id.accesskit_id(),
            data: None,
        }));
        self.settle();
    }

    /// Walks in one direction until the focus stays, and notes every stop.
    fn walk_on(&mut self, key: Key, reached: &mut BTreeSet<u64>, what: &str) {
        for _ in 0..60 {
            let before = self.focused_id();
            self.key(key);
            reached.insert(self.check_stop(what));
            if self.focused_id() == before {
                return;
            }
        }
        panic!("{what}: {key:?} goes on for ever");
    }

    /// Everything that Tab and the arrows reach.
    pub(crate) fn reached(&mut self, what: &str) -> BTreeSet<u64> {
        let mut reached = BTreeSet::new();
        for (id, _) in self.tab_stops(what) {
            for key in [Key::ArrowLeft, Key::ArrowRight, Key::ArrowDown] {
                self.give_focus(id);
                let node = self.nodes().find(Node::is_focused).unwrap();
                if key == Key::ArrowDown && node.accesskit_node().role() != Role::Row {
                    // On a handle it moves the shift point.
                    continue;
                }
                reached.insert(self.check_stop(what));
                self.walk_on(key, &mut reached, what);
            }
        }
        reached
    }

    /// What some widgets are called, or where they stand.
    pub(crate) fn told(&self, missed: &[u64]) -> String {
        let names = self.harness.ctx.viewport(|v| {
            let widgets = &v.prev_pass.widgets;
            let all = widgets.layers().flat_map(|(_, all)| all);
            let missed = all.filter(|w| missed.contains(&w.id.value()));
            let told = missed.map(|w| format!("{:?} at {:?}", widgets.info(w.id), w.rect));
            told.collect::<Vec<_>>()
        });
        names.join("\n")
    }
}
