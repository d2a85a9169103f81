//! The laws of the bench for everything that can be measured.

use layshaft::workshop::{
    Band, Measurement, Reading, Readings, Seat, Setting, SettingBand, ShimJob, ShimThickness,
    ShimTry, Sizes, StackedShims, Stock, TurningTorque, next_shim,
};
use proptest::collection::vec;
use proptest::prelude::*;

fn readings() -> impl Strategy<Value = Readings> {
    vec(0.0..2.0_f64, 1..6).prop_map(|readings| {
        let readings = readings.into_iter().map(|mm| Reading::from_mm(mm).unwrap());
        Readings::new(readings.collect()).unwrap()
    })
}

fn job(seat: Seat) -> impl Strategy<Value = ShimJob> {
    let setting = (-0.5..0.5_f64, 0.0..0.2_f64);
    (0.5..3.0_f64, readings(), setting).prop_map(move |(trial, play, (low, width))| {
        let setting = |mm| Setting::from_mm(mm).unwrap();
        ShimJob {
            seat,
            measurement: Measurement::Play {
                trial: ShimThickness::from_mm(trial).unwrap(),
                play,
            },
            setting: SettingBand::new(setting(low), setting(low + width)).unwrap(),
        }
    })
}

fn any_job() -> impl Strategy<Value = ShimJob> {
    prop_oneof![job(Seat::Behind), job(Seat::Under)]
}

/// Every sum of at most so many of the sizes, in hundredths of a millimetre.
fn sums(sizes: &[u32], most: u8) -> Vec<(u32, u8)> {
    let mut all = vec![(0, 0)];
    let mut last = vec![0];
    for count in 1..=most {
        let next = last
            .iter()
            .flat_map(|sum| sizes.iter().map(move |size| sum + size));
        let mut next: Vec<u32> = next.collect();
        next.sort_unstable();
        next.dedup();
        all.extend(next.iter().map(|sum| (*sum, count)));
        last = next;
    }
    all
}

proptest! {
    #[test]
    fn a_thicker_shim_never_gives_more_play_behind_and_never_less_under(
        behind in job(Seat::Behind), under in job(Seat::Under), mm in 0.0..5.0_f64, more in 0.0..1.0_f64,
    ) {
        prop_assert!(behind.setting_mm(mm + more) <= behind.setting_mm(mm));
        prop_assert!(under.setting_mm(mm + more) >= under.setting_mm(mm));
    }

    #[test]
    fn what_is_wanted_gives_the_ends_of_the_setting(job in any_job()) {
        if let Ok(band) = job.wanted() {
            let ends = [band.least_mm, band.most_mm].map(|mm| job.setting_mm(mm));
            let [low, high] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
            prop_assert!((low - job.setting.low().mm()).abs() < 1e-9);
            prop_assert!((high - job.setting.high().mm()).abs() < 1e-9);
        }
    }

    #[test]
    fn both_seats_are_mirrored(mut job in job(Seat::Behind)) {
        let Measurement::Play { trial, .. } = &job.measurement else { unreachable!() };
        let trial = trial.mm();
        let behind = job.setting_mm(trial);
        job.seat = Seat::Under;
        prop_assert!((job.setting_mm(trial) - behind).abs() < 1e-12, "the trial shim gives the play");
        let Ok(under) = job.wanted() else { return Ok(()) };
        job.seat = Seat::Behind;
        let Ok(behind) = job.wanted() else { return Ok(()) };
        let sum = behind.least_mm + under.most_mm;
        prop_assert!((sum - 2.0 * trial).abs() < 1e-9);
    }

    #[test]
    fn the_stack_is_the_best_of_all(
        sizes in vec(5..80_u32, 1..7), most in 1..4_u8, least in 0..150_u32, width in 0..10_u32,
    ) {
        let mm = |n: u32| f64::from(n) / 100.0;
        let band = Band { least_mm: mm(least), most_mm: mm(least + width) };
        let shims = sizes.iter().map(|n| ShimThickness::from_mm(mm(*n)).unwrap()).collect();
        let stock = Stock::new(&Sizes::new(shims).unwrap(), StackedShims::new(most).unwrap());
        let stack = stock.chosen(band);
        // Twice the distance from the middle, in hundredths: whole.
        let off = |sum: u32| (2 * sum).abs_diff(2 * least + width);
        let all = sums(&sizes, most);
        let in_band = |sum: u32| (least..=least + width).contains(&sum);
        let any_fits = all.iter().any(|(sum, _)| in_band(*sum));
        prop_assert_eq!(stack.fits, any_fits);
        let best = all.iter().filter(|(sum, _)| in_band(*sum) == any_fits);
        let (off_least, fewest) = best.map(|(sum, count)| (off(*sum), *count)).min().unwrap();
        let sum = (stack.thickness_mm * 100.0).round();
        let own: f64 = stack.shims.iter().map(|shim| shim.mm() * 100.0).sum();
        prop_assert!((own - sum).abs() < 1e-6);
        prop_assert!((2.0 * sum - f64::from(2 * least + width)).abs() <= f64::from(off_least) + 1e-6);
        prop_assert_eq!(stack.shims.len(), usize::from(fewest));
    }

    #[test]
    fn the_line_through_two_tries_gives_them_back(
        shims in (0.5..3.0_f64, 0.01..1.0_f64), torques in (100.0..5000.0_f64, 10.0..3000.0_f64),
        share in 0.0..1.0_f64,
    ) {
        let tried = |mm, nmm| ShimTry {
            shim: ShimThickness::from_mm(mm).unwrap(),
            torque: TurningTorque::from_nmm(nmm).unwrap(),
        };
        let (first, second) = (shims.0, shims.0 + shims.1);
        let (low, high) = (torques.0, torques.0 + torques.1);
        let tries = [tried(first, low), tried(second, high)];
        let wanted = TurningTorque::from_nmm(low + share * (high - low)).unwrap();
        let next = next_shim(tries, wanted).unwrap();
        prop_assert!((next.mm() - (first + share * (second - first))).abs() < 1e-9);
        prop_assert_eq!(next_shim([tries[0], tried(first, high)], wanted), None);
        prop_assert_eq!(next_shim([tries[0], tried(second, low)], wanted), None);
    }
}
