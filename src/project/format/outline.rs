//! Where does each value of a project file stand?
//!
//! The types of a format read what a file means and forget where it stood, but whether its parts fit
//! together shows only when all of them are read. This is a second look at such a text: it follows a
//! path of keys and items to the place of one value. It judges nothing, for the text has been read as
//! RON before; it only knows what may hold a bracket or a comma without being one: strings,
//! characters and comments.

/// One step from a value to a value inside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// The value of a key.
    Key(&'static str),
    /// An item of a list or of a variant, counted from 0.
    Item(usize),
}

/// Line and column of the value that `path` leads to, both from 1, the column in characters.
///
/// Where the path leads on to something that the text leaves out, the last value on it.
pub(super) fn place_of(text: &str, path: &[Step]) -> (usize, usize) {
    let mut outline = Outline { text, at: 0 };
    outline.skip_blanks();
    let mut found = outline.at;
    for step in path {
        if !outline.enter() || !outline.go(*step) {
            break;
        }
        found = outline.at;
    }
    let before = &text[..found];
    let line_start = before.rfind('\n').map_or(0, |at| at + 1);
    let line = 1 + before.matches('\n').count();
    (line, 1 + before[line_start..].chars().count())
}

/// A text that is looked through, and how far.
struct Outline<'a> {
    text: &'a str,
    /// In bytes, always at the beginning of a character.
    at: usize,
}

impl<'a> Outline<'a> {
    fn rest(&self) -> &'a str {
        &self.text[self.at..]
    }

    /// Goes on behind the next character, or stays at the end.
    fn skip_letter(&mut self) {
        self.at += self.rest().chars().next().map_or(0, char::len_utf8);
    }

    /// Goes on behind the next `end`, or to the end of the text.
    fn skip_past(&mut self, end: &str) {
        let rest = self.rest();
        self.at += rest.find(end).map_or(rest.len(), |at| at + end.len());
    }

    /// From a value into its brackets; says whether it has any.
    fn enter(&mut self) -> bool {
        loop {
            let name = self.name();
            self.skip_blanks();
            if !self.rest().starts_with(['(', '[', '{']) {
                return false;
            }
            self.at += 1;
            self.skip_blanks();
            // People write it, and it is as good as what it holds.
            if name != "Some" {
                return true;
            }
        }
    }

    /// From behind an opening bracket to a value within; says whether it is there.
    fn go(&mut self, step: Step) -> bool {
        for number in 0.. {
            self.skip_blanks();
            if self.rest().is_empty() || self.rest().starts_with([')', ']', '}']) {
                return false;
            }
            let is_it = match step {
                Step::Key(wanted) => self.key() == Some(wanted),
                Step::Item(wanted) => number == wanted,
            };
            if is_it {
                return true;
            }
            self.skip_item();
        }
        false
    }

    /// The key that stands here, gone on to its value; where none does, nothing is gone past.
    fn key(&mut self) -> Option<&'a str> {
        let start = self.at;
        let name = self.name();
        self.skip_blanks();
        if name.is_empty() || !self.rest().starts_with(':') {
            self.at = start;
            return None;
        }
        self.at += 1;
        self.skip_blanks();
        Some(name)
    }

    /// The name that stands here, gone past; empty where none does.
    fn name(&mut self) -> &'a str {
        let start = self.at;
        if self.rest().starts_with("r#") && self.raw_string_marks().is_none() {
            self.at += "r#".len();
        }
        let rest = self.rest();
        let is_of_name = |c: char| c.is_alphanumeric() || c == '_';
        let end = rest.find(|c| !is_of_name(c)).unwrap_or(rest.len());
        // A name that opens a string is none.
        if rest[end..].starts_with(['"', '\'']) {
            self.at = start;
            return "";
        }
        self.at += end;
        &rest[..end]
    }

    /// Behind the comma that ends what stands here, or to the bracket that does.
    fn skip_item(&mut self) {
        let mut depth = 0_usize;
        while let Some(letter) = self.rest().chars().next() {
            match letter {
                ',' if depth == 0 => {
                    self.at += 1;
                    return;
                }
                ')' | ']' | '}' if depth == 0 => return,
                '(' | '[' | '{' => depth += 1,
                ')' | ']' | '}' => depth -= 1,
                _ => {}
            }
            self.skip_token();
        }
    }

    /// Past a comment, a string or a character as a whole, else past one letter.
    fn skip_token(&mut self) {
        if let Some(marks) = self.raw_string_marks() {
            self.skip_past("\"");
            self.skip_past(&format!("\"{}", "#".repeat(marks)));
        } else if self.rest().starts_with('"') {
            self.skip_quoted('"');
        } else if self.rest().starts_with('\'') {
            self.skip_quoted('\'');
        } else if !self.skip_comment() {
            self.skip_letter();
        }
    }

    /// Past the string or character that opens here.
    fn skip_quoted(&mut self, mark: char) {
        self.at += mark.len_utf8();
        // The first letter of a character may be the mark itself.
        let mut is_first = mark == '\'';
        while let Some(letter) = self.rest().chars().next() {
            self.skip_letter();
            match letter {
                '\\' => self.skip_letter(),
                letter if letter == mark && !is_first => return,
                _ => {}
            }
            is_first = false;
        }
    }

    /// How many `#` open the raw string that stands here, as in `r#"…"#`; none where none does.
    fn raw_string_marks(&self) -> Option<usize> {
        let opened = self.rest().trim_start_matches('b').strip_prefix('r')?;
        let text = opened.trim_start_matches('#');
        text.starts_with('"').then_some(opened.len() - text.len())
    }

    /// Past blanks, comments and what enables extensions.
    fn skip_blanks(&mut self) {
        loop {
            let rest = self.rest();
            self.at += rest.len() - rest.trim_start().len();
            if self.rest().starts_with("#!") {
                self.skip_past("]");
            } else if !self.skip_comment() {
                return;
            }
        }
    }

    /// Past the comment that opens here; says whether one does. Those of several lines nest.
    fn skip_comment(&mut self) -> bool {
        if self.rest().starts_with("//") {
            self.skip_past("\n");
            return true;
        }
        if !self.rest().starts_with("/*") {
            return false;
        }
        let mut depth = 0_usize;
        loop {
            if self.rest().starts_with("/*") {
                depth += 1;
                self.at += 2;
            } else if self.rest().starts_with("*/") {
                depth -= 1;
                self.at += 2;
            } else {
                self.skip_letter();
            }
            if depth == 0 || self.rest().is_empty() {
                return true;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Step::{Item, Key};
    use super::*;

    /// What stands at the end of a path.
    fn standing<'a>(text: &'a str, path: &[Step]) -> &'a str {
        let (line, column) = place_of(text, path);
        let line = text.split('\n').nth(line - 1).unwrap();
        let (start, _) = line.char_indices().nth(column - 1).unwrap();
        &line[start..]
    }

    #[test]
    fn a_value_is_found_behind_everything_that_only_looks_like_one() {
        let text = "#![enable(implicit_some)]\n// (sets: 1)\nProject ( /* sets: /* ) */ ( */\n\
                    title: \"sets: (1\\\", )\", note: r#\"), \"sets\": 2\"#, c: '\\'', d: '\"', e: ',',\n\
                    b: b\"]\", f: br\"\\\", r#type: 3, g: (1, [2, 3]), ё: 'ё', sets : /* here */ 4)";
        assert_eq!(standing(text, &[Key("sets")]), "4)");
        assert_eq!(
            standing(text, &[Key("type")]),
            "3, g: (1, [2, 3]), ё: 'ё', sets : /* here */ 4)"
        );
        assert_eq!(
            standing(text, &[Key("g"), Item(1), Item(1)]),
            "3]), ё: 'ё', sets : /* here */ 4)"
        );
    }

    #[test]
    fn an_item_is_found_in_lists_variants_and_options() {
        let text = "(a: Some([(n: 1), Gears([\"x\", \"y\"]), (n: Some(3))]))";
        let item = |steps: &[Step]| standing(text, &[&[Key("a")], steps].concat());
        assert_eq!(
            item(&[Item(0), Key("n")]),
            "1), Gears([\"x\", \"y\"]), (n: Some(3))]))"
        );
        assert_eq!(
            item(&[Item(1), Item(0), Item(1)]),
            "\"y\"]), (n: Some(3))]))"
        );
        assert_eq!(item(&[Item(2), Key("n")]), "Some(3))]))");
    }

    #[test]
    fn what_is_left_out_is_answered_with_the_last_value_on_the_way() {
        let text = "(a: (b: 1),\n c: [2])";
        assert_eq!(standing(text, &[Key("a"), Key("x")]), "(b: 1),");
        assert_eq!(standing(text, &[Key("c"), Item(5)]), "[2])");
        assert_eq!(standing(text, &[Key("x"), Key("a")]), "(a: (b: 1),");
        assert_eq!(standing(text, &[Key("a"), Key("b"), Key("c")]), "1),");
    }

    #[test]
    fn no_text_leads_it_astray() {
        for text in [
            "", "(", "(a", "(a:", "\"", "(a: '", "/*", "(a: r#\"", "#!", ")", "(a: \"\\", "(a: b'",
        ] {
            let (line, _) = place_of(text, &[Key("b"), Item(3)]);
            assert_eq!(line, 1, "{text}");
        }
    }
}
