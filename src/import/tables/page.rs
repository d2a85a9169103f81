//! A page of tables: text, Markdown or BBCode, each set with its words above its cells.

use super::aligned;
use super::error::TableError;
use super::found::{Found, FoundRow, FoundSet};
use super::headings::{Column, Heading, are_own};
use super::lines::Lines;
use super::phrases::{Head, says_facts};
use super::pipes;

/// The lines of a text in which a table of the program stands, as they were before they were quoted.
pub(super) fn lines(text: &str) -> Option<Lines<'_>> {
    let lines = Lines::of(text);
    (0..lines.count()).find_map(|at| {
        let seen = lines.seen_from(at);
        let is_own = block(&seen, at).is_some_and(|block| block.is_own());
        is_own.then_some(seen)
    })
}

/// The headings of a block of cells, found at their lowest line.
enum Block {
    Aligned(aligned::Band),
    Pipes(Vec<Heading>),
}

fn block(lines: &Lines<'_>, at: usize) -> Option<Block> {
    let aligned = aligned::headings(lines, at).map(Block::Aligned);
    aligned.or_else(|| pipes::headings(lines, at).map(Block::Pipes))
}

impl Block {
    /// Whether only a table of the program has such headings.
    fn is_own(&self) -> bool {
        match self {
            Self::Aligned(block) => are_own(&block.headings),
            Self::Pipes(headings) => are_own(headings),
        }
    }

    /// The headings behind that of the gears.
    fn headings(&self) -> &[Heading] {
        let headings = match self {
            Self::Aligned(block) => block.headings.as_slice(),
            Self::Pipes(headings) => headings.as_slice(),
        };
        headings.get(1..).unwrap_or_default()
    }

    fn lines_above(&self) -> usize {
        match self {
            Self::Aligned(block) => block.lines_above,
            Self::Pipes(_) => 0,
        }
    }

    fn rows(
        &self,
        lines: &Lines<'_>,
        at: usize,
        gears: Option<&[FoundRow]>,
    ) -> Result<(Vec<FoundRow>, usize), TableError> {
        match self {
            Self::Aligned(block) => block.rows(lines, at, gears),
            Self::Pipes(headings) => pipes::rows(lines, at, headings.len()),
        }
    }
}

/// Everything that stands on a page.
///
/// # Errors
/// When a block of cells is cut or pushed out of line.
pub(super) fn found(lines: &Lines<'_>) -> Result<Found, TableError> {
    let mut found = Found::default();
    // What has been passed since the last block: the words above the next.
    let mut above: Vec<&str> = Vec::new();
    let mut at = 0;
    while at < lines.count() {
        let Some(block) = block(lines, at) else {
            above.push(lines.get(at));
            at += 1;
            continue;
        };
        above.truncate(above.len().saturating_sub(block.lines_above()));
        let words = Words::of(&above, matches!(block, Block::Pipes(_)));
        let goes_on = found.sets.last_mut();
        let goes_on = goes_on.filter(|set| !words.name_a_set() && set.lacks_all(block.headings()));
        at = if let Some(set) = goes_on {
            further_band(set, &block, lines, at)?
        } else {
            let (rows, end) = block.rows(lines, at, None)?;
            if found.sets.is_empty() {
                found.title.clone_from(&words.title);
                found.head = words.head.clone();
            }
            found.sets.push(words.set(block.headings().to_vec(), rows));
            end
        };
        above.clear();
    }
    if breaks_off(&above) || lacks_columns(&found.sets, lines) {
        return Err(TableError::BreaksOff {
            line: lines.last() + 1,
        });
    }
    Ok(found)
}

/// Further columns of a set, beneath those that were read; where they end.
fn further_band(
    set: &mut FoundSet,
    block: &Block,
    lines: &Lines<'_>,
    at: usize,
) -> Result<usize, TableError> {
    let (rows, end) = block.rows(lines, at, Some(&set.rows))?;
    if rows.len() != set.rows.len() {
        return Err(TableError::OutOfLine { line: at + 1 });
    }
    set.headings.extend_from_slice(block.headings());
    for (row, further) in set.rows.iter_mut().zip(rows) {
        row.cells.extend(further.cells);
    }
    Ok(end)
}

/// Whether columns are missing at the end: in a text all sets have the same.
fn lacks_columns(sets: &[FoundSet], lines: &Lines<'_>) -> bool {
    let is_markdown = (0..lines.count()).any(|at| pipes::headings(lines, at).is_some());
    match sets {
        [first, .., last] if !is_markdown => last.headings.len() < first.headings.len(),
        _ => false,
    }
}

/// Whether what stands behind the last block is the beginning of another.
fn breaks_off(behind: &[&str]) -> bool {
    let is_heading = |line: &str| {
        let mut words = line.split_whitespace();
        line.starts_with("    ") && words.all(is_word_of_headings)
    };
    let words = behind.iter().map(|line| plain(line, false));
    let mut words = words.filter(|line| !line.is_empty());
    behind.iter().any(|line| is_heading(line))
        || words.any(|line| set_heading(&line).is_some() || says_facts(&line))
}

fn is_word_of_headings(word: &str) -> bool {
    const WORDS: [&str; 21] = [
        "at", "per", "shift", "falls", "to", "drop", "against", "set", "redline", "on", "final",
        "drive", "through", "stage", "point", "rpm", "%", "km/h", "mph", "crawler", "idle",
    ];
    WORDS.contains(&word) || word.chars().all(|c| c.is_ascii_digit() || c == '.')
}

/// The words above a block of cells.
#[derive(Debug, Default)]
struct Words {
    title: Option<String>,
    head: Head,
    /// Number and name of the set.
    set: Option<(usize, Option<String>)>,
    facts: Option<String>,
}

impl Words {
    fn of(above: &[&str], is_markdown: bool) -> Self {
        let lines = above.iter().map(|line| plain(line, is_markdown));
        let lines: Vec<String> = lines.filter(|line| !line.is_empty()).collect();
        let named = lines.iter().rposition(|line| set_heading(line).is_some());
        let facts_from = named.map_or(0, |at| at + 1);
        let facts = lines.iter().skip(facts_from).find(|line| says_facts(line));
        // A stage may be all that somebody left of the facts.
        let below = named.and_then(|at| lines.get(at + 1));
        let opening = &lines[..named.unwrap_or(lines.len())];
        let head = opening.iter().find_map(|line| Head::of(line));
        // Above the name of a set nothing is said of it.
        let is_said = |line: &str| named.is_none() && says_facts(line);
        let is_title = |line: &&String| Head::of(line).is_none() && !is_said(line);
        Self {
            title: opening.iter().find(is_title).cloned(),
            head: head.unwrap_or_default(),
            set: named.and_then(|at| set_heading(&lines[at])),
            facts: facts.or(below).cloned(),
        }
    }

    fn name_a_set(&self) -> bool {
        self.set.is_some() || self.facts.is_some()
    }

    fn set(self, headings: Vec<Heading>, rows: Vec<FoundRow>) -> FoundSet {
        let (number, name) = match self.set {
            Some((number, name)) => (Some(number), name),
            None => (None, None),
        };
        FoundSet {
            number,
            name,
            facts: self.facts,
            headings,
            rows,
        }
    }
}

/// A line without the marks of Markdown or BBCode around it; empty where it is nothing else.
fn plain(line: &str, is_markdown: bool) -> String {
    let line = line.trim();
    if is_markdown {
        let line = line.trim_start_matches('#').trim_start();
        return pipes::unescaped(line);
    }
    let bold = line.strip_prefix("[b]");
    let line = bold.and_then(|l| l.strip_suffix("[/b]")).unwrap_or(line);
    match line {
        "[code]" | "[/code]" | "```" => String::new(),
        line => line.to_owned(),
    }
}

/// Number and name of a set, where a line says these: `Set 2: Taller final drive`.
fn set_heading(line: &str) -> Option<(usize, Option<String>)> {
    let rest = line.strip_prefix("Set ")?;
    let digits = rest.find(|c: char| !c.is_ascii_digit());
    let (number, rest) = rest.split_at(digits.unwrap_or(rest.len()));
    let name = match rest {
        // The name may be cut away.
        "" | ":" => None,
        rest => Some(rest.strip_prefix(": ")?.to_owned()),
    };
    Some((number.parse().ok()?, name))
}

/// The baseline that the headings compare with.
pub(super) fn compared_with(set: &FoundSet) -> Option<f64> {
    let mut headings = set.headings.iter();
    headings.find(|h| h.column == Column::Against)?.number
}
