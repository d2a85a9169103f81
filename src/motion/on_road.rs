//! A vehicle with its load on a road: its masses, its road load and its grip limit there.

use super::grip::GripShares;
use super::powertrain::PoweredGear;
use super::quantity::{Grade, Headwind};
use super::road_load::RoadLoad;
use super::vehicle::{LoadCase, Resistance, RotatingMasses, Vehicle};

/// Acceleration of free fall in m/s², exactly (standard gravity, 3rd CGPM, 1901).
pub const GRAVITY_M_S2: f64 = 9.80665;

/// The share of the mass by which the formula lets the wheels of a vehicle add to it.
///
/// # Source
/// Gillespie, Fundamentals of Vehicle Dynamics, ch. 2: 1 + 0.04 + 0.0025·i² (from memory).
const WHEELS_BY_FORMULA: f64 = 0.04;

/// What the square of the overall ratio is multiplied by in the same formula.
const ENGINE_BY_FORMULA: f64 = 0.0025;

/// What rolling takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Rolling {
    /// A share of what presses the vehicle to the road.
    Share(f64),
    /// A and B as measured, whatever the grade.
    Measured {
        vehicle_n: f64,
        all_n: f64,
        linear_n_per_m_s: f64,
    },
}

/// A vehicle with its load on a road.
#[derive(Debug, Clone, PartialEq)]
pub struct OnRoad {
    pub(super) mass_kg: f64,
    pub(super) axle_mass_kg: f64,
    pub(super) rolling: Rolling,
    drag_n_per_m2_s2: f64,
    headwind_m_s: f64,
    angle_rad: f64,
    pub(super) grip: Vec<GripShares>,
    rotating: RotatingMasses,
}

impl OnRoad {
    /// A vehicle with its load on a road of that grade.
    ///
    /// The load stands on the vehicle's axles, the trailer on its own; both roll as well as the vehicle
    /// does, so that a measured A grows with the mass: our own convention.
    pub fn new(vehicle: &Vehicle, load: &LoadCase, grade: Grade) -> Self {
        let axle_mass_kg = vehicle.mass.kg() + load.extra.kg();
        let mass_kg = axle_mass_kg + load.trailer.map_or(0.0, |trailer| trailer.mass.kg());
        let half_density = 0.5 * vehicle.air_density.kg_m3();
        let (rolling, own_drag) = match vehicle.resistance {
            Resistance::Estimated { rolling, drag } => (
                Rolling::Share(rolling.value()),
                half_density * drag.area_m2(),
            ),
            Resistance::CoastDown {
                constant,
                linear,
                quadratic,
            } => {
                let heavier = |mass_kg: f64| mass_kg / vehicle.mass.kg();
                let rolling = Rolling::Measured {
                    vehicle_n: constant.n() * heavier(axle_mass_kg),
                    all_n: constant.n() * heavier(mass_kg),
                    linear_n_per_m_s: linear.n_per_m_s(),
                };
                (rolling, quadratic.n_per_m2_s2())
            }
        };
        let pulled_m2 = load.trailer.map_or(0.0, |trailer| trailer.drag_area.m2());
        Self {
            mass_kg,
            axle_mass_kg,
            rolling,
            drag_n_per_m2_s2: own_drag + half_density * pulled_m2,
            headwind_m_s: load.headwind.m_s(),
            angle_rad: grade.angle_rad(),
            grip: vehicle.grip.as_ref().map_or_else(Vec::new, GripShares::of),
            rotating: vehicle.rotating,
        }
    }

    /// The same on a level road in still air.
    pub fn level_and_still(vehicle: &Vehicle, load: &LoadCase) -> Self {
        let still = LoadCase {
            headwind: Headwind::NONE,
            ..*load
        };
        Self::new(vehicle, &still, Grade::LEVEL)
    }

    /// The same on tyres that pass on any force.
    #[must_use]
    pub fn without_grip_limit(&self) -> Self {
        Self {
            grip: Vec::new(),
            ..self.clone()
        }
    }

    /// The mass of vehicle, load and trailer in kg, without what turns.
    pub fn mass_kg(&self) -> f64 {
        self.mass_kg
    }

    /// m0 in kg: what has to be sped up in neutral and while the clutch slips.
    ///
    /// `m + I_w ÷ r²`, r the rolling circumference ÷ 2π in m; by formula 1.04·m.
    ///
    /// # Source
    /// Gillespie, Fundamentals of Vehicle Dynamics, ch. 2 (from memory).
    pub fn neutral_mass_kg(&self, rolling_radius_m: f64) -> f64 {
        match self.rotating {
            RotatingMasses::Inertias { wheels } => {
                self.mass_kg + wheels.kgm2() / (rolling_radius_m * rolling_radius_m)
            }
            RotatingMasses::Formula => self.mass_kg * (1.0 + WHEELS_BY_FORMULA),
        }
    }

    /// mₖ in kg: what has to be sped up in a gear, while the clutch holds.
    ///
    /// m0 + η·Iₑ·i² ÷ r²; by formula m·(1.04 + 0.0025·i²), without η.
    ///
    /// # Source
    /// Bevan, Theory of Machines, ch. 2, for the η; Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, for
    /// the formula (from memory).
    pub fn coupled_mass_kg(&self, gear: &PoweredGear) -> f64 {
        let neutral_kg = self.neutral_mass_kg(gear.rolling_radius_m);
        let ratio = gear.gear.overall_ratio;
        let engine_kg = match self.rotating {
            RotatingMasses::Inertias { .. } => {
                let turns_per_m = ratio / gear.rolling_radius_m;
                gear.efficiency * gear.engine_inertia_kgm2 * turns_per_m * turns_per_m
            }
            RotatingMasses::Formula => self.mass_kg * ENGINE_BY_FORMULA * ratio * ratio,
        };
        neutral_kg + engine_kg
    }

    /// What holds it back, over its road speed.
    pub fn road_load(&self) -> RoadLoad {
        let (sine, cosine) = self.angle_rad.sin_cos();
        let (constant_n, linear_n_per_m_s) = match self.rolling {
            Rolling::Share(share) => (share * self.mass_kg * GRAVITY_M_S2 * cosine, 0.0),
            Rolling::Measured {
                all_n,
                linear_n_per_m_s,
                ..
            } => (all_n, linear_n_per_m_s),
        };
        RoadLoad {
            constant_n,
            linear_n_per_m_s,
            quadratic_n_per_m2_s2: self.drag_n_per_m2_s2,
            headwind_m_s: self.headwind_m_s,
            slope_n: self.mass_kg * GRAVITY_M_S2 * sine,
        }
    }

    /// The road load in N at a road speed in m/s.
    pub fn road_load_n(&self, speed_m_s: f64) -> f64 {
        self.road_load().at(speed_m_s)
    }

    /// The largest force in N that the driven tyres pass on at a road speed in m/s; none where there is no
    /// limit.
    pub fn grip_limit_n(&self, speed_m_s: f64) -> Option<f64> {
        let lines = self.grip_lines();
        let forces = lines.iter().map(|line| line[0] + line[1] * speed_m_s);
        let lowest = forces.reduce(f64::min)?;
        Some(lowest.max(0.0))
    }

    /// The limits of grip over the road speed in m/s, each a force in N and its slope; the lowest holds.
    pub(super) fn grip_lines(&self) -> Vec<[f64; 2]> {
        let weight_n = self.axle_mass_kg * GRAVITY_M_S2 * self.angle_rad.cos();
        let rolling = match self.rolling {
            Rolling::Share(share) => [share * weight_n, 0.0],
            Rolling::Measured {
                vehicle_n,
                linear_n_per_m_s,
                ..
            } => [vehicle_n, linear_n_per_m_s],
        };
        let limits = self.grip.iter();
        limits
            .map(|limit| {
                let [at_rest, slope] = rolling.map(|part| part * limit.of_rolling);
                [limit.of_weight * weight_n + at_rest, slope]
            })
            .collect()
    }
}
