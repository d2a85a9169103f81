//! A shaft that is turned down: what is typed of it, what stops the job, and what goes to the lathe.

use super::answer::Answer;
use super::field::{Field, chosen, typed};
use super::form::JobForm;
use super::is_there::IsThere;
use super::places::{PLACE, PLACE_FIELDS, SeatPlace};
use super::{journal_said, said};
use crate::units::BenchUnits;
use crate::workshop::fits::{Diameter, SeatFinish, ShaftClass, SizeLimits};
use crate::workshop::journal::{
    CaseDepth, FilletRadius, MeantShaft, OnShaft, RunOut, SeatLength, ShaftTorque,
};

/// What is known of a shaft that is turned down; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct JournalData {
    /// Its diameter.
    pub from: Option<Diameter>,
    /// The one that it is to have.
    pub to: Option<Diameter>,
    /// Its bore, where it is hollow.
    pub bore: Option<Diameter>,
    /// The class that is wanted there.
    pub class: Option<ShaftClass>,
    /// The torque that it carries.
    pub torque: Option<ShaftTorque>,
    /// How deep it is hardened.
    pub case_depth: Option<CaseDepth>,
    /// How long the seat is, from the shoulder.
    pub length: Option<SeatLength>,
    /// The fillet at the shoulder.
    pub fillet: Option<FilletRadius>,
    /// The diameter of the shoulder; absent that of the shaft as it is.
    pub shoulder: Option<Diameter>,
    /// Whether there are splines.
    pub splines: IsThere,
    /// Whether needles run there.
    pub needle_track: IsThere,
    /// Whether there is a synchroniser cone.
    pub cone: IsThere,
    /// Whether a seal runs there.
    pub seal: IsThere,
    /// How it is finished.
    pub finish: SeatFinish,
    /// How much it may run out; absent [`RunOut::USUAL`].
    pub run_out: Option<RunOut>,
    /// Where it was measured afterwards.
    pub places: Vec<SeatPlace>,
}

impl JobForm for JournalData {
    const FIELDS: &'static [Field<Self>] = &[
        typed!(JournalData.from, "Diameter now", Length, "as 40").in_inches("as 1.5748"),
        typed!(JournalData.to, "Diameter wanted", Length, "nominal, as 39")
            .in_inches("nominal, as 1.5354"),
        typed!(
            JournalData.bore,
            "Bore of a hollow shaft",
            Length,
            "empty where it is solid"
        ),
        typed!(
            JournalData.class,
            "Class wanted there",
            Plain,
            "one of h6 j6 js6 k5 k6 m5 m6 n6 p6"
        ),
        typed!(
            JournalData.torque,
            "Torque of the shaft",
            Torque,
            "the most that it carries, for the shear"
        ),
        typed!(
            JournalData.case_depth,
            "Hardened layer, depth",
            Length,
            "often 0.5 to 1.0 where case-hardened"
        )
        .in_inches("often 0.02 to 0.04 where case-hardened"),
        typed!(
            JournalData.length,
            "Length of the seat",
            Length,
            "from the shoulder, for the lathe"
        ),
        typed!(
            JournalData.fillet,
            "Fillet at the shoulder",
            Length,
            "the largest that the chamfer allows"
        ),
        typed!(
            JournalData.shoulder,
            "Diameter of the shoulder",
            Length,
            "empty where it is the diameter now"
        ),
        chosen!(JournalData.splines: IsThere, "Splines there", "yes or no: never turned down"),
        chosen!(JournalData.needle_track: IsThere, "Needles run there", "yes or no: never turned down"),
        chosen!(JournalData.cone: IsThere, "A synchroniser cone there", "yes or no: never turned down"),
        chosen!(JournalData.seal: IsThere, "A seal runs there", "yes or no: it wants the hardened layer"),
        chosen!(JournalData.finish: SeatFinish, "It is to be", ""),
        typed!(
            JournalData.run_out,
            "Run-out, at most",
            Length,
            "between centres; empty: 0.01"
        )
        .in_inches("between centres; empty: 0.0004"),
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
        let Some(meant) = self.meant() else {
            let parts = [
                (self.from.is_some(), "the diameter now"),
                (self.to.is_some(), "the diameter wanted"),
            ];
            return said::lacking(self.is_untouched(), &parts);
        };
        journal_said::answer(self, &meant, units)
    }
}

impl JournalData {
    /// The shaft as it is meant; none where a diameter is missing.
    pub fn meant(&self) -> Option<MeantShaft> {
        Some(MeantShaft {
            old: self.from?,
            new: self.to?,
            bore: self.bore,
            case_depth: self.case_depth,
            on_shaft: OnShaft {
                splines: self.splines == IsThere::Yes,
                needle_track: self.needle_track == IsThere::Yes,
                synchroniser_cone: self.cone == IsThere::Yes,
            },
        })
    }

    /// The limits at the new diameter; none without it or a class, or where the table does not have it.
    pub fn limits(&self) -> Option<SizeLimits> {
        self.class?.limits(self.to?)
    }

    /// Whether nothing is typed, whatever is chosen.
    fn is_untouched(&self) -> bool {
        let untouched = Self {
            splines: self.splines,
            needle_track: self.needle_track,
            cone: self.cone,
            seal: self.seal,
            finish: self.finish,
            ..Self::default()
        };
        *self == untouched
    }
}
