//! What of a project a picture shows: that much goes along with it, and no more.

use super::document::{Note, Project, SetId};
use super::write_up::{Drops, WriteUp};
use crate::workshop::Workshop;
use std::collections::BTreeSet;

impl Project {
    /// The project as far as a picture with these sets shows it; none where none of them is there.
    ///
    /// Sets that are not shown are not in it, nor is a note that the picture leaves out. Where the
    /// baseline is not shown, the first of the shown sets takes its place.
    pub fn as_shown(&self, shown: &[SetId]) -> Option<Self> {
        let sets = self.sets.only(|id| shown.contains(&id)).ok()?;
        let choices = &self.write_up;
        let note = if choices.with_note {
            self.note.clone()
        } else {
            Note::default()
        };
        let drops = match choices.drops {
            Drops::Of(set) if sets.get(set).is_none() => Drops::Usual,
            drops => drops,
        };
        let technical = self.technical.among(&sets).shown_in(&choices.views);
        let of_sets = sets.iter();
        let of_sets = of_sets.map(|set| set.technical.shown_in(&choices.views));
        let of_sets = of_sets.collect();
        let sets = sets.with_technical(of_sets);
        // Every part is named, so that a new one is not given away unasked.
        Some(Self {
            title: self.title.clone(),
            date: self.date.clone(),
            note,
            units: self.units,
            tyre: self.tyre,
            engine: self.engine,
            marked_engine_speeds: self.marked_engine_speeds.clone(),
            marked_road_speeds: self.marked_road_speeds.clone(),
            technical,
            // No picture of the gear sets shows any of it.
            workshop: Workshop::default(),
            write_up: WriteUp {
                left_out: BTreeSet::new(),
                drops,
                ..choices.clone()
            },
            sets,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;

    fn camper_van() -> Project {
        EXAMPLES[0].project().unwrap()
    }

    fn id(project: &Project, place: usize) -> SetId {
        project.sets.iter().nth(place).unwrap().id
    }

    #[test]
    fn a_set_that_is_not_shown_is_not_in_it_and_the_first_shown_one_is_the_baseline() {
        let project = camper_van();
        let [first, second, third] = [0, 1, 2].map(|place| id(&project, place));
        assert_eq!(project.sets.baseline().id, first);
        let shown = project.as_shown(&[third, second]).unwrap();
        let ids: Vec<SetId> = shown.sets.iter().map(|c| c.id).collect();
        assert_eq!(ids, [second, third]);
        assert_eq!(shown.sets.baseline().id, second);
        let shown = project.as_shown(&[first, third]).unwrap();
        assert_eq!(shown.sets.baseline().id, first);
    }

    #[test]
    fn choices_about_sets_that_are_not_shown_go_with_them() {
        let mut project = camper_van();
        let [first, second, third] = [0, 1, 2].map(|place| id(&project, place));
        project.write_up.left_out = BTreeSet::from([second]);
        project.write_up.drops = Drops::Of(second);
        let shown = project.as_shown(&[first, third]).unwrap();
        assert_eq!(shown.write_up, WriteUp::default());
        project.write_up.drops = Drops::Of(third);
        let shown = project.as_shown(&[first, third]).unwrap();
        assert_eq!(shown.write_up.drops, Drops::Of(third));
    }

    #[test]
    fn a_note_goes_along_only_where_it_is_shown() {
        let mut project = camper_van();
        project.note = Note::new("not for everybody").unwrap();
        let first = id(&project, 0);
        assert_eq!(project.as_shown(&[first]).unwrap().note, project.note);
        project.write_up.with_note = false;
        assert_eq!(project.as_shown(&[first]).unwrap().note, Note::default());
    }

    #[test]
    fn without_a_shown_set_there_is_nothing() {
        assert_eq!(camper_van().as_shown(&[]), None);
        assert_eq!(camper_van().as_shown(&[SetId(99)]), None);
    }
}
