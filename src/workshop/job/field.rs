//! What is typed of a job, said once: its name, its hint, how it is spelled and read. Window, sheets,
//! histories and comparisons are made of these.

use crate::units::{BenchUnits, LengthUnit};

/// Names a field of a job, whatever stands in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct FieldKey {
    /// Which of the fields.
    pub name: &'static str,
    /// Of which item, counted from 0, where the job has a list of them.
    pub item: Option<u8>,
}

/// A field of data of one kind.
pub(super) struct Field<D: 'static> {
    pub(super) key: &'static str,
    pub(super) name: &'static str,
    pub(super) measure: Measure,
    pub(super) hint: &'static str,
    /// The hint where lengths are in inches, if that is another one.
    pub(super) hint_in_inches: Option<&'static str>,
    /// Whether several are typed: readings, of which each needs room on paper.
    pub(super) is_list: bool,
    /// Whether it is asked for, which may hang on a choice.
    pub(super) is_asked: fn(&D) -> bool,
    pub(super) kind: FieldKind<D>,
}

/// What stands behind the name of a field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Measure {
    /// The unit of lengths.
    Length,
    /// The unit of torques.
    Torque,
    /// Nothing, or what the name says itself.
    Plain,
}

/// How a field is answered.
pub(super) enum FieldKind<D: 'static> {
    Typed {
        spelled: fn(&D, BenchUnits) -> String,
        read: fn(&mut D, &str, BenchUnits) -> Result<(), String>,
    },
    Chosen {
        options: fn() -> Vec<&'static str>,
        chosen: fn(&D) -> usize,
        choose: fn(&mut D, usize),
    },
}

/// A field with what stands in it, as plain data.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Which field it is.
    pub key: FieldKey,
    /// What it is called, with its unit.
    pub name: String,
    /// What helps who types it; empty where the name says all.
    pub hint: &'static str,
    /// Whether several are typed: readings, of which each needs room on paper.
    pub is_list: bool,
    /// How it is answered, and what the answer is.
    pub answer: RowAnswer,
}

/// What stands in a field.
#[derive(Debug, Clone, PartialEq)]
pub enum RowAnswer {
    /// A text; empty where nothing is known.
    Typed(String),
    /// One of several words.
    Chosen {
        /// Which, counted from 0.
        chosen: usize,
        /// All of them.
        options: Vec<&'static str>,
    },
}

impl RowAnswer {
    /// What somebody has said; nothing where nobody has.
    pub fn said(&self) -> Option<&str> {
        Some(self.text()).filter(|text| !text.is_empty() && *text != NOT_SAID)
    }

    /// What it says, in words.
    pub fn text(&self) -> &str {
        match self {
            Self::Typed(text) => text,
            Self::Chosen { chosen, options } => options.get(*chosen).copied().unwrap_or_default(),
        }
    }
}

/// What is chosen where nobody has said anything.
pub(super) const NOT_SAID: &str = "not said";

/// Something that is chosen, not typed: each of its values in words.
pub(super) trait Choice: Copy + PartialEq + 'static {
    const ALL: &'static [(Self, &'static str)];

    /// Its place among all.
    fn place(self) -> usize {
        let found = Self::ALL.iter().position(|(value, _)| *value == self);
        found.unwrap_or(0)
    }

    fn options() -> Vec<&'static str> {
        Self::ALL.iter().map(|(_, words)| *words).collect()
    }
}

/// A field that is typed, by the name that it has in its data.
macro_rules! typed {
    ($Data:ident.$field:ident, $name:literal, $measure:ident, $hint:expr) => {
        $crate::workshop::job::field::Field {
            key: stringify!($field),
            name: $name,
            measure: $crate::workshop::job::field::Measure::$measure,
            hint: $hint,
            hint_in_inches: None,
            is_list: false,
            is_asked: |_| true,
            kind: $crate::workshop::job::field::FieldKind::Typed {
                spelled: |data: &$Data, units| {
                    $crate::workshop::typed::spelled(data.$field.as_ref(), units)
                },
                read: |data: &mut $Data, text, units| {
                    data.$field = $crate::workshop::typed::read(text, units)?;
                    Ok(())
                },
            },
        }
    };
}

/// A field that is chosen.
macro_rules! chosen {
    ($Data:ident.$field:ident: $Choice:ident, $name:literal, $hint:expr) => {
        $crate::workshop::job::field::Field {
            key: stringify!($field),
            name: $name,
            measure: $crate::workshop::job::field::Measure::Plain,
            hint: $hint,
            hint_in_inches: None,
            is_list: false,
            is_asked: |_| true,
            kind: $crate::workshop::job::field::FieldKind::Chosen {
                options: <$Choice as $crate::workshop::job::field::Choice>::options,
                chosen: |data: &$Data| $crate::workshop::job::field::Choice::place(data.$field),
                choose: |data: &mut $Data, at| {
                    use $crate::workshop::job::field::Choice as _;
                    if let Some((value, _)) = $Choice::ALL.get(at) {
                        data.$field = *value;
                    }
                },
            },
        }
    };
}

pub(super) use {chosen, typed};

impl<D> Field<D> {
    /// The same field, asked for under a condition.
    pub(super) const fn when(mut self, is_asked: fn(&D) -> bool) -> Self {
        self.is_asked = is_asked;
        self
    }

    /// The same field with another hint where lengths are in inches.
    pub(super) const fn in_inches(mut self, hint: &'static str) -> Self {
        self.hint_in_inches = Some(hint);
        self
    }

    /// The same field, of which several are typed.
    pub(super) const fn list(mut self) -> Self {
        self.is_list = true;
        self
    }

    /// The field with what stands in it.
    pub(super) fn row(&self, data: &D, item: Option<u8>, units: BenchUnits) -> Row {
        let sign = match self.measure {
            Measure::Length => units.length.sign(),
            Measure::Torque => units.torque.sign(),
            Measure::Plain => "",
        };
        let name = match sign {
            "" => self.name.to_owned(),
            sign => format!("{}, {sign}", self.name),
        };
        Row {
            key: FieldKey {
                name: self.key,
                item,
            },
            name,
            hint: match units.length {
                LengthUnit::Millimetre => self.hint,
                LengthUnit::Inch => self.hint_in_inches.unwrap_or(self.hint),
            },
            is_list: self.is_list,
            answer: match &self.kind {
                FieldKind::Typed { spelled, .. } => RowAnswer::Typed(spelled(data, units)),
                FieldKind::Chosen {
                    options, chosen, ..
                } => RowAnswer::Chosen {
                    chosen: chosen(data),
                    options: options(),
                },
            },
        }
    }
}

/// The rows of data that are asked for.
pub(super) fn rows<D>(
    fields: &[Field<D>],
    data: &D,
    item: Option<u8>,
    units: BenchUnits,
) -> Vec<Row> {
    let asked = fields.iter().filter(|field| (field.is_asked)(data));
    asked.map(|field| field.row(data, item, units)).collect()
}

/// Puts what a text means into the field of that name; whether there is one.
///
/// # Errors
/// A sentence, where it does not read.
pub(super) fn put<D>(
    fields: &[Field<D>],
    data: &mut D,
    (name, text): (&str, &str),
    units: BenchUnits,
) -> Result<bool, String> {
    let field = fields.iter().find(|field| field.key == name);
    match field.map(|field| &field.kind) {
        Some(FieldKind::Typed { read, .. }) => read(data, text, units).map(|()| true),
        Some(FieldKind::Chosen { .. }) | None => Ok(false),
    }
}

/// Chooses in the field of that name; whether there is one.
pub(super) fn choose<D>(fields: &[Field<D>], data: &mut D, (name, at): (&str, usize)) -> bool {
    let field = fields.iter().find(|field| field.key == name);
    match field.map(|field| &field.kind) {
        Some(FieldKind::Chosen { choose, .. }) => {
            choose(data, at);
            true
        }
        Some(FieldKind::Typed { .. }) | None => false,
    }
}
