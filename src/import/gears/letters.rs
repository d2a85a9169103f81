//! Which characters say the same thing?
//!
//! What is copied from pages and word processors comes with a dozen dashes, blanks and bullets.

/// `text` with one kind of line end, blank, dash, slash and colon, and without invisible characters.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match spelled_out(c) {
            Some(letters) => plain.push_str(letters),
            None => plain.extend(plain_character(c)),
        }
    }
    plain
}

/// Roman numerals and raised letters that have characters of their own.
fn spelled_out(c: char) -> Option<&'static str> {
    const ROMAN: [&str; 12] = [
        "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII",
    ];
    let roman = u32::from(c).checked_sub(u32::from('Ⅰ'));
    if let Some(numeral) = roman.and_then(|at| ROMAN.get(usize::try_from(at).ok()?)) {
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
