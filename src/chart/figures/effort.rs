//! The table of effort: how hard every gear pulls at the speeds that were asked for, and how fast and how
//! steep the set goes.

use super::FigureTable;
use super::by_gear::{FigureOfGear, Gears, plain};
use super::road::is_level_and_still;
use crate::analysis::{Motion, ProjectResults, SetMotion};
use crate::gearing::RoadSpeed;
use crate::motion::{StartLimit, TopSpeedLimit};
use crate::project::Project;
use crate::units::{KMH_PER_M_S, decimals_text, mark_text, signed, speed_text};

/// What is told of every gear.
static FIGURES: [FigureOfGear; 4] = [
    plain("effort", "N", whole_text, |_, gear, at| gear.effort_n(at)),
    plain("road load", "N", whole_text, |set, gear, at| {
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

impl FigureTable {
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
        Self::of_motion((project, motion), vec![NOTE.to_owned()], |place, _| {
            let set = &motion.sets[place];
            let facts = top_speed(project, motion, set)
                .into_iter()
                .chain(start_gradient(motion, set))
                .chain(held_in_top(project, set, speeds));
            (facts.collect(), vec![gears.part("Effort", place, &FIGURES)])
        })
    }
}

/// `Top speed 207 km/h in 5, limited by power`, and how the set is geared for it.
fn top_speed(project: &Project, motion: &Motion, set: &SetMotion) -> Vec<String> {
    let Some((gear, top)) = set.powertrain.top_speed(&set.vehicle, &motion.load) else {
        return vec!["Holds no speed on the level".to_owned()];
    };
    let speed = speed_text(top.speed_m_s * KMH_PER_M_S, project.units);
    let (unit, label) = (project.units.sign(), &gear.gear.label);
    let limit = match top.limit {
        TopSpeedLimit::Power => "power",
        TopSpeedLimit::Redline => "engine speed",
    };
    let gearing = set.powertrain.top_gearing(&set.vehicle, &motion.load);
    let road = if is_level_and_still(&project.technical.road) {
        ""
    } else {
        " on the level in still air"
    };
    let top = format!("Top speed{road} {speed} {unit} in {label}, limited by {limit}");
    let gearing = gearing.map(|gearing| gearing.to_string());
    [top].into_iter().chain(gearing).collect()
}

/// `Starts in 1 on up to 41.2 %, where grip ends`; none where nothing limits the start.
fn start_gradient(motion: &Motion, set: &SetMotion) -> Option<String> {
    let powertrain = &set.powertrain;
    let gear = powertrain.chain().next()?;
    let launch_rpm = motion.driving.launch_rpm(powertrain);
    let start = powertrain.start_in(gear, &set.on_road, launch_rpm)?;
    let (first, percent) = (&gear.gear.label, start.steepest_percent);
    if percent < 0.0 {
        let fall = tenths_text(-percent);
        return Some(format!(
            "Starts in {first} only where the road falls by {fall} %"
        ));
    }
    let limit = match start.limit {
        StartLimit::Engine => "",
        StartLimit::Grip => ", where grip ends",
    };
    Some(format!(
        "Starts in {first} on up to {} %{limit}",
        tenths_text(percent)
    ))
}

/// `In 5 it holds 90 km/h up to 12.4 %, 110 km/h up to 10.2 %`; none where no speed is asked for.
fn held_in_top(project: &Project, set: &SetMotion, speeds: &[RoadSpeed]) -> Option<String> {
    let top = set.powertrain.top()?;
    let held = speeds.iter().filter_map(|at| {
        let percent = top.gradient_percent(&set.on_road, at.kmh() / KMH_PER_M_S)?;
        let speed = mark_text(at.kmh(), project.units);
        let (unit, steepest) = (project.units.sign(), tenths_text(percent));
        Some(format!("{speed} {unit} up to {steepest} %"))
    });
    let held: Vec<String> = held.collect();
    let label = &top.gear.label;
    (!held.is_empty()).then(|| format!("In {label} it holds {}", held.join(", ")))
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
