//! Single values of format 1: each reads into a valid value of the domain or fails where it stands.

use crate::gearing::{EngineSpeed, Label, Name, RoadSpeed, TextError};
use crate::project::document::Note;
use serde::{Deserialize, Serialize};

/// A number that is written whole where it is whole: `800`, not `800.0`.
#[derive(Clone, Copy, Deserialize)]
#[serde(transparent)]
pub(super) struct PlainNumber(pub(super) f64);

impl Serialize for PlainNumber {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        // Beyond 2^53 a whole f64 need not be the number that its digits say.
        if self.0.fract() == 0.0 && self.0.abs() < 9e15 {
            #[expect(clippy::cast_possible_truncation, reason = "whole and below 2^53")]
            serializer.serialize_i64(self.0 as i64)
        } else {
            serializer.serialize_f64(self.0)
        }
    }
}

macro_rules! file_number {
    ($Name:ident, $Domain:ident, $new:ident, $value:ident) => {
        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(try_from = "PlainNumber", into = "PlainNumber")]
        pub(super) struct $Name(pub(super) $Domain);

        impl TryFrom<PlainNumber> for $Name {
            type Error = crate::gearing::OutOfRange;

            fn try_from(number: PlainNumber) -> Result<Self, Self::Error> {
                $Domain::$new(number.0).map(Self)
            }
        }

        impl From<$Name> for PlainNumber {
            fn from(value: $Name) -> Self {
                Self(value.0.$value())
            }
        }
    };
}

pub(super) use file_number;

file_number!(Rpm, EngineSpeed, from_rpm, rpm);
// What was marked before there was a slowest road speed still opens, and is a finding.
file_number!(Kmh, RoadSpeed, from_kept_kmh, kmh);

macro_rules! file_text {
    ($Name:ident, $Domain:ident, $($Trait:ident),+) => {
        #[derive($($Trait,)+ Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub(super) struct $Name(pub(super) $Domain);

        impl TryFrom<String> for $Name {
            type Error = TextError;

            fn try_from(text: String) -> Result<Self, TextError> {
                $Domain::new(&text).map(Self)
            }
        }

        impl From<$Name> for String {
            fn from(value: $Name) -> Self {
                value.0.as_str().to_owned()
            }
        }
    };
}

file_text!(NameText, Name, Clone);
file_text!(LabelText, Label, Clone);
file_text!(NoteText, Note, Clone, Default);

impl NoteText {
    pub(super) fn is_empty(&self) -> bool {
        self.0.as_str().is_empty()
    }
}
