//! Tractive effort as JSON, with what follows from it.

use super::{Entries, printed};
use crate::analysis::{Analysis, Motion, SetMotion};
use crate::gearing::RoadSpeed;
use crate::motion::{PoweredGear, TopSpeedLimit};
use crate::sheet::json::JsonError;
use crate::sheet::json::object::Json;
use crate::units::KMH_PER_M_S;

/// The steps between the ends of a gear at which its effort is told, beside the speeds asked for.
const STEPS_OF_A_GEAR: u32 = 60;

/// The tractive effort of every gear over its road speeds, with accelerations, gradients at the wanted
/// speeds and top speeds; pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub(in super::super) fn effort(
    analysis: &Analysis,
    motion: &Motion,
    speeds: &[RoadSpeed],
) -> Result<String, JsonError> {
    let of_set = |_, set: &SetMotion| {
        let top = set.powertrain.top_speed(&set.vehicle, &motion.load);
        let top = top.map(|(_, top)| top);
        let limit = top.map_or(Json::Null, |top| Json::Text(limit_word(top.limit)));
        let top_kmh = top.map(|top| top.speed_m_s * KMH_PER_M_S);
        vec![
            ("top_speed_kmh", Json::number(top_kmh)),
            ("top_speed_limit", limit),
            (
                "start_gradient_percent",
                Json::number(set.start_gradient_percent(&motion.driving)),
            ),
        ]
    };
    let of_gear = |set: &SetMotion, gear: &PoweredGear| effort_of_gear(set, gear, speeds);
    printed(analysis, motion, of_set, of_gear)
}

fn limit_word(limit: TopSpeedLimit) -> &'static str {
    match limit {
        TopSpeedLimit::Power => "power",
        TopSpeedLimit::Redline => "redline",
    }
}

fn effort_of_gear<'a>(set: &SetMotion, gear: &PoweredGear, wanted: &[RoadSpeed]) -> Entries<'a> {
    let on_road = &set.on_road;
    let told = told_speeds(gear, wanted);
    let points = told.iter().map(|(kmh, m_s)| {
        Json::Object(vec![
            ("speed_kmh", Json::Number(*kmh)),
            ("tractive_effort_n", Json::number(gear.effort_n(*m_s))),
            ("road_load_n", Json::Number(on_road.road_load_n(*m_s))),
            ("grip_limit_n", Json::number(on_road.grip_limit_n(*m_s))),
        ])
    });
    let accelerations = told.iter().map(|(kmh, m_s)| {
        let acceleration = gear.acceleration_m_s2(on_road, *m_s);
        Json::Object(vec![
            ("speed_kmh", Json::Number(*kmh)),
            ("acceleration_m_s2", Json::number(acceleration)),
        ])
    });
    let gradients = wanted.iter().map(|speed| {
        let gradient = gear.gradient_percent(on_road, speed.kmh() / KMH_PER_M_S);
        Json::Object(vec![
            ("speed_kmh", Json::Number(speed.kmh())),
            ("gradient_percent", Json::number(gradient)),
        ])
    });
    vec![
        ("points", Json::List(points.collect())),
        ("acceleration", Json::List(accelerations.collect())),
        ("gradient_percent", Json::List(gradients.collect())),
    ]
}

/// Road speeds in km/h and m/s from the lowest to the highest that a gear covers, and those of the wanted
/// ones between.
fn told_speeds(gear: &PoweredGear, wanted: &[RoadSpeed]) -> Vec<(f64, f64)> {
    let (low_m_s, high_m_s) = (gear.low_m_s(), gear.high_m_s());
    let steps = f64::from(STEPS_OF_A_GEAR);
    let even = (0..=STEPS_OF_A_GEAR).map(|step| {
        let share = f64::from(step) / steps;
        let m_s = low_m_s * (1.0 - share) + high_m_s * share;
        (m_s * KMH_PER_M_S, m_s)
    });
    let wanted = wanted.iter().filter_map(|speed| {
        let m_s = gear.covered_m_s(speed.kmh() / KMH_PER_M_S)?;
        Some((speed.kmh(), m_s))
    });
    // A wanted speed comes first, so that of two equal ones it is told as it was asked for.
    let mut told: Vec<(f64, f64)> = wanted.chain(even).collect();
    told.sort_by(|a, b| a.1.total_cmp(&b.1));
    told.dedup_by(|after, before| after.1 - before.1 <= 1e-9 * before.1);
    told
}
