//! The sums of the bench against published and derived figures.

use layshaft::units::LengthUnit;
use layshaft::workshop::{
    Angle, Arrangement, BacklashMove, Band, Depth, Filling, HeatChange, Material, Measurement,
    PullForce, Radius, Reading, Readings, Seat, Setting, SettingBand, ShimJob, ShimThickness,
    SideShims, StackedShims, Stock, TemperatureRise, TorqueReading, TurningMeasurement,
    TurningTorque, parse_sizes,
};

/// An inch in mm, a pound-force in N.
const INCH_MM: f64 = 25.4;
const LBF_N: f64 = 4.448_221_615_260_5;

fn job(seat: Seat, trial: f64, play: f64, [low, high]: [f64; 2]) -> ShimJob {
    let setting = |mm| Setting::from_mm(mm).unwrap();
    ShimJob {
        seat,
        measurement: Measurement::Play {
            trial: ShimThickness::from_mm(trial).unwrap(),
            play: Readings::new(vec![Reading::from_mm(play).unwrap()]).unwrap(),
        },
        setting: SettingBand::new(setting(low), setting(high)).unwrap(),
    }
}

fn assert_band(job: &ShimJob, least: f64, most: f64) {
    let Band { least_mm, most_mm } = job.wanted().unwrap();
    assert!((least_mm - least).abs() < 1e-9, "{least_mm}, not {least}");
    assert!((most_mm - most).abs() < 1e-9, "{most_mm}, not {most}");
}

#[test]
fn a_trial_shim_behind_a_race_grows_by_play_and_preload() {
    // Source: a service procedure for a manual gearbox: trial 0.65, dial 0.30, preload 0.20 → 1.15 out of
    // 0.65 to 1.40 by 0.05 (read in retrieved copy).
    let job = job(Seat::Behind, 0.65, 0.30, [-0.20, -0.20]);
    assert_band(&job, 1.15, 1.15);
    let sizes = parse_sizes("0.65 to 1.40 by 0.05", LengthUnit::Millimetre).unwrap();
    assert_eq!(sizes.as_slice().len(), 16);
    let stack = Stock::new(&sizes, StackedShims::ONE).chosen(job.wanted().unwrap());
    assert!(stack.fits && stack.shims.len() == 1);
    assert!((stack.shims[0].mm() - 1.15).abs() < 1e-9);
}

#[test]
fn a_cover_takes_what_the_clearance_lacks() {
    // Source: an axle service manual: wanted 0.003–0.007 in, measured 0.001 → add 0.002…0.006 in (read). The
    // trial shim here is one of 0.020 in.
    let inch = |mm: f64| mm * INCH_MM;
    let job = job(
        Seat::Under,
        inch(0.020),
        inch(0.001),
        [inch(0.003), inch(0.007)],
    );
    assert_band(&job, inch(0.022), inch(0.026));
}

#[test]
fn a_stack_is_made_of_the_sizes_that_can_be_had() {
    // Source: an outboard service manual: current 0.62, change −0.20 → 0.42 = 0.30 + 0.12 from 0.10 0.12 0.15
    // 0.18 0.30 0.40 0.50 (read; split derived).
    let sizes = parse_sizes("0.10 0.12 0.15 0.18 0.30 0.40 0.50", LengthUnit::Millimetre).unwrap();
    let point = |mm| Band {
        least_mm: mm,
        most_mm: mm,
    };
    let two = Stock::new(&sizes, StackedShims::new(2).unwrap());
    let stack = two.chosen(point(0.42));
    let shims: Vec<f64> = stack.shims.iter().map(|shim| shim.mm()).collect();
    assert!(stack.fits && shims == [0.30, 0.12], "{stack:?}");
    assert!(!two.chosen(point(0.53)).fits);
    // Derived: with at most four the only steps of 0.01 between 0.10 and 1.00 out of reach are these.
    let four = Stock::new(&sizes, StackedShims::new(4).unwrap());
    let hundredths = (10..=100).filter(|n| !four.chosen(point(f64::from(*n) / 100.0)).fits);
    let out_of_reach: Vec<u32> = hundredths.collect();
    let published = [11, 13, 14, 16, 17, 19, 21, 23, 26, 29, 31, 41, 59, 71, 99];
    assert_eq!(out_of_reach, published);
}

#[test]
fn depths_leave_what_fills_them() {
    // Source: a service manual: 75.01 − 4.48 − 15.0 − 55 = 0.53 (read).
    let depth = |mm| Depth::from_mm(mm).unwrap();
    let setting = Setting::from_mm(0.0).unwrap();
    let job = ShimJob {
        seat: Seat::Behind,
        measurement: Measurement::Depths {
            case: depth(75.01),
            filling: Filling::new([4.48, 15.0, 55.0].map(depth).to_vec()).unwrap(),
            gasket: ShimThickness::from_mm(0.0).unwrap(),
        },
        setting: SettingBand::new(setting, setting).unwrap(),
    };
    assert_band(&job, 0.53, 0.53);
}

#[test]
fn readings_have_a_mean_and_a_spread() {
    // Derived: 0.30 0.31 0.29 0.30 0.32 → 0.304, s 0.011402, s/√5 0.005099.
    let readings = [0.30, 0.31, 0.29, 0.30, 0.32].map(|mm| Reading::from_mm(mm).unwrap());
    let readings = Readings::new(readings.to_vec()).unwrap();
    assert!((readings.mean_mm() - 0.304).abs() < 1e-12);
    assert!((readings.spread_mm() - 0.011_402).abs() < 5e-7);
    let exact = layshaft::workshop::Resolution::from_mm(0.0).unwrap();
    assert!((readings.standard_error_mm(exact) - 0.005_099).abs() < 5e-7);
}

fn pulled(radius_in: f64, lbf: f64) -> f64 {
    let reading = TorqueReading::Pull {
        pull: PullForce::from_n(lbf * LBF_N).unwrap(),
        radius: Radius::from_mm(radius_in * INCH_MM).unwrap(),
    };
    let measured = TurningMeasurement {
        reading,
        before: None,
        ratio: None,
        seals: None,
    };
    measured.torque_nmm()
}

#[test]
fn a_cord_on_a_drum_pulls_by_its_radius() {
    // Source: axle service procedures: 9 in × 7 lb = 63 lb·in = 7.118 N·m (read); 8 5/16 in × 24 lb →
    // 16.6 lb·ft (inputs read, result derived).
    assert!((pulled(9.0, 7.0) - 7118.0).abs() < 0.5);
    let lbf_ft = pulled(8.0 + 5.0 / 16.0, 24.0) / (LBF_N * 12.0 * INCH_MM);
    assert!((lbf_ft - 16.6).abs() < 0.05, "{lbf_ft}");
    // 15–35 lb·in = 1.69–3.95 N·m (read, conversion derived).
    let nm = |lbf_in: f64| lbf_in * LBF_N * INCH_MM / 1000.0;
    assert!((nm(15.0) - 1.69).abs() < 0.005 && (nm(35.0) - 3.95).abs() < 0.005);
}

#[test]
fn gears_and_seals_stand_between_the_wrench_and_the_bearings() {
    // Common practice, no source: (2.0 − 0.5) N·m × 4 − 1 N·m = 5 N·m; an adapter of 50 on a wrench of 250
    // reads a fifth too little (from memory).
    let nmm = |nm: f64| TurningTorque::from_nmm(1000.0 * nm).unwrap();
    let radius = |mm| Radius::from_mm(mm).unwrap();
    let measured = |adapter| TurningMeasurement {
        reading: TorqueReading::Wrench {
            reading: nmm(2.0),
            adapter,
        },
        before: Some(nmm(0.5)),
        ratio: layshaft::gearing::Ratio::from_number(4.0).ok(),
        seals: Some(nmm(1.0)),
    };
    assert!((measured(None).torque_nmm() - 5000.0).abs() < 1e-9);
    let longer = measured(Some([radius(250.0), radius(50.0)])).torque_nmm();
    assert!((longer - (2400.0 - 500.0) * 4.0 + 1000.0).abs() < 1e-9);
}

fn change(seats_mm: f64, case_k: f64, shaft_k: f64, arrangement: Arrangement) -> f64 {
    let change = HeatChange {
        arrangement,
        case: Material::Aluminium,
        shaft: Material::Steel,
        case_rise: TemperatureRise::from_k(case_k).unwrap(),
        shaft_rise: TemperatureRise::from_k(shaft_k).unwrap(),
        seats_mm,
    };
    change.end_play_mm()
}

#[test]
fn an_aluminium_case_with_cups_adjusted_gets_looser_hot() {
    // Derived: L 150, 60 K both → +0.099; L 200, 80 K → +0.176; L 200, case 60 K, shaft 75 K → +0.096 mm.
    // Source of the sign: SAE 910799 (abstract, read).
    let hot = |l, case, shaft| change(l, case, shaft, Arrangement::FaceToFace);
    assert!((hot(150.0, 60.0, 60.0) - 0.099).abs() < 1e-9);
    assert!((hot(200.0, 80.0, 80.0) - 0.176).abs() < 1e-9);
    assert!((hot(200.0, 60.0, 75.0) - 0.096).abs() < 1e-9);
    let back = change(150.0, 60.0, 60.0, Arrangement::BackToBack);
    assert!((back + 0.099).abs() < 1e-9);
}

#[test]
fn backlash_moves_shim_to_the_ring_gear_and_keeps_the_total() {
    // From memory: 2 tan 20° sin 75° → 0.703 (derived); workshops take 0.6.
    let rate = {
        let [pressure, pitch] = [20.0, 75.0].map(|deg| Angle::from_deg(deg).unwrap());
        BacklashMove::of_angles(pressure, pitch).unwrap()
    };
    assert!((rate.per_mm() - 0.703).abs() < 5e-4);
    let reading = |mm| Reading::from_mm(mm).unwrap();
    let shims = SideShims::from_travel(reading(1.80), reading(1.05), reading(0.10));
    assert!((shims.ring_gear_mm - 1.05).abs() < 1e-12 && (shims.other_mm - 0.85).abs() < 1e-12);
    let moved = shims.with_less_backlash(0.06, BacklashMove::USUAL);
    assert!((moved.ring_gear_mm - 1.15).abs() < 1e-12, "{moved:?}");
    assert!((moved.total_mm() - shims.total_mm()).abs() < 1e-12);
}
