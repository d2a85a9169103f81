//! Columns without a heading: which of them is the engine speed.

use super::figures::{Element, Figure};
use super::headings::join_speed;
use super::numbers::{engine_rpm, minute_scale};
use super::remarks::Remarks;
use super::rows::{Given, Row};
use super::words::Scale;

/// A line of nothing but figures.
#[derive(Debug, Clone)]
pub(super) struct Bare {
    cells: Vec<Option<String>>,
    /// What is said of an engine speed that was joined of two numbers.
    joined: Option<String>,
    /// As it was written.
    line: String,
}

impl Bare {
    /// The line as cells, where no word stands before its figures.
    pub(super) fn of(elements: &[Element], line: &str) -> Option<Self> {
        let known: Vec<&Element> = elements
            .iter()
            .take_while(|e| e.figure().is_none())
            .collect();
        if known.contains(&&Element::Word) {
            return None;
        }
        let mut joined = None;
        let has_breaks = elements.contains(&Element::Break);
        let cells = if has_breaks {
            let cells = elements.split(|element| *element == Element::Break);
            cells.map(cell_text).collect::<Option<_>>()?
        } else {
            let mut figures: Vec<Figure> = elements
                .iter()
                .filter_map(Element::figure)
                .cloned()
                .collect();
            if figures.len() > 2 {
                joined = join_speed(&mut figures);
            }
            figures
                .into_iter()
                .map(|figure| Some(figure.text))
                .collect()
        };
        Some(Self {
            cells,
            joined,
            line: line.to_owned(),
        })
    }
}

/// The figure of a cell, if it has one, of which a blank may part the thousands; none where it has more.
#[expect(
    clippy::option_option,
    reason = "a cell that is empty reads, one with two figures does not"
)]
fn cell_text(cell: &[Element]) -> Option<Option<String>> {
    let mut figures: Vec<Figure> = cell.iter().filter_map(Element::figure).cloned().collect();
    // What it was read as follows from the cell.
    let _said = join_speed(&mut figures);
    let mut texts = figures.into_iter().map(|figure| figure.text);
    let text = texts.next();
    texts.next().is_none().then_some(text)
}

/// The rows that such lines give together, and the lines that do not fit in with the others.
pub(super) fn rows(lines: Vec<Bare>, remarks: &mut Remarks) -> (Vec<Row>, Vec<String>) {
    if let Some(said) = lines.iter().find_map(|line| line.joined.clone()) {
        remarks.say(said);
    }
    let lines = parted_pairs(lines);
    let width = commonest_width(&lines);
    let (fitting, others): (Vec<Bare>, Vec<Bare>) = lines
        .into_iter()
        .partition(|line| line.cells.len() == width && width > 1);
    let mut unread: Vec<String> = others.into_iter().map(|line| line.line).collect();
    let is_numbered = are_numbered(&fitting, width);
    let at = if is_numbered {
        1
    } else {
        speed_column(&fitting, width)
    };
    if is_numbered {
        remarks.say("Column 1 was taken for numbers of the rows.".to_owned());
    } else if at > 0 {
        let place = at + 1;
        remarks.say(format!("Column {place} was taken for the engine speed."));
    }
    let mut rows = Vec::with_capacity(fitting.len());
    for line in fitting {
        let (cells, at) = if is_numbered {
            (&line.cells[1..], 0)
        } else {
            (&line.cells[..], at)
        };
        match row(cells, at) {
            Some(row) => rows.push(row),
            None => unread.push(line.line),
        }
    }
    (rows, unread)
}

fn row(cells: &[Option<String>], at: usize) -> Option<Row> {
    let speed = cells.get(at)?.clone()?;
    // Which column a figure stands in must be as in the other rows.
    let filled = cells.iter().rposition(Option::is_some)?;
    if cells.iter().take(filled).any(Option::is_none) {
        return None;
    }
    let others = cells.iter().enumerate().filter(|(place, _)| *place != at);
    let outputs: Vec<Given> = others
        .filter_map(|(_, cell)| cell.clone())
        .map(|text| Given { text, output: None })
        .collect();
    (!outputs.is_empty()).then_some(Row {
        speed,
        scale: None,
        outputs,
    })
}

/// Lines of which each second figure is an engine speed, parted into points: `1000 120 2000 170`.
fn parted_pairs(lines: Vec<Bare>) -> Vec<Bare> {
    let are_pairs = |line: &Bare| {
        let speeds: Option<Vec<f64>> = {
            let cells = line.cells.iter().step_by(2);
            cells.map(|cell| rpm(cell.as_ref())).collect()
        };
        let is_even = line.cells.len().is_multiple_of(2);
        speeds.is_some_and(|speeds| {
            let rises = speeds.windows(2).all(|pair| pair[0] < pair[1]);
            is_even && speeds.len() > 1 && speeds[0] >= 100.0 && rises
        })
    };
    if !lines
        .iter()
        .all(|line| line.cells.len() == 2 || are_pairs(line))
    {
        return lines;
    }
    let points = lines.iter().flat_map(|line| {
        line.cells.chunks(2).map(|pair| Bare {
            cells: pair.to_vec(),
            joined: None,
            line: line.line.clone(),
        })
    });
    points.collect()
}

fn rpm(cell: Option<&String>) -> Option<f64> {
    engine_rpm(cell?, Scale::PerMinute)
}

/// The number of cells that most lines have, the larger of two.
fn commonest_width(lines: &[Bare]) -> usize {
    let mut widths: Vec<usize> = lines.iter().map(|line| line.cells.len()).collect();
    widths.sort_unstable();
    let runs = widths.chunk_by(|a, b| a == b);
    let commonest = runs.max_by_key(|run| run.len());
    commonest
        .and_then(|run| run.first().copied())
        .unwrap_or_default()
}

/// The numbers of a column, as engine speeds.
fn numbers_of(lines: &[Bare], at: usize) -> Vec<f64> {
    let cells = || {
        lines
            .iter()
            .filter_map(|line| line.cells.get(at)?.as_deref())
    };
    let scale = minute_scale(cells());
    cells().filter_map(|text| engine_rpm(text, scale)).collect()
}

fn runs_one_way(column: &[f64]) -> bool {
    column.windows(2).all(|pair| pair[0] < pair[1])
        || column.windows(2).all(|pair| pair[0] > pair[1])
}

/// Whether the first column counts the rows, and the second goes up beyond what could be an output.
fn are_numbered(lines: &[Bare], width: usize) -> bool {
    const LEAST_RPM: f64 = 1000.0;
    let (first, second) = (numbers_of(lines, 0), numbers_of(lines, 1));
    let counts = first
        .first()
        .is_some_and(|begin| (0.0..=1.0).contains(begin))
        && first
            .windows(2)
            .all(|pair| (pair[1] - pair[0] - 1.0).abs() < 1e-9);
    let is_fast = second.iter().any(|rpm| *rpm >= LEAST_RPM);
    width > 2 && lines.len() > 1 && counts && is_fast && runs_one_way(&second)
}

/// The column of engine speeds: the first, unless another alone runs one way and goes further up.
fn speed_column(lines: &[Bare], width: usize) -> usize {
    let column = |at: usize| numbers_of(lines, at);
    let most = |column: &[f64]| column.iter().copied().fold(0.0, f64::max);
    let first = column(0);
    if lines.len() < 2 || runs_one_way(&first) {
        return 0;
    }
    let others = (1..width).map(|at| (at, column(at)));
    let mut fitting = others.filter(|(_, other)| runs_one_way(other) && most(other) > most(&first));
    fitting.next().map_or(0, |(at, _)| at)
}
