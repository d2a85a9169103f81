//! The further rows of "Load and road": what few people know, and what is carried, met and driven.

use super::about::About;
use super::cells::TechnicalCell;
use super::road_rows::DRAG_AREA;
use super::row::{Answer, Row, of_driving, of_road, of_vehicle, shown, vehicle_with};
use super::starting::NOT_KNOWN;
use crate::app::choice::Offer;
use crate::app::typed::{self, Quantity};
use crate::gearing::EngineSpeed;
use crate::motion::{
    AddedMass, Adhesion, AirDensity, CentreOfGravityHeight, DragArea, DragCoefficient, FrontShare,
    FrontalArea, Grade, Headwind, Inertia, MassFactor, ShiftPause, Trailer, Wheelbase,
    YearlyDistance,
};
use crate::project::{RoadData, VehicleData};
use crate::units::{mark_text, plain_number};

fn vehicle(about: About<'_>) -> &VehicleData {
    &about.project.technical.vehicle
}

fn road(about: About<'_>) -> &RoadData {
    &about.project.technical.road
}

/// The vehicle, in reading order.
pub(super) const OF_VEHICLE: [Row; 10] = [
    Row {
        cell: TechnicalCell::DragCoefficient,
        name: "Drag coeff. c_d",
        text: |about| shown(vehicle(about).drag_coefficient.map(DragCoefficient::value)),
        answer: Answer::Typed(NOT_KNOWN, |about, text| {
            let read = quantity(DragCoefficient::new, "0.30", "").read(text);
            of_vehicle(about, read, |vehicle, c| vehicle.drag_coefficient = c)
        }),
    },
    Row {
        cell: TechnicalCell::FrontalArea,
        name: "Front area, m²",
        text: |about| shown(vehicle(about).frontal_area.map(FrontalArea::m2)),
        answer: Answer::Typed(NOT_KNOWN, |about, text| {
            let read = quantity(FrontalArea::from_m2, "2.2", "m²").read(text);
            of_vehicle(about, read, |vehicle, area| vehicle.frontal_area = area)
        }),
    },
    Row {
        cell: TechnicalCell::RoadLoad,
        name: "Road load ABC",
        text: |about| {
            let measured = vehicle(about).coast_down;
            measured.map_or_else(String::new, |load| {
                let (a, b, c) = (load.constant.n(), load.linear.n_per_m_s(), load.quadratic);
                [a, b, c.n_per_m2_s2()].map(plain_number).join(" ")
            })
        },
        answer: Answer::Typed("coasting down, N and m/s", |about, text| {
            let read = typed::road_load(text);
            of_vehicle(about, read, |vehicle, load| vehicle.coast_down = load)
        }),
    },
    Row {
        cell: TechnicalCell::AirDensity,
        name: "Air, kg/m³",
        text: |about| shown(vehicle(about).air_density.map(AirDensity::kg_m3)),
        answer: Answer::Typed("1.2041: 20 °C at sea level", |about, text| {
            let read = quantity(AirDensity::from_kg_m3, "1.2", "kg/m³").read(text);
            of_vehicle(about, read, |vehicle, air| vehicle.air_density = air)
        }),
    },
    Row {
        cell: TechnicalCell::Adhesion,
        name: "Adhesion",
        text: |about| shown(vehicle(about).adhesion.map(Adhesion::value)),
        answer: Answer::Typed(NOT_KNOWN, |about, text| {
            let read = quantity(Adhesion::new, "0.85", "").read(text);
            of_vehicle(about, read, |vehicle, adhesion| {
                vehicle.adhesion = adhesion;
            })
        }),
    },
    Row {
        cell: TechnicalCell::Wheelbase,
        name: "Wheelbase, m",
        text: |about| shown(vehicle(about).wheelbase.map(Wheelbase::m)),
        answer: Answer::Typed(NOT_KNOWN, |about, text| {
            let read = quantity(Wheelbase::from_m, "2.65", "m").read(text);
            of_vehicle(about, read, |vehicle, wheelbase| {
                vehicle.wheelbase = wheelbase;
            })
        }),
    },
    Row {
        cell: TechnicalCell::Height,
        name: "C. of g., m high",
        text: |about| shown(vehicle(about).height.map(CentreOfGravityHeight::m)),
        answer: Answer::Typed("height above the road", |about, text| {
            let read = quantity(CentreOfGravityHeight::from_m, "0.55", "m").read(text);
            of_vehicle(about, read, |vehicle, height| vehicle.height = height)
        }),
    },
    Row {
        cell: TechnicalCell::FrontShare,
        name: "Front share",
        text: |about| shown(vehicle(about).front_share.map(FrontShare::share)),
        answer: Answer::Typed("of the weight: 0.6 or 60 %", |about, text| {
            let read = quantity(FrontShare::new, "0.6", "").read_share(text);
            of_vehicle(about, read, |vehicle, share| vehicle.front_share = share)
        }),
    },
    Row {
        cell: TechnicalCell::MassFactor,
        name: "Mass factor",
        text: |about| factor_text(vehicle(about).mass_factor).to_owned(),
        answer: Answer::Chosen(factors),
    },
    Row {
        cell: TechnicalCell::WheelInertia,
        name: "Wheels, kg·m²",
        text: |about| shown(vehicle(about).wheel_inertia.map(Inertia::kgm2)),
        answer: Answer::Typed("inertia of all together", |about, text| {
            let read = quantity(Inertia::from_kgm2, "3.2", "kg·m²").read(text);
            of_vehicle(about, read, |vehicle, wheels| {
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
        text: |about| shown(road(about).load.map(AddedMass::kg)),
        answer: Answer::Typed("nothing carried", |about, text| {
            let read = quantity(AddedMass::from_kg, "300", "kg").read_large(text);
            of_road(about, read, |road, load| {
                road.load = load;
                // What is typed is meant to count.
                road.aside.load = false;
            })
        }),
    },
    Row {
        cell: TechnicalCell::TrailerMass,
        name: "Trailer, kg",
        text: |about| {
            let mass = road(about).trailer.map(|trailer| trailer.mass);
            shown(
                mass.filter(|mass| *mass > AddedMass::NONE)
                    .map(AddedMass::kg),
            )
        },
        answer: Answer::Typed("nothing pulled", |about, text| {
            let read = quantity(AddedMass::from_kg, "1200", "kg").read_large(text);
            let read = read.map(|mass| mass.unwrap_or(AddedMass::NONE));
            of_road(about, read, |road, mass| {
                let drag_area = road.trailer.and_then(drag_of);
                road.trailer = pulled(mass, drag_area);
                road.aside.trailer = false;
            })
        }),
    },
    Row {
        cell: TechnicalCell::TrailerDragArea,
        name: "Its drag, m²",
        text: |about| shown(road(about).trailer.and_then(drag_of).map(DragArea::m2)),
        answer: Answer::Typed("drag area of the trailer", |about, text| {
            of_road(about, DRAG_AREA.read(text), |road, drag_area| {
                let mass = road.trailer.map_or(AddedMass::NONE, |trailer| trailer.mass);
                road.trailer = pulled(mass, drag_area);
                road.aside.trailer = false;
            })
        }),
    },
    Row {
        cell: TechnicalCell::Headwind,
        name: "Wind",
        text: |about| {
            let wind = road(about).headwind;
            wind.map_or_else(String::new, |wind| {
                mark_text(wind.kmh(), about.project.units)
            })
        },
        answer: Answer::Typed("still air; above 0 from ahead", |about, text| {
            let of = quantity(Headwind::from_kmh, "30", "");
            let present = road(about).headwind.map(Headwind::kmh);
            let read = typed::wind(&of, (about.project.units, present), text);
            of_road(about, read, |road, wind| {
                road.headwind = wind;
                road.aside.headwind = false;
            })
        }),
    },
    Row {
        cell: TechnicalCell::Grade,
        name: "Grade, %",
        text: |about| shown(road(about).grade.map(Grade::percent)),
        answer: Answer::Typed("level; below 0 downhill", |about, text| {
            let read = typed::GRADE.read(text);
            of_road(about, read, |road, grade| road.grade = grade)
        }),
    },
    Row {
        cell: TechnicalCell::Grades,
        name: "Show grades, %",
        text: |about| {
            let grades = road(about).grades.as_ref();
            grades.map_or_else(String::new, |grades| {
                let grades = grades.as_slice().iter();
                let texts: Vec<String> = grades.map(|g| plain_number(g.percent())).collect();
                texts.join(", ")
            })
        },
        answer: Answer::Typed("5, 10, 20, 30", |about, text| {
            let read = typed::grades(text);
            of_road(about, read, |road, grades| road.grades = grades)
        }),
    },
    Row {
        cell: TechnicalCell::ShiftPause,
        name: "Gear change, s",
        text: |about| {
            shown(
                about
                    .project
                    .technical
                    .driving
                    .shift_pause
                    .map(ShiftPause::s),
            )
        },
        answer: Answer::Typed("0: the next gear is in at once", |about, text| {
            let read = quantity(ShiftPause::from_s, "0.5", "s").read(text);
            of_driving(about, read, |driving, pause| driving.shift_pause = pause)
        }),
    },
    Row {
        cell: TechnicalCell::Launch,
        name: "Launch, rpm",
        text: |about| shown(about.project.technical.driving.launch.map(EngineSpeed::rpm)),
        answer: Answer::Typed("the clutch slips until there", |about, text| {
            let read = typed::optional(text, |text| {
                typed::engine_speed(typed::Engine::LAUNCH, text)
            });
            of_driving(about, read, |driving, launch| driving.launch = launch)
        }),
    },
    Row {
        cell: TechnicalCell::YearlyDistance,
        name: "Km a year",
        text: |about| {
            shown(
                about
                    .project
                    .technical
                    .driving
                    .yearly_distance
                    .map(YearlyDistance::km),
            )
        },
        answer: Answer::Typed(NOT_KNOWN, |about, text| {
            let read = quantity(YearlyDistance::from_km, "15000", "km").read_large(text);
            of_driving(about, read, |driving, km| driving.yearly_distance = km)
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

fn factors(about: About<'_>) -> Vec<Offer> {
    let present = vehicle(about).mass_factor;
    let choices = [None, Some(MassFactor::Formula), Some(MassFactor::None)];
    let offer = |factor: Option<MassFactor>| Offer {
        text: factor_text(factor),
        is_chosen: factor == present,
        edit: vehicle_with(about, |vehicle| vehicle.mass_factor = factor),
    };
    choices.into_iter().map(offer).collect()
}
