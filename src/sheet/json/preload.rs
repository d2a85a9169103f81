//! The torque that keeps a shaft turning, as JSON.

use super::JsonError;
use super::object::Json;
use crate::sheet::preload::AnsweredTorque;
use crate::workshop::TorqueVerdict;

/// The keys, each with its meaning.
pub const PRELOAD_KEYS: &[(&str, &str)] = &[
    ("torque_nmm", "turning torque of the bearings (N·mm)"),
    (
        "verdict",
        "`within`, `too_loose` or `too_tight`; null without a band",
    ),
];

/// The torque in full precision, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn preload(answered: &AnsweredTorque) -> Result<String, JsonError> {
    let verdict = answered.verdict().map(|verdict| match verdict {
        TorqueVerdict::Within => "within",
        TorqueVerdict::TooLoose => "too_loose",
        TorqueVerdict::TooTight => "too_tight",
    });
    Json::Object(vec![
        ("torque_nmm", Json::Number(answered.torque_nmm)),
        ("verdict", verdict.map_or(Json::Null, Json::Text)),
    ])
    .printed()
}
