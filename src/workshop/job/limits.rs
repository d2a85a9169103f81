//! What was measured beside its limits: what is typed of each measurement, and how much is left, the worst first.

use super::answer::{Answer, JobState};
use super::field::{Field, typed};
use super::form::JobForm;
use super::said;
use crate::gearing::Name;
use crate::units::{BenchUnits, LengthUnit};
use crate::workshop::quantity::Reading;
use crate::workshop::readings::Readings;
use crate::workshop::shim::ROUNDING_MM;

/// Something that is measured against limits; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LimitItem {
    /// What is measured.
    pub name: Option<Name>,
    /// What was read; each must hold.
    pub readings: Option<Readings>,
    /// The least that it may be.
    pub least: Option<Reading>,
    /// The most that it may be.
    pub most: Option<Reading>,
}

/// What is measured against limits.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LimitsData {
    /// Each measurement.
    pub items: Vec<LimitItem>,
}

impl JobForm for LimitsData {
    const FIELDS: &'static [Field<Self>] = &[];

    type Item = LimitItem;
    const ITEM_FIELDS: &'static [Field<LimitItem>] = &[
        typed!(
            LimitItem.name,
            "What",
            Plain,
            "such as: synchroniser gap 2nd gear"
        ),
        typed!(
            LimitItem.readings,
            "Every reading",
            Length,
            "the worst counts, as 0.95 0.90 1.00"
        )
        .in_inches("the worst counts, as 38 36 40 thou")
        .list(),
        typed!(
            LimitItem.least,
            "Least",
            Length,
            "empty where there is no least"
        ),
        typed!(
            LimitItem.most,
            "Most",
            Length,
            "empty where there is no most"
        ),
    ];
    const ITEM: Option<&'static str> = Some("measurement");

    fn items(&self) -> &[LimitItem] {
        &self.items
    }

    fn items_mut(&mut self) -> Option<&mut Vec<LimitItem>> {
        Some(&mut self.items)
    }

    fn answer(&self, units: BenchUnits) -> Answer {
        let unit = units.length;
        let mut known = Vec::new();
        let mut lacking = Vec::new();
        for (number, item) in (1..).zip(&self.items) {
            match item.margin() {
                Some(margin) => known.push((item.title(number), margin)),
                None => lacking.push(item.lacking(&item.title(number))),
            }
        }
        known.sort_by(|(_, a), (_, b)| a.left_mm.total_cmp(&b.left_mm));
        let is_untouched = self.items.iter().all(|item| *item == LimitItem::default());
        let beyond = known.iter().filter(|(_, margin)| !margin.is_within());
        let beyond = beyond.count();
        let state = match (beyond, lacking.len()) {
            _ if is_untouched => JobState::Open,
            (0, 0) => JobState::Done,
            (0, _) => JobState::ToMeasure,
            _ => JobState::ToChange,
        };
        let mut answer = Answer::new(state);
        if !known.is_empty() {
            let count = known.len();
            answer = answer.result(match beyond {
                0 => format!("{count} of {count} measured within limits"),
                beyond => format!("{beyond} of {count} measured beyond its limit"),
            });
        }
        for (title, margin) in &known {
            let line = format!("{title}: {}", margin.words(unit));
            answer = if margin.is_within() {
                answer.said(line)
            } else {
                answer.warning(line)
            };
        }
        lacking.into_iter().fold(answer, Answer::said)
    }
}

/// Where a measurement stands beside the limit that is nearest to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimitMargin {
    /// The worst of the readings, in mm.
    pub worst_mm: f64,
    /// The limit that it is nearest to or beyond, in mm.
    pub limit_mm: f64,
    /// Whether that is the most that it may be; else the least.
    pub is_most: bool,
    /// How much is left up to it, in mm; below 0 it is beyond.
    pub left_mm: f64,
}

impl LimitMargin {
    /// Whether the limit holds; it belongs to what is within.
    pub fn is_within(&self) -> bool {
        self.left_mm >= -ROUNDING_MM
    }

    /// `0.85 mm, 0.05 left to the least, 0.80`.
    fn words(&self, unit: LengthUnit) -> String {
        let sign = unit.sign();
        let worst = unit.reckoned(self.worst_mm);
        let limit = unit.figure(self.limit_mm);
        let size = unit.reckoned(self.left_mm.abs());
        let which = if self.is_most { "most" } else { "least" };
        match (self.is_within(), self.is_most) {
            (true, _) => format!("{worst} {sign}, {size} left to the {which}, {limit}"),
            (false, true) => format!("{worst} {sign}, {size} above the {which}, {limit}"),
            (false, false) => format!("{worst} {sign}, {size} below the {which}, {limit}"),
        }
    }
}

impl LimitItem {
    /// Where it stands; none where nothing was read, there is no limit, or the least is above the most.
    pub fn margin(&self) -> Option<LimitMargin> {
        let readings = self.readings.as_ref()?.as_slice().iter();
        if self.is_turned() {
            return None;
        }
        let limits = [(self.least, false), (self.most, true)];
        let margins = readings.flat_map(|reading| {
            let worst_mm = reading.mm();
            let known = limits.into_iter().filter_map(|(limit, is_most)| {
                let limit_mm = limit?.mm();
                let left_mm = if is_most {
                    limit_mm - worst_mm
                } else {
                    worst_mm - limit_mm
                };
                Some(LimitMargin {
                    worst_mm,
                    limit_mm,
                    is_most,
                    left_mm,
                })
            });
            known.collect::<Vec<_>>()
        });
        margins.min_by(|a, b| a.left_mm.total_cmp(&b.left_mm))
    }

    /// Whether its least is above its most.
    fn is_turned(&self) -> bool {
        self.least
            .zip(self.most)
            .is_some_and(|(least, most)| least > most)
    }

    fn title(&self, number: u32) -> String {
        let name = self.name.as_ref().map(|name| name.as_str().to_owned());
        name.unwrap_or_else(|| format!("measurement {number}"))
    }

    /// Why nothing can be said of it.
    fn lacking(&self, title: &str) -> String {
        if self.is_turned() {
            return format!("{title}: its least is above its most");
        }
        let parts = [
            (self.readings.is_some(), "what was read"),
            (
                self.least.is_some() || self.most.is_some(),
                "the least or the most",
            ),
        ];
        let missing = said::missing_words(&parts).into_iter();
        missing.fold(title.to_owned(), |title, words| format!("{title}: {words}"))
    }
}
