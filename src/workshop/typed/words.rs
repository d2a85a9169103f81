//! Texts taken apart: the unit behind a figure, the two ends of a band.

/// A text without the first of these endings that it has, and what that ending stands for. Letters may be
/// large or small.
pub(super) fn ending<T: Copy>(text: &str, endings: &[(&str, T)]) -> Option<(String, T)> {
    let text = text.trim_end();
    endings.iter().find_map(|(word, means)| {
        let from = text.len().checked_sub(word.len())?;
        let tail = text.get(from..)?;
        let figure = text.get(..from)?;
        // A word that begins with a letter does not begin within another.
        let is_whole =
            !figure.ends_with(char::is_alphabetic) || !word.starts_with(char::is_alphabetic);
        (tail.eq_ignore_ascii_case(word) && is_whole)
            .then(|| (figure.trim_end().to_owned(), *means))
    })
}

/// The two ends of a band, as `0.15 to 0.20`, `15–35` or `15-35`; one end alone is both.
pub(super) fn ends(text: &str) -> [&str; 2] {
    let text = text.trim();
    for parting in [" to ", "–", "…", ".."] {
        if let Some((low, high)) = text.split_once(parting) {
            return [low.trim(), high.trim()];
        }
    }
    // A hyphen behind a figure parts; before one it is a sign.
    let hyphen = text.char_indices().skip(1).find(|(at, c)| {
        let before = text[..*at].trim_end();
        matches!(c, '-' | '−') && before.ends_with(|c: char| c.is_ascii_digit())
    });
    match hyphen {
        Some((at, c)) => [text[..at].trim(), text[at + c.len_utf8()..].trim()],
        None => [text, text],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hyphen_parts_a_band_only_behind_a_figure() {
        assert_eq!(ends("15-35"), ["15", "35"]);
        assert_eq!(ends("-0.20 to -0.15"), ["-0.20", "-0.15"]);
        assert_eq!(ends("-0.20 - -0.15"), ["-0.20", "-0.15"]);
        assert_eq!(ends("0,15–0,20"), ["0,15", "0,20"]);
        assert_eq!(ends("-0.2"), ["-0.2", "-0.2"]);
    }

    #[test]
    fn a_unit_is_a_whole_word() {
        let units = [("mm", 1), ("m", 2)];
        assert_eq!(ending("3 mm", &units), Some(("3".to_owned(), 1)));
        assert_eq!(ending("3MM", &units), Some(("3".to_owned(), 1)));
        assert_eq!(ending("3 km", &units), None);
    }
}
