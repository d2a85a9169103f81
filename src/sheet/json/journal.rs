//! What is left of a shaft that is turned down, as JSON.

use super::JsonError;
use super::object::Json;
use crate::workshop::AnsweredJournal;

/// The keys, each with its meaning.
pub const JOURNAL_KEYS: &[(&str, &str)] = &[
    (
        "strength_share",
        "what is left of the strength in torsion and bending, 1 for all",
    ),
    (
        "stiffness_share",
        "what is left of the stiffness, 1 for all",
    ),
    (
        "shear_mpa",
        "shear at `--torque`, nominal at the new diameter; null without it (MPa)",
    ),
    (
        "case_left_mm",
        "how deep the hardened layer of `--case-depth` still is, 0 where nothing is left; null without it (mm)",
    ),
    (
        "stress_factor",
        "stress factor of the fillet in torsion, from memory; null without `--fillet` and outside the table",
    ),
];

/// What is left in full precision, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn journal(answered: &AnsweredJournal) -> Result<String, JsonError> {
    let turned = answered.turned;
    Json::Object(vec![
        ("strength_share", Json::Number(turned.strength_share())),
        ("stiffness_share", Json::Number(turned.stiffness_share())),
        ("shear_mpa", Json::number(answered.shear_mpa())),
        ("case_left_mm", Json::number(answered.case_left_mm())),
        ("stress_factor", Json::number(answered.stress_factor())),
    ])
    .printed()
}
