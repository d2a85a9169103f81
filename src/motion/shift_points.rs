//! Best shift points: where changing up leaves the shortest time to any higher speed.

use super::drive::DrivePiece;
use super::follow::{Met, More, follow};
use super::on_road::OnRoad;
use super::powertrain::{PoweredGear, Powertrain};
use super::run::Driving;

/// How many steps at least the speeds of a change are searched in, besides one at each point of the torque
/// curve.
const LEAST_STEPS: f64 = 48.0;

/// How much sooner in s a change must be there to be better than a later one.
///
/// # Source
/// Our own convention.
const SOONER_S: f64 = 1e-9;

/// The most steps towards a crossing; halving alone takes sixty.
const MOST_STEPS: usize = 100;

impl Powertrain {
    /// The engine speeds in rev/min at which changing up leaves the shortest time to any higher speed, one
    /// for each change of the shift chain, on this road and with this pause.
    ///
    /// With w the speed after the pause from v, and w′ = dw/dv = R(w) ÷ R(v), time is least where
    /// H(v) = aₖ(v) · w′ − aₖ₊₁(w) turns from + to −: without a pause, at equal acceleration. Nothing of it
    /// knows the grip limit, which both gears share. The change comes at the end of the gear where nothing
    /// crosses, and as early as the next gear can be coupled where that is ahead from there on; of several
    /// crossings the one with the least time from the earliest change to the latest, of equal ones the latest.
    ///
    /// # Accuracy
    /// 1e-9 of the engine speed.
    ///
    /// # Source
    /// Derived: d/dv of ∫dv ÷ aₖ to v and ∫dv ÷ aₖ₊₁ from w on. That grip is left out, and the domain, are
    /// our own convention.
    pub fn best_shift_rpms(&self, on_road: &OnRoad, driving: &Driving) -> Vec<f64> {
        let road = on_road.without_grip_limit();
        let gears: Vec<Coupled<'_>> = self.chain().map(|gear| Coupled::on(&road, gear)).collect();
        let changes = gears.windows(2).enumerate();
        let best = changes.map(|(at, pair)| {
            let low_rpm = if at == 0 {
                driving.launch_rpm(self)
            } else {
                self.band.low_rpm()
            };
            let change = Change::new(&road, pair, driving.pause.s());
            let speed_m_s = change.best_m_s(low_rpm);
            let rpm = speed_m_s.map(|speed| pair[0].gear.engine_rpm(speed));
            rpm.map_or_else(|| self.band.high_rpm(), |rpm| self.band.nearest_rpm(rpm))
        });
        best.collect()
    }
}

/// A gear and how it drives with the clutch closed.
struct Coupled<'a> {
    gear: &'a PoweredGear,
    drive: Vec<DrivePiece>,
}

impl<'a> Coupled<'a> {
    fn on(road: &OnRoad, gear: &'a PoweredGear) -> Self {
        Self {
            gear,
            drive: road.drive_in(gear),
        }
    }

    fn acceleration_m_s2(&self, speed_m_s: f64) -> f64 {
        let at = self
            .drive
            .partition_point(|piece| piece.to_m_s() < speed_m_s);
        let piece = self.drive.get(at).or_else(|| self.drive.last());
        piece.map_or(0.0, |piece| piece.acceleration_m_s2(speed_m_s))
    }
}

/// One change, out of a gear into the next.
struct Change<'a> {
    road: &'a OnRoad,
    lower: &'a Coupled<'a>,
    upper: &'a Coupled<'a>,
    neutral_mass_kg: f64,
    neutral: Vec<DrivePiece>,
    pause_s: f64,
}

impl<'a> Change<'a> {
    fn new(road: &'a OnRoad, pair: &'a [Coupled<'a>], pause_s: f64) -> Self {
        let (lower, upper) = (&pair[0], &pair[1]);
        let neutral_mass_kg = road.neutral_mass_kg(lower.gear.rolling_radius_m);
        // Downhill it gets faster in the pause; ten times as fast is beyond every change.
        let to_m_s = 10.0 * lower.gear.high_m_s().max(upper.gear.high_m_s());
        Self {
            road,
            lower,
            upper,
            neutral_mass_kg,
            neutral: road.neutral(neutral_mass_kg, 0.0, to_m_s),
            pause_s,
        }
    }

    /// The best speed in m/s for the change from that of an engine speed in rev/min on; none for the end of
    /// the gear.
    fn best_m_s(&self, low_rpm: f64) -> Option<f64> {
        let high_m_s = self.lower.gear.high_m_s();
        let low_m_s = self.lowest_m_s(self.lower.gear.speed_m_s(low_rpm), high_m_s)?;
        let samples = self.samples(low_m_s, high_m_s);
        let ahead = samples.map(|speed| (speed, self.lead_m_s2(speed)));
        let ahead: Vec<(f64, f64)> = ahead.collect();
        let (first, last) = (ahead.first()?, ahead.last()?);
        let mut candidates = Vec::new();
        if first.1 < 0.0 {
            candidates.push(low_m_s);
        }
        for pair in ahead.windows(2) {
            if pair[0].1 >= 0.0 && pair[1].1 < 0.0 {
                let ends = [pair[0].0, pair[1].0];
                candidates.push(crossing(ends, |speed| self.lead_m_s2(speed)));
            }
        }
        if last.1 >= 0.0 {
            candidates.push(high_m_s);
        }
        let best_m_s = match candidates.as_slice() {
            [only] => *only,
            several => self.soonest_m_s(several, low_m_s, high_m_s)?,
        };
        (best_m_s < high_m_s).then_some(best_m_s)
    }

    /// The lowest speed in m/s of the gear after which the next one can be coupled; none where there is none
    /// below the end.
    fn lowest_m_s(&self, low_m_s: f64, high_m_s: f64) -> Option<f64> {
        let missing = |speed: f64| self.upper.gear.low_m_s() - self.after_pause_m_s(speed);
        if low_m_s >= high_m_s || missing(high_m_s) > 0.0 {
            return None;
        }
        Some(if missing(low_m_s) > 0.0 {
            crossing([low_m_s, high_m_s], missing)
        } else {
            low_m_s
        })
    }

    /// Rising speeds in m/s from one to another, dense enough that no crossing of any weight is missed.
    fn samples(&self, low_m_s: f64, high_m_s: f64) -> impl Iterator<Item = f64> {
        let slower_m_s2 = |speed: f64| self.road.road_load_n(speed) / self.neutral_mass_kg;
        let of_lower = self.lower.drive.iter().map(DrivePiece::to_m_s);
        let of_upper = self.upper.drive.iter().map(|piece| {
            let after_m_s = piece.to_m_s();
            after_m_s + slower_m_s2(after_m_s) * self.pause_s
        });
        let within = |speed: &f64| *speed > low_m_s && *speed < high_m_s;
        let mut knots: Vec<f64> = of_lower.chain(of_upper).filter(within).collect();
        knots.push(low_m_s);
        knots.push(high_m_s);
        knots.sort_by(f64::total_cmp);
        let longest_m_s = (high_m_s - low_m_s) / LEAST_STEPS;
        let spans: Vec<[f64; 2]> = knots.windows(2).map(|pair| [pair[0], pair[1]]).collect();
        let within_spans = spans.into_iter().flat_map(move |[from, to]| {
            let steps = ((to - from) / longest_m_s).ceil().clamp(1.0, LEAST_STEPS);
            let shares = (0..).map(f64::from).take_while(move |step| *step < steps);
            shares.map(move |step| from + (to - from) * (step / steps))
        });
        within_spans.chain([high_m_s])
    }

    /// The speed in m/s after the pause.
    fn after_pause_m_s(&self, speed_m_s: f64) -> f64 {
        if self.pause_s <= 0.0 {
            return speed_m_s;
        }
        let mut after_m_s = speed_m_s;
        let met = follow(&self.neutral, speed_m_s, self.pause_s, |_, stretch, _| {
            after_m_s = stretch.to_m_s();
            More::Asked
        });
        match met {
            Met::Balance(speed) => speed,
            Met::Top | Met::Bottom | Met::Enough => after_m_s,
        }
    }

    /// H in m/s²: by how much staying in the gear is ahead of changing.
    fn lead_m_s2(&self, speed_m_s: f64) -> f64 {
        let after_m_s = self.after_pause_m_s(speed_m_s);
        let (before_n, after_n) = (
            self.road.road_load_n(speed_m_s),
            self.road.road_load_n(after_m_s),
        );
        let slope = if self.pause_s <= 0.0 || before_n == 0.0 {
            1.0
        } else {
            after_n / before_n
        };
        let by_upper = if after_m_s > self.upper.gear.high_m_s() {
            -after_n / self.neutral_mass_kg
        } else {
            self.upper.acceleration_m_s2(after_m_s)
        };
        self.lower.acceleration_m_s2(speed_m_s) * slope - by_upper
    }

    /// The candidate with the least time, the highest of equal ones.
    fn soonest_m_s(&self, candidates: &[f64], low_m_s: f64, high_m_s: f64) -> Option<f64> {
        let end_m_s = self
            .after_pause_m_s(high_m_s)
            .min(self.upper.gear.high_m_s());
        let time_s = |speed: f64| {
            let after_m_s = self.after_pause_m_s(speed);
            self.time_s(self.lower, low_m_s, speed) + self.time_s(self.upper, after_m_s, end_m_s)
        };
        let timed: Vec<(f64, f64)> = candidates.iter().map(|v| (*v, time_s(*v))).collect();
        let least_s = timed.iter().map(|(_, s)| *s).reduce(f64::min)?;
        let soon = timed.iter().rfind(|(_, s)| *s <= least_s + SOONER_S)?;
        Some(soon.0)
    }

    /// The time in s in a gear; endless where it does not get there.
    fn time_s(&self, of: &Coupled<'_>, from_m_s: f64, to_m_s: f64) -> f64 {
        if from_m_s >= to_m_s {
            return 0.0;
        }
        let passage = of.gear.in_gear(self.road, from_m_s, to_m_s);
        passage.map_or(f64::INFINITY, |passage| passage.time_s)
    }
}

/// Where a continuous function changes its sign between two ends at which it has not the same.
fn crossing(ends: [f64; 2], f: impl Fn(f64) -> f64) -> f64 {
    let [mut one, mut other] = ends;
    let (mut at_one, mut at_other) = (f(one), f(other));
    if at_one == 0.0 {
        return one;
    }
    // The rule of false position; an end that stays twice counts half (the Illinois algorithm).
    for step in 0..MOST_STEPS {
        let straight = (one * at_other - other * at_one) / (at_other - at_one);
        let (low, high) = (one.min(other), one.max(other));
        // Every fourth step halves, lest a bend hold it up.
        let next = if step % 4 < 3 && straight > low && straight < high {
            straight
        } else {
            0.5 * (one + other)
        };
        if next <= low || next >= high || high - low <= 4.0 * f64::EPSILON * high.abs() {
            break;
        }
        let at_next = f(next);
        if at_next == 0.0 {
            return next;
        }
        if (at_next > 0.0) == (at_other > 0.0) {
            at_one *= 0.5;
        } else {
            (one, at_one) = (other, at_other);
        }
        (other, at_other) = (next, at_next);
    }
    other
}
