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

/// `mean 40.008 mm, taper 0.006, out of round 0.002`; of what was not read often enough, what it wants.
pub(super) fn measured_words(measured: &MeasuredDiameters, unit: LengthUnit) -> String {
    let places = measured.places();
    let has_several = places.len() > 1;
    let is_turned_on = places.iter().any(|place| place.len() > 1);
    let size = |mm: f64| unit.seat_size(mm);
    let known = [
        Some(format!("mean {} {}", size(measured.mean_mm()), unit.sign())),
        has_several.then(|| format!("taper {}", size(measured.taper_mm()))),
        is_turned_on.then(|| format!("out of round {}", size(measured.out_of_round_mm()))),
    ];
    let known: Vec<String> = known.into_iter().flatten().collect();
    let wanted = [
        (has_several, "a second place for the taper"),
        (is_turned_on, "a second reading across for the roundness"),
    ];
    let wanted = wanted.iter().filter(|(is_there, _)| !is_there);
    let wanted: Vec<&str> = wanted.map(|(_, what)| *what).collect();
    let wanted = (!wanted.is_empty()).then(|| format!("measure {}", wanted.join(" and ")));
    let told = [Some(known.join(", ")), wanted];
    told.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// In which way what was measured is not within the limits, and at which place; nothing where it is.
pub(super) fn beyond_words(
    places: &[SeatPlace],
    measured: &MeasuredDiameters,
    (limits, nominal): (SizeLimits, Diameter),
    unit: LengthUnit,
) -> Option<String> {
    let verdict = measured.verdict(limits, nominal);
    let [smallest_mm, largest_mm] = measured.extremes_mm();
    let beyond = [
        ("largest", verdict.largest, largest_mm),
        ("smallest", verdict.smallest, smallest_mm),
    ];
    let words = beyond.iter().filter_map(|(which, verdict, mm)| {
        let is_beyond = *verdict != SizeVerdict::Within;
        is_beyond.then(|| {
            format!(
                "{which}{} {}",
                at_place(places, *mm),
                verdict.words_in(unit)
            )
        })
    });
    let words: Vec<String> = words.collect();
    (!words.is_empty()).then(|| words.join(", "))
}

/// Of several places the one where that was read: `, at place 2,`.
fn at_place(places: &[SeatPlace], size_mm: f64) -> String {
    let was_read = |place: &SeatPlace| {
        let across = place.across.as_ref();
        across.is_some_and(|read| {
            read.as_slice()
                .iter()
                .any(|reading| reading.mm().total_cmp(&size_mm).is_eq())
        })
    };
    match places.iter().position(was_read) {
        Some(at) if places.len() > 1 => format!(", at place {},", at + 1),
        Some(_) | None => String::new(),
    }
}

/// No seat is so far from its size, in mm: somebody has slipped with a figure.
const STRANGE_MM: f64 = 1.0;

/// That a reading is none of a seat of these sizes, the smaller one first.
pub(super) fn strange_words(
    measured: &MeasuredDiameters,
    [smaller, larger]: [Diameter; 2],
    unit: LengthUnit,
) -> Option<String> {
    let [least_mm, most_mm] = measured.extremes_mm();
    let below = (smaller.mm() - least_mm > STRANGE_MM).then_some(least_mm);
    let above = (most_mm - larger.mm() > STRANGE_MM).then_some(most_mm);
    below.or(above).map(|mm| {
        let (size, sign) = (unit.seat_size(mm), unit.sign());
        format!("{size} {sign} is far from the size of the seat: look at that reading again")
    })
}

impl Choice for SeatFinish {
    const ALL: &'static [(Self, &'static str)] =
        &[(Self::Ground, "ground"), (Self::Turned, "turned")];
}
