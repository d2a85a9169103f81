//! Does a project come back from its file as it went in, and is every other text refused in words?

mod broken;
mod format_2;
mod former;
mod mutations;
mod technical;
mod workshop;

use crate::support::close::assert_close;
use crate::support::projects::{any_project, renumbered};
use layshaft::analysis::ProjectResults;
use layshaft::gearing::{ActsOn, Construction, EngineSpeed, GearId, GearRole, Tyre};
use layshaft::project::{Project, format};
use layshaft::units::SpeedUnit;
use proptest::prelude::*;
use std::fs;
use std::path::{Path, PathBuf};

/// A file of format 1 that uses every key of it; once written, a format never changes.
pub(crate) const GOLDEN: &str = include_str!("golden-v1.ron");

fn golden() -> Project {
    format::read(GOLDEN).unwrap()
}

#[test]
fn the_golden_file_is_written_back_byte_for_byte() {
    assert_eq!(format::write(&golden()).unwrap(), GOLDEN);
}

#[test]
fn the_golden_file_means_what_it_meant() {
    let project = golden();
    let title = project.title.as_ref().map(ToString::to_string);
    assert_eq!(title.as_deref(), Some("Every corner of format 1"));
    let date = project.date.as_ref().map(ToString::to_string);
    assert_eq!(date.as_deref(), Some("17. Mai, nach der Probefahrt"));
    assert_eq!(
        project.note.as_str(),
        "Holds \"quotes\", a back\\slash and a\ttab.\n\n    Über alle Gänge: 1 → 5."
    );
    assert_eq!(project.units, SpeedUnit::Mph);
    assert_eq!(project.tyre.to_string(), "215/65 R 16 C");
    let engine = project.engine;
    let known = [engine.idle, engine.lowest_useful, Some(engine.redline)];
    let known: Vec<f64> = known.into_iter().flatten().map(EngineSpeed::rpm).collect();
    assert_eq!(known, [800.0, 1500.5, 5200.0]);
    let rpms = project.marked_engine_speeds.as_slice().iter();
    assert_eq!(rpms.map(|n| n.rpm()).collect::<Vec<_>>(), [2000.0, 3000.5]);
    let speeds = project.marked_road_speeds.as_slice().iter();
    assert_eq!(
        speeds.map(|v| v.kmh()).collect::<Vec<_>>(),
        [0.5, 112.654_08]
    );
    assert_eq!(project.sets.baseline_place(), 1);
    let visible: Vec<bool> = project.sets.iter().map(|c| c.visible).collect();
    assert_eq!(visible, [true, false, true]);
}

#[test]
fn the_golden_file_s_first_set_means_what_it_meant() {
    let project = golden();
    let set = &project.sets.iter().next().unwrap().set;
    assert_eq!(set.name.as_str(), "Layshaft box, every gear");
    let own: Vec<Option<f64>> = set
        .gears
        .iter()
        .map(|g| g.shift.map(EngineSpeed::rpm))
        .collect();
    assert_eq!(
        (set.shift.rpm(), own),
        (4200.0, vec![None, Some(4000.0), None, Some(3899.25)])
    );
    let roles: Vec<GearRole> = set.gears.iter().map(|g| g.role).collect();
    assert_eq!(roles[0], GearRole::Crawler);
    assert!(roles[1..].iter().all(|role| *role == GearRole::Shifted));
    let spelled: Vec<String> = set.gears.iter().map(|g| g.ratio.to_string()).collect();
    assert_eq!(spelled, ["44:29 × 49:12", "44:29 × 2.25", "38:17", "0.756"]);
    assert_eq!(
        set.gears.iter().map(|g| g.final_drive).collect::<Vec<_>>(),
        [0, 0, 1, 2]
    );
    let overdrive = ActsOn::Only([GearId(3), GearId(4), GearId::REVERSE].into());
    assert_eq!(set.stages[0].acts_on, ActsOn::EveryGear);
    assert_eq!(set.stages[1].acts_on, overdrive);
    let Some(Tyre::OverallDiameter(tyre)) = set.tyre else {
        panic!("{:?}", set.tyre);
    };
    assert_eq!(tyre.construction(), Construction::CrossPly);
    let results = &ProjectResults::of(&project).sets[0];
    // Crawler through the lower range: 44 ÷ 29 · 49 ÷ 12 · 41 ÷ 9 · 38 ÷ 23.
    assert_close(
        results.gears[0].gear.overall_ratio,
        46.630_129,
        1e-6,
        "crawler",
    );
    // Reverse: 3.45 · 3.9 · 38 ÷ 23.
    let reverse = results.reverse.as_ref().unwrap();
    assert_close(reverse.gear.overall_ratio, 22.23, 1e-9, "reverse");
}

/// Every project file that comes with the program.
fn saves() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("saves");
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    files
}

#[test]
fn every_file_in_saves_has_a_title_and_is_written_back_byte_for_byte() {
    assert!(!saves().is_empty());
    for path in saves() {
        let shown = path.display();
        assert_eq!(
            path.extension().and_then(|e| e.to_str()),
            Some("ron"),
            "{shown}"
        );
        let text = fs::read_to_string(&path).unwrap();
        let project = format::read(&text).unwrap_or_else(|error| panic!("{shown}: {error}"));
        assert!(project.title.is_some(), "{shown} has no title");
        assert_eq!(format::write(&project).unwrap(), text, "{shown}");
    }
}

proptest! {
    #[test]
    fn any_project_comes_back_from_its_file(project in any_project()) {
        let text = format::write(&project).unwrap();
        let read = format::read(&text);
        prop_assert_eq!(read.as_ref(), Ok(&renumbered(&project)), "{}", text);
        prop_assert_eq!(format::write(&read.unwrap()).unwrap(), text);
    }

    #[test]
    fn a_project_is_written_the_same_whatever_its_identities(project in any_project()) {
        prop_assert_eq!(format::write(&project).unwrap(), format::write(&renumbered(&project)).unwrap());
    }
}

#[test]
fn what_a_file_leaves_out_is_unknown_and_not_invented() {
    let least = "(format: 1, units: Kmh, tyre: RevsPerKm(520), engine: (redline_rpm: 6500), \
                 baseline: 1, sets: [(name: \"a\", visible: true, shift_rpm: 6000, \
                 final_drives: [Number(4)], gears: [(label: \"1\", ratio: Number(1))])])";
    let project = format::read(least).unwrap();
    assert_eq!((&project.title, &project.date), (&None, &None));
    assert_eq!(project.note.as_str(), "");
    assert_eq!(
        (project.engine.idle, project.engine.lowest_useful),
        (None, None)
    );
    assert!(project.marked_engine_speeds.as_slice().is_empty());
    assert!(project.marked_road_speeds.as_slice().is_empty());
    let set = &project.sets.baseline().set;
    assert!(set.reverse.is_none() && set.stages.is_empty() && set.tyre.is_none());
    assert_eq!(set.gears[0].role, GearRole::Shifted);
}

#[test]
fn a_road_speed_slower_than_can_be_typed_comes_back_as_it_was() {
    for slow in ["0.0005", "5e-324"] {
        let kept = GOLDEN.replacen(" 0.5,", &format!(" {slow},"), 1);
        let project = format::read(&kept).unwrap();
        assert!(project.marked_road_speeds.as_slice()[0].is_too_slow());
        assert_eq!(format::write(&project).unwrap(), kept, "{slow}");
    }
}

#[test]
fn comments_and_the_line_ends_of_another_system_are_read() {
    let commented = GOLDEN.replacen("units:", "// what the dials show\n    units:", 1);
    assert_eq!(format::read(&commented).unwrap(), golden());
    assert_eq!(
        format::read(&GOLDEN.replace('\n', "\r\n")).unwrap(),
        golden()
    );
}
