//! The table of effort: how hard every gear pulls at the speeds that were asked for, and how fast and how
//! steep the set goes.

use super::MotionTable;
use super::by_gear::{FigureOfGear, Gears, plain};
use super::road::is_level_and_still;
use crate::analysis::{Motion, ProjectResults, SetMotion};
use crate::gearing::RoadSpeed;
use crate::motion::TopSpeedLimit;
use crate::project::Project;
use crate::units::{KMH_PER_M_S, decimals_text, signed, speed_text};

/// What is told of every gear.
static FIGURES: [FigureOfGear; 4] = [
    plain("effort", "N", whole_text, |_, gear, at| gear.effort_n(at)),
    plain("load", "N", whole_text, |set, gear, at| {
        gear.covered_m_s(at).map(|at| set.on_road.road_load_n(at))
    }),
    plain("acceleration", "m/s²", hundredths_text, |set, gear, at| {
        gear.acceleration_m_s2(&set.on_road, at)
    }),
    FigureOfGear {
        difference: Some(|gradient, before| signed(gradient - before, 1)),
        ..plain("gradient", "%", tenths_text, |set, gear, at| {
            gear.gradient_percent(&set.on_road, at)
        })
    },
];

/// What every reader of these figures should know.
const NOTE: &str = "Estimates at full load: effort after losses, gradient without speeding up.";

impl MotionTable {
    /// How hard every gear pulls at the wanted speeds.
    pub fn effort(
        project: &Project,
        results: &ProjectResults,
        motion: &Motion,
        speeds: &[RoadSpeed],
    ) -> Self {
        let gears = Gears {
            project,
            results,
            motion,
            speeds,
        };
        Self::of_sets(project, vec![NOTE.to_owned()], |place, _| {
            let set = &motion.sets[place];
            let facts = [top_speed(project, motion, set)]
                .into_iter()
                .chain(start_gradient(motion, set));
            (facts.collect(), vec![gears.part("Effort", place, &FIGURES)])
        })
    }
}

/// `top speed 207 km/h in 5, limited by power`, and how the set is geared for it.
fn top_speed(project: &Project, motion: &Motion, set: &SetMotion) -> String {
    let Some((gear, top)) = set.powertrain.top_speed(&set.vehicle, &motion.load) else {
        return "holds no speed on the level".to_owned();
    };
    let speed = speed_text(top.speed_m_s * KMH_PER_M_S, project.units);
    let (unit, label) = (project.units.sign(), &gear.gear.label);
    let limit = match top.limit {
        TopSpeedLimit::Power => "power",
        TopSpeedLimit::Redline => "engine speed",
    };
    let gearing = set.powertrain.top_gearing(&set.vehicle, &motion.load);
    let gearing = gearing.map_or_else(String::new, |gearing| format!(". {gearing}"));
    let road = if is_level_and_still(&project.technical.road) {
        ""
    } else {
        " on the level in still air"
    };
    format!("top speed{road} {speed} {unit} in {label}, limited by {limit}{gearing}")
}

/// `starts on up to 41.2 %`; none where nothing limits the start.
fn start_gradient(motion: &Motion, set: &SetMotion) -> Option<String> {
    let percent = set.start_gradient_percent(&motion.driving)?;
    Some(if percent < 0.0 {
        format!(
            "starts only where the road falls by {} %",
            tenths_text(-percent)
        )
    } else {
        format!("starts on up to {} %", tenths_text(percent))
    })
}

/// A force to the newton.
fn whole_text(number: f64) -> String {
    decimals_text(number, 0)
}

/// A percentage with one decimal.
fn tenths_text(number: f64) -> String {
    decimals_text(number, 1)
}

/// An acceleration with two decimals.
fn hundredths_text(number: f64) -> String {
    decimals_text(number, 2)
}
