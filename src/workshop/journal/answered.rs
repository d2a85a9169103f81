//! What is left of a shaft that is turned down, beside what was asked of it, in words.

use super::fillet::{SHOULDER_SHARES, fillet_factor};
use super::quantity::{FilletRadius, ShaftTorque};
use super::stop::MeantShaft;
use super::turned::TurnedShaft;
use crate::units::{
    LengthUnit, NMM_PER_NM, TurningUnit, decimals_text, percent_text, plain_number, round_to,
};
use crate::workshop::fits::Diameter;

/// A shaft that is turned down, and what was asked of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnsweredJournal {
    /// The shaft as somebody means it.
    pub meant: MeantShaft,
    /// The same as it will be.
    pub turned: TurnedShaft,
    /// The torque that it carries, where that is known.
    pub torque: Option<ShaftTorque>,
    /// The fillet at the shoulder, where it is known.
    pub fillet: Option<FilletRadius>,
    /// The diameter of the shoulder.
    pub shoulder: Diameter,
}

/// What rounding may leave of a length, in mm.
const ROUNDING_MM: f64 = 1e-9;

/// Below this share of its strength a shaft is not turned down unasked: common practice, no source.
const WEAK_SHARE: f64 = 0.75;

impl AnsweredJournal {
    /// The shear in MPa at the torque, nominal at the new diameter.
    pub fn shear_mpa(&self) -> Option<f64> {
        self.torque.map(|torque| self.turned.shear_mpa(torque))
    }

    /// How deep the hardened layer still is, in mm.
    pub fn case_left_mm(&self) -> Option<f64> {
        let depth = self.meant.case_depth?;
        Some(self.turned.case_left_mm(depth))
    }

    /// The stress factor of the fillet in torsion; none outside the table, and none of a fillet that finds no room.
    pub fn stress_factor(&self) -> Option<f64> {
        let fillet = self.fillet.filter(|_| self.fillet_has_room())?;
        fillet_factor(self.meant.new, self.shoulder, fillet)
    }

    /// Whether the step up to the shoulder is as high as the fillet; so where none is known.
    pub fn fillet_has_room(&self) -> bool {
        let most_mm = self.step_mm() + ROUNDING_MM;
        self.fillet.is_none_or(|fillet| fillet.mm() <= most_mm)
    }

    /// How high the shoulder stands above the new diameter, in mm.
    fn step_mm(&self) -> f64 {
        (self.shoulder.mm() - self.meant.new.mm()) / 2.0
    }

    /// That so much of the strength goes that nobody should reckon on the rest unasked.
    pub fn weak_words(&self) -> Option<String> {
        let share = self.turned.strength_share();
        (share < WEAK_SHARE).then(|| {
            format!(
                "only {} % of the strength is left: whether it bears its torque, its maker or an engineer must say",
                percent_text(share)
            )
        })
    }

    /// What is left of strength and stiffness.
    pub fn left_words(&self, unit: LengthUnit) -> String {
        format!(
            "from {} to {} {}: {} % of the strength is left there, {} % of the stiffness",
            length_text(self.meant.old.mm(), unit),
            length_text(self.meant.new.mm(), unit),
            unit.sign(),
            percent_text(self.turned.strength_share()),
            percent_text(self.turned.stiffness_share())
        )
    }

    /// The shear at the torque; nothing where none is known.
    pub fn shear_words(&self, unit: TurningUnit) -> Option<String> {
        let (torque, shear_mpa) = self.torque.zip(self.shear_mpa())?;
        let shear = decimals_text(shear_mpa, 1);
        let torque = unit.figure(torque.nm() * NMM_PER_NM);
        let sign = unit.sign();
        Some(format!(
            "shear {shear} MPa at {torque} {sign}, nominal at the new diameter"
        ))
    }

    /// What is left of the hardened layer; nothing where its depth is not known.
    pub fn case_words(&self, unit: LengthUnit) -> Option<String> {
        let (depth, left_mm) = self.meant.case_depth.zip(self.case_left_mm())?;
        let [left, depth] = [left_mm, depth.mm()].map(|mm| length_text(mm, unit));
        let sign = unit.sign();
        Some(format!(
            "of the hardened layer {left} of {depth} {sign} are left"
        ))
    }

    /// The stress factor of the fillet, or why there is none; nothing where no fillet is known.
    pub fn fillet_words(&self, unit: LengthUnit) -> Option<String> {
        let says = match self.stress_factor() {
            None if !self.fillet_has_room() => {
                let step = length_text(self.step_mm().max(0.0), unit);
                format!("it finds no room, the step is {step} {} high", unit.sign())
            }
            Some(factor) => {
                let factor = decimals_text(factor, 2);
                format!("stress factor {factor} in torsion, from memory")
            }
            None => {
                let [least, most] = SHOULDER_SHARES.map(plain_number);
                format!(
                    "no stress factor, the table has shoulders of {least} to {most} times the shaft"
                )
            }
        };
        let [radius, shoulder] =
            [self.fillet?.mm(), self.shoulder.mm()].map(|mm| length_text(mm, unit));
        let sign = unit.sign();
        Some(format!(
            "fillet of {radius} {sign} at a shoulder of {shoulder} {sign}: {says}"
        ))
    }
}

/// A length as short as it reads, to a thousandth of a mm, at a bench of that unit.
fn length_text(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetre => plain_number(round_to(mm, 0.001)),
        LengthUnit::Inch => unit.figure(mm),
    }
}
