//! Full-load drive over the road speed, cut into pieces in which the acceleration is one cubic.

use super::cubic::Cubic;
use super::on_road::OnRoad;
use super::powertrain::PoweredGear;

/// What holds the acceleration down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DriveLimit {
    /// The engine's torque.
    Engine,
    /// The grip of the driven tyres.
    Grip,
}

/// A stretch of road speeds in which the acceleration is one cubic ÷ mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrivePiece {
    /// The force at the driven tyres in N, over the road speed in m/s.
    pub push: Cubic,
    /// That force less the road load in N, over the road speed in m/s.
    pub surplus: Cubic,
    /// What has to be sped up by it, in kg: with what turns where the engine is the limit, without it
    /// where grip is.
    pub mass_kg: f64,
    /// What holds the acceleration down.
    pub limit: DriveLimit,
}

impl DrivePiece {
    /// The lower end in m/s.
    pub fn from_m_s(&self) -> f64 {
        self.push.from
    }

    /// The upper end in m/s.
    pub fn to_m_s(&self) -> f64 {
        self.push.to
    }

    /// The part of it between two road speeds in m/s, which lie within its own ends.
    #[must_use]
    pub(super) fn between(&self, from_m_s: f64, to_m_s: f64) -> Self {
        Self {
            push: self.push.between(from_m_s, to_m_s),
            surplus: self.surplus.between(from_m_s, to_m_s),
            ..*self
        }
    }

    /// The acceleration in m/s² at a road speed in m/s within the piece.
    pub fn acceleration_m_s2(&self, speed_m_s: f64) -> f64 {
        self.surplus.at(speed_m_s) / self.mass_kg
    }
}

impl OnRoad {
    /// Full-load drive in a gear with the clutch closed, over all road speeds that the gear covers.
    pub fn drive_in(&self, gear: &PoweredGear) -> Vec<DrivePiece> {
        self.drive(gear.pieces(), self.coupled_mass_kg(gear))
    }

    /// Drive by an effort in N over the road speed in m/s, which speeds up `mass_kg`, cut where one limit
    /// gives way to another and where a wind from behind is reached.
    ///
    /// In each piece the acceleration is the smaller of what engine and grip allow, as in
    /// [`PoweredGear::acceleration_m_s2`].
    pub fn drive(&self, effort: &[Cubic], mass_kg: f64) -> Vec<DrivePiece> {
        self.drive_by(effort, &self.grip_lines(), mass_kg)
    }

    /// Rolling in neutral, where nothing drives and nothing asks for grip: `mass_kg` under the road load
    /// alone, from one road speed in m/s to another.
    pub(super) fn neutral(&self, mass_kg: f64, from_m_s: f64, to_m_s: f64) -> Vec<DrivePiece> {
        self.drive_by(&[Cubic::constant(0.0, from_m_s, to_m_s)], &[], mass_kg)
    }

    /// [`Self::drive_in`] from one road speed in m/s to another, which the gear need not cover.
    pub(super) fn drive_between(
        &self,
        gear: &PoweredGear,
        from_m_s: f64,
        to_m_s: f64,
    ) -> Vec<DrivePiece> {
        let parts = gear.pieces().iter().filter_map(|piece| {
            let (from, to) = (piece.from.max(from_m_s), piece.to.min(to_m_s));
            (from < to).then(|| piece.between(from, to))
        });
        let effort: Vec<Cubic> = parts.collect();
        self.drive(&effort, self.coupled_mass_kg(gear))
    }

    fn drive_by(&self, effort: &[Cubic], lines: &[[f64; 2]], mass_kg: f64) -> Vec<DrivePiece> {
        let mut cuts: Vec<f64> = self.road_load().turns_at_m_s().into_iter().collect();
        cuts.extend(kinks(lines));
        let mut pieces = Vec::with_capacity(effort.len() + 2);
        for whole in effort {
            for part in parts(whole, &cuts) {
                self.drive_within(&part, lines, mass_kg, &mut pieces);
            }
        }
        pieces
    }

    /// The pieces of a stretch in which one line of grip holds and the road load is one parabola.
    fn drive_within(
        &self,
        effort: &Cubic,
        lines: &[[f64; 2]],
        mass_kg: f64,
        pieces: &mut Vec<DrivePiece>,
    ) {
        let (origin, from, to) = (effort.origin, effort.from, effort.to);
        let load = self.road_load().about(origin, from, to);
        let by_engine = DrivePiece {
            push: *effort,
            surplus: effort.minus(&load),
            mass_kg,
            limit: DriveLimit::Engine,
        };
        let Some(grip) = grip_about(lines, origin, from, to) else {
            pieces.push(by_engine);
            return;
        };
        let by_grip = DrivePiece {
            push: grip,
            surplus: grip.minus(&load),
            mass_kg: self.mass_kg(),
            limit: DriveLimit::Grip,
        };
        let share = self.mass_kg() / mass_kg;
        let ahead = by_engine.surplus.scaled(share).minus(&by_grip.surplus);
        for part in parts(&ahead, &ahead.roots()) {
            let is_gripping = ahead.at(0.5 * (part.from + part.to)) <= 0.0;
            let limiting = if is_gripping { by_engine } else { by_grip };
            pieces.push(limiting.between(part.from, part.to));
        }
    }
}

/// The parts of a cubic between its ends and those of `cuts` that lie within.
fn parts(whole: &Cubic, cuts: &[f64]) -> Vec<Cubic> {
    let within = |cut: &f64| *cut > whole.from && *cut < whole.to;
    let mut ends: Vec<f64> = cuts.iter().copied().filter(within).collect();
    ends.extend([whole.from, whole.to]);
    ends.sort_by(f64::total_cmp);
    let pairs = ends.windows(2).filter(|pair| pair[0] < pair[1]);
    pairs.map(|pair| whole.between(pair[0], pair[1])).collect()
}

/// Road speeds at which one line of grip may give way to another, or to none at all.
fn kinks(lines: &[[f64; 2]]) -> Vec<f64> {
    let zeros = lines.iter().map(|line| -line[0] / line[1]);
    let crossings = lines.windows(2).map(|pair| {
        let [one, other] = [pair[0], pair[1]];
        (other[0] - one[0]) / (one[1] - other[1])
    });
    zeros.chain(crossings).filter(|v| v.is_finite()).collect()
}

/// The grip limit over a stretch without a kink, about `origin`; none where there is no limit.
fn grip_about(lines: &[[f64; 2]], origin: f64, from: f64, to: f64) -> Option<Cubic> {
    let middle = 0.5 * (from + to);
    let force = |line: &[f64; 2]| line[0] + line[1] * middle;
    let lowest = lines.iter().min_by(|a, b| force(a).total_cmp(&force(b)))?;
    let [at_rest, slope] = if force(lowest) > 0.0 {
        *lowest
    } else {
        [0.0; 2]
    };
    Some(Cubic {
        origin,
        from,
        to,
        coefficients: [at_rest + slope * origin, slope, 0.0, 0.0],
    })
}
