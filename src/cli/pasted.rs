//! Which project does a text describe that was copied from elsewhere?
//!
//! The text is read as the window reads it. What it does not say comes from the flags, and where
//! both say something the flag is taken.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::sets_by_flags::{in_words, limits, names, one_each, project_of, tyres};
use super::source::Sourced;
use super::typed_set::{reduction, shift_points};
use crate::gearing::{
    EngineSpeed, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name, Ratio, Reverse, Tyre,
};
use crate::import::gears::{NO_FINAL_DRIVE, Offered, Pasted, PastedSet, pasted_parts, read_pasted};
use crate::project::{Disk, LARGEST_FILE_BYTES, read_text};
use std::io::{Read, stdin};
use std::path::Path;

/// The project of the text that `--pasted` names, and what was guessed or left out of it.
pub(super) fn project(arguments: &Arguments, path: &Path) -> Result<Sourced, CliError> {
    let flag = Flag::Pasted.name();
    let pasted = read_pasted(&text(path)?).map_err(|error| CliError::value(&flag, &error))?;
    let offers = Offers::of(&pasted);
    let engine = limits(arguments, offers.redline)?;
    let tyres = tyres(arguments, offers.tyre)?;
    let sets = sets(arguments, &pasted.sets, &offers, &tyres, engine.redline)?;
    Ok(Sourced {
        project: project_of(sets, tyres[0], engine, Flag::Pasted)?,
        notes: notes(&pasted),
    })
}

/// The text of the file, or of standard input where it is called `-`.
fn text(path: &Path) -> Result<String, CliError> {
    if path != Path::new("-") {
        return Ok(read_text(&Disk, path)?);
    }
    let mut text = String::new();
    match stdin().take(LARGEST_FILE_BYTES).read_to_string(&mut text) {
        Ok(_) => Ok(text),
        Err(error) => Err(CliError::NoStandardInput(crate::platform::reason_in_words(
            &error,
        ))),
    }
}

/// What the text says beside its sets.
struct Offers {
    tyre: Option<Tyre>,
    redline: Option<EngineSpeed>,
    shift: Option<EngineSpeed>,
}

impl Offers {
    fn of(pasted: &Pasted) -> Self {
        let mut offers = Self {
            tyre: None,
            redline: None,
            shift: None,
        };
        for offer in &pasted.offers {
            match offer.offered {
                Offered::Tyre(tyre) => offers.tyre = Some(tyre),
                Offered::Redline(speed) => offers.redline = Some(speed),
                Offered::ShiftPoint(speed) => offers.shift = Some(speed),
            }
        }
        offers
    }
}

/// What was guessed or left out, line by line; of several sets each sentence once.
fn notes(pasted: &Pasted) -> String {
    let mut notes = String::new();
    for remark in pasted.sets.iter().flat_map(|set| &set.remarks) {
        let line = format!("pasted: {remark}\n");
        // A final drive that the text lacks has come from a flag.
        if remark != NO_FINAL_DRIVE && !notes.contains(&line) {
            notes.push_str(&line);
        }
    }
    notes
}

fn sets(
    arguments: &Arguments,
    pasted: &[PastedSet],
    offers: &Offers,
    tyres: &[Tyre],
    redline: EngineSpeed,
) -> Result<Vec<GearSet>, CliError> {
    let count = pasted.len();
    let names = names(arguments, count)?;
    let tyre_flag = if arguments.all(Flag::Tyre)?.is_empty() {
        Flag::Circumference
    } else {
        Flag::Tyre
    };
    let tyres = one_each(tyre_flag, tyres, count)?;
    let finals = one_each(Flag::Final, &arguments.all(Flag::Final)?, count)?;
    let reverses = one_each(Flag::Reverse, &arguments.all(Flag::Reverse)?, count)?;
    let shifts = one_each(Flag::Shift, &arguments.all(Flag::Shift)?, count)?;
    let all = pasted.iter().enumerate().map(|(at, set)| {
        let place = if count > 1 {
            format!(" of {}, set {}", in_words(count), at + 1)
        } else {
            String::new()
        };
        let own_name = set.name.clone();
        let name = names.get(at).map(|name| (*name).to_owned()).or(own_name);
        let by_flags = ByFlags {
            place,
            name: name.unwrap_or_else(|| format!("Set {}", at + 1)),
            final_drive: finals[at],
            reverse: reverses[at],
            shift: shifts[at],
            tyre: tyres[at].filter(|tyre| Some(*tyre) != tyres[0]),
            vehicle_tyre: tyres[0],
        };
        by_flags.gear_set(set, offers.shift.unwrap_or(redline))
    });
    all.collect()
}

/// What the flags say of one set.
struct ByFlags<'a> {
    place: String,
    name: String,
    final_drive: Option<&'a str>,
    reverse: Option<&'a str>,
    shift: Option<&'a str>,
    /// Its tyre, where it is not that of the first set.
    tyre: Option<Tyre>,
    vehicle_tyre: Option<Tyre>,
}

impl ByFlags<'_> {
    fn flag(&self, flag: Flag) -> String {
        format!("{}{}", flag.name(), self.place)
    }

    /// The set of the text with all that the flags say of it.
    fn gear_set(&self, pasted: &PastedSet, shift: EngineSpeed) -> Result<GearSet, CliError> {
        let read = |flag, text: Option<&str>| {
            let read = text.map(|text| reduction(&self.flag(flag), text));
            read.transpose()
        };
        let final_drive = read(Flag::Final, self.final_drive)?;
        let reverse = read(Flag::Reverse, self.reverse)?;
        let mut pasted = pasted.clone();
        if final_drive.is_some() {
            pasted.final_drives.clear();
        } else if pasted.final_drives.is_empty() {
            return Err(CliError::SetNeeds(
                "--final RATIO, which is 1 where there is no final drive",
            ));
        }
        let before = self.before(final_drive, shift)?;
        let problem = |error: &dyn ToString| CliError::Value {
            flag: self.flag(Flag::Pasted),
            reason: error.to_string(),
        };
        let mut parts = pasted_parts(&before, &pasted, self.vehicle_tyre.as_ref())
            .map_err(|error| problem(&error))?;
        if let Some(ratio) = reverse {
            parts.reverse = Some(Reverse {
                ratio,
                final_drive: 0,
            });
        }
        self.shift(&mut parts, shift)?;
        GearSet::try_from(parts).map_err(|error| problem(&error))
    }

    /// A set of one gear, into which the text goes.
    fn before(&self, final_drive: Option<Ratio>, shift: EngineSpeed) -> Result<GearSet, CliError> {
        let direct = Ratio::from_number(1.0);
        let direct = direct.map_err(|error| CliError::value(self.flag(Flag::Pasted), &error))?;
        let spec = GearSetSpec {
            name: Name::new(&self.name).map_err(|e| CliError::value(self.flag(Flag::Name), &e))?,
            gears: vec![Gear {
                id: GearId(1),
                label: Label::new("1").map_err(|e| CliError::value(self.flag(Flag::Name), &e))?,
                ratio: direct.clone(),
                final_drive: 0,
                role: GearRole::Shifted,
                shift: None,
            }],
            reverse: None,
            final_drives: vec![final_drive.unwrap_or(direct)],
            stages: Vec::new(),
            tyre: self.tyre,
            shift,
        };
        GearSet::try_from(spec).map_err(|e| CliError::value(self.flag(Flag::Pasted), &e))
    }

    /// The shift points of `--shift`: one, or one for each change.
    fn shift(&self, parts: &mut GearSetSpec, otherwise: EngineSpeed) -> Result<(), CliError> {
        let shifted = |gear: &&mut Gear| gear.role == GearRole::Shifted;
        let gears = parts.gears.iter_mut().filter(shifted).count();
        let points = shift_points(&self.flag(Flag::Shift), self.shift, gears, otherwise)?;
        parts.shift = points.last().copied().unwrap_or(otherwise);
        if points.len() > 1 {
            let own = parts.gears.iter_mut().filter(shifted).zip(&points);
            own.for_each(|(gear, shift)| gear.shift = Some(*shift));
        }
        Ok(())
    }
}
