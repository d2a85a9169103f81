//! What all diagrams of engine and vehicle have in common.

use super::scene::Scene;
use crate::analysis::NoMotion;

/// A diagram that nothing can be told in, with the reason.
pub(super) fn without(scene: Scene, reason: &NoMotion) -> Scene {
    Scene {
        summary: format!("Nothing to show: {reason}"),
        lacks: Some(reason.clone()),
        ..scene
    }
}
