//! The laws of the jobs of the bench, whatever is typed in them and in whatever units.

use crate::support::bench;
use crate::support::workshop::any_job;
use layshaft::units::{BenchUnits, LengthUnit, TurningUnit};
use layshaft::workshop::{
    Diameter, FieldKey, Job, JobData, JobKind, JobState, PlaceDiameters, Reading, RowAnswer,
    SeatPlace, SizeLimits, Tolerance, TorqueVerdict, TurningTorque,
};
use proptest::prelude::*;
use proptest::sample::select;

/// All units of a bench.
fn all_units() -> impl Iterator<Item = BenchUnits> {
    let lengths = LengthUnit::ALL.into_iter();
    lengths.flat_map(|length| {
        let torques = TurningUnit::ALL.into_iter();
        torques.map(move |torque| BenchUnits { length, torque })
    })
}

/// What is typed in a job in these units.
fn typed(job: &Job, units: BenchUnits) -> Vec<(FieldKey, String)> {
    let rows = job.rows(units).into_iter();
    let texts = rows.filter_map(|row| match row.answer {
        RowAnswer::Typed(text) => Some((row.key, text)),
        RowAnswer::Chosen { .. } => None,
    });
    texts.collect()
}

/// The job with everything typed anew as it is spelled in these units.
fn typed_anew(job: &Job, units: BenchUnits) -> Job {
    let texts = typed(job, units).into_iter();
    texts.fold(job.clone(), |job, (key, text)| {
        job.with(key, &text, units)
            .unwrap_or_else(|problem| panic!("{key:?}, \"{text}\": {problem}"))
    })
}

/// Whether something was read, and all of it lies within limits about a diameter.
fn has_within(places: &[SeatPlace], nominal: Diameter, limits: SizeLimits) -> bool {
    const ROUNDING: f64 = 1e-6;
    let [least, most] = [limits.lower_um(), limits.upper_um()].map(|um| nominal.mm() + um / 1000.0);
    let readings = places.iter().filter_map(|place| place.across.as_ref());
    let mut readings = readings.flat_map(PlaceDiameters::as_slice).peekable();
    readings.peek().is_some()
        && readings.all(|read| (least - ROUNDING..=most + ROUNDING).contains(&read.mm()))
}

/// Whether a job may be called done: what its kind checks lies where it must.
fn is_within(job: &Job) -> bool {
    const ROUNDING: f64 = 1e-6;
    match &job.data {
        JobData::Shim(data) => {
            let play = data.final_play.as_ref().unwrap().mean_mm();
            let setting = data.setting.unwrap();
            // No dial sees preload, nor play below half a division.
            let unseen = data.resolution.map_or(0.0, |division| division.mm() / 2.0);
            let unseen = if setting.high().mm() <= 0.0 {
                unseen
            } else {
                0.0
            };
            play >= setting.low().mm() - ROUNDING
                && play <= setting.high().mm().max(0.0) + unseen + ROUNDING
        }
        JobData::PinionDepth(data) => {
            data.off_mm().unwrap().abs() <= data.tolerance.unwrap().mm() + ROUNDING
        }
        JobData::SideBearings(data) => {
            let backlash = data.backlash.as_ref().unwrap();
            let [least, most] = data.wanted.unwrap().ends().map(Reading::mm);
            let most_variation = data.most_variation.map_or(f64::INFINITY, Tolerance::mm);
            backlash.as_slice().len() >= 3
                && (least - ROUNDING..=most + ROUNDING).contains(&backlash.mean_mm())
                && backlash.variation_mm() <= most_variation + ROUNDING
                && data.preload_off.is_none_or(|preload| preload.mm() <= 0.0)
        }
        JobData::TurningTorque(data) => {
            let newest = data.tries.iter().rev().find_map(|kept| kept.torque);
            let torque = data
                .measured_nmm()
                .or_else(|| newest.map(TurningTorque::nmm));
            let band = data.compared_band().unwrap();
            band.verdict(torque.unwrap()) == TorqueVerdict::Within
        }
        JobData::Limits(data) => data.items.iter().all(|item| {
            let readings = item.readings.as_ref().unwrap().as_slice();
            readings.iter().all(|reading| {
                item.least
                    .is_none_or(|least| reading.mm() >= least.mm() - ROUNDING)
                    && item
                        .most
                        .is_none_or(|most| reading.mm() <= most.mm() + ROUNDING)
            })
        }),
        JobData::Heat(data) => {
            let [bench, running] = [data.bench.unwrap(), data.running().unwrap()];
            let most = data.most.map_or(f64::INFINITY, Tolerance::mm);
            (bench.low().mm() < 0.0 || running.low().mm() >= -ROUNDING)
                && running.high().mm() <= most + ROUNDING
        }
        JobData::Journal(data) => {
            let meant = data.meant().unwrap();
            meant.stops().is_empty() && has_within(&data.places, meant.new, data.limits().unwrap())
        }
        JobData::Fit(data) => {
            let fit = data.fit().unwrap().unwrap();
            has_within(&data.places, fit.diameter, fit.seat)
                && fit.interference().most_um <= fit.diameter.mm() + ROUNDING
        }
    }
}

/// A job of which all is known, with what was measured somewhere about its band.
fn whole_job() -> impl Strategy<Value = Job> {
    let near = || (-10..=30_i32).prop_map(|hundredths| f64::from(hundredths) / 100.0);
    let kind = select(JobKind::ALL.to_vec());
    (kind, near(), near(), [near(), near(), near()]).prop_map(|(kind, a, b, measured)| {
        let [low, high] = [a.min(b), a.max(b)];
        let band = format!("{low} to {high}");
        let tolerance = low.abs().to_string();
        // No play is below 0.
        let all = measured.map(|mm| mm.abs().to_string()).join(" ");
        let one = measured[0].abs().to_string();
        let head = (100.0 + measured[0]).to_string();
        let warm = (20.0 + 300.0 * measured[0]).to_string();
        let seat = measured
            .map(|mm| (40.024 + mm / 10.0).to_string())
            .join(" ");
        let fields: &[(&str, &str)] = match kind {
            JobKind::Shim => &[
                ("trial", "9"),
                ("play", "0.3"),
                ("setting", &band),
                ("final_play", &all),
            ],
            JobKind::PinionDepth => &[
                ("seat", "130"),
                ("mounting", "100"),
                ("marking", "0"),
                ("bearing", "28"),
                ("tolerance", &tolerance),
                ("final_depth", &head),
            ],
            JobKind::SideBearings => &[
                ("ring_gear_fitted", "9"),
                ("other_fitted", "9"),
                ("backlash", &all),
                ("wanted", &band),
                ("most_variation", &tolerance),
            ],
            JobKind::TurningTorque => &[
                ("measuring", "a beam"),
                ("reading", &one),
                ("band", "0.1 to 0.2"),
            ],
            JobKind::Limits => &[
                ("readings 1", &all),
                ("least 1", "-0.05"),
                ("most 1", "0.25"),
            ],
            JobKind::Heat => &[
                ("seats", "150"),
                ("bench_temperature", "20"),
                ("case_temperature", &warm),
                ("shaft_temperature", &warm),
                ("bench", &band),
                ("most", "0.2"),
            ],
            JobKind::Journal => &[
                ("from", "41"),
                ("to", "40"),
                ("class", "p6"),
                ("splines", "no"),
                ("needle_track", "no"),
                ("cone", "no"),
                ("seal", "no"),
                ("across 1", &seat),
            ],
            JobKind::Fit => &[
                ("diameter", "40"),
                ("shaft_class", "p6"),
                ("across 1", &seat),
            ],
        };
        bench::job(kind, fields)
    })
}

proptest! {
    #[test]
    fn every_answer_is_said_in_figures_in_every_unit(job in any_job()) {
        for units in all_units() {
            let answer = job.answer(units);
            prop_assert!(!answer.lines.is_empty() || job.data.item_count() == 0, "{:?}", job);
            // What is measured may be called anything.
            let is_named = |word: &str| {
                let rows = job.rows(units);
                rows.iter().any(|row| row.answer.text().contains(word))
            };
            for line in answer.lines {
                let has = |word: &str| line.text.contains(word) && !is_named(word);
                let is_figure = !has("NaN") && !has("inf");
                prop_assert!(is_figure && !line.text.is_empty(), "{}", line.text);
            }
        }
    }

    #[test]
    fn how_far_a_job_has_come_hangs_on_no_unit(job in any_job()) {
        let states = all_units().map(|units| job.answer(units).state);
        let state = job.answer(BenchUnits::default()).state;
        prop_assert!(states.into_iter().all(|other| other == state));
    }

    #[test]
    fn a_job_is_done_only_within_its_band(job in any_job()) {
        if job.answer(BenchUnits::default()).state == JobState::Done {
            prop_assert!(is_within(&job), "{:?}", job);
        }
    }

    #[test]
    fn a_job_of_which_all_is_known_is_done_just_when_it_lies_within(job in whole_job()) {
        let is_done = job.answer(BenchUnits::default()).state == JobState::Done;
        prop_assert_eq!(is_done, is_within(&job), "{:?}", job);
    }

    #[test]
    fn what_is_spelled_is_read_and_spelled_the_same_in_every_unit(job in any_job()) {
        for units in all_units() {
            let anew = typed_anew(&job, units);
            prop_assert_eq!(typed(&anew, units), typed(&job, units));
        }
    }

    #[test]
    fn what_is_typed_in_one_unit_and_shown_in_the_other_comes_back(job in any_job()) {
        // What is shown in inches has a tenth of a thousandth of a millimetre more or less, and so has what
        // comes back.
        let [mm, inch] = LengthUnit::ALL.map(|length| BenchUnits { length, ..BenchUnits::default() });
        let job = typed_anew(&job, inch);
        let shown = typed(&job, inch);
        prop_assert_eq!(typed(&typed_anew(&job, mm), inch), shown);
    }

    #[test]
    fn a_try_that_is_kept_is_the_newest_and_changes_no_verdict(job in any_job()) {
        let Some(kept) = job.keeping_try() else { return Ok(()) };
        let units = BenchUnits::default();
        prop_assert_eq!(kept.answer(units), job.answer(units));
        prop_assert_eq!(kept.data.item_count(), job.data.item_count() + 1);
        prop_assert!(kept.keeping_try().is_none());
    }
}
