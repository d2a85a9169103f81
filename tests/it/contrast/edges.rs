//! Can the edges be seen of all that is typed in or ticked?
//!
//! Along a line from outside into a field or a box, somewhere close to where it begins, a pixel must
//! stand out from what is around it and from what is within.

use super::{OF_LINES, Seen, color_at, contrast, pixel};
use crate::support::window::Window;
use egui::accesskit::Role;
use egui::{Color32, LayerId, Pos2, Rect, Vec2, vec2};
use egui_kittest::kittest::NodeT;

/// How far outside and within an edge may lie from where its part begins, in points.
const REACH: f32 = 3.0;

/// What lies beyond the ring of the focus, where there is one, in points.
const BEYOND_RING: f32 = 5.0;

/// The pixels from one place to another, level or upright.
fn along(seen: &Seen, from: Pos2, to: Pos2) -> Vec<Color32> {
    let steps = pixel((to - from).length());
    let at = |step: u32| {
        let place = from + (to - from) * (step as f32 / steps as f32);
        let [x, y] = [place.x, place.y].map(pixel);
        let [width, height] = [seen.without.width(), seen.without.height()];
        color_at(&seen.without, x.min(width - 1), y.min(height - 1))
    };
    (0..=steps).map(at).collect()
}

/// The middle of each side, the left one first, and the way inwards.
fn sides(rect: Rect) -> [(Pos2, Vec2); 4] {
    let (level, upright) = (vec2(1.0, 0.0), vec2(0.0, 1.0));
    [
        (rect.left_center(), level),
        (rect.right_center(), -level),
        (rect.center_top(), upright),
        (rect.center_bottom(), -upright),
    ]
}

/// How much an edge stands out from both its sides, of those that a part has.
fn edge_contrast(seen: &Seen, rect: Rect, role: Role) -> f64 {
    let of_side = |(at, inwards): (Pos2, Vec2), away: f32| {
        let line = along(seen, at - inwards * away, at + inwards * REACH);
        let (outside, within) = (line[0], line[line.len() - 1]);
        let apart = |edge: &Color32| contrast(*edge, outside).min(contrast(*edge, within));
        line.iter().map(apart).fold(1.0, f64::max)
    };
    // A box stands at the left end of its words, as wide as high.
    let count = match role {
        Role::CheckBox | Role::RadioButton => 1,
        _ => 4,
    };
    let sides = sides(rect).into_iter().take(count);
    let of_side = |side| of_side(side, REACH).max(of_side(side, BEYOND_RING));
    sides.map(of_side).fold(f64::INFINITY, f64::min)
}

/// What has an edge, is enabled, wholly in view, and beneath no other layer.
fn parts(window: &Window) -> Vec<(Role, String, Rect)> {
    let ctx = &window.harness.ctx;
    let layers: Vec<(LayerId, Rect)> = ctx.viewport(|viewport| {
        let all = viewport.prev_pass.widgets.layers();
        let all = all.flat_map(|(layer, widgets)| widgets.iter().map(|w| (*layer, w.rect)));
        all.collect()
    });
    let is_uncovered = |rect: Rect| {
        let is_it = |other: &Rect| other.center().distance(rect.center()) < 1.0;
        let at = |place: Pos2| ctx.layer_id_at(place);
        let mut own = layers.iter().filter(|(_, other)| is_it(other));
        own.any(|(layer, _)| {
            sides(rect)
                .iter()
                .all(|(side, _)| at(*side) == Some(*layer))
        })
    };
    let is_uncut = |rect: Rect| {
        let shapes = window.harness.output().shapes.iter();
        let own = shapes.filter(|s| rect.contains_rect(s.shape.visual_bounding_rect()));
        let cuts: Vec<Rect> = own.map(|shape| shape.clip_rect).collect();
        let is_whole = |cut: &Rect| cut.contains_rect(rect.expand(1.0));
        !cuts.is_empty() && cuts.iter().all(is_whole)
    };
    let parts = window.nodes().filter_map(|node| {
        let data = node.accesskit_node();
        let has_edge = matches!(
            data.role(),
            Role::TextInput | Role::MultilineTextInput | Role::CheckBox | Role::RadioButton
        );
        if !has_edge || data.is_disabled() {
            return None;
        }
        let rect = node.rect();
        let name = data.label().unwrap_or_default();
        (is_uncovered(rect) && is_uncut(rect)).then(|| (data.role(), name, rect))
    });
    parts.collect()
}

/// What has too faint an edge in a window, and how many of each kind were looked at.
pub(super) fn problems_in(
    what: &str,
    window: &Window,
    seen: &Seen,
    counts: &mut [(Role, usize)],
) -> Vec<String> {
    let mut problems = Vec::new();
    for (role, name, rect) in parts(window) {
        for (_, count) in counts.iter_mut().filter(|(of, _)| *of == role) {
            *count += 1;
        }
        let contrast = edge_contrast(seen, rect, role);
        if contrast < OF_LINES {
            problems.push(format!(
                "{what}: {role:?} \"{name}\" at {rect}: {contrast:.2}"
            ));
        }
    }
    problems
}
