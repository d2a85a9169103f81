//! The ratios that a pasted set means: overall ratios and road speeds become gear ratios once what
//! stands behind the gears is known.

use super::{FigureKind, PastedFinal, PastedSet};
use crate::gearing::{
    ActsOn, FinalDrive, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name, Position, Ratio,
    RatioError, Reverse, Stage, TypedRatio, Tyre, overall_ratio_from_speed, read_chain,
    read_reduction,
};

/// What stands behind the gears where the text does not say it.
#[derive(Debug, Clone, Copy)]
pub struct Behind<'a> {
    /// The final drives.
    pub final_drives: &'a [FinalDrive],
    /// The product of all stages in their present positions.
    pub stages_ratio: f64,
    /// Distance per wheel turn under load, in mm, if a tyre is known.
    pub rolling_circumference_mm: Option<f64>,
}

impl Default for Behind<'_> {
    fn default() -> Self {
        Self {
            final_drives: &[],
            stages_ratio: 1.0,
            rolling_circumference_mm: None,
        }
    }
}

impl<'a> Behind<'a> {
    /// What stands behind the gears of a set that a text goes into, with every stage acting.
    pub fn of(set: &'a GearSet, tyre: Option<&Tyre>) -> Self {
        let tyre = set.tyre.as_ref().or(tyre);
        Self {
            final_drives: &set.final_drives,
            stages_ratio: present_ratio(&set.stages),
            rolling_circumference_mm: tyre.map(|tyre| tyre.rolling_circumference_mm()),
        }
    }
}

fn present_ratio(stages: &[Stage]) -> f64 {
    let present = stages.iter().filter_map(|s| s.positions.get(s.present));
    present.map(|position| position.ratio.value()).product()
}

/// Why figures do not come to gear ratios.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ResolveError {
    /// Overall ratios or road speeds without a final drive.
    #[error("{kind} become gear ratios only with a final drive; add it to the text")]
    NoFinalDrive {
        /// What the figures are.
        kind: String,
    },
    /// Road speeds without a tyre.
    #[error("{kind} become gear ratios only with a tyre; add its size to the text")]
    NoTyre {
        /// What the figures are.
        kind: String,
    },
    /// A figure that no gear can have.
    #[error("gear {label}: {problem}")]
    Ratio {
        /// The gear.
        label: String,
        /// What is wrong.
        problem: RatioError,
    },
}

/// The ratios that a pasted set means.
#[derive(Debug, Clone, PartialEq)]
pub struct Resolved {
    /// The ratios of the gears themselves.
    pub gears: Vec<Ratio>,
    /// The final drives of the text.
    pub final_drives: Vec<FinalDrive>,
    /// The ratio of reverse itself.
    pub reverse: Option<Ratio>,
    /// The stages of the text, acting on every gear.
    pub stages: Vec<Stage>,
}

impl PastedSet {
    /// The ratios of gears, final drives and reverse, with the order of all tooth pairs decided.
    ///
    /// The shifted gears are one chain, read with the final drives behind them; crawlers, final
    /// drives and reverse are each known to reduce. See [`read_chain`] and [`read_reduction`].
    ///
    /// # Errors
    /// Where the figures are no gear ratios: when something behind the gears is not known, or a
    /// ratio cannot be.
    pub fn resolved(&self, behind: &Behind) -> Result<Resolved, ResolveError> {
        let (figures, final_drives, reverse) = self.figures();
        let stages = self.stages();
        let to_wheels = ToWheels {
            kind: self.kind,
            final_drives: match &final_drives[..] {
                [] => behind.final_drives,
                own => own,
            },
            stages_ratio: match &stages[..] {
                [] => behind.stages_ratio,
                own => present_ratio(own),
            },
            rolling_circumference_mm: behind.rolling_circumference_mm,
        };
        let gears = self.gears.iter().zip(figures);
        let gears: Result<Vec<Ratio>, ResolveError> = gears
            .map(|(gear, figure)| to_wheels.gear_ratio(&gear.label, gear.final_drive, figure))
            .collect();
        let reverse = self.reverse.as_ref().zip(reverse);
        let reverse = reverse
            .map(|(gear, figure)| to_wheels.gear_ratio("R", gear.final_drive, figure))
            .transpose()?;
        Ok(Resolved {
            gears: gears?,
            reverse,
            final_drives,
            stages,
        })
    }

    /// The figures as they stand, with the order of all tooth pairs decided: of gears, final drives
    /// and reverse.
    pub fn figures(&self) -> (Vec<Ratio>, Vec<FinalDrive>, Option<Ratio>) {
        let finals = self.final_drives.iter().map(PastedFinal::drive);
        let finals: Vec<FinalDrive> = finals.collect();
        let shifted = self.gears.iter().filter(|gear| !gear.is_crawler);
        let (typed, behind): (Vec<TypedRatio>, Vec<f64>) = shifted
            .map(|gear| {
                let behind = finals.get(gear.final_drive).map_or(1.0, FinalDrive::value);
                (gear.ratio.ratio.clone(), behind)
            })
            .unzip();
        let mut chain = read_chain(&typed, &behind).into_iter();
        let mut gears = Vec::with_capacity(self.gears.len());
        for gear in &self.gears {
            let shifted = if gear.is_crawler { None } else { chain.next() };
            gears.push(shifted.unwrap_or_else(|| read_reduction(&gear.ratio.ratio)));
        }
        let reverse = self.reverse.as_ref();
        let reverse = reverse.map(|r| read_reduction(&r.ratio.ratio));
        (gears, finals, reverse)
    }

    fn stages(&self) -> Vec<Stage> {
        let stages = self.stages.iter().filter_map(|stage| {
            let positions = stage.positions.iter().filter_map(|position| {
                Some(Position {
                    name: Name::new(&position.name).ok()?,
                    ratio: position.ratio.ratio.driven_first().clone(),
                })
            });
            Some(Stage {
                name: Name::new(&stage.name).ok()?,
                positions: positions.collect(),
                present: stage.present,
                shows_others: false,
                acts_on: ActsOn::EveryGear,
            })
        });
        stages.collect()
    }
}

/// All that stands between the gears and the road.
struct ToWheels<'a> {
    kind: FigureKind,
    final_drives: &'a [FinalDrive],
    stages_ratio: f64,
    rolling_circumference_mm: Option<f64>,
}

impl ToWheels<'_> {
    fn gear_ratio(
        &self,
        label: &str,
        final_drive: usize,
        figure: Ratio,
    ) -> Result<Ratio, ResolveError> {
        let kind = || self.kind.text();
        let overall = match self.kind {
            FigureKind::GearRatio => return Ok(figure),
            FigureKind::Overall => figure.value(),
            FigureKind::SpeedPer1000(unit) => {
                let circumference_mm = self
                    .rolling_circumference_mm
                    .ok_or_else(|| ResolveError::NoTyre { kind: kind() })?;
                overall_ratio_from_speed(1000.0, unit.to_kmh(figure.value()), circumference_mm)
            }
        };
        let last = self.final_drives.last();
        let final_drive = self.final_drives.get(final_drive).or(last);
        let final_drive = final_drive.ok_or_else(|| ResolveError::NoFinalDrive { kind: kind() })?;
        let ratio = overall / (final_drive.value() * self.stages_ratio);
        Ratio::from_number(ratio).map_err(|problem| ResolveError::Ratio {
            label: label.to_owned(),
            problem,
        })
    }
}

/// The parts of `before` with the gears, final drives, stages and reverse of a pasted set, on the
/// tyre of `before` or the vehicle's.
///
/// Name, tyre and the common shift point stay; final drives and stages stay where the text had
/// none, and a stage acts on every gear again, because the gears it named are gone.
///
/// # Errors
/// When the figures of the set do not come to gear ratios.
pub fn pasted_parts(
    before: &GearSet,
    pasted: &PastedSet,
    vehicle_tyre: Option<&Tyre>,
) -> Result<GearSetSpec, ResolveError> {
    let resolved = pasted.resolved(&Behind::of(before, vehicle_tyre))?;
    let mut spec = before.to_spec();
    if !resolved.final_drives.is_empty() {
        spec.final_drives = resolved.final_drives;
    }
    if !resolved.stages.is_empty() {
        spec.stages = resolved.stages;
    }
    let most = spec.final_drives.len() - 1;
    spec.gears = pasted_gears(pasted, resolved.gears, most);
    let reverse = pasted.reverse.as_ref().zip(resolved.reverse);
    spec.reverse = reverse.map(|(reverse, ratio)| Reverse {
        ratio,
        final_drive: reverse.final_drive.min(most),
    });
    for stage in &mut spec.stages {
        stage.acts_on = ActsOn::EveryGear;
    }
    Ok(spec)
}

/// The gears of a set, on final drives up to `most`.
fn pasted_gears(pasted: &PastedSet, ratios: Vec<Ratio>, most: usize) -> Vec<Gear> {
    (1..)
        .zip(pasted.gears.iter().zip(ratios))
        .filter_map(|(id, (gear, ratio))| {
            Some(Gear {
                id: GearId(id),
                label: Label::new(&gear.label).ok()?,
                ratio,
                final_drive: gear.final_drive.min(most),
                role: if gear.is_crawler {
                    GearRole::Crawler
                } else {
                    GearRole::Shifted
                },
                shift: None,
            })
        })
        .collect()
}
