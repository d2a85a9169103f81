//! Where is each finding, as it stands before its sentence?

use crate::analysis::{Analysis, ProjectFinding};

/// One line for each finding: `set 2, gear 4: the step …`, the vehicle's own first.
pub(super) fn lines(analysis: &Analysis) -> String {
    let line = |finding: &ProjectFinding| {
        let place = match (finding.set, &finding.gear) {
            (None, _) => "vehicle".to_owned(),
            (Some(set), None) => format!("set {}", set + 1),
            (Some(set), Some(gear)) => format!("set {}, gear {gear}", set + 1),
        };
        format!("{place}: {finding}\n")
    };
    analysis.findings().iter().map(line).collect()
}
