//! The figures for a spreadsheet: CSV after RFC 4180, one row for each gear of each set.
//!
//! Numbers stand in full precision, without grouping and without exponents. A typed text (a name, a
//! label) is no formula to any spreadsheet.

use crate::analysis::ProjectResults;
use crate::chart::MarkedSpeeds;
use crate::chart::table::{COLUMNS, ColumnDefinition, Figure, SetGear, Value};
use crate::formula::harmless;
use crate::project::Project;
use crate::units::{SpeedUnit, plain_number};

/// How numbers are spelled, and with it what stands between two cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum DecimalMark {
    /// `3.78`, cells parted by commas.
    #[default]
    Point,
    /// `3,78`, cells parted by semicolons.
    Comma,
}

impl DecimalMark {
    fn separator(self) -> char {
        match self {
            Self::Point => ',',
            Self::Comma => ';',
        }
    }

    fn number(self, number: f64) -> String {
        let digits = plain_number(number);
        match self {
            Self::Point => digits,
            Self::Comma => digits.replace('.', ","),
        }
    }
}

/// The figures of every set at the wanted speeds, a header with units first; lines end in CR LF.
pub fn table(
    project: &Project,
    results: &ProjectResults,
    marked: &MarkedSpeeds,
    mark: DecimalMark,
) -> String {
    table_with(project, results, marked, mark, COLUMNS)
}

/// The same with these columns.
pub(super) fn table_with(
    project: &Project,
    results: &ProjectResults,
    marked: &MarkedSpeeds,
    mark: DecimalMark,
    definitions: &[&ColumnDefinition],
) -> String {
    let mut columns: Vec<(&str, Figure)> = Vec::new();
    for definition in definitions {
        let figures = definition.figures(marked).into_iter();
        columns.extend(figures.map(|figure| (definition.csv_title, figure)));
    }
    let spelling = Spelling {
        units: project.units,
        mark,
    };
    let mut titles = vec!["set".to_owned(), "name".to_owned()];
    titles.extend(columns.iter().map(|(title, f)| spelling.title(title, f)));
    let mut lines = vec![line(&titles, mark)];
    for (number, (candidate, set)) in (1..).zip(project.sets.iter().zip(&results.sets)) {
        let name = harmless(candidate.set.name.as_str());
        for gear in SetGear::all(set) {
            let mut cells = vec![format!("{number}"), name.clone()];
            cells.extend(columns.iter().map(|(_, f)| spelling.cell(f, &gear)));
            lines.push(line(&cells, mark));
        }
    }
    lines.concat()
}

/// How titles and numbers are spelled.
struct Spelling {
    units: SpeedUnit,
    mark: DecimalMark,
}

impl Spelling {
    /// A heading with the speed that it stands for, and the unit in brackets: `at 90 km/h (rpm)`.
    fn title(&self, title: &str, figure: &Figure) -> String {
        let mut heading = title.to_owned();
        if let Some(mark) = figure.mark() {
            let speed = self.mark.number(mark.in_unit(self.units));
            heading = format!("{heading} {speed} {}", mark.unit(self.units));
        }
        match figure.unit(self.units) {
            "" => heading,
            unit => format!("{heading} ({unit})"),
        }
    }

    /// What a gear has of a figure, in the unit of its heading; empty where it has none.
    fn cell(&self, figure: &Figure, gear: &SetGear<'_>) -> String {
        match figure.value(gear) {
            Value::Text(text) => harmless(text),
            Value::Number(number) => {
                let in_unit = |n| figure.measure().map_or(n, |m| m.in_unit(n, self.units));
                number
                    .map(|n| self.mark.number(in_unit(n)))
                    .unwrap_or_default()
            }
        }
    }
}

/// One line: a cell that holds a separator, a quotation mark or a line break stands in quotation
/// marks, and its own are doubled.
fn line(cells: &[String], mark: DecimalMark) -> String {
    let separator = mark.separator();
    let quoted = |cell: &String| {
        if cell.contains([separator, '"', '\n', '\r']) {
            format!("\"{}\"", cell.replace('"', "\"\""))
        } else {
            cell.clone()
        }
    };
    let cells: Vec<String> = cells.iter().map(quoted).collect();
    cells.join(&separator.to_string()) + "\r\n"
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::formula::OPENS_FORMULA;

    #[test]
    fn a_cell_with_the_separator_stands_in_quotation_marks() {
        let cells = ["a;b".to_owned(), "c,d".to_owned(), "e\"f".to_owned()];
        assert_eq!(
            line(&cells, DecimalMark::Point),
            "a;b,\"c,d\",\"e\"\"f\"\r\n"
        );
        assert_eq!(
            line(&cells, DecimalMark::Comma),
            "\"a;b\";c,d;\"e\"\"f\"\r\n"
        );
    }

    #[test]
    fn no_reader_finds_a_formula_whichever_mark_parts_its_cells() {
        for mark in [DecimalMark::Point, DecimalMark::Comma] {
            for name in ["a;=1", "a,=1", "a\";=1", "a\",=1", "=1", ";\"@A1", "a,;+1"] {
                let line = line(&["1".to_owned(), harmless(name)], mark);
                for separator in [',', ';', '\t'] {
                    let cells = line.split([separator, '"']);
                    let mut formulas = cells.filter(|cell| cell.starts_with(OPENS_FORMULA));
                    assert_eq!(formulas.next(), None, "{line} at {separator}");
                }
            }
        }
    }
}
