//! Findings: what is strange about a gear set, though it could be built.
//!
//! A finding is shown, never an error. Most look at the overall ratios of the shift chain; a
//! crawler and reverse stand outside it.

mod kind;

pub use kind::FindingKind;

use super::drivetrain::{DrivenGear, Drivetrain};
use super::final_drive::FinalDrive;
use super::quantity::{EngineSpeed, RoadSpeed};
use super::results::EngineLimits;
use super::shifting::{steps, upshifts};
use super::tyre::Tyre;
use std::fmt;

/// Two gears closer than this are nearly the same gear.
const NEARLY_THE_SAME: f64 = 1.02;

/// A step this much wider than the one before it is a hole in the set.
const WIDER_THAN_BEFORE: f64 = 1.05;

/// The lowest redline that can be typed, in rev/min: below it no engine has one, and the figure is in
/// thousands or of something else.
pub const LOWEST_REDLINE_RPM: f64 = 200.0;

/// A first step beyond this asks for a slipping clutch in second.
const WIDE_FIRST_STEP: f64 = 2.0;

/// Something valid but strange.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// The label of the gear it is about; none where it is about the whole set or vehicle.
    pub gear: Option<String>,
    /// What is strange.
    pub kind: FindingKind,
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.kind.fmt(f)
    }
}

/// What is strange about a set on its vehicle; what is strange about the engine alone is not here.
pub(super) fn find(
    drivetrain: &Drivetrain,
    final_drives: &[FinalDrive],
    tyre: &Tyre,
    limits: &EngineLimits,
) -> Vec<Finding> {
    let chain: Vec<&DrivenGear> = drivetrain.chain().collect();
    let mut findings = step_findings(&chain, &steps(drivetrain));
    findings.extend(shift_point_findings(&chain, limits));
    findings.extend(drop_findings(drivetrain, &chain, limits));
    findings.extend(final_drives.iter().filter_map(chain_finding));
    findings.extend(tyre.notices().into_iter().map(|notice| Finding {
        gear: None,
        kind: FindingKind::Tyre(notice),
    }));
    findings
}

/// A front sprocket with more teeth than the rear one: most likely they changed places.
fn chain_finding(drive: &FinalDrive) -> Option<Finding> {
    match drive {
        FinalDrive::Chain(sprockets) if sprockets.front() > sprockets.rear() => Some(Finding {
            gear: None,
            kind: FindingKind::FrontSprocketLarger {
                sprockets: *sprockets,
            },
        }),
        FinalDrive::Gears(_) | FinalDrive::Chain(_) => None,
    }
}

/// What is strange about the engine's limits alone.
pub fn engine_findings(limits: &EngineLimits) -> Vec<Finding> {
    let redline_rpm = limits.redline.rpm();
    let not_below = |limit: Option<EngineSpeed>| {
        let limit_rpm = limit.map(EngineSpeed::rpm);
        limit_rpm.filter(|rpm| *rpm >= redline_rpm)
    };
    let idle = not_below(limits.idle).map(|idle_rpm| FindingKind::IdleNotBelowRedline {
        idle_rpm,
        redline_rpm,
    });
    let useful = not_below(limits.lowest_useful).map(|lowest_useful_rpm| {
        FindingKind::UsefulNotBelowRedline {
            lowest_useful_rpm,
            redline_rpm,
        }
    });
    let is_low = redline_rpm < LOWEST_REDLINE_RPM;
    let low = is_low.then_some(FindingKind::RedlineTooLow { redline_rpm });
    let kinds = idle.into_iter().chain(useful).chain(low);
    kinds.map(|kind| Finding { gear: None, kind }).collect()
}

/// What is strange about the marked road speeds, whatever the set.
pub fn mark_findings(road_speeds: &[RoadSpeed]) -> Vec<Finding> {
    let slow = road_speeds.iter().filter(|speed| speed.is_too_slow());
    slow.map(|speed| Finding {
        gear: None,
        kind: FindingKind::MarkedSpeedTooSlow {
            speed_kmh: speed.kmh(),
        },
    })
    .collect()
}

fn step_findings(chain: &[&DrivenGear], steps: &[f64]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (at, &step) in steps.iter().enumerate() {
        let gears = [chain[at].label.clone(), chain[at + 1].label.clone()];
        let before = at.checked_sub(1).map(|i| steps[i]);
        let is_last = at + 1 == steps.len();
        let kind = if step <= 1.0 {
            let overall_ratios = [chain[at].overall_ratio, chain[at + 1].overall_ratio];
            FindingKind::NotFalling {
                gears,
                overall_ratios,
            }
        } else if step < NEARLY_THE_SAME {
            FindingKind::NearlyTheSame { gears, step }
        } else if let Some(before) = before.filter(|before| step > before * WIDER_THAN_BEFORE) {
            if is_last {
                FindingKind::OverdriveTop {
                    gears,
                    step,
                    before,
                }
            } else {
                FindingKind::WiderThanBefore {
                    gears,
                    step,
                    before,
                }
            }
        } else if at == 0 && step > WIDE_FIRST_STEP {
            FindingKind::WideFirstStep { gears, step }
        } else {
            continue;
        };
        findings.push(Finding {
            gear: Some(chain[at].label.clone()),
            kind,
        });
    }
    findings
}

fn shift_point_findings(chain: &[&DrivenGear], limits: &EngineLimits) -> Vec<Finding> {
    let redline_rpm = limits.redline.rpm();
    let below_top = chain.split_last().map_or(&[][..], |(_, lower)| lower);
    below_top
        .iter()
        .filter_map(|gear| {
            let shift_rpm = gear.shift?.rpm();
            let label = gear.label.clone();
            let kind = if shift_rpm > redline_rpm {
                FindingKind::ShiftAboveRedline {
                    gear: label,
                    shift_rpm,
                    redline_rpm,
                }
            } else {
                let idle_rpm = limits.idle?.rpm();
                (shift_rpm < idle_rpm).then_some(FindingKind::ShiftBelowIdle {
                    gear: label,
                    shift_rpm,
                    idle_rpm,
                })?
            };
            Some(Finding {
                gear: Some(gear.label.clone()),
                kind,
            })
        })
        .collect()
}

fn drop_findings(
    drivetrain: &Drivetrain,
    chain: &[&DrivenGear],
    limits: &EngineLimits,
) -> Vec<Finding> {
    let Some(lowest_useful) = limits.lowest_useful else {
        return Vec::new();
    };
    let pairs = chain.windows(2).zip(upshifts(drivetrain));
    pairs
        .filter(|(_, up)| up.rpm_after_shift < lowest_useful.rpm() && up.rpm_drop() > 0.0)
        .map(|(pair, up)| Finding {
            gear: Some(pair[0].label.clone()),
            kind: FindingKind::DropTooLow {
                gears: [pair[0].label.clone(), pair[1].label.clone()],
                rpm_after_shift: up.rpm_after_shift,
                lowest_useful_rpm: lowest_useful.rpm(),
            },
        })
        .collect()
}
