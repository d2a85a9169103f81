//! The tooth pairs that were found, as text for a reader and as CSV for a spreadsheet.

use super::csv::{DecimalMark, line, with_unit};
use super::grid::{Grid, GridCell, Heading};
use super::text::aligned_grid;
use crate::finders::{CentreFit, FoundPair, PairWish, PressureAngle};
use crate::units::{decimals_text, plain_number, reckoned_number, round_to, signed};

/// What each column is called, with its unit.
const COLUMNS: [(&str, &str); 8] = [
    ("driven", ""),
    ("driving", ""),
    ("ratio", ""),
    ("error", "%"),
    ("hunting", ""),
    ("sum", ""),
    ("x1 + x2", ""),
    ("can be cut", ""),
];

/// What the columns mean, and who decides.
const NOTES: &str = "\
hunting: yes, every tooth meets every other; partly, some of them; no, always the same ones
A gear maker decides what can be cut. Both gears of a pair change together, and all pairs between two
shafts share one centre distance.
";

/// The pairs beneath one another, and the caution that goes with them.
pub fn text(wish: &PairWish, found: &[FoundPair]) -> String {
    let head = head(wish, found.len());
    if found.is_empty() {
        return head;
    }
    let count = shown_columns(found);
    let headings = COLUMNS.iter().take(count).map(|(title, unit)| Heading {
        title: (*title).to_owned(),
        unit,
        is_number: !["hunting", "can be cut"].contains(title),
        is_difference: false,
    });
    let grid = Grid {
        headings: headings.collect(),
        rows: found.iter().map(|pair| row(pair, count)).collect(),
    };
    format!("{head}\n{}\n{NOTES}", aligned_grid(&grid))
}

/// One row for each pair, a header first; lines end in CR LF.
pub fn csv(found: &[FoundPair], mark: DecimalMark) -> String {
    let titles = COLUMNS.map(|(title, unit)| with_unit(title, unit));
    let number = |number: f64| mark.spelled(&reckoned_number(number));
    let rows = found.iter().map(|pair| {
        let cells = [
            pair.teeth.driven().to_string(),
            pair.teeth.driving().to_string(),
            number(pair.teeth.ratio()),
            number(pair.error_percent),
            pair.hunting.word().to_owned(),
            pair.sum().to_string(),
            pair.profile_shift_sum().map_or_else(String::new, number),
            if pair.can_be_cut() { "yes" } else { "no" }.to_owned(),
        ];
        line(&cells, mark)
    });
    [line(&titles, mark)].into_iter().chain(rows).collect()
}

/// What was wished, and how many pairs there are.
fn head(wish: &PairWish, count: usize) -> String {
    let (ratio, percent) = (&wish.ratio, plain_number(wish.within.percent()));
    let teeth = wish.teeth;
    let sum = wish.sum.map(|sum| format!(", {} together", sum.teeth()));
    let centre = wish.centre.map(|shafts| {
        let helix = match shafts.helix.degrees() {
            0.0 => String::new(),
            degrees => format!(", helix angle {}°", plain_number(degrees)),
        };
        let pressure = match shafts.pressure {
            PressureAngle::USUAL => String::new(),
            other => format!(", pressure angle {}°", plain_number(other.degrees())),
        };
        let distance = plain_number(shafts.distance.mm());
        // That of a pitch has digits without end.
        let module = plain_number(round_to(shafts.module.mm(), 1e-4));
        format!("; centre distance {distance} mm, module {module} mm{helix}{pressure}")
    });
    let found = match count {
        0 => "no pair".to_owned(),
        1 => "one pair".to_owned(),
        count => format!("{count} pairs"),
    };
    format!(
        "{found} within {percent} % of {ratio}; {} to {} teeth{}{}\n",
        teeth.least(),
        teeth.most(),
        sum.unwrap_or_default(),
        centre.unwrap_or_default(),
    )
}

/// Without fixed shafts nothing is said of profile shifts.
fn shown_columns(found: &[FoundPair]) -> usize {
    let has_fit = found.iter().any(|pair| pair.fit.is_some());
    if has_fit {
        COLUMNS.len()
    } else {
        COLUMNS.len() - 2
    }
}

fn row(pair: &FoundPair, columns: usize) -> Vec<GridCell> {
    let shift = pair.profile_shift_sum().map(|sum| signed(sum, 3));
    let cells = [
        pair.teeth.driven().to_string(),
        pair.teeth.driving().to_string(),
        decimals_text(pair.teeth.ratio(), 4),
        signed(pair.error_percent, 3),
        pair.hunting.word().to_owned(),
        pair.sum().to_string(),
        shift.unwrap_or_default(),
        pair.fit.map_or("", CentreFit::verdict).to_owned(),
    ];
    let cells = cells.into_iter().take(columns);
    let cell = |text| GridCell {
        text,
        is_bracketed: false,
    };
    cells.map(cell).collect()
}
