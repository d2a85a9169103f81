//! Which numbers of a pasted text could be ratios, and in what shape do they stand there?

use super::tags::Tag;
use crate::gearing::{TypedRatio, parse_ratio};

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
