//! The ratios that numbers and signs in a row spell: `3.54/1.91`, `34/9`, `44/29 * 49/12`.

use super::pieces::{Amount, Shape, Tag};
use super::tokens::{Kind, Token, is_whole};
use super::words::{Meaning, meaning};

/// What a row of numbers and signs comes to.
#[derive(Debug, Clone)]
pub(super) enum Figure {
    /// A number that could be a ratio.
    Amount(Amount),
    /// A gear's number, as in `2:1.91`.
    Gear(Tag),
    /// A separator between two amounts.
    Break(char),
    /// Numbers that are something else, as in `4x4`.
    Unknown,
    /// A tyre size.
    Tyre(String),
}

/// Whether the bracket that opens at `tokens[at]` holds the first factor of a product.
pub(super) fn opens_product(tokens: &[Token], at: usize) -> bool {
    let cursor = Cursor { tokens };
    cursor.is_number(at + 1) && {
        let close = at + 1 + cursor.chain(at + 1).1;
        cursor.sign(close) == Some(')') && cursor.factor(close + 1).is_some()
    }
}

/// The figures that begin at the number or product `tokens[at]`, and how many tokens they take.
pub(super) fn figures(tokens: &[Token], at: usize) -> (Vec<Figure>, usize) {
    let cursor = Cursor { tokens };
    if let Some((tyre, used)) = cursor.tyre(at) {
        return (vec![Figure::Tyre(tyre)], used);
    }
    let opened = usize::from(cursor.sign(at) == Some('('));
    let (figures, used) = cursor.chain(at + opened);
    let used = used + 2 * opened;
    let [Figure::Amount(first)] = &figures[..] else {
        return (figures, used);
    };
    let mut end = at + used;
    if let Some(to_one) = cursor.to_one(first, end) {
        return (vec![Figure::Amount(to_one.0)], to_one.1 - at);
    }
    if let Some(pair) = cursor.dashed_pair(first, at, end) {
        return (vec![Figure::Amount(pair)], end + 2 - at);
    }
    if let Some(pair) = cursor.loose_pair(first, at, end) {
        return (vec![Figure::Amount(pair)], end + 2 - at);
    }
    let mut product = first.clone();
    let mut factors = 1;
    while let Some((sign, factor, next)) = cursor.factor(end) {
        match times(&product, sign, &factor, factors) {
            Some(figure) => product = figure,
            None => break,
        }
        factors += 1;
        end = next;
    }
    let is_code = product.shape == Shape::Teeth && product.ratio.is_none();
    let figure = if is_code {
        Figure::Unknown
    } else {
        Figure::Amount(product)
    };
    (vec![figure], end - at)
}

/// The product of two amounts, if the sign between them means one.
///
/// Whole numbers around an x, and large ones around a ×, are tooth counts.
fn times(first: &Amount, sign: char, second: &Amount, factors: usize) -> Option<Amount> {
    let shapes = [first.shape, second.shape];
    let is_pair = shapes.contains(&Shape::Teeth) || shapes.contains(&Shape::ToOne);
    if shapes == [Shape::Whole; 2] && sign != '·' {
        let counts = [first, second].map(|a| a.text.parse::<u16>().unwrap_or(u16::MAX));
        let text = format!("{}x{}", first.text, second.text);
        return match sign {
            _ if factors > 1 => None,
            'x' if counts.iter().all(|n| *n <= 8) => Some(Amount {
                ratio: None,
                ..Amount::new(text, Shape::Teeth)
            }),
            'x' => Some(Amount::new(text, Shape::Teeth)),
            _ if counts.iter().all(|n| *n >= 6) => Some(Amount::new(text, Shape::Teeth)),
            _ => Some(product_of(first, '*', second)),
        };
    }
    (factors < 8 && (is_pair || matches!(sign, '*' | '×'))).then(|| product_of(first, sign, second))
}

fn product_of(first: &Amount, sign: char, second: &Amount) -> Amount {
    let sign = if sign == '*' { '*' } else { '×' };
    let is_teeth = [first.shape, second.shape].contains(&Shape::Teeth);
    let shape = if is_teeth {
        Shape::Teeth
    } else {
        Shape::Decimal
    };
    Amount::new(format!("{} {sign} {}", first.text, second.text), shape)
}

struct Cursor<'a> {
    tokens: &'a [Token],
}

impl Cursor<'_> {
    fn sign(&self, at: usize) -> Option<char> {
        match self.tokens.get(at)?.kind {
            Kind::Sign(sign) => Some(sign),
            _ => None,
        }
    }

    fn is_number(&self, at: usize) -> bool {
        self.tokens.get(at).is_some_and(|t| t.kind == Kind::Number)
    }

    /// A tyre size such as `185/60R14` or `185/60 R 14`, and how many tokens it takes.
    fn tyre(&self, at: usize) -> Option<(String, usize)> {
        let width = self.tokens.get(at).filter(|t| t.is_whole())?;
        let width = width.text.parse::<u16>().ok()?;
        let rest = self.tokens.get(at + 2).filter(|t| !t.is_apart)?;
        let digits = rest.text.find(|c: char| !c.is_ascii_digit());
        let (aspect, mark) = rest.text.split_at(digits.unwrap_or(rest.text.len()));
        let aspect = aspect.parse::<u16>().ok()?;
        let is_size = self.sign(at + 1) == Some('/')
            && (100..=400).contains(&width)
            && (25..=85).contains(&aspect)
            && width % 5 == 0
            && aspect % 5 == 0;
        let has_radial_mark = |t: &Token| {
            t.text
                .to_uppercase()
                .trim_start_matches('Z')
                .starts_with('R')
        };
        let mark_behind = self.tokens.get(at + 3).filter(|t| has_radial_mark(t));
        let used = match (mark, mark_behind) {
            ("", Some(mark)) if mark.kind == Kind::Word && self.is_number(at + 4) => 5,
            ("", Some(_)) => 4,
            _ => 3,
        };
        is_size.then(|| (format!("{width}/{aspect}"), used))
    }

    /// Whether both sides of the sign at `at` are tight, or both are apart.
    fn spacing(&self, at: usize) -> Option<bool> {
        let (sign, next) = (self.tokens.get(at)?, self.tokens.get(at + 1)?);
        (sign.is_apart == next.is_apart).then_some(sign.is_apart)
    }

    /// Numbers with slashes or colons between them, and how many tokens they take.
    fn chain(&self, at: usize) -> (Vec<Figure>, usize) {
        let mut numbers = vec![self.tokens[at].text.as_str()];
        let mut signs = Vec::new();
        let mut end = at + 1;
        while let Some(sign @ ('/' | ':')) = self.sign(end)
            && self.is_number(end + 1)
            && self.spacing(end).is_some_and(|apart| sign == ':' || !apart)
        {
            signs.push(sign);
            numbers.push(&self.tokens[end + 1].text);
            end += 2;
        }
        (bound(&numbers, &signs), end - at)
    }

    /// `3.78 to 1`, which ends at the returned token.
    fn to_one(&self, first: &Amount, end: usize) -> Option<(Amount, usize)> {
        let hyphen = |at: usize| usize::from(self.sign(at) == Some('-'));
        let word = end + hyphen(end);
        let one = word + 1 + hyphen(word + 1);
        let is_to = self
            .tokens
            .get(word)
            .is_some_and(|t| t.kind == Kind::Word && meaning(&t.text) == Some(Meaning::To));
        let is_one = self
            .tokens
            .get(one)
            .is_some_and(|t| t.text == "1" || t.text.eq_ignore_ascii_case("one"));
        let is_number = matches!(first.shape, Shape::Whole | Shape::Decimal);
        let to_one = || Amount::new(format!("{}:1", first.text), Shape::ToOne);
        (is_to && is_one && is_number).then(|| (to_one(), one + 1))
    }

    /// `34 / 9`: two whole numbers around a slash with blanks, and no third.
    fn loose_pair(&self, first: &Amount, at: usize, end: usize) -> Option<Amount> {
        let is_loose_slash = |at: usize| self.sign(at) == Some('/');
        let is_third = is_loose_slash(end + 2) && self.is_number(end + 3);
        let is_continued = at > 0 && is_loose_slash(at - 1);
        let second = self.tokens.get(end + 1).filter(|t| t.is_whole())?;
        let is_pair = first.shape == Shape::Whole
            && is_loose_slash(end)
            && self.spacing(end) == Some(true)
            && !is_third
            && !is_continued;
        is_pair.then(|| pair(&first.text, '/', &second.text))
    }

    /// `34-9`: two counts around a dash that are no range of gears, of years or of anything else.
    fn dashed_pair(&self, first: &Amount, at: usize, end: usize) -> Option<Amount> {
        let is_dash = |at: usize| self.sign(at) == Some('-');
        let second = self.tokens.get(end + 1).filter(|t| t.is_whole())?;
        let is_chain = is_dash(end + 2) || (at > 0 && is_dash(at - 1));
        let counts = [&first.text, &second.text].map(|text| text.parse::<u16>().unwrap_or(0));
        let (fewer, more) = (counts[0].min(counts[1]), counts[0].max(counts[1]));
        let are_teeth = (5..=50).contains(&fewer) && (13..=99).contains(&more);
        let is_pair = first.shape == Shape::Whole
            && is_dash(end)
            && self.spacing(end) == Some(false)
            && !is_chain
            && are_teeth;
        is_pair.then(|| pair(&first.text, ':', &second.text))
    }

    /// The sign of a product, the factor behind it, in brackets or not, and where it ends.
    fn factor(&self, at: usize) -> Option<(char, Amount, usize)> {
        let sign = self
            .sign(at)
            .filter(|s| matches!(s, '*' | '×' | 'x' | '·'))?;
        self.spacing(at)?;
        let opened = usize::from(self.sign(at + 1) == Some('('));
        let start = at + 1 + opened;
        if !self.is_number(start) {
            return None;
        }
        let (figures, used) = self.chain(start);
        let end = start + used;
        let is_closed = opened == 0 || self.sign(end) == Some(')');
        match &figures[..] {
            [Figure::Amount(amount)] if is_closed => Some((sign, amount.clone(), end + opened)),
            _ => None,
        }
    }
}

/// The pairs and single numbers of a chain.
fn bound(numbers: &[&str], signs: &[char]) -> Vec<Figure> {
    let gear = Tag::gear(numbers[0]);
    if let (&[_, second, third], &[':', ':'], Some(gear)) = (numbers, signs, gear)
        && binds(second, ':', third, false)
    {
        return vec![Figure::Gear(gear), Figure::Amount(pair(second, ':', third))];
    }
    let mut figures = Vec::new();
    let mut i = 0;
    while let Some(first) = numbers.get(i) {
        let next = numbers.get(i + 1).zip(signs.get(i));
        let is_lone = numbers.len() == 2;
        match next {
            Some((second, sign)) if binds(first, *sign, second, is_lone) => {
                figures.push(Figure::Amount(pair(first, *sign, second)));
                i += 2;
            }
            Some((_, ':')) if let Some(gear) = Tag::gear(first) => {
                figures.push(Figure::Gear(gear));
                i += 1;
                continue;
            }
            _ => {
                figures.push(Figure::Amount(single(first)));
                i += 1;
            }
        }
        if i < numbers.len() {
            figures.push(Figure::Break('/'));
        }
    }
    figures
}

/// Whether two numbers around a sign are one ratio. A slash also parts the ratios of a list.
fn binds(first: &str, sign: char, second: &str, is_lone: bool) -> bool {
    let are_whole = is_whole(first) && is_whole(second);
    let is_to_one = second == "1" || first == "1";
    match sign {
        ':' => are_whole || is_to_one,
        _ => is_lone && (are_whole || second == "1" || (first == "1" && !is_whole(second))),
    }
}

fn pair(first: &str, sign: char, second: &str) -> Amount {
    let shape = if first == "1" || second == "1" {
        Shape::ToOne
    } else {
        Shape::Teeth
    };
    Amount::new(format!("{first}{sign}{second}"), shape)
}

fn single(number: &str) -> Amount {
    let shape = if is_whole(number) {
        Shape::Whole
    } else {
        Shape::Decimal
    };
    Amount::new(number.to_owned(), shape)
}

#[cfg(test)]
mod tests {
    use super::super::remarks::Remarks;
    use super::super::tokens::tokens;
    use super::*;

    fn shown(text: &str) -> String {
        let tokens = tokens(text, &mut Remarks::default());
        let (figures, used) = figures(&tokens, 0);
        let mut shown: Vec<String> = figures
            .iter()
            .map(|figure| match figure {
                Figure::Amount(amount) => amount.text.clone(),
                Figure::Gear(tag) => format!("{tag:?}"),
                Figure::Break(_) => "|".to_owned(),
                Figure::Unknown => "?".to_owned(),
                Figure::Tyre(size) => format!("tyre {size}"),
            })
            .collect();
        if used < tokens.len() {
            shown.push("…".to_owned());
        }
        shown.join(" ")
    }

    #[test]
    fn slashes_and_colons_part_lists_and_join_pairs() {
        for (text, expected) in [
            ("34/9", "34/9"),
            ("34:9", "34:9"),
            ("34 / 9", "34/9"),
            ("34 : 9", "34:9"),
            ("3.54/1.91/1.31", "3.54 | 1.91 | 1.31"),
            ("3.54/1.91", "3.54 | 1.91"),
            ("4/2/1", "4 | 2 | 1"),
            ("3.54:1/1.91:1", "3.54:1 | 1.91:1"),
            ("34:9/38:17/33:41", "34:9 | 38:17 | 33:41"),
            ("2:1.91", "Gear(2) 1.91"),
            ("2:1.91:1", "Gear(2) 1.91:1"),
            ("1:34:9", "Gear(1) 34:9"),
            ("1:4.3", "1:4.3"),
            ("4.06 to 1", "4.06:1"),
            ("4.06-to-one", "4.06:1"),
            ("1 to 4", "1 …"),
            ("1: 3.54", "1 …"),
        ] {
            assert_eq!(shown(text), expected, "{text}");
        }
    }

    #[test]
    fn products_and_counts_around_an_x_are_one_ratio() {
        for (text, expected) in [
            ("44/29 * 49/12", "44/29 * 49/12"),
            ("44:29×49:12", "44:29 × 49:12"),
            ("44/29 x 49/12", "44/29 × 49/12"),
            ("44/29 * (49/12)", "44/29 * 49/12"),
            ("(44/29) * (49/12)", "44/29 * 49/12"),
            ("44/29 · 49/12", "44/29 × 49/12"),
            ("3.54 · 1.91", "3.54 …"),
            ("3.54* 1.91", "3.54 …"),
            ("8x33", "8x33"),
            ("9 × 37", "9x37"),
            ("4x4", "?"),
            ("34-9", "34:9"),
            ("1-4", "1 …"),
            ("1998-2004", "1998 …"),
            ("185/60R14", "tyre 185/60"),
            ("185/60 R 14", "tyre 185/60"),
            ("195/50 ZR15 3.54", "tyre 195/50 …"),
        ] {
            assert_eq!(shown(text), expected, "{text}");
        }
    }
}
