//! The speed diagram: engine speed against road speed for every gear of every set.
//!
//! Each gear is a line from standstill to its speed at the redline; over it lies the part that is
//! really driven, from the last upshift to the next, and between the gears the needle falls.

use super::at_pointer::Readable;
use super::axis::{Along, Quantity, next_round};
use super::chosen::ChosenSet;
use super::handle::{Handle, HandleLine, travel};
use super::marks::{at_marked_road_speeds, of_all_sets};
use super::scene::{Area, Label, Line, Owner, Place, Point, Role, Rule, Scene, ShownSet};
use super::shift_words;
use crate::analysis::Analysis;
use crate::gearing::{EngineSpeed, GearResult, GearRole, SetResults, Upshift};
use crate::project::Project;
use crate::project::View;
use crate::units::{rpm_difference_text, rpm_text, typed_rpm_text};

/// The speed diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let mut sheet = Sheet::of(analysis.project());
    sheet.limits();
    sheet.marks();
    for set in sets {
        sheet.set(set);
    }
    sheet.finished()
}

struct Sheet<'a> {
    project: &'a Project,
    redline_rpm: f64,
    floor_rpm: f64,
    /// The highest road speed so far, in the project's unit.
    fastest: f64,
    /// The highest shift point so far, in rev/min.
    highest_shift_rpm: f64,
    scene: Scene,
}

/// Whose figures are read off, and what they are compared with.
struct Figures<'a> {
    of: Owner,
    name: String,
    set: &'a SetResults,
    baseline: Option<&'a SetResults>,
}

impl<'a> Sheet<'a> {
    fn of(project: &'a Project) -> Self {
        let speed = Quantity::RoadSpeed(project.units);
        Self {
            project,
            redline_rpm: project.engine.redline.rpm(),
            floor_rpm: project.engine.floor_rpm(),
            fastest: 0.0,
            highest_shift_rpm: 0.0,
            scene: Scene {
                has_band: true,
                without_reading: "no usable gear",
                ..Scene::empty(View::Speed, speed, Quantity::EngineSpeed)
            },
        }
    }

    /// A road speed in the project's unit.
    fn x(&self, speed_kmh: f64) -> f64 {
        self.project.units.from_kmh(speed_kmh)
    }

    /// The point of a gear at an engine speed.
    fn point(&self, set: &SetResults, result: &GearResult, engine_rpm: f64) -> [f64; 2] {
        let speed_kmh = set.drivetrain.speed_kmh(&result.gear, engine_rpm);
        [self.x(speed_kmh), engine_rpm]
    }

    fn label(&mut self, role: Role, of: Option<Owner>, text: String, at: [f64; 2], place: Place) {
        self.scene.labels.push(Label {
            text,
            role,
            of,
            at,
            place,
        });
    }

    /// The redline with all beyond it, and engine speeds too low to be useful.
    fn limits(&mut self) {
        let redline_rpm = self.redline_rpm;
        self.scene.areas.push(Area {
            role: Role::Redline,
            y: [Some(redline_rpm), None],
        });
        self.scene.areas.push(Area {
            role: Role::Floor,
            y: [None, Some(self.floor_rpm)],
        });
        self.scene.rules.push(Rule {
            role: Role::Redline,
            along: Along::X,
            at: redline_rpm,
        });
        if self.floor_rpm > 0.0 {
            // The shade alone is too faint to say where it ends.
            self.scene.rules.push(Rule {
                role: Role::Floor,
                along: Along::X,
                at: self.floor_rpm,
            });
            let is_idle = self.project.engine.lowest_useful.is_none();
            let words = if is_idle { "idle" } else { "useful from" };
            let text = format!("{words} {}", typed_rpm_text(self.floor_rpm));
            self.label(Role::Floor, None, text, [0.0, self.floor_rpm], Place::AtEnd);
        }
        let text = typed_rpm_text(redline_rpm);
        self.label(Role::Redline, None, text, [0.0, redline_rpm], Place::OnAxis);
    }

    /// The road and engine speeds that are always wanted.
    fn marks(&mut self) {
        at_marked_road_speeds(&mut self.scene, self.project);
        for speed in self.project.marked_engine_speeds.as_slice() {
            let at = speed.rpm();
            self.scene.rules.push(Rule {
                role: Role::Marked,
                along: Along::X,
                at,
            });
            let text = format!("{} rpm", typed_rpm_text(at));
            self.label(Role::Marked, None, text, [0.0, at], Place::AtEnd);
        }
    }

    fn set(&mut self, set: &ChosenSet<'_>) {
        self.scene.sets.push(set.shown());
        // Their names are placed after those of the gears as they stand.
        self.others(set);
        self.gears(set);
        self.crossings(set);
        self.shifts(set);
    }

    fn line(&mut self, role: Role, of: Owner, points: Vec<[f64; 2]>) {
        self.scene.lines.push(Line { role, of, points });
    }

    /// Every forward gear as far as it goes, and the part of it that is really driven.
    fn gears(&mut self, set: &ChosenSet<'_>) {
        let redline_rpm = self.redline_rpm;
        let mut entered_at = self.project.engine.idle.map_or(0.0, EngineSpeed::rpm);
        for result in &set.set.gears {
            let of = set.of_gear(result);
            let end = self.point(set.set, result, redline_rpm);
            self.fastest = self.fastest.max(end[0]);
            self.line(Role::Fan, of, vec![[0.0, 0.0], end]);
            let is_shifted = result.gear.role == Some(GearRole::Shifted);
            if is_shifted {
                let left_at = result.upshift.map_or(redline_rpm, |up| up.shift_rpm);
                let driven = [entered_at, left_at].map(|rpm| self.point(set.set, result, rpm));
                self.line(Role::Driven, of, driven.to_vec());
                entered_at = result.upshift.map_or(left_at, |up| up.rpm_after_shift);
                let figures = Figures {
                    of,
                    name: result.gear.label.clone(),
                    set: set.set,
                    baseline: set.baseline,
                };
                self.readable(figures, result);
            }
            let role = if is_shifted { Role::Driven } else { Role::Fan };
            let label = result.gear.label.clone();
            self.label(role, Some(of), label, end, Place::InBand([0.0, 0.0]));
        }
    }

    /// Every forward gear in the other positions that are shown, as far as it is of use.
    fn others(&mut self, set: &ChosenSet<'_>) {
        for (at, other) in set.others().iter().enumerate() {
            for result in &other.results.gears {
                let of = Owner {
                    other: Some(at),
                    ..set.of_gear(result)
                };
                let figures = Figures {
                    of,
                    name: format!("{} {}", result.gear.label, other.name),
                    set: &other.results,
                    baseline: set.baseline_in(&other.name),
                };
                let useful = self.useful(&other.results, result);
                self.fastest = self.fastest.max(useful[1][0]);
                self.line(Role::Other, of, useful.to_vec());
                let name = figures.name.clone();
                let place = Place::InBand([0.0, 0.0]);
                self.label(Role::Other, Some(of), name, useful[1], place);
                if result.gear.role == Some(GearRole::Shifted) {
                    self.readable(figures, result);
                }
            }
        }
    }

    /// The ends of a gear's line as far as it is of use: at the floor and at the redline.
    fn useful(&self, set: &SetResults, result: &GearResult) -> [[f64; 2]; 2] {
        [self.floor_rpm, self.redline_rpm].map(|rpm| self.point(set, result, rpm))
    }

    /// A gear is read off where it is of use.
    fn readable(&mut self, figures: Figures<'_>, result: &GearResult) {
        let points = self.useful(figures.set, result);
        let like = figures.baseline.and_then(|baseline| {
            let like = baseline.counterpart(figures.set, result)?;
            Some((&baseline.drivetrain, &like.gear))
        });
        let units = self.project.units;
        let baseline = like.map(|(drivetrain, gear)| {
            let line = points.map(|[x, _]| [x, drivetrain.engine_rpm(gear, units.to_kmh(x))]);
            line.to_vec()
        });
        self.scene.readables.push(Readable {
            also: Vec::new(),
            of: figures.of,
            name: figures.name,
            points: points.to_vec(),
            baseline,
        });
    }

    /// The engine speed in top gear at each marked road speed.
    fn crossings(&mut self, set: &ChosenSet<'_>) {
        let Some(top) = set.set.top() else { return };
        for speed in self.project.marked_road_speeds.as_slice() {
            let engine_rpm = set.set.drivetrain.engine_rpm(&top.gear, speed.kmh());
            if !self.project.engine.allow(engine_rpm) {
                continue;
            }
            let at = [self.x(speed.kmh()), engine_rpm];
            self.scene.points.push(Point {
                role: Role::Crossing,
                of: set.of,
                at,
            });
            let text = rpm_text(engine_rpm);
            self.label(Role::Crossing, Some(set.of), text, at, Place::Beside);
        }
    }

    /// The falls of the needle, and the shift points as handles on their line.
    fn shifts(&mut self, set: &ChosenSet<'_>) {
        let travel = travel(&self.project.engine);
        let chain: Vec<&GearResult> = set.set.chain().collect();
        let mut line = Vec::new();
        for pair in chain.windows(2) {
            let [from, to] = [pair[0], pair[1]];
            let Some(up) = from.upshift else { continue };
            let at = self.drop(set, up);
            self.fastest = self.fastest.max(at[0]);
            self.highest_shift_rpm = self.highest_shift_rpm.max(up.shift_rpm);
            line.push(at);
            self.scene.handles.push(Handle {
                set: set.of.set,
                gear: from.gear.id,
                labels: [from.gear.label.clone(), to.gear.label.clone()],
                at,
                along: Along::Y,
                rpm_per_unit: 1.0,
                travel,
                rpm_after_shift: up.rpm_after_shift,
            });
        }
        self.line(Role::ShiftLine, set.of, line.clone());
        let parts = &set.candidate.set;
        let own = parts.gears.iter();
        self.scene.handle_lines.push(HandleLine {
            set: set.of.set,
            points: line,
            along: Along::Y,
            travel,
            common: parts.shift,
            own: own.filter_map(|g| Some((g.id, g.shift?))).collect(),
        });
    }

    /// A fall of the needle at constant road speed; where it begins.
    fn drop(&mut self, set: &ChosenSet<'_>, up: Upshift) -> [f64; 2] {
        let x = self.x(up.speed_kmh);
        let [head, foot] = [[x, up.shift_rpm], [x, up.rpm_after_shift]];
        self.line(Role::Drop, set.of, vec![head, foot]);
        let text = rpm_difference_text(-up.rpm_drop());
        let place = Place::UnderFall(up.shift_rpm);
        self.label(Role::Drop, Some(set.of), text, foot, place);
        head
    }

    /// From standstill to a little beyond the highest redline speed, up to the redline; farther
    /// where a shift point lies beyond, so that its handle can be seen.
    fn finished(self) -> Scene {
        let mut scene = self.scene;
        let shift_words = shift_words::labels(&scene, self.redline_rpm);
        scene.labels.extend(shift_words);
        let highest_rpm = self.redline_rpm.max(self.highest_shift_rpm * 1.02);
        scene.x.range = [0.0, next_round(self.fastest * 1.02)];
        scene.y.range = [0.0, highest_rpm];
        scene.summary = summary(&scene, self.redline_rpm);
        scene
    }
}

/// The diagram in one spoken sentence.
fn summary(scene: &Scene, redline_rpm: f64) -> String {
    let spoken = |set: &ShownSet| {
        let count = |role: Role| {
            let lines = scene.lines_of(role);
            lines.filter(|line| line.of.set == set.id).count()
        };
        let gears = format!("{} with {} gears", set.name, count(Role::Fan));
        match count(Role::Other) {
            0 => gears,
            others => format!("{gears}, and {others} in other positions"),
        }
    };
    let sets = of_all_sets(scene.sets.iter().map(spoken));
    format!(
        "Engine speed against road speed up to {} {} and a redline of {} rpm: {sets}",
        scene.x.range[1],
        scene.x.quantity.sign(),
        typed_rpm_text(redline_rpm)
    )
}
