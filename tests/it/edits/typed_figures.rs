//! Do overall ratios and road speeds stay as they were typed, whatever changes behind the gears?

use super::{every_edit, start};
use crate::support::gear_sets::ratio;
use layshaft::gearing::{GearId, Ratio, SetResults, parse_ratio, read_reduction};
use layshaft::project::{Candidate, Edit, Figure, History, Project, SetEdit, SetId, TypedFigure};
use layshaft::units::SpeedUnit;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

/// A figure as somebody types it: its digits and how many of them are decimals.
#[derive(Debug, Clone, Copy)]
struct Digits(u32, u32);

impl Digits {
    fn number(self) -> f64 {
        f64::from(self.0) / 10_f64.powi(i32::try_from(self.1).unwrap())
    }

    /// Whether a number shown to as many decimals is this.
    fn are_of(self, number: f64) -> bool {
        let decimals = self.1 as usize;
        format!("{number:.decimals$}") == format!("{:.decimals$}", self.number())
    }
}

/// What is typed for the gears: overall ratios, or road speeds in a unit.
#[derive(Debug, Clone, Copy)]
enum Form {
    Overall,
    Speed(SpeedUnit),
}

impl Form {
    fn figure(self, number: f64) -> Figure {
        match self {
            Self::Overall => Figure::Overall(number),
            Self::Speed(unit) => Figure::SpeedPer1000(number, unit),
        }
    }

    /// What the document says in this form.
    fn shown(self, project: &Project, set: SetId, gear: GearId) -> f64 {
        let set = &project.sets.get(set).unwrap().set;
        let results = SetResults::of(set, &project.tyre, &project.engine);
        let gear = match gear {
            GearId::REVERSE => results.reverse.as_ref(),
            forward => results.gears.iter().find(|g| g.gear.id == forward),
        };
        let gear = gear.unwrap();
        match self {
            Self::Overall => gear.gear.overall_ratio,
            Self::Speed(unit) => unit.from_kmh(gear.speed_per_1000_rpm_kmh),
        }
    }
}

/// What somebody does once the figures are typed.
#[derive(Debug, Clone)]
enum Deed {
    Edit(Edit),
    /// A final drive typed letter by letter, and kept or taken back.
    TypeFinalDrive(SetId, usize, &'static str, bool),
    Undo,
    Redo,
}

/// Every gear of the project, forward and reverse.
fn gears(project: &Project) -> Vec<(SetId, GearId)> {
    let of = |candidate: &Candidate| {
        let forward = candidate.set.gears.iter().map(|gear| gear.id);
        let reverse = candidate.set.reverse.iter().map(|_| GearId::REVERSE);
        let id = candidate.id;
        let all: Vec<_> = forward.chain(reverse).map(|gear| (id, gear)).collect();
        all
    };
    project.sets.iter().flat_map(of).collect()
}

fn ratio_of(project: &Project, (set, gear): (SetId, GearId)) -> Option<Ratio> {
    project.sets.get(set)?.set.ratio_of(gear).cloned()
}

/// The edits that leave every gear there with its own ratio.
fn edits_behind_the_gears() -> Vec<Edit> {
    let before = start();
    let leaves_gears = |edit: &Edit| {
        let after = edit.applied_to(&before).unwrap();
        let mut all = gears(&before).into_iter();
        all.all(|gear| ratio_of(&after, gear) == ratio_of(&before, gear))
    };
    every_edit().into_iter().filter(leaves_gears).collect()
}

fn deed() -> impl Strategy<Value = Deed> {
    const TEXTS: &[&str] = &["4.875", "37:9", "9x41", "3,08:1", "12", "0.004", "4O1"];
    let typing = (1_u32..=2, 0_usize..3, select(TEXTS), any::<bool>());
    prop_oneof![
        4 => select(edits_behind_the_gears()).prop_map(Deed::Edit),
        3 => typing.prop_map(|(set, at, text, is_kept)| {
            Deed::TypeFinalDrive(SetId(set), at, text, is_kept)
        }),
        1 => Just(Deed::Undo),
        1 => Just(Deed::Redo),
    ]
}

fn form() -> impl Strategy<Value = Form> {
    select(
        &[
            Form::Overall,
            Form::Speed(SpeedUnit::Kmh),
            Form::Speed(SpeedUnit::Mph),
        ][..],
    )
}

/// A project with every figure typed that can be.
fn typed(form: Form, digits: &[Digits]) -> (Project, Vec<(TypedFigure, Digits)>) {
    let mut project = start();
    let mut typed = Vec::new();
    for ((set, gear), digits) in gears(&project).into_iter().zip(digits) {
        let figure = form.figure(digits.number());
        let of_set = &project.sets.get(set).unwrap().set;
        if let Some(Ok(ratio)) = figure.ratio_in(of_set, gear, &project.tyre) {
            let edit = Edit::Set(set, SetEdit::Ratio(gear, ratio));
            project = edit.applied_to(&project).unwrap();
            typed.push((TypedFigure { set, gear, figure }, *digits));
        }
    }
    (project, typed)
}

/// Does it as the window would, and looks at the document after every letter.
fn perform(
    history: &mut History,
    deed: &Deed,
    figures: &[TypedFigure],
    look: &mut dyn FnMut(&Project),
) {
    // What is refused leaves everything as it was.
    match deed {
        Deed::Edit(edit) => drop(history.edit(&edit.clone().keeping(figures.to_vec()))),
        Deed::TypeFinalDrive(set, at, text, is_kept) => {
            for (end, letter) in text.char_indices() {
                let text = &text[..end + letter.len_utf8()];
                let read = parse_ratio(text).map(|typed| read_reduction(&typed));
                let edit =
                    read.map(|ratio| Edit::Set(*set, SetEdit::FinalDrive(*at, ratio.into())));
                let is_shown = edit.is_ok_and(|edit| {
                    let edit = edit.keeping(figures.to_vec());
                    history.preview(&edit).is_ok()
                });
                if !is_shown {
                    history.cancel();
                }
                look(history.project());
            }
            if *is_kept {
                history.commit();
            } else {
                history.cancel();
            }
        }
        Deed::Undo => history.undo(),
        Deed::Redo => history.redo(),
    }
    look(history.project());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn a_typed_figure_shows_its_digits_whatever_changes_behind_the_gear(
        form in form(),
        digits in vec((1_u32..60_000, 0_u32..=4).prop_map(|(n, d)| Digits(n, d)), 10),
        deeds in vec(deed(), 1..30),
    ) {
        let (project, typed) = typed(form, &digits);
        let figures: Vec<TypedFigure> = typed.iter().map(|(figure, _)| *figure).collect();
        let mut history = History::new(project);
        let mut lost = None;
        for deed in &deeds {
            perform(&mut history, deed, &figures, &mut |project| {
                for (figure, digits) in &typed {
                    let shown = form.shown(project, figure.set, figure.gear);
                    if !digits.are_of(shown) || !figure.holds_in(project) {
                        lost.get_or_insert((*figure, *digits, shown));
                    }
                }
            });
            prop_assert_eq!(lost.map(|lost| format!("{lost:?}")), None, "after {:?}", deed);
        }
    }

    #[test]
    fn a_gear_that_was_not_typed_keeps_its_own_ratio(deeds in vec(deed(), 1..30)) {
        let all: Vec<TypedFigure> = gears(&start())
            .into_iter()
            .map(|(set, gear)| TypedFigure { set, gear, figure: Figure::Overall(15.2) })
            .collect();
        let mut history = History::new(start());
        for deed in &deeds {
            perform(&mut history, deed, &all, &mut |_| {});
            for gear in gears(&start()) {
                prop_assert_eq!(ratio_of(history.project(), gear), ratio_of(&start(), gear));
            }
        }
    }
}

#[test]
fn an_edit_of_a_gears_own_ratio_lets_its_figure_go_and_the_others_stay() {
    let (project, typed) = typed(Form::Overall, &[Digits(152, 1); 10]);
    let figures: Vec<TypedFigure> = typed.iter().map(|(figure, _)| *figure).collect();
    let first = figures[0];
    let edit = Edit::Set(first.set, SetEdit::Ratio(first.gear, ratio(7.0)));
    let after = edit.keeping(figures.clone()).applied_to(&project).unwrap();
    assert_eq!(ratio_of(&after, (first.set, first.gear)), Some(ratio(7.0)));
    assert!(!first.holds_in(&after));
    assert!(figures[1..].iter().all(|figure| figure.holds_in(&after)));
}
