//! What stands in fields and does not read: no document can hold it, so it is unsaved work as long
//! as it stands there.

use super::drafts::CellId;
use crate::gearing::quoted;
use crate::letters::written;

/// A field with a text that does not read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unread {
    /// Which field it is.
    pub field: CellId,
    /// What the field is called.
    pub name: String,
    /// What stands in it.
    pub text: String,
}

impl Unread {
    /// The field and its text.
    pub(super) fn words(&self) -> String {
        let text = quoted(&self.text);
        written(&format!("{}: {text}", self.name))
    }
}

/// Where it stands, within a sentence.
pub(super) fn places(unread: &[Unread]) -> String {
    match unread {
        [one] => format!("\"{}\"", one.name),
        several => format!("{} fields", several.len()),
    }
}
