//! How much a fillet raises the shear at a shoulder, by a table of a stress factor in torsion (from memory).

use super::quantity::FilletRadius;
use crate::workshop::fits::Diameter;

/// A row of the table: shoulder ÷ shaft, and A and b of K = A (r/d)^b.
struct Row {
    shoulder_share: f64,
    a: f64,
    b: f64,
}

/// The table from the smallest shoulder to the largest.
///
/// # Source
/// Charts of stress concentration for a shouldered shaft in torsion, as formulas (from memory).
const ROWS: [Row; 4] = [
    row(1.09, 0.90337, -0.12692),
    row(1.2, 0.83425, -0.21649),
    row(1.33, 0.84897, -0.23161),
    row(2.0, 0.86331, -0.23865),
];

const fn row(shoulder_share: f64, a: f64, b: f64) -> Row {
    Row {
        shoulder_share,
        a,
        b,
    }
}

/// The least and the most shoulder ÷ shaft that the table has.
pub const SHOULDER_SHARES: [f64; 2] = [ROWS[0].shoulder_share, ROWS[ROWS.len() - 1].shoulder_share];

/// The stress factor in torsion of a fillet between a shaft and its shoulder: K = A (r/d)^b, A and b straight
/// between the rows. None outside them, and none for a fillet so large that the formula would say below 1.
///
/// # Source
/// See the table; from memory, to be said wherever it is shown.
///
/// # Example
/// ```
/// use layshaft::workshop::{Diameter, FilletRadius, fillet_factor};
/// let [shaft, shoulder] = [40.0, 48.0].map(|mm| Diameter::from_mm(mm).unwrap());
/// let factor = fillet_factor(shaft, shoulder, FilletRadius::from_mm(2.0)?).unwrap();
/// assert!((factor - 1.596).abs() < 5e-4);
/// # Ok::<(), layshaft::gearing::OutOfRange>(())
/// ```
pub fn fillet_factor(shaft: Diameter, shoulder: Diameter, fillet: FilletRadius) -> Option<f64> {
    let share = shoulder.mm() / shaft.mm();
    let mut pairs = ROWS.windows(2);
    let pair = pairs.find(|pair| {
        (pair[0].shoulder_share - ROUNDING..=pair[1].shoulder_share + ROUNDING).contains(&share)
    })?;
    let [low, high] = [&pair[0], &pair[1]];
    let along = (share - low.shoulder_share) / (high.shoulder_share - low.shoulder_share);
    let between = |low: f64, high: f64| low + along * (high - low);
    let (a, b) = (between(low.a, high.a), between(low.b, high.b));
    let factor = a * (fillet.mm() / shaft.mm()).powf(b);
    (factor >= 1.0).then_some(factor)
}

/// What rounding may leave of a share.
const ROUNDING: f64 = 1e-9;

#[cfg(test)]
mod tests {
    use super::*;

    fn factor(shoulder_mm: f64, fillet_mm: f64) -> Option<f64> {
        let [shaft, shoulder] = [100.0, shoulder_mm].map(|mm| Diameter::from_mm(mm).unwrap());
        fillet_factor(shaft, shoulder, FilletRadius::from_mm(fillet_mm).unwrap())
    }

    #[test]
    fn the_table_ends_where_it_ends() {
        assert!(factor(109.0, 5.0).is_some() && factor(108.9, 5.0).is_none());
        assert!(factor(200.0, 5.0).is_some() && factor(200.1, 5.0).is_none());
        assert!(
            factor(109.0, 50.0).is_none(),
            "no fillet makes a shaft stronger"
        );
    }

    #[test]
    fn between_two_rows_a_and_b_are_straight() {
        let by_hand =
            f64::midpoint(0.90337, 0.83425) * 0.05_f64.powf(f64::midpoint(-0.12692, -0.21649));
        assert!((factor(114.5, 5.0).unwrap() - by_hand).abs() < 1e-12);
    }
}
