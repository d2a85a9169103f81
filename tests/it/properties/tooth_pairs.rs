//! Does the search for tooth pairs find what trying every pair finds, and do shifts undo themselves?

use crate::support::close::is_close;
use layshaft::finders::{
    CentreDistance, CentreFit, DiametralPitch, FixedCentre, FoundPair, HelixAngle, Hunting,
    NormalModule, PairWish, PressureAngle, RatioTolerance, TeethLimits, ToothSum, tooth_pairs,
};
use layshaft::gearing::{Ratio, rpm_from_speed};
use proptest::option::weighted;
use proptest::prelude::*;

/// A wish in whole thousandths of a ratio and hundredths of a per cent, so that it can be tried in whole
/// numbers.
#[derive(Debug, Clone)]
struct WholeWish {
    thousandths: i64,
    hundredths_percent: i64,
    least: u16,
    most: u16,
    sum: Option<u16>,
}

impl WholeWish {
    #[expect(clippy::cast_precision_loss, reason = "numbers of a few digits")]
    fn wish(&self) -> PairWish {
        PairWish {
            ratio: Ratio::from_number(self.thousandths as f64 / 1000.0).unwrap(),
            within: RatioTolerance::from_percent(self.hundredths_percent as f64 / 100.0).unwrap(),
            teeth: TeethLimits::new(self.least, self.most).unwrap(),
            sum: self.sum.map(|sum| ToothSum::new(sum).unwrap()),
            centre: None,
        }
    }

    /// How far off a pair is, as a whole number and what a hundredth of a per cent is of it.
    fn error(&self, driven: u16, driving: u16) -> (i64, i64) {
        let wished = self.thousandths * i64::from(driving);
        ((i64::from(driven) * 1000 - wished) * 10_000, wished)
    }

    /// Every pair that is near enough, by whole numbers alone.
    fn tried(&self) -> Vec<(u16, u16)> {
        let mut tried = Vec::new();
        for driving in self.least..=self.most {
            for driven in self.least..=self.most {
                let (error, hundredth) = self.error(driven, driving);
                let is_near = error.abs() <= self.hundredths_percent * hundredth;
                if is_near && self.sum.is_none_or(|sum| sum == driven + driving) {
                    tried.push((driven, driving));
                }
            }
        }
        tried
    }
}

fn any_wish() -> impl Strategy<Value = WholeWish> {
    let limits = (1_u16..=90, 0_u16..=90);
    let sum = weighted(0.3, 2_u16..=180);
    (1_i64..=9000, 0_i64..=10_000, limits, sum).prop_map(
        |(thousandths, hundredths_percent, (least, more), sum)| WholeWish {
            thousandths,
            hundredths_percent,
            least,
            most: least + more,
            sum,
        },
    )
}

fn any_centre() -> impl Strategy<Value = FixedCentre> {
    let teeth = (0.5..=8.0_f64, 0.0..=45.0_f64, 10.0..=30.0_f64);
    (20.0..=300.0_f64, teeth).prop_map(|(distance, (module, helix, pressure))| FixedCentre {
        distance: CentreDistance::from_mm(distance).unwrap(),
        module: NormalModule::from_mm(module).unwrap(),
        helix: HelixAngle::from_degrees(helix).unwrap(),
        pressure: PressureAngle::from_degrees(pressure).unwrap(),
    })
}

fn counts(found: &FoundPair) -> (u16, u16) {
    (found.teeth.driven(), found.teeth.driving())
}

proptest! {
    #[test]
    fn the_search_finds_what_trying_every_pair_in_whole_numbers_finds(wish in any_wish()) {
        let found = tooth_pairs(&wish.wish());
        let mut pairs: Vec<(u16, u16)> = found.iter().map(counts).collect();
        pairs.sort_by_key(|(driven, driving)| (*driving, *driven));
        prop_assert_eq!(pairs, wish.tried());
    }

    #[test]
    fn pairs_stand_by_their_error_in_whole_numbers_and_by_their_sum(wish in any_wish()) {
        let found = tooth_pairs(&wish.wish());
        for two in found.windows(2) {
            let [(one, of_one), (other, of_other)] =
                [&two[0], &two[1]].map(|pair| wish.error(pair.teeth.driven(), pair.teeth.driving()));
            let [left, right] = [
                i128::from(one.abs()) * i128::from(of_other),
                i128::from(other.abs()) * i128::from(of_one),
            ];
            prop_assert!(left < right || (left == right && two[0].sum() <= two[1].sum()), "{two:?}");
        }
    }

    #[test]
    fn the_error_is_signed_and_every_count_without_a_common_factor_hunts(wish in any_wish()) {
        for pair in tooth_pairs(&wish.wish()) {
            let wished = wish.wish().ratio.value();
            let error = 100.0 * (pair.teeth.ratio() / wished - 1.0);
            prop_assert!(is_close(pair.error_percent, error, 1e-12), "{pair:?}");
            let (driven, driving) = counts(&pair);
            let shared = (2..=driven.min(driving)).filter(|n| driven % n == 0 && driving % n == 0);
            let hunting = match shared.max() {
                None => Hunting::Yes,
                Some(most) if most == driven.min(driving) => Hunting::No,
                Some(_) => Hunting::Partly,
            };
            prop_assert_eq!(pair.hunting, hunting);
            prop_assert_eq!((pair.profile_shift_sum(), pair.can_be_cut()), (None, true));
        }
    }

    #[test]
    fn the_shift_that_is_found_gives_back_the_centre_distance(
        centre in any_centre(), sum in 2_u16..=400,
    ) {
        let unshifted = centre.unshifted_distance_mm(sum);
        let Some(shift) = centre.profile_shift_sum(sum) else {
            // Base circles that do not fit between the axes.
            let angle = centre.transverse_pressure_angle_deg().to_radians();
            prop_assert!(unshifted * angle.cos() > centre.distance.mm());
            return Ok(());
        };
        prop_assert!(shift.is_finite());
        // More room wants a shift above 0, less one below.
        prop_assert!(shift.abs() < 1e-9 || (shift > 0.0) == (centre.distance.mm() > unshifted));
        let transverse = centre.transverse_pressure_angle_deg().to_radians();
        let involute = |angle: f64| angle.tan() - angle;
        let wanted = involute(transverse)
            + 2.0 * shift * centre.pressure.degrees().to_radians().tan() / f64::from(sum);
        let working = centre.working_pressure_angle_deg(sum).unwrap().to_radians();
        prop_assert!(is_close(involute(working), wanted, 1e-12 * wanted.abs().max(1.0)));
        let back = unshifted * transverse.cos() / working.cos();
        prop_assert!(is_close(back, centre.distance.mm(), 1e-9), "{back}");
    }

    #[test]
    fn a_pitch_is_the_module_that_has_as_many_teeth_on_an_inch(per_inch in 0.508..=254.0_f64) {
        let pitch = DiametralPitch::from_per_inch(per_inch).unwrap();
        let module_mm = pitch.module().mm();
        prop_assert!(is_close(module_mm * per_inch, 25.4, 1e-12), "{module_mm}");
        prop_assert!((0.0999..=50.0001).contains(&module_mm));
    }

    #[test]
    fn the_engine_turns_off_by_what_the_pair_is_off(
        wish in any_wish(), kmh in 1.0..=200.0_f64, circumference_mm in 900.0..=4000.0_f64,
    ) {
        let wished = wish.wish().ratio.value();
        let rpm = |ratio: f64| rpm_from_speed(kmh, ratio, circumference_mm);
        for pair in tooth_pairs(&wish.wish()) {
            let off = rpm(pair.teeth.ratio()) - rpm(wished);
            let told = pair.error_rpm(rpm(wished));
            prop_assert!((off - told).abs() <= 1e-12 * rpm(wished).max(1.0), "{off} {told}");
        }
    }

    #[test]
    fn of_fixed_shafts_only_shifts_within_the_limits_can_be_cut(
        wish in any_wish(), centre in any_centre(),
    ) {
        for pair in tooth_pairs(&PairWish { centre: Some(centre), ..wish.wish() }) {
            let within = |sum| (CentreFit::LEAST..=CentreFit::MOST).contains(&sum);
            let shift = centre.profile_shift_sum(pair.sum());
            prop_assert_eq!(pair.profile_shift_sum(), shift);
            prop_assert_eq!(pair.can_be_cut(), shift.is_some_and(within));
        }
    }
}
