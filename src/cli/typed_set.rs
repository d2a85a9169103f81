//! Which gear set do the texts behind its flags describe?

use super::error::CliError;
use super::flags::Flag;
use super::values::list;
use crate::gearing::{
    EngineSpeed, FinalDrive, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name, Ratio,
    Reverse, TypedRatio, Tyre, parse_final_drive, parse_ratio, quoted, read_chain, read_reduction,
};

/// What was typed about one set.
pub(super) struct TypedSet<'a> {
    /// Its place, counted from 0, where there are several.
    pub(super) place: Option<usize>,
    pub(super) name: String,
    pub(super) gears: &'a str,
    pub(super) final_drive: &'a str,
    pub(super) reverse: Option<&'a str>,
    pub(super) shift: Option<&'a str>,
    /// Its tyre, where it is not that of the first set.
    pub(super) tyre: Option<Tyre>,
}

impl TypedSet<'_> {
    /// The set, shifted at the redline where no shift point was typed.
    pub(super) fn gear_set(&self, redline: EngineSpeed) -> Result<GearSet, CliError> {
        let ratios = self.ratios()?;
        let shifts = shift_points(&self.flag(Flag::Shift), self.shift, ratios.len(), redline)?;
        let final_drive = final_drive(&self.flag(Flag::Final), self.final_drive)?;
        let reverse = self
            .reverse
            .map(|text| reduction(&self.flag(Flag::Reverse), text));
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

/// A final drive; `flag` opens the sentence if it does not read.
pub(super) fn final_drive(flag: &str, text: &str) -> Result<FinalDrive, CliError> {
    parse_final_drive(text).map_err(|error| CliError::value(flag, &error))
}

/// A ratio that is known to reduce; `flag` opens the sentence if it does not read.
pub(super) fn reduction(flag: &str, text: &str) -> Result<Ratio, CliError> {
    let typed = parse_ratio(text).map_err(|error| CliError::value(flag, &error))?;
    Ok(read_reduction(&typed))
}

/// One shift point, or one for each change of so many gears; `otherwise` where none was typed.
pub(super) fn shift_points(
    flag: &str,
    text: Option<&str>,
    gears: usize,
    otherwise: EngineSpeed,
) -> Result<Vec<EngineSpeed>, CliError> {
    let Some(text) = text else {
        return Ok(vec![otherwise]);
    };
    let shifts = list(flag, text, EngineSpeed::from_rpm)?;
    if shifts.len() == 1 || shifts.len() + 1 == gears {
        Ok(shifts)
    } else {
        Err(CliError::ShiftCount {
            flag: flag.to_owned(),
            given: shifts.len(),
            gears,
        })
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
