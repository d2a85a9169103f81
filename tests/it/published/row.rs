//! What does a published number come with, and which of a table's rows fail?

use crate::support::close::is_close;
use std::fmt::Display;

/// How a check value was come by.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Status {
    /// Read in a copy or quotation of the source.
    Read,
    /// Recalled, not read again.
    Memory,
    /// Arithmetic or closed-form algebra on what the source gives.
    Derived,
    /// What everybody in the trade knows and nobody prints: common practice, no source.
    CommonPractice,
}

/// A number from outside the program.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Published {
    expected: f64,
    tolerance: f64,
    source: &'static str,
    status: Status,
}

/// A number from outside the program; `tolerance` is what its printed digits leave open.
pub(crate) const fn published(
    expected: f64,
    tolerance: f64,
    source: &'static str,
    status: Status,
) -> Published {
    Published {
        expected,
        tolerance,
        source,
        status,
    }
}

/// Fails with every row whose found number is not the published one.
#[track_caller]
pub(crate) fn assert_rows<W: Display>(rows: impl IntoIterator<Item = (W, f64, Published)>) {
    let failures: Vec<String> = rows
        .into_iter()
        .filter(|(_, found, row)| !is_close(*found, row.expected, row.tolerance))
        .map(|(what, found, row)| {
            let Published {
                expected,
                tolerance,
                source,
                status,
            } = row;
            format!("{what}: {found}, not {expected} ± {tolerance} ({source}, {status:?})")
        })
        .collect();
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}
