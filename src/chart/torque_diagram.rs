//! The small diagram of a torque curve: torque and power over engine speed, and points that can be moved.

use super::axis::round_step;
use crate::gearing::{EngineLimits, EngineSpeed};
use crate::motion::{Torque, TorqueCurve, TorquePoint, power_w};
use crate::units::{plain_number, round_to, rpm_text, typed_rpm_text};

/// A torque curve as it is drawn beside its field.
#[derive(Debug, Clone, PartialEq)]
pub struct TorqueDiagram {
    /// What its axes hold.
    pub scales: TorqueScales,
    /// Torque in N·m over engine speed in rev/min.
    pub torque: Vec<[f64; 2]>,
    /// Power in kW over engine speed in rev/min.
    pub power: Vec<[f64; 2]>,
    /// Its points, of rising engine speed; none where it was built from the figures of a brochure.
    pub points: Vec<CurvePoint>,
    /// Idle, in rev/min, where it is known.
    pub idle_rpm: Option<f64>,
    /// The highest permitted engine speed, in rev/min.
    pub redline_rpm: f64,
    /// All of it in one spoken sentence.
    pub summary: String,
}

/// The scales of such a diagram: all begin at 0, and the lines across carry round figures of both torque
/// and power.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TorqueScales {
    /// The end of the level axis and the step of its marks, in rev/min.
    pub rpm: [f64; 2],
    /// The end of the upright axis on the left and the step of its marks, in N·m.
    pub nm: [f64; 2],
    /// The same on the right, in kW.
    pub kw: [f64; 2],
}

/// A point of a torque curve that can be moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePoint {
    /// Its place among the points, counted from 0.
    pub place: usize,
    /// Engine speed in rev/min, and torque in N·m.
    pub at: [f64; 2],
    /// The least and the greatest engine speed between its neighbours, in rev/min; its own where there
    /// is no step between them.
    pub speeds_rpm: [f64; 2],
}

/// How many stretches each piece of a curve is drawn in.
const STRETCHES: u8 = 8;

/// How much room is left above and behind the curve, so that a point can be dragged there.
const ROOM_ABOVE: f64 = 1.25;
const ROOM_BEHIND: f64 = 1.05;

/// About how many marks an axis has.
const MARKS: f64 = 5.0;

/// What an axis holds where nothing is above 0.
const LEAST_TOP: f64 = 1.0;

impl TorqueDiagram {
    /// The diagram of a curve.
    pub fn of(curve: &TorqueCurve, limits: &EngineLimits) -> Self {
        let torque: Vec<[f64; 2]> = torque_line(curve);
        let to_power = |[rpm, nm]: &[f64; 2]| [*rpm, power_w(*nm, *rpm) / 1000.0];
        let power: Vec<[f64; 2]> = torque.iter().map(to_power).collect();
        let redline_rpm = limits.redline.rpm();
        let points = match curve.brochure() {
            Some(_) => Vec::new(),
            None => points(curve.points()),
        };
        Self {
            scales: TorqueScales::of(&torque, &power, redline_rpm),
            summary: summary(curve.points()),
            torque,
            power,
            points,
            idle_rpm: limits.idle.map(EngineSpeed::rpm),
            redline_rpm,
        }
    }
}

impl TorqueScales {
    fn of(torque: &[[f64; 2]], power: &[[f64; 2]], redline_rpm: f64) -> Self {
        let top = |line: &[[f64; 2]], of: usize| {
            let values = line.iter().map(|point| point[of]);
            values.fold(LEAST_TOP, f64::max)
        };
        let nm_top = top(torque, 1) * ROOM_ABOVE;
        let nm_step = round_step(nm_top / MARKS);
        let lines = nm_top / nm_step;
        let kw_step = round_step(top(power, 1) * ROOM_ABOVE / lines);
        let rpm_end = top(torque, 0).max(redline_rpm) * ROOM_BEHIND;
        Self {
            rpm: [rpm_end, round_step(rpm_end / MARKS)],
            nm: [nm_top, nm_step],
            kw: [kw_step * lines, kw_step],
        }
    }
}

impl CurvePoint {
    /// The steps in which a hand moves it: rev/min and N·m.
    pub const STEPS: [f64; 2] = [10.0, 1.0];
    /// The least and the greatest torque, in N·m.
    pub const TORQUES_NM: [f64; 2] = [0.0, 20_000.0];

    /// What it is called: `Torque at 2000 rpm`.
    pub fn name(&self) -> String {
        format!("Torque at {} rpm", typed_rpm_text(self.at[0]))
    }

    /// Its torque in words: `310 N·m`.
    pub fn words(&self) -> String {
        format!("{} N·m", plain_number(self.at[1]))
    }

    /// All that is to be seen of it: `310 N·m at 2000 rpm, 65 kW`.
    pub fn all_words(&self) -> String {
        let [rpm, nm] = self.at;
        let kw = round_to(power_w(nm, rpm) / 1000.0, 0.1);
        let rpm = typed_rpm_text(rpm);
        format!("{} at {rpm} rpm, {} kW", self.words(), plain_number(kw))
    }

    /// The curve with it at another engine speed and torque, or as near as it may go; none where that is
    /// no curve.
    pub fn moved_to(&self, curve: &TorqueCurve, [rpm, nm]: [f64; 2]) -> Option<TorqueCurve> {
        let [slowest, fastest] = self.speeds_rpm;
        let [least, most] = Self::TORQUES_NM;
        let moved = TorquePoint {
            speed: EngineSpeed::from_rpm(rpm.clamp(slowest, fastest)).ok()?,
            torque: Torque::from_nm(nm.clamp(least, most)).ok()?,
        };
        let moved = curve.with_points(|points| {
            if let Some(point) = points.get_mut(self.place) {
                *point = moved;
            }
        });
        moved.ok()
    }

    /// A point more in steps of the hand: on the curve at this engine speed in rev/min, beyond its ends
    /// at this torque in N·m. Its place, and the curve with it; none where there is no room for it.
    pub fn added_to(curve: &TorqueCurve, [rpm, nm]: [f64; 2]) -> Option<(usize, TorqueCurve)> {
        let [rpm_step, nm_step] = Self::STEPS;
        let rpm = round_to(rpm, rpm_step);
        let nm = round_to(curve.torque_nm(rpm).unwrap_or(nm), nm_step);
        let [least, most] = Self::TORQUES_NM;
        let added = TorquePoint {
            speed: EngineSpeed::from_rpm(rpm).ok()?,
            torque: Torque::from_nm(nm.clamp(least, most)).ok()?,
        };
        let points = curve.points();
        let place = points.partition_point(|point| point.speed < added.speed);
        let with_it = curve.with_points(|points| points.insert(place, added));
        Some((place, with_it.ok()?))
    }
}

/// The curve as a line, with its points among those of the line.
fn torque_line(curve: &TorqueCurve) -> Vec<[f64; 2]> {
    let pieces = curve.pieces().iter();
    let within = pieces.flat_map(|piece| {
        (0..STRETCHES).map(move |stretch| {
            let share = f64::from(stretch) / f64::from(STRETCHES);
            let rpm = piece.from + share * (piece.to - piece.from);
            [rpm, piece.at(rpm).max(0.0)]
        })
    });
    let end = curve.points().last();
    let end = end.map(|point| [point.speed.rpm(), point.torque.nm()]);
    within.chain(end).collect()
}

fn points(points: &[TorquePoint]) -> Vec<CurvePoint> {
    let speed_of = |place: Option<usize>| {
        let point = points.get(place?)?;
        Some(point.speed.rpm())
    };
    let step = CurvePoint::STEPS[0];
    let point = |(place, point): (usize, &TorquePoint)| {
        let rpm = point.speed.rpm();
        let before = speed_of(place.checked_sub(1)).unwrap_or(0.0);
        let behind = speed_of(place.checked_add(1));
        let least = (before / step).floor() * step + step;
        let most = behind.map_or(FASTEST_RPM, |rpm| (rpm / step).ceil() * step - step);
        CurvePoint {
            place,
            at: [rpm, point.torque.nm()],
            // Its own speed, off the grid or not, is one at which it can stay.
            speeds_rpm: [least.min(rpm), most.max(rpm)],
        }
    };
    points.iter().enumerate().map(point).collect()
}

/// The highest engine speed that there can be, in rev/min.
const FASTEST_RPM: f64 = 30_000.0;

fn summary(points: &[TorquePoint]) -> String {
    let [first, last] = [points.first(), points.last()].map(|point| {
        let of = |point: &TorquePoint| [point.speed.rpm(), point.torque.nm()];
        point.map(of).unwrap_or_default()
    });
    let told = |[rpm, nm]: [f64; 2]| format!("{} N·m at {}", plain_number(nm), rpm_text(rpm));
    format!("from {} to {} rpm", told(first), told(last))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn curve(points: &[(f64, f64)]) -> TorqueCurve {
        let point = |(rpm, nm): &(f64, f64)| TorquePoint {
            speed: EngineSpeed::from_rpm(*rpm).unwrap(),
            torque: Torque::from_nm(*nm).unwrap(),
        };
        TorqueCurve::new(points.iter().map(point).collect()).unwrap()
    }

    fn limits() -> EngineLimits {
        EngineLimits {
            idle: EngineSpeed::from_rpm(800.0).ok(),
            lowest_useful: None,
            redline: EngineSpeed::from_rpm(6000.0).unwrap(),
        }
    }

    #[test]
    fn the_lines_across_carry_round_figures_of_torque_and_power() {
        for nm in [3.0, 152.0, 305.0, 12_000.0] {
            let diagram = TorqueDiagram::of(&curve(&[(1000.0, nm), (5000.0, nm)]), &limits());
            let TorqueScales { nm, kw, rpm } = diagram.scales;
            assert!((nm[0] / nm[1] - kw[0] / kw[1]).abs() < 1e-9);
            for step in [nm[1], kw[1], rpm[1]] {
                assert!((round_step(step) - step).abs() < 1e-9, "{step}");
            }
            let highest = |line: &[[f64; 2]]| line.iter().map(|p| p[1]).fold(0.0, f64::max);
            assert!(highest(&diagram.torque) < nm[0] && highest(&diagram.power) < kw[0]);
            assert!(diagram.redline_rpm < rpm[0]);
        }
    }

    #[test]
    fn the_points_of_a_brochure_s_curve_are_nobody_s_to_move() {
        use crate::motion::{Brochure, Power};
        let rpm = |rpm: f64| EngineSpeed::from_rpm(rpm).unwrap();
        let (torque, power) = (
            Torque::from_nm(152.0).unwrap(),
            Power::from_kw(96.0).unwrap(),
        );
        let figures = Brochure::new(torque, [rpm(4600.0); 2], power, rpm(6180.0)).unwrap();
        let diagram = TorqueDiagram::of(&figures.curve().unwrap(), &limits());
        assert!(diagram.points.is_empty() && diagram.torque.len() > 10);
    }

    #[test]
    fn a_point_between_close_neighbours_keeps_its_engine_speed() {
        let close = curve(&[(1001.0, 90.0), (1004.0, 91.0), (1008.0, 92.0)]);
        let diagram = TorqueDiagram::of(&close, &limits());
        let moved = diagram.points[1].moved_to(&close, [3000.0, 95.0]).unwrap();
        let point = moved.points()[1];
        assert!(
            (point.speed.rpm() - 1004.0).abs() < 1e-9 && (point.torque.nm() - 95.0).abs() < 1e-9
        );
    }

    proptest! {
        #[test]
        fn wherever_a_point_is_moved_the_curve_stays_one_and_the_others_stay(
            speeds in proptest::collection::btree_set(1_u16..=30_000, 2..12),
            which in 0_usize..12,
            to in (-1e6..1e6_f64, -1e6..1e6_f64),
        ) {
            let points: Vec<_> = speeds.iter().map(|rpm| (f64::from(*rpm), 100.0)).collect();
            let before = curve(&points);
            let place = which % points.len();
            let point = TorqueDiagram::of(&before, &limits()).points[place];
            let after = point.moved_to(&before, [to.0, to.1]).unwrap();
            for (at, (a, b)) in before.points().iter().zip(after.points()).enumerate() {
                prop_assert!(at == place || a == b);
            }
            let added = CurvePoint::added_to(&before, [to.0, to.1]);
            prop_assert!(added.is_none_or(|(_, curve)| curve.points().len() == points.len() + 1));
        }
    }
}
