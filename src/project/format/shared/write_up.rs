//! Single choices of the write-up as they stand in a file.

use crate::project::write_up::{PageForm, PictureWidth, WrongWidth};
use serde::{Deserialize, Serialize};

/// A picture for reading, or a page for the bench.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Form")]
pub(crate) enum FormEntry {
    Picture,
    A4,
    Letter,
}

/// The width of a picture.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "u64", into = "u64")]
pub(crate) struct WidthPx(pub(crate) PictureWidth);

impl TryFrom<u64> for WidthPx {
    type Error = WrongWidth;

    fn try_from(px: u64) -> Result<Self, WrongWidth> {
        PictureWidth::from_px(px).map(Self)
    }
}

impl From<WidthPx> for u64 {
    fn from(width: WidthPx) -> Self {
        width.0.px().into()
    }
}

impl From<PageForm> for FormEntry {
    fn from(form: PageForm) -> Self {
        match form {
            PageForm::Picture => Self::Picture,
            PageForm::A4 => Self::A4,
            PageForm::Letter => Self::Letter,
        }
    }
}

impl From<FormEntry> for PageForm {
    fn from(form: FormEntry) -> Self {
        match form {
            FormEntry::Picture => Self::Picture,
            FormEntry::A4 => Self::A4,
            FormEntry::Letter => Self::Letter,
        }
    }
}
