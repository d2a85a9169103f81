//! Tables that run across: a line of engine speeds, and a line for what is given at them.

use super::figures::Element;
use super::rows::{Given, Row};
use super::words::Role;

/// A line that says what it holds, with its cells.
#[derive(Debug, Clone)]
pub(super) struct Across {
    role: Role,
    cells: Vec<Option<String>>,
    /// As it was written.
    pub(super) line: String,
}

impl Across {
    /// The line of a table that runs across, where a line that begins with a label is one.
    pub(super) fn of(elements: &[Element], line: &str) -> Option<Self> {
        let begin = elements.iter().position(|e| e.figure().is_some())?;
        let (before, mut cells) = elements.split_at(begin);
        let mut role = None;
        for element in before {
            match (element, role) {
                (Element::Label(label), None) => role = Some(*label),
                // "Torque (Nm)": the unit says more.
                (Element::Label(label @ (Role::Output(_) | Role::Speed(_))), Some(_)) => {
                    role = Some(*label);
                }
                _ => {}
            }
        }
        let first = cells.first().and_then(Element::figure)?;
        let role = role.filter(|_| first.role.is_none()).or(first.role)?;
        // Cells between the label and the first figure are empty.
        let breaks = before.iter().filter(|e| **e == Element::Break).count();
        let mut found = vec![None; breaks.saturating_sub(1)];
        found.push(Some(first.text.clone()));
        cells = &cells[1..];
        let has_breaks = cells.contains(&Element::Break);
        for element in cells {
            match element {
                Element::Figure(figure) if figure.role.is_none() => match found.last_mut() {
                    Some(cell @ None) => *cell = Some(figure.text.clone()),
                    _ if has_breaks => return None,
                    _ => found.push(Some(figure.text.clone())),
                },
                Element::Break => found.push(None),
                _ => return None,
            }
        }
        (role != Role::Other && found.len() > 1).then(|| Self {
            role,
            cells: found,
            line: line.to_owned(),
        })
    }
}

/// The rows that such lines give together, and the lines that belong to none.
///
/// An output belongs to the engine speeds above it, or to the first beneath where there are none above.
pub(super) fn rows(lines: &[Across]) -> (Vec<Row>, Vec<String>) {
    let is_speed = |line: &Across| matches!(line.role, Role::Speed(_));
    let first = lines.iter().position(is_speed);
    let mut rows: Vec<Row> = Vec::new();
    let mut unread = Vec::new();
    let mut begin = 0;
    let mut of = first;
    for (at, line) in lines.iter().enumerate() {
        if is_speed(line) {
            if first != Some(at) {
                begin = rows.len();
                of = Some(at);
            }
            continue;
        }
        let Some(speeds) = of
            .map(|of| &lines[of])
            .filter(|s| s.cells.len() == line.cells.len())
        else {
            unread.push(line.line.clone());
            continue;
        };
        if rows.len() == begin {
            rows.extend(speeds.rows());
        }
        for (row, cell) in rows[begin..].iter_mut().zip(&line.cells) {
            let given = cell.as_ref().map(|text| line.given(text));
            row.outputs.extend(given);
        }
    }
    if rows.is_empty() {
        unread = lines.iter().map(|line| line.line.clone()).collect();
    }
    let without_output = rows.iter().filter(|row| row.outputs.is_empty());
    unread.extend(without_output.map(|row| row.speed.clone()));
    let without_speed = rows.iter().filter(|row| row.speed.is_empty());
    unread.extend(without_speed.flat_map(|row| row.outputs.iter().map(|given| given.text.clone())));
    unread.retain(|text| !text.is_empty());
    rows.retain(|row| !row.outputs.is_empty() && !row.speed.is_empty());
    (rows, unread)
}

impl Across {
    /// A row for each engine speed, with nothing given at it yet.
    fn rows(&self) -> impl Iterator<Item = Row> {
        let scale = match self.role {
            Role::Speed(scale) => scale,
            Role::Output(_) | Role::Other => None,
        };
        self.cells.iter().map(move |cell| Row {
            speed: cell.clone().unwrap_or_default(),
            scale,
            outputs: Vec::new(),
        })
    }

    fn given(&self, text: &str) -> Given {
        let output = match self.role {
            Role::Output(output) => output,
            Role::Speed(_) | Role::Other => None,
        };
        Given {
            text: text.to_owned(),
            output,
        }
    }
}
