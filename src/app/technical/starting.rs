//! Starting values in the fields that nothing was typed in, and what else stands in there.

use super::cells::TechnicalCell;
use crate::motion::{DragCoefficient, DrivenAxle, FrontalArea, StartingValues, VehicleKind};
use crate::project::{Project, VehicleData};
use crate::units::{plain_number, reckoned_number};

/// What an empty field says where nothing stands in for it.
pub(super) const NOT_KNOWN: &str = "not known";

/// The fields that a starting value can stand in for.
const SUPPOSED: [TechnicalCell; 10] = [
    TechnicalCell::Mass,
    TechnicalCell::DragArea,
    TechnicalCell::Rolling,
    TechnicalCell::Driven,
    TechnicalCell::DragCoefficient,
    TechnicalCell::FrontalArea,
    TechnicalCell::Adhesion,
    TechnicalCell::Wheelbase,
    TechnicalCell::Height,
    TechnicalCell::FrontShare,
];

/// What an empty field says where the kind of vehicle or another field speaks for it: the starting
/// value, marked as such, or why none is needed.
pub(super) fn hint_of(cell: TechnicalCell, project: &Project) -> Option<String> {
    let vehicle = &project.technical.vehicle;
    if let Some(value) = starting_value(cell, vehicle) {
        return Some(format!("{value}, starting value"));
    }
    let is_of_drag = matches!(
        cell,
        TechnicalCell::DragArea | TechnicalCell::DragCoefficient | TechnicalCell::FrontalArea
    );
    if vehicle.coast_down.is_some() && (is_of_drag || cell == TechnicalCell::Rolling) {
        return Some("in the measured road load".to_owned());
    }
    if !is_of_drag {
        return None;
    }
    if vehicle.drag_area.is_some() {
        return Some("in the drag area".to_owned());
    }
    if cell == TechnicalCell::DragArea {
        let area = drag_area_m2(vehicle)?;
        return Some(format!("{area} of c_d and frontal area"));
    }
    // With neither of the two the drag area is the one starting value.
    vehicle.kind.map(|_| "in the starting drag area".to_owned())
}

/// What is said of a field that was typed in where the kind of vehicle has a starting value: what was
/// typed for another kind stays when the kind changes.
pub(super) fn beside_typed(cell: TechnicalCell, project: &Project) -> Option<String> {
    let kind = project.technical.vehicle.kind?;
    let of_kind = VehicleData {
        kind: Some(kind),
        ..VehicleData::default()
    };
    let value = starting_value(cell, &of_kind)?;
    let kind = kind.name();
    Some(format!("for {kind} the starting value is {value}"))
}

/// How many fields a starting value stands in for.
pub(super) fn count(vehicle: &VehicleData) -> usize {
    let cells = SUPPOSED.into_iter();
    cells
        .filter(|cell| starting_value(*cell, vehicle).is_some())
        .count()
}

/// The starting value that stands in for a field; none where something was typed, where another field
/// counts instead, or where the kind of vehicle is not known.
pub(super) fn starting_value(cell: TechnicalCell, vehicle: &VehicleData) -> Option<String> {
    use TechnicalCell as Cell;
    let usual = vehicle.kind?.starting_values();
    let is_estimated = vehicle.coast_down.is_none();
    let has_part = vehicle.drag_coefficient.is_some() || vehicle.frontal_area.is_some();
    let is_of_parts = is_estimated && vehicle.drag_area.is_none() && has_part;
    let number = match cell {
        Cell::Mass if vehicle.mass.is_none() => usual.mass_kg,
        Cell::DragArea if is_estimated && vehicle.drag_area.is_none() && !has_part => {
            usual_drag_area_m2(&usual)
        }
        Cell::Rolling if is_estimated && vehicle.rolling.is_none() => usual.rolling_coefficient,
        Cell::Driven if vehicle.driven.is_none() => return Some(axle(usual.driven).to_owned()),
        Cell::DragCoefficient if is_of_parts && vehicle.drag_coefficient.is_none() => {
            usual.drag_coefficient
        }
        Cell::FrontalArea if is_of_parts && vehicle.frontal_area.is_none() => usual.frontal_area_m2,
        Cell::Adhesion if vehicle.adhesion.is_none() => usual.adhesion,
        Cell::Wheelbase if vehicle.wheelbase.is_none() => usual.wheelbase_m,
        Cell::Height if vehicle.height.is_none() => usual.height_m,
        Cell::FrontShare if vehicle.front_share.is_none() => usual.front_share,
        _ => return None,
    };
    Some(reckoned_number(number))
}

fn usual_drag_area_m2(usual: &StartingValues) -> f64 {
    usual.drag_coefficient * usual.frontal_area_m2
}

/// The drag area that coefficient and frontal area make, the kind's in place of the one not typed.
fn drag_area_m2(vehicle: &VehicleData) -> Option<String> {
    let usual = vehicle.kind.map(VehicleKind::starting_values);
    let coefficient = vehicle.drag_coefficient.map(DragCoefficient::value);
    let area = vehicle.frontal_area.map(FrontalArea::m2);
    let coefficient = coefficient.or_else(|| usual.map(|usual| usual.drag_coefficient))?;
    let area = area.or_else(|| usual.map(|usual| usual.frontal_area_m2))?;
    Some(plain_number((coefficient * area * 1000.0).round() / 1000.0))
}

/// An axle in a word.
pub(super) fn axle(axle: DrivenAxle) -> &'static str {
    match axle {
        DrivenAxle::Front => "front",
        DrivenAxle::Rear => "rear",
        DrivenAxle::All => "all",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::motion::{DragArea, Mass};

    fn car() -> VehicleData {
        VehicleData {
            kind: Some(VehicleKind::Car),
            ..VehicleData::default()
        }
    }

    #[test]
    fn nothing_is_supposed_of_no_kind_and_eight_things_of_one() {
        assert_eq!(count(&VehicleData::default()), 0);
        for kind in VehicleKind::ALL {
            let of_kind = VehicleData {
                kind: Some(kind),
                ..VehicleData::default()
            };
            assert_eq!(count(&of_kind), 8, "{}", kind.name());
        }
    }

    #[test]
    fn what_is_typed_or_stands_in_another_field_is_no_starting_value() {
        let of = |vehicle: &VehicleData, cell| starting_value(cell, vehicle);
        let mut vehicle = car();
        assert_eq!(of(&vehicle, TechnicalCell::Mass).unwrap(), "1450");
        assert_eq!(of(&vehicle, TechnicalCell::DragArea).unwrap(), "0.66");
        assert_eq!(of(&vehicle, TechnicalCell::Driven).unwrap(), "front");
        vehicle.mass = Mass::from_kg(1300.0).ok();
        assert_eq!(of(&vehicle, TechnicalCell::Mass), None);
        vehicle.drag_coefficient = DragCoefficient::new(0.35).ok();
        assert_eq!(of(&vehicle, TechnicalCell::DragArea), None);
        assert_eq!(of(&vehicle, TechnicalCell::FrontalArea).unwrap(), "2.2");
        assert_eq!(drag_area_m2(&vehicle).unwrap(), "0.77");
        vehicle.drag_area = DragArea::from_m2(0.7).ok();
        assert_eq!(of(&vehicle, TechnicalCell::FrontalArea), None);
        assert_eq!(count(&vehicle), 6);
    }
}
