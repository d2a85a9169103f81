//! What a line of a text does for the list of a gear set: it holds gears, goes with them, or neither.

use super::phrases::meaning_at;
use super::pieces::Tag;
use super::tokens::{Kind, Token};
use super::words::Meaning;

/// What a line does for the list of a gear set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LineKind {
    /// Nothing stands in it.
    Blank,
    /// It may stand between a name and its gears: a heading, a rule, reverse, a further stage.
    Attendant,
    /// It says a final drive, and goes with the gears as well.
    FinalDrive,
    /// It holds gears, or labels of gears.
    Gears {
        /// Whether they begin with first gear, by its label.
        is_from_first: bool,
    },
    /// Words, or figures of something else.
    Other,
}

impl LineKind {
    /// Whether gears stand in it.
    pub(super) fn is_gears(self) -> bool {
        matches!(self, Self::Gears { .. })
    }

    /// Whether it does not part a name from its gears.
    pub(super) fn goes_with_gears(self) -> bool {
        matches!(self, Self::Attendant | Self::FinalDrive)
    }
}

/// What `line` is, told by how it begins and by its words.
pub(super) fn kind_of(line: &[Token]) -> LineKind {
    let is_empty = |t: &Token| matches!(t.kind, Kind::LineEnd | Kind::Sign('\t'));
    if line.iter().all(is_empty) {
        return LineKind::Blank;
    }
    let facts = Facts::of(line);
    let mut at = 0;
    while let Some(token) = line.get(at) {
        match token.kind {
            Kind::Sign(_) | Kind::LineEnd => at += 1,
            Kind::Ordinal(tag) => return facts.labelled(tag),
            Kind::Number => return facts.numbered(&line[at..]),
            Kind::Code => return LineKind::Other,
            Kind::Word => match meaning_at(line, at) {
                Some((Meaning::Tag(tag), _)) => return facts.labelled(tag),
                Some((Meaning::Stage, _)) => return facts.attending(LineKind::Attendant),
                Some((Meaning::Gear | Meaning::Gears | Meaning::Heading, used)) => {
                    at += used;
                }
                Some(_) | None => return LineKind::Other,
            },
        }
    }
    LineKind::Attendant
}

/// What the words and numbers of a line have in common.
struct Facts {
    /// Whether a word that is not known, or a year, stands before the first ratio.
    is_unclear: bool,
    /// Whether any word is not known, or speaks of something else than gears; years as well.
    has_other_words: bool,
    /// Whether a number has a decimal mark, or two numbers make a pair.
    has_ratio: bool,
}

impl Facts {
    fn of(line: &[Token]) -> Self {
        let mut facts = Self {
            is_unclear: false,
            has_other_words: false,
            has_ratio: false,
        };
        let mut at = 0;
        while let Some(token) = line.get(at) {
            let (known, used) = match meaning_at(line, at) {
                Some((meaning, used)) => (Some(meaning), used),
                None => (None, 1),
            };
            match token.kind {
                Kind::Word => facts.word(known),
                Kind::Code => facts.word(None),
                Kind::Number => {
                    facts.has_ratio |= !token.is_whole() || is_pair(&line[at..]);
                    if token.is_whole() && token.text.len() > 3 {
                        facts.word(None);
                    }
                }
                Kind::Ordinal(_) | Kind::Sign(_) | Kind::LineEnd => {}
            }
            at += used;
        }
        facts
    }

    fn word(&mut self, known: Option<Meaning>) {
        self.is_unclear |= known.is_none() && !self.has_ratio;
        self.has_other_words |= match known {
            None | Some(Meaning::Measure | Meaning::Property | Meaning::Unit | Meaning::Money) => {
                true
            }
            Some(_) => false,
        };
    }

    fn labelled(&self, tag: Tag) -> LineKind {
        match tag {
            Tag::Final => self.attending(LineKind::FinalDrive),
            Tag::Reverse => self.attending(LineKind::Attendant),
            _ if self.is_unclear => LineKind::Other,
            tag => LineKind::Gears {
                is_from_first: matches!(tag, Tag::Gear(1) | Tag::Half(1, 'L')),
            },
        }
    }

    fn attending(&self, kind: LineKind) -> LineKind {
        if self.is_unclear {
            LineKind::Other
        } else {
            kind
        }
    }

    /// A line that opens with a number: a gear with its ratio, or a list.
    fn numbered(&self, line: &[Token]) -> LineKind {
        let mut numbers = line.iter().filter(|t| t.kind == Kind::Number);
        let first = numbers.next().and_then(|t| Tag::gear(&t.text));
        let is_lone = numbers.next().is_none();
        let is_label = first.is_some() && !is_lone && !self.is_unclear;
        let is_list = !self.has_other_words && self.has_ratio;
        if !is_list && !is_label {
            return LineKind::Other;
        }
        LineKind::Gears {
            is_from_first: is_label && first == Some(Tag::Gear(1)),
        }
    }
}

/// Whether the number that the tokens begin with makes a pair with the next: `34/9`, `34:9`, `8x33`.
fn is_pair(tokens: &[Token]) -> bool {
    let [_, sign, next, ..] = tokens else {
        return false;
    };
    matches!(sign.kind, Kind::Sign('/' | ':' | 'x')) && next.kind == Kind::Number
}
