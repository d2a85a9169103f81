//! The edits of technical data: does each change its part, and what goes with a set or a gear?

use super::{Case, FIRST, SECOND, candidate, start};
use crate::support::gear_sets::{ratio, rpm};
use layshaft::checks::{RatedTorque, SignalSource};
use layshaft::gearing::{GearId, RoadSpeed};
use layshaft::motion::{Efficiency, FuelConsumption, Grade, Mass, ShiftPause};
use layshaft::project::{
    DrivingData, Edit, EngineData, History, KnownFuel, LimitsData, Project, RoadData,
    SecondAxleData, SetChecks, SetEdit, SetEfficiencies, SetId, SignalData, SpeedometerData,
    VehicleData,
};

fn vehicle(kg: f64) -> Edit {
    Edit::VehicleData(Box::new(VehicleData {
        mass: Some(Mass::from_kg(kg).unwrap()),
        ..VehicleData::default()
    }))
}

fn diesel() -> Box<EngineData> {
    Box::new(EngineData {
        fuel: layshaft::motion::Fuel::Diesel,
        ..EngineData::default()
    })
}

fn known_fuel(set: SetId, gear: u32) -> Edit {
    Edit::KnownFuel(Some(KnownFuel {
        set,
        gear: GearId(gear),
        speed: RoadSpeed::from_kmh(100.0).unwrap(),
        consumption: FuelConsumption::from_l_per_100km(7.4).unwrap(),
    }))
}

fn efficiency(set: SetId, gear: u32, share: f64) -> Edit {
    let own = (GearId(gear), Efficiency::new(share).unwrap());
    let efficiencies = SetEfficiencies {
        of_gears: [own].into(),
        ..SetEfficiencies::default()
    };
    Edit::Efficiencies(set, efficiencies)
}

fn at_a_wheel() -> SignalData {
    SignalData {
        source: Some(SignalSource::Wheel),
        drive: None,
    }
}

fn own_checks() -> SetChecks {
    SetChecks {
        signal: at_a_wheel(),
        rated_torque: RatedTorque::from_nm(250.0).ok(),
        second_final_drive: None,
    }
}

fn limits() -> LimitsData {
    LimitsData {
        top_speed: RoadSpeed::from_kmh(160.0).ok(),
        ..LimitsData::default()
    }
}

fn second_axle() -> SecondAxleData {
    SecondAxleData {
        final_drive: Some(ratio(4.1)),
        ..SecondAxleData::default()
    }
}

pub(super) fn technical() -> Vec<Case> {
    vec![
        Case {
            edit: Edit::EngineData(diesel()),
            shows: |p| p.technical.engine == *diesel(),
        },
        Case {
            edit: vehicle(1020.0),
            shows: |p| p.technical.vehicle.mass == Mass::from_kg(1020.0).ok(),
        },
        Case {
            edit: Edit::RoadData(RoadData {
                grade: Grade::from_percent(6.0).ok(),
                ..RoadData::default()
            }),
            shows: |p| p.technical.road.grade == Grade::from_percent(6.0).ok(),
        },
        Case {
            edit: Edit::DrivingData(DrivingData {
                shift_pause: ShiftPause::from_s(0.4).ok(),
                launch: Some(rpm(2000.0)),
                yearly_distance: None,
            }),
            shows: |p| p.technical.driving.launch == Some(rpm(2000.0)),
        },
        Case {
            edit: Edit::SpeedometerData(Box::new(SpeedometerData {
                signal: at_a_wheel(),
                ..SpeedometerData::default()
            })),
            shows: |p| p.technical.speedometer.signal == at_a_wheel(),
        },
        Case {
            edit: Edit::SetChecks(SECOND, Box::new(own_checks())),
            shows: |p| candidate(p, SECOND).technical.checks == own_checks(),
        },
        Case {
            edit: Edit::LimitsData(Box::new(limits())),
            shows: |p| p.technical.limits == limits(),
        },
        Case {
            edit: Edit::SecondAxleData(Box::new(second_axle())),
            shows: |p| p.technical.second_axle == second_axle(),
        },
        Case {
            edit: known_fuel(SECOND, 1),
            shows: |p| {
                p.technical
                    .known_fuel
                    .is_some_and(|fuel| fuel.set == SECOND)
            },
        },
        Case {
            edit: Edit::OwnEngine(SECOND, Some(diesel())),
            shows: |p| candidate(p, SECOND).technical.engine == Some(*diesel()),
        },
        Case {
            edit: efficiency(SECOND, 2, 0.93),
            shows: |p| {
                let own = &candidate(p, SECOND).technical.efficiencies.of_gears;
                own.get(&GearId(2)) == Efficiency::new(0.93).ok().as_ref()
            },
        },
    ]
}

fn after(edits: &[Edit]) -> Project {
    let apply = |project: Project, edit: &Edit| edit.applied_to(&project).unwrap();
    edits.iter().fold(start(), apply)
}

#[test]
fn what_is_known_of_a_gear_or_set_goes_with_it() {
    let of_gear = [known_fuel(SECOND, 2), efficiency(SECOND, 2, 0.93)];
    let without_gear = [
        &of_gear[..],
        &[Edit::Set(SECOND, SetEdit::RemoveGear(GearId(2)))],
    ];
    let project = after(&without_gear.concat());
    assert_eq!(project.technical.known_fuel, None);
    let efficiencies = &candidate(&project, SECOND).technical.efficiencies;
    assert_eq!(*efficiencies, SetEfficiencies::default());
    let project = after(&[known_fuel(SECOND, 2), Edit::RemoveSet(SECOND)]);
    assert_eq!(project.technical.known_fuel, None);
}

#[test]
fn nothing_is_known_of_a_gear_that_is_not_there() {
    for edit in [known_fuel(SECOND, 99), efficiency(SECOND, 99, 0.9)] {
        let refused = edit.applied_to(&start()).unwrap_err();
        assert!(refused.to_string().contains("not there"), "{refused}");
    }
}

#[test]
fn a_new_set_has_the_engine_and_the_losses_of_the_one_before_it() {
    let copy = Box::new((*candidate(&start(), SECOND).set).clone());
    let project = after(&[
        Edit::OwnEngine(SECOND, Some(diesel())),
        efficiency(SECOND, 2, 0.93),
        Edit::AddSet(SECOND, copy),
    ]);
    let fresh = &candidate(&project, SetId(3)).technical;
    assert_eq!(*fresh, candidate(&project, SECOND).technical);
    assert_ne!(*fresh, candidate(&project, FIRST).technical);
}

#[test]
fn one_figure_of_a_part_is_named_by_itself_and_several_by_the_part() {
    let mut history = History::new(start());
    let mut said = |edit: Edit| {
        history.edit(&edit).unwrap();
        history.undoable().unwrap().named().to_string()
    };
    assert_eq!(said(vehicle(1020.0)), "mass: 1020 kg");
    assert_eq!(said(vehicle(1150.0)), "mass: 1150 kg");
    let other = Edit::VehicleData(Box::new(VehicleData {
        front_share: layshaft::motion::FrontShare::new(0.5).ok(),
        ..VehicleData::default()
    }));
    assert_eq!(said(other), "vehicle");
    let own = Edit::OwnEngine(SECOND, Some(diesel()));
    assert_eq!(said(own), "engine, set 2: its own");
    let direct = efficiency(SECOND, 2, 0.93);
    assert_eq!(said(direct), "efficiency of gear 2, set 2: 0.93");
}
