//! What a vehicle has: the overall ratio of a gear by counting turns on the lift or by driving, and which of
//! the typed candidates that is.

use crate::gearing::{
    EngineSpeed, RoadSpeed, RollingCircumference, overall_ratio_from_speed, quantity,
};
use crate::units::percent_difference_text;

/// What rounding may leave of a ratio.
const ROUNDING: f64 = 1e-9;

quantity! {
    /// Turns that somebody has counted: 0.01 to 10000.
    Turns, new, turns, "a number of turns", "between 0.01 and 10000",
    |turns| (0.01..=10_000.0).contains(&turns)
}

quantity! {
    /// How far a count of turns may be off either way: 0 to 100.
    TurnsError, new, turns, "what a count may be off", "between 0 and 100 turns",
    |turns| (0.0..=100.0).contains(&turns)
}

quantity! {
    /// How far an engine speed that was read may be off either way: 0 to 1000 rev/min.
    EngineSpeedError, from_rpm, rpm, "what an engine speed may be off", "between 0 and 1000 rpm",
    |rpm| (0.0..=1000.0).contains(&rpm)
}

quantity! {
    /// How far a road speed that was measured may be off either way: 0 to 50 km/h.
    RoadSpeedError, from_kmh, kmh, "what a road speed may be off", "between 0 and 50 km/h",
    |kmh| (0.0..=50.0).contains(&kmh)
}

/// A count of turns, and how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counted {
    /// The turns.
    pub turns: Turns,
    /// What it may be off either way.
    pub error: TurnsError,
}

/// Something that was counted or read, from which the overall ratio of a gear follows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measured {
    /// On the lift, one wheel held and the other turned: an open differential halves its turns.
    OneWheelHeld {
        /// Turns of the engine or the input shaft.
        input: Counted,
        /// Turns of the free wheel.
        free_wheel: Counted,
    },
    /// On the lift, both wheels turned together.
    BothWheels {
        /// Turns of the engine or the input shaft.
        input: Counted,
        /// Turns of each wheel.
        wheels: Counted,
    },
    /// On the road: the engine speed at a road speed that a satellite receiver has measured.
    Driven {
        /// The engine speed.
        engine: EngineSpeed,
        /// What it may be off either way.
        engine_error: EngineSpeedError,
        /// The road speed.
        road: RoadSpeed,
        /// What it may be off either way.
        road_error: RoadSpeedError,
        /// The distance per turn of the driven tyres under load, which counts as known.
        circumference: RollingCircumference,
    },
}

/// An overall ratio that was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredRatio {
    /// Input turns for one turn of the wheels, both turning.
    pub overall_ratio: f64,
    /// How far that may be off either way.
    pub error: f64,
}

impl Measured {
    /// The overall ratio that follows.
    ///
    /// One wheel held: 2 × input turns ÷ turns of the free wheel, for the differential's case turns half as
    /// often. Both wheels: input turns ÷ wheel turns. Driven: by the law of road speed. The relative errors
    /// of both readings are added in quadrature, as those of readings that have nothing to do with each other.
    ///
    /// # Example
    /// ```
    /// use layshaft::checks::{Counted, Measured, Turns, TurnsError};
    /// let counted = |turns, error| -> Result<Counted, layshaft::gearing::OutOfRange> {
    ///     Ok(Counted { turns: Turns::new(turns)?, error: TurnsError::new(error)? })
    /// };
    /// let (input, free_wheel) = (counted(37.0, 0.25)?, counted(20.0, 0.0)?);
    /// let found = Measured::OneWheelHeld { input, free_wheel }.overall_ratio();
    /// assert!((found.overall_ratio - 3.7).abs() < 1e-12 && (found.error - 0.025).abs() < 1e-12);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn overall_ratio(&self) -> MeasuredRatio {
        match *self {
            Self::OneWheelHeld { input, free_wheel } => by_count(2.0, input, free_wheel),
            Self::BothWheels { input, wheels } => by_count(1.0, input, wheels),
            Self::Driven {
                engine,
                engine_error,
                road,
                road_error,
                circumference,
            } => {
                let [rpm, kmh] = [engine.rpm(), road.kmh()];
                let ratio = overall_ratio_from_speed(rpm, kmh, circumference.mm());
                with_errors(ratio, engine_error.rpm() / rpm, road_error.kmh() / kmh)
            }
        }
    }
}

fn by_count(factor: f64, input: Counted, wheels: Counted) -> MeasuredRatio {
    let [input_turns, wheel_turns] = [input, wheels].map(|counted| counted.turns.turns());
    let [input_error, wheel_error] = [input, wheels].map(|counted| counted.error.turns());
    let ratio = factor * input_turns / wheel_turns;
    with_errors(ratio, input_error / input_turns, wheel_error / wheel_turns)
}

/// A quotient whose two parts may each be off by such a share.
fn with_errors(overall_ratio: f64, share: f64, other_share: f64) -> MeasuredRatio {
    MeasuredRatio {
        overall_ratio,
        error: overall_ratio * share.hypot(other_share),
    }
}

/// Which of several candidates a measured ratio is.
#[derive(Debug, Clone, PartialEq)]
pub struct Nearest {
    /// The place of the nearest among the candidates, counted from 0.
    pub at: usize,
    /// How much more its ratio is than the measured one, as a share of that; below 0 where it is less.
    pub difference_share: f64,
    /// The places of all that lie within the error, in their order.
    pub within_error: Vec<usize>,
}

impl Nearest {
    /// What the measurement says of the candidates.
    pub fn verdict(&self) -> Match {
        match self.within_error.as_slice() {
            [] => Match::None,
            [_] => Match::One,
            [_, _, ..] => Match::Several,
        }
    }

    /// The same as a sentence; `name` gives what the candidate at a place is called.
    pub fn sentence(&self, name: impl Fn(usize) -> String) -> String {
        let nearest = name(self.at);
        let off = percent_difference_text(self.difference_share);
        let more = "count more turns, or read more surely";
        match self.verdict() {
            Match::None => {
                format!("no candidate is within the error; the nearest is {nearest}, {off} off")
            }
            Match::One => format!("only {nearest} is within the error, {off} off"),
            Match::Several => {
                let all: Vec<String> = self.within_error.iter().map(|at| name(*at)).collect();
                let all = all.join(", ");
                format!("{all} are all within the error, {nearest} nearest, {off} off; {more}")
            }
        }
    }
}

/// How many candidates a measurement agrees with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Match {
    /// None: the nearest is not within the error.
    None,
    /// The nearest alone.
    One,
    /// More than one: it takes more turns or a surer reading to tell them apart.
    Several,
}

impl MeasuredRatio {
    /// The nearest of the overall ratios of candidates, the first of two as near; none where there are none.
    pub fn nearest(&self, candidates: &[f64]) -> Option<Nearest> {
        let off = |candidate: f64| (candidate - self.overall_ratio).abs();
        let numbered = candidates.iter().copied().enumerate();
        let (at, ratio) = numbered
            .clone()
            .min_by(|(_, a), (_, b)| off(*a).total_cmp(&off(*b)))?;
        // What was counted without error agrees with a ratio that equals it but for rounding.
        let most_off = self.error + self.overall_ratio * ROUNDING;
        let within = numbered.filter(|(_, candidate)| off(*candidate) <= most_off);
        Some(Nearest {
            at,
            difference_share: ratio / self.overall_ratio - 1.0,
            within_error: within.map(|(at, _)| at).collect(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counted(turns: f64, error: f64) -> Counted {
        Counted {
            turns: Turns::new(turns).unwrap(),
            error: TurnsError::new(error).unwrap(),
        }
    }

    fn both_wheels(input: (f64, f64), wheels: (f64, f64)) -> MeasuredRatio {
        let (input, wheels) = (counted(input.0, input.1), counted(wheels.0, wheels.1));
        Measured::BothWheels { input, wheels }.overall_ratio()
    }

    #[test]
    fn an_open_differential_with_one_wheel_held_halves_the_turns_of_the_other() {
        let (input, free_wheel) = (counted(41.1, 0.0), counted(20.0, 0.0));
        let held = Measured::OneWheelHeld { input, free_wheel }.overall_ratio();
        let both = both_wheels((41.1, 0.0), (10.0, 0.0));
        assert!((held.overall_ratio - 4.11).abs() < 1e-12);
        assert!((both.overall_ratio - held.overall_ratio).abs() < 1e-12);
    }

    #[test]
    fn errors_of_three_and_four_per_cent_make_five() {
        let found = both_wheels((100.0, 3.0), (25.0, 1.0));
        assert!((found.error - 4.0 * 0.05).abs() < 1e-12, "{}", found.error);
        let driven = Measured::Driven {
            engine: EngineSpeed::from_rpm(3000.0).unwrap(),
            engine_error: EngineSpeedError::from_rpm(90.0).unwrap(),
            road: RoadSpeed::from_kmh(90.0).unwrap(),
            road_error: RoadSpeedError::from_kmh(3.6).unwrap(),
            circumference: RollingCircumference::from_mm(2000.0).unwrap(),
        };
        // 90 km/h are 750 turns of the wheel in a minute.
        let found = driven.overall_ratio();
        assert!((found.overall_ratio - 4.0).abs() < 1e-12);
        assert!((found.error - 0.2).abs() < 1e-12);
    }

    #[test]
    fn a_short_count_agrees_with_several_candidates_and_a_long_one_with_one() {
        let candidates = [3.7, 3.9, 4.1];
        let short = both_wheels((3.9, 0.25), (1.0, 0.0))
            .nearest(&candidates)
            .unwrap();
        assert_eq!((short.at, short.verdict()), (1, Match::Several));
        assert_eq!(short.within_error, [0, 1, 2]);
        assert_eq!(
            short.sentence(|at| candidates[at].to_string()),
            "3.7, 3.9, 4.1 are all within the error, 3.9 nearest, 0.0 % off; count more turns, or read more \
             surely"
        );
        let long = both_wheels((39.0, 0.25), (10.0, 0.0))
            .nearest(&candidates)
            .unwrap();
        assert_eq!((long.at, long.verdict()), (1, Match::One));
        let between = both_wheels((37.9, 0.25), (10.0, 0.0))
            .nearest(&candidates)
            .unwrap();
        assert_eq!((between.at, between.verdict()), (0, Match::None));
        assert_eq!(
            between.sentence(|at| candidates[at].to_string()),
            "no candidate is within the error; the nearest is 3.7, −2.4 % off"
        );
        assert!((between.difference_share - (3.7 / 3.79 - 1.0)).abs() < 1e-12);
        assert_eq!(both_wheels((39.0, 0.25), (10.0, 0.0)).nearest(&[]), None);
    }

    #[test]
    fn a_count_without_error_agrees_with_what_was_counted() {
        let found = both_wheels((37.0, 0.0), (9.0, 0.0));
        let nearest = found.nearest(&[37.0 / 9.0]).unwrap();
        assert_eq!(nearest.verdict(), Match::One);
    }
}
