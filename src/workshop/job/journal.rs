//! A shaft that is turned down: what is typed of it, what stops the job, and what goes to the lathe.

use super::answer::{Answer, JobState};
use super::field::{Choice, Field, chosen, typed};
use super::form::JobForm;
use super::places::{self, PLACE, PLACE_FIELDS, SeatPlace, UNMEASURED};
use super::said::{self, Part};
use crate::units::{BenchUnits, LengthUnit};
use crate::workshop::fits::{Diameter, SeatClass, SeatFinish, ShaftClass, SizeLimits, SizeVerdict};
use crate::workshop::journal::{
    AnsweredJournal, CaseDepth, CuttingList, FilletRadius, MeantShaft, OnShaft, RunOut,
    ShaftTorque, Stop, TurnedShaft,
};

/// Whether something is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum IsThere {
    /// It is not.
    #[default]
    No,
    /// It is.
    Yes,
}

impl Choice for IsThere {
    const ALL: &'static [(Self, &'static str)] = &[(Self::No, "no"), (Self::Yes, "yes")];
}

impl From<bool> for IsThere {
    fn from(is_there: bool) -> Self {
        if is_there { Self::Yes } else { Self::No }
    }
}

impl From<IsThere> for bool {
    fn from(is_there: IsThere) -> Self {
        is_there == IsThere::Yes
    }
}

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
        chosen!(JournalData.splines: IsThere, "Splines there", ""),
        chosen!(JournalData.needle_track: IsThere, "Needles run there", ""),
        chosen!(JournalData.cone: IsThere, "A synchroniser cone there", ""),
        chosen!(JournalData.seal: IsThere, "A seal runs there", "then the hardened layer must be known"),
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
        let stops = meant.stops();
        match meant.turned() {
            Ok(turned) if stops.is_empty() => self.turning(&meant, turned, units),
            turned => {
                let answer = Answer::new(JobState::ToChange);
                let answer = stops
                    .iter()
                    .map(Stop::to_string)
                    .fold(answer, Answer::result);
                let left = turned.map(|turned| self.left(meant, turned));
                left.into_iter()
                    .fold(answer, |answer, left| with_left(answer, &left, units))
            }
        }
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
                splines: self.splines.into(),
                needle_track: self.needle_track.into(),
                synchroniser_cone: self.cone.into(),
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

    /// What is left of the shaft, beside what is asked of it.
    fn left(&self, meant: MeantShaft, turned: TurnedShaft) -> AnsweredJournal {
        AnsweredJournal {
            meant,
            turned,
            torque: self.torque,
            fillet: self.fillet,
            shoulder: self.shoulder.unwrap_or(meant.old),
        }
    }

    /// What must be known before it can be called done, and whether it is.
    fn parts(&self, limits: Option<SizeLimits>) -> [Part; 3] {
        let has_seal = self.seal == IsThere::Yes;
        let is_measured = limits.is_none() || places::measured(&self.places).is_some();
        [
            (self.class.is_some(), "the class wanted there"),
            (
                !has_seal || self.case_depth.is_some(),
                "the depth of the hardened layer, for the seal",
            ),
            (is_measured, UNMEASURED),
        ]
    }

    /// A shaft that may be turned: how far it is, what is left of it, and the list for the lathe.
    fn turning(&self, meant: &MeantShaft, turned: TurnedShaft, units: BenchUnits) -> Answer {
        let unit = units.length;
        let class = self
            .class
            .map(|class| (class, SeatClass::Shaft(class).limits(meant.new)));
        let outside = class.and_then(|(_, limits)| limits.err());
        let limits = self.limits();
        let parts = self.parts(limits);
        let missing = said::missing_words(&parts);
        let is_low = self.shoulder.is_some_and(|shoulder| shoulder <= meant.new);
        let judged = self.judged(meant.new, unit);
        let is_whole = missing.is_none() && outside.is_none() && !is_low;
        let state = match &judged {
            Some(Judged::Beyond { .. }) => JobState::ToChange,
            Some(Judged::Within(_)) if is_whole => JobState::Done,
            Some(Judged::Within(_)) | None => JobState::ToMeasure,
        };
        let mut answer = match judged {
            None => Answer::new(state),
            Some(Judged::Within(words)) => Answer::new(state).result(words),
            Some(Judged::Beyond { words, is_below }) => {
                let below = is_below.then(|| {
                    "too much has come off somewhere, and turning does not put it back".to_owned()
                });
                Answer::new(state).result(words).warnings(below)
            }
        };
        if let Some((class, limits)) = self.class.zip(limits) {
            let sizes = limits.size_words_in(meant.new, unit);
            answer = answer.result(format!("turn it to {sizes} for {class}"));
        }
        answer = missing.into_iter().fold(answer, Answer::said);
        answer = answer.warnings(outside.map(|outside| outside.to_string()));
        if is_low {
            answer = answer.warning("a shoulder stands above the new diameter: look at it again");
        }
        let measured = places::measured(&self.places);
        let measured = measured.map(|measured| places::measured_words(&measured, unit));
        answer = measured.into_iter().fold(answer, Answer::said);
        answer = with_left(answer, &self.left(*meant, turned), units);
        self.with_cutting_list(answer, meant.new, unit)
    }

    /// What was measured beside the limits; none where either is not known.
    fn judged(&self, nominal: Diameter, unit: LengthUnit) -> Option<Judged> {
        let (class, limits) = self.class.zip(self.limits())?;
        let measured = places::measured(&self.places)?;
        let beyond = places::beyond_words(&measured, (limits, nominal), unit);
        let smallest = measured.verdict(limits, nominal).smallest;
        Some(match beyond {
            None => Judged::Within(format!("the journal lies within {class}")),
            Some(beyond) => Judged::Beyond {
                words: format!("the journal does not lie within {class}: {beyond}"),
                is_below: matches!(smallest, SizeVerdict::Below { .. }),
            },
        })
    }

    fn with_cutting_list(&self, answer: Answer, diameter: Diameter, unit: LengthUnit) -> Answer {
        let list = CuttingList {
            diameter,
            class: self.class,
            fillet: self.fillet,
            run_out: self.run_out.unwrap_or(RunOut::USUAL),
            finish: self.finish,
        };
        let lines = list.lines(unit).into_iter();
        let lines = lines.map(|line| format!("{}: {}", line.what, line.words));
        answer.list("cutting list for the lathe:", lines)
    }
}

/// What was measured beside the limits.
enum Judged {
    /// Every reading lies within.
    Within(String),
    /// One does not.
    Beyond {
        /// Which, and by how much.
        words: String,
        /// Whether one lies below.
        is_below: bool,
    },
}

/// What is left of strength, stiffness and the hardened layer, the shear, and the fillet.
fn with_left(answer: Answer, left: &AnsweredJournal, units: BenchUnits) -> Answer {
    let unit = units.length;
    let lines = [
        Some(left.left_words(unit)),
        left.shear_words(units.torque),
        left.case_words(unit),
        left.fillet_words(unit),
    ];
    lines.into_iter().flatten().fold(answer, Answer::said)
}
