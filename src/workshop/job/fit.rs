//! The fit of a bearing or a ring: what is typed of its seat and of the part, and the fit that both make.

use super::answer::{Answer, JobState};
use super::field::{Choice, Field, chosen, typed};
use super::fit_said;
use super::form::JobForm;
use super::heat::MaterialName;
use super::is_there::IsThere;
use super::places::{self, PLACE, PLACE_FIELDS, SeatPlace};
use super::said::{self, Part};
use crate::units::BenchUnits;
use crate::workshop::fits::{
    BoreClass, Deviation, Diameter, Interference, MeasuredDiameters, RingWidth, RoomTemperature,
    SeatClass, SeatFinish, SeatSide, ShaftClass, SizeLimits, SlipClearance, Tightness,
};
use crate::workshop::quantity::{Expansion, TemperatureRise};

/// What fits the seat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FitPart {
    /// A bearing of the Normal class, from the table.
    #[default]
    NormalBearing,
    /// A part whose limits are typed.
    Typed,
}

impl Choice for FitPart {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::NormalBearing, "a bearing of the Normal class"),
        (Self::Typed, "a part whose limits are typed"),
    ];
}

impl Choice for SeatSide {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::Shaft, "a shaft: the part sits on it"),
        (Self::Bore, "a bore: the part sits in it"),
    ];
}

/// What is known of a fit; each part may be absent.
#[derive(Debug, Clone, PartialEq)]
pub struct FitData {
    /// Which side the seat is.
    pub side: SeatSide,
    /// The nominal diameter.
    pub diameter: Option<Diameter>,
    /// The class of a shaft.
    pub shaft_class: Option<ShaftClass>,
    /// The class of a bore.
    pub bore_class: Option<BoreClass>,
    /// What fits the seat.
    pub part: FitPart,
    /// The upper limit of a part whose limits are typed.
    pub part_upper: Option<Deviation>,
    /// Its lower limit.
    pub part_lower: Option<Deviation>,
    /// How a shaft is finished.
    pub finish: SeatFinish,
    /// How much warmer than what surrounds it a bearing runs.
    pub bearing_warmer: Option<TemperatureRise>,
    /// The width of a ring on a shaft.
    pub width: Option<RingWidth>,
    /// The diameter up to which that ring is solid.
    pub ring_outside: Option<Diameter>,
    /// What a case is of that has the bore.
    pub case: MaterialName,
    /// Its expansion, where that has no name here.
    pub case_expansion: Option<Expansion>,
    /// How much warmer than at the bench case and ring run.
    pub case_warmer: Option<TemperatureRise>,
    /// Whether a stop holds the ring where the case lets go of it.
    pub held: IsThere,
    /// How much wider than its seat a part is to be that slips on hot.
    pub slip: Option<SlipClearance>,
    /// How warm the room is.
    pub room: Option<RoomTemperature>,
    /// Where the seat was measured.
    pub places: Vec<SeatPlace>,
}

impl Default for FitData {
    /// A bearing on a ground shaft, in an aluminium case.
    fn default() -> Self {
        Self {
            side: SeatSide::Shaft,
            diameter: None,
            shaft_class: None,
            bore_class: None,
            part: FitPart::NormalBearing,
            part_upper: None,
            part_lower: None,
            finish: SeatFinish::Ground,
            bearing_warmer: None,
            width: None,
            ring_outside: None,
            case: MaterialName::Aluminium,
            case_expansion: None,
            case_warmer: None,
            held: IsThere::NotSaid,
            slip: None,
            room: None,
            places: Vec::new(),
        }
    }
}

/// A seat and a part of which enough is known to say how they fit.
#[derive(Debug, Clone, PartialEq)]
pub struct KnownFit {
    /// The nominal diameter.
    pub diameter: Diameter,
    /// The class of the seat.
    pub class: SeatClass,
    /// Its limits there.
    pub seat: SizeLimits,
    /// The limits of the part.
    pub part: SizeLimits,
    /// What the seat measures, where it was measured.
    pub measured: Option<MeasuredDiameters>,
}

impl KnownFit {
    /// How much the part is tighter than the seat as it was measured, else as its class lets it be.
    pub fn interference(&self) -> Interference {
        let measured = self.measured.as_ref();
        let seat = measured.map_or(self.seat, |measured| measured.limits(self.diameter));
        self.class.side().interference(seat, self.part)
    }

    /// How tight that is for a part of this size.
    pub fn tightness(&self) -> Tightness {
        self.interference().tightness(self.diameter)
    }

    /// Whether every reading lies within the class; none where nothing was measured.
    pub fn is_within(&self) -> Option<bool> {
        let measured = self.measured.as_ref()?;
        Some(measured.verdict(self.seat, self.diameter).is_within())
    }
}

impl JobForm for FitData {
    const FIELDS: &'static [Field<Self>] = &[
        chosen!(FitData.side: SeatSide, "The seat is", ""),
        typed!(
            FitData.diameter,
            "Nominal diameter",
            Length,
            "of the shaft or the bore, as 40"
        )
        .in_inches("of the shaft or the bore, as 1.5748"),
        typed!(
            FitData.shaft_class,
            "Class of the shaft",
            Plain,
            "one of h6 j6 js6 k5 k6 m5 m6 n6 p6"
        )
        .when(is_shaft),
        typed!(
            FitData.bore_class,
            "Class of the bore",
            Plain,
            "one of H7 J7 K7 M7 N7 P7"
        )
        .when(|data| !is_shaft(data)),
        chosen!(FitData.part: FitPart, "What fits it", "tapered rollers: type their maker's limits"),
        typed!(
            FitData.part_upper,
            "Upper limit of the part, µm",
            Plain,
            "above the nominal size, as 0"
        )
        .when(|data| data.part == FitPart::Typed),
        typed!(
            FitData.part_lower,
            "Lower limit of the part, µm",
            Plain,
            "below the nominal size, as −12"
        )
        .when(|data| data.part == FitPart::Typed),
        chosen!(FitData.finish: SeatFinish, "The seat is finished", "a rougher one loses more when pressed")
            .when(is_shaft),
        typed!(
            FitData.bearing_warmer,
            "Bearing runs warmer by, K",
            Plain,
            "than the air and case around it, as 40"
        )
        .when(is_shaft),
        typed!(
            FitData.width,
            "Width of the ring, B",
            Length,
            "for the force of the press"
        )
        .when(is_shaft),
        typed!(
            FitData.ring_outside,
            "Ring solid up to, Di",
            Length,
            "diameter of an inner ring's raceway"
        )
        .when(is_shaft),
        chosen!(FitData.case: MaterialName, "The case is of", "light alloy wants a tighter fit")
            .when(|data| !is_shaft(data)),
        typed!(
            FitData.case_expansion,
            "Expansion of the case",
            Plain,
            "millionths per K: steel 12, aluminium 23"
        )
        .when(|data| !is_shaft(data) && data.case == MaterialName::Other),
        typed!(
            FitData.case_warmer,
            "Case runs warmer by, K",
            Plain,
            "than at the bench, its ring too; as 60"
        )
        .when(|data| !is_shaft(data)),
        chosen!(FitData.held: IsThere, "A stop holds the ring", "a plate, a snap ring or a cover")
            .when(|data| !is_shaft(data)),
        typed!(
            FitData.slip,
            "Slip clearance when hot, µm",
            Plain,
            "how loose it slips together, as 20"
        ),
        typed!(
            FitData.room,
            "Room temperature, °C",
            Plain,
            "as 20, or 68 °F"
        ),
    ];

    type Item = SeatPlace;
    const ITEM_FIELDS: &'static [Field<SeatPlace>] = PLACE_FIELDS;
    const ITEM: Option<&'static str> = Some(PLACE);

    fn items(&self) -> &[SeatPlace] {
        &self.places
    }

    fn items_mut(&mut self) -> Option<&mut Vec<SeatPlace>> {
        Some(&mut self.places)
    }

    fn answer(&self, units: BenchUnits) -> Answer {
        match self.fit() {
            Some(Ok(fit)) => fit_said::answer(self, &fit, units.length),
            Some(Err(problem)) => Answer::new(JobState::ToMeasure).warning(problem),
            None => said::lacking(self.is_untouched(), &self.parts()),
        }
    }
}

fn is_shaft(data: &FitData) -> bool {
    data.side == SeatSide::Shaft
}

impl FitData {
    /// The seat and the part; none where something is missing.
    ///
    /// # Errors
    /// A sentence, when the tables do not have the diameter, or the limits of the part are the wrong way round.
    pub fn fit(&self) -> Option<Result<KnownFit, String>> {
        let (diameter, class) = self.diameter.zip(self.class())?;
        let part = match self.part {
            FitPart::NormalBearing => self
                .side
                .normal_bearing(diameter)
                .map_err(|error| error.to_string()),
            FitPart::Typed => SizeLimits::new(self.part_lower?, self.part_upper?)
                .ok_or_else(|| "the part's upper limit is below its lower one".to_owned()),
        };
        let seat = class.limits(diameter).map_err(|error| error.to_string());
        Some(seat.and_then(|seat| {
            Ok(KnownFit {
                diameter,
                class,
                seat,
                part: part?,
                measured: places::measured(&self.places),
            })
        }))
    }

    /// The class on the side that the seat is.
    fn class(&self) -> Option<SeatClass> {
        match self.side {
            SeatSide::Shaft => self.shaft_class.map(SeatClass::Shaft),
            SeatSide::Bore => self.bore_class.map(SeatClass::Bore),
        }
    }

    /// What must be known before anything can be said, and whether it is.
    fn parts(&self) -> [Part; 4] {
        let is_typed = self.part == FitPart::Typed;
        [
            (self.diameter.is_some(), "the nominal diameter"),
            (self.class().is_some(), "the class of the seat"),
            (
                !is_typed || self.part_upper.is_some(),
                "the upper limit of the part",
            ),
            (
                !is_typed || self.part_lower.is_some(),
                "the lower limit of the part",
            ),
        ]
    }

    /// Whether nothing is typed, whatever is chosen.
    fn is_untouched(&self) -> bool {
        let untouched = Self {
            side: self.side,
            part: self.part,
            finish: self.finish,
            case: self.case,
            held: self.held,
            ..Self::default()
        };
        *self == untouched
    }
}
