//! Single values: each reads into a valid value of the domain or fails where it stands.

use crate::gearing::{
    EngineSpeed, Label, Name, OutOfRange, Ratio, RatioError, RoadSpeed, TextError, quoted,
};
use crate::project::document::Note;
use ron::value::RawValue;
use serde::de::Error as _;
use serde::{Deserialize, Deserializer, Serialize};

/// A number as it is written: whole where it is whole, `800`, not `800.0`.
pub(crate) struct PlainNumber(pub(crate) f64);

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

/// A number as it is read, with the letters that spell it: a sentence about it quotes these, because
/// beyond what can be held it reads as infinite.
pub(crate) struct WrittenNumber {
    number: f64,
    letters: String,
}

impl<'de> Deserialize<'de> for WrittenNumber {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let written = <&RawValue>::deserialize(deserializer)?.trim();
        let letters = quoted(written.get_ron());
        match written.into_rust::<f64>() {
            Ok(number) => Ok(Self { number, letters }),
            Err(_) => Err(D::Error::custom(format!(
                "a number such as 6500 or 62.5 stands here, not {letters}"
            ))),
        }
    }
}

/// A number outside the range of its quantity, as it stands in the file.
#[derive(Debug, thiserror::Error)]
#[error("{what} must be {bounds}, not {letters}")]
pub(crate) struct WrittenOutOfRange {
    what: &'static str,
    bounds: &'static str,
    letters: String,
}

impl WrittenNumber {
    /// The quantity that `new` makes of the number.
    pub(crate) fn read<T>(
        self,
        new: impl FnOnce(f64) -> Result<T, OutOfRange>,
    ) -> Result<T, WrittenOutOfRange> {
        new(self.number).map_err(|OutOfRange { what, bounds, .. }| WrittenOutOfRange {
            what,
            bounds,
            letters: self.letters,
        })
    }
}

macro_rules! file_number {
    ($Name:ident, $Domain:ident, $new:ident, $value:ident) => {
        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(try_from = "WrittenNumber", into = "PlainNumber")]
        pub(crate) struct $Name(pub(crate) $Domain);

        impl TryFrom<WrittenNumber> for $Name {
            type Error = WrittenOutOfRange;

            fn try_from(written: WrittenNumber) -> Result<Self, WrittenOutOfRange> {
                written.read($Domain::$new).map(Self)
            }
        }

        impl From<$Name> for PlainNumber {
            fn from(value: $Name) -> Self {
                Self(value.0.$value())
            }
        }
    };
}

pub(crate) use file_number;

file_number!(Rpm, EngineSpeed, from_rpm, rpm);
// What was marked before there was a slowest road speed still opens, and is a finding.
file_number!(Kmh, RoadSpeed, from_kept_kmh, kmh);

/// The number of one factor of a ratio, which has the range of a ratio.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "WrittenNumber", into = "PlainNumber")]
pub(crate) struct FactorNumber(pub(crate) f64);

impl TryFrom<WrittenNumber> for FactorNumber {
    type Error = RatioError;

    fn try_from(written: WrittenNumber) -> Result<Self, RatioError> {
        if Ratio::RANGE.contains(&written.number) {
            Ok(Self(written.number))
        } else {
            Err(RatioError::OutOfRange(written.letters))
        }
    }
}

impl From<FactorNumber> for PlainNumber {
    fn from(factor: FactorNumber) -> Self {
        Self(factor.0)
    }
}

macro_rules! file_text {
    ($Name:ident, $Domain:ident, $($Trait:ident),+) => {
        #[derive($($Trait,)+ Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub(crate) struct $Name(pub(crate) $Domain);

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

pub(crate) use file_text;

file_text!(NameText, Name, Clone);
file_text!(LabelText, Label, Clone);
file_text!(NoteText, Note, Clone, Default);

impl NoteText {
    pub(crate) fn is_empty(&self) -> bool {
        self.0.as_str().is_empty()
    }
}
