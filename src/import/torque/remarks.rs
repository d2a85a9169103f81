//! What is said about a reading: why there is none, what was guessed, what was left out.

use crate::gearing::quoted;

/// Why a text holds no torque curve.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CurveError {
    /// More text than a dyno sheet has.
    #[error(
        "the text has {characters} characters; paste at most {most}, just the lines with the figures"
    )]
    TooLong {
        /// How many characters there were.
        characters: usize,
        /// How many are read.
        most: usize,
    },
    /// Nothing that could be a point.
    #[error(
        "no torque curve was found; paste lines such as \"1000 rpm 120 Nm\" or columns with a heading such as \"rpm  Nm\""
    )]
    NoCurve,
    /// Points, but none that can be.
    #[error(
        "no point was found that can be: \"{example}\" is none; an engine turns at 1 to 30000 rpm and gives 0 to 20000 N·m and 0 to 5000 kW"
    )]
    NoneInRange {
        /// A point that was left out, as it was written.
        example: String,
    },
    /// A single point.
    #[error("only the point at {rpm} was found; a torque curve needs two at least")]
    OnePoint {
        /// Where the point is, with its unit.
        rpm: String,
    },
    /// Powers without a unit and no torque beside them: kW and horsepower are too far apart to guess.
    #[error(
        "the powers have no unit; write kW, hp or PS behind {figure} or in the heading of its column"
    )]
    PowerWithoutUnit {
        /// The first of them, as it was written.
        figure: String,
    },
}

/// Why something was left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LeftOut {
    /// A column that holds something else.
    Column,
    /// A figure that is not engine speed, torque or power, or belongs to no point.
    Figure,
    /// An engine speed that cannot be.
    Speed,
    /// A torque or power that cannot be.
    Output,
    /// A line that does not read.
    Line,
}

impl LeftOut {
    const ALL: [Self; 5] = [
        Self::Column,
        Self::Figure,
        Self::Speed,
        Self::Output,
        Self::Line,
    ];

    /// The end of the sentence "Left out …" for one or several.
    fn reason(self) -> &'static str {
        match self {
            Self::Column => "a column without engine speed, torque or power",
            Self::Figure => "not known as engine speed, torque or power of a point",
            Self::Speed => "an engine turns at 1 to 30000 rpm",
            Self::Output => "torque is 0 to 20000 N·m, power 0 to 5000 kW",
            Self::Line => "does not read as a point of the curve",
        }
    }
}

/// How many things are named in one sentence.
pub(super) const MOST_NAMED: usize = 4;

/// How many things are said; nobody reads more.
const MOST_SENTENCES: usize = 12;

/// The sentences about one reading.
#[derive(Debug, Default)]
pub(super) struct Remarks {
    sentences: Vec<String>,
    /// The first few texts left out for each reason, and how many there were.
    left_out: [(Vec<String>, usize); 5],
}

impl Remarks {
    /// Adds a sentence, once.
    pub(super) fn say(&mut self, sentence: String) {
        if self.sentences.len() < MOST_SENTENCES && !self.sentences.contains(&sentence) {
            self.sentences.push(sentence);
        }
    }

    /// Notes that `text` is not taken.
    pub(super) fn left_out(&mut self, text: &str, why: LeftOut) {
        let reasons = LeftOut::ALL.iter().zip(&mut self.left_out);
        for (_, (named, count)) in reasons.filter(|(known, _)| **known == why) {
            *count += 1;
            if named.len() < MOST_NAMED {
                named.push(quoted(text.trim()));
            }
        }
    }

    /// Notes a column of something else, once however many rows it has.
    pub(super) fn other_column(&mut self, name: &str) {
        let name = quoted(name.trim());
        let is_known = self.left_out[0].0.contains(&name);
        if !name.is_empty() && !is_known && self.left_out[0].0.len() < MOST_NAMED {
            self.left_out(&name, LeftOut::Column);
        }
    }

    /// All sentences: what was guessed, then what was left out.
    pub(super) fn into_sentences(self) -> Vec<String> {
        let mut sentences = self.sentences;
        for (why, (named, count)) in LeftOut::ALL.iter().zip(self.left_out) {
            if count > 0 {
                let named = named.iter().map(|text| format!("\"{text}\""));
                let named = listed(named.collect(), count);
                sentences.push(format!("Left out: {named} ({}).", why.reason()));
            }
        }
        sentences
    }
}

/// The first few of `count` things, and how many more there are.
pub(super) fn listed(mut named: Vec<String>, count: usize) -> String {
    named.truncate(MOST_NAMED);
    match count - named.len() {
        0 => named.join(", "),
        more => format!("{} and {more} more", named.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_out_is_named_in_one_sentence_a_reason() {
        let mut remarks = Remarks::default();
        for n in 1..=6 {
            remarks.left_out(&format!("line {n}"), LeftOut::Line);
        }
        remarks.left_out("0", LeftOut::Speed);
        remarks.other_column("boost");
        remarks.other_column("boost");
        let sentences = remarks.into_sentences();
        assert_eq!(sentences.len(), 3);
        assert!(sentences[0].starts_with("Left out: \"boost\" (a column"));
        assert!(sentences[1].starts_with("Left out: \"0\" (an engine"));
        assert!(sentences[2].contains("\"line 4\" and 2 more ("));
    }
}
