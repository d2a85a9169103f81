//! Two driven axles: how far each wants to roll for one turn of what drives both, and what the difference
//! does to the coupling between them.

use crate::gearing::{Ratio, quantity};

quantity! {
    /// The ratio of an angle drive: 0.1 to 10; below 1 it speeds up, as most do.
    AngleRatio, new, ratio, "the ratio of an angle drive", "between 0.1 and 10",
    |ratio| (0.1..=10.0).contains(&ratio)
}

/// One of the two axles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Axle {
    /// The front axle.
    Front,
    /// The rear axle.
    Rear,
}

impl Axle {
    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Front => Self::Rear,
            Self::Rear => Self::Front,
        }
    }

    /// What it is called.
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Rear => "rear",
        }
    }
}

/// Where the drive of the second axle is taken off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum TakenOff {
    /// Before the final drive of the first, as in a transfer box: each axle has its own.
    #[default]
    BeforeFinalDrive,
    /// Behind it, at the ring gear, as where a box lies across and an angle drive goes to the rear: the final
    /// drive of the box turns both.
    BehindFinalDrive,
}

/// The axle that is driven beside the one that the set itself drives.
#[derive(Debug, Clone, PartialEq)]
pub struct SecondAxle {
    /// Which one it is.
    pub axle: Axle,
    /// Where its drive is taken off.
    pub taken_off: TakenOff,
    /// The angle drive on the way to it; none where there is none.
    pub angle_drive: Option<AngleRatio>,
    /// Its own final drive.
    pub final_drive: Ratio,
    /// The distance per turn of its tyres under load, in mm.
    pub rolling_circumference_mm: f64,
}

/// An axle as it is driven from the split.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AfterSplit {
    /// Turns of the split for one turn of its wheels.
    pub ratio: f64,
    /// Distance per wheel turn under load, in mm.
    pub rolling_circumference_mm: f64,
}

impl AfterSplit {
    /// How far its tyres roll for one turn of the split, in mm.
    pub fn mm_per_turn(&self) -> f64 {
        self.rolling_circumference_mm / self.ratio
    }
}

/// Both axles after the split.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoAxles {
    /// The front axle.
    pub front: AfterSplit,
    /// The rear axle.
    pub rear: AfterSplit,
}

impl TwoAxles {
    /// Both axles of a set: the first behind its final drive, and the second.
    ///
    /// # Units
    /// * `final_drive`: the ratio of the first axle's final drive, above 0
    /// * `rolling_circumference_mm`: distance per turn of the first axle's tyres under load, in mm
    pub fn of(final_drive: f64, rolling_circumference_mm: f64, second: &SecondAxle) -> Self {
        let first = AfterSplit {
            ratio: match second.taken_off {
                TakenOff::BeforeFinalDrive => final_drive,
                TakenOff::BehindFinalDrive => 1.0,
            },
            rolling_circumference_mm,
        };
        let angle_drive = second.angle_drive.map_or(1.0, AngleRatio::ratio);
        let other = AfterSplit {
            ratio: angle_drive * second.final_drive.value(),
            rolling_circumference_mm: second.rolling_circumference_mm,
        };
        let (front, rear) = match second.axle {
            Axle::Rear => (first, other),
            Axle::Front => (other, first),
        };
        Self { front, rear }
    }

    /// How much farther the tyres of one axle want to roll than those of the other, for the same turn of the
    /// split: that axle, and the difference in per cent, 0 or more. Where they agree it is the rear one.
    pub fn mismatch(&self) -> (Axle, f64) {
        let (front, rear) = (self.front.mm_per_turn(), self.rear.mm_per_turn());
        if front > rear {
            (Axle::Front, 100.0 * (front / rear - 1.0))
        } else {
            (Axle::Rear, 100.0 * (rear / front - 1.0))
        }
    }

    /// The mismatch as a sentence.
    pub fn sentence(&self) -> String {
        let (axle, percent) = self.mismatch();
        if percent < NOTHING_PERCENT {
            return "front and rear want to roll equally far".to_owned();
        }
        format!(
            "the {} tyres want to roll {percent:.1} % farther than the {} ones",
            axle.word(),
            axle.other().word()
        )
    }
}

/// What couples the two axles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Coupling {
    /// A dog clutch that locks them together for bad ground.
    PartTime,
    /// A viscous coupling or a clutch of plates that slips.
    Viscous,
    /// A differential between them.
    CentreDifferential,
}

/// The mismatch in per cent above which a coupling that slips is commonly held to suffer: common practice,
/// no source.
pub const MOST_MISMATCH_PERCENT: f64 = 1.0;

/// What is below this, in per cent, no tyre is known to, nor stays the same as it wears.
const NOTHING_PERCENT: f64 = 0.05;

/// The mismatch in per cent above which no coupling is meant to live with it: common practice, no source.
const NEVER_PERCENT: f64 = 4.0;

impl Coupling {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::PartTime, Self::Viscous, Self::CentreDifferential];

    /// What it is called.
    pub fn word(self) -> &'static str {
        match self {
            Self::PartTime => "part-time",
            Self::Viscous => "viscous",
            Self::CentreDifferential => "centre differential",
        }
    }

    /// What a mismatch does to it, as a sentence.
    pub fn sentence(self, axles: &TwoAxles) -> String {
        let (_, percent) = axles.mismatch();
        let farther = axles.sentence();
        if percent < NOTHING_PERCENT {
            return farther;
        }
        let what = match self {
            _ if percent > NEVER_PERCENT => {
                "do not couple them: the axles would wind up and break something on any ground; give both \
                 the same ratio and tyres"
            }
            Self::PartTime => {
                "locked together the axles wind up against each other, so lock them on loose ground only"
            }
            Self::Viscous if percent > MOST_MISMATCH_PERCENT => {
                "the coupling slips all the time, heats and wears even straight ahead; vehicle makers \
                 commonly want tyres within about 1 % of each other"
            }
            Self::Viscous => {
                "the coupling slips a little all the time; vehicle makers commonly want tyres within about \
                 1 % of each other"
            }
            Self::CentreDifferential => {
                "the centre differential turns all the time, which does little harm while it is small, unless \
                 it is locked"
            }
        };
        format!("{farther}: {what}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn second(
        axle: Axle,
        taken_off: TakenOff,
        angle: Option<f64>,
        final_drive: f64,
        mm: f64,
    ) -> SecondAxle {
        SecondAxle {
            axle,
            taken_off,
            angle_drive: angle.map(|ratio| AngleRatio::new(ratio).unwrap()),
            final_drive: Ratio::from_number(final_drive).unwrap(),
            rolling_circumference_mm: mm,
        }
    }

    #[track_caller]
    fn assert_mismatch(axles: &TwoAxles, axle: Axle, percent: f64) {
        let (found, found_percent) = axles.mismatch();
        assert_eq!(found, axle);
        assert!(
            (found_percent - percent).abs() < 1e-9,
            "{found_percent}, not {percent}"
        );
    }

    #[test]
    fn a_shorter_axle_behind_a_transfer_box_rolls_less_far() {
        let front = second(Axle::Front, TakenOff::BeforeFinalDrive, None, 4.1, 2000.0);
        let axles = TwoAxles::of(4.3, 2000.0, &front);
        assert_mismatch(&axles, Axle::Front, 100.0 * (4.3 / 4.1 - 1.0));
        let taller_tyres = TwoAxles::of(4.3, 2000.0 * 4.3 / 4.1, &front);
        assert!(taller_tyres.mismatch().1 < 1e-9);
    }

    #[test]
    fn behind_the_final_drive_of_a_box_across_it_turns_both_axles() {
        let of = |ratio| {
            let taken_off = TakenOff::BehindFinalDrive;
            second(Axle::Rear, taken_off, Some(0.4), ratio, 1900.0)
        };
        for final_drive in [3.2, 4.9] {
            let axles = TwoAxles::of(final_drive, 1900.0, &of(2.5));
            assert_mismatch(&axles, Axle::Rear, 0.0);
            let axles = TwoAxles::of(final_drive, 1900.0, &of(2.0));
            assert_mismatch(&axles, Axle::Rear, 25.0);
        }
    }

    #[test]
    fn each_coupling_is_told_what_a_mismatch_does_to_it() {
        let axles = |rear_mm| {
            let rear = second(Axle::Rear, TakenOff::BeforeFinalDrive, None, 4.0, rear_mm);
            TwoAxles::of(4.0, 2000.0, &rear)
        };
        let sentences = Coupling::ALL.map(|coupling| coupling.sentence(&axles(2030.0)));
        for (sentence, word) in sentences
            .iter()
            .zip(["wind up", "wears", "turns all the time"])
        {
            let farther = "the rear tyres want to roll 1.5 % farther than the front ones: ";
            assert!(sentence.starts_with(farther), "{sentence}");
            assert!(sentence.contains(word), "{sentence}");
        }
        let little = Coupling::Viscous.sentence(&axles(2010.0));
        assert!(little.contains("slips a little"), "{little}");
        for coupling in Coupling::ALL {
            let none = coupling.sentence(&axles(2000.5));
            assert_eq!(none, "front and rear want to roll equally far");
        }
    }
}
