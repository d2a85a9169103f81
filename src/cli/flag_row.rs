//! One row of the table of flags.

use super::flags::Flag;
use super::subcommand::Subcommand;

/// What a flag is for: the headings of the help.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Group {
    /// A gear set, instead of a file.
    Sets,
    /// Engine, vehicle and road, instead of a file too.
    Technical,
    /// The tooth pairs that are wished.
    Pairs,
    /// What a set is wished to do.
    Wish,
    /// What was counted of a vehicle.
    Counted,
    /// What was measured on the bench, or is meant there.
    Bench,
    /// Road and engine speeds that are wanted.
    Speeds,
    /// What is printed, how, and where to.
    Output,
}

/// One row of the table of flags.
#[derive(Debug, Clone, Copy)]
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

/// The commands that are about a project.
pub(super) const OF_PROJECT: &[Subcommand] = &[
    Subcommand::Table,
    Subcommand::Chart,
    Subcommand::Check,
    Subcommand::Find,
    Subcommand::Count,
];
/// The commands that tell figures at marked speeds.
pub(super) const MARKED: &[Subcommand] = &[Subcommand::Table, Subcommand::Chart, Subcommand::Check];
pub(super) const TABLE: &[Subcommand] = &[Subcommand::Table];
/// The commands that print figures for a spreadsheet.
pub(super) const FIGURES: &[Subcommand] = &[Subcommand::Table, Subcommand::Pairs];
pub(super) const CHART: &[Subcommand] = &[Subcommand::Chart];
/// The commands that show a project as a view.
pub(super) const VIEWS: &[Subcommand] = &[Subcommand::Table, Subcommand::Chart];
/// The commands whose result can go into a file.
pub(super) const WRITTEN: &[Subcommand] =
    &[Subcommand::Table, Subcommand::Chart, Subcommand::Pairs];
pub(super) const TEXTS: &[Subcommand] = &[
    Subcommand::Table,
    Subcommand::Check,
    Subcommand::Pairs,
    Subcommand::Find,
    Subcommand::Count,
    Subcommand::Jobs,
    Subcommand::Shim,
    Subcommand::Preload,
    Subcommand::Fit,
    Subcommand::Journal,
];

/// A row of the table.
pub(super) const fn row(
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

/// A row about a gear set.
pub(super) const fn set(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Sets, OF_PROJECT, meaning)
}

/// A row about engine, vehicle or road.
pub(super) const fn technical(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Technical, VIEWS, meaning)
}

/// A row about tooth pairs.
pub(super) const fn of_pairs(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Pairs, &[Subcommand::Pairs], meaning)
}

/// A row about what was counted of a vehicle.
pub(super) const fn of_count(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Counted, &[Subcommand::Count], meaning)
}

/// A row about the shim that a place takes.
pub(super) const fn of_shim(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Bench, &[Subcommand::Shim], meaning)
}

/// A row about the torque that keeps a shaft turning.
pub(super) const fn of_preload(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Bench, &[Subcommand::Preload], meaning)
}

/// A row about a part on its seat.
pub(super) const fn of_fit(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Bench, &[Subcommand::Fit], meaning)
}

/// A row about a shaft that is turned down.
pub(super) const fn of_journal(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Bench, &[Subcommand::Journal], meaning)
}

/// A row about what a set is wished to do.
pub(super) const fn of_wish(
    flag: (Flag, &'static str),
    value: &'static str,
    meaning: &'static str,
) -> FlagRow {
    row(flag, value, Group::Wish, &[Subcommand::Find], meaning)
}
