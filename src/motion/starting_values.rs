//! Starting values by kind of vehicle: what is supposed until somebody knows better.

use super::quantity::{
    Adhesion, AirDensity, CentreOfGravityHeight, DragCoefficient, Efficiency, FrontShare,
    FrontalArea, Mass, RollingCoefficient, Wheelbase,
};
use super::vehicle::{Drag, DrivenAxle, Grip, LoadTransfer, Resistance, RotatingMasses, Vehicle};
use crate::gearing::OutOfRange;

/// A kind of vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum VehicleKind {
    /// A small car, driven at the front.
    SmallCar,
    /// A family car, driven at the front.
    Car,
    /// A light sports car, driven at the rear.
    SportsCar,
    /// A high car with four driven wheels.
    OffRoader,
    /// A delivery van, driven at the rear.
    Van,
    /// A camper van, driven at the rear.
    CamperVan,
    /// A lorry on two axles.
    Lorry,
    /// A motorcycle with its rider.
    Motorcycle,
}

/// What is supposed of a kind of vehicle.
///
/// # Accuracy
/// A guess, to be replaced: masses by the papers, the rest by data of the type.
///
/// # Source
/// Common practice, no source; rolling coefficients are those of tyres on the road, 0.010 to 0.015, and
/// adhesion that of a dry one, 0.85 to 0.9, efficiencies those of manual gearboxes with their axles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StartingValues {
    /// The mass in kg, with the driver.
    pub mass_kg: f64,
    /// The drag coefficient.
    pub drag_coefficient: f64,
    /// The frontal area in m².
    pub frontal_area_m2: f64,
    /// The rolling coefficient.
    pub rolling_coefficient: f64,
    /// The driven axle.
    pub driven: DrivenAxle,
    /// The adhesion on a dry road.
    pub adhesion: f64,
    /// The wheelbase in m.
    pub wheelbase_m: f64,
    /// The height of the centre of gravity in m.
    pub height_m: f64,
    /// The share of the weight on the front axle.
    pub front_share: f64,
    /// The efficiency from crank to wheels.
    pub efficiency_share: f64,
}

impl VehicleKind {
    /// All kinds, from the smallest car on.
    pub const ALL: [Self; 8] = [
        Self::SmallCar,
        Self::Car,
        Self::SportsCar,
        Self::OffRoader,
        Self::Van,
        Self::CamperVan,
        Self::Lorry,
        Self::Motorcycle,
    ];

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::SmallCar => "Small car",
            Self::Car => "Car",
            Self::SportsCar => "Sports car",
            Self::OffRoader => "Off-roader",
            Self::Van => "Van",
            Self::CamperVan => "Camper van",
            Self::Lorry => "Lorry",
            Self::Motorcycle => "Motorcycle",
        }
    }

    /// What is supposed of it.
    pub fn starting_values(self) -> StartingValues {
        let (front, rear, all) = (DrivenAxle::Front, DrivenAxle::Rear, DrivenAxle::All);
        match self {
            Self::SmallCar => of([1050.0, 0.33, 2.0, 0.012], front, [2.45, 0.53, 0.62], 0.94),
            Self::Car => of([1450.0, 0.30, 2.2, 0.012], front, [2.65, 0.55, 0.60], 0.94),
            Self::SportsCar => of([1100.0, 0.36, 1.75, 0.012], rear, [2.30, 0.47, 0.52], 0.91),
            Self::OffRoader => of([2000.0, 0.45, 2.8, 0.015], all, [2.70, 0.75, 0.52], 0.86),
            Self::Van => of([2100.0, 0.38, 3.9, 0.012], rear, [3.30, 0.75, 0.52], 0.91),
            Self::CamperVan => of([2800.0, 0.42, 4.6, 0.012], rear, [3.20, 0.95, 0.48], 0.91),
            Self::Lorry => of([9000.0, 0.60, 7.5, 0.008], rear, [4.50, 1.10, 0.40], 0.90),
            Self::Motorcycle => of([300.0, 0.60, 0.75, 0.015], rear, [1.45, 0.60, 0.49], 0.93),
        }
    }
}

/// Mass in kg, drag coefficient, frontal area in m² and rolling coefficient; the driven axle; wheelbase and
/// height in m with the front share; the efficiency.
fn of(
    [
        mass_kg,
        drag_coefficient,
        frontal_area_m2,
        rolling_coefficient,
    ]: [f64; 4],
    driven: DrivenAxle,
    [wheelbase_m, height_m, front_share]: [f64; 3],
    efficiency_share: f64,
) -> StartingValues {
    StartingValues {
        mass_kg,
        drag_coefficient,
        frontal_area_m2,
        rolling_coefficient,
        driven,
        adhesion: 0.85,
        wheelbase_m,
        height_m,
        front_share,
        efficiency_share,
    }
}

impl StartingValues {
    /// The vehicle of these values in air of 20 °C, its rotating masses by formula.
    ///
    /// # Errors
    /// Where a value is outside its range, which none of [`VehicleKind`] is.
    pub fn vehicle(&self) -> Result<Vehicle, OutOfRange> {
        let transfer = LoadTransfer {
            wheelbase: Wheelbase::from_m(self.wheelbase_m)?,
            height: CentreOfGravityHeight::from_m(self.height_m)?,
        };
        let shape = Drag::Shape(
            DragCoefficient::new(self.drag_coefficient)?,
            FrontalArea::from_m2(self.frontal_area_m2)?,
        );
        Ok(Vehicle {
            mass: Mass::from_kg(self.mass_kg)?,
            resistance: Resistance::Estimated {
                rolling: RollingCoefficient::new(self.rolling_coefficient)?,
                drag: shape,
            },
            air_density: AirDensity::AT_20_C,
            grip: Some(Grip {
                driven: self.driven,
                adhesion: Adhesion::new(self.adhesion)?,
                front_share: FrontShare::new(self.front_share)?,
                transfer: Some(transfer),
            }),
            rotating: RotatingMasses::Formula,
        })
    }

    /// The efficiency from crank to wheels.
    ///
    /// # Errors
    /// As [`Self::vehicle`].
    pub fn efficiency(&self) -> Result<Efficiency, OutOfRange> {
        Efficiency::new(self.efficiency_share)
    }
}
