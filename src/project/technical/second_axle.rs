//! The axle that is driven beside the one that the sets drive, as it was typed.

use crate::checks::{AngleRatio, Axle, Coupling, SecondAxle, TakenOff};
use crate::gearing::{Ratio, Tyre};

/// What is known of a second driven axle; its final drive says that there is one.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SecondAxleData {
    /// Its final drive, for every set that has none of its own there.
    pub final_drive: Option<Ratio>,
    /// Which one it is; absent the front one.
    pub axle: Option<Axle>,
    /// The angle drive on the way to it.
    pub angle_drive: Option<AngleRatio>,
    /// Where its drive is taken off.
    pub taken_off: TakenOff,
    /// Its tyres, where they are not those of the set.
    pub tyre: Option<Tyre>,
    /// What couples both; absent part-time.
    pub coupling: Option<Coupling>,
}

impl SecondAxleData {
    /// The second axle behind a set with that final drive of its own there and these tyres; none where no
    /// final drive is known.
    pub fn behind(&self, own: Option<&Ratio>, tyre: Tyre) -> Option<SecondAxle> {
        let final_drive = own.or(self.final_drive.as_ref())?.clone();
        let tyre = self.tyre.unwrap_or(tyre);
        Some(SecondAxle {
            axle: self.which(),
            taken_off: self.taken_off,
            angle_drive: self.angle_drive,
            final_drive,
            rolling_circumference_mm: tyre.rolling_circumference_mm(),
        })
    }

    /// Which axle it is.
    pub fn which(&self) -> Axle {
        self.axle.unwrap_or(Axle::Front)
    }

    /// What couples both axles.
    pub fn coupling(&self) -> Coupling {
        self.coupling.unwrap_or(Coupling::PartTime)
    }
}
