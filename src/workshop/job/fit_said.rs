//! What is said of a fit: whether its seat lies within, what of the interference works, what presses and warms the
//! part on, and what heat makes of it.

use super::answer::{Answer, JobState};
use super::fit::{FitData, FitPart, KnownFit};
use super::is_there::IsThere;
use super::places::{self, UNMEASURED};
use super::said;
use crate::units::{LengthUnit, decimals_text, plain_number, round_to};
use crate::workshop::fits::{
    BEARING_MOST_C, Heating, Interference, MeasuredDiameters, PressedRing, Pressing, SeatSide,
    SizeVerdict, Tightness, case_outgrows_um,
};
use crate::workshop::heat::Material;
use crate::workshop::quantity::Celsius;

/// Newtons in a kilonewton.
const N_PER_KN: f64 = 1000.0;

/// What a fit comes to.
pub(super) fn answer(data: &FitData, fit: &KnownFit, unit: LengthUnit) -> Answer {
    let tightness = fit.tightness();
    let hot = hot(data, fit);
    let is_lost = hot.as_ref().is_some_and(|hot| hot.is_lost);
    let is_bad = tightness == Tightness::TooTight || is_lost;
    let state = match fit.is_within() {
        Some(false) => JobState::ToChange,
        Some(true) if is_bad => JobState::ToChange,
        Some(true) => JobState::Done,
        None => JobState::ToMeasure,
    };
    let answer = with_fit(Answer::new(state), data, fit, unit);
    let sentence = tightness.sentence(fit.diameter);
    let answer = answer.warnings(sentence.map(|text| text.trim_end_matches('.').to_owned()));
    let answer = with_limits(answer, data, fit, unit);
    let answer = match data.side {
        SeatSide::Shaft => on_shaft(answer, data, fit, unit),
        SeatSide::Bore => in_bore(answer, data, hot.as_ref(), unit),
    };
    with_heating(answer, data, fit)
}

/// Whether the seat lies within its class, and how tight the part is on it.
fn with_fit(answer: Answer, data: &FitData, fit: &KnownFit, unit: LengthUnit) -> Answer {
    let (side, class) = (fit.class.side().word(), fit.class);
    let interference = fit.interference().words_in(unit);
    let Some(measured) = &fit.measured else {
        return answer
            .result(format!("{interference} with a {side} of {class}"))
            .said(format!("still missing: {UNMEASURED}"));
    };
    let beyond = places::beyond_words(&data.places, measured, (fit.seat, fit.diameter), unit);
    let strange = places::strange_words(measured, [fit.diameter; 2], unit);
    let verdict = match beyond {
        None => format!("the {side} lies within {class}"),
        Some(beyond) => format!("the {side} does not lie within {class}: {beyond}"),
    };
    answer
        .result(verdict)
        .result(format!("{interference} with the {side} as measured"))
        .said(places::measured_words(measured, unit))
        .warnings(strange.or_else(|| gone_words(measured, fit)))
}

/// That a seat lacks metal, which no machining puts back.
fn gone_words(measured: &MeasuredDiameters, fit: &KnownFit) -> Option<String> {
    let verdict = measured.verdict(fit.seat, fit.diameter);
    let is_gone = match fit.class.side() {
        SeatSide::Shaft => matches!(verdict.smallest, SizeVerdict::Below { .. }),
        SeatSide::Bore => matches!(verdict.largest, SizeVerdict::Above { .. }),
    };
    is_gone.then(|| "metal is gone there, and nothing that cuts puts it back".to_owned())
}

/// The limits of both sides.
fn with_limits(answer: Answer, data: &FitData, fit: &KnownFit, unit: LengthUnit) -> Answer {
    let at = fit.diameter;
    let side = fit.class.side();
    let part = match data.part {
        FitPart::NormalBearing => side.normal_bearing_words(),
        FitPart::Typed => "part as typed",
    };
    let [seat, limits] = [fit.seat, fit.part]
        .map(|limits| format!("{} ({})", limits.size_words_in(at, unit), limits.words()));
    answer
        .said(format!("{} {}: {seat}", side.word(), fit.class))
        .said(format!("{part}: {limits}"))
}

/// What of the interference works on a shaft, and what presses the ring on it.
fn on_shaft(answer: Answer, data: &FitData, fit: &KnownFit, unit: LengthUnit) -> Answer {
    let interference = fit.interference();
    if interference.most_um <= 0.0 {
        return answer;
    }
    let working = interference.working(data.finish, fit.diameter);
    let mut answer = answer.said(format!(
        "what works of it when the seat is pressed smooth: {}",
        working.words_in(unit)
    ));
    if let Some(rise) = data.bearing_warmer {
        let warm = working.warmed(rise, fit.diameter);
        let rise_k = plain_number(round_to(rise.k(), 0.1));
        answer = answer.said(format!(
            "with the bearing {rise_k} K warmer than what surrounds it: {}",
            warm.words_in(unit)
        ));
        if warm.least_um < 0.0 && working.least_um >= 0.0 {
            answer = answer.warning("warm, the ring may come loose and creep on its seat");
        }
    }
    with_press(answer, data, fit, working)
}

/// What presses the ring on and pulls it off, at the most of what works.
fn with_press(answer: Answer, data: &FitData, fit: &KnownFit, working: Interference) -> Answer {
    let (width, outside) = match (data.width, data.ring_outside) {
        (Some(width), Some(outside)) => (width, outside),
        (None, None) => return answer,
        (width, outside) => {
            let parts = [
                (width.is_some(), "the width of the ring"),
                (outside.is_some(), "what the ring is solid up to"),
            ];
            let missing = said::missing_words(&parts).into_iter();
            return missing.fold(answer, |answer, words| {
                answer.said(format!("for the press {words}"))
            });
        }
    };
    let Some(ring) = PressedRing::new(fit.diameter, outside, width) else {
        return answer
            .warning("a ring is solid up to more than its bore: look at that diameter again");
    };
    let most_um = working.most_um;
    let [on, off] = [Pressing::On, Pressing::Off]
        .map(|way| decimals_text(ring.force_n(way, most_um) / N_PER_KN, 2));
    let pressure = decimals_text(ring.pressure_mpa(most_um), 1);
    answer.said(format!(
        "to press it on a solid shaft takes up to {on} kN, to pull it off {off} kN, with {pressure} MPa in the seat"
    ))
}

/// What heat makes of a ring in a case.
fn in_bore(answer: Answer, data: &FitData, hot: Option<&Hot>, unit: LengthUnit) -> Answer {
    let Some(rise) = data.case_warmer else {
        return answer;
    };
    let Some(hot) = hot else {
        return answer.said("for the heat still missing: the expansion of the case");
    };
    let by_um = hot.by_um;
    let rise_k = plain_number(round_to(rise.k(), 0.1));
    let outgrown = match unit {
        LengthUnit::Millimetre => format!("{} µm", plain_number(round_to(by_um.abs(), 0.1))),
        LengthUnit::Inch => format!("{} in", unit.figure(by_um.abs() / 1000.0)),
    };
    let which = if by_um < 0.0 {
        "the ring outgrows the case"
    } else {
        "the case outgrows the ring"
    };
    let answer = answer.said(format!(
        "{rise_k} K warmer {which} by {outgrown}: {}",
        hot.interference.words_in(unit)
    ));
    match (hot.lets_go, data.held) {
        (false, _) => answer,
        (true, IsThere::Yes) => answer.said("hot, the case may lose the ring: the stop holds it"),
        (true, IsThere::No | IsThere::NotSaid) => answer.warning(
            "hot, the case may lose the ring: it wants a tighter fit, or a stop for the ring",
        ),
    }
}

/// A ring in its case where both are hot.
struct Hot {
    /// How much the case outgrows the ring, in µm.
    by_um: f64,
    interference: Interference,
    /// Whether the case, that outgrows the ring, may have clearance.
    lets_go: bool,
    /// Whether that takes the ring a hold that it has cold, and nothing else holds it.
    is_lost: bool,
}

/// What heat makes of a ring in a case; none where that is not asked, or the case is not known.
fn hot(data: &FitData, fit: &KnownFit) -> Option<Hot> {
    let rise = data.case_warmer.filter(|_| data.side == SeatSide::Bore)?;
    let case = data.case.material(data.case_expansion)?;
    let by_um = case_outgrows_um(fit.diameter, case, rise);
    let cold = fit.interference();
    let interference = Interference {
        least_um: cold.least_um - by_um,
        most_um: cold.most_um - by_um,
    };
    let lets_go = by_um > 0.0 && interference.least_um < 0.0;
    Some(Hot {
        by_um,
        interference,
        lets_go,
        is_lost: lets_go && cold.least_um >= 0.0 && data.held != IsThere::Yes,
    })
}

/// How warm the part must be to slip on its shaft, or the case to take it.
fn with_heating(answer: Answer, data: &FitData, fit: &KnownFit) -> Answer {
    let (slip, room) = match (data.slip, data.room) {
        (Some(slip), Some(room)) => (slip, room),
        (None, None) => return answer,
        (slip, room) => {
            let parts = [
                (slip.is_some(), "the slip clearance"),
                (room.is_some(), "how warm the room is"),
            ];
            let missing = said::missing_words(&parts).into_iter();
            return missing.fold(answer, |answer, words| {
                answer.said(format!("for warming {words}"))
            });
        }
    };
    let (which, material) = match data.side {
        SeatSide::Shaft => ("part", Some(Material::BearingSteel)),
        SeatSide::Bore => ("case", data.case.material(data.case_expansion)),
    };
    let Some(material) = material else {
        return answer.said("for warming still missing: the expansion of the case");
    };
    let most_um = fit.interference().most_um;
    if most_um <= 0.0 {
        return answer.said("the ring slips into place as it is: nothing needs warming");
    }
    let heating = Heating::needed(most_um, slip, fit.diameter, material);
    // What is hotter than anything in a gearbox is no way to fit it.
    let heating = heating.filter(|heating| {
        let ends = heating.temperatures_c(room);
        ends.into_iter().all(|c| Celsius::from_c(c).is_ok())
    });
    let Some(heating) = heating else {
        return answer.warning(format!("warming the {which} alone does not fit it"));
    };
    let text = |number: f64| plain_number(round_to(number, 0.1));
    let needed = format!(
        "to slip together the {which} must be {} K warmer, and 20 to 30 K more for the way",
        text(heating.rise_k)
    );
    let temperatures_c = heating.temperatures_c(room);
    if heating.is_too_hot_for_bearing(room) {
        let [least, most] = temperatures_c.map(text);
        let bears = plain_number(BEARING_MOST_C);
        let answer = answer.said(format!("{needed}: {least} to {most} °C"));
        return answer.warning(format!(
            "no bearing is warmed above {bears} °C, and that is more: cool the other part, or press it"
        ));
    }
    // What a bearing bears ends what is added for the way.
    let [least, most] = temperatures_c.map(|c| text(c.min(BEARING_MOST_C)));
    answer.said(format!("{needed}: warm it to {least} to {most} °C"))
}
