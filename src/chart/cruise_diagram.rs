//! The cruise diagram: what every gear burns at steady road speeds, or, where that is not known, what share
//! of full torque it asks for.
//!
//! Top gear is what one cruises in: it is thick, and read off at the marked speeds with the difference to
//! the baseline.

use super::at_pointer::{Also, Readable};
use super::axis::{Quantity, next_round};
use super::chosen::ChosenSet;
use super::marks::{at_marked_road_speeds, of_all_sets};
use super::of_motion::{self, Like, speeds_m_s};
use super::scene::{Label, Line, Owner, Place, Point, Role, Scene};
use crate::analysis::{Analysis, Motion, ProjectResults, SetMotion};
use crate::motion::PoweredGear;
use crate::project::{Project, View};
use crate::units::{KMH_PER_M_S, consumption_text, percent_difference_text, percent_text};

/// In how many steps a line goes over the speeds of a gear.
const STEPS: u32 = 60;

/// How far above the highest figure of a top gear the diagram goes: what lower gears burn there is cut off.
const ROOM: f64 = 1.25;

/// The cruise diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let project = analysis.project();
    let speed = Quantity::RoadSpeed(project.units);
    let empty = |quantity| Scene {
        without_reading: "no gear holds it",
        ..Scene::empty(View::Cruise, speed, quantity)
    };
    match analysis.motion() {
        Ok(motion) => {
            let mut shown = sets.iter().map(|set| &motion.sets[set.of.place]);
            let figure = if shown.all(|set| set.fuel.is_some()) {
                Quantity::Fuel
            } else {
                Quantity::Load
            };
            let sheet = Sheet {
                project,
                results: analysis.results(),
                motion,
                figure,
                fastest: 0.0,
                highest: 0.0,
                scene: empty(figure),
            };
            sheet.drawn(sets)
        }
        Err(reason) => of_motion::without(empty(Quantity::Fuel), reason),
    }
}

struct Sheet<'a> {
    project: &'a Project,
    results: &'a ProjectResults,
    motion: &'a Motion,
    /// What stands upright: fuel or load.
    figure: Quantity,
    /// The highest road speed so far, in the project's unit.
    fastest: f64,
    /// The highest figure of a top gear so far.
    highest: f64,
    scene: Scene,
}

impl<'a> Sheet<'a> {
    fn drawn(mut self, sets: &[ChosenSet<'_>]) -> Scene {
        at_marked_road_speeds(&mut self.scene, self.project);
        for set in sets {
            self.set(set);
        }
        self.scene.x.range = [0.0, next_round(self.fastest * 1.02)];
        self.scene.y.range = [0.0, next_round(self.highest * ROOM)];
        self.scene.summary = self.summary();
        self.scene
    }

    fn set(&mut self, chosen: &ChosenSet<'_>) {
        self.scene.sets.push(chosen.shown());
        let set = &self.motion.sets[chosen.of.place];
        let top = set.powertrain.top().map(|top| top.gear.id);
        for gear in &set.powertrain.gears {
            let of = Owner {
                gear: Some(gear.gear.id),
                ..chosen.of
            };
            let points = self.line(set, gear);
            let is_top = top == Some(gear.gear.id);
            if is_top {
                let highest = points.iter().map(|point| point[1]);
                self.highest = highest.fold(self.highest, f64::max);
                self.top(chosen, set, gear);
            }
            let fastest = points.iter().map(|point| point[0]);
            self.fastest = fastest.fold(self.fastest, f64::max);
            // What one cruises in is told in full: the engine speed is what one hears.
            let also = is_top.then(|| self.revs(gear));
            self.scene.readables.push(Readable {
                of,
                also: also.into_iter().collect(),
                name: gear.gear.label.clone(),
                baseline: self
                    .like(chosen, gear)
                    .map(|like| self.line(like.set, like.gear)),
                points: points.clone(),
            });
            let role = if is_top { Role::FullLoad } else { Role::Fan };
            if let Some(end) = points.first() {
                self.scene.say_once(Label {
                    text: gear.gear.label.clone(),
                    role,
                    of: Some(of),
                    at: *end,
                    place: Place::Beside,
                });
            }
            self.scene.lines.push(Line { role, of, points });
        }
    }

    /// The figure of a gear at a road speed in m/s; none where it does not hold it.
    fn at(&self, set: &SetMotion, gear: &PoweredGear, speed_m_s: f64) -> Option<f64> {
        let cruise = set.powertrain.cruise(gear, &set.on_road, speed_m_s);
        match (self.figure, set.fuel) {
            (Quantity::Fuel, Some(fuel)) => cruise.l_per_100km(&fuel),
            _ => Some(100.0 * cruise.held?.load_share()),
        }
    }

    fn line(&self, set: &SetMotion, gear: &PoweredGear) -> Vec<[f64; 2]> {
        let point = |m_s: f64| {
            let x = self.project.units.from_kmh(m_s * KMH_PER_M_S);
            Some([x, self.at(set, gear, m_s)?])
        };
        speeds_m_s(gear, STEPS).filter_map(point).collect()
    }

    /// The engine speed of a gear, as it is read off beside its figure.
    fn revs(&self, gear: &PoweredGear) -> Also {
        let point = |m_s: f64| {
            let x = self.project.units.from_kmh(m_s * KMH_PER_M_S);
            [x, gear.engine_rpm(m_s)]
        };
        Also {
            name: String::new(),
            quantity: Quantity::EngineSpeed,
            points: vec![point(gear.low_m_s()), point(gear.high_m_s())],
        }
    }

    /// The gear that a gear is compared with.
    fn like(&self, chosen: &ChosenSet<'_>, gear: &PoweredGear) -> Option<Like<'a>> {
        let of = (self.project, self.results);
        of_motion::like(of, self.motion, chosen.of.place, gear)
    }

    /// What top gear does at each marked speed, with the difference to the baseline.
    fn top(&mut self, chosen: &ChosenSet<'_>, set: &SetMotion, top: &PoweredGear) {
        let like = self.like(chosen, top);
        let units = self.project.units;
        for speed in self.project.marked_road_speeds.as_slice() {
            let at_m_s = speed.kmh() / KMH_PER_M_S;
            let Some(figure) = self.at(set, top, at_m_s) else {
                continue;
            };
            let before = like
                .as_ref()
                .and_then(|like| self.at(like.set, like.gear, at_m_s));
            let is_useful = self.project.engine.allow(top.engine_rpm(at_m_s));
            let share = before.map(|before| figure / before - 1.0);
            // What nobody drives says nothing of a difference.
            let share = share.filter(|share| share.is_finite() && is_useful);
            let difference = share.map(|share| format!(" {}", percent_difference_text(share)));
            let text = match self.figure {
                Quantity::Fuel => format!("{} L", consumption_text(figure)),
                _ => format!("{} %", percent_text(figure / 100.0)),
            };
            let text = if is_useful { text } else { format!("({text})") };
            let at = [units.from_kmh(speed.kmh()), figure];
            let (role, of) = (Role::Crossing, chosen.of);
            self.scene.points.push(Point { role, of, at });
            self.scene.labels.push(Label {
                text: text + &difference.unwrap_or_default(),
                role,
                of: Some(of),
                at,
                // All sets in a column: none is left out, and the eye compares downwards.
                place: Place::AtHead(self.scene.sets.len() - 1),
            });
        }
    }

    /// The diagram in one spoken sentence.
    fn summary(&self) -> String {
        let what = match self.figure {
            Quantity::Fuel => "Fuel in L/100 km at steady road speeds",
            _ => "Load at steady road speeds",
        };
        let spoken = self.scene.sets.iter().map(|set| {
            let crossings = self.scene.labels.iter().filter(|label| {
                label.role == Role::Crossing && label.of.is_some_and(|of| of.set == set.id)
            });
            let texts: Vec<&str> = crossings.map(|label| label.text.as_str()).collect();
            if texts.is_empty() {
                set.name.clone()
            } else {
                format!("{} {} in top gear", set.name, texts.join(", "))
            }
        });
        let sets = of_all_sets(spoken);
        format!("{what}: {sets}")
    }
}
