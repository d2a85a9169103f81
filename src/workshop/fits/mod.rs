//! What a bearing, a gear or a ring has on its seat: classes and their limits, the interference of both, and what
//! presses or warms a part onto it.
//!
//! Diameters are in mm, deviations and interferences in µm; below 0 there is clearance. What comes out is a
//! proposal: the maker's figures decide.

mod class;
mod heating;
mod interference;
mod limits;
mod measured;
mod press;
mod quantity;
mod seat;
mod table;

pub use class::{BoreClass, NoClass, ShaftClass};
pub use heating::{BEARING_MOST_C, Heating, case_outgrows_um};
pub use interference::{Interference, SeatFinish, Tightness, taken_by_warmth_um};
pub(super) use limits::deviation_text;
pub use limits::{SizeLimits, SizeVerdict};
pub use measured::{MeasuredDiameters, MeasuredVerdict, PlaceDiameters};
pub use press::{PressedRing, Pressing};
pub use quantity::{Deviation, Diameter, RingWidth, RoomTemperature, SlipClearance};
pub use seat::{OutsideTable, SeatClass, SeatSide};
pub use table::{BORE_STEPS, DiameterStep, SHAFT_STEPS, bearing_bore, bearing_outside};
