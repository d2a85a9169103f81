//! The flags: what they mean, and which subcommands take them.
//!
//! One table serves the reading, the messages and the help.

use super::subcommand::Subcommand;
use Flag::{
    As, Circumference, Decimal, Drops, Final, Gears, Idle, LowestUseful, Name, NoNote, NoProject,
    NoTable, Page, Pasted, Redline, Reverse, Rpm, Shift, Show, Speed, Theme, Tyre, Units, Width,
};
use Group::{Sets, Speeds};

/// A flag; in the order of [`FLAGS`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Flag {
    Gears,
    Pasted,
    Final,
    Tyre,
    Circumference,
    Redline,
    Shift,
    Reverse,
    Name,
    Idle,
    LowestUseful,
    Rpm,
    Speed,
    Units,
    Show,
    As,
    Decimal,
    Chosen,
    Drops,
    Width,
    Theme,
    Page,
    NoTable,
    NoNote,
    NoProject,
    Output,
}

/// What a flag is for: the headings of the help.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Group {
    /// A gear set, instead of a file.
    Sets,
    /// Road and engine speeds that are wanted.
    Speeds,
    /// What is printed, how, and where to.
    Output,
}

/// One row of the table of flags.
#[derive(Debug)]
pub(super) struct FlagRow {
    pub(super) flag: Flag,
    /// Its name without the dashes.
    pub(super) long: &'static str,
    pub(super) short: Option<char>,
    /// What stands for its value in the help; empty for a flag that takes none.
    pub(super) value: &'static str,
    /// What it means, as it stands in the help.
    pub(super) meaning: &'static str,
    pub(super) group: Group,
    pub(super) commands: &'static [Subcommand],
}

const EVERY: &[Subcommand] = &Subcommand::ALL;
const TABLE: &[Subcommand] = &[Subcommand::Table];
const CHART: &[Subcommand] = &[Subcommand::Chart];
const WRITTEN: &[Subcommand] = &[Subcommand::Table, Subcommand::Chart];
const TEXTS: &[Subcommand] = &[Subcommand::Table, Subcommand::Check];

const fn row(
    (flag, long): (Flag, &'static str),
    value: &'static str,
    group: Group,
    commands: &'static [Subcommand],
    meaning: &'static str,
) -> FlagRow {
    FlagRow {
        flag,
        long,
        short: match flag {
            Flag::Output => Some('o'),
            _ => None,
        },
        value,
        meaning,
        group,
        commands,
    }
}

/// All flags, in the order of the help.
pub(super) const FLAGS: [FlagRow; 26] = [
    row(
        (Gears, "gears"),
        "RATIOS",
        Sets,
        EVERY,
        "first to top, parted by blanks; once for each of up to three sets",
    ),
    row(
        (Pasted, "pasted"),
        "FILE",
        Sets,
        EVERY,
        "a copied text with the sets, or - for standard input, instead of --gears",
    ),
    row(
        (Final, "final"),
        "RATIO",
        Sets,
        EVERY,
        "the final drive, or \"chain FRONT/REAR\"; once for all sets or once for each",
    ),
    row(
        (Tyre, "tyre"),
        "SIZE",
        Sets,
        EVERY,
        "as 185/60R14; once for all sets or once for each",
    ),
    row(
        (Circumference, "circumference"),
        "MM",
        Sets,
        EVERY,
        "the measured rolling circumference, instead of --tyre",
    ),
    row(
        (Redline, "redline"),
        "RPM",
        Sets,
        EVERY,
        "the highest permitted engine speed",
    ),
    row(
        (Shift, "shift"),
        "RPM",
        Sets,
        EVERY,
        "one shift point, or one for each change; at the redline without it",
    ),
    row(
        (Reverse, "reverse"),
        "RATIO",
        Sets,
        EVERY,
        "the reverse gear",
    ),
    row(
        (Name, "name"),
        "NAME",
        Sets,
        EVERY,
        "the name of a set; once for each",
    ),
    row(
        (Idle, "idle"),
        "RPM",
        Sets,
        EVERY,
        "the engine speed at idle",
    ),
    row(
        (LowestUseful, "lowest-useful"),
        "RPM",
        Sets,
        EVERY,
        "the engine speed below which the engine labours",
    ),
    row(
        (Rpm, "rpm"),
        "LIST",
        Speeds,
        EVERY,
        "engine speeds at which road speeds are wanted",
    ),
    row(
        (Speed, "speed"),
        "LIST",
        Speeds,
        EVERY,
        "road speeds at which engine speeds are wanted, in km/h or as --units says",
    ),
    row(
        (Units, "units"),
        "kmh|mph",
        Speeds,
        EVERY,
        "the unit of road speeds in everything but JSON",
    ),
    row(
        (Show, "show"),
        "speed|steps",
        Group::Output,
        WRITTEN,
        "what table or chart is about; steps with chart only",
    ),
    row(
        (As, "as"),
        "FORMAT",
        Group::Output,
        TEXTS,
        "the format: see below",
    ),
    row(
        (Decimal, "decimal"),
        "point|comma",
        Group::Output,
        TABLE,
        "the decimal mark of CSV; with a comma, semicolons part the cells",
    ),
    row(
        (Flag::Chosen, "sets"),
        "LIST",
        Group::Output,
        CHART,
        "the sets to show, counted from 1, as 1,3",
    ),
    row(
        (Drops, "drops"),
        "all|none|N",
        Group::Output,
        CHART,
        "whose drops are written: every set's, nobody's, or those of set N",
    ),
    row(
        (Width, "width"),
        "PIXELS",
        Group::Output,
        CHART,
        "the width of the picture, 800 to 4000",
    ),
    row(
        (Theme, "theme"),
        "light|dark",
        Group::Output,
        CHART,
        "dark lines on light paper or the other way round",
    ),
    row(
        (Page, "page"),
        "a4|letter",
        Group::Output,
        CHART,
        "a page for the bench instead: large figures, black on white",
    ),
    row(
        (NoTable, "no-table"),
        "",
        Group::Output,
        CHART,
        "without the table beneath the diagram",
    ),
    row(
        (NoNote, "no-note"),
        "",
        Group::Output,
        CHART,
        "without the note",
    ),
    row(
        (NoProject, "no-project"),
        "",
        Group::Output,
        CHART,
        "without the project in the picture, which then cannot be opened",
    ),
    row(
        (Flag::Output, "output"),
        "OUT",
        Group::Output,
        WRITTEN,
        "the file to write, whole or not at all, or a pipe; - is standard output",
    ),
];

impl Flag {
    /// Its row in the table.
    pub(super) fn row(self) -> &'static FlagRow {
        &FLAGS[self as usize]
    }

    /// Its name with its dashes, as it stands in a sentence.
    pub(super) fn name(self) -> String {
        match self.row() {
            FlagRow {
                short: Some(letter),
                ..
            } => format!("-{letter}"),
            row => format!("--{}", row.long),
        }
    }
}

/// The flag of that name, given without dashes.
pub(super) fn long(name: &str) -> Option<&'static FlagRow> {
    FLAGS.iter().find(|row| row.long == name)
}

/// The flag of that letter.
pub(super) fn short(letter: char) -> Option<&'static FlagRow> {
    FLAGS.iter().find(|row| row.short == Some(letter))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::View;

    #[test]
    fn every_view_stands_in_the_help() {
        assert_eq!(Show.row().value, View::ALL.map(View::word).join("|"));
    }

    #[test]
    fn every_flag_stands_at_its_place_in_the_table() {
        for (place, row) in FLAGS.iter().enumerate() {
            assert_eq!(row.flag as usize, place, "{}", row.long);
            assert_eq!(long(row.long).map(|row| row.flag), Some(row.flag));
        }
        assert_eq!(Flag::Output as usize + 1, FLAGS.len());
    }
}
