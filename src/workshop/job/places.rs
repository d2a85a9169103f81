//! The places along a seat at which its diameter was read: the items of every job that measures a seat.

use super::field::{Choice, Field, typed};
use crate::units::LengthUnit;
use crate::workshop::fits::{
    Diameter, MeasuredDiameters, PlaceDiameters, SeatFinish, SizeLimits, SizeVerdict,
};

/// A place along a seat.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SeatPlace {
    /// What was read across it, turned on between readings.
    pub across: Option<PlaceDiameters>,
}

/// What is typed of a place.
pub(super) const PLACE_FIELDS: &[Field<SeatPlace>] = &[typed!(
    SeatPlace.across,
    "Diameters across",
    Length,
    "turned on each time, as 40.010 40.012"
)
.in_inches("turned on each time, as 1.5752 1.5753")
.list()];

/// What a place is called.
pub(super) const PLACE: &str = "place along the seat";

/// What is said where no place was measured.
pub(super) const UNMEASURED: &str = "the measured diameters";

/// All that was read; none where nothing was.
pub(super) fn measured(places: &[SeatPlace]) -> Option<MeasuredDiameters> {
    let read = places.iter().filter_map(|place| place.across.as_ref());
    let read = read.map(|across| across.as_slice().to_vec());
    MeasuredDiameters::new(read.collect())
}

/// `mean 40.008 mm, taper 0.006, out of round 0.002`.
pub(super) fn measured_words(measured: &MeasuredDiameters, unit: LengthUnit) -> String {
    let text = |mm: f64| match unit {
        LengthUnit::Millimetre => unit.reckoned(mm),
        LengthUnit::Inch => unit.figure(mm),
    };
    format!(
        "mean {} {}, taper {}, out of round {}",
        text(measured.mean_mm()),
        unit.sign(),
        text(measured.taper_mm()),
        text(measured.out_of_round_mm())
    )
}

/// In which way what was measured is not within the limits; nothing where it is.
pub(super) fn beyond_words(
    measured: &MeasuredDiameters,
    (limits, nominal): (SizeLimits, Diameter),
    unit: LengthUnit,
) -> Option<String> {
    let verdict = measured.verdict(limits, nominal);
    let beyond = [("largest", verdict.largest), ("smallest", verdict.smallest)];
    let beyond = beyond
        .into_iter()
        .filter(|(_, verdict)| *verdict != SizeVerdict::Within);
    let words: Vec<String> = beyond
        .map(|(which, verdict)| format!("{which} {}", verdict.words_in(unit)))
        .collect();
    (!words.is_empty()).then(|| words.join(", "))
}

impl Choice for SeatFinish {
    const ALL: &'static [(Self, &'static str)] =
        &[(Self::Ground, "ground"), (Self::Turned, "turned")];
}
