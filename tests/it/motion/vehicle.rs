//! Which mass, load and wind acts where?

use crate::support::close::assert_close;
use crate::support::vehicles::{coast_down, estimated, grade, grip, inertia, vehicle};
use layshaft::motion::{
    AddedMass, Cubic, DragArea, DrivePiece, DrivenAxle, GRAVITY_M_S2, Grade, Headwind, LoadCase,
    MassFactor, OnRoad, RotatingMasses, Trailer, Vehicle, VehicleKind,
};

fn carrying(kg: f64) -> LoadCase {
    LoadCase {
        extra: AddedMass::from_kg(kg).unwrap(),
        ..LoadCase::empty()
    }
}

fn pulling(kg: f64, m2: f64) -> LoadCase {
    LoadCase {
        trailer: Some(Trailer {
            mass: AddedMass::from_kg(kg).unwrap(),
            drag_area: DragArea::from_m2(m2).unwrap(),
        }),
        ..LoadCase::empty()
    }
}

fn in_wind(kmh: f64) -> LoadCase {
    LoadCase {
        headwind: Headwind::from_kmh(kmh).unwrap(),
        ..LoadCase::empty()
    }
}

fn level(vehicle: &Vehicle, load: &LoadCase) -> OnRoad {
    OnRoad::new(vehicle, load, Grade::LEVEL)
}

fn gripping(driven: DrivenAxle, adhesion: f64, height_m: f64) -> Vehicle {
    Vehicle {
        grip: Some(grip(driven, adhesion, 0.5, Some((2.5, height_m)))),
        ..vehicle(1000.0, estimated(0.01, 0.6))
    }
}

#[test]
fn a_load_presses_on_the_driven_tyres_and_a_trailer_only_pulls() {
    let car = gripping(DrivenAxle::Front, 0.8, 0.5);
    let at_rest = |load: &LoadCase| {
        let on_road = level(&car, load);
        let grip_n = on_road.grip_limit_n(0.0).unwrap();
        (grip_n, on_road.road_load_n(0.0), on_road.mass_kg())
    };
    let (grip_n, load_n, _) = at_rest(&LoadCase::empty());
    let (carrying_grip_n, carrying_n, carrying_kg) = at_rest(&carrying(500.0));
    let (pulling_grip_n, pulling_n, pulling_kg) = at_rest(&pulling(500.0, 1.0));
    assert_close(carrying_grip_n, 1.5 * grip_n, 1e-9, "grip, carrying");
    assert_close(pulling_grip_n, grip_n, 1e-9, "grip, pulling");
    assert_close(carrying_n, 1.5 * load_n, 1e-9, "rolling, carrying");
    assert_close(pulling_n, 1.5 * load_n, 1e-9, "rolling, pulling");
    assert_close(carrying_kg, 1500.0, 0.0, "mass, carrying");
    assert_close(pulling_kg, 1500.0, 0.0, "mass, pulling");
    // ½ · 1.2041 · 1 m² more at 10 m/s.
    let drag = |load: &LoadCase| {
        let on_road = level(&car, load);
        on_road.road_load_n(10.0) - on_road.road_load_n(0.0)
    };
    let more_n = drag(&pulling(500.0, 1.0)) - drag(&LoadCase::empty());
    assert_close(more_n, 60.205, 1e-9, "drag, pulling");
}

#[test]
fn measured_coefficients_roll_as_well_with_a_load_and_lose_nothing_on_a_grade() {
    let measured = vehicle(1000.0, coast_down(100.0, 2.0, 0.4));
    let loaded = level(&measured, &pulling(500.0, 0.0)).road_load();
    assert_close(loaded.constant_n, 150.0, 1e-9, "A");
    assert_close(loaded.linear_n_per_m_s, 2.0, 0.0, "B");
    let rolling = |vehicle: &Vehicle| {
        let on_road = OnRoad::new(vehicle, &LoadCase::empty(), grade(20.0));
        on_road.road_load().constant_n
    };
    assert_close(rolling(&measured), 100.0, 0.0, "measured");
    let cosine = 0.2_f64.atan().cos();
    let weight_n = 1000.0 * GRAVITY_M_S2;
    let found = rolling(&vehicle(1000.0, estimated(0.01, 0.6)));
    assert_close(found, 0.01 * weight_n * cosine, 1e-9, "estimated");
}

#[test]
fn wind_adds_to_the_speed_through_the_air_and_pushes_from_behind() {
    let car = vehicle(1000.0, coast_down(0.0, 0.0, 0.5));
    let at_10 = |wind_kmh: f64| level(&car, &in_wind(wind_kmh)).road_load_n(10.0);
    assert_close(at_10(0.0), 50.0, 1e-9, "still");
    assert_close(at_10(18.0), 112.5, 1e-9, "against");
    assert_close(at_10(-36.0), 0.0, 1e-9, "with it");
    assert_close(at_10(-72.0), -50.0, 1e-9, "pushed");
    // The drive is cut where the wind is reached.
    let effort = [Cubic::constant(500.0, 0.0, 50.0)];
    let pieces = level(&car, &in_wind(-72.0)).drive(&effort, 1000.0);
    let cuts: Vec<f64> = pieces.iter().map(DrivePiece::to_m_s).collect();
    assert_eq!(cuts, [20.0, 50.0]);
    assert_close(
        pieces[0].surplus.at(10.0),
        550.0,
        1e-9,
        "pushed, in the drive",
    );
}

#[test]
fn wheels_lift_before_tyres_slip_where_the_weight_is_high() {
    let weight_n = 1000.0 * GRAVITY_M_S2;
    let limit = |driven, adhesion, height_m| {
        let car = Vehicle {
            resistance: coast_down(0.0, 0.0, 0.0),
            ..gripping(driven, adhesion, height_m)
        };
        level(&car, &LoadCase::empty()).grip_limit_n(0.0).unwrap()
    };
    // q = 0.2: front μ·s ÷ (1 + μq), rear μ(1 − s) ÷ (1 − μq), all μ.
    for (driven, share) in [
        (DrivenAxle::Front, 0.4 / 1.16),
        (DrivenAxle::Rear, 0.4 / 0.84),
        (DrivenAxle::All, 0.8),
    ] {
        let found = limit(driven, 0.8, 0.5);
        assert_close(found, share * weight_n, 1e-9, format!("{driven:?}"));
    }
    // q = 1: the front wheels lift at half the weight, though the tyres would hold any force.
    for driven in [DrivenAxle::Rear, DrivenAxle::All] {
        assert_close(limit(driven, 1.2, 2.5), 0.5 * weight_n, 1e-9, "lifting");
    }
}

#[test]
fn the_formula_stands_in_for_inertias_that_nobody_has_given() {
    use MassFactor::{Formula, None as Without};
    let one = inertia(1.0);
    let given = Ok(RotatingMasses::Inertias { wheels: one });
    let nothing = Ok(RotatingMasses::Inertias {
        wheels: inertia(0.0),
    });
    let formula = Ok(RotatingMasses::Formula);
    let of = RotatingMasses::from_typed;
    assert_eq!(of(None, None, None), formula);
    assert_eq!(of(Some(Formula), None, None), formula);
    assert_eq!(of(Some(Without), None, None), nothing);
    assert_eq!(of(None, Some(one), None), nothing);
    assert_eq!(of(None, None, Some(one)), given);
    assert_eq!(of(Some(Without), None, Some(one)), given);
    assert!(of(Some(Formula), Some(one), None).is_err());
    assert!(of(Some(Formula), None, Some(one)).is_err());
}

#[test]
fn every_kind_of_vehicle_begins_with_values_that_can_be_typed() {
    for kind in VehicleKind::ALL {
        let values = kind.starting_values();
        let vehicle = values.vehicle().unwrap();
        assert!(values.efficiency().is_ok(), "{kind:?}");
        let on_road = OnRoad::level_and_still(&vehicle, &LoadCase::empty());
        // Any of them rolls, and starts on a dry hill of 20 %.
        assert!(on_road.road_load_n(0.0) > 0.0);
        let hill = on_road.gradient_percent(1e7, 0.0).unwrap();
        assert!(hill > 20.0, "{kind:?}: {hill}");
    }
}
