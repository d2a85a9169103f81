//! The flags: what they mean, and which subcommands take them.
//!
//! One table serves the reading, the messages and the help.

mod bench;
mod output;
mod sets;
mod technical;
mod wishes;

pub(super) use super::flag::Flag;
use super::flag_row::FlagRow;

/// All flags, in the order of the help.
pub(super) const FLAGS: [FlagRow; 84] = joined(&[
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
    use crate::project::View;

    #[test]
    fn every_view_stands_in_the_help() {
        let meaning = Flag::Show.row().meaning;
        assert!(View::ALL.iter().all(|view| meaning.contains(view.word())));
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
