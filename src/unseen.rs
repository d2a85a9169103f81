//! Characters that cannot be seen, made visible before a foreign text is printed.
//!
//! In a terminal a control character moves the cursor, a bidirectional one turns what follows about,
//! and one of no width lets two names look alike. Whatever came from outside (a file, a flag, a path)
//! is printed without them; what a project holds and what programs exchange keeps them.

/// What stands for a character that cannot be seen, so that it can be.
const STAND_IN: char = '\u{fffd}';

/// The characters without a shape of their own, from the first to the last of each range.
///
/// # Source
/// The Unicode Standard: `Bidi_Control`, and `Default_Ignorable_Code_Point` without the selectors that
/// choose between two shapes of the letter before (FE00 to FE0F), the line and paragraph separators,
/// and the marks between which annotations stand.
const UNSEEN: [(char, char); 16] = [
    ('\u{ad}', '\u{ad}'),
    ('\u{34f}', '\u{34f}'),
    ('\u{61c}', '\u{61c}'),
    ('\u{115f}', '\u{1160}'),
    ('\u{17b4}', '\u{17b5}'),
    ('\u{180b}', '\u{180f}'),
    ('\u{200b}', '\u{200f}'),
    ('\u{2028}', '\u{202e}'),
    ('\u{2060}', '\u{206f}'),
    ('\u{3164}', '\u{3164}'),
    ('\u{feff}', '\u{feff}'),
    ('\u{ffa0}', '\u{ffa0}'),
    ('\u{fff0}', '\u{fffb}'),
    ('\u{1bca0}', '\u{1bca3}'),
    ('\u{1d173}', '\u{1d17a}'),
    ('\u{e0000}', '\u{e0fff}'),
];

/// Whether a character has no shape, or turns those about it round; control characters are not meant.
pub(crate) fn is_unseen(c: char) -> bool {
    UNSEEN
        .iter()
        .any(|&(first, last)| (first..=last).contains(&c))
}

/// The character as it is printed: a blank for a control character, a stand-in for an unseen one.
pub(crate) fn printable(c: char) -> char {
    match c {
        c if c.is_control() => ' ',
        c if is_unseen(c) => STAND_IN,
        c => c,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_turns_a_line_about_or_has_no_width_is_made_visible() {
        let ranges = [
            '\u{200b}'..='\u{200f}',
            '\u{202a}'..='\u{202e}',
            '\u{2060}'..='\u{2064}',
            '\u{2066}'..='\u{2069}',
            '\u{feff}'..='\u{feff}',
            '\u{61c}'..='\u{61c}',
            '\u{ad}'..='\u{ad}',
        ];
        for c in ranges.into_iter().flatten() {
            assert_eq!(printable(c), STAND_IN, "{:x}", u32::from(c));
        }
        for c in ['\n', '\t', '\u{1b}', '\u{7f}', '\u{9b}'] {
            assert_eq!(printable(c), ' ', "{:x}", u32::from(c));
        }
    }

    #[test]
    fn letters_signs_and_pictures_stay() {
        for c in "Gänge ё → × − 🚚 ☎\u{fe0e} עברית العربية \u{301}\u{fffd}".chars()
        {
            assert_eq!(printable(c), c, "{:x}", u32::from(c));
        }
    }
}
