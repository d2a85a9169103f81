//! The table for a forum or a page that reads Markdown: a pipe table for each set.

use super::grid::{BRACKETS_NOTE, Grid, Heading, has_brackets, head_line, set_heading};
use crate::chart::Table;

/// The table with a heading, a line of facts and a pipe table for each set.
pub fn table(title: Option<&str>, table: &Table) -> String {
    let mut blocks: Vec<String> = title
        .map(|title| format!("## {}\n", escaped(title)))
        .into_iter()
        .collect();
    blocks.push(format!("{}\n", head_line(table)));
    for (set, grid) in table.sets.iter().zip(Grid::of_all(table)) {
        blocks.push(format!("### {}\n", escaped(&set_heading(set))));
        blocks.push(format!("{}\n", escaped(&set.facts_text("; "))));
        blocks.push(pipe_table(&grid.without_empty_columns()));
    }
    if has_brackets(table) {
        blocks.push(format!("{BRACKETS_NOTE}\n"));
    }
    blocks.join("\n")
}

/// The rows of a grid between pipes, with their headings.
pub(super) fn pipe_table(grid: &Grid) -> String {
    let headings = grid.headings.iter().map(|h| escaped(&heading(h)));
    let rule = grid.headings.iter().map(|heading| {
        let rule = if heading.is_number { "---:" } else { ":---" };
        rule.to_owned()
    });
    let mut text = pipe_row(headings) + &pipe_row(rule);
    for row in &grid.rows {
        text += &pipe_row(row.iter().map(|cell| escaped(&cell.text)));
    }
    text
}

fn heading(heading: &Heading) -> String {
    if heading.unit.is_empty() {
        heading.title.clone()
    } else {
        format!("{} ({})", heading.title, heading.unit)
    }
}

fn pipe_row(cells: impl Iterator<Item = String>) -> String {
    format!("| {} |\n", cells.collect::<Vec<String>>().join(" | "))
}

/// The text with everything escaped that Markdown would take for markup.
pub(super) fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        if matches!(
            c,
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' | '~' | '&' | '!'
        ) {
            escaped.push('\\');
        }
        escaped.push(c);
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_cannot_break_out_of_its_cell() {
        assert_eq!(escaped("a|b *c* <d>"), "a\\|b \\*c\\* \\<d\\>");
        assert_eq!(escaped("215/65 R 16 C, 4.867"), "215/65 R 16 C, 4.867");
    }
}
