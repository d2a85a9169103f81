//! Does the file of which the tests and the README's table of keys are made have every key of format 2?

use super::ProjectV2;
use std::collections::{BTreeMap, BTreeSet};

/// The file that uses every key.
const GOLDEN: &str = include_str!("../../../../tests/it/format/golden-v2.ron");

/// A key that no structure has.
const NO_KEY: &str = "no_such_key";

/// Where keys stand in a text: words with a colon behind, outside of strings.
fn keys(text: &str) -> Vec<std::ops::Range<usize>> {
    let is_of_word = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
    let (mut found, mut from, mut is_quoted, mut is_escaped) = (Vec::new(), None, false, false);
    for (at, letter) in text.char_indices() {
        if is_quoted {
            is_quoted = is_escaped || letter != '"';
            is_escaped = !is_escaped && letter == '\\';
        } else if is_of_word(letter) {
            from.get_or_insert(at);
        } else {
            is_quoted = letter == '"';
            found.extend(from.take().filter(|_| letter == ':').map(|from| from..at));
        }
    }
    found
}

/// The structure in which a key stands that is not known there, and the keys that may.
fn expected(text: &str) -> (String, BTreeSet<&'static str>) {
    match super::parsed::<ProjectV2>(text)
        .map(|_| ())
        .unwrap_err()
        .code
    {
        ron::Error::NoSuchStructField {
            expected, outer, ..
        } => (outer.expect(text), expected.iter().copied().collect()),
        error => panic!("{error} in {text}"),
    }
}

#[test]
fn the_golden_file_has_every_key_of_every_structure() {
    let mut missing: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    let mut there: BTreeSet<(String, &str)> = BTreeSet::new();
    for place in keys(GOLDEN) {
        let key = &GOLDEN[place.clone()];
        let mut text = GOLDEN.to_owned();
        text.replace_range(place, NO_KEY);
        let (structure, expected) = expected(&text);
        there.insert((structure.clone(), key));
        missing.insert(structure, expected);
    }
    assert!(missing.len() > 40, "{} structures", missing.len());
    for (structure, key) in &there {
        missing.entry(structure.clone()).or_default().remove(key);
    }
    missing.retain(|_, keys| !keys.is_empty());
    assert_eq!(missing, BTreeMap::new());
}
