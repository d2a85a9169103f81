//! Figures that every gear has at every road speed that was asked for: a row for each gear, a column for
//! each figure at each speed.

use super::{FigureCell, FigureColumn, FigurePart, FigureRow};
use crate::analysis::{Motion, ProjectResults, SetMotion};
use crate::chart::of_motion::{Like, like};
use crate::gearing::RoadSpeed;
use crate::motion::PoweredGear;
use crate::project::Project;
use crate::units::{KMH_PER_M_S, SpeedUnit, mark_text};

/// What is told of a gear at a road speed.
pub(super) struct FigureOfGear {
    /// What it is called.
    pub(super) title: &'static str,
    /// Its unit.
    pub(super) unit: &'static str,
    /// Whether readers of that unit of speed are told it.
    pub(super) is_told: fn(SpeedUnit) -> bool,
    /// How a reader sees it.
    pub(super) rounded: fn(f64) -> String,
    /// The words for its difference from the baseline's; none where that is not told.
    pub(super) difference: Option<fn(f64, f64) -> String>,
    /// Whether it steps back where the engine is outside its useful range.
    pub(super) is_dimmed: bool,
    /// The figure at a road speed in m/s; none where the gear has none.
    pub(super) figure: fn(&SetMotion, &PoweredGear, f64) -> Option<f64>,
}

/// A figure that is told in every unit of speed and not compared.
pub(super) const fn plain(
    title: &'static str,
    unit: &'static str,
    rounded: fn(f64) -> String,
    figure: fn(&SetMotion, &PoweredGear, f64) -> Option<f64>,
) -> FigureOfGear {
    FigureOfGear {
        title,
        unit,
        is_told: |_| true,
        rounded,
        difference: None,
        is_dimmed: false,
        figure,
    }
}

/// All that the figures of gears follow from.
#[derive(Clone, Copy)]
pub(super) struct Gears<'a> {
    pub(super) project: &'a Project,
    pub(super) results: &'a ProjectResults,
    pub(super) motion: &'a Motion,
    pub(super) speeds: &'a [RoadSpeed],
}

impl<'a> Gears<'a> {
    /// The figures of the gears of the set at that place, each beside that of the gear it is compared with.
    pub(super) fn part(
        &self,
        title: &'static str,
        place: usize,
        figures: &'static [FigureOfGear],
    ) -> FigurePart {
        let units = self.project.units;
        let told = figures.iter().filter(|figure| (figure.is_told)(units));
        let columns: Vec<(RoadSpeed, &FigureOfGear)> = self
            .speeds
            .iter()
            .flat_map(|at| told.clone().map(|figure| (*at, figure)))
            .collect();
        let set = &self.motion.sets[place];
        let rows = set.powertrain.gears.iter().map(|gear| FigureRow {
            gear: Some(gear.gear.id),
            label: gear.gear.label.clone(),
            remark: None,
            cells: self.cells(place, gear, &columns),
        });
        FigurePart {
            title,
            is_said: false,
            names: "gear",
            columns: columns
                .iter()
                .map(|(at, figure)| FigureColumn {
                    title: format!("{} {}", figure.title, at_speed(*at, units)),
                    unit: figure.unit,
                })
                .collect(),
            rows: rows.collect(),
        }
    }

    fn cells(
        &self,
        place: usize,
        gear: &PoweredGear,
        columns: &[(RoadSpeed, &FigureOfGear)],
    ) -> Vec<FigureCell> {
        let set = &self.motion.sets[place];
        let like = self.like(place, gear);
        let cell = |(at, told): &(RoadSpeed, &FigureOfGear)| {
            let at_m_s = at.kmh() / KMH_PER_M_S;
            let mut cell = FigureCell::of((told.figure)(set, gear, at_m_s), told.rounded);
            if told.is_dimmed && !self.project.engine.allow(gear.engine_rpm(at_m_s)) {
                // What nobody drives says nothing of a difference.
                cell.cell.is_dim = true;
                return cell;
            }
            match (told.difference, &like) {
                (Some(difference), Some(like)) => {
                    let before = (told.figure)(like.set, like.gear, at_m_s);
                    cell.against(before, difference)
                }
                (None, _) | (_, None) => cell,
            }
        };
        let mut cells: Vec<FigureCell> = columns.iter().map(cell).collect();
        if let Some(like) = like {
            name_other(&mut cells, &like);
        }
        cells
    }

    /// The gear that a gear of the set at that place is compared with.
    pub(super) fn like(&self, place: usize, gear: &PoweredGear) -> Option<Like<'a>> {
        like((self.project, self.results), self.motion, place, gear)
    }
}

/// All of a row are compared with the same gear: it is said once, where the eye comes first.
pub(super) fn name_other(cells: &mut [FigureCell], like: &Like<'_>) {
    let mut each = cells.iter_mut();
    let first = each.find_map(|cell| cell.cell.difference.as_mut());
    if let Some(difference) = first {
        difference.push_str(&like.other_label);
    }
}

/// `at 90 km/h`.
pub(super) fn at_speed(speed: RoadSpeed, units: SpeedUnit) -> String {
    format!("at {} {}", mark_text(speed.kmh(), units), units.sign())
}
