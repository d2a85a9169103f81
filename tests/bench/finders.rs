//! How long does a search for tooth pairs take? Budget: thousands of pairs within a frame, 16 ms.

use divan::black_box;
use layshaft::finders::{
    CentreDistance, FixedCentre, HelixAngle, NormalModule, PairWish, PressureAngle, RatioTolerance,
    TeethLimits, tooth_pairs,
};
use layshaft::gearing::Ratio;

#[divan::bench]
fn thousands_of_tooth_pairs(bencher: divan::Bencher<'_, '_>) {
    let wish = PairWish {
        ratio: Ratio::from_number(1.0).unwrap(),
        within: RatioTolerance::from_percent(100.0).unwrap(),
        teeth: TeethLimits::new(9, 120).unwrap(),
        sum: None,
        centre: Some(FixedCentre {
            distance: CentreDistance::from_mm(80.0).unwrap(),
            module: NormalModule::from_mm(2.5).unwrap(),
            helix: HelixAngle::from_degrees(20.0).unwrap(),
            pressure: PressureAngle::USUAL,
        }),
    };
    assert!(tooth_pairs(&wish).len() > 9000);
    bencher.bench(|| tooth_pairs(black_box(&wish)));
}
