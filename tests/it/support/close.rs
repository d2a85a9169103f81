//! Are two numbers the same, within a tolerance that the caller answers for?

use std::fmt::Display;

/// Whether `found` lies within `tolerance` of `expected`; what is not finite never does.
pub(crate) fn is_close(found: f64, expected: f64, tolerance: f64) -> bool {
    (found - expected).abs() <= tolerance
}

/// Fails unless `found` lies within `tolerance` of `expected`.
#[track_caller]
pub(crate) fn assert_close(found: f64, expected: f64, tolerance: f64, what: impl Display) {
    assert!(
        is_close(found, expected, tolerance),
        "{what}: {found}, not {expected} ± {tolerance}"
    );
}
