//! A fit, in format 2.

use super::heat::MaterialEntry;
use super::values::{
    BoreClassWord, DeviationUm, DiameterMm, DiametersMm, ExpansionPerMk, Items, RiseK, RoomC,
    ShaftClassWord, SlipUm, WidthMm, entry_of, same_words,
};
use crate::workshop::{FitData, FitPart, IsThere, SeatFinish, SeatPlace, SeatSide};
use serde::{Deserialize, Serialize};

// Limits of the part are above the nominal size, below 0 where they lie below it.
entry_of! {
    FitV2 as "Fit" of FitData;
    chosen side: SideEntry = side;
    chosen part: PartEntry = part;
    chosen finish: FinishEntry = finish;
    chosen case: MaterialEntry = case;
    chosen held: IsThereEntry = held;
    known diameter_mm: DiameterMm = diameter;
    known shaft_class: ShaftClassWord = shaft_class;
    known bore_class: BoreClassWord = bore_class;
    known part_upper_um: DeviationUm = part_upper;
    known part_lower_um: DeviationUm = part_lower;
    known bearing_warmer_k: RiseK = bearing_warmer;
    known ring_width_mm: WidthMm = width;
    known ring_outside_mm: DiameterMm = ring_outside;
    known case_per_mk: ExpansionPerMk = case_expansion;
    known case_warmer_k: RiseK = case_warmer;
    known slip_um: SlipUm = slip;
    known room_c: RoomC = room;
    items places: Items<PlaceV2> = places;
}

entry_of! {
    PlaceV2 as "Place" of SeatPlace;
    known across_mm: DiametersMm = across;
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Side")]
enum SideEntry {
    Shaft,
    Bore,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "FitPart")]
enum PartEntry {
    NormalBearing,
    Typed,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Finish")]
pub(super) enum FinishEntry {
    Ground,
    Turned,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "IsThere")]
pub(super) enum IsThereEntry {
    NotSaid,
    No,
    Yes,
}

same_words!(IsThereEntry, IsThere, NotSaid, No, Yes);
same_words!(SideEntry, SeatSide, Shaft, Bore);
same_words!(PartEntry, FitPart, NormalBearing, Typed);
same_words!(FinishEntry, SeatFinish, Ground, Turned);
