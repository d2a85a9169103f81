//! Which choices belong to a project's write-up?

use super::document::SetId;
use std::collections::BTreeSet;

/// What the exported picture shows, kept with the project.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WriteUp {
    /// How wide the picture is.
    pub width: PictureWidth,
    /// Light or dark.
    pub is_dark: bool,
    /// The visible sets that the picture leaves out.
    pub left_out: BTreeSet<SetId>,
    /// Whether the table stands beneath the diagram.
    pub with_table: bool,
    /// Whether the note stands beneath the table.
    pub with_note: bool,
    /// A picture for reading, or a page for the bench.
    pub form: PageForm,
}

/// What is made of a project.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PageForm {
    /// Diagram and table, as high as they need.
    #[default]
    Picture,
    /// A page of A4 for the bench: large figures, black on white.
    A4,
    /// The same on Letter.
    Letter,
}

impl PageForm {
    /// All forms, in the order of the choice.
    pub const ALL: [Self; 3] = [Self::Picture, Self::A4, Self::Letter];

    /// Height over width of the paper (ISO 216; ANSI/ASME Y14.1); none where content decides.
    pub fn height_over_width(self) -> Option<f32> {
        match self {
            Self::Picture => None,
            Self::A4 => Some(297.0 / 210.0),
            Self::Letter => Some(11.0 / 8.5),
        }
    }
}

impl Default for WriteUp {
    fn default() -> Self {
        Self {
            width: PictureWidth::default(),
            is_dark: false,
            left_out: BTreeSet::new(),
            with_table: true,
            with_note: true,
            form: PageForm::Picture,
        }
    }
}

/// The width of a picture: 800 to 4000 pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PictureWidth(u32);

/// A width that no picture has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("a picture is 800 to 4000 pixels wide, not {0}")]
pub struct WrongWidth(pub u64);

impl PictureWidth {
    /// A width in pixels.
    ///
    /// # Errors
    /// When it is not between 800 and 4000.
    pub fn from_px(width_px: u64) -> Result<Self, WrongWidth> {
        match u32::try_from(width_px) {
            Ok(px) if (800..=4000).contains(&px) => Ok(Self(px)),
            _ => Err(WrongWidth(width_px)),
        }
    }

    /// The width in pixels.
    pub fn px(self) -> u32 {
        self.0
    }
}

impl Default for PictureWidth {
    /// Sharp on a phone and on a large screen.
    fn default() -> Self {
        Self(1600)
    }
}
