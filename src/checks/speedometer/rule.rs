//! The rules of what a speedometer may show: bands over the true speed, and one point.

use super::shown_speed::ShownSpeed;
use crate::gearing::{RoadSpeed, quantity};
use crate::units::{KM_PER_MILE, SpeedUnit, plain_number};

/// What rounding may leave of a true speed; nothing of a rule is given away by it.
const ROUNDING: f64 = 1e-9;

/// The point of 49 CFR 393.82, 50 mph, in km/h.
const CFR_POINT_KMH: f64 = 50.0 * KM_PER_MILE;

/// What may be off at that point either way, 5 mph, in km/h.
const CFR_MARGIN_KMH: f64 = 5.0 * KM_PER_MILE;

/// The speeds in km/h at which a band is tested where nothing else is said.
const TEST_SPEEDS_KMH: [f64; 3] = [40.0, 80.0, 120.0];

quantity! {
    /// What a rule lets a speedometer show above the true speed, as a share of that: 0 to 100 %.
    RulePercent, from_percent, percent, "what may be shown too much", "between 0 and 100 %",
    |percent| (0.0..=100.0).contains(&percent)
}

quantity! {
    /// What a rule lets a speedometer show above the true speed at any speed: 0 to 100 km/h.
    RuleOffset, from_kmh, kmh, "what may be shown too much", "between 0 and 100 km/h",
    |kmh| (0.0..=100.0).contains(&kmh)
}

/// A rule of what a speedometer may show.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum SpeedometerRule {
    /// UN R39 in its original series, as 75/443/EEC: never below the true speed, and above it by a tenth
    /// and 4 km/h at most.
    ///
    /// # Source
    /// UN R39, 75/443/EEC Annex II 4.3.5 and 4.4. A later series with a wider band is not meant.
    #[default]
    R39,
    /// 49 CFR 393.82, for commercial vehicles: within 5 mph either way at 50 mph. A point, not a band.
    Cfr393,
    /// A band that somebody types: never below the true speed.
    Typed {
        /// What may be shown too much as a share of the true speed.
        percent: RulePercent,
        /// What may be shown too much at any speed.
        offset: RuleOffset,
    },
}

/// Whether a speedometer keeps a rule at all speeds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SpeedVerdict {
    /// It does, up to that speed.
    Keeps {
        /// The fastest true speed in km/h that was looked at.
        up_to_kmh: f64,
    },
    /// It shows less than it must.
    ReadsLow {
        /// The true speed in km/h that it is told at, the fastest at which the rule is tested.
        at_kmh: f64,
        /// How much less than the true speed it shows there, in km/h.
        by_kmh: f64,
    },
    /// It shows more than it may.
    ReadsHigh {
        /// The true speed in km/h above which it does; the point itself where the rule is one.
        from_kmh: f64,
        /// Whether it does so at a speed at which the rule is tested, not only beyond these.
        is_tested: bool,
    },
}

/// A band over the true speed v: from v to v × slope + offset.
struct Band {
    slope: f64,
    offset_kmh: f64,
}

impl SpeedometerRule {
    /// Its name in a word or two, beside a line of a diagram.
    pub fn short_name(self) -> &'static str {
        match self {
            Self::R39 => "UN R39",
            Self::Cfr393 => "49 CFR 393.82",
            Self::Typed { .. } => "the typed rule",
        }
    }

    /// Its name with the edition.
    pub fn name(self) -> String {
        match self {
            Self::R39 => "UN R39 in its original series".to_owned(),
            Self::Cfr393 => "49 CFR 393.82 (commercial vehicles, at 50 mph only)".to_owned(),
            Self::Typed { percent, offset } => format!(
                "the typed rule (true speed to {} % and {} km/h more)",
                plain_number(percent.percent()),
                plain_number(offset.kmh())
            ),
        }
    }

    /// The least and the most that may be shown at a true speed, in km/h; none where the rule says nothing
    /// of that speed.
    ///
    /// # Example
    /// ```
    /// use layshaft::checks::SpeedometerRule;
    /// let [least, most] = SpeedometerRule::R39.limits_kmh(90.0).unwrap_or_default();
    /// assert!((least - 90.0).abs() < 1e-9 && (most - 103.0).abs() < 1e-9);
    /// assert_eq!(SpeedometerRule::Cfr393.limits_kmh(90.0), None);
    /// ```
    pub fn limits_kmh(self, true_kmh: f64) -> Option<[f64; 2]> {
        match self.band() {
            Some(band) => Some([true_kmh, band.most_kmh(true_kmh)]),
            None => is_same(true_kmh, CFR_POINT_KMH)
                .then_some([true_kmh - CFR_MARGIN_KMH, true_kmh + CFR_MARGIN_KMH]),
        }
    }

    /// The most that may be shown at a true speed, in km/h; none where the rule says nothing of that speed.
    pub fn most_kmh(self, true_kmh: f64) -> Option<f64> {
        self.limits_kmh(true_kmh).map(|[_, most]| most)
    }

    /// Whether that may be shown at a true speed, both in km/h; none where the rule says nothing of that
    /// speed. The edges belong to what may be shown, and rounding does not count.
    pub fn is_kept(self, true_kmh: f64, shown_kmh: f64) -> Option<bool> {
        let [least, most] = self.limits_kmh(true_kmh)?;
        let rounding = true_kmh * ROUNDING;
        Some((least - rounding..=most + rounding).contains(&shown_kmh))
    }

    /// The true speeds in km/h at which the rule is tested, on a vehicle of that top speed where it is
    /// known.
    ///
    /// Those of a band are 40, 80 and 120 km/h; where the top speed is 100 to 150 km/h, 80 % of it stand for
    /// 120. A slower vehicle has those that it reaches, or else its top speed.
    ///
    /// # Source
    /// UN R39, 75/443/EEC Annex II 4.3.5, for top speeds of 100 km/h and more.
    pub fn test_speeds_kmh(self, top_speed: Option<RoadSpeed>) -> Vec<f64> {
        if self == Self::Cfr393 {
            return vec![CFR_POINT_KMH];
        }
        let [slow, middle, fast] = TEST_SPEEDS_KMH;
        let mut speeds = match top_speed.map(RoadSpeed::kmh) {
            None => vec![slow, middle, fast],
            Some(top) if top > 150.0 => vec![slow, middle, fast],
            Some(top) if top >= 100.0 => vec![slow, middle, 0.8 * top],
            Some(top) if top >= slow => [slow, middle].into_iter().filter(|v| *v <= top).collect(),
            Some(top) => vec![top],
        };
        speeds.dedup_by(|a, b| is_same(*a, *b));
        speeds
    }

    /// Whether a speedometer keeps the rule, at every speed up to the top speed; where that is not known, up
    /// to the fastest at which the rule is tested.
    pub fn verdict(self, shown: &ShownSpeed, top_speed: Option<RoadSpeed>) -> SpeedVerdict {
        let test_speeds = self.test_speeds_kmh(top_speed);
        let breaks = |kmh: f64| self.is_kept(kmh, shown.shown_kmh(kmh)) == Some(false);
        let fastest_tested = test_speeds.iter().copied().fold(0.0, f64::max);
        let up_to_kmh = match (self.band(), top_speed) {
            (Some(_), Some(top)) => top.kmh(),
            (Some(_), None) | (None, _) => fastest_tested,
        };
        // Shown is in proportion to true: what is kept at the fastest speed is kept at all of them.
        if !breaks(up_to_kmh) {
            return SpeedVerdict::Keeps { up_to_kmh };
        }
        if shown.shown_ratio() < 1.0 {
            return SpeedVerdict::ReadsLow {
                at_kmh: fastest_tested,
                by_kmh: fastest_tested - shown.shown_kmh(fastest_tested),
            };
        }
        let from_kmh = self
            .band()
            .map_or(CFR_POINT_KMH, |band| band.left_at_kmh(shown));
        SpeedVerdict::ReadsHigh {
            from_kmh: from_kmh.min(up_to_kmh),
            is_tested: test_speeds.into_iter().any(breaks),
        }
    }

    fn band(self) -> Option<Band> {
        match self {
            Self::R39 => Some(Band {
                slope: 1.1,
                offset_kmh: 4.0,
            }),
            Self::Cfr393 => None,
            Self::Typed { percent, offset } => Some(Band {
                slope: 1.0 + percent.percent() / 100.0,
                offset_kmh: offset.kmh(),
            }),
        }
    }
}

impl Band {
    fn most_kmh(&self, true_kmh: f64) -> f64 {
        self.slope * true_kmh + self.offset_kmh
    }

    /// The true speed in km/h above which a speedometer that shows more than the slope leaves the band.
    fn left_at_kmh(&self, shown: &ShownSpeed) -> f64 {
        self.offset_kmh / (shown.shown_ratio() - self.slope)
    }
}

fn is_same(kmh: f64, other_kmh: f64) -> bool {
    (kmh - other_kmh).abs() <= other_kmh * ROUNDING
}

impl SpeedVerdict {
    /// The verdict as a sentence that names the rule and says what decides, with speeds in that unit.
    pub fn sentence(self, rule: SpeedometerRule, unit: SpeedUnit) -> String {
        let verdict = self.words(rule, unit);
        format!("{verdict}; what the law of the place says decides")
    }

    /// The verdict alone, which names the rule, with speeds in that unit.
    pub fn words(self, rule: SpeedometerRule, unit: SpeedUnit) -> String {
        let (name, sign) = (rule.name(), unit.sign());
        let speed = |kmh: f64| small_text(kmh, unit);
        let is_point = rule == SpeedometerRule::Cfr393;
        match self {
            Self::Keeps { .. } if is_point => format!("keeps {name}"),
            Self::Keeps { up_to_kmh } => format!("keeps {name} up to {} {sign}", speed(up_to_kmh)),
            Self::ReadsLow { at_kmh, by_kmh } => format!(
                "reads low by {} {sign} at {} {sign} and does not keep {name}",
                speed(by_kmh),
                speed(at_kmh)
            ),
            Self::ReadsHigh {
                from_kmh,
                is_tested,
            } => {
                let from = if is_point { "at" } else { "above" };
                let tested = if is_tested {
                    ""
                } else {
                    ", faster than it is tested at,"
                };
                let kmh = speed(from_kmh);
                format!("reads too high {from} {kmh} {sign}{tested} and does not keep {name}")
            }
        }
    }
}

/// A speed with a decimal, a small one with three.
fn small_text(kmh: f64, unit: SpeedUnit) -> String {
    let speed = unit.from_kmh(kmh);
    if speed > 0.0 && speed < 0.001 {
        return "less than 0.001".to_owned();
    }
    crate::units::mark_text(kmh, unit)
}

#[cfg(test)]
mod tests {
    use super::super::ReadingRatio;
    use super::*;

    fn top(kmh: f64) -> Option<RoadSpeed> {
        RoadSpeed::from_kmh(kmh).ok()
    }

    fn shows(ratio: f64) -> ShownSpeed {
        ShownSpeed::from_ratios(ratio, ReadingRatio::TRUE)
    }

    fn typed(percent: f64, kmh: f64) -> SpeedometerRule {
        SpeedometerRule::Typed {
            percent: RulePercent::from_percent(percent).unwrap(),
            offset: RuleOffset::from_kmh(kmh).unwrap(),
        }
    }

    #[test]
    fn the_fastest_test_speed_is_four_fifths_of_the_top_speed_between_100_and_150() {
        let speeds = |kmh| SpeedometerRule::R39.test_speeds_kmh(top(kmh));
        assert_eq!(speeds(151.0), [40.0, 80.0, 120.0]);
        assert_eq!(speeds(150.0), [40.0, 80.0, 120.0]);
        assert_eq!(speeds(125.0), [40.0, 80.0, 100.0]);
        assert_eq!(speeds(100.0), [40.0, 80.0]);
        assert_eq!(speeds(99.0), [40.0, 80.0]);
        assert_eq!(speeds(79.0), [40.0]);
        assert_eq!(speeds(25.0), [25.0]);
        let untyped = SpeedometerRule::R39.test_speeds_kmh(None);
        assert_eq!(untyped, [40.0, 80.0, 120.0]);
    }

    #[test]
    fn the_edges_of_the_band_belong_to_it() {
        let kept = |true_kmh, shown_kmh| SpeedometerRule::R39.is_kept(true_kmh, shown_kmh);
        assert_eq!(kept(100.0, 100.0), Some(true));
        assert_eq!(kept(100.0, 114.0), Some(true));
        assert_eq!(kept(100.0, 99.9999), Some(false));
        assert_eq!(kept(100.0, 114.0001), Some(false));
    }

    #[test]
    fn a_speedometer_that_shows_twelve_per_cent_too_much_leaves_the_band_at_200_kmh() {
        let verdict = |kmh| SpeedometerRule::R39.verdict(&shows(1.12), top(kmh));
        assert_eq!(verdict(199.0), SpeedVerdict::Keeps { up_to_kmh: 199.0 });
        let SpeedVerdict::ReadsHigh {
            from_kmh,
            is_tested: false,
        } = verdict(220.0)
        else {
            panic!("{:?}", verdict(220.0));
        };
        assert!((from_kmh - 200.0).abs() < 1e-9, "{from_kmh}");
        assert_eq!(
            verdict(220.0).sentence(SpeedometerRule::R39, SpeedUnit::Kmh),
            "reads too high above 200 km/h, faster than it is tested at, and does not keep UN R39 in its \
             original series; what the law of the place says decides"
        );
    }

    #[test]
    fn what_reads_low_is_told_at_the_fastest_test_speed() {
        let verdict = SpeedometerRule::R39.verdict(&shows(0.975), top(180.0));
        assert_eq!(
            verdict.sentence(SpeedometerRule::R39, SpeedUnit::Kmh),
            "reads low by 3 km/h at 120 km/h and does not keep UN R39 in its original series; what the law \
             of the place says decides"
        );
        let trace = SpeedometerRule::R39.verdict(&shows(1.0 - 1e-8), None);
        let sentence = trace.sentence(SpeedometerRule::R39, SpeedUnit::Kmh);
        assert!(
            sentence.starts_with("reads low by less than 0.001 km/h"),
            "{sentence}"
        );
    }

    #[test]
    fn the_rule_of_one_point_says_nothing_of_other_speeds() {
        let rule = SpeedometerRule::Cfr393;
        assert_eq!(rule.most_kmh(80.0), None);
        let verdict = |ratio| rule.verdict(&shows(ratio), top(130.0));
        for ratio in [0.9, 1.0, 1.1] {
            assert!(
                matches!(verdict(ratio), SpeedVerdict::Keeps { .. }),
                "{ratio}"
            );
        }
        let low = verdict(0.89).sentence(rule, SpeedUnit::Mph);
        assert!(low.starts_with("reads low by 5.5 mph at 50 mph"), "{low}");
        let high = verdict(1.11).sentence(rule, SpeedUnit::Mph);
        assert!(high.starts_with("reads too high at 50 mph and"), "{high}");
    }

    #[test]
    fn a_typed_rule_without_an_offset_is_left_at_once() {
        let rule = typed(5.0, 0.0);
        let verdict = rule.verdict(&shows(1.06), None);
        assert_eq!(
            verdict,
            SpeedVerdict::ReadsHigh {
                from_kmh: 0.0,
                is_tested: true
            }
        );
        let kept = rule.verdict(&shows(1.05), None);
        assert_eq!(kept, SpeedVerdict::Keeps { up_to_kmh: 120.0 });
    }
}
