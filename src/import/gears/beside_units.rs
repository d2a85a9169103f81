//! Which numbers stand beside a unit or a currency and are therefore no ratios?

use super::figures::{Figure, figures};
use super::pieces::Piece;
use super::reader::Reader;
use super::remarks::LeftOut;
use super::tokens::{Kind, Token};
use super::words::{Meaning, meaning};

impl Reader<'_> {
    /// Leaves out the number before a unit; a unit by itself heads a row or a column.
    pub(super) fn unit(&mut self) {
        if let Some(Piece::Amount(amount)) = self.line.last() {
            let unit = &self.tokens[self.at - 1];
            let sign = if unit.kind == Kind::Word {
                &unit.text
            } else {
                "%"
            };
            let text = format!("{} {sign}", amount.text);
            self.remarks.left_out(&text, LeftOut::Measure);
            self.line.pop();
            self.push(Piece::LeftOut);
        } else if !matches!(self.line.last(), Some(Piece::LeftOut | Piece::Unknown)) {
            self.push(Piece::Measure);
        }
        self.per_thousand(self.at);
    }

    /// Steps over "/1000 rpm" and its like behind `from`.
    pub(super) fn per_thousand(&mut self, from: usize) {
        let is_per = |token: &Token| match token.kind {
            Kind::Sign('/' | '@') => true,
            Kind::Word => matches!(
                meaning(&token.text),
                Some(Meaning::Per | Meaning::To | Meaning::Unit | Meaning::Filler)
            ),
            _ => false,
        };
        let rest = self.tokens.get(from..).unwrap_or_default();
        let words = rest.iter().take(4).take_while(|t| is_per(t)).count();
        let thousand = rest.get(words).is_some_and(|token| {
            token.kind == Kind::Number && token.text.replace(['.', ','], "") == "1000"
        });
        let split_thousand = rest
            .get(words..words + 2)
            .is_some_and(|pair| pair.iter().map(|t| t.text.as_str()).eq(["1", "000"]));
        let used = words + usize::from(thousand) + 2 * usize::from(split_thousand);
        if used > words {
            let is_unit = |t: &&Token| meaning(&t.text) == Some(Meaning::Unit);
            let unit = rest.iter().skip(used).take(1).filter(is_unit).count();
            self.at = from + used + unit;
        }
    }

    /// Leaves out the number beside a currency.
    pub(super) fn money(&mut self) {
        let (figures, used) = match self.kind(0) {
            Some(Kind::Number) => figures(self.tokens, self.at),
            Some(Kind::Code) => (Vec::new(), 1),
            _ => (Vec::new(), 0),
        };
        if used > 0 {
            self.at += used;
            for figure in figures {
                if let Figure::Amount(amount) = figure {
                    self.remarks.left_out(&amount.text, LeftOut::Implausible);
                }
            }
            self.push(Piece::LeftOut);
        } else if let Some(Piece::Amount(amount)) = self.line.last() {
            self.remarks.left_out(&amount.text, LeftOut::Implausible);
            self.line.pop();
            self.push(Piece::LeftOut);
        }
    }
}
