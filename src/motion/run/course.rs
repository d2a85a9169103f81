//! The driver of a run: start, gears, changes and limiter, one after the other.

use super::trace::{Moment, Phase, Run, RunGear, RunPiece};
use super::{Driving, LONGEST_RUN_S, RunGoal};
use crate::motion::cubic::Cubic;
use crate::motion::drive::{DriveLimit, DrivePiece};
use crate::motion::follow::{Met, More, follow};
use crate::motion::on_road::OnRoad;
use crate::motion::powertrain::{PoweredGear, Powertrain};

/// How much longer a speed is held than a distance takes, as a share: rounding must not leave it short.
const ROUNDING: f64 = 1e-12;

/// A speed in m/s that is rolled to by nothing that can be driven.
const BEYOND_ALL_M_S: f64 = 1e6;

/// A run through `gears`, first to last, of which the last is held to the end of its speeds.
pub(super) fn driven(
    powertrain: &Powertrain,
    gears: &[&PoweredGear],
    on_road: &OnRoad,
    driving: &Driving,
    shift_rpms: &[f64],
    goal: RunGoal,
) -> Run {
    let radius_m = gears.first().map_or(1.0, |first| first.rolling_radius_m);
    let launch_rpm = driving.launch_rpm(powertrain);
    let low_rpm = powertrain.band.low_rpm();
    let held = |at: usize| if at == 0 { launch_rpm } else { low_rpm };
    let run_gear = |(at, gear): (usize, &&PoweredGear)| RunGear {
        held_rpm: held(at),
        rpm_per_m_s: gear.engine_rpm(1.0),
        effort_per_nm: gear.effort_of_torque_n(1.0),
        efficiency: gear.efficiency,
        coupled_mass_kg: on_road.coupled_mass_kg(gear),
    };
    let run = Run {
        pieces: Vec::new(),
        shifts: Vec::new(),
        gears: gears.iter().enumerate().map(run_gear).collect(),
        neutral_mass_kg: on_road.neutral_mass_kg(radius_m),
    };
    let mut course = Course {
        powertrain,
        on_road,
        goal,
        run,
        now: Moment::START,
        fastest_m_s: 0.0,
    };
    for (at, gear) in gears.iter().enumerate() {
        let is_last = at + 1 == gears.len();
        let shift_rpm = shift_rpms.get(at).copied().filter(|_| !is_last);
        let leaves = course.drive(at, gear, shift_rpm, is_last);
        if leaves == Leaves::Never || course.is_over() {
            break;
        }
        course.run.shifts.push(course.now);
        course.pause(at, driving.pause.s());
    }
    course.run
}

/// Whether a gear comes to its change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Leaves {
    AtItsChange,
    Never,
}

/// A run under way.
struct Course<'a> {
    powertrain: &'a Powertrain,
    on_road: &'a OnRoad,
    goal: RunGoal,
    run: Run,
    now: Moment,
    fastest_m_s: f64,
}

impl Course<'_> {
    fn is_over(&self) -> bool {
        let is_there =
            self.fastest_m_s >= self.goal.speed_m_s && self.now.distance_m >= self.goal.distance_m;
        is_there || self.now.time_s >= LONGEST_RUN_S
    }

    fn left_s(&self) -> f64 {
        (LONGEST_RUN_S - self.now.time_s).max(0.0)
    }

    /// Drives a gear up to its change, or for as long as there is a run.
    fn drive(
        &mut self,
        at: usize,
        gear: &PoweredGear,
        shift_rpm: Option<f64>,
        is_last: bool,
    ) -> Leaves {
        let band = &self.powertrain.band;
        let held_rpm = self.run.gears[at].held_rpm;
        let closed_m_s = gear.speed_m_s(held_rpm);
        // In first gear not before the clutch has closed; a change that has no number comes at the end.
        let end_m_s = match shift_rpm {
            Some(rpm) if rpm < band.high_rpm() => gear.speed_m_s(rpm.max(held_rpm)),
            Some(_) | None => gear.high_m_s(),
        };
        if is_last && self.now.speed_m_s > end_m_s && !self.slow_down(at, end_m_s) {
            return Leaves::Never;
        }
        if self.now.speed_m_s < closed_m_s && !self.close_clutch(at, gear, closed_m_s) {
            return Leaves::Never;
        }
        if self.now.speed_m_s >= end_m_s && !is_last {
            return Leaves::AtItsChange;
        }
        let pieces = self.on_road.drive_between(gear, closed_m_s, end_m_s);
        match self.follow(at, &pieces, Phase::Coupled) {
            Met::Top if is_last => {
                self.stay(at, Phase::Limiter);
                Leaves::Never
            }
            Met::Top => Leaves::AtItsChange,
            Met::Bottom => {
                self.close_clutch(at, gear, closed_m_s);
                Leaves::Never
            }
            Met::Balance(_) | Met::Enough => Leaves::Never,
        }
    }

    /// Lets the clutch slip until both sides turn alike, which they need not come to.
    fn close_clutch(&mut self, at: usize, gear: &PoweredGear, closed_m_s: f64) -> bool {
        let held_rpm = self.run.gears[at].held_rpm;
        let torque_nm = self.powertrain.band.torque_nm(held_rpm).unwrap_or(0.0);
        let effort = Cubic::constant(gear.effort_of_torque_n(torque_nm), 0.0, closed_m_s);
        let pieces = self.on_road.drive(&[effort], self.run.neutral_mass_kg);
        self.follow(at, &pieces, Phase::Slipping) == Met::Top
    }

    /// Rolls until the gear covers the speed, which need not come.
    fn slow_down(&mut self, at: usize, end_m_s: f64) -> bool {
        let pieces = self.neutral_from(end_m_s);
        self.follow(at, &pieces, |_| Phase::TooFast) == Met::Bottom
    }

    /// Rolls for a time in s between a gear and the next.
    fn pause(&mut self, at: usize, pause_s: f64) {
        let end_s = (self.now.time_s + pause_s).min(LONGEST_RUN_S);
        let left_s = end_s - self.now.time_s;
        if left_s <= 0.0 {
            return;
        }
        let pieces = self.neutral_from(0.0);
        self.follow_for(left_s, at, &pieces, |_| Phase::Pause);
        // Where it has come to stand, or to roll steadily, the rest of the pause goes by.
        if self.now.time_s < end_s && !self.is_over() {
            self.hold(end_s - self.now.time_s, (Phase::Pause, at));
        }
    }

    fn neutral_from(&self, from_m_s: f64) -> Vec<DrivePiece> {
        let to_m_s = BEYOND_ALL_M_S.max(10.0 * self.now.speed_m_s);
        let mass_kg = self.run.neutral_mass_kg;
        self.on_road.neutral(mass_kg, from_m_s, to_m_s)
    }

    /// Follows the pieces to the end of the run; a speed that is come to and stays is held there.
    fn follow(
        &mut self,
        at: usize,
        pieces: &[DrivePiece],
        phase: impl Fn(DriveLimit) -> Phase,
    ) -> Met {
        let met = self.follow_for(self.left_s(), at, pieces, &phase);
        if let Met::Balance(_) = met {
            let limit = pieces
                .iter()
                .find(|piece| self.now.speed_m_s <= piece.to_m_s());
            self.stay(
                at,
                phase(limit.map_or(DriveLimit::Engine, |piece| piece.limit)),
            );
        }
        met
    }

    fn follow_for(
        &mut self,
        most_s: f64,
        at: usize,
        pieces: &[DrivePiece],
        phase: impl Fn(DriveLimit) -> Phase,
    ) -> Met {
        let from_m_s = self.now.speed_m_s;
        let met = follow(pieces, from_m_s, most_s, |piece, stretch, passage| {
            let what = (phase(piece.limit), at);
            self.push(RunPiece::changing(self.now, stretch, passage, piece, what));
            if self.is_over() {
                More::Enough
            } else {
                More::Asked
            }
        });
        if let Met::Balance(speed_m_s) = met {
            self.now.speed_m_s = speed_m_s;
        }
        met
    }

    fn push(&mut self, piece: RunPiece) {
        self.now = piece.to;
        self.fastest_m_s = self.fastest_m_s.max(self.now.speed_m_s);
        self.run.pieces.push(piece);
    }

    /// Keeps the speed until the distance is gone or the time is over; who stands has arrived.
    fn stay(&mut self, at: usize, phase: Phase) {
        let speed_m_s = self.now.speed_m_s;
        if speed_m_s <= 0.0 || self.is_over() {
            return;
        }
        let left_m = self.goal.distance_m - self.now.distance_m;
        let is_fast_enough = self.fastest_m_s >= self.goal.speed_m_s;
        let needed_s = if is_fast_enough {
            left_m / speed_m_s * (1.0 + ROUNDING)
        } else {
            f64::INFINITY
        };
        self.hold(needed_s.min(self.left_s()), (phase, at));
    }

    fn hold(&mut self, time_s: f64, what: (Phase, usize)) {
        let load_n = self.on_road.road_load_n(self.now.speed_m_s);
        self.push(RunPiece::steady(self.now, time_s, load_n, what));
    }
}
