//! The table for a forum that reads BBCode: the aligned table in a code block.
//!
//! BBCode has no way to write a square bracket that is none, so those of typed texts become round.

use super::framed::Framed;
use super::text::aligned;
use crate::chart::{FigureTable, Table};

/// The table with a name in bold, a line of facts and a code block for each set.
pub fn table(title: Option<&str>, table: &Table) -> String {
    written(&Framed::of_table(title, table))
}

/// The same with what engine and vehicle make of each set.
pub fn figures(title: Option<&str>, table: &FigureTable) -> String {
    written(&Framed::of_figures(title, table))
}

fn written(framed: &Framed) -> String {
    let bold = |text: &str| format!("[b]{}[/b]\n", round(text));
    let line = |text: &String| (!text.is_empty()).then(|| format!("{}\n", round(text)));
    let title = (!framed.title.is_empty()).then(|| bold(&framed.title));
    let mut blocks: Vec<String> = title.into_iter().chain(line(&framed.head)).collect();
    for (set, aligned) in framed.sets.iter().zip(aligned(framed)) {
        let (name, facts) = (bold(&set.heading), round(&set.facts));
        let rows = round(&aligned);
        let code = (!rows.is_empty()).then(|| format!("[code]\n{rows}[/code]\n"));
        blocks.push(format!("{name}{facts}\n{}", code.unwrap_or_default()));
    }
    blocks.extend(framed.notes.iter().filter_map(line));
    blocks.join("\n")
}

/// The text with round brackets for square ones.
fn round(text: &str) -> String {
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
