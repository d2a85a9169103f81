//! The further rows of "Load and road": what few people know, and what is carried, met and driven.

use super::cells::TechnicalCell;
use super::road_rows::DRAG_AREA;
use super::row::{Answer, Offer, Row, of_driving, of_road, of_vehicle, shown, vehicle_with};
use crate::app::typed::{self, Quantity};
use crate::gearing::EngineSpeed;
use crate::motion::{
    AddedMass, Adhesion, AirDensity, CentreOfGravityHeight, DragArea, DragCoefficient, FrontShare,
    FrontalArea, Grade, Headwind, Inertia, MassFactor, ShiftPause, Trailer, Wheelbase,
    YearlyDistance,
};
use crate::project::{Project, RoadData, VehicleData};
use crate::units::{mark_text, plain_number};

fn vehicle(project: &Project) -> &VehicleData {
    &project.technical.vehicle
}

fn road(project: &Project) -> &RoadData {
    &project.technical.road
}

/// The vehicle, in reading order.
pub(super) const OF_VEHICLE: [Row; 10] = [
    Row {
        cell: TechnicalCell::DragCoefficient,
        name: "Drag coeff. c_d",
        text: |project| {
            shown(
                vehicle(project)
                    .drag_coefficient
                    .map(DragCoefficient::value),
            )
        },
        answer: Answer::Typed("not known", |project, text| {
            let read = quantity(DragCoefficient::new, "0.30", "").read(text);
            of_vehicle(project, read, |vehicle, c| vehicle.drag_coefficient = c)
        }),
    },
    Row {
        cell: TechnicalCell::FrontalArea,
        name: "Front area, m²",
        text: |project| shown(vehicle(project).frontal_area.map(FrontalArea::m2)),
        answer: Answer::Typed("not known", |project, text| {
            let read = quantity(FrontalArea::from_m2, "2.2", "m²").read(text);
            of_vehicle(project, read, |vehicle, area| vehicle.frontal_area = area)
        }),
    },
    Row {
        cell: TechnicalCell::RoadLoad,
        name: "Road load ABC",
        text: |project| {
            let measured = vehicle(project).coast_down;
            measured.map_or_else(String::new, |load| {
                let (a, b, c) = (load.constant.n(), load.linear.n_per_m_s(), load.quadratic);
                [a, b, c.n_per_m2_s2()].map(plain_number).join(" ")
            })
        },
        answer: Answer::Typed("coasting down, N and m/s", |project, text| {
            let read = typed::road_load(text);
            of_vehicle(project, read, |vehicle, load| vehicle.coast_down = load)
        }),
    },
    Row {
        cell: TechnicalCell::AirDensity,
        name: "Air, kg/m³",
        text: |project| shown(vehicle(project).air_density.map(AirDensity::kg_m3)),
        answer: Answer::Typed("1.2041: 20 °C at sea level", |project, text| {
            let read = quantity(AirDensity::from_kg_m3, "1.2", "kg/m³").read(text);
            of_vehicle(project, read, |vehicle, air| vehicle.air_density = air)
        }),
    },
    Row {
        cell: TechnicalCell::Adhesion,
        name: "Adhesion",
        text: |project| shown(vehicle(project).adhesion.map(Adhesion::value)),
        answer: Answer::Typed("not known", |project, text| {
            let read = quantity(Adhesion::new, "0.85", "").read(text);
            of_vehicle(project, read, |vehicle, adhesion| {
                vehicle.adhesion = adhesion;
            })
        }),
    },
    Row {
        cell: TechnicalCell::Wheelbase,
        name: "Wheelbase, m",
        text: |project| shown(vehicle(project).wheelbase.map(Wheelbase::m)),
        answer: Answer::Typed("not known", |project, text| {
            let read = quantity(Wheelbase::from_m, "2.65", "m").read(text);
            of_vehicle(project, read, |vehicle, wheelbase| {
                vehicle.wheelbase = wheelbase;
            })
        }),
    },
    Row {
        cell: TechnicalCell::Height,
        name: "C. of g., m high",
        text: |project| shown(vehicle(project).height.map(CentreOfGravityHeight::m)),
        answer: Answer::Typed("height above the road", |project, text| {
            let read = quantity(CentreOfGravityHeight::from_m, "0.55", "m").read(text);
            of_vehicle(project, read, |vehicle, height| vehicle.height = height)
        }),
    },
    Row {
        cell: TechnicalCell::FrontShare,
        name: "Front share",
        text: |project| shown(vehicle(project).front_share.map(FrontShare::share)),
        answer: Answer::Typed("of the weight: 0.6 or 60 %", |project, text| {
            let read = quantity(FrontShare::new, "0.6", "").read_share(text);
            of_vehicle(project, read, |vehicle, share| vehicle.front_share = share)
        }),
    },
    Row {
        cell: TechnicalCell::MassFactor,
        name: "Mass factor",
        text: |project| factor_text(vehicle(project).mass_factor).to_owned(),
        answer: Answer::Chosen(factors),
    },
    Row {
        cell: TechnicalCell::WheelInertia,
        name: "Wheels, kg·m²",
        text: |project| shown(vehicle(project).wheel_inertia.map(Inertia::kgm2)),
        answer: Answer::Typed("inertia of all together", |project, text| {
            let read = quantity(Inertia::from_kgm2, "3.2", "kg·m²").read(text);
            of_vehicle(project, read, |vehicle, wheels| {
                vehicle.wheel_inertia = wheels;
            })
        }),
    },
];

/// Load, road and driving, in reading order.
pub(super) const OF_ROAD: [Row; 9] = [
    Row {
        cell: TechnicalCell::Load,
        name: "Load, kg",
        text: |project| shown(road(project).load.map(AddedMass::kg)),
        answer: Answer::Typed("nothing carried", |project, text| {
            let read = quantity(AddedMass::from_kg, "300", "kg").read_large(text);
            of_road(project, read, |road, load| road.load = load)
        }),
    },
    Row {
        cell: TechnicalCell::TrailerMass,
        name: "Trailer, kg",
        text: |project| {
            let mass = road(project).trailer.map(|trailer| trailer.mass);
            shown(
                mass.filter(|mass| *mass > AddedMass::NONE)
                    .map(AddedMass::kg),
            )
        },
        answer: Answer::Typed("nothing pulled", |project, text| {
            let read = quantity(AddedMass::from_kg, "1200", "kg").read_large(text);
            let read = read.map(|mass| mass.unwrap_or(AddedMass::NONE));
            of_road(project, read, |road, mass| {
                let drag_area = road.trailer.and_then(drag_of);
                road.trailer = pulled(mass, drag_area);
            })
        }),
    },
    Row {
        cell: TechnicalCell::TrailerDragArea,
        name: "Its drag, m²",
        text: |project| shown(road(project).trailer.and_then(drag_of).map(DragArea::m2)),
        answer: Answer::Typed("drag area of the trailer", |project, text| {
            of_road(project, DRAG_AREA.read(text), |road, drag_area| {
                let mass = road.trailer.map_or(AddedMass::NONE, |trailer| trailer.mass);
                road.trailer = pulled(mass, drag_area);
            })
        }),
    },
    Row {
        cell: TechnicalCell::Headwind,
        name: "Wind",
        text: |project| {
            let wind = road(project).headwind;
            wind.map_or_else(String::new, |wind| mark_text(wind.kmh(), project.units))
        },
        answer: Answer::Typed("still air; above 0 from ahead", |project, text| {
            let of = quantity(Headwind::from_kmh, "30", "");
            let present = road(project).headwind.map(Headwind::kmh);
            let read = typed::wind(&of, (project.units, present), text);
            of_road(project, read, |road, wind| road.headwind = wind)
        }),
    },
    Row {
        cell: TechnicalCell::Grade,
        name: "Grade, %",
        text: |project| shown(road(project).grade.map(Grade::percent)),
        answer: Answer::Typed("level; below 0 downhill", |project, text| {
            let read = typed::GRADE.read(text);
            of_road(project, read, |road, grade| road.grade = grade)
        }),
    },
    Row {
        cell: TechnicalCell::Grades,
        name: "Show grades, %",
        text: |project| {
            let grades = road(project).grades.as_ref();
            grades.map_or_else(String::new, |grades| {
                let grades = grades.as_slice().iter();
                let texts: Vec<String> = grades.map(|g| plain_number(g.percent())).collect();
                texts.join(", ")
            })
        },
        answer: Answer::Typed("5, 10, 20, 30", |project, text| {
            let read = typed::grades(text);
            of_road(project, read, |road, grades| road.grades = grades)
        }),
    },
    Row {
        cell: TechnicalCell::ShiftPause,
        name: "Gear change, s",
        text: |project| shown(project.technical.driving.shift_pause.map(ShiftPause::s)),
        answer: Answer::Typed("0: the next gear is in at once", |project, text| {
            let read = quantity(ShiftPause::from_s, "0.5", "s").read(text);
            of_driving(project, read, |driving, pause| driving.shift_pause = pause)
        }),
    },
    Row {
        cell: TechnicalCell::Launch,
        name: "Launch, rpm",
        text: |project| shown(project.technical.driving.launch.map(EngineSpeed::rpm)),
        answer: Answer::Typed("the clutch slips until there", |project, text| {
            let read = typed::optional(text, |text| {
                typed::engine_speed(typed::Engine::LAUNCH, text)
            });
            of_driving(project, read, |driving, launch| driving.launch = launch)
        }),
    },
    Row {
        cell: TechnicalCell::YearlyDistance,
        name: "Km a year",
        text: |project| {
            shown(
                project
                    .technical
                    .driving
                    .yearly_distance
                    .map(YearlyDistance::km),
            )
        },
        answer: Answer::Typed("not known", |project, text| {
            let read = quantity(YearlyDistance::from_km, "15000", "km").read_large(text);
            of_driving(project, read, |driving, km| driving.yearly_distance = km)
        }),
    },
];

const fn quantity<T>(
    new: fn(f64) -> Result<T, crate::gearing::OutOfRange>,
    example: &'static str,
    unit: &'static str,
) -> Quantity<T> {
    Quantity { new, example, unit }
}

/// What is pulled; a trailer without mass and drag is none.
fn pulled(mass: AddedMass, drag_area: Option<DragArea>) -> Option<Trailer> {
    match drag_area {
        Some(drag_area) => Some(Trailer { mass, drag_area }),
        None if mass > AddedMass::NONE => {
            let drag_area = DragArea::from_m2(0.0).ok()?;
            Some(Trailer { mass, drag_area })
        }
        None => None,
    }
}

/// The drag area of a trailer that has one.
fn drag_of(trailer: Trailer) -> Option<DragArea> {
    Some(trailer.drag_area).filter(|area| area.m2() > 0.0)
}

fn factor_text(factor: Option<MassFactor>) -> &'static str {
    match factor {
        Some(MassFactor::Formula) => "by formula",
        Some(MassFactor::None) => "none: inertias as typed",
        None => "by inertias, if typed",
    }
}

fn factors(project: &Project) -> Vec<Offer> {
    let present = vehicle(project).mass_factor;
    let choices = [None, Some(MassFactor::Formula), Some(MassFactor::None)];
    let offer = |factor: Option<MassFactor>| Offer {
        text: factor_text(factor),
        is_chosen: factor == present,
        edit: vehicle_with(project, |vehicle| vehicle.mass_factor = factor),
    };
    choices.into_iter().map(offer).collect()
}
