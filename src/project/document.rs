//! What is a project: everything somebody typed, every field of it valid.

use super::livery::Livery;
use super::technical::{SetTechnical, TechnicalData};
use super::write_up::WriteUp;
use crate::gearing::{
    EngineLimits, EngineSpeed, GearSet, Name, RoadSpeed, TextError, Tyre, quoted,
};
use crate::units::SpeedUnit;
use crate::workshop::Workshop;
use std::sync::Arc;

/// The document: a vehicle and one to three candidate gear sets.
#[derive(Debug, Clone, PartialEq)]
pub struct Project {
    /// What the project is called, where it is called anything.
    pub title: Option<Name>,
    /// A date as it was typed, printed in the write-up.
    pub date: Option<Name>,
    /// A note of any number of lines.
    pub note: Note,
    /// The unit of road speeds.
    pub units: SpeedUnit,
    /// The vehicle's tyre, for every set that has none of its own.
    pub tyre: Tyre,
    /// Idle, lowest useful engine speed and redline.
    pub engine: EngineLimits,
    /// Engine speeds at which road speeds are wanted.
    pub marked_engine_speeds: Marks<EngineSpeed>,
    /// Road speeds at which engine speeds are wanted.
    pub marked_road_speeds: Marks<RoadSpeed>,
    /// What is known of engine, vehicle, road and driving.
    pub technical: TechnicalData,
    /// The jobs of the bench.
    pub workshop: Workshop,
    /// What the write-up shows.
    pub write_up: WriteUp,
    /// The candidates.
    pub sets: Candidates,
}

// Every number in it is finite, so a project equals itself.
impl Eq for Project {}

impl Project {
    /// The tyre that a set stands on: its own, else the vehicle's.
    pub fn tyre_of(&self, set: &GearSet) -> Tyre {
        set.tyre.unwrap_or(self.tyre)
    }
}

/// Text of several lines, 4000 characters at most.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Note(String);

impl Note {
    /// The most characters it can have.
    pub const MOST_CHARACTERS: usize = 4000;

    /// The note without blank lines at its ends; line breaks are kept.
    ///
    /// # Errors
    /// When it is too long or holds control characters other than line breaks and tabs.
    pub fn new(text: &str) -> Result<Self, TextError> {
        let text = text.replace("\r\n", "\n");
        let length = text.chars().count();
        if length > Self::MOST_CHARACTERS {
            return Err(TextError::TooLong {
                what: "the note",
                most: Self::MOST_CHARACTERS,
                length,
                text: quoted(&text),
            });
        }
        if text
            .chars()
            .any(|c| c.is_control() && c != '\n' && c != '\t')
        {
            return Err(TextError::Control {
                what: "a line of the note",
                text: quoted(&text),
            });
        }
        Ok(Self(text.trim_end().to_owned()))
    }

    /// The text itself.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Up to eight marked speeds, each once, in rising order.
#[derive(Debug, Clone, PartialEq)]
pub struct Marks<T>(Vec<T>);

impl<T> Default for Marks<T> {
    /// No marks.
    fn default() -> Self {
        Self(Vec::new())
    }
}

/// More speeds than can be marked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("at most 8 speeds can be marked, not {0}")]
pub struct TooManyMarks(pub usize);

impl<T: Copy + PartialOrd> Marks<T> {
    /// The most speeds that can be marked.
    pub const MOST: usize = 8;

    /// The speeds in rising order, each once.
    ///
    /// # Errors
    /// When there are more than eight.
    pub fn new(mut speeds: Vec<T>) -> Result<Self, TooManyMarks> {
        speeds.sort_by(|a, b| a.partial_cmp(b).unwrap_or(std::cmp::Ordering::Equal));
        speeds.dedup();
        if speeds.len() > Self::MOST {
            return Err(TooManyMarks(speeds.len()));
        }
        Ok(Self(speeds))
    }

    /// The speeds in rising order.
    pub fn as_slice(&self) -> &[T] {
        &self.0
    }
}

/// Names one candidate for as long as the project is open, whatever its place or name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SetId(pub u32);

/// One candidate gear set of the project.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Its identity within the project.
    pub id: SetId,
    /// The gears, shared by every state of the document in which they are the same.
    pub set: Arc<GearSet>,
    /// Whether diagram and comparison show it.
    pub visible: bool,
    /// Its colour and dash, which no other candidate has and which stay with it.
    pub livery: Livery,
    /// What is known of its engine and its losses.
    pub technical: SetTechnical,
}

/// One to three candidates, one of which the others are compared with.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidates {
    list: Vec<Candidate>,
    baseline: usize,
}

impl<'a> IntoIterator for &'a Candidates {
    type Item = &'a Candidate;
    type IntoIter = std::slice::Iter<'a, Candidate>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

/// Why something is not a list of candidates.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum CandidatesError {
    /// None, or too many.
    #[error("a project has 1 to 3 gear sets, not {0}")]
    Count(usize),
    /// The baseline is not among them.
    #[error("the baseline is set {wanted}, but there are only {present}")]
    NoSuchBaseline {
        /// The baseline, counted from 1.
        wanted: usize,
        /// How many sets there are.
        present: usize,
    },
    /// The set is not there (any more).
    #[error("that gear set is not there any more")]
    NoSuchSet,
    /// Two of them have one livery.
    #[error(
        "set {set} has the livery {} of a set before it; give it another one, or leave it out",
        .livery.number()
    )]
    SameLivery {
        /// The later of the two, counted from 1.
        set: usize,
        /// What both have.
        livery: Livery,
    },
}

impl Candidates {
    /// The most candidates that are weighed at once.
    pub const MOST: usize = 3;

    /// Candidates with fresh identities, each visible or not, and liveries in their order; one of them
    /// (counted from 0) is the baseline.
    ///
    /// # Errors
    /// When there are none or more than three, or the baseline is not among them.
    pub fn new(sets: Vec<(GearSet, bool)>, baseline: usize) -> Result<Self, CandidatesError> {
        let sets = sets.into_iter();
        let sets = sets.map(|(set, visible)| (set, visible, None));
        Self::with_liveries(sets.collect(), baseline)
    }

    /// The same with liveries of their own; one without takes that of its place where no other has it,
    /// else the first that is free.
    ///
    /// # Errors
    /// Also when two have the same livery.
    pub fn with_liveries(
        sets: Vec<(GearSet, bool, Option<Livery>)>,
        baseline: usize,
    ) -> Result<Self, CandidatesError> {
        let wanted: Vec<Option<Livery>> = sets.iter().map(|(_, _, livery)| *livery).collect();
        let liveries = settled(&wanted)?;
        let sets = (1..).zip(sets.into_iter().zip(liveries));
        let list = sets.map(|(id, ((set, visible, _), livery))| Candidate {
            id: SetId(id),
            set: Arc::new(set),
            visible,
            livery,
            technical: SetTechnical::default(),
        });
        Self::checked(list.collect(), baseline)
    }

    fn checked(list: Vec<Candidate>, baseline: usize) -> Result<Self, CandidatesError> {
        let present = list.len();
        if !(1..=Self::MOST).contains(&present) {
            Err(CandidatesError::Count(present))
        } else if baseline >= present {
            Err(CandidatesError::NoSuchBaseline {
                wanted: baseline + 1,
                present,
            })
        } else {
            Ok(Self { list, baseline })
        }
    }

    /// These candidates with the technical data of each, in their order.
    #[must_use]
    pub fn with_technical(mut self, technical: Vec<SetTechnical>) -> Self {
        for (candidate, technical) in self.list.iter_mut().zip(technical) {
            candidate.technical = technical;
        }
        self
    }

    /// The candidates in their order.
    pub fn iter(&self) -> std::slice::Iter<'_, Candidate> {
        self.list.iter()
    }

    /// How many candidates there are: 1 to 3.
    #[expect(clippy::len_without_is_empty, reason = "there is always at least one")]
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// The set that the others are compared with.
    pub fn baseline(&self) -> &Candidate {
        &self.list[self.baseline]
    }

    /// The place of the baseline, counted from 0.
    pub fn baseline_place(&self) -> usize {
        self.baseline
    }

    /// The candidate of that identity.
    pub fn get(&self, id: SetId) -> Option<&Candidate> {
        self.list.iter().find(|c| c.id == id)
    }

    /// The place of a candidate, counted from 0.
    pub fn place(&self, id: SetId) -> Option<usize> {
        self.list.iter().position(|c| c.id == id)
    }

    /// These candidates with one changed.
    ///
    /// # Errors
    /// When the candidate is not there.
    pub(super) fn changed(
        &self,
        id: SetId,
        change: impl FnOnce(&mut Candidate),
    ) -> Result<Self, CandidatesError> {
        let place = self.place(id).ok_or(CandidatesError::NoSuchSet)?;
        let mut sets = self.clone();
        change(&mut sets.list[place]);
        Ok(sets)
    }

    /// These candidates with `set` behind the one of that identity, in the first livery that is free.
    ///
    /// It has the technical data of the one before it, since most candidates are variants of others.
    ///
    /// # Errors
    /// When the candidate is not there or there are three already.
    pub(super) fn with_after(&self, id: SetId, set: GearSet) -> Result<Self, CandidatesError> {
        let place = self.place(id).ok_or(CandidatesError::NoSuchSet)?;
        let fresh = self.list.iter().map(|c| c.id.0).max().unwrap_or(0) + 1;
        let taken: Vec<Livery> = self.list.iter().map(|c| c.livery).collect();
        let livery = Livery::first_free(&taken);
        let livery = livery.ok_or(CandidatesError::Count(self.list.len() + 1))?;
        let before = &self.list[place].technical;
        let technical = SetTechnical {
            efficiencies: before.efficiencies.of(&set),
            ..before.clone()
        };
        let mut list = self.list.clone();
        list.insert(
            place + 1,
            Candidate {
                id: SetId(fresh),
                set: Arc::new(set),
                visible: true,
                livery,
                technical,
            },
        );
        let baseline = self.baseline + usize::from(self.baseline > place);
        Self::checked(list, baseline)
    }

    /// These candidates without one; the first becomes the baseline where the baseline goes.
    ///
    /// # Errors
    /// When the candidate is not there or it is the last.
    pub(super) fn without(&self, id: SetId) -> Result<Self, CandidatesError> {
        let place = self.place(id).ok_or(CandidatesError::NoSuchSet)?;
        let mut list = self.list.clone();
        list.remove(place);
        let baseline = match self.baseline {
            at if at == place => 0,
            at => at - usize::from(at > place),
        };
        Self::checked(list, baseline)
    }

    /// Those of the candidates that are wanted, all of them visible and without technical data; the first
    /// of them is the baseline where that is not among them.
    ///
    /// # Errors
    /// When none is wanted.
    pub(super) fn only(&self, wanted: impl Fn(SetId) -> bool) -> Result<Self, CandidatesError> {
        let kept = self.list.iter().filter(|c| wanted(c.id));
        let list: Vec<Candidate> = kept
            .map(|candidate| Candidate {
                visible: true,
                ..candidate.clone()
            })
            .collect();
        let baseline = self.baseline().id;
        let place = list.iter().position(|c| c.id == baseline).unwrap_or(0);
        Self::checked(list, place)
    }

    /// These candidates with one moved to another place, counted from 0.
    ///
    /// # Errors
    /// When the candidate or the place is not there.
    pub(super) fn moved(&self, id: SetId, to: usize) -> Result<Self, CandidatesError> {
        let from = self.place(id).ok_or(CandidatesError::NoSuchSet)?;
        if to >= self.list.len() {
            return Err(CandidatesError::NoSuchSet);
        }
        let baseline = self.baseline().id;
        let mut sets = self.clone();
        let candidate = sets.list.remove(from);
        sets.list.insert(to, candidate);
        sets.baseline = sets.place(baseline).unwrap_or(0);
        Ok(sets)
    }

    /// These candidates compared with another one.
    ///
    /// # Errors
    /// When the candidate is not there.
    pub(super) fn compared_with(&self, id: SetId) -> Result<Self, CandidatesError> {
        let baseline = self.place(id).ok_or(CandidatesError::NoSuchSet)?;
        Ok(Self {
            baseline,
            ..self.clone()
        })
    }
}

/// A livery for each of the candidates, those that they want as they are.
fn settled(wanted: &[Option<Livery>]) -> Result<Vec<Livery>, CandidatesError> {
    if wanted.len() > Candidates::MOST {
        return Err(CandidatesError::Count(wanted.len()));
    }
    for (place, livery) in wanted.iter().enumerate() {
        if let Some(livery) = *livery
            && wanted[..place].contains(&Some(livery))
        {
            let set = place + 1;
            return Err(CandidatesError::SameLivery { set, livery });
        }
    }
    let of_place = |(place, livery): (usize, &Option<Livery>)| {
        let own = Livery::of_place(place).filter(|own| !wanted.contains(&Some(*own)));
        livery.or(own)
    };
    let mut settled: Vec<Option<Livery>> = wanted.iter().enumerate().map(of_place).collect();
    for place in 0..settled.len() {
        if settled[place].is_none() {
            let taken: Vec<Livery> = settled.iter().copied().flatten().collect();
            settled[place] = Livery::first_free(&taken);
        }
    }
    // There are as many as candidates at most, so each has one.
    Ok(settled.into_iter().flatten().collect())
}
