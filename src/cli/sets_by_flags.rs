//! Which project do flags describe, without a file?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{decimal, engine_speed, list, ranged};
use crate::gearing::{
    EngineLimits, EngineSpeed, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name, Ratio,
    Reverse, RollingCircumference, TypedRatio, Tyre, parse_ratio, parse_tyre, quoted, read_chain,
    read_reduction,
};
use crate::project::{Candidates, Marks, Note, Project};
use crate::units::SpeedUnit;

/// The project that the flags describe: a set for each `--gears`, the first the baseline.
pub(super) fn project(arguments: &Arguments) -> Result<Project, CliError> {
    let redline = arguments.once(Flag::Redline)?;
    let redline = redline.ok_or(CliError::SetNeeds("--redline RPM"))?;
    let limit = |flag| -> Result<Option<EngineSpeed>, CliError> {
        let text = arguments.once(flag)?;
        text.map(|text| engine_speed(flag, text)).transpose()
    };
    let engine = EngineLimits {
        idle: limit(Flag::Idle)?,
        lowest_useful: limit(Flag::LowestUseful)?,
        redline: engine_speed(Flag::Redline, redline)?,
    };
    let tyres = tyres(arguments)?;
    let sets = sets(arguments, &tyres, engine.redline)?;
    let sets = sets.into_iter().map(|set| (set, true)).collect();
    Ok(Project {
        title: None,
        date: None,
        note: Note::default(),
        units: SpeedUnit::Kmh,
        tyre: tyres[0],
        engine,
        marked_engine_speeds: Marks::default(),
        marked_road_speeds: Marks::default(),
        sets: Candidates::new(sets, 0).map_err(|error| CliError::value("--gears", &error))?,
    })
}

/// The tyres in their order, at least one.
fn tyres(arguments: &Arguments) -> Result<Vec<Tyre>, CliError> {
    let sizes = arguments.all(Flag::Tyre)?;
    let circumferences = arguments.all(Flag::Circumference)?;
    match (sizes.is_empty(), circumferences.is_empty()) {
        (true, true) => Err(CliError::SetNeeds("--tyre SIZE or --circumference MM")),
        (false, false) => Err(CliError::TwoTyres),
        (false, true) => {
            let read = |text: &&str| {
                parse_tyre(text).map_err(|error| CliError::value(Flag::Tyre.name(), &error))
            };
            sizes.iter().map(read).collect()
        }
        (true, false) => circumferences.iter().map(|text| measured(text)).collect(),
    }
}

fn measured(text: &str) -> Result<Tyre, CliError> {
    let flag = Flag::Circumference;
    let mm = RollingCircumference::from_mm(decimal(flag, text)?);
    ranged(flag.name(), text, mm).map(Tyre::RollingCircumference)
}

/// A set for each `--gears`, at most three.
fn sets(
    arguments: &Arguments,
    tyres: &[Tyre],
    redline: EngineSpeed,
) -> Result<Vec<GearSet>, CliError> {
    let gears = arguments.all(Flag::Gears)?;
    let count = gears.len();
    if count > Candidates::MOST {
        return Err(CliError::TooManySets(count));
    }
    let finals = arguments.all(Flag::Final)?;
    if finals.is_empty() {
        return Err(CliError::SetNeeds(
            "--final RATIO, which is 1 where there is no final drive",
        ));
    }
    let names = arguments.all(Flag::Name)?;
    if names.len() > count {
        return Err(CliError::TooManyNames {
            given: names.len(),
            sets: in_words(count),
        });
    }
    let tyre_flag = if arguments.all(Flag::Tyre)?.is_empty() {
        Flag::Circumference
    } else {
        Flag::Tyre
    };
    let tyres = one_each(tyre_flag, tyres, count)?;
    let finals = one_each(Flag::Final, &finals, count)?;
    let reverses = one_each(Flag::Reverse, &arguments.all(Flag::Reverse)?, count)?;
    let shifts = one_each(Flag::Shift, &arguments.all(Flag::Shift)?, count)?;
    let typed_sets = (0..count).map(|at| TypedSet {
        place: Some(at).filter(|_| count > 1),
        name: names
            .get(at)
            .map_or_else(|| format!("Set {}", at + 1), |name| (*name).to_owned()),
        gears: gears[at],
        final_drive: finals[at].unwrap_or_default(),
        reverse: reverses[at],
        shift: shifts[at],
        tyre: tyres[at].filter(|tyre| Some(*tyre) != tyres[0]),
    });
    typed_sets.map(|typed| typed.gear_set(redline)).collect()
}

/// One value for each set, where a flag was given not at all, once, or once for each.
fn one_each<T: Copy>(flag: Flag, values: &[T], sets: usize) -> Result<Vec<Option<T>>, CliError> {
    match values {
        [] => Ok(vec![None; sets]),
        [one] => Ok(vec![Some(*one); sets]),
        each if each.len() == sets => Ok(each.iter().copied().map(Some).collect()),
        wrong => Err(CliError::Count {
            flag: flag.name(),
            given: wrong.len(),
            sets: in_words(sets),
        }),
    }
}

fn in_words(sets: usize) -> String {
    match sets {
        1 => "one gear set".to_owned(),
        sets => format!("{sets} gear sets"),
    }
}

/// What was typed about one set.
struct TypedSet<'a> {
    /// Its place, counted from 0, where there are several.
    place: Option<usize>,
    name: String,
    gears: &'a str,
    final_drive: &'a str,
    reverse: Option<&'a str>,
    shift: Option<&'a str>,
    /// Its tyre, where it is not that of the first set.
    tyre: Option<Tyre>,
}

impl TypedSet<'_> {
    fn gear_set(&self, redline: EngineSpeed) -> Result<GearSet, CliError> {
        let ratios = self.ratios()?;
        let shifts = self.shifts(ratios.len(), redline)?;
        let final_drive = self.reduction(Flag::Final, self.final_drive)?;
        let reverse = self.reverse.map(|text| self.reduction(Flag::Reverse, text));
        let spec = GearSetSpec {
            name: Name::new(&self.name).map_err(|e| CliError::value(self.flag(Flag::Name), &e))?,
            gears: self.numbered(ratios, &shifts)?,
            reverse: reverse.transpose()?.map(|ratio| Reverse {
                ratio,
                final_drive: 0,
            }),
            final_drives: vec![final_drive],
            stages: Vec::new(),
            tyre: self.tyre,
            shift: shifts.last().copied().unwrap_or(redline),
        };
        GearSet::try_from(spec).map_err(|e| CliError::value(self.flag(Flag::Gears), &e))
    }

    /// The flag as it opens a sentence, with the set where there are several.
    fn flag(&self, flag: Flag) -> String {
        match self.place {
            Some(place) => format!("{} of set {}", flag.name(), place + 1),
            None => flag.name(),
        }
    }

    fn ratios(&self) -> Result<Vec<Ratio>, CliError> {
        let flag = self.flag(Flag::Gears);
        let typed: Result<Vec<TypedRatio>, CliError> = gear_texts(self.gears)
            .iter()
            .map(|text| {
                let commas = text.matches(',').count();
                if commas > 1 || (commas == 1 && text.contains('.')) {
                    return Err(CliError::CommasBetweenGears {
                        flag: flag.clone(),
                        value: quoted(text),
                    });
                }
                parse_ratio(text).map_err(|error| CliError::value(&flag, &error))
            })
            .collect();
        // One final drive behind all gears shifts nothing in their order.
        Ok(read_chain(&typed?, &[]))
    }

    fn reduction(&self, flag: Flag, text: &str) -> Result<Ratio, CliError> {
        let typed = parse_ratio(text).map_err(|error| CliError::value(self.flag(flag), &error))?;
        Ok(read_reduction(&typed))
    }

    /// One shift point, or one for each change.
    fn shifts(&self, gears: usize, redline: EngineSpeed) -> Result<Vec<EngineSpeed>, CliError> {
        let Some(text) = self.shift else {
            return Ok(vec![redline]);
        };
        let flag = self.flag(Flag::Shift);
        let shifts = list(&flag, text, EngineSpeed::from_rpm)?;
        if shifts.len() == 1 || shifts.len() + 1 == gears {
            Ok(shifts)
        } else {
            Err(CliError::ShiftCount {
                flag,
                given: shifts.len(),
                gears,
            })
        }
    }

    /// The gears, labelled 1, 2, 3 and so on, each with its own shift point where there are several.
    fn numbered(&self, ratios: Vec<Ratio>, shifts: &[EngineSpeed]) -> Result<Vec<Gear>, CliError> {
        let own = if shifts.len() > 1 { shifts } else { &[] };
        (1..)
            .zip(ratios)
            .map(|(number, ratio)| {
                let label = Label::new(&number.to_string());
                Ok(Gear {
                    id: GearId(number),
                    label: label.map_err(|e| CliError::value(self.flag(Flag::Gears), &e))?,
                    ratio,
                    final_drive: 0,
                    role: GearRole::Shifted,
                    shift: own.get(number as usize - 1).copied(),
                })
            })
            .collect()
    }
}

/// The gears of a text, parted by blanks; a blank beside `*` or `×` belongs to the product.
fn gear_texts(text: &str) -> Vec<String> {
    let is_sign = |c: char| c == '*' || c == '×';
    let mut gears: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match gears.last_mut() {
            Some(gear) if gear.ends_with(is_sign) || word.starts_with(is_sign) => {
                gear.push_str(word);
            }
            _ => gears.push(word.to_owned()),
        }
    }
    gears
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_blank_beside_a_product_sign_parts_no_gears() {
        let gears = ["44/29*49/12", "2.1"];
        for text in [
            "44/29*49/12 2.1",
            "44/29 * 49/12  2.1",
            " 44/29 *49/12 2.1",
            "44/29* 49/12 2.1 ",
        ] {
            assert_eq!(gear_texts(text), gears, "{text}");
        }
        assert_eq!(gear_texts("1.2 × 3 × 4 5"), ["1.2×3×4", "5"]);
        assert_eq!(gear_texts(" "), Vec::<String>::new());
    }
}
