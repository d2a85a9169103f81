//! What the texts of the dialog mean: the pairs that are wished, and why one of them does not read.

use super::PairSpot;
use crate::app::typed::{self, Quantity, Reading};
use crate::finders::{
    CentreDistance, DiametralPitch, FixedCentre, HelixAngle, NormalModule, PairWish, PressureAngle,
    RatioTolerance, parse_teeth_limits, parse_tooth_sum,
};
use crate::gearing::{Ratio, RoadSpeed};
use crate::project::SetId;
use crate::units::SpeedUnit;

/// What stands in the dialog.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct PairTexts {
    texts: [String; PairField::ALL.len()],
    /// Whether the size of teeth is a diametral pitch instead of a module.
    pub(super) is_pitch: bool,
    /// Whether pairs that cannot be cut are shown too.
    pub(super) shows_uncut: bool,
    /// For what the ratio was typed, and what stood there then.
    pub(super) of: Option<(SetId, PairSpot, Ratio)>,
    /// The unit in which the road speed stands here.
    pub(super) units: SpeedUnit,
}

/// A field of the dialog.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PairField {
    Ratio,
    Within,
    Teeth,
    Sum,
    Head,
    Road,
    Centre,
    Size,
    Helix,
    Pressure,
}

impl PairField {
    pub(super) const ALL: [Self; 10] = [
        Self::Ratio,
        Self::Within,
        Self::Teeth,
        Self::Sum,
        Self::Head,
        Self::Road,
        Self::Centre,
        Self::Size,
        Self::Helix,
        Self::Pressure,
    ];
}

impl Default for PairTexts {
    fn default() -> Self {
        let mut texts = Self {
            texts: Default::default(),
            is_pitch: false,
            shows_uncut: false,
            of: None,
            units: SpeedUnit::Kmh,
        };
        for (field, text) in [(PairField::Within, "1"), (PairField::Teeth, "15-45")] {
            text.clone_into(texts.text_mut(field));
        }
        texts
    }
}

const TOLERANCE: Quantity<RatioTolerance> = Quantity {
    new: RatioTolerance::from_percent,
    example: "1",
    unit: "%",
};
const CENTRE: Quantity<CentreDistance> = Quantity {
    new: CentreDistance::from_mm,
    example: "76",
    unit: "mm",
};
const MODULE: Quantity<NormalModule> = Quantity {
    new: NormalModule::from_mm,
    example: "2.25",
    unit: "mm",
};
const PITCH: Quantity<DiametralPitch> = Quantity {
    new: DiametralPitch::from_per_inch,
    example: "10",
    unit: "DP",
};
const HELIX: Quantity<HelixAngle> = Quantity {
    new: HelixAngle::from_degrees,
    example: "27",
    unit: "°",
};
const PRESSURE: Quantity<PressureAngle> = Quantity {
    new: PressureAngle::from_degrees,
    example: "20",
    unit: "°",
};

impl PairTexts {
    /// What stands in a field.
    pub(super) fn text_mut(&mut self, field: PairField) -> &mut String {
        &mut self.texts[field as usize]
    }

    fn text(&self, field: PairField) -> &str {
        &self.texts[field as usize]
    }

    /// What a field is called.
    pub(super) fn name(&self, field: PairField) -> String {
        match field {
            PairField::Ratio => "Ratio".to_owned(),
            PairField::Within => "Within, %".to_owned(),
            PairField::Teeth => "Teeth of a gear".to_owned(),
            PairField::Sum => "Teeth together".to_owned(),
            PairField::Head => "Head-gear pair".to_owned(),
            PairField::Road => format!("Cruise at, {}", self.units.sign()),
            PairField::Centre => "Centre distance, mm".to_owned(),
            PairField::Size if self.is_pitch => "Diametral pitch".to_owned(),
            PairField::Size => "Module, mm".to_owned(),
            PairField::Helix => "Helix angle, °".to_owned(),
            PairField::Pressure => "Pressure angle, °".to_owned(),
        }
    }

    /// What stands in a field while it is empty.
    pub(super) fn hint(&self, field: PairField) -> &'static str {
        match field {
            PairField::Ratio | PairField::Within => "",
            PairField::Teeth => "15-45",
            PairField::Sum => "any",
            PairField::Head => "none",
            PairField::Road => "not told",
            PairField::Centre => "as it comes",
            PairField::Size if self.is_pitch => "10",
            PairField::Size => "2.25",
            PairField::Helix => "0",
            PairField::Pressure => "20",
        }
    }

    /// Why a field does not read.
    pub(super) fn problem(&self, field: PairField) -> Option<String> {
        match field {
            PairField::Ratio => self.ratio().err(),
            PairField::Within => TOLERANCE.read(self.text(field)).err(),
            PairField::Teeth => parse_teeth_limits(self.text(field)).err().map(told),
            PairField::Sum => {
                let is_typed = !self.text(field).trim().is_empty();
                let read = parse_tooth_sum(self.text(field));
                read.err().filter(|_| is_typed).map(told)
            }
            PairField::Head => self.head().err(),
            PairField::Road => self.road().err(),
            PairField::Centre => CENTRE.read(self.text(field)).err(),
            PairField::Size if !self.has_centre() => None,
            PairField::Size => match self.module() {
                Ok(Some(_)) => None,
                Ok(None) => Some("type how large the teeth are, to tell what fits".to_owned()),
                Err(why) => Some(why),
            },
            PairField::Helix => HELIX.read(self.text(field)).err(),
            PairField::Pressure => PRESSURE.read(self.text(field)).err(),
        }
    }

    /// Whether a distance of the shafts is typed.
    pub(super) fn has_centre(&self) -> bool {
        !self.text(PairField::Centre).trim().is_empty()
    }

    /// The ratio that is wished of the gear as a whole.
    pub(super) fn ratio(&self) -> Reading<Ratio> {
        typed::any_ratio(self.text(PairField::Ratio))
    }

    /// The pair before the one that is sought.
    pub(super) fn head(&self) -> Reading<Option<Ratio>> {
        typed::optional(self.text(PairField::Head), typed::any_ratio)
    }

    pub(super) fn road(&self) -> Reading<Option<RoadSpeed>> {
        typed::one_road_speed(self.text(PairField::Road), self.units)
    }

    fn module(&self) -> Reading<Option<NormalModule>> {
        let text = self.text(PairField::Size);
        if self.is_pitch {
            Ok(PITCH.read(text)?.map(DiametralPitch::module))
        } else {
            MODULE.read(text)
        }
    }

    /// The shafts that stand; none where no distance is typed.
    ///
    /// # Errors
    /// When a figure of theirs is missing or does not read, which its field says.
    fn centre(&self) -> Result<Option<FixedCentre>, String> {
        let Some(distance) = CENTRE.read(self.text(PairField::Centre))? else {
            return Ok(None);
        };
        let helix = HELIX.read(self.text(PairField::Helix))?;
        let pressure = PRESSURE.read(self.text(PairField::Pressure))?;
        Ok(Some(FixedCentre {
            distance,
            module: self.module()?.ok_or("no size of teeth")?,
            helix: helix.unwrap_or(HelixAngle::SPUR),
            pressure: pressure.unwrap_or(PressureAngle::USUAL),
        }))
    }

    /// The pairs that are wished.
    ///
    /// # Errors
    /// When something is missing or does not read, which its field says, or no pair can have the ratio.
    pub(super) fn wish(&self) -> Reading<PairWish> {
        let ratio = self.ratio()?;
        let ratio = match self.head()? {
            None => ratio,
            Some(head) => {
                let of_pair = Ratio::from_number(ratio.value() / head.value());
                of_pair.map_err(|why| format!("behind the head-gear pair {why}"))?
            }
        };
        let sum = self.text(PairField::Sum).trim();
        let sum = (!sum.is_empty()).then(|| parse_tooth_sum(sum));
        let within = TOLERANCE.read(self.text(PairField::Within))?;
        Ok(PairWish {
            ratio,
            within: within.ok_or("type how far off a pair may be, in per cent")?,
            teeth: parse_teeth_limits(self.text(PairField::Teeth)).map_err(told)?,
            sum: sum.transpose().map_err(told)?,
            centre: self.centre()?,
        })
    }
}

fn told(error: impl std::error::Error) -> String {
    error.to_string()
}
