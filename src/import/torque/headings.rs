//! Headings: what the columns beneath hold, and the rows that are read by them.

use super::figures::{Element, Figure};
use super::numbers::joined_thousands;
use super::rows::{Given, Row};
use super::tokens::Token;
use super::words::{Role, Scale};

/// A column of a table.
#[derive(Debug, Clone, PartialEq)]
struct Column {
    role: Role,
    /// As it was written, for what is said of a column that is left out.
    name: String,
}

/// What the columns of a table hold.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Heading {
    columns: Vec<Column>,
    /// Whether the cells of the heading are parted by more than blanks.
    by_cells: bool,
}

/// A row, and the names of the columns that it does not take.
pub(super) struct RowFound {
    pub(super) row: Row,
    pub(super) others: Vec<String>,
    /// Figures that no column takes.
    pub(super) left_out: Vec<String>,
}

impl Heading {
    /// The heading that a line without figures is, where it names two columns of a curve, or one and
    /// something that could be the other.
    pub(super) fn of(tokens: &[Token]) -> Option<Self> {
        let by_cells = tokens.contains(&Token::Break);
        let cells = tokens.split(|token| *token == Token::Break);
        let columns: Vec<Column> = if by_cells {
            cells.map(column_of_cell).collect()
        } else {
            columns(tokens)
        };
        let known = columns.iter().filter(|c| c.role != Role::Other).count();
        let has_more = by_cells && columns.len() > 1;
        let has_speed = columns.iter().any(|c| matches!(c.role, Role::Speed(_)));
        let columns = (1..).zip(columns).map(|(place, column)| Column {
            name: if column.name.is_empty() {
                format!("column {place}")
            } else {
                column.name
            },
            ..column
        });
        let heading = Self {
            columns: columns.collect(),
            by_cells,
        };
        let is_one = (known > 1 && (by_cells || has_speed)) || (known == 1 && has_more);
        is_one.then(|| heading.completed())
    }

    /// With the first unknown column as the engine speed, or as the output, where that is missing.
    fn completed(mut self) -> Self {
        let has_speed = self
            .columns
            .iter()
            .any(|c| matches!(c.role, Role::Speed(_)));
        let has_output = self
            .columns
            .iter()
            .any(|c| matches!(c.role, Role::Output(_)));
        let missing = match (has_speed, has_output) {
            (false, true) => Role::Speed(None),
            (true, false) => Role::Output(None),
            (true, true) | (false, false) => return self,
        };
        let unknown = self.columns.iter_mut().find(|c| c.role == Role::Other);
        if let Some(column) = unknown {
            column.role = missing;
        }
        self
    }

    /// With the units of a second line of headings.
    pub(super) fn with_units_of(&self, second: &Self) -> Option<Self> {
        let columns = self.columns.iter().zip(&second.columns);
        let columns: Option<Vec<Column>> = columns.map(|(a, b)| a.with_unit_of(b)).collect();
        let columns = columns.filter(|_| self.columns.len() == second.columns.len())?;
        let is_new = columns != self.columns;
        is_new.then_some(Self {
            columns,
            by_cells: self.by_cells,
        })
    }

    /// Whether its cells are parted by commas where it stands in a line that nothing else parts.
    pub(super) fn is_by_cells(&self) -> bool {
        self.by_cells
    }

    fn row_of_cells(&self, elements: &[Element]) -> Option<RowFound> {
        let cells = elements.split(|element| *element == Element::Break);
        let mut cells: Vec<Vec<&Figure>> = cells
            .map(|cell| cell.iter().filter_map(Element::figure).collect())
            .collect();
        let beyond = cells.split_off(self.columns.len().min(cells.len()));
        let columns = self.columns.iter().zip(cells);
        let pairs = columns.flat_map(|(column, cell)| {
            let figures = without_gap(&cell).into_iter();
            figures.enumerate().map(move |(at, figure)| {
                // A further figure of a cell is what its own unit says.
                let role = if at == 0 { column.role } else { Role::Other };
                (figure.role.unwrap_or(role), column, figure)
            })
        });
        let mut found = row(pairs)?;
        let beyond = beyond.into_iter().flatten();
        found
            .left_out
            .extend(beyond.map(|figure| figure.text.clone()));
        Some(found)
    }

    /// The row that a line is.
    pub(super) fn row(&self, elements: &[Element]) -> Option<RowFound> {
        let has_breaks = elements.contains(&Element::Break);
        if self.by_cells && has_breaks {
            return self.row_of_cells(elements);
        }
        if matches!(elements.first(), Some(Element::Word)) {
            return None;
        }
        let mut figures: Vec<Figure> = elements
            .iter()
            .filter_map(Element::figure)
            .cloned()
            .collect();
        let known: Vec<&Column> = self
            .columns
            .iter()
            .filter(|c| c.role != Role::Other)
            .collect();
        let all: Vec<&Column> = self.columns.iter().collect();
        let fits = |count: usize| count == all.len() || count == known.len();
        if !fits(figures.len()) && fits(figures.len().saturating_sub(1)) {
            join_speed(&mut figures)?;
        }
        let columns = if figures.len() == known.len() {
            known
        } else if figures.len() == all.len() {
            all
        } else {
            return None;
        };
        let pairs = columns.into_iter().zip(figures);
        row(pairs.map(|(column, figure)| (figure.role.unwrap_or(column.role), column, figure)))
    }
}

/// The row of columns with their figures.
fn row<'a>(pairs: impl Iterator<Item = (Role, &'a Column, Figure)>) -> Option<RowFound> {
    let (mut speed, mut outputs, mut others) = (None, Vec::new(), Vec::new());
    let mut left_out = Vec::new();
    for (role, column, figure) in pairs {
        match role {
            Role::Speed(scale) if speed.is_none() => {
                let of_column = match column.role {
                    Role::Speed(scale) => scale,
                    Role::Output(_) | Role::Other => None,
                };
                speed = Some((figure.text, of_column.or(scale)));
            }
            Role::Output(output) => outputs.push(Given {
                text: figure.text,
                output,
            }),
            Role::Other if column.role == Role::Other => others.push(column.name.clone()),
            Role::Speed(_) | Role::Other => left_out.push(figure.text),
        }
    }
    let (speed, scale) = speed?;
    let row = Row {
        speed,
        scale,
        outputs,
    };
    (!row.outputs.is_empty()).then_some(RowFound {
        row,
        others,
        left_out,
    })
}

/// The figures of a cell, of which a blank may part the thousands.
fn without_gap(cell: &[&Figure]) -> Vec<Figure> {
    if let [a, b, rest @ ..] = cell
        && let Some(text) = joined_thousands(&a.text, &b.text)
    {
        let role = b.role;
        let joined = Figure { text, role };
        return std::iter::once(joined)
            .chain(rest.iter().copied().cloned())
            .collect();
    }
    cell.iter().copied().cloned().collect()
}

/// Makes one engine speed of the first two figures, and says what they were.
pub(super) fn join_speed(figures: &mut Vec<Figure>) -> Option<String> {
    let [first, second, ..] = &figures[..] else {
        return None;
    };
    let text = joined_thousands(&first.text, &second.text)?;
    let said = format!("\"{} {}\" was read as {text} rpm.", first.text, second.text);
    figures.remove(0);
    figures[0] = Figure { text, role: None };
    Some(said)
}

impl Column {
    fn with_unit_of(&self, second: &Self) -> Option<Self> {
        let role = match (self.role, second.role) {
            (Role::Other, role)
            | (role, Role::Other)
            | (Role::Output(None), role @ Role::Output(_))
            | (role @ Role::Output(_), Role::Output(None)) => role,
            (Role::Speed(a), Role::Speed(b)) => Role::Speed(a.or(b)),
            (Role::Output(Some(a)), Role::Output(Some(b))) if a.is_as(b) => {
                Role::Output(Some(if a.unit().is_some() { a } else { b }))
            }
            _ => return None,
        };
        Some(Self {
            role,
            name: self.name.clone(),
        })
    }
}

/// The one column of a cell: the first that is known.
fn column_of_cell(cell: &[Token]) -> Column {
    let mut columns = columns(cell);
    let name = columns
        .iter()
        .map(|c| c.name.as_str())
        .collect::<Vec<_>>()
        .join(" ");
    let known = columns.iter().position(|c| c.role != Role::Other);
    let role = known.map_or(Role::Other, |at| columns.swap_remove(at).role);
    Column { role, name }
}

/// The columns that words and units in a row name.
fn columns(tokens: &[Token]) -> Vec<Column> {
    let mut columns: Vec<Column> = Vec::new();
    let mut is_thousand = false;
    let mut is_behind_word = false;
    for token in tokens {
        match token {
            Token::Unit(role) => {
                let role = if is_thousand {
                    in_thousands(*role)
                } else {
                    *role
                };
                with_unit(&mut columns, role);
                is_thousand = false;
            }
            Token::Quantity(role) => match columns.last_mut() {
                // "Nm torque", and "engine speed".
                Some(last) if says_the_same(last.role, *role) => {}
                _ => columns.push(column(*role, "")),
            },
            Token::Thousand => match columns.last_mut() {
                Some(last) if matches!(last.role, Role::Speed(_)) => {
                    last.role = in_thousands(last.role);
                }
                _ => is_thousand = true,
            },
            Token::Word(word) => match columns.last_mut() {
                Some(last) if is_behind_word && last.role == Role::Other => {
                    last.name = format!("{} {word}", last.name);
                }
                _ => columns.push(column(Role::Other, word)),
            },
            Token::Number(_)
            | Token::At
            | Token::Pair
            | Token::Dash
            | Token::Stroke
            | Token::Break => {}
        }
        is_behind_word = matches!(token, Token::Word(_));
    }
    columns
}

fn column(role: Role, name: &str) -> Column {
    Column {
        role,
        name: name.to_owned(),
    }
}

fn in_thousands(role: Role) -> Role {
    match role {
        Role::Speed(_) => Role::Speed(Some(Scale::ThousandsPerMinute)),
        Role::Output(_) | Role::Other => role,
    }
}

/// Whether a word names again what the column before it has a unit of.
fn says_the_same(column: Role, word: Role) -> bool {
    match (column, word) {
        (Role::Speed(Some(_)), Role::Speed(_)) => true,
        (Role::Output(Some(a)), Role::Output(Some(b))) => a.unit().is_some() && a.is_as(b),
        _ => false,
    }
}

/// Gives a unit to the column before it that waits for it, perhaps behind other words, or makes a
/// column of its own.
fn with_unit(columns: &mut Vec<Column>, unit: Role) {
    let behind = columns
        .iter()
        .rposition(|column| column.role != Role::Other);
    let taken = behind.is_some_and(|at| {
        let role = &mut columns[at].role;
        let joined = match (*role, unit) {
            (Role::Speed(None), Role::Speed(_)) => Some(unit),
            // "speed (km/h)" is a road speed.
            (Role::Speed(None), Role::Other) => Some(Role::Other),
            (Role::Output(Some(a)), Role::Output(Some(b))) if a.unit().is_none() && a.is_as(b) => {
                Some(unit)
            }
            _ => None,
        };
        if let Some(joined) = joined {
            *role = joined;
            columns.truncate(at + 1);
        }
        joined.is_some()
    });
    if !taken {
        columns.push(column(unit, ""));
    }
}
