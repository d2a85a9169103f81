//! Everything that is read off a gear set, computed once for each change of the document.

use super::drivetrain::{DrivenGear, Drivetrain};
use super::findings::{Finding, find};
use super::gear_set::GearSet;
use super::quantity::EngineSpeed;
use super::shifting::{Upshift, spread, steps, upshifts};
use super::tyre::Tyre;

/// The engine speeds within which a vehicle is driven.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EngineLimits {
    /// Engine speed at idle, where it is known.
    pub idle: Option<EngineSpeed>,
    /// Below it the engine labours; where it is known.
    pub lowest_useful: Option<EngineSpeed>,
    /// Highest permitted engine speed.
    pub redline: EngineSpeed,
}

impl EngineLimits {
    /// The engine speed below which a gear is of no use: the lowest useful, else idle, else 0.
    pub fn floor_rpm(&self) -> f64 {
        self.lowest_useful
            .or(self.idle)
            .map_or(0.0, EngineSpeed::rpm)
    }

    /// Whether a gear is usable at an engine speed: between the floor and the redline.
    pub fn allow(&self, engine_rpm: f64) -> bool {
        (self.floor_rpm()..=self.redline.rpm()).contains(&engine_rpm)
    }
}

/// What is read off one gear.
#[derive(Debug, Clone, PartialEq)]
pub struct GearResult {
    /// The gear, resolved down to the wheels.
    pub gear: DrivenGear,
    /// Overall ratio ÷ that of the next gear of the chain; none on top, crawlers and reverse.
    pub step: Option<f64>,
    /// The step ÷ the step after it.
    pub progression: Option<f64>,
    /// The upshift out of it; none on top, crawlers and reverse.
    pub upshift: Option<Upshift>,
    /// Road speed per 1000 rev/min, in km/h.
    pub speed_per_1000_rpm_kmh: f64,
    /// Road speed at idle, in km/h: as slow as the gear goes by itself; none where idle is not known.
    pub idle_speed_kmh: Option<f64>,
    /// Road speed at the redline, in km/h: also the highest for changing down into the gear.
    pub redline_speed_kmh: f64,
}

/// What is read off one gear set.
#[derive(Debug, Clone, PartialEq)]
pub struct SetResults {
    /// The set with its tyre, resolved.
    pub drivetrain: Drivetrain,
    /// Forward gears in typed order.
    pub gears: Vec<GearResult>,
    /// The reverse gear, if there is one.
    pub reverse: Option<GearResult>,
    /// Overall first ÷ overall top.
    pub spread: f64,
    /// What is valid but strange.
    pub findings: Vec<Finding>,
}

impl SetResults {
    /// The results of a set on a vehicle.
    pub fn of(set: &GearSet, vehicle_tyre: &Tyre, limits: &EngineLimits) -> Self {
        let results = Self::without_findings(set, vehicle_tyre, limits);
        let tyre = set.tyre.as_ref().unwrap_or(vehicle_tyre);
        Self {
            findings: find(&results.drivetrain, &set.final_drives, tyre, limits),
            ..results
        }
    }

    /// The same with nothing said of what is strange.
    pub(super) fn without_findings(
        set: &GearSet,
        vehicle_tyre: &Tyre,
        limits: &EngineLimits,
    ) -> Self {
        let drivetrain = Drivetrain::resolve(set, vehicle_tyre);
        let mut chain = ChainFigures::of(&drivetrain);
        let result = |gear: &DrivenGear, chain: &mut ChainFigures| {
            let (step, progression, upshift) = chain.next_for(gear);
            GearResult {
                gear: gear.clone(),
                step,
                progression,
                upshift,
                speed_per_1000_rpm_kmh: drivetrain.speed_kmh(gear, 1000.0),
                idle_speed_kmh: limits
                    .idle
                    .map(|idle| drivetrain.speed_kmh(gear, idle.rpm())),
                redline_speed_kmh: drivetrain.speed_kmh(gear, limits.redline.rpm()),
            }
        };
        let gears = drivetrain
            .gears
            .iter()
            .map(|g| result(g, &mut chain))
            .collect();
        let reverse = drivetrain.reverse.as_ref().map(|g| result(g, &mut chain));
        Self {
            gears,
            reverse,
            spread: spread(&drivetrain),
            findings: Vec::new(),
            drivetrain,
        }
    }

    /// The gears of the shift chain, first to top.
    pub fn chain(&self) -> impl Iterator<Item = &GearResult> {
        let is_shifted = |g: &&GearResult| g.gear.role == Some(super::GearRole::Shifted);
        self.gears.iter().filter(is_shifted)
    }

    /// The gear of this set that a gear of another set is compared with.
    ///
    /// The one of the same label; where there is none, top is compared with top.
    pub fn counterpart(&self, other: &Self, gear: &GearResult) -> Option<&GearResult> {
        if gear.gear.role.is_none() {
            return self.reverse.as_ref();
        }
        let same_label = self.gears.iter().find(|g| g.gear.label == gear.gear.label);
        let is_top = other.top().is_some_and(|top| top.gear.id == gear.gear.id);
        same_label.or_else(|| self.top().filter(|_| is_top))
    }

    /// The upshift at which the needle falls furthest, as a share of the shift speed: the gears before
    /// and behind it, and that share. None where there is one gear only; the first of equal ones.
    pub fn widest_drop(&self) -> Option<(&GearResult, &GearResult, f64)> {
        let shifts = self.chain().zip(self.chain().skip(1));
        let drops = shifts.filter_map(|(from, to)| {
            let share = from.upshift.as_ref()?.drop_share();
            Some((from, to, share))
        });
        drops.reduce(|widest, drop| if drop.2 > widest.2 { drop } else { widest })
    }

    /// The top gear of the shift chain.
    pub fn top(&self) -> Option<&GearResult> {
        self.chain().last()
    }
}

/// Steps and upshifts of the chain, handed out gear by gear.
struct ChainFigures {
    steps: Vec<f64>,
    upshifts: Vec<Upshift>,
    next: usize,
}

impl ChainFigures {
    fn of(drivetrain: &Drivetrain) -> Self {
        Self {
            steps: steps(drivetrain),
            upshifts: upshifts(drivetrain),
            next: 0,
        }
    }

    fn next_for(&mut self, gear: &DrivenGear) -> (Option<f64>, Option<f64>, Option<Upshift>) {
        if gear.role != Some(super::GearRole::Shifted) {
            return (None, None, None);
        }
        let at = self.next;
        self.next += 1;
        let step = self.steps.get(at).copied();
        let after = self.steps.get(at + 1).copied();
        let progression = step.zip(after).map(|(step, after)| step / after);
        (step, progression, self.upshifts.get(at).copied())
    }
}
