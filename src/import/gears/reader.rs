//! The reader: numbers, words and signs are drawn together to the pieces of lines.
//!
//! Numbers beside a unit or a currency are no ratios, and are left out on the way.

use super::figures::{Figure, figures, opens_product};
use super::phrases::meaning_at;
use super::pieces::{Amount, Line, Piece, Shape, Tag};
use super::remarks::{LeftOut, Remarks};
use super::tokens::{Kind, Token};
use super::words::{Meaning, meaning};

/// The lines of a text, without those that are empty.
pub(super) fn lines(tokens: &[Token], remarks: &mut Remarks) -> Vec<Line> {
    let mut reader = Reader {
        tokens,
        at: 0,
        lines: Vec::new(),
        line: Vec::new(),
        outside: None,
        is_tag_weak: false,
        remarks,
    };
    while reader.at < tokens.len() {
        reader.step();
    }
    reader.end_line();
    reader.lines
}

struct Reader<'a> {
    tokens: &'a [Token],
    at: usize,
    lines: Vec<Line>,
    /// What is being filled: the line, or the bracket in it.
    line: Line,
    /// Within brackets, the line around them. Brackets in brackets are overlooked.
    outside: Option<Line>,
    /// Whether the last tag is a word with other uses, such as "first".
    is_tag_weak: bool,
    remarks: &'a mut Remarks,
}

impl Reader<'_> {
    fn kind(&self, ahead: usize) -> Option<Kind> {
        self.tokens.get(self.at + ahead).map(|t| t.kind)
    }

    fn push(&mut self, piece: Piece) {
        self.line.push(piece);
    }

    fn step(&mut self) {
        match self.kind(0) {
            Some(Kind::Number) => self.number(),
            Some(Kind::Ordinal(tag)) => {
                self.at += 1;
                self.is_tag_weak = false;
                self.push(Piece::Tag(tag));
            }
            Some(Kind::Word) => self.word(),
            Some(Kind::Code) => {
                let text = &self.tokens[self.at].text;
                if text.starts_with(|c: char| c.is_ascii_digit()) && text.contains(['.', ',']) {
                    self.remarks.left_out(text, LeftOut::Implausible);
                }
                self.at += 1;
                self.unknown();
            }
            Some(Kind::Sign(sign)) => self.sign(sign),
            Some(Kind::LineEnd) | None => {
                self.at += 1;
                self.end_line();
            }
        }
    }

    fn end_line(&mut self) {
        self.close();
        let line = std::mem::take(&mut self.line);
        if !line.is_empty() {
            self.lines.push(line);
        }
    }

    fn close(&mut self) {
        if let Some(outside) = self.outside.take() {
            let inside = std::mem::replace(&mut self.line, outside);
            self.push(Piece::Bracket(inside));
        }
    }

    fn sign(&mut self, sign: char) {
        let is_apart = self.tokens[self.at].is_apart;
        self.at += 1;
        match sign {
            '(' if opens_product(self.tokens, self.at - 1) => {
                self.at -= 1;
                self.number();
            }
            '(' | '[' | '{' if self.outside.is_none() => {
                self.outside = Some(std::mem::take(&mut self.line));
            }
            ')' | ']' | '}' => self.close(),
            ',' | ';' | '|' | '/' | '\t' => self.push(Piece::Break(sign)),
            '&' | '+' => self.push(Piece::And),
            '-' => self.dash(is_apart),
            '%' => self.unit(),
            '€' | '$' | '£' | '¥' => self.money(),
            '=' => self.equals(),
            ':' => self.stray_to_one(),
            // The end of a sentence; a label's point is none.
            '.' if self.ends_sentence() => self.end_line(),
            _ => {}
        }
    }

    /// Whether the point just read ends a sentence, and not an abbreviation.
    fn ends_sentence(&self) -> bool {
        let is_behind_number = self.line.last().is_some_and(Piece::is_number);
        let next = self.tokens.get(self.at);
        self.outside.is_none() && is_behind_number && next.is_some_and(|t| t.is_apart)
    }

    /// A dash between two things, or the minus of the number right behind it.
    fn dash(&mut self, is_apart: bool) {
        let is_minus = is_apart
            && self.kind(0) == Some(Kind::Number)
            && self.tokens.get(self.at).is_some_and(|t| !t.is_apart);
        if !is_minus {
            return self.push(Piece::Dash);
        }
        let before = self.line.len();
        self.number();
        if let Some(Piece::Amount(amount)) = self.line.get_mut(before) {
            amount.is_negative = true;
        }
    }

    /// `1 = 3.54` names a gear; in `34/9 = 3.778` the second value checks the first, as if it
    /// stood in brackets.
    fn equals(&mut self) {
        if let Some(n) = self.line.last().and_then(Piece::whole_gear) {
            self.line.pop();
            return self.push(Piece::Tag(Tag::Gear(n)));
        }
        let checks = matches!(self.line.last(), Some(Piece::Amount(_)))
            && self.kind(0) == Some(Kind::Number)
            && self.outside.is_none();
        if checks {
            let before = self.line.len();
            self.number();
            let inside = self.line.split_off(before);
            self.push(Piece::Bracket(inside));
        }
    }

    /// Steps over the 1 of a ":1" that stands behind a whole list, or in brackets by itself.
    fn stray_to_one(&mut self) {
        let is_one = self
            .tokens
            .get(self.at)
            .is_some_and(|t| t.text == "1" && !t.is_apart);
        let is_bracket = self.outside.is_some() && self.line.is_empty();
        if is_one && (is_bracket || matches!(self.line.last(), Some(Piece::Amount(_)))) {
            self.at += 1;
        }
    }

    fn number(&mut self) {
        let (figures, used) = figures(self.tokens, self.at);
        self.at += used;
        for figure in figures {
            match figure {
                Figure::Amount(mut amount) => {
                    amount.is_after_unknown = matches!(self.line.last(), Some(Piece::Unknown));
                    self.push(Piece::Amount(amount));
                }
                Figure::Gear(tag) => self.push(Piece::Tag(tag)),
                Figure::Break(sign) => self.push(Piece::Break(sign)),
                Figure::Unknown => self.unknown(),
                Figure::Tyre(size) => {
                    self.remarks.left_out(&size, LeftOut::Implausible);
                    self.push(Piece::LeftOut);
                }
            }
        }
        self.is_tag_weak = false;
        self.ordinal_mark();
    }

    /// `1.` and `1)` before something else name a gear.
    fn ordinal_mark(&mut self) {
        let Some(Piece::Amount(amount)) = self.line.last() else {
            return;
        };
        let is_mark = match self.kind(0) {
            Some(Kind::Sign('.' | ':')) => true,
            Some(Kind::Sign(')')) => self.outside.is_none(),
            _ => false,
        };
        let is_last = matches!(self.kind(1), None | Some(Kind::LineEnd));
        let is_tight = self.tokens.get(self.at).is_some_and(|t| !t.is_apart);
        if is_mark
            && is_tight
            && !is_last
            && let Some(n) = amount.gear()
        {
            self.at += 1;
            self.line.pop();
            self.push(Piece::Tag(Tag::Gear(n)));
        }
    }

    fn word(&mut self) {
        let Some((known, length)) = meaning_at(self.tokens, self.at) else {
            self.at += 1;
            return self.unknown_word();
        };
        let text_length = self.tokens[self.at].text.chars().count();
        self.at += length;
        match known {
            Meaning::Tag(tag) => {
                self.is_tag_weak = text_length == 1 || !matches!(tag, Tag::Reverse | Tag::Final);
                self.push(Piece::Tag(tag));
            }
            Meaning::Gear => self.gear_word(),
            Meaning::Gears => {
                if !self.drop_count() {
                    self.push(Piece::Heading);
                }
            }
            Meaning::Speed => self.speed_word(),
            Meaning::Heading => self.push(Piece::Heading),
            Meaning::Measure => self.push(Piece::Measure),
            Meaning::Property => self.push(Piece::Property),
            Meaning::Stage => self.push(Piece::Stage),
            Meaning::Unit => self.unit(),
            Meaning::Money => self.money(),
            Meaning::For => self.push(Piece::For),
            Meaning::And => self.push(Piece::And),
            Meaning::To => self.push(Piece::To),
            Meaning::Per => self.per_thousand(self.at - length),
            Meaning::Direct => self.direct(),
            Meaning::Filler => {}
        }
    }

    /// "direct" behind a label is its ratio, unless the ratio follows.
    fn direct(&mut self) {
        let is_sign = matches!(self.kind(0), Some(Kind::Sign(_)));
        let is_followed = self.kind(usize::from(is_sign)) == Some(Kind::Number);
        let is_labelled = matches!(self.line.last(), Some(Piece::Tag(tag)) if tag.is_forward());
        if is_labelled && !is_followed {
            self.remarks.say("\"Direct\" was read as 1:1.".to_owned());
            self.push(Piece::Amount(Amount::new("1:1".to_owned(), Shape::ToOne)));
        }
    }

    /// A word that is not known; a number that hangs on it is a type: `T-5`.
    fn unknown_word(&mut self) {
        let hangs = |ahead: usize| {
            let token = self.tokens.get(self.at + ahead);
            token.filter(|t| !t.is_apart).map(|t| t.kind)
        };
        if hangs(0) == Some(Kind::Sign('-')) && hangs(1) == Some(Kind::Number) {
            self.at += 2;
        }
        self.unknown();
    }

    fn unknown(&mut self) {
        if self.is_tag_weak && matches!(self.line.last(), Some(Piece::Tag(_))) {
            self.line.pop();
        }
        if !matches!(self.line.last(), Some(Piece::Unknown)) {
            self.push(Piece::Unknown);
        }
    }

    /// "gear" makes the number before or behind it a gear's, "5-gear" counts gears.
    fn gear_word(&mut self) {
        if matches!(self.line.last(), Some(Piece::Dash)) {
            self.drop_count();
            return;
        }
        if let Some(Piece::Amount(amount)) = self.line.last()
            && let Some(n) = amount.gear()
        {
            self.line.pop();
            return self.push(Piece::Tag(Tag::Gear(n)));
        }
        let skipped = usize::from(self.kind(0) == Some(Kind::Sign('#')));
        let is_chain = matches!(self.kind(skipped + 1), Some(Kind::Sign('/' | ':' | 'x')))
            && self.kind(skipped + 2) == Some(Kind::Number);
        let number = self.tokens.get(self.at + skipped);
        if let Some(tag) = number
            .filter(|t| t.is_whole() && !is_chain)
            .and_then(|t| Tag::gear(&t.text))
        {
            self.at += skipped + 1;
            self.is_tag_weak = false;
            self.push(Piece::Tag(tag));
        }
    }

    /// Drops the whole number before "gears", which counts them; whether there was a count.
    fn drop_count(&mut self) -> bool {
        let has_dash = matches!(self.line.last(), Some(Piece::Dash));
        let at = self.line.len().checked_sub(1 + usize::from(has_dash));
        let is_count = |piece: &Piece| match piece {
            Piece::Amount(amount) => amount.gear().is_some(),
            _ => false,
        };
        match at {
            Some(at) if is_count(&self.line[at]) => {
                self.line.truncate(at);
                true
            }
            _ => has_dash,
        }
    }

    /// "speed" counts gears, belongs to a gear's label, or opens a row of speeds.
    fn speed_word(&mut self) {
        let opens = matches!(
            self.line.last(),
            None | Some(Piece::Break(_) | Piece::LeftOut | Piece::Measure | Piece::Heading)
        );
        if !self.drop_count() && opens {
            self.push(Piece::Speeds);
        }
    }
}

impl Reader<'_> {
    /// Leaves out the number before a unit; a unit by itself heads a row or a column.
    fn unit(&mut self) {
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
    fn per_thousand(&mut self, from: usize) {
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
    fn money(&mut self) {
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
