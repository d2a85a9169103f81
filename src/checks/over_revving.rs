//! Changing down too early: the road speed above which a downshift passes the redline, and what the worst of
//! them would turn the engine to.

use crate::gearing::{DrivenGear, Drivetrain, EngineSpeed};

/// A change down from a gear into the one below it.
#[derive(Debug, Clone, PartialEq)]
pub struct Downshift {
    /// The label of the gear that is left.
    pub from: String,
    /// The label of the lower gear.
    pub to: String,
    /// The road speed in km/h above which the lower gear is beyond the redline.
    pub fastest_kmh: f64,
}

/// A change down at the road speed at which the driver would change up, by one gear or by two.
#[derive(Debug, Clone, PartialEq)]
pub struct MissedShift {
    /// The label of the gear that is left.
    pub from: String,
    /// The label of the lower gear.
    pub to: String,
    /// The road speed at which it happens, in km/h.
    pub speed_kmh: f64,
    /// The engine speed after it, in rev/min.
    pub engine_rpm: f64,
    /// How far that is over the redline, as a share of it; below 0 where it is not.
    pub over_share: f64,
}

/// Every single downshift of the chain, from the lowest up.
pub fn downshifts(drivetrain: &Drivetrain, redline: EngineSpeed) -> Vec<Downshift> {
    let pairs = drivetrain.chain().zip(drivetrain.chain().skip(1));
    let downshift = |(lower, upper): (&DrivenGear, &DrivenGear)| Downshift {
        from: upper.label.clone(),
        to: lower.label.clone(),
        fastest_kmh: drivetrain.speed_kmh(lower, redline.rpm()),
    };
    pairs.map(downshift).collect()
}

/// How far down a shift goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum DownBy {
    /// Into the next lower gear.
    One,
    /// Into the second lower gear.
    Two,
}

impl DownBy {
    /// Both, the smaller first.
    pub const BOTH: [Self; 2] = [Self::One, Self::Two];

    /// How many gears down it is.
    pub fn gears(self) -> usize {
        match self {
            Self::One => 1,
            Self::Two => 2,
        }
    }
}

/// The downshift that turns the engine fastest, of all that happen at the road speed at which the driver would
/// change up. Nobody changes up from top gear, so that is left in none of them; none where no gear is left.
pub fn worst_missed_shift(
    drivetrain: &Drivetrain,
    redline: EngineSpeed,
    down_by: DownBy,
) -> Option<MissedShift> {
    let pairs = drivetrain.chain().zip(drivetrain.chain().skip(1));
    let left = pairs.map(|(gear, _)| gear).skip(down_by.gears());
    let missed = left.zip(drivetrain.chain()).filter_map(|(from, to)| {
        let speed_kmh = drivetrain.speed_kmh(from, from.shift?.rpm());
        let engine_rpm = drivetrain.engine_rpm(to, speed_kmh);
        Some(MissedShift {
            from: from.label.clone(),
            to: to.label.clone(),
            speed_kmh,
            engine_rpm,
            over_share: engine_rpm / redline.rpm() - 1.0,
        })
    });
    missed.reduce(|worst, other| {
        if other.engine_rpm > worst.engine_rpm {
            other
        } else {
            worst
        }
    })
}
