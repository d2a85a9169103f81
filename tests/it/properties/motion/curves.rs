//! Do torque curves keep between their points, and brochures their peaks?

use crate::support::gear_sets::{redline, rpm};
use crate::support::vehicles::curve;
use layshaft::motion::{
    Brochure, Cubic, Efficiency, Engine, Power, PowerBand, Torque, TorqueCurve, power_w,
};
use proptest::prelude::*;

/// Points of rising engine speed, near and far from each other, of any torque.
fn any_points() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let gap = prop_oneof![1e-9..=1e-3, 1.0..=140.0];
    let torque = prop_oneof![Just(0.0), 0.0..=1.0, 0.0..=20_000.0];
    let begin = 1.0..=2000.0;
    (begin, proptest::collection::vec((gap, torque), 2..=200)).prop_map(|(begin, rest)| {
        let places = rest.into_iter().scan(begin, |speed, (gap, torque)| {
            *speed += gap;
            Some((*speed, torque))
        });
        places.collect()
    })
}

/// Figures of an engine that could be built.
fn any_brochure() -> impl Strategy<Value = Brochure> {
    let shares = (0.0..=1.0, 0.0..=1.0);
    (50.0..=800.0, 1500.0..=5000.0, 1.1..=2.2, shares).prop_map(
        |(nm, last, ratio, (plateau, between))| {
            let peak: f64 = last * ratio;
            let (least, most) = (power_w(nm, last), power_w(nm, peak));
            let kw = (least + (most - least) * between) / 1000.0;
            let first = last * (0.5 + 0.5 * plateau);
            Brochure::new(
                Torque::from_nm(nm).unwrap(),
                [rpm(first), rpm(last)],
                Power::from_kw(kw).unwrap(),
                rpm(peak),
            )
            .unwrap()
        },
    )
}

fn band(curve: TorqueCurve) -> PowerBand {
    let whole = Efficiency::new(1.0).unwrap();
    PowerBand::of(&Engine::of_curve(curve), &redline(30_000.0), whole).unwrap()
}

proptest! {
    #[test]
    fn torque_never_leaves_the_two_points_around_it_and_never_turns_between_them(
        points in any_points()
    ) {
        let curve = curve(&points);
        for pair in points.windows(2) {
            let ((from, low), (to, high)) = (pair[0], pair[1]);
            let mut before = low;
            for step in 0..=20 {
                let speed = from + (to - from) * f64::from(step) / 20.0;
                let torque = curve.torque_nm(speed.min(to)).unwrap();
                let grain = 1e-9 * low.max(high);
                prop_assert!(torque >= low.min(high) - grain && torque <= low.max(high) + grain);
                let rises = (torque - before) * (high - low) >= -grain * grain.max(1.0);
                prop_assert!(rises, "{torque} after {before} between {low} and {high}");
                before = torque;
            }
        }
        let (first, last) = (points[0].0, points[points.len() - 1].0);
        prop_assert_eq!(curve.torque_nm(first.next_down()), None);
        prop_assert_eq!(curve.torque_nm(last.next_up()), None);
    }

    #[test]
    fn nothing_on_a_curve_is_above_its_peaks(points in any_points()) {
        let band = band(curve(&points));
        let (torque, power) = (band.torque_peak(), band.power_peak());
        for piece in band.pieces() {
            for step in 0..=20 {
                let speed = piece.from + (piece.to - piece.from) * f64::from(step) / 20.0;
                prop_assert!(piece.at(speed) <= torque.torque_nm * (1.0 + 1e-9) + 1e-12);
                let here = power_w(piece.at(speed), speed);
                prop_assert!(here <= power.power_w * (1.0 + 1e-9) + 1e-9);
            }
        }
    }

    #[test]
    fn a_brochure_s_curve_has_its_peaks(brochure in any_brochure()) {
        let band = band(brochure.curve().unwrap());
        let torque = band.torque_peak().torque_nm / brochure.torque().nm();
        let power = band.power_peak().power_w / (brochure.power().kw() * 1000.0);
        prop_assert!((torque - 1.0).abs() < 6e-4, "{torque}");
        prop_assert!((power - 1.0).abs() < 6e-4, "{power}");
    }

    #[test]
    fn a_cubic_is_zero_at_its_roots_and_changes_sign_nowhere_else(
        places in proptest::collection::vec(-2.0..=2.0, 3), factor in -5.0..=5.0_f64, from in -2.0..=0.0
    ) {
        prop_assume!(factor.abs() > 0.01);
        // Expanded from its zeros.
        let [a, b, c]: [f64; 3] = [places[0], places[1], places[2]];
        let expanded = [-a * b * c, a * b + b * c + c * a, -(a + b + c), 1.0];
        let cubic = Cubic {
            origin: 0.0,
            from,
            to: 1.5,
            coefficients: expanded.map(|c| c * factor),
        };
        let roots = cubic.roots();
        for root in &roots {
            prop_assert!(cubic.at(*root).abs() < 1e-13 * 100.0, "{root}: {}", cubic.at(*root));
        }
        let mut ends = vec![cubic.from];
        ends.extend(&roots);
        ends.push(cubic.to);
        for pair in ends.windows(2) {
            let values = (1..20).map(|step| {
                cubic.at(pair[0] + (pair[1] - pair[0]) * f64::from(step) / 20.0)
            });
            let clear: Vec<f64> = values.filter(|value| value.abs() > 1e-12).collect();
            prop_assert!(clear.windows(2).all(|pair| pair[0] * pair[1] > 0.0), "{roots:?}");
        }
    }
}
