//! Where does the table of ratios end in a text with further tables? At the name of the next one.

/// What further tables are called: they tell what engine, vehicle and instruments make of the sets, and have
/// no sets of their own.
const FURTHER: [&str; 4] = ["Effort", "Run", "Cruise", "Speedometer"];

/// The text as far as the first further table.
pub(super) fn first_of_several(text: &str) -> &str {
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        if at > 0 && FURTHER.contains(&unmarked(line)) {
            return &text[..at];
        }
        at += line.len();
    }
    text
}

/// A line without the marks of its format: `# Run`, `**Run**`, `[b]Run[/b]`.
pub(super) fn unmarked(line: &str) -> &str {
    let line = line
        .trim()
        .trim_start_matches("[b]")
        .trim_end_matches("[/b]");
    line.trim_matches(|c: char| !c.is_alphanumeric())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_further_table_begins_at_its_name_whatever_its_marks() {
        for name in [
            "Run",
            "# Run",
            "**Run**",
            "[b]Run[/b]",
            "## Cruise ##",
            "# Speedometer",
        ] {
            let text = format!("title\n| 1 | 3.5 |\n\n{name}\n\nmore\n");
            assert_eq!(first_of_several(&text), "title\n| 1 | 3.5 |\n\n", "{name}");
        }
    }

    #[test]
    fn a_project_may_be_called_like_one_and_words_may_begin_like_one() {
        for text in ["Run\n1 3.5\n", "gears\nRun it often\n1 3.5\n"] {
            assert_eq!(first_of_several(text), text);
        }
    }
}
