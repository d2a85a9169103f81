//! Where the energy of a run goes: what the crank gives is found again in slip, gears, masses and load.

use super::trace::{Going, Phase, Run, RunGear, RunPiece};
use crate::motion::engine::RAD_S_PER_RPM;

/// The energies of some pieces of a run, in J.
///
/// Crank = clutch + driveline + engine + vehicle + load, and wheel = vehicle + load + η · engine, both but
/// for pieces in which nothing drives: there the vehicle alone gives what the load takes. What the engine
/// loses where a change slows it down is outside all of them.
///
/// # Source
/// Definition: the equation of motion times the speed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RunEnergy {
    /// What the crank gives: ∫Tω dt.
    pub crank_j: f64,
    /// What reaches the driven wheels, theirs and the engine's inertia included: ∫F·v dt.
    pub wheel_j: f64,
    /// What a slipping clutch turns into heat.
    pub clutch_j: f64,
    /// What the gears turn into heat.
    pub driveline_j: f64,
    /// What has gone into turning the engine while its clutch held: ½·Iₑ·ω².
    pub engine_j: f64,
    /// What the vehicle and its wheels have gained: ½·m0·v².
    pub vehicle_j: f64,
    /// What the road load has taken: ∫R·v dt.
    pub load_j: f64,
}

impl RunEnergy {
    fn and(self, next: Self) -> Self {
        Self {
            crank_j: self.crank_j + next.crank_j,
            wheel_j: self.wheel_j + next.wheel_j,
            clutch_j: self.clutch_j + next.clutch_j,
            driveline_j: self.driveline_j + next.driveline_j,
            engine_j: self.engine_j + next.engine_j,
            vehicle_j: self.vehicle_j + next.vehicle_j,
            load_j: self.load_j + next.load_j,
        }
    }
}

impl Run {
    /// The energies of some of its pieces.
    pub fn energy(&self, pieces: &[RunPiece]) -> RunEnergy {
        let of_pieces = pieces.iter().map(|piece| self.energy_of(piece));
        of_pieces.fold(RunEnergy::default(), RunEnergy::and)
    }

    fn energy_of(&self, piece: &RunPiece) -> RunEnergy {
        let rolling = self.rolling(piece);
        let Some(gear) = self.gears.get(piece.gear) else {
            return rolling;
        };
        match piece.phase {
            Phase::Pause | Phase::TooFast => rolling,
            Phase::Slipping(_) => self.slipping(piece, gear, rolling),
            Phase::Coupled(_) | Phase::Limiter => self.coupled(piece, gear, rolling),
        }
    }

    /// What vehicle and load alone exchange.
    fn rolling(&self, piece: &RunPiece) -> RunEnergy {
        let load_j = match &piece.going {
            Going::Steady => {
                let way_m = piece.to.distance_m - piece.from.distance_m;
                piece.load.at(piece.from.speed_m_s) * way_m
            }
            Going::Changing(stretch) => stretch.integral(|speed| piece.load.at(speed) * speed),
        };
        RunEnergy {
            vehicle_j: self.neutral_mass_kg * half_square_gained(piece),
            load_j,
            ..RunEnergy::default()
        }
    }

    fn slipping(&self, piece: &RunPiece, gear: &RunGear, rolling: RunEnergy) -> RunEnergy {
        let load_ns = match &piece.going {
            Going::Steady => {
                let time_s = piece.to.time_s - piece.from.time_s;
                piece.load.at(piece.from.speed_m_s) * time_s
            }
            Going::Changing(stretch) => stretch.integral(|speed| piece.load.at(speed)),
        };
        // The effort in Ns, which the engine makes at one speed.
        let gained_m_s = piece.to.speed_m_s - piece.from.speed_m_s;
        let effort_ns = self.neutral_mass_kg * gained_m_s + load_ns;
        let crank_j = effort_ns / gear.effort_per_nm * gear.held_rpm * RAD_S_PER_RPM;
        let wheel_j = rolling.vehicle_j + rolling.load_j;
        let behind_clutch_j = wheel_j / gear.efficiency;
        RunEnergy {
            crank_j,
            wheel_j,
            clutch_j: crank_j - behind_clutch_j,
            driveline_j: behind_clutch_j - wheel_j,
            ..rolling
        }
    }

    fn coupled(&self, piece: &RunPiece, gear: &RunGear, rolling: RunEnergy) -> RunEnergy {
        let turning_kg = gear.coupled_mass_kg - self.neutral_mass_kg;
        let at_wheels_j = turning_kg * half_square_gained(piece);
        let wheel_j = rolling.vehicle_j + rolling.load_j + at_wheels_j;
        let (crank_j, engine_j) = (wheel_j / gear.efficiency, at_wheels_j / gear.efficiency);
        RunEnergy {
            crank_j,
            wheel_j,
            driveline_j: (1.0 - gear.efficiency) * (crank_j - engine_j),
            engine_j,
            ..rolling
        }
    }
}

/// ½(v₂² − v₁²) in m²/s², without losing the digits of a small gain.
fn half_square_gained(piece: &RunPiece) -> f64 {
    let (from, to) = (piece.from.speed_m_s, piece.to.speed_m_s);
    0.5 * (to - from) * (to + from)
}
