//! The rows of "Load and road" that matter first: kind, mass, drag, rolling, driven axle.

use super::about::About;
use super::cells::TechnicalCell;
use super::row::{Answer, Row, of_vehicle, shown, vehicle_with};
use super::starting::{axle, starting_value};
use crate::app::choice::Offer;
use crate::app::typed::Quantity;
use crate::motion::{DragArea, DrivenAxle, Mass, RollingCoefficient, VehicleKind};

/// The rows, in reading order.
pub(super) const FRONT: [Row; 5] = [
    Row {
        cell: TechnicalCell::Kind,
        name: "Kind",
        text: |about| {
            let kind = about.project.technical.vehicle.kind;
            kind.map_or("not known", VehicleKind::name).to_owned()
        },
        answer: Answer::Chosen(kinds),
    },
    Row {
        cell: TechnicalCell::Mass,
        name: "Mass, kg",
        text: |about| shown(about.project.technical.vehicle.mass.map(Mass::kg)),
        answer: Answer::Typed("empty, with the driver", |about, text| {
            let read = MASS.read_large(text);
            of_vehicle(about, read, |vehicle, mass| vehicle.mass = mass)
        }),
    },
    Row {
        cell: TechnicalCell::DragArea,
        name: "Drag area, m²",
        text: |about| shown(about.project.technical.vehicle.drag_area.map(DragArea::m2)),
        answer: Answer::Typed("c_d × frontal area", |about, text| {
            let read = DRAG_AREA.read(text);
            of_vehicle(about, read, |vehicle, area| vehicle.drag_area = area)
        }),
    },
    Row {
        cell: TechnicalCell::Rolling,
        name: "Rolling coeff.",
        text: |about| {
            let rolling = about.project.technical.vehicle.rolling;
            shown(rolling.map(RollingCoefficient::value))
        },
        answer: Answer::Typed("rolling coefficient: 0.012", |about, text| {
            let read = ROLLING.read(text);
            of_vehicle(about, read, |vehicle, rolling| vehicle.rolling = rolling)
        }),
    },
    Row {
        cell: TechnicalCell::Driven,
        name: "Driven axle",
        text: driven_text,
        answer: Answer::Chosen(axles),
    },
];

const MASS: Quantity<Mass> = Quantity {
    new: Mass::from_kg,
    example: "1450",
    unit: "kg",
};

/// A drag area, of the vehicle or its trailer.
pub(super) const DRAG_AREA: Quantity<DragArea> = Quantity {
    new: DragArea::from_m2,
    example: "0.66",
    unit: "m²",
};

const ROLLING: Quantity<RollingCoefficient> = Quantity {
    new: RollingCoefficient::new,
    example: "0.012",
    unit: "",
};

fn kinds(about: About<'_>) -> Vec<Offer> {
    let present = about.project.technical.vehicle.kind;
    let kinds = VehicleKind::ALL.map(Some);
    let offer = |kind: Option<VehicleKind>| Offer {
        text: kind.map_or("not known", VehicleKind::name),
        is_chosen: kind == present,
        edit: vehicle_with(about, |vehicle| vehicle.kind = kind),
    };
    [None].into_iter().chain(kinds).map(offer).collect()
}

fn driven_text(about: About<'_>) -> String {
    let vehicle = &about.project.technical.vehicle;
    match (
        vehicle.driven,
        starting_value(TechnicalCell::Driven, vehicle),
    ) {
        (Some(driven), _) => axle(driven).to_owned(),
        (None, Some(usual)) => format!("{usual}, starting value"),
        (None, None) => "not known".to_owned(),
    }
}

fn axles(about: About<'_>) -> Vec<Offer> {
    let vehicle = &about.project.technical.vehicle;
    let present = vehicle.driven;
    let left_open = match vehicle.kind {
        Some(_) => "as is usual for the kind",
        None => "not known",
    };
    let axles = [DrivenAxle::Front, DrivenAxle::Rear, DrivenAxle::All].map(Some);
    let offer = |driven: Option<DrivenAxle>| Offer {
        text: driven.map_or(left_open, axle),
        is_chosen: driven == present,
        edit: vehicle_with(about, |vehicle| vehicle.driven = driven),
    };
    [None].into_iter().chain(axles).map(offer).collect()
}
