//! A value that was found for a wish, as JSON.

use super::JsonError;
use super::object::Json;
use crate::finders::Sought;
use crate::sheet::found::Found;

/// The value in full precision, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn found(found: &Found<'_>) -> Result<String, JsonError> {
    let (word, unit) = match found.sought {
        Sought::FinalDrive => ("final", ""),
        Sought::RollingCircumference => ("tyre", "mm"),
        Sought::GearRatio => ("ratio", ""),
    };
    Json::Object(vec![
        ("find", Json::Text(word)),
        ("value", Json::Number(found.value.value)),
        ("unit", Json::Text(unit)),
    ])
    .printed()
}
