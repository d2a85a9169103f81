//! The slopes of a monotone cubic at its points: what it takes to go through all of them and never
//! beyond two neighbours.

use std::iter::once;

/// The slope at each of the points (x, y), x rising; there are at least two.
///
/// Between two chords of one sign the weighted harmonic mean of both, else 0; at the ends the
/// three-point formula, held to the sign of the chord and to three times it. Two points make a
/// straight line.
///
/// # Source
/// Fritsch and Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM
/// J. Sci. Stat. Comput. 5, 1984; ends as in Moler, Numerical Computing with MATLAB, 2004. The
/// `PchipInterpolator` of scipy 1.17 does the same.
pub(super) fn monotone_slopes(points: &[(f64, f64)]) -> Vec<f64> {
    let spans: Vec<Span> = points
        .windows(2)
        .map(|pair| Span::of(pair[0], pair[1]))
        .collect();
    match spans.as_slice() {
        [] => Vec::new(),
        [only] => vec![only.chord; 2],
        [first, second, ..] => {
            let inner = spans.windows(2).map(|pair| inner_slope(pair[0], pair[1]));
            let backwards = spans.iter().rev().copied().collect::<Vec<_>>();
            let last = end_slope(backwards[0], backwards[1]);
            once(end_slope(*first, *second))
                .chain(inner)
                .chain(once(last))
                .collect()
        }
    }
}

/// What lies between two points.
#[derive(Debug, Clone, Copy)]
struct Span {
    width: f64,
    chord: f64,
}

impl Span {
    fn of(from: (f64, f64), to: (f64, f64)) -> Self {
        let width = to.0 - from.0;
        Self {
            width,
            chord: (to.1 - from.1) / width,
        }
    }
}

fn inner_slope(before: Span, after: Span) -> f64 {
    let is_turn =
        before.chord == 0.0 || after.chord == 0.0 || !same_sign(before.chord, after.chord);
    if is_turn {
        return 0.0;
    }
    let (near, far) = (
        2.0 * after.width + before.width,
        after.width + 2.0 * before.width,
    );
    (near + far) / (near / before.chord + far / after.chord)
}

/// The slope at the outer end of `outer`, whose neighbour is `inner`.
fn end_slope(outer: Span, inner: Span) -> f64 {
    let both = outer.width + inner.width;
    let slope = ((outer.width + both) * outer.chord - outer.width * inner.chord) / both;
    if outer.chord == 0.0 || !same_sign(slope, outer.chord) {
        0.0
    } else if !same_sign(outer.chord, inner.chord) && slope.abs() > 3.0 * outer.chord.abs() {
        3.0 * outer.chord
    } else {
        slope
    }
}

fn same_sign(one: f64, other: f64) -> bool {
    (one > 0.0 && other > 0.0) || (one < 0.0 && other < 0.0)
}
