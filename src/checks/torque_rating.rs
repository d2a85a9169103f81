//! What the driveline is asked to bear: the box's rated input torque, the torque at an axle shaft, the speed
//! of the propeller shaft, each against a limit that somebody has typed.
//!
//! All of it is advice: a rating holds for the life and the oil that its maker had in mind.

use crate::gearing::{FinalDrive, GearId, GearSet, Position, quantity, quoted, rpm_from_speed};
use crate::motion::{Adhesion, DrivenAxle, GRAVITY_M_S2};
use crate::units::{TorqueUnit, decimals_text, percent_text, rpm_text, typed_rpm_text};
use std::f64::consts::PI;
use std::fmt;

quantity! {
    /// The torque that a gearbox or a shaft is rated for: 1 to 1000000 N·m.
    RatedTorque, from_nm, nm, "a rated torque", "between 1 and 1000000 N·m",
    |nm| (1.0..=1_000_000.0).contains(&nm)
}

quantity! {
    /// What somebody multiplies a rating by, for the use that they have in mind: 0.1 to 10.
    RatingFactor, new, factor, "a factor of a rating", "between 0.1 and 10",
    |factor| (0.1..=10.0).contains(&factor)
}

impl RatingFactor {
    /// A rating as it is.
    pub const ONE: Self = Self(1.0);
}

quantity! {
    /// The highest speed of a shaft: 1 to 30000 rev/min.
    ShaftSpeed, from_rpm, rpm, "the speed of a shaft", "between 1 and 30000 rpm",
    |rpm| (1.0..=30_000.0).contains(&rpm)
}

impl RatingFactor {
    /// The rating as it is.
    pub const AS_RATED: Self = Self(1.0);
}

/// A part of the driveline that has a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Part {
    /// The gearbox at its input, in N·m.
    GearboxInput,
    /// An axle shaft, in N·m.
    AxleShaft,
    /// The propeller shaft, in rev/min.
    PropellerShaft,
}

/// What a part bears, beside its limit, both in the unit of the part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Borne {
    /// The part.
    pub part: Part,
    /// What it is asked to bear.
    pub load: f64,
    /// What it may bear, above 0.
    pub limit: f64,
}

impl Borne {
    /// The load as a share of the limit.
    pub fn share(&self) -> f64 {
        self.load / self.limit
    }

    /// Whether it is more than the limit.
    pub fn is_too_much(&self) -> bool {
        self.load > self.limit
    }

    /// The same as a sentence, with torques in that unit. It is advice, and says so.
    pub fn sentence(&self, unit: TorqueUnit) -> String {
        let [load, limit] = [self.load, self.limit];
        let figures = match self.part {
            Part::GearboxInput | Part::AxleShaft => {
                let [load, limit] = [load, limit].map(|nm| decimals_text(unit.from_nm(nm), 0));
                let sign = unit.sign();
                format!("{load} {sign} of {limit} {sign}")
            }
            Part::PropellerShaft => {
                format!("{} rpm of {} rpm", rpm_text(load), typed_rpm_text(limit))
            }
        };
        let percent = percent_text(self.share());
        let verb = match self.part {
            Part::GearboxInput => "the gearbox gets at its input",
            Part::AxleShaft => "each axle shaft gets",
            Part::PropellerShaft => "the propeller shaft turns",
        };
        let advice = if self.is_too_much() {
            "more than its limit; this is advice, for a limit holds for the use that its maker had in mind"
        } else {
            "within its limit, which holds for the use that its maker had in mind"
        };
        format!("{verb} {figures} ({percent} %), {advice}")
    }
}

/// The peak torque of the engine in N·m, against what the gearbox takes at its input: rating × factor.
pub fn input_torque(engine_peak_nm: f64, rated: RatedTorque, factor: RatingFactor) -> Borne {
    Borne {
        part: Part::GearboxInput,
        load: engine_peak_nm,
        limit: rated.nm() * factor.factor(),
    }
}

/// The forward gear with the most torque at the wheels, with every stage in its lowest position.
#[derive(Debug, Clone, PartialEq)]
pub struct LowestGear {
    /// Its label.
    pub label: String,
    /// The positions that stages of more than one stand in, in their order.
    pub positions: Vec<String>,
    /// Engine turns per wheel turn, all stages included.
    pub overall_ratio: f64,
}

impl LowestGear {
    /// That of a set, crawlers included.
    pub fn of(set: &GearSet) -> Option<Self> {
        let gears = set.gears.iter().map(|gear| {
            let lowest: Vec<(&Position, bool)> = lowest_positions(set, gear.id).collect();
            let stages: f64 = lowest.iter().map(|(at, _)| at.ratio.value()).product();
            let final_drive = set.final_drives.get(gear.final_drive);
            let final_drive = final_drive.map_or(1.0, FinalDrive::value);
            let chosen = lowest.iter().filter(|(_, is_chosen)| *is_chosen);
            Self {
                label: gear.label.to_string(),
                positions: chosen.map(|(at, _)| at.name.to_string()).collect(),
                overall_ratio: gear.ratio.value() * final_drive * stages,
            }
        });
        gears.max_by(|a, b| a.overall_ratio.total_cmp(&b.overall_ratio))
    }
}

impl fmt::Display for LowestGear {
    /// As it stands in a sentence: `gear 1`, `gear 1 (Low)`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "gear {}", self.label)?;
        match self.positions.as_slice() {
            [] => Ok(()),
            positions => write!(f, " ({})", quoted(&positions.join(", "))),
        }
    }
}

/// The lowest position of every stage that acts on a gear, and whether the stage has another.
fn lowest_positions(set: &GearSet, gear: GearId) -> impl Iterator<Item = (&Position, bool)> {
    let acting = set
        .stages
        .iter()
        .filter(move |stage| stage.acts_on.includes(gear));
    acting.filter_map(|stage| {
        let positions = stage.positions.iter();
        let lowest = positions.max_by(|a, b| a.ratio.value().total_cmp(&b.ratio.value()))?;
        Some((lowest, stage.positions.len() > 1))
    })
}

/// How many shafts share the torque of the driven wheels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum SharingShafts {
    /// One: a chain, or a differential that is locked with the other wheel in the air.
    One,
    /// The two of one axle, behind an open differential.
    #[default]
    Two,
    /// The four of two axles that share alike.
    Four,
}

impl SharingShafts {
    /// Those of the axles that are driven, each with a differential.
    pub fn of(driven: DrivenAxle) -> Self {
        match driven {
            DrivenAxle::Front | DrivenAxle::Rear => Self::Two,
            DrivenAxle::All => Self::Four,
        }
    }

    /// How many they are.
    pub fn count(self) -> u8 {
        match self {
            Self::One => 1,
            Self::Two => 2,
            Self::Four => 4,
        }
    }
}

/// What the driven tyres hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeldByTyres {
    /// How well tyre and road hold.
    pub adhesion: Adhesion,
    /// The mass that stands on the driven wheels, in kg.
    pub driven_kg: f64,
    /// Their distance per turn under load, in mm.
    pub rolling_circumference_mm: f64,
}

impl HeldByTyres {
    /// The torque in N·m at which all driven wheels together spin: μ · m · g · r, r the rolling
    /// circumference ÷ 2π.
    pub fn torque_nm(&self) -> f64 {
        let radius_m = self.rolling_circumference_mm / 1000.0 / (2.0 * PI);
        self.adhesion.value() * self.driven_kg * GRAVITY_M_S2 * radius_m
    }
}

/// The torque at each axle shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShaftTorque {
    /// What the engine makes of it, in N·m.
    pub by_engine_nm: f64,
    /// What the tyres hold of it, in N·m; none where that is not known.
    pub by_grip_nm: Option<f64>,
}

impl ShaftTorque {
    /// At each of the shafts that share it: engine torque × overall ratio ÷ shafts, no more than the tyres
    /// hold ÷ shafts. Losses are left out, which is on the safe side.
    pub fn of(
        engine_nm: f64,
        overall_ratio: f64,
        shafts: SharingShafts,
        tyres: Option<HeldByTyres>,
    ) -> Self {
        let count = f64::from(shafts.count());
        Self {
            by_engine_nm: engine_nm * overall_ratio / count,
            by_grip_nm: tyres.map(|tyres| tyres.torque_nm() / count),
        }
    }

    /// What the shaft has to bear, in N·m: the smaller of both.
    pub fn nm(&self) -> f64 {
        self.by_grip_nm
            .map_or(self.by_engine_nm, |grip| grip.min(self.by_engine_nm))
    }

    /// Whether the tyres spin before the engine's torque is there.
    pub fn is_capped_by_grip(&self) -> bool {
        self.by_grip_nm.is_some_and(|grip| grip < self.by_engine_nm)
    }

    /// The same against what the shaft is rated for.
    pub fn against(&self, limit: RatedTorque) -> Borne {
        Borne {
            part: Part::AxleShaft,
            load: self.nm(),
            limit: limit.nm(),
        }
    }
}

/// The speed of the propeller shaft at a road speed, in rev/min, against the highest that it may have:
/// 1000 · v ÷ 60 ÷ U × final drive.
///
/// # Units
/// * `top_kmh`: road speed in km/h
/// * `final_drive`: turns of the propeller shaft per wheel turn
/// * `rolling_circumference_mm`: distance per wheel turn under load, in mm, above 0
///
/// # Source
/// The law of road speed, behind the gearbox: French arrêté of 27 March 1979, article 2.
pub fn propeller_shaft_speed(
    top_kmh: f64,
    final_drive: f64,
    rolling_circumference_mm: f64,
    limit: ShaftSpeed,
) -> Borne {
    Borne {
        part: Part::PropellerShaft,
        load: rpm_from_speed(top_kmh, final_drive, rolling_circumference_mm),
        limit: limit.rpm(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rated(nm: f64) -> RatedTorque {
        RatedTorque::from_nm(nm).unwrap()
    }

    #[test]
    fn a_factor_makes_more_of_a_rating() {
        let factor = RatingFactor::new(1.2).unwrap();
        let borne = input_torque(330.0, rated(300.0), factor);
        assert!(!borne.is_too_much());
        let borne = input_torque(330.0, rated(300.0), RatingFactor::AS_RATED);
        assert_eq!(
            borne.sentence(TorqueUnit::NewtonMetre),
            "the gearbox gets at its input 330 N·m of 300 N·m (110.0 %), more than its limit; this is advice, \
             for a limit holds for the use that its maker had in mind"
        );
    }

    #[test]
    fn the_tyres_spin_before_the_shafts_get_more_than_they_hold() {
        let tyres = HeldByTyres {
            adhesion: Adhesion::new(0.8).unwrap(),
            driven_kg: 1000.0,
            rolling_circumference_mm: 2000.0 * PI,
        };
        // 0.8 × 1000 kg × 9.80665 m/s² × 1 m on two shafts.
        let torque = |ratio| ShaftTorque::of(300.0, ratio, SharingShafts::Two, Some(tyres));
        assert!((torque(100.0).nm() - 3922.66).abs() < 1e-6);
        assert!(torque(100.0).is_capped_by_grip());
        assert!((torque(20.0).nm() - 3000.0).abs() < 1e-9);
        assert!(!torque(20.0).is_capped_by_grip());
        let unknown = ShaftTorque::of(300.0, 100.0, SharingShafts::Four, None);
        assert!((unknown.nm() - 7500.0).abs() < 1e-9);
        assert!(unknown.against(rated(7499.0)).is_too_much());
        assert!(!unknown.against(rated(7501.0)).is_too_much());
    }

    #[test]
    fn a_propeller_shaft_turns_by_the_final_drive_faster_than_the_wheels() {
        let limit = ShaftSpeed::from_rpm(4000.0).unwrap();
        // 120 km/h are 1000 turns a minute of a wheel of 2 m.
        let borne = propeller_shaft_speed(120.0, 4.1, 2000.0, limit);
        assert!((borne.load - 4100.0).abs() < 1e-9 && borne.is_too_much());
        let sentence = borne.sentence(TorqueUnit::NewtonMetre);
        assert!(
            sentence.starts_with("the propeller shaft turns 4100 rpm of 4000 rpm (102.5 %), more"),
            "{sentence}"
        );
    }
}
