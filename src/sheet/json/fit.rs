//! A seat, a part, and the interference of both, as JSON.

use super::JsonError;
use super::object::Json;
use crate::sheet::fit::AnsweredFit;

/// The keys, each with its meaning.
pub const FIT_KEYS: &[(&str, &str)] = &[
    (
        "seat_um",
        "lower and upper limit of the seat about its diameter (µm)",
    ),
    (
        "part_um",
        "lower and upper limit of the part: those of `--part`, else of a bearing of the Normal class (µm)",
    ),
    (
        "interference_um",
        "least and most interference, clearance below 0 (µm)",
    ),
];

/// The fit in full precision, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn fit(answered: &AnsweredFit) -> Result<String, JsonError> {
    let pair = |pair: [f64; 2]| Json::List(pair.map(Json::Number).to_vec());
    let (seat, part) = (answered.seat, answered.part);
    let interference = answered.interference();
    Json::Object(vec![
        ("seat_um", pair([seat.lower_um(), seat.upper_um()])),
        ("part_um", pair([part.lower_um(), part.upper_um()])),
        (
            "interference_um",
            pair([interference.least_um, interference.most_um]),
        ),
    ])
    .printed()
}
