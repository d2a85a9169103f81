//! How soon unsaved work is kept: the times of the autosave.

use std::time::Duration;

/// How soon unsaved work is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pace {
    /// So long nothing must have changed.
    pub quiet: Duration,
    /// So long a change waits at most, however steadily others follow it.
    pub longest_wait: Duration,
    /// So long after a failure the next try is made.
    pub retry: Duration,
}

impl Default for Pace {
    /// The pace of the program: soon enough to lose little, seldom enough to spare the disk.
    fn default() -> Self {
        Self {
            quiet: Duration::from_secs(1),
            longest_wait: Duration::from_secs(2),
            retry: Duration::from_secs(5),
        }
    }
}
