//! The figures for a spreadsheet: CSV after RFC 4180, one row for each gear of each set.
//!
//! What was typed stands to its last digit, what was reckoned to fifteen digits, without grouping and
//! without exponents: a binary number holds no more, and the rest is dust (14.392699999999998). Behind
//! the figures stands what gives the set back. A typed text (a name, a
//! label) is no formula to any spreadsheet.

use crate::analysis::ProjectResults;
use crate::chart::MarkedSpeeds;
use crate::chart::table::{
    COLUMNS, ColumnDefinition, Figure, Mark, Measure, RowGear, SetGear, TYPED_COLUMNS, Typed,
    Value, spelled,
};
use crate::formula::harmless;
use crate::project::Project;
use crate::units::{SpeedUnit, plain_number, reckoned_number, shortest_number};

pub use super::csv_of_figures::figures;

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

    /// Numbers that are spelled with a point, with this mark.
    pub(super) fn spelled(self, digits: &str) -> String {
        match self {
            Self::Point => digits.to_owned(),
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
    let known = definitions.iter().filter(|d| d.is_known(&project.engine));
    for definition in known {
        let figures = definition.figures(marked).into_iter();
        columns.extend(figures.map(|figure| (definition.csv_title, figure)));
    }
    let spelling = Spelling {
        units: project.units,
        mark,
    };
    let mut titles = vec!["set".to_owned(), "name".to_owned()];
    titles.extend(columns.iter().map(|(title, f)| spelling.title(title, f)));
    titles.extend(TYPED_COLUMNS.iter().map(|c| with_unit(c.title, c.unit)));
    let mut lines = vec![line(&titles, mark)];
    for (place, candidate) in project.sets.iter().enumerate() {
        let name = harmless(candidate.set.name.as_str());
        for gear in RowGear::all(project, candidate, results, place) {
            let mut cells = vec![format!("{}", place + 1), name.clone()];
            cells.extend(columns.iter().map(|(_, f)| spelling.cell(f, &gear.figures)));
            let typed = TYPED_COLUMNS
                .iter()
                .map(|column| (column.cell)(&gear.typed));
            cells.extend(typed.map(|typed| spelling.typed_cell(&typed)));
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
        let unit = figure.unit(self.units);
        match figure.mark() {
            Some(mark) => {
                let speed = self.mark.spelled(&self.marked(mark));
                with_unit(&format!("{title} {speed} {}", mark.unit(self.units)), unit)
            }
            None => with_unit(title, unit),
        }
    }

    /// The speed that was marked, as it was typed; from miles it reads back to the last binary digit.
    fn marked(&self, mark: Mark) -> String {
        let in_unit = mark.in_unit(self.units);
        match (mark, self.units) {
            (Mark::EngineSpeed(_), _) | (_, SpeedUnit::Kmh) => plain_number(in_unit),
            (Mark::RoadSpeed(speed), SpeedUnit::Mph) => shortest_number(in_unit, |number| {
                let share = SpeedUnit::Mph.to_kmh(number) / speed.kmh() - 1.0;
                share.abs() <= f64::EPSILON
            }),
        }
    }

    /// What a gear has of a figure, in the unit of its heading; empty where it has none.
    fn cell(&self, figure: &Figure, gear: &SetGear<'_>) -> String {
        let number = match figure.value(gear) {
            Value::Text(text) => return harmless(text),
            Value::Number(None) => return String::new(),
            Value::Number(Some(number)) => number,
        };
        self.mark.spelled(&match (figure, figure.measure()) {
            (Figure::TypedRatio, _) | (_, None | Some(Measure::TypedEngineSpeed)) => {
                plain_number(number)
            }
            (_, Some(measure)) => reckoned_number(measure.in_unit(number, self.units)),
        })
    }

    /// Something that was typed, to the last digit.
    fn typed_cell(&self, typed: &Typed<'_>) -> String {
        match typed {
            Typed::Nothing => String::new(),
            Typed::Text(text) => harmless(text),
            Typed::Number(number) => self.mark.spelled(&plain_number(*number)),
            Typed::Ratio(ratio) => self.mark.spelled(&ratio.to_string()),
            Typed::FinalDrives(drives) => self.mark.spelled(&spelled(drives)),
        }
    }
}

/// A heading with its unit, where it has one.
/// A title with its unit in brackets, where it has one.
pub(super) fn with_unit(title: &str, unit: &str) -> String {
    match unit {
        "" => title.to_owned(),
        unit => format!("{title} ({unit})"),
    }
}

/// One line: a cell that holds a separator, a quotation mark or a line break stands in quotation
/// marks, and its own are doubled.
pub(super) fn line(cells: &[String], mark: DecimalMark) -> String {
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
