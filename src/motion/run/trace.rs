//! The trace of a run: speed and distance against time, in pieces that can be asked anywhere.

use crate::motion::cubic::Cubic;
use crate::motion::drive::{DriveLimit, DrivePiece};
use crate::motion::stretch::{Passage, Stretch};

/// How far below a target speed counts as there, as a share: what rounding leaves open of a limiter that
/// holds just that speed.
const ROUNDING: f64 = 1e-12;

/// Where a run is at a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// The time from standstill, in s.
    pub time_s: f64,
    /// The way from there, in m.
    pub distance_m: f64,
    /// The road speed in m/s.
    pub speed_m_s: f64,
}

impl Moment {
    /// At rest, with the clock about to start.
    pub(super) const START: Self = Self {
        time_s: 0.0,
        distance_m: 0.0,
        speed_m_s: 0.0,
    };

    pub(super) fn after(self, passage: Passage, speed_m_s: f64) -> Self {
        Self {
            time_s: self.time_s + passage.time_s,
            distance_m: self.distance_m + passage.distance_m,
            // The last digit of a sum must not roll it backwards.
            speed_m_s: speed_m_s.max(0.0),
        }
    }
}

/// What goes on in a piece of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    /// The clutch slips, with the engine held.
    Slipping(DriveLimit),
    /// The clutch is closed.
    Coupled(DriveLimit),
    /// Neither gear is in, between this one and the next.
    Pause,
    /// The gear is in, and the road speed above what it covers: nothing drives.
    TooFast,
    /// The limiter holds the engine at the highest speed of the band.
    Limiter,
}

/// A gear of a run, and what its clutch and its engine do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunGear {
    /// The engine speed in rev/min while its clutch slips.
    pub held_rpm: f64,
    /// The engine speed over the road speed while its clutch holds, in rev/min for each m/s.
    pub rpm_per_m_s: f64,
    /// The tractive effort in N that 1 N·m at the crank makes.
    pub effort_per_nm: f64,
    /// The power at the wheels over that at the crank.
    pub efficiency: f64,
    /// mₖ in kg: what has to be sped up while its clutch holds.
    pub coupled_mass_kg: f64,
}

/// How the speed goes in a piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Going {
    /// It stays.
    Steady,
    /// By a law.
    Changing(Stretch),
}

/// A piece of a run in which one law holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunPiece {
    /// Where it begins.
    pub from: Moment,
    /// Where it ends.
    pub to: Moment,
    /// What goes on in it.
    pub phase: Phase,
    /// Which gear is in or was in last, counted from 0 along the shift chain.
    pub gear: usize,
    pub(super) going: Going,
    /// The road load in N over the road speed in m/s: what the surplus leaves of the push.
    pub(super) load: Cubic,
}

impl RunPiece {
    pub(super) fn changing(
        from: Moment,
        stretch: Stretch,
        passage: Passage,
        piece: &DrivePiece,
        (phase, gear): (Phase, usize),
    ) -> Self {
        Self {
            from,
            to: from.after(passage, stretch.to_m_s()),
            phase,
            gear,
            going: Going::Changing(stretch),
            load: piece.push.minus(&piece.surplus),
        }
    }

    /// A speed that is held for a time in s against a load in N.
    pub(super) fn steady(
        from: Moment,
        time_s: f64,
        load_n: f64,
        (phase, gear): (Phase, usize),
    ) -> Self {
        let passage = Passage {
            time_s,
            distance_m: from.speed_m_s * time_s,
        };
        Self {
            from,
            to: from.after(passage, from.speed_m_s),
            phase,
            gear,
            going: Going::Steady,
            load: Cubic::constant(load_n, from.speed_m_s, from.speed_m_s),
        }
    }

    /// The acceleration in m/s² at a road speed in m/s that is passed in it.
    pub fn acceleration_m_s2(&self, speed_m_s: f64) -> f64 {
        match self.going {
            Going::Steady => 0.0,
            Going::Changing(stretch) => stretch.acceleration_m_s2(speed_m_s),
        }
    }

    /// The highest road speed in m/s that it comes to by itself.
    fn highest_m_s(&self) -> f64 {
        match self.going {
            Going::Steady => self.from.speed_m_s,
            Going::Changing(_) => self.from.speed_m_s.max(self.to.speed_m_s),
        }
    }

    fn after_s(&self, time_s: f64) -> Moment {
        let (gain_m_s, way) = match &self.going {
            Going::Steady => {
                let distance_m = self.from.speed_m_s * time_s;
                (0.0, Passage { time_s, distance_m })
            }
            Going::Changing(stretch) => stretch.after_s(time_s),
        };
        self.from.after(way, self.from.speed_m_s + gain_m_s)
    }

    fn after_m(&self, distance_m: f64) -> Moment {
        let (gain_m_s, way) = match &self.going {
            Going::Steady => {
                let time_s = distance_m / self.from.speed_m_s;
                (0.0, Passage { time_s, distance_m })
            }
            Going::Changing(stretch) => stretch.after_m(distance_m),
        };
        self.from.after(way, self.from.speed_m_s + gain_m_s)
    }

    fn at_m_s(&self, speed_m_s: f64) -> Moment {
        match &self.going {
            Going::Steady => self.from,
            Going::Changing(stretch) => {
                let way = stretch.passage_to(stretch.gain_to_m_s(speed_m_s));
                self.from.after(way, speed_m_s)
            }
        }
    }
}

/// A run from rest: speed and distance against time.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    pub(super) pieces: Vec<RunPiece>,
    pub(super) shifts: Vec<Moment>,
    pub(super) gears: Vec<RunGear>,
    /// m0 in kg.
    pub(super) neutral_mass_kg: f64,
}

impl Run {
    /// Its pieces, each from where the one before ends; none where the vehicle does not move.
    pub fn pieces(&self) -> &[RunPiece] {
        &self.pieces
    }

    /// Where its changes of gear begin: the first is out of the first gear of the chain, the next out of the
    /// next.
    pub fn shifts(&self) -> &[Moment] {
        &self.shifts
    }

    /// The gears of its chain, first to top.
    pub fn gears(&self) -> &[RunGear] {
        &self.gears
    }

    /// Where it ends.
    pub fn end(&self) -> Moment {
        self.pieces.last().map_or(Moment::START, |piece| piece.to)
    }

    /// Where it is at a time in s; none before it begins and after it ends.
    pub fn at_time(&self, time_s: f64) -> Option<Moment> {
        let after = self
            .pieces
            .partition_point(|piece| piece.to.time_s < time_s);
        let piece = self.pieces.get(after)?;
        (time_s >= 0.0).then(|| piece.after_s(time_s - piece.from.time_s))
    }

    /// When it has gone a distance in m for the first time; none where it does not.
    pub fn at_distance(&self, distance_m: f64) -> Option<Moment> {
        let gone = |piece: &RunPiece| piece.to.distance_m < distance_m;
        let piece = self.pieces.get(self.pieces.partition_point(gone))?;
        // Where nothing is left to go, the piece may stand.
        let left_m = (distance_m - piece.from.distance_m).max(0.0);
        Some(if left_m > 0.0 {
            piece.after_m(left_m)
        } else {
            piece.from
        })
    }

    /// When it reaches a road speed in m/s for the first time; none where it does not.
    ///
    /// A speed that it only comes nearer and nearer to is never reached.
    pub fn at_speed(&self, speed_m_s: f64) -> Option<Moment> {
        let is_reached = |piece: &&RunPiece| piece.highest_m_s() >= speed_m_s * (1.0 - ROUNDING);
        let changing = |piece: &&RunPiece| matches!(piece.going, Going::Changing(_));
        let mut moving = self.pieces.iter().filter(changing);
        let piece = moving.find(is_reached)?;
        let lowest_m_s = piece.from.speed_m_s.min(piece.to.speed_m_s);
        Some(piece.at_m_s(speed_m_s.clamp(lowest_m_s, piece.highest_m_s())))
    }

    /// The engine speed in rev/min in one of its pieces at a road speed in m/s; none where no gear drives.
    pub fn engine_rpm(&self, piece: &RunPiece, speed_m_s: f64) -> Option<f64> {
        let gear = self.gears.get(piece.gear)?;
        match piece.phase {
            Phase::Slipping(_) => Some(gear.held_rpm),
            Phase::Coupled(_) | Phase::Limiter => Some(gear.rpm_per_m_s * speed_m_s),
            Phase::Pause | Phase::TooFast => None,
        }
    }
}
