//! Which triangles make a straight piece of line with soft edges?
//!
//! The same as the toolkit's own, vertex for vertex, but many pieces at once: a diagram has thousands
//! of dashes, and handed over one by one they took most of a frame.

use egui::{Color32, Mesh, Pos2, Stroke};

/// Pieces of line of one width and colour, as one mesh.
pub(super) struct SoftLines {
    mesh: Mesh,
    color: Color32,
    /// How wide the soft edge is, in points.
    feathering: f32,
    /// From the middle of the line to where it begins to fade.
    inner: f32,
    /// From the middle of the line to where it has faded.
    outer: f32,
}

impl SoftLines {
    /// No piece yet; none at all where a line is so thin that the toolkit fades it instead.
    pub(super) fn new(stroke: Stroke, feathering: f32, pieces: usize) -> Option<Self> {
        if feathering <= 0.0 || stroke.width <= 0.9 * feathering {
            return None;
        }
        let mut mesh = Mesh::default();
        mesh.reserve_vertices(8 * pieces);
        mesh.reserve_triangles(TRIANGLES.len() * pieces);
        Some(Self {
            mesh,
            color: stroke.color,
            feathering,
            inner: 0.5 * (stroke.width - feathering),
            outer: 0.5 * (stroke.width + feathering),
        })
    }

    /// Adds a piece, which must be neither upright nor level: those are fitted to pixels.
    pub(super) fn add(&mut self, [from, to]: [Pos2; 2]) {
        let first = u32::try_from(self.mesh.vertices.len()).unwrap_or(u32::MAX);
        let across = (to - from).normalized().rot90();
        let fade = across.rot90() * self.feathering;
        for (end, fade) in [(from, fade), (to, -fade)] {
            let mut vertex = |pos, color| self.mesh.colored_vertex(pos, color);
            vertex(end + across * self.outer + fade, Color32::TRANSPARENT);
            vertex(end + across * self.inner, self.color);
            vertex(end - across * self.inner, self.color);
            vertex(end - across * self.outer + fade, Color32::TRANSPARENT);
        }
        for [a, b, c] in TRIANGLES {
            self.mesh.add_triangle(first + a, first + b, first + c);
        }
    }

    /// All pieces.
    pub(super) fn into_mesh(self) -> Mesh {
        self.mesh
    }
}

/// The end at the beginning, the line with its two soft edges, the end at the end.
const TRIANGLES: [[u32; 3]; 10] = [
    [0, 1, 2],
    [0, 2, 3],
    [0, 1, 4],
    [1, 4, 5],
    [1, 2, 5],
    [2, 5, 6],
    [2, 3, 6],
    [3, 6, 7],
    [4, 5, 6],
    [4, 6, 7],
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::palette::{Palette, Theme};
    use crate::project::Livery;
    use egui::epaint::{TessellationOptions, Tessellator};
    use proptest::prelude::*;

    fn of_the_toolkit(piece: [Pos2; 2], stroke: Stroke, pixels_per_point: f32) -> Mesh {
        let options = TessellationOptions::default();
        let mut tessellator = Tessellator::new(pixels_per_point, options, [1, 1], Vec::new());
        let mut mesh = Mesh::default();
        tessellator.tessellate_line_segment(piece, stroke, &mut mesh);
        mesh
    }

    proptest! {
        #[test]
        fn a_piece_is_the_toolkits_own(
            ends in proptest::array::uniform4(-50.0f32..2000.0),
            width in 0.5f32..5.0,
            pixels_per_point in proptest::sample::select(vec![1.0f32, 1.25, 2.0, 3.0]),
        ) {
            let [x, y, to_x, to_y] = ends;
            let piece = [Pos2::new(x, y), Pos2::new(to_x, to_y)];
            prop_assume!((x - to_x).abs() > 0.0 && (y - to_y).abs() > 0.0);
            let color = Palette::of(Theme::Light).set(Livery::First);
            let stroke = Stroke::new(width, color);
            let theirs = of_the_toolkit(piece, stroke, pixels_per_point);
            match SoftLines::new(stroke, 1.0 / pixels_per_point, 1) {
                None => prop_assert!(theirs.vertices.len() < 8),
                Some(mut lines) => {
                    lines.add(piece);
                    prop_assert_eq!(lines.into_mesh(), theirs);
                }
            }
        }
    }
}
