//! Typed points of a torque curve: one figure of a point, or a column of figures from that point on.

use super::{Engine, Quantity, Reading, engine_speed, optional, told, torque_curve};
use crate::motion::{Torque, TorqueCurve, TorquePoint};

const TORQUE: Quantity<Torque> = Quantity {
    new: Torque::from_nm,
    example: "150",
    unit: "N·m",
};

/// What an emptied field asks for.
const EMPTIED: &str = "type a figure; the menu at the end of the row removes the point";

/// The curve after an engine speed was typed at a point. A column of them goes on from there, and beyond
/// the last point with its torque; two columns take the place of all points from there on.
///
/// # Errors
/// When a figure does not read, or the engine speeds do not rise.
pub(in crate::app) fn curve_with_speeds(
    curve: &TorqueCurve,
    place: usize,
    text: &str,
) -> Reading<TorqueCurve> {
    if is_of_two_columns(text) {
        return with_both_columns(curve, place, text);
    }
    let speeds = figures(text, |text| {
        optional(text, |text| engine_speed(Engine::ANY, text))
    })?;
    let changed = curve.with_points(|points| {
        for (at, speed) in (place..).zip(speeds) {
            let last = points.last().map(|point| point.torque);
            match (points.get_mut(at), last) {
                (Some(point), _) => point.speed = speed,
                (None, Some(torque)) => points.push(TorquePoint { speed, torque }),
                (None, None) => {}
            }
        }
    });
    changed.map_err(told)
}

/// The curve after a torque was typed at a point. A column of them goes on from there as far as there are
/// points; two columns take the place of all points from there on.
///
/// # Errors
/// When a figure does not read, or there are fewer points than torques.
pub(in crate::app) fn curve_with_torques(
    curve: &TorqueCurve,
    place: usize,
    text: &str,
) -> Reading<TorqueCurve> {
    if is_of_two_columns(text) {
        return with_both_columns(curve, place, text);
    }
    let torques = figures(text, |text| TORQUE.read(text))?;
    let room = curve.points().len().saturating_sub(place);
    if torques.len() > room {
        return Err(format!(
            "{} torques, but {room} points from here on: paste the engine speeds first",
            torques.len()
        ));
    }
    let changed = curve.with_points(|points| {
        let from_here = points.iter_mut().skip(place);
        for (point, torque) in from_here.zip(torques) {
            point.torque = torque;
        }
    });
    changed.map_err(told)
}

/// The figures of a text: one, or a column of them with what stands above it.
fn figures<T>(text: &str, read: impl Fn(&str) -> Reading<Option<T>>) -> Reading<Vec<T>> {
    let one = read(text);
    let is_part = |c: char| c.is_whitespace() || c == ';';
    let parts = text.split(is_part).filter(|part| !part.is_empty());
    let has_digit = |part: &&str| part.contains(|c: char| c.is_ascii_digit());
    let column: Vec<&str> = parts.skip_while(|part| !has_digit(part)).collect();
    if one.is_ok() || column.iter().filter(|part| has_digit(part)).count() < 2 {
        return Ok(vec![one?.ok_or(EMPTIED)?]);
    }
    let figures = column
        .into_iter()
        .map(|part| read(part)?.ok_or_else(|| EMPTIED.to_owned()));
    figures.collect()
}

/// Whether a text has engine speeds and torques beside each other.
fn is_of_two_columns(text: &str) -> bool {
    let is_within = |mark: char| text.trim().contains(mark);
    is_within('\t') || is_within(':')
}

fn with_both_columns(curve: &TorqueCurve, place: usize, text: &str) -> Reading<TorqueCurve> {
    // In one line a field has blanks in place of line ends.
    let lines = text.trim().replace(' ', "\n");
    let read = torque_curve(&lines)?;
    let (read, _) = read.ok_or(EMPTIED)?;
    let changed = curve.with_points(|points| {
        points.truncate(place);
        points.extend(read.points());
    });
    changed.map_err(told)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn start() -> TorqueCurve {
        torque_curve("1000:96 2500:130 4600:152")
            .unwrap()
            .unwrap()
            .0
    }

    fn points(curve: Reading<TorqueCurve>) -> Vec<(f64, f64)> {
        let curve = curve.unwrap();
        let points = curve.points().iter();
        points
            .map(|point| (point.speed.rpm(), point.torque.nm()))
            .collect()
    }

    #[test]
    fn one_figure_changes_one_point() {
        for text in ["2,600", "2600 rpm", "2 600", " 2600"] {
            let changed = points(curve_with_speeds(&start(), 1, text));
            assert_eq!(changed, [(1000.0, 96.0), (2600.0, 130.0), (4600.0, 152.0)]);
        }
        let changed = points(curve_with_torques(&start(), 2, "148,5"));
        assert_eq!(changed[2], (4600.0, 148.5));
    }

    #[test]
    fn a_column_goes_on_from_its_point() {
        let speeds = points(curve_with_speeds(&start(), 1, "rpm 2000 3000 4000 5000"));
        let wanted = [(1000.0, 96.0), (2000.0, 130.0), (3000.0, 152.0)];
        assert_eq!(speeds[..3], wanted);
        assert_eq!(speeds[3..], [(4000.0, 152.0), (5000.0, 152.0)]);
        let torques = points(curve_with_torques(&start(), 0, "100.5 131 150"));
        assert_eq!(torques, [(1000.0, 100.5), (2500.0, 131.0), (4600.0, 150.0)]);
        // Two speeds below 1000 rpm are two, not one of a thousand.
        let low = points(curve_with_speeds(&start(), 0, "800 900"));
        assert_eq!(low, [(800.0, 96.0), (900.0, 130.0), (4600.0, 152.0)]);
    }

    #[test]
    fn two_columns_take_the_place_of_all_points_from_there_on() {
        let text = "rpm\tNm 2000\t120 3000\t140 5000\t138";
        let changed = points(curve_with_speeds(&start(), 1, text));
        let wanted = [
            (1000.0, 96.0),
            (2000.0, 120.0),
            (3000.0, 140.0),
            (5000.0, 138.0),
        ];
        assert_eq!(changed, wanted);
        assert_eq!(points(curve_with_torques(&start(), 1, text)), wanted);
    }

    #[test]
    fn what_makes_no_curve_says_why() {
        let says = |reading: Reading<TorqueCurve>, words: &str| {
            let problem = reading.unwrap_err();
            assert!(problem.contains(words), "{problem}");
        };
        says(
            curve_with_speeds(&start(), 1, "4700"),
            "4600 rpm follows 4700 rpm",
        );
        says(curve_with_speeds(&start(), 1, ""), "removes the point");
        says(
            curve_with_speeds(&start(), 1, "fast"),
            "\"fast\" is not an engine speed",
        );
        says(curve_with_torques(&start(), 1, "-4"), "between 0 and 20000");
        says(
            curve_with_torques(&start(), 1, "1 2 3"),
            "3 torques, but 2 points",
        );
    }
}
