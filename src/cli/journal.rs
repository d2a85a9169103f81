//! `layshaft journal`: what is left of a shaft that is turned down.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{TextOrJson, needed_quantity, quantity, text_or_json};
use super::{PRINTED, output};
use crate::sheet::journal;
use crate::sheet::json;
use crate::units::plain_number;
use crate::workshop::{
    AnsweredJournal, CaseDepth, Diameter, FilletRadius, MeantShaft, OnShaft, ShaftTorque, Stop,
};
use std::io::Write;

/// The exit code, when what is left is printed.
pub(super) fn run(arguments: &Arguments, stdout: &mut dyn Write) -> Result<u8, CliError> {
    if arguments.file.is_some() {
        return Err(CliError::NoFileWanted("journal"));
    }
    let format = text_or_json(arguments)?;
    let meant = MeantShaft {
        old: diameter(arguments, (Flag::OldDiameter, "MM, the diameter as it is"))?,
        new: diameter(arguments, (Flag::NewDiameter, "MM, the diameter to come"))?,
        bore: quantity(arguments, Flag::HollowBore, Diameter::from_mm)?,
        case_depth: quantity(arguments, Flag::CaseDepth, CaseDepth::from_mm)?,
        on_shaft: OnShaft::default(),
    };
    let answered = AnsweredJournal {
        meant,
        turned: meant.turned().map_err(no_shaft)?,
        torque: quantity(arguments, Flag::ShaftTorque, ShaftTorque::from_nm)?,
        fillet: quantity(arguments, Flag::Fillet, FilletRadius::from_mm)?,
        shoulder: shoulder(arguments, &meant)?,
    };
    match format {
        TextOrJson::Text => output::print(stdout, &journal::text(&answered))?,
        TextOrJson::Json => output::print_bytes(stdout, json::journal(&answered)?.as_bytes())?,
    }
    Ok(PRINTED)
}

/// A diameter that the command cannot do without, with what stands behind its flag.
fn diameter(arguments: &Arguments, flag: (Flag, &'static str)) -> Result<Diameter, CliError> {
    needed_quantity(arguments, "layshaft journal", flag, Diameter::from_mm)
}

/// The diameter of the shoulder behind the fillet: that of the shaft as it was, unless another is given.
fn shoulder(arguments: &Arguments, meant: &MeantShaft) -> Result<Diameter, CliError> {
    let flag = Flag::Shoulder;
    let Some(shoulder) = quantity(arguments, flag, Diameter::from_mm)? else {
        return Ok(meant.old);
    };
    if shoulder <= meant.new {
        let new = plain_number(meant.new.mm());
        let reason = format!("a shoulder stands above the new diameter, {new} mm");
        return Err(CliError::value(flag.name(), &reason));
    }
    Ok(shoulder)
}

/// Which flag is about what cannot be.
fn no_shaft(stop: Stop) -> CliError {
    let flag = match stop {
        Stop::NoWall { .. } => Flag::HollowBore,
        Stop::NoCaseLeft => Flag::CaseDepth,
        Stop::NotSmaller { .. } | Stop::Splines | Stop::NeedleTrack | Stop::SynchroniserCone => {
            Flag::NewDiameter
        }
    };
    CliError::value(flag.name(), &stop)
}
