//! The subcommands of the command line, and how the help introduces them.

/// A command that needs no window. A new one needs a row in each function here, its flags in `flags`, and a line
/// in [`super::run`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Subcommand {
    /// Ratios, steps and speeds of every set.
    Table,
    /// The picture of the write-up.
    Chart,
    /// What is valid but strange.
    Check,
    /// Tooth pairs for a wished ratio.
    Pairs,
    /// The value that fulfils a wish.
    Find,
    /// What a vehicle has, by counting.
    Count,
    /// What the jobs of the bench come to.
    Jobs,
    /// The shim that a place takes.
    Shim,
    /// The torque that keeps a shaft turning.
    Preload,
    /// The interference of a part with its seat.
    Fit,
    /// What is left of a shaft that is turned down.
    Journal,
}

impl Subcommand {
    /// All commands, in the order of the help.
    pub(super) const ALL: [Self; 11] = [
        Self::Table,
        Self::Chart,
        Self::Check,
        Self::Pairs,
        Self::Find,
        Self::Count,
        Self::Jobs,
        Self::Shim,
        Self::Preload,
        Self::Fit,
        Self::Journal,
    ];

    /// The command that `word` names.
    pub(super) fn named(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|command| command.name() == word)
    }

    /// The word that asks for it.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Table => "table",
            Self::Chart => "chart",
            Self::Check => "check",
            Self::Pairs => "pairs",
            Self::Find => "find",
            Self::Count => "count",
            Self::Jobs => "jobs",
            Self::Shim => "shim",
            Self::Preload => "preload",
            Self::Fit => "fit",
            Self::Journal => "journal",
        }
    }

    /// What it prints, as it follows its name in the help.
    pub(super) fn summary(self) -> &'static str {
        match self {
            Self::Table => "print ratios, steps and speeds of every gear set",
            Self::Chart => "make the picture of the write-up, a PNG file",
            Self::Check => "list what is valid but strange; exit code 1 where there is anything",
            Self::Pairs => "list the tooth pairs that come near a ratio",
            Self::Find => {
                "print the final drive, tyre or ratio for an engine speed at a road speed"
            }
            Self::Jobs => "print what the jobs of the bench come to",
            Self::Shim => "print the shim that a place takes, from the play that was measured",
            Self::Preload => "print the torque that keeps a shaft turning, beside the maker's band",
            Self::Fit => "print the limits of a seat and a part, and the interference of both",
            Self::Journal => "print what is left of a shaft that is turned down",
            Self::Count => "print the overall ratio that turns count, and which gear that is",
        }
    }

    /// What stands behind its name, in each way of asking for it; the first is the usual one.
    pub(super) fn usages(self) -> &'static [&'static str] {
        match self {
            Self::Table | Self::Chart | Self::Check | Self::Count => &["FILE", "--gears RATIOS …"],
            Self::Jobs => &["FILE"],
            Self::Pairs => &["--ratio R --within PERCENT --teeth 9-60"],
            Self::Shim => &["--seat behind|under --trial MM --play \"MM …\" --setting LOW,HIGH"],
            Self::Preload => &["--pull N --radius MM", "--reading NM"],
            Self::Fit => &["--diameter MM --shaft CLASS", "--diameter MM --bore CLASS"],
            Self::Journal => &["--from MM --to MM"],
            Self::Find => &["final|tyre|ratio FILE", "final|tyre|ratio --gears RATIOS …"],
        }
    }

    /// Whether a word stands between its name and the file, which says what is asked of the file.
    pub(super) fn takes_word(self) -> bool {
        match self {
            Self::Table
            | Self::Chart
            | Self::Check
            | Self::Pairs
            | Self::Count
            | Self::Jobs
            | Self::Shim
            | Self::Preload
            | Self::Fit
            | Self::Journal => false,
            Self::Find => true,
        }
    }
}
