//! An overall ratio that was counted, as JSON.

use super::JsonError;
use super::object::Json;
use crate::sheet::counted::CountedRatio;

/// The ratio with its error and all gears at hand, the nearest first, in full precision; pretty-printed, one
/// line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn counted(counted: &CountedRatio) -> Result<String, JsonError> {
    let gears = counted.gears.iter().enumerate();
    let gears = gears.map(|(at, gear)| {
        Json::Object(vec![
            ("set", Json::Count(gear.set_number)),
            ("name", Json::Text(&gear.set)),
            ("gear", Json::Text(&gear.gear)),
            ("overall_ratio", Json::Number(gear.overall_ratio)),
            (
                "difference_percent",
                Json::Number(100.0 * counted.difference_share(gear)),
            ),
            ("within_error", Json::Bool(counted.is_within(at))),
        ])
    });
    Json::Object(vec![
        (
            "overall_ratio",
            Json::Number(counted.measured.overall_ratio),
        ),
        ("error", Json::Number(counted.measured.error)),
        ("gears", Json::List(gears.collect())),
    ])
    .printed()
}
