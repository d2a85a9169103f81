//! The numbers, words and signs that a pasted text consists of.

use super::pieces::Tag;
use super::remarks::Remarks;
use super::words::{Meaning, is_ordinal_suffix, meaning};
use crate::import::plain::folded;

/// What a piece of text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// Digits with at most one decimal mark.
    Number,
    /// A number that names a gear, such as `1st` or `2e`.
    Ordinal(Tag),
    /// Letters.
    Word,
    /// Letters and digits in one, or a number with too many marks: a type, a date.
    Code,
    /// A single sign; a tab stands for every wide gap.
    Sign(char),
    /// The end of a line.
    LineEnd,
}

/// A number, word or sign.
#[derive(Debug, Clone)]
pub(super) struct Token {
    pub(super) kind: Kind,
    pub(super) text: String,
    /// Whether a blank or a line end stands before it.
    pub(super) is_apart: bool,
}

impl Token {
    /// Whether it is a whole number.
    pub(super) fn is_whole(&self) -> bool {
        self.kind == Kind::Number && is_whole(&self.text)
    }
}

/// Whether `number` has no decimal mark.
pub(super) fn is_whole(number: &str) -> bool {
    number.bytes().all(|b| b.is_ascii_digit())
}

/// The tokens of a text that has gone through `plain`.
pub(super) fn tokens(plain: &str, remarks: &mut Remarks) -> Vec<Token> {
    let mut lexer = Lexer {
        chars: plain.chars().collect(),
        at: 0,
        is_apart: true,
        is_quoted: false,
        tokens: Vec::new(),
    };
    while let Some(c) = lexer.peek(0) {
        if c == '\n' {
            lexer.at += 1;
            lexer.push(Kind::LineEnd, "");
            lexer.is_apart = true;
            lexer.is_quoted = false;
        } else if c.is_whitespace() {
            lexer.blanks();
        } else if lexer.is_number_start() {
            lexer.number(remarks);
        } else if c.is_alphabetic() {
            lexer.word();
        } else if matches!(c, '"' | '“' | '”' | '„') {
            lexer.quote();
        } else {
            lexer.at += 1;
            lexer.push(Kind::Sign(c), "");
        }
    }
    lexer.tokens
}

struct Lexer {
    chars: Vec<char>,
    at: usize,
    is_apart: bool,
    /// Whether a quotation mark has been opened on this line.
    is_quoted: bool,
    tokens: Vec<Token>,
}

fn is_mark(c: char) -> bool {
    c == '.' || c == ','
}

impl Lexer {
    fn peek(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).copied()
    }

    fn has_digit(&self, ahead: usize) -> bool {
        self.peek(ahead).is_some_and(|c| c.is_ascii_digit())
    }

    fn previous(&self) -> Option<char> {
        self.chars.get(self.at.checked_sub(1)?).copied()
    }

    fn push(&mut self, kind: Kind, text: &str) {
        self.tokens.push(Token {
            kind,
            text: text.to_owned(),
            is_apart: self.is_apart,
        });
        self.is_apart = false;
    }

    /// The characters from here on that `belongs` accepts.
    fn run(&self, ahead: usize, belongs: impl Fn(char) -> bool) -> String {
        let rest = self.chars.get(self.at + ahead..).unwrap_or_default();
        rest.iter().copied().take_while(|c| belongs(*c)).collect()
    }

    /// Steps over blanks; a tab or a gap of two blanks parts columns.
    fn blanks(&mut self) {
        let gap = self.run(0, |c| c != '\n' && c.is_whitespace());
        self.at += gap.chars().count();
        self.is_apart = true;
        let is_inside = self.tokens.last().is_some_and(|t| t.kind != Kind::LineEnd);
        if is_inside && (gap.contains('\t') || gap.len() > 1) {
            self.push(Kind::Sign('\t'), "");
            self.is_apart = true;
        }
    }

    /// Steps over a quotation mark; outside quotations, behind a number, it is inches.
    fn quote(&mut self) {
        let is_behind_digit = self.previous().is_some_and(|c| c.is_ascii_digit());
        if !self.is_quoted && is_behind_digit {
            self.push(Kind::Word, "inch");
        } else {
            self.is_quoted = !self.is_quoted;
        }
        self.at += 1;
    }

    fn is_number_start(&self) -> bool {
        let is_bare_mark = || {
            let is_free = |c: char| !c.is_alphanumeric() && !is_mark(c);
            self.peek(0).is_some_and(is_mark)
                && self.has_digit(1)
                && self.previous().is_none_or(is_free)
        };
        self.has_digit(0) || is_bare_mark()
    }

    fn number(&mut self, remarks: &mut Remarks) {
        let mut run = String::new();
        while let Some(c) = self.peek(0)
            && (c.is_ascii_digit() || (is_mark(c) && self.has_digit(1)))
        {
            run.push(c);
            self.at += 1;
        }
        for (i, part) in numbers_of(&run, remarks).into_iter().enumerate() {
            if i > 0 {
                self.push(Kind::Sign(','), "");
            }
            let marks = part.chars().filter(|c| is_mark(*c)).count();
            let kind = if marks > 1 { Kind::Code } else { Kind::Number };
            self.push(kind, &part);
        }
        self.suffix();
    }

    /// What stands right behind a number: `1st`, `34T`, `7.2mph`, `16V`.
    fn suffix(&mut self) {
        let letters = self.run(0, char::is_alphabetic);
        let is_times = matches!(letters.as_str(), "x" | "X") && self.has_digit(1);
        let Some(last) = self.tokens.last_mut() else {
            return;
        };
        if letters.is_empty() || is_times {
            return;
        }
        let gear = Tag::gear(&last.text);
        let ordinal = match (gear, letters.as_str()) {
            (Some(Tag::Gear(n)), "L") => Some(Tag::Half(n, 'L')),
            (Some(Tag::Gear(n)), "H") => Some(Tag::Half(n, 'H')),
            (Some(gear), letters) if is_ordinal_suffix(letters) => Some(gear),
            _ => None,
        };
        let is_teeth = last.is_whole() && matches!(letters.as_str(), "t" | "T" | "z" | "Z");
        if let Some(tag) = ordinal {
            last.kind = Kind::Ordinal(tag);
        } else if !is_teeth {
            let stands_alone = matches!(
                meaning(&letters),
                Some(
                    Meaning::Unit
                        | Meaning::Money
                        | Meaning::Gear
                        | Meaning::Gears
                        | Meaning::Speed
                        | Meaning::Heading
                )
            );
            if !stands_alone {
                self.code();
            }
            return;
        }
        self.at += letters.chars().count();
    }

    /// Makes the last token a code, with all that hangs on it: `S5-18/3`.
    fn code(&mut self) {
        let is_part = |c: char| c.is_alphanumeric() || matches!(c, '-' | '/');
        let tail = self.run(0, is_part);
        let tail = tail.trim_end_matches(['-', '/']);
        self.at += tail.chars().count();
        if let Some(last) = self.tokens.last_mut() {
            last.kind = Kind::Code;
            last.text.push_str(tail);
        }
    }

    fn word(&mut self) {
        let word = self.run(0, |c| c.is_alphanumeric() || c == '\'' || c == '’');
        let joined = self.joined(&word).or_else(|| self.abbreviation());
        let length = joined.as_ref().unwrap_or(&word).chars().count();
        if self.is_times(&word) {
            self.at += 1;
            self.push(Kind::Sign('x'), "");
        } else if word.contains(|c: char| c.is_ascii_digit()) {
            self.at += word.chars().count();
            self.word_with_digits(&word);
        } else {
            self.at += length;
            if self.is_teeth(&word) {
                return;
            }
            let text = joined.unwrap_or(word).replace('.', "");
            self.push(Kind::Word, &text);
        }
    }

    /// "teeth" behind a count, which says no more than the count.
    fn is_teeth(&self, word: &str) -> bool {
        const TEETH: [&str; 8] = [
            "tooth", "teeth", "zahne", "zaehne", "dents", "denti", "dientes", "tanden",
        ];
        self.tokens.last().is_some_and(Token::is_whole) && TEETH.contains(&folded(word).as_str())
    }

    /// `x` between two numbers, as in `8x33` and `8 x 33`.
    fn is_times(&self, word: &str) -> bool {
        let Some(behind) = word.strip_prefix(['x', 'X']) else {
            return false;
        };
        let is_alone = behind.is_empty() || (is_whole(behind) && !self.is_apart);
        let rest = self.chars.get(self.at + 1..).unwrap_or_default();
        let next = rest.iter().find(|c| **c != ' ');
        let before = self.tokens.last().map(|t| t.kind);
        is_alone
            && matches!(before, Some(Kind::Number | Kind::Sign(')')))
            && next.is_some_and(|c| c.is_ascii_digit() || *c == '(')
    }

    /// A word that continues behind a slash or an ampersand: `km/h`, `R&P`.
    fn joined(&self, word: &str) -> Option<String> {
        let length = word.chars().count();
        let sign = self.peek(length).filter(|c| matches!(c, '/' | '&'))?;
        let rest = self.run(length + 1, char::is_alphabetic);
        let joined = format!("{word}{sign}{rest}");
        (!rest.is_empty() && meaning(&joined).is_some()).then_some(joined)
    }

    /// Single letters with points: `F.D.`
    fn abbreviation(&self) -> Option<String> {
        let rest = self.chars.get(self.at..).unwrap_or_default();
        let belongs = |c: &char| c.is_alphabetic() || *c == '.';
        let text: String = rest.iter().copied().take(8).take_while(belongs).collect();
        let parts: Vec<&str> = text.trim_end_matches('.').split('.').collect();
        let are_letters = parts.iter().all(|part| part.chars().count() == 1);
        (parts.len() > 1 && are_letters).then_some(text)
    }

    /// `FD1` and `R2` say which one, `G1` and `i1` name a gear, all else is a code.
    fn word_with_digits(&mut self, word: &str) {
        let letters = word.trim_end_matches(|c: char| c.is_ascii_digit());
        let digits = &word[letters.len()..];
        let names_a_gear = matches!(folded(letters).as_str(), "g" | "gear" | "gang" | "i");
        match (meaning(letters), Tag::gear(digits)) {
            (_, Some(gear)) if names_a_gear => self.push(Kind::Ordinal(gear), word),
            (Some(Meaning::Tag(Tag::Final | Tag::Reverse)), Some(Tag::Gear(1..=3))) => {
                self.push(Kind::Word, letters);
            }
            _ => {
                self.push(Kind::Code, word);
                self.code();
            }
        }
    }
}

/// The numbers in a run of digits and marks.
///
/// With a point in the run its commas part numbers, as in `3.54,1.91`; otherwise a single comma is
/// a decimal mark, and several are marks and separators in turn, as in `3,54,1,91`.
fn numbers_of(run: &str, remarks: &mut Remarks) -> Vec<String> {
    let parts: Vec<&str> = run.split(',').collect();
    let owned = |parts: &[&str]| parts.iter().map(|p| (*p).to_owned()).collect();
    let is_gear = |part: &str| Tag::gear(part).is_some();
    if let Some((gear, ratio)) = gear_and_ratio(run) {
        return owned(&[gear, ratio]);
    }
    if run.contains('.') {
        return if is_grouped(&parts) {
            vec![run.to_owned()]
        } else {
            owned(parts.split_at(usize::from(parts[0].is_empty())).1)
        };
    }
    match parts.len() {
        0..=2 => vec![run.to_owned()],
        _ if counts_up(&parts) => owned(&parts),
        3 if is_gear(parts[0]) => vec![parts[0].to_owned(), parts[1..].join(",")],
        n if n % 2 == 0 => {
            remarks.guess_decimal_commas(run);
            parts.chunks(2).map(|pair| pair.join(",")).collect()
        }
        _ => vec![run.to_owned()],
    }
}

/// A gear's number and its ratio in `1.3,54` and `1.3.54`.
fn gear_and_ratio(run: &str) -> Option<(&str, &str)> {
    let (gear, ratio) = run.split_once('.')?;
    let (whole, decimals) = ratio.split_once(is_mark)?;
    let is_ratio = whole.len() == 1 && decimals.len() >= 2 && is_whole(decimals);
    (Tag::gear(gear).is_some() && is_ratio).then_some((gear, ratio))
}

/// Whether the comma groups thousands: `1,250.00`.
fn is_grouped(parts: &[&str]) -> bool {
    let [thousands, rest] = parts else {
        return false;
    };
    let whole = rest.split('.').next().unwrap_or_default();
    is_whole(thousands) && (1..=3).contains(&thousands.len()) && whole.len() == 3
}

fn counts_up(parts: &[&str]) -> bool {
    let numbers: Option<Vec<u8>> = parts.iter().map(|part| part.parse().ok()).collect();
    numbers.is_some_and(|n| {
        n.windows(2)
            .all(|pair| pair[0].checked_add(1) == Some(pair[1]))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(text: &str) -> String {
        let tokens = tokens(text, &mut Remarks::default());
        let show = |token: &Token| match token.kind {
            Kind::Number => format!("n{}", token.text),
            Kind::Ordinal(Tag::Gear(n)) => format!("g{n}"),
            Kind::Ordinal(tag) => format!("{tag:?}"),
            Kind::Word => format!("w{}", token.text),
            Kind::Code => format!("c{}", token.text),
            Kind::Sign('\t') => "⇥".to_owned(),
            Kind::Sign(c) => c.to_string(),
            Kind::LineEnd => "⏎".to_owned(),
        };
        tokens.iter().map(show).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn numbers_are_told_from_their_separators() {
        for (text, expected) in [
            ("3.54,1.91", "n3.54 , n1.91"),
            ("3,54, 1,91", "n3,54 , n1,91"),
            ("3,54,1,91", "n3,54 , n1,91"),
            ("1,2,3,4", "n1 , n2 , n3 , n4"),
            ("1,3.54", "n1 , n3.54"),
            ("1,3,54", "n1 , n3,54"),
            ("1.....3.54", "n1 . . . . . n3.54"),
            (".83 ,83", "n.83 n,83"),
            ("12.03.1998", "c12.03.1998"),
            ("1.3,54 2.1.91", "n1 , n3,54 n2 , n1.91"),
            ("1,250.00", "c1,250.00"),
            ("3.54.", "n3.54 ."),
        ] {
            assert_eq!(shown(text), expected, "{text}");
        }
    }

    #[test]
    fn what_hangs_on_a_number_says_what_it_is() {
        for (text, expected) in [
            ("1st 2e 3ª 4º 5º", "g1 g2 g3 g4 g5"),
            ("34T/9T", "n34 / n9"),
            ("8x33 8 x 33", "n8 x n33 n8 x n33"),
            ("7.2mph", "n7.2 wmph"),
            ("1.6i 16Vx S5-18/3 4x", "c1.6i c16Vx cS5-18/3 c4x"),
            ("6L", "Half(6, 'L')"),
        ] {
            assert_eq!(shown(text), expected, "{text}");
        }
    }

    #[test]
    fn words_may_hold_signs() {
        assert_eq!(
            shown("km/h R&P F.D. FD1 i1 R 2.1"),
            "wkm/h wR&P wFD wFD g1 wR n2.1"
        );
        assert_eq!(shown("1st\t3.54  a b"), "g1 ⇥ n3.54 ⇥ wa wb");
    }
}
