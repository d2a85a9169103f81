//! Steady speeds as JSON.

use super::printed;
use crate::analysis::{Analysis, Motion, SetMotion};
use crate::gearing::{EngineSpeed, RoadSpeed};
use crate::motion::PoweredGear;
use crate::sheet::json::JsonError;
use crate::sheet::json::object::Json;
use crate::units::KMH_PER_M_S;

/// Watts in a kilowatt.
const W_PER_KW: f64 = 1000.0;

/// What a steady speed asks of the engine in every gear, at the wanted speeds; pretty-printed, one line
/// break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub(in super::super) fn cruise(
    analysis: &Analysis,
    motion: &Motion,
    speeds: &[RoadSpeed],
) -> Result<String, JsonError> {
    let of_gear = |set: &SetMotion, gear: &PoweredGear| {
        let at = speeds.iter().map(|speed| cruise_at(set, gear, *speed));
        vec![("cruise", Json::List(at.collect()))]
    };
    let idle_rpm = analysis.project().engine.idle.map(EngineSpeed::rpm);
    let of_set = |_, set: &SetMotion| {
        let fuel = set.fuel.as_ref();
        let idle = fuel.zip(idle_rpm).map(|(fuel, rpm)| fuel.idle_l_per_h(rpm));
        let uncertainty = fuel.map(|fuel| 100.0 * fuel.uncertainty_share());
        vec![
            ("idle_fuel_l_per_h", Json::number(idle)),
            ("fuel_uncertainty_percent", Json::number(uncertainty)),
        ]
    };
    printed(analysis, motion, of_set, of_gear)
}

/// Speed and engine speed always, the rest where the gear holds the speed.
fn cruise_at<'a>(set: &SetMotion, gear: &PoweredGear, speed: RoadSpeed) -> Json<'a> {
    let speed_m_s = speed.kmh() / KMH_PER_M_S;
    let cruise = set.powertrain.cruise(gear, &set.on_road, speed_m_s);
    let held = cruise.held;
    let fuel = set.fuel.and_then(|fuel| cruise.l_per_100km(&fuel));
    Json::Object(vec![
        ("speed_kmh", Json::Number(speed.kmh())),
        ("engine_rpm", Json::Number(cruise.engine_rpm)),
        (
            "load_percent",
            Json::number(held.map(|held| 100.0 * held.load_share())),
        ),
        (
            "power_kw",
            Json::number(held.map(|held| held.power_w / W_PER_KW)),
        ),
        (
            "reserve_kw",
            Json::number(held.map(|held| held.reserve_w() / W_PER_KW)),
        ),
        ("fuel_l_per_100km", Json::number(fuel)),
    ])
}
