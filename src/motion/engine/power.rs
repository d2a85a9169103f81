//! The law of power: torque at an engine speed, and back.

use std::f64::consts::PI;

/// ω over n: rad/s in a rev/min, exactly (definition).
pub(in super::super) const RAD_S_PER_RPM: f64 = PI / 30.0;

/// W in a kW.
pub(in super::super) const WATTS_PER_KW: f64 = 1000.0;

/// The power in W of a torque in N·m at an engine speed in rev/min.
///
/// P = T · ω, ω = π · n ÷ 30; in kW P = T · n ÷ 9549.2966.
///
/// # Source
/// Definition.
///
/// # Example
/// ```
/// let power_kw = layshaft::motion::power_w(100.0, 9549.2966) / 1000.0;
/// assert!((power_kw - 100.0).abs() < 1e-6);
/// ```
pub fn power_w(torque_nm: f64, engine_rpm: f64) -> f64 {
    torque_nm * (engine_rpm * RAD_S_PER_RPM)
}

/// The torque in N·m that makes a power in W at an engine speed in rev/min, above 0: the inverse of
/// [`power_w`].
pub fn torque_of_power_nm(power_w: f64, engine_rpm: f64) -> f64 {
    power_w / (engine_rpm * RAD_S_PER_RPM)
}
