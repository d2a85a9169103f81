//! Which gear's line is the pointer on?

use super::super::action::Action;
use super::super::desk::Desk;
use super::super::view_state::ViewState;
use crate::chart::{GearTrace, SpeedDiagram};
use crate::draw::diagram::Drawn;
use crate::gearing::GearId;
use crate::project::SetId;
use egui::Pos2;

/// How near, in points, the pointer must come to a line to be on it.
const REACH: f32 = 7.0;

/// Brings the pointed gear forward; a click selects its set.
pub(super) fn point(
    desk: &Desk,
    view: &ViewState,
    drawn: &Drawn,
    pointer: Pos2,
    actions: &mut Vec<Action>,
) {
    let pointed = nearest_gear(desk.diagram(), drawn, pointer);
    if pointed != view.pointed {
        actions.push(Action::Point(pointed));
    }
    if drawn.response.clicked()
        && let Some((set, _)) = pointed
        && set != view.selected
    {
        actions.push(Action::Select(set));
    }
}

/// The gear whose driven part, or else whose thin line, is nearest and within reach.
fn nearest_gear(diagram: &SpeedDiagram, drawn: &Drawn, pointer: Pos2) -> Option<(SetId, GearId)> {
    let mut best: Option<(f32, (SetId, GearId))> = None;
    for trace in &diagram.traces {
        for gear in &trace.gears {
            let thin = distance(drawn, gear, [0.0, diagram.redline_rpm], pointer) + 2.0;
            let thick = gear
                .driven_rpm
                .map_or(thin, |driven| distance(drawn, gear, driven, pointer));
            let distance = thick.min(thin);
            if distance < REACH && best.is_none_or(|(least, _)| distance < least) {
                best = Some((distance, (trace.set, gear.gear)));
            }
        }
    }
    best.map(|(_, gear)| gear)
}

/// The distance in points between the pointer and a part of a gear's line.
fn distance(drawn: &Drawn, gear: &GearTrace, rpm: [f64; 2], pointer: Pos2) -> f32 {
    let [from, to] = rpm.map(|rpm| drawn.point(gear.speed_at(rpm), rpm));
    distance_to_segment(pointer, [from, to])
}

/// The distance between a point and a straight piece of line.
pub(super) fn distance_to_segment(point: Pos2, ends: [Pos2; 2]) -> f32 {
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
