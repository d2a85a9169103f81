//! Tables of the program whose blanks somebody's page has folded into one: told, not read.
//!
//! Where a cell is empty, nothing says any more beneath which heading the next one stood.

use super::headings::is_unit;

/// The words of the lowest line of headings that are headings by themselves.
const HEADINGS: [&str; 4] = ["gear", "ratio", "overall", "step"];

/// Whether a line is the lowest of the headings of such a table.
fn is_headings(line: &str) -> bool {
    let mut words = line.trim_start_matches(['>', ' ', '\t']).split(' ');
    let opens = words.next() == Some(HEADINGS[0]);
    let (mut named, mut with_unit) = (0, 0);
    for word in words {
        // The lowest word of all other headings is their unit.
        if is_unit(word) {
            with_unit += 1;
        } else if HEADINGS.contains(&word) {
            named += 1;
        } else {
            return false;
        }
    }
    opens && named + with_unit >= 2 && with_unit >= 1
}

/// Whether a table of the program stands in the text with its blanks folded.
pub(super) fn is_folded(text: &str) -> bool {
    text.lines().any(|line| is_headings(line.trim_end()))
}
