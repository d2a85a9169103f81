//! Does every form of the table give back what it prints, whatever the project?
//!
//! What the forms print, and these tests compare:
//!
//! - the sets in their order, each with its name, and which is the baseline;
//! - gears in their order with label, ratio, final drive, role, and the stages that they go through;
//!   reverse; all final drives;
//! - the tyre that each set stands on, redline, lowest useful engine speed and idle; the marked speeds.
//!
//! CSV prints these to the last digit, each stage with all positions and whether they are shown, and the
//! shift point of every forward gear; a road speed that was marked in miles may be one binary digit off.
//! Texts for readers print teeth as they were counted and other ratios with three decimals, engine
//! speeds to the rev/min, each stage in its present position and in those that are shown beside it, the
//! present one first, and the shift points that are used: the
//! top gear and a crawler have none; they have the title besides. In BBCode square brackets are round.
//!
//! No form prints: date, note, the unit where no road speed is printed, the write-up's choices, whether
//! a set is hidden, whose tyre it is where all are equal, whether a gear has a shift point of its own
//! that equals the others', and whether a stage acts on every gear or on each of them.

use super::{Form, farm_in_both_ranges, missing, table};
use crate::support::projects::any_project;
use layshaft::analysis::ProjectResults;
use layshaft::chart::table::COLUMNS;
use layshaft::gearing::{
    EngineSpeed, FinalDrive, GearId, GearResult, GearSet, Name, Ratio, RoadSpeed, SetResults, Stage,
};
use layshaft::import::tables::{OwnSet, OwnTable, is_own_table, read};
use layshaft::project::Project;
use layshaft::project::examples::EXAMPLES;
use layshaft::units::{SpeedUnit, mark_text, ratio_text, typed_rpm_text};
use proptest::prelude::*;
use std::collections::BTreeSet;

/// What a form says of a ratio.
fn ratio_said(form: Form, ratio: &Ratio) -> String {
    if form.is_exact() || ratio.has_teeth() {
        ratio.to_string()
    } else {
        ratio_text(ratio.value())
    }
}

/// What a form says of an engine speed.
fn rpm_said(form: Form, speed: EngineSpeed) -> String {
    if form.is_exact() {
        speed.rpm().to_string()
    } else {
        typed_rpm_text(speed.rpm())
    }
}

/// Whether a marked road speed is given back as a form says it.
fn is_given_back(form: Form, units: SpeedUnit, given: RoadSpeed, marked: RoadSpeed) -> bool {
    let share = given.kmh() / marked.kmh() - 1.0;
    match (form.is_exact(), units) {
        (true, SpeedUnit::Kmh) => given == marked,
        (true, SpeedUnit::Mph) => share.abs() <= f64::EPSILON,
        (false, units) => {
            let said = |speed: RoadSpeed| mark_text(speed.kmh(), units);
            said(given) == said(marked)
        }
    }
}

/// Everything that a form prints of a project, line by line.
fn printed(form: Form, project: &Project) -> Vec<String> {
    let results = ProjectResults::of(project);
    let mut lines = vec![format!(
        "baseline {}, redline {}, idle {:?}, lowest useful {:?}",
        project.sets.baseline_place(),
        rpm_said(form, project.engine.redline),
        project.engine.idle.map(|speed| rpm_said(form, speed)),
        project
            .engine
            .lowest_useful
            .map(|speed| rpm_said(form, speed)),
    )];
    let title = project.title.as_ref().filter(|_| !form.is_exact());
    lines.push(format!(
        "title {:?}",
        title.map(|title| form.said(title.as_str()))
    ));
    let rpms = project.marked_engine_speeds.as_slice().iter();
    lines.push(format!("{:?}", said_once(rpms.map(|s| rpm_said(form, *s)))));
    for (candidate, results) in project.sets.iter().zip(&results.sets) {
        let tyre = candidate.set.tyre.unwrap_or(project.tyre);
        lines.push(format!("on {tyre}"));
        lines.extend(printed_set(form, &candidate.set, results));
    }
    lines
}

fn said_once(said: impl Iterator<Item = String>) -> Vec<String> {
    let mut once = Vec::new();
    for words in said {
        if !once.contains(&words) {
            once.push(words);
        }
    }
    once
}

/// What stands of a final drive.
fn drive_said(form: Form, drive: &FinalDrive) -> String {
    match drive {
        FinalDrive::Gears(ratio) => ratio_said(form, ratio),
        FinalDrive::Chain(sprockets) => {
            format!("front {} rear {}", sprockets.front(), sprockets.rear())
        }
    }
}

fn printed_set(form: Form, set: &GearSet, results: &SetResults) -> Vec<String> {
    let mut lines = vec![format!("set {:?}", form.said(set.name.as_str()))];
    let finals = set.final_drives.iter().map(|drive| drive_said(form, drive));
    lines.push(format!("final drives {:?}", finals.collect::<Vec<_>>()));
    lines.extend(set.stages.iter().map(|stage| printed_stage(form, stage)));
    for (gear, result) in set.gears.iter().zip(&results.gears) {
        let shift = shift_is_printed(form, set, result).then(|| set.shift_of(gear));
        lines.push(format!(
            "gear {:?} {} on {} {:?} through {:?} shift {:?}",
            form.said(gear.label.as_str()),
            ratio_said(form, &gear.ratio),
            gear.final_drive,
            gear.role,
            stages_of(set, gear.id),
            shift.map(|shift| rpm_said(form, shift)),
        ));
    }
    lines.extend(set.reverse.as_ref().map(|reverse| {
        format!(
            "reverse {} on {} through {:?}",
            ratio_said(form, &reverse.ratio),
            reverse.final_drive,
            stages_of(set, GearId::REVERSE)
        )
    }));
    lines
}

fn printed_stage(form: Form, stage: &Stage) -> String {
    // With one position there is nothing to show beside it.
    let shows_others = stage.shows_others && stage.positions.len() > 1;
    let mut positions: Vec<(bool, String)> = Vec::new();
    for (at, position) in stage.positions.iter().enumerate() {
        let name = form.said(position.name.as_str());
        let is_present = at == stage.present;
        if form.is_exact() {
            positions.push((is_present, format!("{name:?} {}", position.ratio)));
        } else if is_present || shows_others {
            let ratio = ratio_said(form, &position.ratio);
            positions.push((is_present, format!("{name:?} {ratio}")));
        }
    }
    if !form.is_exact() {
        positions.sort_by_key(|(is_present, _)| !is_present);
    }
    let name = form.said(stage.name.as_str());
    format!("stage {name:?} {positions:?}, all shown {shows_others}")
}

fn shift_is_printed(form: Form, set: &GearSet, result: &GearResult) -> bool {
    form.is_exact() || result.upshift.is_some() || set.chain().count() == 1
}

fn stages_of(set: &GearSet, gear: GearId) -> Vec<usize> {
    let stages = set.stages.iter().enumerate();
    let acting = stages.filter(|(_, stage)| stage.acts_on.includes(gear));
    acting.map(|(at, _)| at).collect()
}

/// The same lines of what was read, with the project's own upshifts to say which shift points count.
fn given_back(form: Form, table: &OwnTable, project: &Project) -> Vec<String> {
    let results = ProjectResults::of(project);
    let rpm = |speed: Option<EngineSpeed>| speed.map(|speed| rpm_said(form, speed));
    let mut lines = vec![format!(
        "baseline {}, redline {}, idle {:?}, lowest useful {:?}",
        table.baseline,
        rpm(table.redline).unwrap_or_default(),
        rpm(table.idle),
        rpm(table.lowest_useful),
    )];
    lines.push(format!(
        "title {:?}",
        table.title.as_ref().map(Name::as_str)
    ));
    let rpms = table.marked_engine_speeds.iter();
    lines.push(format!("{:?}", said_once(rpms.map(|s| rpm_said(form, *s)))));
    for (set, results) in table.sets.iter().zip(&results.sets) {
        let tyre = set.tyre.or(table.tyre).map(|tyre| tyre.to_string());
        lines.push(format!("on {}", tyre.unwrap_or_default()));
        let set = set.gear_set(&missing()).unwrap();
        // What was read needs no rounding any more, except where it is compared.
        lines.extend(printed_set(form, &set, results));
    }
    lines
}

/// Whether two gears of a set would be labelled the same in that form.
fn has_clashing_labels(form: Form, project: &Project) -> bool {
    project.sets.iter().any(|candidate| {
        let labels = candidate
            .set
            .gears
            .iter()
            .map(|gear| form.said(gear.label.as_str()));
        labels.collect::<BTreeSet<String>>().len() < candidate.set.gears.len()
    })
}

fn check(form: Form, project: &Project) {
    let text = form.print(project);
    assert!(is_own_table(&text), "{text}");
    let read = table(&text);
    assert_eq!(read.remarks, Vec::<String>::new(), "{text}");
    assert_eq!(read.sets.len(), project.sets.len(), "{text}");
    let (given, wanted) = (given_back(form, &read, project), printed(form, project));
    for (given, wanted) in given.iter().zip(&wanted) {
        assert_eq!(given, wanted, "{form:?}\n{text}");
    }
    assert_eq!(given.len(), wanted.len(), "{form:?}\n{text}");
    for marked in project.marked_road_speeds.as_slice() {
        let mut given = read.marked_road_speeds.iter();
        let is_there = given.any(|given| is_given_back(form, project.units, *given, *marked));
        assert!(
            is_there,
            "{marked:?} in {:?}\n{text}",
            read.marked_road_speeds
        );
    }
    assert!(read.marked_road_speeds.len() <= project.marked_road_speeds.as_slice().len());
}

#[test]
fn every_example_is_given_back_in_every_form() {
    for example in EXAMPLES {
        for form in Form::ALL {
            check(form, &example.project().unwrap());
        }
    }
}

#[test]
fn a_range_that_is_shown_has_rows_of_its_own_which_are_no_gears_when_they_are_read() {
    let project = farm_in_both_ranges();
    for form in Form::ALL {
        let text = form.print(&project);
        let names = if form.is_exact() {
            ["Low", "set"]
        } else {
            ["C Low", "R Low"]
        };
        for name in names {
            assert!(text.contains(name), "{name} is not in {form:?}\n{text}");
        }
        check(form, &project);
    }
}

#[test]
fn a_csv_of_an_example_gives_back_its_sets_whole() {
    for example in EXAMPLES {
        let project = example.project().unwrap();
        let read = table(&Form::CsvPoint.print(&project));
        for (set, candidate) in read.sets.iter().zip(&project.sets) {
            let set = OwnSet {
                tyre: set.tyre.or(read.tyre),
                ..set.clone()
            };
            let set = set.gear_set(&missing()).unwrap();
            let results = |set| SetResults::of(set, &project.tyre, &project.engine);
            assert_eq!(results(&set), results(&candidate.set));
            assert_eq!(set.stages, candidate.set.stages);
        }
    }
}

#[test]
fn every_column_has_a_heading_that_is_known() {
    let project = EXAMPLES[0].project().unwrap();
    let headings = Form::CsvPoint.print(&project);
    let headings = headings.lines().next().unwrap();
    assert!(headings.split(',').count() > COLUMNS.len());
    for form in Form::ALL {
        assert_eq!(table(&form.print(&project)).remarks, Vec::<String>::new());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]

    #[test]
    fn every_project_is_given_back_in_every_form(project in any_project()) {
        for form in Form::ALL {
            if !has_clashing_labels(form, &project) {
                check(form, &project);
            }
        }
    }

    #[test]
    fn no_text_makes_the_reader_stumble(text in "(gear|set,name|[|>; ,.0-9a-z\n()×=:-]{1,9}|\\PC{1,9}|  ratio|  rpm|\n){0,60}") {
        let _ = read(&text);
        prop_assert_eq!(is_own_table(&text), read(&text).is_some());
    }
}
