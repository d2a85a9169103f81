//! What gears were typed as in this window, as far as the document cannot tell: an overall ratio, a
//! road speed, a tooth pair in one order or the other.
//!
//! What was typed stands while the document agrees with it: whatever is undone, pasted or swapped, a
//! gear with another ratio was typed as nothing, and what comes back by redoing stands again.

use crate::gearing::{GearId, PairOrder, Ratio};
use crate::project::{Figure, Project, SetId, TypedFigure};

/// What was typed for one gear.
#[derive(Debug, Clone, PartialEq)]
pub enum TypedAs {
    /// A figure that stays when what is behind the gear changes.
    Figure(Figure),
    /// A tooth pair in that order, which came to that ratio.
    Pair(PairOrder, Ratio),
}

/// What the gears of a document were typed as, the latest last.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct TypedGears(Vec<TypedGear>);

#[derive(Debug, Clone, PartialEq)]
struct TypedGear {
    set: SetId,
    gear: GearId,
    typed_as: TypedAs,
    /// Whether its typing still goes on: a further letter makes it another one.
    is_open: bool,
}

impl TypedGear {
    /// The figure that was typed, if it was one.
    fn figure(&self) -> Option<TypedFigure> {
        match self.typed_as {
            TypedAs::Figure(figure) => Some(TypedFigure {
                set: self.set,
                gear: self.gear,
                figure,
            }),
            TypedAs::Pair(..) => None,
        }
    }
}

impl TypedGears {
    /// Remembers what was typed; `goes_on` while the typing has not ended.
    pub(super) fn remember(&mut self, set: SetId, gear: GearId, typed_as: TypedAs, goes_on: bool) {
        let is_same = |of: &TypedGear| (of.set, of.gear, &of.typed_as) == (set, gear, &typed_as);
        self.0.retain(|of| !of.is_open && !is_same(of));
        self.0.push(TypedGear {
            set,
            gear,
            typed_as,
            is_open: goes_on,
        });
    }

    /// Notes that no typing goes on: what it came to is what was typed.
    pub(super) fn settle(&mut self) {
        self.0.iter_mut().for_each(|of| of.is_open = false);
    }

    /// Forgets what a typing came to that was taken back.
    pub(super) fn take_back(&mut self) {
        self.0.retain(|of| !of.is_open);
    }

    /// Forgets all figures: ratios stand as they are from now on.
    pub(super) fn forget_figures(&mut self) {
        self.0.retain(|of| of.figure().is_none());
    }

    /// Forgets what was typed in a set: it holds other gears now.
    pub(super) fn forget_set(&mut self, set: SetId) {
        self.0.retain(|of| of.set != set);
    }

    /// Forgets the sets and gears that are gone: what comes next under their identity is another one.
    pub(super) fn keep_to(&mut self, project: &Project) {
        let is_there = |of: &TypedGear| {
            let set = project.sets.get(of.set).map(|candidate| &candidate.set);
            set.is_some_and(|set| set.ratio_of(of.gear).is_some())
        };
        self.0.retain(is_there);
    }

    /// All figures that were typed, the latest first.
    pub(super) fn figures(&self) -> Vec<TypedFigure> {
        self.0.iter().rev().filter_map(TypedGear::figure).collect()
    }

    /// The figure that was typed for a gear, if it still holds.
    pub(super) fn figure_of(&self, project: &Project, set: SetId, gear: GearId) -> Option<Figure> {
        let figures = self.0.iter().rev().filter_map(TypedGear::figure);
        let mut of_gear = figures.filter(|typed| (typed.set, typed.gear) == (set, gear));
        let holding = of_gear.find(|typed| typed.holds_in(project))?;
        Some(holding.figure)
    }

    /// The order in which the tooth pair of a gear was typed, if this is the one.
    pub(super) fn order_of(&self, set: SetId, gear: GearId, ratio: &Ratio) -> Option<PairOrder> {
        let mut of_gear = self.0.iter().rev();
        of_gear.find_map(|of| match &of.typed_as {
            TypedAs::Pair(order, typed) if (of.set, of.gear) == (set, gear) && typed == ratio => {
                Some(*order)
            }
            TypedAs::Pair(..) | TypedAs::Figure(_) => None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;
    use crate::project::{Edit, SetEdit};

    /// The first example, its first set and the first gear of that.
    fn first_gear() -> (Project, SetId, GearId) {
        let project = EXAMPLES[0].project().unwrap();
        let first = project.sets.iter().next().unwrap();
        let at = (first.id, first.set.gears[0].id);
        (project, at.0, at.1)
    }

    fn overall(overall: f64) -> TypedAs {
        TypedAs::Figure(Figure::Overall(overall))
    }

    fn figures(typed: &TypedGears) -> Vec<Figure> {
        typed.figures().iter().map(|typed| typed.figure).collect()
    }

    #[test]
    fn of_one_typing_the_last_letter_counts_and_of_several_all() {
        let (_, set, gear) = first_gear();
        let mut typed = TypedGears::default();
        typed.remember(set, gear, overall(1.0), true);
        typed.remember(set, gear, overall(15.0), true);
        typed.settle();
        typed.remember(set, gear, overall(16.0), true);
        typed.settle();
        let latest_first = [Figure::Overall(16.0), Figure::Overall(15.0)];
        assert_eq!(figures(&typed), latest_first);
        typed.remember(set, gear, overall(17.0), true);
        typed.take_back();
        assert_eq!(figures(&typed), latest_first, "what was taken back");
        typed.remember(set, gear, overall(15.0), false);
        assert_eq!(figures(&typed).len(), 2, "the same figure is one");
    }

    #[test]
    fn a_figure_counts_while_the_document_agrees_with_it() {
        let (project, set, gear) = first_gear();
        let figure = Figure::Overall(15.2);
        let mut typed = TypedGears::default();
        typed.remember(set, gear, TypedAs::Figure(figure), false);
        assert_eq!(typed.figure_of(&project, set, gear), None);
        let of_set = &project.sets.get(set).unwrap().set;
        let ratio = figure.ratio_in(of_set, gear, &project.tyre);
        let edit = Edit::Set(set, SetEdit::Ratio(gear, ratio.unwrap().unwrap()));
        let agreeing = edit.applied_to(&project).unwrap();
        assert_eq!(typed.figure_of(&agreeing, set, gear), Some(figure));
        assert_eq!(typed.figure_of(&agreeing, set, GearId(99)), None);
        typed.forget_figures();
        assert_eq!(typed.figure_of(&agreeing, set, gear), None);
    }

    #[test]
    fn an_order_is_known_for_the_very_ratio_that_was_typed() {
        let (_, set, gear) = first_gear();
        let ratio = |number: f64| Ratio::from_number(number).unwrap();
        let mut typed = TypedGears::default();
        let pair = TypedAs::Pair(PairOrder::DrivingFirst, ratio(3.5));
        typed.remember(set, gear, pair, false);
        let known = Some(PairOrder::DrivingFirst);
        assert_eq!(typed.order_of(set, gear, &ratio(3.5)), known);
        assert_eq!(typed.order_of(set, gear, &ratio(3.4)), None);
        typed.forget_figures();
        assert_eq!(typed.order_of(set, gear, &ratio(3.5)), known);
        typed.forget_set(set);
        assert_eq!(typed.order_of(set, gear, &ratio(3.5)), None);
    }

    #[test]
    fn what_was_typed_for_a_gear_that_is_gone_is_forgotten() {
        let (project, set, gear) = first_gear();
        let mut typed = TypedGears::default();
        typed.remember(set, gear, overall(15.2), false);
        typed.keep_to(&project);
        assert_eq!(figures(&typed).len(), 1);
        let without = Edit::Set(set, SetEdit::RemoveGear(gear)).applied_to(&project);
        typed.keep_to(&without.unwrap());
        assert!(figures(&typed).is_empty());
    }
}
