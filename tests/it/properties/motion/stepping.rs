//! The second method: plain steps in time (Runge and Kutta, fourth order) that are cut short at every event.
//! It is written from the equation of motion and shares no code with the program.

use crate::support::plain_vehicle::{Held, Plain};
use layshaft::motion::DrivenAxle;

const GRAVITY_M_S2: f64 = 9.80665;
const AIR_KG_M3: f64 = 1.2041;
const STEP_S: f64 = 4e-3;

/// A run by steps in time.
#[derive(Debug, Default)]
pub(super) struct Stepped {
    /// For each target speed the time, the distance and the acceleration when it is reached.
    pub(super) speeds: Vec<Option<(f64, f64, f64)>>,
    /// For each distance the time, the speed and the acceleration when it is gone.
    pub(super) distances: Vec<Option<(f64, f64, f64)>>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Mode {
    /// Engine held, the torque in N·m; whether grip limits.
    Slipping(f64, bool),
    /// The span of the torque curve; whether grip limits.
    Coupled(usize, bool),
    Neutral,
}

struct Stepper<'a> {
    plain: &'a Plain,
    speeds_rpm: Vec<f64>,
    spans: Vec<[f64; 4]>,
    low_rpm: f64,
    high_rpm: f64,
    angle: f64,
}

impl<'a> Stepper<'a> {
    fn new(plain: &'a Plain) -> Self {
        let speeds_rpm: Vec<f64> = plain.points.iter().map(|point| point.0).collect();
        let last = speeds_rpm[speeds_rpm.len() - 1];
        Self {
            low_rpm: speeds_rpm[0].max(plain.idle_rpm),
            high_rpm: last.min(plain.redline_rpm),
            spans: hermite(&plain.points),
            speeds_rpm,
            angle: (plain.grade_percent / 100.0).atan(),
            plain,
        }
    }

    /// Turns of the engine in rev/min for each m/s.
    fn rpm_per_m_s(&self, gear: usize) -> f64 {
        let i = self.plain.ratios[gear] * self.plain.final_drive;
        i * 60_000.0 / self.plain.circumference_mm
    }

    fn load_n(&self, v: f64) -> f64 {
        let (m, wind) = (self.plain.mass_kg, v + self.plain.headwind_kmh / 3.6);
        let (rolling, air) = match self.plain.held {
            Held::Estimated(f, area) => (
                f * m * GRAVITY_M_S2 * self.angle.cos(),
                0.5 * AIR_KG_M3 * area,
            ),
            Held::Measured(a, b, c) => (a + b * v, c),
        };
        rolling + air * wind * wind.abs() + m * GRAVITY_M_S2 * self.angle.sin()
    }

    fn grip_n(&self, v: f64) -> f64 {
        let Some(tyres) = self.plain.tyres else {
            return f64::INFINITY;
        };
        let (mu, s) = (tyres.adhesion, tyres.front_share);
        let n = self.plain.mass_kg * GRAVITY_M_S2 * self.angle.cos();
        let q = tyres
            .transfer
            .map_or(0.0, |(length, height)| height / length);
        let rolling = match self.plain.held {
            Held::Estimated(f, _) => f * n,
            Held::Measured(a, b, _) => a + b * v,
        };
        let lift = if q > 0.0 {
            s * n / q + rolling
        } else {
            f64::INFINITY
        };
        let force = match tyres.driven {
            DrivenAxle::Front => mu * (s * n + q * rolling) / (1.0 + mu * q),
            DrivenAxle::Rear if mu * q >= 1.0 => lift,
            DrivenAxle::Rear => (mu * ((1.0 - s) * n - q * rolling) / (1.0 - mu * q)).min(lift),
            DrivenAxle::All => (mu * n).min(lift),
        };
        force.max(0.0)
    }

    fn neutral_kg(&self) -> f64 {
        let (m, r) = (self.plain.mass_kg, self.plain.radius_m());
        self.plain
            .inertias
            .map_or(1.04 * m, |(_, wheels)| m + wheels / (r * r))
    }

    fn coupled_kg(&self, gear: usize) -> f64 {
        let (m, r) = (self.plain.mass_kg, self.plain.radius_m());
        let i = self.plain.ratios[gear] * self.plain.final_drive;
        match self.plain.inertias {
            Some((engine, _)) => {
                self.neutral_kg() + self.plain.efficiency * engine * i * i / (r * r)
            }
            None => m * (1.04 + 0.0025 * i * i),
        }
    }

    /// By the engine and by grip.
    fn both(&self, gear: usize, mode: Mode, v: f64) -> (f64, f64) {
        let i = self.plain.ratios[gear] * self.plain.final_drive;
        let (torque, mass) = match mode {
            Mode::Slipping(torque, _) => (torque, self.neutral_kg()),
            Mode::Coupled(span, _) => {
                let x = v * self.rpm_per_m_s(gear) - self.speeds_rpm[span];
                let [c0, c1, c2, c3] = self.spans[span];
                (c0 + x * (c1 + x * (c2 + x * c3)), self.coupled_kg(gear))
            }
            Mode::Neutral => (0.0, self.neutral_kg()),
        };
        let effort = self.plain.efficiency * torque * i / self.plain.radius_m();
        let load = self.load_n(v);
        let by_grip = (self.grip_n(v) - load) / self.plain.mass_kg;
        ((effort - load) / mass, by_grip)
    }

    fn acceleration(&self, gear: usize, mode: Mode, v: f64) -> f64 {
        let (by_engine, by_grip) = self.both(gear, mode, v);
        match mode {
            Mode::Slipping(_, true) | Mode::Coupled(_, true) => by_grip,
            Mode::Slipping(_, false) | Mode::Coupled(_, false) | Mode::Neutral => by_engine,
        }
    }

    fn mode(&self, gear: usize, held_rpm: f64, v: f64) -> Mode {
        // Compared as speeds, as the events are: what has crossed a knot is beyond it.
        let per = self.rpm_per_m_s(gear);
        let span_at = |v: f64| {
            let above = self.speeds_rpm.partition_point(|knot| knot / per <= v);
            above.clamp(1, self.spans.len()) - 1
        };
        let free = if v < held_rpm / per {
            let span = span_at(held_rpm / per);
            let x = held_rpm - self.speeds_rpm[span];
            let [c0, c1, c2, c3] = self.spans[span];
            Mode::Slipping(c0 + x * (c1 + x * (c2 + x * c3)), false)
        } else {
            Mode::Coupled(span_at(v), false)
        };
        let (by_engine, by_grip) = self.both(gear, free, v);
        match free {
            Mode::Slipping(torque, _) => Mode::Slipping(torque, by_grip < by_engine),
            Mode::Coupled(span, _) => Mode::Coupled(span, by_grip < by_engine),
            Mode::Neutral => Mode::Neutral,
        }
    }

    fn step(&self, gear: usize, mode: Mode, (v, x): (f64, f64), h: f64) -> (f64, f64) {
        let a = |v: f64| self.acceleration(gear, mode, v);
        let k1 = a(v);
        let k2 = a(v + 0.5 * h * k1);
        let k3 = a(v + 0.5 * h * k2);
        let k4 = a(v + h * k3);
        let way = v + h / 6.0 * (k1 + k2 + k3);
        (v + h / 6.0 * (k1 + 2.0 * (k2 + k3) + k4), x + h * way)
    }
}

/// The monotone cubic of Fritsch and Butland: the four factors of each span.
fn hermite(points: &[(f64, f64)]) -> Vec<[f64; 4]> {
    let h: Vec<f64> = points.windows(2).map(|p| p[1].0 - p[0].0).collect();
    let d: Vec<f64> = (0..h.len())
        .map(|k| (points[k + 1].1 - points[k].1) / h[k])
        .collect();
    let end = |h0: f64, h1: f64, d0: f64, d1: f64| {
        let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
        if slope * d0 <= 0.0 {
            0.0
        } else if d0 * d1 <= 0.0 && slope.abs() > 3.0 * d0.abs() {
            3.0 * d0
        } else {
            slope
        }
    };
    let last = h.len() - 1;
    let mut m = vec![end(h[0], h[1], d[0], d[1])];
    for k in 1..h.len() {
        let (w1, w2) = (2.0 * h[k] + h[k - 1], h[k] + 2.0 * h[k - 1]);
        let mean = (w1 + w2) / (w1 / d[k - 1] + w2 / d[k]);
        m.push(if d[k - 1] * d[k] > 0.0 { mean } else { 0.0 });
    }
    m.push(end(h[last], h[last - 1], d[last], d[last - 1]));
    let of_span = |k: usize| {
        let (c2, c3) = (
            3.0 * d[k] - 2.0 * m[k] - m[k + 1],
            m[k] + m[k + 1] - 2.0 * d[k],
        );
        [points[k].1, m[k], c2 / h[k], c3 / (h[k] * h[k])]
    };
    (0..h.len()).map(of_span).collect()
}

/// The run of a vehicle for so many seconds at most, with what it reaches on the way.
pub(super) fn stepped(plain: &Plain, speeds: &[f64], distances: &[f64], most_s: f64) -> Stepped {
    let stepper = Stepper::new(plain);
    let mut walk = Walk {
        of: &stepper,
        time: 0.0,
        at: (0.0, 0.0),
        targets: speeds,
        ways: distances,
        found: Stepped {
            speeds: vec![None; speeds.len()],
            distances: vec![None; distances.len()],
        },
        most_s,
    };
    let launch = plain.launch_rpm.clamp(stepper.low_rpm, stepper.high_rpm);
    for gear in 0..plain.ratios.len() {
        let held = if gear == 0 { launch } else { stepper.low_rpm };
        let is_last = gear + 1 == plain.ratios.len();
        let shift = if is_last {
            stepper.high_rpm
        } else {
            plain.shift_rpms[gear].clamp(held, stepper.high_rpm)
        };
        let per = stepper.rpm_per_m_s(gear);
        if !walk.drive(gear, held, shift / per, is_last) {
            break;
        }
        let until = (walk.time + plain.pause_s).min(most_s);
        while walk.time < until && walk.at.0 > 0.0 {
            walk.advance(gear, Mode::Neutral, until, |v| v <= 0.0);
        }
        walk.at.0 = walk.at.0.max(0.0);
        walk.time = until;
    }
    walk.found
}

struct Walk<'a> {
    of: &'a Stepper<'a>,
    time: f64,
    at: (f64, f64),
    targets: &'a [f64],
    ways: &'a [f64],
    found: Stepped,
    most_s: f64,
}

impl Walk<'_> {
    /// Whether the gear comes to its change.
    fn drive(&mut self, gear: usize, held_rpm: f64, end: f64, is_last: bool) -> bool {
        let per = self.of.rpm_per_m_s(gear);
        if is_last && self.at.0 > end {
            while self.at.0 > end && self.time < self.most_s {
                self.advance(gear, Mode::Neutral, self.most_s, |v| v <= end);
            }
        }
        while self.time < self.most_s {
            let v = self.at.0;
            let mode = self.of.mode(gear, held_rpm, v);
            if v >= end {
                if !is_last {
                    return true;
                }
                // The limiter holds; a load that is ahead there slows it down.
                if self.of.acceleration(gear, mode, v) >= 0.0 {
                    self.cruise();
                    return false;
                }
            }
            if v <= 0.0 && self.of.acceleration(gear, mode, 0.0) <= 0.0 {
                return false;
            }
            let knots = match mode {
                Mode::Slipping(..) => (f64::NEG_INFINITY, held_rpm / per),
                Mode::Coupled(span, _) => {
                    let knots = &self.of.speeds_rpm;
                    (
                        (knots[span] / per).max(held_rpm / per),
                        knots[span + 1] / per,
                    )
                }
                Mode::Neutral => (f64::NEG_INFINITY, f64::INFINITY),
            };
            let begun_below_end = v < end;
            self.advance(gear, mode, self.most_s, |at| {
                let is_out = at >= knots.1 || at < knots.0 || at < 0.0;
                is_out || begun_below_end && at >= end || self.of.has_turned(gear, mode, at)
            });
        }
        false
    }

    fn cruise(&mut self) {
        let (v, x) = self.at;
        for (way, found) in self.ways.iter().zip(&mut self.found.distances) {
            let time = self.time + (way - x) / v;
            if found.is_none() && *way > x && time <= self.most_s {
                *found = Some((time, v, 0.0));
            }
        }
        self.time = self.most_s;
    }

    /// One step, cut short where something happens.
    fn advance(&mut self, gear: usize, mode: Mode, until: f64, happens: impl Fn(f64) -> bool) {
        let from = self.at;
        let step = |h: f64| self.of.step(gear, mode, from, h);
        let mut h = STEP_S.min(until - self.time);
        if happens(step(h).0) {
            h = first(h, |h| happens(step(h).0));
        }
        let to = step(h);
        for (target, found) in self.targets.iter().zip(&mut self.found.speeds) {
            if found.is_none() && to.0 >= *target {
                let at = first(h, |h| step(h).0 >= *target);
                let acceleration = self.of.acceleration(gear, mode, *target);
                *found = Some((self.time + at, step(at).1, acceleration));
            }
        }
        for (way, found) in self.ways.iter().zip(&mut self.found.distances) {
            if found.is_none() && to.1 >= *way {
                let at = first(h, |h| step(h).1 >= *way);
                let v = step(at).0;
                *found = Some((self.time + at, v, self.of.acceleration(gear, mode, v)));
            }
        }
        self.time += h;
        self.at = to;
    }
}

impl Stepper<'_> {
    fn has_turned(&self, gear: usize, mode: Mode, v: f64) -> bool {
        let (by_engine, by_grip) = self.both(gear, mode, v);
        match mode {
            Mode::Slipping(_, true) | Mode::Coupled(_, true) => by_engine <= by_grip,
            Mode::Slipping(_, false) | Mode::Coupled(_, false) => by_grip < by_engine,
            Mode::Neutral => false,
        }
    }
}

/// The first of the times up to `h` at which something holds that holds at `h`.
fn first(h: f64, holds: impl Fn(f64) -> bool) -> f64 {
    let (mut before, mut after) = (0.0, h);
    for _ in 0..50 {
        let middle = 0.5 * (before + after);
        if holds(middle) {
            after = middle;
        } else {
            before = middle;
        }
    }
    after
}
