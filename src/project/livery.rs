//! By what is a gear set known again? By its colour and its dash, whatever its place in the list.

use std::fmt::{self, Display};

/// The colour and dash of a gear set, one of three; no two sets of a project have the same.
///
/// Which colour and which dash that is, the palette says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Livery {
    /// That of a set which is alone.
    First,
    /// That of the set which comes next.
    Second,
    /// The last there is.
    Third,
}

impl Livery {
    /// All liveries, in the order in which sets take them.
    pub const ALL: [Self; 3] = [Self::First, Self::Second, Self::Third];

    /// Its number, from 1 to 3.
    pub fn number(self) -> usize {
        self as usize + 1
    }

    /// The livery of a number from 1 to 3; none for any other.
    pub fn from_number(number: usize) -> Option<Self> {
        Self::ALL.into_iter().find(|own| own.number() == number)
    }

    /// The livery of a set at that place, counted from 0, while liveries are in the order of the sets.
    pub fn of_place(place: usize) -> Option<Self> {
        Self::from_number(place + 1)
    }

    /// The first that none of the others has.
    pub(super) fn first_free(taken: &[Self]) -> Option<Self> {
        Self::ALL.into_iter().find(|livery| !taken.contains(livery))
    }
}

impl Display for Livery {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::First => "the first",
            Self::Second => "the second",
            Self::Third => "the third",
        })
    }
}
