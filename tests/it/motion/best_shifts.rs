//! Are the best shift points taken as one edit that gains what was said before?

use crate::support::gear_sets::rpm;
use layshaft::analysis::{Analysis, BestShifts, RunQuestions};
use layshaft::gearing::EngineSpeed;
use layshaft::motion::Grade;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Candidate, Edit, History, Marks, Project, SetEdit};
use layshaft::units::SpeedUnit;
use proptest::prelude::*;

fn two_seater() -> Project {
    EXAMPLES[1].project().unwrap()
}

fn first(project: &Project) -> &Candidate {
    project.sets.iter().next().unwrap()
}

fn best(project: &Project) -> Option<BestShifts> {
    Analysis::from(project).best_shifts(0).cloned()
}

fn edited(project: &Project, edit: SetEdit) -> Project {
    let edit = Edit::Set(first(project).id, edit);
    edit.applied_to(project).unwrap()
}

#[test]
fn they_are_rounded_down_named_and_timed_before_they_are_taken() {
    let offered = best(&two_seater()).unwrap();
    // 5752.6, 5776.6 and 5659.1 rpm to the digit.
    assert_eq!(
        offered.changes_text(),
        "1–2 at 5750, 2–3 at 5770, 3–4 at 5650 rpm"
    );
    let unit = SpeedUnit::Mph;
    assert_eq!(
        offered.gain_text(unit),
        "to 70 mph 15.25 s instead of 15.27 s"
    );
    assert_eq!(
        offered.gains_text(unit),
        "to 70 mph 15.25 s instead of 15.27 s"
    );
}

#[test]
fn what_everybody_compares_comes_first_where_it_gains() {
    let early = edited(&two_seater(), SetEdit::ShiftAll(rpm(5000.0)));
    let offered = best(&early).unwrap();
    let words = "to 60 mph 10.96 s instead of 11.65 s";
    assert_eq!(offered.gain_text(SpeedUnit::Mph), words);
    let all = format!(
        "to 30 mph 3.75 s instead of 3.81 s\n{words}\nto 70 mph 15.25 s instead of 15.66 s"
    );
    assert_eq!(offered.gains_text(SpeedUnit::Mph), all);
}

#[test]
fn what_is_taken_is_timed_as_it_was_said_and_leaves_nothing_to_take() {
    let project = two_seater();
    let offered = best(&project).unwrap();
    let taken = edited(&project, offered.edit.clone());
    assert_eq!(best(&taken), None);
    let analysis = Analysis::from(&taken);
    let questions = RunQuestions::usual(taken.marked_road_speeds.as_slice());
    let runs = analysis.motion().unwrap().runs(&questions);
    for gain in &offered.gains {
        let time = runs[0]
            .times
            .iter()
            .find(|time| time.to == gain.to)
            .unwrap();
        assert!((time.passage.time_s - gain.best_s).abs() < 1e-9);
        let time = now_s(&project, gain.to.kmh());
        assert!((time - gain.now_s.unwrap()).abs() < 1e-9);
    }
}

/// The time as the first set is changed up now.
fn now_s(project: &Project, kmh: f64) -> f64 {
    let analysis = Analysis::from(project);
    let questions = RunQuestions::usual(project.marked_road_speeds.as_slice());
    let runs = analysis.motion().unwrap().runs(&questions);
    let mut times = runs[0].times.iter();
    let time = times.find(|time| (time.to.kmh() - kmh).abs() < 1e-9);
    time.unwrap().passage.time_s
}

#[test]
fn points_that_round_down_to_the_best_are_as_good() {
    let mut project = two_seater();
    for [one, two, three] in [[5759.0, 5770.0, 5650.0], [5750.0, 5779.0, 5651.0]] {
        let gears: Vec<_> = first(&project).set.chain().map(|gear| gear.id).collect();
        let own = gears.into_iter().zip([one, two, three].map(rpm)).collect();
        project = edited(&project, SetEdit::Shifts(rpm(5800.0), own));
        assert_eq!(best(&project), None, "{one}");
    }
}

#[test]
fn one_point_for_all_stays_one_where_all_are_best_at_the_redline() {
    let mut project = two_seater();
    project.engine.redline = rpm(4507.0);
    let offered = best(&project).unwrap();
    assert_eq!(offered.edit, SetEdit::ShiftAll(rpm(4500.0)));
    // Gears that have points of their own keep them.
    let own = first(&project)
        .set
        .chain()
        .map(|gear| (gear.id, rpm(4000.0)));
    let own = SetEdit::Shifts(rpm(4000.0), own.collect());
    let offered = best(&edited(&project, own)).unwrap();
    let SetEdit::Shifts(common, own) = offered.edit else {
        panic!("{:?}", offered.edit);
    };
    assert_eq!(common, rpm(4000.0));
    assert_eq!(
        own.iter().map(|(_, at)| at.rpm()).collect::<Vec<_>>(),
        [4500.0; 3]
    );
}

#[test]
fn taking_them_is_one_step_that_undo_tells_with_all_speeds() {
    let project = two_seater();
    let mut history = History::new(project.clone());
    let edit = best(&project).unwrap().edit;
    history.edit(&Edit::Set(first(&project).id, edit)).unwrap();
    let named = history.undoable().unwrap().named();
    let says = "shift points, set 1: 5750 5770 5650, now 5800 again";
    assert_eq!(named.undone(), says);
    history.undo();
    assert_eq!(history.project(), &project);
}

#[test]
fn of_many_changes_only_their_ends_are_said() {
    let changes = (1..=9).map(|gear: i32| {
        let labels = [gear, gear + 1].map(|label| label.to_string());
        (
            labels,
            EngineSpeed::from_rpm(2000.0 + 10.0 * f64::from(gear)).unwrap(),
        )
    });
    let many = BestShifts {
        changes: changes.collect(),
        ..best(&two_seater()).unwrap()
    };
    assert_eq!(many.changes_text(), "9 changes at 2010 to 2090 rpm");
}

#[test]
fn a_speed_that_is_only_reached_with_them_is_told_so() {
    let mut project = two_seater();
    project.marked_road_speeds = Marks::default();
    // At 2500 rpm it is changed up to a gear that holds no speed on such a grade.
    project.technical.road.grade = Grade::from_percent(15.0).ok();
    let early = edited(&project, SetEdit::ShiftAll(rpm(2500.0)));
    let offered = best(&early).unwrap();
    let text = offered.gain_text(SpeedUnit::Mph);
    assert!(
        text.starts_with("to 60 mph ") && text.ends_with(" s, which is not reached now"),
        "{text}"
    );
}

#[test]
fn nothing_is_offered_where_nothing_is_known_or_nothing_moves() {
    let mut project = two_seater();
    project.technical.engine.curve = None;
    assert_eq!(best(&project), None);
    let mut project = two_seater();
    project.technical.road.grade = Grade::from_percent(50.0).ok();
    let analysis = Analysis::from(&project);
    assert!(analysis.motion().is_ok());
    assert_eq!(analysis.best_shifts(0), None);
    assert_eq!(analysis.best_shifts(3), None);
}

proptest! {
    #[test]
    fn whatever_is_taken_lies_within_the_redline_in_tens_and_leaves_nothing_to_take(
        example in 0..EXAMPLES.len(),
        shift_share in 0.3..1.2_f64,
        redline_share in 0.5..1.3_f64,
        grade_percent in -10.0..30.0,
    ) {
        let mut project = EXAMPLES[example].project().unwrap();
        let redline_rpm = (project.engine.redline.rpm() * redline_share).round();
        project.engine.redline = rpm(redline_rpm);
        project.technical.road.grade = Grade::from_percent(grade_percent).ok();
        let project = edited(&project, SetEdit::ShiftAll(rpm((redline_rpm * shift_share).round())));
        if let Some(offered) = best(&project) {
            for (_, at) in &offered.changes {
                prop_assert!(at.rpm() <= redline_rpm && at.rpm() % 10.0 == 0.0, "{at:?}");
            }
            prop_assert_eq!(best(&edited(&project, offered.edit)), None);
        }
    }
}
