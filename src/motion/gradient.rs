//! The law of gradient: the steepest road on which a gear holds its speed.

use super::on_road::{GRAVITY_M_S2, OnRoad, Rolling};
use super::powertrain::{PoweredGear, Powertrain};
use std::f64::consts::FRAC_PI_2;

/// A force at the wheels that may shrink with the weight on the road: a · cos α + b, in N.
#[derive(Debug, Clone, Copy)]
struct Force {
    with_cosine_n: f64,
    constant_n: f64,
}

impl OnRoad {
    /// The gradient 100 · tan α in per cent on which an effort in N, or what the tyres pass on of it, just
    /// holds a road speed in m/s, whatever the grade of this road; below 0 where that needs a fall. None
    /// where no road is that steep: the force is more than the weight, or less than a free fall gives.
    ///
    /// α with min(F, G(α)) = R(α), G the grip limit, solved with sin α and f · cos α.
    ///
    /// # Source
    /// Gillespie, Fundamentals of Vehicle Dynamics, ch. 4 (from memory); the solution is derived.
    pub fn gradient_percent(&self, effort_n: f64, speed_m_s: f64) -> Option<f64> {
        let angle = |force: Force| self.balance_rad(force, speed_m_s);
        let by_effort = angle(Force {
            with_cosine_n: 0.0,
            constant_n: effort_n,
        });
        let by_grip = self.grip_forces(speed_m_s).map(angle).reduce(f64::min);
        // Tyres that hold nothing still let it roll where it would roll by itself.
        let freely = angle(Force {
            with_cosine_n: 0.0,
            constant_n: 0.0,
        });
        let by_grip = by_grip.map_or(f64::INFINITY, |angle| angle.max(freely));
        let angle_rad = by_effort.min(by_grip);
        (angle_rad.abs() < FRAC_PI_2).then(|| 100.0 * angle_rad.tan())
    }

    fn grip_forces(&self, speed_m_s: f64) -> impl Iterator<Item = Force> {
        let weight_n = self.axle_mass_kg * GRAVITY_M_S2;
        let limits = self.grip.iter();
        limits.map(move |limit| match self.rolling {
            Rolling::Share(share) => Force {
                with_cosine_n: (limit.of_weight + limit.of_rolling * share) * weight_n,
                constant_n: 0.0,
            },
            Rolling::Measured {
                vehicle_n,
                linear_n_per_m_s,
                ..
            } => Force {
                with_cosine_n: limit.of_weight * weight_n,
                constant_n: limit.of_rolling * (vehicle_n + linear_n_per_m_s * speed_m_s),
            },
        })
    }

    /// The angle in radians above which a force no longer holds the speed; infinite where it always does,
    /// infinite below 0 where it never does.
    fn balance_rad(&self, force: Force, speed_m_s: f64) -> f64 {
        let load = self.road_load();
        let weight_n = self.mass_kg * GRAVITY_M_S2;
        let (rolling_with_cosine_n, rolling_n) = match self.rolling {
            Rolling::Share(share) => (share * weight_n, 0.0),
            Rolling::Measured { .. } => (0.0, load.rolling_n(speed_m_s)),
        };
        // W · sin α − x · cos α = y, which is √(W² + x²) · sin(α − ψ) = y with tan ψ = x ÷ W.
        let x = force.with_cosine_n - rolling_with_cosine_n;
        let y = force.constant_n - rolling_n - load.drag_n(speed_m_s);
        let sine = y / weight_n.hypot(x);
        if sine > 1.0 {
            f64::INFINITY
        } else if sine < -1.0 {
            f64::NEG_INFINITY
        } else {
            x.atan2(weight_n) + sine.asin()
        }
    }
}

impl PoweredGear {
    /// The steepest gradient 100 · tan α in per cent on which the gear holds a road speed in m/s at full
    /// load; none where it does not cover the speed, else as [`OnRoad::gradient_percent`].
    pub fn gradient_percent(&self, on_road: &OnRoad, speed_m_s: f64) -> Option<f64> {
        let speed_m_s = self.covered_m_s(speed_m_s)?;
        on_road.gradient_percent(self.effort_n(speed_m_s)?, speed_m_s)
    }
}

/// What keeps a vehicle from starting on a steeper road.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StartLimit {
    /// The engine's torque at its launch speed.
    Engine,
    /// The grip of the driven tyres: no other gear starts on more.
    Grip,
}

/// How steep a road a gear starts on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Start {
    /// The steepest gradient 100 · tan α in per cent; below 0 where it takes a fall.
    pub steepest_percent: f64,
    /// What keeps it from more.
    pub limit: StartLimit,
}

/// How much more, as a share, an effort must hold without a limit of grip to be held by it.
const BY_GRIP: f64 = 1e-9;

impl Powertrain {
    /// The steepest gradient 100 · tan α in per cent on which the vehicle starts in first with the engine
    /// held at an engine speed in rev/min, or at the nearest one within the band; else as
    /// [`OnRoad::gradient_percent`].
    pub fn start_gradient_percent(&self, on_road: &OnRoad, launch_rpm: f64) -> Option<f64> {
        let first = self.chain().next()?;
        let start = self.start_in(first, on_road, launch_rpm)?;
        Some(start.steepest_percent)
    }

    /// How steep a road one of the gears starts on, with the engine held at an engine speed in rev/min or at
    /// the nearest one within the band; none where nothing limits it.
    pub fn start_in(&self, gear: &PoweredGear, on_road: &OnRoad, launch_rpm: f64) -> Option<Start> {
        let torque_nm = self.band.torque_nm(self.band.nearest_rpm(launch_rpm))?;
        let effort_n = gear.effort_of_torque_n(torque_nm);
        let steepest_percent = on_road.gradient_percent(effort_n, 0.0)?;
        let gripping = on_road.without_grip_limit();
        let by_engine = gripping.gradient_percent(effort_n, 0.0);
        let nearest = steepest_percent + steepest_percent.abs() * BY_GRIP;
        let is_by_engine = by_engine.is_some_and(|percent| percent <= nearest);
        Some(Start {
            steepest_percent,
            limit: if is_by_engine {
                StartLimit::Engine
            } else {
                StartLimit::Grip
            },
        })
    }
}
