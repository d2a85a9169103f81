//! The lines of a text one after the other: headings, rows, points, and what does not read.

use super::across::{self, Across};
use super::bare::{self, Bare};
use super::figures::{Element, elements, is_label_first};
use super::grouped;
use super::headings::Heading;
use super::lines::{has_hard_breaks, lines, with_breaks};
use super::remarks::{LeftOut, Remarks};
use super::rows::Row;
use super::tokens::{Token, tokens};
use super::words::{Output, Role};

/// All rows of `text`, as written; what is left out is noted.
pub(super) fn rows(text: &str, remarks: &mut Remarks) -> Vec<Row> {
    let mut reader = Reader {
        remarks,
        heading: None,
        is_heading_fresh: false,
        commas_part: false,
        unit: None,
        rows: Vec::new(),
        bare: Vec::new(),
        across: Vec::new(),
    };
    for line in lines(text) {
        reader.read(&line);
    }
    reader.finish()
}

struct Reader<'a> {
    remarks: &'a mut Remarks,
    heading: Option<Heading>,
    /// Whether no row has followed the heading yet.
    is_heading_fresh: bool,
    /// Whether the heading is parted by commas.
    commas_part: bool,
    /// The unit that a line names by itself.
    unit: Option<Output>,
    rows: Vec<Row>,
    bare: Vec<Bare>,
    across: Vec<Across>,
}

impl Reader<'_> {
    fn read(&mut self, line: &str) {
        let tokens = tokens(&with_breaks(line, self.commas_part));
        let has_number = tokens.iter().any(|token| matches!(token, Token::Number(_)));
        let is_read = if has_number {
            self.read_figures(&tokens, line)
        } else {
            let is_ruling = !line.contains(char::is_alphanumeric);
            is_ruling || self.read_heading(&tokens, line) || self.read_unit(&tokens)
        };
        if !is_read {
            self.remarks.left_out(line, LeftOut::Line);
        }
    }

    fn read_heading(&mut self, tokens: &[Token], line: &str) -> bool {
        let Some(heading) = Heading::of(tokens) else {
            return false;
        };
        let above = self.heading.take().filter(|_| self.is_heading_fresh);
        let joined = above.and_then(|above| above.with_units_of(&heading));
        self.commas_part = !has_hard_breaks(line) && heading.is_by_cells();
        self.heading = Some(joined.unwrap_or(heading));
        self.is_heading_fresh = true;
        true
    }

    /// A line such as "Torque in lb-ft".
    fn read_unit(&mut self, tokens: &[Token]) -> bool {
        let unit = tokens.iter().find_map(|token| match token {
            Token::Unit(Role::Output(unit)) => *unit,
            _ => None,
        });
        self.unit = unit.or(self.unit);
        unit.is_some()
    }

    fn read_figures(&mut self, tokens: &[Token], line: &str) -> bool {
        let elements = elements(tokens);
        let has_signs = elements
            .iter()
            .any(|e| matches!(e, Element::At | Element::Pair | Element::Dash));
        let is_label_first = is_label_first(tokens);
        if let Some(heading) = &self.heading
            && !has_signs
            && !is_label_first
            && let Some(found) = heading.row(&elements)
        {
            self.is_heading_fresh = false;
            for name in found.others {
                self.remarks.other_column(&name);
            }
            for text in found.left_out {
                self.remarks.left_out(&text, LeftOut::Figure);
            }
            self.rows.push(found.row);
            return true;
        }
        if is_label_first && let Some(across) = Across::of(&elements, line) {
            self.across.push(across);
            return true;
        }
        if let Some(points) = grouped::points(&elements) {
            for text in points.left_out {
                self.remarks.left_out(&text, LeftOut::Figure);
            }
            self.rows.extend(points.rows);
            return true;
        }
        let is_bare = !has_signs
            && self.heading.is_none()
            && elements
                .iter()
                .filter_map(Element::figure)
                .all(|figure| figure.role.is_none());
        let bare = is_bare.then(|| Bare::of(&elements, line));
        match bare.flatten() {
            Some(bare) => {
                self.bare.push(bare);
                true
            }
            None => false,
        }
    }

    /// The rows of lines that needed the others, and of all.
    fn finish(mut self) -> Vec<Row> {
        let (across, not_across) = across::rows(&self.across);
        let (bare, not_bare) = bare::rows(self.bare, self.remarks);
        for line in not_across.iter().chain(&not_bare) {
            self.remarks.left_out(line, LeftOut::Line);
        }
        self.rows.extend(across);
        self.rows.extend(bare);
        if let Some(unit) = self.unit {
            for row in &mut self.rows {
                if let [given] = &mut row.outputs[..]
                    && given
                        .output
                        .is_none_or(|own| own.unit().is_none() && own.is_as(unit))
                {
                    given.output = Some(unit);
                }
            }
        }
        self.rows
    }
}
