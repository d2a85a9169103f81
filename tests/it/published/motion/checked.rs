//! What are the vehicles of the check values, and what is to come of each?
//!
//! The laws are asked in this folder; flags and project files in `tests/it/cli/closed_forms.rs`.

use crate::published::row::Status::{Derived, Memory, Read};
use crate::published::row::{Published, published};
use crate::support::plain_vehicle::{Held, PER_THOUSAND_N, Plain, Tyres};
use layshaft::motion::{DrivenAxle, torque_of_power_nm};
use std::f64::consts::PI;

const CFR: &str = "40 CFR 86.529-98, figure F98-9";
const SLOPE: &str = "a problem in the mechanics of machines, printed answers 13 and 1.74 m/s²";
const BEVAN: &str = "Bevan, Theory of Machines, ch. 2, ex. 11";
const HIBBELER: &str = "Hibbeler, Dynamics, ex. 17.5";
const SUBRAMANYA: &str = "Subramanya, 1000 Solved Problems in Fluid Mechanics, ex. 9.6";
const GILLESPIE: &str = "Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, ex. 1";
pub(super) const MONOTONE: &str = "PchipInterpolator of scipy 1.17, slopes of Fritsch and Butland";
const CLOSED: &str = "closed form";

pub(crate) const KMH: f64 = 1.0 / 3.6;
pub(crate) const QUARTER_MILE_M: f64 = 402.336;

const N_PER_LBF: f64 = 4.448_221_615_260_5;
const NM_PER_LBF_FT: f64 = 1.355_817_948_331_400_4;
const M_PER_MILE: f64 = 1609.344;
const M_PER_FOOT: f64 = 0.3048;

/// To the millionth that is promised.
const fn closed(expected: f64) -> Published {
    published(expected, 1e-6, CLOSED, Derived)
}

/// To its last printed digit.
const fn to_the_digit(expected: f64) -> Published {
    published(expected, 5e-7, CLOSED, Derived)
}

/// An engine speed to its printed digits.
const fn change(expected: f64) -> Published {
    published(expected, 5e-5, CLOSED, Derived)
}

/// 1500 kg on the level, which A in N and C in N/(m/s)² hold back.
fn heavy(ratios: &[f64], points: &[(f64, f64)], [a, c]: [f64; 2]) -> Plain {
    Plain {
        held: Held::Measured(a, 0.0, c),
        ..Plain::bare(1500.0, ratios, points)
    }
}

/// A power in W from one engine speed to another, as points in geometric steps.
pub(crate) fn power_points(
    power_w: f64,
    [from_rpm, to_rpm]: [f64; 2],
    points: u32,
) -> Vec<(f64, f64)> {
    let share = |point: u32| f64::from(point) / f64::from(points - 1);
    let speeds = (0..points).map(|point| from_rpm * (to_rpm / from_rpm).powf(share(point)));
    speeds
        .map(|rpm| (rpm, torque_of_power_nm(power_w, rpm)))
        .collect()
}

/// The same with the first and the last point a step beyond the stretch: what a cubic makes of its first and
/// its last span, where it knows one neighbour only, is not driven then.
pub(crate) fn power_points_around(
    power_w: f64,
    [from_rpm, to_rpm]: [f64; 2],
    points: u32,
) -> Vec<(f64, f64)> {
    let step = (to_rpm / from_rpm).powf(1.0 / f64::from(points - 3));
    power_points(power_w, [from_rpm / step, to_rpm * step], points)
}

/// Pulled by a constant power without resistance.
pub(crate) fn ninety_kw(points: &[(f64, f64)]) -> Plain {
    heavy(&[4.0], points, [0.0, 0.0])
}

/// Time in s and way in m of that from 10 m/s to 100 km/h.
pub(crate) const CONSTANT_POWER: [Published; 2] = [closed(5.596_708), closed(113.519_281)];

/// Pulled with 4000 N at any speed, against the air.
pub(crate) fn four_thousand_n() -> Plain {
    let points = [500.0, 9000.0].map(|rpm| (rpm, PER_THOUSAND_N));
    heavy(&[4.0], &points, [0.0, 0.4])
}

/// Time in s and way in m of that to 100 km/h.
pub(crate) const CONSTANT_FORCE: [Published; 2] = [closed(10.697_716), closed(150.562_392)];

/// Time in s and speed in m/s of that at a quarter of a mile.
pub(crate) const CONSTANT_FORCE_QUARTER: [Published; 2] = [closed(17.683_234), closed(43.945_318)];

/// The time in s of that from 80 to 120 km/h.
pub(crate) const CONSTANT_FORCE_IN_GEAR: Published = closed(4.521_789);

/// 1000 kg that are sped up with 4 m/s².
pub(crate) fn four_m_s2() -> Plain {
    Plain {
        mass_kg: 1000.0,
        held: Held::Measured(0.0, 0.0, 0.0),
        ..four_thousand_n()
    }
}

/// The first foot of that, in s.
pub(crate) const ROLLOUT: Published = closed(0.390_384);

/// With A of 200 N and C of 0.4 N/(m/s)².
pub(crate) fn rolling_down() -> Plain {
    Plain {
        held: Held::Measured(200.0, 0.0, 0.4),
        ..four_thousand_n()
    }
}

/// Time in s and way in m of that from 120 to 60 km/h.
pub(crate) const COAST_DOWN: [Published; 2] = [closed(56.919_322), closed(1_365.447_188)];

/// At most 6000 N, by a grip of 0.4078865 on all wheels, then 90 kW; the points begin below 15 m/s.
pub(crate) fn grip_then_power(points: &[(f64, f64)]) -> Plain {
    Plain {
        tyres: Some(Tyres {
            driven: DrivenAxle::All,
            adhesion: 0.407_886_5,
            front_share: 0.5,
            transfer: None,
        }),
        ..ninety_kw(points)
    }
}

/// The time in s of that to 100 km/h.
pub(crate) const GRIP_THEN_POWER: Published = closed(8.305_041);

/// Time in s and speed in m/s of that at a quarter of a mile.
pub(crate) const GRIP_THEN_POWER_QUARTER: [Published; 2] = [closed(16.127_796), closed(41.356_202)];

/// 6000 N to 15 m/s, half a second of pause, 4000 N from there, against A and C.
pub(crate) fn two_gears(load: [f64; 2]) -> Plain {
    let points = [500.0, 9000.0].map(|rpm| (rpm, PER_THOUSAND_N));
    Plain {
        pause_s: 0.5,
        shift_rpms: vec![2250.0],
        ..heavy(&[6.0, 4.0], &points, load)
    }
}

/// A and C, with the time in s and the way in m of two gears to 100 km/h.
pub(crate) const TWO_GEARS: [([f64; 2], [Published; 2]); 2] = [
    ([0.0, 0.0], [closed(9.041_667), closed(138.113_426)]),
    ([200.0, 0.4], [closed(9.747_229), closed(151.271_462)]),
];

/// Two gears behind a torque of 400 − 0.04 · n N·m; nothing turns and nothing holds it back, or there is the
/// mass factor by formula, and 200 N + 0.4 v².
pub(crate) fn falling_torque(ratios: [f64; 2], turns: bool) -> Plain {
    let bare = Plain {
        final_drive: 4.0,
        circumference_mm: 2.0 * PI * 300.0,
        efficiency: 0.9,
        ..Plain::bare(1400.0, &ratios, &[(1000.0, 360.0), (9000.0, 40.0)])
    };
    if !turns {
        return bare;
    }
    Plain {
        held: Held::Measured(200.0, 0.0, 0.4),
        inertias: None,
        ..bare
    }
}

/// The ratios, whether anything turns, and the engine speed at which the change is best.
pub(crate) const BEST_CHANGES: [([f64; 2], bool, Published); 4] = [
    ([2.0, 1.5], false, change(5714.2857)),
    ([3.5, 2.0], false, change(6363.6364)),
    ([2.0, 1.5], true, change(5112.8379)),
    ([3.5, 2.0], true, change(4719.0188)),
];

/// Where the first of these changes drops to.
pub(crate) const AFTER_THE_CHANGE: Published = change(4285.7143);

/// 100 kW against A of 200 N and C of 0.4 N/(m/s)², with a point at the top speed.
pub(crate) fn hundred_kw() -> Plain {
    let speeds = [1000.0, 2000.0, 3500.0, 5000.0, 6035.2005, 7000.0];
    let points = speeds.map(|rpm| (rpm, torque_of_power_nm(100_000.0, rpm)));
    heavy(&[4.0], &points, [200.0, 0.4])
}

/// The top speed of that in m/s.
pub(crate) const TOP_SPEED: Published = to_the_digit(60.352_005);

/// A rolling coefficient of 0.012 under 9.81 m/s², ½ · 1.2 kg/m³ · 0.65 m², at 100 km/h that engine speed.
pub(crate) fn cruising(engine_rpm: f64) -> Plain {
    let ratio = 4.0 * engine_rpm / (100.0 * 100.0 * KMH);
    Plain {
        efficiency: 0.92,
        ..heavy(
            &[ratio],
            &[(1000.0, 150.0), (5000.0, 150.0)],
            [176.58, 0.39],
        )
    }
}

/// The engine speed, and L/100 km by e 0.42, 1.6 bar, 2.0 L and 32 MJ/L.
pub(crate) const CRUISE: [(f64, Published); 3] = [
    (2000.0, to_the_digit(5.290_388)),
    (2500.0, to_the_digit(5.647_531)),
    (3000.0, to_the_digit(6.004_674)),
];

/// A torque curve of any shape.
pub(crate) const CURVE: [(f64, f64); 7] = [
    (1000.0, 120.0),
    (2000.0, 170.0),
    (3000.0, 200.0),
    (4000.0, 200.0),
    (5000.0, 190.0),
    (6000.0, 165.0),
    (6500.0, 140.0),
];

const fn between(expected: f64) -> Published {
    published(expected, 5e-7, MONOTONE, Derived)
}

/// Engine speeds between its points, with the torque there.
pub(crate) const BETWEEN: [(f64, Published); 7] = [
    (1250.0, between(134.492_188)),
    (1500.0, between(147.812_5)),
    (2500.0, between(189.687_5)),
    (3500.0, between(200.0)),
    (4500.0, between(196.785_714)),
    (5500.0, between(180.041_209)),
    (6250.0, between(153.982_372)),
];

const fn rolls(time_s: f64) -> Published {
    published(time_s, 0.015, CFR, Read)
}

/// Mass in kg, A in N and C in N/(km/h)² of motorcycles, with the time in s from 70 to 60 km/h.
pub(crate) const MOTORCYCLES: [([f64; 3], Published); 12] = [
    ([100.0, 0.0, 0.0224], rolls(2.95)),
    ([110.0, 0.82, 0.0227], rolls(3.18)),
    ([120.0, 1.70, 0.0230], rolls(3.39)),
    ([130.0, 2.57, 0.0233], rolls(3.60)),
    ([140.0, 3.44, 0.0235], rolls(3.80)),
    ([150.0, 4.32, 0.0238], rolls(3.99)),
    ([170.0, 6.06, 0.0244], rolls(4.36)),
    ([180.0, 6.94, 0.0246], rolls(4.53)),
    ([190.0, 7.81, 0.0249], rolls(4.69)),
    ([200.0, 8.69, 0.0252], rolls(4.85)),
    ([210.0, 9.56, 0.0255], rolls(5.00)),
    ([220.0, 10.43, 0.0257], rolls(5.15)),
];

/// One of them.
pub(crate) fn motorcycle([mass_kg, a, c]: [f64; 3]) -> Plain {
    Plain {
        mass_kg,
        held: Held::Measured(a, 0.0, c * 3.6 * 3.6),
        ..four_thousand_n()
    }
}

/// 1000 kg on a slope of 1 in 20, held back by 500 N, in gears of these overall ratios.
pub(crate) fn on_a_slope(ratios: &[f64]) -> Plain {
    Plain {
        circumference_mm: 2.0 * PI * 300.0,
        held: Held::Measured(500.0, 0.0, 0.0),
        efficiency: 0.90,
        inertias: Some((1.0, 10.0)),
        grade_percent: 100.0 * (1.0_f64 / 20.0).asin().tan(),
        ..Plain::bare(1000.0, ratios, &[(1000.0, 150.0), (6000.0, 150.0)])
    }
}

/// The best ratio there, and the acceleration in m/s².
pub(crate) const BEST_ON_A_SLOPE: [Published; 2] = [
    published(12.97, 0.005, SLOPE, Read),
    published(1.735, 0.0005, SLOPE, Read),
];

/// Four gears without resistance; that of the direct one is another efficiency.
pub(crate) fn four_gears() -> Plain {
    let torque = 43.3297;
    Plain {
        circumference_mm: 2.0 * PI * 330.2,
        efficiency: 0.82,
        inertias: Some((0.224_530_7, 0.0)),
        ..Plain::bare(
            747.5202,
            &[22.5, 12.5, 7.3, 5.4],
            &[(1000.0, torque), (6000.0, torque)],
        )
    }
}

/// The efficiency of the last of them.
pub(crate) const DIRECT_SHARE: f64 = 0.90;

/// A figure in feet, in m.
const fn feet(expected: f64, tolerance: f64) -> Published {
    let (expected, tolerance) = (expected * M_PER_FOOT, tolerance * M_PER_FOOT);
    published(expected, tolerance, BEVAN, Read)
}

/// The acceleration of each in m/s², printed in ft/s².
pub(crate) const FOUR_ACCELERATIONS: [Published; 4] = [
    feet(4.96, 0.005),
    feet(4.37, 0.01),
    feet(3.08, 0.005),
    feet(2.61, 0.005),
];

/// 2000 kg, 1.25 m behind the front axle and 0.75 m ahead of the driven rear one, with force to spare.
pub(crate) fn slipping() -> Plain {
    Plain {
        tyres: Some(Tyres {
            driven: DrivenAxle::Rear,
            adhesion: 0.25,
            front_share: 0.75 / 2.0,
            transfer: Some((2.0, 0.30)),
        }),
        mass_kg: 2000.0,
        ..four_m_s2()
    }
}

/// The acceleration of that in m/s², then what presses on its rear and its front axle in N.
pub(crate) const SLIPPING: [Published; 3] = [
    published(1.59, 0.005, HIBBELER, Read),
    published(12_740.0, 5.0, HIBBELER, Read),
    published(6_880.0, 5.0, HIBBELER, Read),
];

/// The frontal area in m² of a car of which only the drag coefficient changes.
pub(crate) const FRONTAL_M2: f64 = 1.6;

/// The density in kg/m³ of the air that it meets.
pub(crate) const AIR_KG_M3: f64 = 1.2;

/// Its drag coefficients, with the road speeds in km/h at which both take the same power.
pub(crate) const SAME_POWER: [(f64, f64); 2] = [(0.35, 60.0), (0.30, 63.16)];

/// That power in kW: to its printed digit, and to what a hundredth of a km/h makes of the second speed.
pub(crate) const AIR_KW: [Published; 2] = [
    published(1.556, 0.0005, SUBRAMANYA, Read),
    published(1.556, 0.001, SUBRAMANYA, Read),
];

/// The second of these speeds by the power that the first drag coefficient takes at the first.
pub(crate) const AS_FAST: Published = published(63.16, 0.005, SUBRAMANYA, Read);

/// Five gears, without what they lose.
pub(crate) fn five_gears() -> Plain {
    let in_lbf_ft = [
        (800.0, 120.0),
        (1200.0, 132.0),
        (1600.0, 145.0),
        (2000.0, 160.0),
        (2400.0, 175.0),
        (2800.0, 181.0),
        (3200.0, 190.0),
        (3600.0, 198.0),
        (4000.0, 200.0),
        (4400.0, 201.0),
        (4800.0, 198.0),
        (5200.0, 180.0),
    ];
    let points = in_lbf_ft.map(|(rpm, torque)| (rpm, torque * NM_PER_LBF_FT));
    Plain {
        final_drive: 2.92,
        circumference_mm: 1000.0 * M_PER_MILE / 801.0,
        ..Plain::bare(1000.0, &[4.28, 2.79, 1.83, 1.36, 1.00], &points)
    }
}

/// What each of them leaves of the power.
pub(crate) const FIVE_SHARES: [f64; 5] = [0.966, 0.967, 0.972, 0.973, 0.970];

/// What the final drive leaves of that.
pub(crate) const FINAL_SHARE: f64 = 0.99;

/// The engine speed at which these pull hardest.
pub(crate) const HARDEST_RPM: f64 = 4400.0;

const fn pounds(lbf: f64) -> Published {
    published(lbf * N_PER_LBF, 0.5 * N_PER_LBF, GILLESPIE, Memory)
}

const fn miles(mph: f64) -> Published {
    let kmh = M_PER_MILE / 1000.0;
    published(mph * kmh, 0.05 * kmh, GILLESPIE, Memory)
}

/// The place of a gear, how hard it pulls in N and at which road speed in km/h.
pub(crate) const HARDEST: [(usize, [Published; 2]); 2] = [
    (0, [pounds(2290.0), miles(26.4)]),
    (4, [pounds(537.0), miles(112.9)]),
];
