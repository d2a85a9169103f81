//! Plain polygons as a drawing in section needs them: the triangles that fill one, and the hatching of a cut.

use egui::{Pos2, pos2};

/// Which way the lines of a hatching lean, so that two parts that touch are told apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lean {
    /// Upwards to the right.
    Right,
    /// Upwards to the left.
    Left,
}

/// The lines of a hatching within an outline, `spacing` points apart along a level line.
pub(super) fn hatching(outline: &[Pos2], lean: Lean, spacing: f32) -> Vec<[Pos2; 2]> {
    let sign = match lean {
        Lean::Right => 1.0,
        Lean::Left => -1.0,
    };
    let across = |at: Pos2| at.x + sign * at.y;
    let least = outline.iter().copied().map(across).fold(f32::MAX, f32::min);
    let most = outline.iter().copied().map(across).fold(f32::MIN, f32::max);
    let mut lines = Vec::new();
    let mut number = (least / spacing).ceil();
    while number * spacing < most && spacing > 0.0 {
        let line = number * spacing;
        let mut crossed: Vec<Pos2> = edges(outline)
            .filter_map(|[a, b]| {
                let [from, to] = [across(a), across(b)];
                ((from <= line) != (to <= line))
                    .then(|| a + (b - a) * ((line - from) / (to - from)))
            })
            .collect();
        crossed.sort_by(|a, b| a.x.total_cmp(&b.x));
        lines.extend(crossed.chunks_exact(2).map(|pair| [pair[0], pair[1]]));
        number += 1.0;
    }
    lines
}

fn edges(outline: &[Pos2]) -> impl Iterator<Item = [Pos2; 2]> {
    let next = outline.iter().cycle().skip(1);
    outline.iter().zip(next).map(|(a, b)| [*a, *b])
}

/// The triangles that fill an outline that does not cross itself: ears are cut off until three corners are left.
pub(super) fn triangles(outline: &[Pos2]) -> Vec<[Pos2; 3]> {
    let mut left: Vec<Pos2> = outline.to_vec();
    left.dedup();
    if left.len() > 1 && left.first() == left.last() {
        left.pop();
    }
    let area: f32 = edges(&left).map(|[a, b]| a.x * b.y - b.x * a.y).sum();
    if area < 0.0 {
        left.reverse();
    }
    let mut found = Vec::new();
    while left.len() > 2 {
        let count = left.len();
        let corner = |at: usize| {
            [
                left[(at + count - 1) % count],
                left[at],
                left[(at + 1) % count],
            ]
        };
        let is_ear = |at: &usize| {
            let ear = corner(*at);
            turn(ear) > 0.0 && !left.iter().any(|p| !ear.contains(p) && is_within(ear, *p))
        };
        // Corners on a straight line are no ears, and are left out.
        let Some(at) = (0..count).find(is_ear) else {
            let Some(flat) = (0..count).find(|at| turn(corner(*at)).abs() < FLAT) else {
                break;
            };
            left.remove(flat);
            continue;
        };
        found.push(corner(at));
        left.remove(at);
    }
    found
}

/// A turn as small as this goes straight on, in square points.
const FLAT: f32 = 1e-3;

/// Twice the area of a triangle, above 0 where it turns the way of a reckoned outline.
fn turn([a, b, c]: [Pos2; 3]) -> f32 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

fn is_within([a, b, c]: [Pos2; 3], p: Pos2) -> bool {
    turn([a, b, p]) >= 0.0 && turn([b, c, p]) >= 0.0 && turn([c, a, p]) >= 0.0
}

/// Points on a circle from one angle to another, in degrees from the right, counted downwards as the screen does.
pub(super) fn arc(centre: Pos2, radius: f32, [from, to]: [f32; 2]) -> Vec<Pos2> {
    const STEPS: u8 = 40;
    let at = |step: u8| {
        let angle = (from + (to - from) * f32::from(step) / f32::from(STEPS)).to_radians();
        pos2(
            centre.x + radius * angle.cos(),
            centre.y + radius * angle.sin(),
        )
    };
    (0..=STEPS).map(at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A flange with a spigot, which is not convex.
    const FLANGED: [Pos2; 6] = [
        pos2(0.0, 0.0),
        pos2(10.0, 0.0),
        pos2(10.0, 40.0),
        pos2(30.0, 40.0),
        pos2(30.0, 50.0),
        pos2(0.0, 50.0),
    ];

    #[test]
    fn triangles_fill_an_outline_whichever_way_it_goes_and_wherever_it_begins() {
        for turned in 0..FLANGED.len() {
            let mut outline = FLANGED.to_vec();
            outline.rotate_left(turned);
            for _ in 0..2 {
                outline.reverse();
                let area: f32 = triangles(&outline).into_iter().map(|t| turn(t) / 2.0).sum();
                assert!((area - 700.0).abs() < 0.1, "{area} from {turned}");
            }
        }
    }

    #[test]
    fn a_hatching_lies_within_its_outline_and_leaves_no_part_of_it_bare() {
        for lean in [Lean::Right, Lean::Left] {
            let lines = hatching(&FLANGED, lean, 5.0);
            let middles = lines.iter().map(|[a, b]| a.lerp(*b, 0.5));
            for at in middles {
                let is_inside = at.x <= 10.0 || at.y >= 40.0;
                assert!(is_inside && at.x >= 0.0 && at.y <= 50.0, "{at}");
            }
            // As long as the area has lines of that distance in it.
            let length: f32 = lines.iter().map(|[a, b]| a.distance(*b)).sum();
            let wanted = 700.0 * 2.0_f32.sqrt() / 5.0;
            assert!((length / wanted - 1.0).abs() < 0.1, "{length} of {wanted}");
        }
    }
}
