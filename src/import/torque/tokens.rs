//! The numbers, units, words and signs that a line consists of.

use super::numbers;
use super::words::{Role, Scale, is_at, is_to, quantity, unit};

/// A number, unit, word or sign.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Token {
    /// Digits with their marks, and a minus.
    Number(String),
    /// A unit.
    Unit(Role),
    /// A word that names what a figure is.
    Quantity(Role),
    /// "× 1000".
    Thousand,
    /// "at", before an engine speed.
    At,
    /// A colon, an equals sign, an arrow.
    Pair,
    /// A dash, or "to".
    Dash,
    /// A stroke.
    Stroke,
    /// The end of a cell.
    Break,
    /// Anything else with letters or digits.
    Word(String),
}

/// The most words that a unit is written with: `lb` and `ft`.
const MOST_WORDS: usize = 3;

/// The tokens of a line that has a tab wherever a cell ends.
pub(super) fn tokens(line: &str) -> Vec<Token> {
    let mut lexer = Lexer {
        chars: line.chars().collect(),
        at: 0,
        tokens: Vec::new(),
    };
    while let Some(c) = lexer.peek(0) {
        lexer.step(c);
    }
    lexer.tokens
}

struct Lexer {
    chars: Vec<char>,
    at: usize,
    tokens: Vec<Token>,
}

impl Lexer {
    fn peek(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).copied()
    }

    fn has_digit(&self, ahead: usize) -> bool {
        self.peek(ahead).is_some_and(|c| c.is_ascii_digit())
    }

    fn is_behind_blank(&self) -> bool {
        let before = self.at.checked_sub(1).and_then(|at| self.chars.get(at));
        before.is_none_or(|c| c.is_whitespace() || matches!(c, '(' | '['))
    }

    fn push(&mut self, token: Token, length: usize) {
        self.tokens.push(token);
        self.at += length;
    }

    fn step(&mut self, c: char) {
        let before = self.at.checked_sub(1).and_then(|at| self.chars.get(at));
        let is_behind_point = before == Some(&'.');
        let has_number = |ahead| {
            let is_mark = matches!(self.peek(ahead), Some('.' | ','));
            self.has_digit(ahead) || (is_mark && !is_behind_point && self.has_digit(ahead + 1))
        };
        match c {
            '\t' => self.push(Token::Break, 1),
            '-' | '+' if self.is_behind_blank() && has_number(1) => self.number(),
            _ if has_number(0) => self.number_or_turns(),
            // At the beginning a star is a bullet.
            '*' if self.tokens.is_empty() => self.at += 1,
            'x' | 'X' | '×' | '*' | '/' if self.thousand(1).is_some() => self.times_thousand(1),
            '/' if self.turns(1).is_some() => self.per_turn(1),
            _ if c.is_alphabetic() => self.word(),
            '@' => self.push(Token::At, 1),
            ':' | '=' | '>' => self.push(Token::Pair, 1),
            '-' => self.push(Token::Dash, 1),
            '.' if self.peek(1) == Some('.') => self.points(),
            '/' => self.push(Token::Stroke, 1),
            '%' => self.push(Token::Unit(Role::Other), 1),
            _ => self.at += 1,
        }
    }

    /// Two or more points, between both ends of a range.
    fn points(&mut self) {
        let rest = self.chars.get(self.at..).unwrap_or_default();
        let length = rest.iter().take_while(|c| **c == '.').count();
        self.push(Token::Dash, length);
    }

    /// How many characters blanks and a 1000 that stands alone take from there.
    fn thousand(&self, ahead: usize) -> Option<usize> {
        let blanks = self.blanks(ahead);
        let from = ahead + blanks;
        let is_thousand = (0..4).all(|n| self.peek(from + n) == "1000".chars().nth(n));
        let ends = !self.peek(from + 4).is_some_and(char::is_alphanumeric);
        (is_thousand && ends).then_some(blanks + 4)
    }

    fn times_thousand(&mut self, ahead: usize) {
        let length = self.thousand(ahead).unwrap_or_default();
        self.push(Token::Thousand, ahead + length);
    }

    fn blanks(&self, ahead: usize) -> usize {
        let rest = self.chars.get(self.at + ahead..).unwrap_or_default();
        rest.iter().take_while(|c| **c == ' ').count()
    }

    /// The letters from there.
    fn letters(&self, ahead: usize) -> String {
        let rest = self.chars.get(self.at + ahead..).unwrap_or_default();
        rest.iter()
            .copied()
            .take_while(|c| c.is_alphabetic())
            .collect()
    }

    /// The scale of "min" or "s" behind a stroke, and how many characters these take.
    fn turns(&self, ahead: usize) -> Option<(Scale, usize)> {
        let blanks = self.blanks(ahead);
        let word = self.letters(ahead + blanks).to_lowercase();
        let scale = match word.as_str() {
            "min" | "мин" => Scale::PerMinute,
            "s" | "sec" => Scale::PerSecond,
            _ => return None,
        };
        Some((scale, blanks + word.chars().count()))
    }

    fn per_turn(&mut self, ahead: usize) {
        if let Some((scale, length)) = self.turns(ahead) {
            self.push(Token::Unit(Role::Speed(Some(scale))), ahead + length);
        }
    }

    /// A number, or the 1 of `1/min`.
    fn number_or_turns(&mut self) {
        let stroke = 1 + self.blanks(1);
        let is_one = self.peek(0) == Some('1') && self.peek(stroke) == Some('/');
        if is_one && self.turns(stroke + 1).is_some() {
            self.per_turn(stroke + 1);
        } else {
            self.number();
        }
    }

    fn number(&mut self) {
        let begin = self.at;
        self.at += usize::from(matches!(self.peek(0), Some('-' | '+')));
        while let Some(c) = self.peek(0)
            && (c.is_ascii_digit() || (matches!(c, '.' | ',' | '\'' | '’') && self.has_digit(1)))
        {
            self.at += 1;
        }
        let text: String = self.chars[begin..self.at].iter().collect();
        let is_number = numbers::output(&text).is_some()
            || numbers::engine_rpm(&text, Scale::PerMinute).is_some();
        let letters = self.letters(0);
        let is_multiple = letters.is_empty()
            || letters == "k"
            || (matches!(letters.as_str(), "x" | "X") && self.thousand(1).is_some())
            || self.unit_here().is_some();
        if is_number && is_multiple {
            self.tokens.push(Token::Number(text));
            if letters == "k" {
                self.push(Token::Thousand, 1);
            }
        } else {
            let rest = self.chars.get(self.at..).unwrap_or_default();
            let tail: String = rest.iter().take_while(|c| c.is_alphanumeric()).collect();
            self.at += tail.chars().count();
            self.tokens.push(Token::Word(text + &tail));
        }
    }

    fn word(&mut self) {
        if let Some((role, length)) = self.unit_here() {
            self.push(Token::Unit(role), length);
            return;
        }
        let rest = self.chars.get(self.at..).unwrap_or_default();
        let word: String = rest.iter().take_while(|c| c.is_alphanumeric()).collect();
        let length = word.chars().count();
        let token = if is_at(&word) {
            Token::At
        } else if is_to(&word) {
            Token::Dash
        } else if let Some(role) = quantity(&word) {
            Token::Quantity(role)
        } else {
            Token::Word(word)
        };
        self.push(token, length);
    }

    /// The unit that begins here, the longest that reads, and its length.
    fn unit_here(&self) -> Option<(Role, usize)> {
        if let Some(length) = self.inverse_minute() {
            return Some((Role::Speed(Some(Scale::PerMinute)), length));
        }
        let mut ends = Vec::new();
        let mut end = 0;
        while ends.len() < MOST_WORDS {
            let length = self.letters(end).chars().count();
            if length == 0 {
                break;
            }
            end += length;
            ends.push(end);
            let joint = self.peek(end);
            if !joint.is_some_and(|c| matches!(c, '·' | '.' | '*' | '-' | '/' | '×' | ' ')) {
                break;
            }
            end += 1;
        }
        let units = ends.iter().rev().filter_map(|end| {
            let raw: String = self.chars[self.at..self.at + end].iter().collect();
            let role = unit(&raw)?;
            // Blanks join the letters of a torque only.
            let may_have_blanks = matches!(role, Role::Output(_)) || !raw.contains(' ');
            let ends = !self.peek(*end).is_some_and(char::is_alphanumeric);
            (may_have_blanks && ends).then_some((role, *end))
        });
        units.into_iter().next()
    }

    /// The length of `min-1`, however the power is written.
    fn inverse_minute(&self) -> Option<usize> {
        if !self.letters(0).eq_ignore_ascii_case("min") {
            return None;
        }
        let caret = usize::from(self.peek(3) == Some('^'));
        let is_minus = matches!(self.peek(3 + caret), Some('-' | '⁻'));
        let is_one = matches!(self.peek(4 + caret), Some('1' | '¹'));
        let ends = !self.has_digit(5 + caret);
        (is_minus && is_one && ends).then_some(5 + caret)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(line: &str) -> String {
        let show = |token: &Token| match token {
            Token::Number(text) => format!("n{text}"),
            Token::Unit(Role::Speed(Some(Scale::PerSecond))) => "u/s".to_owned(),
            Token::Unit(Role::Speed(_)) => "u/min".to_owned(),
            Token::Unit(Role::Output(Some(output))) => {
                output.unit().map_or("u?", |unit| unit.sign()).to_owned()
            }
            Token::Unit(_) => "u?".to_owned(),
            Token::Quantity(_) => "q".to_owned(),
            Token::Thousand => "k".to_owned(),
            Token::At => "@".to_owned(),
            Token::Pair => ":".to_owned(),
            Token::Dash => "-".to_owned(),
            Token::Stroke => "/".to_owned(),
            Token::Break => "|".to_owned(),
            Token::Word(word) => format!("w{word}"),
        };
        tokens(line).iter().map(show).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn figures_are_told_from_units_and_words() {
        for (line, wanted) in [
            ("1000 rpm 120 Nm", "n1000 u/min n120 N·m"),
            ("1000rpm:120Nm", "n1000 u/min : n120 N·m"),
            ("120 N·m @ 1000 1/min", "n120 N·m @ n1000 u/min"),
            ("120 ft-lbs at 1000/min", "n120 lb·ft @ n1000 u/min"),
            ("88 lb ft (120 N m)", "n88 lb·ft n120 N·m"),
            ("n [min-1] min⁻¹ min^-1", "q u/min u/min u/min"),
            (
                "rpm x1000 | x 1000 rpm, rpm/1000",
                "u/min k k u/min u/min k",
            ),
            ("3.5k rpm", "n3.5 k u/min"),
            ("U/min\tkW\tPS", "u/min | kW | PS"),
            ("1750-3000 rpm", "n1750 - n3000 u/min"),
            ("1750...3000 rpm", "n1750 - n3000 u/min"),
            ("320/1750 to 3000", "n320 / n1750 - n3000"),
            ("* 1000 rpm", "n1000 u/min"),
            ("1000 -> 120 -5", "n1000 - : n120 n-5"),
            ("12.05.2019 M54 2.0l 16V", "w12.05.2019 wM54 n2.0 u? w16V"),
            (
                "90 km/h 5 % 20 ºC 16.7 rev/s",
                "n90 u? n5 u? n20 u? n16.7 u/s",
            ),
            ("Torque kgf·m2", "q wkgf wm2"),
        ] {
            assert_eq!(shown(line), wanted, "{line}");
        }
    }
}
