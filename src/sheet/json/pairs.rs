//! The tooth pairs that were found, as JSON.

use super::JsonError;
use super::object::Json;
use crate::finders::FoundPair;

/// The reference of its keys: path and meaning.
pub const PAIR_KEYS: &[(&str, &str)] = &[
    (
        "pairs",
        "the nearest first, of equally near ones that of fewer teeth; also those that cannot be cut",
    ),
    ("pairs[].driven", "teeth of the gear that is turned"),
    ("pairs[].driving", "teeth of the gear that turns it"),
    ("pairs[].ratio", "driven ÷ driving"),
    (
        "pairs[].error_percent",
        "how far the ratio is above what is wished, below 0 where it is less (%)",
    ),
    (
        "pairs[].hunting",
        "whether every tooth meets every other: `yes`; `partly` with a common factor below the smaller count; `no`",
    ),
    ("pairs[].sum", "teeth of both gears together"),
    (
        "pairs[].profile_shift",
        "sum of profile shift coefficients x1 + x2 that the centre distance asks for; null without one, and where no shift lets the gears mesh",
    ),
    (
        "pairs[].can_be_cut",
        "whether that sum lies between −0.5 and +1.3; true without a centre distance, which asks for none",
    ),
];

/// The pairs in their order, pretty-printed, one line break at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn pairs(found: &[FoundPair]) -> Result<String, JsonError> {
    let pairs = found.iter().map(|pair| {
        Json::Object(vec![
            ("driven", Json::Count(pair.teeth.driven().into())),
            ("driving", Json::Count(pair.teeth.driving().into())),
            ("ratio", Json::Number(pair.teeth.ratio())),
            ("error_percent", Json::Number(pair.error_percent)),
            ("hunting", Json::Text(pair.hunting.word())),
            ("sum", Json::Count(pair.sum().into())),
            ("profile_shift", Json::number(pair.profile_shift_sum())),
            ("can_be_cut", Json::Bool(pair.can_be_cut())),
        ])
    });
    Json::Object(vec![("pairs", Json::List(pairs.collect()))]).printed()
}
