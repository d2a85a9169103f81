//! Findings of motion: what is strange about a set once its engine, its vehicle and its road are known.
//!
//! As everywhere a finding is shown, never an error. Where nothing of it can be mended by other gears or
//! another choice, nothing is said: an engine that is best driven to its redline is no finding.

mod kind;

pub use kind::MotionFindingKind;

use super::gradient::Start;
use super::on_road::OnRoad;
use super::powertrain::{PoweredGear, Powertrain};
use super::quantity::Grade;
use super::run::Driving;
use super::top_speed::GearedFor;
use super::vehicle::{LoadCase, Vehicle};
use crate::gearing::{EngineLimits, EngineSpeed, GearRole, RoadSpeed};
use crate::units::{KMH_PER_M_S, SpeedUnit};
use std::fmt;

/// How far beyond the redline a best shift point is worth a word. There both gears pull alike, so what lies
/// nearer costs a few hundredths of a second at most.
const WELL_BEYOND_REDLINE: f64 = 1.05;

/// A speed this much higher is clearly faster: 2 % of a top speed are 6 % of the power, and nearer no road
/// load is known.
const CLEARLY_FASTER: f64 = 1.02;

/// Something valid but strange; as text one sentence.
#[derive(Debug, Clone, PartialEq)]
pub struct MotionFinding {
    /// The label of the gear it is about; none where it is about the whole set.
    pub gear: Option<String>,
    /// What is strange.
    pub kind: MotionFindingKind,
}

impl fmt::Display for MotionFinding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.kind.fmt(f)
    }
}

/// A set behind its engine, the vehicle and road that it is in, and what is asked of it.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The vehicle.
    pub vehicle: &'a Vehicle,
    /// What it carries, pulls and meets.
    pub load: &'a LoadCase,
    /// How steep the road is on which it starts.
    pub grade: Grade,
    /// How it is started and shifted.
    pub driving: &'a Driving,
    /// The gears behind their engine.
    pub powertrain: &'a Powertrain,
    /// The same behind an engine that no redline holds back; none where nothing is known of it there.
    pub beyond_redline: Option<&'a Powertrain>,
    /// Which engine speeds are useful.
    pub limits: &'a EngineLimits,
    /// The road speeds that are always wanted.
    pub marked: &'a [RoadSpeed],
    /// The unit that they are told in.
    pub unit: SpeedUnit,
}

impl Asked<'_> {
    /// What is strange, from the first gear's start to top gear's speed.
    pub fn findings(&self) -> Vec<MotionFinding> {
        let found = [
            self.start(),
            self.best_beyond_redline(),
            self.not_held_in_top(),
            self.beyond_top_speed(),
        ];
        found.into_iter().flatten().collect()
    }

    /// First does not start on the road, on which a crawler might.
    fn start(&self) -> Option<MotionFinding> {
        let first = self.powertrain.chain().next()?;
        let on_road = OnRoad::new(self.vehicle, self.load, self.grade);
        let launch_rpm = self.driving.launch_rpm(self.powertrain);
        let grade_percent = self.grade.percent();
        // Without a limit it starts on every road.
        let barred = |gear| {
            let start = self.powertrain.start_in(gear, &on_road, launch_rpm);
            start.filter(|start| start.steepest_percent <= grade_percent)
        };
        let Start {
            steepest_percent,
            limit,
        } = barred(first)?;
        let gears = self.powertrain.gears.iter();
        let mut crawlers = gears.filter(|gear| gear.gear.role == Some(GearRole::Crawler));
        let crawler = crawlers.find(|gear| barred(gear).is_none());
        let crawler = crawler.map(|gear| gear.gear.label.clone());
        Some(of_gear(first, |gear| MotionFindingKind::DoesNotStart {
            gear,
            grade_percent,
            steepest_percent,
            limit,
            crawler,
        }))
    }

    /// Changes whose best point lies well beyond the redline, where the torque curve is known to it and
    /// beyond: where it only ends, nothing is known of a better one.
    fn best_beyond_redline(&self) -> Option<MotionFinding> {
        let free = self.beyond_redline?;
        let (redline_rpm, end_rpm) = (self.limits.redline.rpm(), free.band.high_rpm());
        let least_rpm = redline_rpm * WELL_BEYOND_REDLINE;
        if end_rpm <= least_rpm {
            return None;
        }
        let on_road = OnRoad::new(self.vehicle, self.load, self.grade);
        let best_rpms = free.best_shift_rpms(&on_road, self.driving);
        let labels: Vec<&String> = free.chain().map(|gear| &gear.gear.label).collect();
        let changes = labels.windows(2).zip(best_rpms);
        let changes = changes.filter(|(_, rpm)| *rpm > least_rpm && *rpm < end_rpm);
        let changes: Vec<_> = changes
            .map(|(pair, rpm)| ([pair[0].clone(), pair[1].clone()], rpm))
            .collect();
        (!changes.is_empty()).then_some(MotionFinding {
            gear: None,
            kind: MotionFindingKind::BestShiftBeyondRedline {
                changes,
                redline_rpm,
            },
        })
    }

    /// Marked speeds that top gear does not hold on the level, be it for want of power or beyond the redline.
    /// Where it would turn slower than is useful nobody drives in top, so nothing is said.
    fn not_held_in_top(&self) -> Option<MotionFinding> {
        let top = self.powertrain.top()?;
        let on_road = OnRoad::new(self.vehicle, self.load, Grade::LEVEL);
        let is_held = |gear: &PoweredGear, speed: &RoadSpeed| {
            let cruise = self.powertrain.cruise(gear, &on_road, m_s(*speed));
            cruise.held.is_some()
        };
        let lowest_rpm = self.limits.lowest_useful.map_or(0.0, EngineSpeed::rpm);
        let lowest_rpm = lowest_rpm.max(self.powertrain.band.low_rpm());
        let is_useful = |speed: &RoadSpeed| top.engine_rpm(m_s(*speed)) >= lowest_rpm;
        let marked = self.marked.iter().copied();
        let missed: Vec<RoadSpeed> = marked
            .filter(|speed| is_useful(speed) && !is_held(top, speed))
            .collect();
        let lower = || self.powertrain.chain().rev().skip(1);
        let held_lower = missed.iter().rev().find_map(|speed| {
            let gear = lower().find(|gear| is_held(gear, speed))?;
            Some((speed.kmh(), gear.gear.label.clone()))
        });
        let speeds_kmh: Vec<f64> = missed.iter().copied().map(RoadSpeed::kmh).collect();
        let not_held = |gear| MotionFindingKind::NotHeldInTop {
            gear,
            speeds_kmh,
            held_lower,
            load: *self.load,
            unit: self.unit,
        };
        (!missed.is_empty()).then(|| of_gear(top, not_held))
    }

    /// Top gear is so tall that a lower gear is faster, or a shorter one would be.
    fn beyond_top_speed(&self) -> Option<MotionFinding> {
        let (vehicle, load, unit) = (self.vehicle, self.load, self.unit);
        let top = self.powertrain.top()?;
        let top_m_s = top.top_speed(vehicle, load).map(|top| top.speed_m_s);
        let is_clearly_faster =
            |m_s: f64| top_m_s.is_none_or(|top_m_s| m_s > top_m_s * CLEARLY_FASTER);
        let top_kmh = top_m_s.map(kmh);
        let (fastest, fastest_speed) = self.powertrain.top_speed(vehicle, load)?;
        if is_clearly_faster(fastest_speed.speed_m_s) {
            return Some(of_gear(top, |gear| MotionFindingKind::Overdrive {
                gear,
                top_speed_kmh: top_kmh,
                fastest: fastest.gear.label.clone(),
                fastest_kmh: kmh(fastest_speed.speed_m_s),
                unit,
            }));
        }
        let gearing = self.powertrain.top_gearing(vehicle, load)?;
        let reachable_m_s = top.speed_m_s(gearing.engine_rpm?);
        let is_beyond = gearing.geared_for == GearedFor::BeyondTopSpeed;
        let top_speed_kmh = top_kmh.filter(|_| is_beyond && is_clearly_faster(reachable_m_s))?;
        Some(of_gear(top, |gear| {
            MotionFindingKind::GearedBeyondTopSpeed {
                gear,
                top_speed_kmh,
                reachable_kmh: kmh(reachable_m_s),
                unit,
            }
        }))
    }
}

/// Something strange about a gear, which is told with it.
fn of_gear(gear: &PoweredGear, kind: impl FnOnce(String) -> MotionFindingKind) -> MotionFinding {
    let label = &gear.gear.label;
    MotionFinding {
        gear: Some(label.clone()),
        kind: kind(label.clone()),
    }
}

fn m_s(speed: RoadSpeed) -> f64 {
    speed.kmh() / KMH_PER_M_S
}

fn kmh(speed_m_s: f64) -> f64 {
    speed_m_s * KMH_PER_M_S
}
