//! The plan of what changes, as JSON.

use super::object::Json;
use crate::project::{Candidate, Project};
use crate::workshop::{Part, PartSource, Plan, PlanTotals, Price};

/// The plan with what it comes to for each set; null where there is none.
pub(super) fn plan(project: &Project) -> Json<'_> {
    let Some(plan) = &project.workshop.plan else {
        return Json::Null;
    };
    let currency = plan.currency.as_ref();
    let parts = plan.parts().iter().map(|part| of_part(part, project));
    let totals = project.sets.iter().map(|set| of_totals(plan, set));
    Json::Object(vec![
        (
            "currency",
            currency.map_or(Json::Null, |sign| Json::Text(sign.as_str())),
        ),
        ("parts", Json::List(parts.collect())),
        ("totals", Json::List(totals.collect())),
    ])
}

fn of_part<'a>(part: &'a Part, project: &'a Project) -> Json<'a> {
    let of_sets = project.sets.iter().map(|set| {
        let entry = part.of(set.id.into());
        let source = match entry.source {
            PartSource::Undecided => Json::Null,
            PartSource::Fitted => Json::Text("fitted"),
            PartSource::Donor => Json::Text("donor"),
            PartSource::New => Json::Text("new"),
        };
        let to_do = entry.to_do.as_ref();
        Json::Object(vec![
            ("source", source),
            ("altered", Json::Bool(entry.is_altered)),
            (
                "to_do",
                to_do.map_or(Json::Null, |text| Json::Text(text.as_str())),
            ),
            ("price", Json::number(entry.price.map(Price::amount))),
            ("done", Json::Bool(entry.is_done)),
        ])
    });
    Json::Object(vec![
        ("name", Json::Text(part.name.as_str())),
        ("struck", Json::Bool(part.is_struck)),
        ("sets", Json::List(of_sets.collect())),
    ])
}

fn of_totals<'a>(plan: &Plan, set: &'a Candidate) -> Json<'a> {
    let totals = PlanTotals::of(plan, set.id.into());
    Json::Object(vec![
        ("name", Json::Text(set.set.name.as_str())),
        ("price", Json::Number(totals.price.number())),
        ("open_price", Json::Number(totals.open_price.number())),
        ("undecided", Json::Count(totals.undecided)),
        ("open", Json::Count(totals.open)),
        ("as_fitted", Json::Count(totals.stay)),
        ("done", Json::Count(totals.done)),
    ])
}
