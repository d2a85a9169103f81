//! One kind of character for what is copied from pages and word processors.
//!
//! There a dozen dashes, blanks and bullets look alike, and words have capitals and accents or not.

/// `text` with one kind of line end, blank, dash, slash and colon, and without invisible characters.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match spelled_out(c) {
            Some(letters) => plain.push_str(letters),
            None => plain.extend(plain_character(c)),
        }
    }
    with_middle_points(&plain)
}

/// `text` with the decimal points that old sheets put in the middle of the line: `3·90` is `3.90`.
///
/// In `44/29·49/12` the same sign multiplies; it is a decimal mark where every number that hangs
/// together with it has one too, save the 1 of `3·90:1`.
fn with_middle_points(text: &str) -> String {
    if !text.contains('·') {
        return text.to_owned();
    }
    let belongs = |c: char| c.is_ascii_digit() || matches!(c, '·' | '/' | ':');
    let mut pointed = String::with_capacity(text.len());
    let mut rest = text;
    while !rest.is_empty() {
        let end = rest.find(|c| !belongs(c)).unwrap_or(rest.len());
        let (run, behind) = rest.split_at(end);
        let is_number = |number: &str| {
            let parts: Vec<&str> = number.split('·').collect();
            matches!(parts[..], [_, decimals] if !decimals.is_empty()) || number == "1"
        };
        let are_numbers = run.split(['/', ':']).all(|n| n.is_empty() || is_number(n));
        pointed.push_str(&if are_numbers {
            run.replace('·', ".")
        } else {
            run.to_owned()
        });
        let next = behind.find(belongs).unwrap_or(behind.len());
        let (between, after) = behind.split_at(next);
        pointed.push_str(between);
        rest = after;
    }
    pointed
}

/// The Roman numerals from one to twelve.
pub(super) const NUMERALS: [&str; 12] = [
    "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII",
];

/// Roman numerals and raised letters that have characters of their own.
fn spelled_out(c: char) -> Option<&'static str> {
    let roman = u32::from(c).checked_sub(u32::from('Ⅰ'));
    if let Some(numeral) = roman.and_then(|at| NUMERALS.get(usize::try_from(at).ok()?)) {
        return Some(numeral);
    }
    Some(match c {
        'ˢ' => "s",
        'ᵗ' => "t",
        'ⁿ' => "n",
        'ᵈ' => "d",
        'ʳ' => "r",
        'ʰ' => "h",
        'ᵉ' => "e",
        '→' | '⇒' | '➔' => " - ",
        _ => return None,
    })
}

/// The character that stands for `c`, or none where it is invisible.
fn plain_character(c: char) -> Option<char> {
    match c {
        '\u{feff}'
        | '\u{ad}'
        | '\u{200b}'..='\u{200f}'
        | '\u{2060}'
        | '`'
        | '\u{300}'..='\u{36f}' => None,
        '\n' | '\r' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}' => Some('\n'),
        '\t' => Some('\t'),
        '‐' | '‑' | '‒' | '–' | '—' | '―' | '−' => Some('-'),
        '⁄' | '∕' | '÷' => Some('/'),
        '∶' | '：' => Some(':'),
        '，' => Some(','),
        '；' => Some(';'),
        '¦' | '│' | '┃' => Some('|'),
        '°' => Some('º'),
        '⋅' => Some('·'),
        '_' | '~' | '≈' | '•' | '●' | '▪' | '◦' | '‣' | '■' | '►' | '…' => {
            Some(' ')
        }
        c if c.is_whitespace() || c.is_control() => Some(' '),
        c => Some(c),
    }
}

/// `word` in small letters without accents: `Rückwärts` is `ruckwarts`.
pub(super) fn folded(word: &str) -> String {
    let mut folded = String::with_capacity(word.len());
    for c in word.chars().flat_map(char::to_lowercase) {
        match c {
            'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' | 'ą' => folded.push('a'),
            'ç' | 'ć' | 'č' => folded.push('c'),
            'è' | 'é' | 'ê' | 'ë' | 'ę' | 'ě' => folded.push('e'),
            'ì' | 'í' | 'î' | 'ï' => folded.push('i'),
            'ł' => folded.push('l'),
            'ñ' | 'ń' | 'ň' => folded.push('n'),
            'ò' | 'ó' | 'ô' | 'õ' | 'ö' | 'ő' | 'ø' => folded.push('o'),
            'ř' => folded.push('r'),
            'ś' | 'š' => folded.push('s'),
            'ß' => folded.push_str("ss"),
            'ù' | 'ú' | 'û' | 'ü' | 'ů' | 'ű' => folded.push('u'),
            'ý' => folded.push('y'),
            'ź' | 'ż' | 'ž' => folded.push('z'),
            // What lower case leaves behind of a dotted capital.
            '\u{300}'..='\u{36f}' => {}
            c => folded.push(c),
        }
    }
    folded
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_looks_alike_becomes_alike() {
        assert_eq!(plain("\u{feff}R\u{a0}−3,30\r\n"), "R -3,30\n\n");
        assert_eq!(plain("Ⅳ\u{2009}1∶1"), "IV 1:1");
        assert_eq!(plain("1ʳᵉ •\u{ad}3⁄4"), "1re  3/4");
    }

    #[test]
    fn accents_do_not_matter() {
        assert_eq!(folded("Rückwärtsgang"), "ruckwartsgang");
        assert_eq!(folded("ARRIÈRE"), "arriere");
        assert_eq!(folded("großer"), "grosser");
    }
}
