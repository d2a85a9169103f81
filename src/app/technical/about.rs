//! What a row of technical data is about: a document, and in it the vehicle or one set.

use crate::app::drafts::{CellId, SetCell};
use crate::project::{Edit, EngineData, Project, SetId};

use super::cells::TechnicalCell;

/// Whose engine it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(in crate::app) enum Whose {
    /// That of the vehicle, for every set without one of its own.
    Vehicles,
    /// A set's own.
    Sets(SetId),
}

impl Whose {
    /// The field of the vehicle, or that of the set: of its engine, or of what is checked.
    pub(in crate::app) fn field(self, cell: TechnicalCell) -> CellId {
        match self {
            Self::Vehicles => CellId::Technical(cell),
            Self::Sets(set) if cell.is_of_checks() => CellId::Set(set, SetCell::Check(cell)),
            Self::Sets(set) => CellId::Set(set, SetCell::Engine(cell)),
        }
    }
}

/// What rows are about.
#[derive(Debug, Clone, Copy)]
pub(super) struct About<'a> {
    /// The document.
    pub project: &'a Project,
    /// Whose engine.
    pub whose: Whose,
}

impl<'a> About<'a> {
    /// The vehicle of a document.
    pub(super) fn vehicle_of(project: &'a Project) -> Self {
        let whose = Whose::Vehicles;
        Self { project, whose }
    }

    /// The engine: of a set without one of its own that of the vehicle.
    pub(super) fn engine(self) -> &'a EngineData {
        let technical = &self.project.technical;
        let own = match self.whose {
            Whose::Vehicles => None,
            Whose::Sets(set) => self.project.sets.get(set),
        };
        own.map_or(&technical.engine, |candidate| {
            technical.engine_of(&candidate.technical)
        })
    }

    /// The edit that changes the data of the engine.
    pub(super) fn engine_with(self, change: impl FnOnce(&mut EngineData)) -> Edit {
        let mut engine = Box::new(self.engine().clone());
        change(&mut engine);
        match self.whose {
            Whose::Vehicles => Edit::EngineData(engine),
            Whose::Sets(set) => Edit::OwnEngine(set, Some(engine)),
        }
    }

    /// What something is called by those who hear it, to tell it from other engines'.
    pub(super) fn named(self, what: &str) -> String {
        let place = match self.whose {
            Whose::Vehicles => None,
            Whose::Sets(set) => self.project.sets.place(set),
        };
        match place {
            None => what.to_owned(),
            Some(place) => format!("{what}, set {}", place + 1),
        }
    }
}
