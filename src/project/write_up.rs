//! Which choices belong to a project's write-up?

use super::document::SetId;
use super::view::Views;
use crate::gearing::quoted;
use std::collections::BTreeSet;

/// What the exported picture shows, kept with the project.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "each is a choice of its own that any other leaves alone"
)]
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
    /// What the picture shows of the sets, one view beneath the other.
    pub views: Views,
    /// Whose falls of the needle have their figures in the picture.
    pub drops: Drops,
    /// The columns of the table; none where it has as many as find room.
    pub columns: Option<BTreeSet<ColumnKey>>,
    /// Whether the picture holds the project's text, so that it can be opened again.
    pub carries_project: bool,
}

/// Whose falls of the needle have their figures in a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Drops {
    /// Those of one set or of two; of three sets those of one that is compared.
    #[default]
    Usual,
    /// Those of every set.
    All,
    /// Nobody's.
    Hidden,
    /// Those of one set; the usual ones where it is not there (any more).
    Of(SetId),
}

impl Drops {
    /// The sets whose figures are written, of those that are shown.
    ///
    /// Of three sets the usual one is the `selected`, unless it is the `baseline`: then the first
    /// that is compared with it. Without a baseline it is the selected one, whichever it is.
    pub fn of_shown(
        self,
        shown: &[SetId],
        baseline: Option<SetId>,
        selected: Option<SetId>,
    ) -> Vec<SetId> {
        let is_compared = |set: &SetId| baseline != Some(*set) && shown.contains(set);
        match self {
            Self::Of(set) if shown.contains(&set) => vec![set],
            Self::Usual | Self::Of(_) if shown.len() > MOST_TOGETHER => {
                let first = || shown.iter().copied().find(is_compared);
                Vec::from_iter(selected.filter(is_compared).or_else(first))
            }
            Self::All | Self::Usual | Self::Of(_) => shown.to_vec(),
            Self::Hidden => Vec::new(),
        }
    }
}

/// Of how many sets the figures of all falls find room side by side.
const MOST_TOGETHER: usize = 2;

/// Names a column of the table in files and for programs: `overall_ratio`.
///
/// Which columns there are is known where tables are made; a name that no column has stays, and means
/// nothing.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ColumnKey(String);

/// A text that names no column.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("a column is named by 1 to 40 small letters, digits and underscores, not \"{0}\"")]
pub struct NoColumnKey(String);

impl ColumnKey {
    /// The most characters it can have.
    pub const MOST_CHARACTERS: usize = 40;

    /// The name.
    ///
    /// # Errors
    /// When it is empty or too long, or has other signs in it.
    pub fn new(text: &str) -> Result<Self, NoColumnKey> {
        let is_sign = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_';
        let fits = (1..=Self::MOST_CHARACTERS).contains(&text.len());
        if fits && text.bytes().all(is_sign) {
            Ok(Self(text.to_owned()))
        } else {
            Err(NoColumnKey(quoted(text)))
        }
    }

    /// The text itself.
    pub fn as_str(&self) -> &str {
        &self.0
    }
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
            views: Views::default(),
            drops: Drops::Usual,
            columns: None,
            carries_project: true,
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

#[cfg(test)]
mod tests {
    use super::*;

    const SETS: [SetId; 3] = [SetId(4), SetId(7), SetId(9)];

    #[test]
    fn the_drops_of_two_sets_are_written_side_by_side_and_of_three_those_of_one() {
        let usual = |shown: &[SetId], selected| {
            let drops = Drops::Usual.of_shown(shown, Some(SETS[0]), selected);
            drops.iter().map(|set| set.0).collect::<Vec<_>>()
        };
        assert_eq!(usual(&SETS[..1], None), [4]);
        assert_eq!(usual(&SETS[1..], Some(SETS[1])), [7, 9]);
        assert_eq!(usual(&SETS, None), [7]);
        assert_eq!(usual(&SETS, Some(SETS[0])), [7], "not the baseline");
        assert_eq!(usual(&SETS, Some(SETS[2])), [9]);
        assert_eq!(usual(&SETS, Some(SetId(1))), [7], "nothing that is gone");
        let on_screen = Drops::Usual.of_shown(&SETS, None, Some(SETS[0]));
        assert_eq!(on_screen, [SETS[0]], "a baseline's own");
    }

    #[test]
    fn whoever_chooses_gets_the_drops_that_were_chosen() {
        let of = |drops: Drops| drops.of_shown(&SETS, Some(SETS[0]), Some(SETS[2]));
        assert_eq!(of(Drops::All), SETS);
        assert_eq!(of(Drops::Hidden), []);
        assert_eq!(of(Drops::Of(SETS[0])), [SETS[0]]);
        assert_eq!(of(Drops::Of(SetId(1))), of(Drops::Usual));
    }
}
