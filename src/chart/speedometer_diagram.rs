//! The speedometer diagram: how much more than the true speed each set's instrument shows, and what of that
//! a rule allows.
//!
//! The difference stands upright, not what is shown: a few per cent cannot be seen between two lines that
//! both rise with the speed.

use super::at_pointer::{Also, Readable};
use super::axis::{Along, Quantity, next_round};
use super::chosen::ChosenSet;
use super::marks::{at_marked_road_speeds, of_all_sets};
use super::scene::{Above, Area, Curve, Label, Line, Owner, Place, Point, Role, Rule, Scene};
use crate::analysis::{Analysis, SPEEDOMETER_SPEEDS_KMH};
use crate::checks::{ShownSpeed, SpeedometerRule};
use crate::project::{Project, View};
use crate::units::{KM_PER_MILE, SpeedUnit, decimals_text, signed};

/// How far the diagram goes beyond the fastest speed that is looked at.
const ROOM: f64 = 1.1;

/// The speedometer diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let project = analysis.project();
    let units = project.units;
    let (x, y) = (Quantity::RoadSpeed(units), Quantity::AboveTrue(units));
    let mut sheet = Sheet {
        project,
        units,
        fastest: units.from_kmh(fastest_kmh(project)),
        scene: Scene {
            without_reading: "no signal",
            ..Scene::empty(View::Speedometer, x, y)
        },
    };
    at_marked_road_speeds(&mut sheet.scene, project);
    sheet.rule();
    let shown = analysis.speedometers();
    for set in sets {
        sheet.scene.sets.push(set.shown());
        if let Ok(of_set) = &shown[set.of.place] {
            sheet.set(set.of, of_set);
        }
    }
    sheet.finished()
}

/// How fast the diagram goes at least, in km/h.
fn fastest_kmh(project: &Project) -> f64 {
    let marked = project.marked_road_speeds.as_slice().iter();
    let speeds = marked
        .map(|speed| speed.kmh())
        .chain(SPEEDOMETER_SPEEDS_KMH);
    speeds.fold(0.0, f64::max)
}

struct Sheet<'a> {
    project: &'a Project,
    units: SpeedUnit,
    /// The greatest road speed, in the project's unit.
    fastest: f64,
    scene: Scene,
}

impl Sheet<'_> {
    /// How far the x axis goes.
    fn end(&self) -> f64 {
        next_round(self.fastest * ROOM)
    }

    /// What the rule allows; beyond it is shaded.
    fn rule(&mut self) {
        let end = self.end();
        let most = |x: f64| {
            let true_kmh = self.units.to_kmh(x);
            let most_kmh = self.project.technical.speedometer.rule.most_kmh(true_kmh)?;
            Some([x, self.units.from_kmh(most_kmh - true_kmh)])
        };
        let rule = self.project.technical.speedometer.rule;
        let name = rule.short_name();
        match most(0.0).zip(most(end)) {
            Some((from, to)) => {
                self.scene.areas.push(Area {
                    role: Role::Limit,
                    y: [None, Some(0.0)],
                });
                let role = Role::Limit;
                self.scene.above.push(Above { role, from, to });
                self.limit(vec![from, to], format!("most by {name}"));
                self.limit(vec![[0.0, 0.0], [end, 0.0]], "true".to_owned());
            }
            None => self.point(name),
        }
    }

    /// A rule that is one point: how far it may be off there.
    fn point(&mut self, name: &str) {
        let kmh = 50.0 * KM_PER_MILE;
        let limits = SpeedometerRule::Cfr393.limits_kmh(kmh);
        let [least, most] = limits.unwrap_or([kmh; 2]);
        let at = |shown_kmh: f64| {
            let above = self.units.from_kmh(shown_kmh - kmh);
            [self.units.from_kmh(kmh), above]
        };
        self.limit(vec![at(least), at(most)], name.to_owned());
        self.scene.rules.push(Rule {
            role: Role::Floor,
            along: Along::X,
            at: 0.0,
        });
    }

    /// A line that must not be crossed, with its words at its end.
    fn limit(&mut self, points: Vec<[f64; 2]>, text: String) {
        if let Some(end) = points.last() {
            self.scene.say_once(Label {
                text,
                role: Role::Limit,
                of: None,
                at: *end,
                place: Place::Beside,
            });
        }
        let role = Role::Limit;
        self.scene.curves.push(Curve { role, points });
    }

    fn set(&mut self, of: Owner, shown: &ShownSpeed) {
        let end = self.end();
        let line = |shown: &ShownSpeed| {
            let above = |x: f64| [x, (shown.shown_ratio() - 1.0) * x];
            vec![above(0.0), above(end)]
        };
        let points = line(shown);
        self.scene.readables.push(Readable {
            of,
            name: String::new(),
            points: points.clone(),
            // How far each is off says it: the baseline mostly is not.
            baseline: None,
            also: vec![Also {
                name: "shows ".to_owned(),
                quantity: Quantity::RoadSpeed(self.units),
                points: vec![[0.0, 0.0], [end, shown.shown_ratio() * end]],
            }],
        });
        for speed in self.project.marked_road_speeds.as_slice() {
            let x = self.units.from_kmh(speed.kmh());
            let at = [x, (shown.shown_ratio() - 1.0) * x];
            let role = Role::Crossing;
            self.scene.points.push(Point { role, of, at });
            let text = decimals_text(shown.shown_ratio() * x, 1);
            self.scene.labels.push(Label {
                text: format!("shows {text} ({})", signed(at[1], 1)),
                role,
                of: Some(of),
                at,
                // All sets in a column: none is left out, and the eye compares downwards.
                place: Place::AtHead(self.scene.sets.len() - 1),
            });
        }
        let role = Role::FullLoad;
        self.scene.lines.push(Line { role, of, points });
    }

    fn finished(mut self) -> Scene {
        let end = self.end();
        let of_sets = self.scene.lines.iter().flat_map(|line| &line.points);
        let of_rule = self.scene.curves.iter().flat_map(|curve| &curve.points);
        let heights = of_sets.chain(of_rule).map(|point| point[1]);
        let [least, most] = heights.fold([0.0_f64; 2], |[least, most], height| {
            [least.min(height), most.max(height)]
        });
        let room = (most - least).max(1.0) * 0.15;
        self.scene.x.range = [0.0, end];
        self.scene.y.range = [least - room, most + room];
        let spoken = self.scene.sets.iter().map(|set| {
            let labels = self.scene.labels.iter();
            let own = labels.filter(|label| label.of.is_some_and(|of| of.set == set.id));
            let texts: Vec<&str> = own.map(|label| label.text.as_str()).collect();
            if texts.is_empty() {
                set.name.clone()
            } else {
                format!("{} {}", set.name, texts.join(", "))
            }
        });
        let sets = of_all_sets(spoken);
        self.scene.summary = format!("Shown speed above the true one: {sets}");
        self.scene
    }
}
