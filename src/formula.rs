//! Which typed text would a spreadsheet take for a formula, and how is it made harmless and read back?
//!
//! A spreadsheet reckons with a cell that opens with a sign such as `=`, and quotation marks alone do
//! not stop it; nor is it sure where a cell begins, for a spreadsheet of another country parts cells at
//! the other mark. So a sign gets an apostrophe before it wherever a cell could begin.

use crate::unseen::is_unseen;

/// The signs that open a formula, as typed and in full width.
///
/// # Source
/// OWASP, CSV Injection: the characters to be wary of at the beginning of a cell. Its tab and line
/// breaks are among [`PARTS_CELLS`], so that a sign behind them is met as well.
pub(crate) const OPENS_FORMULA: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// What makes a spreadsheet take the rest of a cell for text.
const APOSTROPHE: char = '\'';

/// What may part one cell from another, in this file or as another spreadsheet reads it; behind a
/// quotation mark a cell may begin as well.
const PARTS_CELLS: [char; 6] = [',', ';', '\t', '\r', '\n', '"'];

/// A typed text in which no spreadsheet finds a formula, at whichever mark it parts cells; [`as_typed`]
/// is the way back.
pub(crate) fn harmless(text: &str) -> String {
    let mut harmless = String::with_capacity(text.len());
    let mut may_begin = true;
    for c in text.chars() {
        if may_begin && OPENS_FORMULA.contains(&c) {
            harmless.push(APOSTROPHE);
        }
        harmless.push(c);
        may_begin = may_begin_behind(c, may_begin);
    }
    harmless
}

/// The text that was made harmless, as it was typed.
pub(crate) fn as_typed(harmless: &str) -> String {
    let mut text = String::with_capacity(harmless.len());
    let mut may_begin = true;
    let mut rest = harmless.chars().peekable();
    while let Some(c) = rest.next() {
        let before_sign = rest.peek().is_some_and(|next| OPENS_FORMULA.contains(next));
        if !(may_begin && c == APOSTROPHE && before_sign) {
            text.push(c);
        }
        may_begin = may_begin_behind(c, may_begin);
    }
    text
}

/// Whether a cell may begin behind a character, where one might have begun before it.
///
/// Some spreadsheets drop blanks at the beginning of a cell. Behind an apostrophe that was typed none
/// begins; it counts all the same, so that one more tells it from one that was put there.
fn may_begin_behind(c: char, may_begin: bool) -> bool {
    let is_nothing = c == APOSTROPHE || c.is_whitespace() || is_unseen(c);
    PARTS_CELLS.contains(&c) || (may_begin && is_nothing)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

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
    fn a_typed_apostrophe_is_told_from_one_that_was_put_there() {
        for (typed, expected) in [("'=1", "''=1"), ("''-1", "'''-1"), ("' =1", "' '=1")] {
            assert_eq!(harmless(typed), expected);
        }
        for name in ["it's", "'quoted'", "a '= b"] {
            assert_eq!(harmless(name), name);
        }
    }

    proptest! {
        #[test]
        fn every_text_is_read_back_as_it_was_typed(text in r#"[=+@' ,;"a1\-]{0,12}|\PC{0,20}"#) {
            prop_assert_eq!(as_typed(&harmless(&text)), text);
        }
    }
}
