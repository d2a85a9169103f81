//! The table for a forum that reads BBCode: the aligned table in a code block.
//!
//! BBCode has no way to write a square bracket that is none, so those of typed texts become round.

use super::grid::{BRACKETS_NOTE, has_brackets, head_line, set_heading};
use super::text::aligned;
use crate::chart::Table;

/// The table with a name in bold, a line of facts and a code block for each set.
pub fn table(title: Option<&str>, table: &Table) -> String {
    let bold = |text: &str| format!("[b]{}[/b]\n", round(text));
    let mut blocks: Vec<String> = title.map(bold).into_iter().collect();
    blocks.push(format!("{}\n", head_line(table)));
    for (set, aligned) in table.sets.iter().zip(aligned(table)) {
        let name = bold(&set_heading(set));
        let facts = round(&set.facts_text("; "));
        blocks.push(format!(
            "{name}{facts}\n[code]\n{}[/code]\n",
            round(&aligned)
        ));
    }
    if has_brackets(table) {
        blocks.push(format!("{BRACKETS_NOTE}\n"));
    }
    blocks.join("\n")
}

/// The text with round brackets for square ones.
pub(super) fn round(text: &str) -> String {
    text.replace('[', "(").replace(']', ")")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_label_cannot_close_the_code_block() {
        assert_eq!(round("[/code]"), "(/code)");
    }
}
