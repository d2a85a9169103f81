//! In what pieces is a mesh painted?

use egui::Mesh;

use super::canvas::Window;
use super::edge::Point;
use super::quad::Quad;
use super::textures::Texture;
use super::triangle::{self, Corner};

/// Fills `corners` with the mesh's vertices on the canvas; `None` for those that are nowhere.
pub(super) fn place_corners(mesh: &Mesh, pixels_per_point: f32, corners: &mut Vec<Option<Corner>>) {
    corners.clear();
    corners.extend(mesh.vertices.iter().map(|vertex| {
        let at = Point::new(vertex.pos, pixels_per_point)?;
        Some(Corner {
            at,
            colour: vertex.color.to_array(),
            uv: vertex.uv,
        })
    }));
}

/// Paints all triangles of `mesh`, whose vertices were placed before.
///
/// Triangles with a corner that is nowhere or missing are left out.
pub(super) fn paint(
    window: &mut Window<'_>,
    mesh: &Mesh,
    corners: &[Option<Corner>],
    texture: &Texture,
) {
    let mut indices = mesh.indices.as_slice();
    while let Some((&three, rest)) = indices.split_first_chunk::<3>() {
        if let Some(quad) = indices
            .first_chunk()
            .and_then(|&six| quad(six, corners, texture))
        {
            quad.paint(window, texture);
            indices = &indices[6..];
            continue;
        }
        if let Some(found) = all(three, corners) {
            triangle::paint(window, &found, texture);
        }
        indices = rest;
    }
}

/// The rectangle that six indices describe in egui's order, if they do.
fn quad(six: [u32; 6], corners: &[Option<Corner>], texture: &Texture) -> Option<Quad> {
    let [a, b, c, c_again, b_again, d] = six;
    if (c, b) != (c_again, b_again) {
        return None;
    }
    Quad::new(all([a, b, c, d], corners)?, texture)
}

fn all<const N: usize>(indices: [u32; N], corners: &[Option<Corner>]) -> Option<[Corner; N]> {
    let nowhere = Corner {
        at: Point { x: 0, y: 0 },
        colour: [0; 4],
        uv: egui::Pos2::ZERO,
    };
    let mut found = [nowhere; N];
    for (slot, index) in found.iter_mut().zip(indices) {
        *slot = (*corners.get(usize::try_from(index).ok()?)?)?;
    }
    Some(found)
}
