//! The livery of a set in format 2: a number from 1 to 3.

use crate::project::livery::Livery;
use serde::{Deserialize, Serialize};

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "usize", into = "usize")]
pub(crate) struct LiveryNumber(pub(crate) Livery);

/// A number that no livery has.
#[derive(Debug, thiserror::Error)]
#[error("a set's livery, its colour and dash, is 1, 2 or 3, not {0}")]
pub(crate) struct NoSuchLivery(usize);

impl TryFrom<usize> for LiveryNumber {
    type Error = NoSuchLivery;

    fn try_from(number: usize) -> Result<Self, NoSuchLivery> {
        let livery = Livery::from_number(number);
        livery.map(Self).ok_or(NoSuchLivery(number))
    }
}

impl From<LiveryNumber> for usize {
    fn from(number: LiveryNumber) -> Self {
        number.0.number()
    }
}
