//! Which known word did somebody mean who mistyped one?

/// The known word that is fewest slips away from `typed`; none where it could be anything.
///
/// A slip is a letter too many, too few or wrong, or two letters exchanged. Two slips may be in a
/// word, one in a word of up to four letters.
pub(super) fn nearest<'a>(
    typed: &str,
    known: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let typed: Vec<char> = typed.to_lowercase().chars().take(40).collect();
    let most_slips = if typed.len() > 4 { 2 } else { 1 };
    known
        .into_iter()
        .map(|word| (slips(&typed, &word.chars().collect::<Vec<char>>()), word))
        .filter(|(slips, _)| *slips <= most_slips)
        .min_by_key(|(slips, _)| *slips)
        .map(|(_, word)| word)
}

/// How many slips lead from one word to the other (optimal string alignment).
fn slips(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let wrong = usize::from(a[i - 1] != b[j - 1]);
            let mut least = (last[j] + 1).min(row[j - 1] + 1).min(last[j - 1] + wrong);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(before[j - 2] + 1);
            }
            row.push(least);
        }
        before = std::mem::replace(&mut last, row);
    }
    last[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn exchanged_letters_are_one_slip() {
        let counted = |a: &str, b: &str| {
            let letters = |word: &str| word.chars().collect::<Vec<char>>();
            slips(&letters(a), &letters(b))
        };
        assert_eq!(counted("tabel", "table"), 1);
        assert_eq!(counted("", "table"), 5);
        assert_eq!(counted("table", "table"), 0);
        assert_eq!(counted("gear", "gears"), 1);
    }

    #[test]
    fn a_word_that_could_be_anything_suggests_nothing() {
        assert_eq!(nearest("camper.ron", ["table", "check"]), None);
        assert_eq!(nearest("a", ["as"]), Some("as"));
        assert_eq!(nearest("Chekc", ["table", "check"]), Some("check"));
    }
}
