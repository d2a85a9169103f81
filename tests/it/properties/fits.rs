//! The laws of fits and of turned shafts for every size there is.

use layshaft::workshop::{
    BoreClass, CaseDepth, CuttingList, Deviation, Diameter, FilletRadius, Interference, MeantShaft,
    MeasuredDiameters, OnShaft, RunOut, SeatFinish, SeatSide, ShaftClass, ShaftTorque, SizeLimits,
    SizeVerdict, Stop, TurnedShaft, fillet_factor,
};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

fn mm(mm: f64) -> Diameter {
    Diameter::from_mm(mm).unwrap()
}

/// Limits from a lower one and a width, in µm.
fn limits() -> impl Strategy<Value = SizeLimits> {
    (-60.0..60.0_f64, 0.0..60.0_f64).prop_map(|(lower, width)| {
        let [lower, upper] = [lower, lower + width].map(|um| Deviation::from_um(um).unwrap());
        SizeLimits::new(lower, upper).unwrap()
    })
}

fn mirrored(limits: SizeLimits) -> SizeLimits {
    let [lower, upper] = [-limits.upper_um(), -limits.lower_um()];
    let [lower, upper] = [lower, upper].map(|um| Deviation::from_um(um).unwrap());
    SizeLimits::new(lower, upper).unwrap()
}

/// Old and new diameter, and a bore that leaves a wall.
fn shaft() -> impl Strategy<Value = (f64, f64, f64)> {
    (5.0..200.0_f64, 0.5..0.9999_f64, 0.21..0.99_f64)
        .prop_map(|(old, share, bore)| (old, old * share, old * share * bore))
}

fn is_same(found: Interference, expected: Interference) -> bool {
    (found.least_um - expected.least_um).abs() < 1e-9
        && (found.most_um - expected.most_um).abs() < 1e-9
}

proptest! {
    #[test]
    fn the_interference_of_shaft_and_bore_is_mirrored(seat in limits(), part in limits()) {
        // What sits on a shaft sits in a bore whose limits are turned about the nominal size.
        let shaft = SeatSide::Shaft.interference(seat, part);
        let bore = SeatSide::Bore.interference(mirrored(seat), mirrored(part));
        prop_assert!(is_same(shaft, bore));
        prop_assert!(is_same(shaft, SeatSide::Bore.interference(part, seat)), "seat and part change places");
        prop_assert!(shaft.least_um <= shaft.most_um + 1e-12);
        let widths = seat.width_um() + part.width_um();
        prop_assert!((shaft.most_um - shaft.least_um - widths).abs() < 1e-9);
    }

    #[test]
    fn what_works_is_never_more_than_what_is_measured(
        seat in limits(), part in limits(), d in 10.0..120.0_f64,
    ) {
        let apparent = SeatSide::Shaft.interference(seat, part);
        let [ground, turned] = [SeatFinish::Ground, SeatFinish::Turned].map(|f| apparent.working(f, mm(d)));
        for (works, of) in [(turned, ground), (ground, apparent)] {
            prop_assert!(works.least_um <= of.least_um && works.most_um <= of.most_um);
        }
        prop_assert!(apparent.most_um <= 0.0 || turned.most_um > 0.0);
    }

    #[test]
    fn no_class_has_limits_outside_the_steps(
        shaft in select(&ShaftClass::ALL[..]), bore in select(&BoreClass::ALL[..]), d in 0.5..200.0_f64,
    ) {
        prop_assert_eq!(shaft.limits(mm(d)).is_some(), d > 10.0 && d <= 120.0);
        prop_assert_eq!(bore.limits(mm(d)).is_some(), d > 18.0 && d <= 120.0);
    }

    #[test]
    fn sizes_to_the_micrometre_lie_within_their_class(
        class in select(&ShaftClass::ALL[..]), um in 10_001_u32..=120_000,
    ) {
        let nominal = mm(f64::from(um) / 1000.0);
        let limits = class.limits(nominal).unwrap();
        let sizes = limits.sizes_mm(nominal);
        for size in sizes {
            prop_assert_eq!(limits.verdict(nominal, size), SizeVerdict::Within);
            let um = size * 1000.0;
            prop_assert!((um - um.round()).abs() < 1e-6, "{size} has more digits than a micrometre");
        }
        prop_assert!(limits.width_um() - (sizes[1] - sizes[0]) * 1000.0 < 1.0 + 1e-6);
        for (outside, by) in [(sizes[0] - 0.001, -1.0), (sizes[1] + 0.001, 1.0)] {
            match limits.verdict(nominal, outside) {
                SizeVerdict::Within => prop_assert!(false, "{outside} is outside"),
                SizeVerdict::Above { by_um } => prop_assert!(by > 0.0 && by_um <= 1.0 + 1e-6),
                SizeVerdict::Below { by_um } => prop_assert!(by < 0.0 && by_um <= 1.0 + 1e-6),
            }
        }
    }

    #[test]
    fn a_cutting_list_aims_between_its_limits(
        class in select(&ShaftClass::ALL[..]), d in 10.5..120.0_f64,
    ) {
        let list = CuttingList {
            diameter: mm(d),
            class: Some(class),
            length: None,
            fillet: None,
            run_out: RunOut::USUAL,
            finish: SeatFinish::Ground,
        };
        let [least, most] = list.limits_mm().unwrap();
        prop_assert!(least < most && (least..=most).contains(&list.target_mm()));
    }

    #[test]
    fn readings_scatter_no_more_than_their_extremes(
        places in vec(vec(39.9..40.1_f64, 1..5), 1..5),
    ) {
        let places = places.into_iter().map(|place| place.into_iter().map(mm).collect());
        let measured = MeasuredDiameters::new(places.collect()).unwrap();
        let [smallest, largest] = measured.extremes_mm();
        let most = largest - smallest + 1e-12;
        prop_assert!((0.0..=most).contains(&measured.taper_mm()));
        prop_assert!((0.0..=most).contains(&measured.out_of_round_mm()));
        prop_assert!((smallest - 1e-12..=largest + 1e-12).contains(&measured.mean_mm()));
        let own = measured.limits(mm(40.0));
        prop_assert!(measured.verdict(own, mm(40.0)).is_within(), "within what was measured");
    }

    #[test]
    fn turning_down_never_strengthens((old, new, bore) in shaft(), further in 0.5..0.9999_f64) {
        for bore in [None, Some(mm(bore))] {
            let turned = TurnedShaft::new(mm(old), mm(new), bore).unwrap();
            let (strength, stiffness) = (turned.strength_share(), turned.stiffness_share());
            prop_assert!(0.0 < stiffness && stiffness < strength && strength < 1.0);
            let Ok(thinner) = TurnedShaft::new(mm(old), mm(new * further), bore) else { continue };
            prop_assert!(thinner.strength_share() < strength && thinner.stiffness_share() < stiffness);
            let torque = ShaftTorque::from_nm(500.0).unwrap();
            prop_assert!(thinner.shear_mpa(torque) > turned.shear_mpa(torque));
        }
    }

    #[test]
    fn a_hollow_shaft_keeps_no_more_than_a_solid_one((old, new, bore) in shaft()) {
        let solid = TurnedShaft::new(mm(old), mm(new), None).unwrap();
        let hollow = TurnedShaft::new(mm(old), mm(new), Some(mm(bore))).unwrap();
        prop_assert!(hollow.stiffness_share() <= solid.stiffness_share());
        prop_assert!(hollow.strength_share() <= solid.strength_share());
        let torque = ShaftTorque::from_nm(500.0).unwrap();
        prop_assert!(hollow.shear_mpa(torque) >= solid.shear_mpa(torque));
    }

    #[test]
    fn strength_is_what_shear_says((old, new, bore) in shaft(), further in 0.5..0.9999_f64) {
        let Ok(thinner) = TurnedShaft::new(mm(old), mm(new * further), Some(mm(bore))) else { return Ok(()) };
        let turned = TurnedShaft::new(mm(old), mm(new), Some(mm(bore))).unwrap();
        let torque = ShaftTorque::from_nm(500.0).unwrap();
        let by_shear = turned.shear_mpa(torque) / thinner.shear_mpa(torque);
        let by_share = thinner.strength_share() / turned.strength_share();
        prop_assert!((by_shear / by_share - 1.0).abs() < 1e-9);
    }

    #[test]
    fn what_is_turned_off_is_gone_from_the_case(
        (old, new, _) in shaft(), depth in 0.0..10.0_f64, splines: bool,
    ) {
        let depth = CaseDepth::from_mm(depth).unwrap();
        let on_shaft = OnShaft { splines, ..OnShaft::default() };
        let meant = MeantShaft {
            old: mm(old), new: mm(new), bore: None, case_depth: Some(depth), on_shaft,
        };
        let left_mm = meant.turned().unwrap().case_left_mm(depth);
        prop_assert!((0.0..=depth.mm()).contains(&left_mm));
        let stops = meant.stops();
        prop_assert_eq!(stops.contains(&Stop::NoCaseLeft), left_mm <= 0.0);
        prop_assert_eq!(stops.contains(&Stop::Splines), splines);
    }

    #[test]
    fn a_larger_fillet_never_raises_the_shear(
        share in 1.09..2.0_f64, radius in 0.1..4.0_f64, more in 0.01..2.0_f64,
    ) {
        let factor = |radius| {
            fillet_factor(mm(40.0), mm(40.0 * share), FilletRadius::from_mm(radius).unwrap())
        };
        let factors = factor(radius).zip(factor(radius + more));
        let (small, large) = factors.unwrap();
        prop_assert!(1.0 <= large && large < small);
    }
}
