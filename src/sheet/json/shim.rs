//! What shim a place takes, as JSON.

use super::JsonError;
use super::object::Json;
use crate::workshop::{AnsweredShim, Readings};

/// The keys, each with its meaning.
pub const SHIM_KEYS: &[(&str, &str)] = &[
    ("play_mm", "mean of what was measured (mm)"),
    ("spread_mm", "standard deviation of what was measured (mm)"),
    (
        "wanted_mm",
        "least and most whole thickness in the place, unrounded (mm)",
    ),
    (
        "shims_mm",
        "the shims to take, the thickest first; empty without `--sizes` (mm)",
    ),
    (
        "setting_mm",
        "the setting with them, clearance above 0; null without `--sizes` (mm)",
    ),
    (
        "verdict",
        "`fits`, `none_fits` or `no_measurement`; null without `--sizes`",
    ),
];

/// The answer in full precision, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn shim(answered: &AnsweredShim) -> Result<String, JsonError> {
    let wanted = match answered.wanted {
        Ok(band) => [band.least_mm, band.most_mm],
        Err(no_measurement) => [no_measurement.least_mm, no_measurement.most_mm],
    };
    let stack = answered.choice.as_ref().map(|choice| &choice.stack);
    let readings = answered.job.measurement.readings();
    let shims = stack.into_iter().flat_map(|stack| &stack.shims);
    let setting = stack.map(|stack| answered.job.setting_mm(stack.thickness_mm));
    let verdict = answered
        .is_stocked
        .then_some(())
        .map(|()| match (&answered.wanted, stack) {
            (Err(_), _) | (Ok(_), None) => "no_measurement",
            (Ok(_), Some(stack)) if stack.fits => "fits",
            (Ok(_), Some(_)) => "none_fits",
        });
    Json::Object(vec![
        ("play_mm", Json::number(readings.map(Readings::mean_mm))),
        ("spread_mm", Json::number(readings.map(Readings::spread_mm))),
        ("wanted_mm", Json::List(wanted.map(Json::Number).to_vec())),
        (
            "shims_mm",
            Json::List(shims.map(|shim| Json::Number(shim.mm())).collect()),
        ),
        ("setting_mm", Json::number(setting)),
        ("verdict", verdict.map_or(Json::Null, Json::Text)),
    ])
    .printed()
}
