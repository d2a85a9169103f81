//! What a change is called: the figure that it is about, its new value and its old one.
//!
//! Undo, redo and the menus name a change in the same words, so that what was undone is known again
//! when it comes back.

mod of_workshop;
mod set_naming;

use super::differences::{
    columns_words, drops_words, engine_speeds, form_words, road_speeds, rpm, views_words,
};
use super::document::{Candidates, Project, SetId};
use super::edits::Edit;
use super::history::{Cause, Change};
use super::technical::{
    EngineData, Words, driving_words, efficiency_words, engine_words, known_fuel_words,
    limits_words, road_words, second_axle_words, set_checks_words, speedometer_words,
    vehicle_words,
};
use super::write_up::WriteUp;
use crate::gearing::{EngineSpeed, Name, quoted};
use of_workshop::named_at_bench;
use set_naming::named_in_set;
use std::fmt::{self, Display};

/// A change in words; `Display` gives the figure with its new value: `ratio of 3, set 2: 1.31`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    what: String,
    /// Its value after the change; none where `what` says all.
    value: Option<String>,
    /// Its value before the change; none where there was none that could be told.
    before: Option<String>,
}

impl Named {
    /// Something that is said without a value.
    fn plain(what: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            value: None,
            before: None,
        }
    }

    /// A text before and after, in quotation marks.
    fn text(what: impl Into<String>, both: [Option<&str>; 2]) -> Self {
        let marked = |text| format!("\"{}\"", quoted(text));
        let values = both.map(|text| text.map_or_else(|| cut(""), marked));
        Self::told(what.into(), values)
    }

    /// Something that came or went, and what it is.
    fn thing(what: impl Into<String>, value: impl Display) -> Self {
        Self {
            what: what.into(),
            value: Some(cut(value)),
            before: None,
        }
    }

    /// A figure with its value before and after.
    fn figure(what: impl Into<String>, [before, after]: [impl Display; 2]) -> Self {
        Self::told(what.into(), [cut(before), cut(after)])
    }

    fn told(what: String, [before, value]: [String; 2]) -> Self {
        Self {
            what,
            // Two long texts may begin alike: what was cut off makes the difference.
            before: (before != value).then_some(before),
            value: Some(value),
        }
    }

    /// The same of something that a set has.
    fn of_set(mut self, place: usize) -> Self {
        self.what = format!("{}, set {}", self.what, place + 1);
        self
    }

    /// What is said once it was undone: `ratio of 3, set 2: 1.31, now 1.28 again`.
    pub fn undone(&self) -> String {
        match &self.before {
            Some(before) => format!("{self}, now {before} again"),
            None => self.to_string(),
        }
    }

    /// What is said once it was redone: `ratio of 3, set 2: 1.31 instead of 1.28`.
    pub fn redone(&self) -> String {
        match &self.before {
            Some(before) => format!("{self} instead of {before}"),
            None => self.to_string(),
        }
    }
}

impl Display for Named {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.value {
            Some(value) => write!(f, "{}: {value}", self.what),
            None => f.write_str(&self.what),
        }
    }
}

/// A value as it stands in a line: not too long, and `none` where there is nothing.
fn cut(value: impl Display) -> String {
    let value = value.to_string();
    if value.is_empty() {
        "none".to_owned()
    } else {
        quoted(&value)
    }
}

/// What may be absent.
fn optional(value: Option<impl Display>) -> String {
    value.map_or_else(String::new, |value| value.to_string())
}

impl Change<'_> {
    /// The change in words.
    pub fn named(&self) -> Named {
        match self.cause {
            Cause::Edit(edit) => named_edit(edit, self.before, self.after),
            Cause::Replaced(what) => Named::plain(*what),
        }
    }
}

fn named_edit(edit: &Edit, before: &Project, after: &Project) -> Named {
    let both = [before, after];
    let speed = |what, of: fn(&Project) -> Option<EngineSpeed>| {
        Named::figure(what, both.map(|project| optional(of(project).map(rpm))))
    };
    match edit {
        Edit::Title(_) => Named::text("title", both.map(|p| p.title.as_ref().map(Name::as_str))),
        Edit::Date(_) => Named::text("date", both.map(|p| p.date.as_ref().map(Name::as_str))),
        Edit::Note(_) => Named::text("note", both.map(note_text)),
        Edit::Units(_) => Named::figure("units", both.map(|p| p.units.sign())),
        Edit::Tyre(_) => Named::figure("tyre", both.map(|p| p.tyre)),
        Edit::Idle(_) => speed("idle", |p| p.engine.idle),
        Edit::LowestUseful(_) => speed("lowest useful engine speed", |p| p.engine.lowest_useful),
        Edit::Redline(_) => speed("redline", |p| Some(p.engine.redline)),
        Edit::MarkedEngineSpeeds(_) => {
            Named::figure("marked engine speeds", both.map(engine_speeds))
        }
        Edit::MarkedRoadSpeeds(_) => {
            let what = format!("marked road speeds, {}", after.units.sign());
            Named::figure(what, both.map(|p| road_speeds(p, after.units)))
        }
        Edit::EngineData(_) => named_part("engine", both, |p| engine_words(&p.technical.engine)),
        Edit::VehicleData(_) => {
            named_part("vehicle", both, |p| vehicle_words(&p.technical.vehicle))
        }
        Edit::RoadData(_) => named_part("load and road", both, |p| road_words(&p.technical.road)),
        Edit::DrivingData(_) => {
            named_part("driving", both, |p| driving_words(&p.technical.driving))
        }
        Edit::SpeedometerData(_) => named_part("speedometer", both, |p| {
            speedometer_words(&p.technical.speedometer)
        }),
        Edit::LimitsData(_) => named_part("limits", both, |p| limits_words(&p.technical.limits)),
        Edit::SecondAxleData(_) => named_part("second axle", both, |p| {
            second_axle_words(&p.technical.second_axle)
        }),
        Edit::KnownFuel(_) => named_part("known consumption", both, |p| {
            known_fuel_words(p.technical.known_fuel, &p.sets)
        }),
        Edit::OwnEngine(id, _) => named_own_engine(*id, both).of_set(place_of(&before.sets, *id)),
        Edit::Efficiencies(id, _) => {
            named_efficiencies(*id, both).of_set(place_of(&before.sets, *id))
        }
        Edit::SetChecks(id, _) => named_set_checks(*id, both).of_set(place_of(&before.sets, *id)),
        Edit::Workshop(edit) => named_at_bench(edit, both),
        Edit::WriteUp(_) => named_choice(both),
        Edit::AddSet(behind, _) => {
            let place = place_of(&before.sets, *behind) + 1;
            let name = after.sets.iter().nth(place).map(|c| &c.set.name);
            Named::thing(format!("new set {}", place + 1), optional(name))
        }
        Edit::RemoveSet(id) => {
            let name = before.sets.get(*id).map(|c| &c.set.name);
            let place = place_of(&before.sets, *id);
            Named::thing(format!("removed set {}", place + 1), optional(name))
        }
        Edit::MoveSet(id, _) => {
            let name = before.sets.get(*id).map(|c| quoted(c.set.name.as_str()));
            let places = both.map(|p| place_of(&p.sets, *id) + 1);
            Named::figure(format!("place of {}", optional(name)), places)
        }
        Edit::Baseline(_) => {
            let baseline = |p: &Project| format!("set {}", p.sets.baseline_place() + 1);
            Named::figure("baseline", both.map(baseline))
        }
        Edit::Visible(id, _) => {
            let is_shown = |p: &Project| p.sets.get(*id).is_some_and(|c| c.visible);
            let shown = both.map(|p| if is_shown(p) { "shown" } else { "hidden" });
            Named::figure(format!("set {}", place_of(&before.sets, *id) + 1), shown)
        }
        Edit::Keeping(edit, _) => named_edit(edit, before, after),
        Edit::Set(id, edit) => {
            let place = place_of(&before.sets, *id);
            match (before.sets.get(*id), after.sets.get(*id)) {
                (Some(was), Some(is)) => named_in_set(edit, [&was.set, &is.set]).of_set(place),
                // An edit of a set leaves it where it was.
                _ => Named::plain(format!("set {}", place + 1)),
            }
        }
    }
}

/// The text of a note, where there is one.
fn note_text(project: &Project) -> Option<&str> {
    Some(project.note.as_str().trim()).filter(|text| !text.is_empty())
}

fn place_of(sets: &Candidates, id: SetId) -> usize {
    sets.place(id).unwrap_or(0)
}

/// The one figure of a part of the technical data that is another, or the part where several are.
fn named_part(part: &str, both: [&Project; 2], of: impl Fn(&Project) -> Words) -> Named {
    let [before, after] = both.map(of);
    let value = |words: &Words, what: &str| {
        let found = words.iter().find(|(known, _)| known == what);
        found.map(|(_, value)| value.clone())
    };
    let mut whats: Vec<&String> = after.iter().chain(&before).map(|(what, _)| what).collect();
    whats.sort();
    whats.dedup();
    whats.retain(|what| value(&before, what) != value(&after, what));
    match whats.as_slice() {
        [what] => Named::figure(
            what.as_str(),
            [&before, &after].map(|words| optional(value(words, what))),
        ),
        _ => Named::plain(part),
    }
}

/// A set's own engine, come, gone or changed.
fn named_own_engine(id: SetId, both: [&Project; 2]) -> Named {
    fn own(project: &Project, id: SetId) -> Option<&EngineData> {
        project.sets.get(id)?.technical.engine.as_ref()
    }
    let has_own = both.map(|project| own(project, id).is_some());
    if has_own == [true, true] {
        return named_part("engine", both, |project| {
            own(project, id).map_or_else(Words::new, engine_words)
        });
    }
    let whose = has_own.map(|own| if own { "its own" } else { "the vehicle's" });
    Named::figure("engine", whose)
}

fn named_set_checks(id: SetId, both: [&Project; 2]) -> Named {
    named_part("road checks", both, |project| {
        let candidate = project.sets.get(id);
        candidate.map_or_else(Words::new, |c| set_checks_words(&c.technical.checks))
    })
}

fn named_efficiencies(id: SetId, both: [&Project; 2]) -> Named {
    named_part("efficiencies", both, |project| {
        let candidate = project.sets.get(id);
        candidate.map_or_else(Words::new, |candidate| {
            efficiency_words(&candidate.technical.efficiencies, &candidate.set)
        })
    })
}

/// The choice of the write-up that is another.
fn named_choice(both: [&Project; 2]) -> Named {
    let choices = both.map(|project| &project.write_up);
    let yes = |is_so: bool| if is_so { "yes" } else { "no" }.to_owned();
    let look = |is_dark: bool| if is_dark { "dark" } else { "light" }.to_owned();
    let mut figures = vec![
        (
            "width of the picture".to_owned(),
            choices.map(|c| format!("{} pixels", c.width.px())),
        ),
        (
            "form of the write-up".to_owned(),
            choices.map(|c| form_words(c.form).to_owned()),
        ),
        (
            "looks of the picture".to_owned(),
            choices.map(|c| look(c.is_dark)),
        ),
        (
            "table in the write-up".to_owned(),
            choices.map(|c| yes(c.with_table)),
        ),
        (
            "note in the write-up".to_owned(),
            choices.map(|c| yes(c.with_note)),
        ),
        (
            "drops in the write-up".to_owned(),
            both.map(|project| drops_words(project.write_up.drops, project)),
        ),
        (
            "views of the write-up".to_owned(),
            choices.map(|c| views_words(&c.views)),
        ),
        (
            "columns of the write-up".to_owned(),
            choices.map(columns_words),
        ),
        (
            "project within the picture".to_owned(),
            choices.map(|c| yes(c.carries_project)),
        ),
    ];
    for (place, candidate) in both[1].sets.iter().enumerate() {
        let what = format!("set {} in the write-up", place + 1);
        let is_in = |choices: &WriteUp| yes(!choices.left_out.contains(&candidate.id));
        figures.push((what, choices.map(is_in)));
    }
    figures.retain(|(_, [before, after])| before != after);
    match <[_; 1]>::try_from(figures) {
        Ok([(what, values)]) => Named::figure(what, values),
        Err(_) => Named::plain("choices for the write-up"),
    }
}
