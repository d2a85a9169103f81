//! A gear set with an engine in front of it: the tractive effort of each gear over its road speeds.

use super::cubic::Cubic;
use super::efficiency::Efficiencies;
use super::engine::{Engine, PowerBand};
use super::on_road::OnRoad;
use super::quantity::Efficiency;
use crate::gearing::{DrivenGear, Drivetrain, EngineLimits, GearRole};
use crate::units::KMH_PER_M_S;
use std::f64::consts::PI;

/// How far beyond its ends a road speed still counts as the end, as a share: what rounding leaves open
/// of a speed that was typed to be the end.
const AT_THE_END: f64 = 1e-9;

/// A gear with its engine: its tractive effort over the road speeds that it covers.
#[derive(Debug, Clone, PartialEq)]
pub struct PoweredGear {
    /// The gear, resolved down to the wheels.
    pub gear: DrivenGear,
    /// η: the power at the wheels over that at the crank.
    pub efficiency: f64,
    /// r in m: the rolling circumference over 2π.
    pub rolling_radius_m: f64,
    /// Iₑ in kg·m².
    pub engine_inertia_kgm2: f64,
    m_s_per_rpm: f64,
    low_m_s: f64,
    high_m_s: f64,
    pieces: Vec<Cubic>,
}

impl PoweredGear {
    fn new(
        gear: &DrivenGear,
        drivetrain: &Drivetrain,
        band: &PowerBand,
        efficiency: Efficiency,
        engine: &Engine,
    ) -> Self {
        let m_s = |rpm: f64| drivetrain.speed_kmh(gear, rpm) / KMH_PER_M_S;
        let rolling_radius_m = drivetrain.rolling_circumference_mm / 1000.0 / (2.0 * PI);
        let m_s_per_rpm = m_s(1.0);
        let effort_per_nm = efficiency.share() * gear.overall_ratio / rolling_radius_m;
        let over_speed = |piece: &Cubic| {
            let mut factor = effort_per_nm;
            let coefficients = piece.coefficients.map(|c| {
                let scaled = c * factor;
                factor /= m_s_per_rpm;
                scaled
            });
            Cubic {
                origin: m_s(piece.origin),
                from: m_s(piece.from),
                to: m_s(piece.to),
                coefficients,
            }
        };
        Self {
            gear: gear.clone(),
            efficiency: efficiency.share(),
            rolling_radius_m,
            engine_inertia_kgm2: engine.inertia.kgm2(),
            m_s_per_rpm,
            low_m_s: m_s(band.low_rpm()),
            high_m_s: m_s(band.high_rpm()),
            pieces: band.pieces().iter().map(over_speed).collect(),
        }
    }

    /// The lowest road speed that the gear covers with the clutch closed, in m/s.
    pub fn low_m_s(&self) -> f64 {
        self.low_m_s
    }

    /// The highest road speed that the gear covers, in m/s.
    pub fn high_m_s(&self) -> f64 {
        self.high_m_s
    }

    /// The road speed in m/s at an engine speed in rev/min, without slip.
    pub fn speed_m_s(&self, engine_rpm: f64) -> f64 {
        engine_rpm * self.m_s_per_rpm
    }

    /// The engine speed in rev/min at a road speed in m/s, with the clutch closed.
    pub fn engine_rpm(&self, speed_m_s: f64) -> f64 {
        speed_m_s / self.m_s_per_rpm
    }

    /// The road speed as the gear covers it: itself, or the end that it is equal to but for rounding; none
    /// where the gear does not cover it.
    pub fn covered_m_s(&self, speed_m_s: f64) -> Option<f64> {
        let is_covered = speed_m_s >= self.low_m_s * (1.0 - AT_THE_END)
            && speed_m_s <= self.high_m_s * (1.0 + AT_THE_END);
        is_covered.then(|| speed_m_s.clamp(self.low_m_s, self.high_m_s))
    }

    /// The tractive effort in N over the road speed in m/s, a piece from each point of the torque curve to
    /// the next.
    pub fn pieces(&self) -> &[Cubic] {
        &self.pieces
    }

    /// The tractive effort in N that a torque at the crank in N·m makes.
    ///
    /// F = η · T · i ÷ r.
    ///
    /// # Source
    /// Gillespie, Fundamentals of Vehicle Dynamics, ch. 2 (from memory).
    pub fn effort_of_torque_n(&self, torque_nm: f64) -> f64 {
        self.efficiency * torque_nm * self.gear.overall_ratio / self.rolling_radius_m
    }

    /// The tractive effort in N at full load at a road speed in m/s; none where the gear does not cover it.
    pub fn effort_n(&self, speed_m_s: f64) -> Option<f64> {
        let speed_m_s = self.covered_m_s(speed_m_s)?;
        let piece = self.pieces.iter().find(|piece| speed_m_s <= piece.to)?;
        Some(piece.at(speed_m_s).max(0.0))
    }

    /// The acceleration in m/s² at full load at a road speed in m/s; none where the gear does not cover it.
    ///
    /// The smaller of (F − R) ÷ mₖ and (G − R) ÷ m, G the grip limit: at it the tyres' force moves the mass
    /// alone, and the engine, which the driver throttles, spins the driveline up; undriven wheels are
    /// neglected, 2 % at most.
    ///
    /// # Source
    /// Newton's second law; which masses belong to which force is derived.
    pub fn acceleration_m_s2(&self, on_road: &OnRoad, speed_m_s: f64) -> Option<f64> {
        let speed_m_s = self.covered_m_s(speed_m_s)?;
        let load_n = on_road.road_load_n(speed_m_s);
        let by_engine = (self.effort_n(speed_m_s)? - load_n) / on_road.coupled_mass_kg(self);
        let grip = on_road.grip_limit_n(speed_m_s);
        let by_grip = grip.map(|grip_n| (grip_n - load_n) / on_road.mass_kg());
        Some(by_grip.map_or(by_engine, |by_grip| by_grip.min(by_engine)))
    }
}

/// A gear set with its tyre and the engine in front of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Powertrain {
    /// Torque at the crank, over the engine speeds at which the engine is driven.
    pub band: PowerBand,
    /// The forward gears in typed order.
    pub gears: Vec<PoweredGear>,
}

impl Powertrain {
    /// A set behind an engine; none where the engine's limits leave nothing of its torque curve.
    ///
    /// A curve that was measured at the wheels was measured in the forward gear whose ratio is nearest to
    /// 1, of two the first: our own convention.
    pub fn new(
        drivetrain: &Drivetrain,
        engine: &Engine,
        limits: &EngineLimits,
        efficiencies: &Efficiencies,
    ) -> Option<Self> {
        let from_direct = |gear: &DrivenGear| (gear.ratio - 1.0).abs();
        let gears = drivetrain.gears.iter();
        let measured_in = gears.min_by(|a, b| from_direct(a).total_cmp(&from_direct(b)))?;
        let band = PowerBand::of(engine, limits, efficiencies.of(measured_in))?;
        let powered = |gear: &DrivenGear| {
            PoweredGear::new(gear, drivetrain, &band, efficiencies.of(gear), engine)
        };
        Some(Self {
            gears: drivetrain.gears.iter().map(powered).collect(),
            band,
        })
    }

    /// The gears of the shift chain, first to top.
    pub fn chain(&self) -> impl DoubleEndedIterator<Item = &PoweredGear> + Clone {
        let gears = self.gears.iter();
        gears.filter(|powered| powered.gear.role == Some(GearRole::Shifted))
    }

    /// The top gear of the chain.
    pub fn top(&self) -> Option<&PoweredGear> {
        self.chain().next_back()
    }
}
