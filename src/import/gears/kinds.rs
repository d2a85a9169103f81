//! The kind of a text's figures: gear ratios, overall ratios, or road speeds at 1000 rpm.
//!
//! Where a text gives gear ratios those are taken; where it gives only others they are read as what
//! the text says that they are, or as overall ratios where nothing else makes sense of them.

use super::phrases::{is_sign, phrase_at, without};
use super::tokens::{Kind, Token};
use super::words::{Meaning, meaning};
use super::{FigureKind, PastedSet};
use crate::gearing::{FinalDrive, Ratio};
use crate::import::plain::folded;
use crate::units::SpeedUnit;

const OVERALL: &str = "overall; overall ratio; overall ratios; overall gear ratio; \
     overall gear ratios; overall gearing; total; total ratio; total ratios; total reduction; \
     gesamt; gesamtubersetzung; gesamtubersetzungen; gesamtuebersetzung; \
     demultiplication totale; rapporto totale; relacion total";

/// Before a final drive that is part of the figures.
const INCLUDING: &str = "incl; including; includes; inkl; inklusive; einschliesslich; y compris; \
     compreso; incluido";

const FINAL: &str = "final drive; final; axle; rear axle; diff; differential; achse; hinterachse; \
     achsantrieb; endantrieb; pont; ponte; grupo";

/// How many gears are taken for a car's by their figures alone: a truck's box begins as short.
const MOST_OVERALL: usize = 7;

const KMH: &str = "km/h; kmh; kph; kmph";

/// What the text says of its figures.
#[derive(Debug)]
pub(super) struct Declared {
    /// Where it says "overall" or the like.
    overall: Vec<bool>,
    /// Where it says "mph per 1000 rpm" or the like.
    speeds: Vec<bool>,
    unit: Option<SpeedUnit>,
    /// Whether it says so in a line of its own above the figures.
    is_speed_heading: bool,
}

impl Declared {
    pub(super) fn of(tokens: &[Token]) -> Self {
        let unit = speed_unit(tokens);
        let thousands = thousands(tokens);
        let is_said = unit.is_some() && thousands.contains(&true);
        Self {
            overall: overall_words(tokens),
            is_speed_heading: is_said && has_speed_heading(tokens, &thousands),
            speeds: with_speed_words(tokens, thousands),
            unit: unit.filter(|_| is_said),
        }
    }

    /// Whether figures that were read as of that kind are what a heading above them says: road speeds,
    /// which rise from gear to gear, as ratios never do.
    pub(super) fn is_headed(&self, set: &PastedSet) -> bool {
        let is_speed = matches!(set.kind, FigureKind::SpeedPer1000(_));
        let (gears, ..) = set.figures();
        let mut pairs = gears.windows(2);
        self.is_speed_heading && is_speed && pairs.all(|pair| pair[0].value() < pair[1].value())
    }

    fn is_overall(&self) -> bool {
        self.overall.contains(&true)
    }

    /// The kinds that the text names, each with the text without the words that name it.
    pub(super) fn readings(&self, tokens: &[Token]) -> Vec<(FigureKind, Vec<Token>)> {
        let overall = self
            .is_overall()
            .then_some((FigureKind::Overall, &self.overall));
        let speeds = self
            .unit
            .map(|unit| (FigureKind::SpeedPer1000(unit), &self.speeds));
        let named = overall.into_iter().chain(speeds);
        named
            .map(|(kind, words)| (kind, without(tokens.to_vec(), words)))
            .collect()
    }
}

fn overall_words(tokens: &[Token]) -> Vec<bool> {
    let mut found = vec![false; tokens.len()];
    let mut at = 0;
    while at < tokens.len() {
        let overall = phrase_at(tokens, at, OVERALL).map(|(_, used)| used);
        let used = overall.or_else(|| included_final(tokens, at));
        for is_found in found.iter_mut().skip(at).take(used.unwrap_or(0)) {
            *is_found = true;
        }
        at += used.unwrap_or(1);
    }
    found
}

/// "incl. final drive"; a value behind it is that of the final drive, which then stays.
fn included_final(tokens: &[Token], at: usize) -> Option<usize> {
    let (_, word) = phrase_at(tokens, at, INCLUDING)?;
    let start = at + word + usize::from(is_sign(tokens.get(at + word), '.'));
    let (_, used) = phrase_at(tokens, start, FINAL)?;
    let behind = tokens.iter().skip(start + used).take(2);
    let has_value = behind
        .take_while(|t| t.kind != Kind::LineEnd)
        .any(|t| t.kind == Kind::Number);
    Some(if has_value {
        start - at
    } else {
        start + used - at
    })
}

fn speed_unit(tokens: &[Token]) -> Option<SpeedUnit> {
    tokens.iter().find_map(unit_of)
}

fn unit_of(token: &Token) -> Option<SpeedUnit> {
    let word = folded(&token.text);
    match token.kind {
        Kind::Word if word == "mph" => Some(SpeedUnit::Mph),
        Kind::Word if KMH.split("; ").any(|unit| unit == word) => Some(SpeedUnit::Kmh),
        _ => None,
    }
}

/// Where "per 1000 rpm" and its like stand.
fn thousands(tokens: &[Token]) -> Vec<bool> {
    let mut found = vec![false; tokens.len()];
    for at in 0..tokens.len() {
        let Some(length) = thousand(tokens, at) else {
            continue;
        };
        let before = (0..at).rev().take_while(|at| is_per(&tokens[*at])).count();
        let mut end = at + length;
        let is_slash = is_sign(tokens.get(end), '/');
        let is_unit = |token: Option<&Token>| {
            token.is_some_and(|t| t.kind == Kind::Word && meaning(&t.text) == Some(Meaning::Unit))
        };
        if is_unit(tokens.get(end + usize::from(is_slash))) {
            end += 1 + usize::from(is_slash);
        }
        // "rpm" by itself counts no gears, but 1000 of something else may.
        if before > 0 || end > at + length {
            found[at - before..end].fill(true);
        }
    }
    found
}

/// Whether a line says "km/h per 1000 rpm" or its like and names nothing else that has figures, above
/// every figure that is not a final drive's.
fn has_speed_heading(tokens: &[Token], thousands: &[bool]) -> bool {
    let mut start = 0;
    for line in tokens.split_inclusive(|t| t.kind == Kind::LineEnd) {
        let is_thousand = &thousands[start..start + line.len()];
        start += line.len();
        if is_speed_heading(line, is_thousand) {
            return true;
        }
        let is_ratio = |t: &Token| t.kind == Kind::Number && !t.is_whole();
        let is_final = (0..line.len()).any(|at| phrase_at(line, at, FINAL).is_some());
        if line.iter().any(is_ratio) && !is_final {
            return false;
        }
    }
    false
}

fn is_speed_heading(line: &[Token], is_thousand: &[bool]) -> bool {
    let is_part = |(token, is_thousand): (&Token, &bool)| match token.kind {
        _ if *is_thousand || unit_of(token).is_some() => true,
        Kind::Word => matches!(
            meaning(&token.text),
            None | Some(
                Meaning::Gear | Meaning::Gears | Meaning::Speed | Meaning::Filler | Meaning::Per
            )
        ),
        Kind::Sign(_) | Kind::LineEnd => true,
        Kind::Number | Kind::Code | Kind::Ordinal(_) => false,
    };
    is_thousand.contains(&true)
        && line.iter().any(|token| unit_of(token).is_some())
        && line.iter().zip(is_thousand).all(is_part)
}

/// How many tokens spell 1000 from `at` on.
fn thousand(tokens: &[Token], at: usize) -> Option<usize> {
    let text = |at: usize| tokens.get(at).map_or("", |t| t.text.as_str());
    let is_number = tokens[at].kind == Kind::Number;
    match text(at) {
        "1000" | "1,000" | "1.000" if is_number => Some(1),
        "1" if is_number && text(at + 1) == "000" => Some(2),
        _ => None,
    }
}

fn is_per(token: &Token) -> bool {
    match token.kind {
        Kind::Sign('/' | '@') => true,
        Kind::Word => matches!(meaning(&token.text), Some(Meaning::Per | Meaning::To)),
        _ => false,
    }
}

/// Marks the units and the word "speed" too, but not where it counts gears.
fn with_speed_words(tokens: &[Token], mut found: Vec<bool>) -> Vec<bool> {
    for (at, token) in tokens.iter().enumerate() {
        let counts = at > 0 && matches!(tokens[at - 1].kind, Kind::Number | Kind::Sign('-'));
        let is_speed = token.kind == Kind::Word
            && matches!(folded(&token.text).as_str(), "road" | "geschwindigkeit");
        let is_speed = is_speed || meaning(&token.text) == Some(Meaning::Speed);
        found[at] |= unit_of(token).is_some() || (is_speed && !counts);
    }
    found
}

/// The set with its figures taken for overall ratios, if they can hardly be gear ratios: the text
/// says so, or first is that short and top gear about as tall as the final drive.
pub(super) fn recognised(mut set: PastedSet, declared: &Declared) -> PastedSet {
    let values: Vec<f64> = {
        let (gears, ..) = set.figures();
        let shifted = set.gears.iter().zip(gears).filter(|(g, _)| !g.is_crawler);
        shifted.map(|(_, ratio)| ratio.value()).collect()
    };
    let (Some(first), Some(top)) = (values.first(), values.last()) else {
        return set;
    };
    let has_teeth = set.figures().0.iter().any(Ratio::has_teeth);
    let final_drive = set.figures().1.first().map(FinalDrive::value);
    let is_near = |final_drive: f64| (0.62..=1.3).contains(&(top / final_drive));
    let is_told = declared.is_overall() && *first >= 6.0;
    let is_evident = (2..=MOST_OVERALL).contains(&values.len())
        && (8.0..=25.0).contains(first)
        && final_drive.is_some_and(is_near);
    if !has_teeth && (is_told || is_evident) {
        set.kind = FigureKind::Overall;
        if !is_told {
            let text = &set.gears[0].ratio.text;
            let sentence = format!(
                "The figures were read as overall ratios, final drive included: first gear is \
                 {text}."
            );
            set.remarks.insert(0, sentence);
        }
    }
    set
}
