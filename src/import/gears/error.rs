//! Why can a pasted text not be read as a gear set?

/// Why a text holds no gear set.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PasteError {
    /// More text than a data sheet has.
    #[error(
        "the text has {characters} characters; paste at most {most}, just the lines with the ratios"
    )]
    TooLong {
        /// How many characters there were.
        characters: usize,
        /// How many are read.
        most: usize,
    },
    /// No number that could be a gear.
    #[error(
        "no gear ratio was found; paste lines such as \"1st 3.54\" or a list such as 3.54/1.91/1.31"
    )]
    NoGears,
    /// A final drive, reverse or overall figures, but nothing to drive forward with.
    #[error("the text gives {found} but no gear ratio; paste the gear ratios with it")]
    NoForwardGears {
        /// What was found, as it stands in a sentence.
        found: &'static str,
    },
    /// More forward gears than a set can have.
    #[error("{found} gears were found and a gear set has at most {most}; paste one gear set alone")]
    TooManyGears {
        /// How many gears were found.
        found: usize,
        /// How many fit.
        most: usize,
    },
    /// More final drives than a set can have.
    #[error(
        "{found} final drives were found and a gear set has at most {most}; leave out those that are not meant"
    )]
    TooManyFinalDrives {
        /// How many final drives were found.
        found: usize,
        /// How many fit.
        most: usize,
    },
}
