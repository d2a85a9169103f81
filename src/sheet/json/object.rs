//! JSON as data: what is printed, in the order in which it is printed.

use serde::ser::{Serialize, SerializeMap, Serializer};

/// A value of JSON; the keys of an object keep their order.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Json<'a> {
    Null,
    Bool(bool),
    Count(usize),
    Number(f64),
    Text(&'a str),
    Sentence(String),
    List(Vec<Self>),
    Object(Vec<(&'static str, Self)>),
}

/// Why figures have no JSON form.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the figures cannot be written as JSON ({0}), report it")]
pub struct JsonError(String);

impl From<serde_json::Error> for JsonError {
    fn from(error: serde_json::Error) -> Self {
        Self(error.to_string())
    }
}

impl Json<'_> {
    /// The number, or null where there is none.
    pub(super) fn number(number: Option<f64>) -> Self {
        number.map_or(Self::Null, Self::Number)
    }

    /// Pretty-printed, one line break at the end.
    ///
    /// # Errors
    /// When the serialiser gives up; texts, numbers and lists of them are not known to let it.
    pub(super) fn printed(&self) -> Result<String, JsonError> {
        let mut text = serde_json::to_string_pretty(self)?;
        text.push('\n');
        Ok(text)
    }
}

impl Serialize for Json<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => serializer.serialize_none(),
            Self::Bool(whether) => whether.serialize(serializer),
            Self::Count(count) => count.serialize(serializer),
            Self::Number(number) => number.serialize(serializer),
            Self::Text(text) => text.serialize(serializer),
            Self::Sentence(text) => text.serialize(serializer),
            Self::List(entries) => entries.serialize(serializer),
            Self::Object(entries) => {
                let mut map = serializer.serialize_map(Some(entries.len()))?;
                for (key, value) in entries {
                    map.serialize_entry(key, value)?;
                }
                map.end()
            }
        }
    }
}
