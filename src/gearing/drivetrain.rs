//! A gear set with its stages and tyre resolved down to the wheels: engine turns for a wheel turn,
//! and how far that is.

use super::gear_set::{Gear, GearId, GearRole, GearSet, Position, REVERSE_LABEL};
use super::quantity::EngineSpeed;
use super::speed::{rpm_from_speed, speed_from_rpm};
use super::tyre::Tyre;

/// One gear, resolved down to the wheels.
#[derive(Debug, Clone, PartialEq)]
pub struct DrivenGear {
    /// Its identity within the set.
    pub id: GearId,
    /// What it is called on the lever.
    pub label: String,
    /// Whether it belongs to the shift chain; `None` for reverse.
    pub role: Option<GearRole>,
    /// Input turns per turn of the gearbox's output.
    pub ratio: f64,
    /// The ratio of the final drive that it drives.
    pub final_drive: f64,
    /// Engine turns per wheel turn, all stages included.
    pub overall_ratio: f64,
    /// The engine speed at which the driver changes up from it; unused on the top gear.
    pub shift: Option<EngineSpeed>,
}

/// A gear set with its tyre: everything needed to turn engine speed into road speed.
#[derive(Debug, Clone, PartialEq)]
pub struct Drivetrain {
    /// Forward gears in typed order.
    pub gears: Vec<DrivenGear>,
    /// The reverse gear, if there is one.
    pub reverse: Option<DrivenGear>,
    /// Distance per wheel turn under load, in mm.
    pub rolling_circumference_mm: f64,
}

impl Drivetrain {
    /// The set on its own tyre, or on the vehicle's where it has none.
    pub fn resolve(set: &GearSet, vehicle_tyre: &Tyre) -> Self {
        let tyre = set.tyre.as_ref().unwrap_or(vehicle_tyre);
        Self {
            gears: set
                .gears
                .iter()
                .map(|gear| resolve_gear(set, gear))
                .collect(),
            reverse: resolve_reverse(set),
            rolling_circumference_mm: tyre.rolling_circumference_mm(),
        }
    }

    /// The gears of the shift chain, first to top.
    pub fn chain(&self) -> impl Iterator<Item = &DrivenGear> + Clone {
        self.gears
            .iter()
            .filter(|g| g.role == Some(GearRole::Shifted))
    }

    /// The road speed in km/h of `gear` at an engine speed.
    pub fn speed_kmh(&self, gear: &DrivenGear, engine_rpm: f64) -> f64 {
        speed_from_rpm(
            engine_rpm,
            gear.overall_ratio,
            self.rolling_circumference_mm,
        )
    }

    /// The engine speed in rev/min of `gear` at a road speed.
    pub fn engine_rpm(&self, gear: &DrivenGear, speed_kmh: f64) -> f64 {
        rpm_from_speed(speed_kmh, gear.overall_ratio, self.rolling_circumference_mm)
    }
}

fn resolve_gear(set: &GearSet, gear: &Gear) -> DrivenGear {
    let final_drive = set.final_drives[gear.final_drive].value();
    let ratio = gear.ratio.value();
    DrivenGear {
        id: gear.id,
        label: gear.label.to_string(),
        role: Some(gear.role),
        ratio,
        final_drive,
        overall_ratio: ratio * final_drive * stages_ratio(set, gear.id),
        shift: Some(set.shift_of(gear)),
    }
}

fn resolve_reverse(set: &GearSet) -> Option<DrivenGear> {
    let reverse = set.reverse.as_ref()?;
    let final_drive = set.final_drives[reverse.final_drive].value();
    let ratio = reverse.ratio.value();
    Some(DrivenGear {
        id: GearId::REVERSE,
        label: REVERSE_LABEL.to_owned(),
        role: None,
        ratio,
        final_drive,
        overall_ratio: ratio * final_drive * stages_ratio(set, GearId::REVERSE),
        shift: None,
    })
}

/// The ratio between a gear, forward or reverse, and the wheels: its final drive and the stages that
/// act on it, each in its present position. None where the gear is not there.
pub fn ratio_behind(set: &GearSet, gear: GearId) -> Option<f64> {
    let final_drive = match gear {
        GearId::REVERSE => set.reverse.as_ref()?.final_drive,
        forward => set.gear(forward)?.final_drive,
    };
    Some(set.final_drives[final_drive].value() * stages_ratio(set, gear))
}

/// What the stages that act on a gear multiply its ratio by, each in its present position.
fn stages_ratio(set: &GearSet, gear: GearId) -> f64 {
    let acting = set.stages.iter().filter(|s| s.acts_on.includes(gear));
    acting
        .map(|stage| present(&stage.positions, stage.present).map_or(1.0, |p| p.ratio.value()))
        .product()
}

fn present(positions: &[Position], index: usize) -> Option<&Position> {
    positions.get(index)
}
