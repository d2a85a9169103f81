//! The work that goes on beside the window, and how it wakes the window.

use std::sync::{Arc, OnceLock};

/// Wakes the window, which may be asleep when an answer comes.
/// Its clones wake the same window; before there is one, nobody is woken.
#[derive(Clone, Default)]
pub struct Wake(Arc<OnceLock<Box<dyn Fn() + Send + Sync>>>);

impl Wake {
    /// From now on `wake` is called; only the first one counts.
    pub fn connect(&self, wake: impl Fn() + Send + Sync + 'static) {
        self.0.get_or_init(|| Box::new(wake));
    }

    /// Whether there is a window to be woken.
    pub fn is_connected(&self) -> bool {
        self.0.get().is_some()
    }

    /// Wakes the window.
    pub fn wake(&self) {
        if let Some(wake) = self.0.get() {
            wake();
        }
    }
}

impl std::fmt::Debug for Wake {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Wake").finish_non_exhaustive()
    }
}
