//! Torques, masses, resistances and shares that can exist.
//!
//! A value of one of these types is finite and within the range that can be typed.

use crate::gearing::quantity;
use crate::units::KMH_PER_M_S;

quantity! {
    /// A torque of 0 to 20000 N·m.
    Torque, from_nm, nm, "a torque", "between 0 and 20000 N·m",
    |nm| (0.0..=20_000.0).contains(&nm)
}

quantity! {
    /// A power of 0 to 5000 kW.
    Power, from_kw, kw, "a power", "between 0 and 5000 kW",
    |kw| (0.0..=5000.0).contains(&kw)
}

quantity! {
    /// The mass of a vehicle: 50 to 100000 kg.
    Mass, from_kg, kg, "a mass", "between 50 and 100000 kg",
    |kg| (50.0..=100_000.0).contains(&kg)
}

quantity! {
    /// What comes on top of a vehicle's mass, as load or trailer: 0 to 100000 kg.
    AddedMass, from_kg, kg, "a load", "between 0 and 100000 kg",
    |kg| (0.0..=100_000.0).contains(&kg)
}

impl AddedMass {
    /// Nothing.
    pub const NONE: Self = Self(0.0);
}

quantity! {
    /// Drag coefficient times frontal area: 0 to 20 m².
    DragArea, from_m2, m2, "a drag area", "between 0 and 20 m²",
    |m2| (0.0..=20.0).contains(&m2)
}

quantity! {
    /// The share of the dynamic pressure on its frontal area that a shape feels: 0 to 2.
    DragCoefficient, new, value, "a drag coefficient", "between 0 and 2",
    |share| (0.0..=2.0).contains(&share)
}

quantity! {
    /// The area of a vehicle as seen from the front: 0 to 20 m².
    FrontalArea, from_m2, m2, "a frontal area", "between 0 and 20 m²",
    |m2| (0.0..=20.0).contains(&m2)
}

quantity! {
    /// Rolling resistance over the force on the road: 0 to 0.2.
    RollingCoefficient, new, value, "a rolling coefficient", "between 0 and 0.2",
    |share| (0.0..=0.2).contains(&share)
}

quantity! {
    /// The density of the air: 0 to 2 kg/m³.
    AirDensity, from_kg_m3, kg_m3, "an air density", "between 0 and 2 kg/m³",
    |density| (0.0..=2.0).contains(&density)
}

impl AirDensity {
    /// 1.2041 kg/m³: dry air of 20 °C at sea level.
    pub const AT_20_C: Self = Self(1.2041);
}

quantity! {
    /// The part of the road load that is there at any speed: 0 to 100000 N.
    ConstantLoad, from_n, n, "a constant road load", "between 0 and 100000 N",
    |n| (0.0..=100_000.0).contains(&n)
}

quantity! {
    /// The part of the road load that grows with the speed: −1000 to 1000 N/(m/s).
    LinearLoad, from_n_per_m_s, n_per_m_s, "a road load with the speed", "between -1000 and 1000 N/(m/s)",
    |slope| (-1000.0..=1000.0).contains(&slope)
}

quantity! {
    /// The part of the road load that grows with the square of the speed: 0 to 100 N/(m/s)².
    QuadraticLoad, from_n_per_m2_s2, n_per_m2_s2,
    "a road load with the square of the speed", "between 0 and 100 N/(m/s)²",
    |factor| (0.0..=100.0).contains(&factor)
}

quantity! {
    /// How steep a road is, 100 · tan α: −50 to 50 %, above 0 uphill.
    Grade, from_percent, percent, "a grade", "between -50 and 50 %",
    |percent| (-50.0..=50.0).contains(&percent)
}

impl Grade {
    /// A level road.
    pub const LEVEL: Self = Self(0.0);

    /// The angle α of the road to the horizontal, in radians.
    pub fn angle_rad(self) -> f64 {
        (self.0 / 100.0).atan()
    }
}

quantity! {
    /// A moment of inertia: 0 to 1000 kg·m².
    Inertia, from_kgm2, kgm2, "an inertia", "between 0 and 1000 kg·m²",
    |kgm2| (0.0..=1000.0).contains(&kgm2)
}

impl Inertia {
    /// Nothing that turns.
    pub const NONE: Self = Self(0.0);
}

quantity! {
    /// The force a tyre can pass on over the force that presses it to the road: 0 to 5.
    Adhesion, new, value, "an adhesion", "between 0 and 5",
    |share| (0.0..=5.0).contains(&share)
}

quantity! {
    /// The power at the wheels over that at the crank: 0.01 to 1.
    Efficiency, new, share, "an efficiency", "between 0.01 and 1",
    |share| (0.01..=1.0).contains(&share)
}

quantity! {
    /// The distance between the axles: 0.3 to 20 m.
    Wheelbase, from_m, m, "a wheelbase", "between 0.3 and 20 m",
    |m| (0.3..=20.0).contains(&m)
}

quantity! {
    /// The height of the centre of gravity above the road: 0 to 5 m.
    CentreOfGravityHeight, from_m, m,
    "a height of the centre of gravity", "between 0 and 5 m",
    |m| (0.0..=5.0).contains(&m)
}

quantity! {
    /// The share of the weight that stands on the front axle at rest: 0 to 1.
    FrontShare, new, share, "a share of the front axle", "between 0 and 1",
    |share| (0.0..=1.0).contains(&share)
}

quantity! {
    /// Wind from ahead: −200 to 200 km/h, below 0 from behind.
    Headwind, from_kmh, kmh, "a headwind", "between -200 and 200 km/h",
    |kmh| (-200.0..=200.0).contains(&kmh)
}

impl Headwind {
    /// Still air.
    pub const NONE: Self = Self(0.0);

    /// The same in m/s.
    pub fn m_s(self) -> f64 {
        self.0 / KMH_PER_M_S
    }
}

quantity! {
    /// How long a change of gear leaves the wheels without drive: 0 to 10 s.
    ShiftPause, from_s, s, "a shift pause", "between 0 and 10 s",
    |s| (0.0..=10.0).contains(&s)
}

impl ShiftPause {
    /// The next gear is in at once.
    pub const NONE: Self = Self(0.0);
}

quantity! {
    /// The volume that the pistons of an engine sweep: 0.01 to 100 L.
    Displacement, from_l, l, "a displacement", "between 0.01 and 100 L",
    |l| (0.01..=100.0).contains(&l)
}

quantity! {
    /// Work over the fuel that is burnt for it, without what the engine itself takes: 0.05 to 1.
    SlopeEfficiency, new, share, "a slope efficiency", "between 0.05 and 1",
    |share| (0.05..=1.0).contains(&share)
}

quantity! {
    /// The mean effective pressure that an engine takes to turn itself: 0 to 10 bar.
    FrictionPressure, from_bar, bar, "a friction pressure", "between 0 and 10 bar",
    |bar| (0.0..=10.0).contains(&bar)
}

quantity! {
    /// A fuel consumption that somebody has measured: 0.1 to 1000 L/100 km.
    FuelConsumption, from_l_per_100km, l_per_100km,
    "a fuel consumption", "between 0.1 and 1000 L/100 km",
    |litres| (0.1..=1000.0).contains(&litres)
}

quantity! {
    /// What a vehicle is driven in a year: 0 to 1000000 km.
    YearlyDistance, from_km, km, "a distance in a year", "between 0 and 1000000 km",
    |km| (0.0..=1_000_000.0).contains(&km)
}
