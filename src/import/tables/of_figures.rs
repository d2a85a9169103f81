//! Is it a table that tells figures of the sets and no ratios? By a heading that others do not write.

use super::first_of_several::unmarked;

/// The name of the part that every table of speedometers begins a set with, in text, Markdown and BBCode.
const PART: &str = "Shown speed";

/// How the rows of all such tables begin in CSV.
const COLUMNS: [&str; 4] = ["set", "name", "part", "row"];

/// Whether the text is such a table, with no table of ratios before it.
pub(super) fn is_of_figures(text: &str) -> bool {
    text.lines()
        .any(|line| unmarked(line) == PART || is_head(line))
}

/// Whether a line is the head of such a table as CSV, or as a spreadsheet copies it.
fn is_head(line: &str) -> bool {
    [',', ';', '\t'].into_iter().any(|separator| {
        let cells = line.trim().split(separator);
        cells.take(COLUMNS.len()).eq(COLUMNS)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_known_by_a_line_of_its_own() {
        for text in [
            "Set 1\n\nShown speed\n",
            "**Shown speed**\n",
            "> Shown speed",
            "set,name,part,row,shown (km/h)\n",
            "set;name;part;row;fuel (L/100 km)\n",
            "set\tname\tpart\trow\n",
        ] {
            assert!(is_of_figures(text), "{text}");
        }
        for text in ["the shown speed is 90", "set,name,gear,ratio\n1,2,3,4\n"] {
            assert!(!is_of_figures(text), "{text}");
        }
    }
}
