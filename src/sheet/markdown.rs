//! The table for a forum or a page that reads Markdown: a pipe table for each set.

use super::framed::Framed;
use super::grid::{Grid, Heading};
use crate::chart::{FigureTable, Table};

/// The table with a heading, a line of facts and a pipe table for each set.
pub fn table(title: Option<&str>, table: &Table) -> String {
    written(Framed::of_table(title, table))
}

/// The same with what engine and vehicle make of each set.
pub fn figures(title: Option<&str>, table: &FigureTable) -> String {
    written(Framed::of_figures(title, table))
}

fn written(framed: Framed) -> String {
    let line =
        |mark: &str, text: &str| (!text.is_empty()).then(|| format!("{mark}{}\n", escaped(text)));
    let mut blocks: Vec<String> = line("## ", &framed.title).into_iter().collect();
    blocks.extend(line("", &framed.head));
    for set in framed.sets {
        blocks.extend(line("### ", &set.heading));
        blocks.extend(line("", &set.facts));
        let parts = set.parts.into_iter();
        for part in parts.filter(|part| !part.grid.rows.is_empty()) {
            blocks.extend(part.title.map(|title| format!("**{}**\n", escaped(title))));
            blocks.push(pipe_table(&part.grid.without_empty_columns()));
        }
    }
    blocks.extend(framed.notes.iter().filter_map(|note| line("", note)));
    blocks.join("\n")
}

/// The rows of a grid between pipes, with their headings.
fn pipe_table(grid: &Grid) -> String {
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
fn escaped(text: &str) -> String {
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
