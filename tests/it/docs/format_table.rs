//! The table of the keys of project files, made of a file that has every one of them.

use super::guide;
use super::tables::table;
use layshaft::project::format;

/// A word that stands nowhere in the format.
const NO_WORD: &str = "NoSuchWord";

/// Every structure of format 2 with its keys and their words, in the order of a file.
pub(super) fn format_table() -> String {
    let text = guide("tests/it/format/golden-v2.ron");
    let mut walk = Walk {
        text: &text,
        at: 0,
        structures: Vec::new(),
    };
    walk.value(&Place::default());
    let rows = gathered(walk.structures).into_iter();
    let rows = rows.map(|row| [quoted(row.paths), listed(row.keys)]);
    table(["where", "keys"], &rows.collect::<Vec<_>>())
}

fn quoted(words: Vec<String>) -> String {
    let words = words.into_iter().map(|word| format!("`{word}`"));
    words.collect::<Vec<_>>().join(", ")
}

fn listed(keys: Vec<Key>) -> String {
    let keys = keys.into_iter().map(|key| {
        let words = quoted(key.words);
        let words = (!words.is_empty()).then(|| format!(" ({words})"));
        format!("`{}`{}", key.name, words.unwrap_or_default())
    });
    keys.collect::<Vec<_>>().join(", ")
}

/// A key, and the words that may stand behind it.
#[derive(Clone)]
struct Key {
    name: String,
    words: Vec<String>,
}

/// A structure: where it stands, and the keys that it has there.
struct Structure {
    path: String,
    keys: Vec<Key>,
}

/// A structure with all the places where it stands.
struct StructureRow {
    paths: Vec<String>,
    keys: Vec<Key>,
}

/// Each structure once: of one place is one, with the keys of all that stand there, and of the same keys too.
fn gathered(structures: Vec<Structure>) -> Vec<StructureRow> {
    let mut of_places: Vec<Structure> = Vec::new();
    for structure in structures {
        match of_places.iter_mut().find(|row| row.path == structure.path) {
            Some(row) => add_keys(&mut row.keys, structure.keys),
            None => of_places.push(structure),
        }
    }
    let mut rows: Vec<StructureRow> = Vec::new();
    let names = |keys: &[Key]| keys.iter().map(|key| key.name.clone()).collect::<Vec<_>>();
    for Structure { path, keys } in of_places {
        match rows.iter_mut().find(|row| names(&row.keys) == names(&keys)) {
            Some(row) => row.paths.push(path),
            None => rows.push(StructureRow {
                paths: vec![path],
                keys,
            }),
        }
    }
    rows
}

fn add_keys(known: &mut Vec<Key>, keys: Vec<Key>) {
    for key in keys {
        if !known.iter().any(|old| old.name == key.name) {
            known.push(key);
        }
    }
}

/// Where a value stands: the path to it, and the key of a structure that it belongs to.
#[derive(Clone, Default)]
struct Place {
    path: String,
    key: Option<(usize, usize)>,
}

/// The way through a text, value by value.
struct Walk<'a> {
    text: &'a str,
    at: usize,
    structures: Vec<Structure>,
}

impl<'a> Walk<'a> {
    fn rest(&self) -> &'a str {
        &self.text[self.at..]
    }

    fn skip(&mut self, is_of_it: impl Fn(char) -> bool) -> &'a str {
        let rest = self.rest();
        let end = rest.find(|c| !is_of_it(c)).unwrap_or(rest.len());
        self.at += end;
        &rest[..end]
    }

    fn skip_blanks(&mut self) {
        self.skip(|c| [' ', '\n', ','].contains(&c));
    }

    /// The word or number that comes next, and on behind it.
    fn word(&mut self) -> &'a str {
        self.skip(|c| c.is_alphanumeric() || ['_', '.', '-'].contains(&c))
    }

    /// Whether that comes next; then on behind it.
    fn takes(&mut self, sign: char) -> bool {
        let is_there = self.rest().starts_with(sign);
        self.at += if is_there { sign.len_utf8() } else { 0 };
        is_there
    }

    /// On behind the end of a text that has begun.
    fn skip_text(&mut self) {
        while !self.takes('"') {
            // What is escaped ends no text.
            self.takes('\\');
            let letter = self.rest().chars().next().expect("a text has an end");
            self.at += letter.len_utf8();
        }
    }

    /// A value, whatever it is.
    fn value(&mut self, place: &Place) {
        self.skip_blanks();
        if self.takes('"') {
            self.skip_text();
        } else if self.takes('[') {
            self.items(place, ']');
        } else if self.takes('(') {
            self.bracket(place);
        } else {
            let start = self.at;
            let word = self.word();
            assert!(!word.is_empty(), "at {:?}", self.rest().get(..40));
            if word.starts_with(char::is_uppercase) {
                self.note_words(place, start..self.at);
            }
            if self.takes('(') {
                let path = word.to_owned();
                self.bracket(&Place {
                    path,
                    ..place.clone()
                });
            }
        }
    }

    /// The words that may stand where one stands, of which the program tells when another one does.
    fn note_words(&mut self, place: &Place, range: std::ops::Range<usize>) {
        let (structure, key) = place.key.expect("a word belongs to a key");
        let words = &mut self.structures[structure].keys[key].words;
        if !words.is_empty() {
            return;
        }
        let mut text = self.text.to_owned();
        text.replace_range(range, NO_WORD);
        let sentence = format::read(&text).expect_err(NO_WORD).to_string();
        let (_, told) = sentence.split_once(", expected ").expect(&sentence);
        assert!(!told.contains('…'), "{sentence}");
        *words = super::quoted(told).map(str::to_owned).collect();
    }

    /// Values one after the other, up to the end.
    fn items(&mut self, place: &Place, end: char) {
        self.skip_blanks();
        while !self.takes(end) {
            self.value(place);
            self.skip_blanks();
        }
    }

    /// What stands in round brackets: keys with their values, or values alone.
    fn bracket(&mut self, place: &Place) {
        self.skip_blanks();
        let begun = self.at;
        let has_keys = !self.word().is_empty() && self.takes(':');
        self.at = begun;
        if !has_keys {
            self.items(place, ')');
            return;
        }
        let structure = self.structures.len();
        let path = if place.path.is_empty() {
            "( … )"
        } else {
            &place.path
        };
        self.structures.push(Structure {
            path: path.to_owned(),
            keys: Vec::new(),
        });
        while !self.takes(')') {
            let name = self.word().to_owned();
            assert!(self.takes(':'), "no colon behind {name}");
            let path = [place.path.as_str(), &name]
                .into_iter()
                .filter(|part| !part.is_empty());
            let path = path.collect::<Vec<_>>().join(".");
            let keys = &mut self.structures[structure].keys;
            let key = Some((structure, keys.len()));
            keys.push(Key {
                name,
                words: Vec::new(),
            });
            self.value(&Place { path, key });
            self.skip_blanks();
        }
    }
}
