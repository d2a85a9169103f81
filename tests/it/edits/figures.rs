//! Do the figures follow every edit, and is what an edit does not touch carried over?

use super::{FIRST, SECOND, candidate, every_edit, of_first, start};
use crate::support::gear_sets::{name, ratio, rpm};
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::Charts;
use layshaft::gearing::{GearId, RoadSpeed, SetResults, parse_tyre};
use layshaft::motion::Grade;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, History, Marks, Note, Project, RoadData, SetEdit, View};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use std::ptr::from_ref;
use std::sync::Arc;

/// A document with its figures, as they follow its history.
struct Followed {
    history: History,
    analysis: Analysis,
}

impl Followed {
    fn new() -> Self {
        let history = History::new(start());
        let analysis = Analysis::of(history.snapshot());
        Self { history, analysis }
    }

    fn edit(&mut self, edit: &Edit) {
        self.history.edit(edit).unwrap();
        self.analysis.follow(&self.history.snapshot());
    }

    fn undo(&mut self) {
        self.history.undo();
        self.analysis.follow(&self.history.snapshot());
    }

    /// The figures of each set, asked for now.
    fn sets(&self) -> Vec<Arc<SetResults>> {
        self.analysis.results().sets.clone()
    }
}

fn shift() -> Edit {
    of_first(SetEdit::Shift(GearId(3), rpm(5900.0)))
}

/// For each set, whether its figures are the very same as before.
fn carried_over(before: &[Arc<SetResults>], after: &[Arc<SetResults>]) -> Vec<bool> {
    let pairs = before.iter().zip(after);
    pairs.map(|(a, b)| Arc::ptr_eq(a, b)).collect()
}

#[test]
fn typing_a_note_computes_nothing() {
    let mut followed = Followed::new();
    let mut charts = Charts::of(followed.analysis.clone());
    let before = followed.sets();
    let scenes = |charts: &Charts| View::ALL.map(|view| from_ref(charts.scene(view)));
    let looked_at = (scenes(&charts), from_ref(charts.table()));
    for edit in [
        Edit::Note(Note::new("typed").unwrap()),
        Edit::Title(Some(name("typed"))),
    ] {
        followed.edit(&edit);
        charts.follow(&followed.history.snapshot());
        assert_eq!(carried_over(&before, &followed.sets()), [true, true]);
        assert_eq!(looked_at, (scenes(&charts), from_ref(charts.table())));
    }
}

#[test]
fn an_edit_computes_the_sets_that_it_touches() {
    let tyre = parse_tyre("205/70 R14").unwrap();
    for (edit, carried) in [
        (shift(), [false, true]),
        (
            Edit::Set(SECOND, SetEdit::FinalDrive(0, ratio(3.9).into())),
            [true, false],
        ),
        (Edit::Redline(rpm(6000.0)), [false, false]),
        (Edit::Tyre(tyre), [false, false]),
        (Edit::Visible(FIRST, false), [true, true]),
        (Edit::Baseline(SECOND), [true, true]),
    ] {
        let mut followed = Followed::new();
        let before = followed.sets();
        followed.edit(&edit);
        let after = carried_over(&before, &followed.sets());
        assert_eq!(after, carried, "{edit:?}");
    }
}

#[test]
fn another_tyre_on_the_vehicle_leaves_a_set_with_its_own() {
    let mut followed = Followed::new();
    let tyre = followed.history.project().tyre;
    followed.edit(&of_first(SetEdit::Tyre(Some(tyre))));
    let before = followed.sets();
    followed.edit(&Edit::Tyre(parse_tyre("205/70 R14").unwrap()));
    assert_eq!(carried_over(&before, &followed.sets()), [true, false]);
}

#[test]
fn a_set_that_moves_takes_its_figures_along() {
    let mut followed = Followed::new();
    let mut before = followed.sets();
    followed.edit(&Edit::MoveSet(FIRST, 1));
    before.reverse();
    assert_eq!(carried_over(&before, &followed.sets()), [true, true]);
}

#[test]
fn what_was_undone_before_anybody_looked_was_never_computed() {
    let mut followed = Followed::new();
    let before = followed.sets();
    followed.edit(&shift());
    followed.edit(&Edit::Redline(rpm(6000.0)));
    followed.undo();
    followed.undo();
    assert_eq!(carried_over(&before, &followed.sets()), [true, true]);
}

#[test]
fn other_positions_are_computed_once_and_carried_over_like_the_set() {
    let mut followed = Followed::new();
    let others = |followed: &Followed| {
        let project = followed.history.project();
        let shown = followed.analysis.results().other_positions(project, 0);
        (shown.as_ptr(), shown.len())
    };
    assert_eq!(others(&followed).1, 0);
    followed.edit(&of_first(SetEdit::StageShowsOthers(0, true)));
    let shown = others(&followed);
    assert_eq!(shown.1, 1);
    assert_eq!(others(&followed), shown);
    followed.edit(&Edit::Set(SECOND, SetEdit::Name(name("another"))));
    assert_eq!(others(&followed), shown);
    followed.edit(&shift());
    assert_ne!(others(&followed).0, shown.0);
}

#[test]
fn a_copy_of_an_analysis_shares_what_is_known() {
    let followed = Followed::new();
    let known = followed.sets();
    let copy = followed.analysis.clone();
    assert_eq!(carried_over(&known, &copy.results().sets), [true, true]);
}

#[test]
fn an_edit_of_one_set_copies_no_other() {
    let before = start();
    let after = shift().applied_to(&before).unwrap();
    let is_shared = |id| Arc::ptr_eq(&candidate(&before, id).set, &candidate(&after, id).set);
    assert_eq!((is_shared(FIRST), is_shared(SECOND)), (false, true));
}

/// All that is shown of a document.
fn shown(charts: &Charts) -> String {
    let scenes = View::ALL.map(|view| charts.scene(view));
    format!("{scenes:?} {:?}", charts.table())
}

fn fresh(project: &Project) -> Charts {
    Charts::of(Analysis::of(project.clone()))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn what_follows_from_any_edits_is_what_the_document_alone_gives(
        edits in vec((select(every_edit()), any::<bool>()), 1..12),
    ) {
        let mut followed = Followed::new();
        let mut charts = Charts::of(followed.analysis.clone());
        for (edit, is_looked_at) in &edits {
            // An edit may be refused where an earlier one has taken its part away.
            drop(followed.history.preview(edit));
            followed.history.commit();
            let now = followed.history.snapshot();
            followed.analysis.follow(&now);
            charts.follow(&now);
            if *is_looked_at {
                prop_assert_eq!(followed.analysis.results(), &ProjectResults::of(&now));
                prop_assert_eq!(shown(&charts), shown(&fresh(&now)), "after {:?}", edit);
            }
        }
    }
}

#[test]
fn what_is_strange_is_what_is_strange_of_the_document_as_it_stands() {
    for example in &EXAMPLES {
        let project = example.project().unwrap();
        let first = project.sets.iter().next().unwrap().id;
        let steep = RoadData {
            grade: Grade::from_percent(45.0).ok(),
            ..project.technical.road.clone()
        };
        let fast = RoadSpeed::from_kmh(300.0).unwrap();
        let edits = [
            Edit::Set(first, SetEdit::ShiftAll(rpm(2500.0))),
            Edit::MarkedRoadSpeeds(Marks::new(vec![fast]).unwrap()),
            Edit::RoadData(steep),
            Edit::Set(first, SetEdit::FinalDrive(0, ratio(2.0).into())),
            Edit::Set(first, SetEdit::ShiftAll(rpm(2400.0))),
            Edit::EngineData(Box::default()),
        ];
        let mut history = History::new(project);
        let mut analysis = Analysis::of(history.snapshot());
        for edit in edits {
            analysis.findings();
            history.edit(&edit).unwrap();
            analysis.follow(&history.snapshot());
            let anew = Analysis::of(history.snapshot());
            assert_eq!(analysis.findings(), anew.findings(), "{edit:?}");
        }
    }
}
