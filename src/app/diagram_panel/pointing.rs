//! Which gear's line is the pointer on?

use super::super::action::Action;
use super::super::view_state::ViewState;
use crate::chart::{Line, Owner, Role, Scene};
use crate::draw::diagram::Drawn;
use egui::Pos2;

/// How near, in points, the pointer must come to a line to be on it.
const REACH: f32 = 7.0;

/// How much nearer, in points, it must be to a gear's thin line than to what is driven.
const THIN: f32 = 2.0;

/// Brings the pointed gear forward; a click selects its set.
pub(super) fn point(
    scene: &Scene,
    view: &ViewState,
    drawn: &Drawn,
    pointer: Pos2,
    actions: &mut Vec<Action>,
) {
    let nearest = nearest_owner(scene, drawn, pointer);
    let pointed = nearest.and_then(Owner::gear_of_set);
    if pointed != view.pointed {
        actions.push(Action::Point(pointed));
    }
    if drawn.response.clicked()
        && let Some(Owner { set, .. }) = nearest
        && set != view.selected
    {
        actions.push(Action::Select(set));
    }
}

/// The gear whose driven part, or else whose thin line, is nearest and within reach; the set alone where
/// the line is of all its gears.
fn nearest_owner(scene: &Scene, drawn: &Drawn, pointer: Pos2) -> Option<Owner> {
    let distance = |line: &Line| {
        let is_thin = matches!(line.role, Role::Fan | Role::Other);
        let thin = if is_thin { THIN } else { 0.0 };
        let distance = distance_to_line(pointer, &line.points, drawn)? + thin;
        Some((distance, line.of))
    };
    let is_pointed_at = |line: &&Line| line.of.gear.is_some() || line.role == Role::FullLoad;
    let near = scene.lines.iter().filter(is_pointed_at);
    let near = near.filter_map(distance);
    let near = near.filter(|(distance, _)| *distance < REACH);
    let nearest = near.min_by(|(a, _), (b, _)| a.total_cmp(b));
    nearest.map(|(_, owner)| owner)
}

/// The distance in points between the pointer and a line of the scene; none from a mere point.
pub(super) fn distance_to_line(pointer: Pos2, points: &[[f64; 2]], drawn: &Drawn) -> Option<f32> {
    let pieces = points.windows(2).map(|ends| {
        let ends = [ends[0], ends[1]].map(|at| drawn.place_of(at));
        distance_to_segment(pointer, ends)
    });
    pieces.min_by(f32::total_cmp)
}

/// The distance between a point and a straight piece of line.
fn distance_to_segment(point: Pos2, ends: [Pos2; 2]) -> f32 {
    let along = ends[1] - ends[0];
    let length_squared = along.length_sq();
    if length_squared <= 0.0 {
        return point.distance(ends[0]);
    }
    let share = ((point - ends[0]).dot(along) / length_squared).clamp(0.0, 1.0);
    point.distance(ends[0] + along * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn beyond_its_ends_a_piece_of_line_is_as_far_as_its_end() {
        let ends = [Pos2::new(0.0, 0.0), Pos2::new(10.0, 0.0)];
        assert!((distance_to_segment(Pos2::new(5.0, 3.0), ends) - 3.0).abs() < 1e-6);
        assert!((distance_to_segment(Pos2::new(13.0, 4.0), ends) - 5.0).abs() < 1e-6);
        assert!((distance_to_segment(Pos2::new(3.0, 4.0), [ends[0]; 2]) - 5.0).abs() < 1e-6);
    }
}
