//! The pieces of a line: labels, numbers that could be ratios, and what stands between them.
//!
//! Teeth and the decimal beside them are one number where the two agree.

use super::remarks::Remarks;
use crate::gearing::{TypedRatio, parse_ratio, quoted};

/// A part of a line, understood as far as it can be by itself.
#[derive(Debug, Clone)]
pub(super) enum Piece {
    /// Says what the value beside it is.
    Tag(Tag),
    /// Several gears: `1st–4th`, `5, 6 & R`.
    Gears(Vec<Tag>),
    /// A number that could be a ratio.
    Amount(Amount),
    /// A number that was left out.
    LeftOut,
    /// What stands in brackets.
    Bracket(Line),
    /// A comma, semicolon, slash, pipe or tab.
    Break(char),
    /// "and".
    And,
    /// A dash between two things.
    Dash,
    /// "to".
    To,
    /// "for": the gears behind it are those of the value before it.
    For,
    /// "ratio".
    Heading,
    /// Opens a row or heads a column of something else.
    Measure,
    /// "speeds": as `Measure`, but gears with labels behind it are gears of a gearbox.
    Speeds,
    /// Has one number of its own that is no ratio.
    Property,
    /// A further stage of the drivetrain.
    Stage,
    /// A word or code that is not known.
    Unknown,
}

/// The parts of one line, or of one pair of brackets.
pub(super) type Line = Vec<Piece>;

impl Piece {
    /// The number, where it could be a ratio.
    pub(super) fn amount(&self) -> Option<&Amount> {
        match self {
            Self::Amount(amount) => Some(amount),
            _ => None,
        }
    }

    /// The gear that a bare whole number could name.
    pub(super) fn whole_gear(&self) -> Option<u8> {
        match self {
            Self::Amount(amount) => amount.gear(),
            _ => None,
        }
    }

    /// What it says that values are; nothing, unless it is a label.
    pub(super) fn tags(&self) -> &[Tag] {
        match self {
            Self::Tag(tag) => std::slice::from_ref(tag),
            Self::Gears(gears) => gears,
            _ => &[],
        }
    }

    /// Whether it is a number, taken or left out.
    pub(super) fn is_number(&self) -> bool {
        matches!(self, Self::Amount(_) | Self::LeftOut)
    }

    /// Whether it says what a value is.
    pub(super) fn is_label(&self) -> bool {
        matches!(self, Self::Tag(_) | Self::Gears(_))
    }

    /// Whether it is a number whose shape is not a bare whole one.
    pub(super) fn is_broken_number(&self) -> bool {
        matches!(self, Self::Amount(amount) if amount.shape != Shape::Whole)
    }
}

/// What a value is, as far as its label says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tag {
    /// A forward gear, 1 to 12.
    Gear(u8),
    /// One half of a split gear, `1L` or `1H`.
    Half(u8, char),
    /// A gear with the overdrive in.
    Overdriven(u8),
    /// A gear that is called just overdrive.
    Overdrive,
    /// The highest gear, without its number.
    Top,
    /// Opposite of low: top gear, or a transfer box in high.
    High,
    /// A crawler, the first of three, or a transfer box in low.
    Low,
    /// A gear below first.
    Crawler,
    /// The reverse gear.
    Reverse,
    /// A final drive.
    Final,
}

impl Tag {
    /// The gear of that number, where a set can have one.
    pub(super) fn gear(number: &str) -> Option<Self> {
        let is_short = number.len() <= 2 && !number.starts_with('0');
        let number = number.parse::<u8>().ok().filter(|_| is_short)?;
        (1..=12).contains(&number).then_some(Self::Gear(number))
    }

    /// Whether it names a forward gear.
    pub(super) fn is_forward(self) -> bool {
        !matches!(self, Self::Reverse | Self::Final)
    }

    /// Where the gear stands in a set that runs from the shortest to the tallest.
    pub(super) fn place(self) -> u16 {
        match self {
            Self::Crawler => 0,
            Self::Low => 1,
            Self::Gear(n) | Self::Half(n, 'L') => 10 * u16::from(n),
            Self::Half(n, _) | Self::Overdriven(n) => 10 * u16::from(n) + 5,
            Self::Top | Self::High => 200,
            Self::Overdrive => 201,
            Self::Reverse | Self::Final => 300,
        }
    }
}

/// How a number is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// A bare whole number: a ratio, a gear's number, a year.
    Whole,
    /// A number with a decimal mark.
    Decimal,
    /// With ":1".
    ToOne,
    /// From tooth counts.
    Teeth,
}

/// In which order tooth counts stand, where a decimal beside them shows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PairOrder {
    /// Driven before driving.
    DrivenFirst,
    /// Driving before driven.
    DrivingFirst,
}

/// A number that could be a ratio.
#[derive(Debug, Clone)]
pub(super) struct Amount {
    /// What `parse_ratio` reads.
    pub(super) text: String,
    pub(super) shape: Shape,
    /// What it is as a ratio, if it can be one.
    pub(super) ratio: Option<TypedRatio>,
    /// Whether a minus stands before it.
    pub(super) is_negative: bool,
    /// Whether a word that says nothing stands before it.
    pub(super) is_after_unknown: bool,
    /// The gears in brackets behind it.
    pub(super) gears: Vec<Tag>,
    /// What a decimal beside the teeth shows.
    pub(super) order: Option<PairOrder>,
}

impl Amount {
    pub(super) fn new(text: String, shape: Shape) -> Self {
        let ratio = parse_ratio(&text).ok();
        Self {
            text,
            shape,
            ratio,
            is_negative: false,
            is_after_unknown: false,
            gears: Vec::new(),
            order: None,
        }
    }

    /// The ratio with the first of two counts driven.
    pub(super) fn value(&self) -> Option<f64> {
        self.ratio.as_ref().map(|r| r.driven_first().value())
    }

    /// How many digits stand behind the decimal mark.
    pub(super) fn decimals(&self) -> usize {
        let number = self.text.split(':').next().unwrap_or_default();
        number.split_once(['.', ',']).map_or(0, |(_, d)| d.len())
    }

    /// The number of the gear that a bare whole number could name.
    pub(super) fn gear(&self) -> Option<u8> {
        match Tag::gear(&self.text) {
            Some(Tag::Gear(n)) if self.shape == Shape::Whole && !self.is_negative => Some(n),
            _ => None,
        }
    }

    /// Whether it can be a ratio; without a label only what is usual in a gearbox.
    pub(super) fn is_plausible(&self, has_label: bool) -> bool {
        let (lowest, highest, highest_whole) = if has_label {
            (0.001, 400.0, 20.0)
        } else {
            (0.1, 40.0, 12.0)
        };
        let either_way = |ratio: &TypedRatio| {
            let ratios = [Some(ratio.driven_first()), ratio.driving_first()];
            ratios.into_iter().flatten().any(|r| {
                let value = r.value();
                let is_usual = self.shape != Shape::Whole || value <= highest_whole;
                (lowest..=highest).contains(&value) && is_usual
            })
        };
        self.ratio.as_ref().is_some_and(either_way)
    }

    /// Writes its tooth pairs driven first, where they stood the other way.
    pub(super) fn write_driven_first(&mut self) {
        let turned = self.ratio.as_ref().and_then(TypedRatio::driving_first);
        if let Some(turned) = turned {
            self.text = turned.to_string();
            self.ratio = parse_ratio(&self.text).ok();
            self.order = Some(PairOrder::DrivenFirst);
        }
    }
}

/// Merges teeth with the decimal next to them where the two agree, in `34/9 3.778` as in the
/// columns `34 9 3.778`.
pub(super) fn merged(amounts: Vec<Amount>) -> Vec<Amount> {
    let mut merged: Vec<Amount> = Vec::with_capacity(amounts.len());
    for amount in amounts {
        if let Some(pair) = columns_of_teeth(&merged, &amount) {
            merged.truncate(merged.len() - 2);
            merged.push(pair);
        } else if let Some(both) = merged.last().and_then(|last| agreeing(last, &amount)) {
            merged.pop();
            merged.push(both);
        } else {
            merged.push(amount);
        }
    }
    merged
}

/// The ratio from `first` and what stands in brackets behind it, if those are teeth and a number.
///
/// Where they disagree the teeth are taken and it is said.
pub(super) fn checked(first: &Amount, second: &Amount, remarks: &mut Remarks) -> Option<Amount> {
    let (teeth, number) = teeth_and_number(first, second)?;
    let agreed = agreeing(first, second);
    if agreed.is_none() {
        remarks.say(format!(
            "The teeth {} do not give {}; the teeth were taken.",
            quoted(&teeth.text),
            quoted(&number.text)
        ));
    }
    Some(agreed.unwrap_or_else(|| teeth.clone()))
}

fn teeth_and_number<'a>(a: &'a Amount, b: &'a Amount) -> Option<(&'a Amount, &'a Amount)> {
    let is_number = |amount: &Amount| matches!(amount.shape, Shape::Decimal | Shape::ToOne);
    match (a.shape, b.shape) {
        (Shape::Teeth, _) if is_number(b) => Some((a, b)),
        (_, Shape::Teeth) if is_number(a) => Some((b, a)),
        _ => None,
    }
}

fn agreeing(a: &Amount, b: &Amount) -> Option<Amount> {
    let (teeth, number) = teeth_and_number(a, b)?;
    let mut both = teeth.clone();
    both.order = Some(order_that_gives(teeth, number)?);
    both.is_negative = a.is_negative || b.is_negative;
    both.is_after_unknown = a.is_after_unknown;
    both.gears.extend(&a.gears);
    Some(both)
}

/// The order of the pairs in which they come to the number, within its last digit.
///
/// Data sheets round and cut off: one unit of the last digit is allowed either way.
fn order_that_gives(teeth: &Amount, number: &Amount) -> Option<PairOrder> {
    let target = number.value()?;
    let unit = 0.1_f64.powi(i32::try_from(number.decimals().min(9)).unwrap_or(9));
    let gives = |value: f64| (value - target).abs() < unit * 1.000_001;
    let ratio = teeth.ratio.as_ref()?;
    if gives(ratio.driven_first().value()) {
        Some(PairOrder::DrivenFirst)
    } else if ratio.driving_first().is_some_and(|r| gives(r.value())) {
        Some(PairOrder::DrivingFirst)
    } else {
        None
    }
}

/// The pair, if the two before `number` are counts in columns of their own.
fn columns_of_teeth(before: &[Amount], number: &Amount) -> Option<Amount> {
    let [.., first, second] = before else {
        return None;
    };
    if [first.shape, second.shape] != [Shape::Whole; 2] || number.shape != Shape::Decimal {
        return None;
    }
    let pair = Amount::new(format!("{}:{}", first.text, second.text), Shape::Teeth);
    agreeing(&pair, number)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(amounts: &[(&str, Shape)]) -> Vec<String> {
        let amounts = amounts
            .iter()
            .map(|(text, shape)| Amount::new((*text).to_owned(), *shape))
            .collect();
        merged(amounts).into_iter().map(|a| a.text).collect()
    }

    #[test]
    fn a_decimal_that_agrees_is_one_with_its_teeth() {
        use Shape::{Decimal, Teeth, Whole};
        assert_eq!(texts(&[("34/9", Teeth), ("3.778", Decimal)]), ["34/9"]);
        assert_eq!(texts(&[("3.77", Decimal), ("34/9", Teeth)]), ["34/9"]);
        assert_eq!(texts(&[("9/34", Teeth), ("3.8", Decimal)]), ["9/34"]);
        assert_eq!(
            texts(&[("34", Whole), ("9", Whole), ("3.778", Decimal)]),
            ["34:9"]
        );
    }

    #[test]
    fn a_decimal_that_does_not_agree_is_another_ratio() {
        let texts = texts(&[("34/9", Shape::Teeth), ("2.235", Shape::Decimal)]);
        assert_eq!(texts, ["34/9", "2.235"]);
    }

    #[test]
    fn in_brackets_a_disagreement_is_said_and_the_teeth_are_taken() {
        let mut remarks = Remarks::default();
        let number = Amount::new("3.87".to_owned(), Shape::Decimal);
        let teeth = Amount::new("34:9".to_owned(), Shape::Teeth);
        let taken = checked(&number, &teeth, &mut remarks).unwrap();
        assert_eq!(taken.text, "34:9");
        assert!(remarks.into_sentences()[0].contains("34:9 do not give 3.87"));
    }
}
