//! All tests that look at the crate from outside.

#[cfg(test)]
mod files;
