//! What the speedometer of a set shows, from what that of the baseline shows or from the instrument's own
//! meter constant.

use super::instrument::{InstrumentDrive, MeterConstant, ReadingRatio};
use super::signal::{SignalSource, SignalledSet};

/// What is known of the instrument, as it reads in the baseline.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BaselineReading {
    /// Counted ÷ true: what odometer and pointer have in common. Where it is not known, the odometer of the
    /// baseline counts as true.
    pub signal_ratio: Option<ReadingRatio>,
    /// What the pointer shows over what the odometer counts. Where it is not known, the pointer shows just
    /// that.
    pub needle_ratio: Option<ReadingRatio>,
    /// The turns or pulses per kilometre at which the odometer counts right.
    pub meter: Option<MeterConstant>,
}

/// What a speedometer shows, in proportion to the true speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShownSpeed {
    odometer_ratio: f64,
    needle_ratio: f64,
}

/// Why nothing can be said of what a speedometer shows; as text, what to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NoReading {
    /// The set gives no signal.
    #[error(
        "this set gives the speedometer no signal; usual ways to one are a ring on the differential, a \
         sensor at a wheel or a satellite sender"
    )]
    NoSignal,
    /// The baseline gives none, so there is nothing to compare with.
    #[error(
        "the baseline gives no signal to compare with; type the meter constant and what drives the \
         instrument in this set"
    )]
    NoBaselineSignal,
    /// The signals are taken at different places and the set's drive is not known.
    #[error(
        "the signal is taken {}, that of the baseline {}; type the speedometer gears or the pulses per \
         turn of this set", .set.words(), .baseline.words()
    )]
    DriveUnknown {
        /// Where this set takes its signal.
        set: SignalSource,
        /// Where the baseline takes it.
        baseline: SignalSource,
    },
    /// The signals are taken at different places and the baseline's drive is not known.
    #[error(
        "the signal is taken {}, that of the baseline {}; type the speedometer gears or the pulses per \
         turn of the baseline", .set.words(), .baseline.words()
    )]
    BaselineDriveUnknown {
        /// Where this set takes its signal.
        set: SignalSource,
        /// Where the baseline takes it.
        baseline: SignalSource,
    },
    /// The signals are taken at different places and neither drive is known.
    #[error(
        "the signal is taken {}, that of the baseline {}; type the speedometer gears or the pulses per \
         turn of both", .set.words(), .baseline.words()
    )]
    DrivesUnknown {
        /// Where this set takes its signal.
        set: SignalSource,
        /// Where the baseline takes it.
        baseline: SignalSource,
    },
    /// One turns a cable, the other sends pulses.
    #[error(
        "of this set and the baseline one turns speedometer gears and the other sends pulses; type the \
         meter constant, or the pulses per turn of both"
    )]
    TurnsAndPulses,
}

impl ShownSpeed {
    /// What the baseline's instrument shows behind `set`.
    ///
    /// The odometer counts signal ratio × count per km of the set ÷ that of the baseline. With a meter
    /// constant and no signal ratio known it counts count per km ÷ meter constant. The pointer shows what
    /// the odometer counts × needle ratio. Where both take the signal at one place, a drive that is known of
    /// one of them only is taken for that of the other, and two that are not known cancel out.
    ///
    /// # Errors
    /// When a signal or a drive that this needs is missing: the error says which.
    pub fn of(
        set: &SignalledSet,
        baseline: &SignalledSet,
        known: &BaselineReading,
    ) -> Result<Self, NoReading> {
        let source_turns = set.source_turns_per_km().ok_or(NoReading::NoSignal)?;
        let drives = Drives::of(set, baseline);
        let by_meter = known
            .meter
            .zip(drives.of_set)
            .map(|(meter, drive)| source_turns * drive.count_per_turn() / meter.per_km());
        let compared = || {
            let baseline_turns = baseline.source_turns_per_km();
            let baseline_turns = baseline_turns.ok_or(NoReading::NoBaselineSignal)?;
            Ok(source_turns / baseline_turns * drives.ratio()?)
        };
        let odometer_ratio = match (known.signal_ratio, by_meter) {
            (None, Some(by_meter)) => by_meter,
            (Some(ratio), Some(by_meter)) => {
                compared().map_or(by_meter, |compared| ratio.ratio() * compared)
            }
            (ratio, None) => ratio.map_or(1.0, ReadingRatio::ratio) * compared()?,
        };
        Ok(Self::from_ratios(
            odometer_ratio,
            known.needle_ratio.unwrap_or(ReadingRatio::TRUE),
        ))
    }

    /// Of an odometer that counts so much over what is true, above 0, and a pointer that shows so much over
    /// that.
    pub fn from_ratios(odometer_ratio: f64, needle_ratio: ReadingRatio) -> Self {
        Self {
            odometer_ratio,
            needle_ratio: needle_ratio.ratio(),
        }
    }

    /// What is shown where the instrument gets so many times its count, above 0.
    pub(super) fn times(self, factor: f64) -> Self {
        Self {
            odometer_ratio: self.odometer_ratio * factor,
            ..self
        }
    }

    /// What the odometer counts over what is true.
    pub fn odometer_ratio(&self) -> f64 {
        self.odometer_ratio
    }

    /// What the pointer shows over what is true.
    pub fn shown_ratio(&self) -> f64 {
        self.odometer_ratio * self.needle_ratio
    }

    /// What the pointer shows at a true speed, both in km/h.
    pub fn shown_kmh(&self, true_kmh: f64) -> f64 {
        self.shown_ratio() * true_kmh
    }

    /// The true speed at which the pointer shows that, both in km/h.
    pub fn true_kmh(&self, shown_kmh: f64) -> f64 {
        shown_kmh / self.shown_ratio()
    }

    /// How much too far the odometer counts, in per cent; below 0 where it counts too little.
    pub fn odometer_error_percent(&self) -> f64 {
        100.0 * (self.odometer_ratio - 1.0)
    }
}

/// The instrument drives of a set and the baseline, as far as they are known of either.
struct Drives {
    of_set: Option<InstrumentDrive>,
    of_baseline: Option<InstrumentDrive>,
    sources: [SignalSource; 2],
}

impl Drives {
    fn of(set: &SignalledSet, baseline: &SignalledSet) -> Self {
        Self {
            of_set: set.drive_beside(baseline),
            of_baseline: baseline.drive_beside(set),
            sources: [set.signal.source, baseline.signal.source],
        }
    }

    /// What the set's drive counts for a turn, over what the baseline's does.
    fn ratio(&self) -> Result<f64, NoReading> {
        let [set, baseline] = self.sources;
        match (self.of_set, self.of_baseline) {
            (Some(drive), Some(other)) if drive.counts_like(other) => {
                Ok(drive.count_per_turn() / other.count_per_turn())
            }
            (Some(_), Some(_)) => Err(NoReading::TurnsAndPulses),
            (None, None) if set == baseline => Ok(1.0),
            (None, None) => Err(NoReading::DrivesUnknown { set, baseline }),
            (None, Some(_)) => Err(NoReading::DriveUnknown { set, baseline }),
            (Some(_), None) => Err(NoReading::BaselineDriveUnknown { set, baseline }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{PulsesPerTurn, SpeedSignal};
    use super::*;
    use crate::gearing::{
        ActsOn, EngineSpeed, FinalDrive, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name,
        Position, Ratio, Stage, ToothPair,
    };

    fn ratio(number: f64) -> Ratio {
        Ratio::from_number(number).unwrap()
    }

    fn stage(name: &str, ratios: &[f64]) -> Stage {
        let position = |(at, number): (usize, &f64)| Position {
            name: Name::new(&format!("{name} {at}")).unwrap(),
            ratio: ratio(*number),
        };
        Stage {
            name: Name::new(name).unwrap(),
            positions: ratios.iter().enumerate().map(position).collect(),
            present: 0,
            acts_on: ActsOn::EveryGear,
            shows_others: false,
        }
    }

    /// A set with a primary drive of 2, a transfer box that stands in 1.5, and that final drive.
    fn set(final_drive: f64) -> GearSet {
        let first = Gear {
            id: GearId(1),
            label: Label::new("1st").unwrap(),
            ratio: ratio(3.0),
            final_drive: 0,
            role: GearRole::Shifted,
            shift: None,
        };
        let spec = GearSetSpec {
            name: Name::new("Set").unwrap(),
            gears: vec![first],
            reverse: None,
            final_drives: vec![FinalDrive::Gears(ratio(final_drive))],
            stages: vec![stage("Primary", &[2.0]), stage("Transfer", &[1.5, 3.0])],
            tyre: None,
            shift: EngineSpeed::from_rpm(5000.0).unwrap(),
        };
        GearSet::try_from(spec).unwrap()
    }

    fn signalled(set: &GearSet, source: SignalSource, pulses: Option<f64>) -> SignalledSet<'_> {
        let drive = pulses.map(|pulses| {
            let pulses = PulsesPerTurn::new(pulses).unwrap();
            InstrumentDrive::Pulses(pulses)
        });
        SignalledSet {
            set,
            rolling_circumference_mm: 2000.0,
            signal: SpeedSignal { source, drive },
        }
    }

    fn odometer_ratio(
        set: &SignalledSet,
        baseline: &SignalledSet,
        known: BaselineReading,
    ) -> Result<f64, NoReading> {
        ShownSpeed::of(set, baseline, &known).map(|shown| shown.odometer_ratio())
    }

    #[track_caller]
    fn assert_near(found: Result<f64, NoReading>, expected: f64) {
        let found = found.unwrap();
        assert!((found - expected).abs() < 1e-12, "{found}, not {expected}");
    }

    const UNKNOWN: BaselineReading = BaselineReading {
        signal_ratio: None,
        needle_ratio: None,
        meter: None,
    };

    #[test]
    fn a_transfer_box_counts_for_the_gearbox_output_and_a_primary_drive_never() {
        let set = set(4.0);
        let turns = SignalSource::ALL.map(|source| source.turns_per_wheel_turn(&set));
        let expected = [6.0, 4.0, 1.0, 1.0, 1.0].map(Some);
        assert_eq!(turns[..5], expected);
        assert_eq!(turns[5], None);
    }

    #[test]
    fn where_both_take_the_signal_at_one_place_no_drive_need_be_known() {
        let (set, baseline) = (set(3.0), set(4.0));
        let source = SignalSource::BehindTransferBox;
        for pulses in [[None, None], [Some(8.0), None], [None, Some(8.0)]] {
            let [set, baseline] = [
                signalled(&set, source, pulses[0]),
                signalled(&baseline, source, pulses[1]),
            ];
            assert_near(odometer_ratio(&set, &baseline, UNKNOWN), 0.75);
        }
    }

    #[test]
    fn where_the_places_differ_the_drive_that_is_missing_is_named() {
        let gears = set(4.0);
        let of = |source, pulses| signalled(&gears, source, pulses);
        let (wheel, shaft) = (SignalSource::Wheel, SignalSource::BehindTransferBox);
        let error = |set, baseline| odometer_ratio(&set, &baseline, UNKNOWN).unwrap_err();
        let (set, baseline) = (wheel, shaft);
        assert_eq!(
            error(of(wheel, None), of(shaft, Some(8.0))),
            NoReading::DriveUnknown { set, baseline }
        );
        assert_eq!(
            error(of(wheel, Some(8.0)), of(shaft, None)),
            NoReading::BaselineDriveUnknown { set, baseline }
        );
        assert_eq!(
            error(of(wheel, None), of(shaft, None)),
            NoReading::DrivesUnknown { set, baseline }
        );
        assert_eq!(
            error(of(SignalSource::None, Some(8.0)), of(shaft, None)),
            NoReading::NoSignal
        );
        assert_eq!(
            error(of(wheel, Some(8.0)), of(SignalSource::None, None)),
            NoReading::NoBaselineSignal
        );
        let known = odometer_ratio(&of(wheel, Some(48.0)), &of(shaft, Some(8.0)), UNKNOWN);
        assert_near(known, 48.0 / (4.0 * 8.0));
    }

    #[test]
    fn turns_of_a_cable_are_not_compared_with_pulses() {
        let gears = set(4.0);
        let source = SignalSource::BehindTransferBox;
        let pulses = signalled(&gears, source, Some(8.0));
        let mut cable = signalled(&gears, source, None);
        cable.signal.drive = ToothPair::new(16, 8).ok().map(InstrumentDrive::Gears);
        let found = odometer_ratio(&cable, &pulses, UNKNOWN);
        assert_eq!(found, Err(NoReading::TurnsAndPulses));
    }

    #[test]
    fn a_meter_constant_needs_no_baseline_and_a_known_error_goes_before_it() {
        let gears = set(4.0);
        // 500 turns of a wheel on a kilometre, 4 of the shaft for each, 8 pulses for each of these.
        let set = signalled(&gears, SignalSource::BehindTransferBox, Some(8.0));
        let nothing = signalled(&gears, SignalSource::None, None);
        let meter = MeterConstant::from_per_km(20_000.0).ok();
        let known = BaselineReading { meter, ..UNKNOWN };
        assert_near(odometer_ratio(&set, &nothing, known), 0.8);
        let signal_ratio = ReadingRatio::new(1.02).ok();
        let known = BaselineReading {
            signal_ratio,
            ..known
        };
        assert_near(odometer_ratio(&set, &set, known), 1.02);
        assert_near(odometer_ratio(&set, &nothing, known), 0.8);
    }

    #[test]
    fn the_pointer_s_own_error_leaves_the_odometer_alone() {
        let gears = set(4.0);
        let set = signalled(&gears, SignalSource::Wheel, None);
        let known = BaselineReading {
            needle_ratio: ReadingRatio::new(1.05).ok(),
            ..UNKNOWN
        };
        let shown = ShownSpeed::of(&set, &set, &known).unwrap();
        assert!((shown.shown_kmh(100.0) - 105.0).abs() < 1e-9);
        assert!((shown.true_kmh(105.0) - 100.0).abs() < 1e-9);
        assert!(shown.odometer_error_percent().abs() < 1e-9);
    }
}
