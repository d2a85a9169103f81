//! Steps and upshifts: how wide the steps of a gear set are, and how far the needle falls at each.

use super::drivetrain::Drivetrain;

/// What happens at one upshift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Upshift {
    /// Engine speed at which the driver changes up, in rev/min.
    pub shift_rpm: f64,
    /// Engine speed after the upshift at the same road speed, in rev/min.
    pub rpm_after_shift: f64,
    /// Road speed at which it happens, in km/h.
    pub speed_kmh: f64,
}

impl Upshift {
    /// Engine speed lost at the upshift, in rev/min; below 0 where the next gear is shorter.
    pub fn rpm_drop(&self) -> f64 {
        self.shift_rpm - self.rpm_after_shift
    }

    /// The drop as a share of the shift speed.
    pub fn drop_share(&self) -> f64 {
        self.rpm_drop() / self.shift_rpm
    }
}

/// The steps of the shift chain: overall ratio of each gear ÷ that of the next, one fewer than gears.
pub fn steps(drivetrain: &Drivetrain) -> Vec<f64> {
    let overall: Vec<f64> = drivetrain.chain().map(|g| g.overall_ratio).collect();
    overall.windows(2).map(|pair| pair[0] / pair[1]).collect()
}

/// Overall first ÷ overall top of the shift chain; 1 for a single gear.
pub fn spread(drivetrain: &Drivetrain) -> f64 {
    let overall = |gear: &super::DrivenGear| gear.overall_ratio;
    let first = drivetrain.chain().next().map(overall);
    let top = drivetrain.chain().last().map(overall);
    first.zip(top).map_or(1.0, |(first, top)| first / top)
}

/// The upshifts of the chain, one fewer than its gears, each at its own shift point.
///
/// Engine speed after the shift = shift speed ÷ step.
pub fn upshifts(drivetrain: &Drivetrain) -> Vec<Upshift> {
    let lower = drivetrain.chain();
    lower
        .zip(steps(drivetrain))
        .filter_map(|(gear, step)| {
            let shift_rpm = gear.shift?.rpm();
            Some(Upshift {
                shift_rpm,
                rpm_after_shift: shift_rpm / step,
                speed_kmh: drivetrain.speed_kmh(gear, shift_rpm),
            })
        })
        .collect()
}
