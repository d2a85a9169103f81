//! Rows as they stand in a text: an engine speed and what is given at it, as written.

use super::words::{Output, Scale};

/// A torque or a power as it was written.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Given {
    pub(super) text: String,
    /// Which of both it is and its unit, as far as the text says.
    pub(super) output: Option<Output>,
}

/// An engine speed with what is given at it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub(super) speed: String,
    /// What the speed is counted in, where that is written.
    pub(super) scale: Option<Scale>,
    /// At least one.
    pub(super) outputs: Vec<Given>,
}
