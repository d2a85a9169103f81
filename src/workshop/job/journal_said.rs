//! What is said of a shaft that is turned down: what stops it, what it measures, what is left of it, and what goes
//! to the lathe.

use super::answer::{Answer, JobState};
use super::is_there::IsThere;
use super::journal::JournalData;
use super::places::{self, UNMEASURED};
use super::said::{self, Part};
use crate::units::{BenchUnits, LengthUnit};
use crate::workshop::fits::{Diameter, MeasuredDiameters, SeatClass, SeatFinish, SizeVerdict};
use crate::workshop::journal::{
    AnsweredJournal, CuttingList, MeantShaft, RunOut, Stop, TurnedShaft,
};

/// What a shaft that is meant to be turned down comes to.
pub(super) fn answer(data: &JournalData, meant: &MeantShaft, units: BenchUnits) -> Answer {
    let stops = meant.stops();
    match meant.turned() {
        Ok(turned) if stops.is_empty() => turning(data, &left(data, *meant, turned), units),
        turned => {
            let answer = Answer::new(JobState::ToChange);
            let stops = stops.iter().map(Stop::to_string);
            let answer = match turned {
                Ok(_) => answer.result("do not turn it down").warnings(stops),
                // There is no such shaft.
                Err(_) => stops.fold(answer, Answer::result),
            };
            let left = turned.map(|turned| left(data, *meant, turned));
            left.into_iter()
                .fold(answer, |answer, left| with_left(answer, &left, units))
        }
    }
}

/// What is left of the shaft, beside what is asked of it.
fn left(data: &JournalData, meant: MeantShaft, turned: TurnedShaft) -> AnsweredJournal {
    AnsweredJournal {
        meant,
        turned,
        torque: data.torque,
        fillet: data.fillet,
        shoulder: data.shoulder.unwrap_or(meant.old),
    }
}

/// What somebody must have said before anything goes to the lathe, and whether it is.
fn seen(data: &JournalData) -> [Part; 3] {
    [
        (data.splines.is_said(), "whether there are splines"),
        (data.needle_track.is_said(), "whether needles run there"),
        (data.cone.is_said(), "whether there is a synchroniser cone"),
    ]
}

/// What the seat measures; none where nothing was measured.
type Measured<'a> = Option<&'a MeasuredDiameters>;

/// What else must be known before it can be called done, and whether it is.
fn parts(data: &JournalData, measured: Measured<'_>) -> [Part; 4] {
    let has_seal = data.seal == IsThere::Yes;
    let is_measured = data.limits().is_none() || measured.is_some();
    [
        (data.seal.is_said(), "whether a seal runs there"),
        (data.class.is_some(), "the class wanted there"),
        (
            !has_seal || data.case_depth.is_some(),
            "the depth of the hardened layer, for the seal",
        ),
        (is_measured, UNMEASURED),
    ]
}

/// A shaft that nothing stops: how far it is, what is left of it, and the list for the lathe.
fn turning(data: &JournalData, left: &AnsweredJournal, units: BenchUnits) -> Answer {
    let at = left.meant.new;
    let measured = places::measured(&data.places);
    let measured = measured.as_ref();
    let seen = seen(data);
    let is_seen = seen.iter().all(|(is_said, _)| *is_said);
    let missing = said::missing_words(&[&seen[..], &parts(data, measured)].concat());
    let warnings = warnings(data, left, measured, units.length);
    let is_whole = warnings.is_empty() && missing.is_none();
    let judged = Judged::of(data, at, measured, units.length);
    let state = match &judged {
        Some(Judged {
            beyond: Some(_), ..
        }) => JobState::ToChange,
        Some(_) if is_whole => JobState::Done,
        Some(_) | None => JobState::ToMeasure,
    };
    let mut answer = Answer::new(state);
    if let Some(judged) = &judged {
        answer = answer.result(judged.words.clone());
    }
    let is_wanted = judged.as_ref().is_none_or(Judged::is_too_large) && is_seen;
    if let Some((class, limits)) = data.class.zip(data.limits()).filter(|_| is_wanted) {
        let sizes = limits.size_words_in(at, units.length);
        answer = answer.result(format!("turn it to {sizes} for {class}"));
    }
    if judged.is_some_and(|judged| judged.is_gone()) {
        answer =
            answer.warning("too much has come off somewhere, and turning does not put it back");
    }
    answer = missing.into_iter().fold(answer, Answer::said);
    answer = answer.warnings(warnings);
    let measured = measured.map(|measured| places::measured_words(measured, units.length));
    answer = measured.into_iter().fold(answer, Answer::said);
    answer = with_left(answer, left, units);
    if is_wanted {
        answer = with_cutting_list(answer, data, at, units.length);
    }
    answer
}

/// What must be looked at again before the shaft is done.
fn warnings(
    data: &JournalData,
    left: &AnsweredJournal,
    measured: Measured<'_>,
    unit: LengthUnit,
) -> Vec<String> {
    let at = left.meant.new;
    let outside = data
        .class
        .and_then(|class| SeatClass::Shaft(class).limits(at).err());
    let is_low = data.shoulder.is_some_and(|shoulder| shoulder <= at);
    let is_rough = data.seal == IsThere::Yes && data.finish == SeatFinish::Turned;
    let strange =
        measured.and_then(|measured| places::strange_words(measured, [at, left.meant.old], unit));
    let warnings = [
        outside.map(|outside| outside.to_string()),
        is_low.then(|| "a shoulder stands above the new diameter: look at it again".to_owned()),
        (!is_low && !left.fillet_has_room())
            .then(|| "the fillet is higher than the step to the shoulder: look at both again".to_owned()),
        is_rough.then(|| {
            "a seal wants a ground surface without spiral marks: a turned one carries oil past it".to_owned()
        }),
        strange,
    ];
    warnings.into_iter().flatten().collect()
}

/// What was measured beside the limits.
struct Judged {
    /// Whether it lies within them.
    words: String,
    /// What the smallest reading is, where some reading lies beyond.
    beyond: Option<SizeVerdict>,
}

impl Judged {
    /// None where nothing was measured, or no limits are known.
    fn of(
        data: &JournalData,
        at: Diameter,
        measured: Measured<'_>,
        unit: LengthUnit,
    ) -> Option<Self> {
        let (class, limits) = data.class.zip(data.limits())?;
        let measured = measured?;
        let beyond = places::beyond_words(&data.places, measured, (limits, at), unit);
        let words = match &beyond {
            None => format!("the journal lies within {class}"),
            Some(beyond) => format!("the journal does not lie within {class}: {beyond}"),
        };
        let smallest = measured.verdict(limits, at).smallest;
        Some(Self {
            words,
            beyond: beyond.map(|_| smallest),
        })
    }

    /// Whether one reading lies below.
    fn is_gone(&self) -> bool {
        matches!(self.beyond, Some(SizeVerdict::Below { .. }))
    }

    /// Whether turning mends it.
    fn is_too_large(&self) -> bool {
        self.beyond.is_some() && !self.is_gone()
    }
}

fn with_cutting_list(
    answer: Answer,
    data: &JournalData,
    diameter: Diameter,
    unit: LengthUnit,
) -> Answer {
    let list = CuttingList {
        diameter,
        class: data.class,
        length: data.length,
        fillet: data.fillet,
        run_out: data.run_out.unwrap_or(RunOut::USUAL),
        finish: data.finish,
    };
    let lines = list.lines(unit).into_iter();
    let lines = lines.map(|line| format!("{}: {}", line.what, line.words));
    answer.list("cutting list for the lathe:", lines)
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
    let answer = lines.into_iter().flatten().fold(answer, Answer::said);
    answer.warnings(left.weak_words())
}
