//! In what two projects differ: every figure that is another, with both its values.
//!
//! Each project is spelled as a list of facts, a few words and a value each; what has another value
//! in the two lists is a difference. So nothing can be forgotten in one of the two directions.

use super::document::{Candidate, Project};
use super::technical::{
    Words, driving_words, efficiency_words, engine_words, known_fuel_words, limits_words,
    road_words, second_axle_words, set_checks_words, speedometer_words, vehicle_words,
};
use super::view::Views;
use super::workshop_words::workshop_words;
use super::write_up::{Drops, PageForm, WriteUp};
use crate::gearing::{
    ActsOn, EngineSpeed, Gear, GearRole, GearSet, Name, Position, RoadSpeed, Stage,
};
use crate::units::{BenchUnits, SpeedUnit, mark_text, typed_rpm_text};
use std::fmt::Display;

/// The most characters of one value that are told.
const MOST_CHARACTERS: usize = 60;

/// One figure that two projects have differently.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Difference {
    /// What it is: `Taller final drive, shift 2→3`.
    pub what: String,
    /// Its value in the project before; none where that has none.
    pub before: Option<String>,
    /// Its value in the project after; none where that has none.
    pub after: Option<String>,
}

impl Difference {
    /// The difference as a change: `shift 2→3: 4200, was 4000`.
    pub fn words(&self) -> String {
        let [was, is] = [&self.before, &self.after].map(|value| shown(value.as_deref()));
        format!("{}: {is}, was {was}", self.what)
    }

    /// The difference between two people's work: `shift 2→3: yours 4200, theirs 4000`.
    pub fn words_of_two(&self) -> String {
        let [theirs, yours] = [&self.before, &self.after].map(|value| shown(value.as_deref()));
        format!("{}: yours {yours}, theirs {theirs}", self.what)
    }
}

fn shown(value: Option<&str>) -> String {
    let value = value.unwrap_or("none").replace(['\n', '\t'], " ");
    if value.chars().count() <= MOST_CHARACTERS {
        return value;
    }
    value
        .chars()
        .take(MOST_CHARACTERS - 1)
        .chain(['…'])
        .collect()
}

/// What `after` has differently from `before`, the vehicle first; empty where they are equal.
pub fn differences(before: &Project, after: &Project) -> Vec<Difference> {
    let spelling = Spelling::of_both(before, after);
    let (old, new) = (facts(before, &spelling), facts(after, &spelling));
    let value_in = |facts: &[Fact], key: &Key| {
        let found = facts.iter().find(|fact| fact.key == *key);
        found.map(|fact| fact.value.clone())
    };
    let mut found: Vec<Difference> = new
        .iter()
        .map(|fact| Difference {
            what: fact.words(after),
            before: value_in(&old, &fact.key),
            after: Some(fact.value.clone()),
        })
        .collect();
    let gone = old
        .iter()
        .filter(|fact| !new.iter().any(|other| other.key == fact.key));
    found.extend(gone.map(|fact| Difference {
        what: fact.words(before),
        before: Some(fact.value.clone()),
        after: None,
    }));
    found.retain(|difference| difference.before != difference.after);
    found
}

/// Which fact: of the project, or of the set at that place, counted from 0.
#[derive(Debug, PartialEq, Eq)]
struct Key {
    set: Option<usize>,
    what: String,
}

struct Fact {
    key: Key,
    value: String,
}

impl Fact {
    /// The words for it, with the set's name in that project.
    fn words(&self, project: &Project) -> String {
        let what = &self.key.what;
        let set = self.key.set.and_then(|at| project.sets.iter().nth(at));
        match set {
            Some(candidate) if what != NAME => format!("{}, {what}", candidate.set.name),
            _ => what.clone(),
        }
    }
}

/// The fact that names a set, which the others of the set are told with.
const NAME: &str = "name of a set";

/// How both projects are spelled, so that only what differs differs.
struct Spelling {
    /// The unit of road speeds.
    unit: SpeedUnit,
    bench: BenchUnits,
    /// The places of the sets in which some gear has a shift point of its own.
    with_own_shifts: Vec<usize>,
}

impl Spelling {
    fn of_both(before: &Project, after: &Project) -> Self {
        let places = [before, after].into_iter().flat_map(|project| {
            let has_own = |set: &GearSet| set.gears.iter().any(|gear| gear.shift.is_some());
            let sets = project.sets.iter().enumerate();
            sets.filter_map(move |(place, candidate)| has_own(&candidate.set).then_some(place))
        });
        Self {
            unit: after.units,
            bench: after.workshop.units,
            with_own_shifts: places.collect(),
        }
    }
}

/// Facts as they are gathered.
struct Facts {
    set: Option<usize>,
    found: Vec<Fact>,
}

impl Facts {
    fn note(&mut self, what: impl Into<String>, value: impl Display) {
        let key = Key {
            set: self.set,
            what: what.into(),
        };
        let value = value.to_string();
        self.found.push(Fact { key, value });
    }

    fn note_words(&mut self, opening: &str, words: Words) {
        for (what, value) in words {
            self.note(format!("{opening}{what}"), value);
        }
    }

    fn note_some(&mut self, what: &str, value: Option<impl Display>) {
        if let Some(value) = value {
            self.note(what, value);
        }
    }
}

fn facts(project: &Project, spelling: &Spelling) -> Vec<Fact> {
    let mut facts = Facts {
        set: None,
        found: Vec::new(),
    };
    facts.note_some("title", project.title.as_ref());
    facts.note_some("date", project.date.as_ref());
    facts.note("tyre", project.tyre);
    facts.note("redline", rpm(project.engine.redline));
    facts.note_some("idle", project.engine.idle.map(rpm));
    let lowest = project.engine.lowest_useful.map(rpm);
    facts.note_some("lowest useful engine speed", lowest);
    facts.note("units", project.units.sign());
    facts.note("marked road speeds", road_speeds(project, spelling.unit));
    facts.note("marked engine speeds", engine_speeds(project));
    let baseline = project.sets.baseline_place() + 1;
    facts.note("baseline", format!("set {baseline}"));
    note_technical(&mut facts, project);
    for (place, candidate) in project.sets.iter().enumerate() {
        facts.set = Some(place);
        note_set(&mut facts, candidate);
        if spelling.with_own_shifts.contains(&place) {
            note_single_shifts(&mut facts, &candidate.set);
        } else {
            facts.note("shift point", rpm(candidate.set.shift));
        }
    }
    facts.set = None;
    facts.note_words("", workshop_words(project, spelling.bench));
    facts.note_some(
        "note",
        Some(project.note.as_str()).filter(|n| !n.is_empty()),
    );
    facts.note("write-up", write_up_value(&project.write_up, project));
    facts.found
}

fn note_set(facts: &mut Facts, candidate: &Candidate) {
    let set = &candidate.set;
    facts.note(NAME, &set.name);
    let order = set.gears.iter().map(|gear| gear.label.to_string());
    facts.note("order of the gears", listed(order));
    for gear in &set.gears {
        facts.note(format!("gear {}", gear.label), gear_value(set, gear));
    }
    if let Some(reverse) = &set.reverse {
        let drive = drive_words(set, reverse.final_drive);
        facts.note("reverse", format!("{}{drive}", reverse.ratio));
    }
    for (number, drive) in (1..).zip(&set.final_drives) {
        match set.final_drives.len() {
            1 => facts.note("final drive", drive),
            _ => facts.note(format!("final drive {number}"), drive),
        }
    }
    for (number, stage) in (1..).zip(&set.stages) {
        facts.note(format!("stage {number}"), stage_value(set, stage));
    }
    facts.note_some("tyre", set.tyre.as_ref());
    facts.note("shown", if candidate.visible { "yes" } else { "no" });
    facts.note("colour and dash", candidate.livery);
    let technical = &candidate.technical;
    facts.note_words("", efficiency_words(&technical.efficiencies, set));
    facts.note_words("", set_checks_words(&technical.checks));
    if let Some(engine) = &technical.engine {
        facts.note("engine of its own", "yes");
        facts.note_words("own engine, ", engine_words(engine));
    }
}

fn note_technical(facts: &mut Facts, project: &Project) {
    let technical = &project.technical;
    facts.note_words("", engine_words(&technical.engine));
    facts.note_words("", vehicle_words(&technical.vehicle));
    facts.note_words("", road_words(&technical.road));
    facts.note_words("", driving_words(&technical.driving));
    facts.note_words("", speedometer_words(&technical.speedometer));
    facts.note_words("", limits_words(&technical.limits));
    facts.note_words("", second_axle_words(&technical.second_axle));
    facts.note_words("", known_fuel_words(technical.known_fuel, &project.sets));
}

/// The shift point of each change, where not all have the same.
fn note_single_shifts(facts: &mut Facts, set: &GearSet) {
    let chain: Vec<&Gear> = set.chain().collect();
    for pair in chain.windows(2) {
        let what = format!("shift {}→{}", pair[0].label, pair[1].label);
        facts.note(what, rpm(set.shift_of(pair[0])));
    }
    facts.note("shift point of the other gears", rpm(set.shift));
    let own = || set.gears.iter().filter(|gear| gear.shift.is_some());
    for gear in own().filter(|gear| !is_left(gear, &chain)) {
        facts.note_some(
            &format!("shift point of gear {}", gear.label),
            gear.shift.map(rpm),
        );
    }
    let own = listed(own().map(|gear| format!("gear {}", gear.label)));
    facts.note("gears with a shift point of their own", own);
}

/// Whether the driver changes up from a gear: from all of the chain but its top.
fn is_left(gear: &Gear, chain: &[&Gear]) -> bool {
    let below_top = chain.len().saturating_sub(1);
    chain[..below_top].iter().any(|other| other.id == gear.id)
}

/// `1.31`, `0.84 on final drive 2, crawler`.
fn gear_value(set: &GearSet, gear: &Gear) -> String {
    let role = match gear.role {
        GearRole::Shifted => "",
        GearRole::Crawler => ", crawler",
    };
    let drive = drive_words(set, gear.final_drive);
    format!("{}{drive}{role}", gear.ratio)
}

/// Which final drive it is, where there are several; counted from 0.
fn drive_words(set: &GearSet, final_drive: usize) -> String {
    if set.final_drives.len() == 1 {
        String::new()
    } else {
        format!(" on final drive {}", final_drive + 1)
    }
}

/// `transfer box: high 1.15, low 2.1, in high, on every gear, all shown`.
fn stage_value(set: &GearSet, stage: &Stage) -> String {
    let positions: Vec<String> = stage.positions.iter().map(position_words).collect();
    let present = stage.positions.get(stage.present);
    let present = present.map_or("", |position| position.name.as_str());
    let gears = acting_gears(set, stage);
    let name: &Name = &stage.name;
    let shown = if stage.shows_others {
        ", all shown"
    } else {
        ""
    };
    let positions = positions.join(", ");
    format!("{name}: {positions}, in {present}, on {gears}{shown}")
}

/// `low 2.1`.
pub(super) fn position_words(position: &Position) -> String {
    format!("{} {}", position.name, position.ratio)
}

/// `every gear`, `gears 2 3`.
pub(super) fn acting_gears(set: &GearSet, stage: &Stage) -> String {
    match &stage.acts_on {
        ActsOn::EveryGear => "every gear".to_owned(),
        ActsOn::Only(ids) => {
            let gears = set.gears.iter().filter(|gear| ids.contains(&gear.id));
            let labels: Vec<&str> = gears.map(|gear| gear.label.as_str()).collect();
            format!("gears {}", labels.join(" "))
        }
    }
}

/// `picture of 1600 pixels, light, with table, with note, without Six-speed`.
fn write_up_value(write_up: &WriteUp, project: &Project) -> String {
    let form = form_words(write_up.form);
    let look = if write_up.is_dark { "dark" } else { "light" };
    let with = |is_shown| if is_shown { "with" } else { "without" };
    let numbered = (1..).zip(&project.sets);
    let left_out = numbered.filter(|(_, candidate)| write_up.left_out.contains(&candidate.id));
    let left_out = left_out.map(|(number, _): (u8, _)| format!(", without set {number}"));
    format!(
        "{form} of {} pixels, {look}, showing {}, {} table, {} note, {} the project, drops: {}, columns: {}{}",
        write_up.width.px(),
        views_words(&write_up.views),
        with(write_up.with_table),
        with(write_up.with_note),
        with(write_up.carries_project),
        drops_words(write_up.drops, project),
        columns_words(write_up),
        left_out.collect::<String>()
    )
}

/// `speed and effort`.
pub(super) fn views_words(views: &Views) -> String {
    let words: Vec<&str> = views.as_slice().iter().map(|view| view.word()).collect();
    words.join(" and ")
}

/// Whose falls of the needle have their figures: `those of set 2`.
pub(super) fn drops_words(drops: Drops, project: &Project) -> String {
    match drops {
        Drops::Usual => "the usual ones".to_owned(),
        Drops::All => "all".to_owned(),
        Drops::Hidden => "none".to_owned(),
        Drops::Of(set) => match project.sets.place(set) {
            Some(place) => format!("those of set {}", place + 1),
            None => "the usual ones".to_owned(),
        },
    }
}

/// Which columns a table has.
pub(super) fn columns_words(write_up: &WriteUp) -> String {
    match &write_up.columns {
        None => "as many as find room".to_owned(),
        Some(columns) => listed(columns.iter().map(|column| column.as_str().to_owned())),
    }
}

/// What is made of a project, in a word.
pub(super) fn form_words(form: PageForm) -> &'static str {
    match form {
        PageForm::Picture => "picture",
        PageForm::A4 => "A4",
        PageForm::Letter => "Letter",
    }
}

/// An engine speed that was typed.
pub(super) fn rpm(speed: EngineSpeed) -> String {
    typed_rpm_text(speed.rpm())
}

/// The marked engine speeds, one behind another.
pub(super) fn engine_speeds(project: &Project) -> String {
    let speeds = project.marked_engine_speeds.as_slice().iter();
    listed(speeds.map(|speed| rpm(*speed)))
}

/// The marked road speeds, one behind another.
pub(super) fn road_speeds(project: &Project, unit: SpeedUnit) -> String {
    let text = |speed: &RoadSpeed| mark_text(speed.kmh(), unit);
    listed(project.marked_road_speeds.as_slice().iter().map(text))
}

/// Values one behind another, or that there are none.
pub(super) fn listed(values: impl Iterator<Item = String>) -> String {
    let values: Vec<String> = values.collect();
    if values.is_empty() {
        "none".to_owned()
    } else {
        values.join(" ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::{Edit, SetEdit, examples::EXAMPLES};

    fn words(before: &Project, after: &Project) -> Vec<String> {
        let found = differences(before, after);
        found.iter().map(Difference::words).collect()
    }

    #[test]
    fn equal_projects_have_no_differences() {
        let project = EXAMPLES[0].project().unwrap();
        assert!(differences(&project, &project).is_empty());
    }

    #[test]
    fn what_was_changed_is_told_with_both_values() {
        let before = EXAMPLES[0].project().unwrap();
        let speed = EngineSpeed::from_rpm(4700.0).unwrap();
        let after = Edit::Redline(speed).applied_to(&before).unwrap();
        let second = before.sets.iter().nth(1).unwrap();
        let gear = second.set.gears[1].id;
        let shift = Edit::Set(second.id, SetEdit::Shift(gear, speed));
        let after = shift.applied_to(&after).unwrap();
        let name = &second.set.name;
        let was = rpm(second.set.shift_of(&second.set.gears[1]));
        assert_eq!(
            words(&before, &after),
            [
                "redline: 4700, was 4500".to_owned(),
                format!("{name}, shift 2→3: 4700, was {was}"),
                format!("{name}, gears with a shift point of their own: gear 2, was none"),
            ]
        );
    }

    #[test]
    fn yours_and_theirs_are_told_apart() {
        let theirs = EXAMPLES[0].project().unwrap();
        let speed = EngineSpeed::from_rpm(4700.0).unwrap();
        let yours = Edit::Redline(speed).applied_to(&theirs).unwrap();
        let found = differences(&theirs, &yours);
        assert_eq!(found[0].words_of_two(), "redline: yours 4700, theirs 4500");
    }

    #[test]
    fn a_choice_of_the_write_up_is_a_difference_too() {
        let before = EXAMPLES[0].project().unwrap();
        let mut write_up = before.write_up.clone();
        write_up.is_dark = !write_up.is_dark;
        let after = Edit::WriteUp(write_up).applied_to(&before).unwrap();
        let words = words(&before, &after);
        assert!(words[0].contains("light"), "{words:?}");
        assert_eq!(words.len(), 1);
    }

    #[test]
    fn a_shift_point_for_all_changes_is_told_once() {
        let before = EXAMPLES[0].project().unwrap();
        let first = before.sets.iter().next().unwrap();
        let speed = EngineSpeed::from_rpm(3210.0).unwrap();
        let all = Edit::Set(first.id, SetEdit::ShiftAll(speed));
        let after = all.applied_to(&before).unwrap();
        let words = words(&before, &after);
        assert!(
            words[0].ends_with(", shift point: 3210, was 3600"),
            "{words:?}"
        );
        assert_eq!(words.len(), 1);
    }

    #[test]
    fn other_units_are_no_other_marks() {
        let before = EXAMPLES[0].project().unwrap();
        let after = Edit::Units(SpeedUnit::Mph).applied_to(&before).unwrap();
        assert_eq!(words(&before, &after), ["units: mph, was km/h"]);
    }

    #[test]
    fn a_long_note_is_cut() {
        let value = "word ".repeat(100);
        assert_eq!(shown(Some(&value)).chars().count(), MOST_CHARACTERS);
    }
}
