//! The sums of the bench: what shim a place takes, how hard a shaft turns, what heat makes of a setting.
//!
//! Nothing here knows a window, a file, a clock or chance. Lengths are in mm; a setting is one signed number,
//! clearance above 0 and preload below. What comes out is a proposal: the maker's figures decide.

mod heat;
mod next_shim;
mod quantity;
mod readings;
mod shim;
mod side_bearings;
mod stock;
mod turning_torque;

pub use heat::{Arrangement, HeatChange, Material};
pub use next_shim::{ShimTry, next_shim};
pub use quantity::{
    Expansion, NMM_PER_NM, PullForce, Radius, Reading, Setting, SettingBand, ShimThickness,
    TemperatureRise, TurningTorque,
};
pub use readings::{Readings, Resolution};
pub use shim::{Band, Measurement, NoMeasurement, Seat, ShimJob};
pub use side_bearings::{BacklashMove, SideShims};
pub use stock::{Stack, Stock, StockError, parse_sizes};
pub use turning_torque::{TorqueBand, TorqueReading, TorqueVerdict, TurningMeasurement};
