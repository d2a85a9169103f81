//! A cubic over one stretch, and where it is zero.
//!
//! Torque over engine speed and every force over road speed consist of these.

/// c0 + c1·t + c2·t² + c3·t³ with t = x − origin, for x from `from` to `to`.
///
/// Kept about its own origin, since expanded about 0 it would lose digits where knots are close.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cubic {
    /// Where t is 0, in the unit of x.
    pub origin: f64,
    /// The lower end of the stretch, in the unit of x.
    pub from: f64,
    /// The upper end of the stretch, in the unit of x.
    pub to: f64,
    /// c0 to c3.
    pub coefficients: [f64; 4],
}

impl Cubic {
    /// The same value from one end to the other.
    pub fn constant(value: f64, from: f64, to: f64) -> Self {
        Self {
            origin: from,
            from,
            to,
            coefficients: [value, 0.0, 0.0, 0.0],
        }
    }

    /// The one with these values and slopes at both ends.
    pub(super) fn through(from: f64, to: f64, values: [f64; 2], slopes: [f64; 2]) -> Self {
        let width = to - from;
        let chord = (values[1] - values[0]) / width;
        let second = (3.0 * chord - 2.0 * slopes[0] - slopes[1]) / width;
        let third = (slopes[0] + slopes[1] - 2.0 * chord) / width / width;
        Self {
            origin: from,
            from,
            to,
            coefficients: [values[0], slopes[0], second, third],
        }
    }

    /// Its value at x.
    pub fn at(&self, x: f64) -> f64 {
        let [c0, c1, c2, c3] = self.coefficients;
        let t = x - self.origin;
        c0 + t * (c1 + t * (c2 + t * c3))
    }

    /// Its slope at x.
    pub fn slope_at(&self, x: f64) -> f64 {
        let [_, c1, c2, c3] = self.coefficients;
        let t = x - self.origin;
        c1 + t * (2.0 * c2 + t * 3.0 * c3)
    }

    /// The part of it between two places, which lie within its own ends.
    #[must_use]
    pub fn between(&self, from: f64, to: f64) -> Self {
        Self { from, to, ..*self }
    }

    /// The same with every value `factor` times as large.
    #[must_use]
    pub(super) fn scaled(&self, factor: f64) -> Self {
        Self {
            coefficients: self.coefficients.map(|c| c * factor),
            ..*self
        }
    }

    /// The difference of two cubics that share their origin, over the stretch of this one.
    #[must_use]
    pub(super) fn minus(&self, other: &Self) -> Self {
        let mut difference = *self;
        for (mine, theirs) in difference.coefficients.iter_mut().zip(other.coefficients) {
            *mine -= theirs;
        }
        difference
    }

    /// Whether it is seen at a glance to be nowhere zero between its ends; where it says no it may still be
    /// so.
    pub(super) fn has_one_sign(&self) -> bool {
        let middle = 0.5 * (self.from + self.to);
        let half = 0.5 * (self.to - self.from);
        let [_, _, c2, c3] = self.coefficients;
        let second = c2 + 3.0 * c3 * (middle - self.origin);
        let most = half * (self.slope_at(middle).abs() + half * (second.abs() + half * c3.abs()));
        most < self.at(middle).abs()
    }

    /// Where it is zero between its ends, these included, in rising order; where it only touches zero
    /// it may be missed.
    pub fn roots(&self) -> Vec<f64> {
        let reach = (self.to - self.origin)
            .abs()
            .max((self.from - self.origin).abs());
        if reach <= 0.0 {
            return Vec::new();
        }
        // Over the reach of t all terms are of one kind, so no product of them overflows.
        let mut factor = 1.0;
        let unit = self.coefficients.map(|c| {
            let scaled = c * factor;
            factor *= reach;
            scaled
        });
        let ends = [self.from, self.to].map(|x| (x - self.origin) / reach);
        let mut places = vec![ends[0]];
        places.extend(turning_points(unit).filter(|u| *u > ends[0] && *u < ends[1]));
        places.push(ends[1]);
        let mut roots = Vec::new();
        for stretch in places.windows(2).filter(|pair| pair[0] < pair[1]) {
            roots.extend(root_between(unit, stretch[0], stretch[1]));
        }
        if value(unit, ends[1]) == 0.0 {
            roots.push(ends[1]);
        }
        let back = |u: f64| (self.origin + u * reach).clamp(self.from, self.to);
        roots.into_iter().map(back).collect()
    }
}

fn value([c0, c1, c2, c3]: [f64; 4], u: f64) -> f64 {
    c0 + u * (c1 + u * (c2 + u * c3))
}

/// Where the slope is zero, in rising order.
fn turning_points([_, c1, c2, c3]: [f64; 4]) -> impl Iterator<Item = f64> {
    // 3·c3·u² + 2·c2·u + c1, by the form that loses no digits to cancellation.
    let discriminant = c2 * c2 - 3.0 * c3 * c1;
    let root = discriminant.max(0.0).sqrt();
    let sum = -(c2 + root.copysign(c2));
    let (first, second) = (sum / (3.0 * c3), c1 / sum);
    let is_there = move |u: &f64| discriminant >= 0.0 && u.is_finite();
    [first.min(second), first.max(second)]
        .into_iter()
        .filter(is_there)
}

/// The zero in a stretch without a turning point: its lower end, or where the sign changes.
fn root_between(unit: [f64; 4], from: f64, to: f64) -> Option<f64> {
    let (low, high) = (value(unit, from), value(unit, to));
    if low == 0.0 {
        return Some(from);
    }
    if high == 0.0 || (low > 0.0) == (high > 0.0) {
        return None;
    }
    let (mut below, mut above) = (from, to);
    let mut u = 0.5 * (from + to);
    // Newton's steps, halving wherever one leaves the bracket: 100 halvings leave nothing.
    for _ in 0..100 {
        let at = value(unit, u);
        if (at > 0.0) == (low > 0.0) {
            below = u;
        } else {
            above = u;
        }
        let [_, c1, c2, c3] = unit;
        let newton = u - at / (c1 + u * (2.0 * c2 + u * 3.0 * c3));
        let next = if newton > below && newton < above {
            newton
        } else {
            0.5 * (below + above)
        };
        if at == 0.0 || (next - u).abs() <= f64::EPSILON * u.abs() {
            break;
        }
        u = next;
    }
    Some(u)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn about(origin: f64, coefficients: [f64; 4], from: f64, to: f64) -> Cubic {
        Cubic {
            origin,
            from,
            to,
            coefficients,
        }
    }

    #[test]
    fn all_roots_between_the_ends_are_found_in_order() {
        // (t − 1)(t − 2)(t − 4) about 10.
        let cubic = about(10.0, [-8.0, 14.0, -7.0, 1.0], 10.5, 15.0);
        let roots = cubic.roots();
        assert_eq!(roots.len(), 3);
        for (found, expected) in roots.iter().zip([11.0, 12.0, 14.0]) {
            assert!((found - expected).abs() < 1e-12, "{found}");
        }
        assert_eq!(cubic.between(11.5, 13.0).roots().len(), 1);
    }

    #[test]
    fn lines_parabolas_and_constants_are_cubics_too() {
        assert_eq!(about(0.0, [-3.0, 1.5, 0.0, 0.0], 0.0, 5.0).roots(), [2.0]);
        let parabola = about(0.0, [-2.0, 0.0, 1.0, 0.0], 0.0, 5.0).roots();
        assert!((parabola[0] - 2.0_f64.sqrt()).abs() < 1e-15 && parabola.len() == 1);
        assert!(Cubic::constant(7.0, 0.0, 5.0).roots().is_empty());
    }

    #[test]
    fn a_root_at_either_end_counts_once() {
        let line = about(0.0, [0.0, 1.0, 0.0, 0.0], 0.0, 5.0);
        assert_eq!(line.roots(), [0.0]);
        let falling = about(0.0, [5.0, -1.0, 0.0, 0.0], 0.0, 5.0);
        assert_eq!(falling.roots(), [5.0]);
    }
}
