//! Do tractive effort, masses and grip give the accelerations and forces of textbooks?

use super::checked::{
    AIR_KG_M3, AIR_KW, BEST_ON_A_SLOPE, DIRECT_SHARE, FINAL_SHARE, FIVE_SHARES, FOUR_ACCELERATIONS,
    FRONTAL_M2, HARDEST, HARDEST_RPM, KMH, SAME_POWER, SLIPPING, five_gears, four_gears,
    on_a_slope, slipping,
};
use crate::published::row::assert_rows;
use crate::support::vehicles::{efficiency, vehicle};
use layshaft::gearing::GearId;
use layshaft::motion::{
    AirDensity, Drag, DragCoefficient, Efficiency, FrontalArea, GRAVITY_M_S2, LoadCase, OnRoad,
    Resistance, RollingCoefficient, Vehicle,
};

/// The acceleration in m/s² of the vehicle on the slope, in a gear of that overall ratio.
fn on_the_slope(overall_ratio: f64) -> f64 {
    let car = on_a_slope(&[overall_ratio]);
    let gear = &car.powertrain().gears[0];
    gear.acceleration_m_s2(&car.on_road(), gear.low_m_s())
        .unwrap()
}

#[test]
fn the_best_ratio_on_a_slope_is_the_printed_one() {
    let ratios = (10_000..16_000).map(|step| f64::from(step) / 1000.0);
    let best = ratios.max_by(|a, b| on_the_slope(*a).total_cmp(&on_the_slope(*b)));
    let best = best.unwrap();
    let [ratio, acceleration] = BEST_ON_A_SLOPE;
    assert_rows([
        ("ratio", best, ratio),
        ("acceleration", on_the_slope(best), acceleration),
    ]);
}

#[test]
fn four_gears_accelerate_as_printed() {
    let car = four_gears();
    let mut of = efficiency(car.efficiency);
    of.of_gears
        .insert(GearId(4), Efficiency::new(DIRECT_SHARE).unwrap());
    let powertrain = car.powertrain_with(&of).unwrap();
    let rows = powertrain.gears.iter().zip(FOUR_ACCELERATIONS);
    assert_rows(rows.map(|(gear, expected)| {
        let found = gear.acceleration_m_s2(&car.on_road(), gear.low_m_s());
        let what = format!("gear {}", gear.gear.label);
        (what, found.unwrap(), expected)
    }));
}

#[test]
fn a_rear_driven_car_that_slips_accelerates_as_printed() {
    let car = slipping();
    let grip_n = car.on_road().grip_limit_n(0.0).unwrap();
    let rear_n = grip_n / 0.25;
    let weight_n = car.mass_kg * GRAVITY_M_S2;
    let [acceleration, rear, front] = SLIPPING;
    assert_rows([
        ("acceleration", grip_n / car.mass_kg, acceleration),
        ("rear axle", rear_n, rear),
        ("front axle", weight_n - rear_n, front),
    ]);
}

/// The power in kW that the air takes at a road speed.
fn air_kw(drag_coefficient: f64, speed_kmh: f64) -> f64 {
    let car = Vehicle {
        air_density: AirDensity::from_kg_m3(AIR_KG_M3).unwrap(),
        ..vehicle(
            1000.0,
            Resistance::Estimated {
                rolling: RollingCoefficient::new(0.0).unwrap(),
                drag: Drag::Shape(
                    DragCoefficient::new(drag_coefficient).unwrap(),
                    FrontalArea::from_m2(FRONTAL_M2).unwrap(),
                ),
            },
        )
    };
    let on_road = OnRoad::level_and_still(&car, &LoadCase::empty());
    let speed_m_s = speed_kmh * KMH;
    on_road.road_load_n(speed_m_s) * speed_m_s / 1000.0
}

#[test]
fn the_air_takes_the_printed_power() {
    let rows = SAME_POWER.into_iter().zip(AIR_KW);
    assert_rows(rows.map(|((coefficient, kmh), expected)| {
        let what = format!("c_d {coefficient} at {kmh} km/h");
        (what, air_kw(coefficient, kmh), expected)
    }));
}

#[test]
fn first_and_fifth_of_the_example_pull_as_recalled() {
    let mut of = efficiency(1.0);
    for (number, share) in (1..).zip(FIVE_SHARES) {
        let share = Efficiency::new(share * FINAL_SHARE).unwrap();
        of.of_gears.insert(GearId(number), share);
    }
    let powertrain = five_gears().powertrain_with(&of).unwrap();
    // Where torque is highest, so is the effort in every gear.
    let torque_nm = powertrain.band.torque_nm(HARDEST_RPM).unwrap();
    let rows = HARDEST.into_iter().flat_map(|(at, [force, speed])| {
        let gear = &powertrain.gears[at];
        let kmh = gear.speed_m_s(HARDEST_RPM) / KMH;
        [
            ("N", gear.effort_of_torque_n(torque_nm), force),
            ("km/h", kmh, speed),
        ]
    });
    assert_rows(rows);
}
