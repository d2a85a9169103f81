//! Which project does a text describe that was copied from elsewhere?
//!
//! The text is read as the window reads it. What it does not say comes from the flags, and where
//! both say something the flag is taken.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::named_text::named_text;
use super::sets_by_flags::{NEEDS_FINAL, OfSet, in_words, limits, of_each_set, project_of, tyres};
use super::source::Sourced;
use super::typed_set::{final_drive, reduction, shift_points};
use crate::gearing::{
    EngineLimits, EngineSpeed, FinalDrive, Gear, GearId, GearRole, GearSet, GearSetSpec, Label,
    Name, Ratio, Reverse, Tyre,
};
use crate::import::gears::{NO_FINAL_DRIVE, Offered, Pasted, PastedSet, pasted_parts, read_pasted};
use crate::import::tables::{self, Missing, OwnSet, OwnTable};
use crate::project::{Edit, Marks};
use std::path::Path;

/// The project of the text that `--pasted` names, and what was guessed or left out of it.
pub(super) fn project(arguments: &Arguments, path: &Path) -> Result<Sourced, CliError> {
    let flag = Flag::Pasted.name();
    let text = named_text(Flag::Pasted, path)?;
    if let Some(table) = tables::read(&text) {
        let table = table.map_err(|error| CliError::value(&flag, &error))?;
        return own_project(arguments, &table);
    }
    let pasted = read_pasted(&text).map_err(|error| CliError::value(&flag, &error))?;
    let offers = Offers::of(&pasted);
    let engine = limits(arguments, offers.redline)?;
    let tyres = tyres(arguments, offers.tyre)?;
    let sets = sets(arguments, &pasted.sets, &offers, &tyres, engine.redline)?;
    Ok(Sourced {
        project: project_of(sets, tyres[0], engine, Flag::Pasted)?,
        notes: notes(&pasted),
    })
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
    let names = pasted.iter().map(|set| set.name.clone()).collect();
    let by_flags = by_flags(arguments, names, tyres)?;
    let shift = offers.shift.unwrap_or(redline);
    let all = by_flags.iter().zip(pasted);
    all.map(|(flags, set)| flags.gear_set(set, shift)).collect()
}

/// What the flags say of each set, whose names in the text are given.
fn by_flags<'a>(
    arguments: &'a Arguments,
    in_text: Vec<Option<String>>,
    tyres: &[Tyre],
) -> Result<Vec<ByFlags<'a>>, CliError> {
    let count = in_text.len();
    let of_sets = of_each_set(arguments, in_text, tyres)?.into_iter();
    let all = of_sets.enumerate().map(|(at, of_set)| {
        let place = if count > 1 {
            format!(" of {}, set {}", in_words(count), at + 1)
        } else {
            String::new()
        };
        ByFlags {
            place,
            of_set,
            vehicle_tyre: tyres.first().copied(),
        }
    });
    Ok(all.collect())
}

/// The project of one of the program's own tables.
fn own_project(arguments: &Arguments, table: &OwnTable) -> Result<Sourced, CliError> {
    let by_engine = limits(arguments, table.redline)?;
    let engine = EngineLimits {
        idle: by_engine.idle.or(table.idle),
        lowest_useful: by_engine.lowest_useful.or(table.lowest_useful),
        ..by_engine
    };
    let tyres = tyres(arguments, table.tyre)?;
    let names = table.sets.iter().map(|set| Some(set.name.to_string()));
    let by_flags = by_flags(arguments, names.collect(), &tyres)?;
    let sets = by_flags.iter().zip(&table.sets);
    let sets: Result<Vec<GearSet>, CliError> = sets
        .map(|(flags, set)| flags.own_set(set, engine.redline))
        .collect();
    let flag = Flag::Pasted;
    let mut project = project_of(sets?, tyres[0], engine, flag)?;
    project.title.clone_from(&table.title);
    project.units = table.units.unwrap_or(project.units);
    let problem = |error: &dyn ToString| CliError::Value {
        flag: flag.name(),
        reason: error.to_string(),
    };
    let engine_speeds = Marks::new(table.marked_engine_speeds.clone());
    project.marked_engine_speeds = engine_speeds.map_err(|error| problem(&error))?;
    let road_speeds = Marks::new(table.marked_road_speeds.clone());
    project.marked_road_speeds = road_speeds.map_err(|error| problem(&error))?;
    if let Some(baseline) = project.sets.iter().nth(table.baseline).map(|c| c.id) {
        let compared = Edit::Baseline(baseline).applied_to(&project);
        project = compared.map_err(|error| problem(&error))?;
    }
    let notes = table
        .remarks
        .iter()
        .map(|remark| format!("pasted: {remark}\n"));
    Ok(Sourced {
        project,
        notes: notes.collect(),
    })
}

/// What the flags say of one set.
struct ByFlags<'a> {
    place: String,
    of_set: OfSet<'a>,
    vehicle_tyre: Option<Tyre>,
}

impl ByFlags<'_> {
    fn flag(&self, flag: Flag) -> String {
        format!("{}{}", flag.name(), self.place)
    }

    /// Why the set cannot be.
    fn problem(&self, error: &dyn ToString) -> CliError {
        CliError::Value {
            flag: self.flag(Flag::Pasted),
            reason: error.to_string(),
        }
    }

    /// The final drive that the flags give this set, if they give one.
    fn final_drive(&self) -> Result<Option<FinalDrive>, CliError> {
        let text = self.of_set.final_drive;
        let read = text.map(|text| final_drive(&self.flag(Flag::Final), text));
        read.transpose()
    }

    /// The ratio of reverse that the flags give this set, if they give one.
    fn reverse(&self) -> Result<Option<Ratio>, CliError> {
        let text = self.of_set.reverse;
        let read = text.map(|text| reduction(&self.flag(Flag::Reverse), text));
        read.transpose()
    }

    /// The set of the text with all that the flags say of it.
    fn gear_set(&self, pasted: &PastedSet, shift: EngineSpeed) -> Result<GearSet, CliError> {
        let final_drive = self.final_drive()?;
        let reverse = self.reverse()?;
        let mut pasted = pasted.clone();
        if final_drive.is_some() {
            pasted.final_drives.clear();
        } else if pasted.final_drives.is_empty() {
            return Err(CliError::SetNeeds(NEEDS_FINAL));
        }
        let before = self.before(final_drive, shift)?;
        let mut parts = pasted_parts(&before, &pasted, self.vehicle_tyre.as_ref())
            .map_err(|error| self.problem(&error))?;
        if let Some(ratio) = reverse {
            parts.reverse = Some(Reverse {
                ratio,
                final_drive: 0,
            });
        }
        self.shift(&mut parts, shift)?;
        GearSet::try_from(parts).map_err(|error| self.problem(&error))
    }

    /// The set of one of the program's own tables with all that the flags say of it.
    fn own_set(&self, own: &OwnSet, redline: EngineSpeed) -> Result<GearSet, CliError> {
        let mut own = own.clone();
        own.name =
            Name::new(&self.of_set.name).map_err(|e| CliError::value(self.flag(Flag::Name), &e))?;
        own.tyre = self.of_set.own_tyre.or(own.tyre);
        if let Some(drive) = self.final_drive()? {
            own.final_drives = vec![drive];
        }
        if own.final_drives.is_empty() {
            return Err(CliError::SetNeeds(NEEDS_FINAL));
        }
        if let Some(ratio) = self.reverse()? {
            let final_drive = 0;
            own.reverse = Some(Reverse { ratio, final_drive });
        }
        let missing = Missing {
            final_drives: own.final_drives.clone(),
            shift: redline,
        };
        let set = own
            .gear_set(&missing)
            .map_err(|error| self.problem(&error))?;
        if self.of_set.shift.is_none() {
            return Ok(set);
        }
        let mut parts = set.to_spec();
        self.shift(&mut parts, redline)?;
        GearSet::try_from(parts).map_err(|error| self.problem(&error))
    }

    /// A set of one gear, into which the text goes.
    fn before(
        &self,
        final_drive: Option<FinalDrive>,
        shift: EngineSpeed,
    ) -> Result<GearSet, CliError> {
        let direct = Ratio::from_number(1.0);
        let direct = direct.map_err(|error| CliError::value(self.flag(Flag::Pasted), &error))?;
        let spec = GearSetSpec {
            name: Name::new(&self.of_set.name)
                .map_err(|e| CliError::value(self.flag(Flag::Name), &e))?,
            gears: vec![Gear {
                id: GearId(1),
                label: Label::new("1").map_err(|e| CliError::value(self.flag(Flag::Name), &e))?,
                ratio: direct.clone(),
                final_drive: 0,
                role: GearRole::Shifted,
                shift: None,
            }],
            reverse: None,
            final_drives: vec![final_drive.unwrap_or_else(|| direct.into())],
            stages: Vec::new(),
            tyre: self.of_set.own_tyre,
            shift,
        };
        GearSet::try_from(spec).map_err(|e| CliError::value(self.flag(Flag::Pasted), &e))
    }

    /// The shift points of `--shift`: one, or one for each change.
    fn shift(&self, parts: &mut GearSetSpec, otherwise: EngineSpeed) -> Result<(), CliError> {
        let shifted = |gear: &&mut Gear| gear.role == GearRole::Shifted;
        let gears = parts.gears.iter_mut().filter(shifted).count();
        let points = shift_points(&self.flag(Flag::Shift), self.of_set.shift, gears, otherwise)?;
        parts.shift = points.last().copied().unwrap_or(otherwise);
        if points.len() > 1 {
            let own = parts.gears.iter_mut().filter(shifted).zip(&points);
            own.for_each(|(gear, shift)| gear.shift = Some(*shift));
        }
        Ok(())
    }
}
