//! Figures that were typed in the place of gear ratios, and how gear ratios follow so that they stay.
//!
//! Old road tests print overall ratios, data sheets of trucks road speeds per 1000 rpm. What somebody
//! copies from them is the overall ratio or the speed: a final drive that is entered afterwards says
//! what the gear ratio must have been all along.

use super::document::{Project, SetId};
use super::edits::{Edit, EditError};
use super::set_edits::SetEdit;
use crate::gearing::{
    GearId, GearSet, Ratio, RatioError, Tyre, overall_ratio_from_speed, ratio_behind,
};
use crate::units::{SpeedUnit, plain_number};

/// What somebody typed for a gear in the place of its ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Figure {
    /// Engine turns per wheel turn.
    Overall(f64),
    /// Its road speed at 1000 rev/min, and the unit in which it was typed.
    SpeedPer1000(f64, SpeedUnit),
}

/// How far, as a share, a figure of the document may be from what was typed and still be that.
const SAME: f64 = 1e-9;

impl Figure {
    /// The ratio that a gear, forward or reverse, must have for the figure to hold; none where the
    /// gear is not there. `vehicle_tyre` counts where the set has no tyre of its own.
    ///
    /// # Errors
    /// When no ratio can be that.
    pub fn ratio_in(
        self,
        set: &GearSet,
        gear: GearId,
        vehicle_tyre: &Tyre,
    ) -> Option<Result<Ratio, RatioError>> {
        let number = self.number_in(set, gear, vehicle_tyre);
        number.map(Ratio::from_number)
    }

    /// That ratio as a number, whether it can be or not.
    fn number_in(self, set: &GearSet, gear: GearId, vehicle_tyre: &Tyre) -> Option<f64> {
        let overall = match self {
            Self::Overall(overall) => overall,
            Self::SpeedPer1000(speed, unit) => {
                let tyre = set.tyre.as_ref().unwrap_or(vehicle_tyre);
                let circumference_mm = tyre.rolling_circumference_mm();
                overall_ratio_from_speed(1000.0, unit.to_kmh(speed), circumference_mm)
            }
        };
        Some(overall / ratio_behind(set, gear)?)
    }

    /// The figure in words: `overall ratio 15.2`, `27.5 km/h per 1000 rpm`.
    fn text(self) -> String {
        match self {
            Self::Overall(overall) => format!("overall ratio {}", plain_number(overall)),
            Self::SpeedPer1000(speed, unit) => {
                format!("{} {} per 1000 rpm", plain_number(speed), unit.sign())
            }
        }
    }
}

/// A figure that was typed for a gear, forward or reverse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TypedFigure {
    /// The set.
    pub set: SetId,
    /// The gear.
    pub gear: GearId,
    /// What was typed.
    pub figure: Figure,
}

impl TypedFigure {
    /// Whether the gear is there and has the ratio with which the figure holds.
    pub fn holds_in(&self, project: &Project) -> bool {
        let wanted = self.set_in(project).and_then(|set| {
            let figure = self.figure;
            figure.number_in(set, self.gear, &project.tyre)
        });
        let present = self.present_ratio(project).map(Ratio::value);
        let both = present.zip(wanted);
        both.is_some_and(|(present, wanted)| (present - wanted).abs() <= SAME * wanted)
    }

    fn set_in<'a>(&self, project: &'a Project) -> Option<&'a GearSet> {
        let candidate = project.sets.get(self.set)?;
        Some(&candidate.set)
    }

    /// The ratio that the gear has.
    fn present_ratio<'a>(&self, project: &'a Project) -> Option<&'a Ratio> {
        self.set_in(project)?.ratio_of(self.gear)
    }

    /// The project with the ratio of the gear such that the figure holds.
    fn restored_in(&self, project: &Project) -> Result<Project, EditError> {
        let set = self.set_in(project).ok_or(EditError::NoSuchPart)?;
        let ratio = self.figure.ratio_in(set, self.gear, &project.tyre);
        let ratio = ratio.ok_or(EditError::NoSuchPart)?;
        let ratio = ratio.map_err(|problem| EditError::CannotKeep {
            gear: gear_name(set, self.gear),
            figure: self.figure.text(),
            problem,
        })?;
        Edit::Set(self.set, SetEdit::Ratio(self.gear, ratio)).applied_to(project)
    }
}

fn gear_name(set: &GearSet, gear: GearId) -> String {
    let forward = set.gear(gear);
    forward.map_or_else(
        || "reverse".to_owned(),
        |gear| format!("gear {}", gear.label),
    )
}

/// The document `after` an edit with the gear ratios changed so that the figures stay which held
/// `before` it. What the edit itself gave another ratio stays with that.
///
/// # Errors
/// When a figure would need a gear ratio that cannot be.
pub(super) fn kept(
    before: &Project,
    after: Project,
    figures: &[TypedFigure],
) -> Result<Project, EditError> {
    let follows = |typed: &&TypedFigure| {
        typed.holds_in(before) && typed.present_ratio(before) == typed.present_ratio(&after)
    };
    let following: Vec<&TypedFigure> = figures.iter().filter(follows).collect();
    following.into_iter().try_fold(after, |project, typed| {
        if typed.holds_in(&project) {
            return Ok(project);
        }
        typed.restored_in(&project)
    })
}
