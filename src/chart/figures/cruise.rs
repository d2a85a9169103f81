//! The table of steady speeds: what each asks of the engine in every gear, and what it burns.

use super::by_gear::{FigureOfGear, Gears, at_speed, name_other, plain};
use super::{FigureCell, FigureColumn, FigurePart, FigureRow, FigureTable};
use crate::analysis::{Motion, ProjectResults, SetMotion};
use crate::chart::table::spoken;
use crate::gearing::RoadSpeed;
use crate::motion::{FuelDifference, PoweredGear};
use crate::project::Project;
use crate::units::{
    KMH_PER_M_S, L_PER_IMPERIAL_GALLON, L_PER_US_GALLON, SpeedUnit, consumption_text,
    decimals_text, miles_per_gallon, percent_difference_text, plain_number, rpm_difference_text,
    rpm_text, signed,
};

/// Watts in a kilowatt.
const W_PER_KW: f64 = 1000.0;

/// What is told of every gear.
static FIGURES: [FigureOfGear; 7] = [
    FigureOfGear {
        difference: Some(|rpm, before| rpm_difference_text(rpm - before)),
        is_dimmed: true,
        ..plain("engine speed", "rpm", rpm_text, |_, gear, at| {
            Some(gear.engine_rpm(at))
        })
    },
    plain("load", "%", tenths_text, |set, gear, at| {
        let held = set.powertrain.cruise(gear, &set.on_road, at).held;
        held.map(|held| 100.0 * held.load_share())
    }),
    plain("power", "kW", tenths_text, |set, gear, at| {
        let held = set.powertrain.cruise(gear, &set.on_road, at).held;
        held.map(|held| held.power_w / W_PER_KW)
    }),
    plain("reserve", "kW", tenths_text, |set, gear, at| {
        let held = set.powertrain.cruise(gear, &set.on_road, at).held;
        held.map(|held| held.reserve_w() / W_PER_KW)
    }),
    FigureOfGear {
        difference: Some(fuel_difference),
        ..plain("fuel", "L/100 km", consumption_text, l_per_100km)
    },
    FigureOfGear {
        is_told: |units| units == SpeedUnit::Mph,
        ..plain("fuel", "mpg US", consumption_text, |set, gear, at| {
            miles_per_gallon(l_per_100km(set, gear, at)?, L_PER_US_GALLON)
        })
    },
    FigureOfGear {
        is_told: |units| units == SpeedUnit::Mph,
        ..plain("fuel", "mpg imperial", consumption_text, |set, gear, at| {
            miles_per_gallon(l_per_100km(set, gear, at)?, L_PER_IMPERIAL_GALLON)
        })
    },
];

/// What every reader of these figures should know.
const NOTE: &str =
    "Load is the share of full torque. A difference of fuel is good to a quarter of itself.";

impl FigureTable {
    /// What each gear asks of the engine at the wanted speeds.
    pub fn cruise(
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
            let every_gear = gears.part("Every gear", place, &FIGURES);
            (
                of_fuel(project, set),
                vec![in_top_gear(&gears, place), every_gear],
            )
        })
    }
}

fn l_per_100km(set: &SetMotion, gear: &PoweredGear, at_m_s: f64) -> Option<f64> {
    let cruise = set.powertrain.cruise(gear, &set.on_road, at_m_s);
    cruise.l_per_100km(&set.fuel?)
}

/// How good the estimate is, and what is burnt at idle.
fn of_fuel(project: &Project, set: &SetMotion) -> Vec<String> {
    let Some(fuel) = set.fuel else {
        return vec!["Without a displacement there is no estimate of fuel".to_owned()];
    };
    let share = plain_number((100.0 * fuel.uncertainty_share()).round());
    let idle = project.engine.idle.map(|idle| {
        let litres = consumption_text(fuel.idle_l_per_h(idle.rpm()));
        format!("At idle {litres} L/h")
    });
    let estimate = format!("Fuel is an estimate, {share} % either way");
    let known = project.technical.known_fuel.map(|known| {
        let litres = plain_number(known.consumption.l_per_100km());
        let speed = at_speed(known.speed, project.units);
        format!("Scaled to the known {litres} L/100 km {speed}, with nothing carried or pulled")
    });
    let facts = [estimate].into_iter().chain(known);
    facts.chain(idle).collect()
}

/// What one cruises in: the top gear at each wanted speed beside that of the baseline, and what the
/// difference makes in a year.
fn in_top_gear(gears: &Gears<'_>, place: usize) -> FigurePart {
    let set = &gears.motion.sets[place];
    let driven = gears.project.technical.driving.yearly_distance;
    let mut columns = vec![
        column("fuel".to_owned(), "L/100 km"),
        column("engine speed".to_owned(), "rpm"),
    ];
    let units = gears.project.units;
    let in_a_year = driven.map(|_| "in a year".to_owned());
    columns.extend(in_a_year.map(|title| column(title, "L")));
    let rows = set.powertrain.top().into_iter().flat_map(|top| {
        let like = gears.like(place, top);
        gears.speeds.iter().map(move |at| {
            let at_m_s = at.kmh() / KMH_PER_M_S;
            let before = like.as_ref();
            let burnt = l_per_100km(set, top, at_m_s);
            let burnt_before = before.and_then(|like| l_per_100km(like.set, like.gear, at_m_s));
            let rpm_before = before.map(|like| like.gear.engine_rpm(at_m_s));
            let mut cells = vec![
                FigureCell::of(burnt, consumption_text).against(burnt_before, fuel_difference),
                FigureCell::of(Some(top.engine_rpm(at_m_s)), rpm_text)
                    .against(rpm_before, |rpm, before| rpm_difference_text(rpm - before)),
            ];
            cells.extend(driven.map(|year| {
                let both = burnt.zip(burnt_before);
                let litres = both
                    .map(|(burnt, before)| FuelDifference::between(burnt, before).l_per_year(year));
                FigureCell::of(litres, |litres| signed(litres, 0))
            }));
            if let Some(like) = &like {
                name_other(&mut cells, like);
            }
            FigureRow {
                gear: Some(top.gear.id),
                label: at_speed(*at, units),
                remark: Some(format!("in {}", spoken(&top.gear.label))),
                cells,
            }
        })
    });
    FigurePart {
        title: "In top gear",
        is_said: true,
        names: "speed",
        columns,
        rows: rows.collect(),
    }
}

fn column(title: String, unit: &'static str) -> FigureColumn {
    FigureColumn { title, unit }
}

/// `−0.62 (−8.1 %)`: consumption against consumption.
fn fuel_difference(litres: f64, before: f64) -> String {
    let difference = FuelDifference::between(litres, before);
    let words = signed(difference.l_per_100km, 2);
    match difference.share {
        Some(share) => format!("{words} ({})", percent_difference_text(share)),
        None => words,
    }
}

/// A number with one decimal.
fn tenths_text(number: f64) -> String {
    decimals_text(number, 1)
}
