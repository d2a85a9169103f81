//! A shaft that is turned down, in format 2.

use super::fit::{FinishEntry, IsThereEntry, PlaceV2};
use super::values::{
    CaseDepthMm, DiameterMm, FilletMm, Items, RunOutMm, SeatLengthMm, ShaftClassWord,
    ShaftTorqueNm, entry_of,
};
use crate::workshop::JournalData;
use serde::{Deserialize, Serialize};

entry_of! {
    JournalV2 as "Journal" of JournalData;
    chosen splines: IsThereEntry = splines;
    chosen needle_track: IsThereEntry = needle_track;
    chosen cone: IsThereEntry = cone;
    chosen seal: IsThereEntry = seal;
    chosen finish: FinishEntry = finish;
    known from_mm: DiameterMm = from;
    known to_mm: DiameterMm = to;
    known bore_mm: DiameterMm = bore;
    known class: ShaftClassWord = class;
    known torque_nm: ShaftTorqueNm = torque;
    known case_depth_mm: CaseDepthMm = case_depth;
    known length_mm: SeatLengthMm = length;
    known fillet_mm: FilletMm = fillet;
    known shoulder_mm: DiameterMm = shoulder;
    known run_out_mm: RunOutMm = run_out;
    items places: Items<PlaceV2> = places;
}
