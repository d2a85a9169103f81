//! The flags: what they mean, and which subcommands take them.
//!
//! One table serves the reading, the messages and the help. Of two flags of the same name the one is meant that
//! goes with the command: `--from` is a road speed of a run, and a diameter of a shaft.

mod bench;
mod output;
mod sets;
mod technical;
mod wishes;

pub(super) use super::flag::Flag;
use super::flag_row::FlagRow;
use super::subcommand::Subcommand;

/// All flags, in the order of the help.
pub(super) const FLAGS: [FlagRow; 96] = joined(&[
    &sets::SETS,
    &technical::TECHNICAL,
    &wishes::WISHES,
    &bench::BENCH,
    &output::SPEEDS_AND_OUTPUT,
]);

/// The rows of all parts; a test says that no place is left to the first of them.
const fn joined<const N: usize>(parts: &[&[FlagRow]]) -> [FlagRow; N] {
    let mut rows = [parts[0][0]; N];
    let (mut part, mut filled) = (0, 0);
    while part < parts.len() {
        let mut at = 0;
        while at < parts[part].len() {
            rows[filled] = parts[part][at];
            (at, filled) = (at + 1, filled + 1);
        }
        part += 1;
    }
    rows
}

impl Flag {
    /// Its row in the table.
    pub(super) fn row(self) -> &'static FlagRow {
        &FLAGS[self as usize]
    }

    /// The flag of the same name that goes with a command; none where none does.
    pub(super) fn of_command(self, command: Subcommand) -> Option<Self> {
        let named = FLAGS.iter().filter(|row| row.long == self.row().long);
        let mut meant = named.filter(|row| row.commands.contains(&command));
        meant.next().map(|row| row.flag)
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

/// The flag of that name, given without dashes: the one that goes with the command, where there is one.
pub(super) fn long(name: &str, command: Option<Subcommand>) -> Option<&'static FlagRow> {
    let first = FLAGS.iter().find(|row| row.long == name)?;
    let meant = command.and_then(|command| first.flag.of_command(command));
    Some(meant.map_or(first, Flag::row))
}

/// The flag of that letter.
pub(super) fn short(letter: char) -> Option<&'static FlagRow> {
    FLAGS.iter().find(|row| row.short == Some(letter))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::View;

    #[test]
    fn every_view_stands_in_the_help() {
        let meaning = Flag::Show.row().meaning;
        assert!(View::ALL.iter().all(|view| meaning.contains(view.word())));
    }

    #[test]
    fn flags_of_one_name_all_take_a_value_or_none_does() {
        for row in &FLAGS {
            let mut named = FLAGS.iter().filter(|other| other.long == row.long);
            assert!(named.all(|other| other.value.is_empty() == row.value.is_empty()));
        }
    }

    #[test]
    fn every_flag_stands_at_its_place_in_the_table() {
        for (place, row) in FLAGS.iter().enumerate() {
            assert_eq!(row.flag as usize, place, "{}", row.long);
            for command in row.commands {
                let meant = long(row.long, Some(*command)).map(|row| row.flag);
                assert_eq!(meant, Some(row.flag), "{}", row.long);
            }
        }
        assert_eq!(Flag::Output as usize + 1, FLAGS.len());
    }
}
