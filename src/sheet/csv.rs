//! The figures for a spreadsheet: CSV after RFC 4180, one row for each gear of each set.
//!
//! Numbers stand in full precision, without grouping and without exponents. A spreadsheet reckons with
//! a typed text (a name, a label) that opens with a sign such as `=`, and quotation marks alone do not
//! stop it; nor is it sure where a cell begins, for a spreadsheet of another country parts cells at the
//! other mark. So a sign gets an apostrophe before it wherever a cell could begin.

use crate::chart::MarkedSpeeds;
use crate::gearing::{GearResult, SetResults, is_unseen};
use crate::project::{Project, ProjectResults};
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
    let mut lines = vec![line(&header(project.units, marked, mark), mark)];
    for (number, (candidate, set)) in (1..).zip(project.sets.iter().zip(&results.sets)) {
        let name = harmless(candidate.set.name.as_str());
        for result in set.gears.iter().chain(&set.reverse) {
            let mut cells = vec![format!("{number}"), name.clone()];
            cells.extend(row(project.units, set, result, marked, mark));
            lines.push(line(&cells, mark));
        }
    }
    lines.concat()
}

fn header(units: SpeedUnit, marked: &MarkedSpeeds, mark: DecimalMark) -> Vec<String> {
    let unit = units.sign();
    let fixed = [
        "set",
        "name",
        "gear",
        "ratio",
        "final drive",
        "overall ratio",
        "step",
        "shift at (rpm)",
        "falls to (rpm)",
        "drop (rpm)",
        "drop (%)",
    ];
    let mut titles: Vec<String> = fixed.map(str::to_owned).to_vec();
    titles.push(format!("per 1000 rpm ({unit})"));
    for rpm in &marked.engine_speeds {
        titles.push(format!("at {} rpm ({unit})", mark.number(rpm.rpm())));
    }
    titles.push(format!("at redline ({unit})"));
    for speed in &marked.road_speeds {
        let speed = mark.number(units.from_kmh(speed.kmh()));
        titles.push(format!("at {speed} {unit} (rpm)"));
    }
    titles
}

/// The cells of one gear from its label on.
fn row(
    units: SpeedUnit,
    set: &SetResults,
    result: &GearResult,
    marked: &MarkedSpeeds,
    mark: DecimalMark,
) -> Vec<String> {
    let gear = &result.gear;
    let up = result.upshift;
    let mut figures = vec![
        Some(gear.ratio),
        Some(gear.final_drive),
        Some(gear.overall_ratio),
        result.step,
        up.map(|up| up.shift_rpm),
        up.map(|up| up.rpm_after_shift),
        up.map(|up| up.rpm_drop()),
        up.map(|up| up.drop_share() * 100.0),
        Some(units.from_kmh(result.speed_per_1000_rpm_kmh)),
    ];
    for rpm in &marked.engine_speeds {
        let speed_kmh = set.drivetrain.speed_kmh(gear, rpm.rpm());
        figures.push(Some(units.from_kmh(speed_kmh)));
    }
    figures.push(Some(units.from_kmh(result.redline_speed_kmh)));
    for speed in &marked.road_speeds {
        figures.push(Some(set.drivetrain.engine_rpm(gear, speed.kmh())));
    }
    let spelled = |figure: Option<f64>| figure.map(|n| mark.number(n)).unwrap_or_default();
    let mut cells = vec![harmless(&gear.label)];
    cells.extend(figures.into_iter().map(spelled));
    cells
}

/// The signs that open a formula, as typed and in full width.
///
/// # Source
/// OWASP, CSV Injection: the characters to be wary of at the beginning of a cell. Its tab and line
/// breaks are among [`PARTS_CELLS`], so that a sign behind them is met as well.
const OPENS_FORMULA: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// What may part one cell from another, in this file or as another spreadsheet reads it; behind a
/// quotation mark a cell may begin as well.
const PARTS_CELLS: [char; 6] = [',', ';', '\t', '\r', '\n', '"'];

/// A typed text in which no spreadsheet finds a formula, at whichever mark it parts cells.
fn harmless(text: &str) -> String {
    let mut harmless = String::with_capacity(text.len());
    let mut may_begin = true;
    for c in text.chars() {
        if may_begin && OPENS_FORMULA.contains(&c) {
            harmless.push('\'');
        }
        harmless.push(c);
        // Some spreadsheets drop blanks at the beginning of a cell.
        let is_nothing = c.is_whitespace() || is_unseen(c);
        may_begin = PARTS_CELLS.contains(&c) || (may_begin && is_nothing);
    }
    harmless
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
    fn a_name_that_looks_like_a_formula_is_text() {
        for name in ["=1+1", "+1", "-1", "@SUM(A1)"] {
            assert_eq!(harmless(name), format!("'{name}"));
        }
        for name in ["5-speed", "a - b", "4.06, 5 gears", "a@b; c = d", "1:2"] {
            assert_eq!(harmless(name), name);
        }
    }

    #[test]
    fn a_formula_behind_anything_that_may_part_cells_is_text() {
        let rows = [
            ("a,=1+1", "a,'=1+1"),
            ("a;=1+1", "a;'=1+1"),
            ("a; \t=1", "a; \t'=1"),
            ("a;\"=1\"", "a;\"'=1\""),
            ("\"=1", "\"'=1"),
            ("a\t+1", "a\t'+1"),
            ("a\r@A1", "a\r'@A1"),
            ("a\n-1", "a\n'-1"),
            (" =1", " '=1"),
            ("\u{feff}=1", "\u{feff}'=1"),
            ("＝1;＠A", "'＝1;'＠A"),
            ("=1;=2,=3", "'=1;'=2,'=3"),
            ("=-1", "'=-1"),
        ];
        for (name, expected) in rows {
            assert_eq!(harmless(name), expected);
        }
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
