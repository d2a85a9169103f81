//! The strange things that engine and vehicle make of a set, and their words.

use crate::motion::{LoadCase, StartLimit};
use crate::units::{
    SpeedUnit, decimals_text, mark_text, plain_number, round_to, rpm_text, speed_text,
};
use std::fmt;

/// The most things of a kind that one sentence names.
const MOST_NAMED: usize = 3;

/// What is strange, with the figures that show it.
#[derive(Debug, Clone, PartialEq)]
pub enum MotionFindingKind {
    /// Top gear does not hold marked road speeds on the level.
    NotHeldInTop {
        /// The label of top gear.
        gear: String,
        /// These speeds in km/h, as they are marked; there is one at least.
        speeds_kmh: Vec<f64>,
        /// The fastest of them in km/h that a lower gear holds, and the tallest gear that does.
        held_lower: Option<(f64, String)>,
        /// What is carried, pulled and met.
        load: LoadCase,
        /// The unit that speeds are told in.
        unit: SpeedUnit,
    },
    /// Changing up would be best well beyond the redline, as far as the torque curve tells.
    BestShiftBeyondRedline {
        /// These changes: the labels of both gears and the best engine speed in rev/min; there is one at
        /// least.
        changes: Vec<([String; 2], f64)>,
        /// The redline in rev/min.
        redline_rpm: f64,
    },
    /// A lower gear than top is clearly the fastest.
    Overdrive {
        /// The label of top gear.
        gear: String,
        /// Its top speed in km/h; none where it holds no speed.
        top_speed_kmh: Option<f64>,
        /// The label of the fastest gear.
        fastest: String,
        /// Its top speed in km/h.
        fastest_kmh: f64,
        /// The unit that speeds are told in.
        unit: SpeedUnit,
    },
    /// Top gear is the fastest there is, and so tall that a shorter one would be clearly faster.
    GearedBeyondTopSpeed {
        /// The label of top gear.
        gear: String,
        /// Its top speed in km/h.
        top_speed_kmh: f64,
        /// The speed in km/h at which the road load takes the peak power.
        reachable_kmh: f64,
        /// The unit that speeds are told in.
        unit: SpeedUnit,
    },
    /// First does not start on the road as it is typed.
    DoesNotStart {
        /// The label of first gear.
        gear: String,
        /// The grade of the road in per cent.
        grade_percent: f64,
        /// The steepest grade in per cent on which it starts.
        steepest_percent: f64,
        /// What keeps it from starting.
        limit: StartLimit,
        /// The label of a crawler that starts there.
        crawler: Option<String>,
    },
}

impl MotionFindingKind {
    /// The kind's name in machine-readable output.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotHeldInTop { .. } => "not_held_in_top",
            Self::BestShiftBeyondRedline { .. } => "best_shift_beyond_redline",
            Self::Overdrive { .. } => "overdrive",
            Self::GearedBeyondTopSpeed { .. } => "geared_beyond_top_speed",
            Self::DoesNotStart { .. } => "does_not_start",
        }
    }
}

impl fmt::Display for MotionFindingKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotHeldInTop {
                gear,
                speeds_kmh,
                held_lower,
                load,
                unit,
            } => {
                let held_lower = held_lower.as_ref().map(|(kmh, gear)| (*kmh, gear.as_str()));
                not_held(f, gear, (speeds_kmh, *unit), held_lower, level(load))
            }
            Self::BestShiftBeyondRedline {
                changes,
                redline_rpm,
            } => {
                let changes = changes
                    .iter()
                    .map(|([a, b], rpm)| format!("{a} to {b} at {} rpm", rpm_text(*rpm)));
                write!(
                    f,
                    "changing up would be best beyond the redline of {} rpm: {}",
                    rpm_text(*redline_rpm),
                    listed(changes)
                )
            }
            Self::Overdrive {
                gear,
                top_speed_kmh,
                fastest,
                fastest_kmh,
                unit,
            } => {
                let (sign, faster) = (unit.sign(), speed_text(*fastest_kmh, *unit));
                let ends = top_speed_kmh.map_or_else(
                    || "holds no speed on the level".to_owned(),
                    |kmh| format!("ends at {} {sign} on the level", speed_text(kmh, *unit)),
                );
                write!(
                    f,
                    "gear {gear} is an overdrive: it {ends}, gear {fastest} at {faster} {sign}"
                )
            }
            Self::GearedBeyondTopSpeed {
                gear,
                top_speed_kmh,
                reachable_kmh,
                unit,
            } => write!(
                f,
                "geared beyond top speed: gear {gear} ends at {} {sign} on the level, and shorter gearing \
                 would reach {} {sign}",
                speed_text(*top_speed_kmh, *unit),
                speed_text(*reachable_kmh, *unit),
                sign = unit.sign()
            ),
            Self::DoesNotStart {
                gear,
                grade_percent,
                steepest_percent,
                limit,
                crawler,
            } => {
                let grades = [*grade_percent, *steepest_percent];
                does_not_start(f, gear, grades, *limit)?;
                match crawler {
                    Some(crawler) => write!(f, "; gear {crawler} does"),
                    None => Ok(()),
                }
            }
        }
    }
}

fn not_held(
    f: &mut fmt::Formatter<'_>,
    gear: &str,
    (speeds_kmh, unit): (&[f64], SpeedUnit),
    held_lower: Option<(f64, &str)>,
    road: &str,
) -> fmt::Result {
    let speeds = listed(speeds_kmh.iter().map(|kmh| mark_text(*kmh, unit)));
    let sign = unit.sign();
    let Some((held_kmh, lower)) = held_lower else {
        return write!(f, "no gear holds {speeds} {sign} {road}");
    };
    write!(f, "gear {gear} does not hold {speeds} {sign} {road}")?;
    if speeds_kmh.len() == 1 {
        return write!(f, "; gear {lower} does");
    }
    let held = mark_text(held_kmh, unit);
    write!(f, "; gear {lower} holds {held} {sign}")
}

fn does_not_start(
    f: &mut fmt::Formatter<'_>,
    gear: &str,
    [grade_percent, steepest_percent]: [f64; 2],
    limit: StartLimit,
) -> fmt::Result {
    let road = road(grade_percent);
    let limit = match limit {
        StartLimit::Engine => "",
        StartLimit::Grip => ", where grip ends",
    };
    let at_most = decimals_text(steepest_percent, 1);
    if steepest_percent < 0.0 {
        write!(f, "gear {gear} does not start {road}")
    } else if round_to(steepest_percent, 0.1) < grade_percent {
        write!(
            f,
            "gear {gear} starts on {at_most} % at most{limit}, not {road}"
        )
    } else {
        // A figure that rounds to the grade would contradict "not".
        write!(f, "gear {gear} just does not start {road}{limit}")
    }
}

/// The first of them, and how many more there are.
fn listed(all: impl ExactSizeIterator<Item = String>) -> String {
    let more = all.len().saturating_sub(MOST_NAMED);
    let mut named: Vec<String> = all.take(MOST_NAMED).collect();
    if more > 0 {
        named.push(format!("{more} more"));
    }
    match named.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
        None => String::new(),
    }
}

/// The level road with what is carried, pulled and met on it.
fn level(load: &LoadCase) -> &'static str {
    let is_loaded = load.extra.kg() > 0.0 || load.trailer.is_some();
    match (is_loaded, load.headwind.m_s() != 0.0) {
        (false, false) => "on the level",
        (true, false) => "on the level with this load",
        (false, true) => "on the level in this wind",
        (true, true) => "on the level with this load in this wind",
    }
}

fn road(grade_percent: f64) -> String {
    let percent = plain_number(grade_percent.abs());
    if grade_percent > 0.0 {
        format!("on the grade of {percent} %")
    } else if grade_percent < 0.0 {
        format!("on the fall of {percent} %")
    } else {
        "on the level".to_owned()
    }
}
