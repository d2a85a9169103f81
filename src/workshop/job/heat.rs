//! What heat makes of an end play: what is typed of it, and the setting on the road.

use super::answer::{Answer, JobState};
use super::field::{Choice, Field, chosen, typed};
use super::form::{JobForm, no_items};
use super::said::{self, Part};
use crate::gearing::OutOfRange;
use crate::units::{BenchUnits, LengthUnit, round_to};
use crate::workshop::heat::{Arrangement, HeatChange, Material};
use crate::workshop::quantity::{Celsius, Depth, Expansion, Setting, SettingBand, Tolerance};
use crate::workshop::shim::ROUNDING_MM;

/// What a part is made of, by its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MaterialName {
    /// Steel.
    Steel,
    /// Bearing steel.
    BearingSteel,
    /// Aluminium.
    Aluminium,
    /// Another one, whose expansion is typed.
    Other,
}

impl Choice for MaterialName {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::Steel, "steel: 12 millionths per K"),
        (Self::BearingSteel, "bearing steel: 12.5 millionths per K"),
        (Self::Aluminium, "aluminium: 23 millionths per K"),
        (Self::Other, "another, as cast iron"),
    ];
}

impl MaterialName {
    /// The material, with the expansion that is typed for another one.
    pub(super) fn material(self, typed: Option<Expansion>) -> Option<Material> {
        match self {
            Self::Steel => Some(Material::Steel),
            Self::BearingSteel => Some(Material::BearingSteel),
            Self::Aluminium => Some(Material::Aluminium),
            Self::Other => typed.map(Material::Other),
        }
    }
}

impl Choice for Arrangement {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::FaceToFace, "face to face, cups adjusted: the usual"),
        (Self::BackToBack, "back to back, cones adjusted"),
    ];
}

/// What is known of an end play that heat changes; each part may be absent.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatData {
    /// How the bearings stand.
    pub arrangement: Arrangement,
    /// What the case is of.
    pub case: MaterialName,
    /// Its expansion, where that has no name here.
    pub case_expansion: Option<Expansion>,
    /// What the shaft is of.
    pub shaft: MaterialName,
    /// Its expansion, where that has no name here.
    pub shaft_expansion: Option<Expansion>,
    /// The distance of the bearings' seats.
    pub seats: Option<Depth>,
    /// How warm it is at the bench.
    pub bench_temperature: Option<Celsius>,
    /// How warm the case runs.
    pub case_temperature: Option<Celsius>,
    /// How warm the shaft runs.
    pub shaft_temperature: Option<Celsius>,
    /// What is set at the bench.
    pub bench: Option<SettingBand>,
    /// How much end play there may be when it runs.
    pub most: Option<Tolerance>,
}

impl Default for HeatData {
    /// The usual gearbox: a steel shaft in an aluminium case.
    fn default() -> Self {
        Self {
            arrangement: Arrangement::FaceToFace,
            case: MaterialName::Aluminium,
            case_expansion: None,
            shaft: MaterialName::Steel,
            shaft_expansion: None,
            seats: None,
            bench_temperature: None,
            case_temperature: None,
            shaft_temperature: None,
            bench: None,
            most: None,
        }
    }
}

impl JobForm for HeatData {
    const FIELDS: &'static [Field<Self>] = &[
        chosen!(HeatData.arrangement: Arrangement, "The bearings stand", "face to face the cups (races) are adjusted; the sign hangs on it"),
        chosen!(HeatData.case: MaterialName, "The case is of", ""),
        typed!(
            HeatData.case_expansion,
            "Expansion of the case",
            Plain,
            "millionths per K: steel 12, aluminium 23"
        )
        .when(|data| data.case == MaterialName::Other),
        chosen!(HeatData.shaft: MaterialName, "The shaft is of", ""),
        typed!(
            HeatData.shaft_expansion,
            "Expansion of the shaft",
            Plain,
            "millionths per K: steel 12, aluminium 23"
        )
        .when(|data| data.shaft == MaterialName::Other),
        typed!(
            HeatData.seats,
            "Distance of the seats",
            Length,
            "of both bearings, along the shaft"
        ),
        typed!(
            HeatData.bench_temperature,
            "At the bench, °C",
            Plain,
            "as 20, or 68 °F"
        ),
        typed!(
            HeatData.case_temperature,
            "The case runs at, °C",
            Plain,
            "as 80, or −20 for a start in winter"
        ),
        typed!(
            HeatData.shaft_temperature,
            "The shaft runs at, °C",
            Plain,
            "often some degrees above the case"
        ),
        typed!(
            HeatData.bench,
            "Set at the bench",
            Plain,
            "as clearance 0.05 to 0.10, or preload 0.02"
        )
        .in_inches("as clearance 0.002 to 0.004"),
        typed!(
            HeatData.most,
            "End play, at most",
            Length,
            "end float when it runs; empty: no limit"
        ),
    ];

    no_items!();

    fn answer(&self, units: BenchUnits) -> Answer {
        let unit = units.length;
        let change = match self.change() {
            Some(Ok(change)) => change.end_play_mm(),
            Some(Err(problem)) => {
                return Answer::new(JobState::ToMeasure).warning(problem.to_string());
            }
            None => {
                let untouched = Self {
                    arrangement: self.arrangement,
                    case: self.case,
                    shaft: self.shaft,
                    ..Self::default()
                };
                return said::lacking(*self == untouched, &self.parts());
            }
        };
        let changes = change_words(change, unit);
        match (self.bench, self.running()) {
            (Some(bench), Some(running)) => self.judged(bench, running, unit).said(changes),
            (Some(_), None) => Answer::new(JobState::ToMeasure).warning(format!(
                "{changes}, which is more than any setting: look at distance and temperatures again"
            )),
            (None, _) => Answer::new(JobState::ToMeasure)
                .result(changes)
                .said("still missing: what is set at the bench"),
        }
    }
}

impl HeatData {
    /// The shaft in its case, where all of it is known.
    ///
    /// # Errors
    /// When something would be warmer than anything in a gearbox is.
    pub fn change(&self) -> Option<Result<HeatChange, OutOfRange>> {
        let bench = self.bench_temperature?;
        let [case, shaft] = [self.case_temperature?, self.shaft_temperature?];
        let materials = [
            self.case.material(self.case_expansion)?,
            self.shaft.material(self.shaft_expansion)?,
        ];
        let seats = self.seats?;
        let rises = case
            .rise_from(bench)
            .and_then(|case| Ok([case, shaft.rise_from(bench)?]));
        Some(rises.map(|[case_rise, shaft_rise]| HeatChange {
            arrangement: self.arrangement,
            case: materials[0],
            shaft: materials[1],
            case_rise,
            shaft_rise,
            seats_mm: seats.mm(),
        }))
    }

    /// The setting when it runs; none where something is missing, or it is more than any setting is.
    pub fn running(&self) -> Option<SettingBand> {
        let change_mm = self.change()?.ok()?.end_play_mm();
        let bench = self.bench?;
        let [low, high] = [bench.low(), bench.high()].map(|end| {
            // To the nanometre: what rounding leaves is no preload.
            Setting::from_mm(round_to(end.mm() + change_mm, 1e-6))
        });
        SettingBand::new(low.ok()?, high.ok()?)
    }

    /// What must be known before anything can be said, and whether it is.
    fn parts(&self) -> [Part; 6] {
        let [case, shaft] = [
            self.case.material(self.case_expansion),
            self.shaft.material(self.shaft_expansion),
        ];
        [
            (case.is_some(), "the expansion of the case"),
            (shaft.is_some(), "the expansion of the shaft"),
            (self.seats.is_some(), "the distance of the seats"),
            (
                self.bench_temperature.is_some(),
                "the temperature at the bench",
            ),
            (
                self.case_temperature.is_some(),
                "the temperature of the case",
            ),
            (
                self.shaft_temperature.is_some(),
                "the temperature of the shaft",
            ),
        ]
    }

    /// The setting when it runs beside what it may be.
    fn judged(&self, bench: SettingBand, running: SettingBand, unit: LengthUnit) -> Answer {
        let is_play = bench.low().mm() >= 0.0;
        let tightens = is_play && running.low().mm() < -ROUNDING_MM;
        let most = self.most.map(Tolerance::mm);
        let beyond = most.filter(|most| running.high().mm() > most + ROUNDING_MM);
        let loses = bench.low().mm() < 0.0 && running.high().mm() > ROUNDING_MM;
        let state = if tightens || beyond.is_some() {
            JobState::ToChange
        } else {
            JobState::Done
        };
        let words = running.reckoned_words(unit);
        let mut answer = Answer::new(state).result(format!("when it runs: {words}"));
        if tightens {
            answer = answer.warning(
                "the clearance of the bench becomes preload when it runs: the bearings may run hot and seize",
            );
        }
        if let Some(most) = beyond {
            let (most, sign) = (unit.figure(most), unit.sign());
            answer = answer.warning(format!(
                "when it runs there is more end play than {most} {sign}"
            ));
        }
        if loses {
            answer = answer.warning(
                "preload of the bench is lost when it runs: the maker's figure for the bench may reckon with that",
            );
        }
        answer
    }
}

/// `the end play grows by 0.099 mm`.
fn change_words(change_mm: f64, unit: LengthUnit) -> String {
    let size = unit.reckoned(change_mm.abs());
    let grows = if change_mm < 0.0 { "shrinks" } else { "grows" };
    format!("the end play (end float) {grows} by {size} {}", unit.sign())
}
