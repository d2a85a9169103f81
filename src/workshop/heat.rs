//! What heat makes of an end play between the bench and the road.

use super::quantity::{Expansion, TemperatureRise};

/// What a part is made of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Material {
    /// Steel: 12 millionths per K.
    Steel,
    /// Bearing steel: 12.5.
    BearingSteel,
    /// Aluminium: 23.
    Aluminium,
    /// Another one.
    Other(Expansion),
}

impl Material {
    /// Its linear expansion per K.
    ///
    /// # Source
    /// Bearing makers' catalogues (from memory).
    pub fn per_k(self) -> f64 {
        let per_mk = match self {
            Self::Steel => 12.0,
            Self::BearingSteel => 12.5,
            Self::Aluminium => 23.0,
            Self::Other(expansion) => expansion.per_mk(),
        };
        per_mk * 1e-6
    }
}

/// How two bearings stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Arrangement {
    /// Cups adjusted, the usual gearbox.
    #[default]
    FaceToFace,
    /// Cones adjusted: a case that grows tightens them.
    BackToBack,
}

/// A shaft in its case, and how much warmer than on the bench both run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatChange {
    /// How the bearings stand.
    pub arrangement: Arrangement,
    /// What the case is of.
    pub case: Material,
    /// What the shaft is of.
    pub shaft: Material,
    /// How much warmer the case is.
    pub case_rise: TemperatureRise,
    /// How much warmer the shaft is.
    pub shaft_rise: TemperatureRise,
    /// The distance of the seats, in mm.
    pub seats_mm: f64,
}

impl HeatChange {
    /// How much the end play grows, in mm, below 0 where it shrinks: (α ΔT of the case − α ΔT of the shaft) ×
    /// distance; back to back the sign turns.
    ///
    /// # Source
    /// SAE 910799 (abstract): a gearbox with an aluminium case and cups adjusted gets looser hot.
    pub fn end_play_mm(&self) -> f64 {
        let case = (self.case, self.case_rise);
        let grown = outgrown_mm(self.seats_mm, case, (self.shaft, self.shaft_rise));
        match self.arrangement {
            Arrangement::FaceToFace => grown,
            Arrangement::BackToBack => -grown,
        }
    }
}

/// How much a length of the one part outgrows the same length of the other, in mm, each warmer by so much:
/// (α ΔT − α ΔT) × length.
///
/// # Source
/// Linear expansion.
pub(super) fn outgrown_mm(
    length_mm: f64,
    outer: (Material, TemperatureRise),
    inner: (Material, TemperatureRise),
) -> f64 {
    let strain = |(material, rise): (Material, TemperatureRise)| material.per_k() * rise.k();
    (strain(outer) - strain(inner)) * length_mm
}
