//! What engine and vehicle make of the sets, as JSON: tractive effort, runs, and steady speeds.

mod cruise;
mod effort;
mod run;

pub(super) use cruise::cruise;
pub(super) use effort::effort;
pub(super) use run::run;

use super::object::Json;
use super::{JsonError, findings, head};
use crate::analysis::{Analysis, Motion, SetMotion};
use crate::motion::PoweredGear;

/// Keys with their values, in order.
type Entries<'a> = Vec<(&'static str, Json<'a>)>;

fn printed<'a>(
    analysis: &'a Analysis,
    motion: &'a Motion,
    of_set: impl Fn(usize, &'a SetMotion) -> Entries<'a>,
    of_gear: impl Fn(&'a SetMotion, &'a PoweredGear) -> Entries<'a>,
) -> Result<String, JsonError> {
    let project = analysis.project();
    let sets = project.sets.iter().zip(&motion.sets).enumerate();
    let sets = sets.map(|(place, (candidate, set))| {
        let mut entries = vec![("name", Json::Text(candidate.set.name.as_str()))];
        entries.extend(of_set(place, set));
        let gears = set.powertrain.gears.iter().map(|gear| {
            let mut entries = vec![("gear", Json::Text(&gear.gear.label))];
            entries.extend(of_gear(set, gear));
            Json::Object(entries)
        });
        entries.push(("gears", Json::List(gears.collect())));
        Json::Object(entries)
    });
    let mut entries = head(project);
    entries.push(("sets", Json::List(sets.collect())));
    entries.push(("findings", findings(analysis)));
    Json::Object(entries).printed()
}
