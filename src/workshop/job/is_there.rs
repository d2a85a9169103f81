//! Whether something is there that the program cannot see: somebody must say so.

use super::field::{Choice, NOT_SAID};

/// Whether something is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum IsThere {
    /// Nobody has said so.
    #[default]
    NotSaid,
    /// It is not.
    No,
    /// It is.
    Yes,
}

impl Choice for IsThere {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::NotSaid, NOT_SAID),
        (Self::No, "no"),
        (Self::Yes, "yes"),
    ];
}

impl IsThere {
    /// Whether somebody has said so.
    pub(super) fn is_said(self) -> bool {
        self != Self::NotSaid
    }
}
