//! A stretch of motion in which the acceleration is one cubic of the speed: how long it takes and how
//! far it goes, and where in it a time or a distance is.

use super::drive::DrivePiece;

/// Nodes and weights of the Gauss–Legendre rule with eight points, the half above 0; all digits that a
/// double has.
///
/// # Source
/// Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4 (from memory; the tests hold the
/// rule against integrals that are known).
const GAUSS: [[f64; 2]; 4] = [
    [0.183_434_642_495_649_8, 0.362_683_783_378_362],
    [0.525_532_409_916_329, 0.313_706_645_877_887_29],
    [0.796_666_477_413_626_7, 0.222_381_034_453_374_47],
    [0.960_289_856_497_536_2, 0.101_228_536_290_376_26],
];

/// How far the acceleration may be from that in the middle, as a share, where the rule is used as it is.
///
/// Then 1/a has no pole nearer than five half widths, and the eight points leave 1e-15 of it.
const EVEN_ENOUGH: f64 = 0.2;

/// The most parts that a stretch is halved into. Down to a billionth of the speed at which the
/// acceleration ends it takes some hundred.
const MOST_PARTS: usize = 1000;

/// The most steps towards a time or a distance; halving alone takes sixty.
const MOST_STEPS: usize = 100;

/// What it takes to get from one speed to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passage {
    /// The time in s.
    pub time_s: f64,
    /// The distance in m.
    pub distance_m: f64,
}

impl Passage {
    pub(super) const NOTHING: Self = Self {
        time_s: 0.0,
        distance_m: 0.0,
    };

    /// That of a speed that is never reached.
    const ENDLESS: Self = Self {
        time_s: f64::INFINITY,
        distance_m: f64::INFINITY,
    };

    /// One after the other.
    #[must_use]
    pub(super) fn and(self, next: Self) -> Self {
        Self {
            time_s: self.time_s + next.time_s,
            distance_m: self.distance_m + next.distance_m,
        }
    }

    /// Itself; none of a speed that is never reached.
    pub(super) fn if_reached(self) -> Option<Self> {
        (self.time_s.is_finite() && self.distance_m.is_finite()).then_some(self)
    }
}

/// Motion from one speed to another under an acceleration that is one cubic of the speed.
///
/// Everything is a function of u, the speed gained since its beginning: a gain that is tiny beside the
/// speed keeps its digits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stretch {
    from_m_s: f64,
    to_m_s: f64,
    /// From one to the other, with the digits that both together have no room for.
    gain_m_s: f64,
    /// In m/s², the factors of 1, u, u² and u³.
    acceleration: [f64; 4],
}

impl Stretch {
    /// Within a piece of drive, from one speed to another.
    pub(super) fn of(piece: &DrivePiece, from_m_s: f64, to_m_s: f64) -> Self {
        let [_, _, c2, c3] = piece.surplus.coefficients;
        let t = from_m_s - piece.surplus.origin;
        let surplus = [
            piece.surplus.at(from_m_s),
            piece.surplus.slope_at(from_m_s),
            c2 + 3.0 * c3 * t,
            c3,
        ];
        Self {
            from_m_s,
            to_m_s,
            gain_m_s: to_m_s - from_m_s,
            acceleration: surplus.map(|force| force / piece.mass_kg),
        }
    }

    /// The same as far as a gain in m/s.
    #[must_use]
    pub(super) fn up_to(&self, gain_m_s: f64) -> Self {
        Self {
            to_m_s: self.from_m_s + gain_m_s,
            gain_m_s,
            ..*self
        }
    }

    /// The speed at its end, in m/s.
    pub(super) fn to_m_s(self) -> f64 {
        self.to_m_s
    }

    /// The gain in m/s to a speed in m/s.
    pub(super) fn gain_to_m_s(&self, speed_m_s: f64) -> f64 {
        speed_m_s - self.from_m_s
    }

    /// The acceleration in m/s² at a speed in m/s.
    pub(super) fn acceleration_m_s2(&self, speed_m_s: f64) -> f64 {
        self.acceleration_about(self.gain_to_m_s(speed_m_s))[0]
    }

    /// Time and distance of the whole.
    pub(super) fn passage(&self) -> Passage {
        self.passage_to(self.gain_m_s)
    }

    /// Time and distance to a gain in m/s: ∫du/a and ∫(v + u)du/a; endless where a does not lead there.
    pub(super) fn passage_to(&self, gain_m_s: f64) -> Passage {
        let mut sum = Passage::NOTHING;
        let is_reached = self.cut_evenly(gain_m_s, |about, middle, half| {
            sum = sum.and(gauss(about, self.from_m_s + middle, half));
        });
        if is_reached && sum.if_reached().is_some() {
            sum
        } else {
            Passage::ENDLESS
        }
    }

    /// ∫f dt over the whole of an f of the speed in m/s, which is a polynomial of no high degree.
    pub(super) fn integral(&self, f: impl Fn(f64) -> f64) -> f64 {
        let mut sum = 0.0;
        self.cut_evenly(self.gain_m_s, |[a0, a1, a2, a3], middle, half| {
            let over_a =
                |y: f64| f(self.from_m_s + middle + y) / (a0 + y * (a1 + y * (a2 + y * a3)));
            for [node, weight] in GAUSS {
                let y = node * half;
                sum += weight * half * (over_a(y) + over_a(-y));
            }
        });
        sum
    }

    /// Halves the way to a gain in m/s until the acceleration is even in each part, which goes to `each`:
    /// the acceleration about its middle, the gain there and the half width. Whether the way leads there.
    fn cut_evenly(&self, gain_m_s: f64, mut each: impl FnMut([f64; 4], f64, f64)) -> bool {
        let mut done = 0.0;
        let mut step = gain_m_s;
        for _ in 0..MOST_PARTS {
            let rest = gain_m_s - done;
            if rest == 0.0 {
                return true;
            }
            let is_last = step.abs() >= rest.abs();
            let width = if is_last { rest } else { step };
            let (middle, half) = (done + 0.5 * width, 0.5 * width);
            let about = self.acceleration_about(middle);
            if !is_even(about, half.abs()) {
                step = half;
                continue;
            }
            // Against the acceleration no speed is gained.
            if about[0].signum() * gain_m_s <= 0.0 {
                return false;
            }
            each(about, middle, half);
            if is_last {
                return true;
            }
            done += width;
            step = 2.0 * width;
        }
        false
    }

    /// The acceleration in m/s² and its higher terms about a gain in m/s.
    fn acceleration_about(&self, gain_m_s: f64) -> [f64; 4] {
        let ([a0, a1, a2, a3], u) = (self.acceleration, gain_m_s);
        [
            a0 + u * (a1 + u * (a2 + u * a3)),
            a1 + u * (2.0 * a2 + u * 3.0 * a3),
            a2 + 3.0 * a3 * u,
            a3,
        ]
    }

    /// The gain in m/s after a time in s from its beginning, at most that of the whole, and the way there.
    pub(super) fn after_s(&self, time_s: f64) -> (f64, Passage) {
        let [a0, a1, ..] = self.acceleration;
        let first = a0 * time_s * (1.0 + 0.5 * a1 * time_s);
        let gain = self.gain_where(first, time_s, |gain| {
            (
                self.passage_to(gain).time_s,
                self.acceleration_about(gain)[0],
            )
        });
        // Where hardly any speed is gained, its last digit is long: the rest is gone at that speed.
        let near = self.passage_to(gain);
        let rest_m = (time_s - near.time_s) * (self.from_m_s + gain);
        let distance_m = near.distance_m + rest_m;
        (gain, Passage { time_s, distance_m })
    }

    /// The gain in m/s after a distance in m from its beginning, at most that of the whole, and the way there.
    pub(super) fn after_m(&self, distance_m: f64) -> (f64, Passage) {
        let v = self.from_m_s;
        // Under a constant acceleration, without losing the digits of v + u − v.
        let twice = 2.0 * self.acceleration[0] * distance_m;
        let first = twice / (v + (v * v + twice).max(0.0).sqrt());
        let gain = self.gain_where(first, distance_m, |gain| {
            let acceleration = self.acceleration_about(gain)[0];
            (self.passage_to(gain).distance_m, acceleration / (v + gain))
        });
        let near = self.passage_to(gain);
        let rest_s = (distance_m - near.distance_m) / (v + gain);
        let rest_s = if rest_s.is_finite() { rest_s } else { 0.0 };
        let time_s = near.time_s + rest_s;
        (gain, Passage { time_s, distance_m })
    }

    /// Where a measure that grows along the stretch is `wanted`, beginning at `first`; `measured` gives
    /// the measure at a gain, and how much gain its growth takes.
    fn gain_where(&self, first: f64, wanted: f64, measured: impl Fn(f64) -> (f64, f64)) -> f64 {
        if wanted <= 0.0 {
            return 0.0;
        }
        let (mut short, mut long) = (0.0, self.gain_m_s);
        let is_within = |gain: f64, short: f64, long: f64| {
            gain > f64::min(short, long) && gain < f64::max(short, long)
        };
        let mut gain = if is_within(first, short, long) {
            first
        } else {
            long
        };
        // Newton's steps, halving wherever one leaves the bracket. Beyond what is reached no gain counts.
        let mut nearest = 0.0;
        for _ in 0..MOST_STEPS {
            let (measure, gain_per_measure) = measured(gain);
            if measure.is_finite() {
                nearest = gain;
            }
            let missing = wanted - measure;
            if missing > 0.0 {
                short = gain;
            } else {
                long = gain;
            }
            if missing.abs() <= f64::EPSILON * wanted {
                break;
            }
            let newton = gain + missing * gain_per_measure;
            let next = if is_within(newton, short, long) {
                newton
            } else {
                0.5 * (short + long)
            };
            if (next - gain).abs() <= f64::EPSILON * gain.abs() {
                break;
            }
            gain = next;
        }
        nearest
    }
}

/// Whether the acceleration stays near that in the middle, over a half width in m/s on either side.
fn is_even([a0, a1, a2, a3]: [f64; 4], half_m_s: f64) -> bool {
    let most = half_m_s * (a1.abs() + half_m_s * (a2.abs() + half_m_s * a3.abs()));
    most <= EVEN_ENOUGH * a0.abs()
}

/// Time and distance over a half width in m/s on either side of a speed in m/s.
fn gauss([a0, a1, a2, a3]: [f64; 4], middle_m_s: f64, half_m_s: f64) -> Passage {
    let mut sum = Passage::NOTHING;
    for [node, weight] in GAUSS {
        let y = node * half_m_s;
        // The acceleration at middle ± y is even ± odd: one division does for both.
        let (even, odd) = (a0 + a2 * y * y, y * (a1 + a3 * y * y));
        let share = 2.0 * weight * half_m_s / ((even - odd) * (even + odd));
        sum.time_s += share * even;
        sum.distance_m += share * (middle_m_s * even - y * odd);
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stretch(from_m_s: f64, to_m_s: f64, acceleration: [f64; 4]) -> Stretch {
        Stretch {
            from_m_s,
            to_m_s,
            gain_m_s: to_m_s - from_m_s,
            acceleration,
        }
    }

    fn assert_near(found: f64, expected: f64, share: f64) {
        let is_near = (found - expected).abs() <= share * expected.abs();
        assert!(is_near, "{found}, not {expected}");
    }

    #[test]
    fn constant_acceleration_is_exact() {
        let passage = stretch(2.0, 12.0, [4.0, 0.0, 0.0, 0.0]).passage();
        assert_near(passage.time_s, 2.5, 1e-15);
        assert_near(passage.distance_m, 17.5, 1e-15);
    }

    #[test]
    fn drag_up_to_a_billionth_below_the_speed_that_it_allows_is_its_closed_form() {
        // a = 2 − v²/800, which ends at 40 m/s: t = 10·artanh(v/40)·2, x = −400·ln(1 − v²/1600).
        for missing in [0.5, 1e-3, 1e-6, 1e-9] {
            let reached = 40.0 * (1.0 - missing);
            let passage = stretch(0.0, reached, [2.0, 0.0, -1.0 / 800.0, 0.0]).passage();
            // What rounding leaves of 1 − v/40 counts, not the rule.
            let share = 1e-14 + 1e-16 / missing;
            assert_near(passage.time_s, 20.0 * (reached / 40.0).atanh(), share);
            let remaining = (1.0 - reached / 40.0) * (1.0 + reached / 40.0);
            assert_near(passage.distance_m, -400.0 * remaining.ln(), share);
        }
    }

    #[test]
    fn a_speed_beyond_the_end_of_the_acceleration_is_never_reached() {
        let falling = stretch(0.0, 50.0, [2.0, 0.0, -1.0 / 800.0, 0.0]);
        assert_eq!(falling.passage().if_reached(), None);
        let backwards = stretch(10.0, 5.0, [1.0, 0.0, 0.0, 0.0]);
        assert_eq!(backwards.passage().if_reached(), None);
        let none = stretch(10.0, 11.0, [0.0; 4]);
        assert_eq!(none.passage().if_reached(), None);
        // Too little to be squared.
        let least = stretch(10.0, 11.0, [1e-200, 0.0, 0.0, 0.0]);
        assert_eq!(least.passage().if_reached(), None);
    }

    #[test]
    fn times_and_distances_lead_back_to_their_gains() {
        for (from, to, acceleration) in [
            (0.0, 30.0, [3.0, -0.02, -1e-3, 1e-5]),
            (30.0, 30.0 - 1e-7, [-1e-6, 1e-9, 0.0, 0.0]),
            (0.0, 40.0 * (1.0 - 1e-9), [2.0, 0.0, -1.0 / 800.0, 0.0]),
            (50.0, 0.01, [-12.0, -0.1, -2e-3, 0.0]),
        ] {
            let stretch = stretch(from, to, acceleration);
            for share in [1e-9, 0.1, 0.5, 0.999, 1.0] {
                let gain = share * (to - from);
                let passage = stretch.passage_to(gain);
                let (by_time, way) = stretch.after_s(passage.time_s);
                assert_near(by_time, gain, 1e-12);
                assert_near(way.distance_m, passage.distance_m, 1e-12);
                let (by_distance, way) = stretch.after_m(passage.distance_m);
                assert_near(by_distance, gain, 1e-12);
                assert_near(way.time_s, passage.time_s, 1e-12);
            }
        }
    }
}
