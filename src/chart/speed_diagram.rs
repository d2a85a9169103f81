//! The speed diagram: engine speed against road speed for every gear of every set.
//!
//! Each gear is a line from standstill to its speed at the redline; over it lies the part that is
//! really driven, from the last upshift to the next, and between the gears the needle falls.

use super::at_pointer::Readable;
use super::axis::{Along, Axis, Quantity};
use super::handle::{Handle, HandleLine, Travel};
use super::scene::{Area, Label, Line, Owner, Place, Point, Role, Rule, Scene, ShownSet};
use super::view::{IsChosen, View};
use crate::gearing::{EngineSpeed, GearResult, GearRole, SetResults, Upshift};
use crate::project::{Candidate, Project, ProjectResults};
use crate::units::{plain_number, round_to, rpm_difference_text, rpm_text, typed_rpm_text};

/// The steps in which a hand moves a shift point, in rev/min.
const STEP_RPM: f64 = 10.0;

/// The speed diagram of chosen sets.
pub(super) fn scene(project: &Project, results: &ProjectResults, is_chosen: IsChosen<'_>) -> Scene {
    let mut sheet = Sheet::of(project);
    sheet.limits();
    sheet.marks();
    let baseline = &results.sets[project.sets.baseline_place()];
    let sets = project.sets.iter().zip(&results.sets).enumerate();
    for (place, (candidate, set)) in sets {
        if is_chosen(candidate) {
            let trace = SetTrace {
                candidate,
                set,
                baseline: (place != project.sets.baseline_place()).then_some(baseline),
                of: Owner {
                    set: candidate.id,
                    place,
                    gear: None,
                },
            };
            sheet.set(&trace);
        }
    }
    sheet.finished()
}

/// A set that is being drawn.
struct SetTrace<'a> {
    candidate: &'a Candidate,
    set: &'a SetResults,
    /// The set that it is compared with.
    baseline: Option<&'a SetResults>,
    of: Owner,
}

impl SetTrace<'_> {
    fn of_gear(&self, result: &GearResult) -> Owner {
        Owner {
            gear: Some(result.gear.id),
            ..self.of
        }
    }
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

impl<'a> Sheet<'a> {
    fn of(project: &'a Project) -> Self {
        let axis = |quantity| Axis {
            quantity,
            range: [0.0, 0.0],
            marks: Vec::new(),
        };
        Self {
            project,
            redline_rpm: project.engine.redline.rpm(),
            floor_rpm: project.engine.floor_rpm(),
            fastest: 0.0,
            highest_shift_rpm: 0.0,
            scene: Scene {
                view: View::Speed,
                x: axis(Quantity::RoadSpeed(project.units)),
                y: axis(Quantity::EngineSpeed),
                summary: String::new(),
                sets: Vec::new(),
                has_band: true,
                areas: Vec::new(),
                rules: Vec::new(),
                lines: Vec::new(),
                points: Vec::new(),
                labels: Vec::new(),
                handles: Vec::new(),
                handle_lines: Vec::new(),
                readables: Vec::new(),
                without_reading: "no usable gear",
            },
        }
    }

    /// A road speed in the project's unit.
    fn x(&self, speed_kmh: f64) -> f64 {
        self.project.units.from_kmh(speed_kmh)
    }

    /// The point of a gear at an engine speed.
    fn point(&self, trace: &SetTrace<'_>, result: &GearResult, engine_rpm: f64) -> [f64; 2] {
        let speed_kmh = trace.set.drivetrain.speed_kmh(&result.gear, engine_rpm);
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
        let text = typed_rpm_text(redline_rpm);
        self.label(Role::Redline, None, text, [0.0, redline_rpm], Place::OnAxis);
    }

    /// The road and engine speeds that are always wanted.
    fn marks(&mut self) {
        let unit = self.project.units.sign();
        for speed in self.project.marked_road_speeds.as_slice() {
            let at = self.x(speed.kmh());
            self.scene.rules.push(Rule {
                role: Role::Marked,
                along: Along::Y,
                at,
            });
            let text = format!("{} {unit}", plain_number(round_to(at, 0.1)));
            self.label(Role::Marked, None, text, [at, 0.0], Place::AtFoot);
        }
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

    fn set(&mut self, trace: &SetTrace<'_>) {
        self.scene.sets.push(ShownSet {
            id: trace.candidate.id,
            place: trace.of.place,
            name: trace.candidate.set.name.to_string(),
        });
        self.gears(trace);
        self.crossings(trace);
        self.shifts(trace);
    }

    fn line(&mut self, role: Role, of: Owner, points: Vec<[f64; 2]>) {
        self.scene.lines.push(Line { role, of, points });
    }

    /// Every forward gear as far as it goes, and the part of it that is really driven.
    fn gears(&mut self, trace: &SetTrace<'_>) {
        let redline_rpm = self.redline_rpm;
        let mut entered_at = self.project.engine.idle.map_or(0.0, EngineSpeed::rpm);
        for result in &trace.set.gears {
            let of = trace.of_gear(result);
            let end = self.point(trace, result, redline_rpm);
            self.fastest = self.fastest.max(end[0]);
            self.line(Role::Fan, of, vec![[0.0, 0.0], end]);
            let is_shifted = result.gear.role == Some(GearRole::Shifted);
            if is_shifted {
                let left_at = result.upshift.map_or(redline_rpm, |up| up.shift_rpm);
                let driven = [entered_at, left_at].map(|rpm| self.point(trace, result, rpm));
                self.line(Role::Driven, of, driven.to_vec());
                entered_at = result.upshift.map_or(left_at, |up| up.rpm_after_shift);
                self.readable(trace, result);
            }
            let role = if is_shifted { Role::Driven } else { Role::Fan };
            let label = result.gear.label.clone();
            self.label(role, Some(of), label, end, Place::InBand([0.0, 0.0]));
        }
    }

    /// A gear is read off where it is of use: between the floor and the redline.
    fn readable(&mut self, trace: &SetTrace<'_>, result: &GearResult) {
        let useful = [self.floor_rpm, self.redline_rpm];
        let points = useful.map(|rpm| self.point(trace, result, rpm));
        let like = trace.baseline.and_then(|baseline| {
            let like = baseline.counterpart(trace.set, result)?;
            Some((&baseline.drivetrain, &like.gear))
        });
        let units = self.project.units;
        let baseline = like.map(|(drivetrain, gear)| {
            let line = points.map(|[x, _]| [x, drivetrain.engine_rpm(gear, units.to_kmh(x))]);
            line.to_vec()
        });
        self.scene.readables.push(Readable {
            of: trace.of_gear(result),
            name: result.gear.label.clone(),
            points: points.to_vec(),
            baseline,
        });
    }

    /// The engine speed in top gear at each marked road speed.
    fn crossings(&mut self, trace: &SetTrace<'_>) {
        let Some(top) = trace.set.top() else { return };
        for speed in self.project.marked_road_speeds.as_slice() {
            let engine_rpm = trace.set.drivetrain.engine_rpm(&top.gear, speed.kmh());
            if !self.project.engine.allow(engine_rpm) {
                continue;
            }
            let at = [self.x(speed.kmh()), engine_rpm];
            self.scene.points.push(Point {
                role: Role::Crossing,
                of: trace.of,
                at,
            });
            let text = rpm_text(engine_rpm);
            self.label(Role::Crossing, Some(trace.of), text, at, Place::Beside);
        }
    }

    /// The falls of the needle, and the shift points as handles on their line.
    fn shifts(&mut self, trace: &SetTrace<'_>) {
        let travel = self.travel();
        let chain: Vec<&GearResult> = trace.set.chain().collect();
        let mut line = Vec::new();
        for pair in chain.windows(2) {
            let [from, to] = [pair[0], pair[1]];
            let Some(up) = from.upshift else { continue };
            let at = self.drop(trace, up);
            self.fastest = self.fastest.max(at[0]);
            self.highest_shift_rpm = self.highest_shift_rpm.max(up.shift_rpm);
            line.push(at);
            self.scene.handles.push(Handle {
                set: trace.of.set,
                gear: from.gear.id,
                labels: [from.gear.label.clone(), to.gear.label.clone()],
                at,
                along: Along::Y,
                travel,
                rpm_after_shift: up.rpm_after_shift,
            });
        }
        self.line(Role::ShiftLine, trace.of, line.clone());
        let set = &trace.candidate.set;
        let own = set.gears.iter();
        self.scene.handle_lines.push(HandleLine {
            set: trace.of.set,
            points: line,
            along: Along::Y,
            travel,
            common: set.shift,
            own: own.filter_map(|g| Some((g.id, g.shift?))).collect(),
        });
    }

    /// A fall of the needle at constant road speed; where it begins.
    fn drop(&mut self, trace: &SetTrace<'_>, up: Upshift) -> [f64; 2] {
        let x = self.x(up.speed_kmh);
        let [head, foot] = [[x, up.shift_rpm], [x, up.rpm_after_shift]];
        self.line(Role::Drop, trace.of, vec![head, foot]);
        let text = rpm_difference_text(-up.rpm_drop());
        let place = Place::UnderFall(up.shift_rpm);
        self.label(Role::Drop, Some(trace.of), text, foot, place);
        head
    }

    /// A shift point is moved between idle and the redline.
    fn travel(&self) -> Travel {
        let idle_rpm = self.project.engine.idle.map_or(STEP_RPM, EngineSpeed::rpm);
        Travel {
            rpm: [idle_rpm.min(self.redline_rpm), self.redline_rpm],
            step_rpm: STEP_RPM,
        }
    }

    /// From standstill to a little beyond the highest redline speed, up to the redline; farther
    /// where a shift point lies beyond, so that its handle can be seen.
    fn finished(self) -> Scene {
        let mut scene = self.scene;
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
        let fan = scene.lines_of(Role::Fan);
        let gears = fan.filter(|line| line.of.set == set.id).count();
        format!("{} with {gears} gears", set.name)
    };
    let sets: Vec<String> = scene.sets.iter().map(spoken).collect();
    let sets = if sets.is_empty() {
        "no visible set".to_owned()
    } else {
        sets.join("; ")
    };
    format!(
        "Engine speed against road speed up to {} {} and a redline of {} rpm: {sets}",
        scene.x.range[1],
        scene.x.quantity.sign(),
        typed_rpm_text(redline_rpm)
    )
}

/// The next round number above `speed`, no more than a tenth away: 163 gives 165.
fn next_round(speed: f64) -> f64 {
    if speed <= 0.0 || !speed.is_finite() {
        return 100.0;
    }
    let grain = 10_f64.powf(speed.log10().floor()) / 20.0;
    (speed / grain).ceil() * grain
}
