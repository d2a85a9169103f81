//! Where is each finding, as it stands before its sentence?

use crate::analysis::ProjectResults;

/// One line for each finding: `set 2, gear 4: the step …`, the vehicle's own first.
pub(super) fn lines(results: &ProjectResults) -> String {
    let line = |(set, finding): (Option<usize>, &crate::gearing::Finding)| {
        let place = match (set, &finding.gear) {
            (None, _) => "vehicle".to_owned(),
            (Some(set), None) => format!("set {}", set + 1),
            (Some(set), Some(gear)) => format!("set {}, gear {gear}", set + 1),
        };
        format!("{place}: {finding}\n")
    };
    results.findings().map(line).collect()
}
