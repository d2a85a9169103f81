//! The effort diagram: how hard every gear pulls against road speed, and what air, tyres and grades take of
//! it.
//!
//! What a gear pulls beyond the road load speeds the vehicle up, or carries it up a hill; where both are
//! equal it goes no faster.

use super::at_pointer::Readable;
use super::axis::{Along, Quantity, next_round};
use super::chosen::ChosenSet;
use super::handle::{Handle, travel};
use super::marks::{at_marked_road_speeds, of_all_sets};
use super::of_motion::{self, best_rpm_text, speeds_m_s};
use super::scene::{Curve, Label, Line, Owner, Place, Point, Role, Scene};
use crate::analysis::{Analysis, Motion, ProjectResults, SetMotion};
use crate::gearing::GearRole;
use crate::motion::{OnRoad, PoweredGear};
use crate::project::{Project, View};
use crate::units::{KMH_PER_M_S, plain_number, round_to, speed_text};

/// In how many steps a line goes over the speeds of a gear.
const STEPS: u32 = 40;

/// The effort diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let project = analysis.project();
    let speed = Quantity::RoadSpeed(project.units);
    let scene = Scene {
        without_reading: "no gear at this speed",
        ..Scene::empty(View::Effort, speed, Quantity::Effort)
    };
    match analysis.motion() {
        Ok(motion) => {
            let mut sheet = Sheet {
                project,
                results: analysis.results(),
                motion,
                scene,
                fastest: 0.0,
                strongest_n: 0.0,
            };
            at_marked_road_speeds(&mut sheet.scene, project);
            for set in sets {
                sheet.set(set);
            }
            sheet.finished(sets)
        }
        Err(reason) => of_motion::without(scene, reason),
    }
}

struct Sheet<'a> {
    project: &'a Project,
    results: &'a ProjectResults,
    motion: &'a Motion,
    scene: Scene,
    /// The highest road speed so far, in the project's unit.
    fastest: f64,
    /// The highest effort so far.
    strongest_n: f64,
}

impl Sheet<'_> {
    /// A road speed in the project's unit.
    fn x(&self, speed_m_s: f64) -> f64 {
        self.project.units.from_kmh(speed_m_s * KMH_PER_M_S)
    }

    fn m_s(&self, x: f64) -> f64 {
        self.project.units.to_kmh(x) / KMH_PER_M_S
    }

    fn label(&mut self, role: Role, of: Option<Owner>, text: String, at: [f64; 2], place: Place) {
        self.scene.say_once(Label {
            text,
            role,
            of,
            at,
            place,
        });
    }

    fn set(&mut self, chosen: &ChosenSet<'_>) {
        self.scene.sets.push(chosen.shown());
        let set = &self.motion.sets[chosen.of.place];
        for gear in &set.powertrain.gears {
            self.gear(chosen, gear);
        }
        self.ideal(chosen, set);
        self.top_speed(chosen, set);
        self.shifts(chosen, set);
    }

    /// The effort of a gear over its speeds.
    fn line(&self, gear: &PoweredGear) -> Vec<[f64; 2]> {
        let point = |m_s: f64| Some([self.x(m_s), gear.effort_n(m_s)?]);
        speeds_m_s(gear, STEPS).filter_map(point).collect()
    }

    fn gear(&mut self, chosen: &ChosenSet<'_>, gear: &PoweredGear) {
        let of = Owner {
            gear: Some(gear.gear.id),
            ..chosen.of
        };
        let points = self.line(gear);
        let Some(peak) = points.iter().copied().max_by(|a, b| a[1].total_cmp(&b[1])) else {
            return;
        };
        self.strongest_n = self.strongest_n.max(peak[1]);
        self.fastest = self.fastest.max(self.x(gear.high_m_s()));
        let is_shifted = gear.gear.role == Some(GearRole::Shifted);
        let role = if is_shifted {
            Role::FullLoad
        } else {
            Role::Fan
        };
        self.label(role, Some(of), gear.gear.label.clone(), peak, Place::Beside);
        if is_shifted {
            self.scene.readables.push(Readable {
                also: Vec::new(),
                of,
                name: gear.gear.label.clone(),
                baseline: self.like(chosen.of.place, gear),
                points: points.clone(),
            });
        }
        self.scene.lines.push(Line { role, of, points });
    }

    /// The line of the gear that a gear is compared with.
    fn like(&self, place: usize, gear: &PoweredGear) -> Option<Vec<[f64; 2]>> {
        let of = (self.project, self.results);
        let like = of_motion::like(of, self.motion, place, gear)?;
        Some(self.line(like.gear))
    }

    /// What the engine would pull at its peak power always.
    fn ideal(&mut self, chosen: &ChosenSet<'_>, set: &SetMotion) {
        let chain = || set.powertrain.chain();
        let ends = chain().next().zip(chain().next_back());
        let Some((first, top)) = ends else { return };
        let (from, to) = (first.low_m_s(), top.high_m_s());
        // Even steps of the logarithm: a hyperbola bends most where it is slow.
        let steps = (0..=STEPS).map(|step| f64::from(step) / f64::from(STEPS));
        let speeds = steps.map(|share| from * (to / from).powf(share));
        let point = |m_s: f64| Some([self.x(m_s), set.powertrain.ideal_effort_n(m_s)?]);
        let points = speeds.filter_map(point).collect();
        let (role, of) = (Role::Ideal, chosen.of);
        self.scene.lines.push(Line { role, of, points });
    }

    /// Where the fastest gear meets the road load of the level road.
    fn top_speed(&mut self, chosen: &ChosenSet<'_>, set: &SetMotion) {
        let Some((gear, top)) = set.powertrain.top_speed(&set.vehicle, &self.motion.load) else {
            return;
        };
        let Some(effort_n) = gear.effort_n(top.speed_m_s) else {
            return;
        };
        let at = [self.x(top.speed_m_s), effort_n];
        let units = self.project.units;
        let speed = speed_text(top.speed_m_s * KMH_PER_M_S, units);
        let (role, of) = (Role::Crossing, chosen.of);
        self.scene.points.push(Point { role, of, at });
        let text = format!("top {speed} {}", units.sign());
        // Those of several sets lie close: beneath one another at the foot all find room.
        self.label(role, Some(of), text, at, Place::AtFoot);
    }

    /// The shift points as handles, and where changing up is best.
    fn shifts(&mut self, chosen: &ChosenSet<'_>, set: &SetMotion) {
        let best = self.motion.best_shift_rpms(chosen.of.place);
        let chain: Vec<&PoweredGear> = set.powertrain.chain().collect();
        let results: Vec<_> = chosen.set.chain().collect();
        for (at, pair) in chain.windows(2).enumerate() {
            let [from, to] = [pair[0], pair[1]];
            let upshift = results.get(at).and_then(|result| result.upshift);
            if let Some(up) = upshift
                && let Some(effort_n) = from.effort_n(from.speed_m_s(up.shift_rpm))
            {
                let x = self.x(from.speed_m_s(up.shift_rpm));
                self.scene.handles.push(Handle {
                    set: chosen.of.set,
                    gear: from.gear.id,
                    labels: [from.gear.label.clone(), to.gear.label.clone()],
                    at: [x, effort_n],
                    along: Along::X,
                    rpm_per_unit: up.shift_rpm / x,
                    travel: travel(&self.project.engine),
                    rpm_after_shift: up.rpm_after_shift,
                });
            }
            let best = best.get(at).copied();
            if let Some(rpm) = best
                && let Some(effort_n) = from.effort_n(from.speed_m_s(rpm))
            {
                let at = [self.x(from.speed_m_s(rpm)), effort_n];
                let (role, of) = (Role::BestShift, chosen.of);
                self.scene.points.push(Point { role, of, at });
                // Where a gear is best driven to its end, the end of its line says so.
                if rpm < set.powertrain.band.high_rpm() {
                    let text = format!("best {}", best_rpm_text(rpm));
                    self.label(role, Some(of), text, at, Place::Beside);
                }
            }
        }
    }

    /// What the road takes, level and on grades, and what the driven wheels can put down.
    fn vehicle(&mut self, set: &SetMotion) {
        let end_m_s = self.m_s(self.scene.x.range[1]);
        let grades = self.project.technical.road.shown_grades();
        let roads = grades.into_iter().map(|grade| {
            let on_road = OnRoad::new(&set.vehicle, &self.motion.load, grade);
            (grade.percent(), on_road)
        });
        let roads: Vec<(f64, OnRoad)> = roads.collect();
        for (percent, road) in roads {
            let words = match percent {
                0.0 => "level".to_owned(),
                percent => format!("{} %", plain_number(round_to(percent, 0.1))),
            };
            let load = |m_s: f64| Some(road.road_load_n(m_s));
            self.curve(Role::RoadLoad, words, end_m_s, load);
        }
        let on_road = &set.on_road;
        self.curve(Role::Grip, "grip".to_owned(), end_m_s, |m_s| {
            on_road.grip_limit_n(m_s)
        });
    }

    /// A line of the vehicle from standstill on, with its words at its end.
    fn curve(
        &mut self,
        role: Role,
        words: String,
        end_m_s: f64,
        force_n: impl Fn(f64) -> Option<f64>,
    ) {
        let steps = (0..=STEPS).map(|step| end_m_s * f64::from(step) / f64::from(STEPS));
        let point = |m_s: f64| Some([self.x(m_s), force_n(m_s)?]);
        let points: Vec<[f64; 2]> = steps.filter_map(point).collect();
        let inside = |point: &&[f64; 2]| point[1] <= self.scene.y.range[1];
        let Some(end) = points.iter().rev().find(inside).copied() else {
            return;
        };
        self.label(role, None, words, end, Place::Beside);
        self.scene.curves.push(Curve { role, points });
    }

    fn finished(mut self, sets: &[ChosenSet<'_>]) -> Scene {
        self.scene.x.range = [0.0, next_round(self.fastest * 1.02)];
        self.scene.y.range = [0.0, next_round(self.strongest_n * 1.05)];
        if let Some(first) = sets.first() {
            let motion = self.motion;
            self.vehicle(&motion.sets[first.of.place]);
        }
        self.scene.summary = self.summary(sets);
        self.scene
    }

    /// The diagram in one spoken sentence.
    fn summary(&self, sets: &[ChosenSet<'_>]) -> String {
        let units = self.project.units;
        let spoken = sets.iter().map(|chosen| {
            let set = &self.motion.sets[chosen.of.place];
            let name = &chosen.candidate.set.name;
            match set.powertrain.top_speed(&set.vehicle, &self.motion.load) {
                Some((gear, top)) => format!(
                    "{name} goes {} {} in {}",
                    speed_text(top.speed_m_s * KMH_PER_M_S, units),
                    units.sign(),
                    gear.gear.label
                ),
                None => format!("{name} holds no speed"),
            }
        });
        let sets = of_all_sets(spoken);
        format!(
            "Tractive effort against road speed up to {} {}: {sets}",
            self.scene.x.range[1],
            units.sign()
        )
    }
}
