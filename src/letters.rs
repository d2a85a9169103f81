//! Which letters can the program write? Those that its fonts have in both their weights.
//!
//! A letter that is missing would stand as an empty box on the screen and in every picture.

use crate::unseen::is_unseen;

/// The first letter of `text` that the fonts lack; line breaks and tabs are none.
pub(crate) fn first_lacking(text: &str) -> Option<char> {
    text.chars().find(|c| is_lacking(*c))
}

/// A text in which letters that the fonts lack stand by their numbers: `U+0665`.
pub(crate) fn written(text: &str) -> String {
    let spelled = |c: char| {
        if is_lacking(c) {
            format!("U+{:04X}", u32::from(c))
        } else {
            c.to_string()
        }
    };
    text.chars().map(spelled).collect()
}

/// A text whose first letter is a capital.
pub(crate) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(char::to_uppercase);
    first.into_iter().flatten().chain(letters).collect()
}

fn is_lacking(c: char) -> bool {
    let is_there = |c: char| {
        let range = WRITTEN.binary_search_by(|(first, last)| {
            if c < *first {
                std::cmp::Ordering::Greater
            } else if c > *last {
                std::cmp::Ordering::Less
            } else {
                std::cmp::Ordering::Equal
            }
        });
        range.is_ok()
    };
    // Those of ASCII are all there; nearly every text has no others.
    !c.is_ascii() && !c.is_control() && !is_unseen(c) && !is_there(c)
}

/// What both weights of IBM Plex Sans have, from the first to the last of each range; a test holds it
/// against the fonts.
const WRITTEN: [(char, char); 98] = [
    ('\u{20}', '\u{7e}'),
    ('\u{a0}', '\u{17f}'),
    ('\u{18f}', '\u{18f}'),
    ('\u{192}', '\u{192}'),
    ('\u{1a0}', '\u{1a1}'),
    ('\u{1af}', '\u{1b0}'),
    ('\u{1cd}', '\u{1dc}'),
    ('\u{1fa}', '\u{1ff}'),
    ('\u{218}', '\u{21b}'),
    ('\u{237}', '\u{237}'),
    ('\u{259}', '\u{259}'),
    ('\u{2bb}', '\u{2bc}'),
    ('\u{2c6}', '\u{2c7}'),
    ('\u{2d8}', '\u{2dd}'),
    ('\u{300}', '\u{304}'),
    ('\u{306}', '\u{30c}'),
    ('\u{312}', '\u{312}'),
    ('\u{315}', '\u{315}'),
    ('\u{31b}', '\u{31b}'),
    ('\u{323}', '\u{323}'),
    ('\u{326}', '\u{328}'),
    ('\u{37e}', '\u{37e}'),
    ('\u{384}', '\u{38a}'),
    ('\u{38c}', '\u{38c}'),
    ('\u{38e}', '\u{3a1}'),
    ('\u{3a3}', '\u{3ce}'),
    ('\u{400}', '\u{45f}'),
    ('\u{462}', '\u{463}'),
    ('\u{46a}', '\u{46b}'),
    ('\u{472}', '\u{475}'),
    ('\u{490}', '\u{4c2}'),
    ('\u{4cf}', '\u{4d9}'),
    ('\u{4dc}', '\u{4e9}'),
    ('\u{4ee}', '\u{4f9}'),
    ('\u{524}', '\u{525}'),
    ('\u{e3f}', '\u{e3f}'),
    ('\u{1e80}', '\u{1e85}'),
    ('\u{1e9e}', '\u{1e9e}'),
    ('\u{1ea0}', '\u{1ef9}'),
    ('\u{2000}', '\u{200d}'),
    ('\u{2010}', '\u{2015}'),
    ('\u{2018}', '\u{201a}'),
    ('\u{201c}', '\u{201e}'),
    ('\u{2020}', '\u{2022}'),
    ('\u{2026}', '\u{2026}'),
    ('\u{2028}', '\u{2029}'),
    ('\u{202f}', '\u{2030}'),
    ('\u{2032}', '\u{2033}'),
    ('\u{2039}', '\u{203a}'),
    ('\u{2044}', '\u{2044}'),
    ('\u{2070}', '\u{2070}'),
    ('\u{2074}', '\u{2079}'),
    ('\u{2080}', '\u{2089}'),
    ('\u{20a1}', '\u{20a1}'),
    ('\u{20a4}', '\u{20a4}'),
    ('\u{20a6}', '\u{20a6}'),
    ('\u{20a8}', '\u{20ae}'),
    ('\u{20b1}', '\u{20b2}'),
    ('\u{20b4}', '\u{20b5}'),
    ('\u{20b8}', '\u{20ba}'),
    ('\u{20bd}', '\u{20bd}'),
    ('\u{20bf}', '\u{20bf}'),
    ('\u{2113}', '\u{2113}'),
    ('\u{2116}', '\u{2116}'),
    ('\u{2122}', '\u{2122}'),
    ('\u{2126}', '\u{2126}'),
    ('\u{212e}', '\u{212e}'),
    ('\u{2150}', '\u{2151}'),
    ('\u{2153}', '\u{215e}'),
    ('\u{2190}', '\u{2199}'),
    ('\u{21a9}', '\u{21aa}'),
    ('\u{21b0}', '\u{21b3}'),
    ('\u{21b6}', '\u{21b7}'),
    ('\u{21ba}', '\u{21bb}'),
    ('\u{21c4}', '\u{21c4}'),
    ('\u{21c6}', '\u{21c6}'),
    ('\u{2202}', '\u{2202}'),
    ('\u{2206}', '\u{2206}'),
    ('\u{220f}', '\u{220f}'),
    ('\u{2211}', '\u{2212}'),
    ('\u{2215}', '\u{2215}'),
    ('\u{2219}', '\u{221a}'),
    ('\u{221e}', '\u{221e}'),
    ('\u{222b}', '\u{222b}'),
    ('\u{2236}', '\u{2236}'),
    ('\u{2248}', '\u{2248}'),
    ('\u{2260}', '\u{2260}'),
    ('\u{2264}', '\u{2265}'),
    ('\u{25ca}', '\u{25ca}'),
    ('\u{2713}', '\u{2713}'),
    ('\u{274c}', '\u{274c}'),
    ('\u{2b0e}', '\u{2b11}'),
    ('\u{ece0}', '\u{ece0}'),
    ('\u{efcc}', '\u{efcc}'),
    ('\u{f6d7}', '\u{f6d8}'),
    ('\u{fb01}', '\u{fb02}'),
    ('\u{feff}', '\u{feff}'),
    ('\u{fffd}', '\u{fffd}'),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_letter_that_is_not_there_stands_by_its_number() {
        assert_eq!(written("\"\u{664}5 → 五\""), "\"U+06645 → U+4E94\"");
        assert_eq!(written("Größe 4→5"), "Größe 4→5");
    }

    #[test]
    fn the_first_letter_that_is_not_there_is_named() {
        for text in ["", "Größe 4→5, Δ 0.5", "Пять\n\t", "ε = 3"] {
            assert_eq!(first_lacking(text), None, "{text}");
        }
        assert_eq!(first_lacking("van 五速"), Some('五'));
        assert_eq!(first_lacking("\u{1f600}"), Some('\u{1f600}'));
    }
}
