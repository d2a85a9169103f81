//! The law of fuel: what an engine burns for a power, by the Willans line.

use super::engine::{Engine, Fuel, Strokes};
use super::quantity::{FuelConsumption, YearlyDistance};

/// Pa in a bar.
const PA_PER_BAR: f64 = 1e5;

/// m³ in a litre.
const M3_PER_L: f64 = 1e-3;

/// J in a MJ.
const J_PER_MJ: f64 = 1e6;

/// Metres in 100 km.
const M_PER_100KM: f64 = 1e5;

/// How far an estimate may be from the truth, as a share.
const UNCALIBRATED: f64 = 0.20;

/// How far an estimate may be from the truth that was scaled to a known figure, as a share.
const CALIBRATED: f64 = 0.10;

/// How far a difference between two estimates may be from the truth, as a share of itself: what a
/// friction pressure of 1.3 to 2 bar makes of it.
const OF_A_DIFFERENCE: f64 = 0.25;

/// How many times more or less than its estimate a known figure may be and still be of this vehicle.
const FAR_OFF: f64 = 5.0;

/// e and `p_me0` in bar where the engine's own are not known.
///
/// # Source
/// Commission Implementing Decision (EU) 2020/728 for e (0.264 and 0.220 L/kWh); Guzzella and Sciarretta,
/// Vehicle Propulsion Systems, for the friction (from memory).
fn usual_line(fuel: Fuel) -> (f64, f64) {
    match fuel {
        Fuel::Petrol => (0.426, 1.6),
        Fuel::Diesel => (0.455, 1.6),
    }
}

/// What an engine burns for the power it gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FuelUse {
    slope_efficiency: f64,
    /// What the engine takes for itself, in W for each rev/min.
    friction_w_per_rpm: f64,
    energy_j_per_l: f64,
    scale: f64,
    is_calibrated: bool,
}

/// Why a known figure does not scale an estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum CalibrationError {
    /// There is nothing to scale.
    #[error(
        "nothing is burnt there by the estimate; a known figure is one at a steady speed on the level"
    )]
    NothingBurnt,
    /// It is of another vehicle, or in another unit.
    #[error("the known figure is more than {FAR_OFF} times off the estimate; is it L/100 km?")]
    FarOff,
}

impl FuelUse {
    /// What an engine burns; none where its displacement is not known.
    pub fn of(engine: &Engine) -> Option<Self> {
        let usual = usual_line(engine.fuel);
        let (slope_efficiency, friction_bar) = engine.willans.map_or(usual, |line| {
            (line.slope_efficiency.share(), line.friction.bar())
        });
        let rpm_per_cycle_s = match engine.strokes {
            Strokes::Two => 60.0,
            Strokes::Four => 120.0,
        };
        let work_j = friction_bar * PA_PER_BAR * engine.displacement?.l() * M3_PER_L;
        Some(Self {
            slope_efficiency,
            friction_w_per_rpm: work_j / rpm_per_cycle_s,
            energy_j_per_l: engine.fuel.energy_mj_per_l() * J_PER_MJ,
            scale: 1.0,
            is_calibrated: false,
        })
    }

    /// The fuel in L/s for a power at the crank in W, below 0 where the engine holds back, at an engine
    /// speed in rev/min.
    ///
    /// Fuel power = max(0, (P + p · V · n ÷ 120) ÷ e), p = `p_me0`; two strokes n ÷ 60. At 0 the fuel is cut
    /// off.
    ///
    /// # Accuracy
    /// See [`Self::uncertainty_share`].
    ///
    /// # Source
    /// Guzzella and Sciarretta, Vehicle Propulsion Systems, ch. 2 (from memory).
    fn l_per_s(&self, power_w: f64, engine_rpm: f64) -> f64 {
        let burnt_w = (power_w + self.friction_w_per_rpm * engine_rpm) / self.slope_efficiency;
        self.scale * burnt_w.max(0.0) / self.energy_j_per_l
    }

    /// The fuel in L/100 km for a power at the crank in W at an engine speed in rev/min and a road speed in
    /// m/s; none at standstill.
    pub fn l_per_100km(&self, power_w: f64, engine_rpm: f64, speed_m_s: f64) -> Option<f64> {
        let litres = self.l_per_s(power_w, engine_rpm) * M_PER_100KM / speed_m_s;
        (speed_m_s > 0.0 && litres.is_finite()).then_some(litres)
    }

    /// The fuel in L/h at idle, at an engine speed in rev/min.
    pub fn idle_l_per_h(&self, idle_rpm: f64) -> f64 {
        self.l_per_s(0.0, idle_rpm) * 3600.0
    }

    /// The same scaled so that a known figure comes out where the estimate is `estimated_l_per_100km`.
    ///
    /// # Errors
    /// When the estimate is 0 there, or more than five times off.
    pub fn scaled_to(
        self,
        known: FuelConsumption,
        estimated_l_per_100km: f64,
    ) -> Result<Self, CalibrationError> {
        if estimated_l_per_100km <= 0.0 {
            return Err(CalibrationError::NothingBurnt);
        }
        let factor = known.l_per_100km() / estimated_l_per_100km;
        if !(1.0 / FAR_OFF..=FAR_OFF).contains(&factor) {
            return Err(CalibrationError::FarOff);
        }
        Ok(Self {
            scale: self.scale * factor,
            is_calibrated: true,
            ..self
        })
    }

    /// How far an estimate may be from the truth, as a share: 0.20, scaled to a known figure 0.10.
    ///
    /// # Source
    /// Our own convention, from the spread of marginal consumption in Decision (EU) 2020/728.
    pub fn uncertainty_share(&self) -> f64 {
        if self.is_calibrated {
            CALIBRATED
        } else {
            UNCALIBRATED
        }
    }
}

/// How much more one set burns than the set that it is compared with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FuelDifference {
    /// In L/100 km; below 0 where it burns less.
    pub l_per_100km: f64,
    /// As a share of what the other burns; none where that is nothing.
    pub share: Option<f64>,
}

impl FuelDifference {
    /// The difference of a consumption to that of the baseline, both in L/100 km.
    pub fn between(l_per_100km: f64, baseline_l_per_100km: f64) -> Self {
        let difference = l_per_100km - baseline_l_per_100km;
        let share = difference / baseline_l_per_100km;
        Self {
            l_per_100km: difference,
            share: share.is_finite().then_some(share),
        }
    }

    /// In L over what is driven in a year.
    pub fn l_per_year(&self, distance: YearlyDistance) -> f64 {
        self.l_per_100km * distance.km() / 100.0
    }

    /// How far it may be from the truth, in L/100 km: a quarter of itself.
    ///
    /// # Source
    /// Our own convention: what a friction pressure of 1.3 to 2 bar makes of it.
    pub fn uncertainty_l_per_100km(&self) -> f64 {
        self.l_per_100km.abs() * OF_A_DIFFERENCE
    }
}
