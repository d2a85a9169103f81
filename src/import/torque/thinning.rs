//! Fewer points of a curve that has too many: evenly, with both ends and both peaks.

use super::pasted::PastedPoint;

/// The most points that a torque curve has.
pub(super) const MOST_POINTS: usize = 200;

/// At most 200 of the points, in their order.
pub(super) fn thinned(points: &[PastedPoint]) -> Vec<PastedPoint> {
    let (count, last) = (points.len(), points.len().saturating_sub(1));
    if count <= MOST_POINTS {
        return points.to_vec();
    }
    let mut kept: Vec<usize> = (0..MOST_POINTS)
        .map(|at| (at * last + (MOST_POINTS - 1) / 2) / (MOST_POINTS - 1))
        .collect();
    let torque = peak(points, |point| point.torque_nm);
    let power = peak(points, |point| point.torque_nm * point.engine_speed.rpm());
    for (wanted, other) in [(torque, power), (power, torque)] {
        if kept.contains(&wanted) {
            continue;
        }
        let inner = 1..MOST_POINTS - 1;
        let free = inner.filter(|at| kept[*at] != other);
        let nearest = free.min_by_key(|at| kept[*at].abs_diff(wanted));
        if let Some(kept) = nearest.and_then(|at| kept.get_mut(at)) {
            *kept = wanted;
        }
    }
    kept.sort_unstable();
    kept.iter()
        .filter_map(|at| points.get(*at).copied())
        .collect()
}

/// Where a figure is the highest, the first of several.
fn peak(points: &[PastedPoint], figure: impl Fn(&PastedPoint) -> f64) -> usize {
    let mut highest = 0;
    for (at, point) in points.iter().enumerate() {
        if figure(point) > figure(&points[highest]) {
            highest = at;
        }
    }
    highest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::EngineSpeed;

    fn curve(count: u32, torque_nm: impl Fn(u32) -> f64) -> Vec<PastedPoint> {
        (0..count)
            .map(|at| PastedPoint {
                engine_speed: EngineSpeed::from_rpm(f64::from(1000 + 10 * at)).unwrap(),
                torque_nm: torque_nm(at),
            })
            .collect()
    }

    #[test]
    fn ends_and_peaks_stay_and_no_point_comes_twice() {
        for count in [201, 202, 250, 399, 400, 601, 1500] {
            for (torque, power) in [(1, 2), (count - 3, count - 2), (77, 78), (101, 160)] {
                let points = curve(count, |at| match at {
                    at if at == torque => 900.0,
                    at if at == power => 899.9,
                    _ => 1.0,
                });
                let kept = thinned(&points);
                assert_eq!(kept.len(), MOST_POINTS);
                assert!(
                    kept.windows(2)
                        .all(|two| two[0].engine_speed < two[1].engine_speed)
                );
                for at in [0, torque, power, count - 1] {
                    let point = &points[usize::try_from(at).unwrap()];
                    assert!(kept.contains(point), "{at} of {count}");
                }
            }
        }
    }

    #[test]
    fn a_curve_that_is_short_enough_stays_as_it_is() {
        let points = curve(200, f64::from);
        assert_eq!(thinned(&points), points);
    }
}
