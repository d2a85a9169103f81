//! The vehicle and what it carries: masses, resistances and axles.

use super::quantity::{
    AddedMass, Adhesion, AirDensity, CentreOfGravityHeight, ConstantLoad, DragArea,
    DragCoefficient, FrontShare, FrontalArea, Headwind, Inertia, LinearLoad, Mass, QuadraticLoad,
    RollingCoefficient, Wheelbase,
};

/// Air drag, as it was typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Drag {
    /// The drag area.
    Area(DragArea),
    /// Drag coefficient and frontal area.
    Shape(DragCoefficient, FrontalArea),
}

impl Drag {
    /// The drag area in m²: drag coefficient times frontal area.
    pub fn area_m2(self) -> f64 {
        match self {
            Self::Area(area) => area.m2(),
            Self::Shape(coefficient, area) => coefficient.value() * area.m2(),
        }
    }
}

/// What holds a vehicle back on a level road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Resistance {
    /// Estimated from its parts.
    Estimated {
        /// Of the tyres.
        rolling: RollingCoefficient,
        /// Of the air.
        drag: Drag,
    },
    /// Measured by letting it coast down: A + B·v + C·v².
    CoastDown {
        /// A.
        constant: ConstantLoad,
        /// B.
        linear: LinearLoad,
        /// C.
        quadratic: QuadraticLoad,
    },
}

/// The axle that the engine drives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrivenAxle {
    /// The front axle.
    Front,
    /// The rear axle.
    Rear,
    /// All axles, each as much as it can pass on.
    All,
}

/// How weight moves from the front to the rear axle under acceleration.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadTransfer {
    /// The distance between the axles.
    pub wheelbase: Wheelbase,
    /// The height of the centre of gravity.
    pub height: CentreOfGravityHeight,
}

impl LoadTransfer {
    /// q: height of the centre of gravity over wheelbase.
    pub fn slope(self) -> f64 {
        self.height.m() / self.wheelbase.m()
    }
}

/// What the driven tyres can pass on to the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grip {
    /// The axle that is driven.
    pub driven: DrivenAxle,
    /// How well tyre and road hold.
    pub adhesion: Adhesion,
    /// The share of the weight on the front axle at rest.
    pub front_share: FrontShare,
    /// The transfer of weight; none where wheelbase or height are not known.
    pub transfer: Option<LoadTransfer>,
}

/// What turns with the wheels and has to be sped up too.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RotatingMasses {
    /// The engine's inertia, and that of all wheels together with what turns with them.
    Inertias {
        /// All wheels together.
        wheels: Inertia,
    },
    /// The mass factor 1.04 + 0.0025·i², which covers engine and wheels; the engine's inertia plays no
    /// part then.
    Formula,
}

/// How a mass factor was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MassFactor {
    /// None: inertias as they are given.
    None,
    /// The formula.
    Formula,
}

/// The mass factor covers the inertias already.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error(
    "the mass factor by formula covers the inertias of engine and wheels; give one or the other"
)]
pub struct FormulaWithInertia;

impl RotatingMasses {
    /// What turns, from what was typed of it: the formula unless an inertia is given or none is asked
    /// for; an inertia that is not given is 0.
    ///
    /// # Errors
    /// When the formula is asked for together with an inertia.
    pub fn from_typed(
        factor: Option<MassFactor>,
        engine: Option<Inertia>,
        wheels: Option<Inertia>,
    ) -> Result<Self, FormulaWithInertia> {
        let has_inertia = engine.is_some() || wheels.is_some();
        match factor {
            Some(MassFactor::Formula) if has_inertia => Err(FormulaWithInertia),
            Some(MassFactor::Formula) => Ok(Self::Formula),
            None if !has_inertia => Ok(Self::Formula),
            Some(MassFactor::None) | None => Ok(Self::Inertias {
                wheels: wheels.unwrap_or(Inertia::NONE),
            }),
        }
    }
}

/// A vehicle without its engine and gears.
#[derive(Debug, Clone, PartialEq)]
pub struct Vehicle {
    /// Its mass as it is driven empty, with the driver.
    pub mass: Mass,
    /// What holds it back.
    pub resistance: Resistance,
    /// The density of the air that it is driven in.
    pub air_density: AirDensity,
    /// What its driven tyres can pass on; none where that is of no interest.
    pub grip: Option<Grip>,
    /// What turns with its wheels.
    pub rotating: RotatingMasses,
}

/// A trailer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trailer {
    /// Its mass, on wheels of its own.
    pub mass: AddedMass,
    /// Its drag area behind the vehicle.
    pub drag_area: DragArea,
}

/// What a vehicle carries, pulls and meets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadCase {
    /// What it carries, spread over the axles as its own weight is.
    pub extra: AddedMass,
    /// What it pulls.
    pub trailer: Option<Trailer>,
    /// The wind from ahead.
    pub headwind: Headwind,
}

impl LoadCase {
    /// Nothing carried or pulled, in still air.
    pub fn empty() -> Self {
        Self {
            extra: AddedMass::NONE,
            trailer: None,
            headwind: Headwind::NONE,
        }
    }
}
