//! What the speedometer shows behind every set, as JSON.

use super::object::{Json, JsonError};
use super::{findings, head};
use crate::analysis::{Analysis, speed_verdict};
use crate::checks::{NoReading, ShownSpeed, SpeedometerRule};
use crate::gearing::RoadSpeed;
use crate::project::Project;

/// What is shown at these true speeds, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub(super) fn speedometer(analysis: &Analysis, speeds: &[RoadSpeed]) -> Result<String, JsonError> {
    let project = analysis.project();
    let sets = project.sets.iter().zip(analysis.speedometers());
    let sets = sets.map(|(candidate, shown)| {
        let at = speeds
            .iter()
            .map(|speed| at_speed(shown.as_ref().ok(), speed.kmh()));
        let odometer = shown.as_ref().map(ShownSpeed::odometer_error_percent);
        Json::Object(vec![
            ("name", Json::Text(candidate.set.name.as_str())),
            ("speedometer", Json::List(at.collect())),
            ("odometer_error_percent", Json::number(odometer.ok())),
            ("verdict", Json::Sentence(verdict(project, shown))),
        ])
    });
    let mut entries = head(project);
    entries.push(("sets", Json::List(sets.collect())));
    entries.push(("findings", findings(analysis)));
    Json::Object(entries).printed()
}

fn at_speed<'a>(shown: Option<&ShownSpeed>, true_kmh: f64) -> Json<'a> {
    let rule = SpeedometerRule::R39;
    let shown_kmh = shown.map(|shown| shown.shown_kmh(true_kmh));
    let is_within = shown_kmh.and_then(|shown| rule.is_kept(true_kmh, shown));
    Json::Object(vec![
        ("true_kmh", Json::Number(true_kmh)),
        ("shown_kmh", Json::number(shown_kmh)),
        ("limit_kmh", Json::number(rule.most_kmh(true_kmh))),
        ("within_r39", is_within.map_or(Json::Null, Json::Bool)),
    ])
}

fn verdict(project: &Project, shown: &Result<ShownSpeed, NoReading>) -> String {
    let rule = project.technical.speedometer.rule;
    match shown {
        Ok(shown) => speed_verdict(project, shown).sentence(rule, project.units),
        Err(reason) => reason.to_string(),
    }
}
