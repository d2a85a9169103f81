//! The table of speedometers: what each shows at true road speeds, what it may show, and how far its
//! odometer is off.

use super::road_checks;
use super::{FigureCell, FigureColumn, FigurePart, FigureRow, FigureTable};
use crate::analysis::{Analysis, speed_verdict};
use crate::chart::of_motion::speed_words;
use crate::chart::speedometer_words::{
    correction_words, instrument_words, odometer_words, signal_words,
};
use crate::checks::{CheckFindingKind, ShownSpeed, SignalSource, SpeedometerRule};
use crate::gearing::RoadSpeed;
use crate::letters::capitalised;
use crate::project::Project;
use crate::units::{SpeedUnit, decimals_text, signed};

/// What every reader of these figures should know.
const NOTES: [&str; 2] = [
    "What an instrument shows is reckoned from turns and teeth; measure it before you rely on it.",
    "What the law of the place says decides.",
];

impl FigureTable {
    /// What the speedometer shows behind every set at these true speeds.
    pub fn speedometer(analysis: &Analysis, speeds: &[RoadSpeed]) -> Self {
        let project = analysis.project();
        let baseline_place = project.sets.baseline_place();
        let shown = analysis.speedometers();
        let notes = NOTES.map(str::to_owned).to_vec();
        let head = instrument_words(&project.technical.speedometer);
        Self::of_sets(project, head, notes, |place, candidate| {
            let signal = project
                .technical
                .speedometer
                .signal_of(candidate.technical.checks.signal);
            let mut facts = Vec::new();
            if signal.source != SignalSource::None {
                facts.push(signal_words(&signal));
            }
            match &shown[place] {
                Ok(of_set) => {
                    facts.push(odometer_words(of_set));
                    let rule = project.technical.speedometer.rule;
                    let verdict = speed_verdict(project, of_set).words(rule, project.units);
                    facts.push(capitalised(&verdict));
                    let before = shown[baseline_place].as_ref().ok();
                    let corrections =
                        before.map(|before| correction_words(&signal, of_set, before));
                    facts.extend(corrections.into_iter().flatten());
                }
                Err(reason) => facts.push(capitalised(&reason.to_string())),
            }
            let checks = &analysis.road_checks()[place];
            let of_checks = checks.checked.findings().into_iter();
            let of_checks = of_checks.filter(|finding| {
                // Both are said of the speedometer itself.
                !matches!(
                    finding.kind,
                    CheckFindingKind::SpeedometerBreaksRule { .. }
                        | CheckFindingKind::NoSpeedSignal
                )
            });
            facts.extend(of_checks.map(|finding| capitalised(&finding.to_string())));
            facts.extend(road_checks::missed_words(checks, project.units));
            let baseline = shown[baseline_place].as_ref().ok();
            let told = Told {
                units: project.units,
                rule: project.technical.speedometer.rule,
                shown: shown[place].as_ref().ok(),
                baseline: baseline.filter(|_| place != baseline_place),
            };
            let parts = vec![
                told.part(project, speeds),
                road_checks::ratings(checks, project.units),
                road_checks::downshifts(checks, project.units),
            ];
            (facts, parts)
        })
    }
}

/// What is told of one set.
struct Told<'a> {
    units: SpeedUnit,
    rule: SpeedometerRule,
    shown: Option<&'a ShownSpeed>,
    baseline: Option<&'a ShownSpeed>,
}

impl Told<'_> {
    fn part(&self, project: &Project, speeds: &[RoadSpeed]) -> FigurePart {
        let unit = self.units.sign();
        let column = |title: &str| FigureColumn {
            title: title.to_owned(),
            unit,
        };
        let rows = speeds.iter().map(|speed| FigureRow {
            gear: None,
            label: speed_label(*speed, project.units),
            remark: None,
            cells: self.cells(speed.kmh()),
        });
        FigurePart {
            title: "Shown speed",
            // The diagram says it of the marked speeds.
            is_said: false,
            names: "true speed",
            columns: vec![
                column("shown"),
                column("above true"),
                column("least allowed"),
                column("most allowed"),
            ],
            rows: rows.collect(),
        }
    }

    fn cells(&self, true_kmh: f64) -> Vec<FigureCell> {
        let unit = |kmh: f64| self.units.from_kmh(kmh);
        let shown = |of: Option<&ShownSpeed>| of.map(|of| unit(of.shown_kmh(true_kmh)));
        // The shown less the true speed would lose the digits that both have.
        let above = |of: &ShownSpeed| (of.shown_ratio() - 1.0) * unit(true_kmh);
        let [least, most] = self
            .rule
            .limits_kmh(true_kmh)
            .map_or([None; 2], |limits| limits.map(|kmh| Some(unit(kmh))));
        let difference = |speed: f64, before: f64| signed(speed - before, 1);
        vec![
            FigureCell::of(shown(self.shown), tenths_text)
                .against(shown(self.baseline), difference),
            FigureCell::of(self.shown.map(above), |above| signed(above, 1)),
            FigureCell::of(least, tenths_text),
            FigureCell::of(most, tenths_text),
        ]
    }
}

/// `at 40 km/h`, in another unit too where the speed is not round in the project's: `at 40 km/h (24.9 mph)`.
fn speed_label(speed: RoadSpeed, units: SpeedUnit) -> String {
    let words = speed_words(speed, units);
    if words.ends_with(units.sign()) {
        return format!("at {words}");
    }
    let own = tenths_text(units.from_kmh(speed.kmh()));
    format!("at {words} ({own} {})", units.sign())
}

/// A speed with one decimal.
fn tenths_text(speed: f64) -> String {
    decimals_text(speed, 1)
}
