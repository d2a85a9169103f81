//! What does the value of a flag say: one number, a list of speeds, one of several words?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use crate::gearing::{EngineSpeed, OutOfRange, parse_decimal, parse_rpm, quoted};
use crate::project::{View, Views};
use crate::sheet::csv::DecimalMark;

/// The engine speed that a value spells; point or comma as decimal mark, or between thousands.
pub(super) fn engine_speed(flag: Flag, text: &str) -> Result<EngineSpeed, CliError> {
    let rpm = parse_rpm(text).map_err(|error| CliError::value(flag.name(), &error))?;
    ranged(flag.name(), text, EngineSpeed::from_rpm(rpm))
}

/// The number that a value spells; point or comma as decimal mark.
pub(super) fn decimal(flag: Flag, text: &str) -> Result<f64, CliError> {
    parse_decimal(text).map_err(|error| CliError::value(flag.name(), &error))
}

/// The number that a value spells, which may be below 0.
pub(super) fn signed_decimal(flag: Flag, text: &str) -> Result<f64, CliError> {
    match text.trim().strip_prefix(['-', '−']) {
        Some(size) => decimal(flag, size).map(|size| -size),
        None => decimal(flag, text),
    }
}

/// What is in range, or the sentence that quotes it as typed.
pub(super) fn ranged<T>(
    flag: String,
    typed: &str,
    value: Result<T, OutOfRange>,
) -> Result<T, CliError> {
    value.map_err(|error| CliError::out_of_range(flag, error, typed.trim()))
}

/// The quantity that the value of a flag spells, where the flag is given.
pub(super) fn quantity<T>(
    arguments: &Arguments,
    flag: Flag,
    new: fn(f64) -> Result<T, OutOfRange>,
) -> Result<Option<T>, CliError> {
    let text = arguments.once(flag)?;
    text.map(|text| ranged(flag.name(), text, new(decimal(flag, text)?)))
        .transpose()
}

/// The items of a list, parted by commas or blanks, each read by `read`.
pub(super) fn list<T>(
    flag: &str,
    text: &str,
    read: impl Fn(f64) -> Result<T, OutOfRange>,
) -> Result<Vec<T>, CliError> {
    let mut values = Vec::new();
    for part in text.split(',') {
        if part.trim().is_empty() {
            return Err(CliError::EmptyItem {
                flag: flag.to_owned(),
                value: quoted(text),
            });
        }
        for item in part.split_whitespace() {
            let number = point_number(flag, item)?;
            values.push(ranged(flag.to_owned(), item, read(number))?);
        }
    }
    Ok(values)
}

/// The number of an item, whose decimal mark is a point: a comma parts items.
fn point_number(flag: &str, item: &str) -> Result<f64, CliError> {
    // Its own reasons speak of a comma as decimal mark.
    let number = parse_decimal(item).ok();
    number.ok_or_else(|| CliError::NotANumber {
        flag: flag.to_owned(),
        value: quoted(item),
    })
}

/// The value of a flag that a command cannot do without, with what stands behind it.
pub(super) fn needed<'a>(
    arguments: &'a Arguments,
    command: &'static str,
    (flag, what): (Flag, &'static str),
) -> Result<&'a str, CliError> {
    let value = arguments.once(flag)?;
    value.ok_or_else(|| CliError::Needs {
        command,
        flag: flag.name(),
        what,
    })
}

/// The quantity of a flag that a command cannot do without, with what stands behind it.
pub(super) fn needed_quantity<T>(
    arguments: &Arguments,
    command: &'static str,
    (flag, what): (Flag, &'static str),
    new: fn(f64) -> Result<T, OutOfRange>,
) -> Result<T, CliError> {
    let text = needed(arguments, command, (flag, what))?;
    ranged(flag.name(), text, new(decimal(flag, text)?))
}

/// The formats of an answer that is no table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum TextOrJson {
    /// For a reader.
    Text,
    /// For a program.
    Json,
}

/// What `--as` asks for; text without it.
pub(super) fn text_or_json(arguments: &Arguments) -> Result<TextOrJson, CliError> {
    let formats = [("text", TextOrJson::Text), ("json", TextOrJson::Json)];
    match arguments.once(Flag::As)? {
        None => Ok(TextOrJson::Text),
        Some(text) => choice(Flag::As, text, &formats),
    }
}

/// Which of the `choices` a value names.
pub(super) fn choice<T: Copy>(
    flag: Flag,
    text: &str,
    choices: &[(&'static str, T)],
) -> Result<T, CliError> {
    word_choice(&flag.name(), text, choices)
}

/// Which of the `choices` a word names that stands behind `what`.
pub(super) fn word_choice<T: Copy>(
    what: &str,
    text: &str,
    choices: &[(&'static str, T)],
) -> Result<T, CliError> {
    let found = choices.iter().find(|(word, _)| *word == text);
    found.map(|(_, choice)| *choice).ok_or_else(|| {
        let words: Vec<&str> = choices.iter().map(|(word, _)| *word).collect();
        CliError::NoSuchChoice {
            flag: what.to_owned(),
            choices: match words.split_last() {
                Some((last, others)) if !others.is_empty() => {
                    format!("{} or {last}", others.join(", "))
                }
                _ => words.concat(),
            },
            value: quoted(text),
        }
    })
}

/// The decimal mark of `--decimal`, which only CSV has.
pub(super) fn decimal_mark(arguments: &Arguments, is_csv: bool) -> Result<DecimalMark, CliError> {
    let choices = [("point", DecimalMark::Point), ("comma", DecimalMark::Comma)];
    match arguments.once(Flag::Decimal)? {
        None => Ok(DecimalMark::default()),
        Some(_) if !is_csv => Err(CliError::DecimalWithoutCsv),
        Some(text) => choice(Flag::Decimal, text, &choices),
    }
}

/// The views that `--show` asks for, parted by commas or blanks; none where it is not given.
pub(super) fn views(arguments: &Arguments) -> Result<Option<Views>, CliError> {
    let Some(text) = arguments.once(Flag::Show)? else {
        return Ok(None);
    };
    let choices = View::ALL.map(|view| (view.word(), view));
    let words = text.split([',', ' ']).map(str::trim);
    let views = words.map(|word| choice(Flag::Show, word, &choices));
    // A text that is split has at least one part.
    Ok(Views::new(views.collect::<Result<Vec<View>, _>>()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rpm(text: &str) -> Result<Vec<f64>, String> {
        let speeds = list("--rpm", text, EngineSpeed::from_rpm);
        let numbers = speeds.map(|speeds| speeds.iter().map(|s| s.rpm()).collect());
        numbers.map_err(|error| error.to_string())
    }

    #[test]
    fn commas_and_blanks_part_a_list() {
        for text in [
            "1000 2000.5",
            "1000,2000.5",
            "1000, 2000.5",
            " 1000  2000.5 ",
            "1000\t2000.5",
        ] {
            assert_eq!(rpm(text), Ok(vec![1000.0, 2000.5]), "{text}");
        }
    }

    #[test]
    fn an_empty_item_is_refused() {
        for text in [
            "",
            " ",
            ",",
            "1000,",
            ",1000",
            "1000,,2000",
            "1000 , , 2000",
        ] {
            assert!(rpm(text).unwrap_err().contains("empty item"), "{text}");
        }
    }

    #[test]
    fn choices_are_named() {
        let error = choice(Flag::Units, "knots", &[("kmh", 1), ("mph", 2)]).unwrap_err();
        assert_eq!(error.to_string(), "--units is kmh or mph, not \"knots\"");
    }
}
