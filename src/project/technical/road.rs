//! What a vehicle carries and pulls, and the road that it is on.

use crate::motion::{AddedMass, Grade, Headwind, LoadCase, Trailer};

/// The load case and the road.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RoadData {
    /// What is carried.
    pub load: Option<AddedMass>,
    /// What is pulled.
    pub trailer: Option<Trailer>,
    /// Wind from ahead.
    pub headwind: Option<Headwind>,
    /// How steep the road is.
    pub grade: Option<Grade>,
}

impl RoadData {
    /// The load case; what is absent is nothing, or still air.
    pub fn load_case(&self) -> LoadCase {
        LoadCase {
            extra: self.load.unwrap_or(AddedMass::NONE),
            trailer: self.trailer,
            headwind: self.headwind.unwrap_or(Headwind::NONE),
        }
    }
}
