//! The vocabulary of torque curves: which spellings mean which unit or quantity.
//!
//! English, German, French, Italian, Spanish, Dutch, Polish, the Scandinavian languages and a little
//! Russian; compared in small letters, without accents and without what joins the letters. Common
//! practice, no source.

use crate::import::plain::folded;
use crate::units::{OutputUnit, PowerUnit, TorqueUnit};

/// What an engine speed is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Scale {
    /// Turns a minute.
    PerMinute,
    /// Turns a minute where marks are decimal in the whole column: `950.000` beside `1000.000`.
    DecimalPerMinute,
    /// Thousands of turns a minute.
    ThousandsPerMinute,
    /// Turns a second.
    PerSecond,
}

/// What an engine puts out, with its unit where that is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Output {
    Torque(Option<TorqueUnit>),
    Power(Option<PowerUnit>),
}

impl Output {
    pub(super) fn unit(self) -> Option<OutputUnit> {
        match self {
            Self::Torque(unit) => unit.map(OutputUnit::Torque),
            Self::Power(unit) => unit.map(OutputUnit::Power),
        }
    }

    /// Whether both are torques or both are powers.
    pub(super) fn is_as(self, other: Self) -> bool {
        matches!(self, Self::Torque(_)) == matches!(other, Self::Torque(_))
    }
}

impl From<OutputUnit> for Output {
    fn from(unit: OutputUnit) -> Self {
        match unit {
            OutputUnit::Torque(unit) => Self::Torque(Some(unit)),
            OutputUnit::Power(unit) => Self::Power(Some(unit)),
        }
    }
}

/// What a figure or a column is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// An engine speed, with what it is counted in where that is written.
    Speed(Option<Scale>),
    /// A torque or a power, or one of both.
    Output(Option<Output>),
    /// Something else: a road speed, a temperature.
    Other,
}

/// Turns a minute.
const PER_MINUTE: &[&str] = &[
    "rpm",
    "rpms",
    "rmin",
    "revs",
    "revsmin",
    "revmin",
    "umin",
    "upm",
    "umdrmin",
    "umdrehungenmin",
    "trmin",
    "trmn",
    "tmin",
    "tpm",
    "toursmin",
    "tourmin",
    "giri",
    "girimin",
    "omwmin",
    "toerenmin",
    "obrmin",
    "otmin",
    "varvmin",
    "omdrmin",
    "обмин",
];

/// Turns a second, with a stroke before the second.
const PER_SECOND: &[&str] = &["rs", "revs", "us", "trs", "giris", "obrs"];

const NEWTON_METRE: &[&str] = &[
    "nm",
    "newtonmeter",
    "newtonmeters",
    "newtonmetre",
    "newtonmetres",
    "newtonmetern",
    "нм",
];

const POUND_FOOT: &[&str] = &[
    "lbft",
    "lbsft",
    "lbfft",
    "ftlb",
    "ftlbs",
    "ftlbf",
    "poundfoot",
    "poundfeet",
    "poundsfeet",
    "footpound",
    "footpounds",
];

const KILOGRAM_FORCE_METRE: &[&str] = &["kgm", "kgfm", "mkg", "mkgf", "kpm", "mkp", "кгсм", "кгм"];

const KILOWATT: &[&str] = &["kw", "kilowatt", "kilowatts", "квт"];

const HORSEPOWER: &[&str] = &["hp", "bhp", "whp", "rwhp", "horsepower"];

const METRIC_HORSEPOWER: &[&str] = &["ps", "cv", "ch", "pk", "hk", "лс"];

/// Units of what else stands in such texts.
const OTHER_UNITS: &[&str] = &[
    "kmh", "kph", "mph", "ms", "km", "s", "sec", "sek", "c", "ºc", "bar", "mbar", "psi", "kpa",
    "l", "lmin", "lh", "g", "kg", "cc", "ccm", "mm", "cm", "m", "w",
];

const ENGINE_SPEED: &[&str] = &[
    "speed",
    "drehzahl",
    "motordrehzahl",
    "regime",
    "toerental",
    "regimen",
    "obroty",
    "varvtal",
    "omdrejningstal",
    "turtall",
    "обороты",
];

const TORQUE: &[&str] = &[
    "torque",
    "tq",
    "trq",
    "wtq",
    "rwtq",
    "drehmoment",
    "motordrehmoment",
    "moment",
    "md",
    "couple",
    "coppia",
    "par",
    "koppel",
    "vridmoment",
    "момент",
];

const POWER: &[&str] = &[
    "power",
    "pwr",
    "leistung",
    "motorleistung",
    "puissance",
    "potenza",
    "potencia",
    "vermogen",
    "effekt",
    "moc",
    "мощность",
];

/// Words between both ends of a range.
const TO: &[&str] = &["to", "bis", "tot", "till", "do"];

/// Words between an output and the engine speed at which it is given.
const AT: &[&str] = &["at", "bei", "a", "bij", "ved", "vid", "przy", "при"];

/// What says that figures were taken at the wheels.
const WHEELS: &[&str] = &[
    "whp",
    "rwhp",
    "wtq",
    "rwtq",
    "wheel",
    "wheels",
    "radleistung",
    "roue",
    "roues",
];

/// The letters of `raw` as they are compared.
fn letters(raw: &str) -> String {
    let letters: String = raw.chars().filter(|c| c.is_alphabetic()).collect();
    folded(&letters)
}

/// What a number in the unit that `raw` spells is, joined as it may be: `N·m`, `lb-ft`, `U/min`.
pub(super) fn unit(raw: &str) -> Option<Role> {
    let word = letters(raw);
    let word = word.as_str();
    if raw == "M" {
        // A torque's letter; the unit is small.
        return None;
    }
    let torque = |unit| Some(Role::Output(Some(Output::Torque(Some(unit)))));
    let power = |unit| Some(Role::Output(Some(Output::Power(Some(unit)))));
    if raw.contains('/') && PER_SECOND.contains(&word) {
        Some(Role::Speed(Some(Scale::PerSecond)))
    } else if PER_MINUTE.contains(&word) {
        Some(Role::Speed(Some(Scale::PerMinute)))
    } else if word == "krpm" {
        Some(Role::Speed(Some(Scale::ThousandsPerMinute)))
    } else if NEWTON_METRE.contains(&word) {
        torque(TorqueUnit::NewtonMetre)
    } else if POUND_FOOT.contains(&word) {
        torque(TorqueUnit::PoundFoot)
    } else if KILOGRAM_FORCE_METRE.contains(&word) {
        torque(TorqueUnit::KilogramForceMetre)
    } else if KILOWATT.contains(&word) {
        power(PowerUnit::Kilowatt)
    } else if HORSEPOWER.contains(&word) {
        power(PowerUnit::Horsepower)
    // Polish horsepower in capitals; in small letters it is a distance.
    } else if METRIC_HORSEPOWER.contains(&word) || raw == "KM" {
        power(PowerUnit::MetricHorsepower)
    } else {
        OTHER_UNITS.contains(&word).then_some(Role::Other)
    }
}

/// What a column or figure that `word` names is.
pub(super) fn quantity(word: &str) -> Option<Role> {
    let folded = folded(word);
    let is_one_of = |words: &[&str]| words.contains(&folded.as_str());
    if is_one_of(ENGINE_SPEED) || word == "n" {
        Some(Role::Speed(None))
    } else if is_one_of(TORQUE) || word == "M" {
        Some(Role::Output(Some(Output::Torque(None))))
    } else if is_one_of(POWER) || word == "P" {
        Some(Role::Output(Some(Output::Power(None))))
    } else {
        None
    }
}

/// Whether `word` stands between an output and its engine speed.
pub(super) fn is_at(word: &str) -> bool {
    AT.contains(&folded(word).as_str())
}

/// Whether `word` stands between both ends of a range.
pub(super) fn is_to(word: &str) -> bool {
    TO.contains(&folded(word).as_str())
}

/// Whether a text says that its figures were taken at the wheels.
pub(super) fn speak_of_wheels(text: &str) -> bool {
    let mut words = text.split(|c: char| !c.is_alphabetic());
    words.any(|word| WHEELS.contains(&folded(word).as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_is_one_however_it_is_joined() {
        let nm = unit("Nm");
        for raw in ["N·m", "N.m", "N-m", "N m", "NM", "newton-metres", "Нм"] {
            assert_eq!(unit(raw), nm, "{raw}");
        }
        let pound_foot = unit("lb·ft");
        for raw in [
            "lb-ft",
            "ft-lb",
            "ft.lbs",
            "lbft",
            "lbf·ft",
            "Lbs/Ft",
            "foot-pounds",
        ] {
            assert_eq!(unit(raw), pound_foot, "{raw}");
        }
        assert_eq!(unit("KM"), unit("PS"));
        assert_eq!(unit("km"), Some(Role::Other));
        assert_eq!(unit("rev/s"), Some(Role::Speed(Some(Scale::PerSecond))));
        assert_eq!(unit("revs"), Some(Role::Speed(Some(Scale::PerMinute))));
        assert_eq!(unit("x"), None);
    }

    #[test]
    fn every_word_means_one_thing_and_is_spelled_as_it_is_looked_up() {
        let lists = [
            PER_MINUTE,
            NEWTON_METRE,
            POUND_FOOT,
            KILOGRAM_FORCE_METRE,
            KILOWATT,
            HORSEPOWER,
            METRIC_HORSEPOWER,
            OTHER_UNITS,
            ENGINE_SPEED,
            TORQUE,
            POWER,
            AT,
            TO,
        ];
        let mut known = Vec::new();
        for word in lists.concat() {
            assert_eq!(letters(word), word);
            assert!(!known.contains(&word), "{word}");
            known.push(word);
        }
    }

    #[test]
    fn wheels_are_heard_of_as_whole_words() {
        assert!(speak_of_wheels("rpm WHP wtq"));
        assert!(speak_of_wheels("at the wheels"));
        assert!(!speak_of_wheels("wheelbase 2.4 m"));
    }
}
